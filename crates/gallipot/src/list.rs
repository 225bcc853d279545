//! `list`: the words a shop file may use.

use std::process::ExitCode;

use fields::Asks;
use planner::needs::kinds;
use reference::Reference;
use shop::{FITTINGS, Kind};

use crate::args::{List, Words};
use crate::input::Failure;
use crate::style::{bold, heading, paragraph};

/// Runs the command.
pub fn run(wanted: &List) -> Result<ExitCode, Failure> {
    let reference = Reference::embedded();
    let lines: Vec<String> = match wanted.of {
        Words::Machines => reference.templates.values().map(|template| row(&template.name, &sizes(template))).collect(),
        Words::Points => kinds().points.iter().map(|kind| fields(kind)).chain([fittings()]).collect(),
        Words::Jobs => kinds().jobs.iter().map(|kind| fields(kind)).collect(),
        Words::Fluids => reference.fluids.values().map(|fluid| row(&fluid.key, &format!("{}. {}", fluid.name, fluid.about))).collect(),
        Words::Classes => reference.classes.values().map(|class| row(&class.key, &class.name)).collect(),
        Words::Materials => reference.materials.values().map(|material| row(&material.key, &material.name)).collect(),
        Words::Climates => reference.climates.values().map(|climate| row(&climate.key, &climate.about)).collect(),
        Words::Currencies => reference.currencies.values().map(|currency| row(&currency.code, &currency.name)).collect(),
        Words::Sources => {
            reference.sources.values().map(|source| row(source.key.as_str(), &format!("{} ({})", source.title, source.standing))).collect()
        }
    };
    anstream::println!("{}", lines.join("\n"));
    Ok(ExitCode::SUCCESS)
}

fn row(word: &str, about: &str) -> String {
    paragraph(&format!("{word}  {about}"), "", "    ").replacen(word, &bold(word), 1)
}

fn sizes(template: &reference::Template) -> String {
    let sizes: Vec<String> = template.sizes.iter().map(|(size, text)| format!("{size} {text}")).collect();
    format!("{} Sizes, as supposed: {}.", template.about, sizes.join(", "))
}

/// A kind with its fields and what is supposed of each.
fn fields(kind: &Kind) -> String {
    let mut lines = vec![heading(kind.name), paragraph(kind.about, "  ", "  ")];
    for field in kind.fields {
        let choice = match field.asks {
            Asks::Choice(of) | Asks::Choices(of) => format!(" (of {})", of.join(", ")),
            _ => String::new(),
        };
        let supposed = if field.default.is_empty() { "nothing".to_owned() } else { field.default.to_owned() };
        lines.push(paragraph(&format!("{}: {}{choice}; supposed: {supposed}", field.name, field.about), "    ", "      "));
    }
    lines.join("\n")
}

/// What every point may say besides.
fn fittings() -> String {
    let words: Vec<&str> = FITTINGS.iter().map(|(word, _)| *word).collect();
    let every = "count, hours, exposure (chips, grit, coolant, damp, outdoors), reach (easy, hard), touches (materials), \
                 priority (low, normal, high), holds (the fluid in it now), maker (use, \
                 viscosity, every, page)";
    let text = format!("{every}; fitting: {}", words.join(", "));
    format!("{}\n{}", heading("every point"), paragraph(&text, "    ", "      "))
}
