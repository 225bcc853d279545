//! A leadscrew or feed screw in its nut.
//!
//! Slow sliding under load, in chips: an oil that clings and is renewed often. Grease holds chips and laps the nut; it has its place only
//! on a screw that no chip reaches. Where pressure times velocity is more than the nut is allowed, the interval is halved.

use formulas::slideway::{film_dose, journal_area, screw_thread_area};
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{AngularVelocity, Force, Length, Pressure, Quantity};

use super::common::{GREASE_G_PER_ML, micrometres, slide_window};
use super::interval::Interval;
use super::rubbing::{self, rubbing};
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::needs::prohibitions::Character;
use crate::verdict::Grade;

const DIAMETER: Given<Length> = Given::quantity("diameter", "16 mm", "common-practice", "outside diameter of the screw");
const PITCH: Given<Length> = Given::quantity("pitch", "2 mm", "common-practice", "pitch of the thread");
const LOAD: Given<Force> = Given::quantity("load", "500 N", "common-practice", "load along the screw");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "60 rpm", "common-practice", "speed of the screw");
const NUT: Given<&'static str> =
    Given::choice("nut", rubbing::MATERIALS, "leaded-tin-bronze", "common-practice", "what the nut is made of");
const ENGAGEMENT: Given<Length> = Given::quantity("engagement", "25 mm", "common-practice", "length of the nut");
const TRAVEL: Given<Length> = Given::quantity("travel", "300 mm", "common-practice", "length of screw that is oiled");

pub(super) static KIND: Kind = Kind {
    name: "leadscrew",
    about: "a leadscrew or feed screw and its nut",
    fields: &[DIAMETER.field(), PITCH.field(), LOAD.field(), SPEED.field(), NUT.field(), ENGAGEMENT.field(), TRAVEL.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    const RISE_K: f64 = 3.0;
    /// Film left in the thread, µm; *common practice*.
    const FILM_UM: f64 = 15.0;
    let answers = spot.answers();
    let (diameter, pitch) = (answers.quantity(&DIAMETER), answers.quantity(&PITCH));
    thread_fits(diameter, pitch)?;
    let load = answers.quantity(&LOAD);
    let area = screw_thread_area(r, diameter, pitch, answers.quantity(&ENGAGEMENT))?;
    // A thread bears like a bush of its own mean diameter, as long as makes up its area.
    let mean = diameter - pitch / 2.0;
    let rubbing = rubbing(r, load, mean, area / mean, answers.quantity(&SPEED))?;
    let window = slide_window(r, Pressure::from_base(1e6 * rubbing.pressure), Some(rubbing.speed));
    let nut = answers.word(&NUT);
    let allowed = rubbing::allowed(spot, nut);
    let hours = if rubbing.pv > allowed { 2.0 } else { 4.0 };
    let face = journal_area(r, diameter, answers.quantity(&TRAVEL));
    let dose = film_dose(r, face, micrometres(FILM_UM));
    let greases: &[&'static str] = &["ep-grease", "lithium-grease", "moly-grease"];
    let oils: &[&'static str] = &["hydraulic-oil", "circulating-oil", "gear-oil", "motion-oil", "tacky-oil"];
    let asking = Asking::new(Consequence::StopsOrHarms, Interval::each_use(hours))
        .nature(Nature { rise: RISE_K, ..Nature::default() })
        .character(Character { copper: rubbing::is_copper(spot, nut), ..Character::default() });
    let asking = if spot.guarded() {
        asking
            .form(Grade::Right, Grade::Right, Grade::WillDo, "no chip reaches it: grease may stay, and an oil that clings serves as well")
            .classes(
                &[&["slideway-oil"], greases].concat(),
                oils,
                "no chip reaches it and no can either: a grease may stay, an oil that clings serves as well",
                "common-practice",
            )
    } else {
        let right: &[&'static str] = &["slideway-oil"];
        asking.classes(
            right,
            &[oils, greases].concat(),
            "an oil that clings and carries chips out again; grease holds them and laps the nut",
            "common-practice",
        )
    };
    let asking = asking
        .thick_enough(
            spot,
            window.low,
            "slow threads make no film; the oil must be thick enough to stay in them",
            "common-practice",
        )
        .stiffness(spot, 1, 2)
        .dose(Form::Oil, Dose::volume(dose))
        .dose(Form::Grease, Dose::grams(GREASE_G_PER_ML * 1e6 * dose.base()))
        .mind("Brush the chips out of the thread before you oil.", "common-practice");
    Ok(rubbing::mind_over(asking, spot, &rubbing, allowed))
}

/// Refuses a pitch that leaves the screw no core.
pub(super) fn thread_fits(diameter: Length, pitch: Length) -> Result<(), Complaint> {
    if pitch < diameter {
        return Ok(());
    }
    let what = "the pitch is not smaller than the screw's diameter".to_owned();
    Err(Complaint::Contradiction {
        field: "pitch",
        what,
        mend: "Give the pitch of one thread, not the lead of several, or mend `diameter`.",
    })
}
