//! Where the shop comes from: a shop file, read again when it has changed, or the file that Gallipot keeps.

use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::SystemTime;

use keep::{KeepError, Kept, read_weather};
use planner::needs::kinds;
use reference::Reference;
use shop::{Problem, Shop};
use store::{Described, Fault, SectionId, Stamp, State, Store, StoreError};

/// A longer file is no shop anybody wrote.
const LONGEST: u64 = 16 << 20;

/// Where the shop comes from.
#[derive(Debug)]
pub struct ShopSource(Held);

#[derive(Debug)]
enum Held {
    File { path: PathBuf, seen: Mutex<Option<(Seen, Found<Shop>)>> },
    Kept(Mutex<Keeper>),
}

/// What was found when the shop was read last.
type Found<T> = Result<Arc<T>, Arc<Unsound>>;
/// What tells one state of a shop file from the next.
type Seen = (Option<SystemTime>, u64);

/// The one who opens the kept file: everybody who reads or writes it waits for the last.
#[derive(Debug)]
struct Keeper {
    store: Store,
    seen: Option<(Stamp, Found<Now>)>,
}

/// A kept shop as it stands at one moment.
#[derive(Debug)]
pub(crate) struct Now {
    pub shop: Arc<Shop>,
    /// The shop with the numbers of its sections.
    pub described: Arc<Described>,
    /// What the log says.
    pub state: State,
}

/// Why there is no shop.
#[derive(Debug)]
pub(crate) enum Unsound {
    /// It cannot be read.
    Unreadable(String),
    /// The shop file can be read, and says what cannot be.
    Problems {
        /// The file.
        text: String,
        /// What is wrong with it.
        found: Vec<Problem>,
    },
    /// Nothing was said of the kept shop yet.
    Empty,
    /// What was said of the kept shop cannot be.
    Faults(Vec<Fault>),
}

impl ShopSource {
    /// The shop in this shop file, which is only read.
    #[must_use]
    pub fn file(path: PathBuf) -> Self {
        Self(Held::File { path, seen: Mutex::default() })
    }

    /// The shop that is kept here.
    #[must_use]
    pub fn kept(store: Store) -> Self {
        Self(Held::Kept(Mutex::new(Keeper { store, seen: None })))
    }

    /// The shop as it is described now.
    pub(crate) fn shop(&self) -> Found<Shop> {
        match &self.0 {
            Held::File { path, seen } => {
                let mut seen = lock(seen);
                // The stamp is taken before the file is read: a change in between is then read again next time.
                let stamp = std::fs::metadata(path).map_or((None, 0), |found| (found.modified().ok(), found.len()));
                if let Some((_, found)) = seen.as_ref().filter(|(known, _)| *known == stamp && stamp.0.is_some()) {
                    return found.clone();
                }
                let found = read(path).map(Arc::new).map_err(Arc::new);
                *seen = Some((stamp, found.clone()));
                found
            }
            Held::Kept(keeper) => lock(keeper).now().map(|kept| Arc::clone(&kept.shop)),
        }
    }

    /// The kept shop as it stands now; none where the shop comes from a shop file.
    pub(crate) fn now(&self) -> Option<Found<Now>> {
        match &self.0 {
            Held::File { .. } => None,
            Held::Kept(keeper) => Some(lock(keeper).now()),
        }
    }

    /// The kept file itself, for as long as nobody else has it; none where the shop comes from a shop file.
    pub(crate) fn store<T>(&self, with: impl FnOnce(&mut Store) -> T) -> Option<T> {
        match &self.0 {
            Held::File { .. } => None,
            Held::Kept(keeper) => Some(with(&mut lock(keeper).store)),
        }
    }

    /// The kept shop with its file, for as long as nobody else has it; none where the shop comes from a shop file.
    pub(crate) fn with<T>(&self, with: impl FnOnce(&mut Kept<&mut Store>) -> T) -> Option<Result<T, Arc<Unsound>>> {
        let Held::Kept(keeper) = &self.0 else { return None };
        let mut keeper = lock(keeper);
        let now = match keeper.now() {
            Ok(now) => now,
            Err(unsound) => return Some(Err(unsound)),
        };
        Some(Ok(with(&mut Kept { store: &mut keeper.store, described: Arc::clone(&now.described) })))
    }
}

impl Keeper {
    fn now(&mut self) -> Found<Now> {
        let unreadable = |error: StoreError| Arc::new(Unsound::Unreadable(error.to_string()));
        let stamp = self.store.stamp().map_err(unreadable)?;
        if let Some((_, found)) = self.seen.as_ref().filter(|(known, _)| *known == stamp) {
            return found.clone();
        }
        let found = snapshot(&self.store).map(Arc::new).map_err(Arc::new);
        self.seen = Some((stamp, found.clone()));
        found
    }
}

fn snapshot(store: &Store) -> Result<Now, Unsound> {
    let unreadable = |error: StoreError| Unsound::Unreadable(error.to_string());
    match keep::read(store) {
        Ok(described) => {
            let shop = Arc::new(described.shop.clone());
            Ok(Now { shop, described: Arc::new(described), state: store.state().map_err(unreadable)? })
        }
        Err(KeepError::Store(StoreError::Refused(_))) if is_bare(store).map_err(unreadable)? => Err(Unsound::Empty),
        Err(KeepError::Store(StoreError::Refused(faults))) => Err(Unsound::Faults(faults)),
        Err(error) => Err(Unsound::Unreadable(error.to_string())),
    }
}

/// Whether neither a machine nor any work was named yet.
fn is_bare(store: &Store) -> Result<bool, StoreError> {
    for section in store.section(SectionId::WHOLE)?.inside {
        if matches!(store.section(section)?.kind.as_str(), "machine" | "work") {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Waits for the lock. A page that broke while it held one has left nothing half-done behind it: what is written is written in transactions.
pub(crate) fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

fn read(path: &Path) -> Result<Shop, Unsound> {
    let unreadable = |error: std::io::Error| Unsound::Unreadable(format!("The shop file cannot be read: {error}."));
    let mut bytes = Vec::new();
    File::open(path).and_then(|file| file.take(LONGEST).read_to_end(&mut bytes)).map_err(unreadable)?;
    let problems = |found| Unsound::Problems { text: String::from_utf8_lossy(&bytes).into_owned(), found };
    let mut shop = shop::read(&bytes, kinds(), Reference::embedded()).map_err(problems)?;
    read_weather(&mut shop, path).map_err(|problem| problems(vec![problem]))?;
    Ok(shop)
}
