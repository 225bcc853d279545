//! A cut: the power and heat it makes, which fluid practice puts on it, how much, and what hangs in the air afterwards.

use fields::{Given, Kind};
use formulas::cutting::{
    BRUSH_ENOUGH_W, Coolant, cutting_power, drill_load, drops_per_hole, feed_factor, heat_flow, motor_power, tap_drops, tap_torque,
    turning_power,
};
use formulas::oil_mist::{LIMIT_MG_PER_M3, allowed_mist_mg_per_h, mist_concentration};
use formulas::{Notebook, Silent};
use handling::fire::metal_fire;
use reference::practice::{Cut, CuttingPower};
use reference::{Fluid, Operation, Trait};
use units::{AngularVelocity, Frequency, Length, MassDensity, Power, Quantity, Range, TemperatureDifference, Velocity, Volume, VolumeRate};

use super::common::{choice, said};
use super::{Asked, Outcome, Unanswered};
use crate::page::ChoiceRow;

const MATERIAL: Given<Vec<String>> = Given::materials("material", "mild-steel", "common-practice", "what is cut");
const OPERATION: Given<&'static str> = Given::choice(
    "operation",
    &["turn", "mill", "drill", "ream", "tap", "part", "saw", "grind", "knurl"],
    "turn",
    "common-practice",
    "how it is cut",
);
const SPEED: Given<Velocity> = Given::quantity("speed", "25 m/min", "common-practice", "cutting speed");
const FEED: Given<Length> = Given::quantity("feed", "0.1 mm", "common-practice", "feed for a revolution or a tooth");
const DEPTH: Given<Length> = Given::quantity("depth", "1 mm", "common-practice", "depth of cut, or width of a parting blade");
const REMOVAL: Given<Option<VolumeRate>> =
    Given::maybe("removal", "metal removed in a minute, for milling and sawing: width × depth × feed of the table");
const DIAMETER: Given<Length> = Given::quantity("diameter", "6 mm", "common-practice", "diameter of the hole, thread or reamer");
const HOLE: Given<Length> = Given::quantity("hole", "12 mm", "common-practice", "depth of the hole or thread");
const PITCH: Given<Length> = Given::quantity("pitch", "1 mm", "common-practice", "pitch of the thread");
const TURNS: Given<AngularVelocity> = Given::quantity("turns", "600 rpm", "common-practice", "speed of the drill");
const WEAR: Given<f64> = Given::number("wear", "1.1", "common-practice", "tool wear: 1 sharp, 1.1 light work, 1.3 ordinary");
const EFFICIENCY: Given<f64> =
    Given::number("efficiency", "0.8", "common-practice", "efficiency of the machine: 0.9 belts, 0.7 to 0.8 gears");
const RISE: Given<TemperatureDifference> =
    Given::quantity("rise", "10 K", "common-practice", "how much warmer the fluid may come off the cut");
const HOUR: Given<VolumeRate> = Given::quantity("use", "2 mL/h", "common-practice", "neat oil put on the cut in an hour");
const ROOM: Given<Volume> = Given::quantity("room", "40 m3", "common-practice", "volume of the room");
const AIR: Given<Frequency> =
    Given::quantity("air_changes", "0.5 /h", "common-practice", "air changes; half an hour's worth in a shut garage");
const ON: Given<&'static str> = Given::choice(
    "applied",
    &["brush", "smoking", "spray"],
    "brush",
    "common-practice",
    "how it is put on: by brush, so hot that it smokes, or as a spray",
);

pub(super) static KIND: Kind = Kind {
    name: "cut",
    about: "which fluid for a cut, how much, the power and heat, and the mist in the room",
    fields: &[
        MATERIAL.field(),
        OPERATION.field(),
        SPEED.field(),
        FEED.field(),
        DEPTH.field(),
        REMOVAL.field(),
        DIAMETER.field(),
        HOLE.field(),
        PITCH.field(),
        TURNS.field(),
        WEAR.field(),
        EFFICIENCY.field(),
        RISE.field(),
        HOUR.field(),
        ROOM.field(),
        AIR.field(),
        ON.field(),
    ],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let [material] = asked.answers.words(&MATERIAL) else {
        return Err(Unanswered::Contradiction("`material` takes one material: keep one of them".to_owned()));
    };
    let word = asked.answers.word(&OPERATION);
    let operation = Operation::ALL
        .into_iter()
        .find(|known| known.word() == word)
        .ok_or_else(|| Unanswered::Contradiction(format!("`{word}` is no way of cutting")))?;
    let row = practice(asked, material, operation).ok_or_else(|| {
        Unanswered::Contradiction(format!("no practice is known for {word} in {material}: ask whoever sells it, or try it dry on scrap"))
    })?;
    let outcome = power(asked, material, operation, Outcome::default(), r)?;
    let outcome = amount(asked, operation, outcome, r)?;
    let dry = row.ranked.iter().all(|class| class == "dry-cutting" || class == "cutting-wax");
    let outcome = if dry { outcome } else { mist(asked, outcome, r)? };
    let ways: Vec<ChoiceRow> = ranked(asked, material, row);
    let nobody = ways.is_empty();
    Ok(dangers(asked, material, row, outcome).choices(ways).caution_if(nobody, row.why.clone(), "common-practice"))
}

