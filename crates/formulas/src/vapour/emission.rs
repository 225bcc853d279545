//! How fast a liquid leaves a pan or a wiped film.

use units::{Area, Length, Pressure, Range, Temperature, Time, Velocity};
use uom::si::area::square_meter;
use uom::si::length::meter;
use uom::si::pressure::{millimeter_of_mercury, pascal};
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;
use uom::si::velocity::meter_per_second;

use crate::error::{FormulaError, not_negative, positive};
use crate::math::{max, min, pow};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Kinematic viscosity of air at room temperature, m²/s.
const AIR_NU: f64 = 1.51e-5;

/// The Schmidt number of a vapour in air: ν/D.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a diffusion coefficient of nothing.
///
/// # Source
/// Definition; air of 1.51·10⁻⁵ m²/s.
pub fn schmidt<R: Recorder>(r: &mut R, diffusion_m2_per_s: f64) -> Result<f64, FormulaError> {
    given!(r, nu["m²/s"] = AIR_NU, "kinematic viscosity of air");
    given!(r, D["m²/s"] = diffusion_m2_per_s, "diffusion coefficient in air");
    positive("the diffusion coefficient", D, "m²/s")?;
    step!(r, Sc [] = nu / D, sources::DEFINITION);
    Ok(Sc)
}

/// An open pan or a wet face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pan {
    /// Wet area.
    pub area: Area,
    /// Its length along the draught, or its diameter.
    pub length: Length,
    /// Draught over it.
    pub draught: Velocity,
}

/// What evaporates from a pan, kg/s: E = k·A·p·M/(R·T), with k = 0.0292·U^0.78·Z^−0.11·Sc^−0.67 in m/h.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `U` | draught | m/h |
/// | `Z` | length of the pan | m |
/// | `Sc` | Schmidt number of the vapour | – |
/// | `p`, `M` | vapour pressure, molar mass | Pa, g/mol |
/// | `E` | evaporation | g/s |
///
/// # Range
/// Pools of 0.1 to some metres in a draught; cooling of the liquid is left out, so it errs high. The range is a factor of 1.5 either way;
/// its high end is never below the exponent −0.47 that other copies of the paper print.
///
/// # Errors
/// [`FormulaError::NotPositive`] for an area, length, draught, Schmidt number or molar mass of nothing.
///
/// # Source
/// Mackay and Matsugu 1973; *from memory*.
///
/// # Example
/// Acetone, 0.06 m², 0.25 m/s, 0.25 m, Sc 1.44, 20 °C: 3.16 g/min (computed independently).
/// ```
/// use formulas::{Silent, vapour::{Pan, pan_rate}};
/// use uom::si::f64::{Area, Length, Pressure, ThermodynamicTemperature, Velocity};
/// use uom::si::{area::square_meter, length::meter, pressure::kilopascal, thermodynamic_temperature::degree_celsius};
/// use uom::si::velocity::meter_per_second;
/// let pan = Pan {
///     area: Area::new::<square_meter>(0.06),
///     length: Length::new::<meter>(0.25),
///     draught: Velocity::new::<meter_per_second>(0.25),
/// };
/// let at = ThermodynamicTemperature::new::<degree_celsius>(20.0);
/// let rate = pan_rate(&mut Silent, &pan, Pressure::new::<kilopascal>(24.7), 58.08, 1.44, at)?;
/// assert!((rate.likely * 60e3 - 3.16).abs() < 0.16);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn pan_rate<R: Recorder>(
    r: &mut R,
    pan: &Pan,
    pressure: Pressure,
    molar_mass_g: f64,
    schmidt: f64,
    at: Temperature,
) -> Result<Range<f64>, FormulaError> {
    given!(r, U["m/h"] = pan.draught.get::<meter_per_second>() * 3600.0, "draught over the pan");
    given!(r, Z[meter] = pan.length, "length of the pan");
    given!(r, A[square_meter] = pan.area, "wet area");
    given!(r, Sc [] = schmidt, "Schmidt number");
    given!(r, p[pascal] = pressure, "vapour pressure");
    given!(r, M["g/mol"] = molar_mass_g, "molar mass");
    given!(r, T[kelvin] = at, "temperature");
    positive("the draught", U, "m/h")?;
    positive("the length of the pan", Z, "m")?;
    positive("the wet area", A, "m²")?;
    positive("the Schmidt number", Sc, "")?;
    positive("the molar mass", M, "g/mol")?;
    not_negative("the vapour pressure", p, "Pa", sources::DEFINITION)?;
    step!(r, k["m/h"] = 0.0292 * pow(U, 0.78) * pow(Z, -0.11) * pow(Sc, -0.67), sources::MACKAY_MATSUGU);
    step!(r, E["g/s"] = k / 3600.0 * A * p * M / (8.314462618 * T), sources::MACKAY_MATSUGU);
    step!(r, E_high["g/s"] = E * max(1.5, pow(Sc, 0.2)), sources::MACKAY_MATSUGU);
    r.caution(Caution::Disputed {
        what: "evaporation from a pan",
        why: "copies of the paper print the exponent −0.67 or −0.47; the range holds both",
    });
    Ok(Range { low: E / 1.5e3, likely: E * 1e-3, high: E_high * 1e-3 })
}

