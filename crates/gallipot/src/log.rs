//! `log`: what was done, as it is written down, listed and taken back.

mod find;
mod list;

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args as Group, Subcommand};
use jiff::ZonedDateTime;
use jiff::civil::Date;
use keep::{Kept, Served, hours};
use planner::PlanError;
use store::{EntryId, What, Written};
use units::{Amount, System, Time};

use crate::input::{Failure, ShopFile};
use crate::kept::{day, open};
use find::{machine, point, pot};

pub use list::LogReport;

/// `log`
#[derive(Debug, Group)]
pub struct Wanted {
    /// The shop as Gallipot keeps it
    pub shop: PathBuf,
    /// How many entries to list, the newest first
    #[arg(long, value_name = "NUMBER", default_value_t = 20, value_parser = clap::value_parser!(u32).range(1..=100_000))]
    pub count: u32,
    /// List as JSON for programs
    #[arg(long)]
    pub json: bool,
    /// What to write; the log is listed where nothing is said
    #[command(subcommand)]
    pub what: Option<Doing>,
}

/// What is written.
#[derive(Debug, Subcommand)]
pub enum Doing {
    /// A point was served
    Applied(AtPoint),
    /// A bath or a cup was filled up; the point is due when it was due before
    ToppedUp(AtPoint),
    /// A machine's hour meter was read
    Meter(AtMachine),
    /// A pot was opened
    Opened(AtPot),
    /// More of what is in a pot was bought; --amount says how much came in
    Bought(AtPot),
    /// Somebody looked what is left in a pot; --amount says how much
    Counted(AtPot),
    /// Something of a pot was got rid of; all of it without --amount
    Discarded(AtPot),
    /// Some of a pot was filled into another of the same fluid, such as an oil can
    Decanted(Between),
    /// Take an entry back, by another
    Undo {
        /// The number of the entry
        entry: i64,
        #[command(flatten)]
        said: Said,
    },
}

/// Something done at a point.
#[derive(Debug, Group)]
pub struct AtPoint {
    /// The point, as MACHINE/POINT, or any part that names only one
    #[arg(long)]
    pub point: String,
    /// The machine, where the point's words alone do not say which
    #[arg(long)]
    pub machine: Option<String>,
    /// How much, measured; where nothing is said the chart's dose is supposed
    #[arg(long, value_parser = amount)]
    pub amount: Option<Amount>,
    /// The pot it came from: its number in `cupboard`, its name or its fluid; the only one of the chart's fluid where nothing is said
    #[arg(long)]
    pub pot: Option<String>,
    /// What the machine's hour meter shows, such as "120 h"
    #[arg(long, value_parser = units::parse::<Time>)]
    pub hours: Option<Time>,
    #[command(flatten)]
    pub said: Said,
}

/// A reading.
#[derive(Debug, Group)]
pub struct AtMachine {
    /// The machine
    #[arg(long)]
    pub machine: String,
    /// What its hour meter shows, such as "120 h"
    #[arg(long, value_parser = units::parse::<Time>)]
    pub hours: Time,
    /// The meter is a new one, and may show less than the one before
    #[arg(long)]
    pub new_meter: bool,
    #[command(flatten)]
    pub said: Said,
}

/// Something done with a pot.
#[derive(Debug, Group)]
pub struct AtPot {
    /// The pot: its number in `cupboard`, its name or its fluid
    #[arg(long)]
    pub pot: String,
    /// How much, such as "250 mL"
    #[arg(long, value_parser = amount)]
    pub amount: Option<Amount>,
    #[command(flatten)]
    pub said: Said,
}

/// Something filled from one pot into another.
#[derive(Debug, Group)]
pub struct Between {
    /// The pot it came from: its number in `cupboard`, its name or its fluid
    #[arg(long)]
    pub from: String,
    /// The pot it went into
    #[arg(long)]
    pub into: String,
    /// How much, such as "250 mL"
    #[arg(long, value_parser = amount)]
    pub amount: Amount,
    #[command(flatten)]
    pub said: Said,
}

/// What can be said of every entry.
#[derive(Debug, Group)]
pub struct Said {
    /// The day it was done; today where none is given
    #[arg(long, value_name = "DAY", value_parser = day)]
    pub day: Option<Date>,
    /// Who did it
    #[arg(long)]
    pub who: Option<String>,
    /// Anything to remember
    #[arg(long)]
    pub note: Option<String>,
}

