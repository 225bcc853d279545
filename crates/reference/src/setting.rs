//! Currencies, climates, and the weights by which needs are ranked.

use serde::Deserialize;
use units::{Ratio, Temperature};

use crate::SourceKey;

/// A currency and its rough value.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Currency {
    /// ISO 4217 code.
    pub code: String,
    /// Sign written with amounts.
    pub symbol: String,
    /// Name as people say it.
    pub name: String,
    /// How many buy one US dollar.
    pub units_per_usd: f64,
    /// The year of that rate.
    pub year: u16,
    /// Where this comes from.
    pub source: SourceKey,
}

/// The air changes of a room are known within this factor: from the still end, that much less than supposed, to the airy one, that much more.
/// *Common practice, no source.*
pub const AIR_CHANGES_WITHIN: f64 = 2.0;

/// Temperatures and damp of a shop, by a name.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Climate {
    /// Short name, such as `mild-maritime`.
    pub key: String,
    /// Name as people say it.
    pub name: String,
    /// One sentence: which shops are meant.
    pub about: String,
    /// Coldest in which work starts.
    #[serde(deserialize_with = "units::text::quantity")]
    pub coldest: Temperature,
    /// What most working hours have.
    #[serde(deserialize_with = "units::text::quantity")]
    pub typical: Temperature,
    /// Hottest working hour.
    #[serde(deserialize_with = "units::text::quantity")]
    pub hottest: Temperature,
    /// Relative humidity of the air, yearly mean.
    #[serde(deserialize_with = "units::text::quantity")]
    pub humidity: Ratio,
    /// Mean temperature outdoors of each month, °C, January first.
    pub mean_by_month: [f64; 12],
    /// From the night's low to the day's high outdoors, K.
    pub swing_by_month: [f64; 12],
    /// Mean relative humidity outdoors, %.
    pub humidity_by_month: [f64; 12],
    /// Where this comes from.
    pub source: SourceKey,
}

impl Climate {
    /// The same climate south of the equator: its months come half a year later.
    #[must_use]
    pub fn south(mut self) -> Self {
        for months in [&mut self.mean_by_month, &mut self.swing_by_month, &mut self.humidity_by_month] {
            months.rotate_left(6);
        }
        self
    }
}

/// One row of the weights: a consequence or a frequency.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Weight {
    /// Short name, such as `stops-or-harms` or `weekly`.
    pub key: String,
    /// Name as people say it.
    pub name: String,
    /// The number a need's weight is multiplied by.
    pub weight: f64,
    /// Why this number.
    pub why: String,
    /// Times a year, for a frequency.
    #[serde(rename = "times-a-year")]
    pub times_a_year: Option<f64>,
    /// Where this comes from.
    pub source: SourceKey,
}
