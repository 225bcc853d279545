//! `why`: every finding behind what goes on one place.

use std::process::ExitCode;

use planner::verdict::{Finding, Verdict};
use planner::why::{Why, WhyError, why};
use reference::{Reference, Standing};

use crate::args;
use crate::input::{Failure, read};
use crate::shell::print_json;
use crate::style::{bold, dim, grade, heading, lines, mark, paragraph, table};

/// Runs the command.
pub fn run(wanted: &args::Why) -> Result<ExitCode, Failure> {
    let (file, shop) = read(&wanted.common)?;
    let reference = Reference::embedded();
    let account = match why(&shop, reference, &wanted.place, &wanted.fluids, shop.units) {
        Ok(account) => account,
        Err(WhyError::Shop(found)) => return Err(Failure::File(file, found)),
        Err(WhyError::Place { asked, known }) => return Err(Failure::Said(no_such_place(&asked, &known))),
        Err(WhyError::Fluid { asked }) => {
            let mend = fields::did_you_mean(&asked, reference.fluids.keys().map(String::as_str));
            return Err(Failure::Said(format!("`{asked}` is not a fluid known here. {mend}")));
        }
    };
    if wanted.common.json {
        return print_json(&account);
    }
    show(&account, reference);
    Ok(ExitCode::SUCCESS)
}

fn no_such_place(asked: &str, known: &[String]) -> String {
    let part: Vec<&str> = known.iter().map(String::as_str).filter(|id| id.contains(&asked.to_lowercase().replace(' ', "-"))).collect();
    if part.len() > 1 {
        return format!("`{asked}` names several places: {}. Name one of them.", part.join(", "));
    }
    let mut near: Vec<&str> = known.iter().map(String::as_str).collect();
    near.sort_by(|a, b| strsim::jaro_winkler(b, asked).total_cmp(&strsim::jaro_winkler(a, asked)));
    near.truncate(5);
    format!("no place of this shop is called `{asked}`. The nearest: {}.", near.join(", "))
}

fn show(account: &Why, reference: &Reference) {
    anstream::println!("{}\n", bold(&format!("{} ({})", account.place, account.kind)));
    let weight = &account.weight;
    anstream::println!(
        "{}",
        paragraph(
            &format!(
                "Without: {} ({}), {:.0} times a year ({:.2}){}: weight {:.2}. {}",
                weight.consequence,
                weight.consequence_weight,
                weight.times_a_year,
                weight.frequency_weight,
                if weight.priority == 1.0 { String::new() } else { format!(", your priority × {}", weight.priority) },
                weight.value,
                weight.consequence_why
            ),
            "",
            ""
        )
    );
    if let Some(nothing) = &account.nothing {
        anstream::println!("\nNothing is put there: {nothing}.");
        return;
    }
    if !account.working.is_empty() {
        anstream::println!("\n{}", heading("How the numbers came about"));
        for line in &account.working {
            anstream::println!("{}", paragraph(line, "  ", "      "));
        }
    }
    anstream::println!("\n{}", heading("How each fluid meets what is asked"));
    anstream::println!("{}", side_by_side(&account.verdicts));
    anstream::println!("\n{}", heading("What is asked, and why"));
    for (number, finding) in demands(&account.verdicts).iter().enumerate() {
        anstream::println!("{:>3} {}", number + 1, bold(&finding.demand));
        anstream::println!("{}", paragraph(&format!("asked: {}", finding.asked), "    ", "    "));
        let source = source(reference, &finding.source);
        anstream::println!("{}", paragraph(&format!("because {} [{source}]", finding.why), "    ", "    "));
    }
    let cited = sources_of_working(account, reference);
    if !cited.is_empty() {
        anstream::println!("\n{}", heading("Sources of the working"));
        for line in cited {
            anstream::println!("{}", paragraph(&line, "  ", "    "));
        }
    }
    for text in &account.mind {
        anstream::println!("\n{}", paragraph(text, "Mind: ", "      "));
    }
    anstream::println!("\n{}", dim(&format!("The place is called {} in commands and JSON.", account.need)));
}

/// Every demand that concerns one of the fluids, once, by one of its findings.
fn demands(verdicts: &[Verdict]) -> Vec<&Finding> {
    let mut demands: Vec<&Finding> = Vec::new();
    for finding in verdicts.iter().flat_map(|verdict| &verdict.findings) {
        if !demands.iter().any(|known| same(known, finding)) {
            demands.push(finding);
        }
    }
    demands
}

fn same(one: &Finding, other: &Finding) -> bool {
    one.demand == other.demand && one.asked == other.asked
}

/// A row a demand, a column a fluid.
fn side_by_side(verdicts: &[Verdict]) -> String {
    let mut header = vec![String::new()];
    header.extend(verdicts.iter().map(|verdict| verdict.fluid.clone()));
    let header: Vec<&str> = header.iter().map(String::as_str).collect();
    let mut table = table(&header);
    let mut summary = vec!["  verdict".to_owned()];
    summary.extend(verdicts.iter().map(|verdict| grade(verdict.grade)));
    table.add_row(summary);
    for (number, demand) in demands(verdicts).iter().enumerate() {
        let mut row = vec![format!("{} {}", number + 1, demand.demand)];
        row.extend(verdicts.iter().map(|verdict| {
            let found = verdict.findings.iter().find(|finding| same(finding, demand));
            found.map_or_else(|| "–".to_owned(), |finding| format!("{} {}", mark(finding.grade), finding.given))
        }));
        table.add_row(row);
    }
    lines(&mut table)
}

/// The full names of the sources that the working cites by key.
fn sources_of_working(account: &Why, reference: &Reference) -> Vec<String> {
    let mut keys: Vec<&str> = Vec::new();
    for line in &account.working {
        let Some((_, key)) = line.trim_end_matches(']').rsplit_once('[') else { continue };
        if !keys.contains(&key) {
            keys.push(key);
        }
    }
    keys.into_iter().map(|key| format!("{key}: {}", source(reference, key))).collect()
}

fn source(reference: &Reference, key: &str) -> String {
    match key {
        "maker" => "the maker's instruction".to_owned(),
        "shop-file" => "your shop file".to_owned(),
        _ => reference.sources.get(key).map_or_else(
            || key.to_owned(),
            |source| match source.standing {
                Standing::CommonPractice => "common practice, no source".to_owned(),
                standing => format!("{}; {standing}", source.title),
            },
        ),
    }
}
