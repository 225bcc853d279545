//! What may stand beside what, how it is kept, and what a spill of it takes to hold.

use formulas::stock::containment;
use formulas::{FormulaError, Silent};
use reference::storage::Reaction;
use reference::{Apart, Fluid, Reference, SourceKey, StorageGroup, Substance, Trait};
use schemars::JsonSchema;
use serde::Serialize;
use units::{Quantity, Temperature, Volume};

/// Two fluids that must not stand together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Conflict<'r> {
    /// The two, in the order they were named.
    pub fluids: [&'r str; 2],
    /// As what each of them reacts, in the same order.
    pub groups: [&'r str; 2],
    /// How far apart they stand.
    pub apart: Apart,
    /// What they do when they meet.
    pub reaction: &'r [Reaction],
    /// Why, in words.
    pub why: &'r str,
    /// Where this comes from.
    pub source: SourceKey,
}

/// The groups a fluid belongs to: its storage group, and those of what is in it and counts there.
pub fn groups<'r>(fluid: &'r Fluid, reference: &'r Reference) -> impl Iterator<Item = &'r str> {
    let inside = fluid.contents.iter().filter_map(|content| Some((content, reference.substance(&content.substance)?)));
    let counted = inside.flat_map(|(content, substance)| {
        let groups = substance.groups.iter().map(String::as_str);
        groups.filter(move |group| counts(group, content.share.high, substance))
    });
    std::iter::once(fluid.hazards.storage.as_str()).chain(counted)
}

/// Whether so large a share of a substance makes a mixture one of its group.
///
/// A peroxide does from 1 % of available oxygen (CLP, Annex I, 2.15.2.1): 16 g of it for each peroxy group in a mole, of which there are two
/// at most. What corrodes or burns does from 5 %, where a mixture begins to corrode (table 3.2.3); for the rest any share does.
fn counts(group: &str, share: f64, substance: &Substance) -> bool {
    const LEAST_OXYGEN: f64 = 0.01;
    const OXYGEN_G_PER_MOL: f64 = 2.0 * 16.0;
    const LEAST: f64 = 0.05;
    match (group, &substance.molar_mass_g_per_mol) {
        ("organic-peroxide", Some(molar_mass)) => share * OXYGEN_G_PER_MOL / molar_mass.value > LEAST_OXYGEN,
        ("acid" | "base" | "ammonia" | "nitrite" | "flammable", _) => share >= LEAST,
        _ => true,
    }
}

/// What keeps two fluids apart; none where they may stand together. The order of the two does not matter.
///
/// Fluids of the same kind stand together: what is in both is not held against either.
#[must_use]
pub fn between<'r>(one: &'r Fluid, other: &'r Fluid, reference: &'r Reference) -> Option<Conflict<'r>> {
    let own: Vec<&str> = groups(one, reference).collect();
    let theirs: Vec<&str> = groups(other, reference).collect();
    let pairs = own.iter().flat_map(|a| theirs.iter().filter_map(|b| Some(([*a, *b], reference.storage_pair(a, b)?))));
    let (groups, worst) = pairs
        .max_by(|(_, one), (_, other)| (one.apart, one.reaction.len(), &one.pair).cmp(&(other.apart, other.reaction.len(), &other.pair)))?;
    (worst.apart != Apart::Together && one.key != other.key).then(|| Conflict {
        fluids: [&one.key, &other.key],
        groups,
        apart: worst.apart,
        reaction: &worst.reaction,
        why: &worst.why,
        source: worst.source,
    })
}

/// Every two of these that must not stand together, the worst first.
#[must_use]
pub fn conflicts<'r>(fluids: &[&'r Fluid], reference: &'r Reference) -> Vec<Conflict<'r>> {
    let mut found: Vec<Conflict<'r>> = fluids
        .iter()
        .enumerate()
        .flat_map(|(place, one)| fluids[place + 1..].iter().filter_map(|other| between(one, other, reference)))
        .collect();
    found.sort_by_key(|conflict| std::cmp::Reverse(conflict.apart));
    found
}

/// One place to stand: a cupboard, a shelf of it, a tray.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Shelf {
    /// The cupboard, counted from one; between cupboards lies [`Apart::DISTANCE`].
    pub cupboard: usize,
    /// Height: what stands high comes first.
    pub height: Height,
    /// The group that stands there.
    pub group: String,
    /// How it is kept.
    pub keep: String,
    /// Whether it is locked.
    pub locked: bool,
    /// Keys of the fluids.
    pub fluids: Vec<String>,
}

/// How high something may stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Height {
    /// Any shelf.
    Any,
    /// Below the waist: alkalis, above acids.
    BelowWaist,
    /// At the bottom, in a tray: acids.
    Bottom,
}

