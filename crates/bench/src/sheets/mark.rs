//! Marking out and spotting: how much a face takes, and what takes it off.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::marking::{layout_quantity, spotting_quantity};
use units::{Area, Length, Quantity};

use super::common::choice;
use super::shape::attacked;
use super::solid::lowered;
use super::{Asked, Outcome, Unanswered};

const WHAT: Given<&'static str> = Given::choice(
    "what",
    &["layout", "spotting"],
    "layout",
    "common-practice",
    "layout fluid for scribed lines, or spotting colour for contact",
);
const AREA: Given<Area> = Given::quantity("area", "100 cm2", "common-practice", "face that is coated");
const FILM: Given<Length> = Given::quantity("film", "2 um", "common-practice", "thickness of the spotting colour");
const MATERIALS: Given<Vec<String>> = Given::materials("materials", "mild-steel", "common-practice", "what the faces are made of");

pub(super) static KIND: Kind = Kind {
    name: "mark",
    about: "how much layout fluid or spotting colour a face takes, and what takes it off",
    fields: &[WHAT.field(), AREA.field(), FILM.field(), MATERIALS.field()],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let area = asked.answers.quantity(&AREA);
    if asked.answers.word(&WHAT) == "layout" {
        let amount = layout_quantity(r, area)?;
        let outcome = Outcome::default()
            .range("layout fluid", amount)
            .says("one thin coat, dry in a minute; the low end is what lies on the face")
            .choices(fluids(asked, &["layout-fluid"], "scribed lines stand out bright in it"))
            .choices(removers(asked, "layout-dye"));
        return Ok(outcome
            .caution("The dry film is 5 to 15 µm thick and counts in what you measure over it.", "common-practice")
            .caution("It is thinned with alcohol: no flame, open the door, and lay the rag flat to dry.", "common-practice"));
    }
    let film = asked.answers.quantity(&FILM);
    if film > Length::from_base(50e-6) {
        return Err(Unanswered::Contradiction("`film` is thicker than paint: spotting colour is rolled out to 1 to 3 µm".to_owned()));
    }
    let amount = spotting_quantity(r, area, film)?;
    Ok(Outcome::default()
        .range("spotting colour", amount)
        .says("the low end is what lies on the face, the rest stays on the roller; ink again after 5 to 10 rubbings")
        .choices(fluids(asked, &["spotting-blue", "spotting-red"], "red on the reference and blue on the work shows best"))
        .choices(removers(asked, "spotting-blue"))
        .caution("Spots in a square of 25 mm: 5 to 10 for general work, 15 to 20 for ways, 20 to 25 for plates.", "common-practice")
        .caution("Oil the faces again once they are clean, for solvent leaves them bare.", "common-practice"))
}

fn fluids(asked: &Asked<'_>, classes: &[&str], why: &str) -> Vec<crate::page::ChoiceRow> {
    let known = classes.iter().filter_map(|class| asked.reference.fluids_of(class).next());
    let row = |fluid| match attacked(asked, fluid, &MATERIALS) {
        Some(material) => choice(fluid, false, format!("it harms {material}")),
        None => choice(fluid, true, why),
    };
    known.map(row).collect()
}

/// What takes it off, what serves first.
fn removers(asked: &Asked<'_>, soil: &str) -> Vec<crate::page::ChoiceRow> {
    let Some(row) = asked.reference.cleaning(soil) else { return Vec::new() };
    let classes = row.first.iter().chain(&row.second);
    let known = classes.filter_map(|class| asked.reference.fluids_of(class).find(|fluid| fluid.barred.is_none()));
    let mut rows: Vec<_> = known
        .map(|fluid| match attacked(asked, fluid, &MATERIALS) {
            Some(material) => choice(fluid, false, format!("takes it off, but harms {material}")),
            None => choice(fluid, true, format!("takes it off; {}", lowered(&row.why))),
        })
        .collect();
    rows.sort_by_key(|row| !row.fits);
    rows
}
