//! The scroll and jaws of a chuck.
//!
//! Slow, heavily loaded and flung round, with chips falling in. It is easy to get at, so an oil renewed often carries the dirt out again;
//! a thin film of extreme-pressure grease will do. A dry chuck loses much of its grip.

use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{Length, Quantity};

use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;

const DIAMETER: Given<Length> = Given::quantity("diameter", "125 mm", "common-practice", "diameter of the chuck");

pub(super) static KIND: Kind = Kind { name: "scroll chuck", about: "the scroll, pinions and jaws of a chuck", fields: &[DIAMETER.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, _r: &mut R) -> Result<Asking, Complaint> {
    /// A 125 mm chuck takes about 1 mL of oil or 0.75 g of grease; larger ones by their area. *Common practice.*
    const REFERENCE_M: f64 = 0.125;
    let size = (spot.answers().quantity(&DIAMETER).base() / REFERENCE_M).powi(2);
    Ok(Asking::new(Consequence::StopsOrHarms, Interval::running(40.0, 180.0))
        .nature(Nature { heavy: true, ..Nature::default() })
        .classes(
            &["slideway-oil", "ep-grease", "moly-grease", "tacky-oil"],
            &["hydraulic-oil", "circulating-oil", "gear-oil", "motion-oil", "lithium-grease", "calcium-sulphonate-grease", "anti-seize"],
            "sliding faces under great pressure want an oil that clings, or a grease with extreme-pressure additives or solids",
            "common-practice",
        )
        .dose(Form::Oil, Dose::ml(size))
        .dose(Form::Grease, Dose::grams(0.75 * size))
        .mind("Keep it thin: what is flung out takes chips with it, and a smeared jaw slips.", "common-practice"))
}
