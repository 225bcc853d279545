//! What is written when something is done: by whom first, with whose dose, out of which pot, on which day.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use jiff::civil::{Date, date};
use jiff::tz::TimeZone;
use jiff::{ToSpan, ZonedDateTime};
use keep::{KeepError, Kept, Said, Served};
use planner::needs::kinds;
use planner::report::Report;
use reference::Reference;
use store::{Described, EntryId, Moment, Page, SectionId, Store, StoreError, What, Written};
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
    let charted = home.report.chart.iter().find(|row| row.machine == "lathe" && row.point == "bed ways").unwrap().dose.unwrap();
    let entry = home.serve(&bed_ways(), MONDAY).unwrap().logged().entry.clone();
    let What::Applied { pot, amount: given, .. } = entry.what else { unreachable!("a point was served") };
    assert_eq!((pot, entry.supposed, entry.fluid.as_deref()), (Some(home.pot("can")), true, Some("slideway-68")));
    assert_eq!(given.map(|given| given.show(units::System::Metric)), Some(charted.amount().show(units::System::Metric)));
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

/// Serves two points at once.
fn both(home: &mut Home, second: Served) -> Result<Vec<Written>, KeepError> {
    let Home { kept, report, .. } = home;
    kept.serve_points(report, &[bed_ways(), second], &noon(MONDAY))
}

#[test]
fn of_several_points_all_are_written_or_none() {
    let mut home = Home::new();
    let cross_slide = || Served { point: "cross slide".to_owned(), ..bed_ways() };
    let logged = |home: &Home| home.kept.store.log(Page { count: 10, ..Page::default() }).unwrap().len();
    // What is refused before anything is written, and what the store refuses half-way.
    assert!(matches!(both(&mut home, Served { point: "bed wyas".to_owned(), ..bed_ways() }), Err(KeepError::NoPoint { .. })));
    let weighed = Served { amount: Some(amount("1 g")), pot: Some(home.pot("can")), ..cross_slide() };
    assert!(matches!(both(&mut home, weighed), Err(KeepError::Store(StoreError::OtherMeasure { .. }))));
    assert_eq!(logged(&home), 0);
    let machine = home.kept.described.section(&home.kept.described.shop.machines[0].at).unwrap();
    assert!(read_again(&home).point(machine, "bed ways").is_none(), "not even the number of a point");
    assert!(matches!(*both(&mut home, cross_slide()).unwrap(), [Written::New(_), Written::New(_)]));
    assert_eq!(logged(&home), 2);
    // Of two entries one cannot be taken back.
    let undo = |entry| What::Undone { entry: EntryId(entry) };
    assert!(home.kept.write_all(&[undo(1), undo(99)], &Said::default(), &noon(MONDAY)).is_err());
    assert_eq!(logged(&home), 2);
    home.kept.write_all(&[undo(1), undo(2)], &Said::default(), &noon(MONDAY)).unwrap();
    assert_eq!(logged(&home), 4);
}

fn read_again(home: &Home) -> Described {
    home.kept.store.shop(Reference::embedded(), kinds()).unwrap()
}

#[test]
fn two_fluids_are_not_mixed() {
    let mut home = Home::new();
    let (can, tin, some) = (home.pot("can"), home.pot("tin"), amount("1 mL"));
    let mut pour = |from, into| home.kept.write(What::Decanted { from, into, amount: some }, &Said::default(), &noon(MONDAY));
    assert!(matches!(pour(can, tin), Err(KeepError::Mixed { .. })));
    assert!(matches!(pour(can, can), Err(KeepError::SamePot)));
}
