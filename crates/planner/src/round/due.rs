//! What is due at the points today.

use std::collections::{BTreeMap, BTreeSet};

use jiff::ToSpan;
use jiff::civil::Date;
use schemars::JsonSchema;
use serde::Serialize;
use shop::{Machine, Shop};

use super::meter::{Meter, Reading};
use super::{RoundError, days_between, not_after};
use crate::need::Dose;
use crate::report::{ChartRow, EveryRow, Report};

/// What falls due within so many days is due soon: a week, for a shop that is walked round once a week.
const SOON_DAYS: i32 = 7;
/// What does not fall due within a century never does.
const NEVER_DAYS: i32 = 36_525;
/// No fluid is left longer than a year, however little the meter says; *common practice*.
const LONGEST_DAYS: f64 = 365.0;

/// What was done and read up to a day.
#[derive(Debug, Clone, Default)]
pub struct Facts {
    /// Today.
    pub today: Date,
    /// When each point was last served, by machine and point.
    pub done: BTreeMap<(String, String), Done>,
    /// Readings of the hour meters, by machine, in any order. Those taken when something was done count as well.
    pub meters: BTreeMap<String, Vec<Reading>>,
}

/// When a point was last served.
#[derive(Debug, Clone, PartialEq)]
pub struct Done {
    /// The day.
    pub day: Date,
    /// What the hour meter showed.
    pub hours: Option<f64>,
    /// Who did it.
    pub who: Option<String>,
}

/// What is due, the most urgent first.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Round {
    /// The day it is for.
    #[schemars(with = "String")]
    pub today: Date,
    /// Every point that is served over and over.
    pub points: Vec<RoundRow>,
    /// Points that nothing is known for yet.
    pub without_fluid: Vec<String>,
}

/// How urgent a point is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// Was due before today.
    Overdue,
    /// Is due today, or was never done.
    Due,
    /// Falls due within a week.
    Soon,
    /// Falls due later.
    Later,
}

/// How running hours were counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Counted {
    /// Read from the machine's meter.
    Meter,
    /// Reckoned from its hours a week.
    Estimate,
}

/// How one point stands.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct RoundRow {
    /// The machine.
    pub machine: String,
    /// The point.
    pub point: String,
    /// How urgent it is.
    pub standing: Standing,
    /// The day it falls due, or fell; none where it never does.
    #[schemars(with = "Option<String>")]
    pub due_on: Option<Date>,
    /// Days from one time to the next, as far as can be told today; none where it never comes round again.
    pub days_apart: Option<i32>,
    /// Days since it was due.
    pub overdue_days: Option<i32>,
    /// Running hours over the interval.
    pub overdue_hours: Option<f64>,
    /// The day it was last done; none where the log does not say it ever was, which makes it due.
    #[schemars(with = "Option<String>")]
    pub last_done: Option<Date>,
    /// Who did it.
    pub done_by: Option<String>,
    /// Running hours since.
    pub hours_since: Option<f64>,
    /// How these were counted.
    pub hours_by: Option<Counted>,
    /// Key of the fluid.
    pub fluid: String,
    /// Its name.
    pub name: String,
    /// Whether some of it stands in the cupboard.
    pub in_cupboard: bool,
    /// How much.
    pub dose: Dose,
    /// How it is put there.
    pub how: String,
    /// How often.
    pub every: EveryRow,
}

/// The round of a day.
///
/// A point is due after its running hours or its days, whichever come first. Hours are read from the machine's meter as far as it was read,
/// and reckoned from its hours a week from there on.
///
/// # Errors
/// [`RoundError::Backwards`] where something was done or read after today.
pub fn round(report: &Report, shop: &Shop, facts: &Facts) -> Result<Round, RoundError> {
    let mut charts: BTreeMap<&str, Vec<&ChartRow>> = BTreeMap::new();
    for row in &report.chart {
        charts.entry(&row.machine).or_default().push(row);
    }
    let mut points = Vec::new();
    for machine in &shop.machines {
        let meter = meter(machine, facts)?;
        let rows = charts.get(machine.name.as_str()).into_iter().flatten();
        points.extend(rows.filter_map(|row| standing(row, machine, &meter, shop, facts)));
    }
    points.sort_by_key(|row| (row.standing, row.due_on));
    let chart: BTreeSet<String> = report.chart.iter().map(|row| format!("{} · {}", row.machine, row.point)).collect();
    let without = report.unserved.iter().filter(|row| chart.contains(&row.place));
    Ok(Round { today: facts.today, points, without_fluid: without.map(|row| row.place.clone()).collect() })
}

