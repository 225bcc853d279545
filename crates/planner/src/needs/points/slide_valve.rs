//! The slide valve of a steam engine, its face and its stem.
//!
//! It lives in the same steam as the cylinder and gets its oil by the same lubricator. Graphite packing of its stem stays dry.

use formulas::slideway::{WAY_FILM_UM, film_dose, slide_area};
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{Length, Pressure, TemperatureDifference};

use super::common::micrometres;
use super::interval::Interval;
use super::{Asking, Spot, steam};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const LENGTH: Given<Length> = Given::quantity("length", "22 mm", "common-practice", "length of the valve's face");
const WIDTH: Given<Length> = Given::quantity("width", "18 mm", "common-practice", "width of the valve's face");
const PRESSURE: Given<Pressure> = Given::quantity("pressure", "3 bar", "common-practice", "pressure on the gauge");
const SUPERHEAT: Given<TemperatureDifference> =
    Given::quantity("superheat", "0 K", "common-practice", "how much hotter the steam is than saturated steam");

pub(super) static KIND: Kind = Kind {
    name: "slide valve",
    about: "the slide valve of a steam engine",
    fields: &[LENGTH.field(), WIDTH.field(), PRESSURE.field(), SUPERHEAT.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// Valve and port face.
    const FACES: f64 = 2.0;
    let answers = spot.answers();
    let superheat = answers.quantity(&SUPERHEAT);
    let at = steam::temperature(r, answers.quantity(&PRESSURE), superheat)?;
    let area = slide_area(r, answers.quantity(&LENGTH), answers.quantity(&WIDTH), FACES);
    let dose = film_dose(r, area, micrometres(WAY_FILM_UM));
    let asking = Asking::new(Consequence::StopsOrHarms, Interval::each_use(1.0))
        .dose(Form::Oil, Dose::volume(dose))
        .mind("Leave graphite packing of the stem dry.", "common-practice");
    Ok(steam::oil(asking, spot, at, superheat))
}
