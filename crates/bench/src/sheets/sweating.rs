//! When metal sweats: the damp at its face now, and a year of it hour by hour, with what heat, a cover or a dehumidifier would change.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::corrosion::{Wear, renewals, wetness_class};
use formulas::humid_air::{Over, dew_point, humidity_at_surface, vapour_pressure};
use formulas::sweating::{
    Body, BodyYear, CONVECTION, Cover, Dehumidifier, Heat, IRON, RADIATION, Room, Year, cover_power, lag, simulate, warmth_over_air,
};
use reference::Climate;
use units::{Area, Frequency, Length, Mass, MassDensity, Power, Quantity, Range, Ratio, Temperature, Volume};
use weather::Months;

use super::{Asked, Outcome, Unanswered};
use crate::page::ChoiceRow;
use crate::picture::{Axis, Line, Picture};

const AIR: Given<Temperature> = Given::quantity("air", "15 °C", "common-practice", "air now: a thaw after frost, say");
const HUMIDITY: Given<Ratio> = Given::quantity("humidity", "90 %", "common-practice", "its relative humidity");
const METAL: Given<Temperature> = Given::quantity("metal", "5 °C", "common-practice", "the metal's temperature now");
const WALL: Given<Length> =
    Given::quantity("wall", "25 mm", "common-practice", "thickness of the casting, for how slowly it follows the air");
const WEATHER: Given<Option<&'static str>> =
    Given::maybe_file("weather", "a typical year hour by hour, or years one after another: the CSV of PVGIS or an EnergyPlus weather file");
const CLIMATE: Given<&'static str> =
    Given::name("climate", "mild-maritime", "common-practice", "where no file is given, a climate by name, such as continental");
const VOLUME: Given<Volume> = Given::quantity("volume", "40 m3", "common-practice", "air space of the room");
const CHANGES: Given<Frequency> = Given::quantity("air_changes", "0.5 /h", "common-practice", "changes of its air");
const ENVELOPE: Given<f64> = Given::number(
    "envelope",
    "200",
    "common-practice",
    "heat that walls, roof and door let through, watts for each kelvin: 200 for a single garage, 60 for an insulated one",
);
const HEATING: Given<&'static str> = Given::choice(
    "heating",
    &["none", "frost-guard", "steady"],
    "none",
    "common-practice",
    "the room's heating: none, kept above 5 °C, kept at 17 °C",
);
const MASS: Given<Mass> = Given::quantity("mass", "250 kg", "common-practice", "the machine's mass");
const AREA: Given<Area> = Given::quantity("area", "3 m2", "common-practice", "its face in the air");
const FACE: Given<&'static str> = Given::choice(
    "face",
    &["bright", "painted"],
    "bright",
    "common-practice",
    "the face one looks at: bright ways warm more slowly than paint",
);
const SALT: Given<bool> = Given::flag("salt", "no", "common-practice", "whether the sea is within a kilometre, or a salted car comes in");
const HEATER: Given<Power> = Given::quantity("heater", "60 W", "common-practice", "a small heater under a cover over the machine");
const DRIES: Given<f64> = Given::number("dehumidifier", "10", "common-practice", "what a dehumidifier's plate promises, kg a day");
const DESICCANT: Given<bool> =
    Given::flag("desiccant", "no", "common-practice", "whether it has a desiccant wheel, which does not fade in the cold as a coil does");

pub(super) static KIND: Kind = Kind {
    name: "sweating",
    about: "whether metal sweats now, and through a year in this room: damp hours, when to renew a coat, what keeps it dry",
    fields: &[
        AIR.field(),
        HUMIDITY.field(),
        METAL.field(),
        WALL.field(),
        WEATHER.field(),
        CLIMATE.field(),
        VOLUME.field(),
        CHANGES.field(),
        ENVELOPE.field(),
        HEATING.field(),
        MASS.field(),
        AREA.field(),
        FACE.field(),
        SALT.field(),
        HEATER.field(),
        DRIES.field(),
        DESICCANT.field(),
    ],
};

