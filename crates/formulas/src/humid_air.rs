//! Damp air: vapour pressure, dew point, what it weighs, and how damp it is at a surface of another temperature.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{MassDensity, Pressure, Ratio, Temperature};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;

use crate::error::{FormulaError, positive, within};
use crate::math::{exp, ln};
use crate::sources;
use crate::working::Recorder;
use crate::{given, solve, step};

/// What a relative humidity below freezing refers to.
///
/// Weather stations report over water at every temperature; handbooks of air conditioning count over ice below 0 °C.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Over {
    /// Over water, supercooled below 0 °C.
    Water,
    /// Over ice below 0 °C, over water above.
    IceWhenFrozen,
}

impl Over {
    /// The two numbers of Magnus' equation at a temperature in °C.
    fn coefficients(self, celsius: f64) -> (f64, f64) {
        match self {
            Self::IceWhenFrozen if celsius < 0.0 => (22.46, 272.62),
            _ => (17.62, 243.12),
        }
    }
}

/// Coldest and hottest air that Magnus' equation covers, °C; the hot end is carried 40 K beyond the guide's with an error below 1 %.
const COVERED_C: (f64, f64) = (-65.0, 100.0);

/// Saturation pressure in Pa over water, without working or checks: for a simulation's inner loop.
#[must_use]
pub fn saturation_pascals(celsius: f64) -> f64 {
    611.2 * (17.62 * celsius / (243.12 + celsius)).exp()
}

/// How steeply [`saturation_pascals`] rises, Pa/K.
#[must_use]
pub fn saturation_slope(celsius: f64, saturation: f64) -> f64 {
    let below = 243.12 + celsius;
    saturation * 17.62 * 243.12 / (below * below)
}

/// Pressure of saturated vapour: e_s = 611.2·e^(a·t/(b + t)).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `t` | temperature | °C |
/// | `a`, `b` | 17.62 and 243.12 over water, 22.46 and 272.62 over ice | –, °C |
///
/// # Range
/// −65 to 100 °C; within 0.3 % from −40 to 60 °C, within 1 % elsewhere.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside.
///
/// # Source
/// WMO Guide to Instruments and Methods of Observation (No. 8), Magnus' equation. Checked in `tests/published/humid_air.csv`.
///
/// # Example
/// 2.34 kPa at 20 °C (steam tables: 2.339).
/// ```
/// use formulas::{Silent, humid_air::{Over, saturation}};
/// use uom::si::{f64::ThermodynamicTemperature, pressure::pascal, thermodynamic_temperature::degree_celsius};
/// let e = saturation(&mut Silent, ThermodynamicTemperature::new::<degree_celsius>(20.0), Over::Water)?;
/// assert!((e.get::<pascal>() - 2339.0).abs() < 7.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn saturation<R: Recorder>(r: &mut R, at: Temperature, over: Over) -> Result<Pressure, FormulaError> {
    given!(r, t["°C"] = at.get::<degree_celsius>(), "temperature");
    within("the temperature of the air", t, "°C", COVERED_C, sources::WMO_8)?;
    let (a, b) = over.coefficients(t);
    given!(r, a [] = a, "coefficient of Magnus' equation");
    given!(r, b["°C"] = b, "coefficient of Magnus' equation");
    step!(r, e_s[pascal] = 611.2 * exp(a * t / (b + t)), sources::WMO_8);
    Ok(Pressure::new::<pascal>(e_s))
}

/// Vapour pressure of damp air: e = φ·e_s.
///
/// # Errors
/// As [`saturation`]; [`FormulaError::OutOfRange`] for a humidity outside 0 to 100 %.
///
/// # Source
/// Definition.
pub fn vapour_pressure<R: Recorder>(r: &mut R, at: Temperature, humidity: Ratio, over: Over) -> Result<Pressure, FormulaError> {
    let saturated = saturation(r, at, over)?;
    given!(r, phi [] = humidity.get::<ratio>(), "relative humidity");
    given!(r, e_s[pascal] = saturated, "saturation pressure");
    within("the relative humidity", phi, "", (0.0, 1.0), sources::DEFINITION)?;
    step!(r, e[pascal] = phi * e_s, sources::DEFINITION);
    Ok(Pressure::new::<pascal>(e))
}

/// Dew point of air with that vapour pressure; the frost point, where it is counted over ice and lies below freezing.
///
/// # Range
/// As [`saturation`].
///
/// # Errors
/// [`FormulaError::NotPositive`] for dry air, which has none; [`FormulaError::OutOfRange`] outside.
///
/// # Source
/// WMO Guide No. 8, Magnus' equation solved for the temperature.
///
/// # Example
/// 15 °C and 90 %: 13.37 °C; 20 °C and 60 %: 12.01 °C (library values).
/// ```
/// use formulas::{Silent, humid_air::{Over, dew_point, vapour_pressure}};
/// use uom::si::{f64::{Ratio, ThermodynamicTemperature}, ratio::percent, thermodynamic_temperature::degree_celsius};
/// let dew = |celsius, phi| {
///     let at = ThermodynamicTemperature::new::<degree_celsius>(celsius);
///     let e = vapour_pressure(&mut Silent, at, Ratio::new::<percent>(phi), Over::Water)?;
///     dew_point(&mut Silent, e, Over::Water).map(|dew| dew.get::<degree_celsius>())
/// };
/// assert!((dew(15.0, 90.0)? - 13.37).abs() < 0.05);
/// assert!((dew(20.0, 60.0)? - 12.01).abs() < 0.05);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn dew_point<R: Recorder>(r: &mut R, vapour: Pressure, over: Over) -> Result<Temperature, FormulaError> {
    const FREEZING_PA: f64 = 611.2;
    given!(r, e[pascal] = vapour, "vapour pressure");
    positive("the vapour pressure", e, "Pa")?;
    let (a, b) = over.coefficients(if e < FREEZING_PA { -1.0 } else { 1.0 });
    given!(r, a [] = a, "coefficient of Magnus' equation");
    given!(r, b["°C"] = b, "coefficient of Magnus' equation");
    step!(r, gamma [] = ln(e / 611.2), sources::WMO_8);
    step!(r, t_d["°C"] = b * gamma / (a - gamma), sources::WMO_8);
    within("the dew point", t_d, "°C", COVERED_C, sources::WMO_8)?;
    Ok(Temperature::new::<degree_celsius>(t_d))
}

