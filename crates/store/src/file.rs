//! The file itself: making it, opening it, and what it must be to be opened.

use std::path::{Path, PathBuf};
use std::time::Duration;

use jiff::Timestamp;
use jiff::civil::Date;
use rusqlite::{Connection, MAIN_DB, OpenFlags};

use crate::migrate::{STEPS, migrate, newest, version};
use crate::{Moment, StoreError};

/// Marks a file as ours: `GALL` in ASCII.
const APPLICATION_ID: i64 = 0x4741_4C4C;

/// How long a writer waits for another.
const PATIENCE: Duration = Duration::from_secs(5);

/// A shop in its file.
#[derive(Debug)]
pub struct Store {
    pub(crate) connection: Connection,
    pub(crate) path: PathBuf,
    /// The last day, in universal time, that has its backup.
    pub(crate) backed_up: Option<Date>,
    /// When the daily backup failed, and why.
    pub(crate) trouble: Option<(Timestamp, StoreError)>,
}

/// A state of the file; see [`Store::stamp`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stamp {
    others: i64,
    own: u64,
}

impl Store {
    /// Makes a new file with an empty description. Nothing else makes one.
    ///
    /// # Errors
    /// [`StoreError::Exists`] when there is a file of that name.
    pub fn create(path: &Path) -> Result<Self, StoreError> {
        match std::fs::OpenOptions::new().write(true).create_new(true).open(path) {
            Ok(_) => {}
            Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => return Err(StoreError::Exists { path: path.to_owned() }),
            Err(error) => return Err(StoreError::io("make", path)(error)),
        }
        let made = || {
            let mut connection = connect(path, OpenFlags::SQLITE_OPEN_READ_WRITE)?;
            connection.pragma_update(None, "application_id", APPLICATION_ID)?;
            migrate(&mut connection, STEPS)?;
            Ok(Self::with(connection, path))
        };
        made().inspect_err(|_| {
            // Only the empty file made above is lost; the error says more than a failure to remove it would.
            let _ = std::fs::remove_file(path);
        })
    }

    /// Opens a file for reading and writing, and brings it up to date after a backup where it is of an older format.
    ///
    /// # Errors
    /// When the file is missing, not ours, newer, damaged or read-only.
    pub fn open(path: &Path, now: Moment) -> Result<Self, StoreError> {
        Self::open_with(path, now, STEPS)
    }

    pub(crate) fn open_with(path: &Path, now: Moment, steps: &[&str]) -> Result<Self, StoreError> {
        let mut store = Self::with(open(path, OpenFlags::SQLITE_OPEN_READ_WRITE, steps)?, path);
        if store.connection.is_readonly(MAIN_DB)? {
            return Err(StoreError::ReadOnly);
        }
        if version(&store.connection)? < newest(steps) {
            store.backup(now)?;
            migrate(&mut store.connection, steps)?;
        }
        Ok(store)
    }

    /// Opens a file for reading only, such as for a tablet on the wall.
    ///
    /// # Errors
    /// When the file is missing, not ours, of another format or damaged.
    pub fn open_read_only(path: &Path) -> Result<Self, StoreError> {
        let connection = open(path, OpenFlags::SQLITE_OPEN_READ_ONLY, STEPS)?;
        if version(&connection)? < newest(STEPS) {
            return Err(StoreError::Older { path: path.to_owned() });
        }
        Ok(Self::with(connection, path))
    }

    fn with(connection: Connection, path: &Path) -> Self {
        Self { connection, path: path.to_owned(), backed_up: None, trouble: None }
    }

    /// Where the file is.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Tells one state of the file from the next, whoever wrote to it. Two stamps of one store compare, and no others.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn stamp(&self) -> Result<Stamp, StoreError> {
        let others: i64 = self.connection.query_row("PRAGMA data_version", [], |row| row.get(0))?;
        Ok(Stamp { others, own: self.connection.total_changes() })
    }

    /// Goes through the whole file: every page, every reference, and every pot's tally against the log.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] with what was found first.
    pub fn check(&self) -> Result<(), StoreError> {
        sound(&self.connection, "integrity_check")?;
        let astray: i64 = self.connection.query_row("SELECT count(*) FROM pragma_foreign_key_check", [], |row| row.get(0))?;
        if astray > 0 {
            return Err(StoreError::Damaged { detail: format!("{astray} rows point nowhere") });
        }
        crate::tally::check(&self.connection)
    }
}

