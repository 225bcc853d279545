//! Finding leaks with bubbles, never with a flame.

use formulas::working::Recorder;
use handling::bars::FLAME_LEAK;
use reference::Trait;
use shop::{Given, Kind};

use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::verdict::Grade;

const MEDIUM: Given<&'static str> = Given::choice(
    "medium",
    &["compressed-air", "steam", "fuel-gas", "refrigerant", "oxygen"],
    "compressed-air",
    "common-practice",
    "what runs in it",
);
const METALS: Given<Vec<String>> = Given::materials("metals", "brass", "common-practice", "what the fittings are made of");
const JOINTS: Given<f64> = Given::number("joints", "10", "common-practice", "how many joints each time");

pub(super) static KIND: Kind =
    Kind { name: "leak test", about: "looking for leaks in pipes and fittings", fields: &[MEDIUM.field(), METALS.field(), JOINTS.field()] };

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, _r: &mut R) -> Result<Vec<Task>, Complaint> {
    /// What a spray or brush puts on one joint, mL; *common practice*.
    const ML_A_JOINT: f64 = 2.0;
    let answers = bench.answers();
    let (medium, metals) = (answers.word(&MEDIUM), answers.words(&METALS));
    let task = |steps| vec![Task { consequence: Consequence::StopsOrHarms, times_a_year: bench.times_a_year(), steps }];
    if let Some(refusal) =
        ["oxygen", "refrigerant"].into_iter().find(|key| *key == medium).and_then(|key| bench.reference.refusals.get(key))
    {
        return Ok(task(vec![Step::refused("leak test", refusal.why.clone())]));
    }
    if medium == "steam" {
        return Ok(task(vec![steam(metals)]));
    }
    let gas = medium == "fuel-gas";
    let soap: &[&str] = if gas { &[] } else { &["neutral-detergent"] };
    let mut step = Step::new("leak test", "under pressure, wet each joint all round, wait a minute, look for bubbles; rinse and dry")
        .classes(&["leak-test-fluid"], soap, "bubbles show what ears and fingers miss", "en-14291")
        .spares_briefly(metals)
        .dose(Dose::ml(ML_A_JOINT * answers.number(&JOINTS)))
        .never(&FLAME_LEAK)
        .mind_if(
            gas,
            "Gas pipes in the house are work for a licensed person. If you smell gas: shut it, open up, no switch, out.",
            "common-practice",
        )
        .mind_if(
            medium == "compressed-air",
            "At its working pressure at most, and from the side. A receiver is proved with water by a competent person, never with air: air \
             that is let go bursts it.",
            "common-practice",
        );
    if bench.any_is(metals, "copper-alloys") {
        step = step.demand(
            "no ammonia on brass",
            Test::Without { traits: &[Trait::Ammonia], else_grade: Grade::Harmful },
            "ammonia and amines crack stressed brass",
            "en-14291",
        );
    }
    Ok(task(vec![step]))
}

/// Steam pipework is tried with water, which gives way at once where air would throw pieces about.
fn steam(metals: &[String]) -> Step {
    Step::new(
        "leak test",
        "fill with cold water until no air is left in it, raise the pressure by hand pump, dry each joint, look for drops",
    )
    .classes(&["quench-water"], &[], "water gives no push once it leaks, air and steam do", "common-practice")
    .spares_briefly(metals)
    .dose(Dose::ml(FILL_ML))
    .never(&FLAME_LEAK)
    .mind("Cold, and not above its working pressure. Never test a boiler or a receiver with air: it bursts like a bomb.", "common-practice")
    .mind("Boilers, their fittings and safety valves: under the code in force and its inspector.", "common-practice")
}

/// Water in the pipework of a small engine, mL; *common practice*.
const FILL_ML: f64 = 500.0;
