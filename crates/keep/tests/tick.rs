//! What is written when something is done: by whom first, with whose dose, out of which pot, on which day.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use jiff::civil::{Date, date};
use jiff::tz::TimeZone;
use jiff::{ToSpan, ZonedDateTime};
use keep::{KeepError, Kept, Said, Served};
use planner::needs::kinds;
use planner::report::Report;
use reference::Reference;
use store::{Moment, SectionId, Store, What, Written};
use tempfile::TempDir;
use units::Amount;

const SHOP: &str = r#"
[[machine]]
template = "bench lathe"
name = "lathe"

[[pot]]
fluid = "slideway-68"
name = "can"
left = "1 L"

[[pot]]
fluid = "acetone"
name = "tin"
left = "1 L"
"#;

const MONDAY: Date = date(2026, 6, 1);

fn noon(day: Date) -> ZonedDateTime {
    day.at(12, 0, 0, 0).to_zoned_datetime(TimeZone::UTC).unwrap()
}

struct Home {
    _folder: TempDir,
    kept: Kept,
    report: Report,
}

impl Home {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let mut store = Store::create(&folder.path().join("shop.gallipot")).unwrap();
        store.import(SHOP.as_bytes(), Reference::embedded(), kinds(), Moment::from(&noon(MONDAY - 9.days()))).unwrap();
        let kept = Kept::of(store).unwrap();
        let report = kept.report().unwrap();
        Self { _folder: folder, kept, report }
    }

    fn serve(&mut self, served: &Served, now: Date) -> Result<Written, KeepError> {
        self.kept.serve_point(&self.report, served, &noon(now))
    }

    fn pot(&self, name: &str) -> SectionId {
        let pot = self.kept.described.shop.pots.iter().find(|pot| pot.name.as_deref() == Some(name)).unwrap();
        self.kept.described.section(&pot.at).unwrap()
    }
}

fn bed_ways() -> Served {
    Served { machine: "lathe".to_owned(), point: "bed ways".to_owned(), ..Served::default() }
}

fn amount(text: &str) -> Amount {
    Amount::parse(text).unwrap()
}

#[test]
fn of_two_who_serve_the_same_point_one_is_written() {
    let mut home = Home::new();
    assert!(matches!(home.serve(&bed_ways(), MONDAY), Ok(Written::New(_))));
    // It is not due again yet, so serving it once more is another entry; who still saw it due serves what is served.
    let same = Served { due: Some(MONDAY), ..bed_ways() };
    assert!(matches!(home.serve(&same, MONDAY), Ok(Written::Already(_))));
    assert!(matches!(home.serve(&bed_ways(), MONDAY), Ok(Written::New(_))));
}

#[test]
fn the_chart_s_dose_is_supposed_and_the_only_pot_gives_it() {
    let mut home = Home::new();
    let charted = home.kept.charted(&home.report, "lathe", "bed ways", MONDAY).unwrap().unwrap();
    let entry = home.serve(&bed_ways(), MONDAY).unwrap().logged().entry.clone();
    let What::Applied { pot, amount: given, .. } = entry.what else { unreachable!("a point was served") };
    assert_eq!((pot, entry.supposed, entry.fluid.as_deref()), (Some(home.pot("can")), true, Some("slideway-68")));
    assert_eq!(given.map(|given| given.show(units::System::Metric)), Some(charted.dose.amount().show(units::System::Metric)));
    let measured = home.serve(&Served { amount: Some(amount("3 mL")), ..bed_ways() }, MONDAY).unwrap().logged().entry.clone();
    assert!(!measured.supposed);
    // Out of a pot of something else nobody knows how much; and what a bath lacked is not the chart's dose.
    let tin = Served { pot: Some(home.pot("tin")), ..bed_ways() };
    for served in [tin, Served { topped_up: true, ..bed_ways() }] {
        let entry = home.serve(&served, MONDAY).unwrap().logged().entry.clone();
        let (What::Applied { amount, .. } | What::ToppedUp { amount, .. }) = entry.what else { unreachable!("a point was served") };
        assert_eq!((amount, entry.supposed), (None, false));
    }
}

#[test]
fn a_day_that_cannot_be_and_a_point_that_is_not_are_refused() {
    let mut home = Home::new();
    let tomorrow = Served { said: Said { day: Some(MONDAY + 1.day()), ..Said::default() }, ..bed_ways() };
    assert!(matches!(home.serve(&tomorrow, MONDAY), Err(KeepError::ToCome { .. })));
    let nowhere = Served { point: "bed wyas".to_owned(), ..bed_ways() };
    assert!(matches!(home.serve(&nowhere, MONDAY), Err(KeepError::NoPoint { .. })));
    home.serve(&bed_ways(), MONDAY).unwrap();
    assert!(matches!(home.serve(&bed_ways(), MONDAY - 1.day()), Err(KeepError::ClockBack { .. })));
}

#[test]
fn two_fluids_are_not_mixed() {
    let mut home = Home::new();
    let (can, tin, some) = (home.pot("can"), home.pot("tin"), amount("1 mL"));
    let mut pour = |from, into| home.kept.write(What::Decanted { from, into, amount: some }, &Said::default(), &noon(MONDAY));
    assert!(matches!(pour(can, tin), Err(KeepError::Mixed { .. })));
    assert!(matches!(pour(can, can), Err(KeepError::SamePot)));
}
