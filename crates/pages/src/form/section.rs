//! A part of the shop as a form: the keys of the shop file, with what was said and what is supposed where nothing is.

use std::collections::BTreeSet;

use fields::{Asks, Kind};
use planner::needs::kinds;
use reference::{Reference, Template};
use shop::{Key, Known, MACHINE_KEYS, MAKER_KEYS, POINT_KEYS, POT_KEYS, ROOM_KEYS, SHOP_KEYS, Shop, Takes, WORK_KEYS};
use store::{Fault, SectionRow, Value};

use super::{Control, FLUIDS, FLUIDS_AND_CLASSES, Input, fits, hint, input, many, one, said, shown};
use crate::words::{quoted, sentence};

/// Begins the names of what the maker of the machine says about a point.
pub(crate) const MAKER: &str = "maker.";

/// A part of the shop, as far as its form goes by it.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Part {
    /// The shop as a whole.
    Shop,
    Room,
    Machine(Option<&'static Template>),
    Point {
        kind: Option<&'static Kind>,
        of_template: bool,
    },
    Work(Option<&'static Kind>),
    Pot,
}

/// One thing that can be said there.
pub(crate) struct Question {
    /// The key, after [`MAKER`] where the maker says it.
    pub name: String,
    label: String,
    takes: Takes,
    needed: bool,
    /// What is supposed of any such part, and on what ground.
    default: (String, &'static str),
}

impl Part {
    /// The part a section of the store is; none of those whose form belongs to another's.
    pub(crate) fn of(section: &SectionRow, machine: Option<&SectionRow>, reference: &'static Reference) -> Option<Self> {
        let text = |row: &SectionRow, key: &str| row.get(key).map(Value::plain);
        let template = |row: &SectionRow| {
            let said = text(row, "template")?;
            reference.meant(&said, reference.templates.keys().map(String::as_str)).and_then(|name| reference.template(name))
        };
        let kind = |all: &[&'static Kind], said: Option<String>| {
            let said = said?;
            let meant = reference.meant(&said, all.iter().map(|kind| kind.name));
            all.iter().find(|kind| Some(kind.name) == meant).copied()
        };
        match section.kind.as_str() {
            "" => Some(Self::Shop),
            "room" => Some(Self::Room),
            "machine" => Some(Self::Machine(template(section))),
            "point" => {
                let name = text(section, "name");
                let points = machine.and_then(template).map(|template| template.points.as_slice()).unwrap_or_default();
                let grown = points.iter().find(|point| Some(&point.name) == name.as_ref());
                let said = text(section, "kind").or_else(|| grown.map(|point| point.kind.clone()));
                Some(Self::Point { kind: kind(kinds().points, said), of_template: grown.is_some() })
            }
            "work" => Some(Self::Work(kind(kinds().jobs, text(section, "job")))),
            "pot" => Some(Self::Pot),
            _ => None,
        }
    }

    /// Whether the template of its machine answers where nothing is said.
    pub(crate) fn grown(self, key: &str) -> bool {
        const SAID_BY_PEOPLE: [&str; 2] = ["holds", "priority"];
        let of_template = matches!(self, Self::Point { of_template: true, .. });
        of_template && POINT_KEYS.iter().any(|known| known.name == key) && !SAID_BY_PEOPLE.contains(&key)
    }

    /// What its form asks.
    pub(crate) fn questions(self) -> Vec<Question> {
        let values = |kind: Option<&'static Kind>| kind.map(|kind| kind.fields).unwrap_or_default().iter().map(Question::of_field);
        let all_but = |out: &'static [&str], keys: &'static [Key]| keys.iter().filter(|key| !out.contains(&key.name)).map(Question::of);
        let mut questions: Vec<Question> = match self {
            Self::Shop => all_but(&[], SHOP_KEYS).collect(),
            Self::Room => all_but(&[], ROOM_KEYS).collect(),
            Self::Pot => all_but(&[], POT_KEYS).collect(),
            Self::Work(kind) => all_but(&["job"], WORK_KEYS).chain(values(kind)).collect(),
            Self::Machine(template) => {
                let sizes = template.iter().flat_map(|template| {
                    template.sizes.iter().map(|(size, usual)| Question {
                        name: size.clone(),
                        label: sentence(size),
                        takes: Takes::Text,
                        needed: false,
                        default: (usual.clone(), template.source.as_str()),
                    })
                });
                all_but(if template.is_some() { &["template"] } else { &["template", "without"] }, MACHINE_KEYS).chain(sizes).collect()
            }
            Self::Point { kind, of_template } => {
                let keys = all_but(if of_template { &["name", "kind"] } else { &["kind"] }, POINT_KEYS);
                let maker = MAKER_KEYS.iter().map(|key| Question { name: format!("{MAKER}{}", key.name), ..Question::of(key) });
                values(kind).chain(keys).chain(maker).collect()
            }
        };
        // A visitor must not name a file for the server to read.
        questions.retain(|question| !matches!(question.takes, Takes::File | Takes::Asked(Asks::File)));
        questions
    }
}

impl Question {
    fn of(key: &Key) -> Self {
        let needed = matches!(key.name, "fluid");
        Self { name: key.name.to_owned(), label: quoted(&sentence(key.about)), takes: key.takes, needed, default: Default::default() }
    }

    fn of_field(field: &fields::Field) -> Self {
        Self {
            name: field.name.to_owned(),
            label: quoted(&sentence(field.about)),
            takes: Takes::Asked(field.asks),
            needed: field.is_required(),
            default: (field.default.to_owned(), field.source),
        }
    }

    /// What is supposed of any such part, and on what ground.
    pub(crate) fn default(&self) -> Option<(&str, &str)> {
        (!self.default.0.is_empty()).then_some((&self.default.0, self.default.1))
    }

    /// The control, with what was typed, what is supposed (and on what ground), and what is wrong.
    pub(crate) fn control(&self, value: &str, supposed: Option<(&str, &str)>, wrong: Option<String>, from: &Choices<'_>) -> Control {
        let (taken, source) = supposed.unwrap_or_default();
        let fitting = match self.takes {
            Takes::Asked(asks) => fits(asks),
            Takes::Amount => "an amount such as 250 mL, 400 g, 10 m or 3 pieces",
            Takes::Several(Known::Fluid | Known::FluidOrClass) => "one or more, with commas between",
            _ => "",
        };
        Control {
            name: self.name.clone(),
            label: self.label.clone(),
            hint: hint(fitting, taken),
            source: source.to_owned(),
            required: self.needed,
            wrong,
            input: self.input(value, taken, from),
        }
    }

    fn input(&self, value: &str, taken: &str, from: &Choices<'_>) -> Input {
        let empty = if taken.is_empty() { "–".to_owned() } else { format!("as supposed: {taken}") };
        let text = |list| Input::Text { value: value.to_owned(), list, numeric: false };
        let known = |known| from.known(known).into_iter();
        match self.takes {
            Takes::Asked(asks) => input(asks, value, &empty, from.reference),
            Takes::Text | Takes::File | Takes::Amount => text(""),
            Takes::Day => Input::Day(value.to_owned()),
            Takes::Word(of) => one(of().into_iter().map(|word| (word, shown(word))), value, &empty),
            Takes::Words(of) => many(of().into_iter().map(|word| (word, shown(word))), value),
            Takes::Several(Known::TemplatePoint) => many(known(Known::TemplatePoint), value),
            Takes::Several(Known::Fluid) => text(FLUIDS),
            Takes::Several(_) => text(FLUIDS_AND_CLASSES),
            Takes::One(of) => one(known(of), value, &empty),
        }
    }

    /// Whether two answers mean the same: of several words neither their order matters nor which of its names a material is called by.
    pub(crate) fn means_the_same(&self, one: &str, other: &str, reference: &Reference) -> bool {
        let meant = |text: &str| -> BTreeSet<String> {
            let words = text.split(',').map(str::trim).filter(|word| !word.is_empty());
            let known = || reference.materials.keys().map(String::as_str);
            match self.takes {
                Takes::Asked(Asks::Materials) => words.map(|word| reference.meant(word, known()).unwrap_or(word).to_owned()).collect(),
                Takes::Asked(Asks::Choices(_)) | Takes::Words(_) | Takes::Several(_) => words.map(str::to_owned).collect(),
                _ => BTreeSet::from([text.to_owned()]),
            }
        };
        meant(one) == meant(other)
    }

    /// What was typed, as the store keeps it.
    pub(crate) fn value(&self, typed: &str) -> Value {
        let words = || Value::Words(typed.split(',').map(str::trim).filter(|word| !word.is_empty()).map(str::to_owned).collect());
        match self.takes {
            Takes::Asked(Asks::Flag) => match typed {
                "yes" => Value::Flag(true),
                "no" => Value::Flag(false),
                other => Value::Text(other.to_owned()),
            },
            Takes::Asked(Asks::Number) => Value::Number(typed.to_owned()),
            Takes::Asked(Asks::Choices(_) | Asks::Materials | Asks::Fluids) | Takes::Words(_) | Takes::Several(_) => words(),
            Takes::Day => typed.parse().map_or_else(|_| Value::Text(typed.to_owned()), Value::Date),
            _ => Value::Text(typed.to_owned()),
        }
    }
}

/// What can be chosen by name.
pub(crate) struct Choices<'a> {
    pub reference: &'a Reference,
    pub template: Option<&'a Template>,
}

impl<'a> Choices<'a> {
    fn known(&self, known: Known) -> Vec<(&'a str, String)> {
        let reference = self.reference;
        match known {
            Known::Template => reference.templates.iter().map(|(name, template)| (name.as_str(), template.title.clone())).collect(),
            Known::TemplatePoint => {
                let points = self.template.map(|template| template.points.as_slice()).unwrap_or_default();
                points.iter().map(|point| (point.name.as_str(), point.name.clone())).collect()
            }
            Known::PointKind => kinds().points.iter().map(|kind| (kind.name, format!("{}: {}", kind.name, kind.about))).collect(),
            Known::Job => kinds().jobs.iter().map(|kind| (kind.name, format!("{}: {}", kind.name, kind.about))).collect(),
            Known::Climate => reference.climates.iter().map(|(key, climate)| (key.as_str(), climate.name.clone())).collect(),
            Known::Currency => reference.currencies.keys().map(|key| (key.as_str(), key.clone())).collect(),
            Known::Fluid => reference.fluids.iter().map(|(key, fluid)| (key.as_str(), fluid.name.clone())).collect(),
            Known::FluidOrClass => Vec::new(),
        }
    }
}

/// What was said, as it stands in the control.
pub(crate) fn written(value: &Value) -> String {
    match value {
        Value::Flag(true) => "yes".to_owned(),
        Value::Flag(false) => "no".to_owned(),
        other => other.plain(),
    }
}

/// What is supposed for a key at a place, and on what ground.
pub(crate) fn supposed<'s>(shop: &'s Shop, place: &str, key: &str) -> Option<(&'s str, &'s str)> {
    let found = shop.assumptions.iter().find(|assumption| assumption.place == place && assumption.what == key)?;
    let value = match found.value.as_str() {
        "true" => "yes",
        "false" => "no",
        other => other,
    };
    Some((value, &found.source))
}

/// A fault in words for the page.
pub(crate) fn fault(found: &Fault) -> String {
    said(found.key.as_deref().unwrap_or_default(), &found.what, &found.mend)
}
