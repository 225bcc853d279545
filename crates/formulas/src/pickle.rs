//! The pickle that takes oxide off copper alloys: mixing it, when it is spent, and how it is ended.

#![expect(non_snake_case, reason = "symbols match the source")]

mod gas;

use units::{Area, Length, Mass, MassDensity, Ratio, Temperature, Volume};
use uom::si::area::square_meter;
use uom::si::length::micrometer;
use uom::si::mass::gram;
// A gram in a litre is a kilogram in a cubic metre.
use uom::si::mass_density::{gram_per_cubic_centimeter, kilogram_per_cubic_meter as g_per_l};
use uom::si::ratio::percent;
use uom::si::volume::milliliter;

use crate::error::{FormulaError, not_negative, within};
use crate::solution::{Acid, Dilution, dilution, molarity, solution_density, sulfuric_dilution};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

pub use gas::{HYDROGEN_BURNS_FROM, Hydrogen, Neutralised, fluoride_bound, hydrogen_from_aluminium, neutralise};

/// Share of the copper a pickle could dissolve at which it is retired; *common practice*.
const RETIRE_AT: f64 = 0.3;

/// Strengths by mass at which each acid is used, %; *common practice*.
#[must_use]
pub const fn usual_strength(acid: Acid) -> (f64, f64) {
    match acid {
        Acid::Bisulfate => (5.0, 12.0),
        Acid::Citric => (5.0, 15.0),
        Acid::Sulfuric => (5.0, 10.0),
    }
}

/// What a bath of pickle is mixed from: by mass, from a dry salt or a stronger acid.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `V` | volume of the bath | mL |
/// | `w` | strength by mass | % |
/// | `rho` | density of the pickle | g/cm³ |
/// | `m` | its mass | g |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a strength nobody uses, see [`usual_strength`], or a negative volume; for sulfuric acid also as
/// [`sulfuric_dilution`], which refuses what would get too hot.
///
/// # Source
/// Mass balance; the strengths are *common practice, no source*.
///
/// # Example
/// A litre of bisulfate of 10 % weighs about 1.08 kg, and so takes 108 g of salt into 968 g of water (density *from memory*).
/// ```
/// use formulas::{Silent, pickle::pickle_bath, solution::Acid};
/// use uom::si::f64::{Ratio, ThermodynamicTemperature, Volume};
/// use uom::si::{mass::gram, ratio::percent, thermodynamic_temperature::degree_celsius, volume::liter};
/// let share = Ratio::new::<percent>;
/// let water = ThermodynamicTemperature::new::<degree_celsius>(15.0);
/// let bath = pickle_bath(&mut Silent, Acid::Bisulfate, Volume::new::<liter>(1.0), share(100.0), share(10.0), water)?;
/// assert!((bath.concentrate.get::<gram>() - 108.0).abs() < 1.0);
/// assert!((bath.water.get::<gram>() - 968.0).abs() < 5.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn pickle_bath<R: Recorder>(
    r: &mut R,
    acid: Acid,
    volume: Volume,
    stock: Ratio,
    strength: Ratio,
    water: Temperature,
) -> Result<Dilution, FormulaError> {
    within("the strength of the pickle", strength.get::<percent>(), "%", usual_strength(acid), sources::COMMON_PRACTICE)?;
    r.caution(Caution::Danger {
        words: "Goggles and gloves, a lid, and a draught. Parts below 100 °C when they go in, flux washed off in hot water before. Never \
                steel in it, not even tweezers or wire: copper plates out on every part. No hard or spring steel: acid makes it brittle.",
    });
    if acid == Acid::Sulfuric {
        return Ok(sulfuric_dilution(r, volume, stock, strength, water)?.from);
    }
    given!(r, V[milliliter] = volume, "volume of the bath");
    not_negative("the volume of the bath", V, "mL", sources::DEFINITION)?;
    given!(r, rho[gram_per_cubic_centimeter] = solution_density(r, acid, strength)?, "density of the pickle");
    step!(r, m[gram] = rho * V, sources::DEFINITION);
    dilution(r, Mass::new::<gram>(m), stock, strength)
}

/// Copper that a pickle takes up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CopperLimit {
    /// Until all its acid is used.
    pub all: MassDensity,
    /// Until it is retired.
    pub retire: MassDensity,
}

