//! Small words of the pages; how amounts, stretches of time and places are said stands in [`planner::words`].

use std::fmt::Display;

use reference::Reference;
use shop::Pot;

/// A number of things, in the singular where it is one.
pub(crate) fn several(number: usize, one: &str, many: &str) -> String {
    format!("{number} {}", if number == 1 { one } else { many })
}

/// A share as whole hundredths.
pub(crate) fn percent(share: f64) -> String {
    format!("{:.0} %", share * 100.0)
}

/// With a capital at the beginning, but for words such as pH that are written so.
pub(crate) fn sentence(text: &str) -> String {
    if text.chars().nth(1).is_some_and(char::is_uppercase) {
        return text.to_owned();
    }
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// A pot by its own name and its fluid, or by its fluid alone.
pub(crate) fn pot(pot: &Pot, reference: &Reference) -> String {
    let fluid = reference.name_of(&pot.fluid);
    pot.name.as_ref().map_or_else(|| fluid.clone(), |name| format!("{name}: {fluid}"))
}

/// The same where one is chosen among others: one without a name of its own goes by where it stands.
pub(crate) fn pot_among_others(pot: &Pot, reference: &Reference) -> String {
    let called = self::pot(pot, reference);
    match pot.place.as_ref().filter(|_| pot.name.is_none()) {
        Some(place) => format!("{called}, {place}"),
        None => called,
    }
}

/// Quotation marks of print for those of a terminal.
pub(crate) fn quoted(text: &str) -> String {
    let mut marks = ['“', '”'].into_iter().cycle();
    text.chars().map(|c| if c == '`' { marks.next().unwrap_or(c) } else { c }).collect()
}

/// An error as a sentence of its own.
pub(crate) fn in_words(error: &impl Display) -> String {
    let text = quoted(&sentence(&error.to_string()));
    if text.ends_with(['.', '?', ':']) { text } else { format!("{text}.") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_error_becomes_a_sentence_whether_or_not_it_is_one() {
        for text in ["write `2 mL` here", "Write `2 mL` here.", "write `2 mL` here."] {
            assert_eq!(in_words(&text), "Write “2 mL” here.");
        }
        assert_eq!(in_words(&"pH 9 is too much"), "pH 9 is too much.");
    }
}
