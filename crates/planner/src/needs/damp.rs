//! A year of damp at bright iron in the shop's room: run once a plan, and only where a job asks.

use std::cell::OnceCell;

use formulas::corrosion::{Wear, renewals, wetness_class};
use formulas::sweating::{Body, BodyYear, CONVECTION, Cover, Dehumidifier, Heat, IRON, RADIATION, Room, simulate};
use reference::{Climate, Reference};
use shop::{Heating, Shop};
use units::{Mass, Quantity, System, show};
use weather::{Hour, Months};

use super::Complaint;

/// Steps an hour: two are within a few percent of twelve, which is less than the weather is known by.
const PARTS: u32 = 2;
/// A machine of usual size: its face, m², and its wall, m, which has air on both sides.
const MACHINE: (f64, f64) = (3.0, 0.025);
/// Heat that walls, roof and door of a single garage of 40 m³ let through, W/K; other rooms go by their face. *Common practice.*
const ENVELOPE: (f64, f64) = (200.0, 40.0);
/// Heat that a room holds for each cubic metre, J/K; *common practice*.
const ROOM_HOLDS: f64 = 100e3;
/// Heat that a cover of cloth lets through, W/(m²·K), and the heater under it, W; *common practice*.
const COVER: (f64, f64) = (5.0, 60.0);
/// What a dehumidifier's plate promises, kg a day, and the humidity it is set to; *common practice*.
const DRIES: (f64, f64) = (10.0, 0.55);
/// Below this a cooled coil fades and a desiccant wheel is taken, °C; *common practice*.
const COIL_FADES_C: f64 = 10.0;

const HOURS_A_MONTH: f64 = 730.5;

/// The year, once it has been asked for.
#[derive(Debug, Default)]
pub(crate) struct Damp(OnceCell<DampYear>);

impl Damp {
    /// The year of this shop.
    pub fn year(&self, shop: &Shop, reference: &Reference) -> Result<&DampYear, Complaint> {
        if let Some(year) = self.0.get() {
            return Ok(year);
        }
        let year = run(shop, reference)?;
        Ok(self.0.get_or_init(|| year))
    }
}

/// What a year does to a machine standing bare in the room, under a cover with a heater, and beside a dehumidifier.
#[derive(Debug)]
pub(crate) struct DampYear {
    bare: BodyYear,
    covered: BodyYear,
    dried: BodyYear,
    /// Whether the dehumidifier has a desiccant wheel.
    desiccant: bool,
    /// Whether a weather file is named that nobody has read.
    unread: bool,
    /// The units that sentences about it are told in.
    units: System,
}

impl DampYear {
    /// What it takes from a coat in so many months, begun at the worst time of the year: hours of full damp.
    pub fn dose(&self, months: f64) -> f64 {
        let hours = &self.bare.dose;
        let (year, stretch) = (hours.iter().sum::<f64>(), whole_hours(months, hours.len()));
        let whole_years = (months / 12.0).floor();
        let mut sum: f64 = hours.iter().take(stretch).sum();
        let mut worst = sum;
        for (leaves, enters) in hours.iter().zip(hours.iter().cycle().skip(stretch)) {
            sum += enters - leaves;
            worst = worst.max(sum);
        }
        whole_years * year + worst
    }

    /// How many times a year a coat of so many hours has to be renewed.
    pub fn renewals(&self, budget: f64) -> Result<usize, Complaint> {
        Ok(renewals(&self.bare.dose, budget)?.len())
    }

    /// What the room does, in words.
    pub fn words(&self) -> String {
        let unread = if self.unread { " Reckoned with the months of the climate: the weather file was not read here." } else { "" };
        format!(
            "In a year bright iron in this room sees {:.0} h above 80 % at its face and sweats in {:.0} h: class {} of 5; bare steel shows \
             rust after 40 to 80 of them.{unread}",
            round(self.bare.wet_hours),
            round(self.bare.condensing_hours),
            wetness_class(self.bare.wet_hours)
        )
    }

    /// What would change it, in words.
    pub fn ways_out(&self) -> String {
        format!(
            "A cloth over the machine with a heater of {:.0} W under it leaves {:.0} of those hours; a dehumidifier of {} a day{}, {:.0}.",
            COVER.1,
            round(self.covered.wet_hours),
            show(Mass::from_base(DRIES.0), self.units),
            if self.desiccant { " with a desiccant wheel, for a coil fades in the cold" } else { "" },
            round(self.dried.wet_hours)
        )
    }

