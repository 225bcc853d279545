//! What the cupboard will run out of, and when: by use, by age, whichever comes first.

use formulas::stock::{Demand, SERVICE_OTHER, SERVICE_SAFETY, reorder_point};
use formulas::working::Recorder;
use formulas::{FormulaError, Notebook, Silent};
use jiff::SignedDuration;
use jiff::civil::Date;
use reference::Fluid;
use schemars::JsonSchema;
use serde::Serialize;
use shop::Pot;
use units::{Amount, Mass, Quantity, Ratio, System, Time, Volume};

use super::rate::{Measure, Rate, days, rate};
use super::{Basis, RoundError, Uses, not_after};
use crate::plan::Plan;
use crate::use_rate::{best_pack, choices};

/// Days until what is ordered stands there: two weeks on its way, two until somebody looks again; *common practice*.
const UNTIL_DELIVERY_DAYS: f64 = 28.0;
/// What must not run out, since it is reached for when something has gone wrong, and the kilograms that stand there whatever is used:
/// bicarbonate takes up spilt acid, *common practice*.
const RESERVES: [(&str, f64); 1] = [("bicarbonate", 1.0)];
/// A use that lasts longer than this is no use to speak of.
const LONGEST_DAYS: f64 = 36_525.0;

/// How the cupboard stands and what to buy.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Cupboard {
    /// The day it is for.
    #[schemars(with = "String")]
    pub today: Date,
    /// The pots, as the shop lists them.
    pub pots: Vec<PotRow>,
    /// What to buy again, the most urgent first.
    pub buy: Vec<BuyRow>,
}

/// How one pot stands.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct PotRow {
    /// Which of the shop's pots, from 1.
    pub pot: usize,
    /// Key of the fluid.
    pub fluid: String,
    /// What it is called: by its owner, else by its fluid.
    pub name: String,
    /// Where it stands.
    pub place: Option<String>,
    /// What is left; none where nobody said.
    pub left: Option<String>,
    /// What becomes of it next.
    pub end: End,
    /// The day it is used up, as far as can be foretold.
    #[schemars(with = "Option<String>")]
    pub empty_on: Option<Date>,
    /// The last day it is good.
    #[schemars(with = "Option<String>")]
    pub expires_on: Option<Date>,
    /// What says so.
    pub expires_by: Option<Expiry>,
    /// What the forecast goes by.
    pub by: Option<Basis>,
}

/// What becomes of a pot next.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum End {
    /// Nothing is left in it.
    Empty,
    /// It is too old.
    Expired,
    /// It is used up before it is too old.
    UsedUp,
    /// It is too old before it is used up.
    Expires,
    /// Neither can be foretold.
    Unknown,
}

/// What says until when a pot is good.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Expiry {
    /// The date printed on it.
    Printed,
    /// How long such a fluid keeps once opened.
    Opened,
    /// The same, of a pot that nobody is known to have opened, from the day it will be needed.
    OnceOpened,
    /// How long such a fluid keeps from the day it was bought.
    Bought,
}

/// Something to buy again.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct BuyRow {
    /// Key of the fluid.
    pub fluid: String,
    /// Its name.
    pub name: String,
    /// What is left of it and still good.
    pub left: String,
    /// As much should be there when it is ordered.
    pub order_at: String,
    /// The day the last of it is used up or too old.
    #[schemars(with = "Option<String>")]
    pub lasts_until: Option<Date>,
    /// The pack to buy.
    pub pack: Option<String>,
    /// Its price, indicative.
    pub price: Option<f64>,
    /// The currency of the price.
    pub currency: String,
}

