//! What a use of a fluid puts into the air of a room, and whether that is fit to breathe and far from burning.
//!
//! The unsafe end decides: the room at the low end of its air change, contents and evaporation at their high ends, and who does the work
//! breathing the near field. Closed forms only, so that a plan can ask it of every fluid at every step.

mod exposure;
mod words;

use formulas::room_air::{HOME_MIXING, History, Pulse, near_field};
use formulas::vapour::{ATMOSPHERE_KPA, Antoine, BesideWater, Component, Pan, VanLaar, blend, pan_rate, schmidt};
use formulas::{FormulaError, Recorder, Silent};
use reference::{Fluid, Reference, Substance};
use units::{Area, Frequency, Length, MassDensity, Pressure, Quantity, Temperature, Time, Velocity, Volume, in_celsius};

pub use exposure::{Exposure, Held, Limited, MOST_CHANGES, exposure, judge, limit};
pub use words::whose;

/// The room, as far as its air goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// Air space.
    pub volume: Volume,
    /// Changes of air; give the low end of what is known.
    pub changes: Frequency,
    /// How warm it is; give the warm end.
    pub temperature: Temperature,
    /// A flame, a glowing heater or sparks in it.
    pub flames: bool,
    /// People live on the other side of a wall or door.
    pub attached_to_house: bool,
}

/// How a fluid is used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Use {
    /// How much is taken.
    pub amount: Volume,
    /// How it meets the air.
    pub way: Way,
    /// How long the work lasts.
    pub lasts: Time,
}

/// How a fluid meets the air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Way {
    /// In an open tray or bath with this surface.
    Tray(Area),
    /// Wiped or brushed over a face: all of it dries off.
    Wiped(Area),
    /// Sprayed: all that evaporates does so at once.
    Sprayed,
}

/// Draught over the work in a room without a fan; *common practice*.
const DRAUGHT_M_PER_S: f64 = 0.25;
/// Between the work and the face, and how fast air drifts there; *from memory* of the two-zone model.
const NEAR: (f64, f64) = (0.75, 0.1);
/// What has less vapour pressure than this stays where it is, Pa: a gram of it would need a week to leave a tray.
const STAYS_PA: f64 = 5.0;
/// Where a diffusion coefficient is not known, that of a large molecule, m²/s.
const SLOW_M2_PER_S: f64 = 5.5e-6;

/// One substance that leaves for the air.
#[derive(Debug, Clone)]
pub struct Emission<'r> {
    /// The substance.
    pub substance: &'r Substance,
    /// Molar mass, g/mol.
    pub molar_mass: f64,
    /// At most so much of it leaves, mg.
    pub mass: f64,
    /// So fast, mg/h.
    pub rate: f64,
    /// For so long, h.
    pub lasts: f64,
}

/// What of a fluid leaves for the air in a use.
///
/// # Errors
/// [`FormulaError`] for an amount, area or time of nothing.
pub fn emissions<'r>(fluid: &Fluid, used: &Use, room: &Room, reference: &'r Reference) -> Result<Vec<Emission<'r>>, FormulaError> {
    let parts: Vec<(&Substance, f64, f64)> = fluid
        .contents
        .iter()
        .filter_map(|content| {
            let substance = reference.substance(&content.substance)?;
            Some((substance, content.share.likely, content.share.high))
        })
        .collect();
    of_parts(&parts, fluid.density.value, used, room)
}

/// The same of a mixture of substances with their likely and highest mass shares.
///
/// # Errors
/// As [`emissions`].
pub fn of_parts<'r>(
    parts: &[(&'r Substance, f64, f64)],
    density: MassDensity,
    used: &Use,
    room: &Room,
) -> Result<Vec<Emission<'r>>, FormulaError> {
    let celsius = in_celsius(room.temperature);
    if parts.iter().all(|(substance, ..)| stays(substance, celsius)) {
        return Ok(Vec::new());
    }
    let components: Vec<Component> = parts.iter().map(|(substance, likely, _)| component(substance, *likely, celsius)).collect();
    let over = blend(&components)?;
    let total = used.amount.base() * density.base() * 1e6;
    let mut emissions = Vec::new();
    for ((substance, _, high), partial) in parts.iter().zip(over) {
        if stays(substance, celsius) || substance.key == WATER {
            continue;
        }
        let mass = total * high;
        let hours = used.lasts.base() / 3600.0;
        let (rate, lasts) = match used.way {
            Way::Sprayed => (mass / hours.max(1e-3), hours.max(1e-3)),
            Way::Wiped(area) => {
                // Each patch dries behind the cloth: the whole leaves in the time of the work, or longer where it dries slowly.
                let fastest = leaves(substance, partial.pressure, area, room)?;
                let lasts = hours.max(mass / fastest).max(1e-3);
                (mass / lasts, lasts)
            }
            Way::Tray(area) => {
                let rate = leaves(substance, partial.pressure, area, room)?;
                (rate, hours.min(mass / rate))
            }
        };
        emissions.push(Emission { substance, molar_mass: molar_mass(substance), mass, rate, lasts });
    }
    Ok(emissions)
}

