//! What falls due at a machine on one day, as an event: RFC 5545, section 3.6.1.

use std::collections::BTreeMap;

use jiff::Timestamp;
use jiff::civil::Date;
use planner::round::{Round, RoundRow};
use planner::words::{amount, is_daily};
use units::System;
use uuid::Uuid;

use crate::Calendar;
use crate::text::{Lines, escaped};
use crate::zone::local;

/// The names of events are told apart from all other names by this one, drawn once.
const NAMES: Uuid = Uuid::from_u128(0x7c0f_5e0e_52b4_4a0e_9d27_3f6b_1c58_a9e1);

/// Points of a machine that fall due together, and come round together.
pub(crate) struct Event<'a> {
    machine: &'a str,
    /// Days from one to the next; none where it never comes round again.
    every: Option<i32>,
    /// The first day, not before today.
    pub start: Date,
    /// Which of the machine's events with that spacing, by their days.
    place: usize,
    points: Vec<&'a RoundRow>,
}

/// The events of a round.
pub(crate) fn events(today: &Round, daily: bool) -> Vec<Event<'_>> {
    let mut groups: BTreeMap<(&str, Option<i32>, Date), Vec<&RoundRow>> = BTreeMap::new();
    for row in today.points.iter().filter(|row| daily || !is_daily(&row.every)) {
        let Some(due) = row.due_on else { continue };
        groups.entry((row.machine.as_str(), row.days_apart, due.max(today.today))).or_default().push(row);
    }
    let mut all: Vec<Event<'_>> = Vec::new();
    for ((machine, every, start), points) in groups {
        let before = all.last().filter(|last| (last.machine, last.every) == (machine, every));
        let place = before.map_or(0, |last| last.place + 1);
        all.push(Event { machine, every, start, place, points });
    }
    all
}

impl Event<'_> {
    /// Writes it as it became at a moment, by the clocks of the zone of that name.
    pub fn write(&self, lines: &mut Lines, zone: &str, revised: Timestamp, units: System, wanted: &Calendar) {
        let title = escaped(&self.title());
        lines.put("BEGIN:VEVENT");
        lines.put(&format!("UID:{}", self.uid(&wanted.id)));
        lines.put(&format!("DTSTAMP:{}", utc(revised)));
        lines.put(&format!("LAST-MODIFIED:{}", utc(revised)));
        lines.put(&format!("SEQUENCE:{}", sequence(revised)));
        match wanted.hour {
            Some(hour) => {
                lines.put(&format!("DTSTART;TZID={zone}:{}", local(self.start.to_datetime(hour))));
                // Long enough to be seen in the picture of a week.
                lines.put("DURATION:PT30M");
            }
            None => lines.put(&format!("DTSTART;VALUE=DATE:{}", self.start.strftime("%Y%m%d"))),
        }
        if let Some(days) = self.every {
            lines.put(&format!("RRULE:{}", rule(days)));
        }
        lines.put(&format!("SUMMARY:{title}"));
        lines.put(&format!("DESCRIPTION:{}", escaped(&self.text(units))));
        // It is on the list, and nobody is away for it.
        lines.put("TRANSP:TRANSPARENT");
        if let Some(minutes) = wanted.alarm_minutes {
            lines.put("BEGIN:VALARM");
            lines.put("ACTION:DISPLAY");
            lines.put(&format!("DESCRIPTION:{title}"));
            lines.put(&format!("TRIGGER:-PT{minutes}M"));
            lines.put("END:VALARM");
        }
        lines.put("END:VEVENT");
    }

    /// The same for the same machine and spacing whatever is due there and when, and for no other event. RFC 7986, section 5.3, wants a
    /// UUID; this one is made of names (RFC 9562, section 5.5).
    fn uid(&self, shop: &str) -> Uuid {
        let every = self.every.map_or_else(String::new, |days| days.to_string());
        Uuid::new_v5(&NAMES, format!("{shop}\n{}\n{every}\n{}", self.machine, self.place).as_bytes())
    }

    fn title(&self) -> String {
        match self.points.as_slice() {
            [only] => format!("{}: {}", self.machine, only.point),
            points => format!("{}: {} points", self.machine, points.len()),
        }
    }

    fn text(&self, units: System) -> String {
        let point = |row: &&RoundRow| {
            let late = row.due_on.filter(|due| *due < self.start).map_or_else(String::new, |due| format!("; due since {due}"));
            format!("{}: {} of {}; {}{late}", row.point, amount(row.dose, units), row.name, row.how)
        };
        let mut lines: Vec<String> = self.points.iter().map(point).collect();
        lines.push("Stop the machine, and see that it cannot start, before you reach into it.".to_owned());
        lines.join("\n")
    }
}

/// Every so many days (section 3.3.10), said in weeks where they are whole.
fn rule(days: i32) -> String {
    let (unit, number) = if days % 7 == 0 { ("WEEKLY", days / 7) } else { ("DAILY", days) };
    format!("FREQ={unit};INTERVAL={number}")
}

/// A number that grows with time (section 3.8.7.4): seconds since 2020. An integer of section 3.3.8 holds as many as pass until 2088.
fn sequence(revised: Timestamp) -> i64 {
    const SINCE_S: i64 = 1_577_836_800;
    (revised.as_second() - SINCE_S).clamp(0, i64::from(i32::MAX))
}

/// A moment (section 3.3.5).
fn utc(moment: Timestamp) -> String {
    moment.strftime("%Y%m%dT%H%M%SZ").to_string()
}