/// How the cupboard stands on a day, given what the log says was used.
///
/// # Errors
/// [`RoundError::Backwards`] where something was used after today; [`RoundError::Formula`] where a formula refuses the numbers.
pub fn cupboard(plan: &Plan<'_>, today: Date, uses: &Uses, units: System) -> Result<Cupboard, RoundError> {
    let mut answer = Cupboard { today, pots: Vec::new(), buy: Vec::new() };
    for fluid in plan.fluids.iter().map(|weighed| weighed.fluid) {
        let mut pots: Vec<(usize, &Pot)> = plan.shop.pots.iter().enumerate().filter(|(_, pot)| pot.fluid == fluid.key).collect();
        let Some(measure) = Measure::of(fluid, &plan.shop.pots).filter(|_| !pots.is_empty()) else { continue };
        let uses = uses.get(&fluid.key).map(Vec::as_slice).unwrap_or_default();
        for used in uses {
            not_after(today, used.day, || format!("a use of {}", fluid.name))?;
        }
        let rate = rate(&mut Silent, plan, &measure, uses)?;
        // One takes first from the pot that is open, then from the one that ages first.
        pots.sort_by_key(|(_, pot)| (pot.opened.is_none(), expiry(pot, fluid, None).map_or(Date::MAX, |(day, _)| day)));
        let mut supply = Supply { today, measure, rate, begins: Some(today), good: Some(0.0) };
        answer.pots.extend(pots.into_iter().map(|(place, pot)| supply.take(place, pot, units)));
        answer.buy.extend(supply.buy(plan, units)?);
    }
    answer.pots.sort_by_key(|row| row.pot);
    answer.buy.sort_by_key(|row| row.lasts_until);
    Ok(answer)
}

/// The working behind the forecast of a fluid: how fast it is used, and how much of it must be there when it is ordered. Empty where neither
/// the log nor the plan says, and for what is counted in metres or pieces.
///
/// # Errors
/// Where a formula refuses the numbers.
pub fn forecast(plan: &Plan<'_>, fluid: &Fluid, uses: &Uses) -> Result<Notebook, FormulaError> {
    let mut working = Notebook::new();
    let measure = Measure::of(fluid, &plan.shop.pots).filter(|measure| matches!(measure.like, Amount::Volume(_) | Amount::Mass(_)));
    if let Some(measure) = measure {
        let uses = uses.get(&fluid.key).map(Vec::as_slice).unwrap_or_default();
        if let Some(rate) = rate(&mut working, plan, &measure, uses)? {
            order_at(&mut working, fluid, rate)?;
        }
    }
    Ok(working)
}

/// What uses may take of a fluid until a delivery.
fn order_at<R: Recorder>(r: &mut R, fluid: &Fluid, rate: Rate) -> Result<Volume, FormulaError> {
    let demand = Demand { times_a_year: rate.a_day * 365.0, each: rate.each };
    let service = if reserve(fluid).is_some() { SERVICE_SAFETY } else { SERVICE_OTHER };
    Ok(reorder_point(r, &demand, days(UNTIL_DELIVERY_DAYS), Ratio::from_base(service))?.volume)
}

/// What must always be there of a fluid that safety needs.
fn reserve(fluid: &Fluid) -> Option<Amount> {
    RESERVES.iter().find(|(class, _)| fluid.is(class)).map(|(_, kilograms)| Amount::Mass(Mass::from_base(*kilograms)))
}

/// The pots of one fluid, emptied one after the other.
struct Supply<'a> {
    today: Date,
    measure: Measure<'a>,
    rate: Option<Rate>,
    /// The day the next pot is begun; none where nobody can say.
    begins: Option<Date>,
    /// The cubic metres that are there and good; none where nobody knows.
    good: Option<f64>,
}

