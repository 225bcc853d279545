//! A table of the file, read key by key, so that every wrong one is reported and no unknown one slips by.

use jiff::civil::Date;
use toml::Spanned;
use toml::de::{DeTable, DeValue};
use units::{Amount, Dimension, Quantity, parse_any};

use crate::problem::{Problems, Span};
use fields::{NUMBERS, did_you_mean, no_shop_has};

/// A value with the place it was written at.
#[derive(Debug, Clone, PartialEq)]
pub struct Said<T> {
    /// What was written.
    pub value: T,
    /// Where.
    pub at: Span,
}

/// One table of the file and the keys asked of it so far.
pub struct Section<'t> {
    table: Option<&'t DeTable<'t>>,
    /// Where the table stands.
    pub at: Span,
    known: Vec<String>,
}

impl<'t> Section<'t> {
    /// Starts reading a table.
    #[must_use]
    pub fn new(table: &'t DeTable<'t>, at: Span) -> Self {
        Self { table: Some(table), at, known: Vec::new() }
    }

    /// A table that says nothing.
    #[must_use]
    pub fn empty(at: Span) -> Self {
        Self { table: None, at, known: Vec::new() }
    }

    fn take(&mut self, key: &str) -> Option<&'t Spanned<DeValue<'t>>> {
        self.known.push(key.to_owned());
        self.table?.get(key)
    }

    /// Whether the key is written.
    #[must_use]
    pub fn has(&self, key: &str) -> bool {
        self.table.is_some_and(|table| table.contains_key(key))
    }

    /// A text.
    pub fn text(&mut self, key: &str, problems: &mut Problems) -> Option<Said<String>> {
        let value = self.take(key)?;
        text_of(key, value, problems)
    }

    /// A list of words; one word alone is a list of one.
    pub fn words(&mut self, key: &str, problems: &mut Problems) -> Vec<Said<String>> {
        let Some(value) = self.take(key) else { return Vec::new() };
        match value.get_ref() {
            DeValue::Array(items) => items.iter().filter_map(|item| text_of(key, item, problems)).collect(),
            _ => text_of(key, value, problems).into_iter().collect(),
        }
    }

    /// A word out of a few.
    pub fn choice<T: Copy>(&mut self, key: &str, choices: &[(&'static str, T)], problems: &mut Problems) -> Option<Said<T>> {
        let said = self.text(key, problems)?;
        let found = choices.iter().find(|(word, _)| *word == said.value);
        if found.is_none() {
            let mend = did_you_mean(&said.value, choices.iter().map(|(word, _)| *word));
            problems.add(said.at.clone(), format!("`{}` is not a `{key}`", said.value), mend);
        }
        found.map(|(_, value)| Said { value: *value, at: said.at })
    }

    /// Yes or no.
    pub fn flag(&mut self, key: &str, problems: &mut Problems) -> Option<Said<bool>> {
        let value = self.take(key)?;
        let flag = value.get_ref().as_bool();
        if flag.is_none() {
            problems.add(value.span(), format!("`{key}` is yes or no"), "Write `true` or `false`, without quotation marks.");
        }
        flag.map(|flag| Said { value: flag, at: value.span() })
    }

    /// A plain number above zero.
    pub fn number(&mut self, key: &str, problems: &mut Problems) -> Option<Said<f64>> {
        let value = self.take(key)?;
        let number = bare_number(value.get_ref()).and_then(|text| text.replace('_', "").parse::<f64>().ok());
        match number {
            Some(number) if NUMBERS.contains(&number) => Some(Said { value: number, at: value.span() }),
            Some(number) if number > 0.0 => {
                let mend = format!("Write a number from {} to {}.", NUMBERS.start(), NUMBERS.end());
                problems.add(value.span(), format!("`{key}` is {number:e}, which no shop has"), mend);
                None
            }
            _ => {
                problems.add(
                    value.span(),
                    format!("`{key}` must be a plain number above zero"),
                    "Write it without unit and quotation marks, such as `3`.",
                );
                None
            }
        }
    }

    /// A quantity with its unit.
    pub fn quantity<Q: Quantity>(&mut self, key: &str, problems: &mut Problems) -> Option<Said<Q>> {
        let said = self.base(key, Q::DIMENSION, "", problems)?;
        Some(Said { value: Q::from_base(said.value), at: said.at })
    }

    /// A quantity of the given dimension, in coherent SI units, of a size that occurs where so much is supposed.
    pub fn base(&mut self, key: &str, dimension: Dimension, supposed: &str, problems: &mut Problems) -> Option<Said<f64>> {
        let value = self.take(key)?;
        let written = match bare_number(value.get_ref()) {
            Some(number) => number,
            None => text_of(key, value, problems)?.value,
        };
        match parse_any(dimension, &written) {
            Err(error) => {
                problems.add(value.span(), format!("`{key}` cannot be read"), sentence(&error.to_string()));
                None
            }
            Ok(base) if base < 0.0 && !may_be_negative(dimension) => {
                problems.add(
                    value.span(),
                    format!("`{key}` is `{written}`, below zero"),
                    format!("Give {} of zero or more.", dimension.name()),
                );
                None
            }
            // Of zero each key has its own opinion.
            Ok(base) => match no_shop_has(dimension, base, supposed).filter(|_| base != 0.0) {
                None => Some(Said { value: base, at: value.span() }),
                Some(mend) => {
                    problems.add(value.span(), format!("`{key}` is `{written}`, which no shop has"), mend);
                    None
                }
            },
        }
    }

    /// An amount of a fluid: volume, mass, length or pieces.
    pub fn amount(&mut self, key: &str, problems: &mut Problems) -> Option<Said<Amount>> {
        let said = self.text(key, problems)?;
        match Amount::parse(&said.value) {
            Ok(amount) => Some(Said { value: amount, at: said.at }),
            Err(error) => {
                problems.add(said.at, format!("`{key}` cannot be read"), sentence(&error.to_string()));
                None
            }
        }
    }

    /// A day of the calendar, as TOML writes it or as text.
    pub fn date(&mut self, key: &str, problems: &mut Problems) -> Option<Said<Date>> {
        let value = self.take(key)?;
        let written = match value.get_ref().as_datetime() {
            Some(date) => date.to_string(),
            None => text_of(key, value, problems)?.value,
        };
        // The library also takes a date with a time behind it, which would be lost here.
        let date = Some(written.trim()).filter(|text| text.len() == "2026-03-01".len()).and_then(|text| text.parse().ok());
        if date.is_none() {
            problems.add(
                value.span(),
                format!("`{key}` is `{written}`, not a day of the calendar"),
                "Write year, month and day, such as `2026-03-01`.",
            );
        }
        date.map(|date| Said { value: date, at: value.span() })
    }

    /// A table inside this one.
    pub fn section(&mut self, key: &str, problems: &mut Problems) -> Option<Section<'t>> {
        let value = self.take(key)?;
        let table = value.get_ref().as_table();
        if table.is_none() {
            problems.add(
                value.span(),
                format!("`{key}` must be a table"),
                format!("Write `[{key}]` on a line of its own and its values below."),
            );
        }
        table.map(|table| Section::new(table, value.span()))
    }

    /// The tables of a list of tables.
    pub fn sections(&mut self, key: &str, problems: &mut Problems) -> Vec<Section<'t>> {
        let Some(value) = self.take(key) else { return Vec::new() };
        let tables: Option<Vec<_>> = value
            .get_ref()
            .as_array()
            .and_then(|items| items.iter().map(|item| Some(Section::new(item.get_ref().as_table()?, item.span()))).collect());
        tables.unwrap_or_else(|| {
            problems.add(
                value.span(),
                format!("`{key}` must be a list of tables"),
                format!("Write `[[{key}]]`, with two brackets, above each of them."),
            );
            Vec::new()
        })
    }

