//! What is written when something was done: a point served, and any other entry of the log.

use std::borrow::BorrowMut;
use std::sync::Arc;

use jiff::ZonedDateTime;
use jiff::civil::Date;
use planner::report::Report;
use store::{Entry, Moment, Page, SectionId, Store, What, Written};
use units::{Amount, Time};

use crate::{KeepError, Kept, read};

/// What can be said of every entry.
#[derive(Debug, Clone, Default)]
pub struct Said {
    /// The day it was done; today where none is said.
    pub day: Option<Date>,
    /// Who did it.
    pub who: Option<String>,
    /// Anything to remember.
    pub note: Option<String>,
    /// The writer's own mark: what comes twice with the same mark is written once.
    pub key: Option<String>,
}

/// A point that was served.
#[derive(Debug, Clone, Default)]
pub struct Served {
    /// The machine.
    pub machine: String,
    /// The point.
    pub point: String,
    /// Whether it was only filled up: it is due when it was due before.
    pub topped_up: bool,
    /// How much was measured; where nothing is said the chart's dose is supposed, and the entry says so.
    pub amount: Option<Amount>,
    /// Out of which pot; the only one of the chart's fluid where nothing is said.
    pub pot: Option<SectionId>,
    /// The day it was due when whoever served it looked; worked out where nothing is said. Of two who saw the same, one is written.
    pub due: Option<Date>,
    /// What the machine's hour meter shows.
    pub hours: Option<Time>,
    /// Whatever else.
    pub said: Said,
}

impl Said {
    fn entry(&self, when: Moment, what: What) -> Entry {
        Entry { who: self.who.clone(), note: self.note.clone(), key: self.key.clone(), ..Entry::new(when, what) }
    }
}

impl<S: BorrowMut<Store>> Kept<S> {
    /// Writes that a point was served, by the chart of a plan. Of two people who see the same point due and serve it, one is written.
    ///
    /// # Errors
    /// Where there is no such point, the day or the clock is wrong, or it cannot be written.
    pub fn serve_point(&mut self, report: &Report, served: &Served, now: &ZonedDateTime) -> Result<Written, KeepError> {
        let found = self.points().find(|(machine, point, _)| machine.name == served.machine && point.name == served.point);
        let machine = found.and_then(|(machine, ..)| self.described.section(&machine.at));
        let no_point = || KeepError::NoPoint { machine: served.machine.clone(), point: served.point.clone() };
        let machine = machine.ok_or_else(no_point)?;
        let when = self.moment(served.said.day, now)?;
        let row = self.charted(report, &served.machine, &served.point, now.date())?;
        let charted = row.as_ref().map(|row| row.fluid.as_str());
        let pot = served.pot.or_else(|| self.only_pot(charted?));
        let fluid = pot.map_or(charted, |pot| self.fluid_in(pot)).map(ToOwned::to_owned);
        // A fill-up is as much as was missing, and another fluid than the chart's has no dose there.
        let dose = row.as_ref().filter(|row| !served.topped_up && Some(&row.fluid) == fluid.as_ref()).map(|row| row.dose.amount());
        let (amount, supposed) = (served.amount.or(dose), served.amount.is_none() && dose.is_some());
        let today = served.said.day.unwrap_or_else(|| now.date());
        let due = served.due.or_else(|| row.and_then(|row| row.due_on).filter(|due| *due <= today)).filter(|_| !served.topped_up);
        let known = self.described.point(machine, &served.point).is_some();
        let point = self.store.borrow_mut().point(machine, &served.point)?;
        let what = if served.topped_up { What::ToppedUp { point, pot, amount } } else { What::Applied { point, pot, amount } };
        let mut entry = served.said.entry(when, what);
        entry.fluid = fluid;
        entry.supposed = supposed;
        entry.due = due;
        entry.hours = served.hours;
        let written = self.store.borrow_mut().write(&entry)?;
        // The point has a number only now; without it the next question to the log would not find what was just done. The entry is written
        // whether or not the description can be read again.
        if !known && let Ok(described) = read(self.store.borrow()) {
            self.described = Arc::new(described);
        }
        Ok(written)
    }

    /// Writes anything else that was done.
    ///
    /// # Errors
    /// Where the day or the clock is wrong, two fluids would be mixed, or it cannot be written.
    pub fn write(&mut self, what: What, said: &Said, now: &ZonedDateTime) -> Result<Written, KeepError> {
        let mut entry = said.entry(self.moment(said.day, now)?, what);
        if let What::Decanted { from, into, .. } = what {
            self.fits(from, into)?;
        }
        let pot = match what {
            What::Opened { pot } | What::Counted { pot, .. } | What::Bought { pot, .. } | What::Discarded { pot, .. } => Some(pot),
            What::Decanted { from, .. } => Some(from),
            _ => None,
        };
        entry.fluid = pot.and_then(|pot| self.fluid_in(pot)).map(ToOwned::to_owned);
        Ok(self.store.borrow_mut().write(&entry)?)
    }

    /// Refuses to fill one pot into another that holds something else.
    fn fits(&self, from: SectionId, into: SectionId) -> Result<(), KeepError> {
        if from == into {
            return Err(KeepError::SamePot);
        }
        match self.fluid_in(from).zip(self.fluid_in(into)) {
            Some((from, into)) if from != into => Err(KeepError::Mixed { from: from.to_owned(), into: into.to_owned() }),
            _ => Ok(()),
        }
    }

    /// When it was done: now, or at noon of a day that is past.
    fn moment(&self, day: Option<Date>, now: &ZonedDateTime) -> Result<Moment, KeepError> {
        let today = now.date();
        let last = self.store.borrow().log(Page { count: 1, ..Page::default() })?;
        if let Some(last) = last.first().filter(|last| last.entry.when > Moment::from(now)) {
            return Err(KeepError::ClockBack { today, last: last.entry.when.day() });
        }
        match day.filter(|day| *day != today) {
            None => Ok(Moment::from(now)),
            Some(day) if day > today => Err(KeepError::ToCome { day, today }),
            Some(day) => Ok(Moment::from(&day.at(12, 0, 0, 0).to_zoned_datetime(now.time_zone().clone())?)),
        }
    }
}
