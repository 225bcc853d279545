//! A slideway faced with a PTFE lining.
//!
//! The lining slides on little oil and never sticks. What harms it is what gets into it: hard solids, and solvents under its glue.

use formulas::slideway::{WAY_FILM_UM, film_dose, slide_area};
use formulas::working::Recorder;
use reference::{Form, Trait};
use shop::{Given, Kind};
use units::{Length, Pressure};

use super::common::{micrometres, slide_window};
use super::interval::Interval;
use super::{Asking, Spot};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::verdict::Grade;

const LENGTH: Given<Length> = Given::quantity("length", "200 mm", "common-practice", "length of the sliding contact");
const WIDTH: Given<Length> = Given::quantity("width", "25 mm", "common-practice", "width of one land");
const LANDS: Given<f64> = Given::number("lands", "4", "common-practice", "how many lands bear");
const PRESSURE: Given<Pressure> = Given::quantity("pressure", "0.05 MPa", "common-practice", "load over contact area");

pub(super) static KIND: Kind = Kind {
    name: "lined way",
    about: "a slideway faced with a PTFE lining",
    fields: &[LENGTH.field(), WIDTH.field(), LANDS.field(), PRESSURE.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// A slide runs this much warmer than the room; *common practice*.
    const RISE_K: f64 = 3.0;
    /// A lining does with half the film of metal on metal; *common practice*.
    const SHARE: f64 = 0.5;
    let answers = spot.answers();
    let window = slide_window(r, answers.quantity(&PRESSURE), None);
    let area = slide_area(r, answers.quantity(&LENGTH), answers.quantity(&WIDTH), answers.number(&LANDS));
    let dose = film_dose(r, area, micrometres(SHARE * WAY_FILM_UM));
    let lining = ["ptfe-lining", "way-adhesive"].map(str::to_owned).to_vec();
    Ok(Asking::new(Consequence::StopsOrHarms, Interval::each_use(8.0))
        .nature(Nature { rise: RISE_K, ..Nature::default() })
        .classes(
            &["slideway-oil"],
            &["hydraulic-oil", "circulating-oil"],
            "slideway oil keeps even a lining from sticking at the start",
            "common-practice",
        )
        .viscosity(
            spot,
            window.low,
            window.high,
            "thin enough to spread, thick enough to stay between parallel faces",
            "common-practice",
        )
        .demand(
            "no solids on a lining",
            Test::Without { traits: &[Trait::Graphite, Trait::Molybdenum, Trait::Copper], else_grade: Grade::Wrong },
            "solid grains bed themselves in the lining and score what slides on it",
            "common-practice",
        )
        .demand(
            "safe on the lining and its glue",
            Test::Spares { materials: lining, stays: true },
            "solvent creeps under the lining and lifts it",
            "common-practice",
        )
        .dose(Form::Oil, Dose::volume(dose))
        .mind("Keep solvents off the edges of the lining.", "common-practice"))
}
