//! What is in each pot: the last count, or what the description says, and what the log moved since.

use std::collections::HashMap;

use rusqlite::{Connection, OptionalExtension, Row, named_params, params};
use units::Amount;

use crate::entry::{Columns, Logged};
use crate::measure::{from_whole, measure, to_whole};
use crate::{SectionId, StoreError};

/// What the log says of one pot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Tally {
    /// The entry it starts from, with its instant; without one it starts from the description.
    pub counted: Option<(i64, i64)>,
    /// `None` while no amount was ever given.
    pub measure: Option<String>,
    /// What was counted and what was moved since; without a count, only what was moved.
    pub amount: i64,
}

/// What is in a pot now.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Left {
    /// The amount; nothing where more was taken out than was in.
    pub amount: Amount,
    /// Whether more was taken out than was in, so that the pot should be counted.
    pub short: bool,
}

impl Tally {
    /// What is in the pot, given what the description says is left.
    pub fn left(&self, said: Option<Amount>) -> Option<Left> {
        let kept = self.measure.as_deref().or_else(|| said.map(measure));
        let start = match (self.counted, said) {
            (Some(_), _) => 0,
            (None, Some(said)) if kept == Some(measure(said)) => to_whole(said).ok()?,
            (None, _) => return None,
        };
        let whole = start.saturating_add(self.amount);
        Some(Left { amount: from_whole(kept.unwrap_or("volume"), whole), short: whole < 0 })
    }

    fn from_row(row: &Row<'_>) -> rusqlite::Result<(SectionId, Self)> {
        let counted = row.get::<_, Option<i64>>(1)?.zip(row.get(2)?);
        Ok((SectionId(row.get(0)?), Self { counted, measure: row.get(3)?, amount: row.get(4)? }))
    }
}

const SELECT: &str = "SELECT pot, counted, counted_at, measure, amount FROM tally";

/// The tallies of all pots the log speaks of.
pub(crate) fn all(connection: &Connection) -> Result<HashMap<SectionId, Tally>, StoreError> {
    let mut all = connection.prepare_cached(SELECT)?;
    Ok(all.query_map([], Tally::from_row)?.collect::<Result<_, _>>()?)
}

/// The tally of one pot.
pub(crate) fn of(connection: &Connection, pot: SectionId) -> Result<Option<Tally>, StoreError> {
    let mut one = connection.prepare_cached(&format!("{SELECT} WHERE pot = ?"))?;
    Ok(one.query_row([pot.0], Tally::from_row).optional()?.map(|(_, tally)| tally))
}

/// Follows a new entry.
pub(crate) fn follow(connection: &Connection, logged: &Logged) -> Result<(), StoreError> {
    let columns = Columns::from(logged.entry.what);
    let Some(pot) = columns.pot else { return Ok(()) };
    if columns.kind == "counted" || (columns.kind == "discarded" && columns.amount.is_none()) {
        return remake(connection, pot);
    }
    let Some(amount) = columns.amount else { return Ok(()) };
    let whole = to_whole(amount)?;
    add(connection, logged, pot, measure(amount), if columns.kind == "bought" { whole } else { -whole })?;
    columns.into.map_or(Ok(()), |into| add(connection, logged, into, measure(amount), whole))
}

fn add(connection: &Connection, logged: &Logged, pot: SectionId, measure: &str, whole: i64) -> Result<(), StoreError> {
    connection
        .prepare_cached(
            "INSERT INTO tally (pot, measure, amount) VALUES (:pot, :measure, :whole)
             ON CONFLICT DO UPDATE SET amount = amount + :whole, measure = coalesce(measure, :measure)
             WHERE counted IS NULL OR (:at, :id) > (counted_at, counted)",
        )?
        .execute(named_params! {
            ":pot": pot.0, ":measure": measure, ":whole": whole, ":at": logged.entry.when.milliseconds(), ":id": logged.id.0,
        })?;
    Ok(())
}

