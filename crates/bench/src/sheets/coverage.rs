//! How much of a finish an area takes, and what to clean it with first.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::coating::{Application, coat_volume};
use reference::practice::{Finish, FinishRule};
use units::{Area, Length, Quantity, Range, Ratio, System, Volume, show};

use super::common::{Judged, choose, said};
use super::shape::{
    BORE, DIAMETER, EDGE, HEIGHT, LENGTH, MASS, METAL, PIECES, SHAPE, TEXTURE, THICKNESS, WIDTH, area as area_of_parts, attacked,
};
use super::solid::lowered;
use super::{Asked, Outcome, Unanswered};
use crate::page::ChoiceRow;

const CASE: Given<&'static str> = Given::choice(
    "part",
    &[
        "handled-tool-black",
        "stored-unheated",
        "closed-box",
        "sliding-or-measuring-face",
        "hard-spring-steel",
        "fine-thread-or-fit",
        "wet-part",
        "outdoors",
        "table-or-column",
        "not-steel",
    ],
    "stored-unheated",
    "common-practice",
    "what the part is or goes through",
);
const AREA: Given<Option<Area>> = Given::maybe("area", "area to be covered, in place of the shape");
const COATS: Given<f64> = Given::number("coats", "1", "common-practice", "how many coats");
const HOW: Given<&'static str> =
    Given::choice("how", &["wipe", "brush", "aerosol"], "brush", "common-practice", "how your own product is put on");
const DRY: Given<Option<Length>> = Given::maybe("dry", "thickness of your own product when dry, from its data sheet");
const SOLIDS: Given<Option<Ratio>> = Given::maybe("solids", "solids by volume of your own product, from its data sheet");

pub(super) static KIND: Kind = Kind {
    name: "coverage",
    about: "how much oil, wax, black or paint an area or a part takes",
    fields: &[
        CASE.field(),
        AREA.field(),
        SHAPE.field(),
        LENGTH.field(),
        WIDTH.field(),
        HEIGHT.field(),
        DIAMETER.field(),
        BORE.field(),
        THICKNESS.field(),
        MASS.field(),
        EDGE.field(),
        METAL.field(),
        TEXTURE.field(),
        PIECES.field(),
        COATS.field(),
        HOW.field(),
        DRY.field(),
        SOLIDS.field(),
    ],
};

/// Solvent for one of two passes with a cloth, mL for a square metre; *common practice*.
const SOLVENT_ML_PER_M2: [f64; 3] = [50.0, 75.0, 100.0];

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let area = match answers.maybe(&AREA) {
        Some(area) => area,
        None => area_of_parts(asked, r)?,
    };
    let coats = answers.number(&COATS);
    if coats.fract() != 0.0 || coats > 20.0 {
        return Err(Unanswered::Contradiction(format!("`coats` is {coats}: it is a whole number up to 20")));
    }
    let rule = asked.reference.finish_rules.get(answers.word(&CASE));
    let rule = rule.ok_or_else(|| Unanswered::Contradiction(format!("`{}` is no case that is known", answers.word(&CASE))))?;
    let [low, likely, high] = SOLVENT_ML_PER_M2;
    let outcome = Outcome::default()
        .exact("area", area)
        .range("solvent to degrease it first", Range { low, likely, high }.map(|each| litres(2.0 * each, area)))
        .says("in two passes, with a fresh cloth for the second")
        .choices(finishes(asked, rule, area, coats));
    let outcome = match (answers.maybe(&DRY), answers.maybe(&SOLIDS)) {
        (Some(dry), Some(solids)) => {
            let takes = coat_volume(r, area, dry, Range::exact(solids), how(answers.word(&HOW)))?;
            outcome.range("your own product", takes.map(|each| each * coats)).says("with what misses the part")
        }
        (None, None) => outcome,
        _ => return Err(Unanswered::Contradiction("`dry` and `solids` say how much only together: give both".to_owned())),
    };
    let text = format!("For this ({}): {}", rule.when, rule.why);
    Ok(outcome
        .caution(text, "common-practice")
        .caution("Solvent and wax in solvent burn: open door, no flame, and none of it in a spray near a heater.", "common-practice")
        .caution(
            "Lay oily rags out flat outdoors or keep them wet in a lidded metal can: a drying oil heats them until they burn.",
            "common-practice",
        )
        .caution("Hours in salt spray rank finishes; they foretell no life.", "astm-b117"))
}

/// Millilitres for a square metre on an area.
fn litres(ml_per_m2: f64, area: Area) -> Volume {
    Volume::from_base(ml_per_m2 * area.base() * 1e-6)
}

fn how(word: &str) -> Application {
    match word {
        "wipe" => Application::Wipe,
        "aerosol" => Application::Aerosol,
        _ => Application::Brush,
    }
}

/// Finishes with what they take: those the trade ranks for this case first, then those that would do harm.
fn finishes(asked: &Asked<'_>, rule: &FinishRule, area: Area, coats: f64) -> Vec<ChoiceRow> {
    choose(asked.reference, |fluid| {
        let class = fluid.classes.first()?;
        let finish = asked.reference.finishes.get(class).filter(|finish| finish.home)?;
        let place = (0_u8..).zip(&rule.ranked).find_map(|(place, ranked)| (ranked == class).then_some(place));
        let amount = amount(finish, area, coats);
        let (fits, off, why) = if let Some(name) = attacked(asked, fluid, &METAL) {
            (false, 0.2, format!("it harms {name}"))
        } else if rule.never.contains(class) {
            (false, 0.1, format!("never here; {}", lowered(&rule.why)))
        } else if let Some(place) = place {
            (true, f64::from(place), format!("{amount}; {}{}", lowered(&finish.note), endures(finish)))
        } else {
            (false, 1.0, format!("{amount}, but the trade takes another for this"))
        };
        Some(Judged { fits, off, why })
    })
}

/// Its hours in salt spray, where they are known.
fn endures(finish: &Finish) -> String {
    finish.salt_spray.map_or_else(String::new, |spray| format!("; {} h in salt spray", said(spray.hours)))
}

/// What an area takes, as people say it.
fn amount(finish: &Finish, area: Area, coats: f64) -> String {
    let Some([low, high]) = finish.coverage_ml_per_m2 else {
        let by_bath = finish.class == "cold-blackening";
        return if by_bath { "a bath: see the sheet `bath`".to_owned() } else { format!("{} of sheet", show(area, System::Metric)) };
    };
    let say = |each: f64| show(litres(each * coats, area), System::Metric);
    if low == high {
        format!("about {} ({} mL/m²)", say(low), said(low))
    } else {
        format!("{} to {} ({} to {} mL/m²)", say(low), say(high), said(low), said(high))
    }
}
