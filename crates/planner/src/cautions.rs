//! What to mind about the fluids a plan recommends. The full account of air, fire, shelf and label stands elsewhere; these are the
//! cautions no list of purchases should go without, and each defers to the product's own data sheet.

use reference::{Fluid, Trait};
use schemars::JsonSchema;
use serde::Serialize;
use shop::{Room, Shop};
use units::{Quantity, System, show};

/// Something to mind.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Caution {
    /// What it is about.
    pub about: String,
    /// What to mind.
    pub text: String,
    /// Bibliography key.
    pub source: String,
}

struct Rule {
    about: &'static str,
    concerns: fn(&Fluid, &Room) -> bool,
    text: &'static str,
    source: &'static str,
}

const FLAMMABLE_K: f64 = 273.15 + 60.0;
/// Below half an air change an hour a room counts as shut; *common practice*.
const SHUT_PER_SECOND: f64 = 0.5 / 3600.0;

const RULES: &[Rule] = &[
    Rule {
        about: "flammable",
        concerns: |fluid, _| fluid.flash.as_ref().is_some_and(|flash| flash.value.base() <= FLAMMABLE_K),
        text: "Vapour is heavier than air and runs along the floor: no flame, heater, spark or hot work within 6 m of an open can; \
               shut the can at once; at most five litres may stand loose, more belongs in a metal cupboard.",
        source: "common-practice",
    },
    Rule {
        about: "air",
        concerns: |fluid, room| {
            (fluid.traits.contains(&Trait::Solvent) || fluid.traits.contains(&Trait::StrongOdour))
                && room.air_changes.base() <= SHUT_PER_SECOND
        },
        text: "This room changes its air slowly: use it by the open door or outdoors, in small amounts, and leave the door open after.",
        source: "common-practice",
    },
    Rule {
        about: "house",
        concerns: |fluid, room| room.attached_to_house && fluid.traits.contains(&Trait::Solvent),
        text: "Its vapour gets into the house next door: work with the door to the house shut and the outer one open.",
        source: "common-practice",
    },
    Rule {
        about: "skin",
        concerns: |fluid, _| fluid.traits.contains(&Trait::Sensitiser) || has_statement(fluid, &["H317", "H334"]),
        text: "May make the skin allergic for life: nitrile gloves, and wash off any splash.",
        source: "un-ghs",
    },
    Rule {
        about: "burns",
        concerns: |fluid, _| has_statement(fluid, &["H314", "H318"]),
        text: "Burns eyes and skin: goggles, gloves, water at hand.",
        source: "un-ghs",
    },
    Rule {
        about: "acid and alkali",
        concerns: |fluid, _| fluid.traits.contains(&Trait::Acid) || fluid.traits.contains(&Trait::Caustic),
        text: "Always into cold water, a little at a time, never water into it; never the two together, never near bleach; keep it low \
               down, in plastic, away from bright steel.",
        source: "common-practice",
    },
    Rule {
        about: "poison",
        concerns: |fluid, _| {
            has_statement(fluid, &["H300", "H301", "H310", "H311", "H330", "H331", "H360", "H360FD", "H360Df", "H370", "H372", "H373"])
        },
        text: "Poisonous: keep it locked, in its own bottle, away from food; read the data sheet before you open it.",
        source: "un-ghs",
    },
    Rule {
        about: "swallowing",
        concerns: |fluid, _| has_statement(fluid, &["H304"]),
        text: "Deadly if it gets into the lungs: if swallowed do not make sick, call the poison centre.",
        source: "un-ghs",
    },
    Rule {
        about: "spray cans",
        concerns: |fluid, _| fluid.traits.contains(&Trait::Aerosol),
        text: "Keep it below 50 °C and never spray on hot metal or towards a spark; the propellant burns too.",
        source: "un-ghs",
    },
    Rule {
        about: "instant glue",
        concerns: |fluid, _| fluid.is("cyanoacrylate"),
        text: "Sticks skin and eyelids in seconds and heats cotton: goggles, no cotton gloves; soak off in warm soapy water, never tear.",
        source: "un-ghs",
    },
    Rule {
        about: "penetrating and water-displacing spray",
        concerns: |fluid, _| fluid.is("penetrating-oil") || fluid.is("water-displacing-spray"),
        text: "It is no lubricant: follow it with oil within a day. Let it dry before any flame comes near.",
        source: "common-practice",
    },
    Rule {
        about: "rags",
        concerns: |fluid, _| fluid.traits.contains(&Trait::DryingOil),
        text: "Rags soaked in it heat themselves and burn: soak them in water in a lidded metal can, out the same day.",
        source: "common-practice",
    },
    Rule {
        about: "cutting mist",
        concerns: |fluid, _| {
            fluid.traits.contains(&Trait::ActiveSulphur) || fluid.classes.iter().any(|class| class.ends_with("cutting-oil"))
        },
        text: "Visible smoke means too much of it in the air: slower, less, or the door open; wash hands with soap, not solvent.",
        source: "niosh-98-102",
    },
    Rule {
        about: "hot work",
        concerns: |fluid, _| fluid.traits.contains(&Trait::Chlorinated),
        text: "Never on a part that will be welded, brazed or heated: hot chlorine compounds make a poison gas.",
        source: "common-practice",
    },
    Rule {
        about: "quenching",
        concerns: |fluid, _| fluid.is("quench-oil"),
        text: "Metal vessel two thirds full with a lid beside it, outdoors, part under in one move; never water on burning oil.",
        source: "common-practice",
    },
];

fn has_statement(fluid: &Fluid, codes: &[&str]) -> bool {
    fluid.hazards.statements.iter().any(|statement| codes.contains(&statement.as_str()))
}

/// The cautions of these fluids in this shop, one for each rule, naming the fluids it concerns.
#[must_use]
pub fn cautions(fluids: &[&Fluid], shop: &Shop) -> Vec<Caution> {
    let mut cautions: Vec<Caution> = RULES
        .iter()
        .filter_map(|rule| {
            let names: Vec<&str> =
                fluids.iter().filter(|fluid| (rule.concerns)(fluid, &shop.room)).map(|fluid| fluid.name.as_str()).collect();
            (!names.is_empty()).then(|| Caution {
                about: format!("{}: {}", rule.about, names.join("; ")),
                text: rule.text.to_owned(),
                source: rule.source.to_owned(),
            })
        })
        .collect();
    cautions.push(Caution {
        about: "everything here".to_owned(),
        text: format!(
            "Read the data sheet of the product you buy; it, your local code and official guidance come first. Prices are indicative. \
             Temperatures reckoned with: {} to {}.",
            show(shop.room.coldest, System::Metric),
            show(shop.room.hottest, System::Metric)
        ),
        source: "common-practice".to_owned(),
    });
    cautions
}
