//! The ladder: what to buy, in order; and what if.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use fields::did_you_mean;
use planner::Wishes;
use planner::report::{BudgetRow, RungRow};
use reference::Reference;

use super::stairs::{Stairs, Step, bar};
use crate::App;
use crate::frame::{Frame, Piece, html};
use crate::visitor::Visitor;
use crate::words::{percent, several};
use crate::worked::Worked;
use planner::words::{Places, ends, lasts, places};

/// How many rungs may be asked for.
const CHOICES: [usize; 4] = [5, 12, 24, 60];
const RUNGS: usize = 12;
const DEAREST: f64 = 1e6;

#[derive(Template)]
#[template(path = "ladder.html")]
struct Page<'a> {
    frame: Frame,
    wish: Wish,
    report: &'a planner::report::Report,
    stairs: Option<Piece>,
    rungs: Vec<Rung<'a>>,
    bought: Option<Bought<'a>>,
    uses: Vec<Use<'a>>,
    fluids: Vec<(&'a str, &'a str)>,
    choices: [usize; 4],
}

struct Rung<'a> {
    row: &'a RungRow,
    share: String,
    bar: Piece,
    notes: Vec<String>,
    opens: Vec<Places<'a>>,
    opens_count: String,
    betters: Vec<Places<'a>>,
    betters_count: String,
}

struct Bought<'a> {
    row: &'a BudgetRow,
    share: String,
    fluids: Vec<(String, &'a str)>,
}

struct Use<'a> {
    key: &'a str,
    name: &'a str,
    likely: String,
    ends: String,
    pack: &'a str,
    lasts: String,
}

/// What was typed into the form, kept as it was typed, and what is wrong with it.
#[derive(Default)]
struct Wish {
    budget: String,
    budget_wrong: Option<&'static str>,
    without: String,
    without_wrong: Option<String>,
    rungs: usize,
    asked: bool,
}

pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let shop = app.source.shop()?;
        let frame = Frame::new(app, visitor, "Ladder", "What to buy, in this order");
        let (wish, wishes) = read(visitor, app.reference);
        let worked = if wish.asked {
            Arc::new(Worked::new(&shop, app.reference, &wishes, frame.units, None)?)
        } else {
            app.plan(&shop, frame.units)?
        };
        let report = &worked.report;
        let stairs = Stairs::of(&worked);
        html(&Page {
            stairs: stairs.draw(),
            rungs: report.ladder.iter().zip(&stairs.0).map(|(row, step)| rung(&worked, row, *step)).collect(),
            bought: report.budget.as_ref().map(|row| bought(&worked, row, app.reference)),
            uses: uses(&worked),
            fluids: words(app.reference),
            choices: CHOICES,
            frame,
            wish,
            report,
        })
    })
    .await
}

/// Reads the wishes; what cannot be read is left out of the plan and said beside its field.
fn read(visitor: &Visitor, reference: &Reference) -> (Wish, Wishes) {
    let typed = |name| visitor.typed(name).unwrap_or_default().trim().to_owned();
    let (mut wish, mut wishes) = (Wish { budget: typed("budget"), ..Wish::default() }, Wishes::default());
    if !wish.budget.is_empty() {
        match wish.budget.replace(',', ".").parse::<f64>() {
            Ok(money) if (0.0..=DEAREST).contains(&money) => wishes.budget = Some(money),
            _ => wish.budget_wrong = Some("Give a sum of money without a currency sign, such as 60 or 49.50."),
        }
    }
    let known = || reference.fluids.keys().chain(reference.classes.keys()).map(String::as_str);
    let said: Vec<&str> = visitor.all("without").flat_map(|text| text.split(',')).map(str::trim).filter(|word| !word.is_empty()).collect();
    for word in &said {
        match reference.meant(word, known()) {
            Some(meant) => wishes.without.push(meant.to_owned()),
            None => {
                wish.without_wrong = Some(format!("“{word}” is neither a fluid nor a class of fluids. {}", did_you_mean(word, known())))
            }
        }
    }
    wish.without = said.join(", ");
    let rungs = visitor.typed("rungs").and_then(|text| text.parse().ok()).filter(|rungs| CHOICES.contains(rungs));
    wish.rungs = rungs.unwrap_or(RUNGS);
    wishes.rungs = Some(wish.rungs);
    wish.asked = wishes.budget.is_some() || !wishes.without.is_empty() || wish.rungs != RUNGS;
    (wish, wishes)
}

/// What can be done without: the word, and its name.
fn words(reference: &Reference) -> Vec<(&str, &str)> {
    let fluids = reference.fluids.values().filter(|fluid| fluid.barred.is_none() && !fluid.always_there);
    fluids.map(|fluid| (fluid.key.as_str(), fluid.name.as_str())).collect()
}

fn rung<'a>(worked: &'a Worked, row: &'a RungRow, step: Step) -> Rung<'a> {
    // The last half of a hundredth would not show.
    const SHOWS: f64 = 0.005;
    let mut notes = vec![format!("keeps its place in {} of draws", percent(row.holds_in))];
    if row.opens_with_next {
        notes.push("pays together with the next one".to_owned());
    }
    if step.best > step.after + SHOWS {
        notes.push(format!("the best {} fluids together would serve {}", row.rung, percent(step.best)));
    }
    if row.gap > 0.0 {
        notes.push(format!("proven to within {}", percent(row.gap)));
    }
    Rung {
        share: percent(step.after),
        bar: bar(step),
        notes,
        opens: places(&worked.report.needs, &row.needs),
        opens_count: several(row.needs.len(), "place", "places"),
        betters: places(&worked.report.needs, &row.betters),
        betters_count: several(row.betters.len(), "place", "places"),
        row,
    }
}

fn bought<'a>(worked: &Worked, row: &'a BudgetRow, reference: &Reference) -> Bought<'a> {
    let fluids = row.fluids.iter().zip(&row.packs).map(|(key, pack)| (reference.name_of(key), pack.as_str()));
    Bought { share: percent(worked.share(row.total)), fluids: fluids.collect(), row }
}

fn uses(worked: &Worked) -> Vec<Use<'_>> {
    let units = worked.units;
    let row = worked.report.use_a_year.iter().map(|row| Use {
        key: &row.fluid,
        name: &row.name,
        likely: row.amount.amount().show(units),
        ends: ends(row.amount, units),
        pack: row.pack.as_deref().unwrap_or_default(),
        lasts: lasts(row),
    });
    row.collect()
}
