//! An upright slideway: column, knee, head or tool slide.
//!
//! Oil drains off an upright face. What is left the next day goes with the root of the viscosity, so an upright slide asks for thicker
//! oil than a flat one, and in a warm shop for thicker oil than in a cold one; a thinner oil serves where it is renewed more often.

use formulas::slideway::{WAY_FILM_UM, film_dose, slide_area, viscosity_to_hold};
use formulas::working::Recorder;
use reference::{Form, Trait};
use shop::{Given, Kind};
use units::{Length, Quantity, Time, show};

use super::common::{micrometres, mm2_per_s};
use super::interval::Interval;
use super::{Asking, Spot};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::verdict::Grade;

const LENGTH: Given<Length> = Given::quantity("length", "150 mm", "common-practice", "length of the sliding contact");
const WIDTH: Given<Length> = Given::quantity("width", "25 mm", "common-practice", "width of one land");
const LANDS: Given<f64> = Given::number("lands", "4", "common-practice", "how many lands bear");
const HEIGHT: Given<Length> = Given::quantity("height", "300 mm", "common-practice", "height of the upright face");

pub(super) static KIND: Kind = Kind {
    name: "vertical way",
    about: "an upright slideway of a column, knee or head",
    fields: &[LENGTH.field(), WIDTH.field(), LANDS.field(), HEIGHT.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// Film that still parts scraped faces, µm; *common practice*.
    const FILM_UM: f64 = 10.0;
    /// Time it is to last, so that a day's oiling is enough; and the least, so that an oiling lasts a session and its breaks.
    const DAY_S: f64 = 86_400.0;
    const SESSION_S: f64 = 0.25 * DAY_S;
    /// Above these a slide drags and a hand pump does not move the oil: VG 220 in a shop colder than 12 °C. *Common practice.*
    const THICK_RIGHT: f64 = 1600.0;
    const THICK_WILL_DO: f64 = 2400.0;
    let answers = spot.answers();
    let (film, height) = (micrometres(FILM_UM), answers.quantity(&HEIGHT));
    let a_day = viscosity_to_hold(r, film, height, Time::from_base(DAY_S))?;
    let a_session = viscosity_to_hold(r, film, height, Time::from_base(SESSION_S))?;
    let area = slide_area(r, answers.quantity(&LENGTH), answers.quantity(&WIDTH), answers.number(&LANDS));
    let dose = film_dose(r, area, micrometres(WAY_FILM_UM));
    let at = spot.usual(0.0);
    Ok(Asking::new(Consequence::StopsOrHarms, Interval::each_use(4.0))
        .nature(Nature { leaks: true, ..Nature::default() })
        .classes(
            &["slideway-oil"],
            &["hydraulic-oil", "circulating-oil", "gear-oil", "motion-oil", "tacky-oil"],
            "only slideway oil clings to upright faces and keeps the slide from sticking and jumping",
            "common-practice",
        )
        .demand(
            "stays on an upright face",
            Test::NotThinner { at, right: a_day, will_do: a_session, else_grade: Grade::Wrong },
            format!("this leaves a film of {} after a day; thinner oil does if you oil before every session", show(film, spot.units)),
            "jeffreys-1930",
        )
        .demand(
            "thin enough when usual",
            Test::NotThicker { at, right: mm2_per_s(THICK_RIGHT), will_do: mm2_per_s(THICK_WILL_DO), else_grade: Grade::Wrong },
            "in a cold shop an oil as thick as VG 220 drags and blocks a hand pump",
            "common-practice",
        )
        .demand(
            "no active sulphur on the ways",
            Test::Without { traits: &[Trait::ActiveSulphur], else_grade: Grade::Wrong },
            "gibs are often bronze, and the oil runs on to brass work",
            "common-practice",
        )
        .dose(Form::Oil, Dose::volume(dose))
        .mind("Oil the upper end: it drains first and farthest.", "common-practice"))
}
