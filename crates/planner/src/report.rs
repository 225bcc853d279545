//! The plan as plain data: the JSON that `plan --json` prints, and what tables are drawn from.

use schemars::JsonSchema;
use serde::Serialize;
use units::{Quantity, System};

use crate::cautions::{Caution, cautions};
use crate::chart::{Serving, is_point};
use crate::need::{Dose, Every, Need, Place};
use crate::plan::Plan;
use crate::verdict::Grade;

/// The whole plan.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Report {
    /// What the shop is.
    pub shop: ShopRow,
    /// What was supposed.
    pub assumptions: Vec<AssumptionRow>,
    /// Every need.
    pub needs: Vec<NeedRow>,
    /// The buying order.
    pub ladder: Vec<RungRow>,
    /// The exact best set for the money, where a sum was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub budget: Option<BudgetRow>,
    /// What goes where on the machines.
    pub chart: Vec<ChartRow>,
    /// What the work takes.
    pub work: Vec<WorkRow>,
    /// What nothing on the ladder serves.
    pub unserved: Vec<UnservedRow>,
    /// What to mind.
    pub cautions: Vec<Caution>,
}

/// The shop in a few words.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct ShopRow {
    /// Its name.
    pub name: String,
    /// ISO 4217 code of all prices.
    pub currency: String,
    /// Names of its machines.
    pub machines: Vec<String>,
    /// Names of its jobs.
    pub work: Vec<String>,
    /// Coldest, usual and hottest air, °C.
    pub air_celsius: [f64; 3],
}

/// One supposed value.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct AssumptionRow {
    /// What it is about.
    #[serde(rename = "where")]
    pub place: String,
    /// The key that overrules it.
    pub what: String,
    /// The value supposed.
    pub value: String,
    /// Bibliography key.
    pub source: String,
}

impl From<&shop::Assumption> for AssumptionRow {
    fn from(assumption: &shop::Assumption) -> Self {
        Self {
            place: assumption.place.clone(),
            what: assumption.what.clone(),
            value: assumption.value.clone(),
            source: assumption.source.clone(),
        }
    }
}

/// One need.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct NeedRow {
    /// Stable short name.
    pub id: String,
    /// The machine, for a point.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub machine: Option<String>,
    /// The point, for a point.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub point: Option<String>,
    /// The job, for a step.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<String>,
    /// The step, for a step.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub step: Option<String>,
    /// Its kind.
    pub kind: String,
    /// Consequence × frequency × priority, and its share of it where a task has several steps.
    pub weight: f64,
    /// What is asked.
    pub asks: Vec<AskRow>,
    /// Why nothing is put there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nothing: Option<String>,
    /// How much at a time, for the first form of fluid it takes.
    pub dose: Option<Dose>,
    /// How often, for that form.
    pub every: Option<EveryRow>,
}

/// One demand.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct AskRow {
    /// What it is about.
    pub what: String,
    /// What is asked.
    pub asked: String,
    /// Why.
    pub why: String,
    /// Bibliography key.
    pub source: String,
}

/// How often.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct EveryRow {
    /// After so many hours of running.
    pub running_hours: Option<f64>,
    /// After so many days at the latest.
    pub days: Option<f64>,
    /// In words, where it is neither.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub words: Option<String>,
}

/// One purchase.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct RungRow {
    /// Which purchase, from 1.
    pub rung: usize,
    /// The fluid's key.
    pub fluid: String,
    /// Its name.
    pub name: String,
    /// The pack to buy.
    pub pack: Option<PackRow>,
    /// Weight newly served.
    pub gain: f64,
    /// Weight served by now.
    pub total: f64,
    /// The most any choice of this many purchases serves.
    pub best_possible: f64,
    /// What `best_possible` may still fall short of; 0 when it is proven.
    pub gap: f64,
    /// How many tasks are wholly right by now.
    pub right: usize,
    /// How many more are served with something that will do.
    pub will_do: usize,
    /// The needs served from here on.
    pub needs: Vec<String>,
    /// The needs that were served before and are right from here on.
    pub betters: Vec<String>,
    /// Share of the draws of weights and prices in which it keeps its place.
    pub holds_in: f64,
    /// It pays only together with the next rung.
    pub opens_with_next: bool,
}

/// A pack.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct PackRow {
    /// Its size.
    pub size: String,
    /// Indicative price.
    pub price: f64,
    /// ISO 4217 code.
    pub currency: String,
    /// The year of the price.
    pub year: u16,
    /// How many of it a year takes.
    pub packs_a_year: f64,
    /// What it costs a year, counting what goes off.
    pub yearly_cost: f64,
}

/// The best set for the money.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct BudgetRow {
    /// The money.
    pub budget: f64,
    /// What the set costs.
    pub cost: f64,
    /// Keys of its fluids.
    pub fluids: Vec<String>,
    /// Weight it serves.
    pub total: f64,
    /// What it may still fall short of; 0 when it is proven.
    pub gap: f64,
}

