//! Solutions: what a strength means, how to mix one, how warm it gets, how sour it is, and how rinsing thins it.

#![expect(non_snake_case, reason = "symbols match the source")]

mod acid;
mod caustic;
mod sulfuric;
mod table;

use units::{Mass, MassDensity, Ratio, Temperature, TemperatureDifference, Volume};
use uom::si::mass::gram;
use uom::si::mass_density::gram_per_cubic_centimeter;
use uom::si::ratio::{percent, ratio};
use uom::si::temperature_interval::kelvin as kelvins;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::volume::milliliter;

use crate::error::{FormulaError, not_negative, positive, within};
use crate::math::{ceil, max, pow};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

pub(crate) use acid::molarity;
pub use acid::{Acid, ideal_ph, solution_density};
pub use caustic::{caustic_rise, caustic_solution};
pub use sulfuric::{AcidDilution, sulfuric_density, sulfuric_dilution, sulfuric_rise};

/// The share of concentrate in a mix told by parts, such as 1:10.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PartsShare {
    /// The parts are mixed: one and ten make eleven.
    pub mixed: Ratio,
    /// The second number is the whole: one in ten.
    pub of_whole: Ratio,
}

/// What a ratio of parts means as a share by volume, as labels mean it and as some people read it.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a part of nothing; [`FormulaError::OutOfRange`] where there is more concentrate than the other number.
///
/// # Source
/// Definition. Most labels mean parts mixed: *common practice, no source*.
///
/// # Example
/// 1:10 is 9.09 % where the parts are mixed, and 10 % where it means one in ten (by hand).
/// ```
/// use formulas::{Silent, solution::parts_share};
/// use uom::si::ratio::percent;
/// let share = parts_share(&mut Silent, 1.0, 10.0)?;
/// assert!((share.mixed.get::<percent>() - 9.0909).abs() < 1e-3);
/// assert!((share.of_whole.get::<percent>() - 10.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn parts_share<R: Recorder>(r: &mut R, concentrate: f64, other: f64) -> Result<PartsShare, FormulaError> {
    given!(r, a [] = concentrate, "parts of concentrate");
    given!(r, b [] = other, "the other number");
    positive("the parts of concentrate", a, "")?;
    within("the other number", b, "", (a, f64::INFINITY), sources::DEFINITION)?;
    step!(r, phi_1[percent] = 100.0 * a / (a + b), sources::COMMON_PRACTICE);
    step!(r, phi_2[percent] = 100.0 * a / b, sources::COMMON_PRACTICE);
    r.caution(Caution::Disputed {
        what: "a ratio of parts",
        why: "most labels mean so many parts of water added to one, some mean one part in so many",
    });
    Ok(PartsShare { mixed: Ratio::new::<percent>(phi_1), of_whole: Ratio::new::<percent>(phi_2) })
}

/// A share by volume as a share by mass: w = φ·ρ₁/(φ·ρ₁ + (1 − φ)·ρ₂).
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a share outside 0 to 100 %; [`FormulaError::NotPositive`] for a density of nothing.
///
/// # Source
/// Definition, with volumes that add up; alcohol and water shrink by up to 4 %.
///
/// # Example
/// Half ethanol of 0.789 g/mL and half water by volume is 44.1 % by mass (by hand: 0.789/1.789).
/// ```
/// use formulas::{Silent, solution::mass_share};
/// use uom::si::{f64::{MassDensity, Ratio}, mass_density::gram_per_cubic_centimeter, ratio::percent};
/// let density = MassDensity::new::<gram_per_cubic_centimeter>;
/// let by_mass = mass_share(&mut Silent, Ratio::new::<percent>(50.0), density(0.789), density(1.0))?;
/// assert!((by_mass.get::<percent>() - 44.10).abs() < 0.01);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn mass_share<R: Recorder>(r: &mut R, by_volume: Ratio, density: MassDensity, of_the_rest: MassDensity) -> Result<Ratio, FormulaError> {
    given!(r, phi [] = by_volume.get::<ratio>(), "share by volume");
    given!(r, rho_1[gram_per_cubic_centimeter] = density, "its density");
    given!(r, rho_2[gram_per_cubic_centimeter] = of_the_rest, "density of the rest");
    within("the share by volume", phi, "", (0.0, 1.0), sources::DEFINITION)?;
    positive("the density", rho_1, "g/cm³")?;
    positive("the density of the rest", rho_2, "g/cm³")?;
    step!(r, w[percent] = 100.0 * phi * rho_1 / (phi * rho_1 + (1.0 - phi) * rho_2), sources::DEFINITION);
    Ok(Ratio::new::<percent>(w))
}

/// What a solution is mixed from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dilution {
    /// The concentrate, or the dry salt.
    pub concentrate: Mass,
    /// The water.
    pub water: Mass,
}

