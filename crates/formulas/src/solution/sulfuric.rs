//! Sulfuric acid: its density, and how warm it gets when it is thinned.

use units::{Mass, MassDensity, Ratio, Temperature, TemperatureDifference, Volume};
use uom::si::mass::gram;
use uom::si::mass_density::gram_per_cubic_centimeter;
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin;
use uom::si::volume::milliliter;

use super::table::between;
use super::{Dilution, Mixing, dilution, mixing};
use crate::error::{FormulaError, within};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Strengths by mass that the tables cover, %: weaker is water.
const COVERED: (f64, f64) = (0.1, 100.0);

/// Heat that 1 mol of acid gives off in `r` mol of water at 25 °C, kJ, against ln(1 + r): nearly straight to r = 2, so that a
/// curve through the few rows of strong acid is sound.
fn heat_of_solution(water_per_acid: f64) -> f64 {
    const ROWS: [(f64, f64); 16] = [
        (0.0, 0.0),
        (0.5, 15.73),
        (1.0, 28.07),
        (1.5, 36.90),
        (2.0, 41.92),
        (3.0, 48.99),
        (4.0, 54.06),
        (5.0, 58.03),
        (10.0, 67.03),
        (25.0, 72.30),
        (50.0, 73.34),
        (100.0, 73.97),
        (500.0, 76.73),
        (1_000.0, 78.57),
        (5_000.0, 84.43),
        (10_000.0, 87.07),
    ];
    between(&ROWS.map(|(r, heat)| (r.ln_1p(), heat)), water_per_acid.ln_1p())
}

/// Density at 20 °C in g/cm³ by mass per cent.
fn density(w: f64) -> f64 {
    const ROWS: [(f64, f64); 22] = [
        (0.0, 0.9982),
        (5.0, 1.0317),
        (10.0, 1.0661),
        (15.0, 1.1020),
        (20.0, 1.1394),
        (25.0, 1.1783),
        (30.0, 1.2185),
        (35.0, 1.2599),
        (40.0, 1.3028),
        (45.0, 1.3476),
        (50.0, 1.3951),
        (55.0, 1.4453),
        (60.0, 1.4983),
        (65.0, 1.5533),
        (70.0, 1.6105),
        (75.0, 1.6692),
        (80.0, 1.7272),
        (85.0, 1.7786),
        (90.0, 1.8144),
        (95.0, 1.8337),
        (97.0, 1.8364),
        (100.0, 1.8305),
    ];
    between(&ROWS, w)
}

/// Specific heat at 20 °C in kJ/(kg·K) by mass per cent.
fn specific_heat(w: f64) -> f64 {
    const ROWS: [(f64, f64); 14] = [
        (0.0, 4.18),
        (5.16, 3.995),
        (9.82, 3.840),
        (15.36, 3.668),
        (21.40, 3.489),
        (30.34, 3.199),
        (37.69, 2.938),
        (47.57, 2.574),
        (57.65, 2.268),
        (64.47, 2.097),
        (73.13, 1.936),
        (85.48, 1.818),
        (91.81, 1.584),
        (100.0, 1.402),
    ];
    between(&ROWS, w)
}

/// Density of sulfuric acid at 20 °C.
///
/// # Range
/// 0.1 to 100 % by mass.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside.
///
/// # Source
/// The tables of the *CRC Handbook* and of Perry, *from memory*; read between by a curve that follows the rows.
///
/// # Example
/// Battery acid of 37 % has 1.277 g/cm³ (*from memory*).
/// ```
/// use formulas::{Silent, solution::sulfuric_density};
/// use uom::si::{f64::Ratio, mass_density::gram_per_cubic_centimeter, ratio::percent};
/// let density = sulfuric_density(&mut Silent, Ratio::new::<percent>(37.0))?;
/// assert!((density.get::<gram_per_cubic_centimeter>() - 1.277).abs() < 0.001);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn sulfuric_density<R: Recorder>(r: &mut R, strength: Ratio) -> Result<MassDensity, FormulaError> {
    given!(r, w[percent] = strength, "strength by mass");
    within("the strength of the acid", w, "%", COVERED, sources::CRC_HANDBOOK)?;
    let rho_20 = density;
    step!(r, rho[gram_per_cubic_centimeter] = rho_20(w), sources::CRC_HANDBOOK);
    Ok(MassDensity::new::<gram_per_cubic_centimeter>(rho))
}

