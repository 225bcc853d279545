//! The bibliography: where a number comes from and how far to believe it.

use std::collections::HashSet;
use std::fmt;
use std::sync::{LazyLock, Mutex, PoisonError};

use serde::{Deserialize, Deserializer, Serialize};

/// The key of a [`Source`], such as `astm-d341`.
///
/// It goes with every number and is copied all the time, so each distinct key is kept once for as long as the program runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct SourceKey(&'static str);

impl SourceKey {
    /// A key known when the program is compiled.
    #[must_use]
    pub const fn new(key: &'static str) -> Self {
        Self(key)
    }

    /// A key read from a file.
    #[must_use]
    pub fn intern(key: &str) -> Self {
        static KNOWN: LazyLock<Mutex<HashSet<&'static str>>> = LazyLock::new(Mutex::default);
        let mut known = KNOWN.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(found) = known.get(key) {
            return Self(found);
        }
        let kept: &'static str = Box::leak(key.into());
        known.insert(kept);
        Self(kept)
    }

    /// The key as text.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        self.0
    }
}

impl fmt::Display for SourceKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0)
    }
}

impl<'de> Deserialize<'de> for SourceKey {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Visitor;
        impl serde::de::Visitor<'_> for Visitor {
            type Value = SourceKey;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("the key of a source")
            }
            fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<SourceKey, E> {
                Ok(SourceKey::intern(text))
            }
        }
        deserializer.deserialize_str(Visitor)
    }
}

/// One entry of the bibliography.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// Short name by which numbers refer to it.
    pub key: String,
    /// The full citation, or what kind of knowledge it is.
    pub title: String,
    /// How far to believe it.
    pub standing: Standing,
    /// What to know before relying on it.
    pub note: Option<String>,
}

/// How far a source may be believed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize, Serialize)]
pub enum Standing {
    /// A published standard, handbook, paper or government table.
    #[serde(rename = "published")]
    Published,
    /// The trade says so; there is no source to point at.
    #[serde(rename = "common practice")]
    CommonPractice,
    /// Written down from memory of a published source and not yet compared with it.
    #[serde(rename = "from memory")]
    FromMemory,
}

impl fmt::Display for Standing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Published => "published",
            Self::CommonPractice => "common practice",
            Self::FromMemory => "from memory",
        })
    }
}
