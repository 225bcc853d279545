//! The solver behind `solve!`.

use crate::error::FormulaError;

/// A root and what is left of the equation there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Root {
    /// Where the root lies.
    pub at: f64,
    /// The function's value there.
    pub residual: f64,
}

/// Finds where `f` crosses zero between two bounds, by Brent's method (secant and inverse quadratic steps, kept between the bounds by halving).
///
/// # Errors
/// [`FormulaError::NoRoot`] unless `f` has different signs at the two bounds.
///
/// # Example
/// ```
/// let root = formulas::working::root("x", |x| x * x - 2.0, (0.0, 2.0))?;
/// assert!((root.at - std::f64::consts::SQRT_2).abs() < 1e-12);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn root(what: &'static str, f: impl Fn(f64) -> f64, (low, high): (f64, f64)) -> Result<Root, FormulaError> {
    let (mut a, mut b) = (low, high);
    let (mut fa, mut fb) = (f(a), f(b));
    // NaN at a bound fails this comparison too.
    let crosses = (fa <= 0.0 && fb >= 0.0) || (fa >= 0.0 && fb <= 0.0);
    if !crosses {
        return Err(FormulaError::NoRoot { what, low, high });
    }
    let (mut c, mut fc) = (a, fa);
    let (mut step, mut before) = (b - a, b - a);
    for _ in 0..200 {
        if (fb > 0.0) == (fc > 0.0) {
            (c, fc) = (a, fa);
            step = b - a;
            before = step;
        }
        if fc.abs() < fb.abs() {
            (a, fa) = (b, fb);
            (b, fb) = (c, fc);
            (c, fc) = (a, fa);
        }
        let tolerance = 2.0 * f64::EPSILON * b.abs();
        let half = (c - b) / 2.0;
        if half.abs() <= tolerance || fb == 0.0 {
            break;
        }
        if before.abs() >= tolerance && fa.abs() > fb.abs() {
            let s = fb / fa;
            let (mut p, mut q) = if a == c {
                (2.0 * half * s, 1.0 - s)
            } else {
                let (q, r) = (fa / fc, fb / fc);
                (s * (2.0 * half * q * (q - r) - (b - a) * (r - 1.0)), (q - 1.0) * (r - 1.0) * (s - 1.0))
            };
            if p > 0.0 {
                q = -q;
            }
            p = p.abs();
            if 2.0 * p < (3.0 * half * q - (tolerance * q).abs()).min((before * q).abs()) {
                before = step;
                step = p / q;
            } else {
                step = half;
                before = half;
            }
        } else {
            step = half;
            before = half;
        }
        (a, fa) = (b, fb);
        b += if step.abs() > tolerance { step } else { tolerance.copysign(half) };
        fb = f(b);
    }
    Ok(Root { at: b, residual: fb })
}
