//! A rack and pinion, or a worm and wheel turned by hand.
//!
//! Slow teeth that slide as much as they roll: what clings to them serves. In chips an oil renewed often, shut in a grease.

use formulas::cutting::DROP_ML;
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{Length, Quantity};

use super::common::{GREASE_G_PER_ML, mm2_per_s};
use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::verdict::Grade;

const MODULE: Given<Length> = Given::quantity("module", "1.25 mm", "common-practice", "module of the teeth");
const FACE: Given<Length> = Given::quantity("face", "16 mm", "common-practice", "width of the teeth");

pub(super) static KIND: Kind = Kind {
    name: "rack and pinion",
    about: "a rack and pinion, or a worm and wheel turned by hand",
    fields: &[MODULE.field(), FACE.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, _r: &mut R) -> Result<Asking, Complaint> {
    /// Three drops for teeth of module 1.25 and 16 mm, and by their flanks for others; *common practice*.
    const DROPS: f64 = 3.0;
    const REFERENCE_M2: f64 = 0.00125 * 0.016;
    /// Thinner oil than VG 46 at work runs off slow teeth, mm²/s; *common practice*.
    const CLINGS: f64 = 60.0;
    let answers = spot.answers();
    let size = answers.quantity(&MODULE).base() * answers.quantity(&FACE).base() / REFERENCE_M2;
    let oil = DROPS * DROP_ML * size;
    let asking = Asking::new(Consequence::SlowsOrDirties, Interval::running(8.0, 90.0))
        .nature(Nature { rise: 3.0, ..Nature::default() })
        .classes(
            &["slideway-oil", "tacky-oil", "gear-oil", "motion-oil", "ep-grease", "lithium-grease", "moly-grease"],
            &["hydraulic-oil", "circulating-oil", "compressor-oil", "calcium-sulphonate-grease", "white-grease"],
            "slow open teeth keep only what clings to them",
            "common-practice",
        )
        .thick_enough(spot, mm2_per_s(CLINGS), "thin oil runs off slow teeth", "common-practice")
        .stiffness(spot, 0, 2)
        .dose(Form::Oil, Dose::ml(oil))
        .dose(Form::Grease, Dose::grams(2.0 * GREASE_G_PER_ML * oil))
        .mind("Brush the chips out of the teeth first.", "common-practice");
    Ok(if spot.guarded() {
        asking.form(
            Grade::WillDo,
            Grade::Right,
            Grade::WillDo,
            "shut in, where neither chips nor a can reach: grease stays, oil has to be renewed",
        )
    } else {
        asking
    })
}
