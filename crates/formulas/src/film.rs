//! Films between rolling parts: elastohydrodynamic lubrication.

#![expect(non_snake_case, reason = "symbols match the source")]

mod contacts;
mod line;

use units::{DynamicViscosity, Force, Length, Pressure, Velocity};
use uom::si::dynamic_viscosity::{millipascal_second, pascal_second};
use uom::si::force::newton;
use uom::si::length::{meter, micrometer};
use uom::si::pressure::pascal;
use uom::si::velocity::meter_per_second;

use crate::error::{FormulaError, positive};
use crate::math::{exp, pow};
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

pub use contacts::{RollingPart, STEEL_ON_STEEL_GPA, ball_contact, most_loaded_part, roller_contact, tooth_contact};
pub use line::{FilmState, LineContact, film_parameter, film_state, line_film};

/// A contact of two curved bodies that roll on one another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contact {
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
    /// Ellipticity of the contact: 1 for a ball on a flat.
    pub ellipticity: f64,
}

/// The film of a contact.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Film {
    /// At the thinnest place.
    pub minimum: Length,
    /// In the middle.
    pub central: Length,
}

/// Film of an elliptical contact.
///
/// H_min = 3.63·U^0.68·G^0.49·W^−0.073·(1 − e^−0.68k), H_c = 2.69·U^0.67·G^0.53·W^−0.067·(1 − 0.61·e^−0.73k).
///
/// # Range
/// Hard bodies, fully flooded, isothermal.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a speed, viscosity, modulus, radius or load of nothing.
///
/// # Source
/// Hamrock and Dowson 1977; *from memory*.
///
/// # Example
/// 2 m/s, 30 mPa·s, 18 GPa⁻¹, 226 GPa, 6 mm, 100 N, k = 6: 0.261 µm and 0.323 µm (computed independently).
/// ```
/// use formulas::{Silent, film::{Contact, elliptical_film}};
/// use uom::si::f64::{DynamicViscosity, Force, Length, Pressure, Velocity};
/// use uom::si::{dynamic_viscosity::millipascal_second, force::newton, pressure::gigapascal, velocity::meter_per_second};
/// use uom::si::length::{micrometer, millimeter};
/// let contact = Contact {
///     speed: Velocity::new::<meter_per_second>(2.0),
///     viscosity: DynamicViscosity::new::<millipascal_second>(30.0),
///     pressure_coefficient_per_pa: 18e-9,
///     modulus: Pressure::new::<gigapascal>(226.0),
///     radius: Length::new::<millimeter>(6.0),
///     load: Force::new::<newton>(100.0),
///     ellipticity: 6.0,
/// };
/// let film = elliptical_film(&mut Silent, &contact)?;
/// assert!((film.minimum.get::<micrometer>() - 0.261).abs() < 0.0027);
/// assert!((film.central.get::<micrometer>() - 0.323).abs() < 0.0033);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn elliptical_film<R: Recorder>(r: &mut R, contact: &Contact) -> Result<Film, FormulaError> {
    given!(r, u[meter_per_second] = contact.speed, "mean speed of the surfaces");
    given!(r, eta[pascal_second] = contact.viscosity, "dynamic viscosity");
    given!(r, alpha["1/Pa"] = contact.pressure_coefficient_per_pa, "pressure–viscosity coefficient");
    given!(r, E[pascal] = contact.modulus, "effective modulus");
    given!(r, R_x[meter] = contact.radius, "effective radius in the direction of rolling");
    given!(r, w[newton] = contact.load, "load");
    given!(r, k [] = contact.ellipticity, "ellipticity");
    positive("the speed", u, "m/s")?;
    positive("the viscosity", eta, "Pa·s")?;
    positive("the modulus", E, "Pa")?;
    positive("the radius", R_x, "m")?;
    positive("the load", w, "N")?;
    step!(r, U [] = eta * u / (E * R_x), sources::HAMROCK_DOWSON);
    step!(r, G [] = alpha * E, sources::HAMROCK_DOWSON);
    step!(r, W [] = w / (E * pow(R_x, 2.0)), sources::HAMROCK_DOWSON);
    step!(r, H_min [] = 3.63 * pow(U, 0.68) * pow(G, 0.49) * pow(W, -0.073) * (1.0 - exp(-0.68 * k)), sources::HAMROCK_DOWSON);
    step!(r, H_c [] = 2.69 * pow(U, 0.67) * pow(G, 0.53) * pow(W, -0.067) * (1.0 - 0.61 * exp(-0.73 * k)), sources::HAMROCK_DOWSON);
    step!(r, h_min[micrometer] = 1e6 * H_min * R_x, sources::HAMROCK_DOWSON);
    step!(r, h_c[micrometer] = 1e6 * H_c * R_x, sources::HAMROCK_DOWSON);
    Ok(Film { minimum: Length::new::<micrometer>(h_min), central: Length::new::<micrometer>(h_c) })
}

/// Ellipticity of a contact from its two radii: k = 1.034·(R_y/R_x)^0.636.
///
/// # Source
/// Hamrock and Dowson; *from memory*.
pub fn ellipticity<R: Recorder>(r: &mut R, across: Length, along: Length) -> f64 {
    given!(r, R_y[meter] = across, "effective radius across the rolling");
    given!(r, R_x[meter] = along, "effective radius in the direction of rolling");
    step!(r, k [] = 1.034 * pow(R_y / R_x, 0.636), sources::HAMROCK_DOWSON);
    k
}

/// Pressure–viscosity coefficient of a mineral oil, 1/Pa: α = 0.010471·η^0.1348 mm²/N with η in mPa·s.
///
/// # Source
/// AGMA 925; *from memory*.
pub fn pressure_coefficient<R: Recorder>(r: &mut R, viscosity: DynamicViscosity) -> f64 {
    given!(r, eta[millipascal_second] = viscosity, "dynamic viscosity");
    step!(r, alpha["1/Pa"] = 1e-6 * 0.010471 * pow(eta, 0.1348), sources::AGMA_925);
    alpha
}
