//! A water-mix sump: what the refractometer means, what to top up with, how fast it dries, and what the water does to it.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::sump::{
    Hardness, MixCare, concentrate_for, concentration_from_reading, evaporation, germ_care, hardness, hardness_after, ph_care,
    steady_top_up, top_up,
};
use units::{Area, MassDensity, Quantity, Range, Ratio, Temperature, Time, Velocity, Volume, VolumeRate};

use super::common::{Judged, choose, is_one_of, said};
use super::{Asked, Outcome, Unanswered};

const WORK: Given<&'static str> = Given::choice(
    "work",
    &["turning", "tapping", "grinding"],
    "turning",
    "common-practice",
    "what it is for: turning and milling, tapping and stainless, or grinding",
);
const READING: Given<f64> = Given::number("reading", "5", "common-practice", "what the refractometer shows, °Brix");
const FACTOR: Given<Option<f64>> = Given::maybe_number("factor", "refractometer factor from the label");
const WANTED: Given<Option<Ratio>> = Given::maybe("wanted", "concentration you want, if not the usual one for the work");
const FULL: Given<Volume> = Given::quantity("full", "10 L", "common-practice", "what the sump holds when full");
const LEFT: Given<Volume> = Given::quantity("level", "8 L", "common-practice", "what is in it now");
const SURFACE: Given<Area> = Given::quantity("surface", "0.2 m2", "common-practice", "wet surface open to the air: sump, tray and work");
const WATER: Given<Temperature> = Given::quantity("temperature", "20 °C", "common-practice", "temperature of the mix");
const AIR: Given<Temperature> = Given::quantity("room", "20 °C", "common-practice", "temperature of the room");
const HUMIDITY: Given<Ratio> = Given::quantity("humidity", "50 %", "common-practice", "relative humidity of the room");
const DRAUGHT: Given<Velocity> = Given::quantity("draught", "0.1 m/s", "common-practice", "draught over the surface");
const CARRIED: Given<VolumeRate> = Given::quantity("carried_off", "200 mL/day", "common-practice", "mix carried off on chips and work");
const HARDNESS: Given<Option<MassDensity>> = Given::maybe("hardness", "hardness of the water as calcium carbonate, such as `0.15 g/L`");
const AGE: Given<Time> = Given::quantity("age", "1 month", "common-practice", "how long the mix has been in use");
const PH: Given<Option<f64>> = Given::maybe_number("ph", "pH of the mix, by a test strip");
const GERMS: Given<Option<f64>> = Given::maybe_number("germs", "colonies in a millilitre, by a dip slide");

pub(super) static KIND: Kind = Kind {
    name: "coolant",
    about: "a water mix: its strength, what to top up with, how fast it dries, and when to throw it out",
    fields: &[
        WORK.field(),
        READING.field(),
        FACTOR.field(),
        WANTED.field(),
        FULL.field(),
        LEFT.field(),
        SURFACE.field(),
        WATER.field(),
        AIR.field(),
        HUMIDITY.field(),
        DRAUGHT.field(),
        CARRIED.field(),
        HARDNESS.field(),
        AGE.field(),
        PH.field(),
        GERMS.field(),
    ],
};

