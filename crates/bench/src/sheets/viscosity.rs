//! How thick an oil is at a temperature, and at which temperature it has a given viscosity (ASTM D341).

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::viscosity::temperature_at;
use formulas::viscosity_index::viscosity_index;
use units::{KinematicViscosity, Temperature};

use super::common::{AT_40, AT_100, FLUID, INDEX, Oil, celsius, from_celsius, mm2, oils};
use super::{Asked, Outcome, Unanswered};
use crate::picture::{Axis, Band, Line, Mark, Picture};

const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "20 °C", "common-practice", "temperature of the oil");
const WANTED: Given<Option<KinematicViscosity>> =
    Given::maybe("wanted", "viscosity you want; then the temperature that gives it is found too");

pub(super) static KIND: Kind = Kind {
    name: "viscosity",
    about: "how thick an oil is at a temperature",
    fields: &[FLUID.field(), AT_40.field(), AT_100.field(), INDEX.field(), TEMPERATURE.field(), WANTED.field()],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let at = asked.answers.quantity(&TEMPERATURE);
    let wanted = asked.answers.maybe(&WANTED);
    let oils = oils(asked, r)?;
    let mut outcome = Outcome::default();
    let mut picture = chart(&oils, wanted);
    for oil in &oils {
        let nu = oil.viscosity(r, at)?;
        outcome = outcome.exact(format!("{}: viscosity", oil.name), nu);
        if let Ok(index) = viscosity_index(r, oil.cool.nu, oil.hot.nu) {
            outcome = outcome.number(format!("{}: viscosity index", oil.name), "", index);
        }
        if let Some(wanted) = wanted {
            outcome = outcome.exact(format!("{}: temperature for it", oil.name), temperature_at(r, oil.cool, oil.hot, wanted)?);
        }
        picture.marks.push(Mark { name: String::new(), at: (celsius(at), mm2(nu)) });
    }
    Ok(outcome
        .caution(
            "Below its pour point or cloud point an oil stiffens and this no longer holds; so with oils thickened by polymer.",
            "astm-d341",
        )
        .picture(picture))
}

/// Viscosity of some oils against temperature, with the band that is wanted.
pub(super) fn chart(oils: &[Oil], wanted: Option<KinematicViscosity>) -> Picture {
    /// One grade of ISO 3448 lies 10 % either side.
    const BAND: f64 = 1.1;
    let band = wanted.map(|nu| Band { name: "wanted".to_owned(), low: mm2(nu) / BAND, high: mm2(nu) * BAND });
    let line = |oil: &Oil| Line {
        name: oil.name.clone(),
        points: (-20..=110).filter_map(|degree| Some((f64::from(degree), oil.silent(from_celsius(f64::from(degree)))?))).collect(),
    };
    Picture {
        title: "Viscosity and temperature".to_owned(),
        x: Axis { label: "temperature, °C".to_owned(), low: -20.0, high: 110.0, logarithmic: false },
        y: Axis { label: "kinematic viscosity, mm²/s".to_owned(), low: 2.0, high: 20_000.0, logarithmic: true },
        lines: oils.iter().map(line).collect(),
        bands: band.into_iter().collect(),
        marks: Vec::new(),
    }
}
