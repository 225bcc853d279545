//! A year in the room, hour by hour: its air, and every machine's metal with the water on it.
//!
//! The room's warmth and water, and each body's, are stepped together by a linearised midpoint rule (implicit, so that it stays calm however
//! thin the metal or quick the air), and what a step exchanges is booked once on either side: heat and water are conserved to rounding.

use super::{AIR, CONDENSATION, FILM_MOST, LEWIS, VAPOUR_GAS};
use crate::corrosion::{Wear, dose_of_hour};
use crate::error::{FormulaError, not_negative, positive, within};
use crate::humid_air::{saturation_pascals, saturation_slope};
use crate::sources;

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

/// Share of vapour in the air by which a humidity ratio becomes a vapour pressure.
const MASS_RATIO: f64 = 0.621_945;
const ABSOLUTE: f64 = 273.15;

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
    for body in bodies {
        positive("the face of a machine", body.area, "m²")?;
        positive("what a machine holds", body.holds, "J/K")?;
        positive("the heat exchanged", body.convection + body.radiation, "W/(m²·K)")?;
        if let Some(cover) = body.cover {
            positive("the heat a cover lets through", cover.lets_through, "W/K")?;
            not_negative("the heater", cover.watts, "W", sources::DEFINITION)?;
        }
    }
    for hour in hours {
        within("the temperature outside", hour.celsius, "°C", (-60.0, 60.0), sources::WMO_8)?;
        within("the relative humidity outside", hour.humidity, "", (0.0, 1.05), sources::DEFINITION)?;
        within("the pressure of the air", hour.pascals, "Pa", (40_000.0, 110_000.0), sources::DEFINITION)?;
        within("the month", f64::from(hour.month), "", (1.0, 12.0), sources::DEFINITION)?;
    }
    Ok(())
}

/// The air outside at one moment.
struct Outside {
    celsius: f64,
    /// kg of water to a kg of dry air.
    water: f64,
    pascals: f64,
}

impl Outside {
    fn between(from: &Hour, to: &Hour, share: f64) -> Self {
        let mix = |a: f64, b: f64| a + share * (b - a);
        let vapour = |hour: &Hour| hour.humidity * saturation_pascals(hour.celsius);
        let (e, pascals) = (mix(vapour(from), vapour(to)), mix(from.pascals, to.pascals));
        Self { celsius: mix(from.celsius, to.celsius), water: MASS_RATIO * e / (pascals - e), pascals }
    }
}

struct Metal {
    celsius: f64,
    /// Water on it, kg/m².
    film: f64,
    /// Saturation pressure at its temperature, Pa.
    saturation: f64,
}

struct State {
    air: f64,
    /// kg of water to a kg of dry air.
    water: f64,
    pascals: f64,
    /// Dry air in the room, kg.
    dry_air: f64,
    metal: Vec<Metal>,
}

impl State {
    fn new(hours: &[Hour], room: &Room, bodies: &[Body]) -> Self {
        const NONE: Hour = Hour { celsius: 10.0, humidity: 0.8, pascals: 101_325.0, month: 1 };
        let first = hours.first().copied().unwrap_or(NONE);
        let outside = Outside::between(&first, &first, 0.0);
        let metal = |_: &Body| Metal { celsius: first.celsius, film: 0.0, saturation: saturation_pascals(first.celsius) };
        Self {
            air: first.celsius,
            water: outside.water,
            pascals: first.pascals,
            dry_air: AIR.0 * room.volume,
            metal: bodies.iter().map(metal).collect(),
        }
    }

    /// Vapour pressure of the room's air, Pa.
    fn vapour(&self) -> f64 {
        vapour(self.water, self.pascals)
    }

    fn humidity(&self) -> f64 {
        self.vapour() / saturation_pascals(self.air)
    }

