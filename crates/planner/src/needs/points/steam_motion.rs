//! The motion of a steam engine: crank, crosshead, eccentrics and pins.
//!
//! Small pins seldom make a film, and water drips on them: a fatty motion oil. Oiled again every half hour, a thinner oil does too, down to
//! the light machine oil that small model engines are given. Cylinder oil drags.

use formulas::cutting::DROP_ML;
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{AngularVelocity, Force, Length};

use super::common::mm2_per_s;
use super::interval::Interval;
use super::rubbing::{self, boundary_viscosity, rubbing};
use super::{Asking, Spot};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};
use crate::needs::prohibitions::Character;
use crate::verdict::Grade;

const DIAMETER: Given<Length> = Given::quantity("diameter", "8 mm", "common-practice", "diameter of the pin or shaft");
const LENGTH: Given<Length> = Given::quantity("length", "10 mm", "common-practice", "length of its bearing");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "300 rpm", "common-practice", "speed of the crank");
const LOAD: Given<Force> = Given::quantity("load", "50 N", "common-practice", "mean load on the pin");
const MATERIAL: Given<&'static str> =
    Given::choice("material", rubbing::MATERIALS, "leaded-tin-bronze", "common-practice", "what the bearing is made of");

pub(super) static KIND: Kind = Kind {
    name: "steam motion",
    about: "crank, crosshead, eccentrics and pins of a steam engine",
    fields: &[DIAMETER.field(), LENGTH.field(), SPEED.field(), LOAD.field(), MATERIAL.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// Beside a hot cylinder it runs this much warmer than the room; *common practice*.
    const RISE_K: f64 = 20.0;
    /// Renewed every half hour, an oil of a tenth of the viscosity does; *common practice*.
    const RENEWED: f64 = 0.1;
    /// Thicker than this on a usual day it drags, mm²/s: VG 220 is right, cylinder oil is not. *Common practice.*
    const THICK_RIGHT: f64 = 400.0;
    const THICK_WILL_DO: f64 = 600.0;
    const DROPS: f64 = 1.5;
    let answers = spot.answers();
    let material = answers.word(&MATERIAL);
    let rubbing = rubbing(r, answers.quantity(&LOAD), answers.quantity(&DIAMETER), answers.quantity(&LENGTH), answers.quantity(&SPEED))?;
    let nu = boundary_viscosity(r, rubbing.pressure, rubbing.speed);
    let asking = Asking::new(Consequence::StopsOrHarms, Interval::each_use(0.5))
        .nature(Nature { clearance: Clearance::Oil, speed: rubbing.speed, rise: RISE_K, ..Nature::default() })
        // An engine is warmed through before it turns, so a cold start does not count.
        .character(Character { steam: true, warmed: true, copper: rubbing::is_copper(spot, material), ..Character::default() })
        .classes(
            &["motion-oil"],
            &["slideway-oil", "light-machine-oil", "hydraulic-oil", "circulating-oil", "gear-oil", "compressor-oil", "worm-oil"],
            "a little fat in the oil holds it on where water drips; light machine oil serves small engines",
            "common-practice",
        )
        .demand(
            "thick enough when hot",
            Test::NotThinner { at: spot.hottest(RISE_K), right: nu, will_do: nu * RENEWED, else_grade: Grade::Wrong },
            "so small a pin makes no film; thinner oil does where it is renewed every half hour",
            "common-practice",
        )
        .demand(
            "thin enough when usual",
            Test::NotThicker {
                at: spot.usual(RISE_K),
                right: mm2_per_s(THICK_RIGHT),
                will_do: mm2_per_s(THICK_WILL_DO),
                else_grade: Grade::Wrong,
            },
            "cylinder oil drags on the motion",
            "common-practice",
        )
        .dose(Form::Oil, Dose::ml(DROPS * DROP_ML));
    Ok(rubbing::mind_over(asking, spot, &rubbing, rubbing::allowed(spot, material)))
}
