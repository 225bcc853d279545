//! Cleaning: what takes off a soil, one cleaner after the other, without harming what it is on.

use formulas::working::Recorder;
use shop::{Given, Kind};
use units::Area;

use super::common::wipe;
use super::{Bench, Step, Task};
use crate::need::Consequence;
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

pub(super) static KIND: Kind = Kind {
    name: "clean",
    about: "taking off oil, coolant, wax, dye, flux, rust",
    fields: &[SOIL.field(), MATERIALS.field(), AREA.field()],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, _r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let materials = answers.words(&MATERIALS);
    let row = bench.cleaning(answers.word(&SOIL))?;
    let watery = row.first.iter().any(|class| class == "hot-water" || class == "neutral-detergent");
    let steps = (0..row.first.len())
        .map(|turn| {
            let name =
                if row.first.len() == 1 { "clean".to_owned() } else { format!("clean, {}", TURNS.get(turn).unwrap_or(&"once more")) };
            Step::new(name, "from the clean side to the dirty, fresh cloths, rags into a lidded metal can")
                .turn(row, turn)
                .spares(materials)
                .dose(wipe(answers.quantity(&AREA)))
                .mind(
                    "Never a chlorinated cleaner where anything will be welded, brazed, ground or \
                             hot: its vapour turns to phosgene.",
                    "29-cfr-1910-252",
                )
                .mind_if(watery, "Dry at once and oil: wet steel rusts.", "common-practice")
                .mind_if(
                    bench.any_is(materials, "light-metals") || bench.any_is(materials, "zinc-plate"),
                    "Caustic eats this metal and gives off hydrogen.",
                    "common-practice",
                )
        })
        .collect();
    Ok(vec![Task { consequence: Consequence::SlowsOrDirties, times_a_year: bench.times_a_year(), steps }])
}

const TURNS: [&str; 3] = ["first", "then", "last"];
