//! One lubrication point on a machine.

use std::collections::BTreeSet;

use reference::{Reference, TemplatePoint};
use units::{KinematicViscosity, Quantity, Time, Usage};

use crate::answers::{Source, read_answers};
use crate::assumption::Assumptions;
use crate::problem::{Problems, Span};
use crate::section::{Said, Section};
use fields::did_you_mean;
use fields::{Answers, Kind};

/// One lubrication point.
#[derive(Debug, Clone)]
pub struct Point {
    /// Its name on the chart.
    pub name: String,
    /// What kind of place it is.
    pub kind: &'static Kind,
    /// How many alike there are.
    pub count: f64,
    /// Sizes, loads and speeds.
    pub answers: Answers,
    /// What reaches it.
    pub exposure: BTreeSet<Exposure>,
    /// How a lubricant gets in, where it has a fitting.
    pub fitting: Fitting,
    /// Whether it is easily got at.
    pub reach: Reach,
    /// Materials a fluid touches there, by key.
    pub touches: Vec<String>,
    /// How much of the time it moves.
    pub hours: Usage,
    /// The fluid that is in it now, by key.
    pub holds: Option<String>,
    /// What the machine's maker says.
    pub maker: Option<Maker>,
    /// Whether the user raised or lowered it.
    pub priority: Priority,
    /// Where it, or its machine, stands in the file.
    pub at: Span,
}

/// Something that reaches a point from outside.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Exposure {
    /// Metal chips.
    Chips,
    /// Abrasive dust.
    Grit,
    /// Cutting fluid with water.
    Coolant,
    /// Damp air.
    Damp,
    /// Weather.
    Outdoors,
}

pub(crate) const EXPOSURES: &[(&str, Exposure)] = &[
    ("chips", Exposure::Chips),
    ("grit", Exposure::Grit),
    ("coolant", Exposure::Coolant),
    ("damp", Exposure::Damp),
    ("outdoors", Exposure::Outdoors),
];

/// How a lubricant gets to a point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fitting {
    /// Nothing: the surface is open.
    Brush,
    /// A spring-loaded ball in the mouth of an oil hole.
    BallOiler,
    /// A cup with a lid.
    OilCup,
    /// A plain hole.
    OilHole,
    /// A wick or siphon.
    Wick,
    /// A nipple for a grease gun.
    GreaseNipple,
    /// A bath of oil.
    Bath,
    /// Splash from a bath.
    Splash,
    /// A drip feed.
    Drip,
    /// A one-shot or other pump.
    Pump,
    /// Closed for life.
    Sealed,
    /// A screw cap packed with grease.
    Cap,
    /// Nothing: it is taken apart and packed by hand.
    Packed,
}

/// The words for fittings in the file.
pub const FITTINGS: &[(&str, Fitting)] = &[
    ("brush", Fitting::Brush),
    ("ball oiler", Fitting::BallOiler),
    ("oil cup", Fitting::OilCup),
    ("oil hole", Fitting::OilHole),
    ("wick", Fitting::Wick),
    ("grease nipple", Fitting::GreaseNipple),
    ("bath", Fitting::Bath),
    ("splash", Fitting::Splash),
    ("drip", Fitting::Drip),
    ("pump", Fitting::Pump),
    ("sealed", Fitting::Sealed),
    ("cap", Fitting::Cap),
    ("packed", Fitting::Packed),
];

impl Fitting {
    /// Whether it is made for grease.
    #[must_use]
    pub const fn feeds_grease(self) -> bool {
        matches!(self, Self::GreaseNipple | Self::Cap | Self::Packed)
    }

    /// The word in the file.
    #[must_use]
    pub fn word(self) -> &'static str {
        FITTINGS.iter().find(|(_, fitting)| *fitting == self).map_or("brush", |(word, _)| word)
    }
}

/// Whether a point is easily got at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reach {
    /// In passing.
    Easy,
    /// Behind a guard or after taking something off.
    Hard,
}

pub(crate) const REACHES: &[(&str, Reach)] = &[("easy", Reach::Easy), ("hard", Reach::Hard)];

/// Whether the user raised or lowered a need.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Priority {
    /// Counts half.
    Low,
    /// Counts as computed.
    Normal,
    /// Counts twice.
    High,
}

pub(crate) const PRIORITIES: &[(&str, Priority)] = &[("low", Priority::Low), ("normal", Priority::Normal), ("high", Priority::High)];

/// What the maker of the machine says about a point.
#[derive(Debug, Clone)]
pub struct Maker {
    /// Fluid keys or classes the maker allows.
    pub fluids: Vec<String>,
    /// Viscosity at 40 °C the maker asks for.
    pub viscosity: Option<KinematicViscosity>,
    /// How often.
    pub every: Option<Time>,
    /// Where the instruction stands, such as a page of the manual.
    pub page: Option<String>,
    /// Where it stands in the file.
    pub at: Span,
}

/// No maker asks for oil more often than this.
const LEAST_INTERVAL_S: f64 = 3600.0;

impl Maker {
    fn read(mut section: Section<'_>, reference: &Reference, problems: &mut Problems) -> Self {
        let maker = Self {
            fluids: section.words("use", problems).into_iter().filter_map(|said| fluid_or_class(said, reference, problems)).collect(),
            viscosity: section.quantity("viscosity", problems).map(|said| said.value),
            every: section.quantity("every", problems).map(|said| said.value),
            page: section.text("page", problems).map(|said| said.value),
            at: section.at.clone(),
        };
        if maker.fluids.is_empty() && maker.viscosity.is_none() && maker.every.is_none() {
            problems.add(
                maker.at.clone(),
                "the maker's instruction says nothing",
                "Give `use` (fluids or classes), `viscosity` (such as `ISO VG 32`) or `every` (such as `500 h`).",
            );
        }
        if maker.every.is_some_and(|every| every.base() < LEAST_INTERVAL_S) {
            problems.add(
                maker.at.clone(),
                "the maker's interval is less than an hour",
                "Give `every` in hours of running, such as `500 h`.",
            );
        }
        section.close(problems);
        maker
    }
}

