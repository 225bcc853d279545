//! Changes to the description, as forms make them; each is read as a whole before it is kept.

use reference::Reference;
use rusqlite::{Connection, params};
use shop::Kinds;

use crate::branch::{Around, Branch, Part, Said, Shape};
use crate::description::change;
use crate::value::written_key;
use crate::write::{amount, write};
use crate::{Entry, Fault, Moment, SectionId, Store, StoreError, Value, What, rows, state, tally};

/// One change.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// A new section behind those that are there.
    Add {
        /// Where: [`SectionId::WHOLE`], or a machine for a point, or a point for its maker.
        parent: SectionId,
        /// `room`, `machine`, `point`, `maker`, `work`, `pot`.
        kind: String,
        /// What is said in it.
        says: Vec<(String, Value)>,
    },
    /// A section is taken out, with all that stands in it. The log may still speak of it.
    Remove {
        /// Which.
        section: SectionId,
    },
    /// A section is moved among those it stands with.
    Move {
        /// Which.
        section: SectionId,
        /// Before which; to the end when nothing is said.
        before: Option<SectionId>,
    },
    /// Something is said, in the place of what was said before.
    Say {
        /// Where.
        section: SectionId,
        /// Which key.
        key: String,
        /// What.
        value: Value,
    },
    /// Something is not said any more, and is supposed from then on.
    Unsay {
        /// Where.
        section: SectionId,
        /// Which key.
        key: String,
    },
}

impl Store {
    /// Makes changes to the description, all or none; gives the numbers of the sections added, in order.
    ///
    /// What is said to be left in a pot the log speaks of is written as a count.
    ///
    /// # Errors
    /// [`StoreError::Refused`] when the description would have a problem it has not now; then nothing is changed.
    pub fn edit(&mut self, changes: &[Change], reference: &Reference, kinds: Kinds<'_>, now: Moment) -> Result<Vec<SectionId>, StoreError> {
        self.backup_daily(now);
        let apply = |connection: &Connection| {
            let mut added = Vec::new();
            for (number, change) in changes.iter().enumerate() {
                if let Some(section) = one(connection, change, now)? {
                    added.push((number, section));
                }
            }
            Ok(added)
        };
        let refuse = |added: Vec<(usize, SectionId)>, faults: Vec<Fault>| {
            let change = |section| added.iter().find(|(_, added)| Some(*added) == section).map(|(number, _)| *number);
            StoreError::Refused(faults.into_iter().map(|fault| Fault { change: change(fault.section), ..fault }).collect())
        };
        let added = change(&mut self.connection, reference, kinds, apply, refuse)?;
        Ok(added.into_iter().map(|(_, section)| section).collect())
    }
}

fn one(connection: &Connection, change: &Change, now: Moment) -> Result<Option<SectionId>, StoreError> {
    match change {
        Change::Add { parent, kind, says } => {
            write_out(connection, *parent, &standing(connection, *parent)?)?;
            return add(connection, *parent, kind, says).map(Some);
        }
        Change::Remove { section } => {
            standing(connection, *section)?;
            if *section == SectionId::WHOLE {
                return Err(StoreError::NoSection { section: *section, wanted: "section that can be taken out" });
            }
            rows::take_out(connection, *section, now)?;
        }
        Change::Move { section, before } => {
            standing(connection, *section)?;
            rearrange(connection, *section, *before)?;
        }
        Change::Say { section, key, value } => {
            let found = standing(connection, *section)?;
            write_out(connection, *section, &found)?;
            let (key, value) = (written_key(key), value.to_toml());
            if found.kind == "pot" {
                said_of_pot(connection, *section, &key, Some(&value), now)?;
            }
            say(connection, *section, key, value)?;
        }
        Change::Unsay { section, key } => {
            let key = written_key(key);
            if standing(connection, *section)?.kind == "pot" {
                said_of_pot(connection, *section, &key, None, now)?;
            }
            connection.execute("DELETE FROM said WHERE section = ? AND key = ?", params![section.0, key])?;
        }
    }
    Ok(None)
}

/// Something is said of a template's point of which nothing was said before.
fn write_out(connection: &Connection, section: SectionId, found: &rows::Found) -> Result<(), StoreError> {
    if found.shape == Shape::Unwritten {
        connection.execute("UPDATE section SET shape = 'list', before = char(10) WHERE id = ?", [section.0])?;
    }
    Ok(())
}

