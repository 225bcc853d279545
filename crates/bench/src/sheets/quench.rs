//! A quench: how much oil, water or brine takes the heat of the steel, how warm it gets, what vessel it wants, and what burns.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::coating::Tank;
use formulas::quench::{
    Charge, HotMetal, Liquid, WARMEST_BRINE_C, WARMEST_WATER_C, bath_after, flash_margin, oil_volume, quench_vessel, steam_of_water,
    volume_for_rise,
};
use formulas::solution::dilution;
use units::{Length, Mass, Quantity, Ratio, System, Temperature, TemperatureDifference, Volume, show};

use super::common::{Judged, ZERO_C, choose, fluid, is_one_of};
use super::{Asked, Outcome, Unanswered};
use crate::page::ChoiceRow;

const STEEL: Given<&'static str> = Given::choice(
    "steel",
    &["oil-hardening", "water-hardening", "silver-steel", "case"],
    "oil-hardening",
    "common-practice",
    "how its maker says it hardens; case means mild steel with a hard skin",
);
const LIQUID: Given<Option<&'static str>> =
    Given::maybe_choice("liquid", &["oil", "water", "brine"], "what you quench in, if not what the steel asks for");
const MASS: Given<Mass> = Given::quantity("mass", "0.1 kg", "common-practice", "all that goes in at once, tongs and wire too");
const HOT: Given<Temperature> = Given::quantity("hot", "850 °C", "common-practice", "temperature the steel is quenched from");
const START: Given<Temperature> = Given::quantity("start", "20 °C", "common-practice", "temperature of the bath before");
const RISE: Given<TemperatureDifference> =
    Given::quantity("rise", "30 K", "common-practice", "how much the bath may warm; water ends at 35 °C and brine at 45 °C at most");
const HAVE: Given<Option<Volume>> = Given::maybe("have", "what you have in the vessel, to see how warm it gets");
const FLASH: Given<Option<Temperature>> = Given::maybe("flash", "flash point of your oil, from its data sheet");
const OIL: Given<Vec<String>> = Given::fluids("fluid", "your oil by key; a fast quench oil if none is named");
const TALL: Given<Length> = Given::quantity("tall", "100 mm", "common-practice", "height of the part as it is held");
const VESSEL: Given<Length> = Given::quantity("vessel", "150 mm", "common-practice", "inside diameter of the vessel");

pub(super) static KIND: Kind = Kind {
    name: "quench",
    about: "how much oil, water or brine a quench takes, how warm it gets, and in what vessel",
    fields: &[
        STEEL.field(),
        LIQUID.field(),
        MASS.field(),
        HOT.field(),
        START.field(),
        RISE.field(),
        HAVE.field(),
        FLASH.field(),
        OIL.field(),
        TALL.field(),
        VESSEL.field(),
    ],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let charge = Charge { mass: answers.quantity(&MASS), metal: HotMetal::Iron, at: answers.quantity(&HOT) };
    if charge.at < Temperature::from_base(COOLEST_RED) {
        return Err(Unanswered::Contradiction("`hot` is below 700 °C: no steel hardens from there, and none glows red".to_owned()));
    }
    if answers.quantity(&TALL).base() > TALLEST_M {
        return Err(Unanswered::Contradiction("`tall` is more than 2 m: that is work for a hardening firm".to_owned()));
    }
    let liquid = liquid(asked);
    let outcome = match liquid {
        "oil" => oil(asked, &charge, r)?,
        _ => water(asked, &charge, liquid == "brine", r)?,
    };
    Ok(outcome
        .choices(liquids(asked))
        .caution(
            "Goggles, tongs, leather gloves, sleeves down; steam and hot oil jump. All under in one move, straight down, then stir.",
            "common-practice",
        )
        .caution("Temper at once, while it is still hand warm; the steel's own data sheet says how hot.", "common-practice"))
}

/// Higher than anybody quenches at home.
const TALLEST_M: f64 = 2.0;
/// Below the heat that any steel hardens from: 700 °C; *common practice*.
const COOLEST_RED: f64 = 973.15;
/// So much water and brine must be able to warm at least, K; *common practice*.
const LEAST_RISE_K: f64 = 5.0;

/// What the steel asks for, or what was said.
fn liquid<'a>(asked: &Asked<'a>) -> &'a str {
    let usual = match asked.answers.word(&STEEL) {
        "oil-hardening" => "oil",
        "water-hardening" => "brine",
        _ => "water",
    };
    asked.answers.maybe_word(&LIQUID).unwrap_or(usual)
}

