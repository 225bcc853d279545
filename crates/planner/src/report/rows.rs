//! The rows of a report: plain data with documented names, whose JSON Schema is kept in `docs/plan.schema.json`.

use handling::cautions::Caution;
use schemars::JsonSchema;
use serde::Serialize;

use crate::need::{Dose, With};
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
    /// What a year takes of each fluid.
    pub use_a_year: Vec<UseRow>,
    /// Where the season changes the fluid.
    pub seasons: Vec<SeasonRow>,
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
    /// After so many days, the way the shop uses it.
    pub days: Option<f64>,
    /// After so many days however little it runs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_latest: Option<f64>,
    /// Whether the calendar comes so long before the running hours that it alone is said; a meter that is read may say otherwise.
    pub by_calendar: bool,
    /// With what it comes round, beside hours and days or instead of them.
    #[serde(rename = "words", skip_serializing_if = "Option::is_none")]
    pub with: Option<With>,
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
    /// The pack of each.
    pub packs: Vec<String>,
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

/// What a year takes of one fluid.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct UseRow {
    /// The fluid's key.
    pub fluid: String,
    /// Its name.
    pub name: String,
    /// What a year takes.
    pub amount: Dose,
    /// The pack that suits; none where it is not sold in packs.
    pub pack: Option<String>,
    /// How long the pack lasts at the likely use, in years, were it not to go off.
    pub lasts_years: Option<f64>,
    /// How long an opened pack keeps, in years.
    pub keeps_years: f64,
}

/// One place that changes its fluid with the season.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct SeasonRow {
    /// The need's short name.
    pub need: String,
    /// Where, in words.
    #[serde(rename = "where")]
    pub place: String,
    /// Key of the fluid for the cold months.
    pub cold: String,
    /// Key of the fluid for the warm months.
    pub warm: String,
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
