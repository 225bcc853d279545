//! What it takes to keep metal dry: a cover with a little heat, or a dehumidifier.

use units::{Area, Frequency, Power, Ratio, Temperature, TemperatureDifference, Volume};
use uom::si::area::square_meter;
use uom::si::frequency::cycle_per_hour;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::power::watt;
use uom::si::pressure::pascal;
use uom::si::temperature_interval::kelvin;
use uom::si::volume::cubic_meter;

use crate::error::{FormulaError, not_negative, positive};
use crate::humid_air::{Over, density, humidity_ratio, vapour_pressure};
use crate::math::max;
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Heat that keeps a covered machine warmer than the air: P = U·A·ΔT.
///
/// # Errors
/// [`FormulaError::NotPositive`] for an area or transmittance of nothing, [`FormulaError::OutOfRange`] for a negative difference.
///
/// # Source
/// Definition; 5 W/(m²·K) for a cloth or tarpaulin is *common practice*.
///
/// # Example
/// 3 m² at 5 W/(m²·K), 6.2 K: 93 W (computed independently).
/// ```
/// use formulas::{Silent, sweating::cover_power};
/// use uom::si::{area::square_meter, f64::{Area, TemperatureInterval}, power::watt, temperature_interval::kelvin};
/// let power = cover_power(&mut Silent, Area::new::<square_meter>(3.0), 5.0, TemperatureInterval::new::<kelvin>(6.2))?;
/// assert!((power.get::<watt>() - 93.0).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn cover_power<R: Recorder>(r: &mut R, area: Area, transmittance: f64, warmth: TemperatureDifference) -> Result<Power, FormulaError> {
    given!(r, A[square_meter] = area, "area of the cover");
    given!(r, U["W/(m²·K)"] = transmittance, "heat the cover lets through");
    given!(r, Delta_T[kelvin] = warmth, "warmth over the air");
    positive("the area", A, "m²")?;
    positive("the transmittance", U, "W/(m²·K)")?;
    not_negative("the warmth", Delta_T, "K", sources::DEFINITION)?;
    step!(r, P[watt] = U * A * Delta_T, sources::DEFINITION);
    Ok(Power::new::<watt>(P))
}

/// Margin by which a face must stay above the dew point, K; *common practice*.
pub fn surface_margin() -> TemperatureDifference {
    TemperatureDifference::new::<kelvin>(3.0)
}

/// Water a dehumidifier has to take out in a day: 24·N·V·ρ·(w_o − w_i)/(1 + w_o), in kg.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `N`, `V` | air changes, volume of the room | 1/h, m³ |
/// | `rho` | density of the air that comes in, by which its dry part is ρ/(1 + w_o) | kg/m³ |
/// | `w_o`, `w_i` | water in a kilogram of dry air, outside and as wanted inside | kg/kg |
///
/// # Range
/// A cooled coil fades below about 10 °C: there take a desiccant wheel. Nameplates are rated at 27 to 30 °C.
///
/// # Errors
/// As [`vapour_pressure`]; [`FormulaError::NotPositive`] for a room of nothing.
///
/// # Source
/// Mass balance.
///
/// # Example
/// 40 m³, half a change an hour, 10 °C and 90 % outside, 12 °C and 55 % inside: 1.24 kg a day (computed independently).
/// ```
/// use formulas::{Silent, sweating::dehumidifier_rate};
/// use uom::si::f64::{Frequency, Ratio, ThermodynamicTemperature, Volume};
/// use uom::si::{frequency::cycle_per_hour, ratio::percent, thermodynamic_temperature::degree_celsius, volume::cubic_meter};
/// let celsius = ThermodynamicTemperature::new::<degree_celsius>;
/// let share = Ratio::new::<percent>;
/// let kg = dehumidifier_rate(
///     &mut Silent,
///     Volume::new::<cubic_meter>(40.0),
///     Frequency::new::<cycle_per_hour>(0.5),
///     (celsius(10.0), share(90.0)),
///     (celsius(12.0), share(55.0)),
/// )?;
/// assert!((kg - 1.24).abs() < 0.037);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn dehumidifier_rate<R: Recorder>(
    r: &mut R,
    room: Volume,
    changes: Frequency,
    outside: (Temperature, Ratio),
    wanted: (Temperature, Ratio),
) -> Result<f64, FormulaError> {
    let sea_level = units::Pressure::new::<pascal>(101_325.0);
    let vapour_out = vapour_pressure(r, outside.0, outside.1, Over::Water)?;
    let water_out = humidity_ratio(r, vapour_out, sea_level)?;
    let weight = density(r, outside.0, vapour_out, sea_level)?;
    let vapour_in = vapour_pressure(r, wanted.0, wanted.1, Over::Water)?;
    let water_in = humidity_ratio(r, vapour_in, sea_level)?;
    given!(r, w_o["kg/kg"] = water_out, "water in the air outside");
    given!(r, w_i["kg/kg"] = water_in, "water in the air as wanted");
    given!(r, N["1/h"] = changes.get::<cycle_per_hour>(), "air changes");
    given!(r, V["m³"] = room.get::<cubic_meter>(), "volume of the room");
    given!(r, rho[kilogram_per_cubic_meter] = weight, "density of the air that comes in");
    positive("the room", V, "m³")?;
    not_negative("the air change", N, "1/h", sources::DEFINITION)?;
    step!(r, m["kg/d"] = max(24.0 * N * V * rho * (w_o - w_i) / (1.0 + w_o), 0.0), sources::DEFINITION);
    if wanted.0.value < 283.15 {
        r.caution(Caution::Provided { that: "it is a desiccant dehumidifier; a cooled coil fades below about 10 °C" });
    }
    Ok(m)
}

/// Water that burning propane gives off, kg for each kg of gas: C₃H₈ + 5 O₂ → 3 CO₂ + 4 H₂O.
///
/// # Source
/// Stoichiometry.
///
/// # Example
/// ```
/// assert!((formulas::sweating::water_of_propane(1.0) - 1.63).abs() < 0.01);
/// ```
#[must_use]
pub fn water_of_propane(propane_kg: f64) -> f64 {
    propane_kg * 4.0 * 18.015 / 44.096
}
