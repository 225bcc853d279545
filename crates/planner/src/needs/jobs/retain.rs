//! Retaining a cylindrical joint with an adhesive: a bush, a bearing, a worn seat.
//!
//! The class follows from the gap, the heat and whether it must come off again; its strength, cut down for gap, metal, heat and length
//! and divided by the safety, must carry the load.

use formulas::working::Recorder;
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

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, _r: &mut R) -> Result<Vec<Task>, Complaint> {
    /// From here a paste fills the gap, and it wants the activator.
    const WIDE_M: f64 = 0.15e-3;
    let answers = bench.answers();
    let (metals, pieces) = (answers.words(&METALS), answers.number(&PIECES));
    let temperature: Temperature = answers.quantity(&TEMPERATURE);
    let hottest = if temperature > bench.room.hottest { temperature } else { bench.room.hottest };
    let diameter = answers.quantity(&DIAMETER).base();
    let gap = diametral_gap(diameter, answers.quantity(&HOLE).base(), answers.quantity(&GAP).base())?;
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
        .dose(Dose::ml(gap_ml(&joint) * pieces));
    let load = answers.quantity(&LOAD).base();
    if load > 0.0 {
        let hot = row.ranked.first().is_some_and(|class| class == "retainer-high-temperature");
        let factor = strength_factor(bench, &joint, metals, hot)?;
        let needed = Pressure::from_base(load / joint_area(&joint));
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
    step.mind(format!("The part may sit off centre by up to half the clearance of {gap}; where that matters, centre it while it cures."), "common-practice")
        .mind(
            "Off again: press it, or heat the joint to about 250 °C and pull hot, outdoors; never heat bearings, hardened parts, light \
             alloys, rubber or sealed volumes.",
            "common-practice",
        )
        .mind("May make the skin allergic: nitrile gloves. Never the only security of brakes, steering or lifting gear; an estimate for hobby use, test on scrap.", "un-ghs")
}

/// Hole less shaft; the gap as given where the hole is not measured.
fn diametral_gap(shaft: f64, hole: f64, given: f64) -> Result<f64, Complaint> {
    /// More interference than this share of the diameter splits hubs; *common practice*.
    const TIGHTEST: f64 = 0.002;
    if hole <= 0.0 {
        return Ok(given);
    }
    let gap = hole - shaft;
    if gap < -TIGHTEST * shaft {
        let (hole, shaft) = (show(Length::from_base(hole), System::Metric), show(Length::from_base(shaft), System::Metric));
        return Err(Complaint::Contradiction {
            field: "hole",
            what: format!("a hole of {hole} does not go over a shaft of {shaft}"),
            mend: "Check that the two were not exchanged; a press fit this tight needs no adhesive.",
        });
    }
    Ok(gap)
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

/// What the gap holds, doubled for waste, and one drop at least: V = 2·π·d·L·c/2.
fn gap_ml(joint: &Joint) -> f64 {
    const DROP_ML: f64 = 0.03;
    let volume = std::f64::consts::PI * joint.diameter * joint.length * joint.gap.max(0.0) / 2.0;
    (2.0 * volume * 1e6).max(DROP_ML)
}

/// The face that carries: no more length is counted than twice the diameter.
fn joint_area(joint: &Joint) -> f64 {
    std::f64::consts::PI * joint.diameter * joint.length.min(2.0 * joint.diameter)
}

/// What is left of the class strength for gap, heat, metal and length, divided by the safety.
fn strength_factor(bench: &Bench<'_>, joint: &Joint, metals: &[String], hot: bool) -> Result<f64, Complaint> {
    /// Safety where nothing was tested; *common practice*.
    const SAFETY: f64 = 3.0;
    /// The curves begin here; colder joints are as strong.
    const ROOM_C: f64 = 22.0;
    let curve = if hot { "retaining-temperature-high" } else { "retaining-temperature-standard" };
    let gap = read_off(bench.curve("retaining-gap")?, joint.gap.max(0.0) * 1e3).unwrap_or(0.0);
    let heat = read_off(bench.curve(curve)?, joint.celsius.max(ROOM_C)).unwrap_or(0.0);
    let length = read_off(bench.curve("retaining-length")?, (joint.length / joint.diameter).min(2.0)).unwrap_or(0.0);
    let metal = metals.iter().map(|metal| bench.reference.retaining_factor(metal).map_or(0.0, |row| row.factor)).fold(1.0, f64::min);
    Ok(gap * heat * length * metal / SAFETY)
}