    /// Reports every key that nothing asked for.
    pub fn close(self, problems: &mut Problems) {
        for (key, _) in self.table.into_iter().flatten() {
            let word: &str = key.get_ref();
            if !self.known.iter().any(|known| known == word) {
                problems.add(key.span(), format!("`{word}` is not known here"), did_you_mean(word, self.known.iter().map(String::as_str)));
            }
        }
    }
}

fn bare_number(value: &DeValue<'_>) -> Option<String> {
    match value {
        DeValue::Integer(number) => Some(number.as_str().to_owned()),
        DeValue::Float(number) => Some(number.as_str().to_owned()),
        _ => None,
    }
}

fn text_of(key: &str, value: &Spanned<DeValue<'_>>, problems: &mut Problems) -> Option<Said<String>> {
    let text = value.get_ref().as_str();
    if text.is_none() {
        problems.add(value.span(), format!("`{key}` must be text"), format!("Put it in quotation marks: `{key} = \"…\"`."));
    }
    text.map(|text| Said { value: text.to_owned(), at: value.span() })
}

/// Only temperatures have values below zero that make sense.
pub(crate) fn may_be_negative(dimension: Dimension) -> bool {
    matches!(dimension, Dimension::Temperature | Dimension::TemperatureDifference)
}

fn sentence(text: &str) -> String {
    let mut chars = text.chars();
    let first = chars.next().map(|c| c.to_uppercase().collect::<String>()).unwrap_or_default();
    format!("{first}{}.", chars.as_str())
}

#[cfg(test)]
mod tests {
    use crate::{Kinds, read};
    use reference::Reference;

    /// Random inputs found a chuck so small that formulas divided by the nothing it rounds to.
    #[test]
    fn a_size_no_shop_has_is_refused_with_the_way_out() {
        let kinds = Kinds { points: &[], jobs: &[] };
        let refused = |text: &str| read(text.as_bytes(), kinds, Reference::embedded()).unwrap_err();
        for size in ["2.1e-318 mm", "2.1e300 mm"] {
            let problems = refused(&format!("[[machine]]\ntemplate = \"drill press\"\nchuck = \"{size}\""));
            assert!(problems[0].what.ends_with("which no shop has") && problems[0].mend.contains("to 50 m"), "{problems:?}");
        }
        let problems = refused("[room]\nvolume = \"1e200 m3\"\n[[machine]]\ntemplate = \"drill press\"");
        assert!(problems[0].what.ends_with("which no shop has"), "{problems:?}");
    }
}
