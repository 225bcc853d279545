//! A worked calculation for a folder.

use askama::Template;
use bench::{Page as Answer, StepRow};

use super::sources::Sources;
use super::{Head, Paper};
use crate::frame::Piece;
use crate::views::why::Step;

#[derive(Template)]
#[template(path = "paper/worked.html")]
struct Page<'a> {
    head: Head,
    about: String,
    page: &'a Answer,
    picture: Option<Piece>,
    cautions: Vec<(&'a str, usize)>,
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
    pub(super) fn worked(&self, title: &str, about: String, page: &Answer, picture: Option<String>) -> Result<String, askama::Error> {
        let mut sources = Sources::default();
        let cautions = page.cautions.iter().map(|row| (row.text.as_str(), sources.number(&row.source))).collect();
        let steps = page.steps.iter().map(|row| line(row, sources.number(&row.source))).collect();
        let (picture, sources) = (picture.map(Piece), sources.list(self.reference));
        Page { head: self.head(title, "worked"), about, page, picture, cautions, steps, sources }.render()
    }
}

fn line(row: &StepRow, source: usize) -> Line<'_> {
    let Step { math, filled, .. } = Step::of_sheet(row);
    let short = row.formula.chars().count() <= LINE;
    Line { math: if short { Ok(math) } else { Err(&row.formula) }, symbol: &row.symbol, filled, source }
}
