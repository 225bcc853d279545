//! The log: what is written stays, what is undone does not count, and sums are right in whatever order entries come.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]

mod support;

use std::sync::atomic::{AtomicUsize, Ordering};

use jiff::civil::Date;
use proptest::prelude::*;
use store::{Entry, EntryId, Logged, Page, SectionId, Store, StoreError, Used, What, Written};
use support::{Home, SHOP, amount, day, moment};
use units::{Amount, Quantity, Time};

fn write(home: &mut Home, minutes: i64, what: What) -> Logged {
    match home.store.write(&Entry::new(moment(minutes), what)).unwrap() {
        Written::New(logged) => logged,
        Written::Already(logged) => panic!("already {logged:?}"),
    }
}

fn steady(home: &Home) -> SectionId {
    home.described().point(home.machine("lathe"), "steady").unwrap()
}

#[test]
fn an_entry_comes_back_as_it_was_written() {
    let mut home = Home::of(SHOP);
    let (point, pot, into) = (steady(&home), home.pot("slideway-68"), home.pot("penetrating"));
    let machine = home.machine("lathe");
    let all = [
        What::Applied { point, pot: Some(pot), amount: Some(amount("0.3 mL")) },
        What::ToppedUp { point, pot: None, amount: None },
        What::Opened { pot },
        What::Decanted { from: pot, into, amount: amount("100 mL") },
        What::Counted { pot, left: amount("1 gal(US)") },
        What::Bought { pot, amount: None },
        What::Discarded { pot, amount: None },
        What::MeterRead { machine, hours: Time::from_base(3_600_000.0) },
    ];
    for (number, what) in (0..).zip(all) {
        let entry = Entry {
            fluid: Some("slideway-68".to_owned()),
            due: Some(day("2026-03-02")).filter(|_| number == 0),
            hours: Some(Time::from_base(7200.0)).filter(|_| number == 0),
            supposed: number == 0,
            who: Some("the tablet".to_owned()),
            note: Some("it squeaked".to_owned()),
            key: Some(format!("mark {number}")),
            ..Entry::new(moment(number), what)
        };
        let written = home.store.write(&entry).unwrap();
        assert_eq!(written.logged().entry, entry);
        assert_eq!(&home.store.entry(written.logged().id).unwrap(), written.logged());
    }
}

#[test]
fn of_several_entries_all_are_written_or_none() {
    let mut home = Home::of(SHOP);
    let pot = home.pot("slideway-68");
    let taken = |text: &str| Entry::new(moment(1), What::Discarded { pot, amount: Some(amount(text)) });
    let both = home.store.write_all(&[taken("100 mL"), taken("50 mL")], moment(1)).unwrap();
    assert!(both.iter().all(|written| matches!(written, Written::New(_))));
    assert_eq!(home.left(pot).as_deref(), Some("850 mL"));
    let error = home.store.write_all(&[taken("100 mL"), taken("1 kg")], moment(1)).unwrap_err();
    assert!(matches!(error, StoreError::OtherMeasure { .. }), "{error:?}");
    assert_eq!(home.left(pot).as_deref(), Some("850 mL"));
    assert_eq!(home.store.log(Page { count: 10, ..Page::default() }).unwrap().len(), 2);
    assert_eq!(home.store.write_all(&[], moment(1)).unwrap(), []);
    home.store.check().unwrap();
}

#[test]
fn nothing_changes_or_deletes_an_entry() {
    let mut home = Home::of(SHOP);
    let pot = home.pot("slideway-68");
    write(&mut home, 1, What::Opened { pot });
    let other = rusqlite::Connection::open(home.path()).unwrap();
    other.pragma_update(None, "recursive_triggers", true).unwrap();
    for sql in ["UPDATE log SET note = 'x'", "DELETE FROM log", "REPLACE INTO log (id, at, day, kind) VALUES (1, 0, '', 'opened')"] {
        let error = other.execute(sql, []).unwrap_err();
        assert!(error.to_string().contains("only grows"), "{sql}: {error}");
    }
}

