//! Two oils mixed: how much of each for a viscosity, or the viscosity of a mixture.
//!
//! Mixing is for oils of one family and nothing but thickness between them. Additives of different families may fall out, and what
//! polymer thickens does not mix as this reckons; the sheet says so where it can see it.

use fields::{Given, Kind};
use formulas::blend::{blend_fraction, blend_of_oils, blend_viscosity};
use formulas::grades::{grade_of, nearest_grade};
use formulas::{Notebook, Silent};
use reference::{Fluid, Trait};
use units::{KinematicViscosity, Quantity, Range, Ratio, Temperature, Volume};

use super::common::{Oil, celsius, choose, degrees, fluid, from_mm2, in_window, mm2};
use super::{Asked, Outcome, Unanswered};

const THIN: Given<Vec<String>> = Given::fluids("thin", "the thinner oil by key, in place of its viscosity");
const THICK: Given<Vec<String>> = Given::fluids("thick", "the thicker oil by key, in place of its viscosity");
const THIN_AT_40: Given<Option<KinematicViscosity>> = Given::maybe("thin_at_40", "viscosity at 40 °C of the thinner oil, such as `VG 32`");
const THICK_AT_40: Given<Option<KinematicViscosity>> =
    Given::maybe("thick_at_40", "viscosity at 40 °C of the thicker oil, such as `VG 220`");
const WANTED: Given<Option<KinematicViscosity>> = Given::maybe("wanted", "viscosity at 40 °C the mixture should have, such as `VG 68`");
const SHARE: Given<Option<Ratio>> = Given::maybe("share", "share of the thicker oil, when you want to know what a mixture has");
const VOLUME: Given<Volume> = Given::quantity("volume", "1 L", "common-practice", "how much to mix");
const TEMPERATURE: Given<Temperature> =
    Given::quantity("temperature", "40 °C", "definition", "temperature at which you want the mixture's viscosity");

pub(super) static KIND: Kind = Kind {
    name: "blend",
    about: "how to mix two oils for a viscosity between them",
    fields: &[
        THIN.field(),
        THICK.field(),
        THIN_AT_40.field(),
        THICK_AT_40.field(),
        WANTED.field(),
        SHARE.field(),
        VOLUME.field(),
        TEMPERATURE.field(),
    ],
};

/// What one grade of ISO 3448 lies to either side.
const BAND: f64 = 0.1;

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let fluids = [fluid(asked, &THIN)?, fluid(asked, &THICK)?];
    let thin = stock(fluids[0], asked.answers.maybe(&THIN_AT_40), "thin")?;
    let thick = stock(fluids[1], asked.answers.maybe(&THICK_AT_40), "thick")?;
    if thin >= thick {
        return Err(Unanswered::Contradiction(
            "the thinner oil is not thinner than the thicker one: exchange them, or mend the wrong viscosity".to_owned(),
        ));
    }
    let volume: Volume = asked.answers.quantity(&VOLUME);
    let (outcome, nu) = match (asked.answers.maybe(&SHARE), asked.answers.maybe(&WANTED)) {
        (Some(share), None) => {
            let nu = blend_viscosity(r, thin, thick, share)?;
            // A stock is sold by its grade, and may lie a tenth to either side of it.
            let spread = |off: f64| blend_viscosity(&mut Silent, thin * off, thick * off, share);
            let range = Range { low: spread(1.0 - BAND)?, likely: nu, high: spread(1.0 + BAND)? };
            (Outcome::default().range("the mixture at 40 °C", range).says(grade_words(nu)), nu)
        }
        (None, Some(wanted)) => {
            let share = blend_fraction(r, thin, thick, wanted)?;
            let [nothing, all] = [0.0, 1.0].map(Ratio::from_base);
            let low = blend_fraction(&mut Silent, thin, thick, wanted * (1.0 - BAND)).unwrap_or(nothing);
            let high = blend_fraction(&mut Silent, thin, thick, wanted * (1.0 + BAND)).unwrap_or(all);
            let outcome = Outcome::default()
                .range("share of the thicker oil", Range { low, likely: share, high })
                .says("anywhere in this range the mixture is within a tenth of what you want")
                .exact("of the thicker oil", volume * share)
                .exact("of the thinner oil", volume * (Ratio::from_base(1.0) - share));
            (outcome, wanted)
        }
        _ => {
            return Err(Unanswered::Contradiction("give either `wanted`, to find the share, or `share`, to find the viscosity".to_owned()));
        }
    };
    let outcome = at_temperature(asked, fluids, outcome, r)?;
    let mixing = match fluids {
        [Some(thin), Some(thick)] => may_mix(thin, thick),
        _ => (
            true,
            "only if both are of one class, from labels that name the same additives, and neither is tacky or a multigrade".to_owned(),
        ),
    };
    let window = (mm2(nu) * (1.0 - BAND), mm2(nu) * (1.0 + BAND));
    let ready = choose(asked.reference, |fluid| {
        let oil = fluid.oil.as_ref().filter(|_| fluid.grease.is_none())?;
        Some(in_window(mm2(oil.viscosity_40), window, "at 40 °C")).filter(|judged| judged.fits)
    });
    Ok(outcome
        .way("mixing these two", mixing.0, mixing.1)
        .choices(ready.into_iter().map(|mut row| {
            row.why = format!("{}, ready made", row.why);
            row
        }))
        .caution(
            "Never mix oils of different additive families, nor multigrade or tacky oils: additives fall out, and polymer does not mix by this rule.",
            "common-practice",
        )
        .caution("Try a jar of the mixture first: shake it, let it stand warm for two days, and use it only if it stays clear.", "common-practice"))
}

