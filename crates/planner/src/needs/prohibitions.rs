//! What must never stand at a point, whatever else speaks for it: one rule, one entry.

use reference::Trait;
use shop::{Exposure, Fitting, Point};

use crate::demand::{Demand, Test};
use crate::verdict::Grade;

/// What the kind of a point tells the rules.
#[derive(Debug, Clone, Copy, Default)]
pub struct Character {
    /// A spindle or pivot that runs fast and clean.
    pub fast_spindle: bool,
    /// A rolling bearing.
    pub rolling: bool,
    /// A bush that holds oil in its pores.
    pub porous: bool,
    /// A bath that is not filtered.
    pub bath: bool,
    /// A worm in its box, driven with force to spare.
    pub worm: bool,
    /// Carries steam.
    pub steam: bool,
    /// Made of a copper alloy, whatever else it touches.
    pub copper: bool,
    /// Warm before its lubricant has to flow, so that a cold start does not count.
    pub warmed: bool,
}

struct Rule {
    what: &'static str,
    holds: fn(&Point, Character) -> bool,
    traits: &'static [Trait],
    grade: Grade,
    why: &'static str,
    source: &'static str,
}

const RULES: &[Rule] = &[
    Rule {
        what: "no active sulphur on copper alloys",
        holds: |point, character| character.copper || has_copper_alloy(point),
        traits: &[Trait::ActiveSulphur],
        grade: Grade::Harmful,
        why: "active sulphur blackens and eats copper alloys it stands on",
        source: "astm-d130",
    },
    Rule {
        what: "no hypoid additives on bronze",
        holds: |point, character| character.copper || has_copper_alloy(point),
        traits: &[Trait::HypoidEp],
        grade: Grade::Harmful,
        why: "GL-5 additives attack bronze unless the label proves copper corrosion class 1b or better",
        source: "common-practice",
    },
    Rule {
        what: "no tacky oil in a fast spindle",
        holds: |_, character| character.fast_spindle,
        traits: &[Trait::Tackifier, Trait::HypoidEp, Trait::ActiveSulphur],
        grade: Grade::Harmful,
        why: "tacky and extreme-pressure oils drag, heat and foam in a fast spindle",
        source: "common-practice",
    },
    Rule {
        what: "nothing tacky in a wick",
        holds: |point, _| point.fitting == Fitting::Wick,
        traits: &[Trait::Tackifier, Trait::Graphite, Trait::Molybdenum, Trait::Ptfe],
        grade: Grade::Wrong,
        why: "tack and solids clog a wick",
        source: "common-practice",
    },
    Rule {
        what: "no solids in an oil-filled bush",
        holds: |_, character| character.porous,
        traits: &[Trait::Graphite, Trait::Molybdenum, Trait::Ptfe],
        grade: Grade::Harmful,
        why: "solids close the pores that hold the bush's oil",
        source: "common-practice",
    },
    Rule {
        what: "no graphite in a rolling bearing",
        holds: |_, character| character.rolling,
        traits: &[Trait::Graphite],
        grade: Grade::Harmful,
        why: "solid grains dent the tracks of a clean rolling bearing",
        source: "common-practice",
    },
    Rule {
        what: "no detergent oil in an unfiltered bath",
        holds: |_, character| character.bath,
        traits: &[Trait::Detergent],
        grade: Grade::Wrong,
        why: "detergent keeps dirt afloat and holds water where nothing filters it out",
        source: "common-practice",
    },
    Rule {
        what: "no detergent oil in steam",
        holds: |_, character| character.steam,
        traits: &[Trait::Detergent],
        grade: Grade::Harmful,
        why: "detergent oil and condensate make an emulsion that lubricates nothing and fouls a boiler",
        source: "common-practice",
    },
    Rule {
        what: "no graphite where it stays wet",
        holds: |point, _| {
            touches_any(point, &["aluminium", "stainless"]) && (point.meets(Exposure::Damp) || point.meets(Exposure::Coolant))
        },
        traits: &[Trait::Graphite],
        grade: Grade::Wrong,
        why: "wet graphite makes a galvanic cell with aluminium and stainless steel",
        source: "common-practice",
    },
    Rule {
        what: "nothing that gums",
        holds: |_, _| true,
        traits: &[Trait::Vegetable, Trait::DryingOil],
        grade: Grade::Wrong,
        why: "vegetable and drying oils harden to gum where they stand",
        source: "common-practice",
    },
    Rule {
        what: "nothing mixed with water or acid",
        holds: |_, _| true,
        traits: &[Trait::WaterMix, Trait::Acid, Trait::Caustic],
        grade: Grade::Harmful,
        why: "water, acid and alkali rust or eat a bearing surface they stay on",
        source: "common-practice",
    },
];

fn touches_any(point: &Point, materials: &[&str]) -> bool {
    point.touches.iter().any(|key| materials.contains(&key.as_str()))
}

fn has_copper_alloy(point: &Point) -> bool {
    touches_any(point, &["bronze", "porous-bronze", "brass", "copper"])
}

/// The rules that concern a point, as demands.
pub(crate) fn demands(point: &Point, character: Character) -> impl Iterator<Item = Demand> {
    RULES.iter().filter(move |rule| (rule.holds)(point, character)).map(|rule| Demand {
        what: rule.what,
        test: Test::Without { traits: rule.traits, else_grade: rule.grade },
        why: rule.why.into(),
        source: rule.source,
    })
}
