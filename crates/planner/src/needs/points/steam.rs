//! What cylinder and valve of a steam engine ask of their oil.

use formulas::steam::saturation_temperature;
use formulas::working::Recorder;
use reference::Trait;
use shop::Fitting;
use units::{Pressure, Quantity, Temperature, TemperatureDifference};

use super::common::mm2_per_s;
use super::{Asking, Spot};
use crate::demand::Test;
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};
use crate::needs::prohibitions::Character;
use crate::verdict::Grade;

/// The temperature of steam at a pressure on the gauge, so much above saturation.
pub(super) fn temperature<R: Recorder>(r: &mut R, gauge: Pressure, superheat: TemperatureDifference) -> Result<Temperature, Complaint> {
    if superheat.base() < 0.0 {
        let what = "the superheat is less than nothing".to_owned();
        return Err(Complaint::Contradiction { field: "superheat", what, mend: "Give 0 K for saturated steam." });
    }
    Ok(Temperature::from_base(saturation_temperature(r, gauge)?.base() + superheat.base()))
}

/// The demands of faces in steam of this temperature.
pub(super) fn oil(asking: Asking, spot: &Spot<'_>, steam: Temperature, superheat: TemperatureDifference) -> Asking {
    /// An oil that has about 7 mm²/s at the heat of the steam stays on the bore; 10 % less is still right. *Common practice.*
    const WANTED: f64 = 7.0;
    const RIGHT: f64 = 0.9;
    const WILL_DO: f64 = 0.6;
    /// Three times as thick it drags and gathers in the ports; *common practice*.
    const THICK_RIGHT: f64 = 3.0;
    const THICK_WILL_DO: f64 = 4.5;
    const FLASH_MARGIN_K: f64 = 60.0;
    /// From here on steam is dry, and fat has nothing to hold on to but chars; *common practice*.
    const DRY_K: f64 = 20.0;
    let asking = asking
        .fitted(Fitting::OilCup)
        .nature(Nature { clearance: Clearance::Oil, rise: steam.base() - spot.room.hottest.base(), enclosed: true, ..Nature::default() })
        .character(Character { steam: true, warmed: true, ..Character::default() })
        .classes(
            &["steam-cylinder-oil"],
            &["motion-oil"],
            "only a compounded cylinder oil stays on wet hot faces; motion oil does at low pressure for a while",
            "common-practice",
        )
        .demand(
            "thick enough in the steam",
            Test::NotThinner {
                at: steam,
                right: mm2_per_s(RIGHT * WANTED),
                will_do: mm2_per_s(WILL_DO * WANTED),
                else_grade: Grade::Wrong,
            },
            "about 7 mm²/s at the heat of the steam keeps the rings off the bore",
            "common-practice",
        )
        .demand(
            "thin enough in the steam",
            Test::NotThicker {
                at: steam,
                right: mm2_per_s(THICK_RIGHT * WANTED),
                will_do: mm2_per_s(THICK_WILL_DO * WANTED),
                else_grade: Grade::Wrong,
            },
            "thicker oil does not spread with the steam and gathers in the ports",
            "common-practice",
        )
        .demand(
            "flash point above the steam",
            Test::Flash { hottest: steam, margin: TemperatureDifference::from_base(FLASH_MARGIN_K) },
            "an oil near its flash point smokes off and cokes the ports",
            "common-practice",
        )
        .mind(
            "Empty the trap after each run, and let no oil into the boiler: it bakes on the plates and overheats them.",
            "common-practice",
        )
        .mind("Steam scalds: let the pressure down before you open a lubricator, unless it can be shut off.", "common-practice");
    if superheat.base() > DRY_K {
        return asking;
    }
    asking.demand(
        "compounded",
        Test::With { traits: &[Trait::Fatty], else_grade: Grade::WillDo },
        "wet steam washes a straight oil off; a little fat holds it on",
        "common-practice",
    )
}
