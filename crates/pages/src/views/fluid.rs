//! A fluid: what is known of it, where this shop wants it, what a year takes, what it is sold in, how its use is foretold.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Path, State};
use axum::response::Response;
use formulas::Notebook;
use indexmap::IndexMap;
use planner::Plan;
use planner::round::forecast;
use planner::use_rate::{Choice, PlaceUse, best_pack};
use planner::verdict::Grade;
use planner::words::{amount, ends};
use reference::{Content, Fluid, Reference, SourceKey};
use units::{Digits, Range, System, show, show_number};

use super::why::Step;
use crate::App;
use crate::frame::{Frame, Piece, encoded, html};
use crate::trouble::Trouble;
use crate::visitor::Visitor;
use crate::words::{percent, sentence};

/// A history makes two steps for each use: more of them than this say nothing more.
const MOST_STEPS: usize = 12;

#[derive(Template)]
#[template(path = "fluid.html")]
struct Page<'a> {
    frame: Frame,
    fluid: &'a Fluid,
    facts: Vec<(&'static str, String, SourceKey)>,
    /// What the UN GHS has a label say of it.
    statements: Vec<String>,
    /// Sheets of the bench with this fluid put in: what each answers, and its address.
    sheets: Vec<(&'static str, String)>,
    currency: &'a str,
    places: Vec<PlaceRow>,
    /// What a year takes in all, and its ends.
    year: Option<(String, String)>,
    packs: Vec<PackRow>,
    graded: Vec<(Grade, Vec<(String, String)>)>,
    /// It stands in the cupboard.
    owned: bool,
    given: Vec<(&'static str, Piece)>,
    steps: Vec<Step>,
    /// So many steps went before.
    left_out: usize,
}

struct PlaceRow {
    place: String,
    need: String,
    dose: String,
    times: String,
    year: String,
}

struct PackRow {
    size: String,
    price: String,
    a_year: String,
    cost: String,
    bought: bool,
    source: SourceKey,
}

pub(crate) async fn page(State(app): State<Arc<App>>, Path(key): Path<String>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| {
        let unknown = || Trouble::NotFound(format!("“{key}” is not a fluid known here. The ladder and the charts lead to those that are."));
        let fluid = app.reference.fluid(&key).ok_or_else(unknown)?;
        let shop = app.source.shop()?;
        let frame = Frame::new(app, visitor, "Ladder", sentence(&fluid.name));
        let uses = app.source.with(|kept| kept.uses()).transpose()?.transpose()?;
        let units = frame.units;
        app.of_plan(&shop, |plan| {
            let owned = uses.is_some() && plan.shop.pots.iter().any(|pot| pot.fluid == fluid.key);
            // A forecast that cannot be made has no working; the cupboard says why.
            let working = uses.as_ref().filter(|_| owned).and_then(|uses| forecast(plan, fluid, uses).ok()).unwrap_or_default();
            let left_out = working.steps().count().saturating_sub(MOST_STEPS);
            let year = plan.report(units).use_a_year.into_iter().find(|row| row.fluid == fluid.key);
            html(&Page {
                facts: facts(fluid, app.reference, units),
                statements: fluid.hazards.statements.iter().map(|code| statement(code, app.reference)).collect(),
                sheets: sheets(fluid),
                currency: &shop.currency,
                places: plan.place_uses(&fluid.key).iter().map(|part| place(plan, part, units)).collect(),
                year: year.map(|row| (row.amount.amount().show(units), ends(row.amount, units))),
                packs: packs(plan, fluid, units),
                graded: graded(plan, fluid),
                owned,
                given: given(&working),
                steps: working.steps().skip(left_out).map(super::why::step).collect(),
                left_out,
                fluid,
                frame,
            })
        })?
    })
    .await
}

fn statement(code: &str, reference: &Reference) -> String {
    reference.statement(code).map_or_else(|| code.to_owned(), |one| format!("{code}: {}", one.printed()))
}

/// What went into the working; of what a history gives again and again, the last.
fn given(working: &Notebook) -> Vec<(&'static str, Piece)> {
    let all: IndexMap<&'static str, Piece> = working.given_values().map(|given| (given.words, Piece(given.math()))).collect();
    all.into_iter().collect()
}

/// What its data sheet would say, each with where it comes from.
fn facts(fluid: &Fluid, reference: &Reference, units: System) -> Vec<(&'static str, String, SourceKey)> {
    let mut facts = Vec::new();
    if let Some(class) = fluid.classes.first().and_then(|key| reference.class(key)) {
        facts.push(("kind", format!("{}: {}", class.name, class.about), class.source));
        if !class.families.is_empty() {
            facts.push(("family", class.families.join(", "), class.source));
        }
    }
    if let Some(oil) = &fluid.oil {
        let of = if fluid.grease.is_some() {
            ["base oil at 40 °C", "base oil at 100 °C"]
        } else {
            ["viscosity at 40 °C", "viscosity at 100 °C"]
        };
        facts.push((of[0], show(oil.viscosity_40, units), oil.source));
        facts.extend(oil.viscosity_100.map(|value| (of[1], show(value, units), oil.source)));
        facts.extend(oil.index.map(|index| ("viscosity index", format!("{index:.0}"), oil.source)));
        facts.push(("pour point", show(oil.pour, units), oil.source));
    }
    if let Some(grease) = &fluid.grease {
        facts.push(("consistency", reference::nlgi(grease.consistency), grease.source));
        facts.push(("thickener", reference.thickener_name(&grease.thickener), grease.source));
        facts.push(("serves between", format!("{} and {}", show(grease.coldest, units), show(grease.hottest, units)), grease.source));
    }
    if let Some(bond) = &fluid.bond {
        facts.extend(bond.gap.map(|gap| ("bridges a gap of", show(gap, units), bond.source)));
        facts.extend(bond.strength.map(|strength| ("shear strength", show(strength, units), bond.source)));
        facts.extend(bond.breakloose_m10.map(|torque| ("breaks loose, M10", show(torque, units), bond.source)));
        facts.push(("serves up to", show(bond.hottest, units), bond.source));
        facts.push(("handle after", show(bond.handle_after, units), bond.source));
        facts.push(("load after", show(bond.load_after, units), bond.source));
    }
    facts.extend(fluid.hottest.as_ref().map(|hottest| ("serves up to", show(hottest.value, units), hottest.source)));
    facts.extend(fluid.dilution.as_ref().map(|share| ("mixed with water", shares(share.value), share.source)));
    facts.push(("density", show(fluid.density.value, units), fluid.density.source));
    facts.extend(fluid.flash.as_ref().map(|flash| ("flash point", show(flash.value, units), flash.source)));
    facts.extend(fluid.vapour_pressure.as_ref().map(|pressure| ("vapour pressure at 20 °C", show(pressure.value, units), pressure.source)));
    let content = |content: &Content| {
        let name = reference.substance(&content.substance).map_or(content.substance.as_str(), |substance| substance.name.as_str());
        ("made of", format!("{name}, {}", shares(content.share)), content.source)
    };
    facts.extend(fluid.contents.iter().map(content));
    // A group of materials has no name but its key.
    let name = |key: &String| if reference.material(key).is_some() { reference.name_of(key) } else { key.replace('-', " ") };
    let materials = |keys: &[String]| keys.iter().map(name).collect::<Vec<_>>().join(", ");
    for (words, keys) in [("care with", &fluid.chemistry.care), ("harms", &fluid.chemistry.attacks)] {
        if !keys.is_empty() {
            facts.push((words, materials(keys), fluid.chemistry.source));
        }
    }
    let shelf = format!("{} shut, {} once opened", show(fluid.shelf.closed, units), show(fluid.shelf.opened, units));
    facts.push(("keeps", shelf, fluid.shelf.source));
    facts.extend(reference.storage_groups.get(&fluid.hazards.storage).map(|group| ("stands", group.keep.clone(), group.source)));
    facts
}

fn shares(share: Range<f64>) -> String {
    if share.low == share.high { percent(share.likely) } else { format!("{} to {}", percent(share.low), percent(share.high)) }
}

/// The sheets of the bench that say more of it.
fn sheets(fluid: &Fluid) -> Vec<(&'static str, String)> {
    let of = |words, sheet: &str| (words, format!("/bench/{sheet}?fluid={}", encoded(&fluid.key)));
    let mut sheets = Vec::new();
    if fluid.oil.as_ref().is_some_and(|oil| oil.viscosity_100.is_some() || oil.index.is_some()) {
        sheets.push(of("How thick it is at a temperature", "viscosity"));
    }
    if !fluid.contents.is_empty() {
        sheets.push(of("What one breathes when it is used", "air"));
        sheets.push(of("How it burns", "flammability"));
        sheets.push(of("What its label says", "label"));
    }
    sheets
}

fn place(plan: &Plan<'_>, part: &PlaceUse, units: System) -> PlaceRow {
    let need = &plan.needs[part.need];
    PlaceRow {
        place: need.place.words(),
        need: need.id.clone(),
        dose: amount(part.dose, units),
        times: show_number(part.times_a_year, Digits::Significant(2)),
        year: part.year.amount().show(units),
    }
}

fn packs(plan: &Plan<'_>, fluid: &Fluid, units: System) -> Vec<PackRow> {
    let packs = plan.packs(&fluid.key);
    let bought = best_pack(&packs).map(|best| best.pack.size);
    let row = |choice: &Choice<'_>| PackRow {
        size: choice.pack.size.show(units),
        price: format!("{:.2}", choice.price),
        a_year: show_number(choice.packs_a_year, Digits::Significant(2)),
        cost: format!("{:.2}", choice.yearly_cost),
        bought: bought == Some(choice.pack.size),
        source: choice.pack.source,
    };
    packs.iter().map(row).collect()
}

/// The places of the shop by what it is there, harm first.
fn graded(plan: &Plan<'_>, fluid: &Fluid) -> Vec<(Grade, Vec<(String, String)>)> {
    let Some(weighed) = plan.fluids.iter().find(|weighed| weighed.fluid.key == fluid.key) else { return Vec::new() };
    let of = |grade: Grade| {
        let places = plan.needs.iter().zip(&weighed.grades).filter(|(need, found)| need.nothing.is_none() && **found == grade);
        (grade, places.map(|(need, _)| (need.id.clone(), need.place.words())).collect::<Vec<_>>())
    };
    [Grade::Harmful, Grade::Right, Grade::WillDo].into_iter().map(of).filter(|(_, places)| !places.is_empty()).collect()
}
