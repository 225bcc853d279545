//! A rolling bearing: how thick its oil must be, what an oil gives it, how much grease and how often.

use fields::{Given, Kind};
use formulas::rolling_bearing::{
    Cleanliness, Dirt, Fatigue, Form, Kind as Bodies, Regime, Rolling, first_fill, free_space, judge_by_life, mean_diameter,
    outer_ring_speed, reference_viscosity, regime, regrease_interval, regrease_mass, speed_factor, viscosity_opinions, viscosity_ratio,
};
use formulas::{FormulaError, Notebook, Silent};
use reference::{Fluid, Trait};
use units::{AngularVelocity, Force, Length, Mass, Quantity, Range, Temperature, TemperatureDifference};

use super::common::{AT_40, AT_100, FLUID, INDEX, Judged, Oil, choose, degrees, is_one_of, mm2, oils_if_any, said};
use super::{Asked, Outcome, Unanswered};
use crate::page::ChoiceRow;
use crate::picture::{Axis, Band, Line, Mark, Picture};

const BORE: Given<Length> = Given::quantity("bore", "25 mm", "common-practice", "bore of the inner ring");
const OUTSIDE: Given<Length> = Given::quantity("outside", "52 mm", "common-practice", "outside diameter");
const WIDTH: Given<Length> = Given::quantity("width", "15 mm", "common-practice", "width");
const MASS: Given<Option<Mass>> = Given::maybe("mass", "what the bearing weighs; then its free space is found too");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "600 rpm", "common-practice", "speed it usually runs at");
const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "45 °C", "common-practice", "temperature it runs at");
const TYPE: Given<&'static str> =
    Given::choice("type", &["ball", "cylindrical", "taper", "spherical"], "ball", "common-practice", "shape of the rolling bodies");
const OUTER: Given<bool> = Given::flag("outer_turns", "no", "common-practice", "whether the outer ring turns, as in an idler pulley");
const VERTICAL: Given<bool> = Given::flag("vertical", "no", "common-practice", "whether the shaft stands upright");
const DIRT: Given<&'static str> = Given::choice(
    "dirt",
    &["clean", "dusty", "dirty"],
    "clean",
    "common-practice",
    "what reaches it: clean or well sealed, dust, or grit and damp",
);
const LOAD: Given<Option<Force>> = Given::maybe("load", "equivalent load; with the fatigue limit it gives the life factor");
const LIMIT: Given<Option<Force>> = Given::maybe("fatigue_limit", "fatigue load limit C_u from the bearing's catalogue page");

pub(super) static KIND: Kind = Kind {
    name: "bearing",
    about: "which oil or grease a rolling bearing wants, how much and how often",
    fields: &[
        BORE.field(),
        OUTSIDE.field(),
        WIDTH.field(),
        MASS.field(),
        SPEED.field(),
        TEMPERATURE.field(),
        TYPE.field(),
        OUTER.field(),
        VERTICAL.field(),
        DIRT.field(),
        LOAD.field(),
        LIMIT.field(),
        FLUID.field(),
        AT_40.field(),
        AT_100.field(),
        INDEX.field(),
    ],
};

