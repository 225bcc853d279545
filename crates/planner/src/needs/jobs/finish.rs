//! Finishing steel: what keeps it from rusting, black, oil, wax or paint.
//!
//! A table of rules by what the part is decides what must never go on it; the first rule that applies is taken. A part in sight is blackened
//! with a wipe; a bath is for what it covers wholly.

use formulas::coating::{Face, size_change, tolerance_use};
use formulas::solid_area::surface_area;
use formulas::working::Recorder;
use reference::practice::FinishRule;
use shop::{Given, Kind};
use units::{Area, Length, Quantity};

use super::common::{degrease, oil_after, wipe};
use super::dip::{self, Dip};
use super::{Bench, Step, Task};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;

const WANT: Given<&'static str> = Given::choice(
    "finish",
    &["black", "oil", "wax", "paint", "protect"],
    "black",
    "common-practice",
    "what it should have; protect: whatever keeps it from rusting",
);
const PART: Given<&'static str> = Given::choice(
    "part",
    &["handled", "sliding", "spring", "thread", "wet", "outdoors", "table", "seldom touched", "stored", "boxed"],
    "handled",
    "common-practice",
    "what the part is: a handled tool, a sliding or measuring face, a spring, a fine thread or fit …",
);
const MATERIALS: Given<Vec<String>> = Given::materials("materials", "mild-steel", "common-practice", "what it is made of");
const AREA: Given<Area> = Given::quantity("area", "200 cm2", "common-practice", "face that is finished each time");
const IMMERSED: Given<bool> =
    Given::flag("immersed", "false", "common-practice", "whether a bath can cover it wholly; else it is blackened with a wipe");
const TOLERANCE: Given<Length> = Given::quantity("tolerance", "50 µm", "common-practice", "tolerance of a thread or fit on it");
const RUSTY: Given<bool> = Given::flag("rusty", "false", "common-practice", "whether there is rust on it");

pub(super) static KIND: Kind = Kind {
    name: "finish",
    about: "blackening, oiling, waxing and painting parts",
    fields: &[
        WANT.field(),
        PART.field(),
        MATERIALS.field(),
        AREA.field(),
        IMMERSED.field(),
        dip::LENGTH.field(),
        dip::WIDTH.field(),
        dip::HEIGHT.field(),
        dip::DIAMETER.field(),
        TOLERANCE.field(),
        RUSTY.field(),
    ],
};

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (materials, part) = (answers.words(&MATERIALS), answers.word(&PART));
    let want = answers.word(&WANT);
    let immersed = want == "black" && answers.flag(&IMMERSED);
    let area = if immersed { surface_area(r, &dip::solid(answers))? } else { answers.quantity(&AREA) };
    let rule = bench.finish_rule(case(bench, part, materials))?;
    let task = |steps| vec![Task { consequence: Consequence::Looks, times_a_year: bench.times_a_year(), steps }];
    let allowed = |classes: &[&'static str]| -> Vec<&'static str> {
        classes.iter().copied().filter(|class| !rule.never.iter().any(|never| never == class)).collect()
    };
    let (right, will_do) = wanted(want, part, immersed);
    let (right, will_do) = (allowed(right), allowed(will_do));
    if right.is_empty() {
        return Ok(task(vec![Step::refused(want, format!("{}: {} Better: {}.", rule.when, rule.why, better(bench, rule)))]));
    }
    let mut steps = vec![degrease(bench, materials, wipe(area), want == "black" || want == "paint")];
    if answers.flag(&RUSTY) && !rule.never.iter().any(|never| never == "rust-remover") {
        steps.push(
            Step::new("take off rust", "brush on, rinse when bright, go on while it is wet")
                .classes(&["rust-remover"], &["pickle-citric"], "no finish holds on rust", "common-practice")
                .spares_briefly(materials)
                .dose(Dose::ml(RUST_ML_PER_M2 * area.base()))
                .mind("Acid: goggles and gloves. It makes hard and spring steel brittle.", "common-practice"),
        );
    }
    let why = if rule.ranked.iter().any(|class| right.contains(&class.as_str())) {
        rule.why.clone()
    } else {
        format!("as you wished; for this ({}) the trade takes {}", rule.when, better(bench, rule))
    };
    let coat = Step::new(want, way(want, immersed))
        .classes(&right, &will_do, why, rule.source.as_str())
        .spares(materials)
        .covers(bench, &right, &will_do, area);
    // An oil runs out of a thread that is turned; what is dry stays.
    let stays = ["black", "wax", "paint"].contains(&want);
    let coat = if part == "thread" && stays { coat.mind(on_thread(bench, r, &right)?, "common-practice") } else { coat };
    let coat = if want == "paint" { coat.before_coating() } else { coat };
    if want == "black" {
        let coat = if immersed { Dip::new(bench, r, area)?.applied(coat, bench) } else { coat };
        steps.push(coat.mind(
            "Selenium and acid: gloves, goggles, open door; it and its rinse water are hazardous waste. \
                 Longer in the bath gives loose smut.",
            "common-practice",
        ).mind(
            "Swallowed, even a mouthful of it has killed: locked, out of reach of children, never in a drinking bottle; no metal dust near it \
             (hydrogen selenide).",
            "common-practice",
        ));
        steps.push(
            Step::new("rinse", "hot, until nothing runs off coloured, shake dry")
                .classes(&["hot-water", "quench-water"], &[], "salts left behind rust", "common-practice")
                .dose(Dose::ml(1000.0)),
        );
        steps.push(
            oil_after(materials, Dose::ml((OIL_ML_PER_M2 * area.base()).max(1.0)))
                .mind("Black alone protects nothing; the oil does.", "mil-dtl-13924"),
        );
    } else {
        steps.push(coat.mind_if(want == "paint", "Never on fits, ways or threads. Open door, no flame.", "common-practice"));
    }
    Ok(task(steps))
}

