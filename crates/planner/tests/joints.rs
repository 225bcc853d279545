//! The numbers of joints that reach a need: worked cases, facts of the trade, and laws. The source stands beside each.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]

mod support;

use planner::demand::{Demand, Test};
use planner::need::Need;
use planner::needs::{Working, needs};
use planner::verdict::Grade;
use proptest::prelude::*;
use reference::{Form, Reference};
use support::{grade_of, needs_of, shop};
use units::Quantity;

/// A room in which nothing is hot or cold.
const ROOM: &str = "[room]\ncoldest = \"18 °C\"\nusual = \"20 °C\"\nhottest = \"21 °C\"\n";

fn ask(job: &str, rest: &str) -> Vec<Need> {
    needs_of(&format!("{ROOM}[[work]]\njob = \"{job}\"\n{rest}\n"))
}

fn step(job: &str, rest: &str, name: &str) -> Need {
    let found = ask(job, rest).into_iter().find(|need| need.place.words().ends_with(&format!("· {name}")));
    found.unwrap_or_else(|| panic!("no step {name} with {rest}"))
}

fn retain(rest: &str) -> Need {
    step("retain", rest, "retain")
}

fn minds(need: &Need, words: &str) -> bool {
    need.mind.iter().any(|(text, _)| text.contains(words))
}

/// The number before a unit in the first thing to mind that has these words, after them.
fn number_after(need: &Need, words: &str) -> f64 {
    let (text, _) = need.mind.iter().find(|(text, _)| text.contains(words)).unwrap_or_else(|| panic!("no `{words}` in {:#?}", need.mind));
    let rest = &text[text.find(words).unwrap() + words.len()..];
    let digits: String = rest.trim_start().chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect();
    digits.trim_end_matches('.').parse().unwrap_or_else(|_| panic!("no number after `{words}` in {text}"))
}

fn demand<'n>(need: &'n Need, what: &str) -> &'n Demand {
    need.demands.iter().find(|demand| demand.what == what).unwrap_or_else(|| panic!("no `{what}` at {}", need.id))
}

/// The grade by one demand alone.
fn by(need: &Need, what: &str, fluid: &str) -> Grade {
    let reference = Reference::embedded();
    demand(need, what).judge(reference.fluid(fluid).unwrap(), reference).unwrap().grade
}

/// The stress asked, and the share of the class strength that is left, MPa and –.
fn strength(need: &Need) -> (f64, f64) {
    match demand(need, "carries the load").test {
        Test::Strength { needed, factor } => (needed.base() / 1e6, factor),
        _ => panic!("no strength"),
    }
}

fn near(found: f64, expected: f64, share: f64) {
    assert!((found / expected - 1.0).abs() < share, "{found} is not {expected}");
}

/// A press of 0.030 mm in a stiff hub, well measured.
const PRESS: &str =
    "diameter = \"25 mm\"\nhole = \"24.97 mm\"\noutside = \"50 mm\"\nlength = \"30 mm\"\nroughness = \"0.8 µm\"\nby = \"bore micrometer\"";

// Retaining.

#[test]
fn a_bush_of_bronze_at_eight_hundredths_carries_what_was_computed() {
    // Independently computed: 15 × 12 mm in bronze, 0.08 mm, safety 2: design strength 3.64 MPa of 20, 2058 N. Gap 22.6 mm³ by geometry.
    let need = retain(
        "diameter = \"15 mm\"\nlength = \"12 mm\"\ngap = \"0.08 mm\"\nmetals = [\"mild-steel\", \"bronze\"]\ntemperature = \"20 °C\"\n\
         prepared = true\nload = \"2058 N\"",
    );
    let (needed, factor) = strength(&need);
    near(factor * 20.0, 3.64, 0.005);
    near(needed, 3.64, 0.005);
    near(number_after(&need, "it holds"), 2058.0, 0.005);
    near(number_after(&need, "one joint holds"), 22.6, 0.01);
}

