//! Fits: what a tolerance class allows, and what gap two parts leave between them.
//!
//! Gaps are on the diameter; a negative gap is an interference.

#![expect(non_snake_case, reason = "symbols match the source")]

mod chance;
mod class;
mod measured;
mod table;

pub use chance::{Phi, chance_below_normal, chance_below_uniform, clearance};
pub use class::{Class, Feature, Letter};
pub use measured::{Chances, Instrument, Measured, MeasuredGap, chances, measured_gap, uncertainty};

use units::Length;
use uom::si::length::{micrometer, millimeter};

use crate::error::{FormulaError, positive, within};
use crate::math::{cbrt, sqrt};
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

/// The largest diameter of the tables, mm.
pub const LARGEST_MM: f64 = 250.0;

/// How far a size may lie from the nominal one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// The upper deviation from the nominal size.
    pub upper: Length,
    /// The lower deviation from the nominal size.
    pub lower: Length,
}

impl Limits {
    fn micrometres(upper: f64, lower: f64) -> Self {
        Self { upper: Length::new::<micrometer>(upper), lower: Length::new::<micrometer>(lower) }
    }
}

/// The diameter in mm, freed of what changing units leaves behind, because a step of the table ends exactly at its bound.
fn diameter(nominal: Length) -> Result<f64, FormulaError> {
    let d = nominal.get::<millimeter>();
    positive("the nominal diameter", d, "mm")?;
    let rounded = (d * 1e7).round() / 1e7;
    within("the nominal diameter", rounded, "mm", (0.0, LARGEST_MM), sources::ISO_286)?;
    Ok(rounded)
}

/// The limits of a hole or shaft of a tolerance class.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `D` | nominal diameter | mm |
/// | `IT` | width of the tolerance zone | µm |
/// | `ES`, `EI` | upper and lower deviation of a hole | µm |
/// | `es`, `ei` | upper and lower deviation of a shaft | µm |
/// | `Delta` | what a fine hole's deviation is given back: IT of its grade less IT of the next finer | µm |
///
/// # Range
/// Up to 250 mm, grades 3 to 16.
///
/// # Errors
/// [`FormulaError::OutOfRange`] beyond 250 mm; [`FormulaError::NoSuchClass`] for a class the standard does not give at this size.
///
/// # Source
/// ISO 286-1, its tables *from memory*. Checked in `tests/published/iso_fits.csv`.
///
/// # Example
/// 34 mm H11/c11: the hole 34.000 to 34.160 mm, the shaft 33.720 to 33.880 mm (a textbook's example, *from memory*).
/// ```
/// use formulas::{Silent, fit::limits};
/// use uom::si::{f64::Length, length::{micrometer, millimeter}};
/// let nominal = Length::new::<millimeter>(34.0);
/// let hole = limits(&mut Silent, nominal, "H11".parse()?)?;
/// let shaft = limits(&mut Silent, nominal, "c11".parse()?)?;
/// assert_eq!((hole.upper.get::<micrometer>().round(), hole.lower.get::<micrometer>().round()), (160.0, 0.0));
/// assert_eq!((shaft.upper.get::<micrometer>().round(), shaft.lower.get::<micrometer>().round()), (-120.0, -280.0));
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn limits<R: Recorder>(r: &mut R, nominal: Length, class: Class) -> Result<Limits, FormulaError> {
    let D = diameter(nominal)?;
    given!(r, D["mm"] = D, "nominal diameter");
    let missing = || FormulaError::NoSuchClass { class: class.to_string(), nominal: D };
    // The finest grade of the table serves only to work the one above it.
    if class.grade <= table::GRADES.0 {
        return Err(missing());
    }
    let IT = table::tolerance(class.grade, D).ok_or_else(missing)?;
    given!(r, IT["µm"] = IT, "width of the tolerance zone, from the table of ISO 286-1");
    match class.feature {
        Feature::Shaft => shaft_limits(r, class, D, IT),
        Feature::Hole => hole_limits(r, class, D, IT),
    }
    .ok_or_else(missing)
}