/// The row of the material or its group, else that of the metal its ISO 513 letter stands for.
fn practice<'a>(asked: &'a Asked<'_>, material: &str, operation: Operation) -> Option<&'a Cut> {
    asked.reference.cut(material, operation).or_else(|| {
        let like = match asked.reference.material(material)?.iso_513? {
            'P' | 'H' => "alloy-steel",
            'M' => "stainless",
            'K' => "cast-iron",
            'N' => "aluminium",
            'S' => "titanium",
            _ => return None,
        };
        asked.reference.cut(like, operation)
    })
}

/// The value of a table for a material, or for the closest of its groups.
fn row_of<'a, T>(asked: &'a Asked<'_>, table: impl Fn(&str) -> Option<&'a T>, material: &str) -> Option<&'a T> {
    table(material).or_else(|| asked.reference.material(material)?.groups.iter().find_map(|group| table(group)))
}

fn power(asked: &Asked<'_>, material: &str, operation: Operation, outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let feed: Length = answers.quantity(&FEED);
    let wear = answers.number(&WEAR);
    let efficiency = answers.number(&EFFICIENCY);
    if !(0.0..=1.0).contains(&efficiency) || efficiency <= 0.0 {
        return Err(Unanswered::Contradiction(format!("`efficiency` is {}: it is a share of one, such as 0.8", said(efficiency))));
    }
    if !(0.9..=3.0).contains(&wear) {
        return Err(Unanswered::Contradiction(format!("`wear` is {}: it is 1 for a sharp tool, 1.3 for ordinary ones", said(wear))));
    }
    match operation {
        Operation::Drill => {
            let Some(factor) = row_of(asked, |key| asked.reference.drill_factors.get(key), material) else { return Ok(outcome) };
            let diameter: Length = answers.quantity(&DIAMETER);
            positive(diameter, "diameter")?;
            positive(feed, "feed")?;
            let load = drill_load(r, factor.factor, diameter, feed, wear);
            let power = turning_power(r, load.torque, answers.quantity(&TURNS));
            let thrust = factor.thrust_factor.map_or(load.thrust, |factor| drill_load(r, factor, diameter, feed, wear).thrust);
            let outcome = outcome.exact("thrust of the drill", thrust).exact("torque of the drill", load.torque);
            heat(asked, outcome, Range::exact(power), r)
        }
        Operation::Tap => {
            let Some(row) = row_of(asked, |key| asked.reference.tap_pressures.get(key), material) else { return Ok(outcome) };
            let (pitch, diameter) = (answers.quantity(&PITCH), answers.quantity(&DIAMETER));
            positive(pitch, "pitch")?;
            let torque = tap_torque(r, row.force.base() / 1e6, pitch, diameter);
            // Tap, flutes and fluid change it by a quarter either way; the formula says so too.
            Ok(outcome.range("torque of the tap", Range { low: torque * 0.75, likely: torque, high: torque * 1.25 }))
        }
        Operation::Turn | Operation::Mill | Operation::Part | Operation::Saw => {
            let Some(row) = row_of(asked, |key| asked.reference.cutting_powers.get(key), material) else { return Ok(outcome) };
            positive(feed, "feed")?;
            let removal = match (answers.maybe(&REMOVAL), operation) {
                (Some(told), _) => told,
                // A lathe cuts a ribbon as wide as the depth and as thick as the feed.
                (None, Operation::Turn | Operation::Part) => answers.quantity(&SPEED) * (feed * answers.quantity(&DEPTH)),
                (None, _) => return Ok(outcome),
            };
            if removal <= VolumeRate::from_base(0.0) {
                return Err(Unanswered::Contradiction(
                    "nothing is cut: `speed`, `depth` and `removal` must be more than nothing".to_owned(),
                ));
            }
            let (factor, range) = (feed_factor(r, feed)?, powers(row));
            let likely = cutting_power(r, range.likely, factor, wear, removal);
            let end = |constant: f64| cutting_power(&mut Silent, constant, factor, wear, removal);
            let power = Range { low: end(range.low), likely, high: end(range.high) };
            let motor = motor_power(r, likely, efficiency)?;
            heat(asked, outcome.range("power at the tool", power).exact("power the motor gives", motor), power, r)
        }
        _ => Ok(outcome),
    }
}

fn powers(row: &CuttingPower) -> Range<f64> {
    let [low, likely, high] = row.joules_per_mm3;
    Range { low, likely, high }
}

fn positive(length: Length, name: &str) -> Result<(), Unanswered> {
    if length.base() > 0.0 { Ok(()) } else { Err(Unanswered::Contradiction(format!("`{name}` must be more than nothing"))) }
}

