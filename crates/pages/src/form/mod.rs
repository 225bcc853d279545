//! Forms: one control for each thing that can be said, with what was typed and what is wrong with it.

pub(crate) mod section;
pub(crate) mod sheet;

use fields::Asks;
use reference::Reference;

use crate::words::{quoted, sentence};

/// One thing a form asks.
pub(crate) struct Control {
    pub name: String,
    pub label: String,
    /// What kind of answer fits, and what is supposed where there is none.
    pub hint: String,
    /// The ground of what is supposed.
    pub source: String,
    pub required: bool,
    pub wrong: Option<String>,
    pub input: Input,
}

/// How it is answered.
pub(crate) enum Input {
    /// By typing; with a list to choose from where there is one.
    Text { value: String, list: &'static str, numeric: bool },
    /// By a day of the calendar.
    Day(String),
    /// By choosing one word.
    One(Vec<Choice>),
    /// By ticking words.
    Many(Vec<Choice>),
}

impl Control {
    /// Whether there is so much to tick that it is folded away.
    pub(crate) fn is_long(&self) -> bool {
        /// So many ticks still stand on the screen of a phone with what is around them.
        const MANY: usize = 10;
        matches!(&self.input, Input::Many(words) if words.len() > MANY)
    }

    /// What is ticked, as it is shown.
    pub(crate) fn ticked(&self) -> String {
        let Input::Many(words) = &self.input else { return String::new() };
        words.iter().filter(|(_, _, ticked)| *ticked).map(|(_, shown, _)| shown.as_str()).collect::<Vec<_>>().join(", ")
    }
}

/// A word to choose: itself, how it is shown, and whether it is chosen.
pub(crate) type Choice = (String, String, bool);

/// A list to choose from, by its name: each entry's key, and what it is called.
pub(crate) type List<'r> = (&'static str, Vec<(&'r str, &'r str)>);

const FLUIDS: &str = "fluids";
const FLUIDS_AND_CLASSES: &str = "fluids-and-classes";

/// The lists the controls choose from.
pub(crate) fn lists<'r>(controls: &[Control], reference: &'r Reference) -> Vec<List<'r>> {
    let wanted = |name: &str| controls.iter().any(|control| matches!(control.input, Input::Text { list, .. } if list == name));
    [FLUIDS, FLUIDS_AND_CLASSES].into_iter().filter(|name| wanted(name)).map(|name| (name, entries(name, reference))).collect()
}

fn entries<'r>(list: &str, reference: &'r Reference) -> Vec<(&'r str, &'r str)> {
    let fluids = || reference.fluids.values().map(|fluid| (fluid.key.as_str(), fluid.name.as_str()));
    match list {
        FLUIDS => fluids().collect(),
        FLUIDS_AND_CLASSES => fluids().chain(reference.classes.iter().map(|(key, class)| (key.as_str(), class.name.as_str()))).collect(),
        _ => Vec::new(),
    }
}

/// The control of an answer that a kind's field takes, with what was typed. `empty` says what an empty answer means.
fn input(asks: Asks, value: &str, empty: &str, reference: &Reference) -> Input {
    let text = |list, numeric| Input::Text { value: value.to_owned(), list, numeric };
    match asks {
        Asks::Quantity(_) | Asks::Name | Asks::File => text("", false),
        Asks::Number => text("", true),
        Asks::Materials => materials(value, reference),
        Asks::Fluids => text(FLUIDS, false),
        Asks::Flag => one(["yes", "no"].into_iter().map(|word| (word, word.to_owned())), value, empty),
        Asks::Choice(of) => one(of.iter().map(|word| (*word, shown(word))), value, empty),
        Asks::Choices(of) => many(of.iter().map(|word| (*word, shown(word))), value),
    }
}

/// One of these words or nothing.
fn one<'w>(words: impl Iterator<Item = (&'w str, String)>, value: &str, empty: &str) -> Input {
    let none = (String::new(), empty.to_owned(), value.is_empty());
    Input::One(std::iter::once(none).chain(words.map(|(word, shown)| (word.to_owned(), shown, chosen(value, word)))).collect())
}

fn many<'w>(words: impl Iterator<Item = (&'w str, String)>, value: &str) -> Input {
    Input::Many(words.map(|(word, shown)| (word.to_owned(), shown, chosen(value, word))).collect())
}

/// All materials, those meant by the words typed ticked; a word that means none stays beside them, to be mended.
fn materials(value: &str, reference: &Reference) -> Input {
    let (mut meant, mut unknown) = (Vec::new(), Vec::new());
    for word in value.split(',').map(str::trim).filter(|word| !word.is_empty()) {
        match reference.meant(word, reference.materials.keys().map(String::as_str)) {
            Some(key) => meant.push(key),
            None => unknown.push((word.to_owned(), word.to_owned(), true)),
        }
    }
    let known = reference.materials.values().map(|material| (material.key.clone(), material.name.clone(), meant.contains(&&*material.key)));
    Input::Many(known.chain(unknown).collect())
}

fn chosen(value: &str, word: &str) -> bool {
    value.split(',').any(|part| part.trim() == word)
}

fn shown(word: &str) -> String {
    word.replace('-', " ")
}

/// What kind of answer fits a field, in words.
fn fits(asks: Asks) -> &'static str {
    match asks {
        Asks::Quantity(dimension) => dimension.name(),
        Asks::Number => "a plain number",
        Asks::Fluids => "one or more fluids, with commas between",
        Asks::Name | Asks::File | Asks::Flag | Asks::Choice(_) | Asks::Choices(_) | Asks::Materials => "",
    }
}

/// What fits and what is supposed, as one hint.
fn hint(fits: &str, supposed: &str) -> String {
    let supposed = if supposed.is_empty() { String::new() } else { format!("left empty: {supposed}") };
    sentence(&[fits, &supposed].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("; "))
}

/// What is wrong and the way out, for the page, where things are known by their labels and not by their keys.
fn said(key: &str, what: &str, mend: &str) -> String {
    let own = format!("`{key}`");
    let what = if what == format!("{own} is missing") { "this is needed".to_owned() } else { what.replace(&format!(" as {own}"), " here") };
    quoted(&format!("{}. {mend}", sentence(&what.replace(&own, "this"))))
}
