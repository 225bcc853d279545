//! A bonded joint: a pin in its hole, or two sheets lapped; what it holds, how much it takes, how long it cures, how it comes off.

use fields::{Given, Kind};
use formulas::bond::{
    BondJoint, Heat, Lap, Retainer, RetainerKind, bond_holding, bond_quantity, cure_time, heat_to_undo, lap_design_stress, lap_stress,
    peak_over_average, push_out_force, useful_overlap,
};
use formulas::{FormulaError, Notebook, Silent};
use reference::Fluid;
use units::{Force, Length, Pressure, Quantity, System, Temperature, Torque, show};

use super::common::{FLUID, Judged};
use super::common::{choose, fluid, is_one_of};
use super::rescue::loading;
use super::solid::{NEAR, bond_metal, drops, material, metal, objections};
use super::{Asked, Outcome, Unanswered};
use crate::picture::{Axis, Line, Mark, Picture};

const JOINT: Given<&'static str> =
    Given::choice("joint", &["round", "lap"], "round", "common-practice", "a shaft in a bore, or two sheets lapped over each other");
const METAL: Given<Vec<String>> = Given::materials("material", "mild-steel", "common-practice", "what the shaft or one sheet is made of");
const OTHER: Given<Vec<String>> = Given::materials("other", "mild-steel", "common-practice", "what the hub or the other sheet is made of");
const DIAMETER: Given<Length> = Given::quantity("diameter", "12 mm", "common-practice", "diameter of a round joint");
const LENGTH: Given<Length> = Given::quantity("length", "12 mm", "common-practice", "length of a round joint");
const GAP: Given<Length> = Given::quantity("gap", "0.05 mm", "common-practice", "gap of a round joint, on the diameter");
const ROUGHNESS: Given<Length> = Given::quantity("roughness", "1.6 um", "common-practice", "mean roughness Ra of the rougher face");
const LOADING: Given<&'static str> =
    Given::choice("loading", &["steady", "pulsating", "reversing"], "steady", "common-practice", "how a round joint is loaded");
const SAFETY: Given<f64> =
    Given::number("safety", "2", "common-practice", "factor of safety: 2 for parts prepared and measured, 3 otherwise");
const SERVICE: Given<Temperature> = Given::quantity("service", "40 °C", "common-practice", "hottest it gets in service");
const ROOM: Given<Temperature> = Given::quantity("room", "20 °C", "common-practice", "temperature it cures at");
const ACTIVATOR: Given<bool> = Given::flag("activator", "no", "common-practice", "whether an activator is put on first");
const FORCE: Given<Option<Force>> = Given::maybe("force", "force it must hold, along the shaft or along the sheets");
const TORQUE: Given<Option<Torque>> = Given::maybe("torque", "torque a round joint must hold");
const STRENGTH: Given<Option<Pressure>> =
    Given::maybe("strength", "shear strength of your compound or glue, from its data sheet, in place of the usual one");
const WIDTH: Given<Length> = Given::quantity("width", "25 mm", "common-practice", "width of a lap");
const OVERLAP: Given<Length> = Given::quantity("overlap", "12.5 mm", "astm-d1002", "overlap of a lap");
const SHEET: Given<Length> = Given::quantity("sheet", "1.6 mm", "astm-d1002", "thickness of the sheets of a lap");
const LINE: Given<Length> = Given::quantity("bond_line", "0.2 mm", "common-practice", "thickness of the glue in a lap");
const SHEAR_MODULUS: Given<Pressure> =
    Given::quantity("shear_modulus", "900 MPa", "typical-from-memory", "shear modulus of the glue in a lap; a toughened epoxy has this");
const SUSTAINED: Given<bool> = Given::flag("sustained", "no", "common-practice", "whether a lap is under load for days");

pub(super) static KIND: Kind = Kind {
    name: "bond",
    about: "what a bonded joint holds, how much it takes, how long it cures and how it comes off",
    fields: &[
        JOINT.field(),
        METAL.field(),
        OTHER.field(),
        DIAMETER.field(),
        LENGTH.field(),
        GAP.field(),
        ROUGHNESS.field(),
        LOADING.field(),
        SAFETY.field(),
        SERVICE.field(),
        ROOM.field(),
        ACTIVATOR.field(),
        FORCE.field(),
        TORQUE.field(),
        STRENGTH.field(),
        FLUID.field(),
        WIDTH.field(),
        OVERLAP.field(),
        SHEET.field(),
        LINE.field(),
        SHEAR_MODULUS.field(),
        SUSTAINED.field(),
        NEAR.field(),
    ],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let outcome = if asked.answers.word(&JOINT) == "lap" { lap(asked, r)? } else { round(asked, r)? };
    Ok(outcome
        .caution(
            "Never for lifting, brakes, steering, road vehicles, chucks, unattended turning parts, pressure or food. Estimates for hobby use: try a scrap joint.",
            "common-practice",
        ))
}

