//! Caustic soda: how warm it gets when it dissolves.

use units::{Mass, Ratio, Temperature, TemperatureDifference};
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin;

use super::table::between;
use super::{Dilution, Mixing, dilution, mixing};
use crate::error::{FormulaError, within};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Heat that 1 mol of solid caustic soda gives off in `r` mol of water at 25 °C, kJ.
fn heat_of_solution(water_per_caustic: f64) -> f64 {
    const ROWS: [(f64, f64); 9] = [
        (3.0, 28.87),
        (4.0, 34.43),
        (5.0, 37.74),
        (10.0, 42.51),
        (20.0, 42.84),
        (50.0, 42.51),
        (100.0, 42.34),
        (200.0, 42.26),
        (1_000.0, 42.47),
    ];
    between(&ROWS.map(|(r, heat)| (r.ln_1p(), heat)), water_per_caustic.ln_1p())
}

/// Specific heat at 20 °C in kJ/(kg·K) by mass per cent.
fn specific_heat(w: f64) -> f64 {
    const ROWS: [(f64, f64); 5] = [(0.0, 4.18), (2.2, 4.06), (18.2, 3.49), (30.8, 3.35), (47.0, 3.28)];
    between(&ROWS, w)
}

/// How much warmer water gets when solid caustic soda dissolves in it.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `w` | strength by mass | % |
/// | `r_w` | mol of water for a mol of caustic soda | – |
/// | `H` | heat a mol gives off | kJ/mol |
/// | `c` | specific heat of the solution | kJ/(kg·K) |
///
/// # Range
/// 0.3 to 40 % by mass.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside.
///
/// # Source
/// Integral heats of solution of NBS Circular 500, *from memory* as textbooks reprint them; specific heats of Perry, *from memory*.
///
/// # Example
/// A mol (40 g) in a kilogram of water makes it about 10 K warmer, as school calorimeters find (*from memory*).
/// ```
/// use formulas::{Silent, solution::caustic_rise};
/// use uom::si::{f64::Ratio, ratio::percent, temperature_interval::kelvin};
/// let rise = caustic_rise(&mut Silent, Ratio::new::<percent>(100.0 * 40.0 / 1040.0))?;
/// assert!((rise.get::<kelvin>() - 10.0).abs() < 0.7);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn caustic_rise<R: Recorder>(r: &mut R, strength: Ratio) -> Result<TemperatureDifference, FormulaError> {
    given!(r, w[percent] = strength, "strength by mass");
    within("the strength of the lye", w, "%", (0.3, 40.0), sources::NBS_500)?;
    let H_s = heat_of_solution;
    let c_p = specific_heat;
    step!(r, r_w [] = (100.0 - w) / w * 39.997 / 18.015, sources::ATOMIC_WEIGHTS);
    step!(r, H["kJ/mol"] = H_s(r_w), sources::NBS_500);
    step!(r, c["kJ/(kg·K)"] = c_p(w), sources::PERRY);
    step!(r, Delta_T[kelvin] = 10.0 * w / 39.997 * H / c, sources::DEFINITION);
    Ok(TemperatureDifference::new::<kelvin>(Delta_T))
}

/// A mass of lye from solid caustic soda: what to weigh, and how to mix it.
///
/// # Errors
/// As [`caustic_rise`] and [`mixing`], which refuses a mixture that would pass 60 °C.
///
/// # Source
/// As [`caustic_rise`]; caustic into water, never water onto caustic, is *common practice*.
pub fn caustic_solution<R: Recorder>(
    r: &mut R,
    total: Mass,
    strength: Ratio,
    water: Temperature,
) -> Result<(Dilution, Mixing), FormulaError> {
    let rise = caustic_rise(r, strength)?;
    r.caution(Caution::Danger {
        words: "Always the caustic into cold water, a spoon at a time, stirred, never water onto caustic. Goggles and gloves: it blinds. \
                Never in aluminium or zinc, which it turns into hydrogen. The data sheet comes first.",
    });
    let mixing = mixing(r, water, rise)?;
    Ok((dilution(r, total, Ratio::new::<percent>(100.0), strength)?, mixing))
}
