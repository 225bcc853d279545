//! Freeing a seized fastener, and greasing it so that it does not seize again.

use formulas::working::Recorder;
use shop::{Given, Kind};
use units::{Length, Quantity, Temperature, in_celsius};

use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const THREAD: Given<Length> = Given::quantity("thread", "8 mm", "common-practice", "major diameter of the thread");
const METALS: Given<Vec<String>> = Given::materials("metals", "mild-steel", "common-practice", "what screw and nut are made of");
const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "40 °C", "common-practice", "hottest it gets in use");
const LOCKED: Given<bool> = Given::flag("locked", "false", "common-practice", "whether a threadlocker holds it, not rust");
const PIECES: Given<f64> = Given::number("pieces", "2", "common-practice", "how many each time");

pub(super) static KIND: Kind = Kind {
    name: "free",
    about: "freeing seized screws, nuts and pins",
    fields: &[THREAD.field(), METALS.field(), TEMPERATURE.field(), LOCKED.field(), PIECES.field()],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, _r: &mut R) -> Result<Vec<Task>, Complaint> {
    /// Beyond this an oil dries out of a thread, °C; *common practice*.
    const HOT_C: f64 = 120.0;
    let answers = bench.answers();
    let (metals, temperature): (_, Temperature) = (answers.words(&METALS), answers.quantity(&TEMPERATURE));
    let ml = soak_ml(answers.quantity(&THREAD)) * answers.number(&PIECES);
    let mut steps = Vec::new();
    if answers.flag(&LOCKED) {
        steps.push(
            Step::new("loosen", "heat the nut to about 250 °C (480 °F) and turn it hot; clean the thread with a wire brush and solvent")
                .turn(bench.cleaning("old-threadlocker")?, 0)
                .spares_briefly(metals)
                .dose(Dose::ml(ml))
                .mind(
                    "Oil does not creep into a cured locker. Heat first, solvent only when cold again; the fume irritates.",
                    "common-practice",
                ),
        );
    } else {
        steps.push(
            Step::new("soak", "wet it, tap it, wait an hour, wet it again; overnight if you can")
                .classes(
                    &["penetrating-oil"],
                    &["water-displacing-spray", "kerosene"],
                    "it creeps where a machine oil is too thick to go",
                    "common-practice",
                )
                .spares_briefly(metals)
                .dose(Dose::ml(ml))
                .mind("Wipe it off and let it dry before any heat: it burns, and its vapour more so.", "common-practice")
                .mind(
                    "No heat on hardened parts, bearings, springs, wheels or anything closed that could \
                         burst.",
                    "common-practice",
                ),
        );
    }
    let galls = metals.iter().any(|metal| bench.reference.is_a(metal, "passive-metals"));
    let (right, will_do, why): (&[&str], &[&str], _) = if galls || in_celsius(temperature) > HOT_C {
        (&["anti-seize"], &["moly-grease"], "it seized once; only solids stay where it is hot or the metal galls")
    } else {
        (
            &["anti-seize", "ep-grease"],
            &["lithium-grease", "light-machine-oil", "hydraulic-oil", "slideway-oil", "rust-oil"],
            "it seized once and should not again",
        )
    };
    steps.push(
        Step::new("grease it again", "brush the thread clean, thin on the thread and under the head")
            .classes(right, will_do, why, "common-practice")
            .demand("stands the heat", Test::Stands { hottest: temperature }, "what melts or cokes locks the thread", "common-practice")
            .spares(metals)
            .dose(Dose::ml(0.2 * ml))
            .mind("A greased thread needs less torque than a dry one: two thirds at most.", "common-practice"),
    );
    Ok(vec![Task { consequence: Consequence::SlowsOrDirties, times_a_year: bench.times_a_year(), steps }])
}

/// Two wettings of a millilitre on a thread of 8 mm, with the square of the size; *common practice*.
fn soak_ml(thread: Length) -> f64 {
    2.0 * (thread.base() / 0.008).powi(2)
}
