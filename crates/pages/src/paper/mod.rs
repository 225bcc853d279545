//! The sheets that hang on a wall: charts, the buying list, the round as a tick sheet, the cautions for the cupboard's door, labels, and a
//! worked calculation for a folder.
//!
//! They are drawn from the same plan as the pages. A sheet is seen through the browser, which prints it: its size is that of a style sheet,
//! and its page numbers and repeated headings are the browser's own. [`files`] writes the same with the style sheets inside, for whoever has
//! no pages open.
//!
//! **Invariant:** a sheet needs no colour, no script, and nothing that has to be pressed.

mod buying;
mod cautions;
mod chart;
mod file;
mod labels;
mod page;
mod round;
mod size;
mod sources;
mod worked;

use askama::filters::{Html, escape};
use jiff::civil::Date;
use reference::Reference;
use store::SectionId;

pub use file::{Files, PaperError, Written, address, files};
pub use labels::{Geometry, Labels};
pub(crate) use page::{bench, list, sheet};
pub use size::Size;
pub use worked::calculation;

use crate::frame::Piece;
use crate::worked::Worked;

/// A sheet of paper about the shop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sheet {
    /// The lubrication chart of each machine.
    Chart,
    /// What to buy, what is owned, what to buy again.
    Buying,
    /// The round of a month, to be ticked off.
    Round,
    /// What to mind, for the cupboard's door.
    Cautions,
    /// Labels for pots and bottles.
    Labels,
}

impl Sheet {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Chart, Self::Buying, Self::Round, Self::Cautions, Self::Labels];

    /// The word for it in addresses, options and names of files.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Chart => "chart",
            Self::Buying => "buying",
            Self::Round => "round",
            Self::Cautions => "cautions",
            Self::Labels => "labels",
        }
    }

    /// What stands over it.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Chart => "Lubrication charts",
            Self::Buying => "Buying list",
            Self::Round => "The round",
            Self::Cautions => "What to mind",
            Self::Labels => "Labels",
        }
    }

    /// What it is, in half a sentence.
    #[must_use]
    pub const fn about(self) -> &'static str {
        match self {
            Self::Chart => "of all machines, one to a sheet: what goes where, how much, how often",
            Self::Buying => "what to buy in which order, what is owned, what to buy again",
            Self::Round => "a month of boxes to tick",
            Self::Cautions => "for the cupboard's door",
            Self::Labels => "for pots, and for bottles filled from larger ones",
        }
    }

    /// The sheet of that word.
    #[must_use]
    pub fn of_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|sheet| sheet.word() == word)
    }
}

/// What sheets are drawn from.
pub(crate) struct Paper<'a> {
    worked: &'a Worked,
    reference: &'static Reference,
    today: Date,
    size: Size,
    /// The number of each pot, in the order of the shop; none where the shop is not kept.
    pots: &'a [Option<SectionId>],
    /// Below which address the pages are found.
    address: Option<&'a str>,
    /// What makes the sheets look as they do: links, or the style itself.
    styles: &'a str,
    /// The way back to the list; none in a file.
    back: Option<&'a str>,
}

/// What stands around every sheet.
struct Head {
    title: String,
    shop: String,
    today: String,
    /// What kind of sheet it is, for the style.
    kind: &'static str,
    size: Size,
    styles: Piece,
    back: Option<String>,
}

/// A day in words.
fn said(day: Date) -> String {
    day.strftime("%-d %B %Y").to_string()
}

impl Paper<'_> {
    /// What stands around a sheet about the whole shop.
    fn head_of(&self, sheet: Sheet) -> Head {
        self.head(sheet.title(), sheet.word())
    }

    fn head(&self, title: &str, kind: &'static str) -> Head {
        Head {
            title: title.to_owned(),
            shop: self.worked.report.shop.name.clone(),
            today: said(self.today),
            kind,
            size: self.size,
            styles: Piece(self.styles.to_owned()),
            back: self.back.map(str::to_owned),
        }
    }

    /// Draws one of the sheets; of the chart only that of one machine where one is named.
    fn draw(&self, sheet: Sheet, machine: Option<&str>, labels: &Labels) -> Result<String, askama::Error> {
        match sheet {
            Sheet::Chart => self.chart(machine),
            Sheet::Buying => self.buying(),
            Sheet::Round => self.round(),
            Sheet::Cautions => self.cautions(),
            Sheet::Labels => self.labels(labels),
        }
    }
}

/// Text within a picture.
fn escaped(text: &str) -> String {
    let Ok(safe) = escape(text, Html);
    safe.to_string()
}

/// A fluid's name, whose grade stays on one line, or a time with its unit.
fn unbroken(text: &str) -> String {
    text.replace("ISO VG ", "ISO\u{a0}VG\u{a0}").replace("NLGI ", "NLGI\u{a0}").replace(" h ", "\u{a0}h ")
}
