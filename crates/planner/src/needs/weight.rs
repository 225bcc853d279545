//! What a need is worth: consequence × frequency.

use reference::Reference;
use shop::Priority;

use crate::need::{Consequence, Weight};

/// A working session at a small machine lasts about two hours; *common practice, no source*.
const SESSION_HOURS: f64 = 2.0;

/// Days of use a year of something that runs so many hours a year, at most one a day.
pub(crate) fn sessions_a_year(hours_a_year: f64) -> f64 {
    (hours_a_year / SESSION_HOURS).clamp(1.0, 365.0)
}

/// The weight of a need that matters so many times a year.
pub(crate) fn weight(consequence: Consequence, times_a_year: f64, priority: Priority, reference: &Reference) -> Weight {
    Weight {
        consequence,
        consequence_weight: reference.consequence(consequence.key()).map_or(0.0, |row| row.weight),
        times_a_year,
        frequency_weight: frequency_weight(times_a_year, reference),
        priority: match priority {
            Priority::Low => 0.5,
            Priority::Normal => 1.0,
            Priority::High => 2.0,
        },
    }
}

/// Between the rows of the data the weight follows the logarithm of the times a year; beyond them it keeps the last row's.
fn frequency_weight(times_a_year: f64, reference: &Reference) -> f64 {
    let mut rows: Vec<(f64, f64)> = reference.frequencies.values().filter_map(|row| Some((row.times_a_year?, row.weight))).collect();
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    let Some(first) = rows.first() else { return 1.0 };
    if times_a_year <= first.0 {
        return first.1;
    }
    for pair in rows.windows(2) {
        let [(low, low_weight), (high, high_weight)] = pair else { continue };
        if times_a_year <= *high {
            let share = (times_a_year / low).ln() / (high / low).ln();
            return low_weight + share * (high_weight - low_weight);
        }
    }
    rows.last().map_or(1.0, |row| row.1)
}