/// Runs the command.
pub fn run(wanted: &Wanted) -> Result<ExitCode, Failure> {
    let Some(doing) = &wanted.what else { return list::run(wanted) };
    if wanted.json {
        return Err(Failure::Said("--json is for listing the log; leave it out where something is written".to_owned()));
    }
    let (store, now) = open(&wanted.shop)?;
    let mut kept = Kept::of(store)?;
    let written = write(&mut kept, doing, &now)?;
    let row = keep::row(&kept.store, written.logged(), System::Metric)?;
    let place = row.place.as_ref().map_or_else(String::new, |place| format!(", {place}"));
    let amount = row.how_much().map_or_else(String::new, |amount| format!(", {amount}"));
    let already = if matches!(written, Written::Already(_)) { "There already as entry" } else { "Entry" };
    anstream::println!("{already} {}: {}{place}{amount}, {}.", row.id, row.what, row.day);
    if let Some(trouble) = kept.store.backup_trouble() {
        anstream::eprintln!("gallipot: the entry is written, but the daily backup failed: {trouble}");
    }
    Ok(ExitCode::SUCCESS)
}

fn write(kept: &mut Kept, doing: &Doing, now: &ZonedDateTime) -> Result<Written, Failure> {
    let (what, said) = match doing {
        Doing::Applied(done) => return served(kept, done, now, false),
        Doing::ToppedUp(done) => return served(kept, done, now, true),
        Doing::Meter(read) => (meter(kept, read)?, &read.said),
        Doing::Opened(done) => (What::Opened { pot: pot(kept, &done.pot)? }, &done.said),
        Doing::Bought(done) => (What::Bought { pot: pot(kept, &done.pot)?, amount: done.amount }, &done.said),
        Doing::Discarded(done) => (What::Discarded { pot: pot(kept, &done.pot)?, amount: done.amount }, &done.said),
        Doing::Counted(done) => {
            let say = || Failure::Said("say with --amount what is left in it, such as --amount \"250 mL\"".to_owned());
            (What::Counted { pot: pot(kept, &done.pot)?, left: done.amount.ok_or_else(say)? }, &done.said)
        }
        Doing::Decanted(done) => {
            (What::Decanted { from: pot(kept, &done.from)?, into: pot(kept, &done.into)?, amount: done.amount }, &done.said)
        }
        Doing::Undo { entry, said } => (What::Undone { entry: EntryId(*entry) }, said),
    };
    Ok(kept.write(what, &said.as_kept(), now)?)
}

/// A point was served, or filled up between.
fn served(kept: &mut Kept, done: &AtPoint, now: &ZonedDateTime, topped_up: bool) -> Result<Written, Failure> {
    let (machine, point) = point(kept, &done.point, done.machine.as_deref())?;
    let pot = done.pot.as_ref().map(|words| pot(kept, words)).transpose()?;
    let report = kept.report().map_err(|error| match error {
        PlanError::Shop(found) => {
            let (path, bytes) = (kept.store.path().display().to_string(), kept.described.text.clone().into_bytes());
            Failure::File(ShopFile { path, bytes, kept: true, largest: store::LARGEST_BYTES }, found)
        }
        error => Failure::Said(error.to_string()),
    })?;
    let served = Served { machine, point, topped_up, amount: done.amount, pot, due: None, hours: done.hours, said: done.said.as_kept() };
    Ok(kept.serve_point(&report, &served, now)?)
}

/// A reading, unless the meter went back.
fn meter(kept: &Kept, read: &AtMachine) -> Result<What, Failure> {
    let (named, machine) = machine(kept, &read.machine)?;
    let last = kept.store.state()?.meters.get(&machine).copied();
    match last.filter(|last| last.hours > read.hours && !read.new_meter) {
        Some(last) => Err(Failure::Said(format!(
            "the meter of {named} showed {} h on {} and now {} h; say --new-meter if it was changed, or undo that entry",
            hours(last.hours),
            last.when.day(),
            hours(read.hours)
        ))),
        None => Ok(What::MeterRead { machine, hours: read.hours }),
    }
}

impl Said {
    fn as_kept(&self) -> keep::Said {
        keep::Said { day: self.day, who: self.who.clone(), note: self.note.clone(), key: None }
    }
}

fn amount(text: &str) -> Result<Amount, String> {
    Amount::parse(text).map_err(|error| error.to_string())
}
