//! Storage groups and what must not stand together.

use serde::{Deserialize, Serialize};

use crate::SourceKey;

/// How one group of fluids is kept.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StorageGroup {
    /// Short name, such as `flammable`.
    pub key: String,
    /// Name as people say it.
    pub name: String,
    /// How it is kept, in a sentence or two.
    pub keep: String,
    /// True if it is kept locked away from children and visitors.
    #[serde(default)]
    pub locked: bool,
    /// Where this comes from.
    pub source: SourceKey,
}

/// How far apart two groups stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Apart {
    /// They may stand together.
    Together,
    /// In trays or on shelves of their own.
    Trays,
    /// In different cupboards, 3 m apart.
    Cupboards,
}

/// Two storage groups and how far apart they stand.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StoragePair {
    /// The two groups; the same twice where members of one group react with each other.
    pub pair: [String; 2],
    /// How far apart.
    pub apart: Apart,
    /// What happens when they meet.
    pub why: String,
    /// Where this comes from.
    pub source: SourceKey,
}