/// Steps an hour of the year's simulation.
const PARTS: u32 = 12;
/// Heat a cover of cloth lets through, W/(m²·K); *common practice*.
const CLOTH: f64 = 5.0;
/// Humidity a dehumidifier is set to; *common practice*: rust begins near 60 %.
const DRY: f64 = 0.55;
/// The room's own slowness, J/K for each cubic metre: its air, the inner face of its walls and what stands in it; *common practice*.
const ROOM_HOLDS: f64 = 100e3;

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let outcome = now(asked, r, Outcome::default())?;
    year(asked, r, outcome)
}

/// The damp at the face now.
fn now(asked: &Asked<'_>, r: &mut Notebook, outcome: Outcome) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let (air, metal): (Temperature, Temperature) = (answers.quantity(&AIR), answers.quantity(&METAL));
    let humidity = answers.quantity(&HUMIDITY);
    let vapour = vapour_pressure(r, air, humidity, Over::Water)?;
    let dew = dew_point(r, vapour, Over::Water)?;
    let at_metal = humidity_at_surface(r, vapour, metal)?;
    let density = MassDensity::from_base(IRON.0);
    let tau = lag(r, answers.quantity(&WALL), density, IRON.1, exchange(asked))?;
    let words = match at_metal.base() {
        damp if damp > 1.0 => "it sweats: water condenses on it until it is as warm as the dew point",
        damp if damp > 0.8 => "it rusts where it is bare",
        damp if damp > 0.6 => "damp enough to begin",
        _ => "dry",
    };
    let shown = Ratio::from_base(at_metal.base().min(1.0));
    Ok(outcome
        .exact("dew point of the air", dew)
        .exact("humidity at the metal", shown)
        .says(words)
        .exact("the casting follows the air with a lag of", tau))
}

fn exchange(asked: &Asked<'_>) -> f64 {
    let (painted, bright) = RADIATION;
    CONVECTION + if asked.answers.word(&FACE) == "painted" { painted } else { bright }
}

