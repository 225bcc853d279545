//! Grades: what a label says in the words of another label, and which fluids have it.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::grades::{Family, HotGrade, SAE_ENGINE, SAE_GEAR, grade_of, nearest_grade, read_label, viscosity_40_of_label};
use formulas::saybolt::{saybolt_universal, viscosity_from_universal};
use formulas::viscosity::Measured;
use formulas::viscosity_index::{viscosity_40_by_index, viscosity_100_from_index};
use reference::{Fluid, Form};
use units::{KinematicViscosity, Quantity, Range, Temperature, Time};

use super::common::{celsius, choose, degrees, from_celsius, from_mm2, in_window, mm2, said};
use super::{Asked, Outcome, Unanswered};

const VISCOSITY: Given<Option<KinematicViscosity>> = Given::maybe("viscosity", "viscosity, or a grade such as `VG 68`");
const SAYBOLT: Given<Option<Time>> = Given::maybe("saybolt", "Saybolt Universal seconds, as old American labels give it, such as `150 s`");
const TEMPERATURE: Given<Temperature> =
    Given::quantity("temperature", "40 °C", "iso-3448", "temperature of that viscosity, on labels 40 or 100 °C (100 or 210 °F)");
const ENGINE: Given<&'static str> = Given::choice(
    "engine",
    &["none", "20", "30", "40", "50", "60", "5W-30", "10W-30", "10W-40", "15W-40", "20W-50"],
    "none",
    "sae-j300",
    "SAE grade of an engine oil",
);
const GEAR: Given<&'static str> = Given::choice(
    "gear",
    &[
        "none", "75", "80", "85", "90", "110", "140", "190", "250", "75W", "80W", "85W", "75W-80", "75W-85", "75W-90", "80W-90", "85W-90",
        "85W-140",
    ],
    "none",
    "sae-j306",
    "SAE grade of a gear oil",
);
const YEAR: Given<f64> = Given::number("year", "2024", "common-practice", "year of the label: grades were redrawn in 2005, 2013 and 2019");
const INDEX: Given<Option<f64>> = Given::maybe_number("index", "viscosity index; without it 95, and 150 for a multigrade");

pub(super) static KIND: Kind = Kind {
    name: "grades",
    about: "what a grade means in other grades: ISO VG, SAE, Saybolt seconds",
    fields: &[VISCOSITY.field(), SAYBOLT.field(), TEMPERATURE.field(), ENGINE.field(), GEAR.field(), YEAR.field(), INDEX.field()],
};

/// Index to count on where nobody gives one; *common practice*.
const USUAL_INDEX: f64 = 95.0;
/// What one grade of ISO 3448 lies to either side.
const BAND: f64 = 0.1;

/// Viscosity at 40 °C, thinnest and thickest, and the index it came by.
struct Found {
    low: KinematicViscosity,
    high: Option<KinematicViscosity>,
    index: f64,
}

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    const ASKED: [&str; 4] = ["viscosity", "saybolt", "engine", "gear"];
    if ASKED.iter().filter(|name| asked.answers.written_at(name).is_some()).count() != 1 {
        return Err(Unanswered::Contradiction("give one of `viscosity`, `saybolt`, `engine` and `gear`, and one only".to_owned()));
    }
    let year = asked.answers.number(&YEAR);
    if !(1911.0..=2100.0).contains(&year) {
        return Err(Unanswered::Contradiction(format!("`year` is {}: give the year on the label, such as 2024", said(year))));
    }
    let (mut outcome, found) = match (asked.answers.word(&ENGINE), asked.answers.word(&GEAR)) {
        ("none", "none") => measured(asked, r)?,
        (engine, "none") => label(asked, Family::Engine, engine, year, r)?,
        (_, gear) => label(asked, Family::Gear, gear, year, r)?,
    };
    /// An open grade is followed this far up, lest every thick oil be named.
    const OPEN: f64 = 2.2;
    let middle = found.high.map_or(found.low, |high| from_mm2((mm2(found.low) * mm2(high)).sqrt()));
    outcome = outcome
        .range("at 40 °C", Range { low: found.low, likely: middle, high: found.high.unwrap_or(middle) })
        .says(iso(found.low, found.high));
    if found.high.is_some_and(|high| high > found.low) {
        // A label is a band already; the cold half of the answer would only repeat it.
        outcome = outcome.says(format!("{}, reckoned with an index of {}", iso(found.low, found.high), said(found.index)));
    } else if found.high.is_some()
        && let Ok(hot) = viscosity_100_from_index(r, middle, found.index)
    {
        outcome = outcome.exact("at 100 °C", hot).says(format!("{}, with an index of {}", sae(mm2(hot)), said(found.index)));
    }
    let mut seconds = |nu| saybolt_universal(r, nu, from_celsius(40.0)).map(Quantity::base);
    if let (Ok(likely), Ok(low), Ok(high)) = (seconds(middle), seconds(found.low), seconds(found.high.unwrap_or(middle))) {
        outcome = outcome.numbers("Saybolt Universal at 40 °C (104 °F)", "s", Range { low, likely, high });
    }
    let top = found.high.map_or(mm2(found.low) * OPEN, mm2);
    let window = (mm2(found.low) * (1.0 - BAND), top * (1.0 + BAND));
    let choices = choose(asked.reference, |fluid| {
        let oil = fluid.oil.as_ref().filter(|_| fluid.form == Form::Oil && !is_for_cutting(fluid))?;
        let mut judged = in_window(mm2(oil.viscosity_40), window, "at 40 °C");
        judged.off = (mm2(oil.viscosity_40) / mm2(middle)).ln().abs();
        Some(judged).filter(|judged| judged.fits)
    });
    Ok(outcome
        .choices(choices)
        .caution("A grade is thickness and nothing else: additives decide whether an oil may stand in for another.", "iso-3448")
        .caution_if(
            asked.answers.word(&GEAR) != "none",
            "An SAE gear 80 is about as thick as an SAE engine 20 to 30; the GL number of a gear oil says nothing about its thickness.",
            "sae-j306",
        ))
}

