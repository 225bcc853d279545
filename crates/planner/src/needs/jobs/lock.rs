//! Locking a thread with an adhesive.
//!
//! The strength class follows from the size and from what must come undone; passive metals cure slowly and want an activator; plastics
//! crack under it and get none.

use formulas::working::Recorder;
use shop::{Given, Kind};
use units::{Length, Quantity};

use super::common::{cures, degrease};
use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const THREAD: Given<Length> = Given::quantity("thread", "6 mm", "common-practice", "major diameter of the thread");
const METALS: Given<Vec<String>> = Given::materials("metals", "mild-steel", "common-practice", "what screw and nut are made of");
const SERVICE: Given<&'static str> = Given::choice(
    "service",
    &["adjuster", "removable", "never again", "assembled", "calibrating"],
    "removable",
    "common-practice",
    "what is asked of it",
);
const PIECES: Given<f64> = Given::number("pieces", "10", "common-practice", "how many screws each time");

pub(super) static KIND: Kind = Kind {
    name: "lock thread",
    about: "keeping a screw from working loose",
    fields: &[THREAD.field(), METALS.field(), SERVICE.field(), PIECES.field()],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, _r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (thread, metals, pieces) = (answers.quantity(&THREAD), answers.words(&METALS), answers.number(&PIECES));
    let row = bench.locking(case(bench, thread.base(), metals, answers.word(&SERVICE)))?;
    let task = |steps| vec![Task { consequence: Consequence::SlowsOrDirties, times_a_year: bench.times_a_year(), steps }];
    if row.ranked.is_empty() {
        return Ok(task(vec![Step::refused("lock", row.why.clone()).spares(metals)]));
    }
    let mut steps = vec![degrease(bench, metals, Dose::ml(2.0 * pieces), true)];
    if bench.all_are(metals, "passive-metals") {
        steps.push(activate(pieces));
    }
    let lock = Step::new("lock", "one ring of drops where the nut will sit; in a blind hole to its bottom")
        .ranked(&row.ranked, row.why.clone(), row.source.as_str())
        .demand("stands the room's heat", Test::Stands { hottest: bench.room.hottest }, "a cured locker softens with heat", "iso-10964")
        .spares(metals)
        .dose(Dose::ml(locker_ml(thread.base()) * pieces))
        .mind("Never the only security of brakes, steering or lifting gear.", "common-practice")
        .mind("May make the skin allergic: nitrile gloves.", "un-ghs");
    steps.push(cures(lock, bench));
    Ok(task(steps))
}

/// The case of the locking table.
fn case(bench: &Bench<'_>, size: f64, metals: &[String], service: &str) -> &'static str {
    const SMALL_M: f64 = 0.005;
    const STUD_M: f64 = 0.008;
    match service {
        _ if bench.any_is(metals, "plastics") => "in-plastic",
        "calibrating" => "calibrating",
        "assembled" => "already-assembled",
        "adjuster" => "small-or-adjuster",
        "never again" if size >= STUD_M => "stud",
        _ if size <= SMALL_M || bench.any_is(metals, "brass") => "small-or-adjuster",
        _ => "general",
    }
}

/// Locker in a nut's length of thread, doubled for waste: 0.02 mL at 6 mm, growing with the cube of the size; *common practice*.
fn locker_ml(size: f64) -> f64 {
    0.02 * (size / 0.006).powi(3)
}

/// The step that starts the cure where the metal does not.
pub(super) fn activate(pieces: f64) -> Step {
    Step::new("activate", "spray or brush thin, let it dry for a minute; no flame near")
        .classes(
            &["activator"],
            &[],
            "a passive metal or a wide gap does not start the cure by itself; it costs 10–30 % of the strength",
            "common-practice",
        )
        .dose(Dose::ml(0.5 * pieces))
}
