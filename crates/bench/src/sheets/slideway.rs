//! A slideway: how thick its oil may be, how long it stays on an upright face, how much it takes, and whether the slide will stick.

use fields::{Given, Kind};
use formulas::slideway::{
    SlideOil, StickSlip, UPRIGHT_FILM_UM, WAY_FILM_UM, WearSurface, drained_film, film_dose, slide_area, slide_viscosity, stick_slip,
    stick_slip_speed, surface_care, viscosity_to_hold,
};
use formulas::{Notebook, Silent};
use reference::{Fluid, Trait};
use units::{Length, Pressure, Quantity, Temperature, Time, Velocity};

use super::common::{
    AT_40, AT_100, FLUID, INDEX, Judged, Oil, choose, degrees, film, from_mm2, in_window, is_one_of, micrometres, mm2, oils_if_any, said,
};
use super::viscosity::chart;
use super::{Asked, Outcome, Unanswered};
use crate::picture::{Band, Mark};

const LENGTH: Given<Length> = Given::quantity("length", "150 mm", "common-practice", "length of the sliding contact");
const WIDTH: Given<Length> = Given::quantity("width", "20 mm", "common-practice", "width of one land");
const LANDS: Given<f64> = Given::number("lands", "4", "common-practice", "how many lands bear");
const PRESSURE: Given<Pressure> = Given::quantity("pressure", "0.05 MPa", "common-practice", "load over contact area");
const SPEED: Given<Velocity> = Given::quantity("speed", "1 m/min", "common-practice", "speed of the slide");
const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "18 °C", "common-practice", "temperature of the slide");
const HEIGHT: Given<Option<Length>> = Given::maybe("height", "height of the face, if it stands upright");
const AFTER: Given<Time> = Given::quantity("after", "24 h", "common-practice", "time since an upright face was oiled");
const SURFACE: Given<&'static str> = Given::choice(
    "surface",
    &["iron", "hardened", "bronze", "resin", "ptfe"],
    "iron",
    "common-practice",
    "what it slides on: scraped iron, hardened steel, bronze, moulded resin, or a glued PTFE film",
);

pub(super) static KIND: Kind = Kind {
    name: "slideway",
    about: "which oil a slide wants, how much, and what is left of it on an upright face",
    fields: &[
        LENGTH.field(),
        WIDTH.field(),
        LANDS.field(),
        PRESSURE.field(),
        SPEED.field(),
        TEMPERATURE.field(),
        HEIGHT.field(),
        AFTER.field(),
        SURFACE.field(),
        FLUID.field(),
        AT_40.field(),
        AT_100.field(),
        INDEX.field(),
    ],
};

