//! What a room's air holds when something evaporates in it, and what it takes to keep it fit to breathe.
//!
//! The room is well mixed but for a mixing factor: its air counts as changed K times less often than it is. Who stands at the work breathes
//! more than the room holds; [`near_field`] adds that.

#![expect(non_snake_case, reason = "symbols match the source")]

mod dilution;
mod history;

use core::f64::consts::PI;

use units::{Frequency, Length, Time, Velocity, Volume};
use uom::si::frequency::cycle_per_hour;
use uom::si::length::meter;
use uom::si::time::hour;
use uom::si::velocity::meter_per_second;
use uom::si::volume::cubic_meter;

use crate::error::{FormulaError, less, not_negative, positive};
use crate::math::{exp, ln, pow};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

pub use dilution::{dilution_for_fire, dilution_for_limit};
pub use history::{History, Pulse};

/// A room and how its air changes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// Air space.
    pub volume: Volume,
    /// Changes of air.
    pub changes: Frequency,
    /// How many times less the air changes where one breathes: 1 mixed, 3 at home, 10 in a dead corner.
    pub mixing: f64,
}

/// Mixing factor of a home workshop; *common practice* after the American ventilation manual.
pub const HOME_MIXING: f64 = 3.0;

impl Air {
    /// Changes that count, for each hour, once volume, changes and mixing are known to make sense.
    fn counted<R: Recorder>(&self, r: &mut R) -> Result<(f64, f64), FormulaError> {
        given!(r, V["m³"] = self.volume.get::<cubic_meter>(), "volume of the room");
        given!(r, n["1/h"] = self.changes.get::<cycle_per_hour>(), "air changes");
        given!(r, K [] = self.mixing, "mixing factor");
        positive("the room", V, "m³")?;
        not_negative("the air change", n, "1/h", sources::DEFINITION)?;
        crate::error::within("the mixing factor", K, "", (1.0, 10.0), sources::ACGIH_VENTILATION)?;
        step!(r, n_K["1/h"] = n / K, sources::ACGIH_VENTILATION);
        Ok((V, n_K))
    }
}

/// What the air holds after a steady source has run for a time: C = C₀·e^(−nt) + G/(n·V)·(1 − e^(−nt)), mg/m³.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `G` | source | mg/h |
/// | `V`, `n_K` | volume, air changes over the mixing factor | m³, 1/h |
/// | `C_0` | what it held before | mg/m³ |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative source or time, a mixing factor outside 1 to 10.
///
/// # Source
/// Mass balance of a mixed room. Checked in `tests/published/evaporation_room.csv`.
///
/// # Example
/// 500 mg/h for 1.5 h into 72 m³ that change six times an hour and held 40 mg/m³: 1.162 mg/m³ (solved as a differential equation).
/// ```
/// use formulas::{Silent, room_air::{Air, after_source}};
/// use uom::si::{f64::{Frequency, Time, Volume}, frequency::cycle_per_hour, time::hour, volume::cubic_meter};
/// let air = Air { volume: Volume::new::<cubic_meter>(72.0), changes: Frequency::new::<cycle_per_hour>(6.0), mixing: 1.0 };
/// let c = after_source(&mut Silent, &air, 500.0, 40.0, Time::new::<hour>(1.5))?;
/// assert!((c - 1.162).abs() < 0.001);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn after_source<R: Recorder>(
    r: &mut R,
    air: &Air,
    source_mg_per_h: f64,
    before_mg_per_m3: f64,
    lasts: Time,
) -> Result<f64, FormulaError> {
    let (V, n_K) = air.counted(r)?;
    given!(r, G["mg/h"] = source_mg_per_h, "source");
    given!(r, C_0["mg/m³"] = before_mg_per_m3, "held before");
    given!(r, t["h"] = lasts.get::<hour>(), "time");
    not_negative("the source", G, "mg/h", sources::DEFINITION)?;
    not_negative("what the air held before", C_0, "mg/m³", sources::DEFINITION)?;
    not_negative("the time", t, "h", sources::DEFINITION)?;
    if n_K * t < 1e-9 {
        step!(r, C["mg/m³"] = C_0 + G * t / V, sources::ROOM_BALANCE);
        return Ok(C);
    }
    step!(r, C["mg/m³"] = C_0 * exp(-n_K * t) + G / (n_K * V) * (1.0 - exp(-n_K * t)), sources::ROOM_BALANCE);
    Ok(C)
}

