//! A pivot of an instrument or a clock.
//!
//! Less than a microlitre of an oil that neither creeps nor gums, to a third of the cup; more of it runs away and takes the rest along.

use formulas::working::Recorder;
use reference::{Form, Trait};
use shop::{Given, Kind};
use units::{Length, Quantity};

use super::common::mm2_per_s;
use super::interval::Interval;
use super::{Asking, Spot};
use crate::demand::Test;
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};
use crate::verdict::Grade;

const DIAMETER: Given<Length> = Given::quantity("diameter", "0.3 mm", "common-practice", "diameter of the pivot");

pub(super) static KIND: Kind = Kind { name: "instrument pivot", about: "a pivot of an instrument or a clock", fields: &[DIAMETER.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, _r: &mut R) -> Result<Asking, Complaint> {
    /// Half a microlitre fills a third of the cup round a pivot of 0.3 mm, and others by the square of their size; *common practice*.
    const DOSE_ML: f64 = 5e-4;
    const REFERENCE_M: f64 = 3e-4;
    /// More than this runs out of any cup, mL; *common practice*.
    const MOST_ML: f64 = 1e-3;
    /// VG 10 to 15 at room temperature, mm²/s; *common practice*.
    const LOW: f64 = 12.0;
    const HIGH: f64 = 60.0;
    let size = (spot.answers().quantity(&DIAMETER).base() / REFERENCE_M).powi(2);
    let likely = (DOSE_ML * size).min(MOST_ML);
    let dose = Dose { low: 0.5 * likely, likely, high: (2.0 * likely).min(MOST_ML), unit: DoseUnit::Millilitre };
    Ok(Asking::new(Consequence::Spoils, Interval::calendar(900.0))
        .nature(Nature { clearance: Clearance::Oil, enclosed: true, ..Nature::default() })
        .classes(
            &["instrument-oil"],
            &["light-machine-oil", "spindle-oil"],
            "an oil that stays where it is put for years; mineral oil creeps away sooner",
            "common-practice",
        )
        .viscosity(spot, mm2_per_s(LOW), mm2_per_s(HIGH), "thin enough for a balance to swing, thick enough to stay", "common-practice")
        .demand(
            "nothing that creeps",
            Test::Without { traits: &[Trait::Solvent, Trait::Tackifier, Trait::WaterDisplacing], else_grade: Grade::Harmful },
            "solvent carries oil away from the pivot and leaves gum",
            "common-practice",
        )
        .dose(Form::Oil, dose)
        .put("with a pin into each cup, half full: what hangs on the pin")
        .mind(
            "Clean pivot and cup first; a finger's print spoils it. 1 µL to each at most: more runs out and takes the rest along.",
            "common-practice",
        ))
}
