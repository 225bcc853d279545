//! The space between the flanks of bolt and nut, which a locking or sealing liquid fills.

use core::f64::consts::PI;

use units::{Length, Volume};
use uom::si::length::{micrometer, millimeter};
use uom::si::volume::cubic_millimeter;

use super::{Thread, checked, dimensions};
use crate::error::{FormulaError, not_negative, positive};
use crate::math::{max, pow, sqrt};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Ranges of diameter that the tolerances of threads are worked for, mm (ISO 965-1).
const RANGES: [f64; 9] = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45.0, 90.0, 180.0];

/// The lower bound of a pitch diameter below its nominal value, of a 6g bolt, mm: the allowance and the tolerance.
pub(crate) fn bolt_6g<R: Recorder>(r: &mut R, thread: &Thread) -> Result<(f64, f64), FormulaError> {
    checked(thread)?;
    let size = thread.major.get::<millimeter>();
    let above = RANGES.iter().position(|bound| size <= *bound).unwrap_or(RANGES.len());
    let (low, high) = (RANGES.get(above.wrapping_sub(1)).copied().unwrap_or(size), RANGES.get(above).copied().unwrap_or(size));
    given!(r, P[millimeter] = thread.pitch, "pitch");
    given!(r, d_a["mm"] = low, "lower bound of the range of diameters");
    given!(r, d_b["mm"] = high, "upper bound of the range of diameters");
    step!(r, d_m["mm"] = sqrt(d_a * d_b), sources::ISO_965);
    step!(r, e_s["µm"] = 15.0 + 11.0 * P, sources::ISO_965);
    step!(r, T_d2["µm"] = 90.0 * pow(P, 0.4) * pow(d_m, 0.1), sources::ISO_965);
    Ok((e_s / 1000.0, T_d2 / 1000.0))
}

/// The mean gap between the pitch diameters of a 6H nut and a 6g bolt.
///
/// # Errors
/// As [`dimensions`].
///
/// # Source
/// The formulas of ISO 965-1, whose printed values are rounded from them by up to 2 %. Threads other than metric are worked as if they were.
///
/// # Example
/// M8: 0.167 mm (the printed limits of ISO 965-1, *from memory*).
/// ```
/// use formulas::{Silent, thread::{Thread, mean_gap}};
/// use uom::si::length::millimeter;
/// assert!((mean_gap(&mut Silent, &Thread::metric(8.0, 1.25))?.get::<millimeter>() / 0.167 - 1.0).abs() < 0.03);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn mean_gap<R: Recorder>(r: &mut R, thread: &Thread) -> Result<Length, FormulaError> {
    let (allowance, tolerance) = bolt_6g(r, thread)?;
    if thread.form != super::Form::Metric {
        r.caution(Caution::Rough { what: "the gap between the flanks", why: "the thread is worked with the tolerances of a metric one" });
    }
    given!(r, e_s["mm"] = allowance, "allowance of the bolt");
    given!(r, T_d2["mm"] = tolerance, "tolerance of the bolt's pitch diameter");
    step!(r, T_D2["mm"] = 1.32 * T_d2, sources::ISO_965);
    step!(r, g[millimeter] = e_s + (T_d2 + T_D2) / 2.0, sources::ISO_965);
    Ok(Length::new::<millimeter>(g))
}

/// The space between bolt and nut over the length engaged: what a drop of threadlocker or sealant has to fill.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `d_2`, `P` | pitch diameter, pitch | mm |
/// | `L` | length engaged | mm |
/// | `g` | mean gap of the pitch diameters | mm |
///
/// # Errors
/// As [`dimensions`]; [`FormulaError::NotPositive`] for a length of nothing, [`FormulaError::OutOfRange`] for a negative gap.
///
/// # Source
/// Geometry; the part at crests and roots, 0.04·P, is *common practice*. Apply twice as much, and again twice for a worn or die-cut thread.
///
/// # Example
/// M8 over 6.4 mm with a gap of 0.167 mm: 19.3 mm³ (computed independently).
/// ```
/// use formulas::{Silent, thread::{Thread, locking_volume}};
/// use uom::si::{f64::Length, length::millimeter, volume::cubic_millimeter};
/// let mm = Length::new::<millimeter>;
/// let space = locking_volume(&mut Silent, &Thread::metric(8.0, 1.25), mm(6.4), mm(0.167))?;
/// assert!((space.get::<cubic_millimeter>() - 19.3).abs() < 0.3);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn locking_volume<R: Recorder>(r: &mut R, thread: &Thread, engaged: Length, gap: Length) -> Result<Volume, FormulaError> {
    let d_2 = dimensions(r, thread)?.pitch_diameter;
    given!(r, d_2[millimeter] = d_2, "pitch diameter");
    given!(r, P[millimeter] = thread.pitch, "pitch");
    given!(r, L[millimeter] = engaged, "length engaged");
    positive("the length engaged", L, "mm")?;
    given!(r, g[millimeter] = gap, "mean gap of the pitch diameters");
    not_negative("the gap between the threads", gap.get::<micrometer>(), "µm", sources::ISO_965)?;
    step!(r, V[cubic_millimeter] = PI * d_2 * L * (g / 2.0 + 0.04 * P), sources::COMMON_PRACTICE);
    Ok(Volume::new::<cubic_millimeter>(max(V, 0.0)))
}
