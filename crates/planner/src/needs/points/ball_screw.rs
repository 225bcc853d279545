//! A ball screw.
//!
//! Balls roll in it as in a rolling bearing, and ask for the same viscosity at its mean diameter and speed. A slow screw cannot reach that;
//! there antiwear or extreme-pressure additives carry the balls.

use formulas::rolling_bearing::{reference_viscosity, speed_factor};
use formulas::working::Recorder;
use reference::{Form, Trait};
use shop::{Given, Kind};
use units::{AngularVelocity, Length, Quantity};

use super::common::{mm2_per_s, rim_speed};
use super::interval::Interval;
use super::{Asking, Spot};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::needs::prohibitions::Character;
use crate::verdict::Grade;

const DIAMETER: Given<Length> = Given::quantity("diameter", "20 mm", "common-practice", "diameter of the screw over the balls' centres");
const LEAD: Given<Length> = Given::quantity("lead", "5 mm", "common-practice", "advance in one turn");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "500 rpm", "common-practice", "speed of the screw");

pub(super) static KIND: Kind =
    Kind { name: "ball screw", about: "a ball screw and its nut", fields: &[DIAMETER.field(), LEAD.field(), SPEED.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    const RISE_K: f64 = 5.0;
    /// No oil a slide's pump feeds is thicker than about this when warm, mm²/s; a screw that asks for more runs mixed. *Common practice.*
    const REACHED: f64 = 90.0;
    /// Down to this share of the reference viscosity antiwear additives help (ISO 281 treats 0.4 to 1 as mixed).
    const RATIO_WILL_DO: f64 = 0.4;
    /// Longer leads than this many diameters are not made.
    const LONGEST_LEAD: f64 = 3.0;
    let answers = spot.answers();
    let (diameter, lead) = (answers.quantity(&DIAMETER), answers.quantity(&LEAD));
    if lead > diameter * LONGEST_LEAD {
        let what = "the lead is more than three times the screw's diameter".to_owned();
        return Err(Complaint::Contradiction { field: "lead", what, mend: "Give the advance in one turn, or mend `diameter`." });
    }
    let speed = answers.quantity(&SPEED);
    let nu_1 = reference_viscosity(r, speed, diameter)?;
    let factor = speed_factor(r, speed, diameter);
    let reached = mm2_per_s(REACHED);
    let right = if nu_1 < reached { nu_1 } else { reached };
    // The dose of a small screw and its travel: half a millilitre for 16 mm. *Common practice.*
    let size = diameter.base() / 0.016;
    let asking = Asking::new(Consequence::StopsOrHarms, Interval::running(8.0, 90.0))
        .nature(Nature { speed: rim_speed(diameter, speed), speed_factor: Some(factor), rise: RISE_K, ..Nature::default() })
        .character(Character { rolling: true, ..Character::default() })
        .classes(
            &["slideway-oil", "hydraulic-oil", "circulating-oil", "gear-oil", "lithium-grease"],
            &["spindle-oil", "motion-oil", "compressor-oil", "polyurea-grease", "calcium-sulphonate-grease", "ep-grease"],
            "clean oil, as the ways beside it have; on a sealed nut a lithium grease",
            "common-practice",
        )
        .demand(
            "thick enough for its speed",
            Test::NotThinner { at: spot.hottest(RISE_K), right, will_do: right * RATIO_WILL_DO, else_grade: Grade::Wrong },
            "below the reference viscosity the balls touch their track",
            "iso-281",
        )
        .demand(
            "no solids among the balls",
            Test::Without { traits: &[Trait::Graphite, Trait::Molybdenum, Trait::Ptfe, Trait::Copper], else_grade: Grade::Wrong },
            "solid grains dent the track",
            "common-practice",
        )
        .stiffness(spot, 1, 2)
        .dose(Form::Oil, Dose::ml(0.5 * size))
        .dose(Form::Grease, Dose::grams(0.5 * size));
    if nu_1 <= reached {
        return Ok(asking);
    }
    Ok(asking.demand(
        "additives for a slow screw",
        Test::With { traits: &[Trait::Antiwear, Trait::InactiveEp, Trait::Zinc], else_grade: Grade::WillDo },
        "so slow no oil parts balls and track; additives do",
        "iso-281",
    ))
}
