//! A quick-change gearbox, apron or feed gearbox.
//!
//! Light gears, sliding dogs and bronze bushes share one oil. With a bath a plain or antiwear oil serves them all; where every hole is
//! oiled by hand, and the oil leaves at the seams, one that clings. What its maker says stands above this.

use formulas::cutting::DROP_ML;
use formulas::gear::pitch_line_speed;
use formulas::working::Recorder;
use formulas::{given, sources, step};
use reference::Form;
use shop::{Fitting, Given, Kind};
use units::{AngularVelocity, Length, Quantity, Volume};

use super::common::mm2_per_s;
use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};
use crate::needs::prohibitions::Character;

const VOLUME: Given<Volume> = Given::quantity("volume", "0.5 L", "common-practice", "oil to the mark");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "200 rpm", "common-practice", "speed of the input shaft");
const PINION: Given<Length> = Given::quantity("pinion", "40 mm", "common-practice", "diameter of a middling gear");
const HOLES: Given<f64> = Given::number("holes", "4", "common-practice", "oil holes, where it has no bath");

pub(super) static KIND: Kind = Kind {
    name: "quick-change gearbox",
    about: "a quick-change gearbox, apron or feed gearbox",
    fields: &[VOLUME.field(), SPEED.field(), PINION.field(), HOLES.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    const RISE_K: f64 = 5.0;
    const DROPS_A_HOLE: f64 = 5.0;
    let answers = spot.answers();
    let speed = pitch_line_speed(r, answers.quantity(&PINION), answers.quantity(&SPEED));
    given!(r, v["m/s"] = speed.base(), "speed of the teeth");
    // VG 46 to 150 where the teeth crawl, thinner as they run: so lightly loaded the diagrams for power gears ask for far too much.
    step!(r, f_v [] = if v > 1.0 { 1.0 / formulas::math::sqrt(v) } else { 1.0 }, sources::COMMON_PRACTICE);
    step!(r, nu_1["mm²/s"] = 60.0 * f_v, sources::COMMON_PRACTICE);
    step!(r, nu_2["mm²/s"] = 700.0 * f_v, sources::COMMON_PRACTICE);
    let bath = matches!(spot.fitting_or(Fitting::Bath), Fitting::Bath | Fitting::Splash);
    let interval = if bath { Interval::running(500.0, 365.0) } else { Interval::each_use(4.0) };
    let asking = Asking::new(Consequence::StopsOrHarms, interval)
        .fitted(Fitting::Bath)
        .nature(Nature { clearance: Clearance::Oil, speed, rise: RISE_K, enclosed: true, ..Nature::default() })
        .character(Character { bath, copper: true, ..Character::default() });
    let asking = if bath {
        asking
            .classes(
                &["circulating-oil", "hydraulic-oil"],
                &["slideway-oil", "gear-oil", "gl4-gear-oil", "motion-oil", "compressor-oil"],
                "light gears, dogs and bronze bushes share the bath: plain or antiwear oil; a light gear oil or slideway oil serves",
                "common-practice",
            )
            .dose(Form::Oil, Dose::filling(answers.quantity(&VOLUME)))
            .mind("Many such boxes have no seals: if the level falls, oil it by the drop instead of filling it.", "common-practice")
    } else {
        asking
            .classes(
                &["slideway-oil", "hydraulic-oil", "circulating-oil"],
                &["gear-oil", "gl4-gear-oil", "motion-oil", "tacky-oil", "compressor-oil"],
                "what drips in runs out again: an oil that clings stays longest on the teeth",
                "common-practice",
            )
            .dose(Form::Oil, Dose::ml(DROPS_A_HOLE * DROP_ML * answers.number(&HOLES)))
            .mind("Turn it by hand as you oil, so that every tooth gets some.", "common-practice")
    };
    Ok(asking.viscosity(
        spot,
        mm2_per_s(nu_1),
        mm2_per_s(nu_2),
        "thick enough to stay on slow teeth, thin enough to find the bushes",
        "common-practice",
    ))
}