fn shaft_limits<R: Recorder>(r: &mut R, class: Class, D: f64, IT: f64) -> Option<Limits> {
    let Class { letter, grade, .. } = class;
    if letter == Letter::Js {
        step!(r, es["µm"] = IT / 2.0, sources::ISO_286);
        step!(r, ei["µm"] = -es, sources::ISO_286);
        return Some(Limits::micrometres(es, ei));
    }
    if letter <= Letter::H {
        given!(r, a["µm"] = table::deviation(letter, D)?, "distance of the zone below the line, from the table of ISO 286-1");
        step!(r, es["µm"] = -a, sources::ISO_286);
        step!(r, ei["µm"] = es - IT, sources::ISO_286);
        return Some(Limits::micrometres(es, ei));
    }
    let lower = match letter {
        Letter::J => -table::shaft_j(grade, D)?,
        // Coarse and very fine k begin on the line.
        Letter::K if !(4..=7).contains(&grade) => 0.0,
        _ => table::deviation(letter, D)?,
    };
    given!(r, ei["µm"] = lower, "lower deviation, from the table of ISO 286-1");
    step!(r, es["µm"] = ei + IT, sources::ISO_286);
    Some(Limits::micrometres(es, ei))
}

fn hole_limits<R: Recorder>(r: &mut R, class: Class, D: f64, IT: f64) -> Option<Limits> {
    let Class { letter, grade, .. } = class;
    if letter == Letter::Js {
        step!(r, ES["µm"] = IT / 2.0, sources::ISO_286);
        step!(r, EI["µm"] = -ES, sources::ISO_286);
        return Some(Limits::micrometres(ES, EI));
    }
    if letter <= Letter::H {
        given!(r, EI["µm"] = table::deviation(letter, D)?, "lower deviation, from the table of ISO 286-1");
        step!(r, ES["µm"] = EI + IT, sources::ISO_286);
        return Some(Limits::micrometres(ES, EI));
    }
    let smallest = D <= 3.0;
    if letter == Letter::J {
        given!(r, ES["µm"] = table::hole_j(grade, D)?, "upper deviation, from the table of ISO 286-1");
        step!(r, EI["µm"] = ES - IT, sources::ISO_286);
        return Some(Limits::micrometres(ES, EI));
    }
    let fine = if letter <= Letter::N { grade <= 8 } else { grade <= 7 };
    if letter == Letter::K && !fine && !smallest {
        return None;
    }
    if letter == Letter::N && !fine && !smallest {
        given!(r, ES["µm"] = 0.0, "upper deviation of a coarse N, which ends on the line");
        step!(r, EI["µm"] = ES - IT, sources::ISO_286);
        return Some(Limits::micrometres(ES, EI));
    }
    given!(r, ei["µm"] = table::deviation(letter, D)?, "lower deviation of the shaft of the same letter, from the table of ISO 286-1");
    if fine && !smallest {
        given!(r, IT_fine["µm"] = table::tolerance(grade - 1, D)?, "width of the next finer grade");
        step!(r, Delta["µm"] = IT - IT_fine, sources::ISO_286);
        step!(r, ES["µm"] = -ei + Delta, sources::ISO_286);
        step!(r, EI["µm"] = ES - IT, sources::ISO_286);
        return Some(Limits::micrometres(ES, EI));
    }
    step!(r, ES["µm"] = -ei, sources::ISO_286);
    step!(r, EI["µm"] = ES - IT, sources::ISO_286);
    Some(Limits::micrometres(ES, EI))
}

/// The standard's own formula of the tolerance unit: i = 0.45·∛D + 0.001·D µm.
///
/// The table is rounded from it, so the table is what counts; this is the cross-check.
///
/// # Errors
/// [`FormulaError::OutOfRange`] beyond 250 mm.
///
/// # Source
/// ISO 286-1:1988, annex; `D` is the geometric mean of the step the diameter lies in.
///
/// # Example
/// In the step 18 to 30 mm it is 1.307 µm (computed independently).
/// ```
/// use formulas::{Silent, fit::tolerance_unit};
/// use uom::si::{f64::Length, length::{micrometer, millimeter}};
/// let i = tolerance_unit(&mut Silent, Length::new::<millimeter>(25.0))?;
/// assert!((i.get::<micrometer>() - 1.307).abs() < 0.002);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn tolerance_unit<R: Recorder>(r: &mut R, nominal: Length) -> Result<Length, FormulaError> {
    let d = diameter(nominal)?;
    let (below, above) = table::step(d).unwrap_or((d, d));
    given!(r, D_1["mm"] = below, "lower bound of the step");
    given!(r, D_2["mm"] = above, "upper bound of the step");
    step!(r, D["mm"] = sqrt(D_1 * D_2), sources::ISO_286);
    step!(r, i[micrometer] = 0.45 * cbrt(D) + 0.001 * D, sources::ISO_286);
    Ok(Length::new::<micrometer>(i))
}
