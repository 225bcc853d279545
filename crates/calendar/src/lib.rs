//! The round of a shop as a calendar: iCalendar (RFC 5545), which every calendar program reads.
//!
//! What falls due at a machine on one day, at the same spacing, is one event, repeated at that spacing for as long as nobody writes down
//! that it was done. Fetched again afterwards, the calendar says the new days: an event keeps its UID, and its SEQUENCE grows (sections
//! 3.8.4.7 and 3.8.7.4). Days and spacing are those of [`planner::round`], never reckoned here a second time. They are days, not months:
//! a rule for "monthly" would skip the months that have no 31st (section 3.3.10), and the chart says days.
//!
//! The lines are written here rather than by a library: of those at hand, one writes no time zones and stamps what it writes by the clock
//! and by chance, another brings a second database of time zones and a reader of mail with it. Tests read the lines with the latter.
//!
//! **Invariant:** no clock, no file and no system's time zone. The same facts at the same moment give the same text.

mod event;
mod text;
mod zone;

use jiff::Timestamp;
use jiff::civil::Time;
use jiff::tz::TimeZone;
use planner::report::Report;
use planner::round::{Facts, RoundError, round};
use shop::Shop;

use event::events;
use text::{Lines, escaped};

/// The calendar somebody wants.
#[derive(Debug, Clone)]
pub struct Calendar {
    /// Where the shop stands.
    pub zone: TimeZone,
    /// The hour of the day for what is due, by the clocks there; none makes events of the whole day. On the one day a year on which
    /// clocks skip that hour, calendar programs may leave the event out (section 3.3.10).
    pub hour: Option<Time>,
    /// An alarm so many minutes before; before the day begins where the event is of the whole day.
    pub alarm_minutes: Option<u32>,
    /// Whether what is served on every day the machine runs is in it, too.
    pub daily: bool,
    /// What it is called.
    pub name: String,
    /// What the shop is known by for good, such as a UUID; nobody sees it.
    pub id: String,
    /// When the log and the description were last written, or the present where nobody knows. Must not go back from one calendar of a
    /// shop to its next.
    pub now: Timestamp,
}

/// The calendar of a shop's round.
///
/// # Errors
/// [`RoundError::Backwards`] where something was done or read after the day of the facts.
pub fn of_round(report: &Report, shop: &Shop, facts: &Facts, wanted: &Calendar) -> Result<String, RoundError> {
    let today = round(report, shop, facts)?;
    let dawn = facts.today.to_zoned_datetime(wanted.zone.clone()).map_or(wanted.now, |dawn| dawn.timestamp());
    let zone = wanted.zone.iana_name().unwrap_or("shop");
    let mut lines = Lines::default();
    lines.put("BEGIN:VCALENDAR");
    lines.put("VERSION:2.0");
    lines.put("PRODID:-//Gallipot//the round//EN");
    lines.put("CALSCALE:GREGORIAN");
    // RFC 7986, sections 5.1 and 5.7; the second line is what calendar programs read before that.
    lines.put(&format!("NAME:{}", escaped(&wanted.name)));
    lines.put(&format!("X-WR-CALNAME:{}", escaped(&wanted.name)));
    lines.put("REFRESH-INTERVAL;VALUE=DURATION:P1D");
    // Written even where no event names it, for a calendar must not be empty (section 3.6).
    zone::write(&mut lines, &wanted.zone, zone, dawn);
    for event in events(&today, wanted.daily) {
        // What is due stays due: it moves on with the day, and so is another than it was yesterday.
        let revised = if event.start > facts.today { wanted.now } else { wanted.now.max(dawn) };
        event.write(&mut lines, zone, revised, shop.units, wanted);
    }
    lines.put("END:VCALENDAR");
    Ok(lines.text())
}
