//! A dead centre in the work's centre hole.
//!
//! The cone rubs under the full load at the work's speed, in a hole that nothing can be fed to while it turns. Extreme-pressure grease
//! stays there; the work grows as it warms, so the load has to be eased.

use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{AngularVelocity, Force, Length};

use super::interval::Interval;
use super::rubbing::{self, intensity, rubbing};
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::verdict::Grade;

const DIAMETER: Given<Length> = Given::quantity("diameter", "8 mm", "common-practice", "width of the centre hole");
const LOAD: Given<Force> = Given::quantity("load", "500 N", "common-practice", "load on the centre");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "300 rpm", "common-practice", "speed of the work");

pub(super) static KIND: Kind = Kind {
    name: "dead centre",
    about: "a dead centre in the work's centre hole",
    fields: &[DIAMETER.field(), LOAD.field(), SPEED.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// A cone of 60° is 0.87 of its width deep; seen from the side it has half that height over its width.
    const SIDE: f64 = 0.433;
    /// No bush of the table bears more than this one, and hardened steel on steel bears less.
    const BEST: &str = "manganese-bronze";
    /// Room for a pea of grease in a hole of 8 mm, g; *common practice*.
    const PEA_G: f64 = 0.2;
    let answers = spot.answers();
    let diameter = answers.quantity(&DIAMETER);
    let rubbing = rubbing(r, answers.quantity(&LOAD), diameter, diameter * SIDE, answers.quantity(&SPEED))?;
    let allowed = rubbing::allowed(spot, BEST);
    let asking = Asking::new(Consequence::Spoils, Interval::each_use(1.0))
        .nature(Nature { heavy: true, speed: rubbing.speed, rise: 40.0, ..Nature::default() })
        .form(
            Grade::WillDo,
            Grade::Right,
            Grade::WillDo,
            "nothing can be fed while it turns: grease with extreme-pressure additives stays in the hole, oil runs out",
        )
        .classes(
            &["ep-grease", "moly-grease"],
            &[
                "anti-seize",
                "lithium-grease",
                "calcium-sulphonate-grease",
                "tacky-oil",
                "slideway-oil",
                "gear-oil",
                "worm-oil",
                "steam-cylinder-oil",
                "moly-film",
            ],
            "steel rubs on steel under great pressure: extreme-pressure additives or solids",
            "common-practice",
        )
        .stiffness(spot, 2, 3)
        .dose(Form::Grease, Dose::grams(PEA_G))
        .dose(Form::Paste, Dose::grams(PEA_G))
        .dose(Form::Oil, Dose::ml(PEA_G))
        .mind("Slacken and set it again after ten minutes: warm work grows and jams the centre.", "common-practice")
        .mind("No paste with lead.", "common-practice");
    Ok(if rubbing.pv > allowed {
        asking.mind(
            format!(
                "Pressure times velocity is {}, more than any bush bears: turn slower, ease the centre, or take a live one.",
                intensity(rubbing.pv, spot.units)
            ),
            "mott-machine-elements",
        )
    } else {
        asking
    })
}
