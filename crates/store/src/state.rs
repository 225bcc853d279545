//! Questions to the log: when each point was last served, what is in each pot, what a year takes.

use std::collections::BTreeMap;

use jiff::Timestamp;
use jiff::civil::Date;
use rusqlite::{Connection, named_params, params};
use units::{Amount, Quantity, Time};

use crate::entry::{Logged, ROW, day, from_row, instant};
use crate::measure::from_whole;
use crate::write::amount;
use crate::{EntryId, Left, Moment, SectionId, Store, StoreError, tally};

/// How things stand now.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct State {
    /// The points the log speaks of.
    pub points: BTreeMap<SectionId, PointState>,
    /// The last reading of each hour meter.
    pub meters: BTreeMap<SectionId, Meter>,
    /// The pots of the description.
    pub pots: BTreeMap<SectionId, PotState>,
}

/// When a point was last served; what was undone does not count.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct PointState {
    /// Last lubricated.
    pub applied: Option<Done>,
    /// Last filled up.
    pub topped_up: Option<Done>,
}

/// Something done at a point.
#[derive(Debug, Clone, PartialEq)]
pub struct Done {
    /// The entry that says so.
    pub entry: EntryId,
    /// When.
    pub when: Moment,
    /// Who did it.
    pub who: Option<String>,
    /// What the hour meter showed.
    pub hours: Option<Time>,
}

/// A reading of an hour meter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Meter {
    /// When.
    pub when: Moment,
    /// What it showed.
    pub hours: Time,
}

/// How a pot stands.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct PotState {
    /// What is in it; `None` while nobody said or counted.
    pub left: Option<Left>,
    /// When it was last counted.
    pub counted: Option<Timestamp>,
    /// The day it was opened by the log; the description may know another.
    pub opened: Option<Date>,
}

/// What was put to points on a day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Used {
    /// The day.
    pub day: Date,
    /// How much.
    pub amount: Amount,
    /// Whether nobody measured it; see [`Entry::supposed`](crate::Entry::supposed).
    pub supposed: bool,
}

/// Which entries of the log to show.
#[derive(Debug, Clone, Copy, Default)]
pub struct Page {
    /// Only those about this machine, point or pot.
    pub about: Option<SectionId>,
    /// Only those before this one: the last of the page before.
    pub before: Option<(Timestamp, EntryId)>,
    /// How many at most.
    pub count: u32,
}

impl Store {
    /// When each point was last served, what each hour meter showed and what is in each pot.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn state(&self) -> Result<State, StoreError> {
        // One transaction, so that all of it is of the same moment.
        let transaction = self.connection.unchecked_transaction()?;
        Ok(State { points: points(&transaction)?, meters: meters(&transaction)?, pots: pots(&transaction)? })
    }

    /// How much of a fluid was put to points on each day, from one day to another, both included; what was measured and what is supposed
    /// each by itself. What was undone does not count.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn uses(&self, fluid: &str, from: Date, to: Date) -> Result<Vec<Used>, StoreError> {
        let mut all = self.connection.prepare_cached(
            "SELECT day, measure, sum(amount), supposed FROM log
             WHERE fluid = ? AND day BETWEEN ? AND ? AND kind IN ('applied', 'topped up') AND amount IS NOT NULL
               AND NOT EXISTS (SELECT 1 FROM log AS later WHERE later.reverses = log.id)
             GROUP BY day, measure, supposed ORDER BY day, measure, supposed",
        )?;
        let uses = all.query_map(params![fluid, from.to_string(), to.to_string()], |row| {
            let amount = from_whole(&row.get::<_, String>(1)?, row.get(2)?);
            Ok(Used { day: day(row.get(0)?), amount, supposed: row.get(3)? })
        })?;
        Ok(uses.collect::<Result<_, _>>()?)
    }

    /// The first of the last so many days on which a fluid was put to points; none where it never was.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn used_since(&self, fluid: &str, days: u32) -> Result<Option<Date>, StoreError> {
        let mut first = self.connection.prepare_cached(
            "SELECT min(day) FROM (SELECT DISTINCT day FROM log
             WHERE fluid = ? AND kind IN ('applied', 'topped up') AND amount IS NOT NULL ORDER BY day DESC LIMIT ?)",
        )?;
        Ok(first.query_row(params![fluid, days], |row| row.get::<_, Option<String>>(0))?.map(day))
    }

    /// A page of the log, newest first.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn log(&self, page: Page) -> Result<Vec<Logged>, StoreError> {
        let (at, id) = page.before.map_or((i64::MAX, i64::MAX), |(at, id)| (at.as_millisecond(), id.0));
        let about = if page.about.is_some() {
            "log.id IN (SELECT id FROM log WHERE machine = :about UNION SELECT id FROM log WHERE point = :about
                UNION SELECT id FROM log WHERE pot = :about UNION SELECT id FROM log WHERE into_pot = :about)"
        } else {
            ":about IS NULL"
        };
        let mut all = self.connection.prepare_cached(&format!(
            "SELECT {ROW} FROM log WHERE {about} AND (log.at, log.id) < (:at, :id) ORDER BY log.at DESC, log.id DESC LIMIT :count"
        ))?;
        let params = named_params! { ":about": page.about.map(|section| section.0), ":at": at, ":id": id, ":count": page.count };
        Ok(all.query_map(params, from_row)?.collect::<Result<_, _>>()?)
    }
}

