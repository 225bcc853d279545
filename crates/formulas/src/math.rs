//! The functions a step may call, named as a formula names them.
//!
//! They are inlined so that a power with a known exponent costs what it would cost written out.

/// `base` raised to `exponent`.
#[inline]
#[must_use]
pub fn pow(base: f64, exponent: f64) -> f64 {
    base.powf(exponent)
}

/// The square root.
#[inline]
#[must_use]
pub fn sqrt(x: f64) -> f64 {
    x.sqrt()
}

/// The cube root.
#[inline]
#[must_use]
pub fn cbrt(x: f64) -> f64 {
    x.cbrt()
}

/// The exponential function.
#[inline]
#[must_use]
pub fn exp(x: f64) -> f64 {
    x.exp()
}

/// The natural logarithm.
#[inline]
#[must_use]
pub fn ln(x: f64) -> f64 {
    x.ln()
}

/// The logarithm to base ten.
#[inline]
#[must_use]
pub fn log10(x: f64) -> f64 {
    x.log10()
}

/// The smaller of two numbers.
#[inline]
#[must_use]
pub fn min(a: f64, b: f64) -> f64 {
    a.min(b)
}

/// The larger of two numbers.
#[inline]
#[must_use]
pub fn max(a: f64, b: f64) -> f64 {
    a.max(b)
}

/// The magnitude of a number.
#[inline]
#[must_use]
pub fn abs(x: f64) -> f64 {
    x.abs()
}

/// The next whole number not below `x`.
#[inline]
#[must_use]
pub fn ceil(x: f64) -> f64 {
    x.ceil()
}

/// The sine of an angle in radians.
#[inline]
#[must_use]
pub fn sin(x: f64) -> f64 {
    x.sin()
}

/// The cosine of an angle in radians.
#[inline]
#[must_use]
pub fn cos(x: f64) -> f64 {
    x.cos()
}

/// The tangent of an angle in radians.
#[inline]
#[must_use]
pub fn tan(x: f64) -> f64 {
    x.tan()
}

/// The angle in radians whose tangent is `x`.
#[inline]
#[must_use]
pub fn atan(x: f64) -> f64 {
    x.atan()
}

/// The hyperbolic tangent.
#[inline]
#[must_use]
pub fn tanh(x: f64) -> f64 {
    x.tanh()
}
