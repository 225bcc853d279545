//! Copies of the file beside it, made while it is in use, and the way back to one.

use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};

use jiff::civil::{Date, DateTime};
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp, ToSpan};
use rusqlite::backup::{Backup, StepResult};
use rusqlite::{Connection, OpenFlags};

use crate::file::{open, sound};
use crate::migrate::{STEPS, migrate};
use crate::{Moment, Store, StoreError};

/// A backup beside the shop.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct BackupFile {
    /// When it was made, in universal time, as its name says.
    pub at: DateTime,
    /// Where it is.
    pub path: PathBuf,
}

/// The newest backups are kept whatever day they are of, so that three imports in a row can all be taken back.
const NEWEST: usize = 3;
/// Of each of the last days that have backups, the newest is kept.
const DAILY: usize = 7;
/// Of each of the last weeks that have backups, the newest is kept.
const WEEKLY: usize = 4;

/// A copy takes seconds; one that nobody has written to for an hour is being made no more.
const STALE: SignedDuration = SignedDuration::from_hours(1);

/// A daily backup that failed is tried again after so long.
const AGAIN: SignedDuration = SignedDuration::from_hours(1);

const FORM: &str = "%Y%m%d-%H%M%S";

impl Store {
    /// Copies the shop beside itself, as `NAME.backup-YYYYMMDD-HHMMSS` with the ending of the file, in universal time; and lets go of
    /// backups older than the rotation keeps.
    ///
    /// # Errors
    /// When the copy cannot be written; then there is none.
    pub fn backup(&self, now: Moment) -> Result<PathBuf, StoreError> {
        let mut at = now.at();
        let mut path = self.named(at);
        while path.exists() {
            at += 1.second();
            path = self.named(at);
        }
        let partial = unfinished(&path);
        let copied = copy(&self.connection, &partial).and_then(|()| fs::rename(&partial, &path).map_err(StoreError::io("name", &path)));
        if let Err(error) = copied {
            // What is left of the copy is of no use; the error above matters more than one in clearing up.
            let _ = fs::remove_file(&partial);
            return Err(error);
        }
        let all = self.backups()?;
        self.clear_up(now);
        let days: Vec<DateTime> = all.iter().map(|backup| backup.at).collect();
        for (backup, keep) in all.iter().zip(kept(&days)) {
            if !keep && backup.path != path {
                remove(&backup.path)?;
            }
        }
        Ok(path)
    }

    /// The backups beside the shop, newest first.
    ///
    /// # Errors
    /// When the folder cannot be read.
    pub fn backups(&self) -> Result<Vec<BackupFile>, StoreError> {
        let folder = folder(&self.path);
        let mut all = Vec::new();
        for entry in fs::read_dir(folder).map_err(StoreError::io("read", folder))? {
            let path = entry.map_err(StoreError::io("read", folder))?.path();
            if let Some(at) = self.made_at(&path).filter(|_| path.is_file()) {
                all.push(BackupFile { at, path });
            }
        }
        all.sort();
        all.reverse();
        Ok(all)
    }

    /// Puts a backup in the place of the present, of which a backup is made first. The change is one transaction: whoever has the file
    /// open sees the one or the other.
    ///
    /// # Errors
    /// When the backup is not sound or not ours; then nothing is changed.
    pub fn restore(&mut self, from: &Path, now: Moment) -> Result<(), StoreError> {
        let candidate = open(from, OpenFlags::SQLITE_OPEN_READ_ONLY, STEPS)?;
        sound(&candidate, "integrity_check")?;
        // An older format is brought up to date in a copy, so that the present is touched only by what is known to be whole.
        let partial = unfinished(&self.path);
        let result = copy(&candidate, &partial).and_then(|()| {
            let mut fresh = open(&partial, OpenFlags::SQLITE_OPEN_READ_WRITE, STEPS)?;
            migrate(&mut fresh, STEPS)?;
            self.backup(now)?;
            pour(&fresh, &mut self.connection)
        });
        // The copy has served, or is of no use.
        let _ = fs::remove_file(&partial);
        result
    }

