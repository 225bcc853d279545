//! A slide of a grinder, in abrasive dust.
//!
//! Under bellows or washed by a pump it is a slideway like any other, oiled more often. Open to the dust, oil and grease make a lapping
//! paste of it: then only a dry film or wax.

use formulas::slideway::{WAY_FILM_UM, film_dose, slide_area};
use formulas::working::Recorder;
use reference::Form;
use shop::{Exposure, Fitting, Given, Kind};
use units::{Length, Pressure, Quantity};

use super::common::{micrometres, slide_window};
use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::verdict::Grade;

const LENGTH: Given<Length> = Given::quantity("length", "250 mm", "common-practice", "length of the sliding contact");
const WIDTH: Given<Length> = Given::quantity("width", "20 mm", "common-practice", "width of one land");
const LANDS: Given<f64> = Given::number("lands", "2", "common-practice", "how many lands bear");
const COVERED: Given<bool> = Given::flag("covered", "false", "common-practice", "whether bellows or covers keep the dust out");

pub(super) static KIND: Kind = Kind {
    name: "grinder slide",
    about: "a slide of a grinder, in abrasive dust",
    fields: &[LENGTH.field(), WIDTH.field(), LANDS.field(), COVERED.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    const RISE_K: f64 = 3.0;
    /// Of an ordinary slide, Pa; *common practice*.
    const PRESSURE_PA: f64 = 5e4;
    let answers = spot.answers();
    let area = slide_area(r, answers.quantity(&LENGTH), answers.quantity(&WIDTH), answers.number(&LANDS));
    let dose = film_dose(r, area, micrometres(WAY_FILM_UM));
    // The dust comes with the kind; where the exposure names it too, the interval is shortened there.
    let hours = if spot.point.meets(Exposure::Grit) { 4.0 } else { 1.0 };
    let asking = Asking::new(Consequence::StopsOrHarms, Interval::each_use(hours)).dose(Form::Oil, Dose::volume(dose));
    // A pump washes the dust out, and cups and holes feed oil from outside the dust.
    if answers.flag(&COVERED) || !matches!(spot.point.fitting, Fitting::Brush | Fitting::Sealed) {
        let window = slide_window(r, Pressure::from_base(PRESSURE_PA), None);
        return Ok(asking
            .nature(Nature { rise: RISE_K, enclosed: true, ..Nature::default() })
            .classes(
                &["slideway-oil"],
                &["hydraulic-oil", "circulating-oil", "gear-oil", "motion-oil"],
                "covered or washed, it is a slideway: oil that clings, and plenty of it to carry the dust out",
                "common-practice",
            )
            .viscosity(spot, window.low, window.high, "thin enough to carry dust out, thick enough to stay", "common-practice")
            .mind("Wipe the ways before you oil, and let the first oil run off dirty.", "common-practice"));
    }
    Ok(asking
        .nature(Nature { rise: RISE_K, ..Nature::default() })
        .form(
            Grade::Wrong,
            Grade::Harmful,
            Grade::Right,
            "abrasive dust reaches it: oil and grease hold the dust and make a lapping paste, a dry film does not",
        )
        .classes(&["ptfe-film", "moly-film", "dry-graphite", "paste-wax"], &[], "a film or wax holds no dust", "common-practice")
        .mind("Vacuum or wipe the dust off, never blow it into the slide.", "common-practice"))
}
