//! Sealing a threaded joint against what runs in it.
//!
//! The class is a matter of practice by thread and medium; heat and pressure then take some of them out. Steam is as hot as its pressure
//! makes it. For boilers, oxygen, fuel gas and refrigerant no product is named.

use formulas::steam::saturation_temperature;
use formulas::working::Recorder;
use reference::Form;
use reference::practice::ThreadKind;
use shop::{Given, Kind};
use units::{Length, Pressure, Quantity, System, Temperature, TemperatureDifference, show};

use super::common::{cures, degrease};
use super::{Bench, Step, Task};
use crate::demand::{Test, celsius};
use crate::need::{Consequence, Dose, DoseUnit};
use crate::needs::Complaint;

const THREAD: Given<&'static str> = Given::choice(
    "thread",
    &["taper", "parallel"],
    "taper",
    "common-practice",
    "taper (the thread seals) or parallel (a face or washer seals)",
);
const MEDIUM: Given<&'static str> = Given::choice(
    "medium",
    &["water", "hot-water", "compressed-air", "oil", "coolant", "steam", "fuel-gas", "oxygen", "breathing-gas", "refrigerant"],
    "compressed-air",
    "common-practice",
    "what runs in it",
);
const PLACE: Given<&'static str> = Given::choice(
    "place",
    &["pipework", "boiler-shell", "safety-valve", "water-gauge"],
    "pipework",
    "common-practice",
    "where the joint is",
);
const PRESSURE: Given<Pressure> = Given::quantity("pressure", "5 bar", "common-practice", "pressure on the gauge");
const SUPERHEAT: Given<TemperatureDifference> =
    Given::quantity("superheat", "0 K", "common-practice", "how much hotter than saturated the steam is");
const TEMPERATURE: Given<Temperature> =
    Given::quantity("temperature", "40 °C", "common-practice", "hottest it gets; that of steam is worked out");
const SIZE: Given<Length> = Given::quantity("size", "13 mm", "common-practice", "outside diameter of the thread");
const METALS: Given<Vec<String>> = Given::materials("metals", "brass", "common-practice", "what the joint is made of");
const PIECES: Given<f64> = Given::number("pieces", "4", "common-practice", "how many joints each time");

pub(super) static KIND: Kind = Kind {
    name: "seal thread",
    about: "sealing pipe threads and fittings",
    fields: &[
        THREAD.field(),
        MEDIUM.field(),
        PLACE.field(),
        PRESSURE.field(),
        SUPERHEAT.field(),
        TEMPERATURE.field(),
        SIZE.field(),
        METALS.field(),
        PIECES.field(),
    ],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    /// Above this an oil port seals on its face, not in its thread, Pa; *common practice*.
    const FACE_FROM_PA: f64 = 25e5;
    let answers = bench.answers();
    let (medium, metals) = (answers.word(&MEDIUM), answers.words(&METALS));
    let (pressure, pieces): (Pressure, f64) = (answers.quantity(&PRESSURE), answers.number(&PIECES));
    let steam = medium == "steam";
    let hottest = if steam {
        let saturated = saturation_temperature(r, pressure)?;
        let superheat: TemperatureDifference = answers.quantity(&SUPERHEAT);
        Temperature::from_base(saturated.base() + superheat.base().max(0.0))
    } else {
        let least = if medium == "hot-water" { HOT_WATER_C } else { 0.0 };
        let given: Temperature = answers.quantity(&TEMPERATURE);
        if given > celsius(least) { given } else { celsius(least) }
    };
    let task = |steps| vec![Task { consequence: Consequence::StopsOrHarms, times_a_year: bench.times_a_year(), steps }];
    if let Some(refusal) = refusal(answers.word(&PLACE), medium).and_then(|key| bench.reference.refusals.get(key)) {
        let heat = if steam { format!(" The steam is at {}.", show(hottest, System::Metric)) } else { String::new() };
        return Ok(task(vec![Step::refused("seal", format!("{}{heat}", refusal.why))]));
    }
    let thread = if answers.word(&THREAD) == "parallel" { ThreadKind::Parallel } else { ThreadKind::Taper };
    let Some(row) = bench.reference.sealing(thread, medium) else {
        return Ok(task(vec![Step::refused("seal", "no sealant is known for this; ask the maker of the fitting")]));
    };
    let tape_serves = tape_limit(medium).is_none_or(|limit| pressure.base() <= limit);
    let ranked: Vec<String> = row.ranked.iter().filter(|class| tape_serves || *class != "ptfe-tape").cloned().collect();
    let size = answers.quantity(&SIZE).base();
    let anaerobic = ranked.first().is_some_and(|class| class.contains("anaerobic") || class == "hydraulic-sealant");
    let why = if steam { format!("{} Here the steam is at {}.", row.why, show(hottest, System::Metric)) } else { row.why.clone() };
    let mut seal = Step::new("seal", "all round the male thread, none on the first turn; put together and leave it")
        .ranked(&ranked, why, row.source.as_str())
        .demand(
            "stands the heat",
            Test::Stands { hottest },
            if steam { "saturated steam is as hot as its pressure makes it" } else { "past its limit a sealant gives way" },
            if steam { "iapws-if97" } else { "en-751" },
        )
        .spares(metals)
        .dose(Dose::ml(sealant_ml(size) * pieces))
        .dose_of(Form::Solid, Dose::about(tape_m(size) * pieces, DoseUnit::Metre))
        .mind_if(
            steam,
            "Steam burns: no pressure while you work on it, test with cold water first; the model-boiler \
                 code in force and its inspector come first.",
            "common-practice",
        )
        .mind_if(
            medium == "compressed-air",
            "Let the pressure off before you undo anything; the pressure vessel itself is work for its \
                 inspector.",
            "common-practice",
        )
        .mind_if(medium.contains("water"), "Drinking water: only a product approved for it where you live.", "common-practice")
        .mind_if(
            medium == "oil" && pressure.base() > FACE_FROM_PA,
            "Above about 25 bar use a port that seals on its face; oil under pressure goes through skin.",
            "common-practice",
        );
    if anaerobic {
        seal = cures(seal, bench);
    }
    Ok(task(vec![degrease(bench, metals, Dose::ml(2.0 * pieces), anaerobic), seal]))
}

/// Hottest that open hot water in pipes gets, °C; *common practice*.
const HOT_WATER_C: f64 = 95.0;

/// The refusal that covers a place and a medium.
fn refusal(place: &str, medium: &str) -> Option<&'static str> {
    match (place, medium) {
        ("boiler-shell" | "safety-valve" | "water-gauge", _) => Some("boiler"),
        (_, "oxygen" | "breathing-gas") => Some("oxygen"),
        (_, "fuel-gas") => Some("fuel-gas"),
        (_, "refrigerant") => Some("refrigerant"),
        _ => None,
    }
}

/// The pressure to which tape is rated, Pa: 5 bar with gas, 7 bar with hot water (EN 751-3).
fn tape_limit(medium: &str) -> Option<f64> {
    match medium {
        "compressed-air" => Some(5e5),
        "hot-water" => Some(7e5),
        _ => None,
    }
}

/// Three times the void of the thread: 0.12 mL in a thread of 21 mm, and with the square of the size; *common practice*.
fn sealant_ml(size: f64) -> f64 {
    3.0 * 0.12 * (size / 0.021).powi(2)
}

/// Tape for one joint, metres: three turns up to 17 mm outside (3/8), five above.
fn tape_m(size: f64) -> f64 {
    let turns = if size <= 0.017 { 3.0 } else { 5.0 };
    turns * std::f64::consts::PI * size
}
