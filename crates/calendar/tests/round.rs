//! The events of a round, against what the round itself foretells and what RFC 5545 asks.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod support;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

use calcard::icalendar::{ICalendarComponentType, ICalendarProperty};
use calendar::Calendar;
use jiff::civil::{Date, date};
use planner::round::{Done, Facts, Reading};
use support::{Chart, MONDAY, days, events, line, of_kind, on, points, read, tick, wanted, words};

static ALDER_LOCK: LazyLock<Chart> = LazyLock::new(|| Chart::example("alder-lock"));

/// A machine whose maker wants its oil changed every 40 hours, and something wiped every 30 days.
fn machine(name: &str) -> String {
    format!(
        "[[machine]]\nname = {name:?}\nhours = \"5 h/week\"\n[[machine.point]]\nname = \"gear head\"\nkind = \"gear head\"\n\
         maker = {{ use = [\"hydraulic-oil\"], viscosity = \"ISO VG 46\", every = \"40 h\" }}\n"
    )
}

fn june(day: i8) -> Date {
    date(2026, 6, day)
}

/// The first days that a calendar says for each point.
fn said(chart: &Chart, facts: &Facts, count: u16) -> BTreeMap<(String, String), Vec<Date>> {
    let calendar = read(&chart.calendar(facts, &wanted()));
    let mut all = BTreeMap::new();
    for event in events(&calendar) {
        let title = words(event, &ICalendarProperty::Summary);
        for point in points(event) {
            let machine = title.split_once(": ").unwrap().0.to_owned();
            assert!(all.insert((machine, point), days(event, count)).is_none(), "{title} twice");
        }
    }
    all
}

/// Every point with its next days as the round foretells them, one done after the other.
fn same_as_the_round(chart: &Chart, facts: &Facts) {
    let said = said(chart, facts, 4);
    let round = chart.round(facts);
    assert_eq!(said.len(), round.points.len());
    for ((machine, point), days) in said {
        assert_eq!(days, chart.foretold(facts, &machine, &point, 4), "{machine} · {point}");
    }
}

#[test]
fn the_days_are_those_of_the_round() {
    same_as_the_round(&ALDER_LOCK, &on(MONDAY));
    let mut facts = ALDER_LOCK.all_done(MONDAY);
    same_as_the_round(&ALDER_LOCK, &facts);
    facts.today = june(9);
    tick(&mut facts, "lathe", "three-jaw chuck", june(6));
    same_as_the_round(&ALDER_LOCK, &facts);
    facts.meters.insert("lathe".to_owned(), vec![Reading { day: MONDAY, hours: 100.0 }, Reading { day: june(8), hours: 117.0 }]);
    same_as_the_round(&ALDER_LOCK, &facts);
    // A meter read only when something was done.
    let read = Done { day: june(8), hours: Some(40.0), who: None };
    facts.done.insert(("mill".to_owned(), "column screw".to_owned()), read);
    same_as_the_round(&ALDER_LOCK, &facts);
}

#[test]
fn running_hours_become_days_by_the_hours_a_week() {
    // 40 hours at 5 a week are 56 days, eight weeks (by hand).
    let chart = Chart::of(&machine("busy"));
    let calendar = read(&chart.calendar(&chart.all_done(MONDAY), &wanted()));
    let [event] = events(&calendar)[..] else { unreachable!("one point, one event") };
    assert_eq!(line(event, &ICalendarProperty::Dtstart).unwrap(), "DTSTART;VALUE=DATE:20260727");
    assert_eq!(line(event, &ICalendarProperty::Rrule).unwrap(), "RRULE:FREQ=WEEKLY;INTERVAL=8");
    assert_eq!(words(event, &ICalendarProperty::Summary), "busy: gear head");
    assert_eq!(days(event, 3), [date(2026, 7, 27), date(2026, 9, 21), date(2026, 11, 16)]);
}

