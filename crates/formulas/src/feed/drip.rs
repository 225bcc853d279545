//! Wicks and ball oilers: oil that comes by itself, and oil that comes by the stroke of a can.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{Area, KinematicViscosity, Length, Volume};
use uom::si::area::square_millimeter;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::millimeter;
use uom::si::volume::milliliter;

use crate::cutting::DROP_ML;
use crate::error::{FormulaError, positive};
use crate::math::{ceil, max};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// A wick with the oil in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wick {
    /// Cross-section of the wick, all strands together.
    pub section: Area,
    /// Length from the oil's surface over the edge to where it drips.
    pub length: Length,
    /// Viscosity of the oil where the wick stands.
    pub viscosity: KinematicViscosity,
}

/// Drops a wick feeds, from drops counted once with another oil or another wick of the same yarn: Q = Q_0·(A/(ν·L))/(A_0/(ν_0·L_0)).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `A` | cross-section | mm² |
/// | `L` | length | mm |
/// | `nu` | kinematic viscosity in the wick | mm²/s |
/// | `Q`, `Q_0` | drops, drops counted | 1/min |
///
/// # Range
/// The same yarn, clean, with the oil at about the same depth below the edge. Oil above 500 mm²/s hardly climbs (*common practice*).
///
/// # Errors
/// [`FormulaError::NotPositive`] for a section, length or viscosity of nothing.
///
/// # Source
/// Darcy's law. Charts for felt stand in *The Tribology Handbook*, A7; counting once is surer.
///
/// # Example
/// An oil twice as thick comes half as fast: 6 drops become 3 (Darcy's law).
/// ```
/// use formulas::{Silent, feed::{Wick, wick_feed}};
/// use uom::si::f64::{Area, KinematicViscosity, Length};
/// use uom::si::{area::square_millimeter, kinematic_viscosity::square_millimeter_per_second, length::millimeter};
/// let wick = |nu| Wick {
///     section: Area::new::<square_millimeter>(20.0),
///     length: Length::new::<millimeter>(80.0),
///     viscosity: KinematicViscosity::new::<square_millimeter_per_second>(nu),
/// };
/// assert!((wick_feed(&mut Silent, &wick(100.0), 6.0, &wick(200.0))? - 3.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn wick_feed<R: Recorder>(r: &mut R, counted: &Wick, drops_per_minute: f64, wanted: &Wick) -> Result<f64, FormulaError> {
    given!(r, Q_0["drops/min"] = drops_per_minute, "drops counted");
    given!(r, A_0[square_millimeter] = counted.section, "cross-section of the wick counted");
    given!(r, L_0[millimeter] = counted.length, "its length");
    given!(r, nu_0[mm2_per_s] = counted.viscosity, "viscosity of the oil in it");
    given!(r, A[square_millimeter] = wanted.section, "cross-section of the wick");
    given!(r, L[millimeter] = wanted.length, "its length");
    given!(r, nu[mm2_per_s] = wanted.viscosity, "viscosity of the oil in it");
    for wick in [A_0, A] {
        positive("the cross-section of a wick", wick, "mm²")?;
    }
    for length in [L_0, L] {
        positive("the length of a wick", length, "mm")?;
    }
    for viscosity in [nu_0, nu] {
        positive("the viscosity in a wick", viscosity, "mm²/s")?;
    }
    step!(r, Q["drops/min"] = Q_0 * (A / A_0) * (L_0 / L) * (nu_0 / nu), sources::TRIBOLOGY_HANDBOOK);
    r.caution(Caution::Provided { that: "the wick is clean; dirt and tacky oil clog it. Lift it out when the machine stops: it feeds on" });
    Ok(Q)
}

/// Strokes of a can that a ball oiler takes for a dose: as many as hold it, and one at least each day of use.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a stroke of nothing.
///
/// # Source
/// *Common practice, no source*; a stroke of a small can gives about a quarter of a millilitre.
///
/// # Example
/// ```
/// use formulas::{Silent, feed::ball_oiler_strokes};
/// use uom::si::{f64::Volume, volume::milliliter};
/// let mL = Volume::new::<milliliter>;
/// // 0.3 mL for a saddle, by a can that gives 0.25 mL: two strokes.
/// assert_eq!(ball_oiler_strokes(&mut Silent, mL(0.3), mL(0.25))?, 2.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn ball_oiler_strokes<R: Recorder>(r: &mut R, dose: Volume, stroke: Volume) -> Result<f64, FormulaError> {
    given!(r, V[milliliter] = dose, "dose");
    given!(r, V_s[milliliter] = stroke, "what one stroke of the can gives");
    positive("the stroke of the can", V_s, "mL")?;
    step!(r, i["strokes"] = max(1.0, ceil(V / V_s)), sources::COMMON_PRACTICE);
    Ok(i)
}

/// Drops that hold a volume, at 0.04 mL for a drop of oil.
///
/// # Source
/// *Common practice, no source*: a drop is 0.03 to 0.06 mL.
pub fn drops_of<R: Recorder>(r: &mut R, volume: Volume) -> f64 {
    given!(r, V[milliliter] = volume, "volume");
    given!(r, V_d[milliliter] = Volume::new::<milliliter>(DROP_ML), "a drop of oil");
    step!(r, i["drops"] = V / V_d, sources::COMMON_PRACTICE);
    i
}
