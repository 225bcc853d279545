//! What to mind about the fluids that stand in a room or are to be bought: one sentence each, the most dangerous first.

use reference::{Apart, Fluid, Reference, Trait};
use schemars::JsonSchema;
use serde::Serialize;
use units::{Amount, System, Temperature, Volume, show};

use crate::air::{Room, Use, exposure};
use crate::bars;
use crate::fire;
use crate::together::{Conflict, conflicts, spoiled, tray};
use crate::worked::Worked;

/// Something to mind.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Caution {
    /// What it is about.
    pub about: String,
    /// What to mind.
    pub text: String,
    /// Bibliography key.
    pub source: String,
    /// Where its number can be worked out again, step by step.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worked: Option<Worked>,
}

/// A fluid that stands there or is to be bought.
#[derive(Debug, Clone)]
pub struct Kept<'r> {
    /// The fluid.
    pub fluid: &'r Fluid,
    /// How many pots of it.
    pub pots: usize,
    /// How much of it stands there; nothing where that is not a volume.
    pub amount: Volume,
    /// The largest use of it.
    pub used: Option<Use>,
}

/// Where it all stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// The room's air.
    pub room: Room,
    /// Coldest it gets.
    pub coldest: Temperature,
    /// Hottest it gets.
    pub hottest: Temperature,
    /// Units of the sentences.
    pub units: System,
}

struct Rule {
    about: &'static str,
    concerns: fn(&Fluid) -> bool,
    text: &'static str,
    source: &'static str,
}

/// What holds wherever the fluid stands.
const RULES: &[Rule] = &[
    Rule {
        about: "poison",
        concerns: |fluid| has(fluid, &["H300", "H301", "H310", "H311", "H330", "H331", "H360", "H360FD", "H360Df", "H370", "H372", "H373"]),
        text: "Poisonous: keep it locked, in its own bottle, away from food; read the data sheet before you open it.",
        source: "un-ghs",
    },
    Rule {
        about: "burns",
        concerns: |fluid| has(fluid, &["H314", "H318"]),
        text: "Burns eyes and skin: goggles, gloves, water at hand.",
        source: "un-ghs",
    },
    Rule {
        about: "swallowing",
        concerns: |fluid| has(fluid, &["H304"]),
        text: "Deadly if it gets into the lungs: if swallowed do not make sick, call the poison centre.",
        source: "un-ghs",
    },
    Rule {
        about: "acid and alkali",
        concerns: |fluid| fluid.traits.contains(&Trait::Acid) || fluid.traits.contains(&Trait::Caustic),
        text: "Always into cold water, a little at a time, never water into it; low down, in plastic, away from bright steel.",
        source: "common-practice",
    },
    Rule {
        about: "spray cans",
        concerns: |fluid| fluid.traits.contains(&Trait::Aerosol),
        text: "Keep them below 50 °C (122 °F) and never spray on hot metal or towards a spark; the propellant burns too.",
        source: "un-ghs",
    },
    Rule {
        about: "rags",
        concerns: |fluid| fluid.traits.contains(&Trait::DryingOil),
        text: "Rags soaked in it heat themselves and burn: soak them in water in a lidded metal can, out the same day.",
        source: "common-practice",
    },
    Rule {
        about: "solvent rags",
        concerns: |fluid| fluid.traits.contains(&Trait::Solvent),
        text: "Rags into a lidded metal can; an open heap goes on giving off vapour and burns from a spark.",
        source: "common-practice",
    },
    Rule {
        about: "skin",
        concerns: |fluid| fluid.traits.contains(&Trait::Sensitiser) || has(fluid, &["H317", "H334"]),
        text: "May make the skin allergic for life: nitrile gloves, and wash off any splash.",
        source: "un-ghs",
    },
    Rule {
        about: "instant glue",
        concerns: |fluid| fluid.is("cyanoacrylate"),
        text: "Sticks skin and eyelids in seconds and heats cotton: goggles, no cotton gloves; soak off in warm soapy water, never tear.",
        source: "un-ghs",
    },
    Rule {
        about: "penetrating and water-displacing spray",
        concerns: |fluid| fluid.is("penetrating-oil") || fluid.is("water-displacing-spray"),
        text: "It is no lubricant: follow it with oil within a day. Let it dry before any flame comes near.",
        source: "common-practice",
    },
    Rule {
        about: "cutting mist",
        concerns: |fluid| fluid.traits.contains(&Trait::ActiveSulphur) || fluid.classes.iter().any(|class| class.ends_with("cutting-oil")),
        text: "Visible smoke means too much of it in the air: slower, less, or the door open; wash hands with soap, not solvent.",
        source: "niosh-98-102",
    },
    Rule {
        about: "quenching",
        concerns: |fluid| fluid.is("quench-oil"),
        text: "Metal vessel two thirds full with a lid beside it, outdoors, part under in one move; never water on burning oil.",
        source: "common-practice",
    },
];