#[test]
fn what_falls_due_together_is_one_event() {
    let calendar = read(&ALDER_LOCK.calendar(&ALDER_LOCK.all_done(MONDAY), &wanted()));
    let mut seen = BTreeSet::new();
    for event in events(&calendar) {
        let title = words(event, &ICalendarProperty::Summary);
        let count = points(event).len();
        assert!(count == 1 || title.ends_with(&format!(": {count} points")), "{title}");
        let machine = title.split_once(": ").unwrap().0.to_owned();
        assert!(seen.insert((machine, line(event, &ICalendarProperty::Dtstart), line(event, &ICalendarProperty::Rrule))), "{title}");
    }
    // Each with its amount and its fluid.
    let text = words(events(&calendar)[0], &ICalendarProperty::Description);
    assert!(text.lines().next().unwrap().contains(" of "), "{text}");
}

#[test]
fn what_is_overdue_is_on_today_and_says_since_when() {
    let facts = Facts { today: june(10), ..ALDER_LOCK.all_done(MONDAY) };
    let calendar = read(&ALDER_LOCK.calendar(&facts, &wanted()));
    let overdue = events(&calendar).into_iter().find(|event| points(event).contains(&"bed ways".to_owned())).unwrap();
    assert_eq!(days(overdue, 1), [june(10)]);
    // The bed ways want oil every 2 hours; at 5 hours a week these last 2.8 days (by hand).
    assert!(words(overdue, &ICalendarProperty::Description).contains("; due since 2026-06-04"));
    assert!(events(&calendar).iter().all(|event| days(event, 1)[0] >= june(10)));
}

#[test]
fn what_is_done_whenever_the_machine_runs_is_left_out_unless_wanted() {
    let facts = ALDER_LOCK.all_done(MONDAY);
    let named = |daily| {
        let calendar = read(&ALDER_LOCK.calendar(&facts, &Calendar { daily, ..wanted() }));
        events(&calendar).into_iter().flat_map(points).collect::<BTreeSet<_>>()
    };
    let (without, with) = (named(false), named(true));
    assert!(without.is_subset(&with));
    assert!(!without.contains("bed ways") && with.contains("bed ways"));
    assert!(without.contains("three-jaw chuck") && without.contains("machine-vice screw"));
}

/// The UID and the SEQUENCE of each event.
fn revisions(facts: &Facts, now: &str) -> BTreeMap<String, i64> {
    let calendar = read(&ALDER_LOCK.calendar(facts, &Calendar { now: now.parse().unwrap(), ..wanted() }));
    let of = |event: &&calcard::icalendar::ICalendarComponent| {
        (event.uid().unwrap().to_owned(), event.property(&ICalendarProperty::Sequence).unwrap().values[0].as_integer().unwrap())
    };
    let all = events(&calendar);
    let map: BTreeMap<String, i64> = all.iter().map(of).collect();
    assert_eq!(map.len(), all.len(), "an UID twice");
    map
}

#[test]
fn an_event_keeps_its_name_and_counts_its_changes() {
    let mut facts = on(MONDAY);
    let never_done = revisions(&facts, "2026-06-01T06:00:00Z");
    assert_eq!(never_done, revisions(&facts, "2026-06-01T06:00:00Z"));
    let grew = |before: &BTreeMap<String, i64>, after: &BTreeMap<String, i64>| {
        assert!(before.keys().all(|uid| after.contains_key(uid)), "a name was lost");
        assert!(before.iter().all(|(uid, count)| after[uid] > *count), "changed without a sign");
    };
    // The next day nothing was written, and what was due has moved on.
    facts.today = june(2);
    let next_day = revisions(&facts, "2026-06-01T06:00:00Z");
    grew(&never_done, &next_day);
    let done = Facts { today: june(2), ..ALDER_LOCK.all_done(MONDAY) };
    let ticked = revisions(&done, "2026-06-02T18:00:00Z");
    grew(&next_day, &ticked);
    // Taken back, it is due again, and that counts as a change.
    grew(&ticked, &revisions(&facts, "2026-06-02T19:00:00Z"));
}

