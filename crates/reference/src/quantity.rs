//! How much of a kind may stand where, after codes that are quoted as literature, and by the program's own defaults.

use serde::Deserialize;
use units::Amount;

use crate::SourceKey;
use crate::hazard::HazardClass;

/// One limit on an amount. Local code comes first; no row is law where you are.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct QuantityLimit {
    /// Short name, such as `us-cabinet-1-to-3`.
    pub key: String,
    /// Where the rule is from.
    pub region: Region,
    /// What it is about, as people say it.
    pub about: String,
    /// The hazard classes it counts together.
    pub classes: Vec<HazardClass>,
    /// Where that amount stands.
    pub place: Place,
    /// The most there may be.
    #[serde(deserialize_with = "units::text::quantity")]
    pub most: Amount,
    /// What to know before relying on it.
    pub note: Option<String>,
    /// Where this comes from.
    pub source: SourceKey,
}

/// Where a rule on amounts is from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Region {
    /// The program's own default for a home shop, a judgement.
    House,
    /// United States.
    Us,
    /// United Kingdom.
    Uk,
}

/// Where the amount stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Place {
    /// On shelves and benches, in no cabinet.
    Loose,
    /// In one metal cabinet made for it.
    Cabinet,
    /// In one container of glass.
    GlassContainer,
    /// In one container of plastic.
    PlasticContainer,
    /// In one metal container.
    MetalContainer,
    /// In a garage that belongs to a dwelling.
    Garage,
    /// Anywhere at a dwelling, all containers together.
    Dwelling,
}
