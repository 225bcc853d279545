//! How many hours a machine has run: by its meter where it is read, else by its hours a week.

use jiff::civil::Date;

use super::days_between;

/// What an hour meter showed on a day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// The day.
    pub day: Date,
    /// Running hours.
    pub hours: f64,
}

/// The running hours of a machine over the days.
pub(super) struct Meter {
    /// In the order of the days, never falling.
    readings: Vec<Reading>,
    per_day: f64,
}

impl Meter {
    /// Of these readings. A meter that fell was changed; what it showed before says nothing about what it shows now.
    pub fn new(mut readings: Vec<Reading>, per_day: f64) -> Self {
        readings.sort_by(|a, b| a.day.cmp(&b.day).then(a.hours.total_cmp(&b.hours)));
        let changed = readings.windows(2).rposition(|pair| pair[1].hours < pair[0].hours);
        readings.drain(..changed.map_or(0, |place| place + 1));
        Self { readings, per_day }
    }

    /// What it shows at the end of a day: between two readings in proportion, before and after them by the hours a week.
    pub fn at(&self, day: Date) -> f64 {
        const BEGINNING: Date = jiff::civil::date(2000, 1, 1);
        let beyond = |from: Date, hours: f64| hours + self.per_day * f64::from(days_between(from, day));
        let next = self.readings.partition_point(|reading| reading.day <= day);
        match (next.checked_sub(1).map(|last| self.readings[last]), self.readings.get(next)) {
            (None, None) => beyond(BEGINNING, 0.0),
            (Some(one), None) => beyond(one.day, one.hours),
            (None, Some(one)) => beyond(one.day, one.hours),
            (Some(one), Some(other)) => {
                let share = f64::from(days_between(one.day, day)) / f64::from(days_between(one.day, other.day));
                one.hours + share * (other.hours - one.hours)
            }
        }
    }

    /// What it showed when something was done, where that is known of the meter there is now.
    pub fn when_done(&self, day: Date, hours: Option<f64>) -> f64 {
        let known = hours.filter(|hours| self.readings.contains(&Reading { day, hours: *hours }));
        known.unwrap_or_else(|| self.at(day))
    }

    /// Whether it was read after a day.
    pub fn read_after(&self, day: Date) -> bool {
        self.readings.last().is_some_and(|last| last.day > day)
    }

    /// The last reading.
    pub fn last(&self) -> Option<Reading> {
        self.readings.last().copied()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    fn meter(readings: &[(i8, f64)]) -> Meter {
        Meter::new(readings.iter().map(|(day, hours)| Reading { day: date(2026, 6, *day), hours: *hours }).collect(), 0.5)
    }

    #[test]
    fn hours_between_readings_go_by_proportion() {
        // By hand: 20 h in 10 days are 2 h a day; from the last reading on, half an hour a day.
        let meter = meter(&[(1, 100.0), (11, 120.0)]);
        assert!((meter.at(date(2026, 6, 4)) - 106.0).abs() < 1e-12);
        assert!((meter.at(date(2026, 6, 15)) - 122.0).abs() < 1e-12);
        assert!((meter.at(date(2026, 5, 30)) - 99.0).abs() < 1e-12);
    }

    #[test]
    fn a_changed_meter_starts_anew() {
        let meter = meter(&[(1, 900.0), (11, 920.0), (12, 1.0), (14, 3.0)]);
        assert!((meter.at(date(2026, 6, 13)) - 2.0).abs() < 1e-12);
        // The old meter's figure is not known to the new one: half an hour a day back from its first reading (by hand).
        assert!((meter.when_done(date(2026, 6, 10), Some(918.0)) - 0.0).abs() < 1e-12);
    }
}