/// The same by the American agency's equation, kg/s: 0.284·U^0.78·M^⅔·A·p/(82.05·T) in lb/min.
///
/// # Errors
/// As [`pan_rate`].
///
/// # Source
/// EPA 550-B-99-009, equation for pools; *from memory*.
///
/// # Example
/// The pan of [`pan_rate`]: 3.26 g/min (computed independently).
/// ```
/// use formulas::{Silent, vapour::{Pan, pan_rate_epa}};
/// use uom::si::f64::{Area, Length, Pressure, ThermodynamicTemperature, Velocity};
/// use uom::si::{area::square_meter, length::meter, pressure::kilopascal, thermodynamic_temperature::degree_celsius};
/// use uom::si::velocity::meter_per_second;
/// let pan = Pan {
///     area: Area::new::<square_meter>(0.06),
///     length: Length::new::<meter>(0.25),
///     draught: Velocity::new::<meter_per_second>(0.25),
/// };
/// let at = ThermodynamicTemperature::new::<degree_celsius>(20.0);
/// let rate = pan_rate_epa(&mut Silent, &pan, Pressure::new::<kilopascal>(24.7), 58.08, at)?;
/// assert!((rate * 60e3 - 3.26).abs() < 0.17);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn pan_rate_epa<R: Recorder>(
    r: &mut R,
    pan: &Pan,
    pressure: Pressure,
    molar_mass_g: f64,
    at: Temperature,
) -> Result<f64, FormulaError> {
    const KG_PER_S: f64 = 0.453_592_37 / 60.0;
    given!(r, U[meter_per_second] = pan.draught, "draught over the pan");
    given!(r, A["ft²"] = pan.area.get::<square_meter>() / 0.092_903_04, "wet area");
    given!(r, p[millimeter_of_mercury] = pressure, "vapour pressure");
    given!(r, M["g/mol"] = molar_mass_g, "molar mass");
    given!(r, T[kelvin] = at, "temperature");
    positive("the draught", U, "m/s")?;
    positive("the wet area", A, "ft²")?;
    positive("the molar mass", M, "g/mol")?;
    not_negative("the vapour pressure", p, "mmHg", sources::DEFINITION)?;
    step!(r, E["lb/min"] = 0.284 * pow(U, 0.78) * pow(M, 2.0 / 3.0) * A * p / (82.05 * T), sources::EPA_POOLS);
    Ok(E * KG_PER_S)
}

/// How long a wiped film takes to dry: its mass for each area over what leaves that area.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a film or a rate of nothing.
///
/// # Source
/// Mass balance.
///
/// # Example
/// 20 g/m² of acetone that leave at 3.16 g/min from 0.06 m² are gone in 23 s (computed independently).
/// ```
/// use formulas::{Silent, vapour::film_time};
/// use uom::si::time::second;
/// let dry = film_time(&mut Silent, 0.020, 3.16e-3 / 60.0 / 0.06)?;
/// assert!((dry.get::<second>() - 23.0).abs() < 0.5);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn film_time<R: Recorder>(r: &mut R, film_kg_per_m2: f64, leaves_kg_per_m2_s: f64) -> Result<Time, FormulaError> {
    given!(r, m["g/m²"] = film_kg_per_m2 * 1e3, "wiped film");
    given!(r, E["g/(m²·s)"] = leaves_kg_per_m2_s * 1e3, "evaporation");
    positive("the film", m, "g/m²")?;
    positive("the evaporation", E, "g/(m²·s)")?;
    step!(r, t[second] = m / E, sources::DEFINITION);
    Ok(Time::new::<second>(t))
}

/// How long a use gives off vapour: as long as the work lasts, or until what was taken is gone.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a rate of nothing; [`FormulaError::OutOfRange`] for less than nothing taken, or work before it began.
///
/// # Source
/// Mass balance.
///
/// # Example
/// 40 mL of acetone (0.79 g/mL) in a tray that loses 3.16 g/min are gone after ten minutes of an hour's work (worked by hand).
/// ```
/// use formulas::{Silent, vapour::gives_off_for};
/// use uom::si::{f64::Time, time::{hour, minute}};
/// let gone = gives_off_for(&mut Silent, 0.0316, 3.16e-3 / 60.0, Time::new::<hour>(1.0))?;
/// assert!((gone.get::<minute>() - 10.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn gives_off_for<R: Recorder>(r: &mut R, taken_kg: f64, rate_kg_per_s: f64, work: Time) -> Result<Time, FormulaError> {
    given!(r, m["g"] = taken_kg * 1e3, "what was taken of it");
    given!(r, E["g/s"] = rate_kg_per_s * 1e3, "evaporation");
    given!(r, t_w[second] = work, "time of the work");
    not_negative("what was taken", m, "g", sources::DEFINITION)?;
    positive("the evaporation", E, "g/s")?;
    not_negative("the time of the work", t_w, "s", sources::DEFINITION)?;
    step!(r, t[second] = min(t_w, m / E), sources::DEFINITION);
    Ok(Time::new::<second>(t))
}
