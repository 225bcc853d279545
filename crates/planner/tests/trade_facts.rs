//! What the trade knows, on the example shops and on variants of them. Every fact here is *common practice, no source*.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod support;

use planner::Wishes;
use planner::need::DoseUnit;
use planner::verdict::Grade;
use reference::{Form, Reference};
use support::{example, grade_of, ladder, need, needs_of, point, report};

const LATHE_AND_MILL: &str = "[[machine]]\ntemplate = \"bench lathe\"\n[[machine]]\ntemplate = \"bench mill\"\n\
    [[work]]\njob = \"cut\"\nmaterials = [\"mild-steel\", \"aluminium\", \"brass\"]\noperations = [\"turn\", \"mill\", \"drill\", \"tap\", \"part\"]\noften = \"weekly\"\n";

fn is(fluid: &str, class: &str) -> bool {
    Reference::embedded().fluid(fluid).unwrap().is(class)
}

#[test]
fn slideway_oil_of_grade_68_comes_first_then_a_general_cutting_oil_and_high_pressure_grease_among_the_first_three() {
    let rungs = ladder(&report(LATHE_AND_MILL, &Wishes::default()));
    assert_eq!(rungs[0], "slideway-68", "{rungs:?}");
    assert!(is(&rungs[1], "inactive-cutting-oil"), "{rungs:?}");
    assert!(rungs[..3].iter().any(|fluid| is(fluid, "ep-grease")), "{rungs:?}");
}

#[test]
fn the_first_rung_holds_in_most_draws() {
    for text in [LATHE_AND_MILL.to_owned(), example("alder-lock"), example("first-lathe"), example("school-room")] {
        let report = report(&text, &Wishes::default());
        assert_eq!(report.ladder[0].fluid, "slideway-68");
        assert!(report.ladder[0].holds_in > 0.7, "{}", report.ladder[0].holds_in);
    }
}

#[test]
fn slideway_oil_will_do_in_most_other_oiled_places() {
    let (mut served, mut all) = (0, 0);
    for need in needs_of(LATHE_AND_MILL).iter().filter(|need| planner::chart::is_point(need) && need.nothing.is_none()) {
        let oiled = ["hydraulic-32", "hydraulic-46", "hydraulic-68", "slideway-32", "slideway-68", "circulating-68", "motion-220"]
            .iter()
            .any(|fluid| grade_of(need, fluid).serves());
        if oiled {
            all += 1;
            served += u32::from(grade_of(need, "slideway-68").serves());
        }
    }
    assert!(served * 10 >= all * 7, "{served} of {all}");
}

#[test]
fn shut_in_change_gears_want_grease_and_open_ones_oil() {
    let shut = need(&point("change gears", "reach = \"hard\""), "p");
    assert_eq!(grade_of(&shut, "lithium-ep-2"), Grade::Right);
    assert!(grade_of(&shut, "tacky-150") <= Grade::WillDo);
    let open = need(&point("change gears", "reach = \"easy\"\nexposure = [\"chips\"]"), "p");
    assert_ne!(grade_of(&open, "lithium-ep-2"), Grade::Right);
    assert_eq!(grade_of(&open, "tacky-150"), Grade::Right);
}

#[test]
fn chips_reach_a_chuck_so_oil_is_right_there_and_thin_grease_will_do() {
    let chuck = need(&point("scroll chuck", "exposure = [\"chips\"]"), "p");
    assert_eq!(grade_of(&chuck, "slideway-68"), Grade::Right);
    assert_eq!(grade_of(&chuck, "lithium-ep-2"), Grade::WillDo);
}

#[test]
fn a_dead_centre_wants_high_pressure_grease() {
    let centre = need(&point("dead centre", ""), "p");
    assert_eq!(grade_of(&centre, "lithium-ep-2"), Grade::Right);
}

#[test]
fn in_grinding_dust_a_dry_film_and_neither_oil_nor_grease() {
    for kind in ["grinder slide", "horizontal way", "leadscrew", "vice screw"] {
        let dusty = need(&point(kind, "exposure = [\"grit\"]"), "p");
        for fluid in Reference::embedded().fluids.values().filter(|fluid| grade_of(&dusty, &fluid.key).serves()) {
            assert_eq!(fluid.form, Form::Dry, "{kind}: {}", fluid.key);
        }
        assert!(Reference::embedded().fluids.values().any(|fluid| grade_of(&dusty, &fluid.key) == Grade::Right), "{kind}");
    }
}

#[test]
fn the_makers_word_on_a_gearbox_wins_and_is_still_checked() {
    let without = need(&point("gear head", ""), "p");
    // In a mild room: a maker's oil that is too thick for a cold start is still said to be so.
    let with = need(&format!("[room]\ncoldest = \"10 degC\"\n{}", point("gear head", "maker = { use = [\"gear-150\"] }")), "p");
    assert_ne!(grade_of(&without, "gear-150"), Grade::Right);
    assert_eq!(grade_of(&with, "gear-150"), Grade::Right);
    assert_eq!(grade_of(&with, "hydraulic-68"), Grade::Wrong);
    let thick = need(&point("gear head", "maker = { viscosity = \"ISO VG 220\" }"), "p");
    assert_eq!(grade_of(&thick, "hydraulic-32"), Grade::Wrong);
    // A prohibition stands above any instruction: hypoid oil harms bronze whoever names it.
    let bronze = need(&point("gear head", "maker = { use = [\"gl5-80w90\"] }\ntouches = [\"bronze\"]"), "p");
    assert_eq!(grade_of(&bronze, "gl5-80w90"), Grade::Harmful);
}

