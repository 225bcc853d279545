//! Classes of fluid: what a demand asks for by name.

use serde::Deserialize;

use crate::SourceKey;

/// A class of fluid, such as slideway oil. A fluid belongs to one or more.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Class {
    /// Short name, such as `slideway-oil`.
    pub key: String,
    /// Name as people say it.
    pub name: String,
    /// One sentence: what sets it apart.
    pub about: String,
    /// Letters of the ISO families it falls under, such as `ISO 6743-13 G`.
    #[serde(default)]
    pub families: Vec<String>,
    /// Where this comes from.
    pub source: SourceKey,
}
