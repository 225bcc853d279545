//! Retaining a cylindrical joint with an adhesive: a bush, a bearing, a worn seat.
//!
//! The class follows from the gap, the heat and whether it must come off again; its strength, cut down for gap, metal, heat and length
//! and divided by the safety, must carry the load.

#![expect(non_snake_case, reason = "symbols match the source")]

use std::f64::consts::PI;

use formulas::math::{max, min};
use formulas::sources::{COMMON_PRACTICE, DEFINITION};
use formulas::working::Recorder;
use formulas::{Source, given, step};
use shop::{Given, Kind};
use units::{Force, Length, Pressure, Quantity, System, Temperature, show};

use super::common::{cures, degrease, read_off, to_celsius};
use super::lock::activate;
use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const DIAMETER: Given<Length> = Given::quantity("diameter", "12 mm", "common-practice", "diameter of the shaft or pin");
const HOLE: Given<Length> =
    Given::quantity("hole", "0 mm", "common-practice", "diameter of the hole where you measured it; the gap is then worked out");
const GAP: Given<Length> =
    Given::quantity("gap", "0.04 mm", "common-practice", "hole less shaft, both by diameter, where the hole is not given");
const LENGTH: Given<Length> = Given::quantity("length", "12 mm", "common-practice", "length of the joint");
const METALS: Given<Vec<String>> = Given::materials("metals", "mild-steel", "common-practice", "what shaft and hub are made of");
const LOAD: Given<Force> = Given::quantity("load", "0 N", "common-practice", "steady load along or around the joint, where it is known");
const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "40 °C", "common-practice", "hottest the joint gets");
const REMOVABLE: Given<bool> = Given::flag("removable", "false", "common-practice", "whether it must come off again");
const PIECES: Given<f64> = Given::number("pieces", "1", "common-practice", "how many joints each time");

pub(super) static KIND: Kind = Kind {
    name: "retain",
    about: "holding a bush, bearing or pin in its seat with an adhesive",
    fields: &[
        DIAMETER.field(),
        HOLE.field(),
        GAP.field(),
        LENGTH.field(),
        METALS.field(),
        LOAD.field(),
        TEMPERATURE.field(),
        REMOVABLE.field(),
        PIECES.field(),
    ],
};

/// The joint in metres and °C.
struct Joint {
    diameter: f64,
    length: f64,
    gap: f64,
    celsius: f64,
}

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    /// From here a paste fills the gap, and it wants the activator.
    const WIDE_M: f64 = 0.15e-3;
    let answers = bench.answers();
    let (metals, pieces) = (answers.words(&METALS), answers.number(&PIECES));
    let temperature: Temperature = answers.quantity(&TEMPERATURE);
    let hottest = if temperature > bench.room.hottest { temperature } else { bench.room.hottest };
    let diameter = answers.quantity(&DIAMETER).base();
    let gap = diametral_gap(r, diameter, answers.quantity(&HOLE).base(), answers.quantity(&GAP).base())?;
    let joint = Joint { diameter, length: answers.quantity(&LENGTH).base(), gap, celsius: to_celsius(hottest) };
    let row = bench.locking(case(&joint, answers.flag(&REMOVABLE)))?;
    let task = |steps| vec![Task { consequence: Consequence::Spoils, times_a_year: bench.times_a_year(), steps }];
    if row.ranked.is_empty() {
        return Ok(task(vec![Step::refused("retain", row.why.clone()).spares(metals)]));
    }
    let mut steps = vec![degrease(bench, metals, Dose::ml(3.0 * pieces), true)];
    if joint.gap > WIDE_M || bench.any_is(metals, "passive-metals") {
        steps.push(activate(pieces));
    }
    let mut retain = Step::new("retain", "a ring on both leading edges, put together with a twist, wipe; nothing near a bearing's balls")
        .ranked(&row.ranked, row.why.clone(), row.source.as_str())
        .demand(
            "bridges the gap",
            Test::Gap { gap: Length::from_base(joint.gap.max(0.0)) },
            "beyond its gap it does not cure",
            "petrie-adhesives",
        )
        .demand("stands the heat", Test::Stands { hottest }, "a cured retainer softens with heat", "iso-10123")
        .spares(metals)
        .dose(Dose::ml(gap_ml(r, &joint) * pieces));
    let load = answers.quantity(&LOAD).base();
    if load > 0.0 {
        let hot = row.ranked.first().is_some_and(|class| class == "retainer-high-temperature");
        let factor = strength_factor(bench, &joint, metals, hot, r)?;
        let needed = stress(r, &joint, load);
        retain = retain.demand(
            "carries the load",
            Test::Strength { needed, factor },
            format!("of the strength on a steel pin {:.0} % is left for gap, metal, heat, length and safety", factor * 100.0),
            "iso-10123",
        );
    }
    steps.push(cures(minded(retain, &joint), bench));
    Ok(task(steps))
}

