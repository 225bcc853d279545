//! A pickle for copper alloys: what it is mixed from, how sour it is, how much copper it takes up, and when it is retired.

use fields::{Given, Kind};
use formulas::pickle::{Oxide, copper_limit, oxide_copper, pickle_bath};
use formulas::solution::{Acid, ideal_ph};
use formulas::{Notebook, Silent};
use units::{Area, Length, Quantity, Ratio, Temperature, Volume};

use super::acids::{ACID, acid};
use super::common::{Judged, ZERO_C, choose, is_one_of, said};
use super::shape::attacked;
use super::{Asked, Outcome, Unanswered};
use crate::page::ChoiceRow;

const VOLUME: Given<Volume> = Given::quantity("volume", "1 L", "common-practice", "pickle that is made up");
const STRENGTH: Given<Ratio> = Given::quantity("strength", "10 %", "common-practice", "strength wanted, by mass");
const STOCK: Given<Ratio> =
    Given::quantity("stock", "37 %", "common-practice", "strength by mass of the sulfuric acid you have; dry salts count as pure");
const WATER: Given<Temperature> = Given::quantity("water", "15 °C", "common-practice", "temperature of the water it is mixed with");
const METALS: Given<Vec<String>> = Given::materials("metals", "copper, brass", "common-practice", "what is pickled");
const AREA: Given<Area> = Given::quantity("area", "200 cm2", "common-practice", "area that is pickled each time");
const OXIDE: Given<&'static str> =
    Given::choice("oxide", &["black", "red"], "black", "common-practice", "the black oxide of a flame or the red one beneath it");
const SCALE: Given<Length> = Given::quantity("scale", "5 um", "common-practice", "thickness of the oxide");

pub(super) static KIND: Kind = Kind {
    name: "pickle",
    about: "a pickle that takes oxide off copper, brass and silver: its recipe, and when it is spent",
    fields: &[
        ACID.field(),
        VOLUME.field(),
        STRENGTH.field(),
        STOCK.field(),
        WATER.field(),
        METALS.field(),
        AREA.field(),
        OXIDE.field(),
        SCALE.field(),
    ],
};

/// Thicker oxide is no tarnish any more; *common practice*.
const THICKEST_M: f64 = 0.5e-3;

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let (acid, name) = acid(asked);
    only_copper_alloys(asked)?;
    if !(ZERO_C..=ZERO_C + 60.0).contains(&answers.quantity(&WATER).base()) {
        return Err(Unanswered::Contradiction("`water` lies between 0 and 60 °C: mix it cold, and warm the bath afterwards".to_owned()));
    }
    if answers.quantity(&SCALE).base() > THICKEST_M {
        return Err(Unanswered::Contradiction("`scale` is thicker than half a millimetre: chip it off first".to_owned()));
    }
    if acid == Acid::Sulfuric && answers.quantity(&STOCK) <= answers.quantity(&STRENGTH) {
        return Err(Unanswered::Contradiction(
            "`stock` is no stronger than the pickle wanted: use it as it is, or buy stronger".to_owned(),
        ));
    }
    let (volume, strength): (Volume, Ratio) = (answers.quantity(&VOLUME), answers.quantity(&STRENGTH));
    let stock = if acid == Acid::Sulfuric { answers.quantity(&STOCK) } else { Ratio::from_base(1.0) };
    let mix = pickle_bath(r, acid, volume, stock, strength, answers.quantity(&WATER))?;
    let ph = ideal_ph(r, acid, strength)?;
    let limit = copper_limit(r, acid, strength)?;
    let oxide = if answers.word(&OXIDE) == "red" { Oxide::Red } else { Oxide::Black };
    let each = oxide_copper(r, oxide, answers.quantity(&AREA), answers.quantity(&SCALE))?;
    let times = (limit.retire * volume / each).base();
    Ok(Outcome::default()
        .exact(format!("{name} to weigh"), mix.concentrate)
        .says(if acid == Acid::Sulfuric { "the acid into the cold water, in a thin stream, stirred" } else { "stir it into the water" })
        .exact("water", mix.water)
        .number("pH when new", "", ph)
        .number("copper it can dissolve", "g/L", limit.all.base())
        .number("retire it at", "g/L", limit.retire.base())
        .says("three tenths of that, or when the work takes twice as long as at first")
        .exact("copper each time", each)
        .number("times it serves", "", times.floor())
        .says(if times < 1.0 { "make more of it: it would be spent within one" } else { "as far as its copper goes" })
        .choices(acids(asked))
        .way("use it warm, 50 to 60 °C", true, "it works in minutes, in a lidded pot of plastic or glass; citric acid serves cold too")
        .caution("Keep it closed, labelled, and in another room than bright steel: its mist rusts machines.", "common-practice")
        .caution_if(
            acid == Acid::Sulfuric,
            "Sulfuric acid above 15 % may not be sold to the public in some countries; local law comes first.",
            "common-practice",
        )
        .caution(
            "Spent pickle holds copper: neutral or not it is hazardous waste, never for the drain. Local rules come first.",
            "common-practice",
        ))
}

/// Refuses what a pickle plates, makes brittle or eats.
fn only_copper_alloys(asked: &Asked<'_>) -> Result<(), Unanswered> {
    let refused = |why: String| Err(Unanswered::Contradiction(why));
    for metal in asked.answers.words(&METALS) {
        let (is, name) = (|group| asked.reference.is_a(metal, group), asked.reference.name_of(metal));
        if is("hardened-steels") {
            return refused(format!(
                "`metals` names {name}: acid makes hard and spring steel brittle, and it may break days later; scrape or blast it"
            ));
        }
        if is("ferrous") {
            return refused(format!(
                "`metals` names {name}: in a pickle that holds copper, copper plates out on every part as soon as iron dips in; clean it with a brush and hot water, or in a bath of its own"
            ));
        }
        if is("light-metals") || is("zinc-plate") {
            return refused(format!("`metals` names {name}: acid eats it and makes hydrogen, which burns; wash it in neutral detergent"));
        }
        if !is("metals") {
            return refused(format!("`metals` names {name}, which has no oxide for a pickle to take off"));
        }
    }
    Ok(())
}

/// The acids there are, by how strong a bath of 10 % is.
fn acids(asked: &Asked<'_>) -> Vec<ChoiceRow> {
    const KNOWN: [(&str, Acid, &str, f64); 3] = [
        ("pickle-bisulfate", Acid::Bisulfate, "a dry salt, safest to keep and to mix", 0.0),
        ("pickle-citric", Acid::Citric, "gentle, slow when cold, keeps copper dissolved when neutral", 1.0),
        ("battery-acid", Acid::Sulfuric, "strongest, but a liquid acid to store and to thin", 2.0),
    ];
    choose(asked.reference, |fluid| {
        let (_, acid, why, off) = KNOWN.into_iter().find(|(class, ..)| is_one_of(fluid, &[*class]))?;
        let holds = copper_limit(&mut Silent, acid, Ratio::from_base(0.1)).ok()?;
        let harmed = attacked(asked, fluid, &METALS);
        let fits = harmed.is_none();
        let praise = || format!("{why}; at 10 % it is retired at {} g/L of copper", said(holds.retire.base()));
        Some(Judged { fits, off, why: harmed.map_or_else(praise, |name| format!("it harms {name}")) })
    })
}
