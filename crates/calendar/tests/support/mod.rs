//! Shops out of text, their calendars, and calendars read back by two libraries that know nothing of this one.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]
#![allow(dead_code, clippy::allow_attributes, reason = "each test file uses its own part")]

use calcard::icalendar::{ICalendar, ICalendarComponent, ICalendarComponentType, ICalendarProperty};
use calendar::{Calendar, of_round};
use jiff::Timestamp;
use jiff::civil::{Date, date};
use jiff::tz::TimeZone;
use planner::needs::kinds;
use planner::report::Report;
use planner::round::{Done, Facts, Reading, Round, round};
use planner::{Wishes, plan};
use reference::Reference;
use rrule::RRuleSet;
use shop::Shop;
use units::System;

/// A Monday.
pub const MONDAY: Date = date(2026, 6, 1);

/// A shop with the plan its rounds start from.
pub struct Chart {
    pub shop: Shop,
    pub report: Report,
}

impl Chart {
    pub fn of(text: &str) -> Self {
        let reference = Reference::embedded();
        let shop = shop::read(text.as_bytes(), kinds(), reference).unwrap_or_else(|problems| panic!("{problems:#?}\n{text}"));
        let report = plan(&shop, reference, &Wishes::default()).unwrap().report(System::Metric);
        Self { shop, report }
    }

    pub fn example(name: &str) -> Self {
        Self::of(&std::fs::read_to_string(format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"))).unwrap())
    }

    pub fn round(&self, facts: &Facts) -> Round {
        round(&self.report, &self.shop, facts).unwrap()
    }

    pub fn calendar(&self, facts: &Facts, wanted: &Calendar) -> String {
        of_round(&self.report, &self.shop, facts, wanted).unwrap()
    }

    /// Everything done on that day.
    pub fn all_done(&self, day: Date) -> Facts {
        let mut facts = on(day);
        for row in self.round(&on(day)).points {
            tick(&mut facts, &row.machine, &row.point, day);
        }
        facts
    }

    /// The days the round foretells for a point if it is done whenever it is due, and what is overdue today.
    pub fn foretold(&self, facts: &Facts, machine: &str, point: &str, count: usize) -> Vec<Date> {
        let mut facts = facts.clone();
        // What the meter showed is not forgotten when the point is done again.
        for ((machine, _), done) in &facts.done {
            let shown = done.hours.map(|hours| Reading { day: done.day, hours });
            facts.meters.entry(machine.clone()).or_default().extend(shown);
        }
        let mut days = Vec::new();
        while days.len() < count {
            let row = self.round(&facts).points.into_iter().find(|row| row.machine == machine && row.point == point).unwrap();
            let Some(due) = row.due_on else { break };
            let day = due.max(facts.today);
            facts.today = day;
            days.push(day);
            tick(&mut facts, machine, point, day);
        }
        days
    }
}

pub fn on(today: Date) -> Facts {
    Facts { today, ..Facts::default() }
}

pub fn tick(facts: &mut Facts, machine: &str, point: &str, day: Date) {
    facts.done.insert((machine.to_owned(), point.to_owned()), Done { day, hours: None, who: None });
}

/// A calendar of whole days in London.
pub fn wanted() -> Calendar {
    Calendar {
        zone: zone("Europe/London"),
        hour: None,
        alarm_minutes: None,
        daily: true,
        name: "The shed".to_owned(),
        id: "8f9d3a1c-5c0e-4d6e-9a55-0d6d7a1b2c3d".to_owned(),
        now: "2026-06-01T06:00:00Z".parse::<Timestamp>().unwrap(),
    }
}

pub fn zone(name: &str) -> TimeZone {
    TimeZone::get(name).unwrap()
}

/// A calendar read back, with nothing after it.
pub fn read(text: &str) -> ICalendar {
    let mut parser = calcard::Parser::new(text);
    let calcard::Entry::ICalendar(calendar) = parser.entry() else { panic!("no calendar:\n{text}") };
    assert_eq!(parser.entry(), calcard::Entry::Eof);
    calendar
}

pub fn of_kind<'a>(calendar: &'a ICalendar, kind: &'a ICalendarComponentType) -> impl Iterator<Item = &'a ICalendarComponent> {
    calendar.components.iter().filter(move |component| component.component_type == *kind)
}

pub fn events(calendar: &ICalendar) -> Vec<&ICalendarComponent> {
    of_kind(calendar, &ICalendarComponentType::VEvent).collect()
}

/// A property as words.
pub fn words(component: &ICalendarComponent, property: &ICalendarProperty) -> String {
    let value = component.property(property).unwrap_or_else(|| panic!("no {property:?}")).values[0].clone();
    value.into_text().unwrap().into_owned()
}

/// A property as the reader writes it, on one line.
pub fn line(component: &ICalendarComponent, property: &ICalendarProperty) -> Option<String> {
    let mut line = String::new();
    component.property(property)?.write_to(&mut line).unwrap();
    Some(line.replace("\r\n ", "").trim_end().to_owned())
}

/// When something begins and recurs, in the words of the standard, with its day made a midnight where it is a whole day.
pub fn recurs(component: &ICalendarComponent) -> RRuleSet {
    let start = line(component, &ICalendarProperty::Dtstart).unwrap();
    let start = match start.split_once(";VALUE=DATE:") {
        Some((name, day)) => format!("{name}:{day}T000000Z"),
        None => start,
    };
    let rule = line(component, &ICalendarProperty::Rrule).map_or_else(String::new, |rule| format!("\n{rule}"));
    format!("{start}{rule}").parse().unwrap_or_else(|error| panic!("{start}{rule}: {error}"))
}

/// The first days of it.
pub fn days(component: &ICalendarComponent, count: u16) -> Vec<Date> {
    recurs(component).all(count).dates.iter().map(|at| at.format("%Y-%m-%d").to_string().parse().unwrap()).collect()
}

/// The points that the words of an event name.
pub fn points(event: &ICalendarComponent) -> Vec<String> {
    let text = words(event, &ICalendarProperty::Description);
    text.lines().filter_map(|line| line.split_once(": ")).map(|(point, _)| point.to_owned()).collect()
}