    fn advance(&mut self, room: &Room, bodies: &[Body], outside: &Outside, dt: f64, tally: &mut Tally) {
        self.pascals = outside.pascals;
        let changes = room.changes / 3600.0;
        let lost = room.envelope + changes * self.dry_air * AIR.1;
        let heated = heater(room.heat, lost, outside.celsius);
        let humidity = self.humidity();
        let dried = room.dehumidifier.map_or(0.0, |unit| unit.takes(self.air, humidity));

        // The middle of the step, as the room alone would reach it with the metal as it is.
        let (mut pull, mut towards) = (lost, lost * outside.celsius + heated + dried * CONDENSATION);
        let (mut dries, mut fed) = (changes, changes * outside.water + (room.water / 3600.0 - dried) / self.dry_air);
        let e = self.vapour();
        for (metal, body) in self.metal.iter().zip(bodies) {
            let touch = body.touch();
            pull += touch.conducts;
            towards += touch.conducts * metal.celsius;
            if metal.film > 0.0 || metal.saturation < e {
                // Vapour pressure over humidity ratio is nearly a constant for damp air.
                let moved =
                    body.area * transfer(body) / (VAPOUR_GAS * (metal.celsius + ABSOLUTE)) * self.pascals / MASS_RATIO / self.dry_air;
                dries += moved;
                fed += moved * MASS_RATIO * metal.saturation / self.pascals;
            }
        }
        let air = midpoint(self.air, towards / room.holds, pull / room.holds, dt);
        let water = midpoint(self.water, fed, dries, dt);
        let e = vapour(water, self.pascals);

        // The metal, in that air; what it takes is then taken from the room.
        let (mut heat, mut wet) = (0.0, 0.0);
        for ((metal, body), of_body) in self.metal.iter_mut().zip(bodies).zip(&mut tally.bodies) {
            let taken = metal.advance(body, air, e, dt);
            heat += taken.heat;
            wet += taken.water * body.area;
            of_body.condensed += taken.water.max(0.0);
            tally.energy.book(taken.heater);
            tally.energy.book(taken.water * body.area * CONDENSATION);
            tally.water.book(-taken.ran_off * body.area);
        }
        let through = lost * (outside.celsius - air) * dt;
        let (heater_heat, dry_heat) = (heated * dt, dried * CONDENSATION * dt);
        self.air += (through + heater_heat + dry_heat - heat) / room.holds;
        let carried = changes * self.dry_air * (outside.water - water) * dt;
        let (let_in, taken_out) = (room.water / 3600.0 * dt, dried * dt);
        self.water = (self.water + (carried + let_in - taken_out - wet) / self.dry_air).max(0.0);
        tally.heat += heater_heat;
        tally.dried += taken_out;
        for flow in [through, heater_heat, dry_heat] {
            tally.energy.book(flow);
        }
        for flow in [carried, let_in, -taken_out] {
            tally.water.book(flow);
        }
    }

    /// Heat held, J over 0 °C, and water, kg.
    fn held(&self, room_holds: f64, bodies: &[Body]) -> (f64, f64) {
        let heat: f64 = self.metal.iter().zip(bodies).map(|(metal, body)| body.holds * metal.celsius).sum();
        let film: f64 = self.metal.iter().zip(bodies).map(|(metal, body)| body.area * metal.film).sum();
        (room_holds * self.air + heat, self.dry_air * self.water + film)
    }
}

fn vapour(water: f64, pascals: f64) -> f64 {
    pascals * water / (MASS_RATIO + water)
}

/// The middle of a step of dx/dt = fed − rate·x: exact for a steady feed.
fn midpoint(x: f64, fed: f64, rate: f64, dt: f64) -> f64 {
    // A linearised midpoint: second order, and calm for any rate.
    (x + 0.5 * dt * fed) / (1.0 + 0.5 * dt * rate)
}

/// Mass transfer to a body, m/s, by the Lewis relation.
fn transfer(body: &Body) -> f64 {
    body.convection / (AIR.0 * AIR.1 * LEWIS)
}

fn heater(heat: Heat, lost: f64, outside: f64) -> f64 {
    match heat {
        Heat::None => 0.0,
        Heat::Steady(watts) => watts,
        Heat::Thermostat { celsius, watts } => (lost * (celsius - outside)).clamp(0.0, watts),
    }
}

/// How a body meets the room's air.
struct Touch {
    /// Heat exchanged with the room, W/K.
    conducts: f64,
    /// Heat from a heater under its cover that reaches it, W.
    warms: f64,
    /// Heat from that heater that reaches the room without passing the metal, W.
    passes: f64,
}

impl Body {
    fn touch(&self) -> Touch {
        let bare = self.area * (self.convection + self.radiation);
        match self.cover {
            None => Touch { conducts: bare, warms: 0.0, passes: 0.0 },
            // The air under a cover holds next to nothing: it lies between the room and the metal as the two paths let it.
            Some(cover) => {
                let to_metal = bare / (bare + cover.lets_through);
                Touch { conducts: cover.lets_through * to_metal, warms: cover.watts * to_metal, passes: cover.watts * (1.0 - to_metal) }
            }
        }
    }
}

/// What a body took in one step.
struct Taken {
    /// Heat from the room, J; what a heater passes to the room counts against it.
    heat: f64,
    /// Heat from its own heater, J.
    heater: f64,
    /// Water from the air, kg/m².
    water: f64,
    /// Water that ran off, kg/m².
    ran_off: f64,
}

