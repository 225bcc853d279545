//! Locking a thread with an adhesive.
//!
//! The strength class follows from the size and from what must come undone; passive metals cure slowly and want an activator.

use formulas::working::Recorder;
use shop::{Given, Kind};
use units::{Length, Quantity};

use super::common::degrease;
use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const THREAD: Given<Length> = Given::quantity("thread", "6 mm", "common-practice", "major diameter of the thread");
const METALS: Given<Vec<String>> = Given::materials("metals", "mild-steel", "common-practice", "what screw and nut are made of");
const SERVICE: Given<&'static str> =
    Given::choice("service", &["adjuster", "removable", "never again", "assembled"], "removable", "common-practice", "what is asked of it");
const PIECES: Given<f64> = Given::number("pieces", "10", "common-practice", "how many screws each time");

pub(super) static KIND: Kind = Kind {
    name: "lock thread",
    about: "keeping a screw from working loose",
    fields: &[THREAD.field(), METALS.field(), SERVICE.field(), PIECES.field()],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, _r: &mut R) -> Result<Vec<Task>, Complaint> {
    /// Locker in a nut's length of thread doubled for waste, mL at 6 mm; grows with the cube of the size. *Common practice.*
    const AT_6_MM_ML: f64 = 0.02;
    const SMALL_M: f64 = 0.005;
    const STUD_M: f64 = 0.008;
    let answers = bench.answers();
    let (thread, metals, pieces) = (answers.quantity(&THREAD), answers.words(&METALS), answers.number(&PIECES));
    let size = thread.base();
    let soft = metals.iter().any(|metal| metal == "brass");
    let (right, will_do, why): (&[&str], &[&str], &str) = match answers.word(&SERVICE) {
        "assembled" => (&["threadlock-wicking"], &[], "only a thin locker creeps into a thread that is already together"),
        "adjuster" => (&["threadlock-low"], &["threadlock-medium"], "an adjuster must still turn"),
        "never again" if size >= STUD_M => (&["threadlock-high"], &["threadlock-medium"], "a stud stays in for good; heat undoes it"),
        _ if size <= SMALL_M || soft => (&["threadlock-low"], &["threadlock-medium"], "a small or brass screw shears before a strong locker lets go"),
        _ => (&["threadlock-medium"], &["threadlock-low", "threadlock-high"], "holds against shaking and comes undone with a spanner"),
    };
    let dose = Dose::ml(AT_6_MM_ML * (size / 0.006).powi(3) * pieces);
    let mut steps = vec![degrease(metals, Dose::ml(2.0 * pieces), true)];
    if metals.iter().any(|metal| bench.reference.is_a(metal, "passive-metals")) {
        steps.push(
            Step::new("activate", "spray or brush thin, let it dry for a minute")
                .classes(&["activator"], &[], "a passive metal does not start the cure by itself", "common-practice")
                .dose(Dose::ml(0.5 * pieces)),
        );
    }
    steps.push(
        Step::new("lock", "one ring of drops where the nut will sit; in a blind hole to its bottom")
            .classes(right, will_do, why, "iso-10964")
            .demand("stands the room's heat", Test::Stands { hottest: bench.room.hottest }, "a cured locker softens with heat", "common-practice")
            .spares(metals)
            .dose(dose)
            .mind("Never the only security of brakes, steering or lifting gear.", "common-practice"),
    );
    Ok(vec![Task { consequence: Consequence::SlowsOrDirties, times_a_year: bench.times_a_year(), steps }])
}