/// A year in the room, and beside it what would change it.
fn year(asked: &Asked<'_>, r: &mut Notebook, outcome: Outcome) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let (hours, years) = hours(asked)?;
    let mean = |value: fn(&weather::Hour) -> f64| hours.iter().map(value).sum::<f64>() / f64::from(u32::try_from(hours.len()).unwrap_or(1));
    let (outside, damp) = (mean(|hour| hour.celsius), mean(|hour| hour.humidity));
    let room = room(asked);
    let body = body(asked);
    let run = |room: &Room, body: Body| -> Result<Year, Unanswered> { Ok(a_year(simulate(&hours, room, &[body], PARTS)?, years)) };
    // The air change is known within a factor of two either way: the drier and the wetter end make the range.
    let cases = [0.5, 1.0, 2.0].map(|times| run(&Room { changes: room.changes * times, ..room }, body));
    let [a, likely, b] = cases;
    let (a, likely, b) = (a?, likely?, b?);
    let of = |year: &Year, value: fn(&BodyYear) -> f64| year.bodies.first().map_or(0.0, value);
    let range = |value: fn(&BodyYear) -> f64| {
        let (a, likely, b) = (of(&a, value), of(&likely, value), of(&b, value));
        Range { low: a.min(b).min(likely), likely, high: a.max(b).max(likely) }
    };
    let wet = range(|body| body.wet_hours);
    let seen = range(|body| body.dose.iter().sum()).map(|sum: f64| sum / f64::from(u32::try_from(years).unwrap_or(1)));
    let (week, wet_in_week) = likely.bodies.first().map_or((0, 0.0), |body| body.worst_week);
    let mut outcome = outcome
        .number("mean outdoors over the year", "°C", outside)
        .number("its relative humidity", "%", damp * 100.0)
        .numbers("hours above 80 % at the metal", "h a year", wet)
        .says(format!("class {} of 5 for time of wetness; bare steel shows rust after 40 to 80 of them", wetness_class(wet.high)))
        .numbers("hours in which it sweats", "h a year", range(|body| body.condensing_hours))
        .numbers("water that condenses on it", "g/m² a year", range(|body| body.condensed * 1e3))
        .number("wet hours in the worst week", "h", wet_in_week)
        .says(begins(week, years))
        .numbers("damp hours that a coat sees", "h a year", seen)
        .says("an hour counts from 60 % at the metal on, fully from 80 %, threefold where it sweats, and twice as much by salt");
    let coats = coats(asked).into_iter().map(|(key, name, budget)| renewed(name, key, budget, years, &likely, [&a, &b]));
    let mut coats = coats.collect::<Result<Vec<ChoiceRow>, Unanswered>>()?;
    // What lasts comes first, and among that what is least trouble.
    coats.sort_by_key(|row| !row.fits);
    outcome = outcome.choices(coats);
    let area = answers.quantity(&AREA);
    let cover = Body { cover: Some(Cover { lets_through: CLOTH * area.base(), watts: answers.quantity(&HEATER).base() }), ..body };
    let unit = Dehumidifier { kg_per_day: answers.number(&DRIES), target: DRY, desiccant: answers.flag(&DESICCANT) };
    let (covered, dried) = (run(&room, cover)?, run(&Room { dehumidifier: Some(unit), ..room }, body)?);
    let says = |year: &Year| {
        let (wet, sweats) = (of(year, |body| body.wet_hours), of(year, |body| body.condensing_hours));
        format!(
            "{wet:.0} h above 80 % at the metal and {sweats:.0} h of sweating in a year, in place of {:.0} h and {:.0} h",
            of(&likely, |body| body.wet_hours),
            of(&likely, |body| body.condensing_hours)
        )
    };
    let better = |year: &Year| of(year, |body| body.wet_hours) < 0.25 * of(&likely, |body| body.wet_hours);
    let warmth = warmth_over_air(r, answers.quantity(&AIR), answers.quantity(&HUMIDITY), Ratio::from_base(0.6))?;
    let power = cover_power(r, area, CLOTH, warmth)?;
    Ok(outcome
        .exact("heat under a cover that keeps the face at 60 % in that air", power)
        .way("a cover with a small heater under it", better(&covered), says(&covered))
        .way("a dehumidifier, with the door shut", better(&dried), format!("{}; it takes out {:.0} kg of water", says(&dried), dried.dried))
        .picture(picture(&likely))
        .caution("Never burn gas or paraffin to dry a room: a kilogram of propane makes 1.6 kg of water, and a flame without a flue makes poison gas.", "common-practice")
        .caution("Keep the door shut in warm, wet weather, and warm the iron, not the air, on a thaw.", "common-practice")
        .caution("The model is known within a factor of two, a coat within three: look at the metal, and trust what you see.", "common-practice"))
}

/// The sums of several years as those of one.
fn a_year(mut all: Year, years: usize) -> Year {
    let years = f64::from(u32::try_from(years).unwrap_or(1));
    all.dried /= years;
    for body in &mut all.bodies {
        for sum in [&mut body.wet_hours, &mut body.condensing_hours, &mut body.condensed] {
            *sum /= years;
        }
        for sum in body.wet_by_month.iter_mut().chain(&mut body.condensing_by_month) {
            *sum /= years;
        }
    }
    all
}

/// When the worst week begins.
fn begins(hour: usize, years: usize) -> String {
    let day = hour / 24 + 1;
    if years == 1 { format!("it begins on day {day} of the year") } else { format!("it begins on day {day} of the {years} years") }
}

/// How often one coat has to be renewed.
fn renewed(name: String, key: String, budget: f64, years: usize, likely: &Year, ends: [&Year; 2]) -> Result<ChoiceRow, Unanswered> {
    let times = |year: &Year| -> Result<usize, Unanswered> {
        Ok(year.bodies.first().map_or(Ok(0), |body| renewals(&body.dose, budget).map(|hours| (hours.len() + years / 2) / years))?)
    };
    let [one, other] = ends;
    let (one, likely, other) = (times(one)?, times(likely)?, times(other)?);
    let (few, many) = (one.min(likely).min(other), one.max(likely).max(other));
    let often = match likely {
        0 => "lasts the year".to_owned(),
        1 => "renew once in the year".to_owned(),
        times => format!("renew {times} times a year"),
    };
    let range = if few == many { String::new() } else { format!(", {few} to {many} by the air change") };
    Ok(ChoiceRow { key, name, fits: likely <= 2, why: format!("{often}{range}; it bears about {budget:.0} damp hours") })
}

