//! `round`: what is due today.

use std::process::ExitCode;

use clap::Args as Group;
use jiff::ZonedDateTime;
use jiff::civil::Date;
use planner::round::{Round, RoundRow, Standing, round};
use planner::words::amount;
use units::System;

use crate::args::Common;
use crate::input::{Failure, read};
use crate::kept::{beside, day, facts, planned};
use crate::plan::several;
use crate::shell::print_json;
use crate::style::{bold, dim, heading, lines, paragraph, table};

/// `round`
#[derive(Debug, Group)]
pub struct Wanted {
    #[command(flatten)]
    pub common: Common,
    /// List what falls due later, too
    #[arg(long)]
    pub all: bool,
    /// The day the round is for; today where none is given
    #[arg(long, value_name = "DAY", value_parser = day)]
    pub day: Option<Date>,
}

/// Runs the command.
pub fn run(wanted: &Wanted) -> Result<ExitCode, Failure> {
    let (file, shop) = read(&wanted.common)?;
    let today = wanted.day.unwrap_or_else(|| ZonedDateTime::now().date());
    let facts = facts(beside(&file)?.as_ref(), &file, today, "nothing counts as done")?;
    let report = planned(file, &shop)?.report(shop.units);
    let answer = round(&report, &shop, &facts)?;
    if wanted.common.json {
        return print_json(&answer);
    }
    anstream::println!("{}", text(&answer, &shop.name, wanted.all, shop.units));
    Ok(ExitCode::SUCCESS)
}

fn text(round: &Round, name: &str, all: bool, units: System) -> String {
    let mut parts = vec![bold(&format!("{name}: the round of {}", round.today.strftime("%A, %Y-%m-%d")))];
    for (standing, title) in
        [(Standing::Overdue, "Overdue"), (Standing::Due, "Due"), (Standing::Soon, "Due within a week"), (Standing::Later, "Due later")]
    {
        let rows: Vec<&RoundRow> = round.points.iter().filter(|row| row.standing == standing).collect();
        if rows.is_empty() {
            continue;
        }
        if standing == Standing::Later && !all {
            let first = rows[0].due_on.map_or_else(String::new, |day| format!(", the first on {day}"));
            parts.push(dim(&format!("  {} later{first}; --all lists them.", several(rows.len(), "point"))));
            continue;
        }
        let mut table = table(&["point", "fluid", "how much", "due", "last done"]);
        for row in &rows {
            let place = format!("{}/{}", row.machine, row.point);
            let last = row.last_done.map_or_else(String::new, |day| day.to_string());
            table.add_row([place, row.name.clone(), amount(row.dose, units), due(row), last]);
        }
        parts.push(format!("{}\n{}", heading(&format!("{title} ({})", rows.len())), lines(&mut table)));
    }
    if round.points.iter().all(|row| row.standing > Standing::Due) {
        parts.insert(1, "Nothing is due.".to_owned());
    }
    let mut missing: Vec<&str> = Vec::new();
    for row in round.points.iter().filter(|row| row.standing <= Standing::Soon && !row.in_cupboard) {
        if !missing.contains(&row.name.as_str()) {
            missing.push(&row.name);
        }
    }
    if !missing.is_empty() {
        parts.push(paragraph(&format!("Not in the cupboard: {}.", missing.join("; ")), "  ", "    "));
    }
    if !round.without_fluid.is_empty() {
        parts.push(paragraph(&format!("No fluid known for: {}.", round.without_fluid.join("; ")), "  ", "    "));
    }
    parts.join("\n\n")
}

/// When a point is due, as one says it.
fn due(row: &RoundRow) -> String {
    let Some(due) = row.due_on else { return "never".to_owned() };
    if row.last_done.is_none() {
        return "now, never done".to_owned();
    }
    let days = row.overdue_days.and_then(|days| usize::try_from(days).ok()).map(|days| format!("{} ago", several(days, "day")));
    let hours = row.overdue_hours.map(|hours| format!("{hours} h over"));
    let over: Vec<String> = days.into_iter().chain(hours).collect();
    match row.standing {
        Standing::Overdue => over.join(", "),
        Standing::Due => "today".to_owned(),
        Standing::Soon | Standing::Later => due.to_string(),
    }
}
