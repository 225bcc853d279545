//! What can go wrong with a page, as a page of its own that says the way out.

use std::sync::Arc;

use askama::Template;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use keep::KeepError;
use planner::PlanError;
use shop::Problem;
use store::{Fault, SectionId, Store, StoreError};

use crate::App;
use crate::frame::{Frame, html};
use crate::guard::login::to;
use crate::source::Unsound;
use crate::visitor::Visitor;
use crate::words::{in_words, sentence};

/// Why there is no page.
#[derive(Debug)]
pub(crate) enum Trouble {
    /// There is no such thing; the words say what and where to look.
    NotFound(String),
    /// The shop file is not sound.
    Unsound(Arc<Unsound>),
    /// The shop file is sound, but its values contradict each other.
    Contradiction(Vec<Problem>),
    /// The shop can neither be read nor written just now; the words say why, and what to do.
    NotNow(String),
    /// What was asked has no answer; the words say why, and what to do.
    Unanswered(String),
    /// What was asked cannot be written; the words say why, and what to do.
    Refused(String),
    /// The program's own fault.
    Fault(String),
}

impl Trouble {
    /// Only a kept shop can do what was asked.
    pub(crate) fn only_kept() -> Self {
        let said = "These pages show a shop file, which is only read. Change the file, or let Gallipot keep the shop: \
                    `gallipot import` makes such a shop of the file, and `gallipot serve` opens it.";
        Self::NotFound(said.to_owned())
    }
}

impl From<&StoreError> for Trouble {
    fn from(error: &StoreError) -> Self {
        let said = in_words(error);
        match error {
            StoreError::Database(_) => Self::Fault(said),
            StoreError::NoSection { .. } | StoreError::NoEntry(_) => Self::NotFound(said),
            StoreError::ReadOnly
            | StoreError::Full
            | StoreError::Busy
            | StoreError::CutOff
            | StoreError::Damaged { .. }
            | StoreError::Missing { .. }
            | StoreError::Io { .. } => Self::NotNow(said),
            _ => Self::Refused(said),
        }
    }
}

impl From<StoreError> for Trouble {
    fn from(error: StoreError) -> Self {
        Self::from(&error)
    }
}

impl From<KeepError> for Trouble {
    fn from(error: KeepError) -> Self {
        match error {
            KeepError::Store(error) => Self::from(error),
            KeepError::Plan(error) => Self::from(error),
            KeepError::Round(error) => Self::Unanswered(in_words(&error)),
            KeepError::Weather(problem) => Self::Contradiction(vec![problem]),
            error => Self::Refused(in_words(&error)),
        }
    }
}

impl From<PlanError> for Trouble {
    fn from(error: PlanError) -> Self {
        match error {
            PlanError::Shop(found) => Self::Contradiction(found),
            PlanError::Ladder(error) => Self::Fault(error.to_string()),
        }
    }
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
    /// There is no shop file.
    kept: bool,
    problems: Vec<Row<'a>>,
}

/// One thing that is wrong.
struct Row<'a> {
    place: Place,
    /// The line as it stands in the file.
    shown: &'a str,
    what: &'a str,
    mend: &'a str,
}

/// Where something is wrong.
enum Place {
    /// In that line of the shop file.
    Line(usize),
    /// In a part of the kept shop: what it is called, and the address of its form.
    Part(String, String),
    /// In the file or the shop as a whole.
    Whole,
}

/// What a shop file needs.
const FILE: (&str, &str) = ("The shop file needs mending", "Mend the file and load this page again; it is read anew when it has changed.");
/// What a kept shop needs, of which there is no file to be written in.
const KEPT: (&str, &str) =
    ("What was said of the shop needs mending", "Mend each where it was said; then the other pages can be drawn again.");

impl Trouble {
    /// The page that says so.
    pub(crate) fn page(&self, app: &Arc<App>, visitor: &Visitor) -> Response {
        let unsound = || if app.source.is_kept() { KEPT } else { FILE };
        let (status, (title, said)) = match self {
            Self::NotFound(said) => (StatusCode::NOT_FOUND, ("Not here", said.as_str())),
            Self::Unsound(found) => match found.as_ref() {
                Unsound::Unreadable(said) => (StatusCode::UNPROCESSABLE_ENTITY, ("The shop cannot be read", said.as_str())),
                Unsound::Store(error) => return Self::from(error).page(app, visitor),
                Unsound::Empty => return to(format!("{}/start", app.settings.base_path.as_str())),
                Unsound::Problems { .. } | Unsound::Faults(_) => (StatusCode::UNPROCESSABLE_ENTITY, unsound()),
            },
            Self::Unanswered(said) => (StatusCode::UNPROCESSABLE_ENTITY, ("No answer for these values", said.as_str())),
            Self::Refused(said) => (StatusCode::UNPROCESSABLE_ENTITY, ("Nothing was written", said.as_str())),
            Self::NotNow(said) => (StatusCode::SERVICE_UNAVAILABLE, ("The shop cannot be read or written now", said.as_str())),
            Self::Contradiction(_) => (StatusCode::UNPROCESSABLE_ENTITY, unsound()),
            Self::Fault(fault) => {
                app.note(fault);
                let said =
                    "This is Gallipot's own fault. The other pages go on working; what happened stands where the server was started.";
                (StatusCode::INTERNAL_SERVER_ERROR, ("Something broke", said))
            }
        };
        let page = Page { frame: Frame::new(app, visitor, "", title), said, kept: app.source.is_kept(), problems: self.rows(app) };
        (status, html(&page).unwrap_or_else(|_| title.into_response())).into_response()
    }

