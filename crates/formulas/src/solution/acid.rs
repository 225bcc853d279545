//! The acids of a pickle: their density, and how sour they are.

use units::{MassDensity, Ratio};
use uom::si::mass_density::gram_per_cubic_centimeter;
use uom::si::ratio::percent;

use super::sulfuric::sulfuric_density;
use crate::error::{FormulaError, within};
use crate::math::log10;
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, solve, step};

/// An acid that a pickle is made with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Acid {
    /// Sodium bisulfate, a dry salt.
    Bisulfate,
    /// Citric acid, dry, without water of crystallisation.
    Citric,
    /// Sulfuric acid.
    Sulfuric,
}

impl Acid {
    /// Every acid.
    pub const ALL: [Self; 3] = [Self::Bisulfate, Self::Citric, Self::Sulfuric];

    /// Mass of a mol, g: standard atomic weights.
    #[must_use]
    pub const fn molar_mass_g(self) -> f64 {
        match self {
            Self::Bisulfate => 120.06,
            Self::Citric => 192.12,
            Self::Sulfuric => 98.079,
        }
    }

    /// Protons that a mol gives to a base.
    #[must_use]
    pub const fn protons(self) -> f64 {
        match self {
            Self::Bisulfate => 1.0,
            Self::Sulfuric => 2.0,
            Self::Citric => 3.0,
        }
    }

    /// Strengths by mass that the densities are good for, %.
    const fn covered(self) -> (f64, f64) {
        match self {
            Self::Bisulfate | Self::Citric => (0.1, 20.0),
            Self::Sulfuric => (0.1, 100.0),
        }
    }
}

/// Density of an acid's solution at 20 °C.
///
/// # Range
/// The salts up to 20 % by mass.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside.
///
/// # Source
/// As [`sulfuric_density`]; the salts by a straight line, *from memory*.
pub fn solution_density<R: Recorder>(r: &mut R, acid: Acid, strength: Ratio) -> Result<MassDensity, FormulaError> {
    let per_percent = match acid {
        Acid::Bisulfate => 0.0078,
        Acid::Citric => 0.0041,
        Acid::Sulfuric => return sulfuric_density(r, strength),
    };
    given!(r, w[percent] = strength, "strength by mass");
    given!(r, k["g/cm³"] = per_percent, "what one per cent adds");
    within("the strength of the acid", w, "%", acid.covered(), sources::TYPICAL)?;
    step!(r, rho[gram_per_cubic_centimeter] = 0.9982 + k * w, sources::TYPICAL);
    Ok(MassDensity::new::<gram_per_cubic_centimeter>(rho))
}

/// Moles of acid in a litre of its solution.
pub(crate) fn molarity<R: Recorder>(r: &mut R, acid: Acid, strength: Ratio) -> Result<f64, FormulaError> {
    given!(r, rho[gram_per_cubic_centimeter] = solution_density(r, acid, strength)?, "density of the solution");
    given!(r, w[percent] = strength, "strength by mass");
    given!(r, M["g/mol"] = acid.molar_mass_g(), "mass of a mol of acid");
    step!(r, c["mol/L"] = 10.0 * w * rho / M, sources::DEFINITION);
    Ok(c)
}

/// pH of an acid's solution, as if its ions did not feel one another: the charges of its ions must sum to nothing.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `c` | acid in the solution | mol/L |
/// | `h` | hydrogen ions in it | mol/L |
/// | `K` | dissociation constant: of citric acid the first, of the others the second | mol/L |
///
/// # Range
/// As [`solution_density`]. Real solutions of such strength differ by some tenths.
///
/// # Errors
/// As [`solution_density`].
///
/// # Source
/// Law of mass action with the constants 0.012 (hydrogen sulfate) and 7.4·10⁻⁴ (citric acid) of the *CRC Handbook*, *from memory*.
///
/// # Example
/// Bisulfate of 10 % has pH 1.0, citric acid of 10 % 1.7 (computed independently).
/// ```
/// use formulas::{Silent, solution::{Acid, ideal_ph}};
/// use uom::si::{f64::Ratio, ratio::percent};
/// let ten = Ratio::new::<percent>(10.0);
/// assert!((ideal_ph(&mut Silent, Acid::Bisulfate, ten)? - 1.0).abs() < 0.05);
/// assert!((ideal_ph(&mut Silent, Acid::Citric, ten)? - 1.7).abs() < 0.05);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn ideal_ph<R: Recorder>(r: &mut R, acid: Acid, strength: Ratio) -> Result<f64, FormulaError> {
    /// Hydrogen ions of pure water, mol/L.
    const PURE_WATER: f64 = 1e-7;
    /// More hydrogen ions than any acid here can give, mol/L.
    const MOST: f64 = 50.0;
    given!(r, c["mol/L"] = molarity(r, acid, strength)?, "acid in the solution");
    given!(r, K["mol/L"] = if acid == Acid::Citric { 7.4e-4 } else { 0.012 }, "dissociation constant");
    // Sodium carries a charge for each hydrogen sulfate, so that of the salts only what splits off counts.
    let h = if acid == Acid::Sulfuric {
        solve!(r, h["mol/L"] in (PURE_WATER, MOST): c * (h + 2.0 * K) / (h + K) - h == 0.0, sources::CRC_HANDBOOK);
        h
    } else {
        solve!(r, h["mol/L"] in (PURE_WATER, MOST): c * K / (h + K) - h == 0.0, sources::CRC_HANDBOOK);
        h
    };
    step!(r, pH [] = -log10(h), sources::DEFINITION);
    r.caution(Caution::Rough { what: "the pH", why: "ions so crowded hinder one another; a strip tells better" });
    Ok(pH)
}
