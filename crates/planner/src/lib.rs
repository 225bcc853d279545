//! From a shop to needs, verdicts, ladder and chart.
//!
//! Data flows one way: [`needs`] turns a shop into demands, [`verdict`] holds every fluid against them, [`ladder`] chooses what to buy,
//! [`chart`] says what goes where. [`plan()`] runs the whole chain; [`report`] is the same as plain data for programs,
//! and [`words`] says it to people.
//!
//! **Invariant:** no file, no clock, no screen. Money, dates and the shop are passed in.

pub mod chart;
pub mod demand;
pub mod ladder;
pub mod need;
pub mod needs;
mod plan;
pub mod report;
pub mod round;
pub mod season;
pub mod surroundings;
pub mod use_rate;
pub mod verdict;
pub mod why;
pub mod words;

pub use plan::{Plan, PlanError, Weighed, Wishes, plan};
