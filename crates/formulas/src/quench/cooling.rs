//! How fast a part cools that has the same temperature throughout.

use units::{Area, Length, MassDensity, Temperature, Time, Volume};
use uom::si::area::square_meter;
use uom::si::length::meter;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

use crate::error::{FormulaError, not_negative, positive, within};
use crate::math::{exp, ln};
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

/// Biot number up to which a part has one temperature throughout, to about 5 %.
pub const BIOT_MOST: f64 = 0.1;

/// A part that cools in a bath or in air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lump {
    /// Its volume.
    pub volume: Volume,
    /// Its surface.
    pub surface: Area,
    /// Its density.
    pub density: MassDensity,
    /// Its specific heat, J/(kg·K).
    pub specific_heat_j_per_kg_k: f64,
    /// How well it conducts heat, W/(m·K).
    pub conductivity_w_per_m_k: f64,
    /// How well its surface gives heat to what is around it, W/(m²·K).
    pub film_w_per_m2_k: f64,
    /// Its temperature at first.
    pub start: Temperature,
    /// Temperature of what is around it.
    pub around: Temperature,
}

impl Lump {
    /// Its volume for its surface.
    fn depth(&self) -> Length {
        self.volume / self.surface
    }
}

/// Biot number of a part: Bi = h·(V/A)/k.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a surface, volume, conductivity or film coefficient of nothing.
///
/// # Source
/// Textbooks of heat transfer. Checked in `tests/published/quench.csv`.
pub fn biot<R: Recorder>(r: &mut R, part: &Lump) -> Result<f64, FormulaError> {
    given!(r, s[meter] = part.depth(), "volume of the part for its surface");
    given!(r, k["W/(m·K)"] = part.conductivity_w_per_m_k, "conductivity of the part");
    given!(r, h["W/(m²·K)"] = part.film_w_per_m2_k, "film coefficient at its surface");
    positive("the surface of the part", part.surface.get::<square_meter>(), "m²")?;
    positive("the volume of the part", s, "m³/m²")?;
    positive("the conductivity of the part", k, "W/(m·K)")?;
    positive("the film coefficient", h, "W/(m²·K)")?;
    step!(r, Bi [] = h * s / k, sources::INCROPERA);
    Ok(Bi)
}

/// Time constant of a part that cools: τ = ρ·c·V/(h·A).
///
/// # Range
/// Biot numbers up to 0.1; a thicker part is cooler outside than inside.
///
/// # Errors
/// As [`biot`]; [`FormulaError::OutOfRange`] for a Biot number beyond 0.1.
///
/// # Source
/// Textbooks of heat transfer. Checked in `tests/published/quench.csv`.
pub fn time_constant<R: Recorder>(r: &mut R, part: &Lump) -> Result<Time, FormulaError> {
    within("the Biot number", biot(r, part)?, "", (0.0, BIOT_MOST), sources::INCROPERA)?;
    given!(r, rho[kilogram_per_cubic_meter] = part.density, "density of the part");
    given!(r, c["J/(kg·K)"] = part.specific_heat_j_per_kg_k, "its specific heat");
    given!(r, s[meter] = part.depth(), "its volume for its surface");
    given!(r, h["W/(m²·K)"] = part.film_w_per_m2_k, "film coefficient at its surface");
    positive("the density of the part", rho, "kg/m³")?;
    positive("the specific heat of the part", c, "J/(kg·K)")?;
    step!(r, tau[second] = rho * c * s / h, sources::INCROPERA);
    Ok(Time::new::<second>(tau))
}

/// Temperature of a part after a time: θ = θ_b + (θ_0 − θ_b)·e^(−t/τ).
///
/// # Errors
/// As [`time_constant`]; [`FormulaError::OutOfRange`] for a negative time.
///
/// # Source
/// Textbooks of heat transfer. Checked in `tests/published/quench.csv`.
pub fn temperature_after<R: Recorder>(r: &mut R, part: &Lump, after: Time) -> Result<Temperature, FormulaError> {
    let constant = time_constant(r, part)?;
    given!(r, tau[second] = constant, "time constant");
    given!(r, t[second] = after, "time");
    given!(r, theta_0[degree_celsius] = part.start, "temperature at first");
    given!(r, theta_b[degree_celsius] = part.around, "temperature around it");
    not_negative("the time", t, "s", sources::DEFINITION)?;
    step!(r, theta[degree_celsius] = theta_b + (theta_0 - theta_b) * exp(-t / tau), sources::INCROPERA);
    Ok(Temperature::new::<degree_celsius>(theta))
}

/// Time until a part has a temperature: [`temperature_after`] turned round.
///
/// # Errors
/// As [`time_constant`]; [`FormulaError::Refused`] for a temperature that is not between the first and that around it.
///
/// # Source
/// Textbooks of heat transfer. Checked in `tests/published/quench.csv`.
pub fn time_to<R: Recorder>(r: &mut R, part: &Lump, target: Temperature) -> Result<Time, FormulaError> {
    let constant = time_constant(r, part)?;
    given!(r, tau[second] = constant, "time constant");
    given!(r, theta[degree_celsius] = target, "temperature wanted");
    given!(r, theta_0[degree_celsius] = part.start, "temperature at first");
    given!(r, theta_b[degree_celsius] = part.around, "temperature around it");
    step!(r, q [] = (theta_0 - theta_b) / (theta - theta_b), sources::DEFINITION);
    if !(q.is_finite() && q >= 1.0) {
        return Err(FormulaError::Refused {
            what: "the temperature wanted",
            why: "the part never has it, for it is not between that at first and that around it",
            instead: "choose one between the two",
        });
    }
    step!(r, t[second] = tau * ln(q), sources::INCROPERA);
    Ok(Time::new::<second>(t))
}