/// Relative humidity right at a surface of another temperature than the air's: φ_s = e/e_s(t_s). Above one, water condenses.
///
/// # Errors
/// As [`saturation`].
///
/// # Source
/// Definition.
pub fn humidity_at_surface<R: Recorder>(r: &mut R, vapour: Pressure, surface: Temperature) -> Result<Ratio, FormulaError> {
    let saturated = saturation(r, surface, Over::Water)?;
    given!(r, e[pascal] = vapour, "vapour pressure of the air");
    given!(r, e_s[pascal] = saturated, "saturation pressure at the surface");
    step!(r, phi_s [] = e / e_s, sources::DEFINITION);
    Ok(Ratio::new::<ratio>(phi_s))
}

/// Water in a kilogram of dry air: w = 0.621 945·e/(p − e).
///
/// # Errors
/// [`FormulaError::NotPositive`] unless the air's pressure is above the vapour's.
///
/// # Source
/// ASHRAE Handbook, Fundamentals, chapter 1.
///
/// # Example
/// 20 °C, 60 %, sea level: 0.008 73 (library value).
/// ```
/// use formulas::{Silent, humid_air::humidity_ratio};
/// use uom::si::{f64::Pressure, pressure::pascal};
/// let w = humidity_ratio(&mut Silent, Pressure::new::<pascal>(1403.0), Pressure::new::<pascal>(101_325.0))?;
/// assert!((w - 0.008_73).abs() < 0.000_04);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn humidity_ratio<R: Recorder>(r: &mut R, vapour: Pressure, air: Pressure) -> Result<f64, FormulaError> {
    given!(r, e[pascal] = vapour, "vapour pressure");
    given!(r, p[pascal] = air, "pressure of the air");
    positive("what the air's pressure leaves beside the vapour's", p - e, "Pa")?;
    step!(r, w["kg/kg"] = 0.621945 * e / (p - e), sources::ASHRAE_FUNDAMENTALS);
    Ok(w)
}

/// What damp air weighs: ρ = (1 + w)·(p − e)/(287.042·T).
///
/// # Errors
/// As [`humidity_ratio`].
///
/// # Source
/// ASHRAE Handbook, Fundamentals, chapter 1.
pub fn density<R: Recorder>(r: &mut R, at: Temperature, vapour: Pressure, air: Pressure) -> Result<MassDensity, FormulaError> {
    let water = humidity_ratio(r, vapour, air)?;
    given!(r, w["kg/kg"] = water, "water in the dry air");
    given!(r, e[pascal] = vapour, "vapour pressure");
    given!(r, p[pascal] = air, "pressure of the air");
    given!(r, T["K"] = at.value, "temperature");
    positive("the temperature", T, "K")?;
    step!(r, rho[kilogram_per_cubic_meter] = (1.0 + w) * (p - e) / (287.042 * T), sources::ASHRAE_FUNDAMENTALS);
    Ok(MassDensity::new::<kilogram_per_cubic_meter>(rho))
}

/// Wet-bulb temperature, from the balance of heat at a wet (below freezing: iced) bulb.
///
/// # Errors
/// As [`saturation`] and [`humidity_ratio`]; [`FormulaError::NoRoot`] where no bulb balances.
///
/// # Source
/// ASHRAE Handbook, Fundamentals, chapter 1, equations 33 and 35.
pub fn wet_bulb<R: Recorder>(r: &mut R, at: Temperature, vapour: Pressure, air: Pressure) -> Result<Temperature, FormulaError> {
    let water = humidity_ratio(r, vapour, air)?;
    given!(r, t["°C"] = at.get::<degree_celsius>(), "temperature");
    given!(r, w["kg/kg"] = water, "water in the dry air");
    let pressure = air.get::<pascal>();
    within("the temperature of the air", t, "°C", COVERED_C, sources::WMO_8)?;
    let W = |bulb: f64| {
        let (a, b) = Over::IceWhenFrozen.coefficients(bulb);
        let e = (611.2 * (a * bulb / (b + bulb)).exp()).min(0.99 * pressure);
        let saturated = 0.621_945 * e / (pressure - e);
        if bulb >= 0.0 {
            ((2501.0 - 2.326 * bulb) * saturated - 1.006 * (t - bulb)) / (2501.0 + 1.86 * t - 4.186 * bulb)
        } else {
            ((2830.0 - 0.24 * bulb) * saturated - 1.006 * (t - bulb)) / (2830.0 + 1.86 * t - 2.1 * bulb)
        }
    };
    solve!(r, t_w["°C"] in (t - 60.0, t + 0.01): W(t_w) == w, sources::ASHRAE_FUNDAMENTALS);
    Ok(Temperature::new::<degree_celsius>(t_w))
}
