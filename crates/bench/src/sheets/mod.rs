//! The sheets: one file each, one line here.

mod acids;
mod air;
mod bath;
mod bearing;
mod blend;
mod bond;
mod bushing;
mod coating;
mod common;
mod contents;
mod coolant;
mod coverage;
mod cut;
mod cylinder;
mod dilute;
mod fit;
mod flammability;
mod gear;
mod grades;
mod grease;
mod label;
mod locking;
mod mark;
mod mist;
mod neutralise;
mod pickle;
mod ppm;
mod press;
mod quench;
mod rescue;
mod seal;
mod shape;
mod slideway;
mod solid;
mod sweating;
mod switch;
mod taper;
mod together;
mod torque;
mod viscosity;

use fields::{Answers, Kind};
use formulas::{FormulaError, Notebook};
use reference::Reference;
use units::{Dimension, Length, Quantity, Range, System};

use crate::page::{ChoiceRow, FactRow, Page};
use crate::picture::Picture;
use crate::picture_fit::Zones;
use crate::read::Reply;

/// One calculation.
pub struct Sheet {
    /// Its name and what it asks.
    pub kind: &'static Kind,
    work: fn(&Asked<'_>, &mut Notebook) -> Result<Outcome, Unanswered>,
}

macro_rules! sheets {
    ($($module:ident),* $(,)?) => {
        const ALL: &[Sheet] = &[$(Sheet { kind: &$module::KIND, work: $module::work }),*];
    };
}

sheets! {
    viscosity,
    blend,
    grades,
    bearing,
    bushing,
    gear,
    slideway,
    grease,
    cylinder,
    coolant,
    cut,
    switch,
    fit,
    rescue,
    bond,
    torque,
    locking,
    seal,
    taper,
    mark,
    sweating,
    air,
    flammability,
    label,
    together,
    mist,
    ppm,
    coating,
    coverage,
    bath,
    quench,
    pickle,
    neutralise,
    dilute,
}

/// All sheets.
#[must_use]
pub fn sheets() -> &'static [Sheet] {
    ALL
}

/// The sheet of that name.
#[must_use]
pub fn sheet(name: &str) -> Option<&'static Sheet> {
    ALL.iter().find(|sheet| sheet.kind.name == name)
}

/// What a sheet was asked, and the data it may look things up in.
pub struct Asked<'a> {
    /// The answers to its fields.
    pub answers: &'a Answers,
    /// The data.
    pub reference: &'a Reference,
}

/// Why a sheet has no answer.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Unanswered {
    /// A formula refuses the values.
    #[error("{0}")]
    Formula(#[from] FormulaError),
    /// The values contradict each other, or something is missing that one of several fields could give.
    #[error("{0}")]
    Contradiction(String),
}

/// What a sheet found, before it is put into words.
#[derive(Default)]
pub struct Outcome {
    pub(crate) answers: Vec<Found>,
    pub(crate) facts: Vec<FactRow>,
    pub(crate) choices: Vec<ChoiceRow>,
    pub(crate) cautions: Vec<(String, &'static str)>,
    pub(crate) picture: Option<Picture>,
    pub(crate) zones: Option<Zones>,
    pub(crate) drawn: Option<String>,
}

/// One number found, with its range.
pub(crate) struct Found {
    pub name: String,
    pub value: Range<f64>,
    pub measure: Measure,
    /// What it means, said after the number.
    pub says: String,
}

/// What a number counts.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Measure {
    /// A quantity, in coherent SI units.
    Quantity(Dimension),
    /// A number in this unit, for what has no kind of its own; empty for a bare number.
    Plain(&'static str),
    /// A diameter in metres, shown to the micrometre.
    Size,
}

impl Outcome {
    /// A quantity that is known well.
    pub fn exact<Q: Quantity>(self, name: impl Into<String>, value: Q) -> Self {
        self.range(name, Range { low: value, likely: value, high: value })
    }

    /// A quantity with its range.
    pub fn range<Q: Quantity>(mut self, name: impl Into<String>, value: Range<Q>) -> Self {
        let value = Range { low: value.low.base(), likely: value.likely.base(), high: value.high.base() };
        self.answers.push(Found { name: name.into(), value, measure: Measure::Quantity(Q::DIMENSION), says: String::new() });
        self
    }

    /// A number in a unit that no kind of quantity has; an empty unit for a bare number.
    pub fn number(self, name: impl Into<String>, unit: &'static str, value: f64) -> Self {
        self.numbers(name, unit, Range::exact(value))
    }

    /// The same with its range.
    pub fn numbers(mut self, name: impl Into<String>, unit: &'static str, value: Range<f64>) -> Self {
        self.answers.push(Found { name: name.into(), value, measure: Measure::Plain(unit), says: String::new() });
        self
    }

    /// A diameter that is shown to the micrometre, with its range.
    pub fn size(mut self, name: impl Into<String>, value: Range<Length>) -> Self {
        let value = Range { low: value.low.base(), likely: value.likely.base(), high: value.high.base() };
        self.answers.push(Found { name: name.into(), value, measure: Measure::Size, says: String::new() });
        self
    }

    /// What the last number means.
    pub fn says(mut self, what: impl Into<String>) -> Self {
        if let Some(last) = self.answers.last_mut() {
            last.says = what.into();
        }
        self
    }

    /// Something found that is no number.
    pub fn fact(mut self, name: impl Into<String>, text: impl Into<String>) -> Self {
        self.facts.push(FactRow { name: name.into(), text: text.into() });
        self
    }

    /// A picture drawn elsewhere, as SVG.
    pub fn drawn(mut self, svg: String) -> Self {
        self.drawn = Some(svg);
        self
    }

    /// Ways, the best first.
    pub fn choices(mut self, choices: impl IntoIterator<Item = ChoiceRow>) -> Self {
        self.choices.extend(choices);
        self
    }

    /// A way that is no fluid, such as mixing two.
    pub fn way(self, name: impl Into<String>, fits: bool, why: impl Into<String>) -> Self {
        self.choices([ChoiceRow { key: String::new(), name: name.into(), fits, why: why.into() }])
    }

    /// Something to mind where it holds.
    pub fn caution_if(self, holds: bool, text: impl Into<String>, source: &'static str) -> Self {
        if holds { self.caution(text, source) } else { self }
    }

    /// Something to mind, with the key of its source.
    pub fn caution(mut self, text: impl Into<String>, source: &'static str) -> Self {
        self.cautions.push((text.into(), source));
        self
    }

    /// A picture.
    pub fn picture(mut self, picture: Picture) -> Self {
        self.picture = Some(picture);
        self
    }

    /// The picture of a fit.
    pub fn zones(mut self, zones: Zones) -> Self {
        self.zones = Some(zones);
        self
    }
}

impl Sheet {
    /// Works the sheet out.
    ///
    /// # Errors
    /// [`Unanswered`].
    pub fn work(&self, reply: &Reply, reference: &Reference, units: System) -> Result<Page, Unanswered> {
        let mut notebook = Notebook::default();
        let outcome = (self.work)(&Asked { answers: &reply.answers, reference }, &mut notebook)?;
        Ok(Page::new(self.kind, reply, &notebook, outcome, units))
    }
}
