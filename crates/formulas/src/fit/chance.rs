//! The gap two toleranced parts leave, and how likely it is to be this or that.

use units::{Length, Range};
use uom::si::length::micrometer;

use super::Limits;
use crate::error::{FormulaError, positive};
use crate::math::{max, pow, sqrt};
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

/// The normal distribution: the share of draws below `z` standard deviations from the mean.
#[expect(non_snake_case, reason = "symbols match the source")]
#[must_use]
pub fn Phi(z: f64) -> f64 {
    0.5 * libm::erfc(-z / std::f64::consts::SQRT_2)
}

/// The gap between a hole and a shaft within their limits: least, mean, most.
///
/// # Source
/// ISO 286-1.
///
/// # Example
/// 25 mm H7/s6 interferes by 14 to 48 µm, 31 in the mean (ISO 286, *from memory*).
/// ```
/// use formulas::{Silent, fit::{clearance, limits}};
/// use uom::si::{f64::Length, length::{micrometer, millimeter}};
/// let nominal = Length::new::<millimeter>(25.0);
/// let hole = limits(&mut Silent, nominal, "H7".parse()?)?;
/// let shaft = limits(&mut Silent, nominal, "s6".parse()?)?;
/// let gap = clearance(&mut Silent, hole, shaft);
/// assert!((gap.low.get::<micrometer>() + 48.0).abs() < 1e-9);
/// assert!((gap.likely.get::<micrometer>() + 31.0).abs() < 1e-9);
/// assert!((gap.high.get::<micrometer>() + 14.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn clearance<R: Recorder>(r: &mut R, hole: Limits, shaft: Limits) -> Range<Length> {
    given!(r, ES[micrometer] = hole.upper, "upper deviation of the hole");
    given!(r, EI[micrometer] = hole.lower, "lower deviation of the hole");
    given!(r, es[micrometer] = shaft.upper, "upper deviation of the shaft");
    given!(r, ei[micrometer] = shaft.lower, "lower deviation of the shaft");
    step!(r, c_min[micrometer] = EI - es, sources::ISO_286);
    step!(r, c_max[micrometer] = ES - ei, sources::ISO_286);
    step!(r, c_mean[micrometer] = (c_min + c_max) / 2.0, sources::ISO_286);
    Range { low: c_min, likely: c_mean, high: c_max }.map(Length::new::<micrometer>)
}

/// The chance that the gap is below `c`, when each part may lie anywhere within its limits with equal chance.
///
/// The difference of two even draws has a trapezoid for its density; its area below `c` is worked in closed form from the four corners.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `a`, `b` | width of the hole's and of the shaft's zone | µm |
/// | `x` | the gap asked about, counted from the least gap | µm |
///
/// # Errors
/// [`FormulaError::NotPositive`] if a part has no tolerance.
///
/// # Source
/// Plain geometry of the trapezoid. That parts lie evenly within their limits is *common practice*; compare [`chance_below_normal`], and
/// decide on the worse.
///
/// # Example
/// One 25 mm H7/n6 in fifteen is loose: 0.0659 (computed independently).
/// ```
/// use formulas::{Silent, fit::{chance_below_uniform, limits}};
/// use uom::si::{f64::Length, length::millimeter};
/// let nominal = Length::new::<millimeter>(25.0);
/// let hole = limits(&mut Silent, nominal, "H7".parse()?)?;
/// let shaft = limits(&mut Silent, nominal, "n6".parse()?)?;
/// let interferes = chance_below_uniform(&mut Silent, hole, shaft, Length::new::<millimeter>(0.0))?;
/// assert!((1.0 - interferes - 0.0659).abs() < 0.001);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn chance_below_uniform<R: Recorder>(r: &mut R, hole: Limits, shaft: Limits, c: Length) -> Result<f64, FormulaError> {
    given!(r, a[micrometer] = hole.upper - hole.lower, "width of the hole's zone");
    given!(r, b[micrometer] = shaft.upper - shaft.lower, "width of the shaft's zone");
    positive("the hole's tolerance", a, "µm")?;
    positive("the shaft's tolerance", b, "µm")?;
    given!(r, c[micrometer] = c, "the gap asked about");
    given!(r, c_min[micrometer] = hole.lower - shaft.upper, "least gap");
    step!(r, x[micrometer] = c - c_min, sources::DEFINITION);
    step!(
        r,
        s["µm²"] = pow(max(x, 0.0), 2.0) - pow(max(x - a, 0.0), 2.0) - pow(max(x - b, 0.0), 2.0) + pow(max(x - a - b, 0.0), 2.0),
        sources::DEFINITION
    );
    step!(r, P [] = s / (2.0 * a * b), sources::DEFINITION);
    // Far beyond the trapezoid the four squares cancel only to the last digits.
    Ok(P.clamp(0.0, 1.0))
}

/// The chance that the gap is below `c`, when each part is drawn from a normal distribution of a sixth of its tolerance about its middle.
///
/// # Errors
/// [`FormulaError::NotPositive`] if a part has no tolerance.
///
/// # Source
/// The normal distribution. That σ is a sixth of the tolerance is *common practice*, and flatters a home shop.
///
/// # Example
/// 25 mm H7/k6 interferes in 31 % of pairs: 0.3135 (computed independently).
/// ```
/// use formulas::{Silent, fit::{chance_below_normal, limits}};
/// use uom::si::{f64::Length, length::millimeter};
/// let nominal = Length::new::<millimeter>(25.0);
/// let hole = limits(&mut Silent, nominal, "H7".parse()?)?;
/// let shaft = limits(&mut Silent, nominal, "k6".parse()?)?;
/// let interferes = chance_below_normal(&mut Silent, hole, shaft, Length::new::<millimeter>(0.0))?;
/// assert!((interferes - 0.3135).abs() < 0.002);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn chance_below_normal<R: Recorder>(r: &mut R, hole: Limits, shaft: Limits, c: Length) -> Result<f64, FormulaError> {
    given!(r, a[micrometer] = hole.upper - hole.lower, "width of the hole's zone");
    given!(r, b[micrometer] = shaft.upper - shaft.lower, "width of the shaft's zone");
    positive("the hole's tolerance", a, "µm")?;
    positive("the shaft's tolerance", b, "µm")?;
    given!(r, c[micrometer] = c, "the gap asked about");
    given!(r, c_mean[micrometer] = (hole.upper + hole.lower - shaft.upper - shaft.lower) / 2.0, "mean gap");
    step!(r, sigma[micrometer] = sqrt(pow(a / 6.0, 2.0) + pow(b / 6.0, 2.0)), sources::COMMON_PRACTICE);
    step!(r, P [] = Phi((c - c_mean) / sigma), sources::DEFINITION);
    Ok(P)
}