/// What leaves a wet face at the high end, mg/h.
fn leaves(substance: &Substance, pressure: Pressure, area: Area, room: &Room) -> Result<f64, FormulaError> {
    let pan = Pan { area, length: Length::from_base(area.base().sqrt()), draught: Velocity::from_base(DRAUGHT_M_PER_S) };
    let diffusion = substance.diffusion_mm2_per_s.as_ref().map_or(SLOW_M2_PER_S, |known| known.value * 1e-6);
    let schmidt = schmidt(&mut Silent, diffusion)?;
    // A gas held in a liquid boils out of it: no faster than at one atmosphere.
    let pressure = pressure.min(Pressure::from_base(ATMOSPHERE_KPA * 1e3));
    let rate = pan_rate(&mut Silent, &pan, pressure, molar_mass(substance), schmidt, room.temperature)?;
    Ok((rate.high * 3600.0 * 1e6).max(f64::MIN_POSITIVE))
}

/// What a source of so many mg/h adds to the room's air where one stands at the work, mg/m³.
///
/// # Errors
/// None for a source that is a number.
pub fn near<R: Recorder>(r: &mut R, rate: f64) -> Result<f64, FormulaError> {
    let (radius, drift) = NEAR;
    near_field(r, rate, Length::from_base(radius), Velocity::from_base(drift))
}

const WATER: &str = "water";

/// Whether a substance has too little vapour to leave where it is handled.
pub(crate) fn stays(substance: &Substance, celsius: f64) -> bool {
    pressure_kpa(substance, celsius) * 1e3 < STAYS_PA
}

/// A substance as one liquid of a blend, with its share of the mass.
#[must_use]
pub fn component(substance: &Substance, mass_share: f64, celsius: f64) -> Component {
    let beside_water = match substance.in_water {
        _ if substance.key == WATER => BesideWater::Water,
        Some(known) => BesideWater::Mixes(VanLaar { a: known.a, b: known.b }),
        None => BesideWater::Apart,
    };
    let pressure = Pressure::from_base(pressure_kpa(substance, celsius) * 1e3);
    Component { mass_share, molar_mass_g: molar_mass(substance), pressure, beside_water }
}

/// Vapour pressure at a temperature, kPa; an atmosphere for a gas, nothing where none is known.
#[must_use]
pub fn pressure_kpa(substance: &Substance, celsius: f64) -> f64 {
    if substance.state == reference::substance::State::Gas {
        return ATMOSPHERE_KPA;
    }
    antoine(substance).map_or(0.0, |antoine| antoine.kilopascals(celsius))
}

/// The coefficients as the formulas take them.
#[must_use]
pub fn antoine(substance: &Substance) -> Option<Antoine> {
    let known = substance.antoine.as_ref()?;
    Some(Antoine { a: known.a, b: known.b, c: known.c, from: in_celsius(known.from), to: in_celsius(known.to) })
}

/// Molar mass, g/mol; that of a heavy oil where none is known, which hardly matters then.
#[must_use]
pub fn molar_mass(substance: &Substance) -> f64 {
    substance.molar_mass_g_per_mol.as_ref().map_or(300.0, |known| known.value)
}

/// The room's air while and after a substance leaves for it.
#[must_use]
pub fn history(emission: &Emission<'_>, room: &Room) -> History {
    History {
        volume: room.volume.base(),
        changes: room.changes.base() * 3600.0 / HOME_MIXING,
        before: 0.0,
        pulses: vec![Pulse { starts: 0.0, lasts: emission.lasts, rate: emission.rate, fades: 0.0 }],
    }
}
