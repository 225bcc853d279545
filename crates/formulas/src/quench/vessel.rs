//! The vessel of a quench, how far it stays from burning, and what water does in it.

use units::{Area, Length, Temperature, TemperatureDifference, Volume};
use uom::si::area::square_meter;
use uom::si::length::millimeter;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::volume::{liter, milliliter};

use crate::error::{FormulaError, not_negative, positive};
use crate::math::max;
use crate::solution::molar_volume;
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Kelvins that hot oil has to stay below its flash point.
const MARGIN_K: f64 = 50.0;

/// How far a bath stays below its flash point; refused unless by 50 K.
///
/// # Errors
/// [`FormulaError::Refused`] where the bath gets nearer than that.
///
/// # Source
/// *Common practice, no source*; codes for furnaces ask for less.
pub fn flash_margin<R: Recorder>(r: &mut R, hottest: Temperature, flash: Temperature) -> Result<TemperatureDifference, FormulaError> {
    given!(r, theta[degree_celsius] = hottest, "hottest the bath gets");
    given!(r, theta_f[degree_celsius] = flash, "flash point of the oil");
    step!(r, Delta_T[kelvin] = theta_f - theta, sources::COMMON_PRACTICE);
    // What is not a number must be refused too.
    if Delta_T >= MARGIN_K { Ok(TemperatureDifference::new::<kelvin>(Delta_T)) } else { Err(TOO_NEAR) }
}

const TOO_NEAR: FormulaError = FormulaError::Refused {
    what: "this quench",
    why: "the oil would come within 50 K of its flash point and may catch fire",
    instead: "take more oil, fewer parts at a time, a cooler bath, or an oil made for quenching",
};

/// A vessel for a quench.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct QuenchVessel {
    /// Liquid in it: what the heat asks for, or what the part must be covered by.
    pub liquid: Volume,
    /// Depth of the liquid.
    pub depth: Length,
    /// Least height of the vessel.
    pub height: Length,
}

/// The vessel for a volume of liquid and a part held upright: liquid 100 mm deeper than the part, two thirds full at most, and 150 mm of
/// rim above it at least.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `V` | liquid the heat asks for | L |
/// | `A` | floor of the vessel | m² |
/// | `h` | height of the part | mm |
/// | `z`, `H` | depth of the liquid, height of the vessel | mm |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a size of nothing.
///
/// # Source
/// *Common practice, no source.*
///
/// # Example
/// 10 L for a part 200 mm high in a pot of 0.0314 m²: 318 mm deep, 478 mm high at least (by hand: 1.5·318).
/// ```
/// use formulas::{Silent, quench::quench_vessel};
/// use uom::si::f64::{Area, Length, Volume};
/// use uom::si::{area::square_meter, length::millimeter, volume::liter};
/// let floor = Area::new::<square_meter>(0.0314);
/// let pot = quench_vessel(&mut Silent, Volume::new::<liter>(10.0), Length::new::<millimeter>(200.0), floor)?;
/// assert!((pot.depth.get::<millimeter>() - 318.5).abs() < 0.1);
/// assert!((pot.height.get::<millimeter>() - 477.7).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn quench_vessel<R: Recorder>(r: &mut R, liquid: Volume, part: Length, floor: Area) -> Result<QuenchVessel, FormulaError> {
    given!(r, V[liter] = liquid, "liquid the heat asks for");
    given!(r, h[millimeter] = part, "height of the part as it is held");
    given!(r, A[square_meter] = floor, "floor of the vessel");
    positive("the liquid", V, "L")?;
    positive("the height of the part", h, "mm")?;
    positive("the floor of the vessel", A, "m²")?;
    step!(r, z[millimeter] = max(V / A, h + 100.0), sources::COMMON_PRACTICE);
    step!(r, V_l[liter] = z * A, sources::DEFINITION);
    step!(r, H[millimeter] = max(1.5 * z, z + 150.0), sources::COMMON_PRACTICE);
    r.caution(Caution::Danger {
        words: "A metal vessel with a tight lid beside it, outdoors or under a roof that does not burn; tongs, goggles, leather gloves; a \
                carbon dioxide or dry powder extinguisher at hand, never water on burning oil. Put the part under in one move: one half in \
                is what lights the oil. Local fire code and the oil's data sheet come first.",
    });
    let mm = Length::new::<millimeter>;
    Ok(QuenchVessel { liquid: Volume::new::<liter>(V_l), depth: mm(z), height: mm(H) })
}

/// Steam that water under hot oil turns to, at 100 °C under a standard atmosphere.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative amount.
///
/// # Source
/// Ideal gas; a millilitre of water is a gram.
///
/// # Example
/// A millilitre makes 1.7 L (any steam table, *from memory*).
/// ```
/// use formulas::{Silent, quench::steam_of_water};
/// use uom::si::{f64::Volume, volume::{liter, milliliter}};
/// let steam = steam_of_water(&mut Silent, Volume::new::<milliliter>(1.0))?;
/// assert!((steam.get::<liter>() - 1.7).abs() < 0.03);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn steam_of_water<R: Recorder>(r: &mut R, water: Volume) -> Result<Volume, FormulaError> {
    given!(r, V_w[milliliter] = water, "water under the oil");
    not_negative("the water", V_w, "mL", sources::DEFINITION)?;
    let V_m = molar_volume(r, Temperature::new::<degree_celsius>(100.0))?;
    step!(r, V[liter] = V_w / 18.015 * V_m, sources::ATOMIC_WEIGHTS);
    r.caution(Caution::Danger {
        words: "Steam under oil throws burning oil out. Heat a drop of the oil in a spoon first: if it crackles there is water in it. \
                Drive that off slowly at 110 °C, outdoors, or do not use it.",
    });
    Ok(Volume::new::<liter>(V))
}
