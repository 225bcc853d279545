//! The bibliography, with how far each entry may be believed.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use reference::{Source, Standing};

use crate::App;
use crate::frame::{Frame, MAKER, html};
use crate::visitor::Visitor;

#[derive(Template)]
#[template(path = "sources.html")]
struct Page<'a> {
    frame: Frame,
    parts: Vec<Part<'a>>,
    maker: (&'static str, &'static str, &'static str),
}

struct Part<'a> {
    title: &'static str,
    about: &'static str,
    sources: Vec<&'a Source>,
}

const PARTS: [(Standing, &str, &str); 3] = [
    (Standing::Published, "Published", "Standards, handbooks, papers and government tables that anybody can look up."),
    (
        Standing::CommonPractice,
        "Common practice",
        "The trade does it so, and nobody has to publish it. What your own machine and product say comes first.",
    ),
    (
        Standing::FromMemory,
        "From memory",
        "Written down from memory of a published source, and not yet compared with it. Check before you lean on it.",
    ),
];

pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let of = |standing: Standing| app.reference.sources.values().filter(|source| source.standing == standing).collect();
        let parts = PARTS.into_iter().map(|(standing, title, about)| Part { title, about, sources: of(standing) });
        html(&Page { frame: Frame::new(app, visitor, "Bench", "Sources"), parts: parts.collect(), maker: MAKER })
    })
    .await
}
