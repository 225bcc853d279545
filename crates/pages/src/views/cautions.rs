//! What to mind about the fluids owned and planned, in this room.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use handling::Worked;

use crate::App;
use crate::frame::{Frame, html};
use crate::visitor::Visitor;
use crate::words::sentence;

#[derive(Template)]
#[template(path = "cautions.html")]
struct Page<'a> {
    frame: Frame,
    rows: Vec<Row<'a>>,
}

struct Row<'a> {
    about: String,
    text: &'a str,
    source: &'a str,
    worked: Option<&'a Worked>,
}

pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let shop = app.source.shop()?;
        let frame = Frame::new(app, visitor, "Cupboard", "What to mind");
        let worked = app.plan(&shop, frame.units)?;
        let row = worked.report.cautions.iter().map(|row| Row {
            about: sentence(&row.about),
            text: &row.text,
            source: &row.source,
            worked: row.worked.as_ref(),
        });
        html(&Page { rows: row.collect(), frame })
    })
    .await
}
