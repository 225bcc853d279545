//! Change gears and other gears that run outside a bath.
//!
//! Too slow for a film and with no bath to carry oil round, they want what clings to the teeth. Shut in a clean guard, where nobody looks,
//! grease stays; where chips fall in, oil renewed often carries them out.

use formulas::gear::{LEAST_SPEED, pitch_line_speed};
use formulas::slideway::{film_dose, slide_area};
use formulas::working::Recorder;
use reference::Form;
use shop::{Given, Kind};
use units::{AngularVelocity, Length, Quantity};

use super::common::{GREASE_G_PER_ML, micrometres, mm2_per_s};
use super::interval::Interval;
use super::{Asking, Spot};
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;
use crate::needs::lubricant_form::Nature;
use crate::verdict::Grade;

const MODULE: Given<Length> = Given::quantity("module", "1 mm", "common-practice", "module of the teeth");
const FACE: Given<Length> = Given::quantity("face", "10 mm", "common-practice", "width of the teeth");
const TEETH: Given<f64> = Given::number("teeth", "40", "common-practice", "teeth of a middling gear");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "200 rpm", "common-practice", "speed of the quickest gear");
const GEARS: Given<f64> = Given::number("gears", "4", "common-practice", "how many gears the train has");

pub(super) static KIND: Kind = Kind {
    name: "change gears",
    about: "change gears and other gears outside a bath",
    fields: &[MODULE.field(), FACE.field(), TEETH.field(), SPEED.field(), GEARS.field()],
};

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    /// Two flanks of a tooth, each about 2.25 modules high; *geometry of ISO 53*.
    const FLANKS: f64 = 2.0;
    const HEIGHT: f64 = 2.25;
    /// Film left on open teeth, µm; *common practice*.
    const FILM_UM: f64 = 30.0;
    /// Above this even an adhesive lubricant is flung off, m/s; DIN 51509, from memory.
    const FLUNG_M_PER_S: f64 = 2.5;
    /// Thinner oil than this at work runs off the teeth, mm²/s; less where they turn quickly. *Common practice.*
    const CLINGS: f64 = 80.0;
    /// What a brush puts on at the least, g; *common practice*.
    const LEAST_GREASE_G: f64 = 1.0;
    let answers = spot.answers();
    let (module, face, teeth) = (answers.quantity(&MODULE), answers.quantity(&FACE), answers.number(&TEETH));
    let speed = pitch_line_speed(r, module * teeth, answers.quantity(&SPEED));
    let flanks = slide_area(r, face, module * HEIGHT, FLANKS * teeth * answers.number(&GEARS));
    let film = 1e6 * film_dose(r, flanks, micrometres(FILM_UM)).base();
    let quick = (speed.base() / LEAST_SPEED).max(1.0).sqrt();
    // Shut in, the grease stays for a season; open, it is flung off and fouled within days.
    let interval = if spot.guarded() { Interval::running(200.0, 365.0) } else { Interval::running(8.0, 90.0) };
    let asking = Asking::new(Consequence::SlowsOrDirties, interval)
        .nature(Nature { speed, rise: 5.0, ..Nature::default() })
        .classes(
            &["tacky-oil", "slideway-oil", "gear-oil", "ep-grease", "lithium-grease", "moly-grease", "semi-fluid-grease"],
            &["motion-oil", "hydraulic-oil", "circulating-oil", "compressor-oil", "calcium-sulphonate-grease", "white-grease"],
            "open teeth keep only what clings to them: tacky oil, slideway oil or a thin coat of grease",
            "din-51509",
        )
        .thick_enough(spot, mm2_per_s(CLINGS / quick), "thin oil runs off teeth that no bath wets", "common-practice")
        .stiffness(spot, 0, 2)
        .dose(Form::Oil, Dose::about(film, DoseUnit::Millilitre))
        .dose(Form::Grease, Dose::grams((GREASE_G_PER_ML * film).max(LEAST_GREASE_G)))
        .mind("A thin coat: what the gears fling off lands on the belt and the floor.", "common-practice");
    let asking = if spot.guarded() {
        asking.form(
            Grade::WillDo,
            Grade::Right,
            Grade::WillDo,
            "shut in, where neither chips nor a can reach: grease stays, oil has to be renewed",
        )
    } else {
        asking
    };
    Ok(if speed.base() > FLUNG_M_PER_S {
        asking.mind("So fast even a clinging lubricant is flung off: look often, or give the gears a bath.", "din-51509")
    } else {
        asking
    })
}
