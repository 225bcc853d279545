//! The ventilation manual's rules for diluting vapour with air, in its own units.

use units::VolumeRate;
use uom::si::volume_rate::cubic_foot_per_minute;

use crate::error::{FormulaError, positive, within};
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

/// Air to dilute what evaporates to a limit: Q = 403·10⁶·SG·e·K/(M·ppm), in ft³/min with e in US pints a minute.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a value of nothing.
///
/// # Source
/// American ventilation manual, dilution for health; *from memory*.
///
/// # Example
/// 3.16 g/min of acetone (0.0085 pint/min) at 250 ppm, K 3: 556 ft³/min (computed independently).
/// ```
/// use formulas::{Silent, room_air::dilution_for_limit};
/// use uom::si::volume_rate::cubic_foot_per_minute;
/// let q = dilution_for_limit(&mut Silent, 3.16 / 0.79 / 473.176, 0.79, 58.08, 250.0, 3.0)?;
/// assert!((q.get::<cubic_foot_per_minute>() - 556.0).abs() < 11.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn dilution_for_limit<R: Recorder>(
    r: &mut R,
    pints_per_minute: f64,
    specific_gravity: f64,
    molar_mass_g: f64,
    limit_ppm: f64,
    mixing: f64,
) -> Result<VolumeRate, FormulaError> {
    given!(r, e["pint/min"] = pints_per_minute, "evaporation");
    given!(r, SG [] = specific_gravity, "specific gravity");
    given!(r, M["g/mol"] = molar_mass_g, "molar mass");
    given!(r, L["ppm"] = limit_ppm, "limit");
    given!(r, K [] = mixing, "mixing factor");
    for (what, value) in [("the evaporation", e), ("the specific gravity", SG), ("the molar mass", M), ("the limit", L)] {
        positive(what, value, "")?;
    }
    within("the mixing factor", K, "", (1.0, 10.0), sources::ACGIH_VENTILATION)?;
    step!(r, Q["ft³/min"] = 403e6 * SG * e * K / (M * L), sources::ACGIH_VENTILATION);
    Ok(VolumeRate::new::<cubic_foot_per_minute>(Q))
}

/// Air to keep vapour from burning: Q = 403·100·SG·e·S_f/(M·LEL·B), in ft³/min; a quarter of the limit with S_f 4.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a value of nothing.
///
/// # Source
/// American ventilation manual, dilution for fire; *from memory*. B is 1 up to 120 °C.
///
/// # Example
/// The manual's own (*from memory*): two pints of xylene an hour (SG 0.88, 106 g/mol, 1 %) with S_f 10 and, in its hot oven, B 0.7 take
/// 159 ft³/min; with B 1 that is 0.7 of it.
/// ```
/// use formulas::{Silent, room_air::dilution_for_fire};
/// use uom::si::volume_rate::cubic_foot_per_minute;
/// let q = dilution_for_fire(&mut Silent, 2.0 / 60.0, 0.88, 106.0, 1.0, 10.0)?;
/// assert!((q.get::<cubic_foot_per_minute>() - 0.7 * 159.0).abs() < 0.5);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn dilution_for_fire<R: Recorder>(
    r: &mut R,
    pints_per_minute: f64,
    specific_gravity: f64,
    molar_mass_g: f64,
    lower_limit_percent: f64,
    safety: f64,
) -> Result<VolumeRate, FormulaError> {
    given!(r, e["pint/min"] = pints_per_minute, "evaporation");
    given!(r, SG [] = specific_gravity, "specific gravity");
    given!(r, M["g/mol"] = molar_mass_g, "molar mass");
    given!(r, LEL["%"] = lower_limit_percent, "lower flammable limit");
    given!(r, S_f [] = safety, "safety factor");
    for (what, value) in
        [("the evaporation", e), ("the specific gravity", SG), ("the molar mass", M), ("the lower limit", LEL), ("the safety factor", S_f)]
    {
        positive(what, value, "")?;
    }
    step!(r, Q["ft³/min"] = 403.0 * 100.0 * SG * e * S_f / (M * LEL), sources::ACGIH_VENTILATION);
    Ok(VolumeRate::new::<cubic_foot_per_minute>(Q))
}
