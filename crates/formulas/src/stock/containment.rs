//! Trays that hold what leaks, and room for what expands.

use units::{TemperatureDifference, Volume};
use uom::si::temperature_interval::kelvin;
use uom::si::volume::liter;

use crate::error::{FormulaError, not_negative, within};
use crate::math::{max, min};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// What a tray under liquids has to hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Containment {
    /// By British practice: 110 % of the largest vessel, and a quarter of all.
    pub british: Volume,
    /// By 40 CFR 264.175: all of the largest vessel, and a tenth of all.
    pub american: Volume,
}

/// What a tray under liquids has to hold, by two rules.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative volume, or a largest vessel that holds more than all together.
///
/// # Source
/// 40 CFR 264.175, and British practice, both *from memory*. Local code comes first.
///
/// # Example
/// The largest holds 5 L, all together 24 L: 6.0 L, or 5.0 L (by hand).
/// ```
/// use formulas::{Silent, stock::containment};
/// use uom::si::{f64::Volume, volume::liter};
/// let litres = Volume::new::<liter>;
/// let tray = containment(&mut Silent, litres(5.0), litres(24.0))?;
/// assert!((tray.british.get::<liter>() - 6.0).abs() < 1e-9);
/// assert!((tray.american.get::<liter>() - 5.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn containment<R: Recorder>(r: &mut R, largest: Volume, total: Volume) -> Result<Containment, FormulaError> {
    given!(r, V_1[liter] = largest, "largest vessel");
    given!(r, V[liter] = total, "all vessels together");
    not_negative("the largest vessel", V_1, "L", sources::DEFINITION)?;
    within("all vessels together", V, "L", (V_1, f64::INFINITY), sources::DEFINITION)?;
    step!(r, V_b[liter] = max(1.1 * V_1, 0.25 * V), sources::COMMON_PRACTICE);
    step!(r, V_a[liter] = max(V_1, 0.1 * V), sources::CFR_264_175);
    r.caution(Caution::Disputed {
        what: "what a tray has to hold",
        why: "British practice asks for more than American law; local code comes first",
    });
    Ok(Containment { british: Volume::new::<liter>(V_b), american: Volume::new::<liter>(V_a) })
}

/// How much a vessel may be filled with, so that what is in it can expand: 95 % at most, or less where it gets much warmer.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `V` | the vessel | L |
/// | `beta` | expansion of the liquid | 1/K |
/// | `Delta_T` | how much warmer it may get | K |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative vessel, expansion or warming.
///
/// # Source
/// Geometry; a twentieth left empty is *common practice*.
///
/// # Example
/// Acetone (1.43·10⁻³ per kelvin, *from memory*) grows by a twentieth from 5 to 40 °C: a litre vessel takes 0.95 L.
/// ```
/// use formulas::{Silent, stock::fill_limit};
/// use uom::si::{f64::{TemperatureInterval, Volume}, temperature_interval::kelvin, volume::liter};
/// let fill = fill_limit(&mut Silent, Volume::new::<liter>(1.0), 1.43e-3, TemperatureInterval::new::<kelvin>(35.0))?;
/// assert!((fill.get::<liter>() - 0.95).abs() < 0.003);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn fill_limit<R: Recorder>(
    r: &mut R,
    vessel: Volume,
    expansion_per_k: f64,
    warmer: TemperatureDifference,
) -> Result<Volume, FormulaError> {
    given!(r, V_v[liter] = vessel, "the vessel");
    given!(r, beta["1/K"] = expansion_per_k, "expansion of the liquid");
    given!(r, Delta_T[kelvin] = warmer, "how much warmer it may get");
    not_negative("the vessel", V_v, "L", sources::DEFINITION)?;
    not_negative("the expansion of the liquid", beta, "1/K", sources::DEFINITION)?;
    not_negative("how much warmer it may get", Delta_T, "K", sources::DEFINITION)?;
    step!(r, V[liter] = V_v * min(0.95, 1.0 / (1.0 + beta * Delta_T)), sources::COMMON_PRACTICE);
    Ok(Volume::new::<liter>(V))
}
