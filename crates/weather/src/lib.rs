//! Hours of outdoor air: read from typical-year files, or made of monthly values.
//!
//! Two open formats are read: the CSV of PVGIS' typical meteorological year, and `EnergyPlus`' weather file. Both give humidity over water.
//!
//! **Invariant:** nothing here opens a file; text comes in, hours go out.

mod epw;
mod months;
mod pvgis;

pub use formulas::sweating::Hour;
pub use months::Months;

/// Hours of a year; of a leap year there may be a day more.
pub const HOURS: usize = 8760;

/// Why a text gives no year.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum WeatherError {
    /// Neither format.
    #[error(
        "this is neither a typical year of PVGIS (a CSV with a line that begins with `time(UTC)`) nor an EnergyPlus weather file (its \
         first line begins with `LOCATION`)"
    )]
    Unknown,
    /// A column is missing.
    #[error("line {line}: the heading has no column `{column}`; load the file again, as CSV, with all its columns")]
    NoColumn {
        /// Line of the heading.
        line: usize,
        /// The column.
        column: &'static str,
    },
    /// A cell cannot be read.
    #[error("line {line}: {what} is “{text}”, which is no number it could be; load the file again")]
    Unreadable {
        /// Line.
        line: usize,
        /// What stands there.
        what: &'static str,
        /// As it stands there.
        text: String,
    },
    /// A value that no weather has.
    #[error(
        "line {line}: {what} is {value}; between {low} and {high} would be weather, so the file is damaged or its columns are mixed up"
    )]
    Impossible {
        /// Line.
        line: usize,
        /// What stands there.
        what: &'static str,
        /// Its value.
        value: f64,
        /// The least there is.
        low: f64,
        /// The most there is.
        high: f64,
    },
    /// Too few or too many hours.
    #[error("{found} hours are no year, which has 8760 (or 8784): the file is cut off, or holds more than one")]
    NotAYear {
        /// How many there are.
        found: usize,
    },
    /// Too many gaps.
    #[error("{found} values are missing; up to {most} are carried over from the hour before, so take another file")]
    Gaps {
        /// How many.
        found: usize,
        /// How many are carried over.
        most: usize,
    },
}

/// Reads a year in either format.
///
/// # Errors
/// [`WeatherError`], with the line where there is one.
///
/// # Example
/// ```
/// assert!(weather::read("not weather").is_err());
/// ```
pub fn read(text: &str) -> Result<Vec<Hour>, WeatherError> {
    let text = text.trim_start_matches('\u{feff}');
    let hours = if text.starts_with("LOCATION") {
        epw::read(text)?
    } else if text.lines().any(|line| line.starts_with(pvgis::HEADING)) {
        pvgis::read(text)?
    } else {
        return Err(WeatherError::Unknown);
    };
    match hours.len() {
        HOURS | 8784 => Ok(hours),
        found => Err(WeatherError::NotAYear { found }),
    }
}

/// A number in a cell, within what weather does.
fn cell(line: usize, what: &'static str, text: Option<&str>, (low, high): (f64, f64)) -> Result<f64, WeatherError> {
    let text = text.unwrap_or_default().trim();
    let value: f64 = text.parse().map_err(|_| WeatherError::Unreadable { line, what, text: text.chars().take(20).collect() })?;
    // A value that is not a number lies in no range.
    if (low..=high).contains(&value) { Ok(value) } else { Err(WeatherError::Impossible { line, what, value, low, high }) }
}

const TEMPERATURE: (&str, (f64, f64)) = ("the air temperature, °C,", (-90.0, 60.0));
/// Stations report a hair above saturation.
const HUMIDITY: (&str, (f64, f64)) = ("the relative humidity, %,", (0.0, 105.0));
const PRESSURE: (&str, (f64, f64)) = ("the air pressure, Pa,", (40_000.0, 110_000.0));
const MONTH: (&str, (f64, f64)) = ("the month", (1.0, 12.0));

/// A month that has been read as a number.
fn month(number: f64) -> u8 {
    (1..=12).find(|month| f64::from(*month) >= number).unwrap_or(12)
}
