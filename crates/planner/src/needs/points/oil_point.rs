//! A ball oiler, cup or open oil hole serving a small plain bearing or slide.
//!
//! The fitting takes oil and nothing else: grease pressed into it blocks the way for good.

use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{AngularVelocity, Length};

use super::common::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};

const DIAMETER: Given<Length> = Given::quantity("diameter", "16 mm", "common-practice", "diameter of the shaft it serves");
const LENGTH: Given<Length> = Given::quantity("length", "20 mm", "common-practice", "length of the bearing it serves");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "100 rpm", "common-practice", "speed of the shaft");

pub(super) static KIND: Kind =
    Kind { name: "oil point", about: "a ball oiler, oil cup or oil hole", fields: &[DIAMETER.field(), LENGTH.field(), SPEED.field()] };

pub(super) fn ask<R: Recorder>(_spot: &Spot<'_>, _r: &mut R) -> Result<Asking, Complaint> {
    /// Two or three drops of 0.04 mL, or one stroke of the can; *common practice*.
    const STROKE_ML: f64 = 0.1;
    Ok(Asking::new(Consequence::StopsOrHarms, Interval::each_use(8.0))
        .nature(Nature { clearance: Clearance::Oil, rise: 5.0, ..Nature::default() })
        .classes(
            &["hydraulic-oil", "circulating-oil"],
            &["slideway-oil", "light-machine-oil", "motion-oil", "gear-oil", "compressor-oil", "spindle-oil", "air-tool-oil"],
            "a clean straight oil that finds its way down a narrow hole",
            "common-practice",
        )
        .dose(Form::Oil, Dose::ml(STROKE_ML)))
}
