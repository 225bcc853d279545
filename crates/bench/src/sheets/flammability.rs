//! How a liquid burns: flash point, limits, classes, and how little of it fills a cupboard or a room.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::flammability::{
    Burning, Drying, SAFE_SHARE, flammable_category, flash_at_sea_level, flash_point, liquid_to_limit, lower_limit_at, mixture_limit,
    nfpa_class,
};
use formulas::vapour::{Component, Partial, blend};
use handling::air::{antoine, component, molar_mass};
use handling::fire::rag;
use reference::Substance;
use units::{Pressure, Quantity, Temperature, Volume};

use super::contents::{CONTENTS, Contents, FLUID, contents, outdoors};
use super::{Asked, Outcome, Unanswered};

const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "20 °C", "common-practice", "how warm it is where it stands");
const PRESSURE: Given<Pressure> = Given::quantity("pressure", "101.325 kPa", "common-practice", "pressure of the air");
const MEASURED: Given<Option<Temperature>> = Given::maybe("measured", "its flash point, from its data sheet or measured at that pressure");
const CUPBOARD: Given<Volume> = Given::quantity("cupboard", "60 L", "common-practice", "closed cupboard it stands in");
const ROOM: Given<Volume> = Given::quantity("volume", "40 m3", "common-practice", "air space of the room");

pub(super) static KIND: Kind = Kind {
    name: "flammability",
    about: "how a liquid burns: flash point, flammable limits, classes, and how little of it is too much",
    fields: &[FLUID.field(), CONTENTS.field(), TEMPERATURE.field(), PRESSURE.field(), MEASURED.field(), CUPBOARD.field(), ROOM.field()],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let of = contents(asked)?;
    let (at, pressure): (Temperature, Pressure) = (answers.quantity(&TEMPERATURE), outdoors(answers.quantity(&PRESSURE))?);
    let over = over(&of, at)?;
    let mut outcome = Outcome::default().fact("of", of.name.clone());
    let worked = worked_flash(r, &over, pressure)?;
    let said = answers.maybe(&MEASURED).map(|measured| flash_at_sea_level(r, measured, pressure));
    let measured = said.or_else(|| of.fluid.and_then(|fluid| fluid.flash.as_ref()).map(|known| known.value));
    if let Some(flash) = measured {
        outcome = outcome.exact("flash point", flash).says("measured");
    }
    if let Some(flash) = worked {
        outcome = outcome.exact("flash point worked from what is in it", flash).says("within about 10 K, most often low");
    }
    // What was measured outranks what was worked.
    let Some(flash) = measured.or(worked) else {
        return Ok(outcome
            .fact("burning", "no flash point is known of it, and nothing in it that burns as a vapour")
            .caution("It may still burn on hot metal or as a mist.", "common-practice"));
    };
    let boils = over.iter().filter(|part| part.mole_share > 0.01).filter_map(|part| Some(part.substance.boiling.as_ref()?.value));
    let boils = boils.min_by(|one, other| one.base().total_cmp(&other.base()));
    let category = flammable_category(flash, boils).map_or_else(|| "none".to_owned(), |category| category.to_string());
    outcome = outcome.fact("category of the UN GHS", category).fact("class of NFPA 30", nfpa_class(flash, boils));
    outcome = outcome.fact(
        "now",
        if at >= flash {
            "warm enough to flash: a spark lights it"
        } else {
            "colder than its flash point; a wick, a rag or a mist lights all the same"
        },
    );
    outcome = limits(asked, r, &of, &over, outcome)?;
    if let Some(fluid) = of.fluid {
        let says = match rag(fluid, asked.reference) {
            Drying::Dries => "heat themselves and burn: soak in water in a lidded metal can, out the same day",
            Drying::Half => "may heat themselves in a heap: lidded metal can, out the same day",
            Drying::Not => "do not heat themselves; a lidded metal can all the same",
        };
        outcome = outcome.fact("rags soaked in it", says);
    }
    Ok(outcome
        .caution("No flame, heater, spark or hot work within 6 m of an open can; what sparks stands half a metre above the floor; hot work 11 m away, and look again after an hour.", "29-cfr-1910-252")
        .caution("Join metal cans by a wire when pouring. One splash of something lighter changes its class.", "common-practice")
        .caution("Local code and the product's safety data sheet come first.", "common-practice"))
}