/// Makes the tally of a pot anew from the log.
pub(crate) fn remake(connection: &Connection, pot: SectionId) -> Result<(), StoreError> {
    let tally = from_log(connection, pot)?;
    let (counted, counted_at) = tally.counted.unzip();
    connection
        .prepare_cached("INSERT OR REPLACE INTO tally (pot, counted, counted_at, measure, amount) VALUES (?, ?, ?, ?, ?)")?
        .execute(params![pot.0, counted, counted_at, tally.measure, tally.amount])?;
    Ok(())
}

fn from_log(connection: &Connection, pot: SectionId) -> Result<Tally, StoreError> {
    let count = connection
        .prepare_cached(
            "SELECT id, at, measure, coalesce(amount, 0) FROM log
             WHERE pot = ? AND (kind = 'counted' OR (kind = 'discarded' AND amount IS NULL))
               AND NOT EXISTS (SELECT 1 FROM log AS later WHERE later.reverses = log.id)
             ORDER BY at DESC, id DESC LIMIT 1",
        )?
        .query_row([pot.0], |row| {
            Ok((row.get::<_, i64>(0)?, row.get::<_, i64>(1)?, row.get::<_, Option<String>>(2)?, row.get::<_, i64>(3)?))
        })
        .optional()?;
    let (id, at) = count.as_ref().map_or((0, i64::MIN), |(id, at, _, _)| (*id, *at));
    let (moved, least, most): (i64, Option<String>, Option<String>) = connection
        .prepare_cached(
            "SELECT coalesce(sum(moved), 0), min(measure), max(measure) FROM (
               SELECT id, at, measure, CASE kind WHEN 'bought' THEN amount ELSE -amount END AS moved FROM log
               WHERE pot = :pot AND kind IN ('applied', 'topped up', 'decanted', 'bought', 'discarded') AND amount IS NOT NULL
               UNION ALL
               SELECT id, at, measure, amount FROM log WHERE into_pot = :pot
             ) AS moves
             WHERE (at, id) > (:at, :id) AND NOT EXISTS (SELECT 1 FROM log AS later WHERE later.reverses = moves.id)",
        )?
        .query_row(named_params! { ":pot": pot.0, ":at": at, ":id": id }, |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?;
    let counted = count.as_ref().and_then(|(_, _, measure, _)| measure.clone());
    let kept = counted.or_else(|| least.clone());
    for other in [&least, &most].into_iter().flatten() {
        same(kept.as_deref(), other)?;
    }
    Ok(Tally { counted: count.as_ref().map(|(id, at, _, _)| (*id, *at)), measure: kept, amount: count.map_or(0, |count| count.3) + moved })
}

/// Refuses an amount that a pot is not kept in.
pub(crate) fn same(kept: Option<&str>, given: &str) -> Result<(), StoreError> {
    match kept {
        Some(kept) if kept != given => Err(StoreError::OtherMeasure { kept: said(kept), given: said(given) }),
        _ => Ok(()),
    }
}

fn said(measure: &str) -> &'static str {
    match measure {
        "volume" => "a volume",
        "mass" => "a weight",
        "length" => "a length",
        _ => "pieces",
    }
}

/// Whether every tally is what the log makes of it.
pub(crate) fn check(connection: &Connection) -> Result<(), StoreError> {
    let kept = all(connection)?;
    let mut pots =
        connection.prepare("SELECT pot FROM log WHERE pot IS NOT NULL UNION SELECT into_pot FROM log WHERE into_pot IS NOT NULL")?;
    for pot in pots.query_map([], |row| row.get(0).map(SectionId))? {
        let pot = pot?;
        let (kept, made) = (kept.get(&pot), from_log(connection, pot)?);
        if kept.map_or((None, 0), |kept| (kept.counted, kept.amount)) != (made.counted, made.amount) {
            return Err(StoreError::Damaged { detail: format!("the tally of pot {} is not what the log says", pot.0) });
        }
    }
    Ok(())
}
