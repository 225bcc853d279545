//! Whose rules classify a mixture.

use std::fmt;

use reference::SourceKey;
use schemars::JsonSchema;
use serde::Serialize;

/// A set of rules.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Rules {
    /// The United Nations' system: sums with the same cut-offs for all substances.
    UnGhs,
    /// Regulation (EC) No 1272/2008 of the European Union: limits of their own for some substances; no flammable category 4.
    Clp,
    /// 29 CFR 1910.1200 of the United States: lower cut-offs for lasting harm; nothing about water.
    Osha,
}

impl Rules {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::UnGhs, Self::Clp, Self::Osha];

    /// The entry of the bibliography.
    #[must_use]
    pub const fn source(self) -> SourceKey {
        SourceKey::new(match self {
            Self::UnGhs => "un-ghs",
            Self::Clp => "clp-annex-i",
            Self::Osha => "osha-hazcom",
        })
    }
}

impl fmt::Display for Rules {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::UnGhs => "UN GHS",
            Self::Clp => "CLP",
            Self::Osha => "OSHA",
        })
    }
}
