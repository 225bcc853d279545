//! What can be wrong with a written quantity, said so that the writer can mend it.

use thiserror::Error;

/// Why a text is not the quantity that was asked for.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum QuantityError {
    /// There is nothing there.
    #[error("nothing is written here; write {name} in {fits}")]
    Empty {
        /// The kind asked for, with its article.
        name: &'static str,
        /// The units that would do.
        fits: String,
    },
    /// The text does not begin with a number.
    #[error("`{text}` does not begin with a number; write {name} as a number and a unit: {fits}")]
    NoNumber {
        /// What was written.
        text: String,
        /// The kind asked for, with its article.
        name: &'static str,
        /// The units that would do.
        fits: String,
    },
    /// A comma in a number.
    #[error("`{text}` has a comma in its number; write a point before the decimals, and nothing between thousands")]
    Comma {
        /// What was written.
        text: String,
    },
    /// A fraction over zero, or every zero days.
    #[error("`{text}` divides by zero; write a number greater than 0 there")]
    DividedByZero {
        /// What was written.
        text: String,
    },
    /// Not a number, infinite, or beyond what the program can hold.
    #[error("`{text}` is not a number that can be worked with; write an ordinary finite one")]
    NotFinite {
        /// What was written.
        text: String,
    },
    /// A bare number where a unit is needed.
    #[error("`{number}` has no unit; {name} needs {fits}, as in `{number} {example}`")]
    NoUnit {
        /// The number that stands alone.
        number: String,
        /// The kind asked for, with its article.
        name: &'static str,
        /// The units that would do.
        fits: String,
        /// One unit to show the form.
        example: &'static str,
    },
    /// A unit of another kind of quantity.
    #[error("`{unit}` is {is}; {name} needs {fits}")]
    WrongKind {
        /// The unit written.
        unit: String,
        /// What it measures, with its article.
        is: &'static str,
        /// The kind asked for, with its article.
        name: &'static str,
        /// The units that would do.
        fits: String,
    },
    /// A unit nobody knows.
    #[error("`{unit}` is not a unit known here; {}{name} needs {fits}", .nearest.map(|near| format!("did you mean `{near}`? Otherwise, ")).unwrap_or_default())]
    UnknownUnit {
        /// The unit written.
        unit: String,
        /// The known spelling nearest to it.
        nearest: Option<&'static str>,
        /// The kind asked for, with its article.
        name: &'static str,
        /// The units that would do.
        fits: String,
    },
    /// A unit that means one thing in the US and another in Britain.
    #[error("`{unit}` is one size in the US and another in imperial measure; write `{us}` or `{imperial}`")]
    Ambiguous {
        /// The unit written.
        unit: String,
        /// The US unit.
        us: &'static str,
        /// The imperial unit.
        imperial: &'static str,
    },
    /// A value that cannot be.
    #[error("`{text}` is {side} {limit}, and {name} cannot be; check the sign and the unit")]
    Outside {
        /// What was written.
        text: String,
        /// "less than" or "more than".
        side: &'static str,
        /// The limit.
        limit: String,
        /// The kind asked for, with its article.
        name: &'static str,
    },
    /// A range where one value is wanted.
    #[error("`{text}` looks like a range; write one value here, and where a range is asked for write it as `3 .. 8 mm`")]
    RangeInstead {
        /// What was written.
        text: String,
    },
    /// A range that is not of the form low .. likely .. high.
    #[error("`{text}` is not a range; write `3 .. 8 mm`, `3 .. 5 .. 8 mm` or one value")]
    RangeShape {
        /// What was written.
        text: String,
    },
    /// A range whose values fall.
    #[error("the range `{text}` runs the wrong way; write the lowest value first and the highest last")]
    RangeOrder {
        /// What was written.
        text: String,
    },
}