fn minded(step: Step, joint: &Joint) -> Step {
    let gap = show(Length::from_base(joint.gap.max(0.0)), System::Metric);
    step.mind(
        format!(
            "The part may sit off centre by up to half the clearance of {gap}; where that matters, centre it \
             while it cures."
        ),
        "common-practice",
    )
    .mind(
        "Off again: press it, or heat the joint to about 250 °C and pull hot, outdoors; never heat bearings, hardened parts, light \
             alloys, rubber or sealed volumes.",
        "common-practice",
    )
    .mind(
        "May make the skin allergic: nitrile gloves. Never the only security of brakes, steering or \
                 lifting gear; an estimate for hobby use, test on scrap.",
        "un-ghs",
    )
}

/// Hole less shaft; the gap as given where the hole is not measured. In metres.
fn diametral_gap<R: Recorder>(r: &mut R, shaft: f64, hole: f64, given: f64) -> Result<f64, Complaint> {
    /// More interference than this share of the diameter splits hubs; *common practice*.
    const TIGHTEST: f64 = 0.002;
    if hole <= 0.0 {
        return Ok(given);
    }
    given!(r, D["mm"] = hole * 1e3, "hole");
    given!(r, d["mm"] = shaft * 1e3, "shaft");
    step!(r, c["mm"] = D - d, DEFINITION);
    if c < -TIGHTEST * d {
        let (hole, shaft) = (show(Length::from_base(hole), System::Metric), show(Length::from_base(shaft), System::Metric));
        return Err(Complaint::Contradiction {
            field: "hole",
            what: format!("a hole of {hole} does not go over a shaft of {shaft}"),
            mend: "Check that the two were not exchanged; a press fit this tight needs no adhesive.",
        });
    }
    Ok(c * 1e-3)
}

/// The case of the locking table.
fn case(joint: &Joint, removable: bool) -> &'static str {
    /// Where a table's limit is met, measuring is not finer than this.
    const EXACT_M: f64 = 1e-9;
    let within = |limit_mm: f64| joint.gap <= limit_mm * 1e-3 + EXACT_M;
    match () {
        () if !within(0.25) => "retain-too-loose",
        () if removable => "retain-removable",
        () if joint.celsius > 120.0 => "retain-hot",
        () if within(0.02) => "retain-press",
        () if within(0.05) => "retain-slip-small",
        () if within(0.15) => "retain-slip",
        () => "retain-worn",
    }
}

/// What the gap holds, doubled for waste, and one drop at least.
fn gap_ml<R: Recorder>(r: &mut R, joint: &Joint) -> f64 {
    given!(r, d["mm"] = joint.diameter * 1e3, "diameter");
    given!(r, L["mm"] = joint.length * 1e3, "length");
    given!(r, c["mm"] = joint.gap.max(0.0) * 1e3, "gap by diameter");
    step!(r, V["mm³"] = PI * d * L * c / 2.0, DEFINITION);
    step!(r, V_d["mL"] = max(2.0 * V / 1000.0, 0.03), COMMON_PRACTICE);
    V_d
}

/// What the load asks of the face. No more length is counted than twice the diameter.
fn stress<R: Recorder>(r: &mut R, joint: &Joint, load: f64) -> Pressure {
    given!(r, F["N"] = load, "load");
    given!(r, d["mm"] = joint.diameter * 1e3, "diameter");
    given!(r, L["mm"] = joint.length * 1e3, "length");
    step!(r, A["mm²"] = PI * d * min(L, 2.0 * d), DEFINITION);
    step!(r, tau["MPa"] = F / A, DEFINITION);
    Pressure::from_base(tau * 1e6)
}

/// What is left of the class strength for gap, heat, metal and length, divided by the safety.
fn strength_factor<R: Recorder>(bench: &Bench<'_>, joint: &Joint, metals: &[String], hot: bool, r: &mut R) -> Result<f64, Complaint> {
    /// Safety where nothing was tested; *common practice*.
    const SAFETY: f64 = 3.0;
    /// The curves begin here; colder joints are as strong.
    const ROOM_C: f64 = 22.0;
    let heat = if hot { "retaining-temperature-high" } else { "retaining-temperature-standard" };
    let left = |curve: &str, at: f64| Ok::<f64, Complaint>(read_off(bench.curve(curve)?, at).unwrap_or(0.0));
    let worst = metals.iter().map(|metal| bench.reference.retaining_factor(metal).map_or(0.0, |row| row.factor)).fold(1.0, f64::min);
    given!(r, f_gap [] = left("retaining-gap", joint.gap.max(0.0) * 1e3)?, "share left by the gap");
    given!(r, f_T [] = left(heat, joint.celsius.max(ROOM_C))?, "share left by the heat");
    given!(r, f_L [] = left("retaining-length", (joint.length / joint.diameter).min(2.0))?, "share left by the length");
    given!(r, f_mat [] = worst, "share on the worse of the metals");
    given!(r, S [] = SAFETY, "safety");
    step!(r, f [] = f_gap * f_T * f_L * f_mat / S, Source("iso-10123"));
    Ok(f)
}