/// How much warmer sulfuric acid gets when it is thinned from one strength by mass to another.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `w_1`, `w_2` | strength before and after | % |
/// | `r_1`, `r_2` | mol of water for a mol of acid | – |
/// | `H_1`, `H_2` | heat a mol of acid gives off in so much water | kJ/mol |
/// | `c` | specific heat of the mixture | kJ/(kg·K) |
///
/// # Range
/// 0.1 to 100 %, acid and water of the same temperature near 25 °C, no heat lost.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside, or for a solution stronger than what it is made from.
///
/// # Source
/// Integral heats of solution of NBS Circular 500, *from memory* as chemical engineers' textbooks reprint them; specific heats of Perry,
/// *from memory*.
///
/// # Example
/// 96 % thinned to 10 % gets 17.5 K warmer, to 37 % 74 K (computed independently).
/// ```
/// use formulas::{Silent, solution::sulfuric_rise};
/// use uom::si::{f64::Ratio, ratio::percent, temperature_interval::kelvin};
/// let share = Ratio::new::<percent>;
/// assert!((sulfuric_rise(&mut Silent, share(96.0), share(10.0))?.get::<kelvin>() - 17.5).abs() < 1.0);
/// assert!((sulfuric_rise(&mut Silent, share(96.0), share(37.0))?.get::<kelvin>() - 74.0).abs() < 5.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn sulfuric_rise<R: Recorder>(r: &mut R, from: Ratio, to: Ratio) -> Result<TemperatureDifference, FormulaError> {
    given!(r, w_1[percent] = from, "strength before");
    given!(r, w_2[percent] = to, "strength after");
    within("the strength before", w_1, "%", COVERED, sources::NBS_500)?;
    within("the strength after", w_2, "%", (COVERED.0, w_1), sources::NBS_500)?;
    let H = heat_of_solution;
    let c_p = specific_heat;
    step!(r, r_1 [] = (100.0 - w_1) / w_1 * 98.079 / 18.015, sources::ATOMIC_WEIGHTS);
    step!(r, r_2 [] = (100.0 - w_2) / w_2 * 98.079 / 18.015, sources::ATOMIC_WEIGHTS);
    step!(r, H_1["kJ/mol"] = H(r_1), sources::NBS_500);
    step!(r, H_2["kJ/mol"] = H(r_2), sources::NBS_500);
    step!(r, c["kJ/(kg·K)"] = c_p(w_2), sources::PERRY);
    step!(r, Delta_T[kelvin] = 10.0 * w_2 / 98.079 * (H_2 - H_1) / c, sources::DEFINITION);
    Ok(TemperatureDifference::new::<kelvin>(Delta_T))
}

/// Sulfuric acid thinned with water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AcidDilution {
    /// What it is mixed from.
    pub from: Dilution,
    /// Volume of the concentrate at 20 °C.
    pub concentrate: Volume,
    /// How much warmer it gets.
    pub rise: TemperatureDifference,
    /// How it is mixed.
    pub mixing: Mixing,
}

/// A volume of sulfuric acid of one strength from one of another: what to weigh, and how to mix it.
///
/// # Range
/// As [`sulfuric_rise`].
///
/// # Errors
/// As [`sulfuric_rise`] and [`mixing`], which refuses a mixture that would pass 60 °C.
///
/// # Source
/// As [`sulfuric_rise`]; acid into water, never water into acid, is *common practice*.
///
/// # Example
/// A litre of 10 % from battery acid: 288 g of acid into 778 g of water, and 1.8 K warmer (computed independently).
/// ```
/// use formulas::{Silent, solution::sulfuric_dilution};
/// use uom::si::f64::{Ratio, ThermodynamicTemperature, Volume};
/// use uom::si::{mass::gram, ratio::percent, thermodynamic_temperature::degree_celsius, volume::liter};
/// let share = Ratio::new::<percent>;
/// let cold = ThermodynamicTemperature::new::<degree_celsius>(15.0);
/// let mix = sulfuric_dilution(&mut Silent, Volume::new::<liter>(1.0), share(37.0), share(10.0), cold)?;
/// assert!((mix.from.concentrate.get::<gram>() - 288.0).abs() < 1.0);
/// assert!((mix.from.water.get::<gram>() - 778.0).abs() < 1.0);
/// // From 96 % to 37 % it would boil.
/// assert!(sulfuric_dilution(&mut Silent, Volume::new::<liter>(1.0), share(96.0), share(37.0), cold).is_err());
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn sulfuric_dilution<R: Recorder>(
    r: &mut R,
    volume: Volume,
    from: Ratio,
    to: Ratio,
    water: Temperature,
) -> Result<AcidDilution, FormulaError> {
    let rise = sulfuric_rise(r, from, to)?;
    r.caution(Caution::Danger {
        words: "Always the acid into cold water, in a thin stream, stirred, never water into acid. Goggles, gloves and apron; vessel of \
                polyethylene, polypropylene or glass, in a tray, with water and bicarbonate at hand. The data sheet comes first.",
    });
    let mixing = mixing(r, water, rise)?;
    given!(r, V[milliliter] = volume, "volume of the solution");
    given!(r, rho[gram_per_cubic_centimeter] = sulfuric_density(r, to)?, "its density");
    step!(r, m[gram] = rho * V, sources::DEFINITION);
    let masses = dilution(r, Mass::new::<gram>(m), from, to)?;
    given!(r, m_1[gram] = masses.concentrate, "concentrate");
    given!(r, rho_1[gram_per_cubic_centimeter] = sulfuric_density(r, from)?, "its density");
    step!(r, V_1[milliliter] = m_1 / rho_1, sources::DEFINITION);
    Ok(AcidDilution { from: masses, concentrate: Volume::new::<milliliter>(V_1), rise, mixing })
}