fn standing(connection: &Connection, section: SectionId) -> Result<rows::Found, StoreError> {
    rows::find(connection, section)?.filter(|found| !found.gone).ok_or(StoreError::NoSection { section, wanted: "section" })
}

fn add(connection: &Connection, parent: SectionId, kind: &str, says: &[(String, Value)]) -> Result<SectionId, StoreError> {
    // A template's point that the log speaks of already has its number.
    let name = says.iter().find(|(key, _)| key == "name").map(|(_, value)| value.plain());
    if let (true, Some(name)) = (kind == "point", name)
        && let Some(point) = rows::point(connection, parent, &name)?
        && let Some(found) = rows::find(connection, point)?
        && found.shape == Shape::Unwritten
    {
        write_out(connection, point, &found)?;
        for (key, value) in says {
            say(connection, point, written_key(key), value.to_toml())?;
        }
        return Ok(point);
    }
    let (shape, before) = match kind {
        "machine" | "point" | "work" | "pot" => (Shape::List, "\n"),
        "maker" => (Shape::Inline, ""),
        _ => (Shape::Table, "\n"),
    };
    let said =
        |(key, value): &(String, Value)| Part::Said(Said { key: written_key(key), value: value.to_toml(), around: Around::default() });
    let position = rows::end(connection, parent)?;
    let before = if parent == SectionId::WHOLE && position == 0 { "" } else { before };
    let around = Around { before: before.to_owned(), after: String::new() };
    let branch = Branch { id: None, kind: written_key(kind), shape, around, parts: says.iter().map(said).collect() };
    rows::insert(connection, parent, position, &branch)
}

/// Says a key where it stood, else behind the others.
fn say(connection: &Connection, section: SectionId, key: String, value: String) -> Result<(), StoreError> {
    let changed = connection.execute("UPDATE said SET value = ? WHERE section = ? AND key = ?", params![value, section.0, key])?;
    if changed == 0 {
        rows::say(connection, section, rows::end(connection, section)?, &Said { key, value, around: Around::default() })?;
    }
    Ok(())
}

/// Puts a section before another of those it stands with, and numbers them all anew.
fn rearrange(connection: &Connection, section: SectionId, before: Option<SectionId>) -> Result<(), StoreError> {
    let parent = standing(connection, section)?.parent;
    if let Some(before) = before
        && standing(connection, before)?.parent != parent
    {
        return Err(StoreError::NoSection { section: before, wanted: "section beside the one to be moved" });
    }
    let mut all = connection.prepare("SELECT id FROM section WHERE parent = ? AND id <> ? ORDER BY position, id")?;
    let others = all.query_map(params![parent.map(|parent| parent.0), section.0], |row| row.get(0).map(SectionId))?;
    let mut order: Vec<SectionId> = others.collect::<Result<_, _>>()?;
    let place = before.and_then(|before| order.iter().position(|other| *other == before)).unwrap_or(order.len());
    order.insert(place, section);
    let start = rows::end(connection, parent.unwrap_or(SectionId::WHOLE))?;
    for (position, section) in (start..).zip(order) {
        connection.prepare_cached("UPDATE section SET position = ? WHERE id = ?")?.execute(params![position, section.0])?;
    }
    Ok(())
}

/// What the log makes of something said of a pot: what is left is a count, once the log speaks of the pot; and a day of opening that is
/// said, or unsaid, stands instead of the log's.
pub(crate) fn said_of_pot(
    connection: &Connection,
    pot: SectionId,
    key: &str,
    written: Option<&str>,
    now: Moment,
) -> Result<(), StoreError> {
    match key {
        "left" => {
            let Some(left) = written.and_then(amount) else { return Ok(()) };
            if tally::of(connection, pot)?.is_some() {
                write(connection, &Entry::new(now, What::Counted { pot, left }))?;
            }
        }
        "opened" => {
            while let Some((_, entry)) = state::opened(connection)?.get(&pot) {
                write(connection, &Entry::new(now, What::Undone { entry: *entry }))?;
            }
        }
        _ => {}
    }
    Ok(())
}
