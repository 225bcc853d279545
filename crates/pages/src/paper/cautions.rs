//! The cautions, for the cupboard's door: what is never done, what stands apart, fire, air, gloves, first aid.

use askama::Template;
use handling::label::of_fluid;
use handling::together::{Shelf, shelves};
use planner::report::Report;
use planner::words::gathered;
use reference::Fluid;

use super::sources::Sources;
use super::{Head, Paper, Sheet, unbroken};
use crate::words::sentence;

#[derive(Template)]
#[template(path = "paper/cautions.html")]
struct Page<'a> {
    head: Head,
    parts: Vec<Part<'a>>,
    shelves: Vec<Row>,
    aid: Vec<(&'static str, Vec<(String, String)>)>,
    sources: Vec<String>,
}

struct Part<'a> {
    title: &'static str,
    said: Vec<Said<'a>>,
}

struct Said<'a> {
    text: &'a str,
    /// What it is about.
    about: String,
    source: usize,
}

struct Row {
    cupboard: usize,
    height: &'static str,
    fluids: String,
    keep: String,
    locked: bool,
}

/// The headings, and what is said beneath each, by what a caution is about; what is about nothing else stands beneath the last.
const PARTS: [(&str, &[&str]); 6] = [
    ("Never", &["not to be used"]),
    ("Keep apart", &["keep apart"]),
    ("Fire", &["fire", "rags", "solvent rags", "spray cans", "quenching"]),
    ("Air", &["air", "house", "breathing", "cutting mist"]),
    ("Gloves, goggles, poison", &["burns", "skin", "instant glue", "poison", "acid and alkali", "swallowing"]),
    ("On the shelf, spills, leftovers", &[]),
];

/// Where it has got somebody: how the first aid of a label begins.
const PLACES: [&str; 4] = ["Eyes", "Skin", "Breathed", "Swallowed"];

impl Paper<'_> {
    /// What to mind about what stands here and what is to be bought.
    pub(super) fn cautions(&self) -> Result<String, askama::Error> {
        let fluids = self.fluids();
        let mut sources = Sources::default();
        Page {
            head: self.head_of(Sheet::Cautions),
            parts: parts(&self.worked.report, &mut sources),
            shelves: shelves(&fluids, self.reference).into_iter().map(|shelf| self.shelf(shelf)).collect(),
            aid: self.aid(&fluids),
            sources: sources.list(self.reference),
        }
        .render()
    }

    /// What stands here and what is to be bought, each once.
    fn fluids(&self) -> Vec<&Fluid> {
        let pots = self.worked.shop.pots.iter().filter(|pot| !pot.is_empty()).map(|pot| pot.fluid.as_str());
        let keys = pots.chain(self.worked.report.ladder.iter().map(|rung| rung.fluid.as_str()));
        let mut fluids: Vec<&Fluid> = Vec::new();
        for fluid in keys.filter_map(|key| self.reference.fluid(key)) {
            if fluids.iter().all(|known| known.key != fluid.key) {
                fluids.push(fluid);
            }
        }
        fluids
    }

    fn shelf(&self, shelf: Shelf) -> Row {
        let names: Vec<String> = shelf.fluids.iter().map(|key| unbroken(&self.reference.name_of(key))).collect();
        Row {
            cupboard: shelf.cupboard,
            height: shelf.height.words(),
            fluids: names.join("; "),
            keep: sentence(&shelf.keep),
            locked: shelf.locked,
        }
    }

    /// What the labels of the fluids say to do first, by the place of the body; each once, with its fluids.
    fn aid(&self, fluids: &[&Fluid]) -> Vec<(&'static str, Vec<(String, String)>)> {
        let said: Vec<(&str, Vec<String>)> = fluids
            .iter()
            .map(|fluid| {
                let aid = of_fluid(fluid, self.reference).first_aid;
                (fluid.name.as_str(), aid.split_inclusive(". ").map(|one| one.trim().to_owned()).collect())
            })
            .collect();
        let said = gathered(said.iter().map(|(name, texts)| (*name, texts.as_slice())));
        let at = |place: &str| {
            let here = said.iter().filter_map(|(names, text)| Some((names.clone(), text.strip_prefix(place)?.strip_prefix(": ")?)));
            here.map(|(names, text)| (names, sentence(text))).collect::<Vec<_>>()
        };
        PLACES.into_iter().map(|place| (place, at(place))).filter(|(_, rows)| !rows.is_empty()).collect()
    }
}

fn parts<'a>(report: &'a Report, sources: &mut Sources<'a>) -> Vec<Part<'a>> {
    let mut parts: Vec<Part<'a>> = PARTS.iter().map(|(title, _)| Part { title, said: Vec::new() }).collect();
    for caution in &report.cautions {
        let (kind, about) = caution.about.split_once(": ").unwrap_or((&caution.about, ""));
        let place = PARTS.iter().position(|(_, kinds)| kinds.contains(&kind)).unwrap_or(PARTS.len() - 1);
        // A kind that says nothing its heading does not say is left away.
        let about = if about.is_empty() { sentence(kind) } else { about.replace(" | ", " — apart from — ") };
        parts[place].said.push(Said { text: &caution.text, about, source: sources.number(&caution.source) });
    }
    parts.retain(|part| !part.said.is_empty());
    parts
}
