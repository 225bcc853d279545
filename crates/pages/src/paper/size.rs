//! Sizes of paper.

use units::System;

/// A size of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Size {
    /// 210 mm by 297 mm; ISO 216.
    A4,
    /// 8½ in by 11 in; ANSI/ASME Y14.1.
    Letter,
}

impl Size {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::A4, Self::Letter];

    /// The word for it in addresses and options.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
        }
    }

    /// The size of that word.
    #[must_use]
    pub fn of_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|size| size.word() == word)
    }

    /// What people call it.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "Letter",
        }
    }

    /// The one that is usual where people measure so.
    #[must_use]
    pub fn usual(units: System) -> Self {
        if units == System::Inch { Self::Letter } else { Self::A4 }
    }

    /// Width and height, mm.
    pub(crate) const fn mm(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0, 297.0),
            Self::Letter => (215.9, 279.4),
        }
    }

    /// Its style sheet.
    pub(crate) const fn style(self) -> &'static str {
        match self {
            Self::A4 => "paper-a4.css",
            Self::Letter => "paper-letter.css",
        }
    }
}
