//! A year of damp at the metal of ten machines in one cold room, twelve steps an hour.

use formulas::FormulaError;
use formulas::corrosion::Wear;
use formulas::sweating::{Body, CONVECTION, Heat, IRON, RADIATION, Room, Year, simulate};
use reference::Reference;
use serde_json::{Value, json};
use weather::{Hour, Months};

use crate::clock::shortest;
use crate::others;

const PARTS: u32 = 12;
const RUNS: u32 = 9;
const CLIMATE: &str = "continental";

/// A year, as it is answered here.
pub(crate) struct Answered {
    /// What is asked, as plain data.
    pub asked: Value,
    /// The time it takes, in seconds.
    pub seconds: f64,
    /// What it does.
    pub year: Year,
}

pub(crate) fn year() -> Result<Answered, Box<dyn std::error::Error>> {
    let climate = Reference::embedded().climate(CLIMATE).ok_or("the data know no such climate")?;
    let humidity = climate.humidity_by_month.map(|percent| percent / 100.0);
    let hours = Months { mean: climate.mean_by_month, swing: climate.swing_by_month, humidity }.hours();
    let room = Room { volume: 40.0, changes: 0.5, envelope: 200.0, holds: 4e6, water: 0.0, heat: Heat::None, dehumidifier: None };
    let bodies: Vec<Body> = (1..=10_u8).map(body).collect();
    let (seconds, year) = shortest(RUNS, || simulate(&hours, &room, &bodies, PARTS));
    Ok(Answered { asked: plain(&hours, &room, &bodies), seconds, year: year.map_err(|error: FormulaError| error.to_string())? })
}

impl Answered {
    /// The largest difference from another answer: of the metal in any hour, K, and of a machine's wet hours.
    pub(crate) fn differences(&self, theirs: &others::Year) -> (f64, f64) {
        let (mut celsius, mut wet_hours): (f64, f64) = (0.0, 0.0);
        for (place, body) in self.year.bodies.iter().enumerate() {
            wet_hours = wet_hours.max((body.wet_hours - theirs.wet[place]).abs());
            for (ours, theirs) in body.celsius.iter().zip(&theirs.celsius) {
                celsius = celsius.max((ours - theirs[place]).abs());
            }
        }
        (celsius, wet_hours)
    }
}

/// Machines with walls of 5 to 50 mm, every other one painted.
fn body(number: u8) -> Body {
    let (area, wall) = (1.0 + 0.3 * f64::from(number), 0.005 * f64::from(number));
    let (painted, bright) = RADIATION;
    Body {
        area,
        holds: 0.5 * wall * area * IRON.0 * IRON.1,
        convection: CONVECTION,
        radiation: if number.is_multiple_of(2) { painted } else { bright },
        cover: None,
        wear: Wear::default(),
    }
}

fn plain(hours: &[Hour], room: &Room, bodies: &[Body]) -> Value {
    json!({
        "parts": PARTS,
        "volume": room.volume,
        "changes": room.changes,
        "envelope": room.envelope,
        "holds": room.holds,
        "hours": hours.iter().map(|hour| (hour.celsius, hour.humidity, hour.pascals)).collect::<Vec<_>>(),
        "bodies": bodies.iter().map(|body| (body.area, body.holds, body.convection, body.radiation)).collect::<Vec<_>>(),
    })
}