impl Metal {
    fn advance(&mut self, body: &Body, air: f64, e: f64, dt: f64) -> Taken {
        let touch = body.touch();
        let film = 0.5 * (self.celsius + air) + ABSOLUTE;
        let moves = transfer(body) / (VAPOUR_GAS * film);
        let flux = moves * (e - self.saturation);
        let steeper = moves * saturation_slope(self.celsius, self.saturation);
        let dry = self.film <= 0.0 && flux <= 0.0;
        let (area, holds) = (body.area, body.holds);
        // A linearised midpoint for the temperature; water by the flux in the middle of the step.
        let latent = if dry { 0.0 } else { CONDENSATION * area };
        let flow = touch.conducts * (air - self.celsius) + touch.warms + latent * flux;
        let mut rise = flow * dt / (holds + 0.5 * dt * (touch.conducts + latent * steeper));
        let mut water = if dry { 0.0 } else { (flux - 0.5 * steeper * rise) * dt };
        if water < -self.film {
            water = -self.film;
            let flow = (touch.conducts * (air - self.celsius) + touch.warms) * dt + CONDENSATION * area * water;
            rise = flow / (holds + 0.5 * dt * touch.conducts);
        }
        let heat = touch.conducts * (air - self.celsius - 0.5 * rise) * dt;
        self.celsius += rise;
        self.saturation = saturation_pascals(self.celsius);
        let film = self.film + water;
        self.film = film.clamp(0.0, FILM_MOST);
        Taken { heat: heat - touch.passes * dt, heater: (touch.warms + touch.passes) * dt, water, ran_off: (film - FILM_MOST).max(0.0) }
    }
}

/// What is added up along the way.
struct Tally {
    bodies: Vec<BodyYear>,
    /// Wet hours of each body in each hour.
    wet: Vec<Vec<f64>>,
    hours_by_month: [f64; 12],
    celsius: Vec<f64>,
    humidity: Vec<f64>,
    heat: f64,
    dried: f64,
    energy: Balance,
    water: Balance,
}

impl Tally {
    fn new(hours: usize, bodies: usize) -> Self {
        let body = BodyYear {
            wet_hours: 0.0,
            condensing_hours: 0.0,
            condensed: 0.0,
            worst_week: (0, 0.0),
            wet_by_month: [0.0; 12],
            condensing_by_month: [0.0; 12],
            humidity_by_month: [0.0; 12],
            dose: vec![0.0; hours],
            celsius: Vec::with_capacity(hours),
        };
        Self {
            bodies: vec![body; bodies],
            wet: vec![vec![0.0; hours]; bodies],
            hours_by_month: [0.0; 12],
            celsius: Vec::with_capacity(hours),
            humidity: Vec::with_capacity(hours),
            heat: 0.0,
            dried: 0.0,
            energy: Balance::default(),
            water: Balance::default(),
        }
    }

    /// Looks at every metal after a step that took this share of an hour.
    fn look(&mut self, state: &State, bodies: &[Body], hour: usize, month: u8, share: f64) {
        let month = usize::from(month - 1);
        self.hours_by_month[month] += share;
        let e = state.vapour();
        let of_each = self.bodies.iter_mut().zip(&mut self.wet).zip(state.metal.iter().zip(bodies));
        for ((of_body, wet_by_hour), (metal, body)) in of_each {
            let humidity = e / metal.saturation;
            let condensing = humidity > 1.0;
            let wet = if humidity > 0.8 && metal.celsius > 0.0 { share } else { 0.0 };
            let condenses = if condensing { share } else { 0.0 };
            of_body.wet_hours += wet;
            wet_by_hour[hour] += wet;
            of_body.wet_by_month[month] += wet;
            of_body.condensing_hours += condenses;
            of_body.condensing_by_month[month] += condenses;
            of_body.humidity_by_month[month] += humidity.min(1.0) * share;
            of_body.dose[hour] += share * dose_of_hour(humidity, condensing, body.wear);
        }
    }

    fn finish(mut self, before: (f64, f64), after: (f64, f64)) -> Year {
        self.energy.stayed = after.0 - before.0;
        self.water.stayed = after.1 - before.1;
        for (of_body, wet_by_hour) in self.bodies.iter_mut().zip(&self.wet) {
            of_body.worst_week = worst_week(wet_by_hour);
            for (humidity, hours) in of_body.humidity_by_month.iter_mut().zip(&self.hours_by_month) {
                *humidity /= hours.max(f64::MIN_POSITIVE);
            }
        }
        Year {
            bodies: self.bodies,
            celsius: self.celsius,
            humidity: self.humidity,
            heat: self.heat,
            dried: self.dried,
            energy: self.energy,
            water: self.water,
        }
    }
}

/// The hour at which the wettest 168 hours begin, and how wet they are.
fn worst_week(wet_by_hour: &[f64]) -> (usize, f64) {
    const WEEK: usize = 168;
    let mut within: f64 = wet_by_hour.iter().take(WEEK).sum();
    let mut worst = (0, within);
    for start in 1..=wet_by_hour.len().saturating_sub(WEEK) {
        within += wet_by_hour[start + WEEK - 1] - wet_by_hour[start - 1];
        if within > worst.1 + 1e-9 {
            worst = (start, within);
        }
    }
    worst
}
