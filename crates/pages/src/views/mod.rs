//! The pages, one file each.

pub(crate) mod bench;
mod bench_form;
pub(crate) mod cautions;
pub(crate) mod chart;
pub(crate) mod cupboard;
pub(crate) mod ladder;
pub(crate) mod shop;
pub(crate) mod sources;
mod stairs;
pub(crate) mod today;
pub(crate) mod units;
pub(crate) mod why;
pub(crate) mod work;
