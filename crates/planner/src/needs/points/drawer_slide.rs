//! A light slide moved by hand: a drawer, a column, a belt-tension slide.
//!
//! Nothing wears it out but dirt, and oil gathers dirt. Wax, a dry film or a little clean grease keeps it moving for months.

use formulas::slideway::{film_dose, slide_area};
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{Length, Quantity};

use super::common::{GREASE_G_PER_ML, micrometres};
use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;
use crate::verdict::Grade;

const LENGTH: Given<Length> = Given::quantity("length", "450 mm", "common-practice", "length of the slide");

pub(super) static KIND: Kind = Kind { name: "drawer slide", about: "a light slide moved by hand", fields: &[LENGTH.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// Two rails of about 10 mm and a thin film on them; *common practice*.
    const RAIL_M: f64 = 0.01;
    const RAILS: f64 = 2.0;
    const FILM_UM: f64 = 50.0;
    let area = slide_area(r, spot.answers().quantity(&LENGTH), Length::from_base(RAIL_M), RAILS);
    let millilitres = 1e6 * film_dose(r, area, micrometres(FILM_UM)).base();
    let dry = Dose::about(millilitres, DoseUnit::Millilitre);
    Ok(Asking::new(Consequence::SlowsOrDirties, Interval::calendar(180.0))
        .form(
            Grade::WillDo,
            Grade::Right,
            Grade::Right,
            "light and slow: wax, a dry film or a little grease lasts for months, oil gathers dust",
        )
        .classes(
            &["paste-wax", "ptfe-film", "ptfe-grease", "lithium-grease", "white-grease"],
            &[
                "dry-graphite",
                "moly-film",
                "calcium-sulphonate-grease",
                "slideway-oil",
                "light-machine-oil",
                "hydraulic-oil",
                "circulating-oil",
            ],
            "clean wax, PTFE or light lithium grease; nothing here needs extreme-pressure additives",
            "common-practice",
        )
        .stiffness(spot, 1, 2)
        .dose(Form::Dry, dry)
        .dose(Form::Grease, Dose::grams(GREASE_G_PER_ML * millilitres))
        .dose(Form::Oil, dry))
}
