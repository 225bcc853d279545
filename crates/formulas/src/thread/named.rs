//! Threads by the names people give them: `M8`, `M8x1`, `1/4-20`, `#10-32`, `2 BA`, `1/4 BSW`, `1/4-32 ME`.

use std::str::FromStr;

use super::{Form, Thread};
use crate::error::FormulaError;

/// Diameters and pitches of the coarse metric threads, mm (ISO 261).
pub const METRIC_COARSE: &[(f64, f64)] = &[
    (1.0, 0.25),
    (1.2, 0.25),
    (1.4, 0.3),
    (1.6, 0.35),
    (1.8, 0.35),
    (2.0, 0.4),
    (2.2, 0.45),
    (2.5, 0.45),
    (3.0, 0.5),
    (3.5, 0.6),
    (4.0, 0.7),
    (4.5, 0.75),
    (5.0, 0.8),
    (6.0, 1.0),
    (7.0, 1.0),
    (8.0, 1.25),
    (10.0, 1.5),
    (12.0, 1.75),
    (14.0, 2.0),
    (16.0, 2.0),
    (18.0, 2.5),
    (20.0, 2.5),
    (22.0, 2.5),
    (24.0, 3.0),
    (27.0, 3.0),
    (30.0, 3.5),
    (33.0, 3.5),
    (36.0, 4.0),
    (39.0, 4.0),
];

/// Sixteenths of an inch and turns to the inch of Whitworth's coarse threads (BS 84, *from memory*).
const COARSE_WHITWORTH: &[(f64, f64)] = &[
    (2.0, 40.0),
    (3.0, 24.0),
    (4.0, 20.0),
    (5.0, 18.0),
    (6.0, 16.0),
    (7.0, 14.0),
    (8.0, 12.0),
    (10.0, 11.0),
    (12.0, 10.0),
    (14.0, 9.0),
    (16.0, 8.0),
];

/// The same of the fine series, BSF (BS 84, *from memory*).
const FINE_WHITWORTH: &[(f64, f64)] =
    &[(3.0, 32.0), (4.0, 26.0), (5.0, 22.0), (6.0, 20.0), (7.0, 18.0), (8.0, 16.0), (10.0, 14.0), (12.0, 12.0), (14.0, 11.0), (16.0, 10.0)];

/// Turns to the inch of the model-engineer series, either of which is made for every size; *common practice*.
const MODEL_ENGINEER: (f64, f64) = (40.0, 32.0);

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-6
}

fn pitch_of(table: &[(f64, f64)], size: f64) -> Option<f64> {
    table.iter().find(|(known, _)| same(*known, size)).map(|(_, pitch)| *pitch)
}

/// A size in inches: `1/4`, `#10`, `0.25`.
fn inches(text: &str) -> Option<f64> {
    let text = text.trim().trim_end_matches(['"', '″']).trim_end();
    if let Some(number) = text.strip_prefix('#') {
        return number.parse::<u8>().ok().map(|number| 0.06 + 0.013 * f64::from(number));
    }
    match text.split_once('/') {
        Some((above, below)) => Some(above.trim().parse::<f64>().ok()? / below.trim().parse::<f64>().ok()?),
        None => text.parse().ok(),
    }
}

fn metric(text: &str) -> Option<Thread> {
    let text = text.strip_prefix(['M', 'm'])?;
    let (diameter, pitch) = match text.split_once(['x', '×', 'X']) {
        Some((diameter, pitch)) => (diameter.trim().parse().ok()?, pitch.trim().parse().ok()?),
        None => {
            let diameter = text.trim().parse().ok()?;
            (diameter, pitch_of(METRIC_COARSE, diameter)?)
        }
    };
    Some(Thread::metric(diameter, pitch))
}

fn named(text: &str) -> Option<Thread> {
    let text = text.trim();
    if let Some(thread) = metric(text) {
        return Some(thread);
    }
    let upper = text.to_ascii_uppercase();
    if let Some(number) = upper.strip_suffix("BA") {
        return number.trim().parse::<u8>().ok().filter(|number| *number <= 16).map(Thread::british_association);
    }
    for (ending, table) in [("BSW", COARSE_WHITWORTH), ("BSF", FINE_WHITWORTH)] {
        if let Some(size) = upper.strip_suffix(ending) {
            let size = inches(size)?;
            return pitch_of(table, size * 16.0).map(|turns| Thread::inch(Form::Whitworth, size, turns));
        }
    }
    if let Some(size) = upper.strip_suffix("ME") {
        // A name without turns means the finer.
        let (size, turns) =
            size.split_once('-').map_or((size, MODEL_ENGINEER.0), |(size, turns)| (size, turns.trim().parse().unwrap_or(f64::NAN)));
        return (same(turns, MODEL_ENGINEER.0) || same(turns, MODEL_ENGINEER.1))
            .then(|| inches(size).map(|size| Thread::inch(Form::Whitworth, size, turns)))?;
    }
    let (size, turns) = upper.split_once('-')?;
    let turns = turns.trim_end_matches("UNC").trim_end_matches("UNF").trim_end_matches("UNEF").trim_end_matches("UN");
    Some(Thread::inch(Form::Unified, inches(size)?, turns.trim().parse().ok()?))
}

/// ```
/// use formulas::thread::{Form, Thread};
/// use uom::si::length::{inch, millimeter};
/// let thread: Thread = "M8".parse()?;
/// assert!((thread.pitch.get::<millimeter>() - 1.25).abs() < 1e-9);
/// let thread: Thread = "1/4-20 UNC".parse()?;
/// assert!((thread.major.get::<inch>() - 0.25).abs() < 1e-9 && thread.form == Form::Unified);
/// assert!("M8.3".parse::<Thread>().is_err());
/// # Ok::<(), formulas::FormulaError>(())
/// ```
impl FromStr for Thread {
    type Err = FormulaError;

    fn from_str(text: &str) -> Result<Self, FormulaError> {
        let thread = named(text).ok_or_else(|| FormulaError::UnreadableThread { text: text.to_owned() })?;
        super::checked(&thread)?;
        Ok(thread)
    }
}
