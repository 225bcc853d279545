//! The description as the shop's reader takes it: one text, one set of rules, and problems by section and key.

use std::collections::HashMap;

use reference::Reference;
use rusqlite::Connection;
use shop::{Kinds, Problem, Shop, Span};

use crate::branch::{Around, Branch, Part, Said};
use crate::text::{Places, written};
use crate::write::{amount, begin};
use crate::{Fault, SectionId, Store, StoreError, Value, rows, state, tally};

/// The longest description that is read. A cupboard file of the largest size becomes up to six times as long as a shop file, which writes
/// the name of each column before each cell.
pub const LARGEST_BYTES: usize = 64 << 20;

/// A shop, and which section each part of it came from.
#[derive(Debug, Clone)]
pub struct Described {
    /// The shop, with its pots as they stand now.
    pub shop: Shop,
    /// The shop file it was read from.
    pub text: String,
    /// The same without what the log says of the pots: as long as this stays the same, so does what was said of the shop.
    pub typed: String,
    places: Places,
    points: HashMap<(SectionId, String), SectionId>,
}

impl Described {
    /// The section behind the `at` of a machine, a piece of work or a pot. A template's point has the `at` of its machine; see
    /// [`point`](Self::point).
    #[must_use]
    pub fn section(&self, at: &Span) -> Option<SectionId> {
        self.places.find(at.start).map(|(section, _)| section)
    }

    /// The section of each pot, in the order of the shop.
    pub fn pots(&self) -> impl Iterator<Item = Option<SectionId>> {
        self.shop.pots.iter().map(|pot| self.section(&pot.at))
    }

    /// The section of a machine's point. A template's point has none before something is said or logged of it; [`Store::point`] makes one.
    #[must_use]
    pub fn point(&self, machine: SectionId, name: &str) -> Option<SectionId> {
        self.points.get(&(machine, name.to_owned())).copied()
    }
}

/// A section as it was typed, for a form or for the history.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SectionRow {
    /// Its number.
    pub id: SectionId,
    /// `machine`, `point`, `pot` …; empty for the whole.
    pub kind: String,
    /// The section it stands in.
    pub parent: Option<SectionId>,
    /// Whether it was taken out.
    pub gone: bool,
    /// What is said in it, in order.
    pub said: Vec<(String, Value)>,
    /// The sections in it that are not gone, in order.
    pub inside: Vec<SectionId>,
}

impl SectionRow {
    /// What is said for a key.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<&Value> {
        self.said.iter().find(|(known, _)| known == key).map(|(_, value)| value)
    }

    /// What people call it, also when it is gone: its name, else what it was made from.
    #[must_use]
    pub fn name(&self) -> String {
        let named = ["name", "template", "job", "fluid"].iter().find_map(|key| self.get(key));
        named.map_or_else(|| self.kind.clone(), Value::plain)
    }
}

impl Store {
    /// The shop as it is described, with its pots as they stand now.
    ///
    /// # Errors
    /// [`StoreError::Refused`] with what is wrong, section by section, when the description is not sound.
    pub fn shop(&self, reference: &Reference, kinds: Kinds<'_>) -> Result<Described, StoreError> {
        let transaction = self.connection.unchecked_transaction()?;
        read(&transaction, reference, kinds)?.map_err(StoreError::Refused)
    }

    /// The shop file, with its pots as they stand now.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn export(&self) -> Result<String, StoreError> {
        let transaction = self.connection.unchecked_transaction()?;
        Ok(written(&now(&transaction)?).0)
    }

    /// One section as it was typed, gone or not.
    ///
    /// # Errors
    /// When there is none of that number.
    pub fn section(&self, id: SectionId) -> Result<SectionRow, StoreError> {
        let transaction = self.connection.unchecked_transaction()?;
        let found = rows::find(&transaction, id)?.ok_or(StoreError::NoSection { section: id, wanted: "section" })?;
        let mut said = transaction.prepare_cached("SELECT key, value FROM said WHERE section = ? ORDER BY position")?;
        let said = said.query_map([id.0], |row| Ok((row.get(0)?, Value::from_toml(&row.get::<_, String>(1)?))))?;
        let mut inside = transaction.prepare_cached("SELECT id FROM section WHERE parent = ? AND gone IS NULL ORDER BY position, id")?;
        let inside = inside.query_map([id.0], |row| row.get(0).map(SectionId))?;
        Ok(SectionRow {
            id,
            kind: found.kind,
            parent: found.parent,
            gone: found.gone,
            said: said.collect::<Result<_, _>>()?,
            inside: inside.collect::<Result<_, _>>()?,
        })
    }

    /// The section of a machine's point by its name, made if need be: a template's point nobody has said anything about has none, and the
    /// log must be able to speak of it.
    ///
    /// # Errors
    /// When there is no such machine, or the file cannot be written.
    pub fn point(&mut self, machine: SectionId, name: &str) -> Result<SectionId, StoreError> {
        let transaction = begin(&mut self.connection)?;
        let point = point(&transaction, machine, name)?;
        transaction.commit()?;
        Ok(point)
    }
}

