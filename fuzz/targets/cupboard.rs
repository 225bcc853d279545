//! A cupboard table is taken in or every bad row is told; what was taken in goes out and comes back the same.
#![no_main]

use std::cell::RefCell;

use jiff::Timestamp;
use jiff::tz::TimeZone;
use libfuzzer_sys::fuzz_target;
use planner::needs::kinds;
use reference::Reference;
use store::{Cupboard, Moment, Store, StoreError, Taken};
use tempfile::TempDir;

const SHOP: &[u8] = b"[[work]]\njob = \"mark\"\n[[pot]]\nfluid = \"slideway-68\"\nleft = \"1 L\" # by eye\nlot = \"A7\"\n";

thread_local! {
    /// A shop that nothing was taken into yet.
    static FRESH: RefCell<Option<Home>> = const { RefCell::new(None) };
}

struct Home {
    store: Store,
    _folder: TempDir,
}

fuzz_target!(|file: &[u8]| {
    let mut home = FRESH.take().unwrap_or_else(Home::new);
    match home.take(file) {
        Ok(_) => home.check(),
        Err(StoreError::BadRows(rows)) => {
            assert!(!rows.is_empty() && rows.iter().all(|row| !row.what.is_empty() && !row.mend.is_empty()), "{rows:?}");
            FRESH.set(Some(home));
        }
        Err(error) => panic!("{error}"),
    }
});

impl Home {
    fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let mut store = Store::create(&folder.path().join("shop.gallipot")).expect("a store");
        store.import(SHOP, Reference::embedded(), kinds(), now()).expect("the shop is sound");
        Self { store, _folder: folder }
    }

    fn take(&mut self, file: &[u8]) -> Result<Taken, StoreError> {
        self.store.import_cupboard(file, Cupboard::Replace, Reference::embedded(), kinds(), now())
    }

    fn check(&mut self) {
        let (table, text) = (self.store.export_cupboard().expect("a table"), self.store.export().expect("a text"));
        let again = self.take(table.as_bytes()).expect("what went out comes in");
        assert_eq!((again.pots.added, again.pots.gone), (0, 0), "{table}");
        assert_eq!(self.store.export_cupboard().expect("a table"), table);
        assert_eq!(self.store.export().expect("a text"), text, "{table}");
        self.store.check().expect("the file is sound");
    }
}

fn now() -> Moment {
    let at = Timestamp::UNIX_EPOCH;
    Moment::new(at, TimeZone::UTC.to_datetime(at).date())
}
