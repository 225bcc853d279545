//! A fit that did not come out as drawn: the ways out, ranked by what the measurements allow.

use fields::{Given, Kind};
use formulas::bond::{BondJoint, BondMetal, Loading, RetainerKind, bond_holding, bond_quantity, cure_time};
use formulas::fit::{Feature, Instrument};
use formulas::interference::{Holding, Joint};
use formulas::rescue::{Blown, CHANCE_WANTED, Decision, Method, Rescue, Undo, Way, rescue};
use formulas::{Notebook, Silent};
use reference::{Fluid, Material};
use units::{Force, Length, Quantity, Range, System, Temperature, Torque, show};

use super::common::{degrees, said};
use super::solid::{
    BY, NEAR, bond_metal, contact_adhesion, drops, instruments, material, measured, metal, mind_stand_in, objections, percent,
    to_micrometre,
};
use super::{Asked, Outcome, Unanswered};
use crate::page::ChoiceRow;
use crate::picture::{Axis, Band, Line, Mark, Picture};

const BORE: Given<Option<Length>> = Given::maybe("bore", "the bore as measured, mean of your readings");
const SHAFT: Given<Option<Length>> = Given::maybe("shaft", "the shaft as measured, mean of your readings");
const BORE_SPREAD: Given<Option<Length>> =
    Given::maybe("bore_spread", "largest less smallest reading of the bore, at three places and two angles");
const SHAFT_SPREAD: Given<Option<Length>> =
    Given::maybe("shaft_spread", "largest less smallest reading of the shaft, at three places and two angles");
const LENGTH: Given<Option<Length>> = Given::maybe("length", "length of the joint; as long as the shaft is thick, if not given");
const HUB: Given<Vec<String>> = Given::materials("hub", "mild-steel", "common-practice", "what the part with the bore is made of");
const SHAFT_METAL: Given<Vec<String>> = Given::materials("shaft_metal", "mild-steel", "common-practice", "what the shaft is made of");
const OUTSIDE: Given<Option<Length>> = Given::maybe("hub_outside", "outside diameter of the hub; twice the bore, if not given");
const SHAFT_BORE: Given<Option<Length>> = Given::maybe("shaft_bore", "bore of the shaft, if it is hollow");
const ROUGHNESS: Given<Length> = Given::quantity("roughness", "1.6 um", "common-practice", "mean roughness Ra of both parts");
const TORQUE: Given<Option<Torque>> = Given::maybe("torque", "torque it must hold");
const FORCE: Given<Option<Force>> = Given::maybe("force", "force along the shaft it must hold");
const LOADING: Given<&'static str> =
    Given::choice("loading", &["steady", "pulsating", "reversing"], "steady", "common-practice", "how it is loaded");
const SAFETY: Given<f64> =
    Given::number("safety", "2", "common-practice", "factor of safety: 2 for parts prepared and measured, 3 otherwise");
const SERVICE: Given<Temperature> = Given::quantity("service", "40 °C", "common-practice", "hottest the joint gets in service");
const ROOM: Given<Temperature> = Given::quantity("room", "20 °C", "common-practice", "temperature it cures at");
const RUN_OUT: Given<Length> = Given::quantity("run_out", "0.1 mm", "common-practice", "run-out that can be borne");
const REMOVABLE: Given<bool> = Given::flag("removable", "no", "common-practice", "whether it must come apart again without heat");

pub(super) static KIND: Kind = Kind {
    name: "rescue",
    about: "a bore and a shaft that came out wrong: press, bond, sleeve or remake",
    fields: &[
        BORE.field(),
        SHAFT.field(),
        LENGTH.field(),
        BY.field(),
        BORE_SPREAD.field(),
        SHAFT_SPREAD.field(),
        HUB.field(),
        SHAFT_METAL.field(),
        OUTSIDE.field(),
        SHAFT_BORE.field(),
        ROUGHNESS.field(),
        TORQUE.field(),
        FORCE.field(),
        LOADING.field(),
        SAFETY.field(),
        SERVICE.field(),
        ROOM.field(),
        RUN_OUT.field(),
        REMOVABLE.field(),
        NEAR.field(),
    ],
};

