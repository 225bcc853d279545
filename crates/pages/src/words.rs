//! Small words of the pages; how amounts, stretches of time and places are said stands in [`planner::words`].

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
