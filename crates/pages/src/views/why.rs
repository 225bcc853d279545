//! Why a place gets the fluid it gets: what is asked, how each fluid meets it, and the working of the numbers.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Path, State};
use axum::response::Response;
use planner::verdict::{Finding, Verdict};
use planner::why::{Why, WhyError, why};

use crate::App;
use crate::frame::{Frame, Piece, html};
use crate::trouble::Trouble;
use crate::visitor::Visitor;
use crate::worked::Worked;
use planner::words::{amount, every};

#[derive(Template)]
#[template(path = "why.html")]
struct Page<'a> {
    frame: Frame,
    why: &'a Why,
    served: Served,
    machine: Option<&'a str>,
    demands: Vec<&'a Finding>,
    verdicts: Vec<Account<'a>>,
    given: Vec<(&'static str, Piece)>,
    steps: Vec<Step>,
    warned: Vec<String>,
    others: Vec<(&'a str, &'a str)>,
}

/// What the plan puts there.
#[derive(Default)]
struct Served {
    key: String,
    fluid: String,
    reason: String,
    amount: String,
    how: String,
    every: String,
}

struct Account<'a> {
    verdict: &'a Verdict,
    findings: Vec<(usize, &'a Finding)>,
}

/// One step of the working: the formula with its value, the numbers put in, the source.
pub(crate) struct Step {
    pub math: Piece,
    pub filled: String,
    pub source: String,
}

pub(crate) async fn page(State(app): State<Arc<App>>, Path(need): Path<String>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| {
        let shop = app.source.shop()?;
        let units = visitor.units.unwrap_or(shop.units);
        let asked: Vec<String> = visitor.all("fluid").take(6).map(str::to_owned).collect();
        let account = why(&shop, app.reference, &need, &asked, units).map_err(trouble)?;
        let worked = app.plan(&shop, units)?;
        let notebook = &account.notebook;
        let demands = demands(&account.verdicts);
        let frame = Frame::new(app, visitor, "Shop", account.place.as_str());
        let row = worked.report.needs.iter().find(|row| row.id == account.need);
        let fluids = app.reference.fluids.values().filter(|fluid| fluid.barred.is_none());
        html(&Page {
            served: served(&worked, &account.need),
            machine: row.and_then(|row| row.machine.as_deref()),
            verdicts: account.verdicts.iter().map(|verdict| numbered(verdict, &demands)).collect(),
            demands,
            given: notebook.given_values().map(|given| (given.words, Piece(given.math()))).collect(),
            steps: notebook.steps().map(step).collect(),
            warned: notebook.cautions().map(ToString::to_string).collect(),
            others: fluids.map(|fluid| (fluid.key.as_str(), fluid.name.as_str())).collect(),
            why: &account,
            frame,
        })
    })
    .await
}

fn trouble(error: WhyError) -> Trouble {
    match error {
        WhyError::Shop(found) => Trouble::Contradiction(found),
        WhyError::Place { asked, .. } => {
            Trouble::NotFound(format!("No place of this shop is called “{asked}”. The charts and the work lead to all there are."))
        }
        WhyError::Fluid { asked } => {
            Trouble::NotFound(format!("“{asked}” is not a fluid known here. Choose one from the list on the page before."))
        }
    }
}

/// A step of a plan's working.
pub(crate) fn step(step: &formulas::working::Step) -> Step {
    Step { math: Piece(step.math()), filled: step.filled_line(), source: step.source.to_string() }
}

/// Every demand that concerns one of the fluids, once, by one of its findings.
fn demands(verdicts: &[Verdict]) -> Vec<&Finding> {
    let mut demands: Vec<&Finding> = Vec::new();
    for finding in verdicts.iter().flat_map(|verdict| &verdict.findings) {
        if !demands.iter().any(|known| same(known, finding)) {
            demands.push(finding);
        }
    }
    demands
}

fn same(one: &Finding, other: &Finding) -> bool {
    one.demand == other.demand && one.asked == other.asked
}

fn numbered<'a>(verdict: &'a Verdict, demands: &[&Finding]) -> Account<'a> {
    let number = |finding: &Finding| demands.iter().position(|demand| same(demand, finding)).map_or(0, |place| place + 1);
    Account { findings: verdict.findings.iter().map(|finding| (number(finding), finding)).collect(), verdict }
}

/// What the plan puts on the place of that need.
fn served(worked: &Worked, need: &str) -> Served {
    let units = worked.units;
    let report = &worked.report;
    if let Some(row) = report.chart.iter().find(|row| worked.need_of(row) == need) {
        return Served {
            key: row.fluid.clone().unwrap_or_default(),
            fluid: row.name.clone().unwrap_or_default(),
            reason: row.reason.clone(),
            amount: row.dose.map_or_else(String::new, |dose| amount(dose, units)),
            how: row.how.clone(),
            every: row.every.as_ref().map_or_else(String::new, every),
        };
    }
    let steps = report.work.iter().flat_map(|job| job.steps.iter().map(move |step| (job.job.as_str(), step)));
    let step = steps.into_iter().find(|(job, step)| worked.need_of_step(job, &step.step) == need);
    step.map_or_else(Served::default, |(_, row)| Served {
        key: row.fluid.clone().unwrap_or_default(),
        fluid: row.name.clone().unwrap_or_default(),
        reason: row.reason.clone(),
        amount: row.dose.map_or_else(String::new, |dose| amount(dose, units)),
        how: row.how.clone(),
        every: String::new(),
    })
}

impl Step {
    /// A step of a worked page of the bench.
    pub(crate) fn of_sheet(row: &bench::StepRow) -> Self {
        let value = format!("{} {}", units::show_number(row.value, units::Digits::Significant(4)), row.unit);
        let value = value.trim();
        let number = value.replace('&', "&amp;").replace('<', "&lt;");
        let (symbol, formula) = (&row.symbol_mathml, &row.mathml);
        Self {
            math: Piece(format!(
                "<math display=\"block\"><mrow>{symbol}<mo>=</mo>{formula}<mo>=</mo><mtext>{number}</mtext></mrow></math>"
            )),
            filled: format!("{} = {} = {value}", row.symbol, row.filled),
            source: row.source.clone(),
        }
    }
}
