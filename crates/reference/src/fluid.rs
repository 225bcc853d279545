//! A fluid: a generic class of product, never a brand.

mod properties;
mod sourced;

use std::collections::BTreeSet;

use serde::Deserialize;
use units::{MassDensity, Pressure, Range, Temperature};

pub use properties::{Barred, Bond, Chemistry, Content, Grease, Hazards, Oil, Pack, Shelf};
pub use sourced::Sourced;
pub(crate) use sourced::{optional_number, optional_ratio, range_of_numbers, ratio, ratio_or_none};

/// One generic product that could stand on the shelf.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Fluid {
    /// Short name used in files and commands, such as `slideway-68`.
    pub key: String,
    /// Name as people say it, such as "slideway oil, ISO VG 68".
    pub name: String,
    /// One sentence: what it is for.
    pub about: String,
    /// How it behaves when put on: runs, stays, or dries.
    pub form: Form,
    /// The classes it belongs to; the first is its main one. Each stands in `classes.toml`.
    pub classes: Vec<String>,
    /// What is in it that a place may want or must not have.
    #[serde(default)]
    pub traits: BTreeSet<Trait>,
    /// Set when the program must never recommend it; says why.
    pub barred: Option<Barred>,
    /// True for what every shop has for nothing (cutting dry, hot water).
    #[serde(default)]
    pub always_there: bool,
    /// Viscosity and temperatures of an oil, or of a grease's base oil.
    pub oil: Option<Oil>,
    /// Set for greases and pastes.
    pub grease: Option<Grease>,
    /// Set for adhesives, threadlockers and sealants.
    pub bond: Option<Bond>,
    /// Hottest service of a dry film, finish, sealant or paste that has neither `oil` nor `bond`.
    pub hottest: Option<Sourced<Temperature>>,
    /// Closed-cup flash point; none where the product has none.
    pub flash: Option<Sourced<Temperature>>,
    /// Vapour pressure at 20 °C of the volatile part.
    pub vapour_pressure: Option<Sourced<Pressure>>,
    /// Density at 15–20 °C.
    pub density: Sourced<MassDensity>,
    /// What it is made of, as far as a label, the air or the fire would ask; the rest of it is water or does nothing.
    #[serde(default)]
    pub contents: Vec<Content>,
    /// Materials it harms or needs care with.
    pub chemistry: Chemistry,
    /// Hazard statements and how it is stored.
    pub hazards: Hazards,
    /// What it is sold in. Empty only for `always-there` and barred fluids.
    #[serde(default)]
    pub packs: Vec<Pack>,
    /// How long it keeps.
    pub shelf: Shelf,
    /// Share of the concentrate in what is used, for products mixed with water (likely value and ends).
    #[serde(default, deserialize_with = "sourced::optional_share")]
    pub dilution: Option<Sourced<Range<f64>>>,
}

/// How a fluid behaves once it is on the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Form {
    /// Runs: needs feeding or renewing.
    Oil,
    /// Stays: oil held in a thickener.
    Grease,
    /// Leaves a dry film, wax or powder.
    Dry,
    /// Any other liquid: solvent, cleaner, acid, thin adhesive.
    Liquid,
    /// Any other paste or gel.
    Paste,
    /// Any other solid: salt, tape, sheet.
    Solid,
}

/// Something in a fluid that matters to a demand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Trait {
    /// Keeps steel from rusting.
    RustInhibited,
    /// Keeps itself from ageing.
    OxidationInhibited,
    /// Antiwear additives for mixed films.
    Antiwear,
    /// Extreme-pressure additives that leave copper alloys alone (ASTM D130 1–2).
    InactiveEp,
    /// Active sulphur (ASTM D130 3–4).
    ActiveSulphur,
    /// Extreme-pressure package of hypoid strength (API GL-5).
    HypoidEp,
    /// Fat or ester that clings and slips.
    Fatty,
    /// Polymer that keeps it from dripping and flinging.
    Tackifier,
    /// Keeps dirt afloat.
    Detergent,
    /// Takes up water.
    Emulsifier,
    /// Thickened by polymer: its viscosity falls under shear and ASTM D341 does not hold.
    PolymerThickened,
    /// Graphite.
    Graphite,
    /// Molybdenum disulphide.
    Molybdenum,
    /// PTFE.
    Ptfe,
    /// Zinc, as an additive or a salt.
    Zinc,
    /// Copper, as a powder or a salt.
    Copper,
    /// Organic chlorine.
    Chlorinated,
    /// Silicone: spoils painting and bonding nearby.
    Silicone,
    /// Dries in air by oxidation; rags soaked in it heat themselves.
    DryingOil,
    /// Vegetable oil or fat that gums as it ages.
    Vegetable,
    /// Solvent that evaporates.
    Solvent,
    /// Mixed with water or made of it.
    WaterMix,
    /// Creeps under water and drives it off.
    WaterDisplacing,
    /// Sprayed from a pressurised can.
    Aerosol,
    /// Smells little.
    LowOdour,
    /// Smells strongly.
    StrongOdour,
    /// Contains or is used with free alkali, pH above 11.
    Caustic,
    /// Acid.
    Acid,
    /// Cures without air (anaerobic).
    Anaerobic,
    /// May make the skin allergic.
    Sensitiser,
    /// Ammonia or amine that cracks stressed brass.
    Ammonia,
    /// Cadmium.
    Cadmium,
}
