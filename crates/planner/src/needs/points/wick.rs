//! A wick or siphon feeding a bearing.
//!
//! What the wick lifts goes with one over the viscosity, and on a cold morning a thick oil stays in the well. Tack and solids clog it.

use formulas::slideway::{WAY_FILM_UM, film_dose, journal_area};
use formulas::working::Recorder;
use formulas::{given, sources, step};
use reference::Form;
use shop::{Fitting, Given, Kind};
use units::{AngularVelocity, Length, Quantity};

use super::common::{micrometres, mm2_per_s, rim_speed};
use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};

const DIAMETER: Given<Length> = Given::quantity("diameter", "20 mm", "common-practice", "diameter of the shaft it feeds");
const LENGTH: Given<Length> = Given::quantity("length", "40 mm", "common-practice", "length of the bearing it feeds");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "500 rpm", "common-practice", "speed of the shaft");

pub(super) static KIND: Kind =
    Kind { name: "wick", about: "a wick or siphon feeding a bearing", fields: &[DIAMETER.field(), LENGTH.field(), SPEED.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// A bearing on a wick runs this much warmer than the room; *common practice*.
    const RISE_K: f64 = 10.0;
    /// Hours to the next filling; *common practice*.
    const HOURS: f64 = 8.0;
    let answers = spot.answers();
    let (diameter, length) = (answers.quantity(&DIAMETER), answers.quantity(&LENGTH));
    let speed = rim_speed(diameter, answers.quantity(&SPEED));
    let area = journal_area(r, diameter, length);
    let dose = film_dose(r, area, micrometres(WAY_FILM_UM));
    given!(r, v["m/s"] = speed.base(), "speed of the rim");
    // VG 32 to 46 at half a metre a second, thicker for a slower shaft and thinner for a quicker one.
    step!(
        r,
        f_v [] = formulas::math::min(formulas::math::max(formulas::math::sqrt(0.5 / v), 0.5), 1.3),
        sources::COMMON_PRACTICE
    );
    step!(r, nu_1["mm²/s"] = 30.0 * f_v, sources::COMMON_PRACTICE);
    step!(r, nu_2["mm²/s"] = 120.0 * f_v, sources::COMMON_PRACTICE);
    Ok(Asking::new(Consequence::StopsOrHarms, Interval::each_use(HOURS))
        .fitted(Fitting::Wick)
        .nature(Nature { clearance: Clearance::Oil, speed, rise: RISE_K, ..Nature::default() })
        .classes(
            &["circulating-oil", "hydraulic-oil"],
            &["spindle-oil", "light-machine-oil", "compressor-oil", "motion-oil"],
            "a clean straight oil that a wick can lift",
            "common-practice",
        )
        .viscosity(spot, mm2_per_s(nu_1), mm2_per_s(nu_2), "a wick lifts half as much of an oil twice as thick", "common-practice")
        .dose(Form::Oil, Dose::volume(dose * HOURS))
        .mind("Lift the wick out of the well when you stop, or it feeds all night.", "common-practice"))
}
