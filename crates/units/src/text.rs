//! Quantities in files: written as people write them, read back without loss.
//!
//! ```
//! use serde::{Deserialize, Serialize};
//! use units::{Amount, Length, Range, Ratio};
//!
//! #[derive(Serialize, Deserialize)]
//! struct Field {
//!     #[serde(with = "units::text")]
//!     swing: Length,
//!     #[serde(default, deserialize_with = "units::text::optional", serialize_with = "units::text::write_optional")]
//!     dilution: Option<Range<Ratio>>,
//!     #[serde(deserialize_with = "units::text::quantity", serialize_with = "units::text::write")]
//!     pack: Amount,
//! }
//! ```

use std::fmt;
use std::marker::PhantomData;

use serde::de::{Deserialize, Deserializer, Error, Visitor};
use serde::ser::{Serialize, Serializer};

use crate::print::all_digits;
use crate::{Amount, Dimension, Quantity, QuantityError, Range, Usage, number, parse, parse_range, show_exact};

/// Something that is written as text in a file.
pub trait Written: Sized {
    /// Reads it.
    ///
    /// # Errors
    /// [`QuantityError`] says what is wrong with the text and what would fit.
    fn read(text: &str) -> Result<Self, QuantityError>;

    /// Writes it so that [`read`](Self::read) gives the same value.
    fn write(&self) -> String;
}

impl<Q: Quantity> Written for Q {
    fn read(text: &str) -> Result<Self, QuantityError> {
        parse(text)
    }

    fn write(&self) -> String {
        show_exact(*self)
    }
}

impl<Q: Quantity> Written for Range<Q> {
    fn read(text: &str) -> Result<Self, QuantityError> {
        parse_range(text)
    }

    fn write(&self) -> String {
        if self.low == self.high {
            return show_exact(self.likely);
        }
        let parts = [self.low, self.likely, self.high];
        let mut written = parts.map(show_exact);
        // A bare part would take the unit of the last, so either all parts have a unit or none has.
        if written.iter().any(|part| number::leading(part).is_ok_and(|(_, unit)| unit.is_empty())) {
            written = parts.map(|part| all_digits(part.base()));
        }
        written.join(" .. ")
    }
}

impl Written for Amount {
    fn read(text: &str) -> Result<Self, QuantityError> {
        Self::parse(text)
    }

    fn write(&self) -> String {
        self.show_exact()
    }
}

struct Text<W>(PhantomData<W>);

impl<W: Written> Visitor<'_> for Text<W> {
    type Value = W;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a quantity in quotes, such as \"2 mm\"")
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<W, E> {
        W::read(text).map_err(E::custom)
    }

    // A bare number goes the same way as a written one: right for a share, a helpful refusal for the rest.
    fn visit_f64<E: Error>(self, number: f64) -> Result<W, E> {
        self.visit_str(&number.to_string())
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<W, E> {
        self.visit_str(&number.to_string())
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<W, E> {
        self.visit_str(&number.to_string())
    }
}

struct Wrapped<W>(W);

impl<'de, W: Written> Deserialize<'de> for Wrapped<W> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        quantity(deserializer).map(Self)
    }
}

/// For `deserialize_with`: a quantity, a range or an amount.
///
/// # Errors
/// What the text is refused for, as the format's own error.
pub fn quantity<'de, D: Deserializer<'de>, W: Written>(deserializer: D) -> Result<W, D::Error> {
    deserializer.deserialize_any(Text(PhantomData))
}

/// For `deserialize_with` beside `default`: a quantity, a range or an amount that may be left out.
///
/// # Errors
/// What the text is refused for, as the format's own error.
pub fn optional<'de, D: Deserializer<'de>, W: Written>(deserializer: D) -> Result<Option<W>, D::Error> {
    Ok(Option::<Wrapped<W>>::deserialize(deserializer)?.map(|wrapped| wrapped.0))
}

/// For `serialize_with`: written without loss.
///
/// # Errors
/// Those of the format.
pub fn write<S: Serializer, W: Written>(value: &W, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(&value.write())
}

/// For `serialize_with`: written without loss, or as nothing.
///
/// # Errors
/// Those of the format.
pub fn write_optional<S: Serializer, W: Written>(value: &Option<W>, serializer: S) -> Result<S::Ok, S::Error> {
    match value {
        Some(value) => serializer.serialize_some(&value.write()),
        None => serializer.serialize_none(),
    }
}

/// For `with`: the same as [`quantity()`].
///
/// # Errors
/// What the text is refused for, as the format's own error.
pub fn deserialize<'de, D: Deserializer<'de>, W: Written>(deserializer: D) -> Result<W, D::Error> {
    quantity(deserializer)
}

/// For `with`: the same as [`write()`].
///
/// # Errors
/// Those of the format.
pub fn serialize<S: Serializer, W: Written>(value: &W, serializer: S) -> Result<S::Ok, S::Error> {
    write(value, serializer)
}

impl<'de, Q: Quantity> Deserialize<'de> for Range<Q> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        quantity(deserializer)
    }
}

impl<Q: Quantity> Serialize for Range<Q> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        write(self, serializer)
    }
}

impl<'de> Deserialize<'de> for Amount {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        quantity(deserializer)
    }
}

impl Serialize for Amount {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        write(self, serializer)
    }
}

impl<'de> Deserialize<'de> for Usage {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        quantity(deserializer)
    }
}

impl Serialize for Usage {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        write(self, serializer)
    }
}

impl<'de> Deserialize<'de> for Dimension {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let word = String::deserialize(deserializer)?;
        Self::from_word(&word).ok_or_else(|| {
            let known: Vec<_> = Self::ALL.iter().map(|kind| kind.word()).collect();
            D::Error::custom(format!("`{word}` is not a kind of quantity; write one of: {}", known.join(", ")))
        })
    }
}
