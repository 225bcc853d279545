//! Oil, grease or dry, against what the trade settles: *common practice, no source*, unless another source stands at the line.

use formulas::lubricant_form::{Clearance, Facts, Fitting, Form, Reach, Standing, TABLE, form};
use units::{Temperature, Velocity};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::velocity::meter_per_second;

fn right(form: &Form) -> [bool; 3] {
    [form.oil, form.grease, form.dry].map(|standing| standing == Standing::Right)
}

const OIL: [bool; 3] = [true, false, false];
const GREASE: [bool; 3] = [false, true, false];
const DRY: [bool; 3] = [false, false, true];

#[test]
fn places_of_a_shop() {
    let celsius = Temperature::new::<degree_celsius>;
    let fast = Velocity::new::<meter_per_second>(5.0);
    let none = Facts::default();
    for (what, facts, expected) in [
        ("a lathe's slide in chips", Facts { reach: Reach::Easy, chips: true, ..none }, OIL),
        ("a chuck's scroll, reached by chips and easy to get at", Facts { reach: Reach::Easy, chips: true, heavy: true, ..none }, OIL),
        ("change gears shut in a clean guard", Facts { reach: Reach::Hard, clearance: Clearance::Grease, ..none }, GREASE),
        ("change gears open to chips", Facts { chips: true, heavy: true, ..none }, OIL),
        ("a close bush at speed", Facts { clearance: Clearance::Oil, speed: fast, ..none }, OIL),
        ("a slide in grinding dust", Facts { reach: Reach::Easy, grit: true, ..none }, DRY),
        ("a slide in grinding dust behind a guard", Facts { grit: true, ..none }, DRY),
        ("a bearing behind a guard outdoors", Facts { reach: Reach::Hard, outdoors: true, clearance: Clearance::Grease, ..none }, GREASE),
        ("a furnace hinge", Facts { hottest: celsius(200.0), ..none }, DRY),
        ("a ball oiler", Facts { fitting: Fitting::FeedsOil, reach: Reach::Hard, clearance: Clearance::Grease, ..none }, OIL),
        ("a bath", Facts { fitting: Fitting::CarriesOil, ..none }, OIL),
        ("a grease nipple", Facts { fitting: Fitting::FeedsGrease, chips: true, ..none }, GREASE),
        // The Tribology Handbook, C8: grease to 300–350 thousand.
        ("a grinding spindle", Facts { speed_factor: Some(400_000.0), clearance: Clearance::Grease, ..none }, OIL),
        ("nobody knows", Facts { unsure: true, ..none }, OIL),
        ("nothing in particular: level scores choose oil", none, OIL),
    ] {
        let found = form(&facts);
        assert_eq!(right(&found), expected, "{what}: {found:?}");
    }
}

#[test]
fn grease_is_harmful_where_it_blocks_or_laps() {
    let oiler = form(&Facts { fitting: Fitting::FeedsOil, ..Facts::default() });
    let dust = form(&Facts { grit: true, reach: Reach::Easy, ..Facts::default() });
    assert_eq!([oiler.grease, dust.grease], [Standing::Harmful; 2]);
    assert!(oiler.scores.is_none() && oiler.why.contains("blocks"));
}

/// The reason is the sum: every fact that holds is named once with its points, and the points add up to the scores.
#[test]
fn the_reason_adds_up() {
    let facts = Facts { reach: Reach::Hard, chips: true, heavy: true, leaks: true, outdoors: true, ..Facts::default() };
    let found = form(&facts);
    assert_eq!(found.scores, Some([1, 7, 3]));
    assert!(found.why.starts_with("oil 1, grease 7, dry 3: hard to reach (+0/+3/+1), chips reach it (+2/-2/+1)"), "{}", found.why);
    assert_eq!(found.why.matches('(').count(), 5);
    assert_eq!(TABLE.len(), 14);
}
