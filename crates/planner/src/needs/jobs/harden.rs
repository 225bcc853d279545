//! Hardening steel: what it is quenched in, how much of it, and the oil after.

use formulas::quench::{Charge, HotMetal, Liquid, USUAL_RISE_K, WARMEST_BRINE_C, WARMEST_WATER_C, bath_after, oil_volume, quench_vessel};
use formulas::working::Recorder;
use handling::bars::USED_OIL;
use reference::Form;
use shop::{Given, Kind};
use units::{Area, Length, Mass, Quantity, System, Temperature, TemperatureDifference, Volume, in_celsius};

use super::common::{degrease, oil_after};
use super::{Bench, Step, Task};
use crate::demand::{Test, celsius};
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
const HEAT: Given<Temperature> = Given::quantity("heat", "820 °C", "common-practice", "temperature it is quenched from, by its maker");
const LENGTH: Given<Length> = Given::quantity("length", "80 mm", "common-practice", "longest part as it is held");
const BRIGHT: Given<bool> = Given::flag("bright", "false", "common-practice", "whether scale would spoil the face");

pub(super) static KIND: Kind = Kind {
    name: "harden",
    about: "hardening tool steel and case hardening",
    fields: &[STEEL.field(), MASS.field(), HEAT.field(), LENGTH.field(), BRIGHT.field()],
};

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
    let mut steps = vec![degrease(bench, &materials, Dose::ml(3.0), false).near_heat()];
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
            Step::new(
                "pack or dip",
                format!(
                    "bright red ({}), into the powder, hold, again; a skin of a few tenths of a millimetre at most; quench from that heat",
                    bench.show(celsius(CASE_C))
                ),
            )
            .classes(&["case-hardening-powder"], &[], "mild steel has too little carbon to harden", "common-practice")
            .dose(Dose::grams(powder_g(mass)))
            .mind("Only powder free of cyanide.", "common-practice"),
        );
    }
    let told: Temperature = answers.quantity(&HEAT);
    // What comes out of the powder goes into the bath as hot as that.
    let at = if steel == "case" && told < celsius(CASE_C) { celsius(CASE_C) } else { told };
    let charge = Charge { mass, metal: HotMetal::Iron, at };
    steps.push(quench(bench, steel, &Bath::new(r, &charge, steel == "oil-hardening", bench.room.hottest, answers.quantity(&LENGTH))?));
    if steel != "oil-hardening" {
        steps.push(oil_after(&materials, Dose::ml(2.0)));
    }
    Ok(task(steps))
}

/// Heat at which mild steel takes up carbon from a powder, °C; *common practice*.
const CASE_C: f64 = 900.0;

/// Boric acid for one small part, g; *common practice*.
const GLAZE_G: f64 = 5.0;

/// Powder that sticks to the parts, g: a tenth of their mass; *common practice*.
fn powder_g(mass: Mass) -> f64 {
    0.1 * mass.base() * 1e3
}

/// The bath a batch is quenched in.
struct Bath {
    liquid: Volume,
    depth: Length,
    height: Length,
    /// As warm as one batch makes it.
    hottest: Temperature,
}

impl Bath {
    /// In a room so warm. Oil starts with it; water is drawn cold, and ends where water must, though brine may stand there too.
    fn new<R: Recorder>(r: &mut R, charge: &Charge, oil: bool, room: Temperature, part: Length) -> Result<Self, Complaint> {
        let (liquid, start, rise) = if oil {
            (Liquid::oil(), room, USUAL_RISE_K)
        } else {
            let cold = if room < celsius(DRAWN_C) { room } else { celsius(DRAWN_C) };
            (Liquid::water(), cold, (WARMEST_WATER_C - in_celsius(cold)).min(USUAL_RISE_K))
        };
        let rise = TemperatureDifference::from_base(rise);
        let asked = oil_volume(r, charge, &liquid, start, rise)?.needed;
        let vessel = quench_vessel(r, asked, part, floor(asked))?;
        let hottest = bath_after(r, charge, &liquid, vessel.liquid, start)?;
        Ok(Self { liquid: vessel.liquid, depth: vessel.depth, height: vessel.height, hottest })
    }
}

