//! A bath that a part is dipped into: how it stands in it, how much liquid it takes, how much of that to buy.

use core::f64::consts::PI;

use units::{Area, Length, Mass, MassDensity, Ratio, Volume};
use uom::si::area::square_millimeter;
use uom::si::length::millimeter;
use uom::si::mass::gram;
use uom::si::mass_density::gram_per_cubic_centimeter;
use uom::si::ratio::ratio;
use uom::si::volume::liter;

use crate::error::{FormulaError, less, not_negative, positive, within};
use crate::math::{max, pow};
use crate::solid_area::{Solid, all_positive};
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

/// Room below the part, cover above it and least height of the rim above the liquid, mm; *common practice*.
const UNDER_COVER_RIM_MM: [f64; 3] = [10.0, 25.0, 30.0];

/// The plan of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tank {
    /// A box.
    Box {
        /// Its inside length.
        length: Length,
        /// Its inside width.
        width: Length,
    },
    /// A pot or pipe on end.
    Round {
        /// Its inside diameter.
        diameter: Length,
    },
}

impl Tank {
    /// Area of its floor.
    #[must_use]
    pub fn area(&self) -> Area {
        match *self {
            Self::Box { length, width } => length * width,
            Self::Round { diameter } => PI / 4.0 * diameter * diameter,
        }
    }
}

/// A part that is dipped.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Immersed {
    /// Its height as it stands or hangs in the bath.
    pub height: Length,
    /// Its mass.
    pub mass: Mass,
    /// Its density.
    pub density: MassDensity,
}

/// A bath with the part in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Immersion {
    /// Height of the liquid above the floor.
    pub level: Length,
    /// Liquid in it.
    pub liquid: Volume,
    /// By how much the liquid rises when the part enters.
    pub rise: Length,
    /// Height of the rim above the liquid.
    pub freeboard: Length,
}

/// The bath a part takes: 10 mm under it, 25 mm over it, at least the liquid its work asks for, and a rim 30 mm above all that.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `A` | floor of the tank | mm² |
/// | `h` | height of the part | mm |
/// | `V_p` | what the part displaces | L |
/// | `V_w` | liquid the work asks for, such as [`blackening`](super::blackening)'s | L |
/// | `V`, `z`, `Delta_z` | liquid, its level with the part in it, its rise | L, mm |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a size of nothing, [`FormulaError::OutOfRange`] for a negative amount of liquid asked for,
/// [`FormulaError::NotLess`] for a part that does not fit into the liquid it stands in, and
/// [`FormulaError::Refused`] for a tank that would stand too full.
///
/// # Source
/// Archimedes; the clearances are *common practice, no source*.
///
/// # Example
/// A tank of 300 × 200 mm for 1.5 kg of steel 60 mm high: 95 mm deep, 5.51 L, and it rises by 3.2 mm (by hand).
/// ```
/// use formulas::{Silent, coating::{Immersed, Tank, immersion}};
/// use uom::si::f64::{Length, Mass, MassDensity, Volume};
/// use uom::si::{length::millimeter, mass::kilogram, mass_density::kilogram_per_cubic_meter, volume::liter};
/// let mm = Length::new::<millimeter>;
/// let tank = Tank::Box { length: mm(300.0), width: mm(200.0) };
/// let density = MassDensity::new::<kilogram_per_cubic_meter>(7850.0);
/// let part = Immersed { height: mm(60.0), mass: Mass::new::<kilogram>(1.5), density };
/// let bath = immersion(&mut Silent, &tank, mm(150.0), &part, Volume::new::<liter>(0.0))?;
/// assert!((bath.liquid.get::<liter>() - 5.51).abs() < 0.01);
/// assert!((bath.rise.get::<millimeter>() - 3.2).abs() < 0.03);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn immersion<R: Recorder>(r: &mut R, tank: &Tank, rim: Length, part: &Immersed, work_asks: Volume) -> Result<Immersion, FormulaError> {
    let [under, cover, least_freeboard] = UNDER_COVER_RIM_MM;
    given!(r, A[square_millimeter] = tank.area(), "floor of the tank");
    given!(r, H[millimeter] = rim, "height of its rim");
    given!(r, h[millimeter] = part.height, "height of the part");
    given!(r, m[gram] = part.mass, "mass of the part");
    given!(r, rho[gram_per_cubic_centimeter] = part.density, "its density");
    given!(r, V_w[liter] = work_asks, "liquid the work asks for");
    given!(r, z_u["mm"] = under, "room under the part");
    given!(r, z_c["mm"] = cover, "liquid over the part");
    for (what, value, unit) in [
        ("the floor of the tank", A, "mm²"),
        ("the height of the part", h, "mm"),
        ("the mass of the part", m, "g"),
        ("the density of the part", rho, "g/cm³"),
    ] {
        positive(what, value, unit)?;
    }
    not_negative("the liquid the work asks for", V_w, "L", sources::DEFINITION)?;
    step!(r, V_p[liter] = m / rho / 1000.0, sources::DEFINITION);
    less(("what the part displaces", V_p), ("the tank's space round it", A * h / 1e6), "L")?;
    step!(r, V[liter] = max(A * (z_u + h + z_c) / 1e6 - V_p, V_w), sources::COMMON_PRACTICE);
    step!(r, z[millimeter] = (V + V_p) * 1e6 / A, sources::DEFINITION);
    step!(r, Delta_z[millimeter] = V_p * 1e6 / A, sources::DEFINITION);
    step!(r, z_f[millimeter] = H - z, sources::DEFINITION);
    if z_f < least_freeboard {
        return Err(FormulaError::Refused {
            what: "this tank",
            why: "with the part in it the liquid stands less than 30 mm below the rim, or above it",
            instead: "take a taller or wider tank, or lay the part down",
        });
    }
    let mm = Length::new::<millimeter>;
    Ok(Immersion { level: mm(z), liquid: Volume::new::<liter>(V), rise: mm(Delta_z), freeboard: mm(z_f) })
}