/// The first rule that applies: what the metal is comes before what the part is, but a sliding face before both.
fn case(bench: &Bench<'_>, part: &str, materials: &[String]) -> &'static str {
    match part {
        "sliding" => "sliding-or-measuring-face",
        "spring" => "hard-spring-steel",
        _ if bench.any_is(materials, "hardened-steels") => "hard-spring-steel",
        _ if ["stainless", "light-metals", "copper-alloys"].iter().any(|group| bench.any_is(materials, group)) => "not-steel",
        "stored" => "stored-unheated",
        "table" | "seldom touched" => "table-or-column",
        "boxed" => "closed-box",
        "thread" => "fine-thread-or-fit",
        "wet" => "wet-part",
        "outdoors" => "outdoors",
        _ => "handled-tool-black",
    }
}

/// Right and next best for a wish.
fn wanted(want: &str, part: &str, immersed: bool) -> (&'static [&'static str], &'static [&'static str]) {
    const OILS: &[&str] = &["rust-oil", "preservative-oil"];
    const WAXES: &[&str] = &["paste-wax", "soft-wax"];
    match (want, part) {
        ("oil", _) => (OILS, &["water-displacing-film", "light-machine-oil", "slideway-oil"]),
        ("wax", _) => (WAXES, &["hard-wax", "wax-aerosol"]),
        ("paint", _) => (&["paint"], &[]),
        ("protect", "outdoors") => (&["paint", "hard-wax"], &["soft-wax"]),
        ("protect", "wet") => (&["water-displacing-film", "water-displacing-spray"], OILS),
        ("protect", "seldom touched" | "table" | "stored") => (WAXES, &["rust-oil", "preservative-oil", "water-displacing-film"]),
        ("protect", _) => (OILS, &["water-displacing-film", "light-machine-oil", "slideway-oil", "paste-wax", "soft-wax"]),
        _ if immersed => (&["cold-blackening"], &["blackening-wipe"]),
        _ => (&["blackening-wipe"], &[]),
    }
}

fn way(want: &str, immersed: bool) -> &'static str {
    match want {
        "oil" | "protect" => "wipe on, let it drain, wipe off what runs",
        "wax" => "thin, let it haze, rub down",
        "paint" => "thin coats, each dry before the next; mask fits and threads",
        _ if immersed => "dip for one to three minutes, keep it moving",
        _ => "swab on for one to three minutes, keep it wet and moving",
    }
}

/// What the coat does to the thread or fit, in words.
fn on_thread<R: Recorder>(bench: &Bench<'_>, r: &mut R, coats: &[&str]) -> Result<String, Complaint> {
    let row = coats.iter().find_map(|class| bench.reference.finishes.get(*class));
    let thickest = row.map_or(Length::from_base(0.0), |row| row.thickness.high);
    let grows = size_change(r, Face::ExternalThread, thickest)?.laid_on;
    let used = tolerance_use(r, grows, bench.answers().quantity(&TOLERANCE))?;
    let verdict = if used.too_much { "too much: mask it, or take a thinner coat" } else { "it may stay" };
    Ok(format!(
        "It adds up to {:.0} µm to a thread's pitch diameter, half that to a shaft: {} of the tolerance, {verdict}.",
        grows.base() * 1e6,
        bench.show(used.share)
    ))
}

/// The names of what a rule ranks.
fn better(bench: &Bench<'_>, rule: &FinishRule) -> String {
    rule.ranked.iter().map(|class| bench.reference.name_of(class)).collect::<Vec<_>>().join(", ")
}

/// Rust remover for a square metre, mL; *common practice*.
const RUST_ML_PER_M2: f64 = 100.0;
/// Oil that stays on a drained face, mL for a square metre; *common practice*.
const OIL_ML_PER_M2: f64 = 20.0;
