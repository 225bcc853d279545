//! A bolt's torque: what gives its preload dry and lubricated, and what the old torque would do to an oiled thread.

use fields::{Given, Kind};
use formulas::thread::{Thread, dimensions, proof_load, stripping_load};
use formulas::tightening::{
    Bolt, Condition, Grade, Makes, Means, WET_LOCKER_THREAD, assembly_preload, converted_torque, grade, nut_factor, preload_for_share,
    preload_range, preload_scatter, tightening_torque, torque_range,
};
use formulas::{Notebook, Silent};
use units::{Force, Length, Pressure, Quantity, Range, Torque};

use super::common::said;
use super::{Asked, Outcome, Unanswered};
use crate::picture::{Axis, Line, Mark, Picture};

const CONDITIONS: &[&str] =
    &["paste", "oiled", "as-delivered", "zinc-dry", "stainless-dry", "stainless-oiled", "stainless-paste", "threadlocker"];

pub(super) const THREAD: Given<&'static str> =
    Given::name("thread", "M10", "iso-724", "the thread, as M10, M10x1, 3/8-16, #10-32, 1/4 BSW, 1/4 BSF, 2 BA or 1/4-40 ME");
pub(super) const CLASS: Given<&'static str> = Given::name(
    "class",
    "8.8",
    "iso-898-1",
    "property class or grade on the head: 4.6 to 12.9, grade 2, 5 or 8, A-50, A-70, CU2; `unknown` counts as 4.6",
);
const WAS: Given<&'static str> = Given::choice(
    "was",
    CONDITIONS,
    "as-delivered",
    "vdi-2230-1",
    "the thread the torque was meant for: paste (moly, graphite or wax), oiled, as delivered, dry zinc, stainless",
);
const NOW: Given<&'static str> = Given::choice("now", CONDITIONS, "oiled", "vdi-2230-1", "the thread as it is now");
const OLD: Given<Option<Torque>> = Given::maybe("torque", "the torque you have; if none, that of `share` of the proof load is found");
const SHARE: Given<f64> = Given::number(
    "share",
    "75",
    "shigley",
    "per cent of the proof load to tighten to: 75 for what comes undone again, 90 for what does not",
);
const MEANS: Given<&'static str> = Given::choice(
    "by",
    &["torque-wrench", "feel", "turn-of-nut"],
    "torque-wrench",
    "machinerys-handbook-31",
    "how it is tightened, by which its force scatters",
);
const FACE: Given<Option<Length>> = Given::maybe("face", "outside diameter of the ring under the head, if it is no hexagon head");
const HOLE: Given<Option<Length>> = Given::maybe("hole", "hole it passes through, if not the usual one");
const ENGAGED: Given<Option<Length>> = Given::maybe("engaged", "length of thread engaged, where the nut thread is the weaker");
const SHEAR: Given<Pressure> = Given::quantity(
    "nut_shear",
    "150 MPa",
    "common-practice",
    "shear strength of the nut thread: iron and aluminium near this, steel 300 MPa",
);

pub(super) static KIND: Kind = Kind {
    name: "torque",
    about: "what torque keeps a bolt's preload when its thread is oiled, and what the old torque would do",
    fields: &[
        THREAD.field(),
        CLASS.field(),
        WAS.field(),
        NOW.field(),
        OLD.field(),
        SHARE.field(),
        MEANS.field(),
        FACE.field(),
        HOLE.field(),
        ENGAGED.field(),
        SHEAR.field(),
    ],
};

/// The bolt as typed, with its class.
pub(super) fn bolt(asked: &Asked<'_>) -> Result<(Bolt, Grade), Unanswered> {
    let thread: Thread = asked.answers.word(&THREAD).parse()?;
    let class = asked.answers.word(&CLASS);
    let found = grade(class, thread.major).ok_or_else(|| {
        let known: Vec<String> = Makes::ALL.iter().map(|makes| format!("{} ({})", makes.names.join(", "), makes.standard)).collect();
        Unanswered::Contradiction(format!("no class `{class}` is known for this size; there are {}, and `unknown`", known.join("; ")))
    })?;
    Ok((Bolt::hexagon(thread), found))
}

/// Friction in the thread and under the head.
struct Friction {
    thread: Range<f64>,
    head: Range<f64>,
}

fn friction(word: &str) -> Friction {
    let both = |condition: Condition| Friction { thread: condition.friction(), head: condition.friction() };
    match word {
        "paste" => both(Condition::Paste),
        "oiled" => both(Condition::Oiled),
        "zinc-dry" => both(Condition::ZincDry),
        "stainless-dry" => both(Condition::StainlessDry),
        "stainless-oiled" => both(Condition::StainlessOiled),
        "stainless-paste" => both(Condition::StainlessPaste),
        // Threadlocker wets the thread alone; the head keeps its own friction.
        "threadlocker" => Friction { thread: WET_LOCKER_THREAD, head: Condition::AsDelivered.friction() },
        _ => both(Condition::AsDelivered),
    }
}

