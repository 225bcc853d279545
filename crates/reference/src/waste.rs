//! What becomes of leftovers, and of rags.

use std::collections::BTreeSet;

use serde::Deserialize;

use crate::{Fluid, Reference, SourceKey, Trait};

/// Leftovers that may go into one container, and into no other.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct WasteStream {
    /// Short name, such as `clean-used-oil`.
    pub key: String,
    /// Name as people say it.
    pub name: String,
    /// What must never get into it, and why.
    pub never: String,
    /// What it is kept in.
    pub container: String,
    /// Where it goes.
    pub goes: String,
    /// Classes of fluid whose leftovers belong here.
    #[serde(default)]
    pub classes: Vec<String>,
    /// Traits that bring a fluid here whatever its class.
    #[serde(default)]
    pub traits: BTreeSet<Trait>,
    /// Where this comes from.
    pub source: SourceKey,
}

/// How a rag is kept, by how much its oil takes up from the air.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Rag {
    /// Short name, such as `drying`.
    pub key: String,
    /// Name as people say it.
    pub name: String,
    /// Iodine value, g per 100 g, from which this row holds.
    pub iodine_from: f64,
    /// True if a heap of such rags can heat itself until it burns.
    pub self_heating: bool,
    /// How they are kept until they are handed in.
    pub keep: String,
    /// Where this comes from.
    pub source: SourceKey,
}

impl Reference {
    /// The stream that leftovers of a fluid belong to: the first that one of its traits asks for, else the one of its main class.
    #[must_use]
    pub fn waste_of(&self, fluid: &Fluid) -> Option<&WasteStream> {
        let by_trait = self.waste_streams.values().find(|stream| !stream.traits.is_disjoint(&fluid.traits));
        by_trait.or_else(|| {
            let main = fluid.classes.first()?;
            self.waste_streams.values().find(|stream| stream.classes.contains(main))
        })
    }

    /// How a rag is kept whose oil has this iodine value.
    #[must_use]
    pub fn rag(&self, iodine_value: f64) -> Option<&Rag> {
        self.rags.values().filter(|rag| rag.iodine_from <= iodine_value).max_by(|one, other| one.iodine_from.total_cmp(&other.iodine_from))
    }
}