#[test]
fn the_same_mark_twice_is_one_entry() {
    let mut home = Home::of(SHOP);
    let pot = home.pot("slideway-68");
    let what = What::Discarded { pot, amount: Some(amount("100 mL")) };
    let entry = Entry { key: Some("a1".to_owned()), ..Entry::new(moment(1), what) };
    let first = home.store.write(&entry).unwrap();
    let again = home.store.write(&Entry { when: moment(2), ..entry }).unwrap();
    assert_eq!(again, Written::Already(first.logged().clone()));
    assert_eq!(home.left(pot).as_deref(), Some("900 mL"));
}

#[test]
fn a_due_point_is_served_once_until_that_is_undone() {
    let mut home = Home::of(SHOP);
    let point = steady(&home);
    let due = |minutes, who: &str| Entry {
        due: Some(day("2026-03-02")),
        who: Some(who.to_owned()),
        ..Entry::new(moment(minutes), What::Applied { point, pot: None, amount: None })
    };
    let first = home.store.write(&due(1, "first phone")).unwrap().logged().clone();
    let Written::Already(told) = home.store.write(&due(2, "second phone")).unwrap() else { panic!("ticked twice") };
    assert_eq!((told.id, told.entry.who.as_deref(), told.entry.when), (first.id, Some("first phone"), moment(1)));
    home.store.undo(first.id, moment(3), None).unwrap();
    assert!(matches!(home.store.write(&due(4, "second phone")).unwrap(), Written::New(_)));
}

#[test]
fn two_phones_race_and_one_of_them_is_told() {
    const ROUNDS: usize = 40;
    let home = Home::of(SHOP);
    let (point, path, arrived) = (steady(&home), home.path(), AtomicUsize::new(0));
    // Judged when both are done, because one that fails would leave the other waiting.
    let phone = |who: &str| -> Vec<Result<Written, StoreError>> {
        let mut store = Store::open(&path, moment(0)).unwrap();
        let entry = Entry { who: Some(who.to_owned()), ..Entry::new(moment(1), What::Applied { point, pot: None, amount: None }) };
        let dues = std::iter::successors(Some(day("2026-03-02")), |day| day.tomorrow().ok()).take(ROUNDS);
        let race = |(round, due): (usize, Date)| {
            // Waiting in a tight loop lets both go within a microsecond, where a sleeping thread would come late.
            arrived.fetch_add(1, Ordering::SeqCst);
            while arrived.load(Ordering::SeqCst) < 2 * (round + 1) {
                std::hint::spin_loop();
            }
            store.write(&Entry { due: Some(due), ..entry.clone() })
        };
        dues.enumerate().map(race).collect()
    };
    let [one, other] = std::thread::scope(|scope| {
        let phones = ["one", "other"].map(|who| scope.spawn(move || phone(who)));
        phones.map(|phone| phone.join().unwrap())
    });
    for outcomes in one.into_iter().zip(other) {
        match outcomes {
            (Ok(Written::New(first)), Ok(Written::Already(told))) | (Ok(Written::Already(told)), Ok(Written::New(first))) => {
                assert_eq!(told, first);
            }
            other => panic!("{other:?}"),
        }
    }
}

#[test]
fn undoing_reverses_once_and_only_what_was_done() {
    let mut home = Home::of(SHOP);
    let pot = home.pot("slideway-68");
    let taken = write(&mut home, 1, What::Discarded { pot, amount: Some(amount("100 mL")) });
    let Written::New(undone) = home.store.undo(taken.id, moment(2), Some("me")).unwrap() else { panic!("undone before") };
    assert_eq!(home.store.undo(taken.id, moment(3), None).unwrap(), Written::Already(undone.clone()));
    assert!(matches!(home.store.undo(undone.id, moment(3), None), Err(StoreError::NotUndone(_))));
    assert!(matches!(home.store.undo(EntryId(99), moment(3), None), Err(StoreError::NoEntry(_))));
    assert_eq!(home.store.entry(taken.id).unwrap().undone_by, Some(undone.id));
    assert_eq!(home.left(pot).as_deref(), Some("1 L"));
    home.store.check().unwrap();
}

