//! The working of a formula: what was given, which steps were taken, what to be careful of.
//!
//! A chapter's functions are generic over a [`Recorder`]. [`Silent`] keeps nothing and costs nothing; [`Notebook`] keeps every entry for
//! a sheet. The macros [`given!`](crate::given), [`step!`](crate::step) and [`solve!`](crate::solve) write the entries.
//!
//! A form the macros cannot show does not compile, so nothing is computed that is not shown:
//! ```compile_fail
//! # use formulas::{Recorder, sources, step};
//! fn work<R: Recorder>(r: &mut R, x: f64) -> f64 {
//!     step!(r, y [] = x.sqrt(), sources::DEFINITION);
//!     y
//! }
//! ```
//! The same step as a call compiles, and costs nothing with the silent recorder:
//! ```
//! # use formulas::{Notebook, Recorder, Silent, math::sqrt, sources, step};
//! fn work<R: Recorder>(r: &mut R, x: f64) -> f64 {
//!     step!(r, y [] = sqrt(x), sources::DEFINITION);
//!     y
//! }
//! assert_eq!(work(&mut Silent, 9.0), 3.0);
//! let mut notebook = Notebook::new();
//! work(&mut notebook, 9.0);
//! assert_eq!(notebook.lines(), ["y = √x = 3  [definition]"]);
//! ```

mod caution;
mod notebook;
mod root;

pub use caution::Caution;
pub use notebook::{Entry, Notebook, number, trimmed};
pub use root::{Root, root};

use crate::sources::Source;

/// Takes down what a formula does.
pub trait Recorder {
    /// Whether entries are kept; where they are not, none are made.
    const KEEPS: bool;
    /// Takes down a given value.
    fn given(&mut self, given: Given);
    /// Takes down a step.
    fn step(&mut self, step: Step);
    /// Takes down a caution.
    fn caution(&mut self, caution: Caution);
    /// How many entries are kept so far, so that a stretch of the working can be told from the rest.
    fn kept(&self) -> usize {
        0
    }
}

/// The recorder that keeps nothing.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Silent;

impl Recorder for Silent {
    const KEEPS: bool = false;
    fn given(&mut self, _: Given) {}
    fn step(&mut self, _: Step) {}
    fn caution(&mut self, _: Caution) {}
}

/// A symbol as its source writes it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Symbol {
    /// As plain text: `T₁`.
    pub text: &'static str,
    /// As MathML: `<msub><mi>T</mi><mn>1</mn></msub>`.
    pub mathml: &'static str,
}

/// A value a formula was given.
#[derive(Debug, Clone, PartialEq)]
pub struct Given {
    /// Its symbol.
    pub symbol: Symbol,
    /// Its value in `unit`.
    pub value: f64,
    /// The unit's text; empty for a bare number.
    pub unit: &'static str,
    /// What it is, in words.
    pub words: &'static str,
}

/// One step of a formula.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// The symbol the step finds.
    pub symbol: Symbol,
    /// The value found, in `unit`.
    pub value: f64,
    /// The unit's text; empty for a bare number.
    pub unit: &'static str,
    /// The expression with its symbols.
    pub text: &'static str,
    /// The expression as MathML, without the enclosing `math` element.
    pub mathml: &'static str,
    /// The expression with the numbers put in.
    pub filled: String,
    /// What is left of the equation at the value found, where a solver found it.
    pub residual: Option<f64>,
    /// Where the expression comes from.
    pub source: Source,
}

/// A piece of an expression whose symbols are replaced by their values.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Part {
    /// Text that stays.
    Text(&'static str),
    /// A value in the place of its symbol.
    Value(f64),
}

/// An expression with the numbers put in.
#[must_use]
pub fn fill(parts: &[Part]) -> String {
    let mut filled = String::new();
    for part in parts {
        match part {
            Part::Text(text) => filled.push_str(text),
            Part::Value(value) => {
                let text = trimmed(*value);
                // A sign or a power of ten would otherwise run into what stands beside it.
                if text.starts_with('−') || text.contains('×') {
                    filled.extend(["(", &text, ")"]);
                } else {
                    filled.push_str(&text);
                }
            }
        }
    }
    filled
}
