//! A hole and a shaft: their limits by class, the gap they leave, what two measured parts will do, and what a press holds.

use fields::{Given, Kind};
use formulas::fit::{
    Chances, Class, Feature, Limits, MeasuredGap, chance_below_normal, chance_below_uniform, chances, clearance, limits, measured_gap,
    uncertainty,
};
use formulas::interference::Joint;
use formulas::{Notebook, Silent};
use units::{Force, Length, Quantity, Range, Temperature, Torque};

use super::press::{Press, press};
use super::solid::{BY, NEAR, in_percent, instruments, material, measured, metal, mind_stand_in, percent};
use super::{Asked, Outcome, Unanswered};
use crate::picture_fit::{Zone, Zones};

const NOMINAL: Given<Length> = Given::quantity("nominal", "25 mm", "common-practice", "the size on the drawing, of both parts");
const HOLE: Given<&'static str> = Given::name("hole", "H7", "common-practice", "tolerance class of the hole, with a capital, such as H7");
const SHAFT: Given<&'static str> =
    Given::name("shaft", "g6", "common-practice", "tolerance class of the shaft, with a small letter, such as g6");
const MEASURED_HOLE: Given<Option<Length>> = Given::maybe("measured_hole", "the hole as measured, mean of your readings");
const MEASURED_SHAFT: Given<Option<Length>> = Given::maybe("measured_shaft", "the shaft as measured, mean of your readings");
const HOLE_SPREAD: Given<Option<Length>> =
    Given::maybe("hole_spread", "largest less smallest reading of the hole, at three places and two angles");
const SHAFT_SPREAD: Given<Option<Length>> =
    Given::maybe("shaft_spread", "largest less smallest reading of the shaft, at three places and two angles");
const HUB: Given<Vec<String>> = Given::materials("hub", "mild-steel", "common-practice", "what the part with the hole is made of");
const SHAFT_METAL: Given<Vec<String>> = Given::materials("shaft_metal", "mild-steel", "common-practice", "what the shaft is made of");
const LENGTH: Given<Option<Length>> = Given::maybe("length", "length of the joint; with the hub's outside, a press is worked out");
const OUTSIDE: Given<Option<Length>> = Given::maybe("hub_outside", "outside diameter of the hub");
const SHAFT_BORE: Given<Option<Length>> = Given::maybe("shaft_bore", "bore of the shaft or bush, if it is hollow");
const POISSON: Given<Option<f64>> = Given::maybe_number("hub_poisson", "Poisson's ratio of the hub, if not that of its metal");
const HUB_RZ: Given<Length> = Given::quantity("hub_rz", "6.3 um", "common-practice", "roughness Rz of the hole, about six times its Ra");
const SHAFT_RZ: Given<Length> = Given::quantity("shaft_rz", "4 um", "common-practice", "roughness Rz of the shaft, about six times its Ra");
const ASSEMBLY: Given<&'static str> =
    Given::choice("assembly", &["pressed", "shrunk"], "pressed", "common-practice", "pressed in cold, or shrunk on with heat");
const OILED: Given<bool> = Given::flag("oiled", "no", "common-practice", "whether it is pressed in with oil");
const SAFETY: Given<f64> = Given::number("safety", "1.5", "common-practice", "factor of safety of what it holds: 1.5 steady, 2 to and fro");
const FORCE: Given<Option<Force>> = Given::maybe("force", "force along the shaft that it must hold");
const TORQUE: Given<Option<Torque>> = Given::maybe("torque", "torque that it must hold");
const ROOM: Given<Temperature> = Given::quantity("room", "20 °C", "common-practice", "temperature the parts were measured at");
const SERVICE: Given<Option<Temperature>> = Given::maybe("service", "hottest both parts get in service");