    fn rows<'a>(&'a self, app: &App) -> Vec<Row<'a>> {
        match self {
            Self::Contradiction(found) => {
                let now = app.source.now().and_then(Result::ok);
                let section = |problem: &Problem| now.as_ref()?.described.section(problem.at.as_ref()?);
                found.iter().map(|problem| Row { place: part(app, section(problem)), ..row("", problem) }).collect()
            }
            Self::Unsound(unsound) => match unsound.as_ref() {
                Unsound::Problems { text, found } => found.iter().map(|problem| row(text, problem)).collect(),
                Unsound::Faults(found) => {
                    let row = |fault: &'a Fault| Row { place: part(app, fault.section), shown: "", what: &fault.what, mend: &fault.mend };
                    found.iter().map(row).collect()
                }
                Unsound::Unreadable(_) | Unsound::Store(_) | Unsound::Empty => Vec::new(),
            },
            _ => Vec::new(),
        }
    }
}

fn row<'a>(text: &'a str, problem: &'a Problem) -> Row<'a> {
    let before = problem.at.as_ref().and_then(|at| text.get(..at.start)).filter(|_| !text.is_empty());
    let line = before.map(|before| before.matches('\n').count() + 1);
    let shown = line.and_then(|line| text.lines().nth(line - 1)).unwrap_or("");
    Row { place: line.map_or(Place::Whole, Place::Line), shown, what: &problem.what, mend: &problem.mend }
}

/// A section of the kept shop by the form it is changed in: what the maker says is changed with the point.
fn part(app: &App, section: Option<SectionId>) -> Place {
    let find = |store: &mut Store| {
        let found = store.section(section?).ok()?;
        match found.parent.filter(|_| found.kind == "maker") {
            Some(point) => store.section(point).ok(),
            None => Some(found),
        }
    };
    match app.source.store(find).flatten() {
        Some(row) => {
            let name = if row.id == SectionId::WHOLE { "The shop".to_owned() } else { sentence(&row.name()) };
            Place::Part(name, format!("{}/part/{}", app.settings.base_path.as_str(), row.id.0))
        }
        None => Place::Whole,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Settings, ShopSource};

    /// The status of a trouble's page.
    fn status(trouble: &Trouble) -> StatusCode {
        let source = ShopSource::file("nowhere.toml".into());
        let app = App::new(source, Settings::local(([127, 0, 0, 1], 0).into()), |_| {}).unwrap();
        trouble.page(&app, &Visitor::default()).status()
    }

    #[test]
    fn a_file_that_somebody_else_writes_to_is_asked_again_later_however_one_came_to_it() {
        let busy = || StoreError::Busy;
        let all = [Trouble::from(busy()), Trouble::from(KeepError::Store(busy())), Trouble::from(Arc::new(Unsound::Store(busy())))];
        assert!(all.iter().all(|trouble| status(trouble) == StatusCode::SERVICE_UNAVAILABLE), "{all:?}");
    }

    #[tokio::test]
    async fn what_is_wrong_with_a_kept_shop_leads_to_its_form() {
        let folder = tempfile::tempdir().unwrap();
        let mut store = Store::create(&folder.path().join("shop.gallipot")).unwrap();
        let text = "[[machine]]\ntemplate = \"bench lathe\"\nname = \"lathe\"\n[[machine.point]]\nname = \"wick\"\nkind = \"bush\"\ndiameter = \"8 mm\"\n\
                    [machine.point.maker]\nuse = \"slideway-oil\"\n";
        let now = store::Moment::from(&jiff::ZonedDateTime::now());
        store.import(text.as_bytes(), reference::Reference::embedded(), planner::needs::kinds(), now).unwrap();
        let inside = |store: &Store, id| store.section(id).unwrap().inside.remove(0);
        let machine = inside(&store, SectionId::WHOLE);
        let point = inside(&store, machine);
        let maker = inside(&store, point);
        let app = App::new(ShopSource::kept(store), Settings::local(([127, 0, 0, 1], 0).into()), |_| {}).unwrap();
        let fault = |section| Fault { section, key: None, change: None, what: "it cannot be".to_owned(), mend: "Mend it.".to_owned() };
        let faults = vec![fault(Some(machine)), fault(Some(maker)), fault(None)];
        let page = Trouble::from(Arc::new(Unsound::Faults(faults))).page(&app, &Visitor::default());
        let text = axum::body::to_bytes(page.into_body(), 1 << 20).await.unwrap();
        let text = std::str::from_utf8(&text).unwrap();
        assert!(!text.contains("file"), "{text}");
        assert!(text.contains(&format!("<a href=\"/part/{}\">Lathe</a>", machine.0)), "{text}");
        assert!(text.contains(&format!("<a href=\"/part/{}\">Wick</a>", point.0)) && text.contains("The shop as a whole"), "{text}");
    }

    #[test]
    fn what_is_not_there_is_not_found_and_what_cannot_be_is_refused() {
        let none = StoreError::NoEntry(store::EntryId(9));
        assert_eq!(status(&Trouble::from(none)), StatusCode::NOT_FOUND);
        assert_eq!(status(&Trouble::from(KeepError::SamePot)), StatusCode::UNPROCESSABLE_ENTITY);
    }
}
