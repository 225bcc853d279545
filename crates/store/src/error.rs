//! What can go wrong, in words for people.

use std::fmt::{self, Display, Formatter};
use std::path::{Path, PathBuf};

use rusqlite::ErrorCode;
use rusqlite::ffi::SQLITE_READONLY_ROLLBACK;
use shop::Problem;
use thiserror::Error;

use crate::{EntryId, SectionId};

/// Why the store did not do what was asked. Whatever it is, what was stored before still is.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum StoreError {
    /// There is no such file.
    #[error("there is no file {}; check the path, or make a new shop there", .path.display())]
    Missing {
        /// Where it was looked for.
        path: PathBuf,
    },
    /// A new file would take the place of another.
    #[error("{} is there already; open it, or choose another name", .path.display())]
    Exists {
        /// Where.
        path: PathBuf,
    },
    /// Not a file of this program.
    #[error("{} is not a shop kept by Gallipot; check the path", .path.display())]
    NotOurs {
        /// Which file.
        path: PathBuf,
    },
    /// Written by a newer program.
    #[error(
        "{} was written by a newer Gallipot (format {found}; this one knows up to {known}); use the newer program, nothing was changed",
        .path.display()
    )]
    Newer {
        /// Which file.
        path: PathBuf,
        /// The format it has.
        found: i64,
        /// The newest format known here.
        known: i64,
    },
    /// Written by an older program, and not to be written now.
    #[error("{} is in an older format; open it once for writing, which brings it up to date after a backup", .path.display())]
    Older {
        /// Which file.
        path: PathBuf,
    },
    /// A write was cut off, and cannot be taken back by a reader.
    #[error("a write to the shop was cut off, such as by a power cut; open it once for writing, which takes the half-written back")]
    CutOff,
    /// The file is damaged.
    #[error("the file is damaged ({detail}); keep a copy of it as it is and restore the last backup")]
    Damaged {
        /// What the check found.
        detail: String,
    },
    /// The file may be read and not written.
    #[error("the shop cannot be written here: the file or its folder is read-only, or it was opened for reading; nothing was changed")]
    ReadOnly,
    /// No room on the disk.
    #[error("the disk is full; nothing was changed. Make room and try again")]
    Full,
    /// Somebody else is writing.
    #[error("another program is writing this shop and did not finish; nothing was changed. Try again in a moment")]
    Busy,
    /// The file to import has problems, each with its place in that file.
    #[error("the shop file has {} problems; nothing was imported", .0.len())]
    File(Vec<Problem>),
    /// The description would not be sound.
    #[error("nothing was changed: {}", faults(.0))]
    Refused(Vec<Fault>),
    /// The cupboard file has bad rows; of one row there may be several things to say.
    #[error("the cupboard file has {} mistakes; nothing was imported", .0.len())]
    BadRows(Vec<BadRow>),
    /// No such section, or not of the kind asked for.
    #[error("there is no {wanted} of number {}", .section.0)]
    NoSection {
        /// Which was asked for.
        section: SectionId,
        /// What it should have been.
        wanted: &'static str,
    },
    /// No such entry.
    #[error("the log has no entry {}", .0.0)]
    NoEntry(EntryId),
    /// A reversal cannot be reversed.
    #[error("entry {} undoes another and cannot be undone itself; write the first again", .0.0)]
    NotUndone(EntryId),
    /// A volume taken from a pot kept by weight, and the like.
    #[error("this pot is kept as {kept} and the entry gives {given}; give {kept}, or count the pot anew")]
    OtherMeasure {
        /// How the pot is kept.
        kept: &'static str,
        /// What the entry gives.
        given: &'static str,
    },
    /// An amount no shop has.
    #[error("{0} is more than any pot holds; check the number and the unit")]
    TooMuch(String),
    /// Files could not be read or written.
    #[error("cannot {doing} {}: {source}", .path.display())]
    Io {
        /// What was tried.
        doing: &'static str,
        /// With which file.
        path: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// Anything else the database says; the program's own fault.
    #[error("the database says: {0}")]
    Database(rusqlite::Error),
}

/// A value the description cannot take, by section and key.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// In which section; `None` when it concerns the shop as a whole.
    pub section: Option<SectionId>,
    /// At which key; `None` when it concerns the section as a whole.
    pub key: Option<String>,
    /// Which of the changes added the section, when one did; the section is not there any more.
    pub change: Option<usize>,
    /// What is wrong, with the offending value.
    pub what: String,
    /// The way out.
    pub mend: String,
}

/// What is wrong with a row of a cupboard file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadRow {
    /// The line, counted from 1.
    pub line: u64,
    /// The column, when one is to blame.
    pub column: Option<String>,
    /// What is wrong, with the offending value.
    pub what: String,
    /// The way out.
    pub mend: String,
}

impl BadRow {
    /// So many are read at once; whoever has more mends these first.
    pub const SHOWN: usize = 50;
}

impl Display for BadRow {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        let column = self.column.as_ref().map_or_else(String::new, |column| format!(", {column}"));
        write!(f, "line {}{column}: {}. {}", self.line, self.what, self.mend)
    }
}

impl StoreError {
    pub(crate) fn io(doing: &'static str, path: &Path) -> impl FnOnce(std::io::Error) -> Self {
        move |source| match source.kind() {
            std::io::ErrorKind::StorageFull => Self::Full,
            std::io::ErrorKind::ReadOnlyFilesystem => Self::ReadOnly,
            _ => Self::Io { doing, path: path.to_owned(), source },
        }
    }
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        match error.sqlite_error_code() {
            Some(ErrorCode::ReadOnly) if error.sqlite_extended_error_code() == Some(SQLITE_READONLY_ROLLBACK) => Self::CutOff,
            Some(ErrorCode::ReadOnly) => Self::ReadOnly,
            Some(ErrorCode::DiskFull) => Self::Full,
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => Self::Busy,
            Some(ErrorCode::DatabaseCorrupt) => Self::Damaged { detail: error.to_string() },
            _ => Self::Database(error),
        }
    }
}

fn faults(all: &[Fault]) -> String {
    all.iter().map(|fault| format!("{}. {}", fault.what, fault.mend)).collect::<Vec<_>>().join(" ")
}
