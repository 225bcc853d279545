//! A plain bearing that runs on a film: a spindle or shaft in a bored bearing.
//!
//! The charts of Raimondi and Boyd say how thick the oil must be for a film that parts the roughness even at twice the load. Where the
//! clearance is too close to hold such a film, the thinnest oil is looked for that still parts the roughness; where no oil of the trade
//! makes a film, the bearing is a bush and judged by pressure times velocity.

use formulas::FormulaError;
use formulas::plain_bearing::{FilmRegime, Journal, START_PRESSURE_MPA, film_regime, viscosity_for_film};
use formulas::slideway::{WAY_FILM_UM, film_dose, journal_area};
use formulas::viscosity::{density_at, dynamic_viscosity, kinematic_viscosity};
use formulas::working::{Recorder, Silent};
use reference::Form;
use shop::{Given, Kind};
use units::{AngularVelocity, Force, KinematicViscosity, Length, MassDensity, Quantity, Temperature};

use super::common::{micrometres, mm2_per_s};
use super::interval::Interval;
use super::rubbing::{self, Rubbing, boundary_viscosity, rubbing};
use super::{Asking, Spot};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use crate::needs::lubricant_form::{Clearance, Nature};
use crate::needs::prohibitions::Character;

const DIAMETER: Given<Length> = Given::quantity("diameter", "25 mm", "common-practice", "diameter of the journal");
const LENGTH: Given<Length> = Given::quantity("length", "25 mm", "common-practice", "length of the bearing");
const LOAD: Given<Force> = Given::quantity("load", "500 N", "common-practice", "load across the shaft");
const SPEED: Given<AngularVelocity> = Given::quantity("speed", "600 rpm", "common-practice", "speed it usually runs at");
const CLEARANCE: Given<Length> = Given::quantity("clearance", "0.03 mm", "common-practice", "clearance on the diameter");
const MATERIAL: Given<&'static str> =
    Given::choice("material", rubbing::MATERIALS, "leaded-tin-bronze", "common-practice", "what the bearing is made of");
const JOURNAL: Given<Length> = Given::quantity("journal_roughness", "0.4 um", "common-practice", "mean roughness Ra of the journal");
const BORE: Given<Length> = Given::quantity("bore_roughness", "0.8 um", "common-practice", "mean roughness Ra of the bearing");

pub(super) static KIND: Kind = Kind {
    name: "plain bearing",
    about: "a plain bearing that runs on a film of oil",
    fields: &[
        DIAMETER.field(),
        LENGTH.field(),
        LOAD.field(),
        SPEED.field(),
        CLEARANCE.field(),
        MATERIAL.field(),
        JOURNAL.field(),
        BORE.field(),
    ],
};

/// A plain spindle runs this much warmer than the room; *common practice*.
const RISE_K: f64 = 20.0;

/// How the bearing runs, and the viscosity it asks for when warm.
enum Runs {
    Film(KinematicViscosity),
    Close(KinematicViscosity),
    Boundary(KinematicViscosity),
}

