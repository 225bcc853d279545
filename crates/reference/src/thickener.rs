//! What holds the oil in a grease, and which may meet.

use serde::{Deserialize, Serialize};

use crate::SourceKey;

/// What holds the oil in a grease.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Thickener {
    /// Short name, such as `lithium-complex`.
    pub key: String,
    /// Name as people say it.
    pub name: String,
    /// One sentence on what sets it apart.
    pub about: String,
    /// Where this comes from.
    pub source: SourceKey,
}

/// Whether two greases may meet in one bearing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Compatibility {
    /// They may meet.
    Compatible,
    /// Sources disagree or the mixture softens: purge.
    Borderline,
    /// They must not meet: clean out first.
    Incompatible,
}

/// Two thickeners and whether they may meet.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ThickenerPair {
    /// The two thickeners.
    pub pair: [String; 2],
    /// Whether they may meet.
    pub verdict: Compatibility,
    /// Where this comes from.
    pub source: SourceKey,
}
