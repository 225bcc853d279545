//! A bush or pivot, slow or swinging.
//!
//! Its faces touch, so pressure times velocity decides what the bush bears and a thick oil with antiwear or fatty additives what serves.
//! A porous bush holds its own oil: solids close its pores and grease seals them.

use formulas::cutting::DROP_ML;
use formulas::slideway::{WAY_FILM_UM, film_dose, journal_area};
use formulas::working::Recorder;
use reference::{Form, Trait};
use shop::{Given, Kind};
use units::{AngularVelocity, Force, Length, Quantity};

use super::common::{GREASE_G_PER_ML, micrometres, mm2_per_s};
use super::interval::Interval;
use super::rubbing::{self, boundary_viscosity, rubbing};
use super::{Asking, Spot};
use crate::demand::Test;
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};
use crate::needs::prohibitions::Character;
use crate::verdict::Grade;

const DIAMETER: Given<Length> = Given::quantity("diameter", "20 mm", "common-practice", "diameter of the pin or shaft");
const LENGTH: Given<Length> = Given::quantity("length", "25 mm", "common-practice", "length of the bush");
const LOAD: Given<Force> = Given::quantity("load", "300 N", "common-practice", "load across the shaft");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "60 rpm", "common-practice", "speed, or turns a minute of a swinging pin");
const MATERIAL: Given<&'static str> =
    Given::choice("material", rubbing::MATERIALS, "leaded-tin-bronze", "common-practice", "what the bush is made of");
const DRY: Given<bool> = Given::flag("dry", "false", "common-practice", "whether it is made to run dry, as a PTFE-lined bush is");

pub(super) static KIND: Kind = Kind {
    name: "bush",
    about: "a bush or pivot, slow or swinging",
    fields: &[DIAMETER.field(), LENGTH.field(), LOAD.field(), SPEED.field(), MATERIAL.field(), DRY.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    const RISE_K: f64 = 5.0;
    /// Thicker than this on a usual day it does not creep in, mm²/s: VG 150. *Common practice.*
    const CREEPS: f64 = 700.0;
    /// From half of what it is allowed on, a bush wears unless something in the oil carries the load; *common practice*.
    const LOADED: f64 = 0.5;
    let answers = spot.answers();
    if answers.flag(&DRY) {
        return Ok(Asking::nothing("made to run dry: oil and grease only gather dirt in it"));
    }
    let (diameter, length) = (answers.quantity(&DIAMETER), answers.quantity(&LENGTH));
    let material = answers.word(&MATERIAL);
    let porous = material == "oil-porous-bronze" || spot.point.touches.iter().any(|key| key == "porous-bronze");
    let rubbing = rubbing(r, answers.quantity(&LOAD), diameter, length, answers.quantity(&SPEED))?;
    let allowed = rubbing::allowed(spot, material);
    let nu = boundary_viscosity(r, rubbing.pressure, rubbing.speed);
    let area = journal_area(r, diameter, length);
    // Under heavy pressure even a VG 220 is pressed in; ten times the least is the most.
    let (creeps, pressed) = (mm2_per_s(CREEPS), nu * 10.0);
    let high = if pressed > creeps { pressed } else { creeps };
    let film = 1e6 * film_dose(r, area, micrometres(WAY_FILM_UM)).base();
    let hours = if rubbing.pv > allowed { 2.0 } else { 8.0 };
    let greases: &[&'static str] = if porous { &[] } else { &["lithium-grease", "ep-grease", "moly-grease"] };
    let asking = Asking::new(Consequence::StopsOrHarms, Interval::each_use(hours))
        .nature(Nature { clearance: Clearance::Oil, speed: rubbing.speed, rise: RISE_K, enclosed: porous, ..Nature::default() })
        .character(Character { porous, copper: rubbing::is_copper(spot, material), ..Character::default() })
        .classes(
            &["hydraulic-oil", "slideway-oil", "motion-oil", "circulating-oil", "gear-oil"],
            &[&["compressor-oil", "light-machine-oil", "tacky-oil", "air-tool-oil"], greases].concat(),
            "its faces touch: a thick oil, with antiwear or fatty additives where it is loaded",
            "common-practice",
        )
        .viscosity(spot, nu, high, "thicker under pressure, thinner when quick, and thin enough to creep in", "common-practice")
        .dose(Form::Oil, Dose::about(film.max(2.0 * DROP_ML), DoseUnit::Millilitre));
    let asking = if porous {
        asking
            .demand(
                "no grease on a bush that holds its own oil",
                Test::Form { oil: Grade::Right, grease: Grade::Harmful, dry: Grade::Wrong },
                "grease seals the pores, and the bush runs dry behind it",
                "common-practice",
            )
            .mind("Renewed oil soaks in slowly: leave drops standing on it for an hour.", "common-practice")
    } else {
        asking.dose(Form::Grease, Dose::grams(GREASE_G_PER_ML * film.max(0.2)))
    };
    let asking = if rubbing.pv > LOADED * allowed {
        asking.demand(
            "additives for a loaded bush",
            Test::With { traits: &[Trait::Antiwear, Trait::Fatty, Trait::InactiveEp, Trait::Molybdenum], else_grade: Grade::WillDo },
            "so hard pressed, it wears where nothing in the oil carries the touch",
            "mott-machine-elements",
        )
    } else {
        asking
    };
    Ok(rubbing::mind_over(asking, spot, &rubbing, allowed))
}
