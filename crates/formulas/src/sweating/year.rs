//! A year in the room, hour by hour: its air, and every machine's metal with the water on it.
//!
//! The room's warmth and water, and each body's, are stepped together by a linearised midpoint rule (implicit, so that it stays calm however
//! thin the metal or quick the air), and what a step exchanges is booked once on either side: heat and water are conserved to rounding.

mod step;
mod tally;

use crate::corrosion::Wear;
use crate::error::{FormulaError, not_negative, positive, within};
use crate::sources;
use step::{Outside, State};
use tally::Tally;

pub use step::{Sweat, sweat};

/// The air outside in one hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hour {
    /// Temperature, °C.
    pub celsius: f64,
    /// Relative humidity over water, as a share.
    pub humidity: f64,
    /// Pressure, Pa.
    pub pascals: f64,
    /// Month, 1 to 12, in which its sums are kept.
    pub month: u8,
}

/// The room.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// Air space, m³.
    pub volume: f64,
    /// Air changes, 1/h.
    pub changes: f64,
    /// Heat that walls, roof and door let through, W/K.
    pub envelope: f64,
    /// Heat that air, inner face of the walls and things hold, J/K.
    pub holds: f64,
    /// Water let in beside the air's, kg/h: a wet car, a drying floor.
    pub water: f64,
    /// How it is heated.
    pub heat: Heat,
    /// What dries it.
    pub dehumidifier: Option<Dehumidifier>,
}

/// How a room is heated.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Heat {
    /// Not at all.
    None,
    /// All the time, W.
    Steady(f64),
    /// Kept from falling below so many °C, with so many W at most.
    Thermostat {
        /// Kept at, °C.
        celsius: f64,
        /// Most it gives, W.
        watts: f64,
    },
}

/// A dehumidifier with a cooled coil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dehumidifier {
    /// What its plate promises, kg a day at 27 °C.
    pub kg_per_day: f64,
    /// Humidity it is set to, as a share.
    pub target: f64,
    /// Whether it is a desiccant wheel, which does not fade in the cold.
    pub desiccant: bool,
}

impl Dehumidifier {
    /// What it takes out, kg/s: all it can 5 % above its target, nothing at it; a coil fades from its rating at 27 °C to nothing at 3 °C.
    fn takes(&self, celsius: f64, humidity: f64) -> f64 {
        let cold = if self.desiccant { 1.0 } else { ((celsius - 3.0) / 24.0).clamp(0.0, 1.2) };
        self.kg_per_day / 86_400.0 * cold * ((humidity - self.target) / 0.05).clamp(0.0, 1.0)
    }
}

/// A machine, or a wall of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Body {
    /// Face in the air, m².
    pub area: f64,
    /// Heat it holds, J/K.
    pub holds: f64,
    /// Heat exchanged by still air, W/(m²·K).
    pub convection: f64,
    /// Heat exchanged by radiation, W/(m²·K).
    pub radiation: f64,
    /// A cover over it, with its heater.
    pub cover: Option<Cover>,
    /// What wears its coat out beside the damp.
    pub wear: Wear,
}

/// A cloth or box over a machine: it lets damp through, and keeps a little warmth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cover {
    /// Heat it lets through, W/K.
    pub lets_through: f64,
    /// Heater under it, W.
    pub watts: f64,
}

/// What a year did to one body.
#[derive(Debug, Clone, PartialEq)]
pub struct BodyYear {
    /// Hours above 80 % at the metal and above freezing.
    pub wet_hours: f64,
    /// Hours in which the metal was colder than the dew point.
    pub condensing_hours: f64,
    /// Water that condensed, kg/m².
    pub condensed: f64,
    /// The hour at which the wettest week begins, and its wet hours.
    pub worst_week: (usize, f64),
    /// Wet hours of each month.
    pub wet_by_month: [f64; 12],
    /// Condensing hours of each month.
    pub condensing_by_month: [f64; 12],
    /// Mean humidity at the metal of each month, as a share.
    pub humidity_by_month: [f64; 12],
    /// What each hour takes from a coat.
    pub dose: Vec<f64>,
    /// Temperature of the metal at the end of each hour, °C.
    pub celsius: Vec<f64>,
}

/// What came in, went out and stayed.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Balance {
    /// Came in through envelope and air, from heaters, from condensing; a negative flow counts as going out.
    pub came_in: f64,
    /// Went out.
    pub went_out: f64,
    /// Held at the end less held at the beginning.
    pub stayed: f64,
}

impl Balance {
    fn book(&mut self, flow: f64) {
        if flow >= 0.0 { self.came_in += flow } else { self.went_out -= flow }
    }