#[test]
fn a_ball_oiler_gets_a_stroke_each_day_of_use_and_never_grease() {
    let oiler = need(&point("oil point", "fitting = \"ball oiler\"\nhours = \"10 h/week\""), "p");
    assert_eq!(oiler.rations[0].every.with, Some(planner::need::With::Use));
    assert!(oiler.rations[0].every.times_a_year > 200.0);
    assert_eq!(grade_of(&oiler, "lithium-ep-2"), Grade::Harmful);
    for row in report(LATHE_AND_MILL, &Wishes::default()).chart.iter().filter(|row| row.how.contains("ball")) {
        let every = row.every.as_ref().unwrap();
        assert!(every.with.is_some() || every.days.is_some_and(|days| days <= 1.5), "{row:?}");
    }
}

#[test]
fn cast_iron_and_brass_may_be_cut_dry() {
    let text =
        "[[work]]\njob = \"cut\"\nmaterials = [\"cast-iron\", \"brass\", \"mild-steel\"]\noperations = [\"turn\", \"mill\", \"drill\"]\n";
    for need in needs_of(text) {
        let dry = grade_of(&need, "dry-cutting");
        let steel = need.id.contains("mild-steel");
        assert_eq!(dry.serves(), !steel, "{}", need.id);
    }
}

#[test]
fn doing_without_the_first_rung_gives_a_sound_alternative() {
    let wishes = Wishes { without: vec!["slideway-68".to_owned()], ..Wishes::default() };
    let report = report(LATHE_AND_MILL, &wishes);
    assert!(!ladder(&report).contains(&"slideway-68".to_owned()));
    let ways = report.chart.iter().find(|row| row.point == "bed ways").unwrap();
    assert!(ways.grade.is_some_and(Grade::serves), "{ways:?}");
}

#[test]
fn more_money_never_serves_less_and_the_set_keeps_to_it() {
    let mut last = 0.0;
    for budget in [0.0, 10.0, 25.0, 50.0, 100.0, 200.0] {
        let best = report(&example("alder-lock"), &Wishes { budget: Some(budget), ..Wishes::default() }).budget.unwrap();
        assert!(best.cost <= budget + 1e-9, "{} for {budget}", best.cost);
        assert!(best.total >= last, "{budget}: {} < {last}", best.total);
        last = best.total;
    }
}

#[test]
fn what_is_owned_is_not_bought_again() {
    let text = format!("{LATHE_AND_MILL}[[pot]]\nfluid = \"slideway-68\"\nleft = \"1 L\"\n");
    assert!(!ladder(&report(&text, &Wishes::default())).contains(&"slideway-68".to_owned()));
}

#[test]
fn nothing_barred_is_ever_recommended() {
    for name in ["alder-lock", "first-lathe", "attic-clocks", "school-room"] {
        let report = report(&example(name), &Wishes { rungs: Some(40), ..Wishes::default() });
        for fluid in ladder(&report) {
            assert!(Reference::embedded().fluid(&fluid).unwrap().barred.is_none(), "{fluid}");
        }
    }
}

#[test]
fn nobody_counts_drops_of_a_wax_a_paste_or_a_powder() {
    for name in ["alder-lock", "attic-clocks", "first-lathe", "school-room"] {
        let report = report(&example(name), &Wishes::default());
        let points = report.chart.iter().map(|row| (&row.fluid, row.dose));
        let steps = report.work.iter().flat_map(|job| &job.steps).map(|step| (&step.fluid, step.dose));
        for (fluid, dose) in points.chain(steps) {
            let (Some(fluid), Some(dose)) = (fluid, dose) else { continue };
            let form = Reference::embedded().fluid(fluid).unwrap().form;
            let sold_in_grams = ["paste-wax", "ptfe-powder", "cutting-wax", "graphite-paste"].contains(&fluid.as_str());
            assert!(!sold_in_grams || dose.unit == DoseUnit::Gram, "{name}: {fluid} ({form:?}): {dose:?}");
        }
    }
}

#[test]
fn a_dose_of_coolant_says_that_it_is_mixed_and_how() {
    let report = report(&example("alder-lock"), &Wishes::default());
    let steps: Vec<_> =
        report.work.iter().flat_map(|job| &job.steps).filter(|step| step.fluid.as_deref() == Some("emulsion-concentrate")).collect();
    assert!(!steps.is_empty() && steps.iter().all(|step| step.mind.iter().any(|text| text.contains("in water, 7 % (5 to 10 %)"))));
}

#[test]
fn the_spindle_bearings_of_a_bench_lathe_are_taken_apart_to_be_greased() {
    let report = report(LATHE_AND_MILL, &Wishes::default());
    let row = report.chart.iter().find(|row| row.machine == "bench lathe" && row.point == "headstock spindle bearings").unwrap();
    assert!(row.how.starts_with("take it apart"), "{}", row.how);
}
