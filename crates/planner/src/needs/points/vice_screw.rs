//! A vice, jack or clamp screw.
//!
//! Slow, heavily loaded and forgotten for months: a grease with extreme-pressure additives or molybdenum disulphide stays. In abrasive dust
//! a dry film.

use formulas::slideway::{film_dose, journal_area};
use formulas::working::Recorder;
use reference::Form;
use shop::{Exposure, Given, Kind};
use units::{Length, Quantity};

use super::common::{GREASE_G_PER_ML, micrometres, mm2_per_s};
use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::verdict::Grade;

const DIAMETER: Given<Length> = Given::quantity("diameter", "20 mm", "common-practice", "outside diameter of the screw");
const LENGTH: Given<Length> = Given::quantity("length", "150 mm", "common-practice", "length of thread in use");

pub(super) static KIND: Kind =
    Kind { name: "vice screw", about: "a vice, jack or clamp screw", fields: &[DIAMETER.field(), LENGTH.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// Grease that fills the thread about half: 2 g on 150 mm of a 20 mm screw; oil a tenth of it. *Common practice.*
    const FILM_UM: f64 = 235.0;
    const OIL_SHARE: f64 = 0.1;
    /// Thinner oil than VG 46 at room temperature does not stay in a loaded thread; *common practice*.
    const STAYS: f64 = 60.0;
    let answers = spot.answers();
    let area = journal_area(r, answers.quantity(&DIAMETER), answers.quantity(&LENGTH));
    let grease = 1e6 * film_dose(r, area, micrometres(FILM_UM)).base();
    // Chips stick to grease, so where they fall an oil renewed often is as good.
    let oil = if spot.point.meets(Exposure::Chips) { Grade::Right } else { Grade::WillDo };
    Ok(Asking::new(Consequence::SlowsOrDirties, Interval::calendar(180.0))
        .nature(Nature { heavy: true, ..Nature::default() })
        .form(oil, Grade::Right, Grade::WillDo, "slow and heavily loaded: grease stays; oil has to be renewed")
        .classes(
            &["ep-grease", "moly-grease", "slideway-oil", "tacky-oil", "anti-seize"],
            &[
                "lithium-grease",
                "calcium-sulphonate-grease",
                "gear-oil",
                "motion-oil",
                "hydraulic-oil",
                "circulating-oil",
                "moly-film",
                "ptfe-film",
                "dry-graphite",
            ],
            "great pressure on slow threads wants extreme-pressure additives or solids",
            "common-practice",
        )
        .thick_enough(spot, mm2_per_s(STAYS), "thin oil is pressed out of a loaded thread", "common-practice")
        .stiffness(spot, 1, 2)
        .dose(Form::Grease, Dose::grams(GREASE_G_PER_ML * grease))
        .dose(Form::Paste, Dose::grams(GREASE_G_PER_ML * grease))
        .dose(Form::Oil, Dose::ml(OIL_SHARE * grease)))
}
