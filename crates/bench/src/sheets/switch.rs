//! Changing over: what is in the box now against what is proposed. May it be topped up, or must it be drained, or flushed too?
//!
//! What decides is what the two hold besides oil: thickener in greases, additives in oils. Where nothing is known of a mixture the
//! sheet says drain.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::grades::grades_between;
use reference::{Compatibility, Fluid, Form, Trait};

use super::common::fluid;
use super::{Asked, Outcome, Unanswered};

const OLD: Given<Vec<String>> = Given::fluids("old", "what is in it now, by key, such as hydraulic-68");
const NEW: Given<Vec<String>> = Given::fluids("new", "what you would put in, by key, such as circulating-68");
const TOUCHES: Given<Vec<String>> =
    Given::materials("touches", "mild-steel, bronze, nbr", "common-practice", "what the lubricant touches there");

pub(super) static KIND: Kind = Kind {
    name: "switch",
    about: "whether one oil or grease may follow another: top up, drain, or flush",
    fields: &[OLD.field(), NEW.field(), TOUCHES.field()],
};

/// How far the old must come out, the mildest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Step {
    TopUp,
    Drain,
    Flush,
    Never,
}

/// One thing that speaks for a step.
struct Reason {
    step: Step,
    why: String,
    source: &'static str,
}

pub(super) fn work(asked: &Asked<'_>, _: &mut Notebook) -> Result<Outcome, Unanswered> {
    let missing =
        |word: &str| Unanswered::Contradiction(format!("`{word}` is missing: name a fluid by key; `gallipot list fluids` has them all"));
    let old = fluid(asked, &OLD)?.ok_or_else(|| missing("old"))?;
    let new = fluid(asked, &NEW)?.ok_or_else(|| missing("new"))?;
    for named in [old, new] {
        if !matches!(named.form, Form::Oil | Form::Grease) {
            return Err(Unanswered::Contradiction(format!(
                "{} is no oil or grease that stands in a machine: name one that is",
                named.name
            )));
        }
    }
    let mut reasons = against_place(asked, new);
    if reasons.is_empty() {
        match (old.form, new.form) {
            (Form::Grease, Form::Grease) => greases(asked, old, new, &mut reasons),
            (Form::Oil, Form::Oil) => oils(old, new, &mut reasons),
            _ => reasons.push(Reason {
                step: Step::Flush,
                why: "oil and grease do not take each other's place: seals, feed and clearance are made for one of them".to_owned(),
                source: "common-practice",
            }),
        }
    }
    let step = reasons.iter().map(|reason| reason.step).max().unwrap_or(Step::TopUp);
    let decides = reasons.iter().filter(|reason| reason.step == step).map(|reason| reason.why.as_str()).collect::<Vec<_>>().join("; ");
    let outcome = ways(step, &decides, old.form == Form::Grease && new.form == Form::Grease);
    let outcome = reasons
        .iter()
        .filter(|reason| reason.step < step)
        .fold(outcome, |outcome, reason| outcome.caution(sentence(&reason.why), reason.source));
    let oil = old.form == Form::Oil && new.form == Form::Oil;
    Ok(care(asked, new, outcome)
        .caution_if(
            oil && matches!(step, Step::Drain | Step::Flush),
            "Run it warm, stop and lock off the machine, then drain. Old oil is waste for the collection point.",
            "common-practice",
        )
        .caution_if(
            oil && step == Step::Flush,
            "One filling of the new oil, run for half an hour and drained again, takes out what a drain leaves behind.",
            "common-practice",
        )
        .caution("The maker of your machine comes first, and the data sheets of both.", "common-practice"))
}

fn sentence(clause: &str) -> String {
    let mut letters = clause.chars();
    let sentence: String = letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default();
    format!("{sentence}.")
}

fn ways(step: Step, decides: &str, greases: bool) -> Outcome {
    if step == Step::Never {
        return Outcome::default().way("putting it in at all", false, decides);
    }
    let [top, drain, flush] = if greases {
        ["grease on top of the old", "pump the new in until it comes out clean", "take apart and wash out"]
    } else {
        ["top up", "drain and fill", "drain, flush and fill"]
    };
    let plain = if decides.is_empty() { "nothing in them is known to quarrel" } else { decides };
    let drained = match step {
        Step::TopUp => "not needed, and never wrong",
        Step::Drain => "enough: what little stays behind does no harm",
        Step::Flush | Step::Never => "leaves too much of the old behind",
    };
    let flushed = if step == Step::Flush { "what it takes" } else { "more than is needed" };
    Outcome::default().way(top, step == Step::TopUp, plain).way(drain, step <= Step::Drain, drained).way(
        flush,
        step <= Step::Flush,
        flushed,
    )
}

/// What the new one may harm in time.
fn care(asked: &Asked<'_>, new: &Fluid, outcome: Outcome) -> Outcome {
    let touched = asked.answers.words(&TOUCHES).iter();
    touched.filter(|material| new.chemistry.care.iter().any(|name| asked.reference.is_a(material, name))).fold(
        outcome,
        |outcome, material| {
            let name = asked.reference.material(material).map_or(material.as_str(), |known| known.name.as_str());
            outcome.caution(sentence(&format!("{} may harm {name} in time: look at it now and then", new.name)), "common-practice")
        },
    )
}

