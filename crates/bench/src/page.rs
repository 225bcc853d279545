//! A worked page as plain data: the JSON of `bench --json`, and what a page is drawn from.

use fields::{Answer, Asks, Kind, Origin};
use formulas::{Caution, Notebook};
use schemars::JsonSchema;
use serde::Serialize;
use units::{Dimension, Length, Quantity, Range, System, show_base};

use crate::picture::{Picture, PictureError};
use crate::picture_fit::Zones;
use crate::read::Reply;
use crate::sheets::{Found, Measure, Outcome};

/// One worked page.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Page {
    /// The sheet's name.
    pub sheet: String,
    /// What was given or supposed.
    pub inputs: Vec<InputRow>,
    /// Every step of the working.
    pub steps: Vec<StepRow>,
    /// What was found.
    pub answers: Vec<AnswerRow>,
    /// What was found that is no number.
    pub facts: Vec<FactRow>,
    /// The ways there are, the best first.
    pub choices: Vec<ChoiceRow>,
    /// What to mind.
    pub cautions: Vec<CautionRow>,
    /// Where one would rather look.
    #[serde(skip)]
    pub picture: Option<Picture>,
    /// The picture of a fit.
    #[serde(skip)]
    pub zones: Option<Zones>,
    /// A picture drawn elsewhere, as SVG.
    #[serde(skip)]
    pub drawn: Option<String>,
}

/// One input.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct InputRow {
    /// The option's name.
    pub symbol: String,
    /// What it is.
    pub label: String,
    /// The value as it would be written, without its unit where it has one.
    pub value: String,
    /// The unit.
    pub unit: String,
    /// Whether it was supposed.
    pub supposed: bool,
}

/// One step.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct StepRow {
    /// What the step finds.
    pub symbol: String,
    /// The same as MathML.
    pub symbol_mathml: String,
    /// How; for a value found by trying, the equation it makes true.
    pub formula: String,
    /// Whether it was found by trying.
    pub solved: bool,
    /// The same with the numbers put in.
    pub filled: String,
    /// The formula as MathML.
    pub mathml: String,
    /// The value found.
    pub value: f64,
    /// Its unit.
    pub unit: String,
    /// Bibliography key.
    pub source: String,
}

/// One answer with its range.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct AnswerRow {
    /// What it is.
    pub name: String,
    /// The low end.
    pub low: f64,
    /// The likely value.
    pub likely: f64,
    /// The high end.
    pub high: f64,
    /// The unit of the three.
    pub unit: String,
    /// The answer as one says it.
    pub words: String,
}

/// Something found that is no number.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct FactRow {
    /// What it is.
    pub name: String,
    /// What was found.
    pub text: String,
}

/// One way out of several.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct ChoiceRow {
    /// The fluid's key, by which commands and shop files know it; empty for a way that is no fluid.
    pub key: String,
    /// What it is.
    pub name: String,
    /// Whether it serves.
    pub fits: bool,
    /// Why, or why not.
    pub why: String,
}

/// Something to mind.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct CautionRow {
    /// What to mind.
    pub text: String,
    /// Bibliography key.
    pub source: String,
}

impl Page {
    /// Draws the picture, whichever there is.
    ///
    /// # Errors
    /// [`PictureError`] when it cannot be drawn.
    pub fn svg(&self) -> Option<Result<String, PictureError>> {
        let plotted = self.picture.as_ref().map(Picture::svg).or_else(|| self.zones.as_ref().map(Zones::svg));
        plotted.or_else(|| self.drawn.clone().map(Ok))
    }

    pub(crate) fn new(kind: &Kind, reply: &Reply, notebook: &Notebook, outcome: Outcome, units: System) -> Self {
        let mut said: Vec<CautionRow> =
            outcome.cautions.into_iter().map(|(text, source)| CautionRow { text, source: source.to_owned() }).collect();
        said.extend(of_formulas(notebook).map(|text| CautionRow { text, source: "common-practice".to_owned() }));
        Self {
            sheet: kind.name.to_owned(),
            inputs: inputs(kind, reply, units),
            steps: steps(notebook),
            answers: outcome.answers.into_iter().map(|found| answer(found, units)).collect(),
            facts: outcome.facts,
            choices: outcome.choices,
            cautions: said,
            picture: outcome.picture,
            zones: outcome.zones,
            drawn: outcome.drawn,
        }
    }
}

/// What the formulas caution of. That a value lies outside what is known is said once, however many oils share it.
fn of_formulas(notebook: &Notebook) -> impl Iterator<Item = String> {
    let mut outside: Vec<&str> = Vec::new();
    let once = move |caution: &&Caution| match caution {
        Caution::Extrapolated { what, .. } => {
            let first = !outside.contains(what);
            outside.push(what);
            first
        }
        _ => true,
    };
    notebook.cautions().filter(once).map(|caution| {
        let text = caution.to_string();
        let mut letters = text.chars();
        letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
    })
}