    /// Whether the metal is ever wet.
    pub fn is_wet(&self) -> bool {
        self.bare.wet_hours >= 1.0
    }
}

/// Two digits: no year is known better.
fn round(hours: f64) -> f64 {
    let scale = if hours > 0.0 { 10_f64.powf(1.0 - hours.log10().floor()) } else { 1.0 };
    (hours * scale).round() / scale
}

/// The hours of what months leave over whole years.
fn whole_hours(months: f64, year: usize) -> usize {
    let hours = (months % 12.0) * HOURS_A_MONTH;
    (0..year).rev().find(|hour| super::count(*hour) <= hours).unwrap_or(0)
}

fn run(shop: &Shop, reference: &Reference) -> Result<DampYear, Complaint> {
    let hours = hours(shop, reference)?;
    let (room, body) = (room(&shop.room), body(&shop.room));
    let one = |room: &Room, body: Body| -> Result<BodyYear, Complaint> {
        let year = simulate(&hours, room, &[body], PARTS)?;
        // One body goes in, so one comes out.
        year.bodies.into_iter().next().ok_or_else(|| unreachable!("a year for each body"))
    };
    let cover = Cover { lets_through: COVER.0 * body.area, watts: COVER.1 };
    let cold = hours.iter().any(|hour| hour.celsius < COIL_FADES_C);
    let desiccant = cold && shop.room.heating != Heating::Steady;
    let dehumidifier = Some(Dehumidifier { kg_per_day: DRIES.0, target: DRIES.1, desiccant });
    Ok(DampYear {
        bare: one(&room, body)?,
        covered: one(&room, Body { cover: Some(cover), ..body })?,
        dried: one(&Room { dehumidifier, ..room }, body)?,
        desiccant,
        unread: shop.room.weather.as_ref().is_some_and(|file| file.text.is_none()),
        units: shop.units,
    })
}

/// The weather of the file, or that of the climate's months with the humidity the shop file says.
fn hours(shop: &Shop, reference: &Reference) -> Result<Vec<Hour>, Complaint> {
    let room = &shop.room;
    if let Some(text) = room.weather.as_ref().and_then(|file| file.text.as_deref()) {
        return weather::read(text).map_err(|error| Complaint::Contradiction {
            field: "weather",
            what: error.to_string(),
            mend: "Give the CSV of a typical year from PVGIS or an EnergyPlus weather file, or leave `weather` out.",
        });
    }
    let Some(climate) = reference.climate(&room.climate) else { return Ok(Vec::new()) };
    Ok(months(climate, room.humidity.base() - climate.humidity.base()).hours())
}

/// The months of a climate, damper by so much.
fn months(climate: &Climate, damper: f64) -> Months {
    let humidity = climate.humidity_by_month.map(|percent| (percent / 100.0 + damper).clamp(0.05, 1.0));
    Months { mean: climate.mean_by_month, swing: climate.swing_by_month, humidity }
}

fn room(room: &shop::Room) -> Room {
    let volume = room.volume.base();
    let thermostat = |celsius: f64| Heat::Thermostat { celsius, watts: 3000.0 };
    Room {
        volume,
        changes: room.most_air_changes().base() * 3600.0,
        envelope: ENVELOPE.0 * (volume / ENVELOPE.1).powf(2.0 / 3.0),
        holds: ROOM_HOLDS * volume,
        water: 0.0,
        heat: match room.heating {
            Heating::None | Heating::WhileWorking => Heat::None,
            Heating::FrostGuard => thermostat(5.0),
            Heating::Steady => thermostat(17.0),
        },
        dehumidifier: None,
    }
}

/// A bright face of a machine.
fn body(room: &shop::Room) -> Body {
    let (area, wall) = MACHINE;
    let (_, bright) = RADIATION;
    Body {
        area,
        holds: 0.5 * wall * area * IRON.0 * IRON.1,
        convection: CONVECTION,
        radiation: bright,
        cover: None,
        wear: Wear { salt: room.salt, handled: false },
    }
}
