//! One label, as much on it as it has room for.
//!
//! What stands on it, in the order in which it gives way, the last first: the name, the pictograms, the signal word and that the data sheet
//! comes first always stand there; then the hazard statements one by one, the code that leads to the pot's page, what it must never meet,
//! the dates, the first aid, what is in it, the precautions one by one, and last the pictograms in the size the rules would rather see.
//! A statement stands there whole or not at all, and the label says where some are missing.

use handling::label::{Label, Line, Pictogram};

use super::code::Code;
use super::flow::Flow;
use super::measure::Face;

/// Sides of a pictogram, mm: the least, and the one asked for where it is possible, on packs up to 3 L. Regulation (EC) No 1272/2008,
/// Annex I, table 1.3 (from memory).
const SIDES: [f64; 2] = [10.0, 16.0];
/// Heights of letters, mm: the largest; the finest for what comes after the dates; the finest at all, which is 5.7 points.
const LARGEST: f64 = 4.0;
const FINE: f64 = 2.3;
const FINEST: f64 = 2.0;
const STEP: f64 = 0.1;
/// The largest beside what is written by hand.
const HAND: f64 = 2.8;

/// What a label is of.
#[derive(Debug)]
pub(super) struct Content {
    /// What is in it, and what its owner calls it.
    pub name: String,
    /// What the rules put on it.
    pub label: Label,
    /// What is written on it, or is to be.
    pub dates: Vec<(&'static str, Option<String>)>,
    /// Leads to the pot's page.
    pub code: Option<Code>,
}

/// How much of it stands there.
#[derive(Debug, Clone, Copy, Default)]
struct Part {
    code: bool,
    hazards: usize,
    never: bool,
    dates: bool,
    aid: bool,
    contents: bool,
    precautions: usize,
    large: bool,
}

impl Content {
    /// Draws it into a box with its upper left corner at the origin: `inset` is kept clear at each side and above and beneath.
    pub(super) fn draw(&self, width: f64, height: f64, inset: (f64, f64)) -> String {
        let fit = |part: Part| self.fit(part, width, height, inset);
        let mut part = Part::default();
        let mut drawn = fit(part);
        for step in self.steps() {
            let mut more = part;
            step(&mut more);
            if let Some(fits) = fit(more) {
                (part, drawn) = (more, Some(fits));
            }
        }
        // A box that the geometry allows has room for what always stands there; the tests hold every fluid against the smallest.
        drawn.unwrap_or_default()
    }

    /// What is tried to be added, the most important first.
    fn steps(&self) -> Vec<fn(&mut Part)> {
        let mut steps: Vec<fn(&mut Part)> = self.label.hazards.iter().map(|_| (|part| part.hazards += 1) as fn(&mut Part)).collect();
        steps.extend([
            (|part| part.code = true) as fn(&mut Part),
            |part| part.never = true,
            |part| part.dates = true,
            |part| part.aid = true,
        ]);
        steps.push(|part| part.contents = true);
        steps.extend(self.label.precautions.iter().map(|_| (|part| part.precautions += 1) as fn(&mut Part)));
        steps.push(|part| part.large = true);
        steps
    }

    /// The label with that much on it, in the largest letters in which it fits; none where it does not fit.
    fn fit(&self, part: Part, width: f64, height: f64, inset: (f64, f64)) -> Option<String> {
        let finest = if part.aid || part.contents || part.precautions > 0 { FINE } else { FINEST };
        let mut letter = LARGEST;
        while letter > finest - STEP / 2.0 {
            let mut flow = Flow::new(inset.0, width - inset.0, inset.1);
            self.lay(part, letter, &mut flow);
            if part.dates {
                let cells: Vec<_> = self.dates.iter().map(|(name, value)| (*name, value.as_deref())).collect();
                flow.cells(&cells, Face { size: letter.min(HAND), bold: false }, height - inset.1);
            }
            if flow.bottom() <= height - inset.1 {
                return Some(flow.into_body());
            }
            letter -= STEP;
        }
        None
    }

    fn lay(&self, part: Part, letter: f64, flow: &mut Flow) {
        let label = &self.label;
        let [plain, bold] = [false, true].map(|bold| Face { size: letter, bold });
        if let Some(code) = self.code.as_ref().filter(|_| part.code) {
            flow.right(code.side(), code.side(), |x, y| code.svg(x, y));
        }
        flow.text(&self.name, Face { size: letter * 1.3, bold: true });
        flow.skip(letter * 0.15);
        // A square on its point is as wide as its diagonal.
        let diagonal = SIDES[usize::from(part.large)] * std::f64::consts::SQRT_2;
        let signs: Vec<_> = label.pictograms.iter().map(|sign| move |x: f64, y: f64| placed(*sign, x, y, diagonal)).collect();
        flow.diamonds(diagonal, &signs);
        let all = part.hazards == label.hazards.len() && part.precautions == label.precautions.len();
        let whole = all && part.never && part.aid && part.contents;
        let sheet = if whole { "The data sheet comes first." } else { "Not all stands here: see the data sheet." };
        match label.signal {
            Some(signal) => flow.headed(signal.word(), Face { size: letter * 1.5, bold: true }, sheet, plain),
            None => flow.text(sheet, plain),
        }
        let (hazards, precautions) = (&label.hazards[..part.hazards], &label.precautions[..part.precautions]);
        flow.text(&sentences(hazards), bold);
        if part.never && !label.never_with.is_empty() {
            let never: Vec<_> = label.never_with.iter().map(|never| never.what.as_str()).collect();
            flow.text(&format!("Never with: {}.", never.join("; ")), bold);
        }
        flow.text(&sentences(precautions), plain);
        if part.aid {
            flow.text(&label.first_aid, plain);
        }
        if part.contents {
            flow.text(&contents(label), plain);
        }
    }
}

/// A pictogram at a place of that width and height.
fn placed(sign: Pictogram, x: f64, y: f64, side: f64) -> String {
    format!("<svg class=\"sign\" x=\"{x:.2}\" y=\"{y:.2}\" width=\"{side:.2}\" height=\"{side:.2}\">{}</svg>", sign.svg())
}

/// The wordings one after another. The codes are for who looks them up; on a bottle they only take room.
fn sentences(lines: &[Line]) -> String {
    lines.iter().map(|line| format!("{}.", line.text.trim_end_matches('.'))).collect::<Vec<_>>().join(" ")
}

fn contents(label: &Label) -> String {
    let percent = |share: f64| units::show_number(share, units::Digits::Significant(2));
    let lines = label.contents.iter().map(|line| {
        let (low, high) = (percent(line.low_percent), percent(line.high_percent));
        // A number and its unit stay on one line.
        if low == high { format!("{} {high}\u{a0}%", line.name) } else { format!("{} {low}–{high}\u{a0}%", line.name) }
    });
    let lines: Vec<_> = lines.collect();
    if lines.is_empty() { String::new() } else { format!("Holds {}.", lines.join(", ")) }
}