/// What the air holds when all of something gets into it at once, as from a spray, mg/m³: C₀ = m/V.
///
/// # Range
/// Before any of it has left again; it then falls as [`re_entry`] says.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a room of nothing, [`FormulaError::OutOfRange`] for less than nothing let in.
///
/// # Source
/// Mass balance of a mixed room.
///
/// # Example
/// 9.8 mL of n-hexane (0.66 g/mL, 86.18 g/mol) bring 36 m³ to 50 ppm, its recommended limit (computed independently).
/// ```
/// use formulas::{Silent, room_air::at_once, vapour::ppm_of_mass};
/// use uom::si::{f64::{Pressure, ThermodynamicTemperature, Volume}, volume::cubic_meter};
/// use uom::si::{pressure::kilopascal, thermodynamic_temperature::degree_celsius};
/// let c = at_once(&mut Silent, 9.8 * 660.0, Volume::new::<cubic_meter>(36.0))?;
/// let at = ThermodynamicTemperature::new::<degree_celsius>(20.0);
/// let ppm = ppm_of_mass(&mut Silent, c, 86.18, at, Pressure::new::<kilopascal>(101.325))?;
/// assert!((ppm - 50.0).abs() < 1.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn at_once<R: Recorder>(r: &mut R, let_in_mg: f64, room: Volume) -> Result<f64, FormulaError> {
    given!(r, m["mg"] = let_in_mg, "let in at once");
    given!(r, V["m³"] = room.get::<cubic_meter>(), "volume of the room");
    not_negative("what is let in", m, "mg", sources::DEFINITION)?;
    positive("the room", V, "m³")?;
    step!(r, C_0["mg/m³"] = m / V, sources::ROOM_BALANCE);
    Ok(C_0)
}

/// What a source adds to the air at the work, above the room's: G/β with β = ½·2πr²·s, in mg/m³ for G in mg/h.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `r_n` | radius of the half sphere between the work and the face | m |
/// | `s` | how fast air drifts through it | m/s |
///
/// # Range
/// Work at a bench with no fan on it.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a radius or drift of nothing.
///
/// # Source
/// Two-zone model; *from memory*. Radius 0.75 m and drift 0.1 m/s are usual.
///
/// # Example
/// 3.16 g/min of acetone add 297 mg/m³, which is 123 ppm (computed independently: 124 with β = 0.177 m³/s).
/// ```
/// use formulas::{Silent, room_air::near_field};
/// use uom::si::{f64::{Length, Velocity}, length::meter, velocity::meter_per_second};
/// let c = near_field(&mut Silent, 3.16e3 * 60.0, Length::new::<meter>(0.75), Velocity::new::<meter_per_second>(0.1))?;
/// assert!((c - 298.0).abs() < 6.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn near_field<R: Recorder>(r: &mut R, source_mg_per_h: f64, radius: Length, drift: Velocity) -> Result<f64, FormulaError> {
    given!(r, G["mg/h"] = source_mg_per_h, "source");
    given!(r, r_n["m"] = radius.get::<meter>(), "radius of the near field");
    given!(r, s["m/s"] = drift.get::<meter_per_second>(), "drift of the air");
    positive("the radius", r_n, "m")?;
    positive("the drift", s, "m/s")?;
    step!(r, beta["m³/h"] = PI * pow(r_n, 2.0) * s * 3600.0, sources::NEAR_FIELD);
    step!(r, C["mg/m³"] = G / beta, sources::NEAR_FIELD);
    Ok(C)
}

