//! Gases that acids and lyes give off: carbon dioxide from neutralising, hydrogen fluoride from flux, hydrogen from aluminium.

use units::{Mass, Ratio, Temperature, Volume};
use uom::si::mass::gram;
use uom::si::ratio::{part_per_million, percent};
use uom::si::volume::{cubic_meter, liter};

use crate::error::{FormulaError, not_negative, positive, within};
use crate::math::ceil;
use crate::solution::{Acid, molar_volume};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Share of hydrogen by volume from which air with it burns: the lower flammable limit, *from memory*.
pub const HYDROGEN_BURNS_FROM: f64 = 0.04;

/// How a spent acid is ended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Neutralised {
    /// Sodium bicarbonate that it takes.
    pub bicarbonate: Mass,
    /// Carbon dioxide that comes off.
    pub gas: Volume,
    /// Additions of 10 g at most.
    pub additions: f64,
    /// Gas that an addition of 10 g gives off.
    pub gas_each: Volume,
    /// The vessel that it fills by a third.
    pub vessel: Volume,
}

/// Neutralising an acid with sodium bicarbonate.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `m_a`, `M` | pure acid, mass of a mol of it | g, g/mol |
/// | `z` | protons of a mol | – |
/// | `m` | sodium bicarbonate | g |
/// | `V_m` | volume of a mol of gas | L/mol |
/// | `V_g`, `V_e` | carbon dioxide in all, and of an addition | L |
/// | `V_v` | vessel | L |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative amount.
///
/// # Source
/// Stoichiometry with standard atomic weights, ideal gas. Additions of 10 g and a vessel filled by a third are *common practice*.
///
/// # Example
/// 100 g of bisulfate take 70.0 g and give off 20.0 L at 20 °C; 100 g of citric acid 131 g and 37.6 L (computed independently).
/// ```
/// use formulas::{Silent, pickle::neutralise, solution::Acid};
/// use uom::si::f64::{Mass, ThermodynamicTemperature, Volume};
/// use uom::si::{mass::gram, thermodynamic_temperature::degree_celsius, volume::liter};
/// let room = ThermodynamicTemperature::new::<degree_celsius>(20.0);
/// for (acid, soda, gas) in [(Acid::Bisulfate, 70.0, 20.0), (Acid::Citric, 131.0, 37.6)] {
///     let end = neutralise(&mut Silent, acid, Mass::new::<gram>(100.0), Volume::new::<liter>(1.0), room)?;
///     assert!((end.bicarbonate.get::<gram>() / soda - 1.0).abs() < 0.01);
///     assert!((end.gas.get::<liter>() / gas - 1.0).abs() < 0.01);
/// }
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn neutralise<R: Recorder>(r: &mut R, acid: Acid, pure: Mass, bath: Volume, room: Temperature) -> Result<Neutralised, FormulaError> {
    given!(r, m_a[gram] = pure, "pure acid in the bath");
    given!(r, M["g/mol"] = acid.molar_mass_g(), "mass of a mol of it");
    given!(r, z [] = acid.protons(), "protons of a mol");
    given!(r, V[liter] = bath, "volume of the bath");
    given!(r, m_e["g"] = 10.0, "one addition at most");
    not_negative("the acid", m_a, "g", sources::DEFINITION)?;
    not_negative("the bath", V, "L", sources::DEFINITION)?;
    let V_m = molar_volume(r, room)?;
    step!(r, m[gram] = z * m_a / M * 84.007, sources::ATOMIC_WEIGHTS);
    step!(r, V_g[liter] = m / 84.007 * V_m, sources::DEFINITION);
    step!(r, i [] = ceil(m / m_e), sources::COMMON_PRACTICE);
    step!(r, V_e[liter] = m_e / 84.007 * V_m, sources::DEFINITION);
    step!(r, V_v[liter] = 3.0 * V, sources::COMMON_PRACTICE);
    r.caution(Caution::Danger {
        words: "Cool first, in the open, a little at a time: it foams, and the gas displaces air. Never close the vessel. Stop by strip \
                at pH 7 to 8, not by the fizz. Neutral is not fit for the drain: copper stays in it.",
    });
    let litres = Volume::new::<liter>;
    Ok(Neutralised { bicarbonate: Mass::new::<gram>(m), gas: litres(V_g), additions: i, gas_each: litres(V_e), vessel: litres(V_v) })
}