fn oil(asked: &Asked<'_>, charge: &Charge, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let named = fluid(asked, &OIL)?.or_else(|| asked.reference.fluid("quench-oil"));
    if let Some(barred) = named.and_then(|fluid| fluid.barred.as_ref()) {
        return Err(Unanswered::Contradiction(barred.why.clone()));
    }
    if let Some(other) = named.filter(|fluid| fluid.oil.is_none()) {
        return Err(Unanswered::Contradiction(format!("`{}` is no oil: take a quench oil", other.key)));
    }
    let meant = named.is_some_and(|fluid| is_one_of(fluid, &["quench-oil"]));
    let flash = answers.maybe(&FLASH).or_else(|| Some(named?.flash?.value)).ok_or_else(|| {
        Unanswered::Contradiction(
            "no flash point of that fluid is known: give `flash` from its data sheet, or take a quench oil".to_owned(),
        )
    })?;
    let (start, rise): (Temperature, TemperatureDifference) = (answers.quantity(&START), answers.quantity(&RISE));
    let takes = oil_volume(r, charge, &Liquid::oil(), start, rise)?;
    let tank = Tank::Round { diameter: answers.quantity(&VESSEL) };
    let vessel = quench_vessel(r, takes.needed, answers.quantity(&TALL), tank.area())?;
    let in_it = answers.maybe(&HAVE).unwrap_or(vessel.liquid);
    let hottest = bath_after(r, charge, &Liquid::oil(), in_it, start)?;
    let margin = flash_margin(r, hottest, flash)?;
    let steam = steam_of_water(r, Volume::from_base(1e-6))?;
    let enough = in_it >= takes.needed;
    Ok(Outcome::default()
        .exact("oil by the trade's rule", takes.by_rule)
        .says("a US gallon for a pound of steel")
        .exact("oil by the heat of the steel", takes.by_heat)
        .exact("oil needed", takes.needed)
        .says("the larger of the two")
        .exact("oil to fill this vessel with", vessel.liquid)
        .says("enough of it, and 100 mm deeper than the part is high")
        .exact("depth of the oil", vessel.depth)
        .exact("height of the vessel at least", vessel.height)
        .exact("hottest the oil gets", hottest)
        .exact("that is below its flash point by", margin)
        .says("50 K at least")
        .exact("steam of 1 mL of water under it", steam)
        .says("which throws burning oil out")
        .way(
            format!("quenching in {}", show(in_it, System::Metric)),
            enough,
            if enough { "enough of it" } else { "too little: the oil warms by more than it should, and the steel cools too slowly" },
        )
        .caution_if(
            !meant,
            "An oil not made for quenching smokes, cools slowly and ages fast; its data sheet must allow it.",
            "common-practice",
        )
        .caution("Never used engine oil: it makes skin cancer, holds fuel and water, and nobody knows its flash point.", "iarc-33"))
}

fn water(asked: &Asked<'_>, charge: &Charge, brine: bool, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    if !answers.words(&OIL).is_empty() || answers.maybe(&FLASH).is_some() {
        return Err(Unanswered::Contradiction("`fluid` and `flash` are for oil: leave them out, or say `--liquid oil`".to_owned()));
    }
    let bath = if brine { Liquid::brine() } else { Liquid::water() };
    let (start, told): (Temperature, TemperatureDifference) = (answers.quantity(&START), answers.quantity(&RISE));
    let warmest = if brine { WARMEST_BRINE_C } else { WARMEST_WATER_C };
    if !(ZERO_C..=ZERO_C + warmest - LEAST_RISE_K).contains(&start.base()) {
        return Err(Unanswered::Contradiction(format!(
            "`start` of water lies between 0 and {:.0} °C, of brine up to {:.0} °C: warmer, it quenches unevenly",
            WARMEST_WATER_C - LEAST_RISE_K,
            WARMEST_BRINE_C - LEAST_RISE_K
        )));
    }
    let warmest = Temperature::from_base(ZERO_C + warmest);
    let rise = TemperatureDifference::from_base(told.base().min(warmest.base() - start.base()));
    let needed = volume_for_rise(r, charge, &bath, start, rise)?;
    let in_it = answers.maybe(&HAVE).unwrap_or(needed);
    let hottest = bath_after(r, charge, &bath, in_it, start)?;
    let enough = in_it >= needed;
    let outcome = Outcome::default()
        .exact(if brine { "brine needed" } else { "water needed" }, needed)
        .says("deep enough to cover the part by a hand's breadth, whatever that takes")
        .exact("hottest it gets", hottest)
        .says(format!("{} at most: warmer, steam clings to the steel and leaves soft spots", show(warmest, System::Metric)));
    let outcome = if brine {
        let salt = dilution(r, in_it * bath.density, Ratio::from_base(1.0), Ratio::from_base(0.1))?;
        outcome.exact("salt for it", salt.concentrate).says("a tenth by mass, stirred until clear")
    } else {
        outcome
    };
    let why = if enough { "enough of it" } else { "too little: it boils round the part and leaves soft spots" };
    Ok(outcome
        .way(format!("quenching in {}", show(in_it, System::Metric)), enough, why)
        .caution_if(brine, "Rinse and oil the part at once: salt rusts it, and every machine it drips on.", "common-practice")
        .caution("Water cracks oil-hardening steel, thin edges and sharp corners; stand back from the first seconds.", "common-practice"))
}

/// What there is to quench in, judged by the steel.
fn liquids(asked: &Asked<'_>) -> Vec<ChoiceRow> {
    let steel = asked.answers.word(&STEEL);
    choose(asked.reference, |fluid| {
        let (fits, off, why) = match (steel, fluid.classes.first()?.as_str()) {
            ("oil-hardening", "quench-oil") => (true, 0.0, "hardens it through without cracking it"),
            ("oil-hardening", "quench-water" | "quench-brine") => (false, 1.0, "cracks an oil-hardening steel"),
            ("water-hardening", "quench-brine") => (true, 0.0, "the fastest; salt breaks the skin of steam"),
            ("silver-steel" | "case", "quench-water") => (true, 0.0, "hardens it through"),
            ("silver-steel" | "case", "quench-brine") => (true, 1.0, "faster and more even than water; more risk of cracks"),
            ("water-hardening", "quench-water") => (true, 1.0, "slower than brine; stir well"),
            ("silver-steel", "quench-oil") => (true, 2.0, "for sections below 6 mm; cracks fewer"),
            (_, "quench-oil") => (false, 2.0, "too slow for it"),
            _ => return None,
        };
        is_one_of(fluid, &["quench-oil", "quench-water", "quench-brine"]).then(|| Judged { fits, off, why: why.to_owned() })
    })
}
