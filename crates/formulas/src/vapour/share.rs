//! Blends of liquids, and parts per million of their vapour.

use units::{Pressure, Temperature};
use uom::si::pressure::kilopascal;
use uom::si::thermodynamic_temperature::kelvin;

use crate::error::{FormulaError, not_negative, positive};
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

/// One liquid of a blend.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Component {
    /// Its share of the mass.
    pub mass_share: f64,
    /// Molar mass, g/mol.
    pub molar_mass_g: f64,
    /// Its vapour pressure alone, at the temperature of the blend.
    pub pressure: Pressure,
    /// How it takes to water.
    pub beside_water: BesideWater,
}

/// How a liquid takes to the water of a blend, which drives it out.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum BesideWater {
    /// It does not mix with water, or nothing is known: it gives off as much as if the water were not there.
    #[default]
    Apart,
    /// It mixes, and evaporates from water so many times as fast as an ideal mixture would let it.
    Mixes(VanLaar),
    /// It is the water.
    Water,
}

/// Van Laar's coefficients of a liquid in water: ln γ = a/(1 + a·x/(b·w))², with x the share of what is not water and w that of water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VanLaar {
    /// a: ln γ of a trace of it in water.
    pub a: f64,
    /// b: ln γ of a trace of water in it; without end where it is not known, which errs to the side of more vapour.
    pub b: f64,
}

impl VanLaar {
    fn coefficient(self, water: f64) -> f64 {
        if water <= 0.0 {
            return 1.0;
        }
        let ratio = self.a * (1.0 - water) / (self.b * water);
        (self.a / (1.0 + ratio).powi(2)).exp()
    }
}

/// What one liquid of a blend has over the blend.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Partial {
    /// Its share of the molecules in the liquid.
    pub mole_share: f64,
    /// The share of its pressure alone that it has over the blend: the mole share, or more of it where water drives it out.
    pub activity: f64,
    /// Its pressure in the vapour.
    pub pressure: Pressure,
}

/// Partial pressures over a blend by Raoult's law: pᵢ = γᵢ·xᵢ·pᵢ⁰, with the mole shares from the mass shares.
///
/// What does not evaporate counts too: give it with its molar mass and a pressure of nothing. Activity coefficients are taken as one among
/// like liquids. In water they are those of van Laar, as if all that is not water were the one liquid, and never more than would be without
/// the water.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a molar mass of nothing or a blend of nothing.
///
/// # Source
/// Raoult 1887; van Laar 1910.
///
/// # Example
/// Equal masses of toluene (92.14 g/mol, 2.92 kPa) and heptane (100.2 g/mol, 4.73 kPa): 0.521 of the molecules are toluene, 1.52 kPa.
/// ```
/// use formulas::vapour::{BesideWater, Component, blend};
/// use uom::si::{f64::Pressure, pressure::kilopascal};
/// let part = |molar_mass_g, kpa| Component {
///     mass_share: 0.5,
///     molar_mass_g,
///     pressure: Pressure::new::<kilopascal>(kpa),
///     beside_water: BesideWater::Apart,
/// };
/// let over = blend(&[part(92.14, 2.92), part(100.2, 4.73)])?;
/// assert!((over[0].mole_share - 0.521).abs() < 0.001);
/// assert!((over[0].pressure.get::<kilopascal>() - 1.52).abs() < 0.01);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn blend(components: &[Component]) -> Result<Vec<Partial>, FormulaError> {
    for part in components {
        positive("the molar mass", part.molar_mass_g, "g/mol")?;
        not_negative("the share", part.mass_share, "", sources::DEFINITION)?;
    }
    let moles: f64 = components.iter().map(|part| part.mass_share / part.molar_mass_g).sum();
    positive("the blend", moles, "mol/g")?;
    let share_of = |part: &Component| part.mass_share / part.molar_mass_g / moles;
    let water: f64 = components.iter().filter(|part| part.beside_water == BesideWater::Water).map(share_of).sum();
    let partial = |part: &Component| {
        let mole_share = share_of(part);
        let without_water = if water < 1.0 { mole_share / (1.0 - water) } else { 0.0 };
        let activity = match part.beside_water {
            BesideWater::Water => mole_share,
            BesideWater::Mixes(van_laar) => (mole_share * van_laar.coefficient(water)).min(without_water),
            BesideWater::Apart => without_water,
        };
        Partial { mole_share, activity, pressure: part.pressure * activity }
    };
    Ok(components.iter().map(partial).collect())
}

/// Milligrams in a cubic metre for parts per million of the air: C = ppm·p·M/(R·T).
///
/// # Errors
/// [`FormulaError::NotPositive`] for a molar mass, pressure or temperature of nothing.
///
/// # Source
/// Law of ideal gases.
///
/// # Example
/// 20 ppm of toluene (92.138 g/mol) at 25 °C and 101.325 kPa are 75.32 mg/m³ (library value).
/// ```
/// use formulas::{Silent, vapour::mass_of_ppm};
/// use uom::si::{f64::{Pressure, ThermodynamicTemperature}, pressure::kilopascal, thermodynamic_temperature::degree_celsius};
/// let at = ThermodynamicTemperature::new::<degree_celsius>(25.0);
/// let c = mass_of_ppm(&mut Silent, 20.0, 92.138, at, Pressure::new::<kilopascal>(101.325))?;
/// assert!((c - 75.32).abs() < 0.01);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn mass_of_ppm<R: Recorder>(r: &mut R, ppm: f64, molar_mass_g: f64, at: Temperature, pressure: Pressure) -> Result<f64, FormulaError> {
    given!(r, x["ppm"] = ppm, "share of the air");
    let (M, p, T) = gas(r, molar_mass_g, at, pressure)?;
    step!(r, C["mg/m³"] = x * p * M / (8.314462618 * T), sources::IDEAL_GAS);
    Ok(C)
}

/// Parts per million for milligrams in a cubic metre: the reverse of [`mass_of_ppm`].
///
/// # Errors
/// As [`mass_of_ppm`].
///
/// # Source
/// Law of ideal gases.
pub fn ppm_of_mass<R: Recorder>(
    r: &mut R,
    mg_per_m3: f64,
    molar_mass_g: f64,
    at: Temperature,
    pressure: Pressure,
) -> Result<f64, FormulaError> {
    given!(r, C["mg/m³"] = mg_per_m3, "concentration");
    let (M, p, T) = gas(r, molar_mass_g, at, pressure)?;
    step!(r, x["ppm"] = C * 8.314462618 * T / (p * M), sources::IDEAL_GAS);
    Ok(x)
}

fn gas<R: Recorder>(r: &mut R, molar_mass_g: f64, at: Temperature, pressure: Pressure) -> Result<(f64, f64, f64), FormulaError> {
    given!(r, M["g/mol"] = molar_mass_g, "molar mass");
    // ppm · kPa · g/mol over J/(mol·K) · K is 1e-6 · 1e3 · 1e-3 kg/m³, which is mg/m³.
    given!(r, p[kilopascal] = pressure, "pressure of the air");
    given!(r, T[kelvin] = at, "temperature of the air");
    positive("the molar mass", M, "g/mol")?;
    positive("the pressure", p, "kPa")?;
    positive("the temperature", T, "K")?;
    Ok((M, p, T))
}
