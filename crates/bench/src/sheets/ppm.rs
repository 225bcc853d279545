//! Parts per million and milligrams in a cubic metre of air.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::vapour::{mass_of_ppm, ppm_of_mass};
use handling::air::whose;
use reference::substance::LimitKind;
use units::{MassDensity, Pressure, Quantity, Temperature};

use super::contents::{outdoors, substance};
use super::{Asked, Outcome, Unanswered};

const SUBSTANCE: Given<&'static str> =
    Given::name("substance", "acetone", "common-practice", "the vapour: a name, a key or a registry number");
const PPM: Given<Option<f64>> = Given::maybe_number("ppm", "parts of it in a million parts of air");
const MASS: Given<Option<MassDensity>> =
    Given::maybe("mass", "in place of `ppm`: how much of it a volume of air holds, such as `600 mg/m3`");
const TEMPERATURE: Given<Temperature> =
    Given::quantity("temperature", "25 °C", "common-practice", "temperature of the air; limits are counted at 25 °C");
const PRESSURE: Given<Pressure> = Given::quantity("pressure", "101.325 kPa", "common-practice", "pressure of the air");

pub(super) static KIND: Kind = Kind {
    name: "ppm",
    about: "parts per million of a vapour as milligrams in a cubic metre, and back, with its limits beside",
    fields: &[SUBSTANCE.field(), PPM.field(), MASS.field(), TEMPERATURE.field(), PRESSURE.field()],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let of = substance(asked, answers.word(&SUBSTANCE))?;
    let Some(known) = &of.molar_mass_g_per_mol else {
        return Err(Unanswered::Contradiction(format!(
            "no molar mass of {} is known here: it does not stand in the air as a gas",
            of.name
        )));
    };
    let (at, pressure) = (answers.quantity(&TEMPERATURE), outdoors(answers.quantity(&PRESSURE))?);
    let outcome = match (answers.maybe_number(&PPM), answers.maybe(&MASS)) {
        (Some(ppm), None) if ppm <= 1e6 => {
            Outcome::default().number(of.name.clone(), "mg/m³", mass_of_ppm(r, ppm, known.value, at, pressure)?)
        }
        (Some(ppm), None) => return Err(Unanswered::Contradiction(format!("`ppm` is {ppm}: a million parts are all of the air"))),
        (None, Some(mass)) => {
            let ppm = ppm_of_mass(r, mass.base() * 1e6, known.value, at, pressure)?;
            if ppm > 1e6 {
                return Err(Unanswered::Contradiction("`mass` is more than a cubic metre holds of it at that pressure".to_owned()));
            }
            Outcome::default().number(of.name.clone(), "ppm", ppm)
        }
        _ => return Err(Unanswered::Contradiction("give `ppm` or `mass`, one of them".to_owned())),
    };
    let kind = |kind: LimitKind| match kind {
        LimitKind::Mean8h => "over 8 h",
        LimitKind::Mean15min => "over 15 min",
        LimitKind::Ceiling => "never above",
    };
    let outcome = of.limits.iter().fold(outcome, |outcome, limit| {
        let text = format!("{} ppm, {} mg/m³ at 25 °C", shown(limit.at.ppm(known.value)), shown(limit.at.mg_per_m3(known.value)));
        outcome.fact(format!("{} {}", whose(Some(limit.regime)), kind(limit.kind)), text)
    });
    let outcome = if of.limits.is_empty() { outcome.fact("limits", "none known here: read its safety data sheet") } else { outcome };
    Ok(outcome.caution("Limits differ between countries: yours is in the product's safety data sheet.", "common-practice"))
}

fn shown(value: f64) -> String {
    units::show_number(value, units::Digits::Significant(3))
}
