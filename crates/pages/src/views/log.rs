//! The log: what was done, newest first, a page at a time.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use jiff::Timestamp;
use jiff::civil::Date;
use store::{EntryId, Logged, Page as Wanted, SectionId, Store, StoreError};
use units::System;

use crate::App;
use crate::frame::{Frame, html};
use crate::visitor::Visitor;
use crate::words::sentence;

/// How many entries one page shows.
const ON_A_PAGE: u32 = 50;

/// A place in the log: what came before it stands on the next page.
type Place = (Timestamp, EntryId);

/// An entry of the log in words.
pub(crate) struct Told {
    pub entry: i64,
    pub day: Date,
    /// What was done, where, and how much.
    pub what: String,
    /// Whatever else was said of it.
    pub more: String,
    /// It can be taken back.
    pub stands: bool,
}

#[derive(Template)]
#[template(path = "log.html")]
struct Page {
    frame: Frame,
    entries: Vec<Told>,
    older: Option<String>,
}

pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let frame = Frame::new(app, visitor, "Today", "The log");
        let before = visitor.typed("before").and_then(|text| {
            let (at, id) = text.split_once('-')?;
            Some((Timestamp::from_millisecond(at.parse().ok()?).ok()?, EntryId(id.parse().ok()?)))
        });
        let read = |store: &mut Store| entries(store, None, before, frame.units);
        let (entries, last) = app.stored(read)?;
        let older = last.map(|(at, EntryId(id))| format!("{}/log?before={}-{id}", frame.base, at.as_millisecond()));
        html(&Page { entries, older, frame })
    })
    .await
}

/// A page of entries, about one part of the shop or all; and where the next page begins, if there may be one.
pub(crate) fn entries(
    store: &Store,
    about: Option<SectionId>,
    before: Option<Place>,
    units: System,
) -> Result<(Vec<Told>, Option<Place>), StoreError> {
    let found = store.log(Wanted { about, before, count: ON_A_PAGE })?;
    let last = found.last().filter(|_| u32::try_from(found.len()).is_ok_and(|count| count == ON_A_PAGE));
    let last = last.map(|logged| (logged.entry.when.at(), logged.id));
    Ok((found.iter().map(|logged| told(store, logged, units)).collect::<Result<_, _>>()?, last))
}

/// An entry in words.
pub(crate) fn told(store: &Store, logged: &Logged, units: System) -> Result<Told, StoreError> {
    let row = keep::row(store, logged, units)?;
    let amount = row.how_much().map(|amount| format!(", {amount}")).unwrap_or_default();
    let place = row.place.map(|place| format!(": {place}")).unwrap_or_default();
    let undoes = row.undoes.map(|entry| format!(" entry {entry}")).unwrap_or_default();
    let pot = row.pot.map(|pot| format!("from {pot}"));
    let read = row.hours.map(|hours| format!("meter at {hours} h"));
    let undone = row.undone_by.map(|by| format!("taken back by entry {by}"));
    let more = [pot, read, row.who, row.note, undone].into_iter().flatten().collect::<Vec<_>>().join("; ");
    Ok(Told {
        entry: row.id,
        day: logged.entry.when.day(),
        what: format!("{}{undoes}{place}{amount}", sentence(row.what)),
        more,
        stands: row.undone_by.is_none() && row.undoes.is_none(),
    })
}
