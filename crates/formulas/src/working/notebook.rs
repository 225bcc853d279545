//! The recorder that keeps the working, and shows it as lines of text or MathML.

use super::{Caution, Given, Recorder, Step};

/// One entry of a notebook, in the order it was made.
#[derive(Debug, Clone, PartialEq)]
pub enum Entry {
    /// A given value.
    Given(Given),
    /// A step.
    Step(Step),
    /// A caution.
    Caution(Caution),
}

/// The recorder that keeps every entry.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Notebook {
    entries: Vec<Entry>,
}

impl Recorder for Notebook {
    const KEEPS: bool = true;

    fn given(&mut self, given: Given) {
        self.entries.push(Entry::Given(given));
    }

    fn step(&mut self, step: Step) {
        self.entries.push(Entry::Step(step));
    }

    fn caution(&mut self, caution: Caution) {
        // A formula may be worked several times for one answer; saying a thing once is enough.
        let entry = Entry::Caution(caution);
        if !self.entries.contains(&entry) {
            self.entries.push(entry);
        }
    }

    fn kept(&self) -> usize {
        self.entries.len()
    }
}

impl Notebook {
    /// A stretch of the working, between two counts of [`Recorder::kept`].
    #[must_use]
    pub fn between(&self, stretch: std::ops::Range<usize>) -> Self {
        Self { entries: self.entries.get(stretch).unwrap_or_default().to_vec() }
    }

    /// An empty notebook.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// All entries, in the order they were made.
    #[must_use]
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The given values.
    pub fn given_values(&self) -> impl Iterator<Item = &Given> {
        self.entries.iter().filter_map(|entry| if let Entry::Given(given) = entry { Some(given) } else { None })
    }

    /// The steps.
    pub fn steps(&self) -> impl Iterator<Item = &Step> {
        self.entries.iter().filter_map(|entry| if let Entry::Step(step) = entry { Some(step) } else { None })
    }

    /// The cautions.
    pub fn cautions(&self) -> impl Iterator<Item = &Caution> {
        self.entries.iter().filter_map(|entry| if let Entry::Caution(caution) = entry { Some(caution) } else { None })
    }

    /// The working as lines of plain text.
    #[must_use]
    pub fn lines(&self) -> Vec<String> {
        self.entries.iter().map(Entry::line).collect()
    }
}

impl Entry {
    /// The entry as one line of plain text.
    #[must_use]
    pub fn line(&self) -> String {
        match self {
            Self::Given(given) => {
                format!("{} = {}  ({})", given.symbol.text, with_unit(given.value, given.unit), given.words)
            }
            Self::Step(step) => step.line(),
            Self::Caution(caution) => format!("! {caution}"),
        }
    }
}

impl Given {
    /// The value as a whole `math` element.
    #[must_use]
    pub fn math(&self) -> String {
        format!("<math><mrow>{}<mo>=</mo>{}</mrow></math>", self.symbol.mathml, value_mathml(self.value, self.unit))
    }
}

impl Step {
    /// `ν = x − 0.7 = 68.0 mm²/s  [astm-d341]`
    #[must_use]
    pub fn line(&self) -> String {
        let value = with_unit(self.value, self.unit);
        match self.residual {
            Some(residual) => {
                let residual = number(residual, 2);
                format!("{} = {value} solves {} (residual {residual})  [{}]", self.symbol.text, self.text, self.source)
            }
            None => format!("{} = {} = {value}  [{}]", self.symbol.text, self.text, self.source),
        }
    }

    /// The line with the numbers put in.
    #[must_use]
    pub fn filled_line(&self) -> String {
        format!("{} = {} = {}", self.symbol.text, self.filled, with_unit(self.value, self.unit))
    }

    /// The step as a whole `math` element: symbol, expression, value and unit.
    #[must_use]
    pub fn math(&self) -> String {
        let (symbol, value) = (self.symbol.mathml, value_mathml(self.value, self.unit));
        let inside = if self.residual.is_some() {
            format!("{symbol}<mo>=</mo>{value}<mspace width=\"1em\"/><mtext>solves</mtext><mspace width=\"1em\"/>{}", self.mathml)
        } else {
            format!("{symbol}<mo>=</mo>{}<mo>=</mo>{value}", self.mathml)
        };
        format!("<math display=\"block\"><mrow>{inside}</mrow></math>")
    }
}

fn tidy(unit: &str) -> String {
    unit.replace(" · ", "·")
}

fn with_unit(value: f64, unit: &str) -> String {
    // A bare number is mostly an intermediate value, on which the next step hangs; it keeps more of its digits.
    if unit.is_empty() { trimmed(value) } else { format!("{} {}", number(value, 3), tidy(unit)) }
}

fn value_mathml(value: f64, unit: &str) -> String {
    let text = if unit.is_empty() { trimmed(value) } else { number(value, 3) };
    let mut mathml = match text.split_once("×10") {
        Some((mantissa, power)) => {
            let power: String = power.chars().map(lowered).collect();
            format!("<mrow><mn>{mantissa}</mn><mo>×</mo><msup><mn>10</mn><mn>{power}</mn></msup></mrow>")
        }
        None => format!("<mn>{text}</mn>"),
    };
    if !unit.is_empty() {
        mathml.push_str(&format!("<mspace width=\"0.2em\"/><mtext>{}</mtext>", tidy(unit).replace('&', "&amp;").replace('<', "&lt;")));
    }
    mathml
}

const RAISED: [(char, char); 11] =
    [('⁰', '0'), ('¹', '1'), ('²', '2'), ('³', '3'), ('⁴', '4'), ('⁵', '5'), ('⁶', '6'), ('⁷', '7'), ('⁸', '8'), ('⁹', '9'), ('⁻', '−')];

fn lowered(c: char) -> char {
    RAISED.iter().find(|(raised, _)| *raised == c).map_or(c, |(_, plain)| *plain)
}

fn raised(c: char) -> char {
    let c = if c == '-' { '−' } else { c };
    RAISED.iter().find(|(_, plain)| *plain == c).map_or(c, |(raised, _)| *raised)
}

/// A number to five significant digits, without the zeros a constant would end in: `0.5`, `9.0732`, `3×10⁻⁹`.
#[must_use]
pub fn trimmed(value: f64) -> String {
    let text = number(value, 5);
    let (mantissa, power) = text.split_once('×').map_or((text.as_str(), None), |(mantissa, power)| (mantissa, Some(power)));
    let mantissa = if mantissa.contains('.') { mantissa.trim_end_matches('0').trim_end_matches('.') } else { mantissa };
    power.map_or_else(|| mantissa.to_owned(), |power| format!("{mantissa}×{power}"))
}

/// A number to so many significant digits, never rounding away a whole one: `313`, `68.0`, `0.0500`, `1.20×10⁻⁶`.
#[must_use]
pub fn number(value: f64, digits: usize) -> String {
    if !value.is_finite() {
        return format!("{value}");
    }
    let digits = digits.max(1);
    let scientific = format!("{value:.*e}", digits - 1);
    let (mantissa, exponent) = scientific.split_once('e').unwrap_or((&scientific, "0"));
    let power: i32 = exponent.parse().unwrap_or(0);
    let text = if value == 0.0 {
        "0".to_owned()
    } else if (-4..9).contains(&power) {
        let places = (i32::try_from(digits).unwrap_or(3) - 1 - power).max(0);
        format!("{value:.*}", usize::try_from(places).unwrap_or(0))
    } else {
        format!("{mantissa}×10{}", exponent.chars().map(raised).collect::<String>())
    };
    text.replace('-', "−")
}