/// The hour meter of a machine, with what it showed when something was done at it.
fn meter(machine: &Machine, facts: &Facts) -> Result<Meter, RoundError> {
    let mut readings = facts.meters.get(&machine.name).cloned().unwrap_or_default();
    for reading in &readings {
        not_after(facts.today, reading.day, || format!("the hour meter of {}", machine.name))?;
    }
    let of_machine = facts.done.range((machine.name.clone(), String::new())..).take_while(|((at, _), _)| *at == machine.name);
    for ((_, point), done) in of_machine {
        not_after(facts.today, done.day, || format!("{} · {point}", machine.name))?;
        readings.extend(done.hours.map(|hours| Reading { day: done.day, hours }));
    }
    Ok(Meter::new(readings, machine.hours.hours_per_day()))
}

/// How one point stands; nothing where it is not served over and over.
fn standing(row: &ChartRow, machine: &Machine, meter: &Meter, shop: &Shop, facts: &Facts) -> Option<RoundRow> {
    let (fluid, every, today) = (row.fluid.clone()?, row.every.clone()?, facts.today);
    let point = machine.points.iter().find(|point| point.name == row.point)?;
    let (point_a_day, machine_a_day) = (point.hours.hours_per_day(), machine.hours.hours_per_day());
    // The meter is the machine's; a point may move for only a part of its hours.
    let share = if machine_a_day > 0.0 { point_a_day / machine_a_day } else { 1.0 };
    let done = facts.done.get(&(row.machine.clone(), row.point.clone()));
    let interval = Interval::of(&every, meter.last().is_some())?;
    let start = done.map(|done| meter.when_done(done.day, done.hours));
    let ran = |day: Date| start.map(|start| (share * (meter.at(day) - start)).max(0.0));
    let due_on = match done {
        None => Some(today),
        Some(done) => first_day(done.day, |day| interval.over(ran(day), days_between(done.day, day))),
    };
    let standing = match due_on.map(|due| days_between(today, due)) {
        Some(days) if days < 0 => Standing::Overdue,
        Some(0) => Standing::Due,
        Some(days) if days <= SOON_DAYS => Standing::Soon,
        _ => Standing::Later,
    };
    let hours_since = ran(today);
    Some(RoundRow {
        machine: row.machine.clone(),
        point: row.point.clone(),
        standing,
        due_on,
        // From today on the meter goes by the hours a week.
        days_apart: first(|days| interval.over(Some(share * machine_a_day * f64::from(days)), days)),
        overdue_days: due_on.filter(|_| standing == Standing::Overdue).map(|due| days_between(due, today)),
        overdue_hours: hours_since.zip(interval.hours).map(|(ran, hours)| tenths(ran - hours)).filter(|over| *over > 0.0),
        last_done: done.map(|done| done.day),
        done_by: done.and_then(|done| done.who.clone()),
        hours_since: hours_since.map(tenths),
        hours_by: done.map(|done| if meter.read_after(done.day) { Counted::Meter } else { Counted::Estimate }),
        in_cupboard: shop.pots.iter().any(|pot| pot.fluid == fluid && !pot.is_empty()),
        fluid,
        name: row.name.clone()?,
        dose: row.dose?,
        how: row.how.clone(),
        every,
    })
}

/// Hours and days after which a point is due.
struct Interval {
    hours: Option<f64>,
    days: Option<f64>,
}

impl Interval {
    /// What the chart says; nothing where it says neither hours nor days. Where a meter is read, its hours stand in the place of the days that
    /// were made from the hours a week.
    fn of(every: &EveryRow, metered: bool) -> Option<Self> {
        let days = if metered && every.running_hours.is_some() { every.at_latest.or(Some(LONGEST_DAYS)) } else { every.days };
        (every.running_hours.is_some() || days.is_some()).then_some(Self { hours: every.running_hours, days })
    }

    /// Whether it is over after so many hours, or so many days.
    fn over(&self, ran: Option<f64>, days: i32) -> bool {
        /// Sums of hours are no more exact.
        const SLACK_H: f64 = 1e-6;
        let by_hours = self.hours.zip(ran).is_some_and(|(hours, ran)| ran >= hours - SLACK_H);
        by_hours || self.days.is_some_and(|limit| f64::from(days) >= limit.round().max(1.0))
    }
}

/// The first day from one on at which something is so, that once it is so stays so.
fn first_day(from: Date, so: impl Fn(Date) -> bool) -> Option<Date> {
    let day = |after: i32| from.saturating_add(after.days());
    first(|after| so(day(after))).map(day)
}

/// After how many days something is so, that once it is so stays so.
fn first(so: impl Fn(i32) -> bool) -> Option<i32> {
    let (mut low, mut high) = (0, NEVER_DAYS);
    if !so(high) {
        return None;
    }
    while low < high {
        let middle = i32::midpoint(low, high);
        if so(middle) { high = middle } else { low = middle + 1 }
    }
    Some(low)
}

fn tenths(hours: f64) -> f64 {
    (hours * 10.0).round() / 10.0
}
