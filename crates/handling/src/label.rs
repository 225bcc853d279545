//! What has to stand on a bottle: classes of hazard, pictograms, statements, and how to draw them.
//!
//! A product as sold is labelled as its own statements say, with what the sums over its contents add; a mixture made here, and a dilution, by the sums and cut-off shares of three
//! sets of rules ([`Rules`]), each at the unsafe end of what is known of the contents. Where the rules differ the stricter stands on the
//! label and the others are told beside it.
//!
//! Label every bottle, also one that is to be emptied the same day.

mod classify;
mod draw;
mod first_aid;
mod make;
mod mixture;
mod pictogram;
mod precaution;
mod precedence;
mod rules;
mod strictest;

use schemars::JsonSchema;
use serde::Serialize;

pub use classify::{Decided, Finding, classify};
pub use draw::{SMALLEST_MM, draw};
pub use make::{of_dilution, of_fluid, of_mixture};
pub use mixture::{Consistency, Mixture, Part};
pub use pictogram::Pictogram;
pub use precaution::MOST_PRECAUTIONS;
pub use precedence::{Signal, pictograms, prune, signal};
pub use rules::Rules;

/// What stands on a bottle, and why.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Label {
    /// What is in it, in plain words.
    pub product: String,
    /// What it is made of.
    pub contents: Vec<ContentLine>,
    /// Danger or warning; none where neither is asked for.
    pub signal: Option<Signal>,
    /// The pictograms, in the order of their numbers.
    pub pictograms: Vec<Pictogram>,
    /// Hazard statements, supplements of the European rules included.
    pub hazards: Vec<Line>,
    /// Precautionary statements, six at most.
    pub precautions: Vec<Line>,
    /// What it must never meet.
    pub never_with: Vec<Never>,
    /// What to do first when it has got somebody.
    pub first_aid: String,
    /// Where rules differ, and what had to be supposed.
    pub notes: Vec<String>,
    /// Each class, with the sum and the cut-off that decided it.
    pub findings: Vec<Finding>,
    /// What whoever fills the bottle writes.
    pub written: Written,
}

/// One substance in it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ContentLine {
    /// Its name.
    pub name: String,
    /// Registry number of Chemical Abstracts.
    pub cas: Option<String>,
    /// Least share of the mass, %.
    pub low_percent: f64,
    /// Greatest share of the mass, %, by which the label is worked.
    pub high_percent: f64,
}

/// A statement with its code.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Line {
    /// The code, such as `H225`.
    pub code: String,
    /// The wording.
    pub text: String,
}

/// What it must never meet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Never {
    /// The other: a storage group by name.
    pub what: String,
    /// What then happens.
    pub why: String,
}

/// What whoever fills the bottle writes on it; a drawn label leaves room for what is not yet known.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, JsonSchema)]
pub struct Written {
    /// The day it was filled from a larger one.
    pub decanted: Option<String>,
    /// The day the pack was opened.
    pub opened: Option<String>,
    /// The day it is to be gone.
    pub keep_until: Option<String>,
    /// The lot it comes from.
    pub lot: Option<String>,
    /// The number of the poison centre where you live.
    pub poison_centre: Option<String>,
}
