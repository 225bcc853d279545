//! Cold and hot rooms: the plan changes where physics says so, and only there.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod support;

use std::collections::BTreeMap;

use planner::demand::Test;
use planner::needs::{Working, needs};
use planner::verdict::{Grade, grade};
use planner::{Wishes, plan};
use reference::Reference;
use support::{example, point, report, shop};
use units::{Quantity, Temperature};

/// For each place of an example, the fluids that serve it in a room that has one temperature all year.
fn serving(name: &str, celsius: f64) -> BTreeMap<String, Vec<String>> {
    let reference = Reference::embedded();
    let mut shop = shop(&example(name));
    let air = Temperature::from_base(celsius + 273.15);
    (shop.room.coldest, shop.room.usual, shop.room.hottest) = (air, air, air);
    needs(&shop, reference, Working::Dropped)
        .unwrap()
        .into_iter()
        .map(|need| {
            let right = reference.fluids.values().filter(|fluid| grade(&need, fluid, reference) == Grade::Right);
            (need.id.clone(), right.map(|fluid| fluid.key.clone()).collect())
        })
        .collect()
}

/// The places whose demands depend on temperature at all.
fn sensitive(name: &str) -> Vec<String> {
    let all = needs(&shop(&example(name)), Reference::embedded(), Working::Dropped).unwrap();
    let depends = |test: &Test| {
        matches!(
            test,
            Test::NotThinner { .. }
                | Test::NotThicker { .. }
                | Test::Flows { .. }
                | Test::Stands { .. }
                | Test::Consistency { .. }
                // What is warmer evaporates faster.
                | Test::SafeAir(_)
        )
    };
    all.into_iter().filter(|need| need.demands.iter().any(|demand| depends(&demand.test))).map(|need| need.id).collect()
}

fn changed(name: &str, one: f64, other: f64) -> Vec<String> {
    let (one, other) = (serving(name, one), serving(name, other));
    one.into_iter().filter(|(place, fluids)| other.get(place) != Some(fluids)).map(|(place, _)| place).collect()
}

#[test]
fn the_places_that_change_are_oiled_and_the_ones_that_do_not_are_not() {
    for name in ["alder-lock", "school-room"] {
        let sensitive = sensitive(name);
        for (one, other) in [(-5.0, 10.0), (10.0, 32.0), (-5.0, 32.0)] {
            let changed = changed(name, one, other);
            assert!(!changed.is_empty(), "{name}: nothing changes from {one} to {other} °C");
            assert!(changed.iter().all(|place| sensitive.contains(place)), "{name}: {changed:?}");
        }
    }
}

#[test]
fn named_places_change_and_named_places_stay() {
    let changed = changed("alder-lock", -5.0, 32.0);
    for place in ["lathe.bed-ways", "lathe.leadscrew", "lathe.leadscrew-end-bearings", "mill.column-ways-z"] {
        assert!(changed.iter().any(|id| id == place), "{place} should change: {changed:?}");
    }
    // Dust, steam and the practice of cutting do not feel the room.
    for place in ["grinder.tool-rest-pivots-and-clamps", "boat-fittings.turn-brass", "boat-fittings.tap-mild-steel", "marking-out.coat"] {
        assert!(!changed.iter().any(|id| id == place), "{place} should stay");
    }
}

#[test]
fn a_cold_room_wants_thinner_oil_on_the_ways_and_a_hot_one_thicker() {
    let of = |celsius: f64| serving("alder-lock", celsius).remove("lathe.bed-ways").unwrap();
    assert!(of(-5.0).contains(&"slideway-32".to_owned()), "{:?}", of(-5.0));
    assert!(!of(32.0).contains(&"slideway-32".to_owned()));
    assert!(of(10.0).contains(&"slideway-68".to_owned()) && of(32.0).contains(&"slideway-68".to_owned()));
}

#[test]
fn where_no_oil_serves_both_ends_the_plan_says_which_to_change_to() {
    let text = format!(
        "[room]\ncoldest = \"-15 degC\"\nusual = \"12 degC\"\nhottest = \"38 degC\"\n{}",
        point("rack and pinion", "fitting = \"oil hole\"")
    );
    let seasons = report(&text, &Wishes::default()).seasons;
    assert_eq!(seasons.len(), 1, "{seasons:?}");
    assert_ne!(seasons[0].cold, seasons[0].warm);
    let mild = format!("[room]\ncoldest = \"12 degC\"\nusual = \"18 degC\"\nhottest = \"25 degC\"\n{}", point("rack and pinion", ""));
    assert!(report(&mild, &Wishes::default()).seasons.is_empty());
}

#[test]
fn a_year_takes_more_where_more_is_used_and_the_ends_are_in_order() {
    let at = |hours: &str| {
        let text = format!("hours = \"{hours}\"\n{}", example("first-lathe"));
        let shop = shop(&text);
        let plan = plan(&shop, Reference::embedded(), &Wishes::default()).unwrap();
        plan.report(units::System::Metric).use_a_year
    };
    for row in at("4 h/week") {
        assert!(0.0 < row.amount.low && row.amount.low <= row.amount.likely && row.amount.likely <= row.amount.high, "{row:?}");
    }
    let of = |rows: Vec<planner::report::UseRow>| rows.into_iter().find(|row| row.fluid == "slideway-68").unwrap().amount.likely;
    assert!(of(at("12 h/week")) > of(at("4 h/week")));
}
