//! An enclosed gear head or reducer running in a bath.
//!
//! The oil's grade follows from the teeth's load and speed (DIN 51509, with the rule 500/√v as a second opinion), a worm's from a table by
//! speed and air (AGMA 9005). Above it stands what the maker says; and where clutches or bearings share the bath, plain or antiwear oil is
//! kinder than extreme-pressure oil.

use formulas::FormulaError;
use formulas::gear::{EP_FROM, Mesh, force_speed_factor, gear_viscosity, pitch_line_speed, tangential_force, worm_grade};
use formulas::working::Recorder;
use reference::{Form, Trait};
use shop::{Fitting, Given, Kind};
use units::{AngularVelocity, KinematicViscosity, Length, Power, Volume};

use super::common::mm2_per_s;
use super::interval::Interval;
use super::{Asking, Spot};
use crate::demand::{Test, celsius};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};
use crate::needs::prohibitions::Character;
use crate::verdict::Grade;

const POWER: Given<Power> = Given::quantity("power", "0.55 kW", "common-practice", "power through the gears");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "600 rpm", "common-practice", "speed of the pinion");
const PINION: Given<Length> = Given::quantity("pinion", "50 mm", "common-practice", "reference diameter of the pinion");
const FACE: Given<Length> = Given::quantity("face", "20 mm", "common-practice", "width of the teeth");
const RATIO: Given<f64> = Given::number("ratio", "3", "common-practice", "teeth of the wheel over teeth of the pinion");
const WORM: Given<bool> = Given::flag("worm", "false", "common-practice", "whether it is a worm and a bronze wheel");
const CLUTCH: Given<bool> = Given::flag("clutch", "true", "common-practice", "whether clutches or bearings share the bath");
const VOLUME: Given<Volume> = Given::quantity("volume", "1 L", "common-practice", "oil to the mark");

/// The thinnest VG 68 there is, mm²/s at 40 °C (ISO 3448).
const CLUTCH_BEARS: f64 = 61.2;

pub(super) static KIND: Kind = Kind {
    name: "gear head",
    about: "gears running in an oil bath",
    fields: &[POWER.field(), SPEED.field(), PINION.field(), FACE.field(), RATIO.field(), WORM.field(), CLUTCH.field(), VOLUME.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// A geared head runs this much warmer than the room; *common practice*.
    const RISE_K: f64 = 25.0;
    /// Application factor of a small machine tool: steady motor, light shocks; *common practice*.
    const APPLICATION: f64 = 1.25;
    let answers = spot.answers();
    let (speed, pinion): (AngularVelocity, Length) = (answers.quantity(&SPEED), answers.quantity(&PINION));
    let worm = answers.flag(&WORM);
    let asking = Asking::new(Consequence::StopsOrHarms, Interval::running(750.0, 365.0))
        .nature(Nature { clearance: Clearance::Oil, rise: RISE_K, enclosed: true, ..Nature::default() })
        .character(Character { bath: true, worm, ..Character::default() })
        .fitted(Fitting::Bath)
        .dose(Form::Oil, Dose::filling(answers.quantity(&VOLUME)))
        .mind("Change the first filling after 50 hours: it carries the running-in dirt.", "common-practice");
    if worm {
        let slides = pitch_line_speed(r, pinion, speed);
        return Ok(of_worm(asking, mm2_per_s(worm_grade(r, slides, spot.room.coldest)?.grade)));
    }
    let force = tangential_force(r, answers.quantity(&POWER), speed, pinion)?;
    let mesh = Mesh {
        force,
        face: answers.quantity(&FACE),
        pinion,
        ratio: answers.number(&RATIO),
        speed: pitch_line_speed(r, pinion, speed),
        application: APPLICATION,
    };
    let factor = force_speed_factor(r, &mesh)?;
    let at = celsius(40.0);
    let wanted = match gear_viscosity(r, &mesh) {
        Ok(wanted) => wanted,
        Err(FormulaError::GearTooSlow { .. }) => return Ok(too_slow(asking)),
        Err(other) => return Err(other.into()),
    };
    let clutch = answers.flag(&CLUTCH);
    // What clutches and bearings bear, VG 68, stands above what the teeth alone would ask for; *common practice*.
    let bears = mm2_per_s(CLUTCH_BEARS);
    let low = if clutch && wanted.low > bears { bears } else { wanted.low };
    let right: &[&'static str] = if clutch {
        &["hydraulic-oil", "circulating-oil", "gl4-gear-oil"]
    } else {
        &["gear-oil", "hydraulic-oil", "circulating-oil", "gl4-gear-oil"]
    };
    let asking = asking
        .classes(
            right,
            &["gear-oil", "slideway-oil", "motion-oil", "compressor-oil"],
            "plain or antiwear oil where clutches and bearings share the bath; a light gear oil or slideway oil serves",
            "common-practice",
        )
        .demand(
            "thick enough for its teeth",
            Test::NotThinner { at, right: low, will_do: low / 1.5, else_grade: Grade::Wrong },
            "the slower and the more loaded the teeth, the thicker the film they ask for, up to what clutches and bearings bear that share it",
            "din-51509",
        )
        .demand(
            "thin enough for its teeth",
            Test::NotThicker { at, right: wanted.high, will_do: wanted.high * 1.5, else_grade: Grade::Wrong },
            "thicker oil than the teeth ask for only heats",
            "din-51509",
        );
    if factor < EP_FROM {
        return Ok(asking);
    }
    Ok(asking.demand(
        "extreme-pressure or antiwear additives",
        Test::With { traits: &[Trait::InactiveEp, Trait::Antiwear, Trait::Zinc, Trait::Fatty], else_grade: Grade::WillDo },
        "so loaded and slow the teeth touch",
        "common-practice",
    ))
}

/// What a worm and its bronze wheel ask for, whose table names a grade.
fn of_worm(asking: Asking, grade: KinematicViscosity) -> Asking {
    /// A grade thinner than the table's is right where it is compounded, two will do; *common practice*.
    const A_GRADE: f64 = 1.6;
    const TWO_GRADES: f64 = 2.5;
    asking
        .classes(
            &["worm-oil", "motion-oil"],
            &["steam-cylinder-oil", "gear-oil"],
            "a bronze worm wheel slides: it wants a thick compounded oil without active sulphur",
            "common-practice",
        )
        .demand(
            "thick enough for its worm",
            Test::NotThinner { at: celsius(40.0), right: grade / A_GRADE, will_do: grade / TWO_GRADES, else_grade: Grade::Wrong },
            "what slides on bronze wears it off through a thin film; where a thick oil stiffens, warm the box before it runs",
            "agma-9005",
        )
}

/// What serves where the teeth are too slow to carry a bath round: an oil that clings to them.
fn too_slow(asking: Asking) -> Asking {
    let right = mm2_per_s(CLUTCH_BEARS);
    asking
        .classes(
            &["slideway-oil", "gear-oil", "tacky-oil"],
            &["hydraulic-oil", "circulating-oil", "motion-oil", "semi-fluid-grease"],
            "so slow the teeth do not carry a bath round: an oil that clings to them",
            "din-51509",
        )
        .demand(
            "thick enough for its teeth",
            Test::NotThinner { at: celsius(40.0), right, will_do: right / 1.5, else_grade: Grade::Wrong },
            "thin oil runs off slow teeth",
            "common-practice",
        )
}
