//! Fills every field of a kind: from the file, else from the template, else with the kind's own default.

use indexmap::IndexMap;
use reference::Reference;
use units::{System, parse_any, show_base};

use crate::assumption::Assumptions;
use crate::problem::Problems;
use crate::section::{Said, Section, may_be_negative};
use fields::did_you_mean;
use fields::{Answer, Answers, Asks, Field, Kind, Origin};

/// Where values come from that the user did not give.
pub(crate) struct Source<'a> {
    /// A template's texts by field.
    pub values: Option<&'a IndexMap<String, String>>,
    /// Bibliography key of the template.
    pub source: &'a str,
    /// The base value of a size of the machine.
    pub size: &'a dyn Fn(&str) -> Option<f64>,
}

impl Source<'_> {
    /// No template.
    pub(crate) const NONE: Self = Self { values: None, source: "common-practice", size: &|_| None };
}

pub(crate) fn read_answers(
    kind: &'static Kind,
    section: &mut Section<'_>,
    from: &Source<'_>,
    place: &str,
    reference: &Reference,
    assumed: &mut Assumptions,
    problems: &mut Problems,
) -> Answers {
    let mut answers = Answers::default();
    for field in kind.fields {
        if let Some(said) = written(field, section, reference, problems) {
            answers.set(field.name, said.value, Origin::User(said.at));
            continue;
        }
        if field.optional {
            continue;
        }
        let given = from.values.and_then(|values| values.get(field.name));
        let (text, source) = given.map_or((field.default, field.source), |text| (text.as_str(), from.source));
        let answer = supposed(field, text, from.size)
            .unwrap_or_else(|| unreachable!("`{text}` for `{}` of `{}` is proved readable by a test", field.name, kind.name));
        assumed.add(place, field.name, shown(field, &answer, assumed.units), source);
        answers.set(field.name, answer, Origin::Supposed(source.to_owned()));
    }
    answers
}

/// The user's answer, if there is a sound one; an unsound one is reported and the supposed value stands in.
fn written(field: &Field, section: &mut Section<'_>, reference: &Reference, problems: &mut Problems) -> Option<Said<Answer>> {
    let words = |known: &[&str], section: &mut Section<'_>, problems: &mut Problems| {
        let mut all = Vec::new();
        let mut at = None;
        for said in section.words(field.name, problems) {
            at.get_or_insert(said.at.clone());
            if let Some(meant) = reference.meant(&said.value, known.iter().copied()) {
                all.push(meant.to_owned());
            } else {
                problems.add(
                    said.at,
                    format!("`{}` is not allowed for `{}`", said.value, field.name),
                    did_you_mean(&said.value, known.iter().copied()),
                );
            }
        }
        at.filter(|_| !all.is_empty()).map(|at| Said { value: Answer::Words(all), at })
    };
    match field.asks {
        Asks::Quantity(dimension) => {
            let said = section.base(field.name, dimension, field.default, problems)?;
            if said.value <= 0.0 && !may_be_negative(dimension) {
                problems.add(said.at, format!("`{}` is zero", field.name), format!("Give {} above zero.", dimension.name()));
                return None;
            }
            Some(Said { value: Answer::Quantity(said.value), at: said.at })
        }
        Asks::Number => section.number(field.name, problems).map(|said| Said { value: Answer::Number(said.value), at: said.at }),
        Asks::Flag => section.flag(field.name, problems).map(|said| Said { value: Answer::Flag(said.value), at: said.at }),
        Asks::Choice(of) => {
            let said = words(of, section, problems)?;
            if let Answer::Words(all) = &said.value
                && all.len() > 1
            {
                problems.add(said.at.clone(), format!("`{}` takes one word", field.name), "Keep one of them.");
            }
            Some(said)
        }
        Asks::Choices(of) => words(of, section, problems),
        Asks::Name | Asks::File => {
            section.text(field.name, problems).map(|said| Said { value: Answer::Words(vec![said.value]), at: said.at })
        }
        Asks::Materials => {
            let known: Vec<&str> = reference.materials.keys().map(String::as_str).collect();
            words(&known, section, problems)
        }
        Asks::Fluids => {
            let known: Vec<&str> = reference.fluids.keys().map(String::as_str).collect();
            words(&known, section, problems)
        }
    }
}

/// Reads a supposed value: a value as a user would write it, or a factor and the name of a size, such as `0.5 swing`.
pub(crate) fn supposed(field: &Field, text: &str, size: &dyn Fn(&str) -> Option<f64>) -> Option<Answer> {
    let words = || Some(Answer::Words(text.split(',').map(|word| word.trim().to_owned()).filter(|word| !word.is_empty()).collect()));
    match field.asks {
        Asks::Quantity(dimension) => {
            let of_size = text.split_once(' ').and_then(|(factor, name)| Some(factor.parse::<f64>().ok()? * size(name)?));
            of_size.or_else(|| size(text)).or_else(|| parse_any(dimension, text).ok()).map(Answer::Quantity)
        }
        Asks::Number => text.parse().ok().map(Answer::Number),
        Asks::Flag => text.parse().ok().map(Answer::Flag),
        Asks::Choice(_) | Asks::Choices(_) | Asks::Name | Asks::File | Asks::Materials | Asks::Fluids => words(),
    }
}

fn shown(field: &Field, answer: &Answer, units: System) -> String {
    match (answer, field.asks) {
        (Answer::Quantity(base), Asks::Quantity(dimension)) => show_base(dimension, *base, units),
        (Answer::Quantity(number) | Answer::Number(number), _) => number.to_string(),
        (Answer::Flag(flag), _) => flag.to_string(),
        (Answer::Words(words), _) => words.join(", "),
    }
}

/// A material's key.
pub(crate) fn material(said: Said<String>, reference: &Reference, problems: &mut Problems) -> Option<String> {
    let known = || reference.materials.keys().map(String::as_str);
    if let Some(meant) = reference.meant(&said.value, known()) {
        return Some(meant.to_owned());
    }
    let mend = did_you_mean(&said.value, known());
    problems.add(said.at, format!("`{}` is not a material known here", said.value), mend);
    None
}
