//! Sealing a pipe thread: what bears the heat and pressure of what runs in it, how much, and where no sealant is named.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::Silent;
use formulas::seal::{
    NPT, PipeThread, Sealant, Service, WHITWORTH_PIPE, highest_steam, npt_pitch_diameters, sealant_quantity, service_allowed,
    steam_joint_temperature, tape_wraps,
};
use formulas::thread::{Thread, dimensions};
use reference::Fluid;
use reference::practice::ThreadKind;
use units::{Length, Pressure, Quantity, System, Temperature, TemperatureDifference, show, show_in};

use super::common::{choice, degrees, from_celsius, is_one_of};
use super::solid::{drops, lowered};
use super::{Asked, Outcome, Unanswered};
use crate::page::ChoiceRow;

const THREAD: Given<&'static str> = Given::name(
    "thread",
    "R 1/2",
    "common-practice",
    "the thread: R or Rc 1/2 (taper), G 1/2 or Rp 1/2 (parallel), NPT 1/2, or a fine one such as 1/4-40 ME",
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
const TEMPERATURE: Given<Option<Temperature>> = Given::maybe("temperature", "hottest it gets; that of steam is worked out");
const GAP: Given<Option<Length>> = Given::maybe("gap", "gap between the threads, on the diameter, where they are worn or cut loose");
const ENGAGED: Given<Option<Length>> = Given::maybe("engaged", "length of thread engaged, if not the gauge length");

pub(super) static KIND: Kind = Kind {
    name: "seal",
    about: "what seals a pipe thread against what runs in it, and how much it takes",
    fields: &[
        THREAD.field(),
        MEDIUM.field(),
        PLACE.field(),
        PRESSURE.field(),
        SUPERHEAT.field(),
        TEMPERATURE.field(),
        GAP.field(),
        ENGAGED.field(),
    ],
};

/// A thread to be sealed.
struct Fitting {
    thread: Thread,
    kind: ThreadKind,
    /// The taper size of NPT, which has pitch diameters of its own.
    npt: Option<PipeThread>,
    gauge_length: Length,
}

/// What a sealant has to bear.
struct Duty<'a> {
    medium: &'a str,
    pressure: Pressure,
    hottest: Temperature,
    gap: Option<Length>,
}

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let medium = answers.word(&MEDIUM);
    let fitting = fitting(answers.word(&THREAD))?;
    let service = match (answers.word(&PLACE), medium) {
        ("boiler-shell" | "safety-valve" | "water-gauge", _) => Service::Boiler,
        (_, "oxygen" | "breathing-gas") => Service::Oxygen,
        (_, "fuel-gas" | "refrigerant") => Service::FuelGas,
        (_, "steam") => Service::Steam,
        _ => Service::Ordinary,
    };
    let pressure = answers.quantity(&PRESSURE);
    let hottest = hottest(asked, medium, pressure, r)?;
    let mut outcome = Outcome::default().exact("hottest the joint gets", hottest);
    if medium == "steam" {
        outcome = outcome.says("steam is as hot as its pressure makes it");
    }
    if let Err(refusal) = service_allowed(service) {
        if service != Service::Boiler {
            return Err(refusal.into());
        }
        // Of a boiler the temperature may be told, and nothing else.
        return Ok(outcome.way("no sealant is named", false, refusal.to_string()).caution(
            "The boiler code in force and its inspector decide every fitting of a boiler, its safety valve and its water gauge.",
            "common-practice",
        ));
    }
    let engaged = answers.maybe(&ENGAGED).unwrap_or(fitting.gauge_length);
    if engaged > 3.0 * fitting.thread.major {
        return Err(Unanswered::Contradiction(
            "`engaged` is more than three diameters: a pipe thread engages about half of one".to_owned(),
        ));
    }
    let found = dimensions(r, &fitting.thread)?;
    outcome = match fitting.npt {
        Some(size) => {
            let pitch = npt_pitch_diameters(r, &size)?;
            outcome
                .size("pitch diameter at the small end", units::Range::exact(pitch.small_end))
                .size("pitch diameter where it is hand-tight", units::Range::exact(pitch.gauge_plane))
        }
        None => outcome
            .size("pitch diameter", units::Range::exact(found.pitch_diameter))
            .size("minor diameter", units::Range::exact(found.minor_diameter)),
    };
    let amount = sealant_quantity(r, &fitting.thread, engaged)?;
    let wraps = tape_wraps(fitting.thread.major)?;
    outcome = outcome
        .range("sealant", amount)
        .says(format!("{} to put on, the low end the thread's own space; none on the first turn", drops(amount.likely)))
        .numbers("turns of tape", "", wraps)
        .says("with the thread's turning, not on its first turn");
    let duty = Duty { medium, pressure, hottest, gap: answers.maybe(&GAP) };
    outcome = outcome.choices(choices(asked, &fitting, &duty));
    Ok(cautions(outcome, &fitting, &duty))
}

