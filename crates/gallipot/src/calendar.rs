//! `calendar`: the round as a file that calendar programs read.

use std::path::PathBuf;
use std::process::ExitCode;

use calendar::{Calendar, of_round};
use clap::Args as Group;
use jiff::ZonedDateTime;
use jiff::civil::Time;
use jiff::tz::TimeZone;

use crate::args::Common;
use crate::input::{Failure, read};
use crate::kept::{beside, facts, planned};

/// `calendar`
#[derive(Debug, Group)]
pub struct Wanted {
    /// The shop file, in TOML or as Gallipot keeps it; `-` reads TOML from standard input
    pub shop: PathBuf,
    /// The hour of the day; whole days where none is given
    #[arg(long, value_name = "HOUR:MINUTE", value_parser = hour)]
    pub at: Option<Time>,
    /// Where the shop stands, such as Europe/London; where this machine stands where none is given
    #[arg(long, value_name = "ZONE", value_parser = zone)]
    pub zone: Option<TimeZone>,
    /// An alarm so many minutes before
    #[arg(long, value_name = "MINUTES", value_parser = clap::value_parser!(u32).range(..=40_320))]
    pub alarm: Option<u32>,
    /// With what is done on every day a machine runs
    #[arg(long)]
    pub daily: bool,
    /// File to write; standard output where none is given
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<PathBuf>,
}

/// Runs the command.
pub fn run(wanted: &Wanted) -> Result<ExitCode, Failure> {
    let (file, shop) = read(&Common { shop: wanted.shop.clone(), json: false, units: None })?;
    let zone = wanted.zone.clone().unwrap_or_else(TimeZone::system);
    let now = ZonedDateTime::now().with_time_zone(zone.clone());
    let kept = beside(&file)?;
    // A shop file has no number of its own; its name tells it from the others in one calendar program.
    let id = kept.as_ref().map_or_else(|| Ok(shop.name.clone()), |kept| kept.store.id())?;
    let facts = facts(kept.as_ref(), &file, now.date(), "the calendar says of everything that it is due today")?;
    let calendar = Calendar {
        zone,
        hour: wanted.at,
        alarm_minutes: wanted.alarm,
        daily: wanted.daily,
        name: shop.name.clone(),
        id,
        now: now.timestamp(),
    };
    let text = of_round(&planned(file, &shop)?.report(shop.units), &shop, &facts, &calendar)?;
    match &wanted.output {
        Some(path) => std::fs::write(path, text).map_err(|error| Failure::Said(format!("cannot write {}: {error}", path.display())))?,
        None => anstream::print!("{text}"),
    }
    Ok(ExitCode::SUCCESS)
}

fn hour(text: &str) -> Result<Time, String> {
    Time::strptime("%H:%M", text).map_err(|_| "write the hour as hour:minute, such as 18:00".to_owned())
}

fn zone(text: &str) -> Result<TimeZone, String> {
    TimeZone::get(text).map_err(|_| "give a time zone as area/place, such as Europe/London".to_owned())
}
