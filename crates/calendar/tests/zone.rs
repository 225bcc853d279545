//! What clocks do where the shop stands, against the standard's own example and another database of time zones.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod support;

use std::sync::LazyLock;

use calcard::icalendar::{ICalendar, ICalendarComponent, ICalendarComponentType, ICalendarProperty};
use calendar::Calendar;
use jiff::civil::{Date, date, time};
use planner::round::Facts;
use rrule::RRuleSet;
use support::{Chart, events, line, of_kind, on, points, read, recurs, wanted, words, zone};

static FIRST_LATHE: LazyLock<Chart> = LazyLock::new(|| Chart::example("first-lathe"));

/// At six in the evening there.
fn at_six(place: &str) -> Calendar {
    Calendar { zone: zone(place), hour: Some(time(18, 0, 0, 0)), ..wanted() }
}

fn of(place: &str, today: Date) -> ICalendar {
    read(&FIRST_LATHE.calendar(&FIRST_LATHE.all_done(today), &at_six(place)))
}

#[test]
fn the_hour_stays_when_the_clocks_change() {
    // The last Sundays of October 2026 and March 2027 in the European Union and Great Britain (directive 2000/84/EC); the first of November
    // 2026 and the second of March 2027 in the United States (Energy Policy Act of 2005).
    for (place, today, changes, hours) in [
        ("Europe/Berlin", date(2026, 9, 1), date(2026, 10, 25), ["16", "17"]),
        ("Europe/Berlin", date(2027, 2, 1), date(2027, 3, 28), ["17", "16"]),
        ("Europe/London", date(2026, 9, 1), date(2026, 10, 25), ["17", "18"]),
        ("Europe/London", date(2027, 2, 1), date(2027, 3, 28), ["18", "17"]),
        ("America/New_York", date(2026, 9, 1), date(2026, 11, 1), ["22", "23"]),
        ("America/New_York", date(2027, 2, 1), date(2027, 3, 14), ["23", "22"]),
    ] {
        let calendar = of(place, today);
        let mut seen = [0, 0];
        for event in events(&calendar) {
            assert!(line(event, &ICalendarProperty::Dtstart).unwrap().starts_with(&format!("DTSTART;TZID={place}:")));
            for at in recurs(event).all(60).dates {
                assert_eq!(at.format("%H:%M").to_string(), "18:00", "{place}");
                let day: Date = at.format("%Y-%m-%d").to_string().parse().unwrap();
                if (day - changes).get_days().abs() < 60 {
                    let side = usize::from(day >= changes);
                    assert_eq!(at.to_utc().format("%H").to_string(), hours[side], "{place} on {day}");
                    seen[side] += 1;
                }
            }
        }
        assert!(seen.iter().all(|count| *count > 5), "{place}: {seen:?}");
    }
}

#[test]
fn days_at_an_hour_are_those_of_the_round() {
    let facts = Facts { today: date(2026, 10, 20), ..FIRST_LATHE.all_done(date(2026, 10, 12)) };
    let calendar = read(&FIRST_LATHE.calendar(&facts, &at_six("Europe/Berlin")));
    for event in events(&calendar) {
        let machine = words(event, &ICalendarProperty::Summary).split_once(": ").unwrap().0.to_owned();
        for point in points(event) {
            assert_eq!(support::days(event, 5), FIRST_LATHE.foretold(&facts, &machine, &point, 5), "{point}");
        }
    }
}

#[test]
fn the_example_of_the_standard() {
    // RFC 5545, section 3.6.5, the zone of New York since 2007. Ours begins with what holds on the day, so its summer begins in 2008.
    let today = date(2007, 11, 10);
    let text = FIRST_LATHE.calendar(&FIRST_LATHE.all_done(today), &at_six("America/New_York"));
    for wants in [
        "STANDARD DTSTART:20071104T020000 RRULE:FREQ=YEARLY;BYMONTH=11;BYDAY=1SU TZOFFSETFROM:-0400 TZOFFSETTO:-0500 TZNAME:EST",
        "DAYLIGHT DTSTART:20080309T020000 RRULE:FREQ=YEARLY;BYMONTH=3;BYDAY=2SU TZOFFSETFROM:-0500 TZOFFSETTO:-0400 TZNAME:EDT",
    ] {
        assert!(text.contains(&format!("BEGIN:{}\r\n", wants.replace(' ', "\r\n"))), "{text}");
    }
}

