//! Thinning a concentrate, dissolving a salt, thinning sulfuric acid, dissolving caustic soda: how much of each, and how warm it gets.

use fields::{Given, Kind};
use formulas::solution::{Mixing, caustic_rise, caustic_solution, dilution, mass_share, parts_share, sulfuric_dilution};
use formulas::sump::concentrate_for;
use formulas::{Notebook, Silent};
use reference::{Fluid, Form};
use units::{Mass, MassDensity, Quantity, Range, Ratio, Temperature, TemperatureDifference, Volume};

use super::common::{FLUID, choice, fluid, is_one_of};
use super::{Asked, Outcome, Unanswered};

const WHAT: Given<&'static str> = Given::choice(
    "what",
    &["concentrate", "salt", "sulfuric", "caustic"],
    "concentrate",
    "common-practice",
    "a liquid concentrate by volume, a dry salt by mass, sulfuric acid, or solid caustic soda",
);
const VOLUME: Given<Volume> = Given::quantity("volume", "1 L", "common-practice", "mix wanted, of a concentrate or of sulfuric acid");
const MASS: Given<Mass> = Given::quantity("mass", "1 kg", "common-practice", "solution wanted, of a salt or of caustic soda");
const SHARE: Given<Option<Ratio>> =
    Given::maybe("share", "strength wanted: by volume of a concentrate, by mass of the others; what is usual if you name a fluid");
const PARTS: Given<Option<f64>> = Given::maybe_number("parts", "the ratio on the label, one part to so many, in place of `share`");
const FROM: Given<Ratio> = Given::quantity("from", "37 %", "common-practice", "strength by mass of the sulfuric acid you have");
const WATER: Given<Temperature> = Given::quantity("water", "15 °C", "common-practice", "temperature of the water and what goes into it");

pub(super) static KIND: Kind = Kind {
    name: "dilute",
    about: "thinning a concentrate, a salt or an acid: how much of each, in what order, how warm it gets",
    fields: &[WHAT.field(), FLUID.field(), VOLUME.field(), MASS.field(), SHARE.field(), PARTS.field(), FROM.field(), WATER.field()],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let what = asked.answers.word(&WHAT);
    if what != "concentrate" && asked.answers.maybe_number(&PARTS).is_some() {
        return Err(Unanswered::Contradiction("`parts` is for concentrates by volume: give `share` by mass instead".to_owned()));
    }
    if let Some(fluid) = fluid(asked, &FLUID)? {
        suits(fluid, what)?;
    }
    let outcome = match what {
        "salt" => salt(asked, r)?,
        "sulfuric" => sulfuric(asked, r)?,
        "caustic" => caustic(asked, r)?,
        _ => concentrate(asked, r)?,
    };
    Ok(outcome
        .caution("Goggles and gloves. Water first, then what goes into it; never water onto acid or caustic.", "common-practice")
        .caution("Mix nothing with bleach: with acid it makes chlorine, with ammonia chloramines.", "common-practice")
        .caution("Label what you mixed: what, how strong, when. Never in a bottle for drinks.", "un-ghs"))
}

/// The strength wanted: as said, or as is usual for the fluid.
fn wanted(asked: &Asked<'_>) -> Result<Range<Ratio>, Unanswered> {
    let usual = || Some(fluid(asked, &FLUID).ok()??.dilution.as_ref()?.value.map(Ratio::from_base));
    let share = asked.answers.maybe(&SHARE).map(Range::exact).or_else(usual);
    let share = share.ok_or_else(|| {
        Unanswered::Contradiction(
            "how strong? Give `share`, or the `parts` of the label, or name a `fluid` that is sold as a concentrate".to_owned(),
        )
    })?;
    if share.low.base() <= 0.0 {
        return Err(Unanswered::Contradiction("`share` is nothing: that is plain water".to_owned()));
    }
    if share.high.base() >= 1.0 {
        return Err(Unanswered::Contradiction("`share` is all of it: there is nothing to thin".to_owned()));
    }
    Ok(share)
}

/// Refuses a fluid that is mixed in another way, or never.
fn suits(fluid: &Fluid, what: &str) -> Result<(), Unanswered> {
    let refused = |why: String| Err(Unanswered::Contradiction(why));
    let key = &fluid.key;
    match (&fluid.barred, what, fluid.form) {
        (Some(barred), ..) => refused(barred.why.clone()),
        (None, "sulfuric" | "caustic", _) => refused(format!("`fluid` is for concentrates and salts: leave it out for `{what}`")),
        (None, _, _) if is_one_of(fluid, &["battery-acid"]) => refused(format!("`{key}` warms itself: ask for `sulfuric` instead")),
        (None, "concentrate", Form::Solid) => refused(format!("`{key}` is dry and is weighed: ask for `salt` instead")),
        (None, "salt", form) if form != Form::Solid => refused(format!("`{key}` is a liquid: ask for `concentrate` instead")),
        _ => Ok(()),
    }
}

