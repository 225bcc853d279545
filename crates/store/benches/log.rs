//! How long it takes to ask a long log for the last service of every point and what is in every pot.

use divan::Bencher;
use planner::needs::kinds;
use reference::Reference;
use rusqlite::{Connection, params};
use store::{Entry, Moment, Page, SectionId, Store, What};
use tempfile::TempDir;

fn main() {
    divan::main();
}

const POINTS: i64 = 1500;
const POTS: i64 = 200;

fn moment(seconds: i64) -> Moment {
    let at = jiff::Timestamp::from_second(1_700_000_000 + seconds).unwrap_or_default();
    Moment::new(at, jiff::tz::TimeZone::UTC.to_datetime(at).date())
}

/// A shop of a hundred machines with fifteen points each, two hundred pots, and so many entries.
fn shop(entries: i64) -> (TempDir, Store) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("shop.gallipot");
    let mut store = Store::create(&path).expect("a new file");
    let mut text: String =
        (0..POINTS / 15).map(|number| format!("[[machine]]\ntemplate = \"bench lathe\"\nname = \"lathe {number}\"\n")).collect();
    text.extend((0..POTS).map(|number| format!("[[pot]]\nfluid = \"slideway-68\"\nname = \"{number}\"\nleft = \"200 L\"\n")));
    store.import(text.as_bytes(), Reference::embedded(), kinds(), moment(0)).expect("a sound shop");
    let inside = store.section(SectionId::WHOLE).expect("the whole").inside;
    let of_kind = |kind: &str| -> Vec<SectionId> {
        inside.iter().copied().filter(|id| store.section(*id).is_ok_and(|section| section.kind == kind)).collect()
    };
    let (machines, pots) = (of_kind("machine"), of_kind("pot"));
    let points: Vec<SectionId> = machines
        .iter()
        .flat_map(|machine| (0..15).map(move |number| (*machine, number)))
        .map(|(machine, number)| store.point(machine, &format!("point {number}")).expect("a point"))
        .collect();
    // Row by row as the store writes them, but in one transaction, or filling the table would take longer than asking it.
    let mut connection = Connection::open(&path).expect("the file");
    let transaction = connection.transaction().expect("a transaction");
    {
        let mut insert = transaction
            .prepare(
                "INSERT INTO log (at, day, kind, machine, point, pot, fluid, measure, amount)
                 SELECT ?1, ?2, 'applied', parent, id, ?3, 'slideway-68', 'volume', 300000 FROM section WHERE id = ?4",
            )
            .expect("a statement");
        for (number, (point, pot)) in (0..entries).zip(points.iter().cycle().zip(pots.iter().cycle())) {
            let when = moment(number * 100);
            insert.execute(params![when.at().as_millisecond(), when.day().to_string(), pot.0, point.0]).expect("an entry");
        }
    }
    transaction.execute("INSERT INTO tally SELECT pot, NULL, NULL, 'volume', -sum(amount) FROM log GROUP BY pot", []).expect("tallies");
    transaction.commit().expect("written");
    store.check().expect("a sound file");
    (folder, store)
}

#[divan::bench(args = [100_000, 1_000_000], sample_count = 20)]
fn last_service_of_1500_points_and_what_is_in_200_pots(bencher: Bencher<'_, '_>, entries: i64) {
    let (_folder, store) = shop(entries);
    bencher.bench_local(|| store.state().map(|state| (state.points.len(), state.pots.len())));
}

#[divan::bench(args = [1_000_000], sample_count = 20)]
fn a_page_of_the_log(bencher: Bencher<'_, '_>, entries: i64) {
    let (_folder, store) = shop(entries);
    let before = Some((moment(entries * 50).at(), store::EntryId(entries / 2)));
    bencher.bench_local(|| store.log(Page { about: None, before, count: 50 }).map(|page| page.len()));
}

#[divan::bench(args = [1_000_000], sample_count = 20)]
fn a_year_s_use_of_a_fluid_by_day(bencher: Bencher<'_, '_>, entries: i64) {
    let (_folder, store) = shop(entries);
    let (from, to) = (moment(0).day(), moment(365 * 86_400).day());
    bencher.bench_local(|| store.uses("slideway-68", from, to).map(|uses| uses.len()));
}

#[divan::bench(args = [1_000_000], sample_count = 20)]
fn one_more_entry(bencher: Bencher<'_, '_>, entries: i64) {
    let (_folder, mut store) = shop(entries);
    let pot = store.section(SectionId::WHOLE).expect("the whole").inside[200];
    store.set("warm", None, moment(entries * 100)).expect("the daily backup");
    bencher.bench_local(|| store.write(&Entry::new(moment(entries * 100), What::Opened { pot })).is_ok());
}

#[divan::bench(sample_count = 10)]
fn open(bencher: Bencher<'_, '_>) {
    let (_folder, store) = shop(1_000_000);
    let path = store.path().to_owned();
    bencher.bench_local(|| Store::open(&path, moment(0)).is_ok());
}
