//! A plain bearing: the film a journal rides on, the heat it makes, and the bush's own limits where there is no film.

#![expect(non_snake_case, reason = "S is the Sommerfeld number")]

use fields::{Given, Kind};
use formulas::plain_bearing::{
    Cooling, FilmRegime, Journal, Oil as BalancedOil, chart_friction, drops_per_minute, film_flow, film_regime, film_wanted, friction_loss,
    heat_balance, minimum_film, petroff_friction, pressure_velocity, sommerfeld, viscosity_for_film,
};
use formulas::{Notebook, Recorder, Silent};
use reference::{BearingMaterial, Fluid, Trait};
use units::{AngularVelocity, Area, DynamicViscosity, Force, Length, Quantity, Temperature};

use super::common::{AT_40, AT_100, FLUID, INDEX, Judged, Oil, celsius, choose, degrees, film, is_one_of, oils_if_any, said};
use super::{Asked, Outcome, Unanswered};
use crate::page::ChoiceRow;
use crate::picture::{Axis, Band, Line, Mark, Picture};

const MATERIALS: &[&str] =
    &["leaded-tin-bronze", "manganese-bronze", "aluminium-bronze", "oil-porous-bronze", "tin-babbitt", "cast-iron", "nylon"];

const DIAMETER: Given<Length> = Given::quantity("diameter", "25 mm", "common-practice", "diameter of the journal");
const LENGTH: Given<Length> = Given::quantity("length", "25 mm", "common-practice", "length of the bearing");
const LOAD: Given<Force> = Given::quantity("load", "500 N", "common-practice", "load across the shaft");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "600 rpm", "common-practice", "speed it usually runs at");
const CLEARANCE: Given<Length> =
    Given::quantity("clearance", "0.03 mm", "common-practice", "clearance on the diameter, about a thousandth of it");
const MATERIAL: Given<&'static str> =
    Given::choice("material", MATERIALS, "leaded-tin-bronze", "common-practice", "what the bearing is made of");
const JOURNAL: Given<Length> = Given::quantity("journal_roughness", "0.4 um", "common-practice", "mean roughness Ra of the journal");
const BORE: Given<Length> = Given::quantity("bore_roughness", "0.8 um", "common-practice", "mean roughness Ra of the bearing");
const ROOM: Given<Temperature> = Given::quantity("room", "20 °C", "common-practice", "temperature of the room, and of oil that is fed");
const COOLING: Given<&'static str> = Given::choice(
    "cooling",
    &["housing", "oil"],
    "housing",
    "common-practice",
    "what carries the heat off: the housing (ring, pad, bath), or fresh oil fed as fast as the film draws it",
);
const SURFACE: Given<Area> = Given::quantity("surface", "0.03 m2", "common-practice", "surface of the housing that gives off heat");
const FILM: Given<Option<Temperature>> = Given::maybe("temperature", "temperature of the film, if you have measured it");
const ETA: Given<Option<DynamicViscosity>> = Given::maybe("eta", "dynamic viscosity in the film, in place of an oil");

pub(super) static KIND: Kind = Kind {
    name: "bushing",
    about: "how a plain bearing runs on an oil: film, heat, drops, or rubbing",
    fields: &[
        DIAMETER.field(),
        LENGTH.field(),
        LOAD.field(),
        SPEED.field(),
        CLEARANCE.field(),
        MATERIAL.field(),
        JOURNAL.field(),
        BORE.field(),
        ROOM.field(),
        COOLING.field(),
        SURFACE.field(),
        FILM.field(),
        ETA.field(),
        FLUID.field(),
        AT_40.field(),
        AT_100.field(),
        INDEX.field(),
    ],
};

