//! Sealing, locking and retaining.

use serde::{Deserialize, Serialize};
use units::{Length, Quantity};

use crate::SourceKey;

/// How a thread seals.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ThreadKind {
    /// Parallel (ISO 228 G, model-engineer threads): the face seals.
    Parallel,
    /// Taper (ISO 7-1 R, NPT): the thread seals and always needs a sealant.
    Taper,
}

/// Classes of sealant for one kind of thread and what runs in it.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sealing {
    /// The kind of thread.
    pub thread: ThreadKind,
    /// What runs in it, such as `compressed-air`.
    pub medium: String,
    /// Classes, the best first.
    pub ranked: Vec<String>,
    /// Why, and what to watch.
    pub why: String,
    /// Where this comes from.
    pub source: SourceKey,
}

/// A joint for which no product is named.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Refusal {
    /// Short name, such as `fuel-gas`.
    pub key: String,
    /// What it covers.
    pub name: String,
    /// Why, and who to ask.
    pub why: String,
    /// Where this comes from.
    pub source: SourceKey,
}

/// Classes of threadlocker or retainer for one case.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Locking {
    /// Short name of the case, such as `stud`.
    pub key: String,
    /// The case, as people say it.
    pub when: String,
    /// Classes, the best first; empty where nothing should be used.
    pub ranked: Vec<String>,
    /// Why, and what to watch.
    pub why: String,
    /// Where this comes from.
    pub source: SourceKey,
}

/// What is asked of a locked thread.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Lock {
    /// Holds, and comes undone with hand tools.
    Removable,
    /// Is turned while it holds.
    Adjuster,
    /// Is never undone.
    ForGood,
    /// Is already together and tight.
    Assembled,
    /// Keeps the setting of a jig or slide.
    Calibrating,
}

impl Lock {
    /// The case of the table of lockers that a thread of this diameter falls under; `is` says whether a part of it is of a group.
    #[must_use]
    pub fn case(self, diameter: Length, is: impl Fn(&str) -> bool) -> &'static str {
        const SMALL_M: f64 = 0.005;
        const STUD_M: f64 = 0.008;
        /// An inch thread is seldom a round number of millimetres.
        const SLACK_M: f64 = 1e-4;
        let size = diameter.base();
        match self {
            _ if is("plastics") => "in-plastic",
            Self::Calibrating => "calibrating",
            Self::Assembled => "already-assembled",
            Self::Adjuster => "small-or-adjuster",
            Self::ForGood if size >= STUD_M - SLACK_M => "stud",
            _ if size <= SMALL_M + SLACK_M || is("brass") => "small-or-adjuster",
            _ => "general",
        }
    }
}

/// How well a retaining compound holds on a metal, beside plain steel.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MetalFactor {
    /// Key of a material or of a group of materials.
    pub material: String,
    /// Share of the strength on plain steel.
    pub factor: f64,
    /// Where this comes from.
    pub source: SourceKey,
}
