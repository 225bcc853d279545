//! The log: what was done, newest first, a page at a time.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use jiff::Timestamp;
use store::{EntryId, Page as Wanted, SectionId, Store, StoreError};
use units::System;

use super::done::{Told, entry_told};
use crate::App;
use crate::frame::{Frame, html};
use crate::trouble::Trouble;
use crate::visitor::Visitor;

/// How many entries one page shows.
const ON_A_PAGE: u32 = 50;

/// A place in the log: what came before it stands on the next page.
type Place = (Timestamp, EntryId);

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
        let (entries, last) = app.source.store(read).ok_or_else(Trouble::only_kept)??;
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
    Ok((found.iter().map(|logged| entry_told(store, logged, units)).collect::<Result<_, _>>()?, last))
}
