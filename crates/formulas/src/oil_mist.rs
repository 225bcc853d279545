//! Oil mist in the air of a room.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{Frequency, MassDensity, Volume, VolumeRate};
use uom::si::frequency::cycle_per_hour;
use uom::si::mass_density::gram_per_cubic_centimeter;
use uom::si::volume::{cubic_meter, milliliter};
use uom::si::volume_rate::cubic_centimeter_per_second;

use crate::error::{FormulaError, positive};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Recommended limit of metalworking-fluid mist over a working day, total particulate, mg/m³ (NIOSH 98-102).
pub const LIMIT_MG_PER_M3: f64 = 0.5;

const CARE: Caution = Caution::Danger {
    words: "Smoke you can see is over the limit. Slow the cut, put on less oil, open the door and blow the air outward. Your local limits and the fluid's safety data sheet come first.",
};

/// Steady concentration of mist, mg/m³: C = m·a/(n·V).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `q` | oil used | mL/h |
/// | `rho` | its density | g/mL |
/// | `a` | share that becomes mist: 0.02 by brush, 0.1 smoking, 0.3 sprayed | – |
/// | `n` | air changes | 1/h |
/// | `V` | volume of the room | m³ |
///
/// # Range
/// A well-mixed room, long after the work began. The share that becomes mist is known within a factor of three.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a room or an air change of nothing.
///
/// # Source
/// Mass balance; limit of NIOSH 98-102; the shares are *common practice, no source*.
///
/// # Example
/// 2 mL/h (0.88 g/mL) by brush in a shut garage of 40 m³ and half an air change an hour: 1.76 mg/m³ (computed independently).
/// ```
/// use formulas::{Silent, oil_mist::mist_concentration};
/// use uom::si::f64::{Frequency, MassDensity, Volume, VolumeRate};
/// use uom::si::{frequency::cycle_per_hour, mass_density::kilogram_per_cubic_meter, volume::cubic_meter, volume_rate::cubic_centimeter_per_second};
/// let concentration = mist_concentration(
///     &mut Silent,
///     VolumeRate::new::<cubic_centimeter_per_second>(2.0 / 3600.0),
///     MassDensity::new::<kilogram_per_cubic_meter>(880.0),
///     0.02,
///     Volume::new::<cubic_meter>(40.0),
///     Frequency::new::<cycle_per_hour>(0.5),
/// )?;
/// assert!((concentration - 1.76).abs() < 0.035);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn mist_concentration<R: Recorder>(
    r: &mut R,
    oil: VolumeRate,
    density: MassDensity,
    aerosolised: f64,
    room: Volume,
    air_changes: Frequency,
) -> Result<f64, FormulaError> {
    given!(r, q["mL/h"] = oil.get::<cubic_centimeter_per_second>() * 3600.0, "oil used");
    given!(r, rho["g/mL"] = density.get::<gram_per_cubic_centimeter>(), "density");
    given!(r, a [] = aerosolised, "share that becomes mist");
    given!(r, V["m³"] = room.get::<cubic_meter>(), "volume of the room");
    given!(r, n["1/h"] = air_changes.get::<cycle_per_hour>(), "air changes");
    positive("the room", V, "m³")?;
    positive("the air change", n, "1/h")?;
    step!(r, m["mg/h"] = 1000.0 * q * rho, sources::DEFINITION);
    step!(r, C["mg/m³"] = m * a / (n * V), sources::NIOSH_98_102);
    r.caution(Caution::Rough { what: "the share that becomes mist", why: "it is known within a factor of three" });
    r.caution(CARE);
    Ok(C)
}

/// Mist a room may be given and stay at the recommended limit, mg/h: 0.5·n·V.
///
/// # Source
/// NIOSH 98-102.
pub fn allowed_mist_mg_per_h<R: Recorder>(r: &mut R, room: Volume, air_changes: Frequency) -> f64 {
    given!(r, V["m³"] = room.get::<cubic_meter>(), "volume of the room");
    given!(r, n["1/h"] = air_changes.get::<cycle_per_hour>(), "air changes");
    given!(r, C["mg/m³"] = LIMIT_MG_PER_M3, "recommended limit");
    step!(r, m["mg/h"] = C * n * V, sources::NIOSH_98_102);
    r.caution(CARE);
    m
}

/// Mist from a volume of oil thrown into the air of a room at once, mg/m³: ρ·V_o/V.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a room or a density of nothing.
///
/// # Source
/// Mass balance.
///
/// # Example
/// 1 mL of oil of 0.87 g/mL in 36 m³: 24 mg/m³ (computed independently), five times the limit of oil mist.
/// ```
/// use formulas::{Silent, oil_mist::mist_at_once};
/// use uom::si::f64::{MassDensity, Volume};
/// use uom::si::{mass_density::gram_per_cubic_centimeter, volume::{cubic_meter, milliliter}};
/// let c = mist_at_once(
///     &mut Silent,
///     Volume::new::<milliliter>(1.0),
///     MassDensity::new::<gram_per_cubic_centimeter>(0.87),
///     Volume::new::<cubic_meter>(36.0),
/// )?;
/// assert!((c - 24.2).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn mist_at_once<R: Recorder>(r: &mut R, oil: Volume, density: MassDensity, room: Volume) -> Result<f64, FormulaError> {
    given!(r, V_o["mL"] = oil.get::<cubic_meter>() * 1e6, "oil thrown into the air");
    given!(r, rho["g/mL"] = density.get::<gram_per_cubic_centimeter>(), "density");
    given!(r, V["m³"] = room.get::<cubic_meter>(), "volume of the room");
    positive("the room", V, "m³")?;
    positive("the density", rho, "g/mL")?;
    step!(r, C["mg/m³"] = 1000.0 * rho * V_o / V, sources::DEFINITION);
    r.caution(CARE);
    Ok(C)
}

/// How much oil thrown into the air at once brings a room to a limit: V_o = C·V/ρ, the reverse of [`mist_at_once`].
///
/// # Errors
/// [`FormulaError::NotPositive`] for a limit, room or density of nothing.
///
/// # Source
/// Mass balance.
///
/// # Example
/// 1 mL of oil of 0.87 g/mL in 36 m³ is 24 mg/m³ (computed independently), so 5 mg/m³ are a fifth of a millilitre.
/// ```
/// use formulas::{Silent, oil_mist::oil_to_limit};
/// use uom::si::f64::{MassDensity, Volume};
/// use uom::si::{mass_density::gram_per_cubic_centimeter, volume::{cubic_meter, milliliter}};
/// let density = MassDensity::new::<gram_per_cubic_centimeter>(0.87);
/// let oil = oil_to_limit(&mut Silent, density, Volume::new::<cubic_meter>(36.0), 5.0)?;
/// assert!((oil.get::<milliliter>() - 5.0 / 24.0).abs() < 0.005);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn oil_to_limit<R: Recorder>(r: &mut R, density: MassDensity, room: Volume, limit_mg_per_m3: f64) -> Result<Volume, FormulaError> {
    given!(r, rho["g/mL"] = density.get::<gram_per_cubic_centimeter>(), "density");
    given!(r, V["m³"] = room.get::<cubic_meter>(), "volume of the room");
    given!(r, C["mg/m³"] = limit_mg_per_m3, "limit");
    positive("the limit", C, "mg/m³")?;
    positive("the room", V, "m³")?;
    positive("the density", rho, "g/mL")?;
    step!(r, V_o[milliliter] = C * V / (1000.0 * rho), sources::DEFINITION);
    r.caution(CARE);
    Ok(Volume::new::<milliliter>(V_o))
}
