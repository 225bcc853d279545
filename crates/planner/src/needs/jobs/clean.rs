//! Cleaning: what takes off a soil, one cleaner after the other, without harming what it is on.

use formulas::solution::rinse_residue;
use formulas::working::Recorder;
use handling::bars::{CAUSTIC_LIGHT_METAL, CHLORINATED_HEAT};
use shop::{Given, Kind};
use units::{Area, Quantity, System, Volume, show};

use super::common::wipe;
use super::{Bench, Step, Task};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const SOIL: Given<&'static str> = Given::choice(
    "soil",
    &[
        "swarf-and-cutting-oil",
        "grease",
        "water-mix-coolant",
        "wax-film",
        "layout-dye",
        "spotting-blue",
        "flux",
        "rosin",
        "before-bonding",
        "rust",
        "old-threadlocker",
    ],
    "swarf-and-cutting-oil",
    "common-practice",
    "what is to come off",
);
const MATERIALS: Given<Vec<String>> = Given::materials("materials", "mild-steel", "common-practice", "what it is on, and what is near");
const AREA: Given<Area> = Given::quantity("area", "500 cm2", "common-practice", "face that is cleaned each time");

const THEN: Given<&'static str> = Given::choice(
    "then",
    &["nothing", "bond", "paint", "heat"],
    "nothing",
    "common-practice",
    "what follows: glue, paint or blackening, or welding, brazing and other heat",
);
const BATH: Given<Option<Volume>> =
    Given::maybe("bath", "each of two baths the parts are washed in, one after the other, in place of wiping");

pub(super) static KIND: Kind = Kind {
    name: "clean",
    about: "taking off oil, coolant, wax, dye, flux, rust",
    fields: &[SOIL.field(), MATERIALS.field(), AREA.field(), THEN.field(), BATH.field()],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (materials, area): (_, Area) = (answers.words(&MATERIALS), answers.quantity(&AREA));
    let then = answers.word(&THEN);
    let row = bench.cleaning(answers.word(&SOIL))?;
    let watery = row.first.iter().any(|class| class == "hot-water" || class == "neutral-detergent");
    let washed = answers.maybe(&BATH).map(|bath| Ok::<_, Complaint>((bath, left_on(r, area, bath, bench.shop.units)?))).transpose()?;
    // Lidded baths serve a quarter of a year; *common practice*.
    let fills = (4.0 / bench.times_a_year()).min(1.0);
    let turns = row.first.len();
    let steps = (0..turns)
        .map(|turn| {
            let name = if turns == 1 { "clean".to_owned() } else { format!("clean {}", TURNS.get(turn).unwrap_or(&"once more")) };
            let how = "from the clean side to the dirty, fresh cloths, rags into a lidded metal can";
            let step = Step::new(name, if washed.is_some() { IN_BATHS } else { how }).turn(row, turn).spares(materials);
            let step = match &washed {
                Some((bath, left)) => {
                    step.dose(Dose::volume(2.0 * *bath * fills)).in_tray(surface(*bath)).mind(left.clone(), "common-practice")
                }
                None => step.dose(wipe(area)),
            };
            let step = if then == "heat" { step.near_heat() } else { step };
            let step = if then == "bond" || then == "paint" { step.before_coating() } else { step };
            let step = step
                .never(&CHLORINATED_HEAT)
                .mind_if(
                    turn + 1 == turns && (then == "bond" || then == "paint"),
                    "Clean when water stands on it unbroken for a minute (ASTM F22); then no finger on it.",
                    "common-practice",
                )
                .mind_if(watery, "Dry at once and oil: wet steel rusts.", "common-practice");
            let light = bench.any_is(materials, "light-metals") || bench.any_is(materials, "zinc-plate");
            if light { step.never(&CAUSTIC_LIGHT_METAL) } else { step }
        })
        .collect();
    Ok(vec![Task { consequence: Consequence::SlowsOrDirties, times_a_year: bench.times_a_year(), steps }])
}

const TURNS: [&str; 3] = ["first", "again", "last"];
const IN_BATHS: &str = "in the first bath with a brush, drain, rinse in the second, lids on; the second is the next first";

/// The open face of a bath: a tray 50 mm deep; *common practice*.
fn surface(bath: Volume) -> Area {
    const DEEP_M: f64 = 0.05;
    Area::from_base(bath.base() / DEEP_M)
}

/// What two baths leave on a part, in words; 30 mL of liquid cling to a square metre, *common practice*.
fn left_on<R: Recorder>(r: &mut R, area: Area, bath: Volume, units: System) -> Result<String, Complaint> {
    const CLINGS_M: f64 = 30e-6;
    let left = rinse_residue(r, Volume::from_base(CLINGS_M * area.base()), bath, 2)?;
    Ok(format!("Two baths of {} leave {} of the soil that one bath would hold.", show(bath, units), show(left, units)))
}
