//! Steam: the temperature it condenses at, and the pressure it has over water.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{Pressure, Temperature};
use uom::si::pressure::{bar, megapascal};
use uom::si::thermodynamic_temperature::kelvin;

use crate::error::{FormulaError, within};
use crate::math::{pow, sqrt};
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

/// Standard atmosphere, bar.
pub const ATMOSPHERE_BAR: f64 = 1.013_25;

/// Saturation temperature of steam at a gauge pressure, over a standard atmosphere.
///
/// # Range
/// As [`saturation_temperature_at`].
///
/// # Errors
/// As [`saturation_temperature_at`].
///
/// # Source
/// IAPWS-IF97, equation 31. Checked in `tests/published/saturated_steam.csv`.
///
/// # Example
/// 4 bar on the gauge is 151.9 °C (computed independently).
/// ```
/// use formulas::{Silent, steam::saturation_temperature};
/// use uom::si::{f64::Pressure, pressure::bar, thermodynamic_temperature::degree_celsius};
/// let at = saturation_temperature(&mut Silent, Pressure::new::<bar>(4.0))?;
/// assert!((at.get::<degree_celsius>() - 151.9).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn saturation_temperature<R: Recorder>(r: &mut R, gauge: Pressure) -> Result<Temperature, FormulaError> {
    saturation_temperature_over(r, gauge, Pressure::new::<bar>(ATMOSPHERE_BAR))
}

/// Saturation temperature of steam at a gauge pressure, over the air pressure of the day or the place.
///
/// # Errors
/// As [`saturation_temperature_at`].
///
/// # Source
/// IAPWS-IF97, equation 31.
pub fn saturation_temperature_over<R: Recorder>(r: &mut R, gauge: Pressure, air: Pressure) -> Result<Temperature, FormulaError> {
    given!(r, p_g[bar] = gauge, "pressure on the gauge");
    given!(r, p_a[bar] = air, "pressure of the air");
    step!(r, p[bar] = p_g + p_a, sources::DEFINITION);
    saturation_temperature_at(r, Pressure::new::<bar>(p))
}

/// Saturation temperature of water at an absolute pressure.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `p` | absolute pressure | MPa |
/// | `T` | saturation temperature | K |
///
/// # Range
/// 0.000 611 213 to 22.064 MPa: from the triple point to the critical point.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside.
///
/// # Source
/// IAPWS-IF97, equation 31 with the coefficients of its table 34; checked against its table 36.
///
/// # Example
/// Table 36: 372.755 919 K at 0.1 MPa.
/// ```
/// use formulas::{Silent, steam::saturation_temperature_at};
/// use uom::si::{f64::Pressure, pressure::megapascal, thermodynamic_temperature::kelvin};
/// let at = saturation_temperature_at(&mut Silent, Pressure::new::<megapascal>(0.1))?;
/// assert!((at.get::<kelvin>() - 372.755_919).abs() < 1e-6);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn saturation_temperature_at<R: Recorder>(r: &mut R, absolute: Pressure) -> Result<Temperature, FormulaError> {
    given!(r, p[megapascal] = absolute, "absolute pressure");
    within("the absolute pressure", p, "MPa", (6.112_13e-4, 22.064), sources::IAPWS_IF97)?;
    step!(r, beta [] = pow(p, 0.25), sources::IAPWS_IF97);
    step!(r, E [] = pow(beta, 2.0) - 17.073846940092 * beta + 14.915108613530, sources::IAPWS_IF97);
    step!(r, F [] = 1167.0521452767 * pow(beta, 2.0) + 12020.82470247 * beta - 4823.2657361591, sources::IAPWS_IF97);
    step!(r, G [] = -724213.16703206 * pow(beta, 2.0) - 3232555.0322333 * beta + 405113.40542057, sources::IAPWS_IF97);
    step!(r, D [] = 2.0 * G / (-F - sqrt(pow(F, 2.0) - 4.0 * E * G)), sources::IAPWS_IF97);
    step!(
        r,
        T[kelvin] = (650.17534844798 + D - sqrt(pow(650.17534844798 + D, 2.0) - 4.0 * (-0.23855557567849 + 650.17534844798 * D))) / 2.0,
        sources::IAPWS_IF97
    );
    Ok(Temperature::new::<kelvin>(T))
}

/// Vapour pressure of water at a temperature.
///
/// # Range
/// 273.15 to 647.096 K.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside.
///
/// # Source
/// IAPWS-IF97, equation 30; checked against its table 35.
///
/// # Example
/// Table 35: 0.353 658 941×10⁻² MPa at 300 K.
/// ```
/// use formulas::{Silent, steam::saturation_pressure};
/// use uom::si::{f64::ThermodynamicTemperature, pressure::megapascal, thermodynamic_temperature::kelvin};
/// let pressure = saturation_pressure(&mut Silent, ThermodynamicTemperature::new::<kelvin>(300.0))?;
/// assert!((pressure.get::<megapascal>() - 0.353_658_941e-2).abs() < 1e-11);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn saturation_pressure<R: Recorder>(r: &mut R, at: Temperature) -> Result<Pressure, FormulaError> {
    given!(r, T[kelvin] = at, "temperature");
    within("the temperature", T, "K", (273.15, 647.096), sources::IAPWS_IF97)?;
    step!(r, theta [] = T - 0.23855557567849 / (T - 650.17534844798), sources::IAPWS_IF97);
    step!(r, A [] = pow(theta, 2.0) + 1167.0521452767 * theta - 724213.16703206, sources::IAPWS_IF97);
    step!(r, B [] = -17.073846940092 * pow(theta, 2.0) + 12020.82470247 * theta - 3232555.0322333, sources::IAPWS_IF97);
    step!(r, C [] = 14.915108613530 * pow(theta, 2.0) - 4823.2657361591 * theta + 405113.40542057, sources::IAPWS_IF97);
    step!(r, p[megapascal] = pow(2.0 * C / (-B + sqrt(pow(B, 2.0) - 4.0 * A * C)), 4.0), sources::IAPWS_IF97);
    Ok(Pressure::new::<megapascal>(p))
}
