//! A light fast spindle on rolling bearings: a grinder's or a high-speed head's.
//!
//! It asks for thin clean oil: as thick as ISO 281 wants, no more than four times as thick, and thin enough to start cold. Way oil and
//! gear oil drag, heat and foam.

use formulas::FormulaError;
use formulas::cutting::DROP_ML;
use formulas::feed::air_spindle_feed;
use formulas::rolling_bearing::{
    CALENDAR_CAP_H, Dirt, Kind as Rolling, mean_diameter, reference_viscosity, regrease_interval, regrease_mass, speed_factor,
};
use formulas::working::Recorder;
use reference::{Form, Trait};
use shop::{Fitting, Given, Kind};
use units::{AngularVelocity, Length, Quantity};

use super::common::rim_speed;
use super::interval::Interval;
use super::{Asking, Spot};
use crate::demand::Test;
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};
use crate::needs::prohibitions::Character;
use crate::verdict::Grade;

const BORE: Given<Length> = Given::quantity("bore", "25 mm", "common-practice", "bore of the inner ring");
const OUTSIDE: Given<Length> = Given::quantity("outside", "47 mm", "common-practice", "outside diameter");
const WIDTH: Given<Length> = Given::quantity("width", "12 mm", "common-practice", "width");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "12000 rpm", "common-practice", "speed it usually runs at");
const BEARINGS: Given<f64> = Given::number("bearings", "2", "common-practice", "how many bearings it has");

pub(super) static KIND: Kind = Kind {
    name: "fast spindle",
    about: "a light fast spindle on rolling bearings",
    fields: &[BORE.field(), OUTSIDE.field(), WIDTH.field(), SPEED.field(), BEARINGS.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// A rolling head runs this much warmer than the room; *common practice*.
    const RISE_K: f64 = 25.0;
    /// ISO 281: below 0.4 boundary, from 1 normal, from 4 on a thicker oil only drags.
    const RATIO_WILL_DO: f64 = 0.4;
    const RATIO_FULL: f64 = 4.0;
    /// Hand feed of a spindle, drops an hour, and hours between fillings; *common practice*.
    const DROPS_AN_HOUR: f64 = 3.0;
    const HOURS: f64 = 4.0;
    let answers = spot.answers();
    let (bore, outside) = (answers.quantity(&BORE), answers.quantity(&OUTSIDE));
    if bore >= outside {
        let what = "the bore is not smaller than the outside diameter".to_owned();
        return Err(Complaint::Contradiction { field: "bore", what, mend: "Exchange `bore` and `outside`, or mend the wrong one." });
    }
    let speed = answers.quantity(&SPEED);
    let bearings = answers.number(&BEARINGS);
    let mean = mean_diameter(bore, outside);
    let nu_1 = reference_viscosity(r, speed, mean)?;
    let factor = speed_factor(r, speed, mean);
    let greased = spot.point.fitting.feeds_grease();
    let (interval, greases) = match regrease_interval(r, speed, bore, Rolling::Ball, spot.hottest(RISE_K), false, Dirt::Dusty) {
        Ok(time) if greased => (Interval::running(time.base() / 3600.0, CALENDAR_CAP_H / 24.0), true),
        Ok(_) => (Interval::each_use(HOURS), true),
        Err(FormulaError::TooFastForGrease { .. }) => (Interval::each_use(HOURS), false),
        Err(other) => return Err(other.into()),
    };
    let air = air_spindle_feed(r, bore, bearings).base() * 3600.0 * 1e6;
    let fed = matches!(spot.point.fitting, Fitting::Drip | Fitting::Pump);
    let oil = HOURS * if fed { air } else { DROPS_AN_HOUR * DROP_ML * bearings };
    let greases: &[&'static str] = if greases { &["polyurea-grease", "lithium-grease"] } else { &[] };
    Ok(Asking::new(Consequence::StopsOrHarms, interval)
        .nature(Nature {
            clearance: if greased { Clearance::Grease } else { Clearance::Oil },
            speed: rim_speed(mean, speed),
            speed_factor: Some(factor),
            rise: RISE_K,
            enclosed: true,
            ..Nature::default()
        })
        .character(Character { fast_spindle: true, rolling: true, ..Character::default() })
        .classes(
            &[&["spindle-oil"], greases].concat(),
            &["hydraulic-oil", "circulating-oil", "light-machine-oil", "instrument-oil"],
            "thin clean oil; whatever clings or presses drags in a fast spindle",
            "iso-families",
        )
        .demand(
            "thick enough for its speed",
            Test::NotThinner { at: spot.hottest(RISE_K), right: nu_1, will_do: nu_1 * RATIO_WILL_DO, else_grade: Grade::Wrong },
            "below the reference viscosity the balls touch the tracks; down to 0.4 of it antiwear additives help",
            "iso-281",
        )
        // A grease lets go only a little of its oil, so its thickness does not drag.
        .demand_if(
            !greased,
            "thin enough for its speed",
            Test::NotThicker {
                at: spot.usual(RISE_K),
                right: nu_1 * RATIO_FULL,
                will_do: nu_1 * 1.5 * RATIO_FULL,
                else_grade: Grade::Wrong,
            },
            "from four times the reference viscosity on, thicker oil only heats the spindle",
            "iso-281",
        )
        .demand(
            "no solids in a fast spindle",
            Test::Without { traits: &[Trait::Molybdenum, Trait::Graphite, Trait::Copper], else_grade: Grade::Harmful },
            "solid grains dent the tracks of a fast bearing",
            "common-practice",
        )
        .dose(Form::Oil, Dose::about(oil, DoseUnit::Millilitre))
        .dose(Form::Grease, Dose::mass(regrease_mass(r, outside, answers.quantity(&WIDTH)) * bearings))
        .mind("Let it idle warm before you load it.", "common-practice"))
}
