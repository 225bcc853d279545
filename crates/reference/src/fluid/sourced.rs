//! A value that carries the key of its source.

use serde::{Deserialize, Deserializer};
use units::{Quantity, Range, Ratio};

use crate::SourceKey;

/// A value with the key of its source.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// Where it comes from.
    pub source: SourceKey,
}

/// As it stands in a file: the quantity still as text with its unit.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Raw {
    value: String,
    source: SourceKey,
}

impl<'de, Q: Quantity> Deserialize<'de> for Sourced<Q> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let raw = Raw::deserialize(deserializer)?;
        let value = units::parse(&raw.value).map_err(serde::de::Error::custom)?;
        Ok(Self { value, source: raw.source })
    }
}

/// Reads a range of shares such as `"3 .. 5 .. 8 %"` as plain numbers between 0 and 1.
pub(super) fn optional_share<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<Sourced<Range<f64>>>, D::Error> {
    let Some(raw) = Option::<Raw>::deserialize(deserializer)? else { return Ok(None) };
    let range: Range<Ratio> = units::parse_range(&raw.value).map_err(serde::de::Error::custom)?;
    Ok(Some(Sourced { value: range.map(Quantity::base), source: raw.source }))
}