/// A film at a place and temperature.
struct State {
    name: String,
    film: Option<Temperature>,
    eta: DynamicViscosity,
}

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let journal = journal(asked)?;
    let material = asked
        .reference
        .bearing_material(asked.answers.word(&MATERIAL))
        .ok_or_else(|| Unanswered::Contradiction("nothing is known of this bearing material".to_owned()))?;
    let pv = pressure_velocity(r, journal.load, journal.diameter, journal.length, journal.speed)?;
    let pressure: units::Pressure = journal.load / (journal.diameter * journal.length);
    let wanted = film_wanted(r, &journal);
    let mut outcome = Outcome::default()
        .exact("mean pressure", pressure)
        .number("pressure times velocity", "MPa·m/s", pv)
        .says(pv_words(pv, material))
        .exact("film wanted at twice the load", wanted);
    if let Ok(eta) = viscosity_for_film(r, &journal) {
        outcome = outcome.exact("dynamic viscosity that gives it", eta);
    } else {
        outcome = outcome.way("a full film at twice the load", false, "so close a clearance has no room for it, whatever the oil");
    }
    let choices = choices(asked, &journal);
    let states = states(asked, &journal, &choices, r)?;
    for state in &states {
        outcome = one(&journal, state, outcome, r)?;
    }
    let rubs = states.iter().all(|state| film_regime(&mut Silent, &journal, state.eta) == Ok(FilmRegime::Boundary));
    let picture = picture(&journal, &states, wanted);
    Ok(outcome
        .choices(choices)
        .choices(if rubs { materials(asked, pv) } else { Vec::new() })
        .picture(picture)
        .caution("No grease into an oil hole or cup: it blocks the way for good.", "common-practice")
        .caution_if(
            material.key == "oil-porous-bronze",
            "An oil-filled bush takes neither grease nor solids: both close its pores.",
            "common-practice",
        )
        .caution_if(
            rubs,
            "Without a film, wear decides: two or three drops before each use, and again when it runs warm.",
            "common-practice",
        ))
}

fn journal(asked: &Asked<'_>) -> Result<Journal, Unanswered> {
    /// Looser than this share of its diameter no bearing is made.
    const LOOSEST: f64 = 0.02;
    const ROUGHEST: f64 = 25e-6;
    let answers = asked.answers;
    let journal = Journal {
        diameter: answers.quantity(&DIAMETER),
        length: answers.quantity(&LENGTH),
        load: answers.quantity(&LOAD),
        speed: answers.quantity(&SPEED),
        clearance: answers.quantity(&CLEARANCE),
        journal_roughness: answers.quantity(&JOURNAL),
        bearing_roughness: answers.quantity(&BORE),
    };
    if journal.clearance > journal.diameter * LOOSEST {
        return Err(Unanswered::Contradiction(
            "the clearance is more than a fiftieth of the diameter: give the clearance on the diameter, most are near a thousandth of it"
                .to_owned(),
        ));
    }
    let rough = Length::from_base(ROUGHEST);
    if journal.journal_roughness > rough || journal.bearing_roughness > rough {
        return Err(Unanswered::Contradiction("a roughness above 25 µm is a sawn face: a ground journal has 0.4 µm".to_owned()));
    }
    Ok(journal)
}

fn pv_words(pv: f64, material: &BearingMaterial) -> String {
    let half = material.pv_mpa_m_per_s / 2.0;
    let holds = if pv <= half {
        "it would bear even without a film"
    } else {
        "too much without a film: less load, less speed, or oil fed steadily"
    };
    format!("{} bears {} MPa·m/s, half of what it is rated; {holds}", material.name, said(half))
}

/// The states to work out: the viscosity given, the oils named, or the best oil there is.
fn states(asked: &Asked<'_>, journal: &Journal, choices: &[ChoiceRow], r: &mut Notebook) -> Result<Vec<State>, Unanswered> {
    let oils = oils_if_any(asked, r)?;
    if let Some(eta) = asked.answers.maybe(&ETA) {
        if !oils.is_empty() {
            return Err(Unanswered::Contradiction("give `eta` or an oil, not both".to_owned()));
        }
        return Ok(vec![State { name: "this oil".to_owned(), film: None, eta }]);
    }
    let best = || choices.first().and_then(|choice| asked.reference.fluid(&choice.key)).and_then(Oil::of);
    let oils = if oils.is_empty() { best().into_iter().collect() } else { oils };
    oils.iter().map(|oil| state(asked, journal, oil, r)).collect()
}

