//! What is said for a key, as a form gives it and as a shop file writes it.

use jiff::civil::Date;
use toml_edit::{Array, Key};

/// A value of the description.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Value {
    /// Words, or a quantity with its unit.
    Text(String),
    /// A plain number as typed; what is no number is kept as text, and the shop's reader says so.
    Number(String),
    /// Yes or no.
    Flag(bool),
    /// A day.
    Date(Date),
    /// A list of words.
    Words(Vec<String>),
    /// Anything else, as a shop file has it.
    Written(String),
}

impl Value {
    /// As it stands in a shop file.
    #[must_use]
    pub fn to_toml(&self) -> String {
        match self {
            Self::Text(text) => quoted(text),
            Self::Number(text) | Self::Written(text) => match text.trim().parse::<toml_edit::Value>() {
                Ok(mut value) if matches!(self, Self::Written(_)) || value.is_integer() || value.is_float() => {
                    value.decor_mut().clear();
                    value.to_string()
                }
                _ => quoted(text),
            },
            Self::Flag(flag) => flag.to_string(),
            Self::Date(date) => date.to_string(),
            Self::Words(words) => Array::from_iter(words.iter().map(String::as_str)).to_string(),
        }
    }

    /// From a value of a shop file.
    #[must_use]
    pub fn from_toml(written: &str) -> Self {
        use toml_edit::Value as Toml;
        let other = || Self::Written(written.to_owned());
        match written.parse::<Toml>() {
            Ok(Toml::String(text)) => Self::Text(text.into_value()),
            Ok(Toml::Integer(_) | Toml::Float(_)) => Self::Number(written.to_owned()),
            Ok(Toml::Boolean(flag)) => Self::Flag(flag.into_value()),
            Ok(Toml::Datetime(_)) => written.parse().map_or_else(|_| other(), Self::Date),
            Ok(Toml::Array(items)) => {
                let words: Option<Vec<String>> = items.iter().map(|item| item.as_str().map(ToOwned::to_owned)).collect();
                words.map_or_else(other, Self::Words)
            }
            _ => other(),
        }
    }

    /// As one cell of a table shows it.
    #[must_use]
    pub fn plain(&self) -> String {
        match self {
            Self::Text(text) | Self::Number(text) | Self::Written(text) => text.clone(),
            Self::Flag(flag) => flag.to_string(),
            Self::Date(date) => date.to_string(),
            Self::Words(words) => words.join(", "),
        }
    }
}

fn quoted(text: &str) -> String {
    toml_edit::Value::from(text).to_string()
}

/// A key as a shop file writes it.
pub(crate) fn written_key(key: &str) -> String {
    Key::new(key).display_repr().into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;
    use proptest::prelude::*;

    #[test]
    fn a_form_cannot_smuggle_in_a_section() {
        // One value of TOML 1.0 ends where its line ends; text holds anything.
        let sly = "3\n[[machine]]\ntemplate = \"bench lathe\"";
        for value in [Value::Number(sly.to_owned()), Value::Written(sly.to_owned()), Value::Text(sly.to_owned())] {
            let text = format!("key = {}\n", value.to_toml());
            let table: toml::Table = toml::from_str(&text).unwrap();
            assert_eq!(table.get("key").and_then(toml::Value::as_str), Some(sly));
        }
        assert_eq!(written_key("a b = 1"), "\"a b = 1\"");
    }

    proptest! {
        #[test]
        fn written_and_read_it_is_the_same(text in any::<String>(), words in prop::collection::vec(any::<String>(), 0..4), flag: bool) {
            let day = date(2026, 3, 1);
            for value in [Value::Text(text), Value::Words(words), Value::Flag(flag), Value::Date(day), Value::Number("1_000.5".to_owned())] {
                prop_assert_eq!(Value::from_toml(&value.to_toml()), value);
            }
        }
    }
}
