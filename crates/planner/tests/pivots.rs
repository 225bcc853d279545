//! What a pivot of a clock gets: half a cup, never a drop.

mod support;

use planner::need::{Dose, Need};
use planner::words;
use reference::Form;
use support::{need, point};
use units::System;

fn pivot(more: &str) -> Need {
    need(&point("instrument pivot", more), "p")
}

fn dose(need: &Need) -> Option<Dose> {
    need.ration(Form::Oil).map(|ration| ration.dose)
}

/// Common practice of clockmakers, no source: a microlitre at most, from a pin, to a third or half of the cup; a drop is forty.
#[test]
fn a_pivot_gets_what_hangs_on_a_pin() {
    for diameter in ["0.1 mm", "0.3 mm", "0.8 mm", "2 mm"] {
        let need = pivot(&format!("diameter = \"{diameter}\""));
        let dose = dose(&need);
        assert!(dose.is_some_and(|dose| dose.likely <= 1e-3 && dose.high <= 1e-3 && dose.low < dose.likely), "{diameter}: {dose:?}");
        let how = need.how.words(Form::Oil);
        assert!(how.contains("pin") && how.contains("half full") && !how.contains("brush"), "{how}");
    }
    let told = |more: &str| dose(&pivot(more)).map(|dose| (words::amount(dose, System::Metric), words::ends(dose, System::Inch)));
    assert_eq!(told("diameter = \"0.3 mm\""), Some(("0.5 µL".to_owned(), "0.25 µL to 1 µL".to_owned())));
    assert_eq!(told("diameter = \"0.8 mm\"\ncount = 14").map(|(amount, _)| amount), Some("14 µL".to_owned()));
}

/// A drop is 0.04 mL (common practice); half of one and more is told in drops.
#[test]
fn drops_begin_with_half_a_drop() {
    let told = |ml: f64| words::amount(Dose::ml(ml), System::Metric);
    assert_eq!([0.019, 0.021, 0.08].map(told), ["19 µL", "1 drop", "2 drops"]);
}
