//! The bench: one worked calculation at a time, from the same formulas the planner uses.
//!
//! A [`Sheet`] says what it asks ([`fields`]), works it out with the recorder that keeps every step, and answers with a [`Page`]: inputs,
//! steps, answers with their range, choices, cautions and, where one would rather look, a picture.
//!
//! **Invariant:** a sheet holds no formula; it calls [`formulas`].

mod page;
pub mod picture;
pub mod picture_fit;
mod picture_shelf;
mod read;
mod sheets;
mod ticks;

pub use page::{AnswerRow, CautionRow, ChoiceRow, FactRow, InputRow, Page, StepRow};
pub use read::{Refusal, Reply, read};
pub use sheets::{Asked, Outcome, Sheet, Unanswered, sheet, sheets};
