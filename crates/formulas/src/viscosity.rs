//! Viscosity of an oil at a temperature, its density, and its dynamic viscosity.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{DynamicViscosity, KinematicViscosity, MassDensity, Temperature};
use uom::si::dynamic_viscosity::{millipascal_second, pascal_second};
use uom::si::kinematic_viscosity::{square_meter_per_second, square_millimeter_per_second as mm2_per_s};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

use crate::error::{FormulaError, positive, within};
use crate::math::{exp, log10, pow};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, solve, step};

/// A kinematic viscosity measured at a temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// The temperature it was measured at.
    pub at: Temperature,
    /// The viscosity there.
    pub nu: KinematicViscosity,
}

/// The range the standard covers, mm²/s.
const COVERED: (f64, f64) = (0.21, 2e7);

/// Above this the small-viscosity terms vanish in the sixteenth digit, and a solver would find only the subtraction.
const TERMS_VANISH: f64 = 12.0;

impl Measured {
    /// A viscosity at 40 °C, where oils are graded.
    #[must_use]
    pub fn at_40(nu: KinematicViscosity) -> Self {
        Self { at: Temperature::new::<degree_celsius>(40.0), nu }
    }

    /// A viscosity at 100 °C.
    #[must_use]
    pub fn at_100(nu: KinematicViscosity) -> Self {
        Self { at: Temperature::new::<degree_celsius>(100.0), nu }
    }
}

// The terms of the standard that matter below 2 mm²/s, under the letters it gives them.
fn C(nu: f64) -> f64 {
    exp(-1.14883 - 2.65868 * nu)
}
fn D(nu: f64) -> f64 {
    exp(-0.003_813_8 - 12.5645 * nu)
}
fn E(nu: f64) -> f64 {
    exp(5.46491 - 37.6289 * nu)
}
fn F(nu: f64) -> f64 {
    exp(13.0458 - 74.6851 * nu)
}
fn G(nu: f64) -> f64 {
    exp(37.4619 - 192.643 * nu)
}
fn H(nu: f64) -> f64 {
    exp(80.4945 - 400.468 * nu)
}

/// What the terms together add to ν + 0.7.
fn small_terms(nu: f64) -> f64 {
    C(nu) - D(nu) + E(nu) - F(nu) + G(nu) - H(nu)
}

/// An oil's straight line on the viscosity–temperature chart: `W = A − B·log₁₀ T`, with `W = log₁₀ log₁₀ Z`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Line {
    pub(crate) A: f64,
    pub(crate) B: f64,
}

/// The ordinate of the chart, `W = log₁₀ log₁₀ Z`, at a viscosity.
pub(crate) fn ordinate<R: Recorder>(r: &mut R, nu: KinematicViscosity) -> Result<f64, FormulaError> {
    given!(r, nu[mm2_per_s] = nu, "kinematic viscosity");
    within("the viscosity", nu, "mm²/s", COVERED, sources::ASTM_D341)?;
    step!(r, Z [] = nu + 0.7 + C(nu) - D(nu) + E(nu) - F(nu) + G(nu) - H(nu), sources::ASTM_D341);
    step!(r, W [] = log10(log10(Z)), sources::ASTM_D341);
    Ok(W)
}

/// The viscosity at an ordinate of the chart.
pub(crate) fn viscosity_of_ordinate<R: Recorder>(r: &mut R, W: f64) -> Result<KinematicViscosity, FormulaError> {
    step!(r, Z [] = pow(10.0, pow(10.0, W)), sources::ASTM_D341);
    // At the thin end Z is still 0.15 more than ν + 0.7, so a Z that falls short of the thinnest oil's is refused by what is left of it.
    let thinnest = small_terms(COVERED.0);
    let estimate = if Z - 0.7 - thinnest < COVERED.0 { Z - 0.7 - thinnest } else { Z - 0.7 };
    within("the viscosity", estimate, "mm²/s", COVERED, sources::ASTM_D341)?;
    let nu = if Z - 0.7 > TERMS_VANISH {
        step!(r, nu[mm2_per_s] = Z - 0.7, sources::ASTM_D341);
        nu
    } else {
        // The terms together lie between nothing and 0.2, so the root lies between these bounds.
        solve!(r, nu [mm2_per_s] in ((Z - 0.9).max(COVERED.0), Z - 0.7): nu + 0.7 + C(nu) - D(nu) + E(nu) - F(nu) + G(nu) - H(nu) == Z, sources::ASTM_D341);
        nu
    };
    Ok(KinematicViscosity::new::<mm2_per_s>(nu))
}

