//! `cupboard`: what is left, until when, and what to buy again; as a table for spreadsheets, and back.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::Args as Group;
use jiff::ZonedDateTime;
use jiff::civil::Date;
use planner::needs::kinds;
use planner::round::{Basis, Cupboard, End, Expiry, PotRow, Uses, cupboard};
use reference::Reference;
use store::{Moment, Store};

use crate::args::Common;
use crate::input::{Failure, read};
use crate::kept::{beside, day, open, planned};
use crate::plan::several;
use crate::shell::print_json;
use crate::style::{bold, dim, heading, lines, paragraph, table};

/// `cupboard`
#[derive(Debug, Group)]
pub struct Wanted {
    #[command(flatten)]
    pub common: Common,
    /// Print the pots as CSV for a spreadsheet
    #[arg(long, conflicts_with_all = ["json", "import"])]
    pub csv: bool,
    /// Take in pots from a CSV file, beside those that are there
    #[arg(long, value_name = "FILE", conflicts_with = "json")]
    pub import: Option<PathBuf>,
    /// With --import: the file is the whole cupboard, and pots that are not in it are taken out
    #[arg(long, requires = "import")]
    pub replace: bool,
    /// The day to look from; today where none is given
    #[arg(long, value_name = "DAY", value_parser = day)]
    pub day: Option<Date>,
}

/// Runs the command.
pub fn run(wanted: &Wanted) -> Result<ExitCode, Failure> {
    if let Some(file) = &wanted.import {
        return import(&wanted.common.shop, file, wanted.replace);
    }
    if wanted.csv {
        anstream::print!("{}", Store::open_read_only(&wanted.common.shop)?.export_cupboard()?);
        return Ok(ExitCode::SUCCESS);
    }
    let (file, shop) = read(&wanted.common)?;
    let today = wanted.day.unwrap_or_else(|| ZonedDateTime::now().date());
    let uses = match beside(&file)? {
        Some(kept) => kept.uses()?,
        None => Uses::new(),
    };
    let plan = planned(file, &shop)?;
    let answer = cupboard(&plan, today, &uses, shop.units)?;
    if wanted.common.json {
        return print_json(&answer);
    }
    anstream::println!("{}", text(&answer, &shop.name));
    Ok(ExitCode::SUCCESS)
}

/// Takes in a table of pots, all of it or nothing.
fn import(shop: &Path, file: &Path, replace: bool) -> Result<ExitCode, Failure> {
    let bytes = std::fs::read(file).map_err(|error| Failure::Said(format!("cannot read {}: {error}", file.display())))?;
    let (mut store, now) = open(shop)?;
    let how = if replace { store::Cupboard::Replace } else { store::Cupboard::Add };
    let taken = store.import_cupboard(&bytes, how, Reference::embedded(), kinds(), Moment::from(&now))?;
    let pots = taken.pots;
    anstream::println!("{}: {} kept, {} added, {} taken out.", shop.display(), several(pots.kept, "pot"), pots.added, pots.gone);
    if !taken.missing.is_empty() {
        anstream::println!("{}", paragraph(&format!("Columns the file does not have: {}.", taken.missing.join(", ")), "", ""));
    }
    Ok(ExitCode::SUCCESS)
}

fn text(cupboard: &Cupboard, name: &str) -> String {
    let mut parts = vec![bold(&format!("{name}: the cupboard on {}", cupboard.today))];
    if cupboard.pots.is_empty() {
        parts.push("No pots. Add `[[pot]]` sections to the shop file, or take in a table with --import FILE.csv.".to_owned());
        return parts.join("\n\n");
    }
    let mut pots = table(&["", "pot", "left", "used up", "good until", "next"]);
    for row in &cupboard.pots {
        let known = |day: Option<Date>| day.map_or_else(String::new, |day| day.to_string());
        let left = row.left.clone().unwrap_or_else(|| "not counted".to_owned());
        pots.add_row([
            row.pot.to_string(),
            row.name.clone(),
            left,
            used_up(row),
            known(row.expires_on) + why(row),
            next(row.end).to_owned(),
        ]);
    }
    parts.push(format!("{}\n{}", heading("What is there"), lines(&mut pots)));
    if cupboard.buy.is_empty() {
        parts.push("Nothing has to be bought again yet.".to_owned());
    } else {
        let mut buy = table(&["fluid", "left", "order at", "lasts until", "pack"]);
        for row in &cupboard.buy {
            let price = row.price.map_or_else(String::new, |price| format!(", {price:.2} {}", row.currency));
            let pack = row.pack.as_ref().map_or_else(String::new, |pack| format!("{pack}{price}"));
            let until = row.lasts_until.map_or_else(String::new, |day| day.to_string());
            buy.add_row([row.name.clone(), row.left.clone(), row.order_at.clone(), until, pack]);
        }
        parts.push(format!("{}\n{}", heading("Buy again"), lines(&mut buy)));
        parts.push(dim(&paragraph("Prices are indicative. What was never bought stands on the ladder: `gallipot plan`.", "  ", "  ")));
    }
    parts.join("\n\n")
}

fn used_up(row: &PotRow) -> String {
    let by = match row.by {
        Some(Basis::Log) => " (by the log)",
        Some(Basis::Plan) => " (by the plan)",
        None => "",
    };
    row.empty_on.map_or_else(String::new, |day| format!("{day}{by}"))
}

fn why(row: &PotRow) -> &'static str {
    match row.expires_by {
        Some(Expiry::Printed) => " (printed)",
        Some(Expiry::Opened) => " (open)",
        Some(Expiry::OnceOpened) => " (once open)",
        Some(Expiry::Bought) => " (since bought)",
        None => "",
    }
}

fn next(end: End) -> &'static str {
    match end {
        End::Empty => "empty",
        End::Expired => "too old",
        End::UsedUp => "used up",
        End::Expires => "goes off",
        End::Unknown => "cannot be told",
    }
}
