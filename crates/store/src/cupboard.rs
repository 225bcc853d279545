//! The cupboard as a table for spreadsheets, and back.

use std::collections::{HashMap, HashSet};

use csv::{ReaderBuilder, StringRecord, WriterBuilder};
use reference::Reference;
use rusqlite::Connection;
use shop::{Kinds, Pot};

use crate::branch::{Around, Branch, Part, Said, Shape};
use crate::description::{change, now as as_it_stands};
use crate::merge::{merge, pairs, same};
use crate::{BadRow, Fault, Imported, Moment, SectionId, Store, StoreError, Value, rows};

/// What becomes of the pots that are there when a cupboard file is taken in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cupboard {
    /// They stay, and the file's are put beside them.
    Add,
    /// The file is the cupboard: pots that are in both keep their history, the others are taken out.
    Replace,
}

/// What was taken in.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Taken {
    /// Pots kept, added and taken out.
    pub pots: Imported,
    /// Columns the file does not have; pots that were there keep what they say of them.
    pub missing: Vec<&'static str>,
}

/// The largest file taken in: a hundred thousand pots.
const LARGEST_BYTES: usize = 8 << 20;

/// A cell that begins so is a formula to a spreadsheet.
const FORMULA: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];

impl Store {
    /// The cupboard as CSV (RFC 4180), with the pots as they stand now. A cell that a spreadsheet would take for a formula has an
    /// apostrophe before it.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn export_cupboard(&self) -> Result<String, StoreError> {
        let whole = as_it_stands(&*self.connection.unchecked_transaction()?)?;
        let mut table = WriterBuilder::new().from_writer(Vec::new());
        let rows = whole.sections().filter(|section| section.kind == "pot");
        let rows = rows.map(|pot| Pot::KEYS.map(|key| guarded(pot.text(key).unwrap_or_default())));
        // Writing into memory cannot fail.
        let written = [Pot::KEYS.map(ToOwned::to_owned)].into_iter().chain(rows).try_for_each(|row| table.write_record(row));
        let bytes = written.ok().and_then(|()| table.into_inner().ok()).unwrap_or_default();
        Ok(String::from_utf8(bytes).unwrap_or_default())
    }

    /// Takes in a cupboard file, after a backup; all of it or nothing.
    ///
    /// # Errors
    /// [`StoreError::BadRows`] with every bad row; then nothing is changed.
    pub fn import_cupboard(
        &mut self,
        file: &[u8],
        how: Cupboard,
        reference: &Reference,
        kinds: Kinds<'_>,
        now: Moment,
    ) -> Result<Taken, StoreError> {
        let table = Table::read(file).map_err(StoreError::BadRows)?;
        self.backup(now)?;
        let apply = |connection: &Connection| table.put(connection, how, now);
        let refuse = |(_, lines): (Imported, HashMap<SectionId, u64>), faults: Vec<Fault>| {
            let line = |fault: &Fault| fault.section.and_then(|section| lines.get(&section)).copied();
            if faults.iter().any(|fault| line(fault).is_none()) {
                return StoreError::Refused(faults);
            }
            let row = |fault: Fault| BadRow { line: line(&fault).unwrap_or(0), column: fault.key, what: fault.what, mend: fault.mend };
            StoreError::BadRows(faults.into_iter().map(row).collect())
        };
        let (pots, _) = change(&mut self.connection, reference, kinds, apply, refuse)?;
        Ok(Taken { pots, missing: table.missing() })
    }
}

/// A cupboard file whose form is sound.
struct Table {
    columns: Vec<&'static str>,
    pots: Vec<(u64, Branch)>,
}

impl Table {
    fn read(file: &[u8]) -> Result<Self, Vec<BadRow>> {
        if file.len() > LARGEST_BYTES {
            let what = format!("the file is {} MiB long; a cupboard file has {} MiB at most", file.len() >> 20, LARGEST_BYTES >> 20);
            return Err(vec![bad(1, None, what, "Check that this is the file you meant.")]);
        }
        // Spreadsheets like to begin with a byte-order mark.
        let file = file.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(file);
        let mut reader = ReaderBuilder::new().has_headers(false).flexible(true).from_reader(file);
        let mut columns = Vec::new();
        let (mut pots, mut wrong) = (Vec::new(), Vec::new());
        for record in reader.records() {
            match record {
                Err(error) => {
                    let line = error.position().map_or(1, csv::Position::line);
                    wrong.push(bad(line, None, "the row is not text".to_owned(), "Save the table as CSV in UTF-8."));
                }
                Ok(record) if columns.is_empty() => columns = header(&record, &mut wrong),
                Ok(record) => row(&record, &columns, &mut pots, &mut wrong),
            }
            if columns.is_empty() {
                break;
            }
        }
        if columns.is_empty() && wrong.is_empty() {
            wrong.push(bad(1, None, "the file is empty".to_owned(), &format!("Begin with a row of names: {}.", Pot::KEYS.join(","))));
        }
        if wrong.is_empty() { Ok(Self { columns, pots }) } else { Err(wrong) }
    }

