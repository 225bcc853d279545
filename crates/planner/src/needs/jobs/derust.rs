//! Taking off rust with acid, ending the acid, and oiling at once.

use formulas::working::Recorder;
use handling::bars::HYDROCHLORIC;
use shop::{Given, Kind};
use units::{Area, Quantity};

use super::common::{degrease, oil_after, wipe};
use super::{Bench, Step, Task};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const MATERIALS: Given<Vec<String>> = Given::materials("materials", "mild-steel", "common-practice", "what is rusty, and what is on it");
const AREA: Given<Area> = Given::quantity("area", "500 cm2", "common-practice", "rusty face each time");

pub(super) static KIND: Kind = Kind { name: "derust", about: "taking off rust", fields: &[MATERIALS.field(), AREA.field()] };

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, _r: &mut R) -> Result<Vec<Task>, Complaint> {
    /// Remover and oil for a square metre, mL; *common practice*.
    const ACID_ML_PER_M2: f64 = 100.0;
    const OIL_ML_PER_M2: f64 = 20.0;
    /// Bicarbonate for each millilitre of remover, g: a fifth of it is acid, and acid takes nearly its mass twice; *common practice*.
    const SODA_G_PER_ML: f64 = 0.3;
    let answers = bench.answers();
    let (materials, area): (_, Area) = (answers.words(&MATERIALS), answers.quantity(&AREA));
    let row = bench.cleaning("rust")?;
    let task = |steps| vec![Task { consequence: Consequence::Spoils, times_a_year: bench.times_a_year(), steps }];
    if bench.any_is(materials, "hardened-steels") {
        let why = format!("{} Rub it off with fine wool and light oil.", row.why);
        return Ok(task(vec![Step::refused("derust", why).spares(materials)]));
    }
    let acid_ml = ACID_ML_PER_M2 * area.base();
    Ok(task(vec![
        degrease(bench, materials, wipe(area), false),
        Step::new("take off rust", "brush on or soak until it wipes off, brush, again")
            .turn(row, 0)
            .spares(materials)
            .dose(Dose::ml(acid_ml))
            .mind(
                "Acid: goggles, gloves, open door; hydrogen comes off, no flame. Not on springs and hard \
                     parts.",
                "common-practice",
            )
            .never(&HYDROCHLORIC),
        Step::new("neutralise", "rinse, wipe with a spoonful in water, rinse hot, dry at once")
            .classes(&["bicarbonate"], &[], "acid left in pores brings the rust back", "common-practice")
            .spares_briefly(materials)
            .dose(Dose::grams(SODA_G_PER_ML * acid_ml))
            .mind("In an open vessel, a little at a time: it foams.", "common-practice"),
        oil_after(materials, Dose::ml((OIL_ML_PER_M2 * area.base()).max(1.0))),
    ]))
}
