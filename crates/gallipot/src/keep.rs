//! A shop in the file that Gallipot keeps: what its log says, its backups, and the way from a shop file and back.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::Args as Group;
use jiff::ZonedDateTime;
use jiff::civil::Date;
use planner::needs::kinds;
use planner::round::{Done, Facts, Reading, Uses};
use reference::Reference;
use shop::{Machine, Point, Shop};
use store::{BadRow, Described, Moment, SectionId, Store, StoreError};
use units::{Quantity, Time};

use crate::input::{Failure, ShopFile};

const HOUR_S: f64 = 3600.0;

/// `backup`
#[derive(Debug, Group)]
pub struct Backup {
    /// The shop as Gallipot keeps it
    pub shop: PathBuf,
    /// Make none; list those that are there, newest first
    #[arg(long)]
    pub list: bool,
}

/// `restore`
#[derive(Debug, Group)]
pub struct Restore {
    /// The shop as Gallipot keeps it
    pub shop: PathBuf,
    /// The backup to put in its place
    pub backup: PathBuf,
}

/// `import`
#[derive(Debug, Group)]
pub struct Import {
    /// The shop file, in TOML
    pub file: PathBuf,
    /// The shop as Gallipot keeps it; made where there is none
    pub shop: PathBuf,
}

/// `export`
#[derive(Debug, Group)]
pub struct Export {
    /// The shop as Gallipot keeps it
    pub shop: PathBuf,
}

/// Makes a backup beside the shop, or lists them.
pub fn backup(wanted: &Backup) -> Result<ExitCode, Failure> {
    let (store, now) = open(&wanted.shop)?;
    let paths = if wanted.list {
        store.backups()?.into_iter().map(|backup| backup.path).collect()
    } else {
        vec![store.backup(Moment::from(&now))?]
    };
    for path in paths {
        anstream::println!("{}", path.display());
    }
    Ok(ExitCode::SUCCESS)
}

/// Puts a backup in the place of the shop, of which a backup is made first.
pub fn restore(wanted: &Restore) -> Result<ExitCode, Failure> {
    let (mut store, now) = open(&wanted.shop)?;
    store.restore(&wanted.backup, Moment::from(&now))?;
    anstream::println!("{} stands as it was in {}.", wanted.shop.display(), wanted.backup.display());
    Ok(ExitCode::SUCCESS)
}

/// Makes a shop file the description of a shop.
pub fn import(wanted: &Import) -> Result<ExitCode, Failure> {
    let file = ShopFile::open(&wanted.file)?;
    // Read before the shop is opened, so that no empty one is made for a file that is not sound.
    if let Err(found) = file.shop() {
        return Err(Failure::File(file, found));
    }
    let now = Moment::from(&ZonedDateTime::now());
    let mut store = if wanted.shop.exists() { Store::open(&wanted.shop, now)? } else { Store::create(&wanted.shop)? };
    let done = store.import(&file.bytes, Reference::embedded(), kinds(), now)?;
    anstream::println!("{}: {} sections kept, {} added, {} taken out.", wanted.shop.display(), done.kept, done.added, done.gone);
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

/// A kept shop with the numbers of its sections.
pub struct Kept {
    /// The file.
    pub store: Store,
    /// What stands in it.
    pub described: Described,
}

impl Kept {
    /// The shop of an opened store.
    pub fn of(store: Store) -> Result<Self, Failure> {
        let described = store.shop(Reference::embedded(), kinds())?;
        Ok(Self { store, described })
    }

    /// The shop of a file that was read, where Gallipot keeps it.
    pub fn beside(file: &ShopFile) -> Result<Option<Self>, Failure> {
        if file.kept { Self::of(Store::open_read_only(Path::new(&file.path))?).map(Some) } else { Ok(None) }
    }

    /// The points, each with its machine and its number; a point nothing was logged of has none.
    pub fn points(&self) -> impl Iterator<Item = (&Machine, &Point, Option<SectionId>)> {
        let described = &self.described;
        described.shop.machines.iter().flat_map(move |machine| {
            let section = described.section(&machine.at);
            machine.points.iter().map(move |point| (machine, point, section.and_then(|machine| described.point(machine, &point.name))))
        })
    }

    /// What the log says was done and read.
    pub fn facts(&self, today: Date) -> Result<Facts, Failure> {
        let state = self.store.state()?;
        let mut facts = Facts { today, ..Facts::default() };
        for machine in &self.described.shop.machines {
            if let Some(meter) = self.described.section(&machine.at).and_then(|id| state.meters.get(&id)) {
                facts.meters.insert(machine.name.clone(), vec![Reading { day: meter.when.day(), hours: hours(meter.hours) }]);
            }
        }
        for (machine, point, id) in self.points() {
            if let Some(done) = id.and_then(|id| state.points.get(&id)).and_then(|state| state.applied.as_ref()) {
                let done = Done { day: done.when.day(), hours: done.hours.map(hours), who: done.who.clone() };
                facts.done.insert((machine.name.clone(), point.name.clone()), done);
            }
        }
        Ok(facts)
    }

    /// What the log says was taken of the fluids in the cupboard.
    pub fn uses(&self) -> Result<Uses, Failure> {
        let mut uses = Uses::new();
        for pot in &self.described.shop.pots {
            if !uses.contains_key(&pot.fluid) {
                uses.insert(pot.fluid.clone(), self.store.uses(&pot.fluid, Date::ZERO, Date::MAX)?);
            }
        }
        Ok(uses)
    }
}

/// Running hours as a number.
pub fn hours(time: Time) -> f64 {
    time.base() / HOUR_S
}

/// A day of the command line.
pub fn day(text: &str) -> Result<Date, String> {
    text.parse().map_err(|_| "write the day as year-month-day, such as 2026-06-01".to_owned())
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Self {
        let row = |row: &BadRow| {
            let column = row.column.as_ref().map_or_else(String::new, |column| format!(", {column}"));
            format!("\n  line {}{column}: {}. {}", row.line, row.what, row.mend)
        };
        Self::Said(match &error {
            StoreError::BadRows(rows) => format!("{error}:{}", rows.iter().map(row).collect::<String>()),
            StoreError::NotOurs { path } => {
                let (file, kept) = (path.display(), path.with_extension("gallipot"));
                format!("{error}. `gallipot import {file} {}` makes one of a shop file.", kept.display())
            }
            _ => error.to_string(),
        })
    }
}

impl From<planner::round::RoundError> for Failure {
    fn from(error: planner::round::RoundError) -> Self {
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
