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

impl Apart {
    /// What lies between two cupboards at least; *common practice*.
    pub const DISTANCE: &'static str = "3 m";

    /// The remedy in words, as part of a sentence: "keep them in trays of their own".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Together => "on one shelf",
            Self::Trays => "in trays of their own",
            Self::Cupboards => "in different cupboards, at least 3 m apart",
        }
    }
}

/// What happens when two groups meet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize, Serialize)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Reaction {
    /// They heat each other.
    Heat,
    /// They catch fire.
    Fire,
    /// They explode.
    Explosion,
    /// They give off a gas that neither burns nor poisons, and bursts what is closed.
    Gas,
    /// They give off a gas that burns.
    FlammableGas,
    /// They give off a poisonous gas.
    ToxicGas,
    /// They make something that causes cancer; no letter of the method.
    Carcinogen,
}

impl Reaction {
    /// The letters by which EPA-600/2-80-076 writes it.
    #[must_use]
    pub const fn letters(self) -> &'static str {
        match self {
            Self::Heat => "H",
            Self::Fire => "F",
            Self::Explosion => "E",
            Self::Gas => "G",
            Self::FlammableGas => "GF",
            Self::ToxicGas => "GT",
            Self::Carcinogen => "–",
        }
    }

    /// In words, as part of a sentence: "they make heat and poisonous gas".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Heat => "heat",
            Self::Fire => "fire",
            Self::Explosion => "an explosion",
            Self::Gas => "gas that bursts a closed bottle",
            Self::FlammableGas => "gas that burns",
            Self::ToxicGas => "poisonous gas",
            Self::Carcinogen => "what causes cancer",
        }
    }
}

/// Two storage groups and how far apart they stand.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StoragePair {
    /// The two groups; the same twice where members of one group react with each other.
    pub pair: [String; 2],
    /// How far apart they stand: the remedy.
    pub apart: Apart,
    /// What happens when they meet; empty where it is only that a spill of one spreads or spoils the other.
    #[serde(default)]
    pub reaction: Vec<Reaction>,
    /// What happens when they meet, in words, and what to know.
    pub why: String,
    /// Where this comes from.
    pub source: SourceKey,
}
