//! One step of the year: the air outside, the room, and the metal in it.

use super::tally::Tally;
use super::{Body, Heat, Hour, Room};
use crate::error::{FormulaError, within};
use crate::humid_air::{saturation_pascals, saturation_slope};
use crate::sources;
use crate::sweating::{AIR, CONDENSATION, FILM_MOST, LEWIS, VAPOUR_GAS};

/// Share of vapour in the air by which a humidity ratio becomes a vapour pressure.
const MASS_RATIO: f64 = 0.621_945;
const ABSOLUTE: f64 = 273.15;

/// The air outside at one moment.
pub(super) struct Outside {
    celsius: f64,
    /// kg of water to a kg of dry air.
    water: f64,
    pascals: f64,
}

impl Outside {
    pub(super) fn between(from: &Hour, to: &Hour, share: f64) -> Self {
        let mix = |a: f64, b: f64| a + share * (b - a);
        let vapour = |hour: &Hour| hour.humidity * saturation_pascals(hour.celsius);
        let (e, pascals) = (mix(vapour(from), vapour(to)), mix(from.pascals, to.pascals));
        Self { celsius: mix(from.celsius, to.celsius), water: MASS_RATIO * e / (pascals - e), pascals }
    }
}

/// One body's metal.
pub(super) struct Metal {
    pub(super) celsius: f64,
    /// Water on it, kg/m².
    film: f64,
    /// Saturation pressure at its temperature, Pa.
    pub(super) saturation: f64,
    touch: Touch,
    /// Mass transfer, m/s, by the Lewis relation.
    transfer: f64,
}

/// The room and its metal at one moment.
pub(super) struct State {
    pub(super) air: f64,
    /// kg of water to a kg of dry air.
    water: f64,
    pascals: f64,
    /// Dry air in the room, kg.
    dry_air: f64,
    pub(super) metal: Vec<Metal>,
}

impl State {
    pub(super) fn new(hours: &[Hour], room: &Room, bodies: &[Body]) -> Self {
        const NONE: Hour = Hour { celsius: 10.0, humidity: 0.8, pascals: 101_325.0, month: 1 };
        let first = hours.first().copied().unwrap_or(NONE);
        let outside = Outside::between(&first, &first, 0.0);
        Self {
            air: first.celsius,
            water: outside.water,
            pascals: first.pascals,
            dry_air: AIR.0 * room.volume,
            metal: bodies.iter().map(|body| Metal::dry(body, first.celsius)).collect(),
        }
    }

    /// Vapour pressure of the room's air, Pa.
    pub(super) fn vapour(&self) -> f64 {
        vapour(self.water, self.pascals)
    }

    pub(super) fn humidity(&self) -> f64 {
        self.vapour() / saturation_pascals(self.air)
    }

    pub(super) fn advance(&mut self, room: &Room, bodies: &[Body], outside: &Outside, dt: f64, tally: &mut Tally) {
        self.pascals = outside.pascals;
        let changes = room.changes / 3600.0;
        let lost = room.envelope + changes * self.dry_air * AIR.1;
        let dried = room.dehumidifier.map_or(0.0, |unit| unit.takes(self.air, self.humidity()));

        // The middle of the step, as the room alone would reach it with the metal as it is.
        let (mut pull, mut towards) = (lost, lost * outside.celsius + dried * CONDENSATION);
        let (mut dries, mut fed) = (changes, changes * outside.water + (room.water / 3600.0 - dried) / self.dry_air);
        let e = self.vapour();
        for (metal, body) in self.metal.iter().zip(bodies) {
            pull += metal.touch.conducts;
            towards += metal.touch.conducts * metal.celsius;
            if metal.film > 0.0 || metal.saturation < e {
                // Vapour pressure over humidity ratio is nearly a constant for damp air.
                let moved =
                    body.area * metal.transfer / (VAPOUR_GAS * (metal.celsius + ABSOLUTE)) * self.pascals / MASS_RATIO / self.dry_air;
                dries += moved;
                fed += moved * MASS_RATIO * metal.saturation / self.pascals;
            }
        }
        let heated = heater(room.heat, room.holds, self.air, pull, towards, dt);
        towards += heated;
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
    pub(super) fn held(&self, room_holds: f64, bodies: &[Body]) -> (f64, f64) {
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

/// What the heater gives, W; a thermostat gives what lifts the air to its mark by the end of the step, as far as the heater can.
fn heater(heat: Heat, room_holds: f64, air: f64, pull: f64, towards: f64, dt: f64) -> f64 {
    match heat {
        Heat::None => 0.0,
        Heat::Steady(watts) => watts,
        Heat::Thermostat { celsius, watts } => {
            (room_holds * (celsius - air) / dt + 0.5 * pull * (air + celsius) - towards).clamp(0.0, watts)
        }
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
    fn dry(body: &Body, celsius: f64) -> Self {
        let transfer = body.convection / (AIR.0 * AIR.1 * LEWIS);
        Self { celsius, film: 0.0, saturation: saturation_pascals(celsius), touch: body.touch(), transfer }
    }

    fn advance(&mut self, body: &Body, air: f64, e: f64, dt: f64) -> Taken {
        let touch = &self.touch;
        let film = 0.5 * (self.celsius + air) + ABSOLUTE;
        let moves = self.transfer / (VAPOUR_GAS * film);
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
        let (heater, passes) = ((touch.warms + touch.passes) * dt, touch.passes * dt);
        self.celsius += rise;
        self.saturation = saturation_pascals(self.celsius);
        let film = self.film + water;
        self.film = film.clamp(0.0, FILM_MOST);
        Taken { heat: heat - passes, heater, water, ran_off: (film - FILM_MOST).max(0.0) }
    }
}

/// How long metal sweats that is brought into warmer air, or that such air comes to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sweat {
    /// Hours until the metal is as warm as the dew point.
    pub hours: f64,
    /// Water that condenses by then, kg/m²; what is more than [`FILM_MOST`] has run off.
    pub condensed: f64,
}

/// How long cold metal sweats in air that stays as it is: a door opened on a thaw morning, at its worst.
///
/// The heat of the water itself warms the metal, so that it sweats for a shorter time than its lag alone would have it.
///
/// # Errors
/// As [`simulate`](super::simulate); [`FormulaError::OutOfRange`] for air above 99 %, in which metal sweats nearly without end.
///
/// # Source
/// Lumped heat and water balances; mass transfer by the Lewis relation.
pub fn sweat(body: &Body, metal_celsius: f64, air_celsius: f64, humidity: f64) -> Result<Sweat, FormulaError> {
    body.check()?;
    for (what, celsius) in [("the temperature of the metal", metal_celsius), ("the temperature of the air", air_celsius)] {
        within(what, celsius, "°C", (-60.0, 60.0), sources::WMO_8)?;
    }
    within("the relative humidity", humidity, "", (0.0, 0.99), sources::DEFINITION)?;
    let e = humidity * saturation_pascals(air_celsius);
    let mut metal = Metal::dry(body, metal_celsius);
    // The metal nears the air by e in a lag, so even at 99 % a few lags bring it to the dew point.
    let dt = body.holds / metal.touch.conducts / 1000.0;
    let mut sweat = Sweat { hours: 0.0, condensed: 0.0 };
    while metal.saturation < e {
        sweat.condensed += metal.advance(body, air_celsius, e, dt).water;
        sweat.hours += dt / 3600.0;
    }
    Ok(sweat)
}
