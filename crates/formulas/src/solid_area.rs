//! Area and volume of the solids that parts are made of.

#![expect(non_snake_case, reason = "symbols match the source")]

use core::f64::consts::PI;

use units::{Area, Length, Mass, MassDensity, Volume};
use uom::si::area::square_millimeter;
use uom::si::length::millimeter;
use uom::si::mass::gram;
use uom::si::mass_density::gram_per_cubic_centimeter;
use uom::si::volume::cubic_millimeter;

use crate::error::{FormulaError, less, not_negative, positive};
use crate::math::pow;
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// A solid, simple enough to be known by a few sizes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Solid {
    /// A round bar or disc.
    Cylinder {
        /// Its diameter.
        diameter: Length,
        /// Its length.
        length: Length,
    },
    /// A block or flat bar.
    Block {
        /// Its length.
        length: Length,
        /// Its width.
        width: Length,
        /// Its height.
        height: Length,
    },
    /// A ball.
    Sphere {
        /// Its diameter.
        diameter: Length,
    },
    /// A tube or ring, wetted inside too.
    Tube {
        /// Its outside diameter.
        outside: Length,
        /// Its bore.
        bore: Length,
        /// Its length.
        length: Length,
    },
    /// Sheet of any outline, known by what it weighs.
    Plate {
        /// Its mass.
        mass: Mass,
        /// Its density.
        density: MassDensity,
        /// Its thickness.
        thickness: Length,
        /// Length of its edges, holes included; nothing where they do not matter.
        edge: Length,
    },
}

/// Area of all faces of a solid.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a size of nothing; [`FormulaError::NotLess`] for a bore not smaller than its tube.
///
/// # Source
/// Geometry.
///
/// # Example
/// A round bar of 50 × 100 mm has 0.01963 m² (by hand: π·50·100 + π·50²/2).
/// ```
/// use formulas::{Silent, solid_area::{Solid, surface_area}};
/// use uom::si::{area::square_meter, f64::Length, length::millimeter};
/// let mm = Length::new::<millimeter>;
/// let area = surface_area(&mut Silent, &Solid::Cylinder { diameter: mm(50.0), length: mm(100.0) })?;
/// assert!((area.get::<square_meter>() - 0.01963).abs() < 0.00002);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn surface_area<R: Recorder>(r: &mut R, solid: &Solid) -> Result<Area, FormulaError> {
    let area = match taken_down(r, solid)? {
        Sizes::Cylinder { d, L } => {
            step!(r, A[square_millimeter] = PI * d * L + PI * pow(d, 2.0) / 2.0, sources::DEFINITION);
            A
        }
        Sizes::Block { a, b, c } => {
            step!(r, A[square_millimeter] = 2.0 * (a * b + b * c + c * a), sources::DEFINITION);
            A
        }
        Sizes::Sphere { d } => {
            step!(r, A[square_millimeter] = PI * pow(d, 2.0), sources::DEFINITION);
            A
        }
        Sizes::Tube { D, d, L } => {
            step!(r, A[square_millimeter] = PI * (D + d) * L + PI * (pow(D, 2.0) - pow(d, 2.0)) / 2.0, sources::DEFINITION);
            A
        }
        Sizes::Plate { m, rho, t, u } => {
            step!(r, A[square_millimeter] = 2000.0 * m / (rho * t) + u * t, sources::DEFINITION);
            A
        }
    };
    Ok(Area::new::<square_millimeter>(area))
}

/// Volume of a solid.
///
/// # Errors
/// As [`surface_area`].
///
/// # Source
/// Geometry.
pub fn volume<R: Recorder>(r: &mut R, solid: &Solid) -> Result<Volume, FormulaError> {
    let volume = match taken_down(r, solid)? {
        Sizes::Cylinder { d, L } => {
            step!(r, V["mm³"] = PI * pow(d, 2.0) * L / 4.0, sources::DEFINITION);
            V
        }
        Sizes::Block { a, b, c } => {
            step!(r, V["mm³"] = a * b * c, sources::DEFINITION);
            V
        }
        Sizes::Sphere { d } => {
            step!(r, V["mm³"] = PI * pow(d, 3.0) / 6.0, sources::DEFINITION);
            V
        }
        Sizes::Tube { D, d, L } => {
            step!(r, V["mm³"] = PI * (pow(D, 2.0) - pow(d, 2.0)) * L / 4.0, sources::DEFINITION);
            V
        }
        Sizes::Plate { m, rho, .. } => {
            step!(r, V["mm³"] = 1000.0 * m / rho, sources::DEFINITION);
            V
        }
    };
    Ok(Volume::new::<cubic_millimeter>(volume))
}

