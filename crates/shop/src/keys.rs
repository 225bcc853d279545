//! What can be said in each part of a shop file, for whoever makes a form of it.
//!
//! The sizes of a machine come from its template, and the values of a point or of a job from its kind; what stands here is common to all.

use fields::Asks;
use units::Dimension;

use crate::point::{EXPOSURES, FITTINGS, PRIORITIES, REACHES};
use crate::read::SYSTEMS;
use crate::room::HEATINGS;

/// Something that can be said in a part of the file.
#[derive(Debug, Clone, Copy)]
pub struct Key {
    /// The key in the file.
    pub name: &'static str,
    /// What kind of answer it takes.
    pub takes: Takes,
    /// What it means, for people.
    pub about: &'static str,
}

/// The kind of answer a key takes.
#[derive(Debug, Clone, Copy)]
pub enum Takes {
    /// What a field of a kind can take, too.
    Asked(Asks),
    /// Any words.
    Text,
    /// A path to a file beside this one.
    File,
    /// An amount of a fluid: a volume, a weight, a length, pieces.
    Amount,
    /// A day of the calendar.
    Day,
    /// One word of a few.
    Word(fn() -> Vec<&'static str>),
    /// Several words of a few.
    Words(fn() -> Vec<&'static str>),
    /// One of what is known by name.
    One(Known),
    /// Several of what is known by name.
    Several(Known),
}

/// What is known by name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Known {
    /// Machine templates.
    Template,
    /// The points of the machine's template.
    TemplatePoint,
    /// Kinds of lubrication point.
    PointKind,
    /// Kinds of job.
    Job,
    /// Climates.
    Climate,
    /// Currencies.
    Currency,
    /// Fluids.
    Fluid,
    /// Fluids and classes of fluids.
    FluidOrClass,
}

const fn key(name: &'static str, takes: Takes, about: &'static str) -> Key {
    Key { name, takes, about }
}

const fn quantity(dimension: Dimension) -> Takes {
    Takes::Asked(Asks::Quantity(dimension))
}

const FLAG: Takes = Takes::Asked(Asks::Flag);

fn words<T>(of: &[(&'static str, T)]) -> Vec<&'static str> {
    of.iter().map(|(word, _)| *word).collect()
}

/// The shop as a whole.
pub const SHOP_KEYS: &[Key] = &[
    key("name", Takes::Text, "what you call the shop"),
    key("units", Takes::Word(|| words(SYSTEMS)), "units wanted in answers"),
    key("currency", Takes::One(Known::Currency), "the money prices are shown in"),
    key("hours", quantity(Dimension::Usage), "how much of the time a machine runs, where it does not say itself"),
    key("avoid", Takes::Several(Known::FluidOrClass), "fluids and classes you will not have"),
];

/// `[room]`
pub const ROOM_KEYS: &[Key] = &[
    key("volume", quantity(Dimension::Volume), "air space: length times width times height"),
    key("air_changes", quantity(Dimension::Frequency), "changes of air in an hour with the door shut"),
    key("heating", Takes::Word(|| words(HEATINGS)), "how it is heated"),
    key("climate", Takes::One(Known::Climate), "the climate it stands in"),
    key("coldest", quantity(Dimension::Temperature), "the coldest air at which a machine is started"),
    key("usual", quantity(Dimension::Temperature), "the air on a usual working day"),
    key("hottest", quantity(Dimension::Temperature), "the hottest air at which a machine is run"),
    key("humidity", quantity(Dimension::Ratio), "relative humidity of the air in the damp season"),
    key("attached_to_house", FLAG, "whether people live on the other side of a wall or door"),
    key("low_odour", FLAG, "whether strong smells are unwelcome"),
    key("salt", FLAG, "whether salt gets in: the sea within a kilometre, or a car from salted roads"),
    key("flames", FLAG, "whether a flame burns in it: a stove, a pilot light, a heater without a flue"),
    key("weather", Takes::File, "a file of hourly weather beside the shop file"),
];

/// `[[machine]]`; its template adds the sizes.
pub const MACHINE_KEYS: &[Key] = &[
    key("template", Takes::One(Known::Template), "the template it is grown from"),
    key("name", Takes::Text, "what you call it"),
    key("hours", quantity(Dimension::Usage), "how much of the time it runs"),
    key("without", Takes::Several(Known::TemplatePoint), "points of the template that it has not"),
];

/// `[[machine.point]]`; its kind adds the values.
pub const POINT_KEYS: &[Key] = &[
    key("name", Takes::Text, "its name on the chart"),
    key("kind", Takes::One(Known::PointKind), "what kind of place it is"),
    key("count", Takes::Asked(Asks::Number), "how many alike there are"),
    key("hours", quantity(Dimension::Usage), "how much of the time it moves"),
    key("fitting", Takes::Word(|| words(FITTINGS)), "how a lubricant gets in"),
    key("reach", Takes::Word(|| words(REACHES)), "whether it is easily got at"),
    key("exposure", Takes::Words(|| words(EXPOSURES)), "what reaches it from outside"),
    key("touches", Takes::Asked(Asks::Materials), "materials a fluid touches there"),
    key("holds", Takes::One(Known::Fluid), "the fluid that is in it now"),
    key("priority", Takes::Word(|| words(PRIORITIES)), "whether it matters more or less than is reckoned"),
];

/// The maker's instruction for a point.
pub const MAKER_KEYS: &[Key] = &[
    key("use", Takes::Several(Known::FluidOrClass), "fluids or classes the maker allows"),
    key("viscosity", quantity(Dimension::KinematicViscosity), "the viscosity at 40 °C the maker asks for"),
    key("every", quantity(Dimension::Time), "how often, in running hours"),
    key("page", Takes::Text, "where that stands, such as a page of the manual"),
];

/// `[[work]]`; its kind adds the values.
pub const WORK_KEYS: &[Key] = &[
    key("job", Takes::One(Known::Job), "what kind of work it is"),
    key("name", Takes::Text, "what you call it"),
    key("often", quantity(Dimension::Frequency), "how often it is done"),
    key("priority", Takes::Word(|| words(PRIORITIES)), "whether it matters more or less than is reckoned"),
];

/// `[[pot]]`
pub const POT_KEYS: &[Key] = &[
    key("fluid", Takes::One(Known::Fluid), "what is in it"),
    key("name", Takes::Text, "what you call it"),
    key("left", Takes::Amount, "what is left in it"),
    key("size", Takes::Amount, "what it held when it was full"),
    key("bought", Takes::Day, "the day it was bought"),
    key("opened", Takes::Day, "the day it was opened"),
    key("keeps_until", Takes::Day, "the last day its label says it is good"),
    key("place", Takes::Text, "where it stands"),
    key("lot", Takes::Text, "the maker's batch number, as printed on it"),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Kinds, read};
    use reference::Reference;

    /// A value of the right type for a key; whether it is a good one does not matter here.
    fn some_value(takes: Takes) -> String {
        match takes {
            Takes::Asked(Asks::Flag) => "true".to_owned(),
            Takes::Asked(Asks::Number) => "2".to_owned(),
            Takes::Asked(Asks::Quantity(Dimension::Temperature)) => "\"10 °C\"".to_owned(),
            Takes::Day => "2026-03-01".to_owned(),
            _ => "\"x\"".to_owned(),
        }
    }

    fn written(keys: &[Key]) -> String {
        keys.iter().map(|key| format!("{} = {}\n", key.name, some_value(key.takes))).collect()
    }

    #[test]
    fn the_reader_knows_every_key_that_stands_here() {
        const POINT: fields::Kind = fields::Kind { name: "place", about: "", fields: &[] };
        let (point, maker) = (written(POINT_KEYS).replace("kind = \"x\"", "kind = \"place\""), written(MAKER_KEYS).replace('\n', ", "));
        let work = written(WORK_KEYS).replace("job = \"x\"", "job = \"place\"");
        let text = format!(
            "{}[room]\n{}[[machine]]\n{}[[machine.point]]\n{point}maker = {{ {} }}\n[[work]]\n{work}[[pot]]\n{}",
            written(SHOP_KEYS),
            written(ROOM_KEYS),
            written(MACHINE_KEYS),
            maker.trim_end_matches(", "),
            written(POT_KEYS),
        );
        let found = read(text.as_bytes(), Kinds { points: &[&POINT], jobs: &[&POINT] }, Reference::embedded()).unwrap_err();
        let unknown: Vec<_> =
            found.iter().filter(|problem| problem.what.ends_with("is not known here") && !problem.what.contains("template")).collect();
        assert!(unknown.iter().all(|problem| problem.what.contains("`x`")), "{unknown:?}");
    }

    #[test]
    fn every_key_of_a_pot_stands_here() {
        assert_eq!(POT_KEYS.iter().map(|key| key.name).collect::<Vec<_>>(), crate::Pot::KEYS);
    }
}