/// When the clocks change to which offset: the moments in seconds, and seconds ahead of UTC. By sections 3.6.5 and 3.8.3.3.
fn changes(calendar: &ICalendar, years: u16) -> Vec<(i64, i64)> {
    let offset = |component: &ICalendarComponent, property: &ICalendarProperty| -> i64 {
        let line = line(component, property).unwrap();
        let (sign, digits) = line.split_once(':').unwrap().1.split_at(1);
        let seconds = digits[..2].parse::<i64>().unwrap() * 3600 + digits[2..4].parse::<i64>().unwrap() * 60;
        if sign == "-" { -seconds } else { seconds }
    };
    let mut all = Vec::new();
    for kind in [ICalendarComponentType::Standard, ICalendarComponentType::Daylight] {
        for component in of_kind(calendar, &kind) {
            let (from, to) = (offset(component, &ICalendarProperty::Tzoffsetfrom), offset(component, &ICalendarProperty::Tzoffsetto));
            // As if these hours were UTC, from which the offset then is taken.
            let get = |property| line(component, property);
            let start = format!("{}Z", get(&ICalendarProperty::Dtstart).unwrap());
            let rule = get(&ICalendarProperty::Rrule).map_or_else(String::new, |rule| format!("\n{rule}"));
            let dates = get(&ICalendarProperty::Rdate).map_or_else(String::new, |dates| format!(",{}Z", dates[6..].replace(',', "Z,")));
            // The library does not count the start in where nothing recurs.
            let set = format!("{start}{rule}\nRDATE:{}{dates}", &start[8..]).parse::<RRuleSet>().unwrap();
            all.extend(set.all(years).dates.iter().map(|at| (at.timestamp() - from, to)));
        }
    }
    all.sort_unstable();
    all.dedup();
    all
}

#[test]
fn clocks_agree_with_another_database_of_time_zones() {
    // The recurrence library brings its own. Clocks in Gaza go by the moon, those of Cairo back the day after the last Thursday
    // of a month, and those of Israel forward on a Friday from 23 March on: no rule of a weekday's place in its
    // month is true of these.
    for (place, ruled) in [
        ("Europe/London", 2),
        ("Europe/Dublin", 2),
        ("Europe/Berlin", 2),
        ("America/New_York", 2),
        ("America/St_Johns", 2),
        ("Australia/Lord_Howe", 2),
        ("Asia/Jerusalem", 1),
        ("Africa/Cairo", 1),
        ("Asia/Gaza", 0),
        ("Asia/Kolkata", 0),
        ("America/Sao_Paulo", 0),
        ("UTC", 0),
    ] {
        let calendar = read(&FIRST_LATHE.calendar(&on(date(2026, 3, 1)), &at_six(place)));
        let observances = || calendar.components.iter().filter(|one| one.has_property(&ICalendarProperty::Tzoffsetto));
        assert_eq!(observances().filter(|one| one.has_property(&ICalendarProperty::Rrule)).count(), ruled, "{place}");
        let changes = changes(&calendar, 40);
        let every_noon: RRuleSet = format!("DTSTART;TZID={place}:20260301T120000\nRRULE:FREQ=DAILY;COUNT=6900").parse().unwrap();
        let noons = every_noon.all(6900).dates;
        assert_eq!(noons.len(), 6900);
        for at in noons {
            let (_, ahead) = *changes.iter().rfind(|(when, _)| *when <= at.timestamp()).unwrap_or_else(|| panic!("{place} begins late"));
            assert_eq!(at.naive_local().and_utc().timestamp() - at.timestamp(), ahead, "{place} at {at}");
        }
    }
}