    fn missing(&self) -> Vec<&'static str> {
        Pot::KEYS.into_iter().filter(|key| !self.columns.contains(key)).collect()
    }

    /// Puts the pots into the description; gives the line each came from.
    fn put(&self, connection: &Connection, how: Cupboard, now: Moment) -> Result<(Imported, HashMap<SectionId, u64>), StoreError> {
        let whole = as_it_stands(connection)?;
        let there: Vec<&Branch> = whole.sections().filter(|section| section.kind == "pot" && how == Cupboard::Replace).collect();
        let wanted: Vec<&Branch> = self.pots.iter().map(|(_, pot)| pot).collect();
        let (mut done, mut lines, mut kept) = (Imported::default(), HashMap::new(), HashSet::new());
        let end = rows::end(connection, SectionId::WHOLE)?;
        for ((position, (line, new)), old) in (end..).zip(&self.pots).zip(pairs(&there, &wanted)) {
            let id = match old.and_then(|old| Some((old, old.id?))) {
                Some((old, id)) => {
                    done.kept += 1;
                    merge(connection, old, &self.over(old, new), now, &mut Imported::default())?;
                    kept.insert(id);
                    id
                }
                None => {
                    done.added += 1;
                    rows::insert(connection, SectionId::WHOLE, position, new)?
                }
            };
            lines.insert(id, *line);
        }
        for gone in there.iter().filter_map(|pot| pot.id).filter(|id| !kept.contains(id)) {
            done.gone += 1;
            rows::take_out(connection, gone, now)?;
        }
        Ok((done, lines))
    }

    /// A row over the pot that was there: the pot keeps its comments, and what the table has no column for.
    fn over(&self, old: &Branch, new: &Branch) -> Branch {
        let mut parts: Vec<Part> = Vec::new();
        for said in old.said() {
            match new.said().find(|new| new.key == said.key) {
                Some(new) if same(&said.value, &new.value) => parts.push(Part::Said(said.clone())),
                Some(new) => parts.push(Part::Said(Said { around: said.around.clone(), ..new.clone() })),
                None if !self.columns.iter().any(|column| *column == said.key) => parts.push(Part::Said(said.clone())),
                None => {}
            }
        }
        parts.extend(new.said().filter(|new| old.get(&new.key).is_none()).cloned().map(Part::Said));
        Branch { around: old.around.clone(), parts, ..new.clone() }
    }
}

fn header(record: &StringRecord, wrong: &mut Vec<BadRow>) -> Vec<&'static str> {
    let mut columns = Vec::new();
    for cell in record {
        let name = cell.trim().to_lowercase();
        match Pot::KEYS.into_iter().find(|key| *key == name) {
            Some(key) if columns.contains(&key) => {
                wrong.push(bad(1, Some(key), format!("the column `{key}` is there twice"), "Keep one of the two."));
            }
            Some(key) => columns.push(key),
            None => {
                let mend = format!("A cupboard file has the columns {}, parted by commas, in any order.", Pot::KEYS.join(", "));
                wrong.push(bad(1, Some(cell.trim()), format!("the column `{}` is not known here", cell.trim()), &mend));
            }
        }
    }
    if !columns.contains(&"fluid") && wrong.is_empty() {
        wrong.push(bad(1, Some("fluid"), "the column `fluid` is missing".to_owned(), "Add it: what is in each pot."));
    }
    if wrong.is_empty() { columns } else { Vec::new() }
}

fn row(record: &StringRecord, columns: &[&'static str], pots: &mut Vec<(u64, Branch)>, wrong: &mut Vec<BadRow>) {
    let line = record.position().map_or(0, csv::Position::line);
    // Spreadsheets write rows of nothing but commas below the last one.
    if record.iter().all(|cell| cell.trim().is_empty()) {
        return;
    }
    if record.len() != columns.len() {
        let what = format!("the row has {} cells and the table {} columns", record.len(), columns.len());
        wrong.push(bad(line, None, what, "Put a text with a comma in it between quotation marks."));
        return;
    }
    let cells = columns.iter().zip(record).map(|(key, cell)| (key, unguarded(cell))).filter(|(_, cell)| !cell.trim().is_empty());
    let said = cells.map(|(key, cell)| Said { key: (*key).to_owned(), value: Value::Text(cell).to_toml(), around: Around::default() });
    let around = Around { before: "\n".to_owned(), after: String::new() };
    let parts = said.map(Part::Said).collect();
    pots.push((line, Branch { id: None, kind: "pot".to_owned(), shape: Shape::List, around, parts }));
}

fn bad(line: u64, column: Option<&str>, what: String, mend: &str) -> BadRow {
    BadRow { line, column: column.map(ToOwned::to_owned), what, mend: mend.to_owned() }
}

/// With an apostrophe before what a spreadsheet would work out; also before one that has such apostrophes of its own.
fn guarded(cell: String) -> String {
    if cell.trim_start_matches('\'').starts_with(FORMULA) { format!("'{cell}") } else { cell }
}

fn unguarded(cell: &str) -> String {
    let bare = cell.strip_prefix('\'').filter(|_| cell.trim_start_matches('\'').starts_with(FORMULA));
    bare.unwrap_or(cell).to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_guard_comes_off_as_it_went_on(cell in "['=+@a\t -]{0,5}") {
            let guarded = guarded(cell.clone());
            prop_assert!(!guarded.starts_with(FORMULA));
            prop_assert_eq!(unguarded(&guarded), cell);
        }
    }
}
