//! Sealing a threaded joint against what runs in it.
//!
//! The class is a matter of practice by thread and medium; heat and pressure then take some of them out. Steam is as hot as its pressure
//! makes it. For boilers, oxygen, fuel gas and refrigerant no product is named.

use formulas::seal::{Sealant, WHITWORTH_PIPE, highest_steam, sealant_quantity, steam_joint_temperature, tape_wraps};
use formulas::thread::{Form as Profile, Thread};
use formulas::working::Recorder;
use reference::Form;
use reference::practice::ThreadKind;
use shop::{Given, Kind};
use units::{Length, Pressure, Quantity, System, Temperature, TemperatureDifference, show, show_in};

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
        let superheat: TemperatureDifference = answers.quantity(&SUPERHEAT);
        steam_joint_temperature(r, pressure, superheat)?
    } else {
        let least = if medium == "hot-water" { HOT_WATER_C } else { 0.0 };
        let given: Temperature = answers.quantity(&TEMPERATURE);
        if given > celsius(least) { given } else { celsius(least) }
    };
    let task = |steps| vec![Task { consequence: Consequence::StopsOrHarms, times_a_year: bench.times_a_year(), steps }];
    if let Some(refusal) = refusal(answers.word(&PLACE), medium).and_then(|key| bench.reference.refusals.get(key)) {
        let heat = if steam { format!(" The steam is at {}.", bench.show(hottest)) } else { String::new() };
        return Ok(task(vec![Step::refused("seal", format!("{}{heat}", refusal.why))]));
    }
    let thread = if answers.word(&THREAD) == "parallel" { ThreadKind::Parallel } else { ThreadKind::Taper };
    let Some(row) = bench.reference.sealing(thread, medium) else {
        return Ok(task(vec![Step::refused("seal", "no sealant is known for this; ask the maker of the fitting")]));
    };
    let tape_serves = tape_limit(medium).is_none_or(|limit| pressure.base() <= limit);
    let mut ranked: Vec<String> = row.ranked.iter().filter(|class| tape_serves || *class != "ptfe-tape").cloned().collect();
    let size: Length = answers.quantity(&SIZE);
    let (thread, engaged) = pipe(size);
    let anaerobic = ranked.first().is_some_and(|class| class.contains("anaerobic") || class == "hydraulic-sealant");
    let why = if steam { for_steam(r, &mut ranked, hottest, bench.shop.units)? } else { row.why.clone() };
    let mut seal = Step::new("seal", "all round the male thread, none on the first turn; put together and leave it")
        .ranked(&ranked, why, row.source.as_str())
        .demand(
            "stands the heat",
            Test::Stands { hottest },
            if steam { "saturated steam is as hot as its pressure makes it" } else { "past its limit a sealant gives way" },
            if steam { "iapws-if97" } else { "en-751" },
        )
        .spares(metals)
        .dose(Dose::volumes(sealant_quantity(r, &thread, engaged)?.map(|each| pieces * each)))
        .dose_of(Form::Solid, tape(size)?.times(pieces))
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
            "Above about 25 bar (360 psi) use a port that seals on its face; oil under pressure goes through skin.",
            "common-practice",
        );
    if anaerobic {
        seal = cures(seal, bench)?;
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

/// A pressure as it stands on a gauge.
fn gauge(pressure: Pressure, units: System) -> String {
    let unit = if units == System::Inch { "psi" } else { "bar" };
    show_in(pressure, unit).unwrap_or_default()
}

/// Adds the anaerobic sealants, which serve steam as far as they bear its heat, and says where they end.
fn for_steam<R: Recorder>(r: &mut R, ranked: &mut Vec<String>, hottest: Temperature, units: System) -> Result<String, Complaint> {
    let mut ends = |sealant| Ok::<String, Complaint>(gauge(highest_steam(r, sealant)?, units));
    let why = format!(
        "Here the steam is at {}. Graphite paste bears {}, an anaerobic sealant saturated steam up to {} on the gauge, tape up to {}, \
         whatever is said.",
        show(hottest, units),
        show(Sealant::GraphitePaste.hottest(), units),
        ends(Sealant::AnaerobicHydraulic)?,
        ends(Sealant::Tape)?,
    );
    // The liquid gets into the fine threads of small fittings better than the paste.
    ranked.extend(["hydraulic-sealant", "pipe-sealant-anaerobic"].map(ToOwned::to_owned));
    Ok(why)
}

/// The pipe thread of an outside diameter, and the length of it engaged: of the pipe sizes where one is so large, else a fine one as model
/// engineers cut it, engaged over four tenths of its diameter; *common practice*.
fn pipe(size: Length) -> (Thread, Length) {
    /// As near as a calliper and a worn thread tell one size from another.
    const NEAR: f64 = 0.03;
    let mm = size.base() * 1e3;
    let known = WHITWORTH_PIPE.iter().find(|known| (known.diameter_mm / mm - 1.0).abs() < NEAR);
    known.map_or_else(
        || {
            let turns = if mm < 6.5 { 40.0 } else { 32.0 };
            let thread = Thread { form: Profile::Whitworth, major: size, pitch: Length::from_base(0.0254 / turns) };
            (thread, 0.4 * size)
        },
        |known| (known.parallel(), Length::from_base(known.gauge_length_mm * 1e-3)),
    )
}

/// Tape for one joint: its turns round the thread.
fn tape(size: Length) -> Result<Dose, Complaint> {
    let metres = tape_wraps(size)?.map(|turns| turns * std::f64::consts::PI * size.base());
    Ok(Dose { low: metres.low, likely: metres.likely, high: metres.high, unit: DoseUnit::Metre })
}