/// Why the new one may not stand there at all.
fn against_place(asked: &Asked<'_>, new: &Fluid) -> Vec<Reason> {
    let never = |why: String, source: &'static str| Reason { step: Step::Never, why, source };
    let mut reasons = Vec::new();
    if let Some(barred) = &new.barred {
        reasons.push(never(barred.why.trim_end_matches('.').to_owned(), "common-practice"));
    }
    for material in asked.answers.words(&TOUCHES) {
        let name = asked.reference.material(material).map_or(material.as_str(), |known| known.name.as_str());
        if new.chemistry.attacks.iter().any(|attacked| asked.reference.is_a(material, attacked)) {
            reasons.push(never(format!("{} attacks {name}", new.name), "common-practice"));
        }
    }
    reasons
}

fn greases(asked: &Asked<'_>, old: &Fluid, new: &Fluid, reasons: &mut Vec<Reason>) {
    let (Some(one), Some(other)) = (&old.grease, &new.grease) else { return };
    let name = |key: &str| asked.reference.thickeners.get(key).map_or_else(|| key.to_owned(), |thickener| thickener.name.clone());
    let (had, gets) = (name(&one.thickener), name(&other.thickener));
    let (step, why) = match asked.reference.compatibility(&one.thickener, &other.thickener) {
        Compatibility::Compatible if one.thickener == other.thickener => (Step::TopUp, format!("both are thickened with {had}")),
        Compatibility::Compatible => (Step::TopUp, format!("{had} and {gets} may meet")),
        Compatibility::Borderline => (Step::Drain, format!("{had} and {gets} are in dispute: a mixture may soften and run out")),
        Compatibility::Incompatible => {
            (Step::Flush, format!("{had} and {gets} must not meet: the mixture goes soft or hard, and the bearing runs dry"))
        }
    };
    reasons.push(Reason { step, why, source: "usbr-fist-2-4" });
    if one.consistency != other.consistency {
        reasons.push(Reason {
            step: Step::TopUp,
            why: "they differ in stiffness, and the mixture lies between".to_owned(),
            source: "astm-d217",
        });
    }
}

/// Traits of one oil that a mixture with another spoils or is spoilt by.
const QUARRELS: &[(Trait, Step, &str)] = &[
    (Trait::Detergent, Step::Flush, "detergent brings the old dirt afloat and holds water where nothing filters it out"),
    (Trait::Emulsifier, Step::Flush, "emulsifier takes up water, and the rest of the oil with it"),
    (Trait::Tackifier, Step::Flush, "the tack of slideway oil foams, clogs wicks and makes clutches slip"),
    (Trait::HypoidEp, Step::Flush, "its hypoid additives attack bronze and upset the others"),
    (Trait::ActiveSulphur, Step::Flush, "its active sulphur eats copper alloys"),
    (Trait::Fatty, Step::Drain, "its fat makes another oil emulsify and foam"),
    (Trait::InactiveEp, Step::Drain, "its EP additives and those of the other may undo each other"),
    (Trait::Zinc, Step::Drain, "zinc additives and zinc-free ones may drop out of a mixture"),
    (Trait::PolymerThickened, Step::Drain, "polymer thins under the teeth, and the mixture's thickness is not known"),
    (Trait::Solvent, Step::Drain, "its solvent thins the other"),
    (Trait::WaterMix, Step::Flush, "it is mixed with water"),
    (Trait::Vegetable, Step::Flush, "it gums as it ages"),
];

fn oils(old: &Fluid, new: &Fluid, reasons: &mut Vec<Reason>) {
    for (what, step, why) in QUARRELS {
        let (had, gets) = (old.traits.contains(what), new.traits.contains(what));
        if had != gets {
            let whose = if had { &old.name } else { &new.name };
            reasons.push(Reason { step: *step, why: format!("{whose}: {why}"), source: "common-practice" });
        }
    }
    if reasons.iter().all(|reason| reason.step < Step::Drain) && old.classes.first() != new.classes.first() {
        reasons.push(Reason {
            step: Step::TopUp,
            why: "they are of different classes with like additives: a top-up does no harm, a change is cleaner".to_owned(),
            source: "common-practice",
        });
    }
    if let (Some(one), Some(other)) = (&old.oil, &new.oil) {
        let grades = grades_between(one.viscosity_40, other.viscosity_40);
        if grades != 0 {
            let (count, way) = (grades.unsigned_abs(), if grades > 0 { "thicker" } else { "thinner" });
            let plural = if count == 1 { "grade" } else { "grades" };
            reasons.push(Reason {
                step: if count > 1 { Step::Drain } else { Step::TopUp },
                why: format!("the new oil is {count} {plural} {way}; make sure the place wants that"),
                source: "iso-3448",
            });
        }
    }
}