/// Speed times mean diameter up to which grease stays in, mm/min; *The Tribology Handbook*: 300 000 to 350 000, oil 450 000 to 500 000.
const GREASE: Range<f64> = Range { low: 300_000.0, likely: 325_000.0, high: 350_000.0 };
const OIL: Range<f64> = Range { low: 450_000.0, likely: 475_000.0, high: 500_000.0 };
/// From this viscosity ratio on thickness drags and heats; *common practice*.
pub(super) const DRAGS: f64 = 8.0;
/// From here on a bearing counts as quick: solids and tack only drag. *Common practice.*
const QUICK: f64 = 100_000.0;

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let (bore, outside): (Length, Length) = (answers.quantity(&BORE), answers.quantity(&OUTSIDE));
    let oils = oils_if_any(asked, r)?;
    if bore >= outside {
        return Err(Unanswered::Contradiction(
            "the bore is not smaller than the outside diameter: exchange `bore` and `outside`".to_owned(),
        ));
    }
    if answers.maybe(&LOAD).is_some() && oils.is_empty() {
        return Err(Unanswered::Contradiction(
            "the life factor is an oil's: name one by `fluid`, or give `at_40` with `at_100` or `index`".to_owned(),
        ));
    }
    let at: Temperature = answers.quantity(&TEMPERATURE);
    let mut speed: AngularVelocity = answers.quantity(&SPEED);
    if answers.flag(&OUTER) {
        speed = outer_ring_speed(r, speed, bore, outside)?;
    }
    let mean = mean_diameter(bore, outside);
    let nu_1 = reference_viscosity(r, speed, mean)?;
    let factor = speed_factor(r, speed, mean);
    let mut outcome =
        Outcome::default().exact(format!("viscosity it must have at {}", degrees(at)), nu_1).says("twice as much is better still");
    let opinions = viscosity_opinions(r, speed, mean, form(answers.word(&TYPE)))?;
    if opinions.high > nu_1 {
        outcome = outcome.exact("a handbook's floor at moderate speed", opinions.high);
    }
    outcome = outcome.number("speed times mean diameter", "mm/min", factor).says(speed_words(factor));
    for oil in &oils {
        let nu = oil.viscosity(r, at)?;
        let kappa = viscosity_ratio(r, nu, nu_1);
        outcome = outcome
            .exact(format!("{}: viscosity", oil.name), nu)
            .number(format!("{}: viscosity ratio κ", oil.name), "", kappa)
            .says(regime_words(regime(kappa)));
        outcome = life(asked, &oil.name, kappa, mean, outcome, r)?;
    }
    outcome = grease(asked, speed, at, outcome, r)?;
    let choices = choices(asked, at, mm2(nu_1), factor);
    let picture = picture(asked, oils, &choices, (speed, mean, at));
    Ok(outcome
        .choices(choices)
        .picture(picture)
        .caution("Never fill a bearing with grease: packed full it churns and heats itself.", "tribology-handbook")
        .caution(
            "Grease only onto the grease that is in it, unless the two may meet; `bench grease` tells. A sealed bearing is left alone.",
            "usbr-fist-2-4",
        ))
}

fn form(word: &str) -> Form {
    match word {
        "taper" | "spherical" => Form::Spherical,
        _ => Form::BallOrCylindrical,
    }
}

fn bodies(word: &str) -> Bodies {
    match word {
        "cylindrical" => Bodies::Cylindrical,
        "taper" | "spherical" => Bodies::Taper,
        _ => Bodies::Ball,
    }
}

fn speed_words(factor: f64) -> &'static str {
    match factor {
        f if f < GREASE.low => "slow enough for grease",
        f if f < GREASE.high => "the limit of grease: only one made for fast spindles, and little of it",
        f if f < OIL.likely => "too fast for grease: oil it, a little and often",
        _ => "too fast for a bath: drops or mist of a thin oil, or a bearing made for it",
    }
}

fn regime_words(regime: Regime) -> &'static str {
    match regime {
        Regime::Outside => "far too thin: the standard does not speak of it",
        Regime::Boundary => "boundary: the bodies touch the races, and EP additives or solids carry the load",
        Regime::Mixed => "mixed: they touch now and then, and antiwear additives are wanted",
        Regime::Normal => "normal: the film carries",
        Regime::Full => "full film: thicker oil would only drag",
    }
}

