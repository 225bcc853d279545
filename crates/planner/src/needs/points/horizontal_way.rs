//! A flat slideway, dovetail or gib.
//!
//! Parallel faces make no wedge, so the film is mixed at any speed a hand or leadscrew gives: the oil must cling, resist being squeezed
//! out and stop the slide from sticking and jumping. Grease would hold chips and lap the way.

use formulas::slideway::{WAY_FILM_UM, film_dose, slide_area};
use formulas::working::Recorder;
use reference::{Form, Trait};
use shop::{Given, Kind};
use units::{Length, Pressure, Quantity};

use super::common::slide_window;
use super::interval::Interval;
use super::{Asking, Spot};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::verdict::Grade;

const LENGTH: Given<Length> = Given::quantity("length", "150 mm", "common-practice", "length of the sliding contact");
const WIDTH: Given<Length> = Given::quantity("width", "20 mm", "common-practice", "width of one land");
const LANDS: Given<f64> = Given::number("lands", "4", "common-practice", "how many lands bear");
const PRESSURE: Given<Pressure> = Given::quantity("pressure", "0.05 MPa", "common-practice", "load over contact area");

pub(super) static KIND: Kind = Kind {
    name: "horizontal way",
    about: "a flat slideway, dovetail or gib",
    fields: &[LENGTH.field(), WIDTH.field(), LANDS.field(), PRESSURE.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// A slide runs this much warmer than the room; *common practice*.
    const RISE_K: f64 = 3.0;
    let answers = spot.answers();
    let window = slide_window(r, answers.quantity(&PRESSURE), None);
    let area = slide_area(r, answers.quantity(&LENGTH), answers.quantity(&WIDTH), answers.number(&LANDS));
    let dose = film_dose(r, area, Length::from_base(WAY_FILM_UM * 1e-6));
    Ok(Asking::new(Consequence::StopsOrHarms, Interval::each_use(4.0))
        .nature(Nature { rise: RISE_K, ..Nature::default() })
        .classes(
            &["slideway-oil"],
            &["hydraulic-oil", "circulating-oil", "gear-oil", "motion-oil", "tacky-oil"],
            "only slideway oil clings to parallel faces and keeps the slide from sticking and jumping",
            "iso-6743-13",
        )
        .viscosity(
            spot,
            window.low,
            window.high,
            "thin enough to spread, thick enough to stay between faces that make no wedge",
            "common-practice",
        )
        .demand(
            "no active sulphur on the ways",
            Test::Without { traits: &[Trait::ActiveSulphur], else_grade: Grade::Wrong },
            "gibs are often bronze, and the oil runs on to brass work",
            "astm-d130",
        )
        .dose(Form::Oil, Dose::volume(dose))
        .dose(Form::Dry, Dose::volume(dose))
        .mind("Wipe the chips off before you oil: oil over chips makes a lap of the slide.", "common-practice"))
}
