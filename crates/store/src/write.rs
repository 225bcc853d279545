//! Writing the log: what was done at once is one transaction, and no way to change one but another that reverses it.

use rusqlite::{Connection, OptionalExtension, Params, Transaction, TransactionBehavior, params};
use units::{Amount, Quantity};

use crate::description::point;
use crate::entry::{Columns, Entry, Logged, ROW, What, Written, from_row};
use crate::measure::{measure, to_whole};
use crate::{EntryId, Moment, SectionId, Store, StoreError, rows, tally};

impl Store {
    /// Writes an entry, unless the same was written before: by the entry's own mark, because the point that was due is served, or because
    /// what it reverses is reversed.
    ///
    /// # Errors
    /// When it speaks of what is not there, or takes by weight from a pot kept by volume; or the file cannot be written.
    pub fn write(&mut self, entry: &Entry) -> Result<Written, StoreError> {
        self.together(entry.when, |writing| writing.write(entry))
    }

    /// Writes several entries as [`write`](Self::write) does, all of them or none.
    ///
    /// # Errors
    /// When one of them cannot be written.
    pub fn write_all(&mut self, entries: &[Entry], now: Moment) -> Result<Vec<Written>, StoreError> {
        self.together(now, |writing| entries.iter().map(|entry| writing.write(entry)).collect())
    }

    /// Writes what stands or falls together: one transaction, which an error takes back.
    ///
    /// # Errors
    /// Whatever `with` gives up with; or when the file cannot be written.
    pub fn together<T>(&mut self, now: Moment, with: impl FnOnce(&Writing<'_>) -> Result<T, StoreError>) -> Result<T, StoreError> {
        self.backup_daily(now);
        let writing = Writing(begin(&mut self.connection)?);
        let given = with(&writing)?;
        writing.0.commit()?;
        Ok(given)
    }

    /// Reverses an entry by another. What is undone twice is undone once.
    ///
    /// # Errors
    /// When there is no such entry, or it reverses another itself.
    pub fn undo(&mut self, entry: EntryId, when: Moment, who: Option<&str>) -> Result<Written, StoreError> {
        self.write(&Entry { who: who.map(ToOwned::to_owned), ..Entry::new(when, What::Undone { entry }) })
    }

    /// One entry.
    ///
    /// # Errors
    /// When there is none of that number.
    pub fn entry(&self, id: EntryId) -> Result<Logged, StoreError> {
        get(&self.connection, id)
    }
}

/// A write that is not done yet; see [`Store::together`].
#[derive(Debug)]
pub struct Writing<'c>(Transaction<'c>);

impl Writing<'_> {
    /// Writes an entry; see [`Store::write`].
    ///
    /// # Errors
    /// As there.
    pub fn write(&self, entry: &Entry) -> Result<Written, StoreError> {
        match first(&self.0, entry)? {
            Some(first) => Ok(Written::Already(first)),
            None => write(&self.0, entry).map(Written::New),
        }
    }

    /// The section of a machine's point by its name, made if need be; see [`Store::point`].
    ///
    /// # Errors
    /// As there.
    pub fn point(&self, machine: SectionId, name: &str) -> Result<SectionId, StoreError> {
        point(&self.0, machine, name)
    }
}

/// Begins a write at once, so that two writers wait for each other instead of failing half-way.
pub(crate) fn begin(connection: &mut Connection) -> Result<Transaction<'_>, StoreError> {
    Ok(connection.transaction_with_behavior(TransactionBehavior::Immediate)?)
}

/// The entry that was there before this one and makes it superfluous.
fn first(connection: &Connection, entry: &Entry) -> Result<Option<Logged>, StoreError> {
    if let Some(key) = &entry.key
        && let Some(found) = one(connection, "key = ?", [key])?
    {
        return Ok(Some(found));
    }
    if let What::Undone { entry } = entry.what {
        return get(connection, entry)?.undone_by.map(|by| get(connection, by)).transpose();
    }
    match (Columns::from(entry.what).point, entry.due) {
        (Some(point), Some(due)) => {
            one(connection, "id = (SELECT entry FROM tick WHERE point = ? AND due = ?)", params![point.0, due.to_string()])
        }
        _ => Ok(None),
    }
}

