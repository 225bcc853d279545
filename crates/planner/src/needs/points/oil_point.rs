//! A ball oiler, cup or open oil hole serving a small plain bearing.
//!
//! The fitting takes oil and nothing else: grease pressed into it blocks the way for good. What is turned by hand only goes stiff when it
//! is forgotten; what a motor turns wears out.

use formulas::cutting::DROP_ML;
use formulas::slideway::{WAY_FILM_UM, film_dose, journal_area};
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{AngularVelocity, Force, Length, Quantity};

use super::common::{micrometres, mm2_per_s};
use super::interval::Interval;
use super::rubbing::{boundary_viscosity, rubbing};
use super::{Asking, Spot};
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};

const DIAMETER: Given<Length> = Given::quantity("diameter", "16 mm", "common-practice", "diameter of the shaft it serves");
const LENGTH: Given<Length> = Given::quantity("length", "20 mm", "common-practice", "length of the bearing it serves");
const LOAD: Given<Force> = Given::quantity("load", "20 N", "common-practice", "load across the shaft");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "100 rpm", "common-practice", "speed of the shaft");

pub(super) static KIND: Kind = Kind {
    name: "oil point",
    about: "a ball oiler, oil cup or oil hole",
    fields: &[DIAMETER.field(), LENGTH.field(), LOAD.field(), SPEED.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    const RISE_K: f64 = 5.0;
    /// A hand turns a shaft no faster; *common practice*.
    const BY_HAND_RAD_PER_S: f64 = 60.0 * std::f64::consts::TAU / 60.0;
    /// Thicker than this on a usual day it does not find its way down a narrow hole, mm²/s; *common practice*.
    const CREEPS: f64 = 500.0;
    let answers = spot.answers();
    let (diameter, length, speed) = (answers.quantity(&DIAMETER), answers.quantity(&LENGTH), answers.quantity(&SPEED));
    let rubbing = rubbing(r, answers.quantity(&LOAD), diameter, length, speed)?;
    let nu = boundary_viscosity(r, rubbing.pressure, rubbing.speed);
    let area = journal_area(r, diameter, length);
    let film = 1e6 * film_dose(r, area, micrometres(WAY_FILM_UM)).base();
    let consequence = if speed.base() <= BY_HAND_RAD_PER_S { Consequence::SlowsOrDirties } else { Consequence::StopsOrHarms };
    Ok(Asking::new(consequence, Interval::each_use(8.0))
        .nature(Nature { clearance: Clearance::Oil, speed: rubbing.speed, rise: RISE_K, ..Nature::default() })
        .classes(
            &["hydraulic-oil", "circulating-oil"],
            &["slideway-oil", "light-machine-oil", "motion-oil", "gear-oil", "compressor-oil", "spindle-oil", "air-tool-oil"],
            "a clean straight oil that finds its way down a narrow hole",
            "common-practice",
        )
        .viscosity(spot, nu, mm2_per_s(CREEPS), "thick enough for the faces that touch, thin enough to creep in", "common-practice")
        .dose(Form::Oil, Dose::about(film.max(2.0 * DROP_ML), DoseUnit::Millilitre)))
}
