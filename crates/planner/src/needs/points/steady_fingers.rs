//! The fingers of a steady rest, which rub on turning work.
//!
//! Point against shaft, no wedge to speak of, and chips beside them: the oil must cling and be given all the time. Dry fingers seize and
//! score the work.

use formulas::cutting::DROP_ML;
use formulas::working::Recorder;
use reference::{Form, Trait};
use shop::{Given, Kind};
use units::{AngularVelocity, Force, Length};

use super::interval::Interval;
use super::rubbing::{boundary_viscosity, mind_over, rubbing};
use super::{Asking, Spot};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::verdict::Grade;

const WORK: Given<Length> = Given::quantity("work", "30 mm", "common-practice", "diameter of the work they hold");
const FINGER: Given<Length> = Given::quantity("finger", "10 mm", "common-practice", "width of a finger's tip");
const LOAD: Given<Force> = Given::quantity("load", "30 N", "common-practice", "load on a finger");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "200 rpm", "common-practice", "speed of the work");

pub(super) static KIND: Kind = Kind {
    name: "steady fingers",
    about: "the fingers of a steady rest on turning work",
    fields: &[WORK.field(), FINGER.field(), LOAD.field(), SPEED.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// A finger's tip warms the oil under it; *common practice*.
    const RISE_K: f64 = 15.0;
    /// What a bronze tip bears, MPa·m/s: half of the rated pressure times velocity of leaded tin bronze.
    const BEARS: f64 = 1.3;
    let answers = spot.answers();
    let rubbing = rubbing(r, answers.quantity(&LOAD), answers.quantity(&WORK), answers.quantity(&FINGER), answers.quantity(&SPEED))?;
    let nu = boundary_viscosity(r, rubbing.pressure, rubbing.speed);
    let asking = Asking::new(Consequence::Spoils, Interval::each_use(0.25))
        .nature(Nature { speed: rubbing.speed, heavy: true, rise: RISE_K, ..Nature::default() })
        .classes(
            &["slideway-oil", "tacky-oil", "motion-oil"],
            &["gear-oil", "hydraulic-oil", "circulating-oil", "ep-grease", "moly-grease"],
            "fingers make no wedge: an oil that clings, given again and again",
            "common-practice",
        )
        .thick_enough(spot, nu, "thicker under load, thinner when quick", "common-practice")
        .demand(
            "no active sulphur on bronze tips",
            Test::Without { traits: &[Trait::ActiveSulphur], else_grade: Grade::Wrong },
            "active sulphur blackens bronze that it stays on",
            "astm-d130",
        )
        .dose(Form::Oil, Dose::ml(2.0 * DROP_ML))
        .dose(Form::Grease, Dose::grams(0.1))
        .mind("Set the fingers so that they just touch, and oil them before they squeak.", "common-practice");
    Ok(mind_over(asking, spot, &rubbing, BEARS))
}