#[test]
fn a_gap_of_a_tenth_takes_so_many_drops() {
    // π·25·20·0.10/2 = 78.5 mm³ (independently computed); twice for waste, and a drop of 0.03 mL: common practice, no source.
    let need = retain("diameter = \"25 mm\"\nlength = \"20 mm\"\ngap = \"0.1 mm\"");
    assert!(minds(&need, "78.5 mm³"), "{:#?}", need.mind);
    assert!(minds(&need, "6 drops"), "{:#?}", need.mind);
    let dose = need.ration(Form::Liquid).unwrap().dose;
    near(dose.low, 0.0785, 0.005);
    near(dose.likely, 0.157, 0.005);
}

#[test]
fn a_torque_and_a_load_are_carried_together() {
    // By hand on 20 × 20 mm: 1000 N over 1256.6 mm² is 0.796 MPa; 10 N·m at the radius of 10 mm is 1000 N as well, and both at a right
    // angle 1.125 MPa.
    let at = |load: &str| strength(&retain(&format!("diameter = \"20 mm\"\nlength = \"20 mm\"\n{load}"))).0;
    near(at("load = \"1000 N\""), 0.796, 0.002);
    near(at("torque = \"10 N m\""), 0.796, 0.002);
    near(at("load = \"1000 N\"\ntorque = \"10 N m\""), 1.125, 0.002);
}

#[test]
fn finish_loading_and_an_activator_each_take_their_share() {
    // From memory of the generic curves: polished or rough faces 0.8, pulsating 0.5, reversing 0.3; an activator leaves 70 % at the least.
    let factor = |rest: &str| strength(&retain(&format!("load = \"100 N\"\n{rest}"))).1;
    let plain = factor("");
    near(factor("roughness = \"0.3 µm\""), 0.8 * plain, 1e-6);
    near(factor("loading = \"pulsating\""), 0.5 * plain, 1e-6);
    near(factor("loading = \"reversing\""), 0.3 * plain, 1e-6);
    near(factor("prepared = true"), 1.5 * plain, 1e-6);
    near(factor("metals = [\"stainless\"]"), 0.5 * 0.7 * plain, 1e-6);
}

