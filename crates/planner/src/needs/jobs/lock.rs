//! Locking a thread with an adhesive.
//!
//! The strength class follows from the size and from what must come undone; the torque that undoes it is held against the torque that
//! breaks the screw. Passive metals cure slowly and want an activator; plastics crack under it and get none.

use formulas::bond::{Heat, heat_to_undo};
use formulas::thread::{Thread, locking_volume, mean_gap};
use formulas::tightening::{Bolt, Condition, Locker, LoosenRisk, breaking_torque, loosen_risk, loosening_torque, preload_for_share};
use formulas::working::Recorder;
use reference::practice::Lock;
use shop::{Given, Kind};
use units::{Force, Length, Quantity, System, Volume, show};

use super::common::{Curing, cure, degrease};
use super::retain::metals::bond_metals;
use super::tighten::bolt::{GRADE, NAMED, Screw, THREAD, screw};
use super::tighten::scattered;
use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

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
    fields: &[THREAD.field(), NAMED.field(), GRADE.field(), METALS.field(), SERVICE.field(), PIECES.field()],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (metals, pieces, service) = (answers.words(&METALS), answers.number(&PIECES), answers.word(&SERVICE));
    let screw = screw(bench, metals)?;
    let asked = match service {
        "adjuster" => Lock::Adjuster,
        "never again" => Lock::ForGood,
        "assembled" => Lock::Assembled,
        "calibrating" => Lock::Calibrating,
        _ => Lock::Removable,
    };
    let row = bench.locking(asked.case(screw.thread.major, |group| bench.any_is(metals, group)))?;
    let task = |steps| vec![Task { consequence: Consequence::SlowsOrDirties, times_a_year: bench.times_a_year(), steps }];
    if row.ranked.is_empty() {
        return Ok(task(vec![Step::refused("lock", row.why.clone()).spares(metals)]));
    }
    let mut steps = vec![degrease(bench, metals, Dose::ml(2.0 * pieces), true)];
    let activated = bench.all_are(metals, "passive-metals");
    if activated {
        steps.push(activate(pieces));
    }
    let mut lock = Step::new("lock", "one ring of drops where the nut will sit; in a blind hole to its bottom")
        .ranked(&row.ranked, row.why.clone(), row.source.as_str())
        .demand("stands the room's heat", Test::Stands { hottest: bench.room.hottest }, "a cured locker softens with heat", "iso-10964")
        .spares(metals)
        .dose(Dose::volume(locker(r, &screw.thread)? * pieces));
    if let Some(undoing) = undoing(r, &screw, row.ranked.first().map_or("", String::as_str), service, bench.shop.units)? {
        lock = lock.mind(undoing, "iso-10964");
    }
    let lock = lock
        .mind("Never the only security of brakes, steering or lifting gear.", "common-practice")
        .mind("May make the skin allergic: nitrile gloves.", "un-ghs");
    let curing = Curing { gap: Length::from_base(GAP_OF_DATA_SHEETS_M), metals: bond_metals(bench, metals), activated, own: None };
    steps.push(cure(r, lock, bench, &curing)?);
    Ok(task(steps))
}

/// The times of a threadlocker are given for its own thread, as if for this gap; *from memory* of data sheets.
const GAP_OF_DATA_SHEETS_M: f64 = 0.05e-3;

/// A nut is about eight tenths of a diameter high; ISO 4032, *from memory*.
fn nut(thread: &Thread) -> Length {
    0.8 * thread.major
}

/// Locker for a nut's length of thread: what the thread holds, doubled for waste by *common practice*.
fn locker<R: Recorder>(r: &mut R, thread: &Thread) -> Result<Volume, Complaint> {
    let gap = mean_gap(r, thread)?;
    Ok(2.0 * locking_volume(r, thread, nut(thread), gap)?)
}

/// What it takes to undo the screw, and whether it breaks first.
fn undoing<R: Recorder>(r: &mut R, screw: &Screw, class: &str, service: &str, units: System) -> Result<Option<String>, Complaint> {
    /// A screw that holds something is reckoned at three quarters of its proof load; Shigley.
    const SHARE_OF_PROOF: f64 = 0.75;
    let Some(grade) = screw.grade else { return Ok(None) };
    let strength = match class {
        "threadlock-low" => Locker::Low,
        "threadlock-high" => Locker::High,
        // A wicking locker cures to about the strength of a medium one.
        _ => Locker::Medium,
    };
    let preload =
        if service == "adjuster" { Force::from_base(0.0) } else { preload_for_share(r, &screw.thread, grade.proof, SHARE_OF_PROOF)? };
    let bolt = Bolt::hexagon(screw.thread);
    let friction = Condition::AsDelivered.friction().low;
    let off = loosening_torque(r, &bolt, strength, nut(&screw.thread), preload, friction)?;
    let breaking = breaking_torque(r, &screw.thread, grade.tensile)?;
    let (takes, breaks) = (scattered(off.total, units), show(breaking, units));
    let heat = show(heat_to_undo(Heat::Standard), units);
    let counted = &screw.counted;
    Ok(Some(match loosen_risk(&off, breaking) {
        LoosenRisk::Safe => format!("Cured and tight it comes undone cold with {takes}; {counted} breaks at {breaks}."),
        LoosenRisk::Near => {
            format!(
                "Cured and tight it takes {takes} to undo, and {counted} breaks at {breaks}: if it does not give, heat it to about {heat}."
            )
        }
        LoosenRisk::HeatFirst => format!(
            "Heat it to about {heat} before you undo it: cold it takes {takes}, and {counted} breaks at {breaks}. Never heat a hardened, \
             plated or painted part, a seal, or a closed vessel."
        ),
    }))
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
