//! `log`: what was done, as it is written down, listed and taken back.

mod find;
mod list;

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args as Group, Subcommand};
use jiff::ZonedDateTime;
use jiff::civil::Date;
use planner::report::Report;
use planner::round::{RoundRow, round};
use store::{Entry, EntryId, Moment, Page, SectionId, Store, What, Written};
use units::{Amount, Time};

use crate::input::{Failure, ShopFile};
use crate::keep::{Kept, day, hours, open, planned};
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
    /// How much; the chart's dose where nothing is said
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
    refuse_before_last(&store, &now)?;
    let mut kept = Kept::of(store)?;
    let written = match doing {
        Doing::Applied(done) => served(&mut kept, done, &now, true)?,
        Doing::ToppedUp(done) => served(&mut kept, done, &now, false)?,
        Doing::Meter(read) => {
            let (named, machine) = machine(&kept, &read.machine)?;
            let last = kept.store.state()?.meters.get(&machine).copied();
            if let Some(last) = last.filter(|last| last.hours > read.hours && !read.new_meter) {
                return Err(Failure::Said(format!(
                    "the meter of {named} showed {} h on {} and now {} h; say --new-meter if it was changed, or undo that entry",
                    hours(last.hours),
                    last.when.day(),
                    hours(read.hours)
                )));
            }
            write(&mut kept, &read.said, &now, What::MeterRead { machine, hours: read.hours }, |_| {})?
        }
        Doing::Opened(done) => of_pot(&mut kept, done, &now, |pot, _| Ok(What::Opened { pot }))?,
        Doing::Bought(done) => of_pot(&mut kept, done, &now, |pot, amount| Ok(What::Bought { pot, amount }))?,
        Doing::Discarded(done) => of_pot(&mut kept, done, &now, |pot, amount| Ok(What::Discarded { pot, amount }))?,
        Doing::Counted(done) => of_pot(&mut kept, done, &now, |pot, amount| {
            let left =
                amount.ok_or_else(|| Failure::Said("say with --amount what is left in it, such as --amount \"250 mL\"".to_owned()))?;
            Ok(What::Counted { pot, left })
        })?,
        Doing::Undo { entry, said } => write(&mut kept, said, &now, What::Undone { entry: EntryId(*entry) }, |_| {})?,
    };
    let row = list::row(&kept.store, written.logged())?;
    let place = row.place.map_or_else(String::new, |place| format!(", {place}"));
    let amount = row.amount.map_or_else(String::new, |amount| format!(", {amount}"));
    let already = if matches!(written, Written::Already(_)) { "There already as entry" } else { "Entry" };
    anstream::println!("{already} {}: {}{place}{amount}, {}.", row.id, row.what, row.day);
    if let Some(trouble) = kept.store.backup_trouble() {
        anstream::eprintln!("gallipot: the entry is written, but the daily backup failed: {trouble}");
    }
    Ok(ExitCode::SUCCESS)
}

/// Refuses to write before the last entry: a clock that went back would make what was done last look as if it had been done before.
fn refuse_before_last(store: &Store, now: &ZonedDateTime) -> Result<(), Failure> {
    let last = store.log(Page { count: 1, ..Page::default() })?;
    match last.first().filter(|last| last.entry.when > Moment::from(now)) {
        Some(last) => Err(Failure::Said(format!(
            "it would be {}, and the log has an entry of {}; set this machine's clock right first",
            now.date(),
            last.entry.when.day()
        ))),
        None => Ok(()),
    }
}

/// A point was served, or filled up between.
fn served(kept: &mut Kept, done: &AtPoint, now: &ZonedDateTime, whole: bool) -> Result<Written, Failure> {
    let (machine, name) = point(kept, &done.point)?;
    let today = done.said.day.unwrap_or_else(|| now.date());
    let row = charted(kept, &machine, &name, now.date())?;
    let from = match &done.pot {
        Some(words) => Some(pot(kept, words)?),
        None => row.as_ref().and_then(|row| only_pot(kept, &row.fluid)),
    };
    let fluid = from.as_ref().map(|(_, fluid)| fluid.clone()).or_else(|| row.as_ref().map(|row| row.fluid.clone()));
    let amount =
        done.amount.or_else(|| row.as_ref().filter(|row| whole && Some(&row.fluid) == fluid.as_ref()).map(|row| row.dose.amount()));
    let (_, machine) = self::machine(kept, &machine)?;
    let point = kept.store.point(machine, &name)?;
    let pot = from.map(|(pot, _)| pot);
    let what = if whole { What::Applied { point, pot, amount } } else { What::ToppedUp { point, pot, amount } };
    // Of two people who see the same point due and serve it, one is written.
    let due = row.and_then(|row| row.due_on).filter(|due| whole && *due <= today);
    write(kept, &done.said, now, what, |entry| {
        entry.fluid = fluid;
        entry.due = due;
        entry.hours = done.hours;
    })
}

/// What the chart says of a point, and how it stands.
fn charted(kept: &Kept, machine: &str, point: &str, today: Date) -> Result<Option<RoundRow>, Failure> {
    let shop = &kept.described.shop;
    let file = ShopFile { path: kept.store.path().display().to_string(), bytes: kept.described.text.clone().into_bytes(), kept: true };
    let report: Report = planned(file, shop)?.report(shop.units);
    let answer = round(&report, shop, &kept.facts(today)?)?;
    Ok(answer.points.into_iter().find(|row| row.machine == machine && row.point == point))
}

/// The pot of a fluid, where there is one only that is not empty.
fn only_pot(kept: &Kept, fluid: &str) -> Option<(SectionId, String)> {
    let mut pots = kept.described.shop.pots.iter().filter(|pot| pot.fluid == fluid && !pot.is_empty());
    let only = pots.next().filter(|_| pots.next().is_none())?;
    Some((kept.described.section(&only.at)?, only.fluid.clone()))
}

fn of_pot(
    kept: &mut Kept,
    done: &AtPot,
    now: &ZonedDateTime,
    what: impl FnOnce(SectionId, Option<Amount>) -> Result<What, Failure>,
) -> Result<Written, Failure> {
    let (pot, fluid) = pot(kept, &done.pot)?;
    write(kept, &done.said, now, what(pot, done.amount)?, |entry| entry.fluid = Some(fluid))
}

fn write(kept: &mut Kept, said: &Said, now: &ZonedDateTime, what: What, more: impl FnOnce(&mut Entry)) -> Result<Written, Failure> {
    let mut entry = Entry::new(moment(said.day, now)?, what);
    more(&mut entry);
    entry.who.clone_from(&said.who);
    entry.note.clone_from(&said.note);
    Ok(kept.store.write(&entry)?)
}

/// When it was done: now, or at noon of a day that is past.
fn moment(day: Option<Date>, now: &ZonedDateTime) -> Result<Moment, Failure> {
    let today = now.date();
    match day.filter(|day| *day != today) {
        None => Ok(Moment::from(now)),
        Some(day) if day > today => Err(Failure::Said(format!("{day} is still to come; today is {today}"))),
        Some(day) => {
            let noon = day.at(12, 0, 0, 0).to_zoned_datetime(now.time_zone().clone());
            noon.map(|noon| Moment::from(&noon)).map_err(|error| Failure::Said(error.to_string()))
        }
    }
}

fn amount(text: &str) -> Result<Amount, String> {
    Amount::parse(text).map_err(|error| error.to_string())
}