impl Height {
    /// In words, as part of a sentence: "it stands below the waist".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Any => "any shelf",
            Self::BelowWaist => "below the waist",
            Self::Bottom => "at the bottom, in a tray",
        }
    }
}

/// A proposal of where everything stands: a tray or shelf for each group, cupboards apart where they must be.
#[must_use]
pub fn shelves<'r>(fluids: &[&'r Fluid], reference: &'r Reference) -> Vec<Shelf> {
    let mut shelves: Vec<Shelf> = Vec::new();
    let mut standing: Vec<Vec<&Fluid>> = Vec::new();
    let mut ordered: Vec<&&Fluid> = fluids.iter().collect();
    ordered.sort_by_key(|fluid| reference.storage_groups.get_index_of(&fluid.hazards.storage));
    for fluid in ordered {
        let fits = |cupboard: &Vec<&Fluid>| cupboard.iter().all(|there| stand_in_one_cupboard(there, fluid, reference));
        let place = standing.iter().position(fits).unwrap_or_else(|| {
            standing.push(Vec::new());
            standing.len() - 1
        });
        standing[place].push(fluid);
        let group = &fluid.hazards.storage;
        let row: Option<&StorageGroup> = reference.storage_groups.get(group);
        let same = shelves.iter_mut().find(|shelf| shelf.cupboard == place + 1 && shelf.group == *group);
        match same {
            Some(shelf) if !shelf.fluids.contains(&fluid.key) => shelf.fluids.push(fluid.key.clone()),
            Some(_) => {}
            None => shelves.push(Shelf {
                cupboard: place + 1,
                height: height(fluid),
                group: group.clone(),
                keep: row.map_or_else(String::new, |row| row.keep.clone()),
                locked: row.is_some_and(|row| row.locked),
                fluids: vec![fluid.key.clone()],
            }),
        }
    }
    shelves.sort_by_key(|shelf| (shelf.cupboard, shelf.height));
    shelves
}

/// Whether two may stand in one cupboard. Trays would be enough between an acid and what burns, but acid eats the metal cupboard that what
/// burns stands in; *common practice*.
fn stand_in_one_cupboard(one: &Fluid, other: &Fluid, reference: &Reference) -> bool {
    let is_acid = |fluid: &Fluid| height(fluid) == Height::Bottom;
    let in_metal = |fluid: &Fluid| matches!(fluid.hazards.storage.as_str(), "flammable" | "aerosol");
    let eats = |acid, metal| is_acid(acid) && in_metal(metal);
    let apart = between(one, other, reference).is_some_and(|conflict| conflict.apart >= Apart::Cupboards);
    !apart && !eats(one, other) && !eats(other, one)
}

fn height(fluid: &Fluid) -> Height {
    let corrosive = fluid.hazards.statements.iter().any(|code| code == "H314" || code == "H318");
    if fluid.traits.contains(&Trait::Acid) || fluid.hazards.storage.contains("acid") {
        Height::Bottom
    } else if fluid.traits.contains(&Trait::Caustic) || corrosive {
        Height::BelowWaist
    } else {
        Height::Any
    }
}

/// Volumes of a tray that holds a spill, by British and by American practice.
///
/// # Errors
/// [`FormulaError`] for a volume of nothing.
pub fn tray(volumes: &[Volume]) -> Result<[Volume; 2], FormulaError> {
    let zero = Volume::from_base(0.0);
    let largest = volumes.iter().copied().fold(zero, |a, b| if b > a { b } else { a });
    let total = volumes.iter().copied().fold(zero, |a, b| a + b);
    let held = containment(&mut Silent, largest, total)?;
    Ok([held.british, held.american])
}

/// What frost ruins and heat bursts, among these, in a room that cold and that hot.
#[must_use]
pub fn spoiled<'r>(fluids: &[&'r Fluid], coldest: Temperature, hottest: Temperature) -> Vec<(&'r Fluid, &'static str)> {
    /// Water in it breaks the emulsion or the bottle; *common practice*.
    const FROST_K: f64 = 278.15;
    /// Spray cans; UN GHS, P412.
    const BURSTS_K: f64 = 323.15;
    let watery = |fluid: &Fluid| {
        fluid.traits.contains(&Trait::WaterMix)
            || fluid.contents.iter().any(|content| content.substance == "water" && content.share.likely > 0.1)
    };
    let mut found = Vec::new();
    for fluid in fluids.iter().copied().filter(|fluid| !fluid.always_there) {
        if coldest.base() < FROST_K && watery(fluid) {
            found.push((fluid, "frost ruins it: keep it above 5 °C"));
        }
        if hottest.base() >= BURSTS_K && fluid.traits.contains(&Trait::Aerosol) {
            found.push((fluid, "it bursts at 50 °C: keep it out of that heat"));
        }
    }
    found
}
