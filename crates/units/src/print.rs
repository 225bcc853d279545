//! From a quantity to text: the fitting unit, honest digits.

use crate::{Digits, Quantity, Range, System, Unit, spelling};

/// Prints a quantity in the unit that fits its size: "0.05 mm", "1.97 thou", "0.05 mm (1.97 thou)".
#[must_use]
pub fn show<Q: Quantity>(quantity: Q, system: System) -> String {
    in_system(quantity, system, |unit| written(unit, quantity))
}

/// Prints a range in one unit, chosen for its likely value: "3 .. 5 .. 8 %".
#[must_use]
pub fn show_range<Q: Quantity>(range: Range<Q>, system: System) -> String {
    let chosen_for = if range.likely.base() == 0.0 { range.high } else { range.likely };
    in_system(chosen_for, system, |unit| {
        if range.low == range.high {
            return written(unit, range.likely);
        }
        let number = |quantity: Q| show_number((unit.from)(quantity), unit.digits);
        format!("{} .. {} .. {}", number(range.low), number(range.likely), written(unit, range.high))
    })
}

/// Prints a quantity in the unit of that spelling; `None` when its kind has none such.
#[must_use]
pub fn show_in<Q: Quantity>(quantity: Q, unit: &str) -> Option<String> {
    spelling::find::<Q>(unit).map(|unit| written(unit, quantity))
}

/// Prints a quantity without loss: reading it gives the same float again.
#[must_use]
pub fn show_exact<Q: Quantity>(quantity: Q) -> String {
    // Adding a positive zero turns a negative one into it.
    let value = quantity.base() + 0.0;
    let quantity = Q::from_base(value);
    let units = || pick::<Q>(value, System::Metric).into_iter().chain(Q::units());
    let exact = |unit: &Unit<Q>, number: f64| (unit.to)(number).base().to_bits() == value.to_bits();
    // Twelve digits in every unit first, because 21 µm should not come back as 0.020999999999999998 mm.
    let short = |number: f64| format!("{number:.11e}").parse().unwrap_or(number);
    for rounded in [short, |number| number] {
        for unit in units() {
            let number = rounded((unit.from)(quantity));
            if exact(unit, number) {
                return with_symbol(&all_digits(number), unit);
            }
        }
    }
    let base_unit = Q::units().iter().rfind(|unit| (unit.to)(1.0).base() == 1.0).map_or("", |unit| unit.symbol);
    format!("{} {base_unit}", all_digits(value)).trim_end().to_owned()
}

/// Prints a bare number with so many digits: no trailing zeros, no negative zero, no exponent for ordinary sizes.
#[must_use]
pub fn show_number(number: f64, digits: Digits) -> String {
    let plain = match digits {
        Digits::Decimals(count) => format!("{number:.count$}"),
        Digits::Significant(count) => {
            let scientific = format!("{number:.*e}", count.saturating_sub(1));
            let Some((mantissa, exponent)) = scientific.split_once('e') else { return scientific };
            let Ok(power) = exponent.parse::<i64>() else { return scientific };
            if number != 0.0 && !(-6..=8).contains(&power) {
                return format!("{}e{exponent}", trimmed(mantissa));
            }
            let decimals = i64::try_from(count).unwrap_or(3) - 1 - power;
            match usize::try_from(decimals) {
                Ok(decimals) => format!("{number:.decimals$}"),
                Err(_) => scientific.parse::<f64>().map_or(scientific, |rounded| format!("{rounded:.0}")),
            }
        }
    };
    trimmed(&plain)
}

fn in_system<Q: Quantity>(chosen_for: Q, system: System, written: impl Fn(&Unit<Q>) -> String) -> String {
    let picked = |system| pick::<Q>(chosen_for.base(), system);
    let texts = match system {
        System::Both => (picked(System::Metric).map(&written), picked(System::Inch).map(&written)),
        one => (picked(one).map(&written), None),
    };
    match texts {
        (Some(first), Some(second)) if first != second => format!("{first} ({second})"),
        (Some(only), _) | (None, Some(only)) => only,
        (None, None) => show_number(chosen_for.base(), Digits::Significant(3)),
    }
}

/// The printed unit of a system with the greatest threshold that the size reaches; the default for nothing at all.
fn pick<Q: Quantity>(value: f64, system: System) -> Option<&'static Unit<Q>> {
    let candidates =
        || Q::units().iter().filter(|unit| (unit.system == system || unit.system == System::Both) && unit.printed_from.is_some());
    if value == 0.0 {
        return candidates().next();
    }
    // A hair of slack keeps 1 L from becoming 1000 mL when the float falls just short.
    let size = value.abs() * (1.0 + 1e-9);
    let mut best: Option<(&Unit<Q>, f64)> = None;
    for unit in candidates() {
        let least = unit.printed_from.unwrap_or(0.0);
        if least <= size && best.is_none_or(|(_, found)| least > found) {
            best = Some((unit, least));
        }
    }
    best.map(|(unit, _)| unit).or_else(|| candidates().next())
}

fn written<Q: Quantity>(unit: &Unit<Q>, quantity: Q) -> String {
    with_symbol(&show_number((unit.from)(quantity), unit.digits), unit)
}

fn with_symbol<Q>(number: &str, unit: &Unit<Q>) -> String {
    // Words take a plural, symbols do not (SI Brochure, 9th edition, 5.2): of those that could be mistaken only the minute's is one.
    let plural = unit.spellings.iter().find(|spelling| spelling.strip_suffix('s').is_some_and(|word| word == unit.symbol && word != "min"));
    let symbol = if number == "1" { unit.symbol } else { plural.copied().unwrap_or(unit.symbol) };
    format!("{number} {symbol}").trim_end().to_owned()
}

pub(crate) fn all_digits(number: f64) -> String {
    let plain = format!("{number}");
    if plain.len() > 24 { format!("{number:e}") } else { plain }
}

fn trimmed(number: &str) -> String {
    let short = if number.contains('.') { number.trim_end_matches('0').trim_end_matches('.') } else { number };
    if short == "-0" { "0".to_owned() } else { short.to_owned() }
}
