//! What evaporates: vapour pressure, evaporation from a tray, a wiped film and a spray, and what of it the air holds.

#![expect(non_snake_case, reason = "symbols match the source")]

mod emission;
mod share;

use units::{Pressure, Temperature};
use uom::si::pressure::{bar, kilopascal};
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

use crate::error::{FormulaError, positive};
use crate::math::{cbrt, exp, pow, sqrt};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

pub use emission::{Pan, film_time, gives_off_for, pan_rate, pan_rate_epa, schmidt};
pub use share::{BesideWater, Component, Partial, VanLaar, blend, mass_of_ppm, ppm_of_mass};

/// Molar gas constant, J/(mol·K), exact since 2019.
pub const GAS_CONSTANT: f64 = 8.314_462_618;
/// Standard atmosphere, kPa.
pub const ATMOSPHERE_KPA: f64 = 101.325;
/// Molar mass of dry air, g/mol.
const AIR_G_PER_MOL: f64 = 28.965;
/// Beyond its measured ends a vapour-pressure equation is carried so far, K.
const CARRIED_K: f64 = 60.0;
/// A heat of vaporisation is taken as constant so far from the known point, K.
const CONSTANT_HEAT_K: f64 = 40.0;

/// Coefficients of Antoine's equation, log₁₀(p/kPa) = A − B/(C + t/°C), between two temperatures in °C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Antoine {
    /// A.
    pub a: f64,
    /// B, °C.
    pub b: f64,
    /// C, °C.
    pub c: f64,
    /// Coldest measurement, °C.
    pub from: f64,
    /// Hottest measurement, °C.
    pub to: f64,
}

impl Antoine {
    /// The pressure in kPa, without working or checks: for sums over many substances.
    #[must_use]
    pub fn kilopascals(&self, celsius: f64) -> f64 {
        10_f64.powf(self.a - self.b / (self.c + celsius))
    }
}

/// Vapour pressure of a liquid: log₁₀ p = A − B/(C + t).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `A`, `B`, `C` | the liquid's coefficients | –, °C, °C |
/// | `t` | temperature | °C |
/// | `p` | vapour pressure | kPa |
///
/// # Range
/// The coefficients' own; up to 60 K beyond with [`Caution::Extrapolated`].
///
/// # Errors
/// [`FormulaError::OutOfRange`] farther beyond.
///
/// # Source
/// Antoine 1888; the coefficients carry their own source. Checked in `tests/published/vapour.csv`.
///
/// # Example
/// Water with A 7.196 21, B 1730.63, C 233.426 (*from memory* of a handbook's 8.071 31 for mmHg) boils at 100 °C and 101.3 kPa.
/// ```
/// use formulas::{Silent, vapour::{Antoine, vapour_pressure}};
/// use uom::si::{f64::ThermodynamicTemperature, pressure::kilopascal, thermodynamic_temperature::degree_celsius};
/// let water = Antoine { a: 7.196_21, b: 1730.63, c: 233.426, from: 1.0, to: 100.0 };
/// let p = vapour_pressure(&mut Silent, &water, ThermodynamicTemperature::new::<degree_celsius>(100.0))?;
/// assert!((p.get::<kilopascal>() - 101.3).abs() < 0.2);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn vapour_pressure<R: Recorder>(r: &mut R, liquid: &Antoine, at: Temperature) -> Result<Pressure, FormulaError> {
    given!(r, t["°C"] = at.get::<degree_celsius>(), "temperature");
    given!(r, A [] = liquid.a, "coefficient of the liquid");
    given!(r, B["°C"] = liquid.b, "coefficient of the liquid");
    given!(r, C["°C"] = liquid.c, "coefficient of the liquid");
    let (low, high) = (liquid.from, liquid.to);
    crate::error::within("the temperature", t, "°C", (low - CARRIED_K, high + CARRIED_K), sources::ANTOINE)?;
    positive("the temperature above the pole of the equation", C + t, "°C")?;
    if !(low..=high).contains(&t) {
        r.caution(Caution::Extrapolated { what: "the temperature", value: t, unit: "°C", low, high });
    }
    step!(r, p[kilopascal] = pow(10.0, A - B / (C + t)), sources::ANTOINE);
    Ok(Pressure::new::<kilopascal>(p))
}

