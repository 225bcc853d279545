//! Cutting: the fluid for a material and an operation, and the power the cut takes.

use std::fmt;

use serde::{Deserialize, Serialize};
use units::Pressure;

use crate::SourceKey;

/// A way of cutting.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Operation {
    /// Turning and boring.
    Turn,
    /// Milling.
    Mill,
    /// Drilling.
    Drill,
    /// Reaming.
    Ream,
    /// Tapping and threading with dies.
    Tap,
    /// Parting off and grooving.
    Part,
    /// Sawing.
    Saw,
    /// Grinding.
    Grind,
    /// Knurling.
    Knurl,
}

impl Operation {
    /// Every operation, in the order of the cutting table.
    pub const ALL: [Self; 9] =
        [Self::Turn, Self::Mill, Self::Drill, Self::Ream, Self::Tap, Self::Part, Self::Saw, Self::Grind, Self::Knurl];

    /// The word by which files and commands call it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Turn => "turn",
            Self::Mill => "mill",
            Self::Drill => "drill",
            Self::Ream => "ream",
            Self::Tap => "tap",
            Self::Part => "part",
            Self::Saw => "saw",
            Self::Grind => "grind",
            Self::Knurl => "knurl",
        }
    }
}

impl fmt::Display for Operation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

/// Classes of cutting fluid for one material and one operation, the best first.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cut {
    /// Key of a material or of a group of materials.
    pub material: String,
    /// The operation.
    pub operation: Operation,
    /// Classes, the best first; empty where only an expert should do it.
    pub ranked: Vec<String>,
    /// Why this order.
    pub why: String,
    /// Where this comes from.
    pub source: SourceKey,
}

/// Energy a cut takes: unit power.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct CuttingPower {
    /// Key of a material.
    pub material: String,
    /// Low, likely and high energy for each volume cut away with a sharp tool at 0.30 mm feed, J/mm³.
    pub joules_per_mm3: [f64; 3],
    /// Which hardness or state the ends stand for.
    pub state: String,
    /// Where this comes from.
    pub source: SourceKey,
}

/// Material factor of the drilling thrust and torque formula.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct DrillFactor {
    /// Key of a material.
    pub material: String,
    /// The factor K_d, the same number in inch and metric form.
    pub factor: f64,
    /// The factor for the thrust, where it is another than that for the torque.
    pub thrust_factor: Option<f64>,
    /// Which state it stands for.
    pub state: String,
    /// Where this comes from.
    pub source: SourceKey,
}

/// Specific cutting force in tapping.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TapPressure {
    /// Key of a material.
    pub material: String,
    /// The specific cutting force k_c.
    #[serde(deserialize_with = "units::text::quantity")]
    pub force: Pressure,
    /// Where this comes from.
    pub source: SourceKey,
}

/// What a fluid does to the torque of tapping.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TapFluid {
    /// The class of fluid.
    pub class: String,
    /// Low, likely and high multiplier of the torque.
    pub factor: [f64; 3],
    /// Where this comes from.
    pub source: SourceKey,
}
