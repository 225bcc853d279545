//! Marking out: a dye for scribed lines, and what takes it off.

#![expect(non_snake_case, reason = "symbols match the source")]

use formulas::sources::COMMON_PRACTICE;
use formulas::working::Recorder;
use formulas::{given, step};
use shop::{Given, Kind};
use units::{Area, Quantity};

use super::common::{degrease, wipe};
use super::{Bench, Step, Task};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const MATERIALS: Given<Vec<String>> = Given::materials("materials", "mild-steel", "common-practice", "what is marked out");
const AREA: Given<Area> = Given::quantity("area", "100 cm2", "common-practice", "face that is coated each time");

pub(super) static KIND: Kind = Kind { name: "mark", about: "marking out with layout dye", fields: &[MATERIALS.field(), AREA.field()] };

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (materials, area): (_, Area) = (answers.words(&MATERIALS), answers.quantity(&AREA));
    let remover = bench.cleaning("layout-dye")?;
    let steps = vec![
        degrease(bench, materials, wipe(area), false),
        Step::new("coat", "brush one thin coat, let it dry for a minute")
            .classes(&["layout-fluid"], &[], "scribed lines stand out bright in a dark film", "common-practice")
            .spares(materials)
            .dose(Dose::ml(dye_ml(r, area)))
            .mind("The film is 5–15 µm thick and counts in what you measure over it.", "common-practice")
            .mind("It is thinned with alcohol: no flame, and open the door.", "common-practice"),
        Step::new("take it off", "wet a cloth, wipe, again with a clean one").turn(remover, 0).spares_briefly(materials).dose(wipe(area)),
    ];
    Ok(vec![Task { consequence: Consequence::Looks, times_a_year: bench.times_a_year(), steps }])
}

/// A wet film of 20 µm, half as much again for waste; *common practice*.
fn dye_ml<R: Recorder>(r: &mut R, area: Area) -> f64 {
    given!(r, A["cm²"] = area.base() * 1e4, "face that is coated");
    given!(r, h["µm"] = 20.0, "wet film");
    step!(r, V["mL"] = 1.5 * A * h / 10000.0, COMMON_PRACTICE);
    V
}
