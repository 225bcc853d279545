//! Silver brazing and soft soldering: clean, flux, heat, wash, pickle, neutralise.
//!
//! The pickle takes oxide off copper alloys; a bath with copper in it plates steel, so a joint of both is not pickled at all. Light metals
//! and titanium want a flux and a filler of their own.

#![expect(non_snake_case, reason = "symbols as in formulas")]

use formulas::sources::{COMMON_PRACTICE, DEFINITION};
use formulas::working::Recorder;
use formulas::{given, step};
use reference::Form;
use shop::{Given, Kind};
use units::{Quantity, Volume};

use super::common::degrease;
use super::{Bench, Step, Task};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const PROCESS: Given<&'static str> =
    Given::choice("process", &["silver", "soft"], "silver", "common-practice", "silver brazing, or soft solder");
const METALS: Given<Vec<String>> = Given::materials("metals", "copper, brass", "common-practice", "what is joined");
const SEAM: Given<f64> = Given::number("seam_cm", "20", "common-practice", "centimetres of joint each time");
const BATH: Given<Volume> = Given::quantity("bath", "1 L", "common-practice", "pickle that is made up");

pub(super) static KIND: Kind = Kind {
    name: "solder",
    about: "silver brazing and soft soldering",
    fields: &[PROCESS.field(), METALS.field(), SEAM.field(), BATH.field()],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (metals, seam) = (answers.words(&METALS), answers.number(&SEAM));
    let task = |steps| vec![Task { consequence: Consequence::Spoils, times_a_year: bench.times_a_year(), steps }];
    if ["light-metals", "titanium", "plastics"].iter().any(|group| bench.any_is(metals, group)) {
        let why = "this material wants a flux and a filler of its own, sold together; follow their data sheet, \
                 or weld, screw or glue it";
        return Ok(task(vec![Step::refused("solder", why)]));
    }
    let (steel, copper) = (bench.any_is(metals, "ferrous"), bench.any_is(metals, "copper-alloys"));
    let mut steps = vec![degrease(bench, metals, Dose::ml(0.5 * seam), false)];
    if answers.word(&PROCESS) == "silver" {
        steps.push(silver_flux(metals, seam, steel));
        steps.push(
            Step::new("wash off the flux", "in water of 60 °C and more, brush; before any acid")
                .classes(&["hot-water"], &[], bench.cleaning("flux")?.why.clone(), "common-practice")
                .dose(Dose::ml(500.0))
                .mind("Flux and acid together make hydrogen fluoride: wash first, and wash well.", "common-practice")
                .mind_if(
                    steel && copper,
                    "No pickle here: the copper it takes up would plate the steel. Hot water and a brush must do.",
                    "common-practice",
                ),
        );
        // Acid makes hard and spring steel brittle.
        if !(steel && copper || bench.any_is(metals, "hardened-steels")) {
            steps.extend(pickle(metals, &bath(r, answers.quantity(&BATH)), bench.times_a_year(), steel));
        }
    } else {
        steps.push(soft_flux(metals, seam, steel));
        let step = Step::new("wash off the flux", "while warm, brush, dry").dose(Dose::ml(0.5 * seam));
        steps.push(if steel {
            step.classes(&["hot-water"], &["neutral-detergent"], "zinc chloride left behind rusts everything near", "common-practice")
        } else {
            step.turn(bench.cleaning("rosin")?, 0).spares_briefly(metals)
        });
    }
    Ok(task(steps))
}

fn silver_flux(metals: &[String], seam: f64, steel: bool) -> Step {
    /// Flux paste for a centimetre of joint, g; *common practice*.
    const FLUX_G_PER_CM: f64 = 0.2;
    Step::new("flux", "brush paste on both faces and on the filler, heat evenly until it runs like water")
        .classes(
            &["fluoride-flux"],
            &["borate-flux"],
            "it is active from 565 to 870 °C, where silver fillers melt; borax alone begins near 750 °C",
            "aws-a5-31",
        )
        .spares_briefly(metals)
        .dose(Dose::grams(FLUX_G_PER_CM * seam))
        .mind("Never a filler with cadmium: its fume kills. Strip zinc plate and old lead solder first.", "common-practice")
        .mind("Flux fume is poisonous: outdoors or with the air drawn off, and gloves.", "common-practice")
        .mind_if(steel, "On stainless a flux for stainless; on steel wash every trace off, it rusts.", "common-practice")
        .mind("Boilers and gas: the code in force and its inspector come first.", "common-practice")
}

