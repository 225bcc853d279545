//! From text to a quantity.

use crate::number::{self, Fault};
use crate::{Quantity, QuantityError, Range, Unit, show_exact, spelling};

/// Reads a quantity: a number and a unit, or one of the words its kind knows.
///
/// # Errors
/// [`QuantityError`] says what is wrong with the text and what would fit.
pub fn parse<Q: Quantity>(text: &str) -> Result<Q, QuantityError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(QuantityError::Empty { name: Q::NAME, fits: spelling::fits::<Q>() });
    }
    if let Some(named) = Q::by_name(text) {
        return checked(text, named?);
    }
    let (value, rest) = number::leading(text).map_err(|fault| number_error::<Q>(text, fault))?;
    let unit = unit_of::<Q>(text, rest)?;
    checked(text, (unit.to)(value))
}

/// Reads a range: `3 .. 5 .. 8 %`, `3 .. 8 mm` (the likely value is the middle) or a single value.
///
/// A part without a unit takes the unit of the last part.
///
/// # Errors
/// Those of [`parse()`], and [`QuantityError::RangeShape`] or [`QuantityError::RangeOrder`].
pub fn parse_range<Q: Quantity>(text: &str) -> Result<Range<Q>, QuantityError> {
    let text = text.trim();
    // Three dots would read "0...5" as 0 to 0.5, so they are refused.
    if text.contains("...") {
        return Err(QuantityError::RangeShape { text: text.to_owned() });
    }
    let parts: Vec<&str> = text.split("..").map(str::trim).collect();
    let last_unit = parts.last().and_then(|last| number::leading(last).ok()).map_or("", |(_, unit)| unit);
    let part = |part: &str| match number::leading(part) {
        Ok((_, "")) => parse::<Q>(&format!("{part} {last_unit}")),
        _ => parse::<Q>(part),
    };
    let (low, likely, high) = match parts.as_slice() {
        [only] => {
            let value = parse::<Q>(only)?;
            (value, value, value)
        }
        [low, high] => {
            let (low, high) = (part(low)?, part(high)?);
            (low, Q::from_base(f64::midpoint(low.base(), high.base())), high)
        }
        [low, likely, high] => (part(low)?, part(likely)?, part(high)?),
        _ => return Err(QuantityError::RangeShape { text: text.to_owned() }),
    };
    Range::new(low, likely, high).ok_or_else(|| QuantityError::RangeOrder { text: text.to_owned() })
}

/// The error that a fault in a number amounts to.
pub(crate) fn number_error<Q: Quantity>(text: &str, fault: Fault) -> QuantityError {
    let text = text.to_owned();
    match fault {
        Fault::Missing => QuantityError::NoNumber { text, name: Q::NAME, fits: spelling::fits::<Q>() },
        Fault::Comma => QuantityError::Comma { text },
        Fault::DividedByZero => QuantityError::DividedByZero { text },
        Fault::NotFinite => QuantityError::NotFinite { text },
    }
}

fn unit_of<Q: Quantity>(text: &str, rest: &str) -> Result<&'static Unit<Q>, QuantityError> {
    let word = spelling::words(rest);
    if let Some(unit) = spelling::find::<Q>(rest).or_else(|| spelling::find::<Q>(&word)) {
        return Ok(unit);
    }
    let (name, fits) = (Q::NAME, spelling::fits::<Q>());
    if rest.is_empty() {
        let example = Q::units().first().map_or("", |unit| unit.symbol);
        return Err(QuantityError::NoUnit { number: text.to_owned(), name, fits, example });
    }
    let after_dash = rest.trim_start_matches(['-', '–', '—', '.', ' ']).trim_start_matches("to ").trim_start();
    if after_dash.len() < rest.len() && after_dash.starts_with(|c: char| c.is_ascii_digit()) {
        return Err(QuantityError::RangeInstead { text: text.to_owned() });
    }
    let unit = rest.to_owned();
    let split = split(&word);
    if let Some((us, imperial)) = split.filter(|(us, _)| spelling::find::<Q>(us).is_some()) {
        return Err(QuantityError::Ambiguous { unit, us, imperial });
    }
    Err(match spelling::kind_of(split.map_or(word.as_str(), |(us, _)| us)) {
        Some(kind) if kind != Q::DIMENSION => QuantityError::WrongKind { unit, is: kind.name(), name, fits },
        _ => QuantityError::UnknownUnit { unit, nearest: spelling::nearest::<Q>(&word), name, fits },
    })
}

/// Units that differ between the US and Britain: how they are written without saying which, and the two meant.
const SPLIT: &[(&[&str], &str, &str)] = &[
    (&["gal", "gals", "gallon", "gallons"], "gal(US)", "gal(imp)"),
    (&["qt", "qts", "quart", "quarts"], "qt(US)", "qt(imp)"),
    (&["pt", "pts", "pint", "pints"], "pt(US)", "pt(imp)"),
    (&["fl oz", "fluid ounce", "fluid ounces"], "fl oz(US)", "fl oz(imp)"),
    (&["lb/gal"], "lb/gal(US)", "lb/gal(imp)"),
    (&["gpm", "gal/min"], "gal(US)/min", "gal(imp)/min"),
];

fn split(word: &str) -> Option<(&'static str, &'static str)> {
    SPLIT.iter().find(|(bare, ..)| bare.iter().any(|bare| spelling::same(bare, word))).map(|&(_, us, imperial)| (us, imperial))
}

/// Refuses what overflowed on the way to SI and what cannot be.
fn checked<Q: Quantity>(text: &str, quantity: Q) -> Result<Q, QuantityError> {
    let value = quantity.base();
    if !value.is_finite() {
        return Err(QuantityError::NotFinite { text: text.to_owned() });
    }
    let (low, high) = Q::LIMITS;
    let (side, limit) = match value {
        v if v < low => ("less than", low),
        v if v > high => ("more than", high),
        _ => return Ok(Q::from_base(value + 0.0)),
    };
    Err(QuantityError::Outside { text: text.to_owned(), side, limit: show_exact(Q::from_base(limit)), name: Q::NAME })
}