#[test]
fn a_pot_is_what_was_counted_and_what_moved_since() {
    let mut home = Home::of(SHOP);
    let (oil, other) = (home.pot("slideway-68"), home.pot("penetrating"));
    write(&mut home, 10, What::Discarded { pot: oil, amount: Some(amount("100 mL")) });
    assert_eq!((home.left(oil).as_deref(), home.left(other)), (Some("900 mL"), None));
    write(&mut home, 20, What::Counted { pot: oil, left: amount("600 mL") });
    // It comes late, and the count has it in it.
    write(&mut home, 15, What::Discarded { pot: oil, amount: Some(amount("50 mL")) });
    assert_eq!(home.left(oil).as_deref(), Some("600 mL"));
    write(&mut home, 30, What::Counted { pot: other, left: amount("0 mL") });
    write(&mut home, 40, What::Decanted { from: oil, into: other, amount: amount("200 mL") });
    assert_eq!((home.left(oil).as_deref(), home.left(other).as_deref()), (Some("400 mL"), Some("200 mL")));
    write(&mut home, 50, What::Discarded { pot: oil, amount: None });
    assert_eq!(home.left(oil).as_deref(), Some("0 mL"));
    let state = home.store.state().unwrap().pots[&other];
    assert_eq!((state.counted, state.left.unwrap().short), (Some(moment(30).at()), false));
    write(&mut home, 60, What::Discarded { pot: other, amount: Some(amount("300 mL")) });
    assert!(home.store.state().unwrap().pots[&other].left.unwrap().short);
    home.store.check().unwrap();
}

#[test]
fn a_pot_kept_by_volume_gives_no_weight() {
    let mut home = Home::of(SHOP);
    let pot = home.pot("slideway-68");
    let entry = Entry::new(moment(1), What::Discarded { pot, amount: Some(amount("100 g")) });
    let error = home.store.write(&entry).unwrap_err();
    assert!(error.to_string().contains("kept as a volume and the entry gives a weight"), "{error}");
    // Counted by weight, it is kept by weight.
    write(&mut home, 2, What::Counted { pot, left: amount("800 g") });
    write(&mut home, 3, What::Discarded { pot, amount: Some(amount("100 g")) });
    assert_eq!(home.left(pot).as_deref(), Some("700 g"));
}

#[test]
fn an_entry_about_what_is_not_there_is_refused() {
    let mut home = Home::of(SHOP);
    let machine = home.machine("lathe");
    for what in
        [What::Opened { pot: machine }, What::Opened { pot: SectionId(999) }, What::Applied { point: machine, pot: None, amount: None }]
    {
        assert!(matches!(home.store.write(&Entry::new(moment(1), what)), Err(StoreError::NoSection { .. })), "{what:?}");
    }
}

#[test]
fn the_last_service_is_the_last_that_was_not_undone() {
    let mut home = Home::of(SHOP);
    let (point, machine) = (steady(&home), home.machine("lathe"));
    let applied = What::Applied { point, pot: None, amount: None };
    let early = write(&mut home, 10, applied);
    let late = write(&mut home, 30, applied);
    write(&mut home, 20, applied);
    let last = |home: &Home| home.store.state().unwrap().points[&point].applied.clone().unwrap();
    assert_eq!((last(&home).entry, last(&home).when), (late.id, moment(30)));
    home.store.undo(late.id, moment(40), None).unwrap();
    assert_eq!(last(&home).when, moment(20));
    assert!(last(&home).entry > early.id);
    let hours = Time::from_base(360_000.0);
    write(&mut home, 50, What::MeterRead { machine, hours });
    assert_eq!(home.store.state().unwrap().meters[&machine].hours, hours);
}

#[test]
fn uses_are_summed_by_day_and_the_log_is_paged() {
    let mut home = Home::of(SHOP);
    let (point, pot) = (steady(&home), home.pot("slideway-68"));
    let mut ids = Vec::new();
    for (minutes, supposed) in [(0, false), (60, false), (90, true), (24 * 60, true), (25 * 60, true)] {
        let what = What::Applied { point, pot: Some(pot), amount: Some(amount("2 mL")) };
        let entry = Entry { fluid: Some("slideway-68".to_owned()), supposed, ..Entry::new(moment(minutes), what) };
        ids.push(home.store.write(&entry).unwrap().logged().id);
    }
    home.store.undo(ids[4], moment(26 * 60), None).unwrap();
    let uses = home.store.uses("slideway-68", day("2026-03-01"), day("2026-03-31")).unwrap();
    let used = |on: &str, how_much: &str, supposed| Used { day: day(on), amount: amount(how_much), supposed };
    assert_eq!(uses, [used("2026-03-02", "4 mL", false), used("2026-03-02", "2 mL", true), used("2026-03-03", "2 mL", true)]);
    let (mut page, mut seen) = (Page { about: Some(point), before: None, count: 3 }, Vec::new());
    loop {
        let all = home.store.log(page).unwrap();
        let Some(last) = all.last() else { break };
        page.before = Some((last.entry.when.at(), last.id));
        seen.extend(all.iter().map(|logged| logged.id));
    }
    ids.reverse();
    assert_eq!(seen, ids);
    assert_eq!(home.store.log(Page { about: None, ..Page { count: 99, ..page } }).unwrap().len(), 0);
    assert_eq!(home.store.log(Page { count: 99, ..Page::default() }).unwrap().len(), 6);
}