/// How long the room has to be left alone until its air has fallen to a limit: t = K·V/Q·ln(C₀/C).
///
/// # Errors
/// [`FormulaError::NotPositive`] for a concentration or an air change of nothing, [`FormulaError::NotLess`] unless the limit is the lower.
///
/// # Source
/// Mass balance of a mixed room.
///
/// # Example
/// From 1000 to 100 ppm at half a change an hour: 4.6 h mixed, 13.8 h with K 3 (computed independently).
/// ```
/// use formulas::{Silent, room_air::{Air, re_entry}};
/// use uom::si::{f64::{Frequency, Volume}, frequency::cycle_per_hour, time::hour, volume::cubic_meter};
/// let air = |mixing| Air { volume: Volume::new::<cubic_meter>(40.0), changes: Frequency::new::<cycle_per_hour>(0.5), mixing };
/// let wait = re_entry(&mut Silent, &air(1.0), 1000.0, 100.0)?;
/// assert!((wait.get::<hour>() - 4.605).abs() < 0.001);
/// let wait = re_entry(&mut Silent, &air(3.0), 1000.0, 100.0)?;
/// assert!((wait.get::<hour>() - 13.8).abs() < 0.02);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn re_entry<R: Recorder>(r: &mut R, air: &Air, now: f64, limit: f64) -> Result<Time, FormulaError> {
    let (_, n_K) = air.counted(r)?;
    given!(r, C_0 [] = now, "concentration now");
    given!(r, C [] = limit, "concentration wanted");
    positive("the air change", n_K, "1/h")?;
    positive("the concentration wanted", C, "")?;
    less(("the concentration wanted", C), ("the concentration now", C_0), "")?;
    step!(r, t["h"] = ln(C_0 / C) / n_K, sources::ROOM_BALANCE);
    Ok(Time::new::<hour>(t))
}

/// The air change that keeps a steady source at a limit: n = K·G/(C·V).
///
/// # Errors
/// [`FormulaError::NotPositive`] for a source, limit or room of nothing.
///
/// # Source
/// American ventilation manual, dilution at steady state; *from memory*.
///
/// # Example
/// 3.16 g/min of acetone at 250 ppm (604 mg/m³) with K 3 in 36 m³: 26 air changes an hour (computed independently): go outdoors.
/// ```
/// use formulas::{Silent, room_air::changes_needed};
/// use uom::si::{f64::Volume, frequency::cycle_per_hour, volume::cubic_meter};
/// let n = changes_needed(&mut Silent, 3.16e3 * 60.0, 604.0, Volume::new::<cubic_meter>(36.0), 3.0)?;
/// assert!((n.get::<cycle_per_hour>() - 26.2).abs() < 0.5);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn changes_needed<R: Recorder>(
    r: &mut R,
    source_mg_per_h: f64,
    limit_mg_per_m3: f64,
    room: Volume,
    mixing: f64,
) -> Result<Frequency, FormulaError> {
    given!(r, G["mg/h"] = source_mg_per_h, "source");
    given!(r, C["mg/m³"] = limit_mg_per_m3, "limit");
    given!(r, V["m³"] = room.get::<cubic_meter>(), "volume of the room");
    given!(r, K [] = mixing, "mixing factor");
    positive("the source", G, "mg/h")?;
    positive("the limit", C, "mg/m³")?;
    positive("the room", V, "m³")?;
    step!(r, n["1/h"] = K * G / (C * V), sources::ACGIH_VENTILATION);
    Ok(Frequency::new::<cycle_per_hour>(n))
}

/// Share of what a garage's air holds that gets into the house beside it: 0.065, measured 0.065 ± 0.053.
///
/// # Source
/// Batterman and others 2007, fifteen attached garages.
pub const HOUSE_SHARE: f64 = 0.065;

/// How much of all limits together a mixture uses up: Σ C/L; at one it is at its limit.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a limit of nothing.
///
/// # Source
/// 29 CFR 1910.1000(d)(2): substances that harm the same organ add up.
///
/// # Example
/// The regulation's own: 500 of 1000, 45 of 200 and 40 of 200 ppm make 0.925 (*from memory*).
/// ```
/// use formulas::room_air::additive;
/// assert!((additive(&[(500.0, 1000.0), (45.0, 200.0), (40.0, 200.0)])? - 0.925).abs() < 1e-12);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn additive(held_and_limit: &[(f64, f64)]) -> Result<f64, FormulaError> {
    for (_, limit) in held_and_limit {
        positive("the limit", *limit, "")?;
    }
    Ok(held_and_limit.iter().map(|(held, limit)| held / limit).sum())
}

/// What every answer about a room's air has to say.
pub const CARE: Caution = Caution::Danger {
    words: "A room's air is known within a factor of two at best. Use less, choose a milder one, go outdoors or open up before anything else; if it is still over the limit, stop. No mask is chosen here: follow official respirator guidance. The product's safety data sheet comes first.",
};
