//! A sheet as a form: one control for each field, with what was typed and what is wrong with it.

use bench::{Refusal, Sheet};
use fields::{Asks, Field};
use reference::Reference;

use crate::visitor::Visitor;
use crate::words::sentence;

/// A field of the form.
pub(crate) struct Control {
    pub name: &'static str,
    pub label: String,
    /// What kind of answer fits, and what is supposed where there is none.
    pub hint: String,
    /// The ground of what is supposed.
    pub source: &'static str,
    pub required: bool,
    pub wrong: Option<String>,
    pub input: Input,
}

/// How it is answered.
pub(crate) enum Input {
    /// By typing; with a list to choose from where there is one.
    Text { value: String, list: &'static str, numeric: bool },
    /// By choosing one word; each word, how it is shown, and whether it is chosen.
    One(Vec<(&'static str, String, bool)>),
    /// By ticking words.
    Many(Vec<(&'static str, String, bool)>),
}

/// Lists to choose from.
pub(crate) const FLUIDS: &str = "fluids";
pub(crate) const MATERIALS: &str = "materials";

/// The fields a page asks. A file is no answer to a form that can be bookmarked, and a visitor must not name one for the server to read.
fn asked(sheet: &Sheet) -> impl Iterator<Item = &'static Field> {
    sheet.kind.fields.iter().filter(|field| !matches!(field.asks, Asks::File))
}

/// What was typed, by field; ticked words are joined by commas.
pub(crate) fn typed(sheet: &Sheet, visitor: &Visitor) -> Vec<(&'static str, String)> {
    let one = |field: &Field| {
        let all: Vec<&str> = visitor.all(field.name).collect();
        (!all.is_empty()).then(|| (field.name, all.join(", ")))
    };
    asked(sheet).filter_map(one).collect()
}

/// The form's fields.
pub(crate) fn controls(sheet: &Sheet, typed: &[(&'static str, String)], refused: &[Refusal]) -> Vec<Control> {
    asked(sheet).map(|field| control(field, typed, refused)).collect()
}

/// Refusals in words for the page, where fields are known by their labels and not by their names.
pub(crate) fn wrong(field: &Field, refused: &[Refusal]) -> Option<String> {
    let found = refused.iter().find(|refusal| refusal.field == field.name)?;
    let own = format!("`{}`", field.name);
    let what = if found.what == format!("{own} is missing") {
        "this is needed".to_owned()
    } else {
        found.what.replace(&format!(" as {own}"), " here")
    };
    Some(quoted(&format!("{}. {}", sentence(&what.replace(&own, "this")), found.mend)))
}

/// Quotation marks of print for those of a terminal.
fn quoted(text: &str) -> String {
    let mut marks = ['“', '”'].into_iter().cycle();
    text.chars().map(|c| if c == '`' { marks.next().unwrap_or(c) } else { c }).collect()
}

fn control(field: &Field, typed: &[(&'static str, String)], refused: &[Refusal]) -> Control {
    let value = typed.iter().find(|(name, _)| *name == field.name).map_or("", |(_, value)| value.as_str());
    let fits = match field.asks {
        Asks::Quantity(dimension) => dimension.name().to_owned(),
        Asks::Number => "a plain number".to_owned(),
        Asks::Materials => "one or more materials, with commas between".to_owned(),
        Asks::Fluids => "one or more fluids, with commas between".to_owned(),
        Asks::Name | Asks::File | Asks::Flag | Asks::Choice(_) | Asks::Choices(_) => String::new(),
    };
    let supposed = if field.default.is_empty() { String::new() } else { format!("left empty: {}", field.default) };
    let hint = [fits, supposed].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("; ");
    Control {
        name: field.name,
        label: sentence(field.about),
        hint: sentence(&hint),
        source: field.source,
        required: field.is_required(),
        wrong: wrong(field, refused),
        input: input(field, value),
    }
}

fn input(field: &Field, value: &str) -> Input {
    let chosen = |word: &str| value.split(',').any(|part| part.trim() == word);
    let text = |list, numeric| Input::Text { value: value.to_owned(), list, numeric };
    let none = |words: Vec<(&'static str, String, bool)>| {
        let empty = if field.default.is_empty() { "–".to_owned() } else { format!("as supposed: {}", field.default) };
        Input::One([("", empty, value.is_empty())].into_iter().chain(words).collect())
    };
    match field.asks {
        Asks::Quantity(_) | Asks::Name | Asks::File => text("", false),
        Asks::Number => text("", true),
        Asks::Materials => text(MATERIALS, false),
        Asks::Fluids => text(FLUIDS, false),
        Asks::Flag => none(["yes", "no"].map(|word| (word, word.to_owned(), chosen(word))).into()),
        Asks::Choice(of) => none(of.iter().map(|word| (*word, shown(word), chosen(word))).collect()),
        Asks::Choices(of) => Input::Many(of.iter().map(|word| (*word, shown(word), chosen(word))).collect()),
    }
}

fn shown(word: &str) -> String {
    word.replace('-', " ")
}

/// A list's entries: the key, and the name.
pub(crate) fn list<'r>(name: &str, reference: &'r Reference) -> Vec<(&'r str, &'r str)> {
    match name {
        FLUIDS => reference.fluids.values().map(|fluid| (fluid.key.as_str(), fluid.name.as_str())).collect(),
        MATERIALS => reference.materials.values().map(|material| (material.key.as_str(), material.name.as_str())).collect(),
        _ => Vec::new(),
    }
}