fn state<R: Recorder>(asked: &Asked<'_>, journal: &Journal, oil: &Oil, r: &mut R) -> Result<State, Unanswered> {
    /// Heat a housing gives off where the shaft stirs the air, and the drop from oil to housing with a bath or ring; *from memory*.
    const STIRRED: f64 = 15.0;
    const BATH: f64 = 1.0;
    if let Some(film) = asked.answers.maybe(&FILM) {
        return Ok(State { name: oil.name.clone(), film: Some(film), eta: oil.dynamic(r, film)? });
    }
    let room = asked.answers.quantity(&ROOM);
    let cooling = match asked.answers.word(&COOLING) {
        "oil" => Cooling::ByOil { inlet: room },
        _ => Cooling::ByHousing { area: asked.answers.quantity(&SURFACE), coefficient: STIRRED, oil_to_housing: BATH, room },
    };
    let balanced = BalancedOil { cool: oil.cool, hot: oil.hot, density_15: oil.density };
    let balance = heat_balance(r, journal, &balanced, &cooling)?;
    Ok(State { name: oil.name.clone(), film: Some(balance.film), eta: balance.viscosity })
}

fn one(journal: &Journal, state: &State, mut outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let name = &state.name;
    if let Some(film) = state.film {
        outcome = outcome.exact(format!("{name}: temperature of the film"), film);
    }
    let S = sommerfeld(r, journal, state.eta)?;
    let thinnest = minimum_film(r, journal, state.eta)?;
    let regime = film_regime(r, journal, state.eta)?;
    let friction = chart_friction(r, journal, state.eta)?;
    let (torque, heat) = friction_loss(r, journal, friction);
    let light = petroff_friction(r, journal, state.eta)?;
    let flow = film_flow(r, journal, state.eta)?;
    outcome = outcome
        .exact(format!("{name}: viscosity in the film"), state.eta)
        .number(format!("{name}: Sommerfeld number"), "", S)
        .exact(format!("{name}: thinnest film"), thinnest)
        .says(regime_words(regime));
    if regime == FilmRegime::Boundary {
        return Ok(outcome);
    }
    Ok(outcome
        .number(format!("{name}: coefficient of friction"), "", friction)
        .says(format!("{} if it ran without load, by Petroff", said(light)))
        .exact(format!("{name}: torque of friction"), torque)
        .exact(format!("{name}: heat"), heat)
        .numbers(format!("{name}: oil it loses at its ends"), "drops/min", drops_per_minute(r, flow.sideways))
        .says("fed with less it runs on a thinner film; a ring or a bath brings it back"))
}

fn regime_words(regime: FilmRegime) -> &'static str {
    match regime {
        FilmRegime::Full => "full film, even at twice the load",
        FilmRegime::Mixed => "mixed: it runs on the film, but not safely; use an oil with antiwear additives",
        FilmRegime::Boundary => "boundary: the roughness reaches through, and it runs as a rubbing bush",
    }
}

const OILS: &[&str] =
    &["circulating-oil", "hydraulic-oil", "spindle-oil", "light-machine-oil", "slideway-oil", "motion-oil", "gear-oil", "compressor-oil"];