const RETAINERS: &[&str] =
    &["retainer-removable", "retainer-low-viscosity", "retainer-general", "retainer-high-temperature", "retainer-gap-filling"];
const GLUES: &[&str] = &["cyanoacrylate", "epoxy-fast", "epoxy-tough", "epoxy-steel-filled"];

/// A retaining compound by the values of the data.
fn retainer(fluid: &Fluid) -> Option<Retainer> {
    let bond = fluid.bond.as_ref()?;
    let heat = if is_one_of(fluid, &["retainer-high-temperature"]) { Heat::HighTemperature } else { Heat::Standard };
    Some(Retainer { strength: bond.strength?, widest_gap: bond.gap?, heat })
}

/// The fluid asked about, which must be one of these classes.
fn named<'a>(asked: &Asked<'a>, classes: &[&str], what: &str) -> Result<Option<&'a Fluid>, Unanswered> {
    let found = fluid(asked, &FLUID)?;
    match found {
        Some(fluid) if !is_one_of(fluid, classes) => Err(Unanswered::Contradiction(format!("`{}` is no {what}", fluid.key))),
        other => Ok(other),
    }
}

fn round(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let (shaft, hub) = (material(asked, &METAL)?, material(asked, &OTHER)?);
    let joint = BondJoint {
        diameter: answers.quantity(&DIAMETER),
        length: answers.quantity(&LENGTH),
        gap: answers.quantity(&GAP),
        hub: bond_metal(asked.reference, hub)?,
        shaft: bond_metal(asked.reference, shaft)?,
        roughness: answers.quantity(&ROUGHNESS),
        service: answers.quantity(&SERVICE),
        loading: loading(answers.word(&LOADING)),
    };
    let safety = answers.number(&SAFETY);
    let choices = choose(asked.reference, |fluid| judge(asked, fluid, &joint, safety));
    if choices.is_empty() {
        // What no compound can be worked with is no matter of the compound.
        bond_holding(&mut Silent, &RetainerKind::General.retainer(), &joint, safety)?;
    }
    let best = || choices.iter().find(|row| row.fits).and_then(|row| asked.reference.fluid(&row.key));
    let chosen = named(asked, RETAINERS, "retaining compound")?.or_else(best);
    let Some(used) = chosen else {
        let outcome = Outcome::default().choices(choices);
        return Ok(outcome.way("no compound holds this", false, "more area, less gap or heat, or a press: see the sheets fit and rescue"));
    };
    let mut kind = retainer(used).ok_or_else(|| Unanswered::Contradiction(format!("no strength of `{}` is known", used.key)))?;
    kind.strength = answers.maybe(&STRENGTH).unwrap_or(kind.strength);
    let held = bond_holding(r, &kind, &joint, safety)?;
    let amount = bond_quantity(r, joint.diameter, joint.length, joint.gap)?;
    let metals = [joint.hub, joint.shaft];
    let activator = answers.flag(&ACTIVATOR);
    let cure = cure_time(r, answers.quantity(&ROOM), joint.gap, metals, activator)?;
    let push = push_out_force(r, &kind, joint.diameter, joint.length)?;
    let hot = heat_to_undo(kind.heat);
    let name = &used.name;
    let mut outcome = Outcome::default()
        .range(format!("{name}: shear it is worked with"), formulas::bond::bond_strength(&mut Silent, &kind, &joint, safety)?)
        .says("the low end with the safety in it; use that one to rely on it")
        .range("force it holds along", held.axial)
        .range("torque it holds", held.torque)
        .range("compound", amount)
        .says(format!("{} to put on, the low end the gap's own volume", drops(amount.likely)))
        .range("leave it alone for", cure.fixture)
        .range("half its strength after", cure.half)
        .exact("load it after", cure.full)
        .range("press that should push it out again", push)
        .says("by the full strength of its class on bare steel, whatever gap and metal take from it, so that the press is strong enough")
        .exact("heat that undoes it", hot)
        .says("pull it hot, for it sets again as it cools")
        .choices(choices);
    if let (Ok(hub_metal), Ok(shaft_metal)) = (metal(asked.reference, hub), metal(asked.reference, shaft)) {
        for objection in objections(asked, [(hub, &hub_metal), (shaft, &shaft_metal)], hot) {
            outcome = outcome.caution(format!("To undo it: {objection}"), "common-practice");
        }
    }
    Ok(outcome
        .caution_if(
            metals.iter().any(|metal| metal.passive()) && !activator,
            "A passive metal starts the cure slowly or not at all: `--activator yes`, and count on 10 to 30 % less strength.",
            "common-practice",
        )
        .caution("Degrease, abrade lightly, degrease again; do not polish. No oil, and nothing near a bearing's race.", "common-practice")
        .picture(picture(&kind, name, &joint, safety)))
}

