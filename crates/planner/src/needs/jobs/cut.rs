//! Cutting metal and plastic: a task for each material and operation.
//!
//! Which fluid serves which cut is a matter of practice, tabled by material and operation; how much follows from the size of the hole,
//! the thread or the cut. Each combination counts alone: that brass is cut dry says nothing about tapping steel.

use formulas::cutting::{DROP_ML, drops_per_hole, tap_drops};
use formulas::oil_mist::{LIMIT_MG_PER_M3, mist_concentration};
use formulas::working::Recorder;
use handling::fire::metal_fire;
use reference::practice::Cut;
use reference::{Form, Operation, Trait};
use shop::{Given, Kind};
use units::{Length, MassDensity, Quantity, VolumeRate};

use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
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
    let times_a_year = bench.times_a_year();
    let mut tasks = Vec::new();
    for material in materials {
        for operation in answers.words(&OPERATIONS) {
            let Some(operation) = Operation::ALL.into_iter().find(|known| known.word() == operation) else { continue };
            let from = r.kept();
            let name = format!("{operation} {}", bench.reference.name_of(material));
            let Some(row) = practice(bench, material, operation) else {
                let step = Step::refused(name, "no practice is known for it; ask whoever sells the material, or try it dry on scrap");
                tasks.push(Task { consequence: Consequence::Spoils, times_a_year, steps: vec![step] });
                continue;
            };
            let step = if row.ranked.is_empty() {
                Step::refused(name, row.why.clone())
            } else {
                let pieces = answers.number(&PIECES);
                let ml = amount_ml(operation, answers.quantity(&DIAMETER), answers.quantity(&DEPTH), r)? * pieces;
                // A wheel is not flooded with wax.
                let rubbed = Dose::ml(ml.min(BRUSH_ML * pieces));
                let step = Step::new(name, way(operation)).ranked(&row.ranked, row.why.clone(), row.source.as_str()).dose(Dose::ml(ml));
                let step = step.dose_of(Form::Solid, rubbed).dose_of(Form::Paste, rubbed);
                let step = mist(fire(step, material), bench, operation, row, ml, r)?;
                // Metals are wiped after the cut; what cracks a plastic cracks it in a minute.
                let touched = std::slice::from_ref(material);
                if bench.any_is(touched, "metals") { step.spares_briefly(touched) } else { step.spares(touched) }
            };
            let burns = metal_fire(material, operation == Operation::Grind);
            let step = burns.into_iter().fold(step, |step, fire| step.mind(fire, "common-practice"));
            tasks.push(Task { consequence: consequence(row), times_a_year, steps: vec![step.worked(from..r.kept())] });
        }
    }
    Ok(tasks)
}

/// The row of the material or its group, else that of the metal its ISO 513 letter stands for.
fn practice<'a>(bench: &'a Bench<'_>, material: &str, operation: Operation) -> Option<&'a Cut> {
    bench.reference.cut(material, operation).or_else(|| {
        let like = match bench.reference.material(material)?.iso_513? {
            'P' | 'H' => "alloy-steel",
            'M' => "stainless",
            'K' => "cast-iron",
            'N' => "aluminium",
            'S' => "titanium",
            _ => return None,
        };
        bench.reference.cut(like, operation)
    })
}

/// What makes less mist than neat oil; *common practice*. Named only where practice puts it on the cut: water on magnesium feeds a fire.
const LESS_MIST: &[&str] = &["emulsion", "semi-synthetic", "tapping-paste", "cutting-wax", "dry-cutting"];

/// What the oil of one working hour leaves in the room's air, minded where it passes the recommended limit.
fn mist<R: Recorder>(step: Step, bench: &Bench<'_>, operation: Operation, row: &Cut, ml: f64, r: &mut R) -> Result<Step, Complaint> {
    /// Density of a cutting oil, kg/m³; *typical, from memory*.
    const OIL_KG_PER_M3: f64 = 880.0;
    /// Oil in a water mix; *common practice*.
    const OIL_IN_MIX: f64 = 0.06;
    /// Shares that become mist; *common practice*.
    const BY_BRUSH: f64 = 0.02;
    const BY_WHEEL: f64 = 0.3;
    let best = row.ranked.first().map_or("", String::as_str);
    let instead: Vec<&str> = row.ranked.iter().skip(1).map(String::as_str).filter(|class| LESS_MIST.contains(class)).collect();
    let instead = match instead.as_slice() {
        [] => String::new(),
        classes => format!(", or take {}", classes.iter().map(|class| bench.reference.name_of(class)).collect::<Vec<_>>().join(" or ")),
    };
    let oil = match best {
        "dry-cutting" | "cutting-wax" | "neutral-detergent" => return Ok(step),
        "emulsion" | "semi-synthetic" => OIL_IN_MIX,
        _ => 1.0,
    };
    let share = if operation == Operation::Grind { BY_WHEEL } else { BY_BRUSH };
    let an_hour = VolumeRate::from_base(oil * ml * 1e-6 / 3600.0);
    let density = MassDensity::from_base(OIL_KG_PER_M3);
    let concentration = mist_concentration(r, an_hour, density, share, bench.room.volume, bench.room.air_changes)?;
    Ok(step.mind_if(
        concentration > LIMIT_MG_PER_M3,
        format!(
            "Kept up with the door shut, about {concentration:.1} mg/m³ of oil mist comes to hang in this room (within a factor of three; \
             {LIMIT_MG_PER_M3} is recommended for a working day): open the door, go slower, put on less oil{instead}. Local limits and the \
             data sheet come first."
        ),
        "niosh-98-102",
    ))
}

/// Where practice allows a dry cut, a fluid only makes it quicker and cleaner; elsewhere the work or the tool is lost without one.
fn consequence(row: &Cut) -> Consequence {
    if row.ranked.iter().any(|class| class == "dry-cutting") { Consequence::SlowsOrDirties } else { Consequence::Spoils }
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

/// A brushful, and as much off a stick; *common practice, no source*.
const BRUSH_ML: f64 = 0.3;

/// Fluid for one hole, thread or cut, mL.
fn amount_ml<R: Recorder>(operation: Operation, diameter: Length, depth: Length, r: &mut R) -> Result<f64, Complaint> {
    /// What a minute of grinding or sawing takes; *common practice, no source*.
    const GRIND_ML: f64 = 20.0;
    const SAW_ML: f64 = 0.12;
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
