//! What is written when something was done: a point served, and any other entry of the log.

use std::borrow::BorrowMut;
use std::sync::Arc;

use jiff::ZonedDateTime;
use jiff::civil::Date;
use planner::report::Report;
use planner::round::{RoundRow, round};
use store::{Entry, Moment, Page, SectionId, Store, StoreError, What, Writing, Written};
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

/// A point to be served, as far as the plan and the shop say more of it.
struct Serving<'a> {
    served: &'a Served,
    machine: SectionId,
    when: Moment,
    fluid: Option<String>,
    pot: Option<SectionId>,
    amount: Option<Amount>,
    supposed: bool,
    due: Option<Date>,
}

impl Serving<'_> {
    fn write(self, writing: &Writing<'_>) -> Result<Written, StoreError> {
        let Self { pot, amount, .. } = self;
        let point = writing.point(self.machine, &self.served.point)?;
        let what = if self.served.topped_up { What::ToppedUp { point, pot, amount } } else { What::Applied { point, pot, amount } };
        writing.write(&Entry {
            fluid: self.fluid,
            supposed: self.supposed,
            due: self.due,
            hours: self.served.hours,
            ..self.served.said.entry(self.when, what)
        })
    }
}

impl<S: BorrowMut<Store>> Kept<S> {
    /// Writes that a point was served, by the chart of a plan. Of two people who see the same point due and serve it, one is written.
    ///
    /// # Errors
    /// Where there is no such point, the day or the clock is wrong, or it cannot be written.
    pub fn serve_point(&mut self, report: &Report, served: &Served, now: &ZonedDateTime) -> Result<Written, KeepError> {
        let rows = self.rows(report, now)?;
        let serving = self.serving(&rows, served, now)?;
        let known = self.knows(served);
        let written = self.store.borrow_mut().together(Moment::from(now), |writing| serving.write(writing))?;
        self.look_again(known);
        Ok(written)
    }

    /// Writes that several points were served, all of them or none; see [`serve_point`](Self::serve_point).
    ///
    /// # Errors
    /// As there, of any of them.
    pub fn serve_points(&mut self, report: &Report, all: &[Served], now: &ZonedDateTime) -> Result<Vec<Written>, KeepError> {
        let rows = self.rows(report, now)?;
        let servings = all.iter().map(|served| self.serving(&rows, served, now)).collect::<Result<Vec<_>, _>>()?;
        let known = all.iter().all(|served| self.knows(served));
        let write = |writing: &Writing<'_>| servings.into_iter().map(|serving| serving.write(writing)).collect();
        let written = self.store.borrow_mut().together(Moment::from(now), write)?;
        self.look_again(known);
        Ok(written)
    }

    /// How the points of the chart stand, for whoever is about to write.
    fn rows(&self, report: &Report, now: &ZonedDateTime) -> Result<Vec<RoundRow>, KeepError> {
        self.clock_is_right(now)?;
        Ok(round(report, &self.described.shop, &self.facts(now.date())?)?.points)
    }

