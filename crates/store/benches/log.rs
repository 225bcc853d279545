//! How long it takes to ask a long log for the last service of every point and what is in every pot.

mod large;

use divan::Bencher;
use large::{moment, shop};
use store::{Entry, Page, SectionId, Store, What};

fn main() {
    divan::main();
}

#[divan::bench(args = [100_000, 1_000_000], sample_count = 20)]
fn last_service_of_1501_points_and_what_is_in_200_pots(bencher: Bencher<'_, '_>, entries: i64) {
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