#[test]
fn a_press_that_holds_by_itself_asks_for_no_adhesive() {
    // Common practice, no source. By hand for a steel shaft of 25 mm in a steel hub of 50 mm, 30 mm long, 0.030 mm tight: 48 µm would be
    // 151.2 MPa (independently computed). Ra 0.8 µm on both takes 0.8·6·1.6 = 7.7 µm, and 1.645·5.0 µm are not certain, so 14.1 µm and
    // 44.4 MPa are left: π·25·30·44.4·0.06/1.5 = 4190 N. 3 kN asks for 17.8 µm.
    let needs = ask("retain", PRESS);
    assert_eq!(needs.len(), 1);
    let why = needs[0].nothing.as_deref().unwrap();
    assert!(why.starts_with("Nothing needed"), "{why}");
    let held: f64 = why.split("the press holds ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
    near(held, 4190.0, 0.01);
    // It is still nothing for a load that it carries, and something for one that it does not.
    assert!(ask("retain", &format!("{PRESS}\nload = \"3 kN\""))[0].nothing.as_deref().unwrap().contains("3000 N is asked"));
    let short = ask("retain", &format!("{PRESS}\nload = \"40 kN\""));
    assert!(!short.iter().any(|need| need.nothing.as_deref().is_some_and(|why| why.starts_with("Nothing needed"))));
}

#[test]
fn a_press_that_comes_loose_when_warm_does_not_hold_by_itself() {
    // By hand: an aluminium hub on a steel shaft of 25 mm loses 25·12·10⁻⁶·80 = 24 µm from 20 to 100 °C, and 20 µm tight are gone.
    let press = |celsius: u8| {
        let rest = "diameter = \"25 mm\"\nhole = \"24.98 mm\"\nlength = \"30 mm\"\nroughness = \"0.4 µm\"\nby = \"bore micrometer\"";
        let rest = format!("{rest}\nmetals = [\"mild-steel\", \"aluminium\"]\ntemperature = \"{celsius} °C\"");
        ask("retain", &rest)
    };
    assert!(press(21)[0].nothing.is_some());
    let warm = press(100);
    assert!(warm[0].nothing.is_none());
    assert!(warm.iter().any(|need| minds(need, "tight is left")), "{:#?}", warm.last().unwrap().mind);
}

#[test]
fn a_press_short_of_interference_is_bonded_with_a_strong_compound() {
    // Common practice, no source: a weak compound can lower a press; one general compound serves a press and a slip.
    let need = retain("diameter = \"25 mm\"\nhole = \"24.995 mm\"\nlength = \"30 mm\"\nby = \"bore micrometer\"");
    assert_eq!(grade_of(&need, "retainer-low-viscosity"), Grade::Right);
    assert!(grade_of(&need, "retainer-general").serves());
    assert_eq!(grade_of(&need, "retainer-removable"), Grade::Wrong);
    let slip = retain("diameter = \"25 mm\"\nhole = \"25.08 mm\"\nlength = \"30 mm\"\nby = \"bore micrometer\"");
    assert_eq!(grade_of(&slip, "retainer-general"), Grade::Right);
}

#[test]
fn a_press_that_bursts_its_hub_is_refused() {
    // By hand: 0.2 mm on 25 mm in mild steel is 630 MPa by Lamé, where 102 MPa is the limit (DIN 7190, yield 235 MPa, hub twice the shaft).
    let needs = ask("retain", "diameter = \"25 mm\"\nhole = \"24.8 mm\"\nlength = \"30 mm\"");
    assert!(needs[0].nothing.as_deref().unwrap().contains("yields"), "{:?}", needs[0].nothing);
}

#[test]
fn a_calliper_does_not_choose_a_fit() {
    // Common practice, no source.
    let need = retain("diameter = \"25 mm\"\nhole = \"25.04 mm\"\nby = \"calliper\"");
    assert!(minds(&need, "Measure the hole again"), "{:#?}", need.mind);
    assert!(!minds(&retain("diameter = \"25 mm\"\nhole = \"25.04 mm\"\nby = \"bore micrometer\""), "Measure the"));
}

#[test]
fn heat_lets_it_go_and_spoils_what_cannot_bear_it() {
    // Common practice, no source: about 250 °C, 300 °C for the compound made for heat; a bearing bears 110 °C.
    let need = retain("metals = [\"mild-steel\", \"bearing-steel\"]");
    assert!(minds(&need, "250 °C") && minds(&need, "bears 110 °C"), "{:#?}", need.mind);
    assert!(!minds(&retain(""), "Such heat spoils"));
    assert!(minds(&retain("temperature = \"140 °C\""), "300 °C"));
}

#[test]
fn the_compound_made_for_heat_comes_in_where_the_standard_ones_fail() {
    // By hand, with the generic curves from memory, on 12 × 12 mm at 119 °C with safety 3: 20 MPa·0.5575/3 carries 1681 N, the compound made
    // for heat 15 MPa·0.774/3 carries 1751 N.
    let at = |load: &str| retain(&format!("temperature = \"119 °C\"\nload = \"{load}\""));
    assert_eq!(grade_of(&at("1670 N"), "retainer-low-viscosity"), Grade::Right);
    assert_eq!(grade_of(&at("1720 N"), "retainer-low-viscosity"), Grade::Wrong);
    assert_eq!(grade_of(&at("1720 N"), "retainer-high-temperature"), Grade::Right);
    assert_eq!(grade_of(&at("1770 N"), "retainer-high-temperature"), Grade::Wrong);
}

#[test]
fn it_sets_slower_in_the_cold() {
    // 24 h at 22 °C, 2.5 times for each 10 K less: 60 h at 12 °C (typical values from memory).
    let at = |coldest: &str| {
        let text = format!("[room]\ncoldest = \"{coldest}\"\n[[work]]\njob = \"retain\"\n");
        needs_of(&text).into_iter().find(|need| need.place.words().ends_with("· retain")).unwrap()
    };
    assert!(minds(&at("12 °C"), "its load after 2.5 day") || minds(&at("12 °C"), "its load after 60 h"), "{:#?}", at("12 °C").mind);
    assert!(minds(&at("-4 °C"), "does not cure") && minds(&at("-4 °C"), "Warmed to 20 °C"));
}

// Threads.

#[test]
fn a_strong_locker_outlasts_its_screw() {
    // Independently computed at 75 % of the proof load of class 8.8: low 0.62–0.71 of the breaking torque, medium 0.83–0.96, high
    // 1.02–1.17. Only the last wants heat by all means.
    let lock = |rest: &str| step("lock thread", &format!("grade = \"8.8\"\n{rest}"), "lock");
    for thread in ["6 mm", "8 mm", "10 mm"] {
        let medium = lock(&format!("thread = \"{thread}\""));
        assert!(minds(&medium, "if it does not give"), "{thread}: {:#?}", medium.mind);
    }
    assert!(minds(&lock("thread = \"4 mm\""), "undone cold"));
    assert!(minds(&lock("thread = \"10 mm\"\nservice = \"never again\""), "Heat it to about 250 °C before"));
    // ISO 898-7, from memory: M8 of class 8.8 breaks at 33 N·m at the least, M10 at 66.
    near(number_after(&lock("thread = \"8 mm\""), "breaks at"), 33.0, 0.04);
    near(number_after(&lock("thread = \"10 mm\""), "breaks at"), 66.0, 0.04);
}

#[test]
fn a_nut_of_threadlocker() {
    // Independently computed, to whole mm³ and with the printed gaps: 10, 19 and 35 in a nut of M6, M8 and M10; twice that goes on (common
    // practice, no source).
    for (thread, mm3) in [("6 mm", 10.0), ("8 mm", 19.0), ("10 mm", 35.0)] {
        let need = step("lock thread", &format!("pieces = 1\nthread = \"{thread}\""), "lock");
        near(need.ration(Form::Liquid).unwrap().dose.likely, 2.0 * mm3 / 1000.0, 0.06);
    }
}

#[test]
fn the_medium_threadlocker_serves_what_vibrates() {
    // Common practice, no source.
    for thread in ["6 mm", "8 mm", "12 mm", "20 mm"] {
        assert_eq!(grade_of(&step("lock thread", &format!("thread = \"{thread}\""), "lock"), "threadlock-medium"), Grade::Right);
    }
}

#[test]
fn a_dry_torque_is_converted_before_it_meets_oil() {
    // By hand for M10 (K = 0.024 + 1.16·µ, independently computed), friction 0.18 as delivered and 0.08, 0.12, 0.16 oiled: of 50 N·m dry
    // 25.1, 35.0 and 45.0 stay, and 50 N·m would pull 1.43 times as hard, 2 times at the worst.
    let need = &ask("tighten", "thread = \"10 mm\"\ntorque = \"50 N m\"")[0];
    near(number_after(need, "become"), 35.0, 0.02);
    near(number_after(need, "would pull it"), 1.43, 0.02);
    near(number_after(need, "at the worst"), 1.99, 0.02);
}

#[test]
fn the_torque_gives_three_quarters_of_the_proof_load() {
    // ISO 898-1: M10 of class 8.8 proves at 33.7 kN (58.0 mm² at 580 MPa); 0.75 of it at K = 0.163 on 10 mm: 41.1 N·m by hand.
    let need = &ask("tighten", "thread = \"10 mm\"\ngrade = \"8.8\"")[0];
    near(number_after(need, "a screw of 8.8 to"), 41.1, 0.02);
    near(number_after(need, "a pull of"), 25.2, 0.01);
    // The same thread by its name, and an inch one: ⅜-16 of grade 5 at 75 % pulls 4940 lbf, 22.0 kN (independently computed).
    let named = &ask("tighten", "named = \"M10\"\ngrade = \"8.8\"")[0];
    near(number_after(named, "a screw of 8.8 to"), 41.1, 0.02);
    near(number_after(&ask("tighten", "named = \"3/8-16\"\ngrade = \"grade 5\"")[0], "a pull of"), 22.0, 0.01);
}

#[test]
fn each_lubricant_that_may_be_served_has_a_torque_of_its_own() {
    // By hand for M10, K = 0.024 + 1.16·µ: on steel 0.163 at 0.12 (oil) and 0.117 at 0.08 (paste), so 41.1 becomes 29.5 N·m; on stainless
    // 0.186 at 0.14 (paste) and 0.337 at 0.27 (grease), so grease takes 1.81 times the torque of paste.
    let steel = &ask("tighten", "thread = \"10 mm\"\ngrade = \"8.8\"")[0];
    near(number_after(steel, "With anti-seize paste in place of oil tighten it to"), 29.5, 0.02);
    let stainless = &ask("tighten", "thread = \"10 mm\"\nmetals = [\"stainless\"]")[0];
    let (paste, grease) =
        (number_after(stainless, "counted as A-50) to"), number_after(stainless, "With grease in place of paste tighten it to"));
    near(grease / paste, 1.81, 0.02);
    let dry = &ask("tighten", "thread = \"10 mm\"\ntorque = \"50 N m\"")[0];
    near(number_after(dry, "in place of oil they become"), 50.0 * 0.117 / 0.233, 0.02);
}

#[test]
fn nonsense_about_screws_is_refused() {
    for rest in ["named = \"M8.3\"", "grade = \"99\"", "named = \"banana\"", "named = \"M0\""] {
        for job in ["tighten", "lock thread"] {
            let shop = shop(&format!("[[work]]\njob = \"{job}\"\n{rest}\n"));
            assert!(needs(&shop, Reference::embedded(), Working::Dropped).is_err(), "{job}: {rest}");
        }
    }
}

// Seals.

#[test]
fn a_hydraulic_sealant_serves_small_steam_fittings_to_its_limit() {
    // Common practice, no source, with IAPWS-IF97: 150 °C is 3.7 bar on the gauge, tape's 125 °C is 1.3 bar.
    let at = |pressure: &str| step("seal thread", &format!("medium = \"steam\"\npressure = \"{pressure}\""), "seal");
    for sealant in ["hydraulic-sealant", "pipe-sealant-anaerobic"] {
        assert!(grade_of(&at("35 psi"), sealant).serves(), "{sealant}");
        assert!(grade_of(&at("3.6 bar"), sealant).serves(), "{sealant}");
        assert_eq!(grade_of(&at("3.9 bar"), sealant), Grade::Wrong, "{sealant}");
    }
    assert_eq!(grade_of(&at("35 psi"), "graphite-paste"), Grade::Right);
    let why = at("35 psi").leading_reason();
    assert!(why.contains("1.3") && (why.contains("3.7") || why.contains("3.75")), "{why}");
}

#[test]
fn half_an_inch_of_pipe_thread_takes_so_much() {
    // R ½: about 0.12 mL of space, three times that goes on; common practice, no source.
    let need = step("seal thread", "size = \"21 mm\"\npieces = 1", "seal");
    let dose = need.ration(Form::Paste).unwrap().dose;
    assert!((dose.low - 0.12).abs() < 0.01 && (dose.likely - 0.36).abs() < 0.03, "{dose:?}");
}

// Bonding and marking.

#[test]
fn a_glue_is_counted_at_a_tenth_or_a_quarter() {
    // Common practice, no source: 10 % under lasting load or from 60 °C, else 25 %. 1000 N on 20 cm² are 0.5 MPa.
    let at = |rest: &str| strength(&step("bond", &format!("load = \"1 kN\"\narea = \"20 cm2\"\n{rest}"), "glue"));
    near(at("").0, 0.5, 1e-9);
    near(at("").1, 0.10, 1e-9);
    near(at("lasting = false").1, 0.25, 1e-9);
    near(at("lasting = false\ntemperature = \"70 °C\"").1, 0.10, 1e-9);
}

#[test]
fn marking_and_spotting_take_little() {
    // 20 µm on 100 × 100 mm is 0.2 mL, 2 µm on 300 × 200 mm 0.12 mL (geometry); waste and roller by common practice.
    let coat = step("mark", "area = \"100 cm2\"", "coat");
    near(coat.ration(Form::Liquid).unwrap().dose.likely, 0.3, 1e-9);
    let blue = step("spot", "area = \"600 cm2\"", "blue");
    near(blue.ration(Form::Paste).unwrap().dose.likely, 0.24, 1e-9);
    // 2 µm over 50 mm are 8.25″ (independently computed).
    assert!(minds(&step("spot", "face = \"taper\"\nlength = \"50 mm\"", "blue"), "of 8 seconds"));
}

#[test]
fn every_number_has_its_working() {
    for (job, rest, shown) in [
        ("retain", "load = \"500 N\"", "factor of the gap"),
        ("retain", PRESS, "[lame-1852]"),
        ("lock thread", "grade = \"8.8\"", "[iso-898-7]"),
        ("tighten", "grade = \"8.8\"", "[iso-16047]"),
        ("seal thread", "medium = \"steam\"", "[iapws-if97]"),
        ("bond", "load = \"100 N\"", "[astm-d1002]"),
        ("mark", "", "wet film"),
        ("spot", "", "(film)"),
    ] {
        let shop = shop(&format!("[[work]]\njob = \"{job}\"\n{rest}\n"));
        let needs = needs(&shop, Reference::embedded(), Working::Kept).unwrap();
        let lines = needs.last().unwrap().working.as_ref().unwrap().lines();
        assert!(lines.iter().any(|line| line.contains(shown)), "{job}: no `{shown}` in {lines:#?}");
    }
}

// Laws.

/// The findings that a joint's numbers decide, for these fluids.
fn findings(rest: &str) -> Vec<Grade> {
    let need = retain(rest);
    let fluids = ["retainer-low-viscosity", "retainer-general", "retainer-removable", "retainer-gap-filling"];
    let whats = ["bridges the gap", "stands the heat"];
    let mut found: Vec<Grade> = whats.iter().flat_map(|what| fluids.map(|fluid| by(&need, what, fluid))).collect();
    found.extend(
        need.demands.iter().any(|demand| demand.what == "carries the load").then(|| by(&need, "carries the load", "retainer-general")),
    );
    found
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    #[test]
    fn a_wider_gap_is_never_better(gap in 0.021..0.24_f64, more in 0.001..0.1_f64, load in 50.0..4000.0_f64, celsius in 22.0..119.0_f64) {
        let wider = (gap + more).min(0.25);
        let at = |gap: f64| findings(&format!("gap = \"{gap} mm\"\nload = \"{load} N\"\ntemperature = \"{celsius} °C\""));
        for (close, wide) in at(gap).into_iter().zip(at(wider)) {
            prop_assert!(wide >= close, "{gap} and {wider} mm");
        }
    }

    #[test]
    fn hotter_is_never_better(gap in 0.021..0.15_f64, load in 50.0..4000.0_f64, celsius in 22.0..200.0_f64, more in 0.1..80.0_f64) {
        let at = |celsius: f64| retain(&format!("gap = \"{gap} mm\"\nload = \"{load} N\"\ntemperature = \"{celsius} °C\""));
        let (cool, hot) = (at(celsius), at(celsius + more));
        for fluid in ["retainer-low-viscosity", "retainer-general", "retainer-removable", "retainer-gap-filling"] {
            prop_assert!(grade_of(&hot, fluid) >= grade_of(&cool, fluid), "{fluid} at {celsius} and {more} more");
        }
    }

    #[test]
    fn more_load_is_never_easier(load in 50.0..20_000.0_f64, more in 1.0..5_000.0_f64, hole in 24.95..25.2_f64) {
        let at = |load: f64| ask("retain", &format!("diameter = \"25 mm\"\nlength = \"25 mm\"\nhole = \"{hole} mm\"\nload = \"{load} N\""));
        let nothing = |needs: &[Need]| needs.iter().any(|need| need.nothing.as_deref().is_some_and(|why| why.starts_with("Nothing needed")));
        prop_assert!(nothing(&at(load)) || !nothing(&at(load + more)), "a press that does not hold {load} N holds {more} N more");
    }

    #[test]
    fn oil_never_asks_for_more_torque(thread in 3.0..30.0_f64, dry in 1.0..500.0_f64) {
        let need = &ask("tighten", &format!("thread = \"{thread} mm\"\ntorque = \"{dry} N m\""))[0];
        prop_assert!(number_after(need, "become") <= dry * 1.01);
    }
}
