//! A bath to dip a part into: how the part stands, how deep the liquid is, what to buy, and how much it blackens.

use fields::{Given, Kind};
use formulas::coating::{Immersed, Stance, Tank, USABLE_SELENIUM_G_PER_L, best_stance, blackening, concentrate_to_buy, immersion};
use formulas::solid_area::volume;
use formulas::{Notebook, Silent};
use reference::Fluid;
use units::{Area, Length, Mass, MassDensity, Quantity, Range, Ratio, System, Volume, show};

use super::common::{FLUID, choice, fluid, said};
use super::shape::{
    BORE, DIAMETER, EDGE, HEIGHT, LENGTH, MASS, METAL, PIECES, SHAPE, TEXTURE, THICKNESS, WIDTH, area, attacked, density, solid,
};
use super::{Asked, Outcome, Unanswered};

const WORK: Given<&'static str> =
    Given::choice("work", &["blacken", "other"], "blacken", "common-practice", "blackening steel, or any other dip");
const TANK: Given<&'static str> =
    Given::choice("tank", &["box", "round"], "box", "common-practice", "a box, or a round pot or pipe on end");
const TANK_LENGTH: Given<Length> = Given::quantity("tank_length", "300 mm", "common-practice", "inside length of a box");
const TANK_WIDTH: Given<Length> = Given::quantity("tank_width", "200 mm", "common-practice", "inside width of a box");
const TANK_DIAMETER: Given<Length> = Given::quantity("tank_diameter", "200 mm", "common-practice", "inside diameter of a round tank");
const RIM: Given<Length> = Given::quantity("rim", "180 mm", "common-practice", "inside height of the tank");
const STANDS: Given<Option<Length>> = Given::maybe("stands", "height of the part as it stands or hangs, if not on its smallest face");
const ROOM: Given<Length> = Given::quantity("room", "10 mm", "common-practice", "room all round the part");
const FILM: Given<Length> = Given::quantity("film", "1 um", "common-practice", "thickness of the black");
const SHARE: Given<Option<Ratio>> = Given::maybe("share", "share of concentrate by volume, if not what is usual for the fluid");

pub(super) static KIND: Kind = Kind {
    name: "bath",
    about: "a bath to dip a part into: how it stands, how deep, what to buy, how much it blackens",
    fields: &[
        WORK.field(),
        TANK.field(),
        TANK_LENGTH.field(),
        TANK_WIDTH.field(),
        TANK_DIAMETER.field(),
        RIM.field(),
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
        STANDS.field(),
        ROOM.field(),
        FILM.field(),
        FLUID.field(),
        SHARE.field(),
    ],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let blackens = answers.word(&WORK) == "blacken";
    if blackens {
        only_steel(asked)?;
    }
    let all = area(asked, r)?;
    let (tank, (height, stance)) = (tank(asked), stance(asked, r)?);
    if let Some(stance) = stance
        && !holds(&tank, &stance)
    {
        return Err(Unanswered::Contradiction(format!(
            "the part does not go into this tank upright: it wants {}; give a wider tank, or `stands` if it goes in another way",
            inside(&stance)
        )));
    }
    let part = Immersed { height, mass: mass(asked, r)?, density: density(asked)? };
    let black = if blackens { Some(blackening(r, all, answers.quantity(&FILM), usable())?) } else { None };
    let asks = black.map_or_else(Volume::default, |black| black.bath);
    let bath = immersion(r, &tank, answers.quantity(&RIM), &part, asks)?;
    let outcome = Outcome::default().exact("height of the part as it stands", part.height);
    let outcome = match stance {
        Some(stance) => outcome.exact("floor of the smallest tank for it", stance.floor).says(inside(&stance)),
        None => outcome,
    };
    let outcome = outcome
        .exact("liquid", bath.liquid)
        .exact("depth with the part in it", bath.level)
        .exact("rise when the part enters", bath.rise)
        .exact("rim above the liquid", bath.freeboard)
        .exact("area of all parts", all);
    let outcome = match black {
        Some(black) => blackened(outcome, bath.liquid, black.bath, all),
        None => outcome,
    };
    let outcome = bought(asked, outcome, bath.liquid, blackens, r)?;
    Ok(outcome
        .caution(
            "A lid beside the bath, and on it when you leave; a tray below it; a pot of plastic or glass, never one for food.",
            "common-practice",
        )
        .caution(
            "Lower the part slowly on a plastic cord or in a plastic basket, hollow side up, so that no air stays under it.",
            "common-practice",
        )
        .caution_if(
            blackens,
            "Degrease until water stays on it unbroken for a minute, rinse, dip for one to three minutes, rinse hot, then oil within five \
             minutes: the oil is what protects. Longer in the bath gives loose smut.",
            "common-practice",
        )
        .caution("The data sheet of the fluid comes first; a spent bath and its first rinse are hazardous waste.", "common-practice"))
}