fn choices(asked: &Asked<'_>, journal: &Journal) -> Vec<ChoiceRow> {
    /// From this speed on tack and EP additives drag and foam; *common practice*.
    const QUICK_M_PER_S: f64 = 2.0;
    /// Warmer than this a bearing is ill at ease; *common practice*.
    const WARM_C: f64 = 70.0;
    let speed = journal.speed.base() * journal.diameter.base() / 2.0;
    choose(asked.reference, |fluid| {
        if !is_one_of(fluid, OILS) {
            return None;
        }
        let Ok(state) = state(asked, journal, &Oil::of(fluid)?, &mut Silent) else {
            return Some(Judged { fits: false, off: f64::MAX, why: "it finds no steady temperature: it would overheat".to_owned() });
        };
        let regime = film_regime(&mut Silent, journal, state.eta).ok()?;
        let thinnest = minimum_film(&mut Silent, journal, state.eta).ok()?;
        let at = state.film.map_or_else(String::new, |film| format!(" at {}", degrees(film)));
        let warm = state.film.is_some_and(|film| celsius(film) > WARM_C);
        let why = format!("thinnest film {}{at}", film(thinnest));
        // Of two that carry, the thinner oil runs cooler; of two that do not, the thicker film wears less.
        let off = match regime {
            FilmRegime::Full => state.eta.base(),
            FilmRegime::Mixed => 10.0 - thinnest.base(),
            FilmRegime::Boundary => 20.0 - thinnest.base(),
        };
        if speed > QUICK_M_PER_S && is_tacky(fluid) {
            return Some(Judged { fits: false, off, why: format!("{why}, but tack drags and heats so fast a journal") });
        }
        let (fits, say) = match regime {
            FilmRegime::Full if warm => (false, "a full film, but hot: a thinner oil runs cooler"),
            FilmRegime::Full => (true, "a full film"),
            FilmRegime::Mixed if has_antiwear(fluid) => (true, "mixed, with antiwear additives"),
            FilmRegime::Mixed => (false, "mixed, and no antiwear additives in it"),
            FilmRegime::Boundary => (false, "it rubs"),
        };
        Some(Judged { fits, off, why: format!("{say}; {why}") })
    })
}

fn is_tacky(fluid: &Fluid) -> bool {
    fluid.traits.contains(&Trait::Tackifier)
}

fn has_antiwear(fluid: &Fluid) -> bool {
    [Trait::Antiwear, Trait::InactiveEp, Trait::Fatty].iter().any(|wanted| fluid.traits.contains(wanted))
}

/// Bush materials that bear a pressure times velocity without a film, the plainest first.
fn materials(asked: &Asked<'_>, pv: f64) -> Vec<ChoiceRow> {
    let mut known: Vec<&BearingMaterial> = asked.reference.bearing_materials.values().collect();
    known.sort_by(|a, b| a.pv_mpa_m_per_s.total_cmp(&b.pv_mpa_m_per_s));
    let row = |material: &BearingMaterial| ChoiceRow {
        key: material.key.clone(),
        name: format!("a bush of {}", material.name),
        fits: material.pv_mpa_m_per_s / 2.0 >= pv,
        why: format!("rated {} MPa·m/s, of which half is used", said(material.pv_mpa_m_per_s)),
    };
    known.into_iter().map(row).collect()
}

fn picture(journal: &Journal, states: &[State], wanted: Length) -> Picture {
    let turns = journal.speed.base() * 60.0 / std::f64::consts::TAU;
    let (low, high) = (turns / 30.0, turns * 10.0);
    let micrometres = |film: Length| film.base() * 1e6;
    let thinnest = |eta: DynamicViscosity, turns: f64| {
        let speed = AngularVelocity::from_base(turns * std::f64::consts::TAU / 60.0);
        minimum_film(&mut Silent, &Journal { speed, ..*journal }, eta).ok().map(micrometres)
    };
    let steps = (0..=60).map(|step| low * (high / low).powf(f64::from(step) / 60.0));
    let lines = states.iter().map(|state| Line {
        name: state.name.clone(),
        points: steps.clone().filter_map(|turns| Some((turns, thinnest(state.eta, turns)?))).collect(),
    });
    let most = micrometres(journal.clearance) / 2.0;
    Picture {
        title: "Thinnest film and speed, at the film's temperature".to_owned(),
        x: Axis { label: "speed, rev/min".to_owned(), low, high, logarithmic: true },
        y: Axis { label: "thinnest film, µm".to_owned(), low: most / 100.0, high: most, logarithmic: true },
        bands: vec![Band { name: "film wanted at twice the load".to_owned(), low: micrometres(wanted), high: most }],
        marks: states.iter().filter_map(|state| Some(Mark { name: String::new(), at: (turns, thinnest(state.eta, turns)?) })).collect(),
        lines: lines.collect(),
    }
}
