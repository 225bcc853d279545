//! The plan is computed, not tabled: change a speed, a temperature, an exposure, a metal, and what is asked changes with it, for the
//! reason that is given.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]

mod support;

use planner::demand::Test;
use planner::need::Need;
use planner::verdict::{Grade, verdict};
use planner::why::why;
use reference::Reference;
use support::{example, grade_of, need, needs_of, point, shop};
use units::{Quantity, System};

/// The least viscosity a need asks for, mm²/s.
fn least(need: &Need) -> f64 {
    let asked = need.demands.iter().find_map(|demand| match demand.test {
        Test::NotThinner { right, .. } => Some(right.base() * 1e6),
        _ => None,
    });
    asked.unwrap_or_else(|| panic!("{} asks for no viscosity", need.id))
}

fn reasons(need: &Need, fluid: &str) -> String {
    let reference = Reference::embedded();
    let verdict = verdict(need, reference.fluid(fluid).unwrap(), reference, System::Metric);
    let faults = verdict.findings.iter().filter(|finding| finding.grade > Grade::Right);
    faults.map(|finding| format!("{}: {}", finding.demand, finding.why)).collect::<Vec<_>>().join("\n")
}

#[test]
fn a_faster_spindle_asks_for_thinner_oil() {
    // ISO 281: ν₁ = 45 000·n^−0.83·d_m^−0.5 below 1000 rev/min, 4500·n^−0.5·d_m^−0.5 above (equations from memory of the standard).
    let at = |speed: &str| {
        need(&point("rolling bearing", &format!("bore = \"40 mm\"\noutside = \"60 mm\"\nfitting = \"bath\"\nspeed = \"{speed}\"")), "p")
    };
    let (slow, fast) = (at("200 rpm"), at("2000 rpm"));
    let expected = |n: f64, d: f64| if n < 1000.0 { 45_000.0 * n.powf(-0.83) / d.sqrt() } else { 4_500.0 / (n * d).sqrt() };
    assert!((least(&slow) - expected(200.0, 50.0)).abs() < 0.01 * least(&slow));
    assert!((least(&fast) - expected(2000.0, 50.0)).abs() < 0.01 * least(&fast));
    assert_eq!(grade_of(&fast, "hydraulic-32"), Grade::Right);
    assert_ne!(grade_of(&slow, "hydraulic-32"), Grade::Right);
    assert!(reasons(&slow, "hydraulic-32").contains("reference viscosity"));
}

#[test]
fn a_hot_room_asks_for_a_thicker_grade() {
    let at = |air: &str| need(&format!("[room]\n{air}\n{}", point("horizontal way", "")), "p");
    let cool = at("coldest = \"5 degC\"\nusual = \"10 degC\"\nhottest = \"16 degC\"");
    let hot = at("coldest = \"20 degC\"\nusual = \"32 degC\"\nhottest = \"42 degC\"");
    assert_eq!(grade_of(&cool, "slideway-32"), Grade::Right);
    assert_ne!(grade_of(&hot, "slideway-32"), Grade::Right);
    assert!(reasons(&hot, "slideway-32").contains("thick enough when hot"));
}

#[test]
fn a_cold_start_rules_out_a_thick_oil() {
    let at = |coldest: &str| need(&format!("[room]\ncoldest = \"{coldest}\"\n{}", point("oil point", "fitting = \"oil cup\"")), "p");
    let (mild, hard) = (at("10 degC"), at("-15 degC"));
    assert!(grade_of(&mild, "slideway-68").serves());
    assert!(!grade_of(&hard, "slideway-68").serves());
    assert!(reasons(&hard, "slideway-68").contains("flows on a cold start"));
}

