//! How much of a fluid a year takes, and which pack is the cheapest way to it.

use reference::{Fluid, Reference};
use units::{Amount, Quantity, YEAR};

use crate::chart::Serving;
use crate::need::{Dose, Need};
use crate::plan::{Plan, Weighed};
use crate::verdict::Grade;

/// What a year takes of a fluid, counted at the needs it serves best: where it is right, or where it is all there is.
#[must_use]
pub fn yearly_use(fluid: &Fluid, needs: &[Need], grades: impl Fn(usize) -> Grade) -> Vec<(Amount, f64)> {
    let share = fluid.dilution.as_ref().map_or(1.0, |dilution| dilution.value.likely);
    needs
        .iter()
        .enumerate()
        .filter(|(place, need)| grades(*place) == Grade::Right && need.nothing.is_none())
        .filter_map(|(_, need)| {
            let ration = need.ration(fluid.form)?;
            Some((ration.dose.amount(), ration.every.times_a_year * share))
        })
        .collect()
}

/// What a year takes of one fluid at the places a plan puts it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct YearlyUse {
    /// The fluid, as a place in the plan's list.
    pub fluid: usize,
    /// The amount, between an honest low and high.
    pub amount: Dose,
}

/// What a year takes of a fluid at one place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlaceUse {
    /// The place, as one of the plan's needs.
    pub need: usize,
    /// What one use takes, mixed with water where it is.
    pub dose: Dose,
    /// Uses in a year.
    pub times_a_year: f64,
    /// What they take of the fluid as it is bought.
    pub year: Dose,
}

/// What a year takes of a fluid at each place that some servings put it.
fn place_uses(servings: &[Serving], fluids: &[Weighed<'_>], fluid: usize) -> impl Iterator<Item = PlaceUse> {
    let share = fluids[fluid].fluid.dilution.as_ref().map_or(1.0, |dilution| dilution.value.likely);
    servings.iter().filter(move |serving| serving.fluid == Some(fluid)).filter_map(move |serving| {
        let ration = serving.ration.as_ref()?;
        let times_a_year = ration.every.times_a_year;
        Some(PlaceUse { need: serving.need, dose: ration.dose, times_a_year, year: ration.dose.times(times_a_year * share) })
    })
}

/// What a year takes of each fluid a plan counts on, in the unit most of its places take it in.
pub(crate) fn yearly_uses(servings: &[Serving], fluids: &[Weighed<'_>], kept: &[usize]) -> Vec<YearlyUse> {
    let of = |fluid: usize| {
        let mut sums: Vec<Dose> = Vec::new();
        for PlaceUse { year, .. } in place_uses(servings, fluids, fluid) {
            match sums.iter_mut().find(|sum| sum.unit == year.unit) {
                Some(sum) => *sum = sum.plus(year),
                None => sums.push(year),
            }
        }
        sums.into_iter().max_by(|a, b| a.likely.total_cmp(&b.likely)).map(|amount| YearlyUse { fluid, amount })
    };
    kept.iter().copied().filter(|fluid| !fluids[*fluid].fluid.always_there).filter_map(of).collect()
}

impl<'a> Plan<'a> {
    /// What a year takes of a fluid at each place the plan puts it; nothing for a fluid that is not known.
    #[must_use]
    pub fn place_uses(&self, fluid: &str) -> Vec<PlaceUse> {
        let place = self.fluids.iter().position(|weighed| weighed.fluid.key == fluid);
        place.map_or_else(Vec::new, |place| place_uses(&self.servings, &self.fluids, place).collect())
    }

    /// The packs of a fluid with what each costs, were it put wherever it is right; nothing for a fluid that is not known.
    #[must_use]
    pub fn packs(&self, fluid: &str) -> Vec<Choice<'a>> {
        let Some(weighed) = self.fluids.iter().find(|weighed| weighed.fluid.key == fluid) else { return Vec::new() };
        let doses = yearly_use(weighed.fluid, &self.needs, |place| weighed.grades[place]);
        choices(weighed.fluid, &doses, &self.shop.currency, self.reference)
    }
}

/// One pack of a fluid, with what it costs a year.
#[derive(Debug, Clone, Copy)]
pub struct Choice<'r> {
    /// The pack.
    pub pack: &'r reference::fluid::Pack,
    /// Its price in the money asked for.
    pub price: f64,
    /// Price × max(use ÷ size, 1 ÷ shelf life): what it costs a year, counting what goes off.
    pub yearly_cost: f64,
    /// How much of it a year takes, in packs.
    pub packs_a_year: f64,
}

/// The packs of a fluid with what each costs, in the money asked for.
#[must_use]
pub fn choices<'r>(fluid: &'r Fluid, doses: &[(Amount, f64)], currency: &str, reference: &Reference) -> Vec<Choice<'r>> {
    let shelf_years = fluid.shelf.opened.base() / YEAR;
    let choice = |pack: &'r reference::fluid::Pack| {
        let price = converted(pack.price, &pack.currency, currency, reference)?;
        let packs_a_year: f64 = doses.iter().map(|(dose, times)| times * of_pack(*dose, pack.size, fluid)).sum();
        Some(Choice { pack, price, yearly_cost: price * packs_a_year.max(1.0 / shelf_years), packs_a_year })
    };
    fluid.packs.iter().filter_map(choice).collect()
}

/// The pack with the least yearly cost; the cheaper of equals, so that a beginner is not sent for a drum.
#[must_use]
pub fn best_pack<'r>(choices: &[Choice<'r>]) -> Option<Choice<'r>> {
    let by_cost = |a: &&Choice<'_>, b: &&Choice<'_>| a.yearly_cost.total_cmp(&b.yearly_cost).then(a.price.total_cmp(&b.price));
    choices.iter().min_by(by_cost).copied()
}

/// The cheapest pack that lasts a year, or the best where none does.
#[must_use]
pub fn cheapest_pack<'r>(choices: &[Choice<'r>]) -> Option<Choice<'r>> {
    let lasting = choices.iter().filter(|choice| choice.packs_a_year <= 1.0);
    lasting.min_by(|a, b| a.price.total_cmp(&b.price)).copied().or_else(|| best_pack(choices))
}

/// An amount of money in another currency, at the rough rates of the data.
#[must_use]
pub fn converted(price: f64, from: &str, to: &str, reference: &Reference) -> Option<f64> {
    if from == to {
        return Some(price);
    }
    Some(price / reference.currency(from)?.units_per_usd * reference.currency(to)?.units_per_usd)
}

/// What part of a pack a dose is; nothing where the two cannot be compared.
pub(crate) fn of_pack(dose: Amount, pack: Amount, fluid: &Fluid) -> f64 {
    let density = fluid.density.value;
    match (dose, pack) {
        (Amount::Length(dose), Amount::Length(pack)) => dose.base() / pack.base(),
        (Amount::Pieces(dose), Amount::Pieces(pack)) => dose / pack,
        _ => match (dose.in_mass(density), pack.in_mass(density)) {
            (Some(dose), Some(pack)) => dose.base() / pack.base(),
            _ => 0.0,
        },
    }
}
