//! What the clocks do where the shop stands: RFC 5545, section 3.6.5.

use jiff::civil::{DateTime, Weekday, datetime};
use jiff::tz::{Dst, Offset, TimeZone};
use jiff::{SignedDuration, Timestamp};

use crate::text::{Lines, escaped};

/// Years ahead for which changes of the clocks are looked up. What follows one rule for so long is taken to follow it for good.
const YEARS: i16 = 20;

/// The same change of the clocks, over the years.
struct Observance {
    dst: bool,
    from: Offset,
    to: Offset,
    name: String,
    /// When, by the clocks before they are changed.
    at: Vec<DateTime>,
}

/// Writes the time zone as it is from a moment on.
pub(crate) fn write(lines: &mut Lines, zone: &TimeZone, name: &str, since: Timestamp) {
    let until = zone.to_offset(since).to_datetime(since).year().saturating_add(YEARS);
    lines.put("BEGIN:VTIMEZONE");
    lines.put(&format!("TZID:{}", escaped(name)));
    for observance in observances(zone, since, until) {
        observance.write(lines, until);
    }
    lines.put("END:VTIMEZONE");
}

/// What holds at that moment, and every change from it on.
fn observances(zone: &TimeZone, since: Timestamp, until: i16) -> Vec<Observance> {
    const A_SECOND: SignedDuration = SignedDuration::from_secs(1);
    let mut all: Vec<Observance> = Vec::new();
    let before = zone.preceding(since.checked_add(A_SECOND).unwrap_or(since)).next();
    for change in before.into_iter().chain(zone.following(since)) {
        let from = zone.to_offset(change.timestamp().checked_sub(A_SECOND).unwrap_or(since));
        let at = from.to_datetime(change.timestamp());
        if at.year() >= until {
            break;
        }
        let (dst, to, name) = (change.dst() == Dst::Yes, change.offset(), change.abbreviation());
        match all.iter_mut().find(|one| (one.dst, one.from, one.to, one.name.as_str()) == (dst, from, to, name)) {
            Some(one) => one.at.push(at),
            None => all.push(Observance { dst, from, to, name: name.to_owned(), at: vec![at] }),
        }
    }
    if all.is_empty() {
        let info = zone.to_offset_info(since);
        let name = info.abbreviation().to_owned();
        all.push(Observance { dst: false, from: info.offset(), to: info.offset(), name, at: vec![datetime(1970, 1, 1, 0, 0, 0, 0)] });
    }
    all
}

impl Observance {
    fn write(&self, lines: &mut Lines, until: i16) {
        let kind = if self.dst { "DAYLIGHT" } else { "STANDARD" };
        let Some((first, others)) = self.at.split_first() else { return };
        lines.put(&format!("BEGIN:{kind}"));
        lines.put(&format!("DTSTART:{}", local(*first)));
        match rule(*first, others, until) {
            Some(rule) => lines.put(&format!("RRULE:{rule}")),
            None if others.is_empty() => {}
            None => lines.put(&format!("RDATE:{}", others.iter().copied().map(local).collect::<Vec<_>>().join(","))),
        }
        lines.put(&format!("TZOFFSETFROM:{}", offset(self.from)));
        lines.put(&format!("TZOFFSETTO:{}", offset(self.to)));
        lines.put(&format!("TZNAME:{}", escaped(&self.name)));
        lines.put(&format!("END:{kind}"));
    }
}

/// The rule that all of them follow to the end: at the same hour of the second, or the last, Sunday of a month, every year.
fn rule(first: DateTime, others: &[DateTime], until: i16) -> Option<String> {
    let all = || [first].into_iter().chain(others.iter().copied());
    let yearly = all().map(DateTime::year).eq(first.year()..until);
    if !yearly || all().any(|at| (at.month(), at.weekday(), at.time()) != (first.month(), first.weekday(), first.time())) {
        return None;
    }
    let week = |at: DateTime| (at.day() - 1) / 7 + 1;
    let which = if all().all(|at| at.day() + 7 > at.date().days_in_month()) {
        -1
    } else if all().all(|at| week(at) == week(first)) {
        week(first)
    } else {
        return None;
    };
    Some(format!("FREQ=YEARLY;BYMONTH={};BYDAY={which}{}", first.month(), weekday(first.weekday())))
}

fn weekday(day: Weekday) -> &'static str {
    match day {
        Weekday::Monday => "MO",
        Weekday::Tuesday => "TU",
        Weekday::Wednesday => "WE",
        Weekday::Thursday => "TH",
        Weekday::Friday => "FR",
        Weekday::Saturday => "SA",
        Weekday::Sunday => "SU",
    }
}

/// A day and hour by the clocks there (section 3.3.5).
pub(crate) fn local(at: DateTime) -> String {
    at.strftime("%Y%m%dT%H%M%S").to_string()
}

/// What clocks are ahead of UTC (section 3.3.14).
fn offset(offset: Offset) -> String {
    let (sign, seconds) = (if offset.is_negative() { '-' } else { '+' }, offset.seconds().unsigned_abs());
    let (hours, minutes, seconds) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
    let rest = if seconds > 0 { format!("{seconds:02}") } else { String::new() };
    format!("{sign}{hours:02}{minutes:02}{rest}")
}

#[cfg(test)]
mod tests {
    use jiff::ToSpan;
    use jiff::civil::date;

    use super::*;

    /// The first Sunday on or after a day of March at two o'clock, in these years.
    fn sundays(day: i8, years: std::ops::Range<i16>) -> Vec<DateTime> {
        let first = |year| (0..7).map(|more| date(year, 3, day) + more.days()).find(|day| day.weekday() == Weekday::Sunday);
        years.filter_map(first).map(|day| day.at(2, 0, 0, 0)).collect()
    }

    #[test]
    fn a_rule_must_be_true_of_every_year() {
        // RFC 5545, section 3.3.10: the last Sunday of March is one from the 25th on, the second one from the 8th on.
        for (day, rule_there) in [(25, Some("-1SU")), (24, None), (8, Some("2SU")), (9, None)] {
            let all = sundays(day, 2026..2046);
            let wants = rule_there.map(|day| format!("FREQ=YEARLY;BYMONTH=3;BYDAY={day}"));
            assert_eq!(rule(all[0], &all[1..], 2046), wants, "from the {day}th on");
            assert_eq!(rule(all[0], &all[1..15], 2046), None, "it ends");
        }
    }
}