/// The parts, beside what the formula takes.
struct Parts<'a> {
    blown: Blown,
    hub: &'a Material,
    shaft: &'a Material,
}

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let parts = parts(asked)?;
    let blown = &parts.blown;
    let found = rescue(r, blown)?;
    let (gap, spread) = (found.gap.gap, 2.0 * found.gap.uncertainty);
    let mut outcome = Outcome::default()
        .size("gap on the diameter", Range { low: gap - spread, likely: gap, high: gap + spread })
        .says("19 times in 20 it is within these; a minus is interference")
        .exact("force to hold at the face", found.needed)
        .says(format!("before the safety of {}", said(blown.safety)));
    outcome = mind_stand_in(outcome, [parts.hub, parts.shaft]);
    outcome = decided(&found, blown, outcome);
    let decided = matches!(found.decision, Decision::Take(_));
    outcome = outcome.choices(found.ways.iter().map(|way| choice(asked, way, decided)));
    if let Decision::Take(method) = found.decision {
        outcome = take(asked, &parts, method, &found, outcome, r)?;
    }
    Ok(outcome
        .picture(picture(&parts, &found))
        .caution_if(
            asked.answers.maybe(&OUTSIDE).is_none(),
            "The hub's outside is supposed to be twice its bore: give `hub_outside`, a thin hub bears less of a press.",
            "common-practice",
        )
        .caution(
            "Never the only security of brakes, steering, lifting gear or road vehicles. These are estimates for hobby use: try a scrap pin and collar.",
            "common-practice",
        ))
}

fn missing(name: &str, what: &str) -> Unanswered {
    Unanswered::Contradiction(format!("`{name}` is missing: give {what}"))
}

fn parts<'a>(asked: &Asked<'a>) -> Result<Parts<'a>, Unanswered> {
    let answers = asked.answers;
    let bore = answers.maybe(&BORE).ok_or_else(|| missing("bore", "the bore as you measured it, such as \"25.013 mm\""))?;
    let shaft = answers.maybe(&SHAFT).ok_or_else(|| missing("shaft", "the shaft as you measured it, such as \"24.96 mm\""))?;
    check_sizes(bore, shaft)?;
    let (force, torque) = (answers.maybe(&FORCE), answers.maybe(&TORQUE));
    if force.is_none() && torque.is_none() {
        return Err(missing("torque", "`torque` or `force`, whichever the joint must hold; without a load no way can be judged"));
    }
    let [by_bore, by_shaft] = instruments(asked);
    let (hub, rod) = (material(asked, &HUB)?, material(asked, &SHAFT_METAL)?);
    let (hub_metal, shaft_metal) = (metal(asked.reference, hub)?, metal(asked.reference, rod)?);
    let roughness = answers.quantity(&ROUGHNESS);
    let blown = Blown {
        bore: measured(bore, by_bore, answers.maybe(&BORE_SPREAD), &hub_metal),
        shaft: measured(shaft, by_shaft, answers.maybe(&SHAFT_SPREAD), &shaft_metal),
        joint: Joint {
            diameter: shaft,
            shaft_bore: answers.maybe(&SHAFT_BORE).unwrap_or_default(),
            hub_outside: answers.maybe(&OUTSIDE).unwrap_or(2.0 * bore),
            length: answers.maybe(&LENGTH).unwrap_or(shaft),
            shaft: shaft_metal,
            hub: hub_metal,
        },
        adhesion: contact_adhesion(asked.reference, [hub, rod], false)?,
        bond_metals: [bond_metal(asked.reference, hub)?, bond_metal(asked.reference, rod)?],
        roughness: [roughness, roughness],
        load: Holding { axial: force.unwrap_or_default(), torque: torque.unwrap_or_default() },
        loading: loading(answers.word(&LOADING)),
        safety: answers.number(&SAFETY),
        service: answers.quantity(&SERVICE),
        run_out: answers.quantity(&RUN_OUT),
        removable: answers.flag(&REMOVABLE),
    };
    Ok(Parts { blown, hub, shaft: rod })
}

/// A gap or an interference beyond what is ever made is a slip of the pen, or two parts of two jobs.
fn check_sizes(bore: Length, shaft: Length) -> Result<(), Unanswered> {
    const TIGHTEST: f64 = 0.01;
    const LOOSEST: f64 = 0.25;
    let [hole, rod] = [bore, shaft].map(units::show_exact);
    if shaft - bore > bore * TIGHTEST {
        return Err(Unanswered::Contradiction(format!(
            "a shaft of {rod} goes into no bore of {hole}: check that the two were not exchanged"
        )));
    }
    if bore - shaft > bore * LOOSEST {
        return Err(Unanswered::Contradiction(format!("a shaft of {rod} does not belong in a bore of {hole}: check both")));
    }
    Ok(())
}