/// What a mass of solution is mixed from, strengths by mass: m₁ = m·w₂/w₁, and water for the rest.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `m`, `m_1`, `m_w` | solution, concentrate, water | g |
/// | `w_1`, `w_2` | strength of the concentrate and of the solution; a dry salt has 100 % | % |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a concentrate of no strength; [`FormulaError::OutOfRange`] for a concentrate beyond 100 %, a solution
/// stronger than it, or a negative mass.
///
/// # Source
/// Mass balance.
///
/// # Example
/// A kilogram of 10 % from a dry salt: 100 g into 900 g of water (by hand).
/// ```
/// use formulas::{Silent, solution::dilution};
/// use uom::si::{f64::{Mass, Ratio}, mass::gram, ratio::percent};
/// let share = Ratio::new::<percent>;
/// let mix = dilution(&mut Silent, Mass::new::<gram>(1000.0), share(100.0), share(10.0))?;
/// assert!((mix.concentrate.get::<gram>() - 100.0).abs() < 1e-9);
/// assert!((mix.water.get::<gram>() - 900.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn dilution<R: Recorder>(r: &mut R, total: Mass, from: Ratio, to: Ratio) -> Result<Dilution, FormulaError> {
    given!(r, m[gram] = total, "mass of the solution");
    given!(r, w_1[percent] = from, "strength of the concentrate");
    given!(r, w_2[percent] = to, "strength wanted");
    not_negative("the mass of the solution", m, "g", sources::DEFINITION)?;
    positive("the strength of the concentrate", w_1, "%")?;
    within("the strength of the concentrate", w_1, "%", (0.0, 100.0), sources::DEFINITION)?;
    within("the strength wanted", w_2, "%", (0.0, w_1), sources::DEFINITION)?;
    step!(r, m_1[gram] = m * w_2 / w_1, sources::DEFINITION);
    step!(r, m_w[gram] = m - m_1, sources::DEFINITION);
    Ok(Dilution { concentrate: Mass::new::<gram>(m_1), water: Mass::new::<gram>(m_w) })
}

/// How a solution that warms itself is mixed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mixing {
    /// Temperature it reaches mixed in one go.
    pub reaches: Temperature,
    /// Portions to add it in, cooled to the start between them.
    pub portions: f64,
}

/// Whether a mixture may be made in one go: up to 50 °C yes, up to 60 °C in portions with cooling, beyond that not at all.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `theta_0`, `theta` | temperature of the water, of the mixture | °C |
/// | `Delta_T` | rise | K |
/// | `i` | portions, each of which stays below 50 °C | – |
///
/// # Errors
/// [`FormulaError::Refused`] beyond 60 °C; [`FormulaError::OutOfRange`] for water outside 0 to 40 °C or a negative rise.
///
/// # Source
/// *Common practice, no source.*
pub fn mixing<R: Recorder>(r: &mut R, start: Temperature, rise: TemperatureDifference) -> Result<Mixing, FormulaError> {
    /// Hottest that a mixture may get at all, °C.
    const HOTTEST: f64 = 60.0;
    given!(r, theta_0[degree_celsius] = start, "temperature of the water");
    given!(r, Delta_T[kelvins] = rise, "rise");
    within("the temperature of the water", theta_0, "°C", (0.0, 40.0), sources::COMMON_PRACTICE)?;
    not_negative("the rise", Delta_T, "K", sources::DEFINITION)?;
    step!(r, theta[degree_celsius] = theta_0 + Delta_T, sources::DEFINITION);
    if theta > HOTTEST {
        return Err(FormulaError::Refused {
            what: "this mixture",
            why: "it would pass 60 °C, where it may boil in places and spit acid or lye at you",
            instead: "make it weaker, or start from something weaker: battery acid at most where the law lets you have it, or better a dry salt",
        });
    }
    step!(r, i [] = max(ceil(Delta_T / (50.0 - theta_0)), 1.0), sources::COMMON_PRACTICE);
    Ok(Mixing { reaches: Temperature::new::<degree_celsius>(theta), portions: i })
}

/// What is left of a liquid on a part after rinsing it in one bath after another: (V_c/(V_c + V))ⁿ.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `V_c` | liquid that clings to the part | mL |
/// | `V` | each bath | mL |
/// | `n` | baths | – |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a bath of nothing; [`FormulaError::OutOfRange`] for a negative amount of liquid.
///
/// # Source
/// Mass balance, with fresh baths.
///
/// # Example
/// 30 mL carried into two baths of half a litre: 0.32 % is left (by hand).
/// ```
/// use formulas::{Silent, solution::rinse_residue};
/// use uom::si::{f64::Volume, ratio::percent, volume::milliliter};
/// let mL = Volume::new::<milliliter>;
/// let left = rinse_residue(&mut Silent, mL(30.0), mL(500.0), 2)?;
/// assert!((left.get::<percent>() - 0.32).abs() < 0.001);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn rinse_residue<R: Recorder>(r: &mut R, clings: Volume, bath: Volume, baths: u32) -> Result<Ratio, FormulaError> {
    given!(r, V_c[milliliter] = clings, "liquid that clings to the part");
    given!(r, V[milliliter] = bath, "each bath");
    given!(r, n [] = f64::from(baths), "baths");
    not_negative("what clings to the part", V_c, "mL", sources::DEFINITION)?;
    positive("the bath", V, "mL")?;
    step!(r, q[percent] = 100.0 * pow(V_c / (V_c + V), n), sources::DEFINITION);
    Ok(Ratio::new::<percent>(q))
}

/// Volume of a mole of gas under a standard atmosphere, L/mol.
pub(crate) fn molar_volume<R: Recorder>(r: &mut R, at: Temperature) -> Result<f64, FormulaError> {
    given!(r, T[kelvin] = at, "temperature of the gas");
    positive("the temperature of the gas", T, "K")?;
    step!(r, V_m["L/mol"] = 8.314462618 * T / 101.325, sources::DEFINITION);
    Ok(V_m)
}
