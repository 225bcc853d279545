//! Why a kept shop does not do what was asked.

use jiff::civil::Date;
use planner::PlanError;
use planner::round::RoundError;
use shop::Problem;
use store::StoreError;

/// Why a kept shop does not do what was asked. Nothing was written then.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum KeepError {
    /// The store does not do it.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// There is no round of that day.
    #[error(transparent)]
    Round(#[from] RoundError),
    /// There is no plan.
    #[error(transparent)]
    Plan(#[from] PlanError),
    /// The weather file that the description names cannot be read.
    #[error("{}. {}", .0.what, .0.mend)]
    Weather(Problem),
    /// The log would go back in time: what was done last would look as if it had been done before.
    #[error("it would be {today}, and the log has an entry of {last}; set this machine's clock right first")]
    ClockBack {
        /// The day passed in.
        today: Date,
        /// The day of the last entry.
        last: Date,
    },
    /// Nothing can be done on a day that is still to come.
    #[error("{day} is still to come; today is {today}")]
    ToCome {
        /// The day it is said to be done.
        day: Date,
        /// Today.
        today: Date,
    },
    /// A day that no calendar has where the shop stands.
    #[error("the day cannot be written: {0}")]
    Day(#[from] jiff::Error),
    /// What is filled from a pot into itself stays there.
    #[error("nothing can be filled from a pot into itself; name two pots")]
    SamePot,
    /// Two fluids in one pot are neither.
    #[error("one pot holds {from} and the other {into}, and what is mixed is neither; give each a pot of its own")]
    Mixed {
        /// Key of the fluid that would be filled into the other.
        from: String,
        /// Key of the fluid that is there.
        into: String,
    },
    /// The shop has no such machine, or the machine no such point.
    #[error("this shop has no {point} at {machine}")]
    NoPoint {
        /// The machine asked for.
        machine: String,
        /// The point asked for.
        point: String,
    },
}