pub(super) fn loading(word: &str) -> Loading {
    match word {
        "pulsating" => Loading::Pulsating,
        "reversing" => Loading::Reversing,
        _ => Loading::Steady,
    }
}

fn words(method: Method) -> &'static str {
    match method {
        Method::Press => "press it as it is",
        Method::PressAndBond => "press or push it together with a thin high-strength compound",
        Method::LowViscosity => "bond it with a thin compound",
        Method::General => "bond it with an ordinary compound",
        Method::GapFilling => "bond it with a paste and activator, centred by shims",
        Method::Remake => "sleeve it (wall of 1.5 mm and more, itself bonded), build it up, or make a part again",
    }
}

/// The class of fluid a way takes.
const fn class(method: Method) -> Option<&'static str> {
    match method {
        Method::PressAndBond | Method::LowViscosity => Some("retainer-low-viscosity"),
        Method::General => Some("retainer-general"),
        Method::GapFilling => Some("retainer-gap-filling"),
        Method::Press | Method::Remake => None,
    }
}

fn fluid<'a>(asked: &Asked<'a>, method: Method) -> Option<&'a Fluid> {
    asked.reference.fluids_of(class(method)?).next()
}

fn choice(asked: &Asked<'_>, way: &Way, decided: bool) -> ChoiceRow {
    let mut why = Vec::new();
    if way.method != Method::Remake {
        why.push(format!("{} sure that the gap suits it", percent(way.suits)));
    }
    if let Some(strength) = way.strength.filter(|strength| strength.high.base() > 0.0) {
        let [low, likely, high] = [strength.low, strength.likely, strength.high].map(|force| show(force, System::Metric));
        let enough = if way.carries { "" } else { ", which does not carry the load" };
        why.push(format!("holds {low} with its safety, likely {likely}, at most {high}{enough}"));
    } else if way.method != Method::Remake {
        why.push("holds nothing at this gap".to_owned());
    }
    if way.run_out.base() > 0.0 {
        let borne = if way.runs_true { "" } else { ", more than can be borne" };
        why.push(format!("may run out by {}{borne}", to_micrometre(way.run_out)));
    }
    let off = match way.undo {
        Undo::PressOut => "presses out again".to_owned(),
        Undo::Heat(at) => format!("comes apart at {}, pulled hot", degrees(at)),
        Undo::Machine => "undone only by machining".to_owned(),
    };
    why.push(if way.comes_apart { off } else { format!("{off}, though it must come apart without heat") });
    let fits = decided && way.sound() && (way.suits >= CHANCE_WANTED || way.method == Method::Remake);
    let known = fluid(asked, way.method);
    ChoiceRow {
        key: known.map(|fluid| fluid.key.clone()).unwrap_or_default(),
        name: words(way.method).to_owned(),
        fits,
        why: why.join("; "),
    }
}

/// What to do, as the first of the ways where it is to measure.
fn decided(found: &Rescue, blown: &Blown, outcome: Outcome) -> Outcome {
    let Decision::Measure { part, by, until, towards } = found.decision else { return outcome };
    let (what, with) = match part {
        Feature::Hole => ("bore", blown.bore.by),
        Feature::Shaft => ("shaft", blown.shaft.by),
    };
    let how = match by {
        _ if by == with => format!("{} again, at three places and two angles, as the mean of several readings", by.words()),
        Instrument::BoreMicrometer => format!("{}, or a telescopic gauge", by.words()),
        _ => by.words().to_owned(),
    };
    let why = if found.gap.decides {
        format!(
            "no way is 95 % sure; with the gap known to {} (one standard deviation; now {}) it would be: {}",
            to_micrometre(until),
            to_micrometre(found.gap.uncertainty),
            words(towards)
        )
    } else {
        "a calliper cannot choose between press, slip and bond, so none is chosen".to_owned()
    };
    outcome.way(format!("first measure the {what} with {how}"), true, why)
}