fn inputs(kind: &Kind, reply: &Reply, units: System) -> Vec<InputRow> {
    let row = |field: &fields::Field| {
        let (_, answer, origin) = reply.answers.iter().find(|(name, _, _)| *name == field.name)?;
        let supposed = matches!(origin, Origin::Supposed(_));
        let (value, unit) = match (answer, field.asks) {
            (Answer::Quantity(_), Asks::Quantity(_)) if supposed => split(&field.supposed(units)),
            (Answer::Quantity(base), Asks::Quantity(dimension)) => split(&as_given(dimension, *base, units)),
            (Answer::Quantity(number) | Answer::Number(number), _) => (number.to_string(), String::new()),
            (Answer::Flag(flag), _) => (if *flag { "yes" } else { "no" }.to_owned(), String::new()),
            (Answer::Words(words), Asks::File) => {
                (words.iter().map(|text| text.lines().count()).sum::<usize>().to_string(), "lines".to_owned())
            }
            (Answer::Words(words), _) => (words.join(", "), String::new()),
        };
        Some(InputRow { symbol: field.name.to_owned(), label: field.about.to_owned(), value, unit, supposed })
    };
    kind.fields.iter().filter_map(row).collect()
}

/// A quantity as it was given. A size keeps every digit, because by the last of them parts press or slip.
fn as_given(dimension: Dimension, base: f64, units: System) -> String {
    match (dimension, units) {
        (Dimension::Length, System::Metric) => units::show_exact(Length::from_base(base)),
        _ => show_base(dimension, base, units),
    }
}

/// A size to the micrometre, or the tenth of a thousandth of an inch.
fn size(base: f64, units: System) -> String {
    let metric = format!("{:.3} mm", base * 1e3);
    let inch = format!("{:.5} in", base / 0.0254);
    match units {
        System::Metric => metric,
        System::Inch => inch,
        System::Both => format!("{metric} ({inch})"),
    }
}

/// A quantity as people write it, parted into number and unit.
fn split(text: &str) -> (String, String) {
    text.split_once(' ').map_or_else(|| (text.to_owned(), String::new()), |(value, unit)| (value.to_owned(), unit.to_owned()))
}

fn steps(notebook: &Notebook) -> Vec<StepRow> {
    let row = |step: &formulas::working::Step| StepRow {
        symbol: step.symbol.text.to_owned(),
        symbol_mathml: step.symbol.mathml.to_owned(),
        formula: step.text.to_owned(),
        solved: step.residual.is_some(),
        filled: step.filled.clone(),
        mathml: if step.residual.is_some() {
            format!("<mtext>what makes true&#xa0;</mtext>{}", step.mathml)
        } else {
            step.mathml.to_owned()
        },
        value: step.value,
        unit: step.unit.to_owned(),
        source: step.source.0.to_owned(),
    };
    // A formula worked twice with the same numbers is shown once.
    let mut shown: Vec<&formulas::working::Step> = Vec::new();
    for step in notebook.steps() {
        if !shown.contains(&step) {
            shown.push(step);
        }
    }
    shown.into_iter().map(row).collect()
}

/// An answer in the unit that suits its likely value.
fn answer(found: Found, units: System) -> AnswerRow {
    let Found { name, value: Range { low, likely, high }, measure, says } = found;
    // JSON has one unit for the three: the metric one that suits the likely value.
    let unit = match measure {
        Measure::Plain(unit) => unit.to_owned(),
        Measure::Quantity(dimension) => split(&show_base(dimension, likely, System::Metric)).1,
        Measure::Size => "mm".to_owned(),
    };
    let in_unit = |value: f64| match measure {
        Measure::Plain(_) => value,
        Measure::Size => value * 1e3,
        Measure::Quantity(dimension) => units::value_in(dimension, value, &unit).unwrap_or(value),
    };
    let said = |value: f64| match measure {
        Measure::Plain(unit) => format!("{} {unit}", number(value)).trim_end().to_owned(),
        Measure::Quantity(dimension) => show_base(dimension, value, units),
        Measure::Size => size(value, units),
    };
    let mut words = if low == high { said(likely) } else { format!("{} ({})", said(likely), span(&said(low), &said(high))) };
    if !says.is_empty() {
        words = format!("{words}; {says}");
    }
    AnswerRow { name, low: in_unit(low), likely: in_unit(likely), high: in_unit(high), unit, words }
}

/// "80 to 450 mm²/s": the unit once where both have the same.
fn span(low: &str, high: &str) -> String {
    match (low.split_once(' '), high.split_once(' ')) {
        (Some((number, one)), Some((_, other))) if one == other => format!("{number} to {high}"),
        _ => format!("{low} to {high}"),
    }
}

fn number(value: f64) -> String {
    units::show_number(value, units::Digits::Significant(3))
}