fn has(fluid: &Fluid, codes: &[&str]) -> bool {
    fluid.hazards.statements.iter().any(|statement| codes.contains(&statement.as_str()))
}

fn names<'r>(fluids: impl Iterator<Item = &'r Fluid>) -> String {
    fluids.map(|fluid| fluid.name.as_str()).collect::<Vec<_>>().join("; ")
}

/// The cautions of these fluids in this place, the most dangerous first.
#[must_use]
pub fn cautions(kept: &[Kept<'_>], place: &Place, reference: &Reference) -> Vec<Caution> {
    let mut list = List(Vec::new());
    barred(kept, &mut list);
    stand_apart(kept, reference, &mut list);
    fire(kept, place, reference, &mut list);
    air(kept, place, reference, &mut list);
    for rule in RULES {
        let concerned = names(kept.iter().map(|kept| kept.fluid).filter(|fluid| (rule.concerns)(fluid)));
        if !concerned.is_empty() {
            list.add(format!("{}: {concerned}", rule.about), rule.text, rule.source);
        }
    }
    weather(kept, place, &mut list);
    waste(kept, place, reference, &mut list);
    list.add(
        "everything here",
        format!(
            "Read the data sheet of the product you buy; it, your local code and official guidance come first. Prices are indicative. \
             Temperatures reckoned with: {} to {}.",
            show(place.coldest, place.units),
            show(place.hottest, place.units)
        ),
        "common-practice",
    );
    list.0
}

struct List(Vec<Caution>);

impl List {
    fn add(&mut self, about: impl Into<String>, text: impl Into<String>, source: &str) {
        self.0.push(Caution { about: about.into(), text: text.into(), source: source.to_owned(), worked: None });
    }

    /// Says of the last caution where its number can be worked out again.
    fn worked(&mut self, worked: Worked) {
        if let Some(last) = self.0.last_mut() {
            last.worked = Some(worked);
        }
    }
}

fn barred(kept: &[Kept<'_>], list: &mut List) {
    for fluid in kept.iter().map(|kept| kept.fluid) {
        if let Some(bar) = bars::bar(fluid, bars::Beside::default()) {
            list.add(format!("not to be used: {}", fluid.name), format!("Never {}: {}.", bar.what, bar.why), bar.source);
        }
    }
}

/// What must not stand together, one sentence for each two groups that react.
fn stand_apart(kept: &[Kept<'_>], reference: &Reference, list: &mut List) {
    let fluids: Vec<&Fluid> = kept.iter().map(|kept| kept.fluid).collect();
    let mut said: Vec<(&Conflict<'_>, [Vec<&str>; 2])> = Vec::new();
    // Where a spill only spreads both, a tray says enough: that stands with the spills.
    let mut found = conflicts(&fluids, reference);
    found.retain(|conflict| conflict.apart == Apart::Cupboards || !conflict.reaction.is_empty());
    // What reacts as the same group stands on the same side of the stroke.
    for conflict in &mut found {
        if conflict.groups[0] > conflict.groups[1] {
            conflict.groups.swap(0, 1);
            conflict.fluids.swap(0, 1);
        }
    }
    for conflict in &found {
        match said.iter_mut().find(|(known, _)| known.groups == conflict.groups) {
            Some((_, sides)) => sides.iter_mut().zip(conflict.fluids).for_each(|(side, fluid)| side.push(fluid)),
            None => said.push((conflict, conflict.fluids.map(|fluid| vec![fluid]))),
        }
    }
    for (conflict, sides) in said {
        let sides = sides.map(|mut keys| {
            keys.sort_unstable();
            keys.dedup();
            keys
        });
        let [one, other] = sides.each_ref().map(|keys| keys.iter().map(|key| reference.name_of(key)).collect::<Vec<_>>().join("; "));
        list.add(
            format!("keep apart: {one} | {other}"),
            format!("They stand {}. {}", conflict.apart.words(), conflict.why),
            conflict.source.as_str(),
        );
        list.worked(Worked::together(&sides.concat()));
    }
}

fn fire(kept: &[Kept<'_>], place: &Place, reference: &Reference, list: &mut List) {
    let concerned = names(kept.iter().map(|kept| kept.fluid).filter(|fluid| fire::counts(fluid, reference)));
    if concerned.is_empty() {
        return;
    }
    let stock: Vec<fire::Stock<'_>> = kept.iter().map(|kept| (kept.fluid, kept.pots, kept.amount)).collect();
    let standing = fire::standing(&stock, reference);
    let row = |key: &str| reference.quantities.get(key);
    let most = |key: &str| match row(key).map(|row| row.most) {
        Some(Amount::Volume(volume)) => volume,
        _ => Volume::default(),
    };
    let (loose, cabinet) = (most("house-loose"), most("house-cabinet"));
    let cans = row("house-aerosols").map_or(0.0, |row| if let Amount::Pieces(cans) = row.most { cans } else { 0.0 });
    let many = f64::from(u32::try_from(standing.cans).unwrap_or(u32::MAX)) > cans;
    let may = format!("{} and {cans} spray cans", show(loose, place.units));
    let where_ = if standing.liquids > cabinet {
        format!(
            "that is more than a home shop should hold, {} at most and that in a metal cupboard (fire codes for a garage begin at {}): hand the \
             rest in, and ask your fire department what may stand here",
            show(cabinet, place.units),
            show(most("us-garage"), place.units)
        )
    } else if standing.liquids > loose || many {
        format!("that is more than may stand loose ({may}): the rest belongs in a metal cupboard")
    } else {
        format!("up to {may} may stand loose, more belongs in a metal cupboard")
    };
    let nowhere = row("house-loose").and_then(|row| row.note.as_deref()).unwrap_or_default();
    let flames = if place.room.flames { " There is a flame or a spark in this room: put it out before a can is opened." } else { "" };
    list.add(
        format!("fire: {concerned}"),
        format!(
            "In all: {}; {where_}. {nowhere} Vapour runs along the floor: no flame, heater, spark or hot work within 6 m of an \
             open can; shut the can at once, and join metal cans by a wire when pouring.{flames}",
            standing.words(place.units)
        ),
        "house-quantities",
    );
    let petrol: Volume = kept.iter().filter(|kept| kept.fluid.is("petrol")).map(|kept| kept.amount).sum();
    if petrol > Volume::default() {
        let (home, plastic, metal) = (most("uk-petrol-home"), most("uk-petrol-plastic"), most("uk-petrol-metal"));
        let too_much = if petrol > home { "That is more than may be kept at a home even so: hand it in. " } else { "" };
        list.add(
            "petrol",
            format!(
                "{} of it stand here. {too_much}As fuel only, in cans made for it, of {} at most in plastic and {} in metal, {} in all, outside \
                 the house and never in a room where people live or sleep: so by British law; yours may allow less.",
                show(petrol, place.units),
                show(plastic, place.units),
                show(metal, place.units),
                show(home, place.units)
            ),
            "uk-petroleum-2014",
        );
    }
}

/// The use that fouls the air most, of each fluid that does.
fn air(kept: &[Kept<'_>], place: &Place, reference: &Reference, list: &mut List) {
    for kept in kept {
        let Some(used) = kept.used else { continue };
        let Ok(Some(exposure)) = exposure(kept.fluid, &used, &place.room, reference) else { continue };
        if exposure.of_limit > 1.0 || exposure.is_near_burning() {
            list.add(
                format!("air: {}", kept.fluid.name),
                format!("{} used at once in this room: {}.", show(used.amount, place.units), exposure.words(place.units)),
                "acgih-ventilation",
            );
            list.worked(Worked::air(kept.fluid, &used, &place.room));
        }
    }
    let volatile = kept.iter().any(|kept| kept.fluid.traits.contains(&Trait::Solvent));
    if place.room.attached_to_house && volatile {
        list.add(
            "house",
            "About a fifteenth of what the air here holds gets into the house next door: work with the door to the house shut and the outer one open.",
            "batterman-2007",
        );
    }
    if volatile {
        list.add(
            "breathing",
            "The air is known within a factor of two. Use less, take a milder one, go outdoors, open up; if it is still too much, stop. No mask is \
             chosen here: follow official respirator guidance.",
            "common-practice",
        );
    }
}

fn weather(kept: &[Kept<'_>], place: &Place, list: &mut List) {
    let fluids: Vec<&Fluid> = kept.iter().map(|kept| kept.fluid).collect();
    let found = spoiled(&fluids, place.coldest, place.hottest);
    let mut texts: Vec<&str> = found.iter().map(|(_, text)| *text).collect();
    texts.dedup();
    for text in texts {
        let concerned = names(found.iter().filter(|(_, why)| *why == text).map(|(fluid, _)| *fluid));
        list.add(format!("frost and heat: {concerned}"), format!("In this room {text}."), "common-practice");
    }
}

fn waste(kept: &[Kept<'_>], place: &Place, reference: &Reference, list: &mut List) {
    let liquids: Vec<Volume> = kept.iter().map(|kept| kept.amount).filter(|amount| amount.value > 0.0).collect();
    if let Ok([british, american]) = tray(&liquids)
        && !liquids.is_empty()
    {
        list.add(
            "spills",
            format!(
                "A tray under all of it would hold {} by British practice, {} by American.",
                show(british, place.units),
                show(american, place.units)
            ),
            "40-cfr-264-175",
        );
    }
    if kept.iter().any(|kept| reference.waste_of(kept.fluid).is_some()) {
        list.add(
            "leftovers",
            "Keep them, label them, hand them in; never down a drain, on soil, in a fire or the bin, and never two kinds in one can. Neutral is not \
             drain-safe.",
            "common-practice",
        );
    }
}