fn words(word: &str) -> &str {
    match word {
        "paste" => "with moly or graphite paste, or wax",
        "oiled" => "oiled or greased",
        "as-delivered" => "as delivered",
        "zinc-dry" => "zinc-plated and dry",
        "stainless-dry" => "stainless and dry",
        "stainless-oiled" => "stainless with oil",
        "stainless-paste" => "stainless with paste",
        "threadlocker" => "wet with threadlocker",
        other => other,
    }
}

/// Torque for a force over a friction's scatter; thread and head each with their own.
fn torques(r: &mut Notebook, bolt: &Bolt, preload: Force, friction: &Friction) -> Result<Range<Torque>, Unanswered> {
    if friction.thread == friction.head {
        return Ok(torque_range(r, bolt, preload, friction.thread)?);
    }
    let mut at = |thread: f64, head: f64| tightening_torque(r, bolt, preload, thread, head).map(|split| split.total());
    Ok(Range {
        low: at(friction.thread.low, friction.head.low)?,
        likely: at(friction.thread.likely, friction.head.likely)?,
        high: at(friction.thread.high, friction.head.high)?,
    })
}

/// Force of a torque over a friction's scatter.
fn forces(r: &mut Notebook, bolt: &Bolt, torque: Torque, friction: &Friction) -> Result<Range<Force>, Unanswered> {
    if friction.thread == friction.head {
        return Ok(preload_range(r, bolt, torque, friction.thread)?);
    }
    // The torque is proportional to the force, so one newton's torque gives the force of any.
    let each = torques(r, bolt, Force::from_base(1.0), friction)?;
    let force = |each: Torque| Force::from_base((torque / each).value);
    Ok(Range { low: force(each.high), likely: force(each.likely), high: force(each.low) })
}

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let (mut bolt, class) = bolt(asked)?;
    bolt.face = answers.maybe(&FACE).unwrap_or(bolt.face);
    bolt.hole = answers.maybe(&HOLE).unwrap_or(bolt.hole);
    let (was_word, now_word) = (answers.word(&WAS), answers.word(&NOW));
    let (was, now) = (friction(was_word), friction(now_word));
    let share = answers.number(&SHARE) / 100.0;
    let proof = proof_load(r, &bolt.thread, class.proof)?;
    let target = preload_for_share(r, &bolt.thread, class.proof, share)?;
    let found = dimensions(&mut Silent, &bolt.thread)?;
    let given = answers.maybe(&OLD);
    let at_share = tightening_torque(r, &bolt, target, was.thread.likely, was.head.likely)?.total();
    let old = given.unwrap_or(at_share);
    // The force meant is what the old torque gives at the likely friction it was meant for.
    let meant = if given.is_some() { forces(r, &bolt, old, &was)?.likely } else { target };
    let keeps = torques(r, &bolt, meant, &now)?;
    let would = forces(r, &bolt, old, &now)?;
    let of_proof = |force: Force| (force / proof).value * 100.0;
    let scatter = preload_scatter(r, meant, means(answers.word(&MEANS)))?;
    let limit = assembly_preload(r, &bolt.thread, class.yields, now.thread.low)?;
    let mut outcome = Outcome::default()
        .exact("stress area", found.stress_area)
        .exact("proof load", proof)
        .exact("preload meant", meant)
        .says(format!("{} % of the proof load", said(of_proof(meant))))
        .exact(format!("torque for it {}", words(was_word)), old)
        .says(if given.is_some() { "as you gave it" } else { "at the likely friction" })
        .range(format!("torque for the same preload {}", words(now_word)), keeps)
        .says("the low end overloads nothing, the middle is likely right, the high end is for the stickiest thread")
        .range(format!("preload the old torque would give {}", words(now_word)), would)
        .numbers(
            "of the proof load, by the old torque",
            "%",
            Range { low: of_proof(would.low), likely: of_proof(would.likely), high: of_proof(would.high) },
        )
        .says(verdict(would, proof, class, &bolt.thread))
        .range("preload with the scatter of the tightening", scatter)
        .says(if scatter.high <= proof {
            "the most is within the proof load"
        } else {
            "the most is beyond the proof load: a smaller share"
        })
        .exact("most preload while it is twisted", limit)
        .says("90 % of yield with the twist of tightening in it");
    outcome = factors(&bolt, (&was, was_word), (&now, now_word), old, outcome, r)?;
    if let Some(engaged) = answers.maybe(&ENGAGED) {
        let strips = stripping_load(r, &bolt.thread, engaged, answers.quantity(&SHEAR))?;
        let holds =
            if strips > scatter.high { "more than the bolt gets" } else { "less than the bolt may get: engage more, or tighten less" };
        outcome = outcome.exact("load that strips the nut thread", strips).says(holds);
    }
    Ok(cautions(outcome, was_word, now_word).picture(picture(&bolt, (&now, now_word), &was, proof, old, meant)))
}

