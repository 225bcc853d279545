//! Cleaning and finishing.

use serde::Deserialize;
use units::{Length, Range, Time};

use crate::SourceKey;

/// What takes off a soil.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cleaning {
    /// Short name of the soil, such as `grease`.
    pub soil: String,
    /// Name as people say it.
    pub name: String,
    /// Classes used one after the other, the first choice.
    pub first: Vec<String>,
    /// Classes used one after the other, the second choice.
    #[serde(default)]
    pub second: Vec<String>,
    /// Why, and what to watch.
    pub why: String,
    /// Where this comes from.
    pub source: SourceKey,
}

/// What one class of finish leaves on the metal.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Finish {
    /// The class of fluid.
    pub class: String,
    /// Thickness of the dry film on one face.
    #[serde(deserialize_with = "units::text::quantity")]
    pub thickness: Range<Length>,
    /// Where the thickness comes from.
    pub source: SourceKey,
    /// Hours in salt spray, ISO 9227; ranks finishes and predicts no life.
    pub salt_spray: Option<SaltSpray>,
    /// Millilitres for a square metre, low and high.
    pub coverage_ml_per_m2: Option<[f64; 2]>,
    /// Wet-hour dose after which it is put on again; a starting value for the user to calibrate.
    pub dose_budget: Option<f64>,
    /// Calendar life where damp is not what ends it.
    #[serde(default, deserialize_with = "units::text::optional")]
    pub renew_after: Option<Time>,
    /// False if it must not be done in a home shop.
    pub home: bool,
    /// What to know before choosing it.
    pub note: String,
}

/// Hours in a salt-spray cabinet.
#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SaltSpray {
    /// The hours.
    pub hours: f64,
    /// Where this comes from.
    pub source: SourceKey,
}

/// One rule for choosing a finish. The first that applies decides.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FinishRule {
    /// Short name of the case, such as `sliding-or-measuring-face`.
    pub key: String,
    /// The case, as people say it.
    pub when: String,
    /// Classes, the best first.
    pub ranked: Vec<String>,
    /// Classes that would do harm here.
    #[serde(default)]
    pub never: Vec<String>,
    /// Why.
    pub why: String,
    /// Where this comes from.
    pub source: SourceKey,
}
