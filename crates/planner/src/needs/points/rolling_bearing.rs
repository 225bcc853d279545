//! A rolling bearing, oiled or greased.
//!
//! The oil, or the grease's base oil, must at running temperature be as thick as ISO 281 asks for the bearing's size and speed.

use formulas::rolling_bearing::{
    CALENDAR_CAP_H, Dirt, Kind as Rolling, mean_diameter, reference_viscosity, regrease_interval, regrease_mass, speed_factor,
};
use formulas::working::Recorder;
use reference::{Form, Trait};
use shop::{Exposure, Fitting, Given, Kind};
use units::{AngularVelocity, Length, Quantity};

use super::interval::Interval;
use super::{Asking, Spot};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};
use crate::needs::prohibitions::Character;
use crate::verdict::Grade;

const BORE: Given<Length> = Given::quantity("bore", "25 mm", "common-practice", "bore of the inner ring");
const OUTSIDE: Given<Length> = Given::quantity("outside", "52 mm", "common-practice", "outside diameter");
const WIDTH: Given<Length> = Given::quantity("width", "15 mm", "common-practice", "width");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "600 rpm", "common-practice", "speed it usually runs at");
const TYPE: Given<&'static str> =
    Given::choice("type", &["ball", "cylindrical", "taper", "spherical"], "ball", "common-practice", "shape of the rolling bodies");
const VERTICAL: Given<bool> = Given::flag("vertical", "false", "common-practice", "whether the shaft stands upright");

pub(super) static KIND: Kind = Kind {
    name: "rolling bearing",
    about: "a ball or roller bearing",
    fields: &[BORE.field(), OUTSIDE.field(), WIDTH.field(), SPEED.field(), TYPE.field(), VERTICAL.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// A rolling head runs this much warmer than the room; *common practice*.
    const RISE_K: f64 = 25.0;
    /// Viscosity ratio that is right, and the least that will do with antiwear additives (ISO 281 treats 0.4 to 1 as mixed).
    const RATIO_RIGHT: f64 = 1.0;
    const RATIO_WILL_DO: f64 = 0.4;
    let answers = spot.answers();
    let (bore, outside, width) = (answers.quantity(&BORE), answers.quantity(&OUTSIDE), answers.quantity(&WIDTH));
    if bore >= outside {
        let what = "the bore is not smaller than the outside diameter".to_owned();
        return Err(Complaint::Contradiction { field: "bore", what, mend: "Exchange `bore` and `outside`, or mend the wrong one." });
    }
    let speed: AngularVelocity = answers.quantity(&SPEED);
    let mean = mean_diameter(bore, outside);
    let nu_1 = reference_viscosity(r, speed, mean)?;
    let factor = speed_factor(r, speed, mean);
    let rolling = match answers.word(&TYPE) {
        "cylindrical" => Rolling::Cylindrical,
        "taper" | "spherical" => Rolling::Taper,
        _ => Rolling::Ball,
    };
    let dirt = if [Exposure::Grit, Exposure::Coolant].iter().any(|exposure| spot.point.meets(*exposure)) {
        Dirt::Dirty
    } else if spot.point.meets(Exposure::Chips) {
        Dirt::Dusty
    } else {
        Dirt::Clean
    };
    let greased = spot.point.fitting.feeds_grease() || spot.point.fitting == Fitting::Brush;
    let interval = if greased {
        let hours = regrease_interval(r, speed, bore, rolling, spot.hottest(RISE_K), answers.flag(&VERTICAL), dirt)?.base() / 3600.0;
        Interval::running(hours, CALENDAR_CAP_H / 24.0)
    } else {
        Interval::running(1000.0, 365.0)
    };
    let grease = regrease_mass(r, outside, width);
    Ok(Asking::new(Consequence::StopsOrHarms, interval)
        .nature(Nature { clearance: Clearance::Grease, speed_factor: Some(factor), rise: RISE_K, enclosed: true, ..Nature::default() })
        .character(Character { rolling: true, bath: !greased, ..Character::default() })
        .classes(
            &[
                "lithium-grease",
                "ep-grease",
                "polyurea-grease",
                "calcium-sulphonate-grease",
                "circulating-oil",
                "hydraulic-oil",
                "spindle-oil",
            ],
            &["moly-grease", "white-grease", "ptfe-grease", "slideway-oil", "light-machine-oil", "gear-oil"],
            "clean oil or a bearing grease; tack and solids only add drag",
            "common-practice",
        )
        .demand(
            "thick enough for its speed",
            Test::NotThinner {
                at: spot.hottest(RISE_K),
                right: nu_1 * RATIO_RIGHT,
                will_do: nu_1 * RATIO_WILL_DO,
                else_grade: Grade::Wrong,
            },
            "below the reference viscosity the bodies touch the tracks; down to 0.4 of it antiwear additives help, and less is no film at all",
            "iso-281",
        )
        .demand(
            "antiwear where the film is thin",
            Test::ThickOrWith {
                at: spot.hottest(RISE_K),
                thick: nu_1 * RATIO_RIGHT,
                traits: &[Trait::Antiwear, Trait::InactiveEp, Trait::Zinc, Trait::Molybdenum],
            },
            "where the oil is thinner than the reference viscosity, only additives part the metal",
            "iso-281",
        )
        .stiffness(spot, 2, 3)
        .demand_if(
            speed_is_quick(factor),
            "no solids in a quick bearing",
            Test::Without { traits: &[Trait::Molybdenum], else_grade: Grade::Wrong },
            "solids serve slow and shocked bearings; in a quick one they only wear the cage",
            "common-practice",
        )
        .dose(Form::Grease, Dose::mass(grease))
        .dose(Form::Oil, Dose::ml(3.0))
        .mind("Never fill it: a bearing packed full of grease heats itself.", "common-practice"))
}

/// From here a bearing counts as quick, mm·rev/min; *common practice*.
fn speed_is_quick(factor: f64) -> bool {
    factor > 100_000.0
}