/// What may happen to a pot, with the minute it is said to have happened at.
#[derive(Debug, Clone, Copy)]
enum Event {
    Take(i64, u32),
    Buy(i64, u32),
    Pour(i64, u32),
    Count(i64, u32),
    Empty(i64),
    Undo(prop::sample::Index),
}

fn event() -> impl Strategy<Value = Event> {
    let (at, ml) = (0_i64..500, 1_u32..200);
    prop_oneof![
        3 => (at.clone(), ml.clone()).prop_map(|(at, ml)| Event::Take(at, ml)),
        1 => (at.clone(), ml.clone()).prop_map(|(at, ml)| Event::Buy(at, ml)),
        1 => (at.clone(), ml.clone()).prop_map(|(at, ml)| Event::Pour(at, ml)),
        1 => (at.clone(), ml).prop_map(|(at, ml)| Event::Count(at, ml)),
        1 => at.prop_map(Event::Empty),
        2 => any::<prop::sample::Index>().prop_map(Event::Undo),
    ]
}

struct Happened {
    at: i64,
    event: Event,
    undone: bool,
}

/// What is in the pot by going through all that was not undone, in the order it happened; in millilitres.
fn by_hand(start: i64, events: &[Happened]) -> i64 {
    let mut order: Vec<_> = events.iter().filter(|happened| !happened.undone).collect();
    // The sort keeps the order of writing among those of the same minute.
    order.sort_by_key(|happened| happened.at);
    order.iter().fold(start, |left, happened| match happened.event {
        Event::Take(_, ml) | Event::Pour(_, ml) => left - i64::from(ml),
        Event::Buy(_, ml) => left + i64::from(ml),
        Event::Count(_, ml) => i64::from(ml),
        Event::Empty(_) => 0,
        Event::Undo(_) => left,
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_pot_s_amount_is_the_sum_whatever_the_order(events in prop::collection::vec(event(), 1..30)) {
        let mut home = Home::of(SHOP);
        let (pot, other) = (home.pot("slideway-68"), home.pot("penetrating"));
        let ml = |number: u32| amount(&format!("{number} mL"));
        let (mut done, mut ids) = (Vec::<Happened>::new(), Vec::new());
        for event in events {
            let (at, what) = match event {
                Event::Take(at, number) => (at, What::Discarded { pot, amount: Some(ml(number)) }),
                Event::Buy(at, number) => (at, What::Bought { pot, amount: Some(ml(number)) }),
                Event::Pour(at, number) => (at, What::Decanted { from: pot, into: other, amount: ml(number) }),
                Event::Count(at, number) => (at, What::Counted { pot, left: ml(number) }),
                Event::Empty(at) => (at, What::Discarded { pot, amount: None }),
                Event::Undo(which) => {
                    if !ids.is_empty() {
                        let which = which.index(ids.len());
                        home.store.undo(ids[which], moment(600), None).unwrap();
                        done[which].undone = true;
                    }
                    continue;
                }
            };
            ids.push(write(&mut home, at, what).id);
            done.push(Happened { at, event, undone: false });
        }
        let expected = by_hand(1000, &done);
        let left = home.store.state().unwrap().pots[&pot].left.unwrap();
        prop_assert_eq!(left.short, expected < 0);
        let Amount::Volume(volume) = left.amount else { panic!("not a volume") };
        let expected = f64::from(i32::try_from(expected.max(0)).unwrap()) / 1e6;
        prop_assert!((volume.base() - expected).abs() < 1e-12, "{} {}", volume.base(), expected);
        home.store.check().unwrap();
    }
}
