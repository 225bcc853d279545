//! A roller chain.
//!
//! It wears inside, between pin and bush, where only oil creeps: on the inner plates of the slack side. Grease stays outside and dries.

use formulas::cutting::DROP_ML;
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{Length, Quantity, Velocity, show};

use super::common::mm2_per_s;
use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::verdict::Grade;

const LENGTH: Given<Length> = Given::quantity("length", "1.5 m", "common-practice", "length of the chain");
const PITCH: Given<Length> = Given::quantity("pitch", "12.7 mm", "common-practice", "pitch of its links");
const SPEED: Given<Velocity> = Given::quantity("speed", "0.5 m/s", "common-practice", "speed of the chain");

pub(super) static KIND: Kind =
    Kind { name: "roller chain", about: "a roller chain", fields: &[LENGTH.field(), PITCH.field(), SPEED.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, _r: &mut R) -> Result<Asking, Complaint> {
    /// VG 68 to 150 at these temperatures, mm²/s; the handbook names VG 150 for drip feed.
    const LOW: f64 = 60.0;
    const HIGH: f64 = 700.0;
    /// Up to this a can or a drip serves, above it a bath, m/s (*The Tribology Handbook*, C9).
    const DRIP_M_PER_S: f64 = 3.0;
    let answers = spot.answers();
    let (length, pitch) = (answers.quantity(&LENGTH), answers.quantity(&PITCH));
    if pitch > length {
        let what = "the pitch is longer than the chain".to_owned();
        return Err(Complaint::Contradiction { field: "pitch", what, mend: "Give the pitch of one link, or mend `length`." });
    }
    let speed = answers.quantity(&SPEED);
    let links = length.base() / pitch.base();
    let asking = Asking::new(Consequence::StopsOrHarms, Interval::running(8.0, 90.0))
        .nature(Nature { speed, rise: 5.0, ..Nature::default() })
        .form(Grade::Right, Grade::Wrong, Grade::WillDo, "only what runs gets in between pins and bushes; grease stays outside")
        .classes(
            &["tacky-oil", "circulating-oil", "hydraulic-oil", "gear-oil", "slideway-oil"],
            &["motion-oil", "compressor-oil", "ptfe-film", "moly-film", "paste-wax"],
            "an oil that creeps between the plates and stays there",
            "tribology-handbook",
        )
        .viscosity(spot, mm2_per_s(LOW), mm2_per_s(HIGH), "thin enough to creep in, thick enough to stay on the turns", "common-practice")
        .dose(Form::Oil, Dose::about(DROP_ML * links, DoseUnit::Millilitre))
        .mind("Oil between the plates on the slack side while you turn it by hand, never while it is driven.", "common-practice")
        .mind("On a hoist the maker's instruction and inspection come first.", "common-practice");
    Ok(if speed.base() > DRIP_M_PER_S {
        let limit = show(Velocity::from_base(DRIP_M_PER_S), spot.units);
        asking.mind(format!("Above {limit} drops do not keep up: the chain wants a bath or a pump."), "tribology-handbook")
    } else {
        asking
    })
}