/// What the way chosen asks for: amount, cure, heat to undo it.
fn take(
    asked: &Asked<'_>,
    parts: &Parts<'_>,
    method: Method,
    found: &Rescue,
    outcome: Outcome,
    r: &mut Notebook,
) -> Result<Outcome, Unanswered> {
    let blown = &parts.blown;
    if class(method).is_none() {
        return Ok(outcome.caution_if(
            method == Method::Press,
            "It holds by itself: no adhesive is needed. Lead of 10 to 15°, oil or paste, and press straight.",
            "common-practice",
        ));
    }
    let nothing = Length::from_base(0.0);
    let gap = if found.gap.gap > nothing { found.gap.gap } else { nothing };
    let amount = bond_quantity(r, blown.joint.diameter, blown.joint.length, gap)?;
    let activator = method == Method::GapFilling || blown.bond_metals.iter().any(|metal| metal.passive());
    let cure = cure_time(r, asked.answers.quantity(&ROOM), gap, blown.bond_metals, activator)?;
    let mut outcome = outcome
        .range("compound", amount)
        .says(format!("{} to put on, the low end the gap's own volume; a ring on both leading edges, with a twist", drops(amount.likely)))
        .range("leave it alone for", cure.fixture)
        .exact("load it after", cure.full)
        .says(if activator {
            "with activator, which costs 10 to 30 % of the strength"
        } else {
            "half its strength after an eighth of that"
        });
    if let Some(Undo::Heat(at)) = found.ways.iter().find(|way| way.method == method).map(|way| way.undo) {
        outcome = outcome.exact("heat that undoes it", at).says("pull it hot; try one and a half times its strength in a press first");
        for objection in objections(asked, [(parts.hub, &blown.joint.hub), (parts.shaft, &blown.joint.shaft)], at) {
            outcome = outcome.caution(format!("To undo it: {objection}"), "common-practice");
        }
    }
    Ok(outcome)
}

/// What each class holds against the gap, with the load and the gap as measured.
fn picture(parts: &Parts<'_>, found: &Rescue) -> Picture {
    const WIDEST_MM: f64 = 0.26;
    let blown = &parts.blown;
    let [hub, shaft]: [BondMetal; 2] = blown.bond_metals;
    let low = |kind: RetainerKind, gap: f64| {
        let joint = BondJoint {
            diameter: blown.joint.diameter,
            length: blown.joint.length,
            gap: Length::from_base(gap * 1e-3),
            hub,
            shaft,
            roughness: blown.roughness[0],
            service: blown.service,
            loading: blown.loading,
        };
        bond_holding(&mut Silent, &kind.retainer(), &joint, blown.safety).ok().map(|held| held.axial.low.base() / 1e3)
    };
    let line = |(name, kind): (&str, RetainerKind)| Line {
        name: name.to_owned(),
        points: (0..=260).filter_map(|step| Some((f64::from(step) / 1e3, low(kind, f64::from(step) / 1e3)?))).collect(),
    };
    let lines: Vec<Line> =
        [("thin compound", RetainerKind::LowViscosity), ("ordinary compound", RetainerKind::General), ("paste", RetainerKind::GapFilling)]
            .map(line)
            .into_iter()
            .filter(|line| !line.points.is_empty())
            .collect();
    let needed = found.needed.base() / 1e3;
    let highest = lines.iter().flat_map(|line| &line.points).map(|(_, y)| *y).fold(needed, f64::max) * 1.15;
    let gap = found.gap.gap.base() * 1e3;
    let spread = 2.0 * found.gap.uncertainty.base() * 1e3;
    let measured = Line {
        name: "gap as measured, 19 times in 20".to_owned(),
        points: vec![((gap - spread).max(0.0), highest * 0.03), ((gap + spread).max(0.0), highest * 0.03)],
    };
    Picture {
        title: "What a bond holds, with its safety, and the gap".to_owned(),
        x: Axis { label: "gap on the diameter, mm".to_owned(), low: 0.0, high: WIDEST_MM.max((gap + spread) * 1.1), logarithmic: false },
        y: Axis { label: "force at the face, kN".to_owned(), low: 0.0, high: highest, logarithmic: false },
        lines: lines.into_iter().chain([measured]).collect(),
        bands: vec![Band { name: "less than the load".to_owned(), low: 0.0, high: needed }],
        marks: vec![Mark { name: "gap".to_owned(), at: (gap, highest * 0.03) }],
    }
}
