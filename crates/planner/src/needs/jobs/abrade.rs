//! Rubbing down with emery, stones and polish: the oil that floats the dust away.

use formulas::coating::{GRITS, grit_sequence};
use formulas::working::Recorder;
use handling::fire::metal_fire;
use shop::{Given, Kind};
use units::{Area, Quantity};

use super::common::wipe;
use super::{Bench, Step, Task};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const WITH: Given<&'static str> = Given::choice(
    "with",
    &["emery", "stone", "polish"],
    "emery",
    "common-practice",
    "cloth or paper, a sharpening stone, or polishing paste",
);
const COARSE: Given<f64> = Given::number("from_grit", "180", "common-practice", "coarsest emery, by its P number");
const FINE: Given<f64> = Given::number("to_grit", "400", "common-practice", "finest emery, by its P number");
const MATERIALS: Given<Vec<String>> = Given::materials("materials", "mild-steel", "common-practice", "what is rubbed");
const AREA: Given<Area> = Given::quantity("area", "100 cm2", "common-practice", "face that is rubbed each time");

pub(super) static KIND: Kind = Kind {
    name: "abrade",
    about: "emery, polishing and sharpening on a stone",
    fields: &[WITH.field(), COARSE.field(), FINE.field(), MATERIALS.field(), AREA.field()],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    /// Drops for a stone or a strip of cloth, mL; *common practice*.
    const DROPS_ML: f64 = 1.0;
    let answers = bench.answers();
    let materials = answers.words(&MATERIALS);
    let with = answers.word(&WITH);
    let rub = Step::new(
        "rub",
        if with == "stone" {
            "a few drops on the stone, wipe off when grey, again"
        } else {
            "a few drops on the cloth, again when it drags"
        },
    );
    let rub = if bench.all_are(materials, "plastics") {
        rub.classes(
            &["neutral-detergent", "quench-water"],
            &[],
            "oil and solvent crack stressed plastics; water floats the dust as well",
            "common-practice",
        )
    } else {
        rub.classes(
            &["light-machine-oil"],
            &[
                "spindle-oil",
                "hydraulic-oil",
                "circulating-oil",
                "kerosene",
                "mineral-spirits",
                "dearomatised-solvent",
                "water-displacing-spray",
            ],
            "thin oil keeps the grit cutting and binds its dust",
            "common-practice",
        )
    };
    let rub = if with == "emery" { rub.mind(grits(r, answers.number(&COARSE), answers.number(&FINE))?, "common-practice") } else { rub };
    let rub = rub
        .spares(materials)
        .dose(Dose::ml(DROPS_ML))
        .mind_if(
            with == "emery",
            "At the lathe: cover the ways, hold the strip by its ends or in a holder, never round a \
                 finger; wipe the ways and oil them again.",
            "common-practice",
        )
        .mind_if(with == "stone", "A stone that once had oil always wants oil.", "common-practice")
        .mind_if(
            bench.any_is(materials, "light-metals"),
            "Dust of this metal burns and explodes: kept wet with oil, a little at a time, apart from steel dust and \
                 sparks.",
            "common-practice",
        );
    let rub = materials.iter().filter_map(|material| metal_fire(material, true)).fold(rub, |rub, fire| rub.mind(fire, "common-practice"));
    let plastics = bench.any_is(materials, "plastics");
    let wipe_off = Step::new("wipe off the grit", "fresh cloths until nothing grey comes off")
        .classes(
            if plastics { &["neutral-detergent"] } else { &["dearomatised-solvent"] },
            &["mineral-spirits", "kerosene", "neutral-detergent", "isopropanol", "brake-cleaner"],
            "grit left behind goes on cutting where nobody wants it",
            "common-practice",
        )
        .spares_briefly(materials)
        .dose(wipe(answers.quantity(&AREA)));
    Ok(vec![Task { consequence: Consequence::SlowsOrDirties, times_a_year: bench.times_a_year(), steps: vec![rub, wipe_off] }])
}

/// The grits to go through and what they take off, in words.
fn grits<R: Recorder>(r: &mut R, coarse: f64, fine: f64) -> Result<String, Complaint> {
    let grit = |number: f64| GRITS.iter().find(|(grit, _)| f64::from(*grit) == number).map_or(0, |(grit, _)| *grit);
    let rubbing = grit_sequence(r, grit(coarse), grit(fine))?;
    let steps: Vec<String> = rubbing.steps.iter().map(|step| format!("P{}", step.grit)).collect();
    Ok(format!(
        "{}, each until the scratches of the one before are gone, turned a right angle: they take {:.0} µm off each face after the first, which \
         counts in a fit.",
        steps.join(", "),
        rubbing.takes_off.base() * 1e6
    ))
}
