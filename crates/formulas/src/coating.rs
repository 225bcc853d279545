//! Coats on parts: what they do to a fit, how much of what is sold they take, and the baths that make them.

#![expect(non_snake_case, reason = "symbols match the source")]

mod bath;
mod black;
mod grit;

use units::{Area, KinematicViscosity, Length, Range, Ratio, Time, Volume};
use uom::si::area::square_meter;
use uom::si::length::micrometer;
use uom::si::ratio::{percent, ratio};
use uom::si::volume::milliliter;

use crate::error::{FormulaError, not_negative, positive, within};
use crate::slideway::drained_film;
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

pub use bath::{Immersed, Immersion, Stance, Tank, best_stance, concentrate_to_buy, immersion};
pub use black::{Blackening, USABLE_SELENIUM_G_PER_L, blackening};
pub use grit::{GRITS, GritStep, Rubbing, grit_sequence};

/// A face that fits into or over another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Face {
    /// The outside of a shaft.
    Shaft,
    /// A bore.
    Bore,
    /// A screw's thread of 60°.
    ExternalThread,
    /// A nut's thread of 60°.
    InternalThread,
}

impl Face {
    /// By how many thicknesses the diameter grows, or the pitch diameter of a thread, whose flanks lie 30° off the radius.
    const fn times(self) -> f64 {
        match self {
            Self::Shaft => 2.0,
            Self::Bore => -2.0,
            Self::ExternalThread => 4.0,
            Self::InternalThread => -4.0,
        }
    }
}

/// What a coat adds to a diameter; negative where a bore closes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SizeChange {
    /// Of a coat laid on the metal: plating, paint, wax.
    pub laid_on: Length,
    /// Of a coat grown out of the metal, such as black oxide or phosphate, of which about half replaces metal.
    pub grown: Length,
}

/// What a coat adds to a diameter: 2·t on a shaft, −2·t in a bore, ±4·t on the pitch diameter of a 60° thread.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `t` | thickness of the coat | µm |
/// | `k` | thicknesses by which the diameter grows | – |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative thickness.
///
/// # Source
/// Geometry: a flank of a 60° thread moves t/sin 30° along the radius. Half for grown coats is *common practice, from memory*.
///
/// # Example
/// 5 µm add 10 µm to a shaft and 20 µm to a thread's pitch diameter (by hand).
/// ```
/// use formulas::{Silent, coating::{Face, size_change}};
/// use uom::si::{f64::Length, length::micrometer};
/// let grows = |face| size_change(&mut Silent, face, Length::new::<micrometer>(5.0));
/// assert!((grows(Face::Shaft)?.laid_on.get::<micrometer>() - 10.0).abs() < 1e-9);
/// assert!((grows(Face::ExternalThread)?.laid_on.get::<micrometer>() - 20.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn size_change<R: Recorder>(r: &mut R, face: Face, thickness: Length) -> Result<SizeChange, FormulaError> {
    given!(r, t[micrometer] = thickness, "thickness of the coat");
    given!(r, k [] = face.times(), "thicknesses by which the diameter grows");
    not_negative("the thickness of the coat", t, "µm", sources::DEFINITION)?;
    step!(r, Delta_d[micrometer] = k * t, sources::DEFINITION);
    step!(r, Delta_d_n[micrometer] = k * t / 2.0, sources::COMMON_PRACTICE);
    Ok(SizeChange { laid_on: Length::new::<micrometer>(Delta_d), grown: Length::new::<micrometer>(Delta_d_n) })
}

/// How much of a tolerance a coat uses up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToleranceUse {
    /// The share.
    pub share: Ratio,
    /// Whether that is too much: mask the face, or choose a thinner coat.
    pub too_much: bool,
}

/// The share of a tolerance that a coat uses up; more than a fifth is too much.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a tolerance of nothing.
///
/// # Source
/// The fifth is *common practice, no source*.
pub fn tolerance_use<R: Recorder>(r: &mut R, change: Length, tolerance: Length) -> Result<ToleranceUse, FormulaError> {
    /// The most of a tolerance that a coat may use up, %.
    const MOST: f64 = 20.0;
    given!(r, Delta_d[micrometer] = change.abs(), "what the coat adds or takes");
    given!(r, T[micrometer] = tolerance, "tolerance");
    positive("the tolerance", T, "µm")?;
    step!(r, q[percent] = 100.0 * Delta_d / T, sources::COMMON_PRACTICE);
    Ok(ToleranceUse { share: Ratio::new::<percent>(q), too_much: q > MOST })
}