fn hottest(asked: &Asked<'_>, medium: &str, pressure: Pressure, r: &mut Notebook) -> Result<Temperature, Unanswered> {
    const ROOM_C: f64 = 20.0;
    const HOT_WATER_C: f64 = 95.0;
    match (medium, asked.answers.maybe(&TEMPERATURE)) {
        ("steam", None) => Ok(steam_joint_temperature(r, pressure, asked.answers.quantity(&SUPERHEAT))?),
        ("steam", Some(_)) => Err(Unanswered::Contradiction(
            "steam is as hot as its pressure makes it: give `superheat` in place of `temperature`".to_owned(),
        )),
        ("hot-water", None) => Ok(from_celsius(HOT_WATER_C)),
        (_, None) => Ok(from_celsius(ROOM_C)),
        (_, Some(given)) => Ok(given),
    }
}

/// Reads a pipe thread as people write it.
fn fitting(text: &str) -> Result<Fitting, Unanswered> {
    let upper = text.trim().to_ascii_uppercase();
    let pipe = |size: &str, table: &'static [PipeThread]| {
        let size: String = size.chars().filter(|letter| !letter.is_whitespace() && !matches!(letter, '"' | '″')).collect();
        let size = size.replace('½', "1/2").replace('¼', "1/4").replace('¾', "3/4");
        table.iter().copied().find(|known| known.name == size)
    };
    let kinds: [(&str, ThreadKind, &'static [PipeThread]); 8] = [
        ("NPT", ThreadKind::Taper, NPT),
        ("BSPT", ThreadKind::Taper, WHITWORTH_PIPE),
        ("BSPP", ThreadKind::Parallel, WHITWORTH_PIPE),
        ("BSP", ThreadKind::Parallel, WHITWORTH_PIPE),
        ("RC", ThreadKind::Taper, WHITWORTH_PIPE),
        ("RP", ThreadKind::Parallel, WHITWORTH_PIPE),
        ("R", ThreadKind::Taper, WHITWORTH_PIPE),
        ("G", ThreadKind::Parallel, WHITWORTH_PIPE),
    ];
    for (letters, kind, table) in kinds {
        let Some(rest) = upper.strip_prefix(letters).or_else(|| upper.strip_suffix(letters)) else { continue };
        let size = pipe(rest, table).ok_or_else(|| {
            let known: Vec<&str> = table.iter().map(|size| size.name).collect();
            Unanswered::Contradiction(format!("no size `{}` of {letters} is known; there are {}", rest.trim(), known.join(", ")))
        })?;
        let npt = (letters == "NPT").then_some(size);
        let gauge_length = Length::from_base(size.gauge_length_mm / 1e3);
        return Ok(Fitting { thread: size.parallel(), kind, npt, gauge_length });
    }
    let thread: Thread = text.parse().map_err(|_| {
        Unanswered::Contradiction(format!("`{text}` is no pipe thread; write it as R 1/2, Rc 1/2, G 1/2, NPT 1/2, M10x1 or 1/4-40 ME"))
    })?;
    Ok(Fitting { thread, kind: ThreadKind::Parallel, npt: None, gauge_length: 0.8 * thread.major })
}

fn sealant(fluid: &Fluid) -> Option<Sealant> {
    let classes = [
        ("pipe-sealant-anaerobic", Sealant::AnaerobicPaste),
        ("hydraulic-sealant", Sealant::AnaerobicHydraulic),
        ("ptfe-tape", Sealant::Tape),
        ("pipe-paste", Sealant::SoftPaste),
        ("graphite-paste", Sealant::GraphitePaste),
    ];
    classes.into_iter().find(|(class, _)| is_one_of(fluid, &[class])).map(|(_, sealant)| sealant)
}

