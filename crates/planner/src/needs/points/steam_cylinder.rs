//! The cylinder of a steam engine.
//!
//! Its oil must be thick enough at the heat of the steam and hold on where water condenses: a compounded cylinder oil, thicker as the
//! pressure rises. Engine oil makes an emulsion with the water and lubricates nothing.

use formulas::cutting::DROP_ML;
use formulas::feed::cylinder_feed;
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{AngularVelocity, Length, Pressure, TemperatureDifference};

use super::interval::Interval;
use super::{Asking, Spot, steam};
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;

const BORE: Given<Length> = Given::quantity("bore", "25 mm", "common-practice", "bore of the cylinder");
const STROKE: Given<Length> = Given::quantity("stroke", "25 mm", "common-practice", "stroke");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "300 rpm", "common-practice", "speed of the crank");
const PRESSURE: Given<Pressure> = Given::quantity("pressure", "3 bar", "common-practice", "pressure on the gauge");
const SUPERHEAT: Given<TemperatureDifference> =
    Given::quantity("superheat", "0 K", "common-practice", "how much hotter the steam is than saturated steam");

pub(super) static KIND: Kind = Kind {
    name: "steam cylinder",
    about: "the cylinder of a steam engine",
    fields: &[BORE.field(), STROKE.field(), SPEED.field(), PRESSURE.field(), SUPERHEAT.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// The rule is a floor; small engines are given about ten times as much, and up to fifty. *Common practice.*
    const LIKELY: f64 = 10.0;
    const MOST: f64 = 50.0;
    let answers = spot.answers();
    let superheat = answers.quantity(&SUPERHEAT);
    let at = steam::temperature(r, answers.quantity(&PRESSURE), superheat)?;
    let floor = 60.0 * DROP_ML * cylinder_feed(r, answers.quantity(&BORE), answers.quantity(&STROKE), answers.quantity(&SPEED));
    let an_hour = Dose { low: floor, likely: LIKELY * floor, high: MOST * floor, unit: DoseUnit::Millilitre };
    let asking = Asking::new(Consequence::StopsOrHarms, Interval::each_use(1.0)).dose(Form::Oil, an_hour);
    Ok(steam::oil(asking, spot, at, superheat))
}
