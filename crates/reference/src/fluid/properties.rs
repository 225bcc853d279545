//! The parts of a fluid's description: what its data sheet would say.

use serde::Deserialize;
use units::{Amount, KinematicViscosity, Length, Pressure, Range, Temperature, Time, Torque};

use crate::SourceKey;

/// Why a fluid is never recommended.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Barred {
    /// The reason, as shown to people.
    pub why: String,
    /// Where the reason comes from.
    pub source: SourceKey,
}

/// Viscosity and temperature limits of an oil or of a base oil.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Oil {
    /// Kinematic viscosity at 40 °C.
    #[serde(deserialize_with = "units::text::quantity")]
    pub viscosity_40: KinematicViscosity,
    /// Kinematic viscosity at 100 °C; none where only `index` is known.
    #[serde(default, deserialize_with = "units::text::optional")]
    pub viscosity_100: Option<KinematicViscosity>,
    /// Viscosity index, ASTM D2270.
    pub index: Option<f64>,
    /// Pour point, ASTM D97.
    #[serde(deserialize_with = "units::text::quantity")]
    pub pour: Temperature,
    /// Where these come from.
    pub source: SourceKey,
}

/// Consistency and limits of a grease or lubricating paste.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Grease {
    /// Consistency number, ASTM D217: -2 for 000, -1 for 00, 0 … 6.
    pub consistency: i8,
    /// What holds the oil; the key of a row in `thickeners.toml`.
    pub thickener: String,
    /// Coldest use.
    #[serde(deserialize_with = "units::text::quantity")]
    pub coldest: Temperature,
    /// Hottest steady use.
    #[serde(deserialize_with = "units::text::quantity")]
    pub hottest: Temperature,
    /// Where these come from.
    pub source: SourceKey,
}

/// What an adhesive, threadlocker or sealant gives.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Bond {
    /// Largest gap it bridges (diametral for cylindrical joints).
    #[serde(default, deserialize_with = "units::text::optional")]
    pub gap: Option<Length>,
    /// Design shear strength (ISO 10123 pin and collar, or lap ISO 4587).
    #[serde(default, deserialize_with = "units::text::optional")]
    pub strength: Option<Pressure>,
    /// Central break-loose torque on M10, N·m (ISO 10964), for threadlockers.
    #[serde(default, deserialize_with = "units::text::optional")]
    pub breakloose_m10: Option<Torque>,
    /// Hottest service.
    #[serde(deserialize_with = "units::text::quantity")]
    pub hottest: Temperature,
    /// Time until the part may be handled at 22 °C.
    #[serde(deserialize_with = "units::text::quantity")]
    pub handle_after: Time,
    /// Time until the part may be loaded at 22 °C.
    #[serde(deserialize_with = "units::text::quantity")]
    pub load_after: Time,
    /// Where these come from.
    pub source: SourceKey,
}

/// A substance in a fluid.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Content {
    /// The key of a row under `substances/`.
    pub substance: String,
    /// Its mass share, low, likely and high, between 0 and 1.
    #[serde(deserialize_with = "super::sourced::share")]
    pub share: Range<f64>,
    /// Where this comes from.
    pub source: SourceKey,
}

/// Materials a fluid harms, by key of `materials.toml` (a material or its group).
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Chemistry {
    /// Short contact only, or rinse after: will do with care.
    #[serde(default)]
    pub care: Vec<String>,
    /// Damages the material.
    #[serde(default)]
    pub attacks: Vec<String>,
    /// Where this comes from.
    pub source: SourceKey,
}

/// Hazard classification, UN GHS.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Hazards {
    /// Hazard statement codes: `H225` …
    #[serde(default)]
    pub statements: Vec<String>,
    /// Storage group; the key of a row in `storage.toml`.
    pub storage: String,
    /// Where this comes from.
    pub source: SourceKey,
}

/// One size a fluid is sold in.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pack {
    /// Content.
    #[serde(deserialize_with = "units::text::quantity")]
    pub size: Amount,
    /// Indicative price.
    pub price: f64,
    /// ISO 4217 code.
    pub currency: String,
    /// The year the price was looked at.
    pub year: u16,
    /// Where it comes from.
    pub source: SourceKey,
}

/// How long a fluid keeps.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shelf {
    /// Unopened.
    #[serde(deserialize_with = "units::text::quantity")]
    pub closed: Time,
    /// Once opened.
    #[serde(deserialize_with = "units::text::quantity")]
    pub opened: Time,
    /// Where these come from.
    pub source: SourceKey,
}
