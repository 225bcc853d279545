//! A small shop made up of everything that can be said of one is planned, or says why not.
#![no_main]

use fuzz::made_up::shop;
use libfuzzer_sys::arbitrary::Unstructured;
use libfuzzer_sys::fuzz_target;
use planner::needs::kinds;
use planner::{Wishes, plan};
use reference::Reference;
use units::System;

fuzz_target!(|bytes: &[u8]| {
    let reference = Reference::embedded();
    let Ok(text) = shop(&mut Unstructured::new(bytes), reference) else { return };
    let Ok(shop) = shop::read(text.as_bytes(), kinds(), reference) else { return };
    let wishes = Wishes { rungs: Some(2), ..Wishes::default() };
    let report = match plan(&shop, reference, &wishes) {
        Ok(plan) => format!("{:?}", plan.report(System::Both)),
        Err(why) => format!("{why:?}"),
    };
    assert!(!report.contains("NaN") && !report.contains(": inf"), "{text}\n{report}");
});
