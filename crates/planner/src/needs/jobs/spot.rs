//! Reading the fit of slides, plates and tapers with spotting blue, and taking it off again.

#![expect(non_snake_case, reason = "symbols match the source")]

use formulas::math::max;
use formulas::sources::COMMON_PRACTICE;
use formulas::taper::detectable_angle_seconds;
use formulas::working::Recorder;
use formulas::{given, step};
use shop::{Given, Kind};
use units::{Area, Length, Quantity};

use super::common::{degrease, wipe};
use super::{Bench, Step, Task};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const FACE: Given<&'static str> = Given::choice("face", &["ways", "plate", "taper"], "ways", "common-practice", "what is read");
const AREA: Given<Area> = Given::quantity("area", "200 cm2", "common-practice", "face of the reference");
const LENGTH: Given<Length> = Given::quantity("length", "50 mm", "common-practice", "length of a taper in contact");
const RED: Given<bool> = Given::flag("red", "false", "common-practice", "whether the work is coloured too, for contrast");
const MATERIALS: Given<Vec<String>> = Given::materials("materials", "cast-iron", "common-practice", "what the faces are made of");

pub(super) static KIND: Kind = Kind {
    name: "spot",
    about: "spotting ways, plates and tapers for contact",
    fields: &[FACE.field(), AREA.field(), LENGTH.field(), RED.field(), MATERIALS.field()],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
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
            "Spots in a square of 25 mm (1 in): 5–10 for general work, 15–20 for ways, 20–25 for plates. A thick film lies.",
        ),
    };
    let dose = Dose::grams(film_ml(r, area));
    let mut blue = Step::new("blue", way)
        .classes(&["spotting-blue"], &["spotting-red"], "a film that never dries and moves in micrometres", "common-practice")
        .spares(materials)
        .dose(dose)
        .mind(reading, "common-practice");
    if answers.word(&FACE) == "taper" {
        let seconds = detectable_angle_seconds(r, Length::from_base(FILM_UM * 1e-6), answers.quantity(&LENGTH))?;
        let shown = format!("A film of {FILM_UM:.0} µm over this length shows a difference of angle of {seconds:.0} seconds of arc and more.");
        blue = blue.mind(shown, "common-practice");
    }
    let mut steps = vec![degrease(bench, materials, wipe(area), false), blue];
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

/// A film that tells the truth, µm; *common practice*.
const FILM_UM: f64 = 2.0;

/// The film and as much again left on the roller, but not less than a pea; mL, about as many grams; *common practice*.
fn film_ml<R: Recorder>(r: &mut R, area: Area) -> f64 {
    given!(r, A["cm²"] = area.base() * 1e4, "face of the reference");
    given!(r, h["µm"] = FILM_UM, "film");
    step!(r, V["mL"] = max(2.0 * A * h / 10000.0, 0.05), COMMON_PRACTICE);
    V
}
