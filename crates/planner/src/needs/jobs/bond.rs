//! Gluing faces together.
//!
//! Clean, rough and dry comes first; then the gap, the heat and the weather choose between instant glue and epoxy. Some plastics take no
//! glue and get none.

use formulas::working::Recorder;
use shop::{Given, Kind};
use units::{Area, Length, Quantity, Temperature};

use super::common::{cures, degrease, wipe};
use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const MATERIALS: Given<Vec<String>> = Given::materials("materials", "mild-steel", "common-practice", "what is glued");
const GAP: Given<Length> = Given::quantity("gap", "0.1 mm", "common-practice", "how far the faces stand apart");
const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "40 °C", "common-practice", "hottest the joint gets");
const OUTDOORS: Given<bool> = Given::flag("outdoors", "false", "common-practice", "whether it stands in damp or weather");
const AREA: Given<Area> = Given::quantity("area", "20 cm2", "common-practice", "glued face");

pub(super) static KIND: Kind = Kind {
    name: "bond",
    about: "gluing metals and plastics",
    fields: &[MATERIALS.field(), GAP.field(), TEMPERATURE.field(), OUTDOORS.field(), AREA.field()],
};

/// Plastics no glue holds on without a primer or plasma.
const UNBONDABLE: [&str; 2] = ["polyethylene", "ptfe-lining"];
/// Plastics on which glue holds badly.
const SLIPPERY: [&str; 2] = ["acetal", "nylon"];

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, _r: &mut R) -> Result<Vec<Task>, Complaint> {
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
        .dose(Dose::ml(glue_ml(area, gap)))
        .mind_if(slippery, "Glue holds badly on this plastic: a screw or a snap holds better.", "common-practice")
        .mind(
            "Reckon with a tenth of the data sheet's strength under steady load or above 60 °C, a \
                     quarter otherwise; and let nothing peel.",
            "common-practice",
        )
        .mind("May make the skin allergic: nitrile gloves. Instant glue sticks skin and eyes, and heats cotton.", "un-ghs")
        .mind("Never for lifting, brakes, chucks, pressure, food or what turns unwatched.", "common-practice");
    Ok(task(vec![prepare, cures(glue, bench)]))
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
fn glue_ml(area: Area, gap: Length) -> f64 {
    const LEAST_ML: f64 = 0.5;
    (1.5 * area.base() * gap.base() * 1e6).max(LEAST_ML)
}
