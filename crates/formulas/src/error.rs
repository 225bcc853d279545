//! What a formula says when it has no answer.

use crate::sources::Source;
use crate::working::trimmed;

/// Why a formula gives no number.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum FormulaError {
    /// A value lies outside the range its source covers.
    #[error("{what} is {}; what is known of it ({rule}) covers {}, so check the value, or take the answer from a data sheet", of(*value, unit), span(*low, *high, unit))]
    OutOfRange {
        /// What the value is.
        what: &'static str,
        /// The value.
        value: f64,
        /// Its unit, and that of the limits.
        unit: &'static str,
        /// The lowest value covered.
        low: f64,
        /// The highest value covered.
        high: f64,
        /// The source whose range this is.
        rule: Source,
    },
    /// Two measured viscosities do not fall with temperature.
    #[error(
        "the cool point ({} mm²/s at {} °C) must be cooler and thicker than the hot one ({} mm²/s at {} °C); check that the two were not exchanged",
        trimmed(*cool_nu), trimmed(*cool_at), trimmed(*hot_nu), trimmed(*hot_at)
    )]
    PointsOutOfOrder {
        /// Temperature of the cool point, °C.
        cool_at: f64,
        /// Viscosity at the cool point, mm²/s.
        cool_nu: f64,
        /// Temperature of the hot point, °C.
        hot_at: f64,
        /// Viscosity at the hot point, mm²/s.
        hot_nu: f64,
    },
    /// Two stocks of a blend stand in the wrong order, or the wanted viscosity is not between them.
    #[error(
        "{wanted:.4} mm²/s cannot be blended from {thin:.4} and {thick:.4} mm²/s; choose two oils with the wanted viscosity between them"
    )]
    NotBetweenStocks {
        /// The viscosity wanted, mm²/s.
        wanted: f64,
        /// The thinner stock, mm²/s.
        thin: f64,
        /// The thicker stock, mm²/s.
        thick: f64,
    },
    /// A value must be more than nothing.
    #[error("{what} is {}; it must be more than {}", of(*value, unit), of(0.0, unit))]
    NotPositive {
        /// What the value is.
        what: &'static str,
        /// The value.
        value: f64,
        /// Its unit.
        unit: &'static str,
    },
    /// A gear too slow to carry oil round, for which viscosity is the wrong question.
    #[error("the pitch line moves at {speed:.2} m/s, below 0.5 m/s: a bath oil does not stay in the mesh; use {instead} instead")]
    GearTooSlow {
        /// Pitch-line speed, m/s.
        speed: f64,
        /// What serves in its place.
        instead: &'static str,
    },
    /// A bearing that runs too fast for grease.
    #[error("a {bore:.0} mm bore at {speed:.0} rev/min is too fast for grease; use oil, or a bearing sealed and greased for life")]
    TooFastForGrease {
        /// Bore, mm.
        bore: f64,
        /// Speed, rev/min.
        speed: f64,
    },
    /// A tolerance class that the standard does not have, or not at this size.
    #[error("ISO 286 gives no limits for {class} at {nominal} mm; choose another letter or grade")]
    NoSuchClass {
        /// The class.
        class: String,
        /// The nominal diameter, mm.
        nominal: f64,
    },
    /// A tolerance class that cannot be read.
    #[error("“{text}” is no tolerance class; write a letter and a grade, such as H7 for a hole or g6 for a shaft")]
    UnreadableClass {
        /// What was written.
        text: String,
    },
    /// A thread's name that cannot be read.
    #[error("“{text}” is no thread; write it as M8, M8x1, 1/4-20, #10-32, 2 BA, 1/4 BSW or 1/4 BSF")]
    UnreadableThread {
        /// What was written.
        text: String,
    },
    /// Two values stand in the wrong order.
    #[error("{what} is {}; it must be less than {than}, {}", of(*value, unit), of(*limit, unit))]
    NotLess {
        /// What the value is.
        what: &'static str,
        /// The value.
        value: f64,
        /// What it must be less than.
        than: &'static str,
        /// That limit.
        limit: f64,
        /// Their unit.
        unit: &'static str,
    },
    /// A question that has no safe or meaningful answer here.
    #[error("{what}: {why}; {instead}")]
    Refused {
        /// What was asked.
        what: &'static str,
        /// Why there is no answer.
        why: &'static str,
        /// What to do instead.
        instead: &'static str,
    },
    /// An equation has no solution between the bounds that make sense.
    #[error("no {what} between {} and {} answers this; check the values it is worked from", trimmed(*low), trimmed(*high))]
    NoRoot {
        /// Symbol of the unknown.
        what: &'static str,
        /// The lower bound tried.
        low: f64,
        /// The upper bound tried.
        high: f64,
    },
}

/// A value with its unit, if it has one.
fn of(value: f64, unit: &str) -> String {
    if unit.is_empty() { trimmed(value) } else { format!("{} {unit}", trimmed(value)) }
}

/// Limits with their unit, if they have one.
fn span(low: f64, high: f64, unit: &str) -> String {
    if high.is_finite() { format!("{} to {}", trimmed(low), of(high, unit)) } else { format!("{} and more", of(low, unit)) }
}

/// Refuses a value that is zero, negative or not a number.
pub(crate) fn positive(what: &'static str, value: f64, unit: &'static str) -> Result<(), FormulaError> {
    if value > 0.0 && value.is_finite() { Ok(()) } else { Err(FormulaError::NotPositive { what, value, unit }) }
}

/// Refuses a value that is negative or not a number.
pub(crate) fn not_negative(what: &'static str, value: f64, unit: &'static str, rule: Source) -> Result<(), FormulaError> {
    if value >= 0.0 && value.is_finite() {
        Ok(())
    } else {
        Err(FormulaError::OutOfRange { what, value, unit, low: 0.0, high: f64::INFINITY, rule })
    }
}

/// Refuses two values in the wrong order.
pub(crate) fn less((what, value): (&'static str, f64), (than, limit): (&'static str, f64), unit: &'static str) -> Result<(), FormulaError> {
    if value < limit { Ok(()) } else { Err(FormulaError::NotLess { what, value, than, limit, unit }) }
}

/// Refuses a value outside the range its source covers.
pub(crate) fn within(what: &'static str, value: f64, unit: &'static str, limits: (f64, f64), rule: Source) -> Result<(), FormulaError> {
    let (low, high) = limits;
    if (low..=high).contains(&value) { Ok(()) } else { Err(FormulaError::OutOfRange { what, value, unit, low, high, rule }) }
}