/// Whether a compound carries the load of a round joint.
fn judge(asked: &Asked<'_>, fluid: &Fluid, joint: &BondJoint, safety: f64) -> Option<Judged> {
    if !is_one_of(fluid, RETAINERS) {
        return None;
    }
    let kind = retainer(fluid)?;
    let gap = kind.widest_gap.base();
    let held = match bond_holding(&mut Silent, &kind, joint, safety) {
        Ok(held) => held,
        Err(FormulaError::OutOfRange { what: "the temperature of the joint", .. }) => {
            return Some(Judged {
                fits: false,
                off: gap,
                why: format!("it bears {} at most", show(fluid.bond.as_ref()?.hottest, System::Metric)),
            });
        }
        Err(FormulaError::OutOfRange { what: "the gap on the diameter", .. }) => {
            return Some(Judged {
                fits: false,
                off: gap,
                why: format!("it fills {} on the diameter at most", show(kind.widest_gap, System::Metric)),
            });
        }
        Err(_) => return None,
    };
    let (force, torque) = (asked.answers.maybe(&FORCE).unwrap_or_default(), asked.answers.maybe(&TORQUE).unwrap_or_default());
    // The two loads act across each other at the same face.
    let share = (force / held.axial.low).value.hypot((torque / held.torque.low).value);
    let fits = share <= 1.0;
    let say = if fits { "holds" } else { "holds too little:" };
    let why = format!(
        "{say} {} along, or {} round, with its safety",
        show(held.axial.low, System::Metric),
        show(held.torque.low, System::Metric)
    );
    // The tightest compound that fills the gap wets it best; the weak one is for what must come off.
    let weak = if is_one_of(fluid, &["retainer-removable"]) { 1.0 } else { 0.0 };
    let hot = if matches!(kind.heat, Heat::HighTemperature) { 0.5 } else { 0.0 };
    Some(Judged { fits, off: gap + weak + hot, why })
}

/// What a compound holds against the gap.
fn picture(kind: &Retainer, name: &str, joint: &BondJoint, safety: f64) -> Picture {
    let widest = kind.widest_gap.base() * 1e3;
    let at = |gap: f64| {
        let joint = BondJoint { gap: Length::from_base(gap * 1e-3), ..*joint };
        let held = bond_holding(&mut Silent, kind, &joint, safety).ok()?;
        Some([held.axial.low, held.axial.likely, held.axial.high].map(|force| force.base() / 1e3))
    };
    let steps = || (0..=60).map(|step| widest * f64::from(step) / 60.0);
    let line = |index: usize, word: &str| Line {
        name: format!("{name}, {word}"),
        points: steps().filter_map(|gap| Some((gap, at(gap)?.get(index).copied()?))).collect(),
    };
    let highest = at(0.0).map_or(1.0, |[_, _, high]| high) * 1.1;
    let gap = joint.gap.base() * 1e3;
    Picture {
        title: "What the bond holds along, and the gap".to_owned(),
        x: Axis { label: "gap on the diameter, mm".to_owned(), low: 0.0, high: widest * 1.05, logarithmic: false },
        y: Axis { label: "force it holds, kN".to_owned(), low: 0.0, high: highest, logarithmic: false },
        lines: vec![line(0, "with its safety"), line(1, "likely"), line(2, "most")],
        bands: Vec::new(),
        marks: at(gap).map(|[low, _, _]| Mark { name: "your gap".to_owned(), at: (gap, low) }).into_iter().collect(),
    }
}