impl Line {
    /// The line through two measured points.
    pub(crate) fn through<R: Recorder>(r: &mut R, cool: Measured, hot: Measured) -> Result<Self, FormulaError> {
        // The comparison is written so that a viscosity that is not a number fails it.
        if !(cool.at < hot.at && cool.nu > hot.nu) {
            return Err(FormulaError::PointsOutOfOrder {
                cool_at: cool.at.get::<degree_celsius>(),
                cool_nu: cool.nu.get::<mm2_per_s>(),
                hot_at: hot.at.get::<degree_celsius>(),
                hot_nu: hot.nu.get::<mm2_per_s>(),
            });
        }
        given!(r, T_1[kelvin] = cool.at, "temperature of the cool point");
        given!(r, nu_1[mm2_per_s] = cool.nu, "viscosity at the cool point");
        given!(r, T_2[kelvin] = hot.at, "temperature of the hot point");
        given!(r, nu_2[mm2_per_s] = hot.nu, "viscosity at the hot point");
        within("the viscosity at the cool point", nu_1, "mm²/s", COVERED, sources::ASTM_D341)?;
        within("the viscosity at the hot point", nu_2, "mm²/s", COVERED, sources::ASTM_D341)?;
        positive("the temperature of the cool point", T_1, "K")?;
        step!(r, Z_1 [] = nu_1 + 0.7 + C(nu_1) - D(nu_1) + E(nu_1) - F(nu_1) + G(nu_1) - H(nu_1), sources::ASTM_D341);
        step!(r, W_1 [] = log10(log10(Z_1)), sources::ASTM_D341);
        step!(r, Z_2 [] = nu_2 + 0.7 + C(nu_2) - D(nu_2) + E(nu_2) - F(nu_2) + G(nu_2) - H(nu_2), sources::ASTM_D341);
        step!(r, W_2 [] = log10(log10(Z_2)), sources::ASTM_D341);
        step!(r, B [] = (W_1 - W_2) / (log10(T_2) - log10(T_1)), sources::ASTM_D341);
        step!(r, A [] = W_1 + B * log10(T_1), sources::ASTM_D341);
        Ok(Self { A, B })
    }
}

/// Kinematic viscosity of an oil at a temperature, from two measured points.
///
/// log₁₀ log₁₀ Z = A − B·log₁₀ T, with Z = ν + 0.7 + C − D + E − F + G − H; the terms C to H matter below 2 mm²/s.
/// The standard's closed inverse of Z is approximate; here ν is solved for, and the residual kept.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `nu` | kinematic viscosity at `T` | mm²/s |
/// | `T` | absolute temperature | K |
/// | `A`, `B` | the oil's constants | – |
///
/// # Range
/// 0.21 to 2×10⁷ mm²/s, between the oil's cloud point and its initial boiling point. Outside the two points the answer carries
/// [`Caution::Extrapolated`]. Oils thickened with a polymer do not keep to the line.
///
/// # Errors
/// [`FormulaError::PointsOutOfOrder`] unless the cool point is cooler and thicker than the hot one;
/// [`FormulaError::OutOfRange`] where a viscosity leaves the standard's range.
///
/// # Source
/// ASTM D341. Checked in `tests/published/viscosity_temperature.csv`.
///
/// # Example
/// The oil of the viscosity index standard's first worked example (73.30 and 8.86 mm²/s) at 20 °C:
/// ```
/// use formulas::{Silent, viscosity::{Measured, viscosity_at}};
/// use units::{KinematicViscosity, Temperature};
/// use uom::si::{kinematic_viscosity::square_millimeter_per_second as mm2_per_s, thermodynamic_temperature::degree_celsius};
/// let nu = KinematicViscosity::new::<mm2_per_s>;
/// let at_20 = viscosity_at(&mut Silent, Measured::at_40(nu(73.30)), Measured::at_100(nu(8.86)), Temperature::new::<degree_celsius>(20.0))?;
/// assert!((at_20.get::<mm2_per_s>() - 241.0).abs() < 2.4);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn viscosity_at<R: Recorder>(r: &mut R, cool: Measured, hot: Measured, at: Temperature) -> Result<KinematicViscosity, FormulaError> {
    let Line { A, B } = Line::through(r, cool, hot)?;
    given!(r, T[kelvin] = at, "temperature asked for");
    positive("the temperature", T, "K")?;
    step!(r, W [] = A - B * log10(T), sources::ASTM_D341);
    caution_outside(r, cool, hot, at);
    viscosity_of_ordinate(r, W)
}

