//! The description in the database: reading the tree from its rows, and changing single rows.

use std::collections::HashMap;

use rusqlite::{Connection, OptionalExtension, Row, params};

use crate::branch::{Around, Branch, Part, Said, Shape};
use crate::{Moment, SectionId, StoreError};

/// The whole tree; what is gone is not in it.
pub(crate) fn load(connection: &Connection) -> Result<Branch, StoreError> {
    let mut parts: HashMap<i64, Vec<(i64, Part)>> = HashMap::new();
    let mut all = connection.prepare_cached(
        "SELECT said.section, said.position, said.key, said.value, said.before, said.after
         FROM said JOIN section ON section.id = said.section WHERE section.gone IS NULL",
    )?;
    let mut rows = all.query([])?;
    while let Some(row) = rows.next()? {
        let said = Said { key: row.get(2)?, value: row.get(3)?, around: Around { before: row.get(4)?, after: row.get(5)? } };
        parts.entry(row.get(0)?).or_default().push((row.get(1)?, Part::Said(said)));
    }
    // A section is always younger than the one it stands in, so that going backwards each is whole before it is put there.
    let mut all = connection
        .prepare_cached("SELECT id, parent, kind, shape, position, before, after FROM section WHERE gone IS NULL ORDER BY id DESC")?;
    let mut rows = all.query([])?;
    let mut whole = Branch::default();
    while let Some(row) = rows.next()? {
        let mut branch = bare(row)?;
        let mut inside = parts.remove(&row.get(0)?).unwrap_or_default();
        inside.sort_by_key(|(position, _)| *position);
        branch.parts = inside.into_iter().map(|(_, part)| part).collect();
        match row.get::<_, Option<i64>>(1)? {
            Some(parent) => parts.entry(parent).or_default().push((row.get(4)?, Part::Section(branch))),
            None => whole = branch,
        }
    }
    Ok(whole)
}

fn bare(row: &Row<'_>) -> rusqlite::Result<Branch> {
    Ok(Branch {
        id: Some(SectionId(row.get(0)?)),
        kind: row.get(2)?,
        shape: Shape::from_word(&row.get::<_, String>(3)?),
        around: Around { before: row.get(5)?, after: row.get(6)? },
        parts: Vec::new(),
    })
}

/// Adds a section and all that is in it.
pub(crate) fn insert(connection: &Connection, parent: SectionId, position: i64, branch: &Branch) -> Result<SectionId, StoreError> {
    connection
        .prepare_cached("INSERT INTO section (parent, kind, shape, position, before, after) VALUES (?, ?, ?, ?, ?, ?)")?
        .execute(params![parent.0, branch.kind, branch.shape.word(), position, branch.around.before, branch.around.after])?;
    let id = SectionId(connection.last_insert_rowid());
    for (position, part) in (0..).zip(&branch.parts) {
        match part {
            Part::Said(said) => say(connection, id, position, said)?,
            Part::Section(inner) => {
                insert(connection, id, position, inner)?;
            }
        }
    }
    Ok(id)
}

/// Says a key, in the place of what was said before.
pub(crate) fn say(connection: &Connection, section: SectionId, position: i64, said: &Said) -> Result<(), StoreError> {
    connection
        .prepare_cached(
            "INSERT INTO said (section, key, position, value, before, after) VALUES (?, ?, ?, ?, ?, ?)
             ON CONFLICT DO UPDATE SET position = excluded.position, value = excluded.value, before = excluded.before, after = excluded.after",
        )?
        .execute(params![section.0, said.key, position, said.value, said.around.before, said.around.after])?;
    Ok(())
}

/// What is said for a key, as written.
pub(crate) fn value(connection: &Connection, section: SectionId, key: &str) -> Result<Option<String>, StoreError> {
    let mut one = connection.prepare_cached("SELECT value FROM said WHERE section = ? AND key = ?")?;
    Ok(one.query_row(params![section.0, key], |row| row.get(0)).optional()?)
}

/// The position behind everything in a section.
pub(crate) fn end(connection: &Connection, section: SectionId) -> Result<i64, StoreError> {
    let mut last = connection.prepare_cached(
        "SELECT 1 + max(coalesce((SELECT max(position) FROM said WHERE section = ?1), -1),
                        coalesce((SELECT max(position) FROM section WHERE parent = ?1), -1))",
    )?;
    Ok(last.query_row([section.0], |row| row.get(0))?)
}

/// Takes a section out, with all that stands in it; the rows stay for the log's sake. A point of a machine that has a template may be the
/// template's: it is then still there with nothing said about it, and keeps its history.
pub(crate) fn take_out(connection: &Connection, section: SectionId, now: Moment) -> Result<(), StoreError> {
    let Some(Found { kind, parent: Some(machine), .. }) = find(connection, section)? else { return Ok(()) };
    if kind != "point" || value(connection, machine, "template")?.is_none() {
        return remove(connection, section, now);
    }
    connection.execute("DELETE FROM said WHERE section = ? AND key <> 'name'", [section.0])?;
    let mut inside = connection.prepare("SELECT id FROM section WHERE parent = ? AND gone IS NULL")?;
    for inner in inside.query_map([section.0], |row| row.get(0).map(SectionId))? {
        remove(connection, inner?, now)?;
    }
    connection.execute("UPDATE section SET shape = 'unwritten' WHERE id = ?", [section.0])?;
    Ok(())
}

fn remove(connection: &Connection, section: SectionId, now: Moment) -> Result<(), StoreError> {
    connection.execute(
        "WITH RECURSIVE below (id) AS (SELECT ?1 UNION ALL SELECT section.id FROM section JOIN below ON section.parent = below.id)
         UPDATE section SET gone = ?2 WHERE gone IS NULL AND id IN below",
        params![section.0, now.milliseconds()],
    )?;
    Ok(())
}

/// The kind and the shape of a section, gone or not.
pub(crate) fn find(connection: &Connection, section: SectionId) -> Result<Option<Found>, StoreError> {
    let mut one = connection.prepare_cached("SELECT kind, shape, parent, gone IS NOT NULL FROM section WHERE id = ?")?;
    let found = one.query_row([section.0], |row| {
        Ok(Found {
            kind: row.get(0)?,
            shape: Shape::from_word(&row.get::<_, String>(1)?),
            parent: row.get::<_, Option<i64>>(2)?.map(SectionId),
            gone: row.get(3)?,
        })
    });
    Ok(found.optional()?)
}

/// What [`find`] tells.
pub(crate) struct Found {
    pub kind: String,
    pub shape: Shape,
    pub parent: Option<SectionId>,
    pub gone: bool,
}

/// A machine's point by name.
pub(crate) fn point(connection: &Connection, machine: SectionId, name: &str) -> Result<Option<SectionId>, StoreError> {
    let mut all = connection.prepare_cached(
        "SELECT section.id, said.value FROM section JOIN said ON said.section = section.id AND said.key = 'name'
         WHERE section.parent = ? AND section.kind = 'point' AND section.gone IS NULL",
    )?;
    let mut rows = all.query([machine.0])?;
    while let Some(row) = rows.next()? {
        if crate::Value::from_toml(&row.get::<_, String>(1)?).plain() == name {
            return Ok(Some(SectionId(row.get(0)?)));
        }
    }
    Ok(None)
}
