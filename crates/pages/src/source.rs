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

use crate::words::in_words;

/// A longer file is no shop anybody wrote.
const LONGEST: u64 = 16 << 20;

/// Where the shop comes from.
#[derive(Debug)]
pub struct ShopSource(Held);

#[derive(Debug)]
enum Held {
    File { path: PathBuf, seen: Mutex<Option<Seen<FileStamp, Shop>>> },
    Kept(Box<Mutex<Keeper>>),
}

/// What was found when the shop was read last.
type Found<T> = Result<Arc<T>, Arc<Unsound>>;
/// What tells one state of a file from the next; none where it cannot be looked at.
type FileStamp = Option<(SystemTime, u64)>;

/// What was found when the shop was read last, for as long as it would be found again.
#[derive(Debug)]
struct Seen<S, T> {
    stamp: S,
    /// The weather file that the shop names.
    weather: Option<(PathBuf, FileStamp)>,
    found: Found<T>,
}

impl<S: PartialEq, T> Seen<S, T> {
    fn stands(&self, stamp: &S) -> bool {
        self.stamp == *stamp && self.weather.as_ref().is_none_or(|(path, before)| file_stamp(path) == *before)
    }
}

/// What was read, or why not; and the weather file behind it. What does not follow from the file alone, such as that it could not be opened
/// just now, is not remembered.
struct Reading<T> {
    found: Result<T, Unsound>,
    weather: Option<(PathBuf, FileStamp)>,
    lasts: bool,
}

impl<T> Reading<T> {
    /// What stands in the file itself.
    fn lasting(found: Result<T, Unsound>) -> Self {
        Self { found, weather: None, lasts: true }
    }

    fn passing(unsound: Unsound) -> Self {
        Self { found: Err(unsound), weather: None, lasts: false }
    }

    /// Gives what was found, and remembers it where it lasts.
    fn remembered<S>(self, stamp: S, seen: &mut Option<Seen<S, T>>) -> Found<T> {
        let found = self.found.map(Arc::new).map_err(Arc::new);
        *seen = self.lasts.then(|| Seen { stamp, weather: self.weather, found: found.clone() });
        found
    }
}

fn file_stamp(path: &Path) -> FileStamp {
    let found = std::fs::metadata(path).ok()?;
    Some((found.modified().ok()?, found.len()))
}

/// The weather file that a shop names, as it is before it is read: a change in between is then read again next time.
fn weather_of(shop: &Shop, file: &Path) -> Option<(PathBuf, FileStamp)> {
    let path = file.with_file_name(&shop.room.weather.as_ref()?.path);
    let stamp = file_stamp(&path);
    Some((path, stamp))
}

