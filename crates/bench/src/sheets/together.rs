//! May these stand side by side: what they do to each other, where each stands, and what a spill takes to hold.

use fields::{Given, Kind};
use formulas::Notebook;
use handling::together::{Conflict, Shelf, conflicts, shelves, tray};
use reference::Fluid;
use units::Volume;

use super::{Asked, Outcome, Unanswered};
use crate::picture_shelf::draw;

const FLUIDS: Given<Vec<String>> = Given::fluids("fluids", "fluids by key, with commas between: battery-acid, alkaline-degreaser, acetone");
const EACH: Given<Volume> = Given::quantity("each", "1 L", "common-practice", "how much of each stands there");

pub(super) static KIND: Kind = Kind {
    name: "together",
    about: "whether fluids may stand side by side: what they do when they meet, and a shelf for each",
    fields: &[FLUIDS.field(), EACH.field()],
};

pub(super) fn work(asked: &Asked<'_>, _r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let keys = asked.answers.words(&FLUIDS);
    let mut fluids: Vec<&Fluid> = Vec::new();
    for fluid in keys.iter().filter_map(|key| asked.reference.fluid(key)) {
        if !fluids.iter().any(|known| known.key == fluid.key) {
            fluids.push(fluid);
        }
    }
    if fluids.len() < 2 {
        return Err(Unanswered::Contradiction("give two `fluids` or more, such as `battery-acid, alkaline-degreaser`".to_owned()));
    }
    let found = conflicts(&fluids, asked.reference);
    let proposal = shelves(&fluids, asked.reference);
    let name = |key: &str| asked.reference.name_of(key);
    let mut outcome = Outcome::default();
    for conflict in &found {
        let [one, other] = conflict.fluids;
        outcome = outcome.way(format!("{} beside {}", name(one), name(other)), false, reason(conflict));
    }
    if found.is_empty() {
        outcome = outcome.way("all of them together", true, "nothing is known that they do to each other");
    }
    for shelf in &proposal {
        let names: Vec<String> = shelf.fluids.iter().map(|key| name(key)).collect();
        outcome = outcome.fact(place(shelf), format!("{}. {}", names.join(", "), shelf.keep));
    }
    let [british, american] = tray(&vec![asked.answers.quantity(&EACH); fluids.len()])?;
    Ok(outcome
        .exact("a tray under all of it, by British practice", british)
        .says("the larger of 110 % of the largest and a quarter of all")
        .exact("by American practice", american)
        .says("the larger of the largest and a tenth of all")
        .drawn(draw(&proposal, &found, &name))
        .caution(
            "Nothing corrosive above the waist; alkalis above acids, never below; acids not in the steel cabinet of flammables.",
            "common-practice",
        )
        .caution("Local code, the insurer and the product's safety data sheet come first.", "common-practice"))
}

fn reason(conflict: &Conflict<'_>) -> String {
    let does: Vec<&str> = conflict.reaction.iter().map(|reaction| reaction.words()).collect();
    let makes = if does.is_empty() { String::new() } else { format!("they make {}; ", does.join(", ")) };
    format!("{makes}keep them {}. {}", conflict.apart.words(), conflict.why)
}

fn place(shelf: &Shelf) -> String {
    let locked = if shelf.locked { ", locked" } else { "" };
    format!("cupboard {}, {}{locked}", shelf.cupboard, shelf.height.words())
}
