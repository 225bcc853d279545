//! The log as a table, and as JSON.

use std::process::ExitCode;

use keep::{LogRow, row};
use schemars::JsonSchema;
use serde::Serialize;
use store::{Page, Store};
use units::System;

use super::Wanted;
use crate::input::Failure;
use crate::shell::print_json;
use crate::style::{lines, table};

/// What `log --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub struct LogReport {
    /// The entries, newest first.
    pub entries: Vec<LogRow>,
}

/// Lists the newest entries.
pub(super) fn run(wanted: &Wanted) -> Result<ExitCode, Failure> {
    let store = Store::open_read_only(&wanted.shop)?;
    let entries = store.log(Page { count: wanted.count, ..Page::default() })?;
    let report = LogReport { entries: entries.iter().map(|logged| row(&store, logged, System::Metric)).collect::<Result<_, _>>()? };
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
            row.how_much().unwrap_or_default(),
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
