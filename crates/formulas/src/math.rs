//! The functions a step may call, named as a formula names them.

/// `base` raised to `exponent`.
#[must_use]
pub fn pow(base: f64, exponent: f64) -> f64 {
    base.powf(exponent)
}

/// The square root.
#[must_use]
pub fn sqrt(x: f64) -> f64 {
    x.sqrt()
}

/// The cube root.
#[must_use]
pub fn cbrt(x: f64) -> f64 {
    x.cbrt()
}

/// The exponential function.
#[must_use]
pub fn exp(x: f64) -> f64 {
    x.exp()
}

/// The natural logarithm.
#[must_use]
pub fn ln(x: f64) -> f64 {
    x.ln()
}

/// The logarithm to base ten.
#[must_use]
pub fn log10(x: f64) -> f64 {
    x.log10()
}

/// The smaller of two numbers.
#[must_use]
pub fn min(a: f64, b: f64) -> f64 {
    a.min(b)
}

/// The larger of two numbers.
#[must_use]
pub fn max(a: f64, b: f64) -> f64 {
    a.max(b)
}

/// The magnitude of a number.
#[must_use]
pub fn abs(x: f64) -> f64 {
    x.abs()
}

/// The next whole number not below `x`.
#[must_use]
pub fn ceil(x: f64) -> f64 {
    x.ceil()
}

/// The sine of an angle in radians.
#[must_use]
pub fn sin(x: f64) -> f64 {
    x.sin()
}

/// The cosine of an angle in radians.
#[must_use]
pub fn cos(x: f64) -> f64 {
    x.cos()
}

/// The tangent of an angle in radians.
#[must_use]
pub fn tan(x: f64) -> f64 {
    x.tan()
}

/// The angle in radians whose tangent is `x`.
#[must_use]
pub fn atan(x: f64) -> f64 {
    x.atan()
}

/// The hyperbolic tangent.
#[must_use]
pub fn tanh(x: f64) -> f64 {
    x.tanh()
}
