//! Shops in files of their own, and moments to write at.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]
#![allow(dead_code, clippy::allow_attributes, reason = "each test file uses its own part")]

use std::path::{Path, PathBuf};

use jiff::{Timestamp, ToSpan, civil::Date};
use planner::needs::kinds;
use reference::Reference;
use store::{Described, Moment, SectionId, Store, StoreError, Value};
use tempfile::TempDir;

/// A lathe with one point of its own, a mill out of a template, work and two pots.
pub const SHOP: &str = r#"# Ours.
[room]
volume = "30 m3" # about

[[machine]]
template = "bench lathe"
name = "lathe"

  [[machine.point]]
  name = "steady"
  kind = "instrument pivot" # small
  diameter = "0.8 mm"

[[machine]]
template = "bench mill"
name = "mill"

[[work]]
job = "mark"

[[pot]]
fluid = "slideway-68"
left = "1 L"

[[pot]]
fluid = "penetrating"
size = "400 mL"
lot = "A7"
"#;

/// A folder with a shop in it.
pub struct Home {
    folder: TempDir,
    pub store: Store,
}

impl Home {
    /// With a shop file taken in.
    pub fn of(text: &str) -> Self {
        let mut home = Self::empty();
        home.store.import(text.as_bytes(), Reference::embedded(), kinds(), moment(0)).unwrap();
        home
    }

    /// With nothing described.
    pub fn empty() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let store = Store::create(&folder.path().join("shop.gallipot")).unwrap();
        Self { folder, store }
    }

    pub fn path(&self) -> PathBuf {
        self.store.path().to_owned()
    }

    pub fn folder(&self) -> &Path {
        self.folder.path()
    }

    pub fn described(&self) -> Described {
        self.store.shop(Reference::embedded(), kinds()).unwrap()
    }

    /// The machine of that name.
    pub fn machine(&self, name: &str) -> SectionId {
        let described = self.described();
        let machine = described.shop.machines.iter().find(|machine| machine.name == name).unwrap();
        described.section(&machine.at).unwrap()
    }

    /// The pot with that fluid.
    pub fn pot(&self, fluid: &str) -> SectionId {
        let described = self.described();
        let pot = described.shop.pots.iter().find(|pot| pot.fluid == fluid).unwrap();
        described.section(&pot.at).unwrap()
    }

    /// What the description says is in that pot now.
    pub fn left(&self, pot: SectionId) -> Option<String> {
        let described = self.described();
        let pot = described.shop.pots.iter().find(|other| described.section(&other.at) == Some(pot)).unwrap();
        pot.left.map(units::Amount::show_exact)
    }
}

/// So many minutes after a morning in March 2026.
pub fn moment(minutes: i64) -> Moment {
    let at: Timestamp = "2026-03-02T08:00:00Z".parse().unwrap();
    let at = at + minutes.minutes();
    Moment::new(at, jiff::tz::TimeZone::UTC.to_datetime(at).date())
}

pub fn day(text: &str) -> Date {
    text.parse().unwrap()
}

pub fn amount(text: &str) -> units::Amount {
    units::Amount::parse(text).unwrap()
}

pub fn text(words: &str) -> Value {
    Value::Text(words.to_owned())
}

pub fn faults<T: std::fmt::Debug>(result: Result<T, StoreError>) -> Vec<store::Fault> {
    match result {
        Err(StoreError::Refused(faults)) => faults,
        other => panic!("not refused: {other:?}"),
    }
}