pub(super) static KIND: Kind = Kind {
    name: "fit",
    about: "what gap a hole and a shaft leave, by their classes or as measured, and what a press holds",
    fields: &[
        NOMINAL.field(),
        HOLE.field(),
        SHAFT.field(),
        MEASURED_HOLE.field(),
        MEASURED_SHAFT.field(),
        BY.field(),
        HOLE_SPREAD.field(),
        SHAFT_SPREAD.field(),
        HUB.field(),
        SHAFT_METAL.field(),
        LENGTH.field(),
        OUTSIDE.field(),
        SHAFT_BORE.field(),
        POISSON.field(),
        HUB_RZ.field(),
        SHAFT_RZ.field(),
        ASSEMBLY.field(),
        OILED.field(),
        SAFETY.field(),
        FORCE.field(),
        TORQUE.field(),
        ROOM.field(),
        SERVICE.field(),
        NEAR.field(),
    ],
};

/// What was measured of a pair.
struct Pair {
    gap: MeasuredGap,
    chances: Chances,
    /// Size and standard uncertainty of hole and shaft.
    parts: [(Length, Length); 2],
}

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let nominal = asked.answers.quantity(&NOMINAL);
    let hole_class = class(asked, &HOLE, Feature::Hole)?;
    let shaft_class = class(asked, &SHAFT, Feature::Shaft)?;
    let hole = limits(r, nominal, hole_class)?;
    let shaft = limits(r, nominal, shaft_class)?;
    let gap = clearance(r, hole, shaft);
    let nothing = Length::from_base(0.0);
    let even = chance_below_uniform(r, hole, shaft, nothing)?;
    let bell = chance_below_normal(r, hole, shaft, nothing)?;
    let pair = pair(asked, gap.high, nominal, r)?;
    let mut outcome = Outcome::default()
        .size(format!("hole {hole_class}"), sizes(nominal, hole))
        .says(deviations(hole))
        .size(format!("shaft {shaft_class}"), sizes(nominal, shaft))
        .says(deviations(shaft))
        .size("gap on the diameter", gap)
        .says(kind_of_fit(gap))
        .numbers("chance that a pair interferes", "%", Range { low: even.min(bell), likely: even, high: even.max(bell) }.map(in_percent))
        .says(format!(
            "{} if sizes lie evenly within their limits, {} if they crowd in the middle; decide on the worse",
            percent(even),
            percent(bell)
        ));
    if let Some(pair) = &pair {
        outcome = as_measured(pair, outcome);
    }
    let interference = match &pair {
        // 95 % of measured pairs lie within two standard uncertainties.
        Some(pair) => {
            Range { low: pair.gap.gap - 2.0 * pair.gap.uncertainty, likely: pair.gap.gap, high: pair.gap.gap + 2.0 * pair.gap.uncertainty }
        }
        None => gap,
    };
    let interference = Range { low: -interference.high, likely: -interference.likely, high: -interference.low };
    outcome = pressed(asked, interference, nominal, outcome, r)?;
    if let (None, true, Some(smoothed)) = (&pair, gap.low < nothing, press_smoothing(asked)) {
        let even = 1.0 - chance_below_uniform(&mut Silent, hole, shaft, -smoothed)?;
        let bell = 1.0 - chance_below_normal(&mut Silent, hole, shaft, -smoothed)?;
        let chance = Range { low: even.min(bell), likely: even, high: even.max(bell) }.map(in_percent);
        outcome = outcome
            .numbers("chance that smoothing leaves no press", "%", chance)
            .says(format!("pressing flattens {} of roughness on the diameter", units::show(smoothed, units::System::Metric)));
    }
    Ok(outcome.zones(zones(nominal, [(hole_class, hole), (shaft_class, shaft)], pair.as_ref())).caution(
        "Measure both parts at one temperature, and clean: 10 K and a film of oil or dye are worth several micrometres.",
        "common-practice",
    ))
}

/// A class of the feature it is asked for.
fn class(asked: &Asked<'_>, field: &Given<&'static str>, feature: Feature) -> Result<Class, Unanswered> {
    let class: Class = asked.answers.word(field).parse()?;
    if class.feature == feature {
        return Ok(class);
    }
    Err(Unanswered::Contradiction(match feature {
        Feature::Hole => format!("`{class}` is a class of a shaft: write a hole with a capital, such as H7"),
        Feature::Shaft => format!("`{class}` is a class of a hole: write a shaft with a small letter, such as g6"),
    }))
}