const DAY_S: f64 = 86_400.0;

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let usual = usual(answers.word(&WORK));
    let wanted = answers.maybe(&WANTED).unwrap_or(usual.likely);
    if !(0.0..=1.0).contains(&wanted.base()) || wanted.base() <= 0.0 {
        return Err(Unanswered::Contradiction("`wanted` is a share above nothing and up to 100 %: most mixes have 3 to 10 %".to_owned()));
    }
    let measured = concentration_from_reading(r, answers.number(&READING), answers.maybe_number(&FACTOR))?;
    let (full, level): (Volume, Volume) = (answers.quantity(&FULL), answers.quantity(&LEFT));
    if level >= full {
        return Err(Unanswered::Contradiction(
            "the sump is full: `level` must be less than `full`, or there is nothing to top up".to_owned(),
        ));
    }
    let topped = top_up(r, wanted, measured, full, level)?;
    let dried = evaporation(
        r,
        answers.quantity(&SURFACE),
        answers.quantity(&WATER),
        answers.quantity(&AIR),
        answers.quantity(&HUMIDITY),
        answers.quantity(&DRAUGHT),
    )?;
    let steady = steady_top_up(r, wanted, answers.quantity(&CARRIED), dried)?;
    let new = concentrate_for(r, full, wanted)?;
    let outcome = Outcome::default()
        .exact("concentration now", measured)
        .says(strength(measured, usual))
        .range("usual for this work", usual)
        .exact("top up with", topped.add)
        .exact("mixed at", topped.mix)
        .says("never bare water")
        .exact("then it has", topped.result)
        .number("water that dries off", "L/day", dried.base() * 1000.0 * DAY_S)
        .exact("day by day, top up with a mix of", steady)
        .exact("a new filling takes concentrate", new)
        .says("pour the concentrate into the water, never the water into the concentrate");
    let outcome = water(asked, dried, full, outcome, r)?;
    let outcome = health(asked, outcome)?;
    let choices = choose(asked.reference, |fluid| {
        if !is_one_of(fluid, &["emulsion", "semi-synthetic"]) {
            return None;
        }
        let share = fluid.dilution.as_ref()?.value;
        let fits = (share.low..=share.high).contains(&wanted.base());
        let percent = |share: f64| said(share * 100.0);
        Some(Judged {
            fits,
            off: (wanted.base() / share.likely).ln().abs(),
            why: format!("used at {} to {} %, most often {} %", percent(share.low), percent(share.high), percent(share.likely)),
        })
    });
    Ok(outcome
        .choices(choices)
        .caution("Used less than an hour a week, a sump goes off: mix half a litre in a bottle instead.", "common-practice")
        .caution("Never on magnesium: its chips burn, and water feeds the fire.", "common-practice")
        .caution("Do not breathe its mist, and wash it off your skin; a rancid mix makes lungs and hands ill.", "niosh-98-102"))
}

/// Concentrations the trade uses; *common practice*.
fn usual(work: &str) -> Range<Ratio> {
    let [low, likely, high] = match work {
        "tapping" => [0.08, 0.09, 0.10],
        "grinding" => [0.03, 0.04, 0.05],
        _ => [0.05, 0.065, 0.08],
    };
    Range { low, likely, high }.map(Ratio::from_base)
}

fn strength(measured: Ratio, usual: Range<Ratio>) -> &'static str {
    if measured < usual.low {
        "weak: it rusts the work and goes off"
    } else if measured > usual.high {
        "strong: it foams, sticks and irritates the skin"
    } else {
        "as it should be"
    }
}

fn water(asked: &Asked<'_>, dried: VolumeRate, full: Volume, outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let Some(tap) = asked.answers.maybe(&HARDNESS) else { return Ok(outcome) };
    let gone: Volume = dried * asked.answers.quantity(&AGE);
    let now = hardness_after(r, tap, gone, full)?;
    let milligrams = |hard: MassDensity| hard.base() * 1000.0;
    let say = |hard: MassDensity| match hardness(hard) {
        Hardness::Foams => "so soft that a mix foams",
        Hardness::Soft => "soft; it may foam a little",
        Hardness::Good => "just right",
        Hardness::Hard => "hard; salts build up",
        Hardness::Scums => "so hard that a mix throws scum and splits",
    };
    Ok(outcome
        .number("hardness of the water", "mg/L", milligrams(tap))
        .says(say(tap))
        .number("hardness of the sump after that time", "mg/L", milligrams(now))
        .says(format!("{}; top up with rain or distilled water where it climbs", say(now))))
}

fn health(asked: &Asked<'_>, mut outcome: Outcome) -> Result<Outcome, Unanswered> {
    let say = |care: MixCare| match care {
        MixCare::Good => (true, "as it should be"),
        MixCare::Act => (false, "skim it, stir air into it, mend its strength, and look again in a few days"),
        MixCare::Dump => (false, "throw it out by the collection point, clean the sump, start again"),
    };
    if let Some(ph) = asked.answers.maybe_number(&PH) {
        if !(0.0..=14.0).contains(&ph) {
            return Err(Unanswered::Contradiction(format!("`ph` is {}: it lies between 0 and 14", said(ph))));
        }
        let (fits, words) = say(ph_care(ph));
        outcome = outcome.way(format!("keeping a mix of pH {}", said(ph)), fits, words);
    }
    if let Some(germs) = asked.answers.maybe_number(&GERMS) {
        if germs < 0.0 {
            return Err(Unanswered::Contradiction("`germs` cannot be less than nothing".to_owned()));
        }
        let (fits, words) = say(germ_care(germs));
        outcome = outcome.way(format!("keeping a mix with {} colonies in a millilitre", said(germs)), fits, words);
    }
    Ok(outcome)
}
