//! The cupboard as a table, out and in.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Multipart, State};
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};
use planner::needs::kinds;
use shop::Pot;
use store::{BadRow, Cupboard, Moment, StoreError};

use crate::App;
use crate::frame::{Frame, form_html};
use crate::trouble::Trouble;
use crate::visitor::Visitor;
use crate::words::{in_words, quoted, sentence, several};

/// A larger table is refused before it is read; the store refuses it, too.
pub(crate) const LARGEST: usize = 9 << 20;

#[derive(Template)]
#[template(path = "table.html")]
struct Page {
    frame: Frame,
    columns: String,
    taken: Option<String>,
    count: String,
    wrong: Vec<String>,
}

fn draw(app: &Arc<App>, visitor: &Visitor, taken: Option<String>, count: String, wrong: Vec<String>) -> Result<Response, Trouble> {
    let frame = Frame::new(app, visitor, "Cupboard", "The cupboard as a table");
    let page = Page { frame, columns: Pot::KEYS.join(", "), taken, count, wrong };
    form_html(&page.wrong, &page)
}

pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        app.kept_now()?;
        draw(app, visitor, None, String::new(), Vec::new())
    })
    .await
}

/// The cupboard as CSV.
pub(crate) async fn out(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, _| {
        let text = app.stored(|store| store.export_cupboard())?;
        Ok(([(CONTENT_TYPE, "text/csv; charset=utf-8"), (CONTENT_DISPOSITION, "attachment; filename=\"cupboard.csv\"")], text)
            .into_response())
    })
    .await
}

/// Takes a table in, all of it or nothing.
pub(crate) async fn bring(State(app): State<Arc<App>>, visitor: Visitor, mut parts: Multipart) -> Response {
    let (mut file, mut how) = (Vec::new(), Cupboard::Add);
    let mut unread = None;
    loop {
        match parts.next_field().await {
            Ok(Some(part)) => {
                let name = part.name().unwrap_or_default().to_owned();
                match (name.as_str(), part.bytes().await) {
                    ("file", Ok(bytes)) => file = bytes.to_vec(),
                    ("how", Ok(bytes)) if bytes.as_ref() == b"replace" => how = Cupboard::Replace,
                    (_, Ok(_)) => {}
                    (_, Err(error)) => unread = Some(error.body_text()),
                }
            }
            Ok(None) => break,
            Err(error) => unread = Some(error.body_text()),
        }
        if unread.is_some() {
            break;
        }
    }
    app.draw(visitor, move |app, visitor| {
        if let Some(said) = unread {
            return draw(app, visitor, None, String::new(), vec![sentence(&format!("the table could not be read: {said}"))]);
        }
        let now = Moment::from(&app.now());
        let take = |store: &mut store::Store| store.import_cupboard(&file, how, app.reference, kinds(), now);
        match app.source.store(take).ok_or_else(Trouble::only_kept)? {
            Ok(taken) => {
                let (pots, missing) = (taken.pots, taken.missing);
                let left_out =
                    if missing.is_empty() { String::new() } else { format!(" Columns the table does not have: {}.", missing.join(", ")) };
                let said = format!("{} kept, {} added, {} taken out.{left_out}", several(pots.kept, "pot", "pots"), pots.added, pots.gone);
                draw(app, visitor, Some(said), String::new(), Vec::new())
            }
            Err(StoreError::BadRows(rows)) => {
                let more = if rows.len() > BadRow::SHOWN { format!("; the first {} are", BadRow::SHOWN) } else { String::new() };
                let count = format!("{}{more}:", several(rows.len(), "mistake", "mistakes"));
                draw(app, visitor, None, count, rows.iter().take(BadRow::SHOWN).map(|row| quoted(&row.to_string())).collect())
            }
            Err(error @ StoreError::Refused(_)) => draw(app, visitor, None, String::new(), vec![in_words(&error)]),
            Err(error) => Err(Trouble::from(error)),
        }
    })
    .await
}
