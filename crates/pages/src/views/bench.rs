//! The bench: the list of sheets, and each sheet as a form with its worked page.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Path, State};
use axum::response::Response;
use bench::{Page as Worked, Refusal, Sheet, read, sheet, sheets};

use super::why::Step;
use crate::App;
use crate::form::sheet::{controls, typed};
use crate::form::{Control, Input, List, lists};
use crate::frame::{Frame, Piece, html};
use crate::trouble::Trouble;
use crate::visitor::Visitor;
use crate::words::{in_words, quoted, sentence};

#[derive(Template)]
#[template(path = "bench.html")]
struct All {
    frame: Frame,
    sheets: Vec<(&'static str, String)>,
}

#[derive(Template)]
#[template(path = "sheet.html")]
struct Page<'a> {
    frame: Frame,
    name: &'static str,
    about: String,
    controls: Vec<Control>,
    lists: Vec<List<'a>>,
    /// What is wrong as a whole, though every answer can be read.
    unanswered: Option<String>,
    wrong: usize,
    answered: Option<Answered>,
    /// The address of the same on paper.
    paper: String,
}

struct Answered {
    page: Worked,
    picture: Option<Piece>,
    steps: Vec<Step>,
}

pub(crate) async fn list_page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let sheets = sheets().iter().map(|sheet| (sheet.kind.name, sentence(sheet.kind.about)));
        html(&All { frame: Frame::new(app, visitor, "Bench", "Bench"), sheets: sheets.collect() })
    })
    .await
}

pub(crate) async fn page(State(app): State<Arc<App>>, Path(name): Path<String>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| {
        let unknown = || Trouble::NotFound(format!("There is no sheet called “{name}”. The bench lists all there are."));
        let sheet = sheet(&name).ok_or_else(unknown)?;
        let frame = Frame::new(app, visitor, "Bench", sentence(sheet.kind.name));
        let given = typed(sheet, visitor);
        // A form that was sent empty is a question too.
        let asked = !visitor.asked.is_empty();
        let outcome = if asked { Some(work(app, sheet, &given, &frame)?) } else { None };
        let (answered, refused, unanswered) = match outcome {
            None => (None, Vec::new(), None),
            Some(Outcome::Worked(answered)) => (Some(*answered), Vec::new(), None),
            Some(Outcome::Refused(refused)) => (None, refused, None),
            Some(Outcome::Unanswered(said)) => (None, Vec::new(), Some(said)),
        };
        let controls = controls(sheet, &given, &refused, app.reference, frame.units);
        html(&Page {
            name: sheet.kind.name,
            about: sentence(sheet.kind.about),
            lists: lists(&controls, app.reference),
            controls,
            unanswered,
            wrong: refused.len(),
            answered,
            paper: format!("{}/paper{}", frame.base, visitor.at),
            frame,
        })
    })
    .await
}

enum Outcome {
    Worked(Box<Answered>),
    Refused(Vec<Refusal>),
    Unanswered(String),
}

fn work(app: &App, sheet: &Sheet, given: &[(&'static str, String)], frame: &Frame) -> Result<Outcome, Trouble> {
    let given: Vec<(&str, &str)> = given.iter().map(|(name, value)| (*name, value.as_str())).collect();
    let reply = match read(sheet, &given, app.reference) {
        Ok(reply) => reply,
        Err(refused) => return Ok(Outcome::Refused(refused)),
    };
    let mut page = match sheet.work(&reply, app.reference, frame.units) {
        Ok(page) => page,
        Err(unanswered) => return Ok(Outcome::Unanswered(in_words(&unanswered))),
    };
    let picture = page.svg().transpose().map_err(|error| Trouble::Fault(error.to_string()))?;
    for caution in &mut page.cautions {
        caution.text = quoted(&caution.text);
    }
    let steps = page.steps.iter().map(Step::of_sheet).collect();
    Ok(Outcome::Worked(Box::new(Answered { picture: picture.map(Piece), steps, page })))
}
