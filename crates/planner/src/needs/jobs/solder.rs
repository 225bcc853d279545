//! Silver brazing and soft soldering: clean, flux, heat, wash, pickle, neutralise.
//!
//! The pickle takes oxide off copper alloys; a bath with copper in it plates steel, so a joint of both is not pickled at all. Light metals
//! and titanium want a flux and a filler of their own.

use formulas::pickle::{CopperLimit, Neutralised, copper_limit, fluoride_bound, neutralise, pickle_bath};
use formulas::solution::{Acid, Dilution};
use formulas::working::Recorder;
use handling::bars::{ACID_ORDER, CADMIUM, STEEL_IN_PICKLE};
use reference::Form;
use shop::{Given, Kind};
use units::{Mass, Quantity, Ratio, Volume};

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
    let mut steps = vec![degrease(bench, metals, Dose::ml(0.5 * seam), false).near_heat()];
    if answers.word(&PROCESS) == "silver" {
        steps.push(silver_flux(bench, r, metals, seam)?);
        steps.push(
            Step::new("wash off the flux", "in water of 60 °C (140 °F) and more, brush; before any acid")
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
            let acid = if steel { Acid::Citric } else { Acid::Bisulfate };
            steps.extend(pickle(metals, &bath(bench, r, acid, answers.quantity(&BATH))?, bench, steel));
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

fn silver_flux<R: Recorder>(bench: &Bench<'_>, r: &mut R, metals: &[String], seam: f64) -> Result<Step, Complaint> {
    /// Flux paste for a centimetre of joint, g; *common practice*.
    const FLUX_G_PER_CM: f64 = 0.2;
    /// Fluoride in the paste, by mass; *from memory* of data sheets.
    const FLUORIDE: f64 = 0.3;
    /// What is never to be breathed, ppm: the ceiling of the NIOSH Pocket Guide.
    const CEILING_PPM: f64 = 6.0;
    let steel = bench.any_is(metals, "ferrous");
    let (grams, air) = (FLUX_G_PER_CM * seam, bench.room);
    let bound = fluoride_bound(r, Mass::from_base(grams * 1e-3), Ratio::from_base(FLUORIDE), air.volume, air.hottest)?.base() * 1e6;
    Ok(Step::new("flux", "brush paste on both faces and on the filler, heat evenly until it runs like water")
        .classes(
            &["fluoride-flux"],
            &["borate-flux"],
            "it is active from 565 to 870 °C (1050 to 1600 °F), where silver fillers melt; borax alone begins near 750 °C (1380 °F)",
            "aws-a5-31",
        )
        .spares_briefly(metals)
        .near_heat()
        .dose(Dose::grams(grams))
        .never(&CADMIUM)
        .mind("Strip zinc plate and old lead solder first.", "common-practice")
        .mind(
            format!(
                "Flux fume is poisonous: outdoors or with the air drawn off, and gloves. Were all of its fluoride to go into this room's \
                 air, it would hold {bound:.0} ppm of hydrogen fluoride; {CEILING_PPM:.0} ppm are never to be breathed."
            ),
            "niosh-pocket-guide",
        )
        .mind(
            "Fluoride flux goes through the skin and burns deep, hours later: gloves and goggles, calcium gluconate gel kept beside the flux. A \
             splash: rinse at once and long, then the gel, and to hospital at once even without pain; take the data sheet.",
            "common-practice",
        )
        .mind_if(steel, "On stainless a flux for stainless; on steel wash every trace off, it rusts.", "common-practice")
        .mind("Boilers and gas: the code in force and its inspector come first.", "common-practice"))
}

/// The pickle and what ends it; the bath serves a year.
fn pickle(metals: &[String], bath: &Bath, bench: &Bench<'_>, steel: bool) -> [Step; 2] {
    let each_time = 1.0 / bench.times_a_year().max(1.0);
    let (right, will_do): (&[&str], &[&str]) =
        if steel { (&["pickle-citric"], &["pickle-bisulfate"]) } else { (&["pickle-bisulfate", "pickle-citric"], &["battery-acid"]) };
    let grams = |mass: Mass| mass.base() * 1e3;
    let dose = Dose::grams(grams(bath.mix.concentrate + bath.mix.water) * each_time);
    let acid = Step::new(
        "pickle",
        "in glass or plastic with a lid, tongs of plastic or wood; part below 100 °C (212 °F), bath at 50–60 °C (120–140 °F), until bright; rinse",
    )
    .classes(right, will_do, "acid dissolves the oxide that flux leaves behind", "common-practice")
    .spares_briefly(metals)
    .dose(dose)
    .mind(
        format!(
            "For {} of bath: {} of {} into {} of water (10 % by mass). Goggles, gloves.",
            bench.show(bath.volume),
            bench.show(bath.mix.concentrate),
            bath.salt,
            bench.show(bath.mix.water)
        ),
        "common-practice",
    )
    .never(&ACID_ORDER)
    .never(&STEEL_IN_PICKLE)
    .mind_if(steel, "A fresh bath that never held copper, and not for hard or spring steel: acid makes it brittle.", "common-practice")
    .mind_if(
        !steel,
        format!("Retire it at {:.0} g of copper in a litre, or when it takes twice as long as at first.", bath.copper.retire.base()),
        "common-practice",
    )
    .mind(
        if steel {
            "Keep it shut, 3 m from bright steel or in another room. Spent pickle is waste, with the metal it has dissolved: neutral is not fit \
             for the drain."
        } else {
            "Keep it shut, 3 m from bright steel or in another room. Spent pickle is copper waste: neutral is not fit for the drain."
        },
        "common-practice",
    );
    let end = Step::new("neutralise", "dip the part until it stops fizzing, rinse, dry; in an open vessel, a little at a time")
        .classes(&["bicarbonate"], &[], "acid left in a seam goes on eating", "common-practice")
        .dose(Dose::grams(grams(bath.end.bicarbonate) * each_time))
        .dose_of(Form::Liquid, dose)
        .mind(
            format!(
                "The whole bath takes {} and gives off {} of gas: cold, in the open, {:.0} additions of 10 g at most, in a vessel of {} at \
                 least; stop by test strip at pH 7 to 8.",
                bench.show(bath.end.bicarbonate),
                bench.show(bath.end.gas),
                bath.end.additions,
                bench.show(bath.end.vessel)
            ),
            "common-practice",
        );
    [acid, end]
}

/// What a bath of pickle is made of, when it is spent, and what ends it.
struct Bath {
    salt: &'static str,
    volume: Volume,
    mix: Dilution,
    copper: CopperLimit,
    end: Neutralised,
}

/// A bath of a tenth salt by mass.
fn bath<R: Recorder>(bench: &Bench<'_>, r: &mut R, acid: Acid, volume: Volume) -> Result<Bath, Complaint> {
    let (dry, tenth) = (Ratio::from_base(1.0), Ratio::from_base(0.1));
    let air = bench.room.usual;
    let mix = pickle_bath(r, acid, volume, dry, tenth, air)?;
    let copper = copper_limit(r, acid, tenth)?;
    let end = neutralise(r, acid, mix.concentrate, volume, air)?;
    let salt = if acid == Acid::Citric { "citric acid" } else { "bisulfate" };
    Ok(Bath { salt, volume, mix, copper, end })
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
        .near_heat()
        .dose(Dose::grams(FLUX_G_PER_CM * seam))
        .mind(
            "Its fume irritates lungs and may make them allergic: draw the air off. Wash your hands after solder with lead.",
            "common-practice",
        )
        .mind("Never soft solder under steam pressure, and never silver-braze over its remains.", "common-practice")
        .mind(
            "Never solder with lead in it for drinking water, food or drink, taps and vessels included: it poisons whoever drinks. Lead-free \
             solder and a flux made for it, as local rules ask.",
            "common-practice",
        )
}
