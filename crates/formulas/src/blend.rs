//! Blending two oils.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{KinematicViscosity, Ratio, Temperature};
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;

use crate::error::{FormulaError, positive, within};
use crate::math::log10;
use crate::sources;
use crate::viscosity::{Line, Measured, ordinate, viscosity_of_ordinate};
use crate::working::{Caution, Recorder};
use crate::{given, step};

const ONE_FAMILY: Caution = Caution::Provided { that: "both oils are of one additive family, and neither is polymer-thickened or tacky" };

/// Viscosity of a blend of two oils at one temperature, from their viscosities at that temperature.
///
/// W_b = (1 − x)·W_1 + x·W_2, with W = log₁₀ log₁₀ Z as in [`viscosity_at`](crate::viscosity::viscosity_at).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `x` | share of the thick oil by volume | – |
/// | `W_1`, `W_2` | ordinates of the thin and the thick oil | – |
///
/// # Range
/// Mineral oils of one additive family; never oils thickened with polymers.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a share outside 0 to 1 or a viscosity outside the standard's range.
///
/// # Source
/// ASTM D7152, the simple method; its form *from memory*.
///
/// # Example
/// Half VG 32 and half VG 220 make 75.9 mm²/s, not the mean of 126 (computed independently).
/// ```
/// use formulas::{Silent, blend::blend_viscosity};
/// use uom::si::{f64::{KinematicViscosity, Ratio}, kinematic_viscosity::square_millimeter_per_second as mm2_per_s, ratio::percent};
/// let nu = KinematicViscosity::new::<mm2_per_s>;
/// let blend = blend_viscosity(&mut Silent, nu(32.0), nu(220.0), Ratio::new::<percent>(50.0))?;
/// assert!((blend.get::<mm2_per_s>() - 75.9).abs() < 0.76);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn blend_viscosity<R: Recorder>(
    r: &mut R,
    thin: KinematicViscosity,
    thick: KinematicViscosity,
    thick_share: Ratio,
) -> Result<KinematicViscosity, FormulaError> {
    given!(r, x [] = thick_share.get::<ratio>(), "share of the thick oil by volume");
    within("the share of the thick oil", x, "", (0.0, 1.0), sources::ASTM_D7152)?;
    let (W_1, W_2) = (ordinate(r, thin)?, ordinate(r, thick)?);
    given!(r, W_1 [] = W_1, "ordinate of the thin oil");
    given!(r, W_2 [] = W_2, "ordinate of the thick oil");
    step!(r, W [] = (1.0 - x) * W_1 + x * W_2, sources::ASTM_D7152);
    r.caution(ONE_FAMILY);
    viscosity_of_ordinate(r, W)
}

/// The share of the thick oil, by volume, that makes a blend of a wanted viscosity; all three at one temperature.
///
/// # Errors
/// [`FormulaError::NotBetweenStocks`] unless the wanted viscosity lies between the two.
///
/// # Source
/// ASTM D7152, as [`blend_viscosity`].
///
/// # Example
/// 68 from 32 and 220 mm²/s takes 44.2 % of the thick oil (computed independently).
/// ```
/// use formulas::{Silent, blend::blend_fraction};
/// use uom::si::{f64::KinematicViscosity, kinematic_viscosity::square_millimeter_per_second as mm2_per_s, ratio::percent};
/// let nu = KinematicViscosity::new::<mm2_per_s>;
/// let share = blend_fraction(&mut Silent, nu(32.0), nu(220.0), nu(68.0))?;
/// assert!((share.get::<percent>() - 44.2).abs() < 0.44);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn blend_fraction<R: Recorder>(
    r: &mut R,
    thin: KinematicViscosity,
    thick: KinematicViscosity,
    wanted: KinematicViscosity,
) -> Result<Ratio, FormulaError> {
    if !(thin < thick && thin <= wanted && wanted <= thick) {
        let [wanted, thin, thick] = [wanted, thin, thick].map(|nu| nu.get::<mm2_per_s>());
        return Err(FormulaError::NotBetweenStocks { wanted, thin, thick });
    }
    let (W_1, W_2) = (ordinate(r, thin)?, ordinate(r, thick)?);
    given!(r, W_1 [] = W_1, "ordinate of the thin oil");
    given!(r, W_2 [] = W_2, "ordinate of the thick oil");
    let W = ordinate(r, wanted)?;
    given!(r, W [] = W, "ordinate of the blend wanted");
    step!(r, x [] = (W - W_1) / (W_2 - W_1), sources::ASTM_D7152);
    r.caution(ONE_FAMILY);
    Ok(Ratio::new::<ratio>(x))
}

/// Viscosity of a blend of two oils at a temperature, each oil known by two points: the preferred method.
///
/// The logarithm of the temperature is averaged at equal viscosity: log₁₀ T = (1 − x)·(A_1 − W)/B_1 + x·(A_2 − W)/B_2, solved for W.
///
/// # Errors
/// As [`blend_viscosity`] and [`viscosity_at`](crate::viscosity::viscosity_at).
///
/// # Source
/// ASTM D7152 (Wright's method); its form *from memory*.
pub fn blend_of_oils<R: Recorder>(
    r: &mut R,
    thin: [Measured; 2],
    thick: [Measured; 2],
    thick_share: Ratio,
    at: Temperature,
) -> Result<KinematicViscosity, FormulaError> {
    given!(r, x [] = thick_share.get::<ratio>(), "share of the thick oil by volume");
    within("the share of the thick oil", x, "", (0.0, 1.0), sources::ASTM_D7152)?;
    let Line { A: A_1, B: B_1 } = Line::through(r, thin[0], thin[1])?;
    let Line { A: A_2, B: B_2 } = Line::through(r, thick[0], thick[1])?;
    given!(r, A_1 [] = A_1, "constant of the thin oil");
    given!(r, B_1 [] = B_1, "slope of the thin oil");
    given!(r, A_2 [] = A_2, "constant of the thick oil");
    given!(r, B_2 [] = B_2, "slope of the thick oil");
    given!(r, T[kelvin] = at, "temperature asked for");
    positive("the temperature", T, "K")?;
    step!(r, W [] = ((1.0 - x) * A_1 / B_1 + x * A_2 / B_2 - log10(T)) / ((1.0 - x) / B_1 + x / B_2), sources::ASTM_D7152);
    r.caution(ONE_FAMILY);
    viscosity_of_ordinate(r, W)
}
