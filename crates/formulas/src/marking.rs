//! Marking out and spotting: how much a film on a face takes.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{Area, Length, Range, Volume};
use uom::si::area::square_centimeter;
use uom::si::length::micrometer;
use uom::si::volume::milliliter;

use crate::error::{FormulaError, positive};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// The layout fluid a face takes: what lies on it, and what to use.
///
/// # Errors
/// [`FormulaError::NotPositive`] for an area of nothing.
///
/// # Source
/// A wet film of 20 µm, and half as much again for waste: *common practice*.
///
/// # Example
/// By hand: 100 × 100 mm at 20 µm is 0.2 mL.
/// ```
/// use formulas::{Silent, marking::layout_quantity};
/// use uom::si::{area::square_centimeter, f64::Area, volume::milliliter};
/// let amount = layout_quantity(&mut Silent, Area::new::<square_centimeter>(100.0))?;
/// assert!((amount.low.get::<milliliter>() - 0.2).abs() < 1e-9);
/// assert!((amount.likely.get::<milliliter>() - 0.3).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn layout_quantity<R: Recorder>(r: &mut R, face: Area) -> Result<Range<Volume>, FormulaError> {
    given!(r, A[square_centimeter] = face, "face coated");
    positive("the face coated", A, "cm²")?;
    step!(r, V[milliliter] = A * 20.0 / 10_000.0, sources::COMMON_PRACTICE);
    step!(r, V_used[milliliter] = 1.5 * V, sources::COMMON_PRACTICE);
    Ok(Range { low: V, likely: V_used, high: V_used }.map(Volume::new::<milliliter>))
}

/// The spotting colour a face takes: what lies on it, and as much again left on the roller.
///
/// # Errors
/// [`FormulaError::NotPositive`] for an area or a film of nothing.
///
/// # Source
/// *Common practice*: 2 µm of colour; a thicker film than 3 µm lies.
///
/// # Example
/// By hand: a plate of 300 × 200 mm at 2 µm takes 0.12 mL.
/// ```
/// use formulas::{Silent, marking::spotting_quantity};
/// use uom::si::f64::{Area, Length};
/// use uom::si::{area::square_centimeter, length::micrometer, volume::milliliter};
/// let amount = spotting_quantity(&mut Silent, Area::new::<square_centimeter>(600.0), Length::new::<micrometer>(2.0))?;
/// assert!((amount.low.get::<milliliter>() - 0.12).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn spotting_quantity<R: Recorder>(r: &mut R, face: Area, film: Length) -> Result<Range<Volume>, FormulaError> {
    given!(r, A[square_centimeter] = face, "face spotted");
    positive("the face spotted", A, "cm²")?;
    given!(r, h[micrometer] = film, "thickness of the film");
    positive("the thickness of the film", h, "µm")?;
    step!(r, V[milliliter] = A * h / 10_000.0, sources::COMMON_PRACTICE);
    step!(r, V_used[milliliter] = 2.0 * V, sources::COMMON_PRACTICE);
    if h > 3.0 {
        r.caution(Caution::Rough { what: "what the colour shows", why: "a film thicker than 3 µm smears into places that do not touch" });
    }
    Ok(Range { low: V, likely: V_used, high: V_used }.map(Volume::new::<milliliter>))
}
