//! Tightening a screw that must be lubricated or kept from seizing.
//!
//! Stainless, aluminium and titanium gall whatever the torque and want solids; so does what gets hot. The rest wants a drop of oil, and
//! less torque than dry.

use formulas::working::Recorder;
use shop::{Given, Kind};
use units::{Length, Quantity, Temperature};

use super::common::to_celsius;
use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const THREAD: Given<Length> = Given::quantity("thread", "6 mm", "common-practice", "major diameter of the thread");
const METALS: Given<Vec<String>> = Given::materials("metals", "mild-steel", "common-practice", "what screw and nut are made of");
const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "40 °C", "common-practice", "hottest the screw gets");
const PIECES: Given<f64> = Given::number("pieces", "10", "common-practice", "how many screws each time");

pub(super) static KIND: Kind = Kind {
    name: "tighten",
    about: "tightening screws so that they hold and come undone again",
    fields: &[THREAD.field(), METALS.field(), TEMPERATURE.field(), PIECES.field()],
};

/// Beyond this an oil dries out of a thread, °C; *common practice*.
const HOT_C: f64 = 120.0;

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, _r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (metals, temperature): (_, Temperature) = (answers.words(&METALS), answers.quantity(&TEMPERATURE));
    let ml = drop_ml(answers.quantity(&THREAD).base()) * answers.number(&PIECES);
    let galls = metals.iter().any(|metal| bench.reference.is_a(metal, "passive-metals") && metal != "zinc-plate");
    let step = Step::new("grease the thread", "wipe clean; thinly on the thread and under the head, nowhere else");
    let step = if galls || to_celsius(temperature) > HOT_C {
        let why = if galls { "this metal galls and seizes in its own thread" } else { "oil bakes; the solids stay" };
        step.classes(&["anti-seize"], &["moly-grease", "ep-grease"], why, "common-practice").mind_if(
            galls,
            "Turn slowly: a thread that has begun to gall does not come back. No more than two thirds of the steel torque.",
            "common-practice",
        )
    } else {
        step.classes(
            &["light-machine-oil", "hydraulic-oil", "circulating-oil", "slideway-oil", "ep-grease"],
            &["spindle-oil", "gear-oil", "engine-oil", "lithium-grease", "rust-oil", "anti-seize"],
            "a dry thread scatters; a drop of oil makes the pull the same every time and keeps rust out",
            "common-practice",
        )
    };
    let [most, least] = wet_share_of_dry();
    let step = step
        .demand("stands the heat", Test::Stands { hottest: temperature }, "what melts or cokes locks the thread", "common-practice")
        .spares(metals)
        .dose(Dose::ml(ml))
        .mind(
            format!(
                "A thread with oil or paste takes {:.0} to {:.0} % of the torque given for dry; the \
                         dry torque would stretch the screw past its limit.",
                least * 100.0,
                most * 100.0
            ),
            "common-practice",
        )
        .mind("Wheels, brakes, steering, cylinder heads and lifting gear: only as the maker says.", "common-practice");
    Ok(vec![Task { consequence: Consequence::Spoils, times_a_year: bench.times_a_year(), steps: vec![step] }])
}

/// A drop on a 6 mm thread, more with the square of the size; *common practice*.
fn drop_ml(size: f64) -> f64 {
    0.04 * (size / 0.006).powi(2)
}

/// Torque over pull and diameter for a coarse thread of 10 mm at one friction for thread and head, from the torque equation of ISO 16047.
fn nut_factor(friction: f64) -> f64 {
    0.024 + 1.16 * friction
}

/// The share of the dry torque that gives the same pull when oiled (friction 0.10) where dry was 0.16, and where it was 0.20.
fn wet_share_of_dry() -> [f64; 2] {
    [0.16, 0.20].map(|dry| nut_factor(0.10) / nut_factor(dry))
}