fn at_temperature(asked: &Asked<'_>, fluids: [Option<&Fluid>; 2], outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let at: Temperature = asked.answers.quantity(&TEMPERATURE);
    if (celsius(at) - 40.0).abs() < 1e-6 {
        return Ok(outcome);
    }
    let ends = |fluid: Option<&Fluid>| fluid.and_then(Oil::of).map(|oil| [oil.cool, oil.hot]);
    let (Some(thin), Some(thick)) = (ends(fluids[0]), ends(fluids[1])) else {
        return Err(Unanswered::Contradiction(
            "away from 40 °C both oils must be known by key: give `thin` and `thick`, or leave `temperature` out".to_owned(),
        ));
    };
    let share = match (asked.answers.maybe(&SHARE), asked.answers.maybe(&WANTED)) {
        (Some(share), _) => share,
        (None, Some(wanted)) => blend_fraction(&mut Silent, thin[0].nu, thick[0].nu, wanted)?,
        (None, None) => return Ok(outcome),
    };
    let nu = blend_of_oils(r, thin, thick, share, at)?;
    Ok(outcome.exact(format!("the mixture at {}", degrees(at)), nu))
}

/// Viscosity at 40 °C of one of the two, by key or as given.
fn stock(fluid: Option<&Fluid>, given: Option<KinematicViscosity>, word: &str) -> Result<KinematicViscosity, Unanswered> {
    match (fluid, given) {
        (Some(fluid), None) => match fluid.oil.as_ref().filter(|_| fluid.grease.is_none()) {
            Some(oil) => Ok(oil.viscosity_40),
            None => Err(Unanswered::Contradiction(format!("{} is no oil, or its viscosity is not known: give oils", fluid.name))),
        },
        (None, Some(given)) => Ok(given),
        _ => Err(Unanswered::Contradiction(format!("give either `{word}`, an oil by key, or `{word}_at_40`, its viscosity"))),
    }
}

fn grade_words(nu: KinematicViscosity) -> String {
    match grade_of(nu) {
        Some(grade) => format!("ISO VG {grade}"),
        None => format!("between grades; the nearest is ISO VG {}", grade_of(from_mm2(nearest_grade(nu))).unwrap_or_default()),
    }
}

/// Whether two oils may be mixed on purpose.
fn may_mix(thin: &Fluid, thick: &Fluid) -> (bool, String) {
    for fluid in [thin, thick] {
        for (what, word) in [
            (Trait::PolymerThickened, "is thickened by polymer"),
            (Trait::Tackifier, "is tacky"),
            (Trait::Solvent, "is thinned with solvent"),
            (Trait::WaterMix, "holds water"),
        ] {
            if fluid.traits.contains(&what) {
                return (
                    false,
                    format!("{} {word}: such a mixture has neither the viscosity reckoned here nor the virtues of either", fluid.name),
                );
            }
        }
    }
    if thin.classes.first() != thick.classes.first() {
        return (
            false,
            format!("{} and {} have different additives, which may fall out of the mixture or undo each other", thin.name, thick.name),
        );
    }
    (true, "both are of one class; still mix only oils whose labels name the same standard".to_owned())
}
