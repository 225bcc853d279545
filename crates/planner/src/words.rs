//! How amounts, stretches of time and places are said, wherever a report is shown to people.

use formulas::cutting::DROP_ML;
use units::{Digits, System, show_number};

use crate::need::{Dose, DoseUnit, With};
use crate::report::{EveryRow, NeedRow, UseRow};

/// An amount as it is measured out at the bench: drops, millilitres, grams.
#[must_use]
pub fn amount(dose: Dose, units: System) -> String {
    /// Less than so much is a smear, less than so much a pea, g; *common practice, no source*.
    const SMEAR_G: f64 = 0.3;
    const PEA_G: f64 = 1.5;
    match dose.unit {
        DoseUnit::Millilitre if under_a_drop(dose) => microlitres(dose.likely),
        DoseUnit::Millilitre if in_drops(dose) => counted(drops(dose.likely), "drop"),
        DoseUnit::Gram if dose.likely < SMEAR_G => "a smear".to_owned(),
        DoseUnit::Gram if dose.likely < PEA_G => "a pea".to_owned(),
        _ => dose.amount().show(measured_in(dose, units)),
    }
}

/// The ends of an amount, in what it is measured out in.
#[must_use]
pub fn ends(dose: Dose, units: System) -> String {
    if under_a_drop(dose) {
        return format!("{} to {}", microlitres(dose.low), microlitres(dose.high));
    }
    if in_drops(dose) {
        return format!("{} to {}", drops(dose.low), drops(dose.high));
    }
    let units = measured_in(dose, units);
    let [low, high] = [dose.low, dose.high].map(|end| Dose { likely: end, ..dose }.amount().show(units));
    format!("{low} to {high}")
}

/// The units that an amount is measured out in: a syringe is marked in millilitres everywhere; *common practice, no source*.
fn measured_in(dose: Dose, units: System) -> System {
    const SYRINGE_ML: f64 = 15.0;
    if dose.unit == DoseUnit::Millilitre && dose.likely < SYRINGE_ML { System::Metric } else { units }
}

/// What is too little for a drop hangs on a pin, and is told as it is.
fn under_a_drop(dose: Dose) -> bool {
    dose.unit == DoseUnit::Millilitre && dose.likely < 0.5 * DROP_ML
}

fn microlitres(millilitres: f64) -> String {
    format!("{} µL", show_number(millilitres * 1e3, Digits::Significant(2)))
}

fn in_drops(dose: Dose) -> bool {
    /// More than thirty drops nobody counts, mL; *common practice, no source*.
    const MANY_ML: f64 = 1.2;
    dose.unit == DoseUnit::Millilitre && dose.likely <= MANY_ML
}

fn drops(millilitres: f64) -> f64 {
    (millilitres / DROP_ML).round().max(1.0)
}

/// How often, as one says it.
#[must_use]
pub fn every(every: &EveryRow) -> String {
    let hours = worth_saying(every).map(|hours| format!("{} h", show_number(hours, Digits::Significant(2))));
    let days = every.days.map(calendar);
    match (every.with, hours, days) {
        (Some(with), Some(hours), _) => format!("{} and every {hours} running", with.words()),
        (Some(with), None, _) => with.words().to_owned(),
        (None, Some(hours), Some(days)) if days.starts_with(|c: char| c.is_ascii_digit()) => format!("every {hours} running or {days}"),
        (None, Some(hours), Some(day)) => format!("every {hours} running or every {day}"),
        (None, Some(hours), None) => format!("every {hours} running"),
        (None, None, Some(days)) => format!("every {days}"),
        (None, None, None) => String::new(),
    }
}

/// Whether it comes round on every day the machine runs.
#[must_use]
pub fn is_daily(every: &EveryRow) -> bool {
    /// A day's work, h; *common practice*.
    const A_DAYS_RUNNING: f64 = 8.0;
    /// Where the calendar is known too the machine runs less than all day, and so much at one go; *common practice*.
    const A_SESSIONS_RUNNING: f64 = 4.0;
    let limit = if every.days.is_some() { A_SESSIONS_RUNNING } else { A_DAYS_RUNNING };
    let often = worth_saying(every).is_some_and(|hours| hours <= limit) || every.days.is_some_and(|days| days <= 1.5);
    often || every.with == Some(With::Use)
}