/// Refuses what steel's black does not take on: it wants another chemistry.
fn only_steel(asked: &Asked<'_>) -> Result<(), Unanswered> {
    match asked.answers.words(&METAL).iter().find(|metal| !asked.reference.is_a(metal, "rusting-metals")) {
        Some(metal) => Err(Unanswered::Contradiction(format!(
            "`material` names {}, which the black for steel does not take on, or eats: it wants a chemistry of its own; say `work` other \
             for another bath",
            asked.reference.name_of(metal)
        ))),
        None => Ok(()),
    }
}

/// Selenium that a working bath gives up.
fn usable() -> MassDensity {
    MassDensity::from_base(USABLE_SELENIUM_G_PER_L)
}

fn tank(asked: &Asked<'_>) -> Tank {
    let answers = asked.answers;
    match answers.word(&TANK) {
        "round" => Tank::Round { diameter: answers.quantity(&TANK_DIAMETER) },
        _ => Tank::Box { length: answers.quantity(&TANK_LENGTH), width: answers.quantity(&TANK_WIDTH) },
    }
}

/// Height of the part as it stands: as said, or on the face that asks for the least tank, which is then told too.
fn stance(asked: &Asked<'_>, r: &mut Notebook) -> Result<(Length, Option<Stance>), Unanswered> {
    if let Some(height) = asked.answers.maybe(&STANDS) {
        return Ok((height, None));
    }
    let best = best_stance(r, &solid(asked)?, asked.answers.quantity(&ROOM))?;
    Ok((best.height, Some(best)))
}

/// Whether a tank has room for the smallest tank of a stance.
fn holds(tank: &Tank, stance: &Stance) -> bool {
    let sides = |tank: &Tank| match *tank {
        Tank::Box { length, width } => (length.min(width), length.max(width)),
        Tank::Round { diameter } => (diameter, diameter),
    };
    let ((short, long), (narrow, wide)) = (sides(tank), sides(&stance.tank));
    match (tank, stance.tank) {
        (Tank::Round { diameter }, Tank::Box { length, width }) => length.hypot(width) <= *diameter,
        _ => narrow <= short && wide <= long,
    }
}

/// Mass of one part: as weighed, or by its solid.
fn mass(asked: &Asked<'_>, r: &mut Notebook) -> Result<Mass, Unanswered> {
    match asked.answers.maybe(&MASS) {
        Some(mass) => Ok(mass),
        None => Ok(volume(r, &solid(asked)?)? * density(asked)?),
    }
}

/// The plan of a tank in words.
fn inside(stance: &Stance) -> String {
    let mm = |size: Length| show(size, System::Metric);
    match stance.tank {
        Tank::Box { length, width } => format!("{} × {} inside", mm(length), mm(width)),
        Tank::Round { diameter } => format!("{} inside diameter", mm(diameter)),
    }
}

fn blackened(outcome: Outcome, liquid: Volume, asks: Volume, all: Area) -> Outcome {
    let reaches = all * (liquid / asks).base();
    outcome
        .exact("bath that these parts use up", asks)
        .exact("area that the bath blackens before it is spent", reaches)
        .says("spent when it takes more than three minutes to strike, or the film rubs off")
}

/// Concentrate to buy, for the fluid named or the usual one for blackening.
fn bought(asked: &Asked<'_>, outcome: Outcome, liquid: Volume, blackens: bool, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let named = fluid(asked, &FLUID)?.or_else(|| asked.reference.fluid("cold-blackening").filter(|_| blackens));
    if let Some(barred) = named.and_then(|fluid| fluid.barred.as_ref()) {
        return Err(Unanswered::Contradiction(barred.why.clone()));
    }
    let share = asked.answers.maybe(&SHARE).map(Range::exact).or_else(|| usual(named?));
    let outcome = match share {
        Some(share) => {
            let [low, high] = [concentrate_to_buy(&mut Silent, liquid, share.low)?, concentrate_to_buy(&mut Silent, liquid, share.high)?];
            let likely = concentrate_to_buy(r, liquid, share.likely)?;
            outcome
                .range("concentrate to buy", Range { low, likely, high })
                .says(format!("for a mix of {} %, with a tenth to spare", said(share.likely.base() * 100.0)))
        }
        None => outcome,
    };
    Ok(match named {
        Some(fluid) => outcome.choices([match attacked(asked, fluid, &METAL) {
            Some(name) => choice(fluid, false, format!("it harms {name}")),
            None => choice(fluid, true, fluid.about.clone()),
        }]),
        None => outcome,
    })
}

/// The share that a fluid is mixed at.
fn usual(fluid: &Fluid) -> Option<Range<Ratio>> {
    fluid.dilution.as_ref().map(|share| share.value.map(Ratio::from_base))
}