/// Writes an entry that nothing makes superfluous.
pub(crate) fn write(connection: &Connection, entry: &Entry) -> Result<Logged, StoreError> {
    if let What::Undone { entry } = entry.what
        && let What::Undone { .. } = get(connection, entry)?.entry.what
    {
        return Err(StoreError::NotUndone(entry));
    }
    let columns = Columns::from(entry.what);
    let machine = match columns.point {
        Some(point) => of_kind(connection, point, "point")?,
        None => columns.machine,
    };
    if let Some(machine) = machine {
        of_kind(connection, machine, "machine")?;
    }
    for pot in columns.pot.into_iter().chain(columns.into) {
        of_kind(connection, pot, "pot")?;
        // A count says anew how a pot is kept.
        if let Some(amount) = columns.amount.filter(|_| columns.kind != "counted") {
            tally::same(kept(connection, pot)?.as_deref(), measure(amount))?;
        }
    }
    let hours = columns.hours.or(entry.hours).map(Quantity::base);
    connection
        .prepare_cached(
            "INSERT INTO log (at, day, kind, machine, point, pot, into_pot, fluid, measure, amount, hours, due, who, note, reverses, key,
               supposed)
             VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        )?
        .execute(params![
            entry.when.milliseconds(),
            entry.when.day().to_string(),
            columns.kind,
            machine.map(|section| section.0),
            columns.point.map(|section| section.0),
            columns.pot.map(|section| section.0),
            columns.into.map(|section| section.0),
            entry.fluid,
            columns.amount.map(measure),
            columns.amount.map(to_whole).transpose()?,
            hours,
            entry.due.map(|due| due.to_string()),
            entry.who,
            entry.note,
            columns.reverses.map(|entry| entry.0),
            entry.key,
            entry.supposed && columns.amount.is_some(),
        ])?;
    let logged = get(connection, EntryId(connection.last_insert_rowid()))?;
    if let (Some(point), Some(due)) = (columns.point, entry.due) {
        connection.prepare_cached("INSERT INTO tick (point, due, entry) VALUES (?, ?, ?)")?.execute(params![
            point.0,
            due.to_string(),
            logged.id.0
        ])?;
    }
    match entry.what {
        What::Undone { entry } => forget(connection, entry)?,
        _ => tally::follow(connection, &logged)?,
    }
    Ok(logged)
}

/// Takes back what followed from an entry that is reversed now.
fn forget(connection: &Connection, undone: EntryId) -> Result<(), StoreError> {
    connection.prepare_cached("DELETE FROM tick WHERE entry = ?")?.execute([undone.0])?;
    let columns = Columns::from(get(connection, undone)?.entry.what);
    columns.pot.into_iter().chain(columns.into).try_for_each(|pot| tally::remake(connection, pot))
}

fn get(connection: &Connection, id: EntryId) -> Result<Logged, StoreError> {
    one(connection, "id = ?", [id.0])?.ok_or(StoreError::NoEntry(id))
}

fn one(connection: &Connection, filter: &str, params: impl Params) -> Result<Option<Logged>, StoreError> {
    let mut one = connection.prepare_cached(&format!("SELECT {ROW} FROM log WHERE log.{filter}"))?;
    Ok(one.query_row(params, from_row).optional()?)
}

/// Refuses a section that is not of the kind; else gives what it stands in. One that is gone will do: an entry may come late.
fn of_kind(connection: &Connection, section: SectionId, wanted: &'static str) -> Result<Option<SectionId>, StoreError> {
    let found = rows::find(connection, section)?.filter(|found| found.kind == wanted);
    found.map(|found| found.parent).ok_or(StoreError::NoSection { section, wanted })
}

/// How a pot is kept so far: by the log, else by what the description says is left.
fn kept(connection: &Connection, pot: SectionId) -> Result<Option<String>, StoreError> {
    if let Some(measure) = tally::of(connection, pot)?.and_then(|tally| tally.measure) {
        return Ok(Some(measure));
    }
    let left = rows::value(connection, pot, "left")?.and_then(|written| amount(&written));
    Ok(left.map(|left| measure(left).to_owned()))
}

/// The amount a value of the description gives, when it gives one.
pub(crate) fn amount(written: &str) -> Option<Amount> {
    Amount::parse(&crate::Value::from_toml(written).plain()).ok()
}