/// One substance over the liquid.
struct Over<'a> {
    substance: &'a Substance,
    mole_share: f64,
    activity: f64,
    pascals: f64,
}

fn over<'a>(of: &Contents<'a>, at: Temperature) -> Result<Vec<Over<'a>>, Unanswered> {
    if of.parts.is_empty() {
        return Ok(Vec::new());
    }
    let celsius = units::in_celsius(at);
    let components: Vec<Component> = of.parts.iter().map(|(substance, likely, _)| component(substance, *likely, celsius)).collect();
    let one = |((substance, ..), share): (&(&'a Substance, f64, f64), Partial)| Over {
        substance,
        mole_share: share.mole_share,
        activity: share.activity,
        pascals: share.pressure.base(),
    };
    Ok(of.parts.iter().zip(blend(&components)?).map(one).collect())
}

fn worked_flash(r: &mut Notebook, over: &[Over<'_>], pressure: Pressure) -> Result<Option<Temperature>, Unanswered> {
    let burning: Vec<Burning> = over
        .iter()
        .filter_map(|part| {
            let lower_limit = part.substance.lower_flammable.as_ref()?.value * 100.0;
            Some(Burning { activity: part.activity, antoine: antoine(part.substance)?, lower_limit })
        })
        .collect();
    if burning.is_empty() { Ok(None) } else { Ok(Some(flash_point(r, &burning, pressure)?)) }
}

/// Limits of the vapour, and how little liquid brings a closed space to a tenth of the lower one.
fn limits(asked: &Asked<'_>, r: &mut Notebook, of: &Contents<'_>, over: &[Over<'_>], outcome: Outcome) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let at: Temperature = answers.quantity(&TEMPERATURE);
    let burns: Vec<&Over<'_>> = over.iter().filter(|part| part.substance.lower_flammable.is_some() && part.pascals > 0.0).collect();
    let whole: f64 = burns.iter().map(|part| part.pascals).sum();
    if whole <= 0.0 {
        return Ok(outcome);
    }
    let shared = |limit: fn(&Substance) -> Option<f64>| -> Option<Vec<(f64, f64)>> {
        burns.iter().map(|part| Some((part.pascals / whole, limit(part.substance)? * 100.0))).collect()
    };
    let lower = shared(|substance| substance.lower_flammable.as_ref().map(|known| known.value)).unwrap_or_default();
    let lower = mixture_limit(r, &lower)?;
    let lower_here = lower_limit_at(r, lower, at)?;
    let mut outcome = outcome.number("lower flammable limit of its vapour", "% of the air", lower_here);
    if let Some(upper) = shared(|substance| substance.upper_flammable.as_ref().map(|known| known.value)) {
        outcome = outcome.number("upper flammable limit", "% of the air", mixture_limit(r, &upper)?);
    }
    // Water and what else does not burn only takes room in the liquid.
    let is_burning = |part: &&(&Substance, f64, f64)| burns.iter().any(|burning| burning.substance.key == part.0.key);
    let share: f64 = of.parts.iter().filter(is_burning).map(|(_, likely, _)| likely).sum();
    let mean_mass: f64 = burns.iter().map(|part| part.pascals / whole * molar_mass(part.substance)).sum();
    for (what, space) in [("fills the cupboard to a tenth of its limit", CUPBOARD), ("fills the room to a tenth of its limit", ROOM)] {
        let spilt = liquid_to_limit(r, answers.quantity(&space), lower_here, SAFE_SHARE, mean_mass, of.density * share, at)?;
        outcome = outcome.exact(what, spilt);
    }
    Ok(outcome)
}
