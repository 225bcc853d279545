//! Films of line contacts, and what a film is worth against the roughness it parts.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{DynamicViscosity, Force, Length, Pressure, Velocity};
use uom::si::dynamic_viscosity::pascal_second;
use uom::si::force::newton;
use uom::si::length::{meter, micrometer};
use uom::si::pressure::pascal;
use uom::si::velocity::meter_per_second;

use crate::error::{FormulaError, positive};
use crate::math::{pow, sqrt};
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

/// A line contact: two rollers, or two teeth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LineContact {
    /// Mean speed of the two surfaces.
    pub speed: Velocity,
    /// Dynamic viscosity of the oil as it enters.
    pub viscosity: DynamicViscosity,
    /// Pressure–viscosity coefficient, 1/Pa.
    pub pressure_coefficient_per_pa: f64,
    /// Effective modulus of the two bodies: 226 GPa for steel on steel.
    pub modulus: Pressure,
    /// Effective radius in the direction of rolling.
    pub radius: Length,
    /// Load.
    pub load: Force,
    /// Length of the line.
    pub length: Length,
}

/// Least film of a line contact: H = 2.65·U^0.7·G^0.54·W^−0.13, with U = η·u/(E·R), G = α·E, W = w/(E·R·l).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `u` | mean speed of the surfaces | m/s |
/// | `eta` | dynamic viscosity | Pa·s |
/// | `alpha` | pressure–viscosity coefficient | 1/Pa |
/// | `E`, `R_x` | effective modulus, effective radius | Pa, m |
/// | `w`, `l` | load, length of the line | N, m |
///
/// # Range
/// Hard bodies, fully flooded, isothermal.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a speed, viscosity, modulus, radius, load or length of nothing.
///
/// # Source
/// Dowson and Higginson; *from memory*.
///
/// # Example
/// U = 10⁻¹¹, G = 5000 and W = 10⁻⁴ make H = 1.74·10⁻⁵ (by hand: log₁₀ 2.65 − 7.7 + 1.9974 + 0.52 = −4.7593): 0.174 µm at 10 mm.
/// ```
/// use formulas::{Silent, film::{LineContact, line_film}};
/// use uom::si::f64::{DynamicViscosity, Force, Length, Pressure, Velocity};
/// use uom::si::{dynamic_viscosity::pascal_second, force::newton, pressure::gigapascal, velocity::meter_per_second};
/// use uom::si::length::{micrometer, millimeter};
/// let contact = LineContact {
///     speed: Velocity::new::<meter_per_second>(1.0),
///     viscosity: DynamicViscosity::new::<pascal_second>(0.02),
///     pressure_coefficient_per_pa: 25e-9,
///     modulus: Pressure::new::<gigapascal>(200.0),
///     radius: Length::new::<millimeter>(10.0),
///     load: Force::new::<newton>(2000.0),
///     length: Length::new::<millimeter>(10.0),
/// };
/// assert!((line_film(&mut Silent, &contact)?.get::<micrometer>() - 0.174).abs() < 0.001);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn line_film<R: Recorder>(r: &mut R, contact: &LineContact) -> Result<Length, FormulaError> {
    given!(r, u[meter_per_second] = contact.speed, "mean speed of the surfaces");
    given!(r, eta[pascal_second] = contact.viscosity, "dynamic viscosity");
    given!(r, alpha["1/Pa"] = contact.pressure_coefficient_per_pa, "pressure–viscosity coefficient");
    given!(r, E[pascal] = contact.modulus, "effective modulus");
    given!(r, R_x[meter] = contact.radius, "effective radius in the direction of rolling");
    given!(r, w[newton] = contact.load, "load");
    given!(r, l[meter] = contact.length, "length of the line");
    for (what, value, unit) in [
        ("the speed", u, "m/s"),
        ("the viscosity", eta, "Pa·s"),
        ("the pressure–viscosity coefficient", alpha, "1/Pa"),
        ("the modulus", E, "Pa"),
        ("the radius", R_x, "m"),
        ("the load", w, "N"),
        ("the length of the line", l, "m"),
    ] {
        positive(what, value, unit)?;
    }
    step!(r, U [] = eta * u / (E * R_x), sources::HAMROCK_DOWSON);
    step!(r, G [] = alpha * E, sources::HAMROCK_DOWSON);
    step!(r, W [] = w / (E * R_x * l), sources::HAMROCK_DOWSON);
    step!(r, H_min [] = 2.65 * pow(U, 0.7) * pow(G, 0.54) * pow(W, -0.13), sources::HAMROCK_DOWSON);
    step!(r, h_min[micrometer] = 1e6 * H_min * R_x, sources::HAMROCK_DOWSON);
    Ok(Length::new::<micrometer>(h_min))
}

/// Film parameter λ: the film over the roughness of both surfaces, λ = h/√(Rq_1² + Rq_2²).
///
/// # Errors
/// [`FormulaError::NotPositive`] for surfaces without roughness.
///
/// # Source
/// Definition. Rq is about 1.25·Ra (*common practice*).
///
/// # Example
/// A film of 0.5 µm between surfaces of 0.3 and 0.4 µm is 1 (by hand).
/// ```
/// use formulas::{Silent, film::{FilmState, film_parameter, film_state}};
/// use uom::si::{f64::Length, length::micrometer};
/// let um = Length::new::<micrometer>;
/// let lambda = film_parameter(&mut Silent, um(0.5), um(0.3), um(0.4))?;
/// assert!((lambda - 1.0).abs() < 1e-12);
/// assert_eq!(film_state(2.0), FilmState::Mixed);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn film_parameter<R: Recorder>(r: &mut R, film: Length, roughness_1: Length, roughness_2: Length) -> Result<f64, FormulaError> {
    given!(r, h[micrometer] = film, "film");
    given!(r, Rq_1[micrometer] = roughness_1, "roughness Rq of one surface");
    given!(r, Rq_2[micrometer] = roughness_2, "roughness Rq of the other");
    step!(r, R_q[micrometer] = sqrt(pow(Rq_1, 2.0) + pow(Rq_2, 2.0)), sources::DEFINITION);
    positive("the roughness of the two surfaces", R_q, "µm")?;
    step!(r, lambda [] = h / R_q, sources::DEFINITION);
    Ok(lambda)
}

/// What a film parameter stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FilmState {
    /// λ below 1: the surfaces touch; additives carry the load.
    Boundary,
    /// λ from 1 to 3: they touch now and then.
    Mixed,
    /// λ above 3: a full film.
    Full,
}

/// The state a film parameter stands for.
///
/// # Source
/// *Common practice*: 1 and 3 in every text on the subject.
#[must_use]
pub fn film_state(lambda: f64) -> FilmState {
    match lambda {
        l if l > 3.0 => FilmState::Full,
        l if l >= 1.0 => FilmState::Mixed,
        _ => FilmState::Boundary,
    }
}