/// Hydrogen fluoride in a room, if all fluoride of a flux became airborne: an upper bound.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `m`, `w` | flux, share of fluoride in it by mass | g, – |
/// | `V_m` | volume of a mol of gas | L/mol |
/// | `V` | volume of the room | m³ |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative mass or a share outside 0 to 100 %; [`FormulaError::NotPositive`] for a room of nothing.
///
/// # Source
/// Stoichiometry, ideal gas. The ceiling of 6 ppm is the NIOSH Pocket Guide's.
///
/// # Example
/// 5 g of paste with 30 % of fluoride in 30 m³: at most 63 ppm (computed independently).
/// ```
/// use formulas::{Silent, pickle::fluoride_bound};
/// use uom::si::f64::{Mass, Ratio, ThermodynamicTemperature, Volume};
/// use uom::si::{mass::gram, ratio::{part_per_million, percent}};
/// use uom::si::{thermodynamic_temperature::degree_celsius, volume::cubic_meter};
/// let room = (Volume::new::<cubic_meter>(30.0), ThermodynamicTemperature::new::<degree_celsius>(20.0));
/// let bound = fluoride_bound(&mut Silent, Mass::new::<gram>(5.0), Ratio::new::<percent>(30.0), room.0, room.1)?;
/// assert!((bound.get::<part_per_million>() - 63.0).abs() < 0.6);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn fluoride_bound<R: Recorder>(r: &mut R, flux: Mass, fluoride: Ratio, room: Volume, at: Temperature) -> Result<Ratio, FormulaError> {
    given!(r, m[gram] = flux, "flux");
    given!(r, w[percent] = fluoride, "fluoride in it by mass");
    given!(r, V[cubic_meter] = room, "volume of the room");
    not_negative("the flux", m, "g", sources::DEFINITION)?;
    within("the share of fluoride", w, "%", (0.0, 100.0), sources::DEFINITION)?;
    positive("the volume of the room", V, "m³")?;
    let V_m = molar_volume(r, at)?;
    step!(r, x["ppm"] = m * w / 100.0 / 18.998 * V_m / V * 1000.0, sources::ATOMIC_WEIGHTS);
    r.caution(Caution::Danger {
        words: "The ceiling for hydrogen fluoride is 6 ppm. Wash flux off in hot water before any acid, and solder in a draught that \
                takes the fume away from you.",
    });
    Ok(Ratio::new::<part_per_million>(x))
}

/// Hydrogen that lye makes of aluminium, and the air that it makes burn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hydrogen {
    /// The hydrogen.
    pub gas: Volume,
    /// The space that it fills up to where it burns.
    pub fills: Volume,
    /// The space that it fills up to a tenth of that.
    pub fills_to_tenth: Volume,
}

/// Hydrogen from aluminium in lye or acid: 1½ mol for each of aluminium.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative mass.
///
/// # Source
/// Stoichiometry with standard atomic weights, ideal gas; hydrogen burns from 4 % (*from memory*), and a tenth of that is
/// *common practice*.
///
/// # Example
/// 10 g give 13.4 L at 20 °C, which 334 L hold before it burns (computed independently).
/// ```
/// use formulas::{Silent, pickle::hydrogen_from_aluminium};
/// use uom::si::f64::{Mass, ThermodynamicTemperature};
/// use uom::si::{mass::gram, thermodynamic_temperature::degree_celsius, volume::liter};
/// let room = ThermodynamicTemperature::new::<degree_celsius>(20.0);
/// let hydrogen = hydrogen_from_aluminium(&mut Silent, Mass::new::<gram>(10.0), room)?;
/// assert!((hydrogen.gas.get::<liter>() - 13.4).abs() < 0.1);
/// assert!((hydrogen.fills.get::<liter>() - 334.0).abs() < 2.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn hydrogen_from_aluminium<R: Recorder>(r: &mut R, aluminium: Mass, at: Temperature) -> Result<Hydrogen, FormulaError> {
    given!(r, m[gram] = aluminium, "aluminium");
    given!(r, x [] = HYDROGEN_BURNS_FROM, "share of hydrogen from which air burns");
    not_negative("the aluminium", m, "g", sources::DEFINITION)?;
    let V_m = molar_volume(r, at)?;
    step!(r, V_g[liter] = 1.5 * m / 26.982 * V_m, sources::ATOMIC_WEIGHTS);
    step!(r, V[liter] = V_g / x, sources::DEFINITION);
    step!(r, V_t[liter] = 10.0 * V, sources::COMMON_PRACTICE);
    r.caution(Caution::Danger { words: "Never lye on aluminium, zinc or magnesium: it boils over, and the hydrogen explodes at a spark." });
    let litres = Volume::new::<liter>;
    Ok(Hydrogen { gas: litres(V_g), fills: litres(V), fills_to_tenth: litres(V_t) })
}