fn points(connection: &Connection) -> Result<BTreeMap<SectionId, PointState>, StoreError> {
    let mut points: BTreeMap<SectionId, PointState> = BTreeMap::new();
    for kind in ["applied", "topped up"] {
        let mut all = connection.prepare_cached(
            "SELECT section.id, log.id, log.at, log.day, log.who, log.hours FROM section JOIN log ON log.id = (
               SELECT last.id FROM log AS last WHERE last.point = section.id AND last.kind = ?
                 AND NOT EXISTS (SELECT 1 FROM log AS later WHERE later.reverses = last.id)
               ORDER BY last.at DESC, last.id DESC LIMIT 1)
             WHERE section.kind = 'point' AND section.gone IS NULL",
        )?;
        let mut rows = all.query([kind])?;
        while let Some(row) = rows.next()? {
            let state = points.entry(SectionId(row.get(0)?)).or_default();
            let place = if kind == "applied" { &mut state.applied } else { &mut state.topped_up };
            *place = Some(Done {
                entry: EntryId(row.get(1)?),
                when: Moment::new(instant(row.get(2)?), day(row.get(3)?)),
                who: row.get(4)?,
                hours: row.get::<_, Option<f64>>(5)?.map(Time::from_base),
            });
        }
    }
    Ok(points)
}

fn meters(connection: &Connection) -> Result<BTreeMap<SectionId, Meter>, StoreError> {
    let mut all = connection.prepare_cached(
        "SELECT section.id, log.at, log.day, log.hours FROM section JOIN log ON log.id = (
           SELECT last.id FROM log AS last WHERE last.machine = section.id AND last.hours IS NOT NULL
             AND NOT EXISTS (SELECT 1 FROM log AS later WHERE later.reverses = last.id)
           ORDER BY last.at DESC, last.id DESC LIMIT 1)
         WHERE section.kind = 'machine' AND section.gone IS NULL",
    )?;
    let meters = all.query_map([], |row| {
        let when = Moment::new(instant(row.get(1)?), day(row.get(2)?));
        Ok((SectionId(row.get(0)?), Meter { when, hours: Time::from_base(row.get(3)?) }))
    })?;
    Ok(meters.collect::<Result<_, _>>()?)
}

fn pots(connection: &Connection) -> Result<BTreeMap<SectionId, PotState>, StoreError> {
    let tallies = tally::all(connection)?;
    let opened = opened(connection)?;
    let mut all = connection.prepare_cached(
        "SELECT section.id, said.value FROM section LEFT JOIN said ON said.section = section.id AND said.key = 'left'
         WHERE section.kind = 'pot' AND section.gone IS NULL",
    )?;
    let mut rows = all.query([])?;
    let mut pots = BTreeMap::new();
    while let Some(row) = rows.next()? {
        let pot = SectionId(row.get(0)?);
        let said = row.get::<_, Option<String>>(1)?.and_then(|written| amount(&written));
        let tally = tallies.get(&pot);
        let left = tally.map_or_else(|| said.map(|amount| Left { amount, short: false }), |tally| tally.left(said));
        let counted = tally.and_then(|tally| tally.counted).map(|(_, at)| instant(at));
        pots.insert(pot, PotState { left, counted, opened: opened.get(&pot).map(|(day, _)| *day) });
    }
    Ok(pots)
}

/// The day on which each pot was opened last, and the entry that says so.
pub(crate) fn opened(connection: &Connection) -> Result<BTreeMap<SectionId, (Date, EntryId)>, StoreError> {
    let mut all = connection.prepare_cached(
        "SELECT pot, day, id, max(at) FROM log
         WHERE kind = 'opened' AND NOT EXISTS (SELECT 1 FROM log AS later WHERE later.reverses = log.id) GROUP BY pot",
    )?;
    let opened = all.query_map([], |row| Ok((SectionId(row.get(0)?), (day(row.get(1)?), EntryId(row.get(2)?)))))?;
    Ok(opened.collect::<Result<_, _>>()?)
}
