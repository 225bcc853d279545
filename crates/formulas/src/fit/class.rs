//! Tolerance classes as people write them: `H7`, `g6`, `JS7`.

use std::fmt;
use std::str::FromStr;

use crate::error::FormulaError;

/// Whether a class is of a hole or of a shaft.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Feature {
    /// An inside size; its class has a capital.
    Hole,
    /// An outside size.
    Shaft,
}

macro_rules! letters {
    ($($letter:ident = $text:literal),+) => {
        /// Where a tolerance zone lies, by the letter of ISO 286.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Letter {
            $(#[doc = concat!("`", $text, "`.")] $letter),+
        }

        impl Letter {
            /// Every letter, from the widest gap to the tightest press.
            pub const ALL: &[Self] = &[$(Self::$letter),+];

            /// As a shaft writes it.
            #[must_use]
            pub const fn text(self) -> &'static str {
                match self { $(Self::$letter => $text),+ }
            }
        }
    };
}

letters!(
    A = "a",
    B = "b",
    C = "c",
    D = "d",
    E = "e",
    F = "f",
    G = "g",
    H = "h",
    J = "j",
    Js = "js",
    K = "k",
    M = "m",
    N = "n",
    P = "p",
    R = "r",
    S = "s",
    T = "t",
    U = "u",
    V = "v",
    X = "x",
    Y = "y",
    Z = "z"
);

/// A tolerance class: where the zone lies and how wide it is.
///
/// ```
/// use formulas::fit::{Class, Feature, Letter};
/// let class: Class = "JS7".parse()?;
/// assert_eq!(class, Class { feature: Feature::Hole, letter: Letter::Js, grade: 7 });
/// assert_eq!(class.to_string(), "JS7");
/// assert!("H".parse::<Class>().is_err());
/// # Ok::<(), formulas::FormulaError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Class {
    /// Hole or shaft.
    pub feature: Feature,
    /// Where the zone lies.
    pub letter: Letter,
    /// The grade, which says how wide it is.
    pub grade: u8,
}

impl FromStr for Class {
    type Err = FormulaError;

    fn from_str(text: &str) -> Result<Self, FormulaError> {
        let unreadable = || FormulaError::UnreadableClass { text: text.to_owned() };
        let trimmed = text.trim();
        let digits = trimmed.find(|c: char| c.is_ascii_digit()).ok_or_else(unreadable)?;
        let (letters, grade) = trimmed.split_at(digits);
        let grade = grade.parse().map_err(|_| unreadable())?;
        let feature = match letters.chars().next() {
            Some(first) if first.is_ascii_uppercase() => Feature::Hole,
            _ => Feature::Shaft,
        };
        let lowered = letters.to_ascii_lowercase();
        let letter = *Letter::ALL.iter().find(|letter| letter.text() == lowered).ok_or_else(unreadable)?;
        Ok(Self { feature, letter, grade })
    }
}

impl fmt::Display for Class {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let letter = self.letter.text();
        match self.feature {
            Feature::Hole => write!(f, "{}{}", letter.to_ascii_uppercase(), self.grade),
            Feature::Shaft => write!(f, "{letter}{}", self.grade),
        }
    }
}
