//! The crankcase of a piston compressor.
//!
//! Some of its oil is carried into hot air and must leave little carbon there. It splashes crankpins in a hot bath, so it has to be thick
//! enough when hot and still turn on a cold start.

use formulas::working::Recorder;
use formulas::{given, sources, step};
use reference::{Form, Trait};
use shop::{Fitting, Given, Kind};
use units::{AngularVelocity, Quantity, TemperatureDifference, Volume};

use super::common::mm2_per_s;
use super::interval::Interval;
use super::{Asking, Spot};
use crate::demand::{Test, celsius};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};
use crate::needs::prohibitions::Character;
use crate::verdict::Grade;

const VOLUME: Given<Volume> = Given::quantity("volume", "0.3 L", "common-practice", "oil to the mark");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "1400 rpm", "common-practice", "speed of the crank");

pub(super) static KIND: Kind =
    Kind { name: "compressor crankcase", about: "the oil bath of a piston compressor", fields: &[VOLUME.field(), SPEED.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// The bath runs this much warmer than the room; *common practice*.
    const RISE_K: f64 = 50.0;
    /// Air of one stage at 8 bar leaves about this hot, and the oil's flash point is to lie 50 K above; *common practice*.
    const DISCHARGE_C: f64 = 150.0;
    const FLASH_MARGIN_K: f64 = 50.0;
    const SECONDS_A_MINUTE: f64 = 60.0;
    let answers = spot.answers();
    let turns = answers.quantity(&SPEED).base() / core::f64::consts::TAU * SECONDS_A_MINUTE;
    given!(r, n["rev/min"] = turns, "speed of the crank");
    // VG 100 in the usual compressor of 1400 rev/min; a slower crank carries less film and asks for thicker oil.
    step!(r, f_n [] = formulas::math::min(formulas::math::max(formulas::math::sqrt(1400.0 / n), 0.7), 1.5), sources::COMMON_PRACTICE);
    step!(r, nu_1["mm²/s"] = 16.0 * f_n, sources::COMMON_PRACTICE);
    step!(r, nu_2["mm²/s"] = 60.0 * f_n, sources::COMMON_PRACTICE);
    Ok(Asking::new(Consequence::StopsOrHarms, Interval::running(500.0, 365.0))
        .fitted(Fitting::Bath)
        .nature(Nature { clearance: Clearance::Oil, rise: RISE_K, enclosed: true, ..Nature::default() })
        .character(Character { bath: true, ..Character::default() })
        .classes(
            &["compressor-oil"],
            &["circulating-oil", "hydraulic-oil"],
            "a compressor oil leaves little carbon in the hot air",
            "iso-families",
        )
        .viscosity(spot, mm2_per_s(nu_1), mm2_per_s(nu_2), "thick enough for the crankpins when hot", "common-practice")
        .demand(
            "flash point above the hot air",
            Test::Flash { hottest: celsius(DISCHARGE_C), margin: TemperatureDifference::from_base(FLASH_MARGIN_K) },
            "oil carried into the hot air cokes, and coke in a hot pipe can catch fire",
            "common-practice",
        )
        .demand(
            "nothing that cokes",
            Test::Without { traits: &[Trait::Tackifier, Trait::Fatty, Trait::PolymerThickened, Trait::Solvent], else_grade: Grade::Wrong },
            "fat, tack and polymers cook to carbon on the valves",
            "common-practice",
        )
        .dose(Form::Oil, Dose::filling(answers.quantity(&VOLUME)))
        .mind("Change the first filling after 50 hours, and drain the receiver's water after every use.", "common-practice"))
}
