//! A kept shop, read: what stands in it, and what its log says.

use std::borrow::Borrow;
use std::path::Path;
use std::sync::Arc;

use jiff::civil::Date;
use planner::needs::kinds;
use planner::report::Report;
use planner::round::{Done, Facts, Reading, Used, Uses};
use planner::{PlanError, Wishes, plan};
use reference::Reference;
use shop::{Machine, Point};
use store::{Described, Moment, SectionId, Store};
use units::{Quantity, Time};

use crate::{KeepError, read_weather};

const HOUR_S: f64 = 3600.0;

/// A kept shop with the numbers of its sections, as it was when it was read; the file is its own, or lent by whoever else writes to it.
#[derive(Debug)]
pub struct Kept<S = Store> {
    /// The file.
    pub store: S,
    /// What stands in it.
    pub described: Arc<Described>,
}

impl Kept {
    /// Opens a shop for writing.
    ///
    /// # Errors
    /// Where it cannot be opened, or the weather it names cannot be read.
    pub fn open(path: &Path, now: Moment) -> Result<Self, KeepError> {
        Self::of(Store::open(path, now)?)
    }

    /// Opens a shop for reading only.
    ///
    /// # Errors
    /// Where it cannot be opened, or the weather it names cannot be read.
    pub fn open_read_only(path: &Path) -> Result<Self, KeepError> {
        Self::of(Store::open_read_only(path)?)
    }

    /// The shop of an opened store.
    ///
    /// # Errors
    /// Where it cannot be read, or the weather it names cannot be.
    pub fn of(store: Store) -> Result<Self, KeepError> {
        Ok(Self { described: Arc::new(read(&store)?), store })
    }
}

/// What stands in a store, with the weather it names.
///
/// # Errors
/// Where it cannot be read, or the weather it names cannot be.
pub(crate) fn read(store: &Store) -> Result<Described, KeepError> {
    let mut described = store.shop(Reference::embedded(), kinds())?;
    read_weather(&mut described.shop, store.path()).map_err(KeepError::Weather)?;
    Ok(described)
}

impl<S: Borrow<Store>> Kept<S> {
    /// Works out the plan that rounds start from. It is as good as new for as long as the description and the pots stay what they are, and
    /// serving a point does not change it: keep it rather than ask again.
    ///
    /// # Errors
    /// Where the shop cannot be planned.
    pub fn report(&self) -> Result<Report, PlanError> {
        let shop = &self.described.shop;
        Ok(plan(shop, Reference::embedded(), &Wishes::default())?.report(shop.units))
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
    ///
    /// # Errors
    /// Where the log cannot be read.
    pub fn facts(&self, today: Date) -> Result<Facts, KeepError> {
        let state = self.store.borrow().state()?;
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

    /// What the log says was taken of the fluids in the cupboard, as far back as it tells on a forecast.
    ///
    /// # Errors
    /// Where the log cannot be read.
    pub fn uses(&self) -> Result<Uses, KeepError> {
        /// A use moves the estimate by a tenth; after so many days of use nothing of what was before is left of it.
        const DAYS: u32 = 200;
        let mut uses = Uses::new();
        for pot in &self.described.shop.pots {
            if !uses.contains_key(&pot.fluid) {
                let store = self.store.borrow();
                let since = store.used_since(&pot.fluid, DAYS)?.unwrap_or(Date::MAX);
                let all = store.uses(&pot.fluid, since, Date::MAX)?;
                let used = |one: store::Used| Used { day: one.day, amount: one.amount, supposed: one.supposed };
                uses.insert(pot.fluid.clone(), all.into_iter().map(used).collect());
            }
        }
        Ok(uses)
    }

    /// The pot of a fluid, where there is one only that is not empty.
    #[must_use]
    pub fn only_pot(&self, fluid: &str) -> Option<SectionId> {
        let mut pots = self.described.shop.pots.iter().filter(|pot| pot.fluid == fluid && !pot.is_empty());
        let only = pots.next().filter(|_| pots.next().is_none())?;
        self.described.section(&only.at)
    }

    /// The key of the fluid in a pot.
    #[must_use]
    pub fn fluid_in(&self, pot: SectionId) -> Option<&str> {
        let found = self.described.shop.pots.iter().find(|one| self.described.section(&one.at) == Some(pot));
        found.map(|pot| pot.fluid.as_str())
    }
}

/// Running hours as a number.
#[must_use]
pub fn hours(time: Time) -> f64 {
    time.base() / HOUR_S
}
