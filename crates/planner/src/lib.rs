//! From a shop to needs, verdicts, ladder and chart.

pub mod demand;
pub mod ladder;
pub mod need;
pub mod needs;
pub mod verdict;
