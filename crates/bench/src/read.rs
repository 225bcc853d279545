//! Reading what was typed into a sheet: every wrong answer is reported, every missing one that cannot be supposed is named.

use fields::{Answer, Answers, Asks, Field, NUMBERS, Origin, did_you_mean, no_shop_has};
use reference::Reference;
use units::{System, parse_any, show_base};

use crate::sheets::Sheet;

/// The answers to a sheet's fields.
#[derive(Debug, Clone, Default)]
pub struct Reply {
    /// What was said or supposed.
    pub answers: Answers,
}

/// One answer that cannot be taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refusal {
    /// The field.
    pub field: &'static str,
    /// What is wrong.
    pub what: String,
    /// The way out.
    pub mend: String,
}

/// Reads the answers given by name, and supposes the rest.
///
/// # Errors
/// Every answer that cannot be taken and every field that needs one.
pub fn read(sheet: &Sheet, given: &[(&str, &str)], reference: &Reference) -> Result<Reply, Vec<Refusal>> {
    let mut reply = Reply::default();
    let mut refusals = Vec::new();
    for field in sheet.kind.fields {
        let said = given.iter().find(|(name, _)| *name == field.name);
        match said {
            Some((_, text)) => match answer(field, text, reference) {
                Ok(answer) => reply.answers.set(field.name, answer, Origin::User(0..0)),
                Err((what, mend)) => refusals.push(Refusal { field: field.name, what, mend }),
            },
            None if field.is_required() => refusals.push(Refusal {
                field: field.name,
                what: format!("`{}` is missing", field.name),
                mend: format!("Give {}.", wanted(field)),
            }),
            None if field.optional => {}
            None => {
                let supposed = answer(field, field.default, reference)
                    .unwrap_or_else(|_| unreachable!("the default of `{}` is proved readable by a test", field.name));
                reply.answers.set(field.name, supposed, Origin::Supposed(field.source.to_owned()));
            }
        }
    }
    if refusals.is_empty() { Ok(reply) } else { Err(refusals) }
}

/// What a field wants, in words.
fn wanted(field: &Field) -> String {
    match field.asks {
        Asks::Quantity(dimension) => format!("{}, {}", field.about, dimension.name()),
        _ => field.about.to_owned(),
    }
}

fn answer(field: &Field, text: &str, reference: &Reference) -> Result<Answer, (String, String)> {
    let words = |known: &mut dyn Iterator<Item = &str>| {
        let known: Vec<&str> = known.collect();
        let words: Vec<String> = text.split(',').map(|word| word.trim().to_owned()).filter(|word| !word.is_empty()).collect();
        if words.is_empty() {
            return Err((format!("`{}` is empty", field.name), did_you_mean("", known.iter().copied())));
        }
        let meant = |word: &String| {
            let found = reference.meant(word, known.iter().copied()).map(str::to_owned);
            found.ok_or_else(|| (format!("`{word}` is not known as `{}`", field.name), did_you_mean(word, known.iter().copied())))
        };
        words.iter().map(meant).collect::<Result<_, _>>().map(Answer::Words)
    };
    match field.asks {
        Asks::Quantity(dimension) => {
            let base = parse_any(dimension, text).map_err(|error| (format!("`{}` cannot be read", field.name), format!("{error}.")))?;
            match no_shop_has(dimension, base, field.default) {
                None => Ok(Answer::Quantity(base)),
                Some(mend) => Err((format!("`{}` is {}, which no shop has", field.name, show_base(dimension, base, System::Metric)), mend)),
            }
        }
        Asks::Number => match text.trim().parse::<f64>() {
            Ok(number) if NUMBERS.contains(&number) => Ok(Answer::Number(number)),
            Ok(number) if number > 0.0 => Err((
                format!("`{}` is {text}, which no shop has", field.name),
                format!("Give a number from {} to {}.", NUMBERS.start(), NUMBERS.end()),
            )),
            Ok(number) if number.is_finite() => Err((format!("`{}` is {number}", field.name), "Give a number above nothing.".to_owned())),
            _ => Err((format!("`{text}` is not a plain number"), "Write a number without a unit, such as `3`.".to_owned())),
        },
        Asks::Flag => match text.trim() {
            "yes" | "true" => Ok(Answer::Flag(true)),
            "no" | "false" => Ok(Answer::Flag(false)),
            _ => Err((format!("`{text}` is neither yes nor no"), "Write `yes` or `no`.".to_owned())),
        },
        Asks::Choice(of) | Asks::Choices(of) => {
            let words = words(&mut of.iter().copied())?;
            match (&words, field.asks) {
                (Answer::Words(many), Asks::Choice(_)) if many.len() > 1 => {
                    Err((format!("`{}` takes one word", field.name), "Keep one of them.".to_owned()))
                }
                _ => Ok(words),
            }
        }
        Asks::Name => match text.trim() {
            "" => Err((format!("`{}` is empty", field.name), format!("Give {}.", field.about))),
            name => Ok(Answer::Words(vec![name.to_owned()])),
        },
        Asks::File => Ok(Answer::Words(vec![text.to_owned()])),
        Asks::Materials => words(&mut reference.materials.keys().map(String::as_str)),
        Asks::Fluids => words(&mut reference.fluids.keys().map(String::as_str)),
    }
}
