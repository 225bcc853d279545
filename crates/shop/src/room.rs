//! The room and its air.

use std::sync::Arc;

use reference::{AIR_CHANGES_WITHIN, Climate, Reference};
use units::{Frequency, Quantity, Ratio, Temperature, Volume, show};

use crate::assumption::Assumptions;
use crate::problem::{Problems, Span};
use crate::section::Section;
use fields::did_you_mean;

/// The room the shop stands in.
#[derive(Debug, Clone)]
pub struct Room {
    /// Key of the climate it stands in.
    pub climate: String,
    /// The weather there, hour by hour.
    pub weather: Option<WeatherFile>,
    /// Air space.
    pub volume: Volume,
    /// Changes of air per hour with the door shut.
    pub air_changes: Frequency,
    /// The least of them: as said, or the still end of what is supposed, for what one breathes.
    pub least_air_changes: Frequency,
    /// How it is heated.
    pub heating: Heating,
    /// Coldest air at which a machine is started.
    pub coldest: Temperature,
    /// Air on a usual working day.
    pub usual: Temperature,
    /// Hottest air at which a machine is run.
    pub hottest: Temperature,
    /// Relative humidity of the air in the damp season.
    pub humidity: Ratio,
    /// Whether people live on the other side of a wall or door.
    pub attached_to_house: bool,
    /// Whether strong smells are unwelcome.
    pub low_odour: bool,
    /// Whether salt gets in: the sea within a kilometre, or a car from salted roads.
    pub salt: bool,
    /// Whether a flame burns in it: a stove, a pilot light, a heater without a flue.
    pub flames: bool,
}

/// A file of hourly weather beside the shop file.
#[derive(Debug, Clone)]
pub struct WeatherFile {
    /// Its path as written.
    pub path: String,
    /// What it holds; none until whoever reads files has read it.
    pub text: Option<Arc<str>>,
    /// Where its path stands in the shop file.
    pub at: Span,
}

/// How the room is heated.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Heating {
    /// Not at all.
    None,
    /// Kept from freezing.
    FrostGuard,
    /// Only while somebody works.
    WhileWorking,
    /// All winter.
    Steady,
}

pub(crate) const HEATINGS: &[(&str, Heating)] =
    &[("none", Heating::None), ("frost guard", Heating::FrostGuard), ("while working", Heating::WhileWorking), ("steady", Heating::Steady)];

impl Heating {
    /// The word in the file.
    #[must_use]
    pub fn word(self) -> &'static str {
        HEATINGS.iter().find(|(_, heating)| *heating == self).map_or("none", |(word, _)| word)
    }

    /// The coldest air, in kelvin, at which work starts in a room heated so; *common practice*.
    fn coldest(self) -> f64 {
        match self {
            Self::None => 0.0,
            Self::FrostGuard => 278.15,
            Self::WhileWorking => 283.15,
            Self::Steady => 289.15,
        }
    }
}

/// Nobody works in less air.
const LEAST_VOLUME_M3: f64 = 2.0;

impl Room {
    /// The most changes of air: as said, or the airy end of what is supposed, for the damp that comes in.
    #[must_use]
    pub fn most_air_changes(&self) -> Frequency {
        self.air_changes * (self.air_changes / self.least_air_changes).value
    }

    /// Reads `[room]`; what is not said is supposed and listed.
    pub(crate) fn read(section: Option<Section<'_>>, reference: &Reference, assumed: &mut Assumptions, problems: &mut Problems) -> Self {
        let mut section = section.unwrap_or_else(|| Section::empty(0..0));
        let at = section.at.clone();
        let climate = climate(&mut section, reference, assumed, problems);
        let heating = section.choice("heating", HEATINGS, problems).map_or_else(
            || {
                assumed.add("room", "heating", Heating::None.word(), "common-practice");
                Heating::None
            },
            |said| said.value,
        );
        let coldest = Temperature::from_base(climate.coldest.base().max(heating.coldest()));
        let hottest = Temperature::from_base(climate.hottest.base().max(coldest.base()));
        let coldest = quantity(&mut section, "coldest", coldest, climate.source.as_str(), assumed, problems);
        let hottest = quantity(&mut section, "hottest", hottest, climate.source.as_str(), assumed, problems);
        let backwards = coldest > hottest;
        if backwards {
            problems.add(
                at,
                format!(
                    "the room's coldest air, {}, is warmer than its hottest, {}",
                    show(coldest, assumed.units),
                    show(hottest, assumed.units)
                ),
                "Exchange `coldest` and `hottest`, or mend the one that is wrong.",
            );
        }
        let usual = if backwards { coldest } else { Temperature::from_base(climate.typical.base().clamp(coldest.base(), hottest.base())) };
        let weather = section.text("weather", problems).map(|said| WeatherFile { path: said.value, text: None, at: said.at });
        let volume = quantity(&mut section, "volume", Volume::from_base(40.0), "common-practice", assumed, problems);
        let said = section.has("air_changes");
        let air_changes = quantity(&mut section, "air_changes", Frequency::from_base(0.5 / 3600.0), "common-practice", assumed, problems);
        let room = Self {
            climate: climate.key.clone(),
            weather,
            volume,
            air_changes,
            least_air_changes: if said { air_changes } else { air_changes / AIR_CHANGES_WITHIN },
            heating,
            coldest,
            usual: quantity(&mut section, "usual", usual, climate.source.as_str(), assumed, problems),
            hottest,
            humidity: quantity(&mut section, "humidity", climate.humidity, climate.source.as_str(), assumed, problems),
            attached_to_house: flag(&mut section, "attached_to_house", assumed, problems),
            low_odour: flag(&mut section, "low_odour", assumed, problems),
            salt: flag(&mut section, "salt", assumed, problems),
            flames: flag(&mut section, "flames", assumed, problems),
        };
        if room.volume.base() < LEAST_VOLUME_M3 {
            let what = format!("the room's volume is {}, less than a cupboard's", show(room.volume, assumed.units));
            problems.add(section.at.clone(), what, "Multiply its length, width and height: `volume = \"30 m3\"`.");
        }
        section.close(problems);
        room
    }
}

fn climate<'r>(section: &mut Section<'_>, reference: &'r Reference, assumed: &mut Assumptions, problems: &mut Problems) -> &'r Climate {
    let Some(said) = section.text("climate", problems) else {
        let climate = default_climate(reference);
        assumed.add("room", "climate", climate.key.clone(), climate.source.as_str());
        return climate;
    };
    reference.climate(&said.value).unwrap_or_else(|| {
        let mend = did_you_mean(&said.value, reference.climates.keys().map(String::as_str));
        problems.add(said.at, format!("`{}` is not a climate known here", said.value), mend);
        default_climate(reference)
    })
}

fn default_climate(reference: &Reference) -> &Climate {
    // A test of the data proves that there is at least one.
    reference.climates.first().map(|(_, climate)| climate).expect("the data hold a climate")
}

fn quantity<Q: Quantity>(
    section: &mut Section<'_>,
    key: &str,
    supposed: Q,
    source: &str,
    assumed: &mut Assumptions,
    problems: &mut Problems,
) -> Q {
    let written = section.has(key);
    match section.quantity(key, problems) {
        Some(said) => said.value,
        None => {
            if !written {
                assumed.add("room", key, show(supposed, assumed.units), source);
            }
            supposed
        }
    }
}

fn flag(section: &mut Section<'_>, key: &str, assumed: &mut Assumptions, problems: &mut Problems) -> bool {
    if !section.has(key) {
        assumed.add("room", key, "false", "common-practice");
    }
    section.flag(key, problems).is_some_and(|said| said.value)
}