/// A way for a part to stand, and the smallest tank for it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stance {
    /// Height of the part as it stands.
    pub height: Length,
    /// The tank.
    pub tank: Tank,
    /// Its floor.
    pub floor: Area,
}

/// The stance of a part that asks for the least floor, with room all round; of two equal ones the lower.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a size of nothing, [`FormulaError::OutOfRange`] for negative room, [`FormulaError::Refused`] for a
/// plate known only by its mass.
///
/// # Source
/// Geometry.
///
/// # Example
/// A block of 100 × 60 × 20 mm stands on its smallest face: with 10 mm all round the tank is 80 × 40 mm (by hand).
/// ```
/// use formulas::{Silent, coating::best_stance, solid_area::Solid};
/// use uom::si::{area::square_millimeter, f64::Length, length::millimeter};
/// let mm = Length::new::<millimeter>;
/// let block = Solid::Block { length: mm(100.0), width: mm(60.0), height: mm(20.0) };
/// let stance = best_stance(&mut Silent, &block, mm(10.0))?;
/// assert!((stance.height.get::<millimeter>() - 100.0).abs() < 1e-9);
/// assert!((stance.floor.get::<square_millimeter>() - 3200.0).abs() < 1e-6);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn best_stance<R: Recorder>(r: &mut R, solid: &Solid, room: Length) -> Result<Stance, FormulaError> {
    given!(r, c[millimeter] = room, "room all round");
    not_negative("the room all round", c, "mm", sources::DEFINITION)?;
    let wider = |size: Length| size + 2.0 * room;
    let stance = |height: Length, tank: Tank| Stance { height, tank, floor: tank.area() };
    let upright = |height: Length, diameter: Length| stance(height, Tank::Round { diameter: wider(diameter) });
    let flat = |height: Length, a: Length, b: Length| stance(height, Tank::Box { length: wider(a), width: wider(b) });
    let lesser = |a: Stance, b: Stance| if (b.floor, b.height) < (a.floor, a.height) { b } else { a };
    let best = match *solid {
        Solid::Cylinder { diameter, length } | Solid::Tube { outside: diameter, length, .. } => {
            all_positive([diameter, length])?;
            lesser(upright(length, diameter), flat(diameter, length, diameter))
        }
        Solid::Block { length, width, height } => {
            all_positive([length, width, height])?;
            lesser(lesser(flat(height, length, width), flat(width, length, height)), flat(length, width, height))
        }
        Solid::Sphere { diameter } => {
            all_positive([diameter])?;
            upright(diameter, diameter)
        }
        Solid::Plate { .. } => {
            return Err(FormulaError::Refused {
                what: "how a plate stands",
                why: "a plate known by its mass has no height",
                instead: "give it as a block of its length, width and thickness",
            });
        }
    };
    let floor = match best.tank {
        Tank::Box { length, width } => {
            given!(r, a[millimeter] = length, "length of the tank, with the room");
            given!(r, b[millimeter] = width, "its width");
            step!(r, A[square_millimeter] = a * b, sources::DEFINITION);
            A
        }
        Tank::Round { diameter } => {
            given!(r, d[millimeter] = diameter, "diameter of the tank, with the room");
            step!(r, A[square_millimeter] = PI * pow(d, 2.0) / 4.0, sources::DEFINITION);
            A
        }
    };
    Ok(Stance { floor: Area::new::<square_millimeter>(floor), ..best })
}

/// Concentrate to buy for a bath, with a tenth to spare: V·c·1.1.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a share outside 0 to 100 %.
///
/// # Source
/// Definition; the tenth is *common practice*. What a label's ratio means is read by
/// [`parts_share`](crate::solution::parts_share).
pub fn concentrate_to_buy<R: Recorder>(r: &mut R, bath: Volume, share: Ratio) -> Result<Volume, FormulaError> {
    given!(r, V[liter] = bath, "volume of the bath");
    given!(r, c [] = share.get::<ratio>(), "share of concentrate");
    within("the share of concentrate", c, "", (0.0, 1.0), sources::DEFINITION)?;
    step!(r, V_c[liter] = 1.1 * c * V, sources::COMMON_PRACTICE);
    Ok(Volume::new::<liter>(V_c))
}
