//! Water-mixed cutting fluid in a sump: topping up and evaporation.

#![expect(non_snake_case, reason = "symbols match the source")]

mod care;

use units::{Area, Ratio, Temperature, Velocity, Volume, VolumeRate};
use uom::si::area::square_meter;
use uom::si::pressure::kilopascal;
use uom::si::ratio::{percent, ratio};
use uom::si::velocity::meter_per_second;
use uom::si::volume::liter;
use uom::si::volume_rate::liter_per_second;

use crate::error::{FormulaError, within};
use crate::math::max;
use crate::sources;
use crate::steam::saturation_pressure;
use crate::working::Recorder;
use crate::{given, step};

pub use care::{
    Hardness, MixCare, concentrate_for, concentration_from_reading, germ_care, hardness, hardness_after, ph_care, steady_top_up,
};

/// What to fill a sump up with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TopUp {
    /// How much to add.
    pub add: Volume,
    /// The concentration to mix it at.
    pub mix: Ratio,
    /// The concentration the sump then has.
    pub result: Ratio,
}

/// The mix that brings a sump back to its level and its concentration: c_top = (c_t·V − c_m·V_m)/(V − V_m), and 1 % at least.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `c_t`, `c_m` | concentration wanted, measured | % |
/// | `V`, `V_m` | volume of the full sump, volume in it | L |
///
/// # Errors
/// [`FormulaError::OutOfRange`] unless the sump holds something and is not full.
///
/// # Source
/// Mass balance; never topping up with bare water is *common practice, no source*.
pub fn top_up<R: Recorder>(r: &mut R, wanted: Ratio, measured: Ratio, full: Volume, left: Volume) -> Result<TopUp, FormulaError> {
    given!(r, c_t[percent] = wanted, "concentration wanted");
    given!(r, c_m[percent] = measured, "concentration measured");
    given!(r, V[liter] = full, "volume of the full sump");
    given!(r, V_m[liter] = left, "volume in it");
    within("the volume in the sump", V_m, "L", (0.0, V * (1.0 - 1e-6)), sources::DEFINITION)?;
    step!(r, c_top[percent] = max((c_t * V - c_m * V_m) / (V - V_m), 1.0), sources::COMMON_PRACTICE);
    step!(r, c[percent] = (c_top * (V - V_m) + c_m * V_m) / V, sources::DEFINITION);
    Ok(TopUp { add: full - left, mix: Ratio::new::<percent>(c_top), result: Ratio::new::<percent>(c) })
}

/// Water that evaporates from an open surface: ṁ = A·(p_w − p_a)·(0.089 + 0.0782·u)/2454, in kg/s with pressures in kPa.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `A` | surface | m² |
/// | `p_w`, `p_a` | vapour pressure at the water, in the air | kPa |
/// | `u` | draught over the surface | m/s |
///
/// # Range
/// Water and air at room temperatures.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a humidity outside 0 to 100 % or a temperature at which water is not liquid.
///
/// # Source
/// ASHRAE's equation for pools, *from memory*.
///
/// # Example
/// 0.2 m² at 20 °C and half humidity in a draught of 0.1 m/s lose 0.80 L a day (computed independently).
/// ```
/// use formulas::{Silent, sump::evaporation};
/// use uom::si::f64::{Area, Ratio, ThermodynamicTemperature, Velocity};
/// use uom::si::{area::square_meter, ratio::percent, thermodynamic_temperature::degree_celsius};
/// use uom::si::{velocity::meter_per_second, volume_rate::liter_per_second};
/// let room = ThermodynamicTemperature::new::<degree_celsius>(20.0);
/// let rate = evaporation(
///     &mut Silent,
///     Area::new::<square_meter>(0.2),
///     room,
///     room,
///     Ratio::new::<percent>(50.0),
///     Velocity::new::<meter_per_second>(0.1),
/// )?;
/// assert!((rate.get::<liter_per_second>() * 86_400.0 - 0.80).abs() < 0.04);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn evaporation<R: Recorder>(
    r: &mut R,
    surface: Area,
    water: Temperature,
    air: Temperature,
    humidity: Ratio,
    draught: Velocity,
) -> Result<VolumeRate, FormulaError> {
    given!(r, A[square_meter] = surface, "surface");
    given!(r, u[meter_per_second] = draught, "draught over the surface");
    given!(r, phi [] = humidity.get::<ratio>(), "relative humidity");
    within("the relative humidity", phi, "", (0.0, 1.0), sources::DEFINITION)?;
    let over_water = saturation_pressure(r, water)?;
    let over_air = saturation_pressure(r, air)?;
    given!(r, p_w[kilopascal] = over_water, "vapour pressure at the water");
    given!(r, p_s[kilopascal] = over_air, "vapour pressure of saturated air");
    step!(r, p_a[kilopascal] = phi * p_s, sources::DEFINITION);
    step!(r, m["kg/s"] = max(A * (p_w - p_a) * (0.089 + 0.0782 * u) / 2454.0, 0.0), sources::ASHRAE_POOL);
    // A kilogram of water is a litre.
    Ok(VolumeRate::new::<liter_per_second>(m))
}