/// Thicker than this at its temperature an oil drags and a hand pump does not move it, mm²/s; *common practice*.
const DRAGS: f64 = 1600.0;

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let at: Temperature = answers.quantity(&TEMPERATURE);
    let pressure: Pressure = answers.quantity(&PRESSURE);
    if pressure <= Pressure::from_base(0.0) {
        return Err(Unanswered::Contradiction("`pressure` must be more than nothing: an ordinary slide has 0.05 MPa".to_owned()));
    }
    let lands = answers.number(&LANDS);
    if !(0.5..=20.0).contains(&lands) {
        return Err(Unanswered::Contradiction(format!("`lands` is {}: a slide has 1 to 20, most have 4", said(lands))));
    }
    let area = slide_area(r, answers.quantity(&LENGTH), answers.quantity(&WIDTH), answers.number(&LANDS));
    let care = surface_care(surface(answers.word(&SURFACE)));
    let dose = film_dose(r, area, micrometres(WAY_FILM_UM)) * care.dose;
    let mut outcome = Outcome::default();
    let window = match answers.maybe(&HEIGHT) {
        None => {
            let range = slide_viscosity(r, pressure, Some(answers.quantity(&SPEED)));
            outcome = outcome.range(format!("viscosity wanted at {}", degrees(at)), range);
            (mm2(range.low), mm2(range.high))
        }
        Some(height) => {
            let least = viscosity_to_hold(r, micrometres(UPRIGHT_FILM_UM), height, answers.quantity(&AFTER))?;
            outcome = outcome
                .exact(format!("viscosity at {} that leaves {} µm then", degrees(at), said(UPRIGHT_FILM_UM)), least)
                .says("thinner oil does where you oil more often");
            (mm2(least), DRAGS)
        }
    };
    outcome = outcome.exact("oil for one film", dose).says(format!("before each use, and again every {} hours of work", said(care.hours)));
    let oils = oils_if_any(asked, r)?;
    for oil in &oils {
        let nu = oil.viscosity(r, at)?;
        outcome = outcome.exact(format!("{}: viscosity", oil.name), nu);
        if let Some(height) = answers.maybe(&HEIGHT) {
            let left = drained_film(r, nu, height, answers.quantity(&AFTER))?;
            outcome = outcome.exact(format!("{}: film left at the lower edge", oil.name), left);
        }
    }
    let choices = choose(asked.reference, |fluid| judge(asked, fluid, at, window));
    let best = || choices.iter().take(3).filter_map(|row| asked.reference.fluid(&row.key).and_then(Oil::of)).collect();
    let shown: Vec<Oil> = if oils.is_empty() { best() } else { oils };
    let mut picture = chart(&shown, None);
    picture.bands.push(Band { name: "wanted".to_owned(), low: window.0, high: window.1 });
    let marks = shown.iter().filter_map(|oil| Some(Mark { name: String::new(), at: (super::common::celsius(at), oil.silent(at)?) }));
    picture.marks.extend(marks);
    Ok(jerks(asked, surface(answers.word(&SURFACE)), outcome, r)
        .choices(choices)
        .picture(picture)
        .caution("Wipe the chips off before you oil: oil over chips makes a lap of the slide.", "common-practice")
        .caution(format!("Keep away from it: {}.", care.keep_away), "common-practice"))
}

fn judge(asked: &Asked<'_>, fluid: &Fluid, at: Temperature, window: (f64, f64)) -> Option<Judged> {
    const OILS: &[&str] = &["slideway-oil", "hydraulic-oil", "circulating-oil", "motion-oil", "gear-oil", "tacky-oil"];
    /// How much less an oil counts that is thick enough but no slideway oil.
    const NOT_MADE_FOR_IT: f64 = 3.0;
    if !is_one_of(fluid, OILS) || fluid.traits.contains(&Trait::HypoidEp) {
        return None;
    }
    let nu = Oil::of(fluid)?.silent(at)?;
    let mut judged = in_window(nu, window, &format!("at {}", degrees(at)));
    if let Some(height) = asked.answers.maybe(&HEIGHT) {
        let left = drained_film(&mut Silent, from_mm2(nu), height, asked.answers.quantity(&AFTER)).ok()?;
        judged.why = format!("{}; {} left", judged.why, film(left));
    }
    if !is_one_of(fluid, &["slideway-oil"]) {
        judged.off += NOT_MADE_FOR_IT;
        let say = if judged.fits { "it will do, though it does not cling" } else { "nor does it cling" };
        judged.why = format!("{}; {say}", judged.why);
    }
    Some(judged)
}

/// Whether the slide is likely to move by jerks, on plain oil and on slideway oil.
fn jerks(asked: &Asked<'_>, surface: WearSurface, mut outcome: Outcome, r: &mut Notebook) -> Outcome {
    let speed = asked.answers.quantity(&SPEED);
    for (oil, name) in [(SlideOil::Slideway, "slideway oil at this speed"), (SlideOil::Plain, "plain oil at this speed")] {
        let below = stick_slip_speed(surface, oil);
        let words = |say: &str| {
            let number = units::show(below.likely, units::System::Metric);
            format!("{say}; it jerks below about {number}, known within a factor of three")
        };
        outcome = match stick_slip(r, speed, surface, oil) {
            StickSlip::Unlikely => outcome.way(name, true, words("the slide glides")),
            StickSlip::Possible => outcome.way(name, oil == SlideOil::Slideway, words("it may move by jerks")),
            StickSlip::Likely => outcome.way(name, false, words("the slide sticks and jumps")),
        };
    }
    outcome
}

fn surface(word: &str) -> WearSurface {
    match word {
        "hardened" => WearSurface::HardenedSteel,
        "bronze" => WearSurface::Bronze,
        "resin" => WearSurface::Resin,
        "ptfe" => WearSurface::Ptfe,
        _ => WearSurface::CastIron,
    }
}