impl Supply<'_> {
    fn take(&mut self, place: usize, pot: &Pot, units: System) -> PotRow {
        let fluid = self.measure.fluid;
        let expires = expiry(pot, fluid, self.begins.filter(|_| self.rate.is_some()));
        let expired = expires.is_some_and(|(day, _)| day < self.today);
        let left = pot.left.and_then(|left| self.measure.volume(left));
        let empty_on = if expired || pot.is_empty() { None } else { self.emptied(left) };
        let end = match (expires, empty_on) {
            _ if pot.is_empty() => End::Empty,
            _ if expired => End::Expired,
            (Some((expires, _)), Some(empty)) if expires < empty => End::Expires,
            (_, Some(_)) => End::UsedUp,
            (Some(_), None) => End::Expires,
            (None, None) => End::Unknown,
        };
        if !matches!(end, End::Empty | End::Expired) {
            self.good = self.good.zip(left).map(|(good, left)| good + left.base());
            let too_old = expires.map(|(day, _)| day).filter(|_| left.is_some() && self.rate.is_some());
            self.begins = empty_on.into_iter().chain(too_old).min();
        }
        PotRow {
            pot: place + 1,
            fluid: fluid.key.clone(),
            name: pot.name.clone().unwrap_or_else(|| fluid.name.clone()),
            place: pot.place.clone(),
            left: pot.left.map(|left| left.show(units)),
            end,
            empty_on,
            expires_on: expires.map(|(day, _)| day),
            expires_by: expires.map(|(_, by)| by),
            by: self.rate.map(|rate| rate.basis),
        }
    }

    /// The day a pot begun next is used up.
    fn emptied(&self, left: Option<Volume>) -> Option<Date> {
        let lasts = left?.base() / self.rate?.per_day.base();
        if lasts > LONGEST_DAYS { None } else { after(self.begins?, days(lasts)) }
    }

    /// What to buy of it again: when no more is there than uses until the delivery may take, or what is there does not last until then; or a
    /// reserve is not whole.
    fn buy(&self, plan: &Plan<'_>, units: System) -> Result<Option<BuyRow>, RoundError> {
        /// Sums of amounts are no more exact.
        const SLACK: f64 = 1.0 + 1e-9;
        let (Some(good), fluid) = (self.good, self.measure.fluid) else { return Ok(None) };
        let kept = reserve(fluid).and_then(|reserve| self.measure.volume(reserve));
        let used = self.rate.map(|rate| order_at(&mut Silent, fluid, rate)).transpose()?;
        let delivered = after(self.today, days(UNTIL_DELIVERY_DAYS));
        let low = used.is_some_and(|used| good <= used.base() * SLACK || self.begins.is_some_and(|ends| Some(ends) <= delivered));
        let broached = kept.is_some_and(|kept| good * SLACK < kept.base());
        let Some(order_at) = used.into_iter().chain(kept).max_by(|one, other| one.base().total_cmp(&other.base())) else { return Ok(None) };
        if !low && !broached {
            return Ok(None);
        }
        // A reserve that is never touched is bought by the pack that makes it whole.
        let uses = self.rate.map_or((order_at, 1.0), |rate| (rate.each, rate.a_day * 365.0));
        let all = choices(fluid, &[(self.measure.amount(uses.0), uses.1)], &plan.shop.currency, plan.reference);
        let pack = best_pack(&all);
        let shown = |volume: Volume| self.measure.amount(volume).show(units);
        Ok(Some(BuyRow {
            fluid: fluid.key.clone(),
            name: fluid.name.clone(),
            left: shown(Volume::from_base(good)),
            order_at: shown(order_at),
            lasts_until: self.begins,
            pack: pack.map(|choice| choice.pack.size.show(units)),
            price: pack.map(|choice| (choice.price * 100.0).round() / 100.0),
            currency: plan.shop.currency.clone(),
        }))
    }
}

/// The last day a pot is good, and what says so: the date printed on it, else how long it keeps from the day it was bought; and how long it
/// keeps once opened, where it is open or will be on a day.
fn expiry(pot: &Pot, fluid: &Fluid, begun: Option<Date>) -> Option<(Date, Expiry)> {
    let bought = || Some((after(pot.bought?, fluid.shelf.closed)?, Expiry::Bought));
    let closed = pot.keeps_until.map(|day| (day, Expiry::Printed)).or_else(bought);
    let begun = begun.map(|day| (day, Expiry::OnceOpened));
    let opened = pot.opened.map(|day| (day, Expiry::Opened)).or(begun).and_then(|(day, by)| Some((after(day, fluid.shelf.opened)?, by)));
    closed.into_iter().chain(opened).min_by_key(|(day, _)| *day)
}

fn after(day: Date, time: Time) -> Option<Date> {
    day.checked_add(SignedDuration::try_from_secs_f64(time.base()).ok()?).ok()
}