/// The pickle and what ends it; the bath serves a year.
fn pickle(metals: &[String], bath: &Bath, times_a_year: f64, steel: bool) -> [Step; 2] {
    let each_time = 1.0 / times_a_year.max(1.0);
    let (right, will_do): (&[&str], &[&str]) =
        if steel { (&["pickle-citric"], &["pickle-bisulfate"]) } else { (&["pickle-bisulfate", "pickle-citric"], &["battery-acid"]) };
    let dose = Dose::grams((bath.salt_g + bath.water_g) * each_time);
    let acid = Step::new("pickle", "part below 100 °C, bath at 50–60 °C with a lid, until bright; rinse")
        .classes(right, will_do, "acid dissolves the oxide that flux leaves behind", "common-practice")
        .spares_briefly(metals)
        .dose(dose)
        .mind(
            format!(
                "For {:.1} L of bath: {:.0} g of salt into {:.0} g of water (10 % by mass). Always \
                         the acid into the water; goggles, gloves.",
                bath.litres, bath.salt_g, bath.water_g
            ),
            "common-practice",
        )
        .mind(
            "Never steel tweezers, wire or chips in it: they plate every part with copper. Plastic, brass \
                 or wood.",
            "common-practice",
        )
        .mind_if(
            steel,
            "A fresh bath that never held copper, and not for hard or spring steel: acid makes it \
                 brittle.",
            "common-practice",
        )
        .mind(
            "Keep it shut and away from bright steel. Spent pickle is copper waste: neutral is not fit \
                 for the drain.",
            "common-practice",
        );
    let end = Step::new("neutralise", "dip the part until it stops fizzing, rinse, dry; in an open vessel, a little at a time")
        .classes(&["bicarbonate"], &[], "acid left in a seam goes on eating", "common-practice")
        .dose(Dose::grams(bath.soda_g * each_time))
        .dose_of(Form::Liquid, dose);
    [acid, end]
}

/// What a bath of pickle is made of, and what ends it.
struct Bath {
    litres: f64,
    salt_g: f64,
    water_g: f64,
    soda_g: f64,
}

/// A bath of a tenth bisulfate by mass, which weighs little more than water; bicarbonate neutralises it mole for mole.
fn bath<R: Recorder>(r: &mut R, volume: Volume) -> Bath {
    given!(r, V["L"] = volume.base() * 1e3, "bath");
    given!(r, w [] = 0.10, "share of salt by mass");
    step!(r, m["g"] = 1000.0 * V, COMMON_PRACTICE);
    step!(r, m_salt["g"] = w * m, DEFINITION);
    step!(r, m_water["g"] = m - m_salt, DEFINITION);
    step!(r, m_soda["g"] = m_salt * 84.007 / 120.06, DEFINITION);
    Bath { litres: V, salt_g: m_salt, water_g: m_water, soda_g: m_soda }
}

fn soft_flux(metals: &[String], seam: f64, steel: bool) -> Step {
    /// Flux for a centimetre of soft joint, g; *common practice*.
    const FLUX_G_PER_CM: f64 = 0.1;
    let (right, will_do, why): (&[&str], &[&str], _) = if steel {
        (&["zinc-chloride-flux"], &["rosin-flux"], "rosin is too mild for the oxide of steel")
    } else {
        (&["rosin-flux"], &["zinc-chloride-flux"], "rosin is enough for copper and brass and may stay on")
    };
    Step::new("flux", "thin on both faces, heat the metal and not the solder")
        .classes(right, will_do, why, "common-practice")
        .spares_briefly(metals)
        .dose(Dose::grams(FLUX_G_PER_CM * seam))
        .mind(
            "Its fume irritates lungs and may make them allergic: draw the air off. Wash your hands after solder with lead.",
            "common-practice",
        )
        .mind("Never soft solder under steam pressure, and never silver-braze over its remains.", "common-practice")
}
