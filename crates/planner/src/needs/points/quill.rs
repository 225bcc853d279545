//! A quill, tailstock barrel or other precision sleeve.
//!
//! Some hundredths of a millimetre lie between sleeve and bore, or less: thin oil gets in and lets it slide, grease blocks it.

use formulas::slideway::{film_dose, journal_area};
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::Length;

use super::common::{micrometres, mm2_per_s};
use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};

const DIAMETER: Given<Length> = Given::quantity("diameter", "32 mm", "common-practice", "diameter of the sleeve");
const LENGTH: Given<Length> = Given::quantity("length", "90 mm", "common-practice", "length that slides");

pub(super) static KIND: Kind =
    Kind { name: "quill", about: "a quill, tailstock barrel or precision sleeve", fields: &[DIAMETER.field(), LENGTH.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// A quill runs this much warmer than the room; *common practice*.
    const RISE_K: f64 = 10.0;
    /// VG 22 to 46 at these temperatures, mm²/s; *common practice*.
    const LOW: f64 = 22.0;
    const HIGH: f64 = 130.0;
    /// A close sleeve takes the film of an instrument, µm; *common practice*.
    const FILM_UM: f64 = 15.0;
    let answers = spot.answers();
    let area = journal_area(r, answers.quantity(&DIAMETER), answers.quantity(&LENGTH));
    let dose = film_dose(r, area, micrometres(FILM_UM));
    Ok(Asking::new(Consequence::SlowsOrDirties, Interval::running(4.0, 30.0))
        .nature(Nature { clearance: Clearance::Oil, rise: RISE_K, ..Nature::default() })
        .classes(
            &["hydraulic-oil", "slideway-oil", "circulating-oil"],
            &["light-machine-oil", "spindle-oil", "instrument-oil", "air-tool-oil"],
            "a thin oil that finds its way into a close bore; grease blocks it",
            "common-practice",
        )
        .viscosity(spot, mm2_per_s(LOW), mm2_per_s(HIGH), "thin enough for a close sleeve, thick enough to stay", "common-practice")
        .dose(Form::Oil, Dose::volume(dose))
        .mind("Wipe it clean before it goes back in: a chip scores both.", "common-practice"))
}