/// One row of a lubrication chart.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct ChartRow {
    /// The machine.
    pub machine: String,
    /// The point.
    pub point: String,
    /// The fluid's key; none where nothing is put there or nothing serves.
    pub fluid: Option<String>,
    /// Its name.
    pub name: Option<String>,
    /// How much.
    pub dose: Option<Dose>,
    /// How it is put there.
    pub how: String,
    /// How often.
    pub every: Option<EveryRow>,
    /// How well it serves.
    pub grade: Option<Grade>,
    /// Why this fluid, or why none.
    pub reason: String,
    /// What to mind there.
    pub mind: Vec<String>,
}

/// One job.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct WorkRow {
    /// The job.
    pub job: String,
    /// Its steps, in order.
    pub steps: Vec<StepRow>,
}

/// One step.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct StepRow {
    /// The step.
    pub step: String,
    /// The fluid's key.
    pub fluid: Option<String>,
    /// Its name.
    pub name: Option<String>,
    /// How much.
    pub dose: Option<Dose>,
    /// How it is done.
    pub how: String,
    /// How well it serves.
    pub grade: Option<Grade>,
    /// Why this fluid, or why none.
    pub reason: String,
    /// What to mind.
    pub mind: Vec<String>,
}

/// One need that stays unserved.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct UnservedRow {
    /// The need's short name.
    pub need: String,
    /// Where, in words.
    #[serde(rename = "where")]
    pub place: String,
    /// Why.
    pub why: String,
}

const ZERO_CELSIUS_K: f64 = 273.15;

