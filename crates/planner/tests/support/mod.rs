//! Shops out of text, and questions to their plans.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]
#![allow(dead_code, clippy::allow_attributes, reason = "each test file uses its own part")]

use planner::need::Need;
use planner::needs::{Working, kinds, needs};
use planner::report::Report;
use planner::verdict::{Grade, grade};
use planner::{Wishes, plan};
use reference::Reference;
use shop::Shop;
use units::System;

/// The shop a text describes.
pub fn shop(text: &str) -> Shop {
    shop::read(text.as_bytes(), kinds(), Reference::embedded()).unwrap_or_else(|problems| panic!("{problems:#?}\n{text}"))
}

/// One of the examples.
pub fn example(name: &str) -> String {
    std::fs::read_to_string(format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"))).unwrap()
}

/// The needs of a shop.
pub fn needs_of(text: &str) -> Vec<Need> {
    needs(&shop(text), Reference::embedded(), Working::Dropped).unwrap_or_else(|problems| panic!("{problems:#?}\n{text}"))
}

/// The one need whose short name ends so.
pub fn need(text: &str, ending: &str) -> Need {
    needs_of(text).into_iter().find(|need| need.id.ends_with(ending)).unwrap_or_else(|| panic!("no need ends in {ending}"))
}

/// The grade of a fluid at a need.
pub fn grade_of(need: &Need, fluid: &str) -> Grade {
    let reference = Reference::embedded();
    grade(need, reference.fluid(fluid).unwrap_or_else(|| panic!("no fluid {fluid}")), reference)
}

/// The report of a shop's plan.
pub fn report(text: &str, wishes: &Wishes) -> Report {
    plan(&shop(text), Reference::embedded(), wishes).unwrap().report(System::Metric)
}

/// A machine with one point.
pub fn point(kind: &str, more: &str) -> String {
    format!("[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\nkind = \"{kind}\"\n{more}\n")
}

/// Keys of the ladder's fluids, in order.
pub fn ladder(report: &Report) -> Vec<String> {
    report.ladder.iter().map(|rung| rung.fluid.clone()).collect()
}