/// The running hours, unless the calendar comes so long before them that it is said alone.
fn worth_saying(every: &EveryRow) -> Option<f64> {
    every.running_hours.filter(|_| !every.by_calendar)
}

/// A stretch of days in the unit one would say it in.
fn calendar(days: f64) -> String {
    const WEEK: f64 = 7.0;
    const MONTH: f64 = 30.4;
    const YEAR: f64 = 365.0;
    let (value, unit) = match days {
        days if days < 1.5 * WEEK => (days, "day"),
        days if days < 1.5 * MONTH => (days / WEEK, "week"),
        days if days < 1.5 * YEAR => (days / MONTH, "month"),
        days => (days / YEAR, "year"),
    };
    if value.round() <= 1.0 { unit.to_owned() } else { format!("{} {unit}s", value.round()) }
}

/// How long a pack lasts, and whether it goes off first.
#[must_use]
pub fn lasts(row: &UseRow) -> String {
    let years = |years: f64| {
        let months = years * 12.0;
        if months < 18.0 { counted(months.round().max(1.0), "month") } else { counted(years.round(), "year") }
    };
    match row.lasts_years {
        Some(lasts) if lasts > row.keeps_years => format!("keeps {}; goes off half used", years(row.keeps_years)),
        Some(lasts) => years(lasts),
        None => String::new(),
    }
}

fn counted(number: f64, thing: &str) -> String {
    if number <= 1.0 { format!("{number} {thing}") } else { format!("{number} {thing}s") }
}

/// The needs of one machine or job: its name, and each part with its need's short name.
pub type Places<'a> = (&'a str, Vec<(&'a str, &'a str)>);

/// Needs by name, a machine or job at a time.
#[must_use]
pub fn places<'a>(all: &'a [NeedRow], wanted: &[String]) -> Vec<Places<'a>> {
    let mut groups: Vec<Places<'a>> = Vec::new();
    for need in all.iter().filter(|need| wanted.contains(&need.id)) {
        let (whole, part) = match (&need.machine, &need.point, &need.job, &need.step) {
            (Some(machine), Some(point), _, _) => (machine.as_str(), point.as_str()),
            (_, _, Some(job), Some(step)) => (job.as_str(), step.as_str()),
            _ => continue,
        };
        match groups.iter_mut().find(|(name, _)| *name == whole) {
            Some((_, parts)) => parts.push((part, &need.id)),
            None => groups.push((whole, vec![(part, &need.id)])),
        }
    }
    groups
}

/// Things said of several places, each once, with the places.
#[must_use]
pub fn gathered<'a>(said: impl Iterator<Item = (&'a str, &'a [String])>) -> Vec<(String, &'a str)> {
    let mut all: Vec<(&str, Vec<&str>)> = Vec::new();
    for (place, texts) in said {
        for text in texts {
            match all.iter_mut().find(|(known, _)| known == text) {
                Some((_, places)) => places.push(place),
                None => all.push((text, vec![place])),
            }
        }
    }
    all.into_iter().map(|(text, places)| (places.join(", "), text)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nobody_measures_a_syringe_full_in_ounces() {
        assert_eq!([0.002, 0.2, 3.0].map(|ml| amount(Dose::ml(ml), System::Inch)), ["2 µL", "5 drops", "3 mL"]);
        assert_eq!(amount(Dose::ml(946.353), System::Inch), "1 qt(US)");
    }

    #[test]
    fn eight_hours_or_two_weeks_are_not_every_day() {
        let of = |running_hours, days, with| is_daily(&EveryRow { running_hours, days, at_latest: None, by_calendar: false, with });
        assert!(
            of(Some(2.0), None, None)
                && of(Some(2.0), Some(3.0), None)
                && of(None, Some(1.0), None)
                && of(Some(8.0), Some(14.0), Some(With::Use))
        );
        assert!(!of(None, None, Some(With::Job)), "a job comes round with the work, not with the day");
        assert!(!of(Some(8.0), Some(14.0), None) && !of(Some(40.0), None, None) && !of(None, Some(7.0), None));
    }
}
