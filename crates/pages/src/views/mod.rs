//! The pages, one file each.

pub(crate) mod api;
pub(crate) mod bench;
pub(crate) mod cautions;
pub(crate) mod chart;
pub(crate) mod cupboard;
pub(crate) mod done;
pub(crate) mod feed;
pub(crate) mod fluid;
pub(crate) mod ladder;
pub(crate) mod log;
pub(crate) mod meters;
pub(crate) mod part;
pub(crate) mod pot;
pub(crate) mod shop;
pub(crate) mod sources;
mod stairs;
pub(crate) mod start;
pub(crate) mod table;
pub(crate) mod today;
pub(crate) mod units;
pub(crate) mod why;
pub(crate) mod work;
