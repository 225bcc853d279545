//! When metal sweats: how slowly iron follows the air, how damp the air is at its face, and what heat, a cover or a dehumidifier change.

#![expect(non_snake_case, reason = "symbols match the source")]

mod keep_dry;
mod year;

use units::{Length, MassDensity, Ratio, Temperature, TemperatureDifference, Time};
use uom::si::length::meter;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin;
use uom::si::time::second;

use crate::error::{FormulaError, not_negative, positive};
use crate::math::{max, pow};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

pub use keep_dry::{cover_power, dehumidifier_rate, surface_margin, water_of_propane};
pub use year::{Balance, Body, BodyYear, Cover, Dehumidifier, Heat, Hour, Room, Sweat, Year, simulate, sweat};

/// Heat of condensation, J/kg, near 10 °C.
pub const CONDENSATION: f64 = 2.47e6;
/// Gas constant of water vapour, J/(kg·K).
pub const VAPOUR_GAS: f64 = 461.5;
/// Density of air in a shop, kg/m³, and its heat, J/(kg·K).
pub const AIR: (f64, f64) = (1.2, 1006.0);
/// Lewis number of water vapour in air to the power ⅔.
pub const LEWIS: f64 = 0.89;
/// Density of cast iron, kg/m³, and its heat, J/(kg·K).
pub const IRON: (f64, f64) = (7200.0, 460.0);
/// Heat exchanged by radiation, W/(m²·K): painted, and bright.
pub const RADIATION: (f64, f64) = (4.6, 1.0);
/// Heat exchanged by still air, W/(m²·K).
pub const CONVECTION: f64 = 3.0;
/// Water a face holds before it runs off, kg/m²; *common practice*.
pub const FILM_MOST: f64 = 0.075;

/// Heat exchanged by still air at an upright face, W/(m²·K): 1.42·(ΔT/L)^¼.
///
/// # Range
/// Laminar flow: faces up to a metre, a few kelvins.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a height of nothing, [`FormulaError::OutOfRange`] for a negative difference.
///
/// # Source
/// ASHRAE Handbook, Fundamentals; *from memory*.
pub fn still_air<R: Recorder>(r: &mut R, difference: TemperatureDifference, height: Length) -> Result<f64, FormulaError> {
    given!(r, Delta_T[kelvin] = difference, "air over metal");
    given!(r, L[meter] = height, "height of the face");
    positive("the height", L, "m")?;
    not_negative("the difference", Delta_T, "K", sources::ASHRAE_FUNDAMENTALS)?;
    step!(r, h_c["W/(m²·K)"] = 1.42 * pow(Delta_T / L, 0.25), sources::ASHRAE_FUNDAMENTALS);
    Ok(h_c)
}

/// How slowly a wall of metal follows the air: τ = ρ·c·t/(2·h), both faces in the air.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `t` | thickness of the wall | m |
/// | `h` | heat exchanged, by air and radiation | W/(m²·K) |
///
/// # Range
/// The wall is as warm inside as outside: Biot's number h·t/(2·k) below 0.1, which any iron casting is.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a value of nothing.
///
/// # Source
/// Lumped capacity, as textbooks of heat transfer give it.
///
/// # Example
/// 25 mm of iron at 7.5 W/(m²·K): 1.53 h (computed independently).
/// ```
/// use formulas::{Silent, sweating::{IRON, lag}};
/// use uom::si::{f64::{Length, MassDensity}, length::millimeter, mass_density::kilogram_per_cubic_meter, time::hour};
/// let iron = MassDensity::new::<kilogram_per_cubic_meter>(IRON.0);
/// let tau = lag(&mut Silent, Length::new::<millimeter>(25.0), iron, IRON.1, 7.5)?;
/// assert!((tau.get::<hour>() - 1.53).abs() < 0.015);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn lag<R: Recorder>(r: &mut R, wall: Length, density: MassDensity, heat_j_per_kg_k: f64, exchange: f64) -> Result<Time, FormulaError> {
    /// Conductivity of cast iron, W/(m·K).
    const IRON_CONDUCTS: f64 = 50.0;
    given!(r, t[meter] = wall, "thickness of the wall");
    given!(r, rho[kilogram_per_cubic_meter] = density, "density");
    given!(r, c["J/(kg·K)"] = heat_j_per_kg_k, "specific heat");
    given!(r, h["W/(m²·K)"] = exchange, "heat exchanged");
    given!(r, k["W/(m·K)"] = IRON_CONDUCTS, "conductivity");
    for (what, value, unit) in
        [("the wall", t, "m"), ("the density", rho, "kg/m³"), ("the specific heat", c, "J/(kg·K)"), ("the heat exchanged", h, "W/(m²·K)")]
    {
        positive(what, value, unit)?;
    }
    step!(r, Bi [] = h * t / (2.0 * k), sources::INCROPERA);
    if Bi > 0.1 {
        r.caution(Caution::Provided { that: "the wall is as warm inside as outside; this one is too thick for that" });
    }
    step!(r, tau[second] = rho * c * t / (2.0 * h), sources::INCROPERA);
    Ok(Time::new::<second>(tau))
}

/// Warmth a face needs over the air so that the air at it is no damper than wanted.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for humidities outside 1 to 100 % or air that Magnus' equation does not cover.
///
/// # Source
/// WMO Guide No. 8, Magnus' equation used both ways.
///
/// # Example
/// Air of 10 °C and 90 %: 6.2 K for 60 % at the face (computed independently).
/// ```
/// use formulas::{Silent, sweating::warmth_over_air};
/// use uom::si::{f64::{Ratio, ThermodynamicTemperature}, ratio::percent, temperature_interval::kelvin, thermodynamic_temperature::degree_celsius};
/// let share = Ratio::new::<percent>;
/// let warmth = warmth_over_air(&mut Silent, ThermodynamicTemperature::new::<degree_celsius>(10.0), share(90.0), share(60.0))?;
/// assert!((warmth.get::<kelvin>() - 6.2).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn warmth_over_air<R: Recorder>(
    r: &mut R,
    air: Temperature,
    humidity: Ratio,
    wanted: Ratio,
) -> Result<TemperatureDifference, FormulaError> {
    use crate::humid_air::{Over, dew_point, vapour_pressure};
    let vapour = vapour_pressure(r, air, humidity, Over::Water)?;
    given!(r, phi_s [] = wanted.get::<ratio>(), "humidity wanted at the face");
    crate::error::within("the humidity wanted at the face", phi_s, "", (0.01, 1.0), sources::DEFINITION)?;
    // The face at which this vapour is φ_s of saturation is the dew point of 1/φ_s times as much.
    let face = dew_point(r, vapour / phi_s, Over::Water)?;
    given!(r, T_s["K"] = face.value, "face at which the air is as damp as wanted");
    given!(r, T["K"] = air.value, "air");
    step!(r, Delta_T[kelvin] = max(T_s - T, 0.0), sources::DEFINITION);
    Ok(TemperatureDifference::new::<kelvin>(Delta_T))
}
