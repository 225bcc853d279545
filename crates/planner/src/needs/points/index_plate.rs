//! An index plate, plunger or detent.
//!
//! Moved by hand now and then: a film that keeps rust off and lets the pin drop home.

use formulas::cutting::DROP_ML;
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{Length, Quantity};

use super::common::mm2_per_s;
use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;

const DIAMETER: Given<Length> = Given::quantity("diameter", "120 mm", "common-practice", "diameter of the plate");

pub(super) static KIND: Kind = Kind { name: "index plate", about: "an index plate, plunger or detent", fields: &[DIAMETER.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, _r: &mut R) -> Result<Asking, Complaint> {
    /// Three drops for a plate of 120 mm, and by its face for others; *common practice*.
    const DROPS: f64 = 3.0;
    const REFERENCE_M: f64 = 0.12;
    /// From VG 15 to VG 68, mm²/s at these temperatures; *common practice*.
    const LOW: f64 = 20.0;
    const HIGH: f64 = 450.0;
    let size = (spot.answers().quantity(&DIAMETER).base() / REFERENCE_M).powi(2);
    Ok(Asking::new(Consequence::SlowsOrDirties, Interval::running(8.0, 90.0))
        .nature(Nature { rise: 3.0, ..Nature::default() })
        .classes(
            &["slideway-oil", "hydraulic-oil", "circulating-oil", "light-machine-oil"],
            &["spindle-oil", "gear-oil", "motion-oil", "air-tool-oil", "compressor-oil", "instrument-oil"],
            "a film that keeps rust off and lets the pin drop home; grease holds the chip that makes an index false",
            "common-practice",
        )
        .viscosity(spot, mm2_per_s(LOW), mm2_per_s(HIGH), "thin enough for a pin to drop home", "common-practice")
        .dose(Form::Oil, Dose::ml(DROPS * DROP_ML * size))
        .mind("Wipe hole and pin: a chip under it makes the index false.", "common-practice"))
}
