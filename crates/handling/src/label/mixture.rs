//! What is to be labelled: substances by their mass shares, and what was measured of the whole.

use reference::{Fluid, Form, Reference, Substance, Trait};
use units::{KinematicViscosity, Range, Temperature};

/// A substance in a mixture.
#[derive(Debug, Clone, Copy)]
pub struct Part<'a> {
    /// The substance.
    pub substance: &'a Substance,
    /// Its share of the mass, 0 to 1. The high end is what a label goes by.
    pub share: Range<f64>,
}

impl Part<'_> {
    pub(super) fn percent(&self) -> f64 {
        self.share.high * 100.0
    }
}

/// What a mixture is like.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Consistency {
    /// It runs, or is a paste.
    Liquid,
    /// Powder, salt, tape.
    Solid,
    /// A sealed can that sprays.
    SprayCan,
}

/// A mixture. What the parts leave of the whole is water, or does nothing.
#[derive(Debug, Clone)]
pub struct Mixture<'a> {
    /// What it is made of.
    pub parts: Vec<Part<'a>>,
    /// Mass share of what nothing is known about, 0 to 1.
    pub unknown: f64,
    /// What it is like.
    pub consistency: Consistency,
    /// Flash point, if it was measured; otherwise it is worked from the parts.
    pub flash: Option<Temperature>,
    /// Where it begins to boil.
    pub boiling: Option<Temperature>,
    /// Viscosity at 40 °C; what is not known counts as thin.
    pub viscosity_40: Option<KinematicViscosity>,
    /// pH.
    pub ph: Option<f64>,
    /// Set only when its acid or alkali reserve has been measured and found too small to burn.
    pub low_reserve: bool,
}

impl<'a> Mixture<'a> {
    /// A liquid of these parts, of which nothing else is known.
    #[must_use]
    pub const fn new(parts: Vec<Part<'a>>) -> Self {
        Self {
            parts,
            unknown: 0.0,
            consistency: Consistency::Liquid,
            flash: None,
            boiling: None,
            viscosity_40: None,
            ph: None,
            low_reserve: false,
        }
    }

    /// A product as it is sold. Contents that are no row of the tables are left out; the tests of the data see to it that there are none.
    #[must_use]
    pub fn of_fluid(fluid: &Fluid, reference: &'a Reference) -> Self {
        let part = |content: &reference::Content| Some(Part { substance: reference.substance(&content.substance)?, share: content.share });
        let consistency = match fluid.form {
            _ if fluid.traits.contains(&Trait::Aerosol) => Consistency::SprayCan,
            Form::Solid => Consistency::Solid,
            _ => Consistency::Liquid,
        };
        Self {
            consistency,
            flash: fluid.flash.map(|flash| flash.value),
            viscosity_40: fluid.oil.as_ref().map(|oil| oil.viscosity_40),
            ..Self::new(fluid.contents.iter().filter_map(part).collect())
        }
    }

    /// The same thinned with water, so that `share` of the mass is left of it. What was measured holds no longer.
    #[must_use]
    pub fn diluted(&self, share: f64) -> Self {
        let share = share.clamp(0.0, 1.0);
        let thinned = |part: &Part<'a>| Part { share: part.share.map(|s| s * share), ..*part };
        Self {
            unknown: self.unknown * share,
            low_reserve: false,
            ..Self::new(self.parts.iter().filter(|part| part.substance.key != "water").map(thinned).collect())
        }
    }
}
