//! A kept shop as people use it: its plan, what its log makes of the day, and what is written when something was done.
//!
//! The planner knows no store and the store no planner; here the two meet, once for the command line and for the pages.
//!
//! **Invariant:** no clock and no screen. Whoever writes says when, and has the words.

mod error;
mod history;
mod kept;
mod tick;
mod weather;

pub use error::KeepError;
pub use history::{LogRow, row};
pub(crate) use kept::read;
pub use kept::{Kept, hours};
pub use tick::{Said, Served};
pub use weather::read_weather;
