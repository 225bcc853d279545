//! What to write on a bottle: the label of a product, a mixture or a dilution by the UN GHS.

use fields::{Given, Kind};
use formulas::Notebook;
use handling::label::{Label, Mixture, Part, SMALLEST_MM, draw, of_dilution, of_fluid, of_mixture};
use units::{Length, Quantity, Range, Ratio};

use super::contents::{CONTENTS, FLUID, contents};
use super::{Asked, Outcome, Unanswered};

const DILUTED: Given<Option<Ratio>> = Given::maybe("diluted", "share of it left after thinning with water, by mass, such as `10 %`");
const PH: Given<Option<f64>> = Given::maybe_number("ph", "pH, if it was measured");
const WIDTH: Given<Length> = Given::quantity("width", "74 mm", "clp-annex-vi", "width of the label");
const HEIGHT: Given<Length> = Given::quantity("height", "52 mm", "clp-annex-vi", "height of the label; it grows where the text needs it");

pub(super) static KIND: Kind = Kind {
    name: "label",
    about: "what to write on a bottle: signal word, pictograms and statements of a product, a mixture or a dilution",
    fields: &[FLUID.field(), CONTENTS.field(), DILUTED.field(), PH.field(), WIDTH.field(), HEIGHT.field()],
};

pub(super) fn work<'a>(asked: &Asked<'a>, _r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let of = contents(asked)?;
    let ph = answers.maybe_number(&PH);
    if ph.is_some_and(|ph| ph > 14.0) {
        return Err(Unanswered::Contradiction("`ph` lies between 0 and 14".to_owned()));
    }
    let diluted: Option<Ratio> = answers.maybe(&DILUTED);
    if diluted.is_some_and(|share| share.base() <= 0.0) {
        return Err(Unanswered::Contradiction("`diluted` is the share that is left: more than nothing".to_owned()));
    }
    let label = match (of.fluid, diluted, ph) {
        (Some(fluid), None, None) => of_fluid(fluid, asked.reference),
        (Some(fluid), Some(share), ph) => of_dilution(fluid, share.base(), ph, asked.reference),
        (fluid, diluted, ph) => {
            let mixture = match fluid {
                Some(fluid) => Mixture::of_fluid(fluid, asked.reference),
                None => {
                    let part =
                        |(substance, _, share): &(&'a reference::Substance, f64, f64)| Part { substance, share: Range::exact(*share) };
                    Mixture::new(of.parts.iter().map(part).collect())
                }
            };
            let (mixture, name) = match diluted {
                Some(share) => {
                    (mixture.diluted(share.base()), format!("{}, {} in water", of.name, units::show(share, units::System::Metric)))
                }
                None => (mixture, of.name.clone()),
            };
            of_mixture(&name, &Mixture { ph: ph.or(mixture.ph), ..mixture }, asked.reference)
        }
    };
    let millimetres = |given: &Given<Length>| answers.quantity(given).base() * 1e3;
    let (width, height) = (millimetres(&WIDTH), millimetres(&HEIGHT));
    if width > 500.0 || height > 500.0 {
        return Err(Unanswered::Contradiction("a label is at most 500 mm wide and high".to_owned()));
    }
    let drawn = draw(&label, width.max(SMALLEST_MM.0), height.max(SMALLEST_MM.1));
    Ok(told(&label).drawn(drawn))
}

fn told(label: &Label) -> Outcome {
    let mut outcome = Outcome::default().fact("label of", label.product.clone());
    let signal = label.signal.map_or("none", |signal| signal.word());
    outcome = outcome.fact("signal word", signal);
    let pictograms: Vec<&str> = label.pictograms.iter().map(|pictogram| pictogram.name()).collect();
    outcome = outcome.fact("pictograms", if pictograms.is_empty() { "none".to_owned() } else { pictograms.join(", ") });
    for line in label.hazards.iter().chain(&label.precautions) {
        outcome = outcome.fact(line.code.clone(), line.text.clone());
    }
    for content in &label.contents {
        let share = if (content.low_percent - content.high_percent).abs() < 1e-9 {
            format!("{} %", units::show_number(content.high_percent, units::Digits::Significant(3)))
        } else {
            format!(
                "{} to {} %",
                units::show_number(content.low_percent, units::Digits::Significant(3)),
                units::show_number(content.high_percent, units::Digits::Significant(3))
            )
        };
        outcome = outcome.fact(format!("contains {}", content.name), share);
    }
    for never in &label.never_with {
        outcome = outcome.fact(format!("never with {}", never.what), never.why.clone());
    }
    outcome = outcome.fact("first aid", label.first_aid.clone());
    for note in &label.notes {
        outcome = outcome.fact("mind", note.clone());
    }
    for (class, why) in reasons(label) {
        outcome = outcome.fact(class, why);
    }
    outcome
        .caution("Write the day it was filled, the day it is to be gone, and the number of your poison centre on it.", "un-ghs")
        .caution("Never a drink or food bottle; a cap a child cannot open. The maker's label and data sheet come first.", "common-practice")
}

/// Each class with what decided it, once, however many rules say so alike.
fn reasons(label: &Label) -> Vec<(String, String)> {
    let mut reasons: Vec<(String, String)> = Vec::new();
    for finding in &label.findings {
        let number = |value: f64| units::show_number(value, units::Digits::Significant(3));
        let decided = finding.decided.as_ref().map_or_else(String::new, |decided| {
            let unit = if decided.unit.is_empty() { String::new() } else { format!(" {}", decided.unit) };
            format!(": {}{unit}, the cut-off is {}", number(decided.value), number(decided.cut_off))
        });
        let reason = (format!("because {}", finding.class), format!("{}{decided}", finding.what.trim_end_matches(':')));
        if !reasons.contains(&reason) {
            reasons.push(reason);
        }
    }
    reasons
}