/// The flow that carries all of the heat away, or a brush where that is enough.
fn heat(asked: &Asked<'_>, outcome: Outcome, power: Range<Power>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let rise = asked.answers.quantity(&RISE);
    let water = heat_flow(r, power.likely, rise, Coolant::WaterMix)?;
    let oil = heat_flow(r, power.likely, rise, Coolant::Oil)?;
    let brush = power.likely.base() < BRUSH_ENOUGH_W;
    Ok(outcome
        .exact("heat", power.likely)
        .says(if brush { "so little that a brush is enough" } else { "a steady flow carries it off, or cut slower" })
        .exact("water mix that carries it off", water)
        .exact("oil that carries it off", oil))
}

fn amount(asked: &Asked<'_>, operation: Operation, outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let (diameter, depth): (Length, Length) = (asked.answers.quantity(&DIAMETER), asked.answers.quantity(&HOLE));
    match operation {
        Operation::Drill | Operation::Ream => {
            positive(diameter, "diameter")?;
            positive(depth, "hole")?;
            let (volume, drops) = drops_per_hole(r, diameter, depth);
            Ok(outcome
                .exact("oil for one hole", volume)
                .number("drops for one hole", "drops", f64::from(drops))
                .says("again every one and a half diameters of depth"))
        }
        Operation::Tap => {
            positive(depth, "hole")?;
            let drops = tap_drops(r, diameter, depth)?;
            Ok(outcome.number("drops for one thread", "drops", f64::from(drops)).says("wet tap and hole, back off every half turn"))
        }
        Operation::Saw => Ok(outcome.number("drops", "drops/min", 3.0).says("one every twenty seconds")),
        _ => Ok(outcome),
    }
}

/// Oil mist in the room, steady state.
fn mist(asked: &Asked<'_>, outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    /// Density of a cutting oil, kg/m³; *typical, from memory*.
    const OIL: f64 = 880.0;
    /// How far the share that becomes mist may be off; *common practice*.
    const UNSURE: f64 = 3.0;
    let answers = asked.answers;
    // Shares that become mist; common practice.
    let share = match answers.word(&ON) {
        "smoking" => 0.1,
        "spray" => 0.3,
        _ => 0.02,
    };
    let (room, changes) = (answers.quantity(&ROOM), answers.quantity(&AIR));
    let likely = mist_concentration(r, answers.quantity(&HOUR), MassDensity::from_base(OIL), share, room, changes)?;
    let allowed = allowed_mist_mg_per_h(r, room, changes);
    let says = if likely > LIMIT_MG_PER_M3 {
        format!("over the {LIMIT_MG_PER_M3} mg/m³ recommended for a working day: slower, less oil, or open the door")
    } else {
        format!("below the {LIMIT_MG_PER_M3} mg/m³ recommended for a working day")
    };
    Ok(outcome
        .numbers("oil mist in the room at this use", "mg/m³", Range { low: likely / UNSURE, likely, high: likely * UNSURE })
        .says(says)
        .number("mist this room bears", "mg/h", allowed))
}

/// The fluids practice ranks for the cut, the best first.
fn ranked(asked: &Asked<'_>, material: &str, row: &Cut) -> Vec<ChoiceRow> {
    let place = |number: usize| match number {
        0 => "first choice",
        1 => "second choice",
        2 => "third choice",
        _ => "will do",
    };
    let mut rows = Vec::new();
    for (number, class) in row.ranked.iter().enumerate() {
        for fluid in asked.reference.fluids_of(class).filter(|fluid| fluid.barred.is_none()) {
            let harm = harm(asked, material, fluid);
            let why = harm.clone().unwrap_or_else(|| format!("{}. {}", place(number), row.why));
            rows.push(choice(fluid, harm.is_none(), why));
        }
    }
    rows.sort_by_key(|row| !row.fits);
    rows
}

/// What a fluid does to what is cut, if it does.
fn harm(asked: &Asked<'_>, material: &str, fluid: &Fluid) -> Option<String> {
    let metal = asked.reference.is_a(material, "metals");
    let attacks = fluid.chemistry.attacks.iter().any(|name| asked.reference.is_a(material, name));
    // Metals are wiped after the cut; what cracks a plastic cracks it in a minute.
    (attacks && !metal).then(|| "it cracks or swells this plastic".to_owned())
}

fn dangers(asked: &Asked<'_>, material: &str, row: &Cut, outcome: Outcome) -> Outcome {
    let is = |group: &str| asked.reference.is_a(material, group);
    let active =
        row.ranked.iter().flat_map(|class| asked.reference.fluids_of(class)).any(|fluid| fluid.traits.contains(&Trait::ActiveSulphur));
    let burns = metal_fire(material, row.operation == Operation::Grind);
    burns
        .into_iter()
        .fold(outcome, |outcome, fire| outcome.caution(fire, "common-practice"))
        .caution_if(
            active || is("copper-alloys"),
            "Active sulphur stains copper, brass and bronze: rinse within the hour, and wipe it off the machine's bronze.",
            "astm-d130",
        )
        .caution("Wash your hands, and never with solvent; keep rags in a lidded tin.", "common-practice")
}
