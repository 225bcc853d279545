//! What is due at the points of the machines today, and what the cupboard will run out of.
//!
//! Nothing here is kept: both follow from the chart, the day, and the plain facts of what was done, read and taken.
//!
//! **Invariant:** no clock and no store. The day is passed in, and whoever keeps the log says what stands in it.

mod cupboard;
mod due;
mod meter;
mod rate;

use formulas::FormulaError;
use jiff::civil::Date;

pub use cupboard::{BuyRow, Cupboard, End, Expiry, PotRow, cupboard, forecast};
pub use due::{Counted, Done, Facts, Round, RoundRow, Standing, round};
pub use meter::Reading;
pub use rate::{Basis, Used, Uses};

/// Why there is no round.
#[derive(Debug, thiserror::Error)]
pub enum RoundError {
    /// Something was done on a day that is still to come.
    #[error("today would be {today}, and the log already speaks of {of} on {later}; set the clock right, or undo that entry")]
    Backwards {
        /// The day passed in.
        today: Date,
        /// The later day.
        later: Date,
        /// What the log speaks of.
        of: String,
    },
    /// A formula refuses the numbers.
    #[error("the cupboard cannot be foretold: {0}")]
    Formula(#[from] FormulaError),
}

/// Refuses a day that is still to come.
fn not_after(today: Date, day: Date, of: impl FnOnce() -> String) -> Result<(), RoundError> {
    if day > today { Err(RoundError::Backwards { today, later: day, of: of() }) } else { Ok(()) }
}

/// Whole days from one day to another.
fn days_between(from: Date, to: Date) -> i32 {
    (to - from).get_days()
}
