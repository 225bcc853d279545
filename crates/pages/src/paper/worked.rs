//! A worked calculation for a folder.

use askama::Template;
use bench::{Page as Answer, Sheet, StepRow};
use jiff::civil::Date;
use reference::Reference;

use super::file::styles;
use super::sources::Sources;
use super::{Head, Paper, PaperError, Size, said};
use crate::frame::Piece;
use crate::views::why::Step;
use crate::words::{quoted, sentence};

#[derive(Template)]
#[template(path = "paper/worked.html")]
struct Page<'a> {
    head: Head,
    about: String,
    page: &'a Answer,
    picture: Option<Piece>,
    cautions: Vec<(String, usize)>,
    steps: Vec<Line<'a>>,
    sources: Vec<String>,
}

/// A step of the working.
struct Line<'a> {
    /// The formula as it is set, or as text where it is too long for the page: a set formula has no second line.
    math: Result<Piece, &'a str>,
    symbol: &'a str,
    filled: String,
    source: usize,
}

/// As many letters of a formula as surely fit on a line.
const LINE: usize = 64;

impl Paper<'_> {
    /// A worked page of the bench.
    pub(super) fn worked(&self, sheet: &Sheet, page: &Answer) -> Result<String, PaperError> {
        draw(self.head(&sentence(sheet.kind.name), "worked"), sheet, page, self.reference)
    }
}

/// A worked page of the bench as a file that needs nothing else.
///
/// # Errors
/// [`PaperError::Fault`], which is the program's own.
pub fn calculation(sheet: &Sheet, page: &Answer, size: Size, today: Date) -> Result<String, PaperError> {
    let head = Head {
        title: sentence(sheet.kind.name),
        shop: "Gallipot".to_owned(),
        today: said(today),
        kind: "worked",
        size,
        styles: Piece(styles(size)),
        back: None,
    };
    draw(head, sheet, page, Reference::embedded())
}

fn draw(head: Head, sheet: &Sheet, page: &Answer, reference: &Reference) -> Result<String, PaperError> {
    let mut sources = Sources::default();
    let cautions = page.cautions.iter().map(|row| (quoted(&row.text), sources.number(&row.source))).collect();
    let steps = page.steps.iter().map(|row| line(row, sources.number(&row.source))).collect();
    let picture = page.svg().transpose().map_err(|error| PaperError::Fault(error.to_string()))?.map(Piece);
    let page = Page { head, about: sentence(sheet.kind.about), page, picture, cautions, steps, sources: sources.list(reference) };
    page.render().map_err(|error| PaperError::Fault(error.to_string()))
}

fn line(row: &StepRow, source: usize) -> Line<'_> {
    let Step { math, filled, .. } = Step::of_sheet(row);
    let short = row.formula.chars().count() <= LINE;
    Line { math: if short { Ok(math) } else { Err(&row.formula) }, symbol: &row.symbol, filled, source }
}
