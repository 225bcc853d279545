//! `check`: is the file sound, and what was supposed in reading it.

use std::process::ExitCode;

use planner::needs::{Working, needs};
use reference::Reference;
use schemars::JsonSchema;
use serde::Serialize;
use shop::{Assumption, Problem};

use crate::args::Check;
use crate::input::{Failure, ShopFile};
use crate::plan::several;
use crate::problems::{self, line_and_column};
use crate::shell::print_json;
use crate::style::{bold, dim, heading, paragraph};

/// What `check --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub struct CheckReport {
    /// Whether a plan can be made of it.
    pub sound: bool,
    /// What is wrong.
    pub problems: Vec<ProblemRow>,
    /// What was supposed.
    pub assumptions: Vec<planner::report::AssumptionRow>,
}

/// One thing that is wrong.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ProblemRow {
    /// Line, from 1; none where it concerns the whole file.
    pub line: Option<usize>,
    /// Column, from 1.
    pub column: Option<usize>,
    /// What is wrong.
    pub what: String,
    /// The way out.
    pub mend: String,
}

/// Runs the command.
pub fn run(wanted: &Check) -> Result<ExitCode, Failure> {
    let file = ShopFile::open(&wanted.common.shop)?;
    let found = file.shop().and_then(|shop| needs(&shop, Reference::embedded(), Working::Dropped).map(|needs| (shop, needs.len())));
    match found {
        Err(found) if wanted.common.json => {
            print_json(&CheckReport { sound: false, problems: rows(&file, &found), assumptions: Vec::new() })?;
            Ok(ExitCode::from(1))
        }
        Err(found) => {
            anstream::eprintln!("{}", problems::render(&file, &found));
            Ok(ExitCode::from(1))
        }
        Ok((shop, _)) if wanted.common.json => {
            let assumptions = shop.assumptions.iter().map(planner::report::AssumptionRow::from).collect();
            print_json(&CheckReport { sound: true, problems: Vec::new(), assumptions })
        }
        Ok((shop, needs)) => {
            let points: usize = shop.machines.iter().map(|machine| machine.points.len()).sum();
            anstream::println!(
                "{}",
                bold(&format!(
                    "{} is sound: {} with {}, {}, {} in all.",
                    file.path,
                    several(shop.machines.len(), "machine"),
                    several(points, "point"),
                    several(shop.work.len(), "kind of work"),
                    several(needs, "need")
                ))
            );
            anstream::println!("\n{}", heading(&format!("Supposed, because the file does not say ({})", shop.assumptions.len())));
            anstream::println!("{}", assumptions(&shop.assumptions));
            Ok(ExitCode::SUCCESS)
        }
    }
}

fn rows(file: &ShopFile, found: &[Problem]) -> Vec<ProblemRow> {
    let text = file.text();
    let row = |problem: &Problem| {
        let place = problem.at.as_ref().map(|at| line_and_column(&text, at.start));
        ProblemRow {
            line: place.map(|(line, _)| line),
            column: place.map(|(_, column)| column),
            what: problem.what.clone(),
            mend: problem.mend.clone(),
        }
    };
    found.iter().map(row).collect()
}

/// What was supposed, a paragraph for each place.
pub fn assumptions(all: &[Assumption]) -> String {
    let mut paragraphs: Vec<(String, Vec<String>)> = Vec::new();
    for assumption in all {
        let said = format!("{} {}", assumption.what, assumption.value);
        match paragraphs.last_mut().filter(|(place, _)| *place == assumption.place) {
            Some((_, list)) => list.push(said),
            None => paragraphs.push((assumption.place.clone(), vec![said])),
        }
    }
    let standing = dim("Each stands for the key that overrules it; sources with --json.");
    let lines = paragraphs.iter().map(|(place, list)| paragraph(&format!("{place}: {}", list.join(", ")), "  ", "    "));
    lines.chain([format!("  {standing}")]).collect::<Vec<_>>().join("\n")
}