/// A viscosity or Saybolt seconds at a temperature.
fn measured(asked: &Asked<'_>, r: &mut Notebook) -> Result<(Outcome, Found), Unanswered> {
    let at: Temperature = asked.answers.quantity(&TEMPERATURE);
    let index = asked.answers.maybe_number(&INDEX).unwrap_or(USUAL_INDEX);
    let nu = match asked.answers.maybe(&SAYBOLT) {
        Some(seconds) => viscosity_from_universal(r, seconds, at)?,
        None => asked.answers.maybe(&VISCOSITY).ok_or_else(|| Unanswered::Contradiction("give `viscosity`".to_owned()))?,
    };
    let mut outcome = Outcome::default();
    if (celsius(at) - 40.0).abs() <= 1e-6 {
        return Ok((outcome, Found { low: nu, high: Some(nu), index }));
    }
    outcome = outcome.exact(format!("viscosity at {}", degrees(at)), nu).caution_if(
        (nearest_grade(nu) / mm2(nu) - 1.0).abs() < 1e-9,
        "A VG grade is a viscosity at 40 °C, whatever else was asked; this one was taken as measured at the temperature given.",
        "iso-3448",
    );
    let at_40 = viscosity_40_by_index(r, Measured { at, nu }, index)?;
    Ok((outcome, Found { low: at_40, high: Some(at_40), index }))
}

fn label(asked: &Asked<'_>, family: Family, word: &str, year: f64, r: &mut Notebook) -> Result<(Outcome, Found), Unanswered> {
    let year_told = format!("{year:.0}").parse().unwrap_or(2024);
    let Some(label) = read_label(family, word, year_told) else {
        return Err(Unanswered::Contradiction(format!("no SAE {word} was sold in {year_told}: give the year the label was printed")));
    };
    let index = asked.answers.maybe_number(&INDEX).unwrap_or_else(|| label.usual_index());
    let HotGrade { low, high, .. } = label.grade;
    let at_40 = viscosity_40_of_label(r, label, index)?;
    let top = high.unwrap_or(low);
    let range = Range { low, likely: (low * top).sqrt(), high: top }.map(from_mm2);
    let mut outcome = Outcome::default().range("at 100 °C", range);
    if high.is_none() {
        outcome = outcome.says("this grade has a lower limit only");
    }
    Ok((outcome, Found { low: at_40.low, high: at_40.high, index }))
}

/// The ISO grades between two viscosities.
fn iso(low: KinematicViscosity, high: Option<KinematicViscosity>) -> String {
    let name = |nu: KinematicViscosity| grade_of(from_mm2(nearest_grade(nu))).unwrap_or_default();
    match high {
        None => format!("ISO VG {} or thicker", name(low)),
        Some(high) if name(low) == name(high) && grade_of(low).is_none() => format!("between grades; the nearest is ISO VG {}", name(low)),
        Some(high) if name(low) == name(high) => format!("ISO VG {}", name(low)),
        Some(high) => format!("ISO VG {} to {}", name(low), name(high)),
    }
}

/// The SAE grades that hold a viscosity at 100 °C.
fn sae(hot: f64) -> String {
    let holds = |grade: &&HotGrade| grade.high.is_some_and(|high| (grade.low..high).contains(&hot));
    let names: Vec<String> = [("engine", &SAE_ENGINE[..]), ("gear", &SAE_GEAR[..])]
        .iter()
        .filter_map(|(family, grades)| Some(format!("SAE {family} {}", grades.iter().find(holds)?.name)))
        .collect();
    if names.is_empty() { "no SAE grade".to_owned() } else { names.join(", ") }
}

/// Whether it is made for cutting and not for lubricating.
fn is_for_cutting(fluid: &Fluid) -> bool {
    fluid.classes.iter().any(|class| class.ends_with("cutting-oil") || class.ends_with("cutting-fluid") || class == "emulsion")
}