fn life(asked: &Asked<'_>, name: &str, kappa: f64, mean: Length, outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let (load, limit) = match (asked.answers.maybe(&LOAD), asked.answers.maybe(&LIMIT)) {
        (Some(load), Some(limit)) => (load, limit),
        (None, None) => return Ok(outcome),
        _ => {
            return Err(Unanswered::Contradiction(
                "the life factor needs both `load` and `fatigue_limit`: give both, or neither".to_owned(),
            ));
        }
    };
    let rolling = if asked.answers.word(&TYPE) == "ball" { Rolling::Balls } else { Rolling::Rollers };
    let cleanliness = match asked.answers.word(&DIRT) {
        "clean" => Cleanliness::Normal,
        "dusty" => Cleanliness::Typical,
        _ => Cleanliness::Severe,
    };
    let fatigue = Fatigue { rolling, contamination: 0.0, limit, load };
    let judged = judge_by_life(r, kappa, cleanliness, mean, &fatigue)?;
    let (film, clean) = (judged.full_film / judged.factor.likely, judged.clean / judged.factor.likely);
    let says = if film < 1.2 && clean < 1.2 {
        "neither thicker oil nor cleaner would gain much".to_owned()
    } else if film > clean {
        format!("a full film would make it {} times as much", said(film))
    } else {
        format!("keeping it clean would make it {} times as much", said(clean))
    };
    Ok(outcome.numbers(format!("{name}: life factor"), "", judged.factor).says(says))
}

fn grease(asked: &Asked<'_>, speed: AngularVelocity, at: Temperature, outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    /// The temperature of a bearing is seldom known better.
    const UNSURE_K: f64 = 15.0;
    let answers = asked.answers;
    let (bore, outside, width) = (answers.quantity(&BORE), answers.quantity(&OUTSIDE), answers.quantity(&WIDTH));
    let dirt = match answers.word(&DIRT) {
        "clean" => Dirt::Clean,
        "dusty" => Dirt::Dusty,
        _ => Dirt::Dirty,
    };
    let kind = bodies(answers.word(&TYPE));
    let vertical = answers.flag(&VERTICAL);
    let unsure = TemperatureDifference::from_base(UNSURE_K);
    let hours = |time: units::Time| time.base() / 3600.0;
    if speed_factor(&mut Silent, speed, mean_diameter(bore, outside)) > GREASE.high {
        return Ok(outcome.way("grease", false, "it runs too fast for grease: oil it, or fit one sealed for life"));
    }
    let mut outcome = match regrease_interval(r, speed, bore, kind, at, vertical, dirt) {
        Ok(likely) => {
            let when = |at: Temperature| regrease_interval(&mut Silent, speed, bore, kind, at, vertical, dirt).map(hours);
            let range = Range { low: when(at + unsure)?, likely: hours(likely), high: when(at - unsure)? };
            outcome
                .numbers("greased: again after", "running hours", range)
                .says("it doubles or halves with 15 K; after three years in any case")
        }
        Err(FormulaError::TooFastForGrease { .. }) => {
            outcome.way("grease", false, "it runs too fast for grease: oil it, or fit one sealed for life")
        }
        Err(other) => return Err(other.into()),
    };
    outcome = outcome.exact("greased: each time", regrease_mass(r, outside, width));
    let Some(mass) = answers.maybe(&MASS) else { return Ok(outcome) };
    let space = free_space(r, bore, outside, width, mass);
    let fill = first_fill(r, space, speed_factor(&mut Silent, speed, mean_diameter(bore, outside)) > GREASE.low);
    // The handbook fills 30 to 50 % and counts on 40; a quick spindle gets half of each.
    let range = Range { low: fill * 0.75, likely: fill, high: fill * 1.25 };
    Ok(outcome.exact("free space inside", space).range("first fill of grease", range))
}

const GREASES: &[&str] =
    &["lithium-grease", "ep-grease", "moly-grease", "white-grease", "ptfe-grease", "polyurea-grease", "calcium-sulphonate-grease"];
const OILS: &[&str] = &["circulating-oil", "hydraulic-oil", "spindle-oil", "light-machine-oil", "gear-oil", "instrument-oil"];

