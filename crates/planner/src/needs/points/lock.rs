//! A lock.
//!
//! Oil gathers dust among small springs, and with graphite it makes a paste. A puff of dry graphite or PTFE powder serves for a year.

use formulas::working::Recorder;
use reference::Form;
use shop::Kind;

use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::verdict::Grade;

pub(super) static KIND: Kind = Kind { name: "lock", about: "a door, cabinet or padlock", fields: &[] };

pub(super) fn ask<R: Recorder>(_spot: &Spot<'_>, _r: &mut R) -> Result<Asking, Complaint> {
    /// A puff; *common practice*.
    const PUFF_G: f64 = 0.1;
    Ok(Asking::new(Consequence::SlowsOrDirties, Interval::calendar(365.0))
        .form_above_all(
            Grade::Wrong,
            Grade::Wrong,
            Grade::Right,
            "oil and grease gather dust among small pins and springs; a keyhole is no oil hole",
        )
        .classes(&["dry-graphite", "ptfe-film"], &["moly-film"], "dry flakes or powder keep the pins free", "common-practice")
        .dose(Form::Dry, Dose::grams(PUFF_G))
        .mind("Never oil after graphite: the two make a paste. Wash an oiled lock out first.", "common-practice"))
}
