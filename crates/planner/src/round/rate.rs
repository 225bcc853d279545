//! How fast a fluid is used: by the log once it says enough, else as the plan reckons.
#![expect(non_snake_case, reason = "symbols match the source")]

use std::collections::BTreeMap;

use formulas::stock::{self, EVENTS_FOR_HISTORY, Use};
use formulas::working::Recorder;
use formulas::{FormulaError, given, sources, step};
use jiff::civil::Date;
use reference::Fluid;
use schemars::JsonSchema;
use serde::Serialize;
use shop::Pot;
use units::{Amount, Length, Quantity, Time, Volume};

use super::days_between;
use crate::plan::Plan;
use crate::use_rate::yearly_uses;

/// What was taken of each fluid on each day, by its key.
pub type Uses = BTreeMap<String, Vec<Used>>;

/// What was taken of a fluid on a day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Used {
    /// The day.
    pub day: Date,
    /// How much.
    pub amount: Amount,
    /// Whether nobody measured it, and it is the chart's dose.
    pub supposed: bool,
}

const DAY_S: f64 = 86_400.0;
const YEAR_DAYS: f64 = 365.25;
const CUBIC_METRES_PER_LITRE: f64 = 1e-3;
const CUBIC_METRES_PER_MILLILITRE: f64 = 1e-6;
/// How far one use moves the estimate; the usual weight of Croston's method, *common practice*.
const WEIGHT: f64 = 0.1;

/// What a forecast goes by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Basis {
    /// What the log says was used.
    Log,
    /// What the plan reckons a year takes.
    Plan,
}

/// How fast a fluid is used.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rate {
    /// What one use takes.
    pub each: Volume,
    /// Uses in a day.
    pub a_day: f64,
    /// What a day takes.
    pub per_day: Volume,
    /// What it goes by.
    pub basis: Basis,
}

/// One measure for all amounts of a fluid: a volume. A metre of tape and a piece count as a litre, for the sums are the same.
pub(super) struct Measure<'a> {
    pub fluid: &'a Fluid,
    /// An amount of the kind in which its pots are kept.
    pub like: Amount,
}

impl<'a> Measure<'a> {
    /// The measure in which these pots of a fluid are kept, else its packs.
    pub fn of(fluid: &'a Fluid, pots: &[Pot]) -> Option<Self> {
        let amounts = pots.iter().filter(|pot| pot.fluid == fluid.key).filter_map(|pot| pot.left.or(pot.size));
        let like = amounts.chain(fluid.packs.iter().map(|pack| pack.size)).next()?;
        Some(Self { fluid, like })
    }

    /// The volume of an amount; nothing where it is of another kind.
    pub fn volume(&self, amount: Amount) -> Option<Volume> {
        let litres = |count: f64| Volume::from_base(count * CUBIC_METRES_PER_LITRE);
        match (self.like, amount) {
            (Amount::Length(_), Amount::Length(length)) => Some(litres(length.base())),
            (Amount::Pieces(_), Amount::Pieces(count)) => Some(litres(count)),
            (Amount::Volume(_) | Amount::Mass(_), amount) => amount.in_volume(self.fluid.density.value),
            _ => None,
        }
    }

    /// The amount of a volume.
    pub fn amount(&self, volume: Volume) -> Amount {
        let count = volume.base() / CUBIC_METRES_PER_LITRE;
        match self.like {
            Amount::Length(_) => Amount::Length(Length::from_base(count)),
            Amount::Pieces(_) => Amount::Pieces(count),
            Amount::Mass(_) => Amount::Mass(volume * self.fluid.density.value),
            Amount::Volume(_) => Amount::Volume(volume),
        }
    }
}

/// How fast a fluid is used; nothing where neither the log nor the plan says.
///
/// The log says enough once enough uses were measured: doses that the chart supposed would only repeat the plan. From then on they count with
/// the others, for without them it would say too little.
pub(super) fn rate<R: Recorder>(r: &mut R, plan: &Plan<'_>, measure: &Measure<'_>, uses: &[Used]) -> Result<Option<Rate>, FormulaError> {
    let planned = planned(r, plan, measure);
    let taken = by_day(measure, uses.iter());
    if by_day(measure, uses.iter().filter(|used| !used.supposed)).len() < EVENTS_FOR_HISTORY {
        return Ok(planned.map(|one| {
            let a_day = DAY_S / one.since.base();
            Rate { each: one.taken, a_day, per_day: one.taken * a_day, basis: Basis::Plan }
        }));
    }
    let Some(estimate) = planned.or_else(|| mean(&taken)) else { return Ok(None) };
    let mut before = None;
    let history: Vec<Use> = taken
        .iter()
        .map(|(day, taken)| {
            // Nobody knows how long before the first use there was none; the estimate of that time stands.
            let since = before.map_or(estimate.since, |before| days(f64::from(days_between(before, *day))));
            before = Some(*day);
            Use { taken: *taken, since }
        })
        .collect();
    let found = stock::use_rate(r, estimate, &history, WEIGHT)?;
    Ok(Some(Rate { each: found.each, a_day: DAY_S / found.every.base(), per_day: found.corrected_per_day, basis: Basis::Log }))
}

/// One use and the time between two, as the plan reckons.
fn planned<R: Recorder>(r: &mut R, plan: &Plan<'_>, measure: &Measure<'_>) -> Option<Use> {
    let place = plan.fluids.iter().position(|weighed| weighed.fluid.key == measure.fluid.key)?;
    let year = yearly_uses(&plan.servings, &plan.fluids, &plan.kept).into_iter().find(|year| year.fluid == place)?;
    let uses = plan.place_uses(&measure.fluid.key);
    let times: f64 = uses.iter().filter(|one| one.dose.unit == year.amount.unit).map(|one| one.times_a_year).sum();
    let volume = measure.volume(year.amount.amount()).filter(|volume| times > 0.0 && volume.base() > 0.0)?;
    given!(r, V_y["mL"] = volume.base() / CUBIC_METRES_PER_MILLILITRE, "what the plan reckons a year takes");
    given!(r, n_y["1/year"] = times, "uses of it that the plan reckons in a year");
    given!(r, T_y["d"] = YEAR_DAYS, "days in a year");
    step!(r, s["mL"] = V_y / n_y, sources::DEFINITION);
    step!(r, t["d"] = T_y / n_y, sources::DEFINITION);
    Some(Use { taken: Volume::from_base(s * CUBIC_METRES_PER_MILLILITRE), since: days(t) })
}

/// The mean use and the mean time between two, where there are two.
fn mean(taken: &[(Date, Volume)]) -> Option<Use> {
    let ((first, _), (last, _)) = (taken.first()?, taken.last()?);
    let uses = crate::needs::count(taken.len());
    let all: f64 = taken.iter().map(|(_, taken)| taken.base()).sum();
    (uses > 1.0).then(|| Use { taken: Volume::from_base(all / uses), since: days(f64::from(days_between(*first, *last)) / (uses - 1.0)) })
}

/// What was taken on each day, in the order of the days.
fn by_day<'a>(measure: &Measure<'_>, uses: impl Iterator<Item = &'a Used>) -> Vec<(Date, Volume)> {
    let mut all: BTreeMap<Date, f64> = BTreeMap::new();
    for used in uses {
        if let Some(volume) = measure.volume(used.amount).filter(|volume| volume.base() > 0.0) {
            *all.entry(used.day).or_default() += volume.base();
        }
    }
    all.into_iter().map(|(day, base)| (day, Volume::from_base(base))).collect()
}

pub(super) fn days(number: f64) -> Time {
    Time::from_base(number * DAY_S)
}