    /// Why the daily backup failed, if it did. The write it came before was done all the same.
    #[must_use]
    pub fn backup_trouble(&self) -> Option<&StoreError> {
        self.trouble.as_ref().map(|(_, error)| error)
    }

    /// Before the first write of a day: a backup, unless there is one of that day. Where it fails it is tried again, though not at every write.
    pub(crate) fn backup_daily(&mut self, now: Moment) {
        let today = universal(now.at()).date();
        let just_failed = self.trouble.as_ref().is_some_and(|(at, _)| now.at().duration_since(*at).abs() < AGAIN);
        if self.backed_up == Some(today) || just_failed {
            return;
        }
        let done = self.backups().and_then(|all| {
            let made = all.first().is_some_and(|backup| backup.at.date() >= today);
            if made { Ok(()) } else { self.backup(now).map(|_| ()) }
        });
        match done {
            Ok(()) => (self.backed_up, self.trouble) = (Some(today), None),
            Err(error) => self.trouble = Some((now.at(), error)),
        }
    }

    /// Removes copies that a crash left half-made, and their journals. What cannot be removed now is left to the next backup.
    fn clear_up(&self, now: Moment) {
        let Ok(entries) = fs::read_dir(folder(&self.path)) else { return };
        for path in entries.flatten().map(|entry| entry.path()).filter(|path| self.is_unfinished(path)) {
            let changed = fs::metadata(&path).ok().and_then(|found| Timestamp::try_from(found.modified().ok()?).ok());
            if changed.is_some_and(|changed| changed + STALE < now.at()) {
                let _ = fs::remove_file(&path);
            }
        }
    }

    /// Whether a file bears a name that [`unfinished`] gives to copies of this shop or of its backups.
    fn is_unfinished(&self, path: &Path) -> bool {
        let name = path.file_name().and_then(OsStr::to_str).unwrap_or_default();
        let Some((whole, mark)) = name.strip_suffix("-journal").unwrap_or(name).rsplit_once('.') else { return false };
        let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
        let whole = path.with_file_name(whole);
        let ours = whole.file_name() == self.path.file_name() || self.made_at(&whole).is_some();
        ours && mark.split_once('-').is_some_and(|(program, count)| digits(program) && digits(count))
    }

    fn named(&self, at: Timestamp) -> PathBuf {
        let stem = self.path.file_stem().unwrap_or_default().to_string_lossy();
        let name = format!("{stem}.backup-{}", universal(at).strftime(FORM));
        let name = self.path.extension().map_or_else(|| name.clone(), |ending| format!("{name}.{}", ending.to_string_lossy()));
        self.path.with_file_name(name)
    }

    fn made_at(&self, path: &Path) -> Option<DateTime> {
        let stem = self.path.file_stem()?.to_str()?;
        let (name, ending) = match self.path.extension() {
            Some(ending) => (path.file_stem()?.to_str()?, path.extension() == Some(ending)),
            None => (path.file_name()?.to_str()?, true),
        };
        let written = name.strip_prefix(stem)?.strip_prefix(".backup-")?;
        if ending { DateTime::strptime(FORM, written).ok() } else { None }
    }
}

fn universal(at: Timestamp) -> DateTime {
    TimeZone::UTC.to_datetime(at)
}

fn folder(path: &Path) -> &Path {
    path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

/// A name beside the file for a copy that is being made. It is nobody else's: two programs may make the backup of a day at once, and neither
/// may put the other's half into its place.
fn unfinished(path: &Path) -> PathBuf {
    static COUNT: AtomicU32 = AtomicU32::new(0);
    let mut name = path.file_name().unwrap_or(OsStr::new("shop")).to_owned();
    name.push(format!(".{}-{}", std::process::id(), COUNT.fetch_add(1, Ordering::Relaxed)));
    path.with_file_name(name)
}

/// Removes a file, unless somebody else just did.
fn remove(path: &Path) -> Result<(), StoreError> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => Err(StoreError::io("remove", path)(error)),
        _ => Ok(()),
    }
}

