//! A nipple for a grease gun, and the bush behind it.
//!
//! Old lathes have oil nipples of the same looks: confirm which it is before the first stroke.

use formulas::slideway::{WAY_FILM_UM, film_dose, journal_area};
use formulas::working::Recorder;
use reference::Form;
use shop::{Fitting, Given, Kind};
use units::{Length, Quantity};

use super::common::{GREASE_G_PER_ML, micrometres, mm2_per_s};
use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};

const DIAMETER: Given<Length> = Given::quantity("diameter", "20 mm", "common-practice", "diameter of the pin or shaft it serves");
const LENGTH: Given<Length> = Given::quantity("length", "30 mm", "common-practice", "length of the bush it serves");

pub(super) static KIND: Kind =
    Kind { name: "grease nipple", about: "a nipple for a grease gun", fields: &[DIAMETER.field(), LENGTH.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// A film of 25 µm is used up in four running hours; greased every forty, ten films are wanted, and a stroke of the gun at least.
    const HOURS: f64 = 40.0;
    const HOURS_A_FILM: f64 = 4.0;
    const STROKE_G: f64 = 1.0;
    /// Base oil thinner than this at work does not carry a slow pin, mm²/s; *common practice*.
    const CARRIES: f64 = 60.0;
    let answers = spot.answers();
    let area = journal_area(r, answers.quantity(&DIAMETER), answers.quantity(&LENGTH));
    let film = 1e6 * film_dose(r, area, micrometres(WAY_FILM_UM)).base();
    let grease = GREASE_G_PER_ML * film * HOURS / HOURS_A_FILM;
    Ok(Asking::new(Consequence::StopsOrHarms, Interval::running(HOURS, 180.0))
        .fitted(Fitting::GreaseNipple)
        .nature(Nature { clearance: Clearance::Grease, rise: 5.0, ..Nature::default() })
        .classes(
            &["lithium-grease", "ep-grease", "calcium-sulphonate-grease"],
            &["moly-grease", "polyurea-grease", "white-grease", "ptfe-grease"],
            "a bearing grease; stay with one thickener, for few mix",
            "usbr-fist-2-4",
        )
        .thick_enough(spot, mm2_per_s(CARRIES), "the base oil carries the pin", "common-practice")
        .stiffness(spot, 1, 2)
        .dose(Form::Grease, Dose::grams(grease.max(STROKE_G)))
        .mind("Confirm that it is a grease nipple: old lathes have oil nipples of the same looks.", "common-practice")
        .mind("Changing the grease, press until the new one comes out clean.", "usbr-fist-2-4"))
}