fn sizes(nominal: Length, limits: Limits) -> Range<Length> {
    let middle = (limits.lower + limits.upper) / 2.0;
    Range { low: nominal + limits.lower, likely: nominal + middle, high: nominal + limits.upper }
}

/// Deviations as they stand on a drawing.
fn deviations(limits: Limits) -> String {
    let signed = |length: Length| {
        let micrometres = length.base() * 1e6;
        let number = units::show_number(micrometres.abs(), units::Digits::Significant(4));
        let sign = if micrometres > 1e-9 {
            "+"
        } else if micrometres < -1e-9 {
            "−"
        } else {
            ""
        };
        format!("{sign}{number}")
    };
    format!("{}/{} µm on the nominal size", signed(limits.upper), signed(limits.lower))
}

fn kind_of_fit(gap: Range<Length>) -> &'static str {
    let nothing = Length::from_base(0.0);
    if gap.low >= nothing {
        "a clearance fit: every pair goes together by hand"
    } else if gap.high <= nothing {
        "an interference fit: every pair has to be pressed or shrunk; a minus is interference"
    } else {
        "a transition fit: some pairs slip, some press; a minus is interference"
    }
}

fn pair(asked: &Asked<'_>, widest: Length, nominal: Length, r: &mut Notebook) -> Result<Option<Pair>, Unanswered> {
    /// A part further off than this share of its size was read wrong, or belongs to another drawing.
    const ANOTHER_SIZE: f64 = 0.05;
    let answers = asked.answers;
    let (hole, shaft) = match (answers.maybe(&MEASURED_HOLE), answers.maybe(&MEASURED_SHAFT)) {
        (None, None) => return Ok(None),
        (Some(hole), Some(shaft)) => (hole, shaft),
        (Some(_), None) => return Err(Unanswered::Contradiction("`measured_shaft` is missing: a gap has two sides".to_owned())),
        (None, Some(_)) => return Err(Unanswered::Contradiction("`measured_hole` is missing: a gap has two sides".to_owned())),
    };
    for (name, size) in [("measured_hole", hole), ("measured_shaft", shaft)] {
        if (size - nominal).abs() > nominal * ANOTHER_SIZE {
            let [size, nominal] = [size, nominal].map(units::show_exact);
            return Err(Unanswered::Contradiction(format!("`{name}` is {size}, far from the nominal {nominal}: give `nominal` too")));
        }
    }
    let [by_hole, by_shaft] = instruments(asked);
    let hub = metal(asked.reference, material(asked, &HUB)?)?;
    let rod = metal(asked.reference, material(asked, &SHAFT_METAL)?)?;
    let hole = measured(hole, by_hole, answers.maybe(&HOLE_SPREAD), &hub);
    let shaft = measured(shaft, by_shaft, answers.maybe(&SHAFT_SPREAD), &rod);
    let gap = measured_gap(r, &hole, &shaft)?;
    let nothing = Length::from_base(0.0);
    let chances = chances(r, &gap, if widest > nothing { widest } else { nothing })?;
    let parts = [(hole.size, uncertainty(&mut Silent, &hole)?), (shaft.size, uncertainty(&mut Silent, &shaft)?)];
    Ok(Some(Pair { gap, chances, parts }))
}