pub(super) fn ask<R: Recorder>(spot: &Spot<'_>, r: &mut R) -> Result<Asking, Complaint> {
    let answers = spot.answers();
    let (diameter, length) = (answers.quantity(&DIAMETER), answers.quantity(&LENGTH));
    let journal = Journal {
        diameter,
        length,
        load: answers.quantity(&LOAD),
        speed: answers.quantity(&SPEED),
        clearance: answers.quantity(&CLEARANCE),
        journal_roughness: answers.quantity(&JOURNAL),
        bearing_roughness: answers.quantity(&BORE),
    };
    /// Looser than this share of its diameter no bearing is made.
    const LOOSEST: f64 = 0.02;
    if journal.clearance > diameter * LOOSEST {
        let what = "the clearance is more than a fiftieth of the diameter".to_owned();
        return Err(Complaint::Contradiction {
            field: "clearance",
            what,
            mend: "Give the clearance on the diameter; most are near a thousandth of it.",
        });
    }
    let material = answers.word(&MATERIAL);
    let rubbing = rubbing(r, journal.load, diameter, length, journal.speed)?;
    let runs = runs(r, &journal, &rubbing, spot.hottest(RISE_K))?;
    let area = journal_area(r, diameter, length);
    let dose = film_dose(r, area, micrometres(WAY_FILM_UM));
    // A slow bearing bears with a slideway oil; in a quick one its tack drags and heats.
    let quick = rubbing.speed.base() > 2.0;
    let slow_only: &[&'static str] = if quick { &[] } else { &["slideway-oil", "motion-oil", "gear-oil", "compressor-oil"] };
    let asking = Asking::new(Consequence::StopsOrHarms, Interval::each_use(8.0))
        .nature(Nature { clearance: Clearance::Oil, speed: rubbing.speed, rise: RISE_K, enclosed: true, ..Nature::default() })
        .character(Character {
            fast_spindle: quick,
            copper: rubbing::is_copper(spot, material),
            porous: material == "oil-porous-bronze",
            ..Character::default()
        })
        // A film of 25 µm for each of the eight hours to the next oiling.
        .dose(Form::Oil, Dose::volume(dose * 8.0));
    Ok(match runs {
        Runs::Boundary(nu) => rubbing::mind_over(
            asking
                .classes(
                    &["hydraulic-oil", "motion-oil", "slideway-oil", "circulating-oil"],
                    &["gear-oil", "compressor-oil"],
                    "no oil of the trade makes a film here: the faces touch, and antiwear or fatty oil carries them",
                    "common-practice",
                )
                .thick_enough(spot, nu, "thick oil to keep the touch light", "common-practice"),
            spot,
            &rubbing,
            rubbing::allowed(spot, material),
        ),
        Runs::Film(nu) => film(asking, spot, nu, &rubbing, slow_only, "this makes a film that parts the roughness even at twice the load"),
        Runs::Close(nu) => film(
            asking,
            spot,
            nu,
            &rubbing,
            slow_only,
            "the clearance is too close for a thick film; this oil still parts the roughness, and thicker oil would heat",
        ),
    })
}

fn film(
    asking: Asking,
    spot: &Spot<'_>,
    nu: KinematicViscosity,
    rubbing: &Rubbing,
    slow_only: &[&'static str],
    why: &'static str,
) -> Asking {
    /// Up to four times what the film needs the oil only drags a little; above that, and above VG 68 at 1 m/s, it heats.
    const MORE: f64 = 4.0;
    const DRAGS: f64 = 100.0;
    let most = mm2_per_s(DRAGS / rubbing.speed.base().max(1.0));
    let high = if nu * MORE > most { nu * MORE } else { most };
    asking
        .classes(
            &["circulating-oil", "hydraulic-oil", "spindle-oil"],
            &[&["light-machine-oil", "instrument-oil"], slow_only].concat(),
            "a clean straight oil for a spindle on a film; tack and solids only drag",
            "common-practice",
        )
        .viscosity(spot, nu, high, why, "raimondi-boyd-1958")
}

fn runs<R: Recorder>(r: &mut R, journal: &Journal, rubbing: &Rubbing, at: Temperature) -> Result<Runs, Complaint> {
    /// No oil that a bearing is fed is thicker than this when warm: VG 220, mm²/s.
    const REACHED: f64 = 150.0;
    /// Of mineral oils at 15 °C, kg/m³; *common practice*.
    const DENSITY: f64 = 870.0;
    let rho = density_at(r, MassDensity::from_base(DENSITY), at);
    match viscosity_for_film(r, journal) {
        Ok(eta) => {
            let nu = kinematic_viscosity(r, eta, rho)?;
            if nu <= mm2_per_s(REACHED) && rubbing.pressure <= START_PRESSURE_MPA {
                return Ok(Runs::Film(nu));
            }
        }
        // Too close for the film that is wanted, or values no formula takes; the latter come up again below.
        Err(FormulaError::OutOfRange { .. }) => {
            // What spindle oils to VG 68 have when warm, thinnest first.
            for nu in [4.0, 6.0, 10.0, 16.0, 25.0, 45.0].map(mm2_per_s) {
                let eta = dynamic_viscosity(&mut Silent, nu, rho);
                if film_regime(&mut Silent, journal, eta)? >= FilmRegime::Mixed {
                    let eta = dynamic_viscosity(r, nu, rho);
                    film_regime(r, journal, eta)?;
                    return Ok(Runs::Close(nu));
                }
            }
        }
        Err(other) => return Err(other.into()),
    }
    Ok(Runs::Boundary(boundary_viscosity(r, rubbing.pressure, rubbing.speed)))
}