    /// What does not add up, over what moved.
    #[must_use]
    pub fn residual(&self) -> f64 {
        let moved = self.came_in.max(self.went_out).max(f64::MIN_POSITIVE);
        (self.came_in - self.went_out - self.stayed).abs() / moved
    }
}

/// A year in the room.
#[derive(Debug, Clone, PartialEq)]
pub struct Year {
    /// What it did to each body, in their order.
    pub bodies: Vec<BodyYear>,
    /// Air of the room at the end of each hour, °C.
    pub celsius: Vec<f64>,
    /// Its relative humidity at the end of each hour, as a share.
    pub humidity: Vec<f64>,
    /// Heater's work in the room, J.
    pub heat: f64,
    /// Water the dehumidifier took out, kg.
    pub dried: f64,
    /// Heat, J.
    pub energy: Balance,
    /// Water, kg.
    pub water: Balance,
}

/// Runs a year, `parts` steps an hour (12 are within a percent of many more).
///
/// The bodies start as warm as the room, and the room as the first hour outside.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a room or body of nothing; [`FormulaError::OutOfRange`] for air that Magnus' equation does not cover, a
/// humidity above 100 %, a month that is none, or a negative flow.
///
/// # Source
/// Lumped heat and water balances; mass transfer by the Lewis relation. Checked against a second solution at a twentieth of the step.
pub fn simulate(hours: &[Hour], room: &Room, bodies: &[Body], parts: u32) -> Result<Year, FormulaError> {
    check(hours, room, bodies)?;
    let mut state = State::new(hours, room, bodies);
    let mut tally = Tally::new(hours.len(), bodies.len());
    let before = state.held(room.holds, bodies);
    let parts = parts.max(1);
    let step = 3600.0 / f64::from(parts);
    for (place, hour) in hours.iter().enumerate() {
        let next = hours.get(place + 1).unwrap_or(hour);
        for part in 0..parts {
            let share = (f64::from(part) + 0.5) / f64::from(parts);
            let outside = Outside::between(hour, next, share);
            state.advance(room, bodies, &outside, step, &mut tally);
            tally.look(&state, bodies, place, hour.month, f64::from(parts).recip());
        }
        tally.celsius.push(state.air);
        tally.humidity.push(state.humidity());
        for (of_body, body) in tally.bodies.iter_mut().zip(&state.metal) {
            of_body.celsius.push(body.celsius);
        }
    }
    let after = state.held(room.holds, bodies);
    Ok(tally.finish(before, after))
}

fn check(hours: &[Hour], room: &Room, bodies: &[Body]) -> Result<(), FormulaError> {
    positive("the room", room.volume, "m³")?;
    positive("what the room holds", room.holds, "J/K")?;
    for (what, value, unit) in
        [("the air change", room.changes, "1/h"), ("the envelope", room.envelope, "W/K"), ("the water let in", room.water, "kg/h")]
    {
        not_negative(what, value, unit, sources::DEFINITION)?;
    }
    match room.heat {
        Heat::None => {}
        Heat::Steady(watts) => not_negative("the heater", watts, "W", sources::DEFINITION)?,
        Heat::Thermostat { celsius, watts } => {
            within("the thermostat", celsius, "°C", (-60.0, 60.0), sources::WMO_8)?;
            not_negative("the heater", watts, "W", sources::DEFINITION)?;
        }
    }
    if let Some(unit) = room.dehumidifier {
        not_negative("what the dehumidifier takes out", unit.kg_per_day, "kg/d", sources::DEFINITION)?;
        within("the humidity it is set to", unit.target, "", (0.0, 1.0), sources::DEFINITION)?;
    }
    for body in bodies {
        body.check()?;
    }
    for hour in hours {
        within("the temperature outside", hour.celsius, "°C", (-60.0, 60.0), sources::WMO_8)?;
        within("the relative humidity outside", hour.humidity, "", (0.0, 1.05), sources::DEFINITION)?;
        within("the pressure of the air", hour.pascals, "Pa", (40_000.0, 110_000.0), sources::DEFINITION)?;
        within("the month", f64::from(hour.month), "", (1.0, 12.0), sources::DEFINITION)?;
    }
    Ok(())
}

impl Body {
    fn check(&self) -> Result<(), FormulaError> {
        positive("the face of a machine", self.area, "m²")?;
        positive("what a machine holds", self.holds, "J/K")?;
        positive("the heat exchanged with still air", self.convection, "W/(m²·K)")?;
        not_negative("the heat exchanged by radiation", self.radiation, "W/(m²·K)", sources::DEFINITION)?;
        if let Some(cover) = self.cover {
            positive("the heat a cover lets through", cover.lets_through, "W/K")?;
            not_negative("the heater", cover.watts, "W", sources::DEFINITION)?;
        }
        Ok(())
    }
}