/// Copies a database into a new file and checks the copy.
fn copy(from: &Connection, path: &Path) -> Result<(), StoreError> {
    remove(path)?;
    let mut to = Connection::open(path)?;
    pour(from, &mut to)?;
    sound(&to, "quick_check(1)")?;
    to.close().map_err(|(_, error)| StoreError::from(error))
}

/// Copies all pages in one step, which is one transaction of the receiving file.
fn pour(from: &Connection, to: &mut Connection) -> Result<(), StoreError> {
    match Backup::new(from, to)?.step(-1)? {
        StepResult::Done => Ok(()),
        _ => Err(StoreError::Busy),
    }
}

/// Which of the backups, newest first, the rotation keeps.
fn kept(all: &[DateTime]) -> Vec<bool> {
    let (mut days, mut weeks): (Vec<Date>, Vec<(i16, i8)>) = (Vec::new(), Vec::new());
    let mut keep = Vec::new();
    for (number, at) in all.iter().enumerate() {
        let (day, week) = (at.date(), at.date().iso_week_date());
        let week = (week.year(), week.week());
        let new_day = !days.contains(&day) && days.len() < DAILY;
        let new_week = !weeks.contains(&week) && weeks.len() < WEEKLY;
        if new_day {
            days.push(day);
        }
        if new_week {
            weeks.push(week);
        }
        keep.push(number < NEWEST || new_day || new_week);
    }
    keep
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    #[test]
    fn a_year_of_days_leaves_seven_days_and_four_weeks() {
        // The newest of a week is its Sunday (ISO 8601 weeks begin on Monday); 2026-06-28 is a Sunday.
        let mut at = date(2026, 6, 28).at(9, 0, 0, 0);
        let mut all = Vec::new();
        for _ in 0..365 {
            all.push(at);
            at -= 1.day();
        }
        let kept: Vec<Date> = all.iter().zip(kept(&all)).filter(|(_, keep)| *keep).map(|(at, _)| at.date()).collect();
        let june = |day| date(2026, 6, day);
        assert_eq!(kept, [28, 27, 26, 25, 24, 23, 22, 21, 14, 7].map(june));
    }

    #[test]
    fn a_daily_backup_that_failed_is_tried_again_after_an_hour() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("shop.gallipot");
        let mut store = Store::create(&path).unwrap();
        let at = |minutes: i64| {
            let at: Timestamp = "2026-03-02T08:00:00Z".parse().unwrap();
            let at = at + minutes.minutes();
            Moment::new(at, universal(at).date())
        };
        store.path = folder.path().join("gone").join("shop.gallipot");
        store.set("a", Some("1"), at(0)).unwrap();
        assert!(store.backup_trouble().is_some());
        store.path = path;
        store.set("a", Some("2"), at(59)).unwrap();
        assert!(store.backup_trouble().is_some() && store.backups().unwrap().is_empty());
        store.set("a", Some("3"), at(61)).unwrap();
        assert!(store.backup_trouble().is_none());
        assert_eq!(store.backups().unwrap().len(), 1);
        // Of the next day there is another.
        store.set("a", Some("4"), at(24 * 60)).unwrap();
        assert_eq!(store.backups().unwrap().len(), 2);
    }

    #[test]
    fn three_backups_in_a_row_are_all_kept() {
        let morning = date(2026, 6, 28).at(9, 0, 0, 0);
        let all: Vec<DateTime> = (0..6).map(|minute| morning - minute.minutes()).collect();
        assert_eq!(kept(&all), [true, true, true, false, false, false]);
    }
}
