//! An air tool, or the lubricator of its line.
//!
//! Wet air washes out an ordinary oil; air-tool oil takes the water up. It is fed by drops to the inlet or by a lubricator, one drop a
//! minute for each 10 to 20 cubic feet of air.

use formulas::cutting::DROP_ML;
use formulas::working::Recorder;
use formulas::{given, sources, step};
use reference::{Form, Trait};
use shop::{Fitting, Given, Kind};
use units::{Quantity, VolumeRate};

use super::common::mm2_per_s;
use super::interval::Interval;
use super::{Asking, Spot};
use crate::demand::Test;
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};
use crate::verdict::Grade;

const FLOW: Given<VolumeRate> = Given::quantity("flow", "150 L/min", "common-practice", "free air the tool takes");

pub(super) static KIND: Kind = Kind { name: "air tool", about: "an air tool or the lubricator of its line", fields: &[FLOW.field()] };

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// VG 22 to 32 at room temperature, mm²/s; expanding air keeps the tool cool. *Common practice.*
    const LOW: f64 = 30.0;
    const HIGH: f64 = 140.0;
    /// Three to five drops by hand before each use; *common practice*.
    const DROPS_BY_HAND: f64 = 4.0;
    given!(r, q["L/min"] = spot.answers().quantity(&FLOW).base() * 60_000.0, "free air the tool takes");
    // 15 cubic feet a minute are 425 litres a minute.
    step!(r, i["drops/min"] = q / 425.0, sources::COMMON_PRACTICE);
    let by_lubricator = matches!(spot.point.fitting, Fitting::Drip | Fitting::Pump | Fitting::OilCup);
    let dose = if by_lubricator { 60.0 * i * DROP_ML } else { DROPS_BY_HAND * DROP_ML };
    Ok(Asking::new(Consequence::SlowsOrDirties, Interval::each_use(1.0))
        .fitted(Fitting::OilHole)
        .nature(Nature { clearance: Clearance::Oil, enclosed: true, ..Nature::default() })
        .classes(
            &["air-tool-oil"],
            &["hydraulic-oil", "circulating-oil", "spindle-oil", "light-machine-oil"],
            "an oil that takes up the water of the line and still lubricates",
            "iso-families",
        )
        .viscosity(
            spot,
            mm2_per_s(LOW),
            mm2_per_s(HIGH),
            "thin enough to travel with the air, thick enough to seal the vanes",
            "common-practice",
        )
        .demand(
            "no detergent, solvent or tack",
            Test::Without { traits: &[Trait::Detergent, Trait::Solvent, Trait::Tackifier], else_grade: Grade::Wrong },
            "detergent makes sludge with the line's water, solvent strips the vanes, tack holds them in their slots",
            "common-practice",
        )
        .dose(Form::Oil, Dose::about(dose, DoseUnit::Millilitre))
        .mind("What the tool blows out is oil mist: keep your face out of the exhaust and open the door.", "common-practice"))
}
