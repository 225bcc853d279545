//! The half nuts of an apron.
//!
//! They close on a turning screw with chips about; a tacky grease would carry those into the thread.

use formulas::cutting::DROP_ML;
use formulas::slideway::{film_dose, screw_thread_area};
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{Length, Pressure, Quantity};

use super::common::{micrometres, slide_window};
use super::interval::Interval;
use super::leadscrew::thread_fits;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::needs::prohibitions::Character;

const DIAMETER: Given<Length> = Given::quantity("diameter", "16 mm", "common-practice", "outside diameter of the screw");
const PITCH: Given<Length> = Given::quantity("pitch", "2 mm", "common-practice", "pitch of the thread");

pub(super) static KIND: Kind =
    Kind { name: "half nuts", about: "the half nuts that close on a leadscrew", fields: &[DIAMETER.field(), PITCH.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    const RISE_K: f64 = 3.0;
    /// Half nuts are about as long as twice the screw's diameter, and take a film of 100 µm that drips off; *common practice*.
    const LENGTHS: f64 = 2.0;
    const FILM_UM: f64 = 100.0;
    const PRESSURE_PA: f64 = 5e5;
    let answers = spot.answers();
    let (diameter, pitch) = (answers.quantity(&DIAMETER), answers.quantity(&PITCH));
    thread_fits(diameter, pitch)?;
    let window = slide_window(r, Pressure::from_base(PRESSURE_PA), None);
    let area = screw_thread_area(r, diameter, pitch, diameter * LENGTHS)?;
    let film = 1e6 * film_dose(r, area, micrometres(FILM_UM)).base();
    Ok(Asking::new(Consequence::StopsOrHarms, Interval::each_use(2.0))
        .nature(Nature { rise: RISE_K, ..Nature::default() })
        .character(Character { copper: true, ..Character::default() })
        .classes(
            &["slideway-oil"],
            &["hydraulic-oil", "circulating-oil", "gear-oil", "motion-oil"],
            "an oil that clings to the thread; tacky grease would carry chips into it",
            "common-practice",
        )
        .viscosity(spot, window.low, window.high, "thin enough to run in, thick enough to stay", "common-practice")
        .dose(Form::Oil, Dose::about(film.max(2.0 * DROP_ML), DoseUnit::Millilitre))
        .mind("Brush the screw clean before you close the half nuts.", "common-practice"))
}