impl Plan<'_> {
    /// The plan as plain data, with quantities in words in this system of units.
    #[must_use]
    pub fn report(&self, units: System) -> Report {
        let points = |serving: &&Serving| is_point(&self.needs[serving.need]);
        Report {
            shop: self.shop_row(),
            assumptions: self.assumptions(),
            needs: self.needs.iter().map(|need| self.need_row(need, units)).collect(),
            ladder: (0..self.ladder.rungs.len()).map(|rung| self.rung_row(rung, units)).collect(),
            budget: self.budget_row(),
            chart: self.servings.iter().filter(points).filter_map(|serving| self.chart_row(serving)).collect(),
            work: self.work_rows(),
            unserved: self.unserved(),
            cautions: cautions(&self.kept.iter().map(|place| self.fluids[*place].fluid).collect::<Vec<_>>(), self.shop),
        }
    }

    fn shop_row(&self) -> ShopRow {
        let room = &self.shop.room;
        ShopRow {
            name: self.shop.name.clone(),
            currency: self.shop.currency.clone(),
            machines: self.shop.machines.iter().map(|machine| machine.name.clone()).collect(),
            work: self.shop.work.iter().map(|job| job.name.clone()).collect(),
            air_celsius: [room.coldest, room.usual, room.hottest].map(|temperature| round(temperature.base() - ZERO_CELSIUS_K)),
        }
    }

    fn assumptions(&self) -> Vec<AssumptionRow> {
        self.shop.assumptions.iter().map(AssumptionRow::from).collect()
    }

    fn need_row(&self, need: &Need, units: System) -> NeedRow {
        let ((machine, point), (job, step)) = match &need.place {
            Place::Point { machine, point } => ((Some(machine.clone()), Some(point.clone())), (None, None)),
            Place::Step { job, step } => ((None, None), (Some(job.clone()), Some(step.clone()))),
        };
        let ask = |demand: &crate::demand::Demand| AskRow {
            what: demand.what.to_owned(),
            asked: demand.asked(self.reference, units),
            why: demand.why.to_string(),
            source: demand.source.to_owned(),
        };
        NeedRow {
            id: need.id.clone(),
            machine,
            point,
            job,
            step,
            kind: need.kind.to_owned(),
            weight: round(need.weight.value() * need.share),
            asks: need.demands.iter().map(ask).collect(),
            nothing: need.nothing.as_ref().map(ToString::to_string),
            dose: need.rations.first().map(|ration| rounded(ration.dose)),
            every: need.rations.first().map(|ration| every_row(&ration.every)),
        }
    }

    fn rung_row(&self, place: usize, units: System) -> RungRow {
        let rung = &self.ladder.rungs[place];
        let weighed = &self.fluids[rung.fluid];
        let served = rung.newly_served.iter().flat_map(|task| &self.tasks[*task]);
        RungRow {
            rung: place + 1,
            fluid: weighed.fluid.key.clone(),
            name: weighed.fluid.name.clone(),
            pack: weighed.choice.map(|choice| PackRow {
                size: choice.pack.size.show(units),
                price: cents(choice.price),
                currency: self.shop.currency.clone(),
                year: choice.pack.year,
                packs_a_year: round(choice.packs_a_year),
                yearly_cost: cents(choice.yearly_cost),
            }),
            gain: round(rung.gain),
            total: round(rung.total),
            best_possible: round(rung.best_possible),
            gap: round(rung.gap),
            right: rung.right,
            will_do: rung.will_do,
            needs: served.map(|need| self.needs[*need].id.clone()).collect(),
            betters: self.bettered(place).map(|need| self.needs[need].id.clone()).collect(),
            holds_in: round(rung.holds_in),
            opens_with_next: rung.opens_with_next,
        }
    }

    /// The needs that something already served and that this rung makes right.
    fn bettered(&self, place: usize) -> impl Iterator<Item = usize> {
        let rung = &self.ladder.rungs[place];
        let before: Vec<usize> = (0..self.fluids.len())
            .filter(|fluid| self.fluids[*fluid].allowed && self.fluids[*fluid].has_already())
            .chain(self.ladder.rungs[..place].iter().map(|rung| rung.fluid))
            .collect();
        let fluid = &self.fluids[rung.fluid];
        (0..self.needs.len()).filter(move |need| {
            let best = before.iter().map(|fluid| self.fluids[*fluid].grades[*need]).min();
            self.needs[*need].nothing.is_none() && best == Some(Grade::WillDo) && fluid.grades[*need] == Grade::Right
        })
    }

    fn budget_row(&self) -> Option<BudgetRow> {
        let best = self.within_budget.as_ref()?;
        let bought = best.set.iter().map(|place| &self.fluids[*place]).filter(|weighed| !weighed.has_already());
        Some(BudgetRow {
            budget: self.budget?,
            cost: cents(bought.clone().filter_map(|weighed| Some(weighed.choice?.price)).sum()),
            fluids: bought.map(|weighed| weighed.fluid.key.clone()).collect(),
            total: round(best.value),
            gap: round(best.gap),
        })
    }

    fn chart_row(&self, serving: &Serving) -> Option<ChartRow> {
        let need = &self.needs[serving.need];
        let Place::Point { machine, point } = &need.place else { return None };
        let fluid = serving.fluid.map(|place| self.fluids[place].fluid);
        Some(ChartRow {
            machine: machine.clone(),
            point: point.clone(),
            fluid: fluid.map(|fluid| fluid.key.clone()),
            name: fluid.map(|fluid| fluid.name.clone()),
            dose: serving.ration.as_ref().map(|ration| rounded(ration.dose)),
            how: serving.how.clone(),
            every: serving.ration.as_ref().map(|ration| every_row(&ration.every)),
            grade: serving.grade,
            reason: serving.reason.clone(),
            mind: need.mind.iter().map(|(text, _)| text.to_string()).collect(),
        })
    }

    fn work_rows(&self) -> Vec<WorkRow> {
        let mut rows: Vec<WorkRow> = Vec::new();
        for serving in &self.servings {
            let need = &self.needs[serving.need];
            let Place::Step { job, step } = &need.place else { continue };
            let fluid = serving.fluid.map(|place| self.fluids[place].fluid);
            let row = StepRow {
                step: step.clone(),
                fluid: fluid.map(|fluid| fluid.key.clone()),
                name: fluid.map(|fluid| fluid.name.clone()),
                dose: serving.ration.as_ref().map(|ration| rounded(ration.dose)),
                how: serving.how.clone(),
                grade: serving.grade,
                reason: serving.reason.clone(),
                mind: need.mind.iter().map(|(text, _)| text.to_string()).collect(),
            };
            match rows.last_mut().filter(|last| last.job == *job) {
                Some(last) => last.steps.push(row),
                None => rows.push(WorkRow { job: job.clone(), steps: vec![row] }),
            }
        }
        rows
    }

    fn unserved(&self) -> Vec<UnservedRow> {
        let missing = self.servings.iter().filter(|serving| serving.fluid.is_none() && self.needs[serving.need].nothing.is_none());
        missing
            .map(|serving| {
                let need = &self.needs[serving.need];
                UnservedRow { need: need.id.clone(), place: need.place.words(), why: serving.reason.clone() }
            })
            .collect()
    }
}

fn every_row(every: &Every) -> EveryRow {
    EveryRow { running_hours: every.running_hours.map(round), days: every.days.map(round), words: every.words.map(ToOwned::to_owned) }
}

fn rounded(dose: Dose) -> Dose {
    Dose { low: round(dose.low), likely: round(dose.likely), high: round(dose.high), unit: dose.unit }
}

/// Three significant digits: more would be false certainty.
fn round(value: f64) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return value;
    }
    let scale = 10_f64.powf(2.0 - value.abs().log10().floor());
    (value * scale).round() / scale
}

fn cents(value: f64) -> f64 {
    (value * 100.0).round() / 100.0
}