/// The section of a machine's point, made if need be.
pub(crate) fn point(connection: &Connection, machine: SectionId, name: &str) -> Result<SectionId, StoreError> {
    if rows::find(connection, machine)?.is_none_or(|found| found.kind != "machine" || found.gone) {
        return Err(StoreError::NoSection { section: machine, wanted: "machine" });
    }
    match rows::point(connection, machine, name)? {
        Some(point) => Ok(point),
        None => rows::insert(connection, machine, rows::end(connection, machine)?, &Branch::unwritten_point(name)),
    }
}

/// The tree with what the log says of the pots: what is left in them, and when they were opened.
pub(crate) fn now(connection: &Connection) -> Result<Branch, StoreError> {
    as_logged(connection, rows::load(connection)?)
}

fn as_logged(connection: &Connection, mut whole: Branch) -> Result<Branch, StoreError> {
    let (tallies, opened) = (tally::all(connection)?, state::opened(connection)?);
    for part in &mut whole.parts {
        let Part::Section(pot) = part else { continue };
        let Some(id) = pot.id.filter(|_| pot.kind == "pot") else { continue };
        if let Some(tally) = tallies.get(&id) {
            let typed = pot.get("left");
            let said = typed.and_then(amount);
            // What cannot be read stays, so that the reader can say so.
            let unread = typed.is_some() && said.is_none();
            if let Some(left) = tally.left(said).filter(|left| !unread && said != Some(left.amount)) {
                put(pot, "left", &Value::Text(left.amount.show_exact()));
            }
        }
        if let Some((day, _)) = opened.get(&id) {
            put(pot, "opened", &Value::Date(*day));
        }
    }
    Ok(whole)
}

fn put(pot: &mut Branch, key: &str, value: &Value) {
    let typed = pot.parts.iter_mut().find_map(|part| match part {
        Part::Said(said) if said.key == key => Some(said),
        _ => None,
    });
    match typed {
        Some(said) if Value::from_toml(&said.value).plain() == value.plain() => {}
        Some(said) => said.value = value.to_toml(),
        None => pot.parts.push(Part::Said(Said { key: key.to_owned(), value: value.to_toml(), around: Around::default() })),
    }
}

/// Reads the description; or what is wrong with it.
fn read(connection: &Connection, reference: &Reference, kinds: Kinds<'_>) -> Result<Result<Described, Vec<Fault>>, StoreError> {
    let whole = rows::load(connection)?;
    let (typed, _) = written(&whole);
    let whole = as_logged(connection, whole)?;
    let (text, places) = written(&whole);
    let shop = match shop::read_up_to(LARGEST_BYTES, text.as_bytes(), kinds, reference) {
        Ok(shop) => shop,
        Err(problems) => return Ok(Err(problems.into_iter().map(|problem| fault(problem, &places)).collect())),
    };
    let mut points = HashMap::new();
    for machine in whole.sections().filter(|section| section.kind == "machine") {
        for point in machine.sections().filter(|section| section.kind == "point") {
            if let (Some(machine), Some(point), Some(name)) = (machine.id, point.id, point.text("name")) {
                points.insert((machine, name), point);
            }
        }
    }
    Ok(Ok(Described { shop, text, typed, places, points }))
}

fn fault(problem: Problem, places: &Places) -> Fault {
    let place = problem.at.and_then(|at| places.find(at.start));
    let key = place.and_then(|(_, key)| key).map(ToOwned::to_owned);
    Fault { section: place.map(|(section, _)| section), key, change: None, what: problem.what, mend: problem.mend }
}

/// Changes the description and reads it; gives what the change gave, and what is wrong now that was not before. The caller drops the
/// transaction when there is anything.
pub(crate) fn change<T>(
    connection: &mut Connection,
    reference: &Reference,
    kinds: Kinds<'_>,
    apply: impl Fn(&Connection) -> Result<T, StoreError>,
    refuse: impl FnOnce(T, Vec<Fault>) -> StoreError,
) -> Result<T, StoreError> {
    let mut transaction = begin(connection)?;
    let trial = transaction.savepoint()?;
    let given = apply(&trial)?;
    let Err(mut faults) = read(&trial, reference, kinds)? else {
        trial.commit()?;
        transaction.commit()?;
        return Ok(given);
    };
    // Undone so as to see whether it was unsound before: then a change that makes nothing worse is taken, or nobody could mend it.
    drop(trial);
    if let Err(before) = read(&transaction, reference, kinds)? {
        faults.retain(|fault| !before.contains(fault));
    }
    if !faults.is_empty() {
        return Err(refuse(given, faults));
    }
    let given = apply(&transaction)?;
    transaction.commit()?;
    Ok(given)
}