/// The temperature at which an oil has a viscosity, from two measured points: the inverse of [`viscosity_at`].
///
/// # Range
/// As [`viscosity_at`].
///
/// # Errors
/// As [`viscosity_at`].
///
/// # Source
/// ASTM D341. Checked in `tests/published/viscosity_temperature_inverse.csv`.
pub fn temperature_at<R: Recorder>(r: &mut R, cool: Measured, hot: Measured, nu: KinematicViscosity) -> Result<Temperature, FormulaError> {
    let Line { A, B } = Line::through(r, cool, hot)?;
    let W = ordinate(r, nu)?;
    step!(r, T[kelvin] = pow(10.0, (A - W) / B), sources::ASTM_D341);
    let at = Temperature::new::<kelvin>(T);
    caution_outside(r, cool, hot, at);
    Ok(at)
}

fn caution_outside<R: Recorder>(r: &mut R, cool: Measured, hot: Measured, at: Temperature) {
    if at < cool.at || at > hot.at {
        r.caution(Caution::Extrapolated {
            what: "the temperature",
            value: at.get::<degree_celsius>(),
            unit: "°C",
            low: cool.at.get::<degree_celsius>(),
            high: hot.at.get::<degree_celsius>(),
        });
    }
    if at < cool.at {
        r.caution(Caution::Provided { that: "the oil is above its cloud point there, and is not thickened with a polymer" });
    }
}

/// Density of a mineral oil at a temperature, from its density at 15 °C.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `rho_15` | density at 15 °C | kg/m³ |
/// | `t` | temperature | °C |
///
/// # Range
/// Mineral oils from −30 to 150 °C; the fall of 0.65 kg/m³ for each kelvin is a mean over them.
///
/// # Source
/// *From memory*; the same slope lies within 5 % of the petroleum measurement tables for lubricating oils.
pub fn density_at<R: Recorder>(r: &mut R, rho15: MassDensity, at: Temperature) -> MassDensity {
    given!(r, rho_15[kilogram_per_cubic_meter] = rho15, "density at 15 °C");
    given!(r, t[degree_celsius] = at, "temperature");
    step!(r, rho[kilogram_per_cubic_meter] = rho_15 - 0.65 * (t - 15.0), sources::COMMON_PRACTICE);
    MassDensity::new::<kilogram_per_cubic_meter>(rho)
}

/// Dynamic viscosity from kinematic viscosity and density: `eta = nu·rho`.
///
/// # Source
/// Definition.
///
/// # Example
/// Water at 20 °C: 1.0034 mm²/s and 998.2 kg/m³ make 1.0016 mPa·s (IAPWS, the viscometer's calibration point).
/// ```
/// use formulas::{Silent, viscosity::dynamic_viscosity};
/// use units::{KinematicViscosity, MassDensity};
/// use uom::si::{dynamic_viscosity::millipascal_second, kinematic_viscosity::square_millimeter_per_second, mass_density::kilogram_per_cubic_meter};
/// let eta = dynamic_viscosity(
///     &mut Silent,
///     KinematicViscosity::new::<square_millimeter_per_second>(1.0034),
///     MassDensity::new::<kilogram_per_cubic_meter>(998.2),
/// );
/// assert!((eta.get::<millipascal_second>() - 1.0016).abs() < 1e-4);
/// ```
pub fn dynamic_viscosity<R: Recorder>(r: &mut R, nu: KinematicViscosity, rho: MassDensity) -> DynamicViscosity {
    given!(r, nu[mm2_per_s] = nu, "kinematic viscosity");
    given!(r, rho[kilogram_per_cubic_meter] = rho, "density");
    step!(r, eta[millipascal_second] = nu * rho / 1000.0, sources::DEFINITION);
    DynamicViscosity::new::<millipascal_second>(eta)
}

/// Kinematic viscosity from dynamic viscosity and density: `nu = eta/rho`.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a density that is nothing or less.
///
/// # Source
/// Definition.
pub fn kinematic_viscosity<R: Recorder>(r: &mut R, eta: DynamicViscosity, rho: MassDensity) -> Result<KinematicViscosity, FormulaError> {
    given!(r, eta[pascal_second] = eta, "dynamic viscosity");
    given!(r, rho[kilogram_per_cubic_meter] = rho, "density");
    positive("the density", rho, "kg/m³")?;
    step!(r, nu[square_meter_per_second] = eta / rho, sources::DEFINITION);
    Ok(KinematicViscosity::new::<square_meter_per_second>(nu))
}
