//! Cutting metal and plastic: a task for each material and operation.
//!
//! Which fluid serves which cut is a matter of practice, tabled by material and operation; how much follows from the size of the hole,
//! the thread or the cut. Each combination counts alone: that brass is cut dry says nothing about tapping steel.

use formulas::cutting::{drops_per_hole, tap_drops};
use formulas::working::Recorder;
use reference::{Operation, Trait};
use shop::{Given, Kind};
use units::{Length, Quantity};

use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::{Complaint, count};
use crate::verdict::Grade;

const MATERIALS: Given<Vec<String>> = Given::materials("materials", "mild-steel", "common-practice", "what is cut");
const OPERATIONS: Given<Vec<String>> = Given::choices(
    "operations",
    &["turn", "mill", "drill", "ream", "tap", "part", "saw", "grind", "knurl"],
    "turn, drill",
    "common-practice",
    "how it is cut",
);
const DIAMETER: Given<Length> = Given::quantity("diameter", "6 mm", "common-practice", "usual diameter of holes and threads");
const DEPTH: Given<Length> = Given::quantity("depth", "12 mm", "common-practice", "usual depth of holes and threads");
const PIECES: Given<f64> = Given::number("pieces", "10", "common-practice", "how many holes, threads or cuts each time");

pub(super) static KIND: Kind = Kind {
    name: "cut",
    about: "turning, milling, drilling, tapping, sawing, grinding",
    fields: &[MATERIALS.field(), OPERATIONS.field(), DIAMETER.field(), DEPTH.field(), PIECES.field()],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let materials = answers.words(&MATERIALS);
    let times_a_year = bench.times_a_year() / count(materials.len().max(1));
    let mut tasks = Vec::new();
    for material in materials {
        for operation in answers.words(&OPERATIONS) {
            let Some(operation) = Operation::ALL.into_iter().find(|known| known.word() == operation) else { continue };
            let Some(row) = bench.reference.cut(material, operation) else { continue };
            let name = format!("{operation} {}", bench.reference.name_of(material));
            let step = if row.ranked.is_empty() {
                Step::refused(name, row.why.clone())
            } else {
                let ml = amount_ml(operation, answers.quantity(&DIAMETER), answers.quantity(&DEPTH), r)? * answers.number(&PIECES);
                fire(Step::new(name, way(operation)).ranked(&row.ranked, row.why.clone(), row.source.as_str()), material)
                    .spares(std::slice::from_ref(material))
                    .dose(Dose::ml(ml))
            };
            tasks.push(Task { consequence: consequence(operation), times_a_year, steps: vec![step] });
        }
    }
    Ok(tasks)
}

/// Threads, reamed holes and parting cuts are lost without a fluid; the others are slower and rougher.
fn consequence(operation: Operation) -> Consequence {
    match operation {
        Operation::Tap | Operation::Ream | Operation::Part => Consequence::Spoils,
        _ => Consequence::SlowsOrDirties,
    }
}

fn way(operation: Operation) -> &'static str {
    match operation {
        Operation::Tap => "wet tap and hole, back off and wet again every half turn",
        Operation::Drill | Operation::Ream => "drops down the tool, again every one and a half diameters of depth",
        Operation::Saw => "a drop every 20 seconds",
        Operation::Grind => "a steady stream, or dry with the dust taken off",
        _ => "brush on the tool's edge",
    }
}

/// Fluid for one hole, thread or cut, mL.
fn amount_ml<R: Recorder>(operation: Operation, diameter: Length, depth: Length, r: &mut R) -> Result<f64, Complaint> {
    /// A brushful, and what a minute of grinding or sawing takes; *common practice, no source*.
    const BRUSH_ML: f64 = 0.3;
    const GRIND_ML: f64 = 20.0;
    const SAW_ML: f64 = 0.12;
    const DROP_ML: f64 = 0.04;
    Ok(match operation {
        Operation::Drill | Operation::Ream => drops_per_hole(r, diameter, depth).0.base() * 1e6,
        Operation::Tap => f64::from(tap_drops(r, diameter, depth)?) * DROP_ML,
        Operation::Saw => SAW_ML,
        Operation::Grind => GRIND_ML,
        _ => BRUSH_ML,
    })
}

/// Metals that burn bar fluids that feed or poison the fire.
fn fire(step: Step, material: &str) -> Step {
    match material {
        "magnesium" => step.demand(
            "no water on magnesium",
            Test::Without { traits: &[Trait::WaterMix, Trait::Solvent], else_grade: Grade::Harmful },
            "burning magnesium tears hydrogen out of water; have class D powder or dry sand ready",
            "common-practice",
        ),
        "titanium" => step.demand(
            "no chlorine on titanium",
            Test::Without { traits: &[Trait::Chlorinated], else_grade: Grade::Wrong },
            "chlorine compounds crack hot titanium",
            "common-practice",
        ),
        _ => step,
    }
}