/// Copper that a fresh pickle can dissolve, and the copper at which it is retired: 30 % of that.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `c` | acid | mol/L |
/// | `k` | mol of copper that a mol of acid holds: bisulfate ½, sulfuric and citric acid 1 | – |
///
/// # Errors
/// As [`solution_density`].
///
/// # Source
/// Stoichiometry of CuO with standard atomic weights; one copper for a citrate is a simplification. Retiring at 30 %, or when the work
/// takes twice as long as at first, is *common practice*.
///
/// # Example
/// At 10 %: bisulfate 28 g/L, citric acid 34, sulfuric acid 69 (computed independently).
/// ```
/// use formulas::{Silent, pickle::copper_limit, solution::Acid};
/// use uom::si::{f64::Ratio, mass_density::kilogram_per_cubic_meter, ratio::percent};
/// for (acid, copper) in [(Acid::Bisulfate, 28.0), (Acid::Citric, 34.0), (Acid::Sulfuric, 69.0)] {
///     let limit = copper_limit(&mut Silent, acid, Ratio::new::<percent>(10.0))?;
///     assert!((limit.all.get::<kilogram_per_cubic_meter>() - copper).abs() < 0.6);
/// }
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn copper_limit<R: Recorder>(r: &mut R, acid: Acid, strength: Ratio) -> Result<CopperLimit, FormulaError> {
    let per_acid = match acid {
        Acid::Bisulfate => 0.5,
        Acid::Citric | Acid::Sulfuric => 1.0,
    };
    given!(r, c["mol/L"] = molarity(r, acid, strength)?, "acid in the pickle");
    given!(r, k [] = per_acid, "mol of copper that a mol of acid holds");
    given!(r, f [] = RETIRE_AT, "share of it at which the pickle is retired");
    step!(r, rho_Cu["g/L"] = 63.546 * k * c, sources::ATOMIC_WEIGHTS);
    step!(r, rho_r["g/L"] = f * rho_Cu, sources::COMMON_PRACTICE);
    r.caution(Caution::Provided { that: "it works in less than twice the time it took at first; else retire it sooner" });
    Ok(CopperLimit { all: MassDensity::new::<g_per_l>(rho_Cu), retire: MassDensity::new::<g_per_l>(rho_r) })
}

/// An oxide of copper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Oxide {
    /// The black one, CuO.
    Black,
    /// The red one, Cu₂O; without an oxidiser half its copper stays behind as metal.
    Red,
}

/// Copper in the oxide that is taken off an area.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative area or thickness.
///
/// # Source
/// Densities 6.31 and 6.0 g/cm³ of the *CRC Handbook*, *from memory*; standard atomic weights.
///
/// # Example
/// A square decimetre of black oxide, 10 µm thick, holds half a gram of copper (by hand: 6.31·0.1·63.546/79.545).
/// ```
/// use formulas::{Silent, pickle::{Oxide, oxide_copper}};
/// use uom::si::f64::{Area, Length};
/// use uom::si::{area::square_decimeter, length::micrometer, mass::gram};
/// let (area, scale) = (Area::new::<square_decimeter>(1.0), Length::new::<micrometer>(10.0));
/// assert!((oxide_copper(&mut Silent, Oxide::Black, area, scale)?.get::<gram>() - 0.504).abs() < 0.001);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn oxide_copper<R: Recorder>(r: &mut R, oxide: Oxide, area: Area, thickness: Length) -> Result<Mass, FormulaError> {
    let (density, share) = match oxide {
        Oxide::Black => (6.31, 63.546 / 79.545),
        Oxide::Red => (6.0, 127.092 / 143.091),
    };
    given!(r, A[square_meter] = area, "area of the oxide");
    given!(r, t[micrometer] = thickness, "its thickness");
    given!(r, rho["g/cm³"] = density, "its density");
    given!(r, w [] = share, "share of copper in it");
    not_negative("the area", A, "m²", sources::DEFINITION)?;
    not_negative("the thickness", t, "µm", sources::DEFINITION)?;
    step!(r, m_Cu[gram] = rho * A * t * w, sources::CRC_HANDBOOK);
    Ok(Mass::new::<gram>(m_Cu))
}
