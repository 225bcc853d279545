//! Hours of outdoor air: read from typical-year files, or made of monthly values.
//!
//! Three open formats are read: the CSV of PVGIS' typical meteorological year, `EnergyPlus`' weather file, and the American TMY3 file. All
//! give humidity over water.
//!
//! **Invariant:** nothing here opens a file; text comes in, hours go out.

mod epw;
mod months;
mod pvgis;
mod tmy3;

pub use formulas::sweating::Hour;
pub use months::Months;

/// Hours of a year; of a leap year there may be a day more.
pub const HOURS: usize = 8760;

/// Why a text gives no year.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum WeatherError {
    /// None of the formats.
    #[error(
        "this is neither a typical year of PVGIS (a CSV with a line that begins with `time(UTC)`) nor an EnergyPlus weather file (its \
         first line begins with `LOCATION`) nor a TMY3 file (its second line begins with `Date (MM/DD/YYYY)`)"
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
    /// No whole number of years, or too many.
    #[error("{found} hours are no whole years of 8760 or 8784 hours, or more than {most} of them: the file is cut off, or of another kind")]
    NotYears {
        /// How many there are.
        found: usize,
        /// The most years that are read.
        most: usize,
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

/// Reads a year in any of the formats.
///
/// # Errors
/// [`WeatherError`], with the line where there is one.
///
/// # Example
/// ```
/// assert!(weather::read("not weather").is_err());
/// ```
pub fn read(text: &str) -> Result<Vec<Hour>, WeatherError> {
    let hours = hours(text)?;
    match whole_years(hours.len()) {
        Some(1) => Ok(hours),
        _ => Err(WeatherError::NotAYear { found: hours.len() }),
    }
}

/// The most years that are read at once: more than any station's normals.
pub const MOST_YEARS: usize = 40;

/// Reads one year, or several one after another, in any of the formats; with their number.
///
/// # Errors
/// As [`read`], but [`WeatherError::NotYears`] where the hours are no whole years.
pub fn read_years(text: &str) -> Result<(Vec<Hour>, usize), WeatherError> {
    let hours = hours(text)?;
    match whole_years(hours.len()) {
        Some(years) if years <= MOST_YEARS => Ok((hours, years)),
        _ => Err(WeatherError::NotYears { found: hours.len(), most: MOST_YEARS }),
    }
}

/// How many years so many hours are, any of them with a day more; none where a part of one is left over.
fn whole_years(hours: usize) -> Option<usize> {
    let (years, over) = (hours / HOURS, hours % HOURS);
    (years > 0 && over % 24 == 0 && over <= 24 * years).then_some(years)
}

fn hours(text: &str) -> Result<Vec<Hour>, WeatherError> {
    let text = text.trim_start_matches('\u{feff}');
    if text.starts_with("LOCATION") {
        epw::read(text)
    } else if text.lines().any(|line| line.starts_with(pvgis::HEADING)) {
        pvgis::read(text)
    } else if text.lines().nth(1).is_some_and(|line| line.starts_with(tmy3::HEADING)) {
        tmy3::read(text)
    } else {
        Err(WeatherError::Unknown)
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