/// The coats whose life is known, the least trouble first.
fn coats(asked: &Asked<'_>) -> Vec<(String, String, f64)> {
    let finishes = asked.reference.finishes.values();
    let known = finishes.filter_map(|row| {
        let fluid = asked.reference.fluids_of(&row.class).find(|fluid| fluid.classes.first() == Some(&row.class))?;
        Some((fluid.key.clone(), fluid.name.clone(), row.dose_budget?))
    });
    let mut coats: Vec<(String, String, f64)> = known.collect();
    coats.sort_by(|one, other| one.2.total_cmp(&other.2));
    coats
}

/// The hours, and how many years they are.
fn hours(asked: &Asked<'_>) -> Result<(Vec<weather::Hour>, usize), Unanswered> {
    if let Some(text) = asked.answers.maybe_word(&WEATHER) {
        return weather::read_years(text).map_err(|error| Unanswered::Contradiction(format!("`weather`: {error}")));
    }
    let name = asked.answers.word(&CLIMATE);
    let climate = asked.reference.climate(name).ok_or_else(|| {
        let known = fields::did_you_mean(name, asked.reference.climates.keys().map(String::as_str));
        Unanswered::Contradiction(format!("`{name}` is no climate known here. {known}"))
    })?;
    Ok((months(climate).hours(), 1))
}

fn months(climate: &Climate) -> Months {
    let humidity = climate.humidity_by_month.map(|percent| percent / 100.0);
    Months { mean: climate.mean_by_month, swing: climate.swing_by_month, humidity }
}

fn room(asked: &Asked<'_>) -> Room {
    let answers = asked.answers;
    let volume = answers.quantity(&VOLUME).base();
    let thermostat = |celsius: f64| Heat::Thermostat { celsius, watts: 3000.0 };
    Room {
        volume,
        changes: answers.quantity(&CHANGES).base() * 3600.0,
        envelope: answers.number(&ENVELOPE),
        holds: ROOM_HOLDS * volume,
        water: 0.0,
        heat: match answers.word(&HEATING) {
            "frost-guard" => thermostat(5.0),
            "steady" => thermostat(17.0),
            _ => Heat::None,
        },
        dehumidifier: None,
    }
}

fn body(asked: &Asked<'_>) -> Body {
    let answers = asked.answers;
    Body {
        area: answers.quantity(&AREA).base(),
        holds: answers.quantity(&MASS).base() * IRON.1,
        convection: CONVECTION,
        radiation: exchange(asked) - CONVECTION,
        cover: None,
        wear: Wear { salt: answers.flag(&SALT), handled: false },
    }
}

/// The year at the metal: wet and sweating hours of each month, as steps.
fn picture(year: &Year) -> Picture {
    let steps = |of: fn(&BodyYear) -> [f64; 12]| {
        let values = year.bodies.first().map_or([0.0; 12], of);
        values.iter().zip(0_u32..).flat_map(|(value, month)| [(f64::from(month), *value), (f64::from(month + 1), *value)]).collect()
    };
    let line = |name: &str, points: Vec<(f64, f64)>| Line { name: name.to_owned(), points };
    Picture {
        title: "The year at the metal".to_owned(),
        x: Axis { label: "month of the year".to_owned(), low: 0.0, high: 12.0, logarithmic: false },
        y: Axis { label: "hours in the month; humidity, %".to_owned(), low: 0.0, high: 750.0, logarithmic: false },
        lines: vec![
            line("hours above 80 % at the metal", steps(|body| body.wet_by_month)),
            line("hours in which it sweats", steps(|body| body.condensing_by_month)),
            line("mean humidity at the metal, %", steps(|body| body.humidity_by_month.map(|share| share * 100.0))),
        ],
        bands: Vec::new(),
        marks: Vec::new(),
    }
}