fn lap(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let (one, other) = (material(asked, &METAL)?, material(asked, &OTHER)?);
    for sheet in [one, other] {
        if ["polyethylene", "ptfe-lining"].contains(&sheet.key.as_str()) {
            return Err(Unanswered::Contradiction(format!("no glue holds on {} without a primer: screw, clamp or weld it", sheet.name)));
        }
    }
    let solid = one.solid.as_ref().zip(other.solid.as_ref());
    let (solid, second) =
        solid.ok_or_else(|| Unanswered::Contradiction("how stiff the sheets are is not known: a lap is worked for metals".to_owned()))?;
    let softer = if solid.modulus <= second.modulus { solid } else { second };
    let lap = Lap {
        width: answers.quantity(&WIDTH),
        overlap: answers.quantity(&OVERLAP),
        sheet: answers.quantity(&SHEET),
        bond_line: answers.quantity(&LINE),
        modulus: softer.modulus,
        shear_modulus: answers.quantity(&SHEAR_MODULUS),
    };
    let service = answers.quantity(&SERVICE);
    let sustained = answers.flag(&SUSTAINED);
    let stress = answers.maybe(&FORCE).map(|force| lap_stress(r, &lap, force)).transpose()?;
    let choices = choose(asked.reference, |fluid| glue(fluid, stress, service, sustained, lap.bond_line));
    let best = || choices.iter().find(|row| row.fits).and_then(|row| asked.reference.fluid(&row.key));
    let used = named(asked, GLUES, "glue for a lap")?.or_else(best);
    let strength = answers.maybe(&STRENGTH).or_else(|| used?.bond.as_ref()?.strength);
    let peak = peak_over_average(r, &lap)?;
    let mut outcome = Outcome::default();
    if let Some(stress) = stress {
        outcome = outcome.exact("shear on average", stress);
    }
    outcome = outcome.number("peak at the ends over the average", "times", peak).says("lengthening the lap hardly helps; widening it does");
    if let Some(strength) = strength {
        let design = lap_design_stress(r, strength, sustained, service)?;
        let each = lap_stress(&mut Silent, &lap, Force::from_base(1.0))?;
        let holds = Force::from_base((design / each).value);
        outcome = outcome
            .exact("shear to count on", design)
            .says(used.map_or_else(|| "of your data sheet's value".to_owned(), |fluid| format!("of {}", fluid.name)))
            .exact("force the lap holds", holds);
        if let Some(yields) = softer.yield_stress {
            outcome = outcome.exact("overlap beyond which nothing is gained", useful_overlap(r, lap.sheet, yields, strength)?);
        }
    }
    Ok(outcome
        .choices(choices)
        .caution("A lap holds in shear: what peels or cleaves it must be designed away, with a rivet or a folded edge.", "astm-d1002")
        .caution(
            "Degrease, abrade with P180 to P320, degrease; a film of water must not break on it; bond within the hour.",
            "common-practice",
        )
        .caution("Cyanoacrylate glues skin and eyes at once and heats on cotton; epoxy hardener burns and can make you allergic: gloves, glasses, air.", "un-ghs"))
}

/// Whether a glue holds a lap.
fn glue(fluid: &Fluid, stress: Option<Pressure>, service: Temperature, sustained: bool, line: Length) -> Option<Judged> {
    if !is_one_of(fluid, GLUES) {
        return None;
    }
    let bond = fluid.bond.as_ref()?;
    let strength = bond.strength?;
    let miss = |why: String| Some(Judged { fits: false, off: 1.0, why });
    if service > bond.hottest {
        return miss(format!("it bears {} at most", show(bond.hottest, System::Metric)));
    }
    if bond.gap.is_some_and(|gap| line > gap) {
        return miss(format!("it fills {} at most", show(bond.gap?, System::Metric)));
    }
    let design = lap_design_stress(&mut Silent, strength, sustained, service).ok()?;
    let fits = stress.is_none_or(|stress| stress <= design);
    let say = if fits { "count on" } else { "too weak: count on" };
    let cures =
        format!("handle it after {}, load it after {}", show(bond.handle_after, System::Metric), show(bond.load_after, System::Metric));
    Some(Judged {
        fits,
        off: -design.base(),
        why: format!("{say} {} of its {}; {cures}", show(design, System::Metric), show(strength, System::Metric)),
    })
}
