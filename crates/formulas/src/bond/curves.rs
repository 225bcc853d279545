//! Generic classes of retaining compound and the curves that lower their strength.
//!
//! Every figure is typical or generic, *from memory*, and set low; a data sheet overrides it.

use units::{Length, Pressure};
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;

/// The widest gap that any compound bridges with a strength to count on, mm.
pub(super) const WIDEST_MM: f64 = 0.25;

/// A curve through points, straight between them and level beyond.
fn along(points: &[(f64, f64)], x: f64) -> f64 {
    let (mut before_x, mut before_y) = points.first().copied().unwrap_or((0.0, 1.0));
    for (next_x, next_y) in points.iter().copied() {
        if x <= next_x {
            let span = next_x - before_x;
            let share = if span > 0.0 { (x - before_x).max(0.0) / span } else { 1.0 };
            return before_y + share * (next_y - before_y);
        }
        (before_x, before_y) = (next_x, next_y);
    }
    before_y
}

/// Factor of a gap in mm.
pub(super) fn gap(gap_mm: f64) -> f64 {
    along(&[(0.05, 1.0), (0.10, 0.85), (0.15, 0.70), (0.20, 0.55), (0.25, 0.45)], gap_mm)
}

/// Factor of a mean roughness in µm: polished faces and rough ones hold less.
pub(super) fn roughness(ra_um: f64) -> f64 {
    if ra_um > 3.2 { 0.8 } else { along(&[(0.4, 0.8), (0.8, 1.0)], ra_um) }
}

/// Factor of length over diameter; beyond two diameters the length itself counts no more.
pub(super) fn length(over_diameter: f64) -> f64 {
    along(&[(1.0, 1.0), (1.5, 0.85), (2.0, 0.75)], over_diameter)
}

/// How a compound bears heat.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Heat {
    /// Up to 150 °C.
    Standard,
    /// Up to 200 °C.
    HighTemperature,
}

impl Heat {
    /// Lowest and highest temperature, °C.
    #[must_use]
    pub const fn limits(self) -> (f64, f64) {
        match self {
            Self::Standard => (-55.0, 150.0),
            Self::HighTemperature => (-55.0, 200.0),
        }
    }

    /// Factor at a temperature in °C.
    #[must_use]
    pub fn factor(self, celsius: f64) -> f64 {
        let points: &[(f64, f64)] = match self {
            Self::Standard => &[(22.0, 1.0), (60.0, 0.9), (80.0, 0.8), (100.0, 0.7), (120.0, 0.55), (150.0, 0.35)],
            Self::HighTemperature => &[(22.0, 1.0), (100.0, 0.85), (150.0, 0.65), (200.0, 0.40)],
        };
        along(points, celsius)
    }
}

/// A metal as a retaining compound sees it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum BondMetal {
    /// Unalloyed steel.
    Steel,
    /// Alloy steel.
    AlloySteel,
    /// Grey iron.
    GreyIron,
    /// Stainless steel.
    Stainless,
    /// Brass, bronze or copper: cures fastest, yet holds less.
    CopperAlloy,
    /// Aluminium.
    Aluminium,
    /// Zinc plate.
    ZincPlate,
}

impl BondMetal {
    /// The metal behind the word for a group of metals that hold a compound alike, such as `copper-alloys`.
    #[must_use]
    pub fn of_group(word: &str) -> Option<Self> {
        Some(match word {
            "steels" => Self::Steel,
            "alloy-and-tool-steels" => Self::AlloySteel,
            "cast-iron" => Self::GreyIron,
            "stainless" => Self::Stainless,
            "copper-alloys" => Self::CopperAlloy,
            "aluminium" => Self::Aluminium,
            "zinc-plate" => Self::ZincPlate,
            _ => return None,
        })
    }

    /// Every metal.
    pub const ALL: [Self; 7] =
        [Self::Steel, Self::AlloySteel, Self::GreyIron, Self::Stainless, Self::CopperAlloy, Self::Aluminium, Self::ZincPlate];

    /// Strength against that on unalloyed steel.
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::Steel => 1.0,
            Self::AlloySteel => 0.9,
            Self::GreyIron => 0.8,
            Self::Stainless => 0.5,
            Self::CopperAlloy => 0.4,
            Self::Aluminium | Self::ZincPlate => 0.3,
        }
    }

    /// Whether it starts the cure too slowly without an activator.
    #[must_use]
    pub const fn passive(self) -> bool {
        matches!(self, Self::Stainless | Self::Aluminium | Self::ZincPlate)
    }
}

/// How a joint is loaded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Loading {
    /// One way and steady.
    Steady,
    /// One way, coming and going.
    Pulsating,
    /// To and fro, or with shocks.
    Reversing,
}

impl Loading {
    /// What is left of the strength.
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::Steady => 1.0,
            Self::Pulsating => 0.5,
            Self::Reversing => 0.3,
        }
    }
}

/// A retaining compound.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Retainer {
    /// Shear strength on steel pins and collars, cured.
    pub strength: Pressure,
    /// The widest gap it bridges, on the diameter.
    pub widest_gap: Length,
    /// How it bears heat.
    pub heat: Heat,
}

/// The generic classes of retaining compound.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum RetainerKind {
    /// Low strength, made to come off.
    Removable,
    /// Thin, for close fits.
    LowViscosity,
    /// For ordinary slip fits.
    General,
    /// For hot joints.
    HighTemperature,
    /// A paste for wide gaps.
    GapFilling,
}

impl RetainerKind {
    /// The typical compound of the class.
    #[must_use]
    pub fn retainer(self) -> Retainer {
        let (strength, widest, heat) = match self {
            Self::Removable => (5.0, 0.15, Heat::Standard),
            Self::LowViscosity => (20.0, 0.10, Heat::Standard),
            Self::General => (20.0, 0.15, Heat::Standard),
            Self::HighTemperature => (15.0, 0.15, Heat::HighTemperature),
            Self::GapFilling => (12.0, 0.25, Heat::Standard),
        };
        Retainer { strength: Pressure::new::<megapascal>(strength), widest_gap: Length::new::<millimeter>(widest), heat }
    }
}
