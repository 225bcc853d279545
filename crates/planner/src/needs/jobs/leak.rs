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
            medium == "steam",
            "Test cold, with air or water at low pressure; boilers under the code in force and its inspector.",
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