    fn serving<'a>(&self, rows: &[RoundRow], served: &'a Served, now: &ZonedDateTime) -> Result<Serving<'a>, KeepError> {
        let machine = self.machine_of(served);
        let no_point = || KeepError::NoPoint { machine: served.machine.clone(), point: served.point.clone() };
        let machine = machine.ok_or_else(no_point)?;
        let row = rows.iter().find(|row| row.machine == served.machine && row.point == served.point);
        let charted = row.map(|row| row.fluid.as_str());
        let pot = served.pot.or_else(|| self.only_pot(charted?));
        let fluid = pot.map_or(charted, |pot| self.fluid_in(pot)).map(ToOwned::to_owned);
        // A fill-up is as much as was missing, and another fluid than the chart's has no dose there.
        let dose = row.filter(|row| !served.topped_up && Some(&row.fluid) == fluid.as_ref()).map(|row| row.dose.amount());
        let today = served.said.day.unwrap_or_else(|| now.date());
        let due = served.due.or_else(|| row.and_then(|row| row.due_on).filter(|due| *due <= today)).filter(|_| !served.topped_up);
        Ok(Serving {
            served,
            machine,
            when: moment(served.said.day, now)?,
            fluid,
            pot,
            amount: served.amount.or(dose),
            supposed: served.amount.is_none() && dose.is_some(),
            due,
        })
    }

    /// The machine of a point that is there.
    fn machine_of(&self, served: &Served) -> Option<SectionId> {
        let (machine, ..) = self.points().find(|(machine, point, _)| machine.name == served.machine && point.name == served.point)?;
        self.described.section(&machine.at)
    }

    /// Whether a point has a number already.
    fn knows(&self, served: &Served) -> bool {
        self.machine_of(served).is_some_and(|machine| self.described.point(machine, &served.point).is_some())
    }

    /// Reads the description again where a point has a number only now; without it the next question to the log would not find what was just
    /// done. The entry is written whether or not the description can be read again.
    fn look_again(&mut self, known: bool) {
        if !known && let Ok(described) = read(self.store.borrow()) {
            self.described = Arc::new(described);
        }
    }

    /// Writes anything else that was done.
    ///
    /// # Errors
    /// Where the day or the clock is wrong, two fluids would be mixed, or it cannot be written.
    pub fn write(&mut self, what: What, said: &Said, now: &ZonedDateTime) -> Result<Written, KeepError> {
        self.clock_is_right(now)?;
        let entry = self.entry(what, said, now)?;
        Ok(self.store.borrow_mut().together(Moment::from(now), |writing| writing.write(&entry))?)
    }

    /// Writes several other things that were done, all of them or none; see [`write`](Self::write).
    ///
    /// # Errors
    /// As there, of any of them.
    pub fn write_all(&mut self, all: &[What], said: &Said, now: &ZonedDateTime) -> Result<Vec<Written>, KeepError> {
        self.clock_is_right(now)?;
        let entries = all.iter().map(|what| self.entry(*what, said, now)).collect::<Result<Vec<_>, _>>()?;
        Ok(self.store.borrow_mut().write_all(&entries, Moment::from(now))?)
    }

    fn entry(&self, what: What, said: &Said, now: &ZonedDateTime) -> Result<Entry, KeepError> {
        if let What::Decanted { from, into, .. } = what {
            self.fits(from, into)?;
        }
        let pot = match what {
            What::Opened { pot } | What::Counted { pot, .. } | What::Bought { pot, .. } | What::Discarded { pot, .. } => Some(pot),
            What::Decanted { from, .. } => Some(from),
            _ => None,
        };
        let fluid = pot.and_then(|pot| self.fluid_in(pot)).map(ToOwned::to_owned);
        Ok(Entry { fluid, ..said.entry(moment(said.day, now)?, what) })
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

    /// Refuses to write before what is written already.
    fn clock_is_right(&self, now: &ZonedDateTime) -> Result<(), KeepError> {
        let last = self.store.borrow().log(Page { count: 1, ..Page::default() })?;
        match last.first().filter(|last| last.entry.when > Moment::from(now)) {
            Some(last) => Err(KeepError::ClockBack { today: now.date(), last: last.entry.when.day() }),
            None => Ok(()),
        }
    }
}

/// When it was done: now, or at noon of a day that is past.
fn moment(day: Option<Date>, now: &ZonedDateTime) -> Result<Moment, KeepError> {
    let today = now.date();
    match day.filter(|day| *day != today) {
        None => Ok(Moment::from(now)),
        Some(day) if day > today => Err(KeepError::ToCome { day, today }),
        Some(day) => Ok(Moment::from(&day.at(12, 0, 0, 0).to_zoned_datetime(now.time_zone().clone())?)),
    }
}