#[test]
fn the_same_facts_are_the_same_text_until_something_is_due() {
    let text = |day| {
        let facts = Facts { today: june(day), ..ALDER_LOCK.all_done(MONDAY) };
        ALDER_LOCK.calendar(&facts, &Calendar { daily: false, ..wanted() })
    };
    // The change gears want oil every 8 hours; at 5 hours a week that is after 11.2 days, on the 12th, and nothing is due before (by hand).
    assert!(text(1) == text(11));
    assert!(text(11) != text(12));
}

#[test]
fn points_that_part_become_two_events() {
    let mut facts = ALDER_LOCK.all_done(MONDAY);
    facts.today = june(4);
    let before = revisions(&facts, "2026-06-04T06:00:00Z");
    tick(&mut facts, "lathe", "bed ways", june(4));
    let after = revisions(&facts, "2026-06-04T07:00:00Z");
    assert_eq!(after.len(), before.len() + 1);
    assert!(before.keys().all(|uid| after.contains_key(uid)));
}

#[test]
fn two_shops_share_no_names() {
    let facts = ALDER_LOCK.all_done(MONDAY);
    let uids = |id: &str| {
        let calendar = read(&ALDER_LOCK.calendar(&facts, &Calendar { id: id.to_owned(), ..wanted() }));
        calendar.uids().map(ToOwned::to_owned).collect::<BTreeSet<_>>()
    };
    assert!(uids("one").is_disjoint(&uids("other")));
}

#[test]
fn names_are_read_back_as_they_were() {
    let name = "Drehbank; „groß“, alt \\ müde: Nº 1 — обдирочный станок, 旋盤 и всё, что к нему относится";
    let chart = Chart::of(&machine(name));
    let text = chart.calendar(&on(MONDAY), &Calendar { name: name.to_owned(), alarm_minutes: Some(30), ..wanted() });
    assert!(text.ends_with("END:VCALENDAR\r\n"));
    // RFC 5545, section 3.1.
    assert!(text.split("\r\n").all(|line| line.len() <= 75 && !line.contains(['\r', '\n'])));
    let calendar = read(&text);
    assert_eq!(words(&calendar.components[0], &ICalendarProperty::Name), name);
    assert_eq!(words(events(&calendar)[0], &ICalendarProperty::Summary), format!("{name}: gear head"));
    let alarm = of_kind(&calendar, &ICalendarComponentType::VAlarm).next().unwrap();
    assert_eq!(line(alarm, &ICalendarProperty::Trigger).unwrap(), "TRIGGER:-PT30M");
    assert_eq!(words(alarm, &ICalendarProperty::Description), format!("{name}: gear head"));
}

#[test]
fn a_calendar_with_nothing_due_is_still_one() {
    // RFC 5545, section 3.6: there must be a component.
    let chart = Chart::of("[[work]]\njob = \"cut\"\nmaterials = [\"brass\"]\n");
    let calendar = read(&chart.calendar(&on(MONDAY), &wanted()));
    assert!(events(&calendar).is_empty());
    assert_eq!(of_kind(&calendar, &ICalendarComponentType::VTimezone).count(), 1);
}

#[test]
fn every_event_has_what_the_standard_asks() {
    // RFC 5545, section 3.6.1: UID and DTSTAMP; DTSTART where there is no METHOD.
    let calendar = read(&ALDER_LOCK.calendar(&on(MONDAY), &wanted()));
    for property in [ICalendarProperty::Version, ICalendarProperty::Prodid] {
        assert!(calendar.components[0].has_property(&property));
    }
    for event in events(&calendar) {
        for property in [ICalendarProperty::Uid, ICalendarProperty::Dtstamp, ICalendarProperty::Dtstart] {
            assert_eq!(event.properties(&property).count(), 1);
        }
    }
}
