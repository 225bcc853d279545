//! Changing over: what is in the box now against what is proposed. May it be topped up, or must it be drained, or flushed too?
//!
//! What decides is what the two hold besides oil: thickener in greases, additives in oils. Where nothing is known of a mixture the
//! sheet says drain.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::grades::grades_between;
use reference::{Compatibility, Fluid, Form, Trait};

use super::common::{fluid, said};
use super::{Asked, Outcome, Unanswered};

const OLD: Given<Vec<String>> = Given::fluids("old", "what is in it now, by key, such as hydraulic-68");
const NEW: Given<Vec<String>> = Given::fluids("new", "what you would put in, by key, such as circulating-68");
const TOUCHES: Given<Vec<String>> =
    Given::materials("touches", "mild-steel, bronze, nbr", "common-practice", "what the lubricant touches there");
const SHARE: Given<f64> = Given::number("left", "5", "common-practice", "share of the old oil that a drain leaves behind, %");

pub(super) static KIND: Kind = Kind {
    name: "switch",
    about: "whether one oil or grease may follow another: top up, drain, or flush",
    fields: &[OLD.field(), NEW.field(), TOUCHES.field(), SHARE.field()],
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
    let left = asked.answers.number(&SHARE);
    if !(0.0..=100.0).contains(&left) {
        return Err(Unanswered::Contradiction(format!("`left` is {}: it is a share, 0 to 100", said(left))));
    }
    let mut reasons = Vec::new();
    against_place(asked, new, &mut reasons);
    match (old.form, new.form) {
        (Form::Grease, Form::Grease) => greases(asked, old, new, &mut reasons),
        (Form::Oil, Form::Oil) => oils(old, new, &mut reasons),
        _ => reasons.push(Reason {
            step: Step::Flush,
            why: "oil and grease do not take each other's place by themselves: check that the seals, the feed and the clearance are made for the other, and clean all of it out"
                .to_owned(),
            source: "common-practice",
        }),
    }
    let step = reasons.iter().map(|reason| reason.step).max().unwrap_or(Step::TopUp);
    let why = |wanted: Step| {
        let said: Vec<&str> = reasons.iter().filter(|reason| reason.step == wanted).map(|reason| reason.why.as_str()).collect();
        said.join("; ")
    };
    let outcome = ways(step, &why, old.form == Form::Grease);
    let outcome = reasons.iter().filter(|reason| reason.step < step).fold(outcome, |outcome, reason| {
        let mut letters = reason.why.chars();
        let sentence: String = letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default();
        outcome.caution(format!("{sentence}."), reason.source)
    });
    Ok(outcome
        .caution_if(
            step == Step::Drain || step == Step::Flush,
            "Run it and drain while warm, with the machine locked off; old oil is waste for the collection point, not for the drain.",
            "common-practice",
        )
        .caution_if(step == Step::Flush && old.form == Form::Oil && left > 0.0, flush_words(left), "common-practice")
        .caution("The maker of your machine comes first, and the data sheets of both.", "common-practice"))
}

/// How often to fill and drain until the old is as good as gone.
fn flush_words(left: f64) -> String {
    format!(
        "If about {} % stays behind at each drain, one filling of the new oil run for half an hour and drained again leaves next to none of the old.",
        said(left)
    )
}

fn ways(step: Step, why: &impl Fn(Step) -> String, grease: bool) -> Outcome {
    let (purge, pump) = if grease {
        ("take apart and wash out", "pump in the new until it comes out clean")
    } else {
        ("drain, flush and fill", "drain and fill")
    };
    let top = if grease { "grease on top of the old" } else { "top up" };
    let worse = |own: Step| match step {
        Step::Never => "the new one does not belong there at all".to_owned(),
        _ if own < step => why(step),
        _ => String::new(),
    };
    let or = |own: Step, plain: &str| {
        if step == own { Some(why(own)).filter(|said| !said.is_empty()).unwrap_or_else(|| plain.to_owned()) } else { plain.to_owned() }
    };
    let mut outcome = Outcome::default();
    let rows = [
        (Step::TopUp, top, "nothing in them is known to quarrel"),
        (Step::Drain, pump, "not needed, and never wrong"),
        (Step::Flush, purge, "more than is needed"),
    ];
    for (own, name, plain) in rows {
        let fits = own >= step;
        outcome = outcome.way(name, fits, if fits { or(own, plain) } else { worse(own) });
    }
    if step == Step::Never {
        outcome = outcome.way("putting it in at all", false, why(Step::Never));
    }
    outcome
}

/// Whether the new one may stand there at all.
fn against_place(asked: &Asked<'_>, new: &Fluid, reasons: &mut Vec<Reason>) {
    if let Some(barred) = &new.barred {
        reasons.push(Reason { step: Step::Never, why: barred.why.trim_end_matches('.').to_owned(), source: "common-practice" });
    }
    for material in asked.answers.words(&TOUCHES) {
        let hits = |list: &[String]| list.iter().any(|name| asked.reference.is_a(material, name));
        let name = asked.reference.material(material).map_or(material.as_str(), |known| known.name.as_str());
        if hits(&new.chemistry.attacks) {
            reasons.push(Reason { step: Step::Never, why: format!("{} attacks {name}", new.name), source: "common-practice" });
        } else if asked.reference.is_a(material, "copper-alloys")
            && [Trait::ActiveSulphur, Trait::HypoidEp].iter().any(|bad| new.traits.contains(bad))
        {
            reasons.push(Reason { step: Step::Never, why: format!("{} eats {name}", new.name), source: "astm-d130" });
        } else if hits(&new.chemistry.care) {
            reasons.push(Reason {
                step: Step::TopUp,
                why: format!("mind {name}: {} may harm it in time", new.name),
                source: "common-practice",
            });
        }
    }
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