/// Mean film that drainage leaves on an upright face: two thirds of that at its lower edge.
///
/// # Errors
/// As [`drained_film`].
///
/// # Source
/// Jeffreys 1930, *from memory*: the mean of √z from the upper edge to the lower.
///
/// # Example
/// A VG 22 oil on a face 0.3 m high leaves 1.9 µm after a day (computed independently); that is 1.9 mL/m².
/// ```
/// use formulas::{Silent, coating::drained_mean};
/// use uom::si::f64::{KinematicViscosity, Length, Time};
/// use uom::si::{kinematic_viscosity::square_millimeter_per_second, length::{meter, micrometer}, time::day};
/// let oil = KinematicViscosity::new::<square_millimeter_per_second>(22.0);
/// let film = drained_mean(&mut Silent, oil, Length::new::<meter>(0.3), Time::new::<day>(1.0))?;
/// assert!((film.get::<micrometer>() - 1.86).abs() < 0.02);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn drained_mean<R: Recorder>(r: &mut R, nu: KinematicViscosity, height: Length, after: Time) -> Result<Length, FormulaError> {
    given!(r, h[micrometer] = drained_film(r, nu, height, after)?, "film at the lower edge");
    step!(r, h_m[micrometer] = 2.0 * h / 3.0, sources::JEFFREYS);
    Ok(Length::new::<micrometer>(h_m))
}

/// How a coat is put on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Application {
    /// With a cloth.
    Wipe,
    /// With a brush.
    Brush,
    /// From a spray can.
    Aerosol,
}

impl Application {
    /// Share of what is used that ends on the part: 0.9, 0.85, 0.6; the bounds are a judgement. *Common practice, no source.*
    #[must_use]
    pub const fn transfer(self) -> Range<f64> {
        match self {
            Self::Wipe => Range { low: 0.8, likely: 0.9, high: 0.95 },
            Self::Brush => Range { low: 0.75, likely: 0.85, high: 0.95 },
            Self::Aerosol => Range { low: 0.45, likely: 0.6, high: 0.7 },
        }
    }
}

/// What a coat takes out of its can: least, likely, most. V = A·t/(v·η).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `A` | area | m² |
/// | `t` | dry thickness; 1 µm is 1 mL/m² | µm |
/// | `v` | solids by volume | – |
/// | `eta` | share that ends on the part | – |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative thickness or area, or solids outside 1 to 100 %.
///
/// # Source
/// Geometry, with the transfer of [`Application`].
///
/// # Example
/// 25 µm of a wax with 30 % solids take 139 mL/m² from a spray can (by hand: 25/0.3/0.6).
/// ```
/// use formulas::{Silent, coating::{Application, coat_volume}};
/// use units::Range;
/// use uom::si::f64::{Area, Length, Ratio};
/// use uom::si::{area::square_meter, length::micrometer, ratio::percent, volume::milliliter};
/// let solids = Range::exact(Ratio::new::<percent>(30.0));
/// let (area, dry) = (Area::new::<square_meter>(1.0), Length::new::<micrometer>(25.0));
/// let takes = coat_volume(&mut Silent, area, dry, solids, Application::Aerosol)?;
/// assert!((takes.likely.get::<milliliter>() - 138.9).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn coat_volume<R: Recorder>(
    r: &mut R,
    area: Area,
    dry: Length,
    solids: Range<Ratio>,
    how: Application,
) -> Result<Range<Volume>, FormulaError> {
    given!(r, A[square_meter] = area, "area");
    given!(r, t[micrometer] = dry, "thickness when dry");
    not_negative("the area", A, "m²", sources::DEFINITION)?;
    not_negative("the thickness", t, "µm", sources::DEFINITION)?;
    let transfer = how.transfer();
    let mut takes = |solids: Ratio, transfer: f64| {
        given!(r, v [] = solids.get::<ratio>(), "solids by volume");
        given!(r, eta [] = transfer, "share that ends on the part");
        within("the solids by volume", v, "", (0.01, 1.0), sources::DEFINITION)?;
        step!(r, V[milliliter] = A * t / (v * eta), sources::COMMON_PRACTICE);
        Ok(Volume::new::<milliliter>(V))
    };
    let low = takes(solids.high, transfer.high)?;
    let likely = takes(solids.likely, transfer.likely)?;
    let high = takes(solids.low, transfer.low)?;
    r.caution(Caution::Rough { what: "the amount", why: "how much misses the part depends on its shape and on your hand" });
    Ok(Range { low, likely, high })
}