/// The sealants, those that practice names for it first.
fn choices(asked: &Asked<'_>, fitting: &Fitting, duty: &Duty<'_>) -> Vec<ChoiceRow> {
    let Some(row) = asked.reference.sealing(fitting.kind, duty.medium) else { return Vec::new() };
    let place = |fluid: &Fluid| row.ranked.iter().position(|class| is_one_of(fluid, &[class]));
    let mut rows: Vec<(usize, ChoiceRow)> = Vec::new();
    for fluid in asked.reference.fluids.values() {
        let Some(kind) = sealant(fluid) else { continue };
        let named = place(fluid);
        let against = against(kind, fitting, duty);
        // Of steam practice names the paste; an anaerobic serves small fittings as far as its heat goes.
        let small_steam = duty.medium == "steam" && matches!(kind, Sealant::AnaerobicPaste | Sealant::AnaerobicHydraulic);
        let fits = against.is_none() && (named.is_some() || small_steam);
        let why = match against {
            Some(against) => against,
            None if named.is_some() => lowered(&row.why),
            None if small_steam => format!("within its {} it serves small fittings", degrees(kind.hottest())),
            None => "not what practice takes for this".to_owned(),
        };
        rows.push((if fits { named.unwrap_or(row.ranked.len()) } else { usize::MAX }, choice(fluid, fits, why)));
    }
    rows.sort_by_key(|(rank, _)| *rank);
    rows.into_iter().map(|(_, row)| row).collect()
}

/// What speaks against a sealant here.
fn against(kind: Sealant, fitting: &Fitting, duty: &Duty<'_>) -> Option<String> {
    /// EN 751-3: 5 bar with gas, 7 bar with hot water.
    const GAS_PA: f64 = 5e5;
    const HOT_WATER_PA: f64 = 7e5;
    if duty.hottest > kind.hottest() {
        let steam = highest_steam(&mut Silent, kind).ok().filter(|_| duty.medium == "steam");
        let steam =
            steam.map_or_else(String::new, |at| format!(", which steam passes at {} on the gauge", show_in(at, "bar").unwrap_or_default()));
        return Some(format!("it ends at {}{steam}", degrees(kind.hottest())));
    }
    if let (Some(gap), Some(widest)) = (duty.gap, kind.widest_gap())
        && gap > widest
    {
        return Some(format!("it fills {} at most", show(widest, System::Metric)));
    }
    if kind == Sealant::Tape {
        let limit = match duty.medium {
            "compressed-air" => GAS_PA,
            "hot-water" => HOT_WATER_PA,
            _ => f64::INFINITY,
        };
        if duty.pressure.base() > limit * (1.0 + 1e-9) {
            return Some(format!("tape is rated to {} here", show_in(Pressure::from_base(limit), "bar").unwrap_or_default()));
        }
        if fitting.kind == ThreadKind::Parallel {
            return Some("a parallel thread seals on its face: tape only pads it".to_owned());
        }
    }
    None
}

fn cautions(outcome: Outcome, fitting: &Fitting, duty: &Duty<'_>) -> Outcome {
    /// From here an oil port seals on its face; *common practice*.
    const FACE_FROM_PA: f64 = 25e5;
    outcome
        .caution("Let the pressure off and the heat out before you undo a joint; test it with cold water first.", "common-practice")
        .caution_if(
            fitting.kind == ThreadKind::Parallel,
            "A parallel thread seals with a washer or bonded seal on its face; the compound only helps.",
            "common-practice",
        )
        .caution_if(
            fitting.npt.is_some(),
            "NPT and R do not mate: between 1/2 and 3/4 both have 14 turns to the inch, and yet other angles.",
            "asme-b1-20-1",
        )
        .caution_if(duty.medium.contains("water"), "Drinking water: only a product approved for it where you live.", "common-practice")
        .caution_if(
            duty.medium == "oil" && duty.pressure.base() > FACE_FROM_PA,
            "Above about 25 bar use a port that seals on its face (ISO 1179, ISO 6149); oil under pressure goes through skin.",
            "common-practice",
        )
        .caution("Oxygen, breathing gas, fuel gas and refrigerant: no sealant of a home shop, ever.", "astm-g63")
}
