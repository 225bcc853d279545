//! The log as a table, and as JSON.

use std::process::ExitCode;

use schemars::JsonSchema;
use serde::Serialize;
use store::{Logged, Page, SectionId, Store, StoreError, What};
use units::Amount;

use super::Wanted;
use crate::input::Failure;
use crate::keep::hours;
use crate::shell::print_json;
use crate::style::{lines, table};

/// What `log --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub struct LogReport {
    /// The entries, newest first.
    pub entries: Vec<LogRow>,
}

/// One entry.
#[derive(Debug, Serialize, JsonSchema)]
pub struct LogRow {
    /// Its number.
    pub id: i64,
    /// The day, where the shop stands.
    pub day: String,
    /// The instant, in universal time.
    pub at: String,
    /// What was done.
    pub what: &'static str,
    /// Where, or with which pot.
    pub place: Option<String>,
    /// The pot it was taken from.
    pub pot: Option<String>,
    /// How much.
    pub amount: Option<String>,
    /// Key of the fluid.
    pub fluid: Option<String>,
    /// What the hour meter showed.
    pub hours: Option<f64>,
    /// Who did it.
    pub who: Option<String>,
    /// Anything to remember.
    pub note: Option<String>,
    /// The entry it takes back.
    pub undoes: Option<i64>,
    /// The entry that takes it back.
    pub undone_by: Option<i64>,
}

/// Lists the newest entries.
pub(super) fn run(wanted: &Wanted) -> Result<ExitCode, Failure> {
    let store = Store::open_read_only(&wanted.shop)?;
    let entries = store.log(Page { count: wanted.count, ..Page::default() })?;
    let report = LogReport { entries: entries.iter().map(|logged| row(&store, logged)).collect::<Result<_, _>>()? };
    if wanted.json {
        return print_json(&report);
    }
    let mut table = table(&["", "day", "what", "where", "how much", "note"]);
    for row in &report.entries {
        let undone = row.undone_by.map(|by| format!("undone by {by}"));
        let hours = row.hours.map(|hours| format!("meter at {hours} h"));
        let notes = [undone, hours, row.pot.as_ref().map(|pot| format!("from {pot}")), row.who.clone(), row.note.clone()];
        table.add_row([
            row.id.to_string(),
            row.day.clone(),
            row.what.to_owned(),
            row.place.clone().or_else(|| row.undoes.map(|entry| format!("entry {entry}"))).unwrap_or_default(),
            row.amount.clone().unwrap_or_default(),
            notes.into_iter().flatten().collect::<Vec<_>>().join("; "),
        ]);
    }
    if report.entries.is_empty() {
        anstream::println!("Nothing was written yet. `gallipot log SHOP applied --point MACHINE/POINT` writes what was done.");
    } else {
        anstream::println!("{}", lines(&mut table));
    }
    Ok(ExitCode::SUCCESS)
}

/// An entry in words.
pub(super) fn row(store: &Store, logged: &Logged) -> Result<LogRow, StoreError> {
    let name = |section: SectionId| store.section(section).map(|row| row.name());
    let place = |section: SectionId| {
        let row = store.section(section)?;
        Ok::<_, StoreError>(match row.parent.filter(|parent| row.kind == "point" && *parent != SectionId::WHOLE) {
            Some(parent) => format!("{}/{}", name(parent)?, row.name()),
            None => row.name(),
        })
    };
    let entry = &logged.entry;
    let mut undoes = None;
    let (what, at, pot, amount): (_, Option<SectionId>, Option<SectionId>, Option<Amount>) = match entry.what {
        What::Applied { point, pot, amount } => ("applied", Some(point), pot, amount),
        What::ToppedUp { point, pot, amount } => ("topped up", Some(point), pot, amount),
        What::Opened { pot } => ("opened", Some(pot), None, None),
        What::Decanted { from, into, amount } => ("decanted", Some(into), Some(from), Some(amount)),
        What::Counted { pot, left } => ("counted", Some(pot), None, Some(left)),
        What::Bought { pot, amount } => ("bought", Some(pot), None, amount),
        What::Discarded { pot, amount } => ("discarded", Some(pot), None, amount),
        What::MeterRead { machine, .. } => ("meter read", Some(machine), None, None),
        What::Undone { entry } => {
            undoes = Some(entry.0);
            ("undone", None, None, None)
        }
    };
    let read = if let What::MeterRead { hours, .. } = entry.what { Some(hours) } else { entry.hours };
    Ok(LogRow {
        id: logged.id.0,
        day: entry.when.day().to_string(),
        at: entry.when.at().to_string(),
        what,
        place: at.map(place).transpose()?,
        pot: pot.map(name).transpose()?,
        amount: amount.map(|amount| amount.show(units::System::Metric)),
        fluid: entry.fluid.clone(),
        hours: read.map(hours),
        who: entry.who.clone(),
        note: entry.note.clone(),
        undoes,
        undone_by: logged.undone_by.map(|by| by.0),
    })
}