/// Water for a quench is drawn no warmer, °C; *common practice*.
const DRAWN_C: f64 = 25.0;

/// A volume to the next tenth of a litre, as a vessel is filled.
fn tenths(volume: Volume) -> Volume {
    Volume::from_base((volume.base() * 1e4).ceil() / 1e4)
}

/// A length to the next whole centimetre, or half inch, as a vessel is measured.
fn measured(length: Length, units: System) -> Length {
    let step = if units == System::Inch { 0.0127 } else { 0.01 };
    Length::from_base((length.base() / step).ceil() * step)
}

/// The floor of a round pot half as deep again as it is wide; *common practice*.
fn floor(liquid: Volume) -> Area {
    let wide = (liquid.base() / (1.5 * std::f64::consts::FRAC_PI_4)).cbrt();
    Area::from_base(std::f64::consts::FRAC_PI_4 * wide * wide)
}

fn quench(bench: &Bench<'_>, steel: &str, bath: &Bath) -> Step {
    // A fill serves a year, so that a year takes one fill and the pack holds it.
    let litres = bath.liquid.base() * 1e3;
    let each_time = litres / bench.times_a_year().max(1.0);
    let step = Step::new("quench", "from the maker's temperature, straight down, all under in one move, stir up and down")
        .dose(Dose::ml(each_time * 1e3))
        .dose_of(Form::Solid, Dose::grams(brine_kg(litres) * 1e3 / bench.times_a_year().max(1.0)))
        .mind(
            format!(
                "Have {} of it, {} deep, in a metal vessel {} high at least, with a tight lid beside it; one batch \
                 warms it to {}.",
                bench.show(tenths(bath.liquid)),
                bench.show(measured(bath.depth, bench.shop.units)),
                bench.show(measured(bath.height, bench.shop.units)),
                bench.show(bath.hottest)
            ),
            "common-practice",
        )
        .mind(if steel == "case" { TEMPER_CASE } else { TEMPER }, "common-practice");
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
            .classes(&["quench-oil"], &[], "water cracks an oil-hardening steel", "common-practice")
            .demand(
                "far from its flash point",
                Test::Flash { hottest: bath.hottest, margin: TemperatureDifference::from_base(FLASH_MARGIN_K) },
                "the bath warms with the part, and oil near its flash point burns",
                "common-practice",
            )
            .mind(
                "Outdoors or under a roof that does not burn, an extinguisher at hand; no drop of water \
                     in the oil, and never water on burning oil.",
                "common-practice",
            )
            .never(&USED_OIL),
    };
    let step = step.mind_if(
        steel != "oil-hardening",
        format!(
            "Draw it cold, at {} at most, and renew it before it passes {}, brine {}: warmer, steam clings to the steel and leaves soft spots.",
            bench.show(celsius(DRAWN_C)),
            bench.show(celsius(WARMEST_WATER_C)),
            bench.show(celsius(WARMEST_BRINE_C))
        ),
        "common-practice",
    );
    step.near_heat().mind("Goggles, tongs, leather gloves; steam and hot oil jump.", "common-practice")
}

/// A bath stays so far below its oil's flash point, K; *common practice*.
const FLASH_MARGIN_K: f64 = 50.0;

const TEMPER: &str = "Temper at once, while still hand warm: straw (200–230 °C, 390–450 °F) for cutting tools, purple (270–280 °C, 520–540 °F) for \
                      punches, blue (290–310 °C, 555–590 °F) for springs; the steel's own sheet comes first.";

const TEMPER_CASE: &str = "Temper at once, while still hand warm: an hour at 150–200 °C (300–390 °F), no hotter, or the skin goes soft; the steel's own sheet \
                           comes first.";

/// Brine for so many litres, kg: a tenth salt is 1.07 kg to the litre.
fn brine_kg(litres: f64) -> f64 {
    1.07 * litres
}
