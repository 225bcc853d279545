//! Where the shop comes from: its file, read again when it has changed.

use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::SystemTime;

use planner::needs::kinds;
use reference::Reference;
use shop::{Problem, Shop};
use store::Store;

/// The first bytes of a file that SQLite keeps (SQLite file format, section 1.3.1).
const SQLITE: &[u8] = b"SQLite format 3\0";
/// A longer file is no shop anybody wrote.
const LONGEST: u64 = 16 << 20;

/// The shop's file.
#[derive(Debug)]
pub struct ShopSource {
    path: PathBuf,
    seen: Mutex<Option<(Stamp, Found)>>,
}

/// What tells one state of a file from the next.
type Stamp = (Option<SystemTime>, u64);
type Found = Result<Arc<Shop>, Arc<Unsound>>;

/// Why there is no shop in the file.
#[derive(Debug)]
pub(crate) enum Unsound {
    /// It cannot be read.
    Unreadable(String),
    /// It can be read, and says what cannot be.
    Problems {
        /// The file.
        text: String,
        /// What is wrong with it.
        found: Vec<Problem>,
    },
}

impl ShopSource {
    /// The shop in this file: a shop file in TOML, or one that Gallipot keeps.
    #[must_use]
    pub fn file(path: PathBuf) -> Self {
        Self { path, seen: Mutex::default() }
    }

    /// The shop as it is described now.
    pub(crate) fn shop(&self) -> Found {
        let mut seen = self.seen.lock().unwrap_or_else(PoisonError::into_inner);
        // The stamp is taken before the file is read: a change in between is then read again next time.
        let stamp = std::fs::metadata(&self.path).map_or((None, 0), |found| (found.modified().ok(), found.len()));
        if let Some((_, found)) = seen.as_ref().filter(|(known, _)| *known == stamp && stamp.0.is_some()) {
            return found.clone();
        }
        let found = read(&self.path).map(Arc::new).map_err(Arc::new);
        *seen = Some((stamp, found.clone()));
        found
    }
}

fn read(path: &Path) -> Result<Shop, Unsound> {
    let unreadable = |error: std::io::Error| Unsound::Unreadable(format!("The shop file cannot be read: {error}."));
    let mut bytes = Vec::new();
    File::open(path).and_then(|file| file.take(LONGEST).read_to_end(&mut bytes)).map_err(unreadable)?;
    let reference = Reference::embedded();
    if bytes.starts_with(SQLITE) {
        let described = Store::open_read_only(path).and_then(|store| store.shop(reference, kinds()));
        return described.map(|described| described.shop).map_err(|error| Unsound::Unreadable(error.to_string()));
    }
    shop::read(&bytes, kinds(), reference).map_err(|found| Unsound::Problems { text: String::from_utf8_lossy(&bytes).into_owned(), found })
}
