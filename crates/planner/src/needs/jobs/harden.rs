//! Hardening steel: what it is quenched in, how much of it, and the oil after.

#![expect(non_snake_case, reason = "symbols as in formulas")]

use formulas::math::max;
use formulas::sources::COMMON_PRACTICE;
use formulas::working::Recorder;
use formulas::{given, step};
use reference::Form;
use shop::{Given, Kind};
use units::{Mass, Quantity, Temperature, TemperatureDifference};

use super::common::{degrease, oil_after};
use super::{Bench, Step, Task};
use crate::demand::Test;
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const STEEL: Given<&'static str> = Given::choice(
    "steel",
    &["oil-hardening", "water-hardening", "silver-steel", "case", "air-hardening"],
    "oil-hardening",
    "common-practice",
    "how its maker says it hardens; case means mild steel given a hard skin",
);
const MASS: Given<Mass> = Given::quantity("mass", "0.1 kg", "common-practice", "heaviest part, or all that goes in at once");
const BRIGHT: Given<bool> = Given::flag("bright", "false", "common-practice", "whether scale would spoil the face");

pub(super) static KIND: Kind =
    Kind { name: "harden", about: "hardening tool steel and case hardening", fields: &[STEEL.field(), MASS.field(), BRIGHT.field()] };

/// Quench liquid for each kilogram of hot steel, litres: a US gallon for a pound; *common practice*.
const LITRES_PER_KG: f64 = 8.3;
/// A bath may warm by so much in taking one batch, K; *common practice*.
const RISE_K: f64 = 30.0;

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (steel, mass): (_, Mass) = (answers.word(&STEEL), answers.quantity(&MASS));
    let materials = ["tool-steel".to_owned()];
    let task = |steps| vec![Task { consequence: Consequence::Spoils, times_a_year: bench.times_a_year(), steps }];
    if steel == "air-hardening" {
        let why = "it hardens in moving air and needs a furnace that holds its temperature; send it out, or \
                 choose an oil-hardening steel";
        return Ok(task(vec![Step::refused("quench", why)]));
    }
    let mut steps = vec![degrease(bench, &materials, Dose::ml(3.0), false)];
    if answers.flag(&BRIGHT) {
        steps.push(
            Step::new("coat against scale", "dip or brush, dry, burn the alcohol off in the open, away from the can")
                .classes(&["anti-scale"], &["borate-flux"], "the glaze keeps air off the hot face", "common-practice")
                .dose(Dose::grams(GLAZE_G))
                .mind("Boric acid may harm fertility: gloves, no dust.", "un-ghs"),
        );
    }
    if steel == "case" {
        steps.push(
            Step::new("pack or dip", "bright red (about 900 °C), into the powder, hold, again; a skin of a few tenths at most")
                .classes(&["case-hardening-powder"], &[], "mild steel has too little carbon to harden", "common-practice")
                .dose(Dose::grams(powder_g(mass)))
                .mind("Only powder free of cyanide.", "common-practice"),
        );
    }
    steps.push(quench(bench, steel, quench_litres(r, mass, steel == "oil-hardening")));
    if steel != "oil-hardening" {
        steps.push(oil_after(&materials, Dose::ml(2.0)));
    }
    Ok(task(steps))
}

/// Boric acid for one small part, g; *common practice*.
const GLAZE_G: f64 = 5.0;

/// Powder that sticks to the parts, g: a tenth of their mass; *common practice*.
fn powder_g(mass: Mass) -> f64 {
    0.1 * mass.base() * 1e3
}

/// Quench liquid for so much hot steel, L: by the rule, and by what the bath may warm; the larger counts.
///
/// Iron from 850 °C gives off 555 kJ/kg (*from memory* of the thermochemical tables); a litre of oil takes 1.74 kJ/K, of water 4.2.
fn quench_litres<R: Recorder>(r: &mut R, mass: Mass, oil: bool) -> f64 {
    given!(r, m["kg"] = mass.base(), "hot steel");
    given!(r, k["L/kg"] = LITRES_PER_KG, "a US gallon for a pound");
    given!(r, h["kJ/kg"] = 555.0, "heat of the steel");
    given!(r, c["kJ/(L·K)"] = if oil { 0.87 * 2.0 } else { 4.2 }, "heat a litre takes");
    given!(r, Delta_T["K"] = RISE_K, "rise allowed");
    step!(r, V["L"] = m * max(k, h / (c * Delta_T)), COMMON_PRACTICE);
    V
}

fn quench(bench: &Bench<'_>, steel: &str, litres: f64) -> Step {
    // A fill serves a year, so that a year takes one fill and the pack holds it.
    let each_time = litres / bench.times_a_year().max(1.0);
    let step = Step::new("quench", "from the maker's temperature, straight down, all under in one move, stir up and down")
        .dose(Dose::ml(each_time * 1e3))
        .dose_of(Form::Solid, Dose::grams(brine_kg(litres) * 1e3 / bench.times_a_year().max(1.0)))
        .mind(
            format!(
                "Have {litres:.1} L of it in a metal vessel two thirds full at most, deeper than the part \
                     and a hand's breadth, with a lid beside it."
            ),
            "common-practice",
        )
        .mind(TEMPER, "common-practice");
    let step = match steel {
        "water-hardening" => {
            step.classes(&["quench-brine"], &["quench-water"], "it wants the fastest quench; salt breaks the steam skin", "common-practice")
        }
        "silver-steel" => step.classes(
            &["quench-brine", "quench-water"],
            &["quench-oil"],
            "water hardens it through; oil will do for thin sections and cracks fewer",
            "common-practice",
        ),
        "case" => step.classes(&["quench-water", "quench-brine"], &[], "the skin hardens only in water", "common-practice"),
        _ => step
            .classes(&["quench-oil"], &[], "water cracks an oil-hardening steel; used engine oil is poison", "common-practice")
            .demand(
                "far from its flash point",
                Test::Flash {
                    hottest: Temperature::from_base(bench.room.hottest.base() + RISE_K),
                    margin: TemperatureDifference::from_base(50.0),
                },
                "the bath warms with the part, and oil near its flash point burns",
                "common-practice",
            )
            .mind(
                "Outdoors or under a roof that does not burn, an extinguisher at hand; no drop of water \
                     in the oil, and never water on burning oil.",
                "common-practice",
            ),
    };
    step.mind("Goggles, tongs, leather gloves; steam and hot oil jump.", "common-practice")
}

const TEMPER: &str = "Temper at once, while still hand warm: straw (200–230 °C) for cutting tools, purple (270–280 °C) for punches, \
                      blue (290–310 °C) for springs; the steel's own sheet comes first.";

/// Brine for so many litres, kg: a tenth salt is 1.07 kg to the litre.
fn brine_kg(litres: f64) -> f64 {
    1.07 * litres
}
