//! Gluing faces together.
//!
//! Clean, rough and dry comes first; then the gap, the heat and the weather choose between instant glue and epoxy. Some plastics take no
//! glue and get none.

#![expect(non_snake_case, reason = "symbols match the source")]

use formulas::bond::{Lap, lap_design_stress, lap_stress};
use formulas::math::max;
use formulas::sources::COMMON_PRACTICE;
use formulas::working::Recorder;
use formulas::{given, step};
use shop::{Given, Kind};
use units::{Area, Force, Length, Pressure, Quantity, Temperature};

use super::common::{cures, degrease, wipe};
use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const MATERIALS: Given<Vec<String>> = Given::materials("materials", "mild-steel", "common-practice", "what is glued");
const GAP: Given<Length> = Given::quantity("gap", "0.1 mm", "common-practice", "how far the faces stand apart");
const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "40 °C", "common-practice", "hottest the joint gets");
const OUTDOORS: Given<bool> = Given::flag("outdoors", "false", "common-practice", "whether it stands in damp or weather");
const LOAD: Given<Force> = Given::quantity("load", "0 N", "common-practice", "force along the faces, where it is known");
const LASTING: Given<bool> = Given::flag("lasting", "true", "common-practice", "whether the load never lets go");
const AREA: Given<Area> = Given::quantity("area", "20 cm2", "common-practice", "glued face");

pub(super) static KIND: Kind = Kind {
    name: "bond",
    about: "gluing metals and plastics",
    fields: &[
        MATERIALS.field(),
        GAP.field(),
        TEMPERATURE.field(),
        OUTDOORS.field(),
        LOAD.field(),
        LASTING.field(),
        AREA.field(),
    ],
};

/// Plastics no glue holds on without a primer or plasma.
const UNBONDABLE: [&str; 2] = ["polyethylene", "ptfe-lining"];
/// Plastics on which glue holds badly.
const SLIPPERY: [&str; 2] = ["acetal", "nylon"];

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (materials, outdoors) = (answers.words(&MATERIALS), answers.flag(&OUTDOORS));
    let (gap, area): (Length, Area) = (answers.quantity(&GAP), answers.quantity(&AREA));
    let temperature: Temperature = answers.quantity(&TEMPERATURE);
    let task = |steps| vec![Task { consequence: Consequence::Spoils, times_a_year: bench.times_a_year(), steps }];
    if let Some(material) = materials.iter().find(|material| UNBONDABLE.contains(&material.as_str())) {
        let why = format!("{} takes no glue without a primer; screw, rivet or weld it", bench.reference.name_of(material));
        return Ok(task(vec![Step::refused("glue", why)]));
    }
    let prepare = degrease(bench, materials, wipe(area), true).mind(
        "Degrease, roughen with P180–P320, degrease again; water must stand unbroken for a minute \
                 (ASTM F22). Glue within the hour.",
        "common-practice",
    );
    let (right, will_do, why) = glue(gap, outdoors);
    let slippery = materials.iter().any(|material| SLIPPERY.contains(&material.as_str()));
    let glue = Step::new("glue", "thin on both faces, press together, wipe off what comes out, do not move it")
        .classes(right, will_do, why, "common-practice")
        .demand("bridges the gap", Test::Gap { gap }, "a glue too thick in its gap stays weak or wet", "common-practice")
        .demand("stands the heat", Test::Stands { hottest: temperature }, "a cured glue softens with heat", "common-practice")
        .spares(materials)
        .dose(Dose::ml(glue_ml(r, area, gap)))
        .mind_if(slippery, "Glue holds badly on this plastic: a screw or a snap holds better.", "common-practice")
        .mind(
            "Reckon with a tenth of the data sheet's strength under steady load or above 60 °C (140 °F), a \
                     quarter otherwise; and let nothing peel.",
            "common-practice",
        )
        .mind("May make the skin allergic: nitrile gloves. Instant glue sticks skin and eyes, and heats cotton.", "un-ghs")
        .mind("Never for lifting, brakes, chucks, pressure, food or what turns unwatched.", "common-practice");
    let load: Force = answers.quantity(&LOAD);
    let glue = if load.base() > 0.0 { carries(r, glue, area, load, answers.flag(&LASTING), temperature)? } else { glue };
    Ok(task(vec![prepare, cures(glue, bench)?]))
}

/// The demand that the glue carries the load: the mean stress, and the share of a data sheet's strength to count on.
fn carries<R: Recorder>(r: &mut R, step: Step, area: Area, load: Force, lasting: bool, hottest: Temperature) -> Result<Step, Complaint> {
    // Only the area decides the mean stress; the sheets' thickness and stiffness are not asked, and stand in the lap unused.
    let side = Length::from_base(area.base().sqrt());
    let lap = Lap {
        width: side,
        overlap: side,
        sheet: side,
        bond_line: side,
        modulus: Pressure::from_base(1.0),
        shear_modulus: Pressure::from_base(1.0),
    };
    let needed = lap_stress(r, &lap, load)?;
    let whole = Pressure::from_base(1e6);
    let share = (lap_design_stress(r, whole, lasting, hottest)? / whole).value;
    Ok(step.demand(
        "carries the load",
        Test::Strength { needed, factor: share },
        format!("{:.0} % of a data sheet's strength is what to count on, and in shear only", share * 100.0),
        "common-practice",
    ))
}

/// Right and next best by gap and weather; what gap and heat forbid is judged by itself.
fn glue(gap: Length, outdoors: bool) -> (&'static [&'static str], &'static [&'static str], &'static str) {
    const CLOSE_M: f64 = 0.05e-3;
    const WIDE_M: f64 = 0.5e-3;
    match gap.base() {
        gap if gap > WIDE_M => (&["epoxy-steel-filled"], &["epoxy-tough"], "only a filled putty builds up a gap like this"),
        _ if outdoors => (&["epoxy-tough"], &["epoxy-steel-filled"], "damp creeps under instant glue and quick epoxy"),
        gap if gap <= CLOSE_M => (
            &["cyanoacrylate", "epoxy-tough"],
            &["epoxy-fast", "epoxy-steel-filled"],
            "close, dry and cool: instant glue holds in a minute",
        ),
        _ => (&["epoxy-tough"], &["epoxy-fast", "epoxy-steel-filled"], "an epoxy fills the gap and bears some shock"),
    }
}

/// The gap's volume, half as much again for waste, and half a millilitre at least, since less cannot be mixed; *common practice*.
fn glue_ml<R: Recorder>(r: &mut R, area: Area, gap: Length) -> f64 {
    given!(r, A["cm²"] = area.base() * 1e4, "glued face");
    given!(r, h["mm"] = gap.base() * 1e3, "gap");
    step!(r, V["mL"] = max(1.5 * A * h / 10.0, 0.5), COMMON_PRACTICE);
    V
}