#[test]
fn chips_grit_and_a_nipple_change_what_goes_there() {
    let plain = need(&point("vice screw", ""), "p");
    let gritty = need(&point("vice screw", "exposure = [\"grit\"]"), "p");
    assert!(grade_of(&plain, "lithium-ep-2").serves());
    assert!(!grade_of(&gritty, "lithium-ep-2").serves());
    assert!(reasons(&gritty, "lithium-ep-2").contains("lapping paste"));
    let oiler = need(&point("bush", "fitting = \"ball oiler\""), "p");
    let nipple = need(&point("bush", "fitting = \"grease nipple\""), "p");
    assert_eq!(grade_of(&oiler, "lithium-ep-2"), Grade::Harmful);
    assert_ne!(grade_of(&nipple, "lithium-ep-2"), Grade::Harmful);
    assert!(reasons(&oiler, "lithium-ep-2").contains("blocks"));
}

#[test]
fn bronze_rules_out_what_iron_bears() {
    let iron = need(&point("gear head", "touches = [\"cast-iron\"]\nclutch = false\nmaker = { use = [\"gl5-gear-oil\"] }"), "p");
    let bronze = need(&point("gear head", "touches = [\"bronze\"]\nclutch = false\nmaker = { use = [\"gl5-gear-oil\"] }"), "p");
    assert_ne!(grade_of(&iron, "gl5-80w90"), Grade::Harmful);
    assert_eq!(grade_of(&bronze, "gl5-80w90"), Grade::Harmful);
    assert!(reasons(&bronze, "gl5-80w90").contains("bronze"));
}

#[test]
fn more_dirt_and_more_use_shorten_the_interval() {
    let times = |more: &str| need(&point("scroll chuck", more), "p").rations[0].every.times_a_year;
    assert!(times("exposure = [\"chips\"]\nhours = \"20 h/week\"") > times("hours = \"20 h/week\""));
    assert!(times("hours = \"40 h/week\"") > times("hours = \"20 h/week\""));
}

#[test]
fn a_larger_place_takes_more() {
    let dose = |length: &str| {
        need(&point("horizontal way", &format!("length = \"{length}\"\nwidth = \"20 mm\"\nlands = 4")), "p").rations[0].dose.likely
    };
    // A saddle of four lands of 20 × 150 mm takes 0.30 mL for a film of 25 µm (geometry).
    assert!((dose("150 mm") - 0.30).abs() < 0.003);
    assert!((dose("300 mm") - 0.60).abs() < 0.006);
}

#[test]
fn steam_pressure_moves_the_cylinder_oil() {
    // Saturation temperature 151.9 °C at 4 bar gauge (IAPWS-IF97); the oil must keep about 7 mm²/s there (common practice).
    let at = |pressure: &str| need(&point("steam cylinder", &format!("pressure = \"{pressure}\"")), "p");
    let (low, high) = (at("2 bar"), at("10 bar"));
    assert_eq!(grade_of(&low, "cylinder-460"), Grade::Right);
    assert_ne!(grade_of(&high, "cylinder-460"), Grade::Right);
    assert!(!grade_of(&low, "hydraulic-68").serves());
}

#[test]
fn why_shows_its_working_and_its_sources() {
    let shop = shop(&point("rolling bearing", "fitting = \"bath\""));
    let account = why(&shop, Reference::embedded(), "m p", &["hydraulic-32".to_owned(), "lithium-2".to_owned()], System::Metric).unwrap();
    assert!(account.working.iter().any(|line| line.contains("ν₁")), "{:#?}", account.working);
    assert_eq!(account.verdicts.len(), 2);
    for finding in account.verdicts.iter().flat_map(|verdict| &verdict.findings) {
        assert!(
            !finding.why.is_empty() && !finding.source.is_empty() && !finding.asked.is_empty() && !finding.given.is_empty(),
            "{finding:?}"
        );
    }
}

#[test]
fn a_place_is_found_by_its_short_name_and_as_it_is_shown_and_as_the_log_is_told() {
    let shop = shop(&example("alder-lock"));
    for need in needs_of(&example("alder-lock")) {
        let shown = need.place.words();
        for asked in [need.id.clone(), shown.clone(), shown.replace(" · ", "/")] {
            let found = why(&shop, Reference::embedded(), &asked, &[], System::Metric).unwrap();
            assert_eq!(found.need, need.id, "{asked}");
        }
    }
}
