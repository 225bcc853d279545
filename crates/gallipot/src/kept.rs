//! A shop in the file that Gallipot keeps: its backups, and the way from a shop file and back.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::Args as Group;
use jiff::ZonedDateTime;
use jiff::civil::Date;
use keep::{KeepError, Kept};
use planner::needs::kinds;
use planner::round::{Facts, RoundError};
use reference::Reference;
use schemars::JsonSchema;
use serde::Serialize;
use shop::Shop;
use store::{BadRow, Moment, Store, StoreError};

use crate::input::{Failure, ShopFile};
use crate::shell::print_json;

/// `backup`
#[derive(Debug, Group)]
pub struct Backup {
    /// The shop as Gallipot keeps it
    pub shop: PathBuf,
    /// Make none; list those that are there, newest first
    #[arg(long)]
    pub list: bool,
    /// Print JSON for programs
    #[arg(long)]
    pub json: bool,
}

/// `restore`
#[derive(Debug, Group)]
pub struct Restore {
    /// The shop as Gallipot keeps it
    pub shop: PathBuf,
    /// The backup to put in its place
    pub backup: PathBuf,
    /// Print JSON for programs
    #[arg(long)]
    pub json: bool,
}

/// `import`
#[derive(Debug, Group)]
pub struct Import {
    /// The shop file, in TOML
    pub file: PathBuf,
    /// The shop as Gallipot keeps it; made where there is none
    pub shop: PathBuf,
    /// Print JSON for programs
    #[arg(long)]
    pub json: bool,
}

/// `export`
#[derive(Debug, Group)]
pub struct Export {
    /// The shop as Gallipot keeps it
    pub shop: PathBuf,
}

/// What `backup --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub struct BackupReport {
    /// The shop.
    pub shop: String,
    /// The backup just made; with `--list`, all that are there, newest first.
    pub backups: Vec<String>,
}

/// What `restore --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub struct RestoreReport {
    /// The shop.
    pub shop: String,
    /// The backup that stands in its place now.
    pub backup: String,
}

/// What `import --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ImportReport {
    /// The shop.
    pub shop: String,
    /// Sections that were there before and keep their history.
    pub kept: usize,
    /// Sections that are new.
    pub added: usize,
    /// Sections that are not in the file and were taken out.
    pub gone: usize,
}

/// Makes a backup beside the shop, or lists them.
pub fn backup(wanted: &Backup) -> Result<ExitCode, Failure> {
    let (store, now) = open(&wanted.shop)?;
    let paths = if wanted.list {
        store.backups()?.into_iter().map(|backup| backup.path).collect()
    } else {
        vec![store.backup(Moment::from(&now))?]
    };
    let report = BackupReport { shop: shown(&wanted.shop), backups: paths.iter().map(|path| shown(path)).collect() };
    if wanted.json {
        return print_json(&report);
    }
    for path in report.backups {
        anstream::println!("{path}");
    }
    Ok(ExitCode::SUCCESS)
}

/// Puts a backup in the place of the shop, of which a backup is made first.
pub fn restore(wanted: &Restore) -> Result<ExitCode, Failure> {
    let (mut store, now) = open(&wanted.shop)?;
    store.restore(&wanted.backup, Moment::from(&now))?;
    let report = RestoreReport { shop: shown(&wanted.shop), backup: shown(&wanted.backup) };
    if wanted.json {
        return print_json(&report);
    }
    anstream::println!("{} stands as it was in {}.", report.shop, report.backup);
    Ok(ExitCode::SUCCESS)
}

/// Makes a shop file the description of a shop.
pub fn import(wanted: &Import) -> Result<ExitCode, Failure> {
    // What was exported can come back, however long the cupboard made it.
    let file = ShopFile { largest: store::LARGEST_BYTES, ..ShopFile::open(&wanted.file)? };
    // Read before the shop is opened, so that no empty one is made for a file that is not sound.
    if let Err(found) = file.shop() {
        return Err(Failure::File(file, found));
    }
    let now = Moment::from(&ZonedDateTime::now());
    let mut store = if wanted.shop.exists() { Store::open(&wanted.shop, now)? } else { Store::create(&wanted.shop)? };
    let done = store.import(&file.bytes, Reference::embedded(), kinds(), now)?;
    let report = ImportReport { shop: shown(&wanted.shop), kept: done.kept, added: done.added, gone: done.gone };
    if wanted.json {
        return print_json(&report);
    }
    anstream::println!("{}: {} sections kept, {} added, {} taken out.", report.shop, report.kept, report.added, report.gone);
    Ok(ExitCode::SUCCESS)
}

/// Prints the shop file of a shop, with its pots as they stand now.
pub fn export(wanted: &Export) -> Result<ExitCode, Failure> {
    anstream::print!("{}", Store::open_read_only(&wanted.shop)?.export()?);
    Ok(ExitCode::SUCCESS)
}

/// Opens a shop for writing; with the time.
pub fn open(path: &Path) -> Result<(Store, ZonedDateTime), Failure> {
    let now = ZonedDateTime::now();
    Ok((Store::open(path, Moment::from(&now))?, now))
}

/// The shop of a file that was read, where Gallipot keeps it.
pub fn beside(file: &ShopFile) -> Result<Option<Kept>, Failure> {
    if file.kept { Ok(Some(Kept::open_read_only(Path::new(&file.path))?)) } else { Ok(None) }
}

/// What the log says was done; where there is no log nothing was, and whoever reads the answer is told what that makes of it.
pub fn facts(kept: Option<&Kept>, file: &ShopFile, today: Date, so: &str) -> Result<Facts, Failure> {
    let Some(kept) = kept else {
        let path = &file.path;
        anstream::eprintln!("gallipot: {path} keeps no log, so {so}. `gallipot import {path} NAME.gallipot` makes a shop that does.");
        return Ok(Facts { today, ..Facts::default() });
    };
    Ok(kept.facts(today)?)
}

/// A day of the command line.
pub fn day(text: &str) -> Result<Date, String> {
    text.parse().map_err(|_| "write the day as year-month-day, such as 2026-06-01".to_owned())
}

fn shown(path: &Path) -> String {
    path.display().to_string()
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Self {
        Self::Said(match &error {
            StoreError::BadRows(rows) => {
                let more = rows.len().saturating_sub(BadRow::SHOWN);
                let more = if more > 0 { format!("\n  … and {more} more") } else { String::new() };
                format!("{error}:{}{more}", rows.iter().take(BadRow::SHOWN).map(|row| format!("\n  {row}")).collect::<String>())
            }
            StoreError::NotOurs { path } => {
                let (file, kept) = (path.display(), path.with_extension("gallipot"));
                format!("{error}. `gallipot import {file} {}` makes one of a shop file.", kept.display())
            }
            _ => error.to_string(),
        })
    }
}

impl From<KeepError> for Failure {
    fn from(error: KeepError) -> Self {
        match error {
            KeepError::Store(error) => error.into(),
            error => Self::Said(error.to_string()),
        }
    }
}

impl From<RoundError> for Failure {
    fn from(error: RoundError) -> Self {
        Self::Said(error.to_string())
    }
}

/// The plan that rounds and forecasts start from.
pub fn planned<'a>(file: ShopFile, shop: &'a Shop) -> Result<planner::Plan<'a>, Failure> {
    planner::plan(shop, Reference::embedded(), &planner::Wishes::default()).map_err(|error| match error {
        planner::PlanError::Shop(found) => Failure::File(file, found),
        error => Failure::Said(error.to_string()),
    })
}
