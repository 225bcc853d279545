//! A value that carries the key of its source.

use serde::de::Error;
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
struct Raw<T = String> {
    value: T,
    source: SourceKey,
}

impl<'de, Q: Quantity> Deserialize<'de> for Sourced<Q> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let raw = <Raw>::deserialize(deserializer)?;
        let value = units::parse(&raw.value).map_err(Error::custom)?;
        Ok(Self { value, source: raw.source })
    }
}

/// Reads a range of shares such as `"3 .. 5 .. 8 %"` as plain numbers between 0 and 1.
pub(crate) fn optional_share<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<Sourced<Range<f64>>>, D::Error> {
    let Some(raw) = Option::<Raw>::deserialize(deserializer)? else { return Ok(None) };
    Ok(Some(Sourced { value: shares(&raw.value)?, source: raw.source }))
}

/// Reads a range of shares that carries no source of its own.
pub(crate) fn share<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Range<f64>, D::Error> {
    shares(&String::deserialize(deserializer)?)
}

/// Reads a share such as `"2.5 %"` as a plain number between 0 and 1.
pub(crate) fn optional_ratio<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<Sourced<f64>>, D::Error> {
    let Some(raw) = Option::<Raw>::deserialize(deserializer)? else { return Ok(None) };
    Ok(Some(Sourced { value: plain(&raw.value)?, source: raw.source }))
}

/// Reads a share that carries no source of its own.
pub(crate) fn ratio<'de, D: Deserializer<'de>>(deserializer: D) -> Result<f64, D::Error> {
    plain(&String::deserialize(deserializer)?)
}

/// Reads a share that may be absent.
pub(crate) fn ratio_or_none<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<f64>, D::Error> {
    ratio(deserializer).map(Some)
}

/// Reads a number whose unit stands in the name of its field.
pub(crate) fn optional_number<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<Sourced<f64>>, D::Error> {
    let raw = Option::<Raw<f64>>::deserialize(deserializer)?;
    Ok(raw.map(|raw| Sourced { value: raw.value, source: raw.source }))
}

/// Reads low, likely and high as `[170, 185, 200]`.
pub(crate) fn range_of_numbers<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Range<f64>, D::Error> {
    let [low, likely, high] = <[f64; 3]>::deserialize(deserializer)?;
    Range::new(low, likely, high).ok_or_else(|| Error::custom("low, likely and high are out of order"))
}

fn shares<E: Error>(text: &str) -> Result<Range<f64>, E> {
    let range: Range<Ratio> = units::parse_range(text).map_err(E::custom)?;
    Ok(range.map(Quantity::base))
}

fn plain<E: Error>(text: &str) -> Result<f64, E> {
    units::parse::<Ratio>(text).map(Quantity::base).map_err(E::custom)
}