/// The short form's factors, and the torque by their ratio.
fn factors(
    bolt: &Bolt,
    (was, was_word): (&Friction, &str),
    (now, now_word): (&Friction, &str),
    old: Torque,
    outcome: Outcome,
    r: &mut Notebook,
) -> Result<Outcome, Unanswered> {
    if was.thread != was.head || now.thread != now.head {
        return Ok(outcome);
    }
    let mut k = |mu: Range<f64>| -> Result<Range<f64>, Unanswered> {
        Ok(Range { low: nut_factor(r, bolt, mu.low)?, likely: nut_factor(r, bolt, mu.likely)?, high: nut_factor(r, bolt, mu.high)? })
    };
    let (before, after) = (k(was.thread)?, k(now.thread)?);
    let converted = converted_torque(r, bolt, old, was.thread.likely, now.thread.likely)?;
    Ok(outcome
        .numbers(format!("factor K {}", words(was_word)), "", before)
        .numbers(format!("factor K {}", words(now_word)), "", after)
        .number("force of the old torque, over the one meant", "times", converted.overload))
}

fn means(word: &str) -> Means {
    match word {
        "feel" => Means::Feel,
        "turn-of-nut" => Means::TurnOfNut,
        _ => Means::TorqueWrench,
    }
}

/// What the old torque would do, by its likely and its worst force.
fn verdict(would: Range<Force>, proof: Force, class: Grade, thread: &Thread) -> String {
    let tensile = proof_load(&mut Silent, thread, class.tensile).unwrap_or(proof);
    match () {
        () if would.likely >= tensile => "it would break the bolt",
        () if would.likely > proof => "it would stretch the bolt beyond its proof load for good",
        () if would.high > proof => "it may stretch the bolt beyond its proof load where the friction is least",
        () => "within the proof load even where the friction is least",
    }
    .to_owned()
}

fn cautions(outcome: Outcome, was: &str, now: &str) -> Outcome {
    outcome
        .caution(
            "Wheels, brakes, steering, lifting gear, pressure vessels and engines on the road: the maker's torque and condition, never one worked out.",
            "common-practice",
        )
        .caution("A torque is never corrected by feel: convert it, or ask whoever gave it which friction it was for.", "common-practice")
        .caution_if(
            was == "stainless-dry" || now == "stainless-dry",
            "Dry stainless seizes at any torque: paste, turn slowly, and no more than 65 % of its proof stress.",
            "common-practice",
        )
        .caution_if(
            now == "threadlocker",
            "Whether wet threadlocker lubricates is disputed: tighten at once, and not again once it has cured.",
            "common-practice",
        )
}

/// Preload against torque: the edges of the friction band, and the proof load.
fn picture(bolt: &Bolt, (now, now_word): (&Friction, &str), was: &Friction, proof: Force, old: Torque, meant: Force) -> Picture {
    let kilonewtons = |force: Force| force.base() / 1e3;
    let most = old.base() * 1.6;
    let each = |thread: f64, head: f64| {
        tightening_torque(&mut Silent, bolt, Force::from_base(1.0), thread, head).map_or(1.0, |split| split.total().base())
    };
    let highest = kilonewtons(proof) * 1.6;
    let line = |name: String, thread: f64, head: f64| Line {
        name,
        points: (0..=100).map(|step| most * f64::from(step) / 100.0).map(|torque| (torque, torque / each(thread, head) / 1e3)).collect(),
    };
    let lines = vec![
        Line { name: "proof load".to_owned(), points: vec![(0.0, kilonewtons(proof)), (most, kilonewtons(proof))] },
        line(format!("{}, least friction {}", words(now_word), said(now.thread.low)), now.thread.low, now.head.low),
        line(format!("{}, likely {}", words(now_word), said(now.thread.likely)), now.thread.likely, now.head.likely),
        line(format!("{}, most {}", words(now_word), said(now.thread.high)), now.thread.high, now.head.high),
        line(format!("before, likely {}; the dot is the old torque", said(was.thread.likely)), was.thread.likely, was.head.likely),
    ];
    Picture {
        title: "Preload and torque".to_owned(),
        x: Axis { label: "torque, N·m".to_owned(), low: 0.0, high: most, logarithmic: false },
        y: Axis { label: "preload, kN".to_owned(), low: 0.0, high: highest, logarithmic: false },
        lines,
        bands: Vec::new(),
        marks: vec![Mark { name: String::new(), at: (old.base(), kilonewtons(meant)) }],
    }
}
