//! Sealing, locking and retaining.

use serde::{Deserialize, Serialize};

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