/// A fluid's key or a class's key.
pub(crate) fn fluid_or_class(said: Said<String>, reference: &Reference, problems: &mut Problems) -> Option<String> {
    let known = || reference.fluids.keys().chain(reference.classes.keys()).map(String::as_str);
    if let Some(meant) = reference.meant(&said.value, known()) {
        return Some(meant.to_owned());
    }
    problems.add(said.at, format!("`{}` is neither a fluid nor a class of fluids", said.value), did_you_mean(&said.value, known()));
    None
}

/// A fluid's key.
pub(crate) fn fluid(said: Said<String>, reference: &Reference, problems: &mut Problems) -> Option<String> {
    let known = || reference.fluids.keys().map(String::as_str);
    let meant = reference.meant(&said.value, known()).map(ToOwned::to_owned);
    if meant.is_none() {
        problems.add(said.at, format!("`{}` is not a fluid known here", said.value), did_you_mean(&said.value, known()));
    }
    meant
}

/// What a point inherits from its machine.
pub(crate) struct Inherited<'a> {
    pub machine: &'a str,
    pub hours: Usage,
    pub damp: bool,
    pub template: Option<&'a TemplatePoint>,
    pub template_source: &'a str,
    pub size: &'a dyn Fn(&str) -> Option<f64>,
}

impl Point {
    /// Reads a point from the template, the file, or both; the file wins.
    pub(crate) fn read(
        name: String,
        kind: &'static Kind,
        mut section: Section<'_>,
        from: &Inherited<'_>,
        reference: &Reference,
        assumed: &mut Assumptions,
        problems: &mut Problems,
    ) -> Self {
        let place = format!("{} · {name}", from.machine);
        let template = from.template;
        let source = template.and_then(|point| point.source).map_or(from.template_source, |key| key.as_str());
        let values = Source { values: template.map(|point| &point.values), source, size: from.size };
        let answers = read_answers(kind, &mut section, &values, &place, reference, assumed, problems);
        let mut exposure = read_exposure(&mut section, problems).unwrap_or_else(|| {
            template.map_or_else(BTreeSet::new, |point| point.exposure.iter().filter_map(|word| known(word, EXPOSURES)).collect())
        });
        if from.damp {
            exposure.insert(Exposure::Damp);
        }
        let fitting = section.choice("fitting", FITTINGS, problems).map(|said| said.value);
        let reach = section.choice("reach", REACHES, problems).map(|said| said.value);
        let touches = section.words("touches", problems);
        let touches = if touches.is_empty() {
            template.map(|point| point.touches.clone()).unwrap_or_default()
        } else {
            touches.into_iter().filter_map(|said| crate::answers::material(said, reference, problems)).collect()
        };
        let template_hours = template.and_then(|point| point.hours.as_deref()).and_then(|text| units::parse(text).ok());
        let maker = section.section("maker", problems).map(|section| Maker::read(section, reference, problems));
        let point = Self {
            kind,
            count: section
                .number("count", problems)
                .map_or_else(|| template.map_or(1.0, |point| f64::from(point.count)), |said| said.value),
            answers,
            exposure,
            fitting: fitting.or_else(|| template?.fitting.as_deref().and_then(|word| known(word, FITTINGS))).unwrap_or(Fitting::Brush),
            reach: reach.or_else(|| template?.reach.as_deref().and_then(|word| known(word, REACHES))).unwrap_or(Reach::Easy),
            touches,
            hours: section.quantity("hours", problems).map(|said| said.value).or(template_hours).unwrap_or(from.hours),
            holds: section.text("holds", problems).and_then(|said| fluid(said, reference, problems)),
            maker,
            priority: section.choice("priority", PRIORITIES, problems).map_or(Priority::Normal, |said| said.value),
            at: section.at.clone(),
            name,
        };
        if point.fitting == Fitting::Sealed && point.maker.as_ref().is_some_and(|maker| !maker.fluids.is_empty()) {
            problems.add(
                point.at.clone(),
                format!("`{}` is sealed for life and yet its maker names a fluid", point.name),
                "Drop `fitting = \"sealed\"`, or drop `use` from the maker's instruction.",
            );
        }
        section.close(problems);
        point
    }

    /// Whether something of the kind reaches it.
    #[must_use]
    pub fn meets(&self, exposure: Exposure) -> bool {
        self.exposure.contains(&exposure)
    }
}

fn known<T: Copy>(word: &str, of: &[(&str, T)]) -> Option<T> {
    of.iter().find(|(known, _)| *known == word).map(|(_, value)| *value)
}

fn read_exposure(section: &mut Section<'_>, problems: &mut Problems) -> Option<BTreeSet<Exposure>> {
    let written = section.has("exposure");
    let words = section.words("exposure", problems);
    let mut set = BTreeSet::new();
    for said in words {
        match known(&said.value, EXPOSURES) {
            Some(exposure) => {
                set.insert(exposure);
            }
            None => {
                let mend = did_you_mean(&said.value, EXPOSURES.iter().map(|(word, _)| *word));
                problems.add(said.at, format!("`{}` is not an exposure", said.value), mend);
            }
        }
    }
    written.then_some(set)
}