/// The one who opens the kept file: everybody who reads or writes it waits for the last.
#[derive(Debug)]
struct Keeper {
    store: Store,
    seen: Option<Seen<Stamp, Now>>,
    /// The trouble with the daily backup that was told last.
    told: Option<String>,
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
    /// The shop file cannot be read, or the weather file that the kept shop names.
    Unreadable(String),
    /// The kept shop cannot be read.
    Store(StoreError),
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
        Self(Held::Kept(Box::new(Mutex::new(Keeper { store, seen: None, told: None }))))
    }

    /// The shop as it is described now.
    pub(crate) fn shop(&self) -> Found<Shop> {
        match &self.0 {
            Held::File { path, seen } => {
                let mut seen = lock(seen);
                // The stamp is taken before the file is read: a change in between is then read again next time.
                let stamp = file_stamp(path);
                match seen.as_ref().filter(|seen| stamp.is_some() && seen.stands(&stamp)) {
                    Some(seen) => seen.found.clone(),
                    None => read(path).remembered(stamp, &mut seen),
                }
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

    /// Whether the shop is kept here, and can be changed.
    pub(crate) fn is_kept(&self) -> bool {
        matches!(self.0, Held::Kept(_))
    }

    /// The kept file itself, for as long as nobody else has it; none where the shop comes from a shop file.
    pub(crate) fn store<T>(&self, with: impl FnOnce(&mut Store) -> T) -> Option<T> {
        match &self.0 {
            Held::File { .. } => None,
            Held::Kept(keeper) => Some(with(&mut lock(keeper).store)),
        }
    }

    /// Why the daily backup of a kept shop failed, if it did.
    pub(crate) fn backup_trouble(&self) -> Option<String> {
        self.store(|store| store.backup_trouble().map(ToString::to_string)).flatten()
    }

    /// The same, where it was not told before.
    pub(crate) fn backup_news(&self) -> Option<String> {
        let Held::Kept(keeper) = &self.0 else { return None };
        let mut keeper = lock(keeper);
        let trouble = keeper.store.backup_trouble().map(ToString::to_string);
        let news = trouble.clone().filter(|_| trouble != keeper.told);
        keeper.told = trouble;
        news
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
        let stamp = self.store.stamp().map_err(|error| Arc::new(Unsound::Store(error)))?;
        match self.seen.as_ref().filter(|seen| seen.stands(&stamp)) {
            Some(seen) => seen.found.clone(),
            None => snapshot(&self.store).remembered(stamp, &mut self.seen),
        }
    }
}

fn snapshot(store: &Store) -> Reading<Now> {
    let unreadable = |error: StoreError| Reading::passing(Unsound::Store(error));
    let mut described = match store.shop(Reference::embedded(), kinds()) {
        Ok(described) => described,
        Err(StoreError::Refused(faults)) => {
            return is_bare(store)
                .map_or_else(unreadable, |bare| Reading::lasting(Err(if bare { Unsound::Empty } else { Unsound::Faults(faults) })));
        }
        Err(error) => return unreadable(error),
    };
    let weather = weather_of(&described.shop, store.path());
    if let Err(problem) = read_weather(&mut described.shop, store.path()) {
        return Reading::passing(Unsound::Unreadable(in_words(&KeepError::Weather(problem))));
    }
    match store.state() {
        Ok(state) => {
            let now = Now { shop: Arc::new(described.shop.clone()), described: Arc::new(described), state };
            Reading { weather, ..Reading::lasting(Ok(now)) }
        }
        Err(error) => unreadable(error),
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

fn read(path: &Path) -> Reading<Shop> {
    let mut bytes = Vec::new();
    if let Err(error) = File::open(path).and_then(|file| file.take(LONGEST).read_to_end(&mut bytes)) {
        return Reading::passing(Unsound::Unreadable(format!("The shop file cannot be read: {error}.")));
    }
    let problems = |found| Unsound::Problems { text: String::from_utf8_lossy(&bytes).into_owned(), found };
    let mut shop = match shop::read(&bytes, kinds(), Reference::embedded()) {
        Ok(shop) => shop,
        Err(found) => return Reading::lasting(Err(problems(found))),
    };
    let weather = weather_of(&shop, path);
    match read_weather(&mut shop, path) {
        Ok(()) => Reading { weather, ..Reading::lasting(Ok(shop)) },
        Err(problem) => Reading::passing(problems(vec![problem])),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::Timestamp;
    use jiff::civil::date;
    use store::Moment;

    const SHOP: &str = "[room]\nweather = \"year.csv\"\n[[work]]\njob = \"store\"\n";

    fn put_year(path: &Path) {
        std::fs::copy(Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/weather/pvgis_tmy_45N_8E.csv"), path).unwrap();
    }

    fn of_file(folder: &Path) -> ShopSource {
        let path = folder.join("shop.toml");
        std::fs::write(&path, SHOP).unwrap();
        ShopSource::file(path)
    }

    fn of_store(folder: &Path) -> ShopSource {
        let mut store = Store::create(&folder.join("shop.gallipot")).unwrap();
        let now = Moment::new(Timestamp::UNIX_EPOCH, date(1970, 1, 1));
        store.import(SHOP.as_bytes(), Reference::embedded(), kinds(), now).unwrap();
        ShopSource::kept(store)
    }

    #[test]
    fn a_weather_file_is_missed_and_found_and_seen_to_change() {
        for make in [of_file, of_store] {
            let folder = tempfile::tempdir().unwrap();
            let (source, year) = (make(folder.path()), folder.path().join("year.csv"));
            assert!(source.shop().is_err());
            std::fs::write(&year, "no weather").unwrap();
            assert!(source.shop().is_err());
            put_year(&year);
            let first = source.shop().unwrap();
            assert!(first.room.weather.as_ref().unwrap().text.is_some());
            assert!(Arc::ptr_eq(&first, &source.shop().unwrap()), "read once for as long as nothing changes");
            let later = SystemTime::now() + std::time::Duration::from_secs(60);
            File::options().write(true).open(&year).unwrap().set_modified(later).unwrap();
            assert!(!Arc::ptr_eq(&first, &source.shop().unwrap()));
            std::fs::remove_file(&year).unwrap();
            assert!(source.shop().is_err());
        }
    }

    #[test]
    fn a_shop_file_that_comes_back_is_read() {
        let folder = tempfile::tempdir().unwrap();
        let source = ShopSource::file(folder.path().join("shop.toml"));
        assert!(matches!(*source.shop().unwrap_err(), Unsound::Unreadable(_)));
        std::fs::write(folder.path().join("shop.toml"), "[[machine]]\ntemplate = \"bench lathe\"\n").unwrap();
        source.shop().unwrap();
    }
}
