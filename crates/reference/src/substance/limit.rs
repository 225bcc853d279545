//! Limits of what may be in the air people breathe.

use std::str::FromStr;

use serde::{Deserialize, Deserializer, Serialize};

use crate::SourceKey;
use crate::fluid::Sourced;

/// Whose rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize, Serialize)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Regime {
    /// Recommended exposure limits of NIOSH, United States.
    NioshRel,
    /// Permissible exposure limits of OSHA, United States.
    OshaPel,
    /// The EPA of the United States, under the law on toxic substances.
    UsEpa,
    /// Ontario, Canada.
    Ontario,
    /// Regulation (EC) No 1272/2008, European Union.
    Clp,
    /// What suppliers recommend where no authority has set a limit.
    Supplier,
}

/// Over which time a limit is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum LimitKind {
    /// Mean over a working day: 8 h, for NIOSH up to 10 h.
    #[serde(rename = "mean-8h")]
    Mean8h,
    /// Mean over any 15 minutes.
    #[serde(rename = "mean-15min")]
    Mean15min,
    /// Never to be exceeded.
    Ceiling,
}

/// How much of a substance in air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Concentration {
    /// Volume in a million volumes.
    Ppm(f64),
    /// Milligrams in a cubic metre, at 25 °C and 101.3 kPa.
    MgPerM3(f64),
}

/// Molar volume at 25 °C and 101.3 kPa, at which limits are counted, L/mol.
const LITRES_PER_MOL: f64 = 24.45;

impl Concentration {
    /// In ppm at 25 °C and 101.3 kPa, for a substance of this molar mass in g/mol.
    #[must_use]
    pub fn ppm(self, molar_mass: f64) -> f64 {
        match self {
            Self::Ppm(ppm) => ppm,
            Self::MgPerM3(mg) => mg * LITRES_PER_MOL / molar_mass,
        }
    }

    /// In mg/m³ at 25 °C and 101.3 kPa, for a substance of this molar mass in g/mol.
    #[must_use]
    pub fn mg_per_m3(self, molar_mass: f64) -> f64 {
        match self {
            Self::Ppm(ppm) => ppm * molar_mass / LITRES_PER_MOL,
            Self::MgPerM3(mg) => mg,
        }
    }
}

impl FromStr for Concentration {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let wrong = || format!("`{text}` is no concentration in air; write `250 ppm` or `5 mg/m3`");
        let (number, unit) = text.split_once(' ').ok_or_else(wrong)?;
        let number: f64 = number.parse().map_err(|_| wrong())?;
        match unit {
            "ppm" if number.is_finite() => Ok(Self::Ppm(number)),
            "mg/m3" if number.is_finite() => Ok(Self::MgPerM3(number)),
            _ => Err(wrong()),
        }
    }
}

impl<'de> Deserialize<'de> for Concentration {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(serde::de::Error::custom)
    }
}

impl<'de> Deserialize<'de> for Sourced<Concentration> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        #[derive(Deserialize)]
        #[serde(deny_unknown_fields)]
        struct Raw {
            value: Concentration,
            source: SourceKey,
        }
        Raw::deserialize(deserializer).map(|raw| Self { value: raw.value, source: raw.source })
    }
}

/// One limit of one regime.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Limit {
    /// Whose rule.
    pub regime: Regime,
    /// Over which time.
    pub kind: LimitKind,
    /// How much.
    pub at: Concentration,
    /// True if it also goes in through the skin, so that the air is not the whole of it.
    #[serde(default)]
    pub skin: bool,
    /// Where it comes from.
    pub source: SourceKey,
}

/// A regime that names no safe limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LowestFeasible {
    /// Whose rule.
    pub regime: Regime,
    /// Where it comes from.
    pub source: SourceKey,
}
