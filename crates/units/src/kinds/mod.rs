//! The tables of units, by chapter. Factors are exact definitions or products of them; each chapter names its sources.

pub mod heat;
mod load;
mod matter;
mod motion;
mod size;

/// Seconds in a year of 365.25 days, the Julian year; a month is a twelfth of it.
pub const YEAR: f64 = 31_557_600.0;
/// Seconds in a week.
pub(crate) const WEEK: f64 = 604_800.0;
/// Seconds in a day.
pub(crate) const DAY: f64 = 86_400.0;

/// Standard gravity, m/s²: exact by the third General Conference on Weights and Measures, 1901.
const GRAVITY: f64 = 9.806_65;
/// The avoirdupois pound, kg: exact by the international yard and pound agreement, 1959.
const POUND: f64 = 0.453_592_37;
/// The pound-force, N.
const POUND_FORCE: f64 = POUND * GRAVITY;
/// The US gallon, m³: 231 cubic inches exactly (NIST Handbook 44, appendix C).
const US_GALLON: f64 = 0.003_785_411_784;
/// The imperial gallon, m³: exact by the UK Units of Measurement Regulations 1995.
const IMPERIAL_GALLON: f64 = 0.004_546_09;