/// Shows the fluid named.
fn named(asked: &Asked<'_>, outcome: Outcome) -> Result<Outcome, Unanswered> {
    Ok(match fluid(asked, &FLUID)? {
        Some(fluid) => outcome.choices([choice(fluid, true, fluid.about.clone())]),
        None => outcome,
    })
}

fn concentrate(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let share = match (answers.maybe_number(&PARTS), answers.maybe(&SHARE)) {
        (Some(_), Some(_)) => return Err(Unanswered::Contradiction("give `parts` or `share`, not both".to_owned())),
        (Some(parts), None) => {
            let share = parts_share(r, 1.0, parts)?;
            Range { low: share.mixed, likely: share.mixed, high: share.of_whole }
        }
        (None, _) => wanted(asked)?,
    };
    let volume: Volume = answers.quantity(&VOLUME);
    let likely = concentrate_for(r, volume, share.likely)?;
    let ends = [concentrate_for(&mut Silent, volume, share.low)?, concentrate_for(&mut Silent, volume, share.high)?];
    let takes = Range { low: ends[0], likely, high: ends[1] };
    let mut outcome = Outcome::default()
        .range("share of concentrate", share)
        .range("water", takes.map(|takes| volume - takes))
        .says("first")
        .range("concentrate", takes)
        .says("poured into the water, stirred");
    if let Some(fluid) = fluid(asked, &FLUID)? {
        let by_mass = mass_share(r, share.likely, fluid.density.value, MassDensity::from_base(WATER_DENSITY))?;
        outcome = outcome.exact("that is by mass", by_mass);
    }
    named(asked, outcome)
}

/// Density of water at 20 °C.
const WATER_DENSITY: f64 = 998.2;

fn salt(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let share = wanted(asked)?;
    let (total, pure): (Mass, _) = (asked.answers.quantity(&MASS), Ratio::from_base(1.0));
    let likely = dilution(r, total, pure, share.likely)?;
    let [low, high] = [dilution(&mut Silent, total, pure, share.low)?, dilution(&mut Silent, total, pure, share.high)?];
    let outcome = Outcome::default()
        .range("water", Range { low: high.water, likely: likely.water, high: low.water })
        .says("first")
        .range("salt", Range { low: low.concentrate, likely: likely.concentrate, high: high.concentrate })
        .says("weighed, stirred in until it is clear");
    named(asked, outcome)
}

fn sulfuric(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let mix = sulfuric_dilution(r, answers.quantity(&VOLUME), answers.quantity(&FROM), wanted(asked)?.likely, answers.quantity(&WATER))?;
    let outcome = Outcome::default()
        .exact("water", mix.from.water)
        .says("first, cold")
        .exact("acid", mix.from.concentrate)
        .says("into the water, in a thin stream, stirred")
        .exact("acid by volume", mix.concentrate);
    Ok(warmed(outcome, mix.rise, &mix.mixing).caution(
        "Acid above 15 % may not be sold to the public in some countries: a dry salt, bisulfate or citric acid, does most of its work.",
        "common-practice",
    ))
}

fn caustic(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let strength = wanted(asked)?.likely;
    let (mix, mixing) = caustic_solution(r, answers.quantity(&MASS), strength, answers.quantity(&WATER))?;
    let rise = caustic_rise(&mut Silent, strength)?;
    let outcome = Outcome::default()
        .exact("water", mix.water)
        .says("first, cold")
        .exact("caustic soda", mix.concentrate)
        .says("into the water, a spoon at a time, stirred");
    Ok(warmed(outcome, rise, &mixing))
}

/// How warm the mixture gets, and how it is added.
fn warmed(outcome: Outcome, rise: TemperatureDifference, mixing: &Mixing) -> Outcome {
    let portions = if mixing.portions > 1.0 { "let it cool to the start between them" } else { "slowly all the same" };
    outcome
        .exact("it gets warmer by", rise)
        .exact("and reaches", mixing.reaches)
        .says("50 °C at once, 60 °C at most")
        .number("portions", "", mixing.portions)
        .says(portions)
}
