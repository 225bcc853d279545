//! Making what is stored say what another text says, so that what is in both keeps its number.

use std::collections::{HashMap, HashSet, VecDeque};

use rusqlite::{Connection, params};

use crate::branch::{Branch, Part, Said, Shape};
use crate::edit::said_of_pot;
use crate::write::amount;
use crate::{Imported, Moment, SectionId, StoreError, rows};

/// Makes a section that is there say what the new one says, and no more.
pub(crate) fn merge(connection: &Connection, old: &Branch, new: &Branch, now: Moment, done: &mut Imported) -> Result<(), StoreError> {
    let Some(id) = old.id else { return Ok(()) };
    connection.prepare_cached("UPDATE section SET shape = ?, before = ?, after = ? WHERE id = ?")?.execute(params![
        new.shape.word(),
        new.around.before,
        new.around.after,
        id.0
    ])?;
    let said: HashSet<&str> = new.said().map(|said| said.key.as_str()).collect();
    for unsaid in old.said().filter(|old| !said.contains(old.key.as_str())) {
        if old.kind == "pot" {
            said_of_pot(connection, id, &unsaid.key, None, now)?;
        }
        connection.prepare_cached("DELETE FROM said WHERE section = ? AND key = ?")?.execute(params![id.0, unsaid.key])?;
    }
    let (there, wanted): (Vec<&Branch>, Vec<&Branch>) = (old.sections().collect(), new.sections().collect());
    let mut found = pairs(&there, &wanted);
    let kept: HashSet<SectionId> = found.iter().flatten().filter_map(|branch| branch.id).collect();
    for (position, part) in (0..).zip(&new.parts) {
        match part {
            Part::Said(said) => say(connection, old, said, position, now)?,
            Part::Section(inner) => match found.pop_front().flatten() {
                Some(there) => {
                    place(connection, there, position)?;
                    done.kept += 1;
                    merge(connection, there, inner, now, done)?;
                }
                None => {
                    done.added += 1;
                    rows::insert(connection, id, position, inner)?;
                }
            },
        }
    }
    // A template's point that only the log speaks of is not in any file.
    for gone in there.iter().filter(|branch| branch.shape != Shape::Unwritten) {
        if let Some(gone) = gone.id.filter(|gone| !kept.contains(gone)) {
            done.gone += 1;
            rows::take_out(connection, gone, now)?;
        }
    }
    Ok(())
}

/// Says a key. What a pot holds, and when it was opened, may be the log's word; then the log hears of it.
fn say(connection: &Connection, old: &Branch, said: &Said, position: i64, now: Moment) -> Result<(), StoreError> {
    let Some(id) = old.id else { return Ok(()) };
    if old.kind == "pot" && matches!(said.key.as_str(), "left" | "opened") {
        if old.get(&said.key).is_some_and(|there| same(there, &said.value)) {
            // Nothing new: the log and what was typed before it stay, or else what the log moved would be counted twice.
            connection
                .prepare_cached("UPDATE said SET position = ?, before = ?, after = ? WHERE section = ? AND key = ?")?
                .execute(params![position, said.around.before, said.around.after, id.0, said.key])?;
            return Ok(());
        }
        said_of_pot(connection, id, &said.key, Some(&said.value), now)?;
    }
    rows::say(connection, id, position, said)
}

/// Whether two values as written say the same.
pub(crate) fn same(one: &str, other: &str) -> bool {
    let plain = |written| crate::Value::from_toml(written).plain();
    plain(one) == plain(other) || amount(one).is_some_and(|one| amount(other) == Some(one))
}

fn place(connection: &Connection, section: &Branch, position: i64) -> Result<(), StoreError> {
    if let Some(id) = section.id {
        connection.prepare_cached("UPDATE section SET position = ? WHERE id = ?")?.execute(params![position, id.0])?;
    }
    Ok(())
}

/// What must be alike in two sections for them to be the same, from the surest to the last resort.
fn marks(kind: &str) -> &'static [&'static [&'static str]] {
    match kind {
        "machine" => &[&["name", "template"], &["name"]],
        "point" => &[&["name"]],
        "work" => &[&["name", "job"], &["name"]],
        "pot" => &[&["fluid", "name", "lot", "bought", "size"], &["fluid", "name", "lot"], &["fluid", "name"], &["fluid"]],
        _ => &[&[]],
    }
}

/// For each of the new sections the one that was there and is the same, if any; of several alike, in order.
pub(crate) fn pairs<'a>(old: &[&'a Branch], new: &[&Branch]) -> VecDeque<Option<&'a Branch>> {
    let mut found: VecDeque<Option<&Branch>> = vec![None; new.len()].into();
    let mut taken: HashSet<SectionId> = HashSet::new();
    for round in 0..4 {
        let mut free: HashMap<Vec<Option<String>>, VecDeque<&'a Branch>> = HashMap::new();
        for branch in old.iter().filter(|branch| branch.id.is_some_and(|id| !taken.contains(&id))) {
            if let Some(mark) = mark(branch, round) {
                free.entry(mark).or_default().push_back(branch);
            }
        }
        if free.is_empty() {
            continue;
        }
        for (place, branch) in found.iter_mut().zip(new).filter(|(place, _)| place.is_none()) {
            *place = mark(branch, round).and_then(|mark| free.get_mut(&mark)?.pop_front());
            taken.extend(place.and_then(|branch| branch.id));
        }
    }
    found
}

fn mark(branch: &Branch, round: usize) -> Option<Vec<Option<String>>> {
    let keys = marks(&branch.kind).get(round)?;
    let mark: Vec<Option<String>> = keys.iter().map(|key| branch.text(key)).collect();
    // Two machines without a name of their own are alike only if all else is.
    let nameless = round > 0 && branch.kind != "pot" && mark.iter().all(Option::is_none);
    (!nameless).then(|| [Some(branch.kind.clone())].into_iter().chain(mark).collect())
}