fn as_measured(pair: &Pair, outcome: Outcome) -> Outcome {
    const SURE: f64 = 0.95;
    let MeasuredGap { gap, uncertainty, decides } = pair.gap;
    let Chances { press, slip, loose } = pair.chances;
    let outcome = outcome
        .size("gap as measured", Range { low: gap - 2.0 * uncertainty, likely: gap, high: gap + 2.0 * uncertainty })
        .says("19 times in 20 it is within these; a minus is interference")
        .number("chance that it presses", "%", in_percent(press))
        .number("chance that it slips", "%", in_percent(slip))
        .says("with no more than the widest gap of the classes")
        .number("chance that it is looser than the classes allow", "%", in_percent(loose));
    if !decides {
        return outcome.way(
            "measure again with a micrometer and a bore gauge",
            true,
            "a calliper is not fine enough to choose between a press, a slip fit and a bond",
        );
    }
    let ways = [("these two press", press), ("these two slip together", slip), ("these two are too loose: see the sheet rescue", loose)];
    match ways.into_iter().find(|(_, chance)| *chance >= SURE) {
        Some((way, chance)) => outcome.way(way, true, format!("{} sure", percent(chance))),
        None => outcome.way(
            "measure better",
            true,
            format!(
                "nothing is 95 % sure: {} it presses, {} it slips, {} it is too loose; take more readings, at three places and two angles",
                percent(press),
                percent(slip),
                percent(loose)
            ),
        ),
    }
}

/// What roughness takes from an interference, on the diameter.
fn press_smoothing(asked: &Asked<'_>) -> Option<Length> {
    super::press::smoothing(asked.answers.quantity(&HUB_RZ), asked.answers.quantity(&SHAFT_RZ))
}

/// What the press holds and bears, where there can be one and enough is known.
fn pressed(
    asked: &Asked<'_>,
    interference: Range<Length>,
    nominal: Length,
    outcome: Outcome,
    r: &mut Notebook,
) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let nothing = Length::from_base(0.0);
    let (hub, rod) = (material(asked, &HUB)?, material(asked, &SHAFT_METAL)?);
    let (length, outside) = match (answers.maybe(&LENGTH), answers.maybe(&OUTSIDE)) {
        (Some(length), Some(outside)) => (length, outside),
        (None, None) if interference.high > nothing => {
            return Ok(outcome
                .caution("To see what a press holds, and whether it splits the hub, give the length and the hub's outside.", "din-7190"));
        }
        (None, None) => return Ok(outcome),
        (Some(_), None) => return Err(Unanswered::Contradiction("`hub_outside` is missing: a press is worked out with both".to_owned())),
        (None, Some(_)) => return Err(Unanswered::Contradiction("`length` is missing: a press is worked out with both".to_owned())),
    };
    let mut hub_metal = metal(asked.reference, hub)?;
    hub_metal.poisson = answers.maybe_number(&POISSON).unwrap_or(hub_metal.poisson);
    let joint = Joint {
        diameter: nominal,
        shaft_bore: answers.maybe(&SHAFT_BORE).unwrap_or_default(),
        hub_outside: outside,
        length,
        shaft: metal(asked.reference, rod)?,
        hub: hub_metal,
    };
    let asked_press = Press {
        joint,
        materials: [hub, rod],
        interference,
        rz: [answers.quantity(&HUB_RZ), answers.quantity(&SHAFT_RZ)],
        shrunk: answers.word(&ASSEMBLY) == "shrunk",
        oiled: answers.flag(&OILED),
        safety: answers.number(&SAFETY),
        force: answers.maybe(&FORCE),
        torque: answers.maybe(&TORQUE),
        room: answers.quantity(&ROOM),
        service: answers.maybe(&SERVICE),
    };
    Ok(mind_stand_in(press(asked, &asked_press, outcome, r)?, [hub, rod]))
}

fn zones(nominal: Length, [hole, shaft]: [(Class, Limits); 2], pair: Option<&Pair>) -> Zones {
    let micrometres = |length: Length| length.base() * 1e6;
    let zone = |what: &str, (class, limits): (Class, Limits), part: Option<(Length, Length)>| Zone {
        name: format!("{what} {class}"),
        lower: micrometres(limits.lower),
        upper: micrometres(limits.upper),
        measured: part.map(|(size, u)| (micrometres(size - nominal), 2.0 * micrometres(u))),
    };
    let part = |index: usize| pair.and_then(|pair| pair.parts.get(index).copied());
    Zones {
        title: format!("Tolerance zones at {}", units::show_exact(nominal)),
        zones: vec![zone("hole", hole, part(0)), zone("shaft", shaft, part(1))],
    }
}
