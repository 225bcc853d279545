//! What can go wrong with a page, as a page of its own that says the way out.

use std::sync::Arc;

use askama::Template;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use shop::Problem;

use crate::App;
use crate::frame::{Frame, html};
use crate::source::Unsound;
use crate::visitor::Visitor;

/// Why there is no page.
#[derive(Debug)]
pub(crate) enum Trouble {
    /// There is no such thing; the words say what and where to look.
    NotFound(String),
    /// The shop file is not sound.
    Unsound(Arc<Unsound>),
    /// The shop file is sound, but its values contradict each other.
    Contradiction(Vec<Problem>),
    /// The program's own fault.
    Fault(String),
}

impl From<Arc<Unsound>> for Trouble {
    fn from(unsound: Arc<Unsound>) -> Self {
        Self::Unsound(unsound)
    }
}

impl From<askama::Error> for Trouble {
    fn from(error: askama::Error) -> Self {
        Self::Fault(error.to_string())
    }
}

#[derive(Template)]
#[template(path = "trouble.html")]
struct Page<'a> {
    frame: Frame,
    said: &'a str,
    problems: Vec<Row<'a>>,
}

struct Row<'a> {
    line: Option<usize>,
    shown: &'a str,
    what: &'a str,
    mend: &'a str,
}

impl Trouble {
    /// The page that says so.
    pub(crate) fn page(&self, app: &Arc<App>, visitor: &Visitor) -> Response {
        const FILE: &str = "Mend the file and load this page again; it is read anew when it has changed.";
        let (status, title, said) = match self {
            Self::NotFound(said) => (StatusCode::NOT_FOUND, "Not here", said.as_str()),
            Self::Unsound(unsound) => match unsound.as_ref() {
                Unsound::Unreadable(said) => (StatusCode::UNPROCESSABLE_ENTITY, "The shop cannot be read", said.as_str()),
                Unsound::Problems { .. } => (StatusCode::UNPROCESSABLE_ENTITY, "The shop file needs mending", FILE),
            },
            Self::Contradiction(_) => (StatusCode::UNPROCESSABLE_ENTITY, "The shop file needs mending", FILE),
            Self::Fault(fault) => {
                app.note(fault);
                let said =
                    "This is Gallipot's own fault. The other pages go on working; what happened stands where the server was started.";
                (StatusCode::INTERNAL_SERVER_ERROR, "Something broke", said)
            }
        };
        let page = Page { frame: Frame::new(app, visitor, "", title), said, problems: self.rows() };
        (status, html(&page).unwrap_or_else(|_| title.into_response())).into_response()
    }

    fn rows(&self) -> Vec<Row<'_>> {
        let (text, found) = match self {
            Self::Contradiction(found) => ("", found),
            Self::Unsound(unsound) => match unsound.as_ref() {
                Unsound::Problems { text, found } => (text.as_str(), found),
                Unsound::Unreadable(_) => return Vec::new(),
            },
            _ => return Vec::new(),
        };
        let row = |problem| row(text, problem);
        found.iter().map(row).collect()
    }
}

fn row<'a>(text: &'a str, problem: &'a Problem) -> Row<'a> {
    let before = problem.at.as_ref().and_then(|at| text.get(..at.start)).filter(|_| !text.is_empty());
    let line = before.map(|before| before.matches('\n').count() + 1);
    let shown = line.and_then(|line| text.lines().nth(line - 1)).unwrap_or("");
    Row { line, shown, what: &problem.what, mend: &problem.mend }
}