/// Opens a file that must be there and ours, in this format or an older one.
pub(crate) fn open(path: &Path, how: OpenFlags, steps: &[&str]) -> Result<Connection, StoreError> {
    match std::fs::metadata(path) {
        Ok(found) if found.is_file() => {}
        Ok(_) => return Err(StoreError::NotOurs { path: path.to_owned() }),
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Err(StoreError::Missing { path: path.to_owned() }),
        Err(error) => return Err(StoreError::io("open", path)(error)),
    }
    let connection = connect(path, how).map_err(|error| whose(error, path))?;
    let id: i64 =
        connection.query_row("PRAGMA application_id", [], |row| row.get(0)).map_err(|error| whose(StoreError::from(error), path))?;
    if id != APPLICATION_ID {
        return Err(StoreError::NotOurs { path: path.to_owned() });
    }
    let (found, known) = (version(&connection)?, newest(steps));
    if found > known {
        return Err(StoreError::Newer { path: path.to_owned(), found, known });
    }
    sound(&connection, "quick_check(1)")?;
    Ok(connection)
}

/// A file that is no database at all is somebody else's.
fn whose(error: StoreError, path: &Path) -> StoreError {
    match error {
        StoreError::Database(error) if error.sqlite_error_code() == Some(rusqlite::ErrorCode::NotADatabase) => {
            StoreError::NotOurs { path: path.to_owned() }
        }
        other => other,
    }
}

/// Opens a connection the way every one of ours is set.
///
/// The journal is a rollback journal, not a write-ahead log: between writes the shop is one file, which can be copied to a stick, read from a
/// medium that cannot be written and kept on a share; and a shop writes a few times an hour. `EXTRA` is `FULL` and more: it also waits for
/// the folder, so that an entry once acknowledged outlives a power cut that follows at once.
fn connect(path: &Path, how: OpenFlags) -> Result<Connection, StoreError> {
    let connection = Connection::open_with_flags(path, how | OpenFlags::SQLITE_OPEN_NO_MUTEX)?;
    connection.busy_timeout(PATIENCE)?;
    connection.execute_batch(
        "PRAGMA journal_mode = DELETE; PRAGMA synchronous = EXTRA; PRAGMA foreign_keys = ON; PRAGMA temp_store = MEMORY;
         PRAGMA trusted_schema = OFF; PRAGMA cell_size_check = ON;
         -- Or else REPLACE would delete rows of the log behind the trigger's back.
         PRAGMA recursive_triggers = ON;",
    )?;
    Ok(connection)
}

/// Whether one of the database's own checks finds it sound.
pub(crate) fn sound(connection: &Connection, check: &str) -> Result<(), StoreError> {
    let found: String = connection.query_row(&format!("PRAGMA {check}"), [], |row| row.get(0))?;
    if found == "ok" { Ok(()) } else { Err(StoreError::Damaged { detail: found }) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::migrate::tests::moment;

    /// SQLite's own limit on the number of pages stands for the end of the disk: both give SQLITE_FULL.
    #[test]
    fn a_full_disk_loses_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let mut store = Store::create(&folder.path().join("shop.gallipot")).unwrap();
        let long = "n".repeat(4000);
        let pages: u32 = store.connection.query_row("PRAGMA page_count", [], |row| row.get(0)).unwrap();
        store.connection.pragma_update(None, "max_page_count", pages + 20).unwrap();
        let mut written = Vec::new();
        let error = loop {
            let key = written.len().to_string();
            match store.set(&key, Some(&long), moment()) {
                Ok(()) => written.push(key),
                Err(error) => break error,
            }
        };
        assert!(matches!(error, StoreError::Full), "{error:?}");
        assert!(error.to_string().contains("Make room"));
        assert!(written.len() > 3);
        store.check().unwrap();
        let kept = written.iter().filter(|key| store.setting(key).unwrap().as_deref() == Some(&long)).count();
        assert_eq!(kept, written.len());
        store.connection.pragma_update(None, "max_page_count", pages + 100).unwrap();
        store.set("more", Some(&long), moment()).unwrap();
    }

    #[test]
    fn every_connection_is_set_for_safety() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("shop.gallipot");
        let store = Store::create(&path).unwrap();
        let reopened = Store::open(&path, moment()).unwrap();
        for connection in [&store.connection, &reopened.connection] {
            let pragma = |name: &str| -> String {
                let value = connection.query_row(&format!("PRAGMA {name}"), [], |row| row.get::<_, rusqlite::types::Value>(0)).unwrap();
                format!("{value:?}")
            };
            // SQLite's documentation of its pragmas: synchronous 3 is EXTRA.
            assert_eq!((pragma("synchronous"), pragma("foreign_keys")), ("Integer(3)".to_owned(), "Integer(1)".to_owned()));
            assert_eq!((pragma("journal_mode"), pragma("busy_timeout")), ("Text(\"delete\")".to_owned(), "Integer(5000)".to_owned()));
        }
    }
}
