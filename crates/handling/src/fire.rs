//! What stands there that burns, how much of it may, and what a spill does.

use formulas::flammability::{Drying, SAFE_SHARE, drying, flammable_category, liquid_to_limit, nfpa_class};
use formulas::{FormulaError, Silent};
use reference::{Fluid, Reference, Trait};
use units::{Quantity, System, Temperature, Volume, show};

use crate::air::molar_mass;

/// How a fluid burns.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Burns {
    /// Flash point.
    pub flash: Temperature,
    /// Category of the UN GHS, 1 to 4.
    pub category: Option<u8>,
    /// Class of NFPA 30.
    pub class: &'static str,
}

/// How a fluid burns; none where it has no flash point.
#[must_use]
pub fn burns(fluid: &Fluid, reference: &Reference) -> Option<Burns> {
    let flash = fluid.flash.as_ref()?.value;
    let lowest =
        fluid.contents.iter().filter_map(|content| reference.substance(&content.substance)?.boiling.as_ref().map(|known| known.value));
    let boils = lowest.min_by(|one, other| one.base().total_cmp(&other.base()));
    Some(Burns { flash, category: flammable_category(flash, boils), class: nfpa_class(flash, boils) })
}

/// Flammable liquid of categories 1 to 3 among what stands there, and spray cans.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// Liquids that flash below 60 °C.
    pub liquids: Volume,
    /// Spray cans, whatever is in them.
    pub cans: usize,
}

/// What of a fluid stands in a place: how many pots of it, and how much in all of them.
pub type Stock<'r> = (&'r Fluid, usize, Volume);

/// Whether a fluid counts towards what may stand there: a spray can, or a liquid that flashes below 60 °C.
#[must_use]
pub fn counts(fluid: &Fluid, reference: &Reference) -> bool {
    is_spray(fluid) || burns(fluid, reference).is_some_and(|burns| burns.category.is_some_and(|category| category <= 3))
}

fn is_spray(fluid: &Fluid) -> bool {
    fluid.traits.contains(&Trait::Aerosol)
}

/// Adds up what stands there.
#[must_use]
pub fn standing(stock: &[Stock<'_>], reference: &Reference) -> Standing {
    let counted = || stock.iter().filter(|(fluid, ..)| counts(fluid, reference));
    Standing {
        liquids: counted().filter(|(fluid, ..)| !is_spray(fluid)).map(|(_, _, amount)| *amount).sum(),
        cans: counted().filter(|(fluid, ..)| is_spray(fluid)).map(|(_, pots, _)| pots).sum(),
    }
}

impl Standing {
    /// In words: `13 spray cans and 4 L of flammable liquid`.
    #[must_use]
    pub fn words(&self, units: System) -> String {
        let cans = match self.cans {
            1 => "1 spray can".to_owned(),
            cans => format!("{cans} spray cans"),
        };
        let liquids = format!("{} of flammable liquid", show(self.liquids, units));
        match (self.cans > 0, self.liquids.base() > 0.0) {
            (true, true) => format!("{cans} and {liquids}"),
            (true, false) => cans,
            (false, _) => liquids,
        }
    }
}

/// What to have ready before a metal is cut that itself burns, and what never to put on it; `ground` where it comes off as dust. None for
/// metals whose chips do not burn. *Common practice*; the fire service and local code come first.
#[must_use]
pub fn metal_fire(material: &str, ground: bool) -> Option<&'static str> {
    match (material, ground) {
        ("magnesium", _) => Some(
            "Chips and dust of magnesium burn, and water feeds them: class D powder or dry sand within reach before the first cut; never \
             water, carbon dioxide or ABC powder on burning metal. Sharp tool, thick chips, swept up dry and often into a lidded metal can of \
             their own. If more than a handful burns: out, and call the fire service.",
        ),
        ("titanium", _) => Some(
            "Chips of titanium burn, fine ones from a spark: class D powder or dry sand within reach; never water, carbon dioxide or ABC \
             powder on burning metal. Sharp tool, no rubbing, chips swept up often into a lidded metal can of their own; no chlorinated \
             fluid near it.",
        ),
        ("aluminium", true) => Some(
            "Dust of aluminium burns and explodes: never on a wheel, in a hood or in a heap that has seen steel, whose rust and sparks set it \
             off (thermite). A little at a time, and into a lidded metal can of its own without water; dry sand or class D powder on a fire, never water, \
             carbon dioxide or ABC powder.",
        ),
        _ => None,
    }
}

/// How much of a fluid brings a closed space to a tenth of its lower limit; none where no limit of it is known.
///
/// # Errors
/// [`FormulaError`] for a space of nothing.
pub fn spill(fluid: &Fluid, space: Volume, at: Temperature, reference: &Reference) -> Result<Option<Volume>, FormulaError> {
    let parts = fluid.contents.iter().filter_map(|content| reference.substance(&content.substance));
    let leanest = parts.filter_map(|part| Some((part, part.lower_flammable.as_ref()?.value))).min_by(|a, b| a.1.total_cmp(&b.1));
    let Some((substance, lower)) = leanest else { return Ok(None) };
    liquid_to_limit(&mut Silent, space, lower * 100.0, SAFE_SHARE, molar_mass(substance), fluid.density.value, at).map(Some)
}

/// What a rag soaked in it does by itself.
#[must_use]
pub fn rag(fluid: &Fluid, reference: &Reference) -> Drying {
    let parts = fluid.contents.iter().filter_map(|content| reference.substance(&content.substance)?.iodine_value.as_ref());
    let by_value = parts.map(|known| drying(known.value)).max().unwrap_or(Drying::Not);
    if fluid.traits.contains(&Trait::DryingOil) { Drying::Dries } else { by_value }
}