/// What a face is like, where it has more area than a smooth one of its size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Texture {
    /// Turned, ground or drawn.
    Smooth,
    /// Knurled.
    Knurled,
    /// Threaded.
    Threaded,
}

/// Area of a textured face, from that of a smooth one of its size: a thread has 1.6 times as much, a knurl 1.4 times.
///
/// # Source
/// *Common practice, no source.*
pub fn textured_area<R: Recorder>(r: &mut R, smooth: Area, texture: Texture) -> Area {
    given!(r, A_0[square_millimeter] = smooth, "area of a smooth face of this size");
    let times = match texture {
        Texture::Smooth => 1.0,
        Texture::Knurled => 1.4,
        Texture::Threaded => 1.6,
    };
    given!(r, k [] = times, "how much more area the texture has");
    step!(r, A[square_millimeter] = k * A_0, sources::COMMON_PRACTICE);
    if texture != Texture::Smooth {
        r.caution(Caution::Rough { what: "the area of a thread or knurl", why: "it is a judgement, not geometry" });
    }
    Area::new::<square_millimeter>(A)
}

/// The sizes of a solid in millimetres, grams and g/cm³, by the symbols of its formulas.
enum Sizes {
    Cylinder { d: f64, L: f64 },
    Block { a: f64, b: f64, c: f64 },
    Sphere { d: f64 },
    Tube { D: f64, d: f64, L: f64 },
    Plate { m: f64, rho: f64, t: f64, u: f64 },
}

/// Takes down the sizes of a solid, and refuses those that make none.
fn taken_down<R: Recorder>(r: &mut R, solid: &Solid) -> Result<Sizes, FormulaError> {
    match *solid {
        Solid::Cylinder { diameter, length } => {
            given!(r, d[millimeter] = diameter, "diameter");
            given!(r, L[millimeter] = length, "length");
            all_positive([diameter, length])?;
            Ok(Sizes::Cylinder { d, L })
        }
        Solid::Block { length, width, height } => {
            given!(r, a[millimeter] = length, "length");
            given!(r, b[millimeter] = width, "width");
            given!(r, c[millimeter] = height, "height");
            all_positive([length, width, height])?;
            Ok(Sizes::Block { a, b, c })
        }
        Solid::Sphere { diameter } => {
            given!(r, d[millimeter] = diameter, "diameter");
            all_positive([diameter])?;
            Ok(Sizes::Sphere { d })
        }
        Solid::Tube { outside, bore, length } => {
            given!(r, D[millimeter] = outside, "outside diameter");
            given!(r, d[millimeter] = bore, "bore");
            given!(r, L[millimeter] = length, "length");
            all_positive([outside, bore, length])?;
            less(("the bore", d), ("the outside diameter", D), "mm")?;
            Ok(Sizes::Tube { D, d, L })
        }
        Solid::Plate { mass, density, thickness, edge } => {
            given!(r, m[gram] = mass, "mass");
            given!(r, rho[gram_per_cubic_centimeter] = density, "density");
            given!(r, t[millimeter] = thickness, "thickness");
            given!(r, u[millimeter] = edge, "length of the edges");
            positive("the mass of the part", m, "g")?;
            positive("the density of the part", rho, "g/cm³")?;
            all_positive([thickness])?;
            not_negative("the length of the edges", u, "mm", sources::DEFINITION)?;
            Ok(Sizes::Plate { m, rho, t, u })
        }
    }
}

/// Refuses sizes of nothing.
pub(crate) fn all_positive<const N: usize>(sizes: [Length; N]) -> Result<(), FormulaError> {
    sizes.into_iter().try_for_each(|size| positive("a size of the part", size.get::<millimeter>(), "mm"))
}