/// Serve too, and are meant for something else.
const SPECIAL: &[&str] = &["moly-grease", "white-grease", "ptfe-grease", "gear-oil", "instrument-oil", "light-machine-oil"];

fn choices(asked: &Asked<'_>, at: Temperature, nu_1: f64, factor: f64) -> Vec<ChoiceRow> {
    /// The ratio aimed at, and how far from it is as good (by its logarithm); *common practice*.
    const BEST: f64 = 2.4;
    const EASE: f64 = 0.5;
    choose(asked.reference, |fluid| {
        let greased = is_one_of(fluid, GREASES);
        if !greased && !is_one_of(fluid, OILS) {
            return None;
        }
        let kappa = Oil::of(fluid)?.silent(at)? / nu_1;
        let (fits, why) = judge(fluid, kappa, factor, greased);
        // Between one and a half and four all are equally good; of these, what every shop has comes first.
        let off = ((kappa / BEST).ln().abs() - EASE).max(0.0) + if is_one_of(fluid, SPECIAL) { EASE } else { 0.0 };
        Some(Judged { fits, off, why: format!("κ {}: {why}", said(kappa)) })
    })
}

fn judge(fluid: &Fluid, kappa: f64, factor: f64, greased: bool) -> (bool, &'static str) {
    let has = |wanted: Trait| fluid.traits.contains(&wanted);
    match kappa {
        _ if greased && factor > GREASE.high => (false, "too fast for grease"),
        _ if factor > QUICK && has(Trait::Molybdenum) => (false, "solids only wear the cage of a quick bearing"),
        k if k < 0.4 => (false, "too thin: the bodies touch the races"),
        k if k < 1.0 && (has(Trait::Antiwear) || has(Trait::InactiveEp)) => (true, "a mixed film; its antiwear additives help"),
        k if k < 1.0 => (false, "a mixed film, and no antiwear additives in it"),
        k if k > DRAGS => (false, "thicker than it need be: it drags and heats"),
        k if k < 4.0 => (true, "the film carries"),
        _ => (true, "a full film"),
    }
}

fn picture(asked: &Asked<'_>, mut oils: Vec<Oil>, choices: &[ChoiceRow], running: (AngularVelocity, Length, Temperature)) -> Picture {
    const SHOWN: usize = 3;
    let (speed, mean, at) = running;
    if oils.is_empty() {
        let best = choices.iter().filter(|choice| choice.fits).take(SHOWN);
        oils = best.filter_map(|choice| asked.reference.fluid(&choice.key).and_then(Oil::of)).collect();
    }
    let kappa = |oil: &Oil, speed: AngularVelocity| {
        let nu_1 = reference_viscosity(&mut Silent, speed, mean).ok()?;
        Some(oil.silent(at)? / mm2(nu_1))
    };
    let rpm = |turns: f64| AngularVelocity::from_base(turns * std::f64::consts::TAU / 60.0);
    let turns = speed.base() * 60.0 / std::f64::consts::TAU;
    let (low, high) = (turns / 30.0, turns * 10.0);
    let steps = (0..=60).map(|step| low * (high / low).powf(f64::from(step) / 60.0));
    let lines = oils.iter().map(|oil| Line {
        name: oil.name.clone(),
        points: steps.clone().filter_map(|turns| Some((turns, kappa(oil, rpm(turns))?))).collect(),
    });
    Picture {
        title: format!("Viscosity ratio and speed at {}", degrees(at)),
        x: Axis { label: "speed, rev/min".to_owned(), low, high, logarithmic: true },
        y: Axis { label: "viscosity ratio κ".to_owned(), low: 0.1, high: 50.0, logarithmic: true },
        bands: vec![Band { name: "normal, 1 to 4".to_owned(), low: 1.0, high: 4.0 }],
        marks: oils.iter().filter_map(|oil| Some(Mark { name: String::new(), at: (turns, kappa(oil, speed)?) })).collect(),
        lines: lines.collect(),
    }
}