/// Vapour pressure from one known point and the heat of vaporisation: p = p₁·exp(H/R·(1/T₁ − 1/T)).
///
/// # Range
/// The heat is taken as constant, so the answer carries [`Caution::Rough`]; more than 40 K from the known point [`Caution::Extrapolated`] too.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a pressure or heat of nothing.
///
/// # Source
/// Clausius 1850. Checked in `tests/published/vapour.csv`.
///
/// # Example
/// Toluene, 2.92 kPa at 20 °C and 38.0 kJ/mol, has 4.9 kPa at 30 °C (a library gives 4.89).
/// ```
/// use formulas::{Silent, vapour::vapour_pressure_from};
/// use uom::si::{f64::{Pressure, ThermodynamicTemperature}, pressure::kilopascal, thermodynamic_temperature::degree_celsius};
/// let celsius = ThermodynamicTemperature::new::<degree_celsius>;
/// let p = vapour_pressure_from(&mut Silent, Pressure::new::<kilopascal>(2.92), celsius(20.0), 38.0, celsius(30.0))?;
/// assert!((p.get::<kilopascal>() - 4.89).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn vapour_pressure_from<R: Recorder>(
    r: &mut R,
    known: Pressure,
    known_at: Temperature,
    heat_kj_per_mol: f64,
    at: Temperature,
) -> Result<Pressure, FormulaError> {
    given!(r, p_1[kilopascal] = known, "known vapour pressure");
    given!(r, T_1[kelvin] = known_at, "temperature at which it is known");
    given!(r, H["kJ/mol"] = heat_kj_per_mol, "heat of vaporisation");
    given!(r, T[kelvin] = at, "temperature");
    positive("the known vapour pressure", p_1, "kPa")?;
    positive("the heat of vaporisation", H, "kJ/mol")?;
    step!(r, p[kilopascal] = p_1 * exp(H / 0.008314462618 * (1.0 / T_1 - 1.0 / T)), sources::CLAUSIUS);
    r.caution(Caution::Rough { what: "the vapour pressure", why: "it is carried from one known point with a constant heat" });
    let (low, high) = (T_1 - CONSTANT_HEAT_K, T_1 + CONSTANT_HEAT_K);
    if !(low..=high).contains(&T) {
        r.caution(Caution::Extrapolated { what: "the temperature", value: T, unit: "K", low, high });
    }
    Ok(Pressure::new::<kilopascal>(p))
}

/// How many of which atoms a molecule has.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Atoms {
    /// Carbon.
    pub c: f64,
    /// Hydrogen.
    pub h: f64,
    /// Oxygen.
    pub o: f64,
    /// Nitrogen.
    pub n: f64,
    /// Chlorine.
    pub cl: f64,
    /// Rings that are aromatic or hold another atom than carbon; a ring of another kind counts as a chain.
    pub rings: f64,
}

/// Diffusion coefficient of a vapour in air, m²/s: D = 0.001 43·T^1.75/(p·√M_ab·(∛v + ∛19.7)²) in cm²/s.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `M` | molar mass of the vapour | g/mol |
/// | `v` | diffusion volume, summed over its atoms | – |
/// | `p` | pressure | bar |
///
/// # Range
/// Low pressure; within about 5 to 10 %.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a mass, volume or pressure of nothing.
///
/// # Source
/// Fuller, Schettler and Giddings 1966, atomic volumes of 1969; *from memory* of a handbook's table. Checked in
/// `tests/published/vapour.csv`.
///
/// # Example
/// Acetone in air at 25 °C: 1.06·10⁻⁵ m²/s (measured: 1.05 to 1.24).
/// ```
/// use formulas::{Silent, vapour::{Atoms, diffusion}};
/// use uom::si::{f64::{Pressure, ThermodynamicTemperature}, pressure::kilopascal, thermodynamic_temperature::degree_celsius};
/// let acetone = Atoms { c: 3.0, h: 6.0, o: 1.0, ..Atoms::default() };
/// let at = ThermodynamicTemperature::new::<degree_celsius>(25.0);
/// let d = diffusion(&mut Silent, acetone, 58.08, at, Pressure::new::<kilopascal>(101.325))?;
/// assert!((d * 1e5 - 1.06).abs() < 0.06);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn diffusion<R: Recorder>(
    r: &mut R,
    atoms: Atoms,
    molar_mass_g: f64,
    at: Temperature,
    pressure: Pressure,
) -> Result<f64, FormulaError> {
    let volume = 15.9 * atoms.c + 2.31 * atoms.h + 6.11 * atoms.o + 4.54 * atoms.n + 21.0 * atoms.cl - 18.3 * atoms.rings;
    given!(r, v [] = volume, "diffusion volume of its atoms");
    given!(r, M["g/mol"] = molar_mass_g, "molar mass");
    given!(r, M_a["g/mol"] = AIR_G_PER_MOL, "molar mass of air");
    given!(r, T[kelvin] = at, "temperature");
    given!(r, p[bar] = pressure, "pressure");
    positive("the diffusion volume", v, "")?;
    positive("the molar mass", M, "g/mol")?;
    positive("the pressure", p, "bar")?;
    step!(r, M_ab["g/mol"] = 2.0 / (1.0 / M + 1.0 / M_a), sources::FULLER);
    step!(r, D["cm²/s"] = 0.00143 * pow(T, 1.75) / (p * sqrt(M_ab) * pow(cbrt(v) + cbrt(19.7), 2.0)), sources::FULLER);
    Ok(D * 1e-4)
}
