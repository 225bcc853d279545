//! When two spellings of a unit are the same one.

use crate::{Dimension, Quantity, Unit};

/// Drops what people put in or leave out at will and folds look-alike characters.
fn canonical(text: &str) -> impl Iterator<Item = char> {
    text.chars().filter_map(|c| match c {
        ' ' | '\t' | '\u{a0}' | '\u{202f}' | '·' | '⋅' | '∙' | '•' | '*' | '-' | '‑' | '.' | '(' | ')' | '^' | '_' => None,
        '²' => Some('2'),
        '³' => Some('3'),
        'µ' | 'μ' => Some('u'),
        'º' | '˚' => Some('°'),
        '″' | '”' | '“' => Some('"'),
        '′' | '’' | '‘' => Some('\''),
        '∆' => Some('Δ'),
        other => Some(other),
    })
}

/// Whether two spellings differ only in blanks, dots, brackets and the like.
pub(crate) fn exactly(a: &str, b: &str) -> bool {
    canonical(a).eq(canonical(b))
}

/// Whether two spellings are the same when the case of letters is forgiven as well.
///
/// The case of a leading m is never forgiven in a short symbol, because it tells milli from mega.
pub(crate) fn same(a: &str, b: &str) -> bool {
    let starts = |text: &str, letter: char| canonical(text).next() == Some(letter);
    let prefix_differs = (starts(a, 'm') && starts(b, 'M')) || (starts(a, 'M') && starts(b, 'm'));
    let is_word = canonical(a).count() >= 5 && canonical(a).all(char::is_alphabetic);
    (is_word || !prefix_differs) && canonical(a).flat_map(char::to_lowercase).eq(canonical(b).flat_map(char::to_lowercase))
}

/// Turns the small words of spoken units into signs: "3 times a year" and "hours per week" into "/year" and "hours/week".
pub(crate) fn words(text: &str) -> String {
    let mut signs = String::with_capacity(text.len());
    for word in text.split_whitespace() {
        match word {
            "per" | "a" | "an" => signs.push('/'),
            "times" | "time" if signs.is_empty() => {}
            _ => {
                if !signs.is_empty() {
                    signs.push(' ');
                }
                signs.push_str(word);
            }
        }
    }
    signs
}

/// The unit of a quantity that a spelling names; the exact case wins over a forgiven one.
pub(crate) fn find<Q: Quantity>(spelling: &str) -> Option<&'static Unit<Q>> {
    // A sign or a point before a digit belongs to a number: "-1 /h" and ".1 /h" are not the unit "1/h".
    let after_sign = spelling.trim_start().strip_prefix(['-', '‑', '.']).map(str::trim_start);
    if after_sign.is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit())) {
        return None;
    }
    let named = |alike: fn(&str, &str) -> bool| {
        Q::units().iter().find(|unit| alike(unit.symbol, spelling) || unit.spellings.iter().any(|other| alike(other, spelling)))
    };
    named(exactly).or_else(|| named(same))
}

/// The kind of quantity that knows a spelling.
pub(crate) fn kind_of(spelling: &str) -> Option<Dimension> {
    Dimension::ALL.iter().copied().find(|kind| kind.spellings().iter().any(|known| !known.is_empty() && exactly(known, spelling)))
}

/// The spelling of a quantity nearest to a word that is none, when it is near enough to be meant.
pub(crate) fn nearest<Q: Quantity>(word: &str) -> Option<&'static str> {
    let folded: String = canonical(word).flat_map(char::to_lowercase).collect();
    let most = if folded.chars().count() <= 3 { 1 } else { 2 };
    Q::units()
        .iter()
        .flat_map(|unit| std::iter::once(unit.symbol).chain(unit.spellings.iter().copied()))
        .filter(|known| !known.is_empty())
        .map(|known| {
            let other: String = canonical(known).flat_map(char::to_lowercase).collect();
            (strsim::damerau_levenshtein(&folded, &other), other.chars().count(), known)
        })
        .filter(|(distance, length, _)| *distance <= most && distance < length)
        .min_by_key(|(distance, _, _)| *distance)
        .map(|(_, _, known)| known)
}

/// The units worth naming when something else was written: "mm, µm, m, in or thou".
pub(crate) fn fitting(symbols: &[&str]) -> String {
    match symbols {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [first @ .., last] => format!("{} or {last}", first.join(", ")),
    }
}

/// [`fitting`] for a quantity: all units of a short table, of a long one those that are printed unasked.
pub(crate) fn fits<Q: Quantity>() -> String {
    let short = Q::units().len() <= 4;
    let symbols: Vec<_> = Q::units()
        .iter()
        .filter(|unit| (short || unit.printed_from.is_some()) && !unit.symbol.is_empty())
        .map(|unit| unit.symbol)
        .collect();
    fitting(&symbols)
}
