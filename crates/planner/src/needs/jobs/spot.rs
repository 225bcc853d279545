//! Reading the fit of slides, plates and tapers with spotting blue, and taking it off again.

use formulas::working::Recorder;
use shop::{Given, Kind};
use units::{Area, Quantity};

use super::common::{degrease, wipe};
use super::{Bench, Step, Task};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const FACE: Given<&'static str> = Given::choice("face", &["ways", "plate", "taper"], "ways", "common-practice", "what is read");
const AREA: Given<Area> = Given::quantity("area", "200 cm2", "common-practice", "face of the reference");
const RED: Given<bool> = Given::flag("red", "false", "common-practice", "whether the work is coloured too, for contrast");
const MATERIALS: Given<Vec<String>> = Given::materials("materials", "cast-iron", "common-practice", "what the faces are made of");

pub(super) static KIND: Kind = Kind {
    name: "spot",
    about: "spotting ways, plates and tapers for contact",
    fields: &[FACE.field(), AREA.field(), RED.field(), MATERIALS.field()],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, _r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (materials, area): (_, Area) = (answers.words(&MATERIALS), answers.quantity(&AREA));
    let (way, reading) = match answers.word(&FACE) {
        "taper" => (
            "three thin lines along the plug, seat without a slap, turn once by 30° at most, draw out",
            "Rubbed only at the large end the male angle is larger than the female, only at the small \
                     end smaller; 75 % and heavy at the large end is good. Leave the taper dry.",
        ),
        _ => (
            "roll or wipe out as thin as breath, lay the faces together, move a few millimetres, lift straight off",
            "Spots in a square of 25 mm: 5–10 for general work, 15–20 for ways, 20–25 for plates. A thick film lies.",
        ),
    };
    let dose = Dose::grams(film_ml(area));
    let mut steps = vec![
        degrease(bench, materials, wipe(area), false),
        Step::new("blue", way)
            .classes(&["spotting-blue"], &["spotting-red"], "a film that never dries and moves in micrometres", "common-practice")
            .spares(materials)
            .dose(dose)
            .mind(reading, "common-practice"),
    ];
    if answers.flag(&RED) {
        steps.push(
            Step::new("red", "the other colour on the other face, as thin")
                .classes(&["spotting-red"], &[], "blue spots on red are seen where blue on bright metal is not", "common-practice")
                .spares(materials)
                .dose(dose),
        );
    }
    let remover = bench.cleaning("spotting-blue")?;
    steps.push(
        Step::new("take it off", "wet a cloth, wipe, oil the ways again").turn(remover, 0).spares_briefly(materials).dose(wipe(area)),
    );
    Ok(vec![Task { consequence: Consequence::Spoils, times_a_year: bench.times_a_year(), steps }])
}

/// A film of 2 µm and as much again left on the roller, but not less than a pea; mL, about as many grams; *common practice*.
fn film_ml(area: Area) -> f64 {
    const FILM_M: f64 = 2e-6;
    const LEAST_ML: f64 = 0.05;
    (2.0 * area.base() * FILM_M * 1e6).max(LEAST_ML)
}
