//! The numbers people write: `0.002`, `3/8`, `1-1/4`, `1 1/4`, `1½`, `1e-3`.

/// What is wrong with a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Fault {
    /// There is none at the start of the text.
    Missing,
    /// A comma follows the digits.
    Comma,
    /// A fraction of nothing.
    DividedByZero,
    /// Not a finite number, or one that a float cannot hold.
    NotFinite,
}

/// Reads the number at the start of a text; the rest follows, trimmed.
pub(crate) fn leading(text: &str) -> Result<(f64, &str), Fault> {
    let text = text.trim();
    let (negative, unsigned) = match text.strip_prefix(['-', '−']) {
        Some(rest) => (true, rest.trim_start()),
        None => (false, text.strip_prefix('+').unwrap_or(text).trim_start()),
    };
    let lower = unsigned.to_ascii_lowercase();
    // "in" is a unit and "inf" is not a number, so only whole words count.
    if lower.split(|c: char| !c.is_ascii_alphabetic()).next().is_some_and(|word| matches!(word, "nan" | "inf" | "infinity")) {
        return Err(Fault::NotFinite);
    }
    let (size, rest) = unsigned_number(unsigned)?;
    if rest.starts_with([',', '٫', '，']) {
        return Err(Fault::Comma);
    }
    // Adding a positive zero turns a negative one into it.
    let value = if negative { -size } else { size } + 0.0;
    if value.is_finite() { Ok((value, rest.trim())) } else { Err(Fault::NotFinite) }
}

fn unsigned_number(text: &str) -> Result<(f64, &str), Fault> {
    if let Some((part, rest)) = glyph(text) {
        return Ok((part, rest));
    }
    let whole_end = digits_end(text);
    let (whole, rest) = text.split_at(whole_end);
    if !whole.is_empty() {
        if let Some((part, rest)) = fraction(whole, rest)? {
            return Ok((part, rest));
        }
        // A whole number may be followed by a fraction: 1-1/4, 1 1/4, 1½, 1 ½.
        let tail = rest.strip_prefix('-').unwrap_or(rest).trim_start();
        let mixed = match glyph(tail) {
            Some(found) => Some(found),
            None if tail.len() < rest.len() => {
                let (top, after) = tail.split_at(digits_end(tail));
                fraction(top, after)?
            }
            None => None,
        };
        if let Some((part, rest)) = mixed {
            return Ok((decimal(whole)? + part, rest));
        }
    }
    let end = decimal_end(text);
    let (number, rest) = text.split_at(end);
    Ok((decimal(number)?, rest))
}

/// The fraction whose numerator is `top` and whose denominator begins `rest` after a slash.
fn fraction<'a>(top: &str, rest: &'a str) -> Result<Option<(f64, &'a str)>, Fault> {
    let Some(after) = rest.strip_prefix(['/', '⁄']) else { return Ok(None) };
    let (bottom, rest) = after.split_at(digits_end(after));
    if top.is_empty() || bottom.is_empty() {
        return Ok(None);
    }
    let bottom = decimal(bottom)?;
    if bottom == 0.0 {
        return Err(Fault::DividedByZero);
    }
    Ok(Some((decimal(top)? / bottom, rest)))
}

fn glyph(text: &str) -> Option<(f64, &str)> {
    let mut chars = text.chars();
    let part = match chars.next()? {
        '½' => 0.5,
        '¼' => 0.25,
        '¾' => 0.75,
        '⅛' => 0.125,
        '⅜' => 0.375,
        '⅝' => 0.625,
        '⅞' => 0.875,
        '⅓' => 1.0 / 3.0,
        '⅔' => 2.0 / 3.0,
        _ => return None,
    };
    Some((part, chars.as_str()))
}

fn digits_end(text: &str) -> usize {
    text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len())
}

/// Where a decimal number with an optional exponent ends.
fn decimal_end(text: &str) -> usize {
    let mut end = digits_end(text);
    if text[end..].starts_with('.') {
        end += 1 + digits_end(&text[end + 1..]);
    }
    if let Some(exponent) = text[end..].strip_prefix(['e', 'E']) {
        let signed = exponent.strip_prefix(['+', '-']).unwrap_or(exponent);
        let digits = digits_end(signed);
        if digits > 0 {
            end += 1 + (exponent.len() - signed.len()) + digits;
        }
    }
    end
}

fn decimal(text: &str) -> Result<f64, Fault> {
    let value: f64 = text.parse().map_err(|_| Fault::Missing)?;
    let mantissa = text.split(['e', 'E']).next().unwrap_or(text);
    let vanished = value == 0.0 && mantissa.contains(|c: char| c.is_ascii_digit() && c != '0');
    if value.is_finite() && !vanished { Ok(value) } else { Err(Fault::NotFinite) }
}
