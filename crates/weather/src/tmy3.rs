//! The typical year of the third American collection (TMY3), as CSV: a line about the place, a line of headings, then the hours.

use crate::{HUMIDITY, Hour, MONTH, PRESSURE, TEMPERATURE, WeatherError, cell, month};

/// How the line of headings begins.
pub(crate) const HEADING: &str = "Date (MM/DD/YYYY)";
/// Line of the headings.
const LINE: usize = 2;

pub(crate) fn read(text: &str) -> Result<Vec<Hour>, WeatherError> {
    let mut lines = text.lines().enumerate().map(|(place, line)| (place + 1, line)).skip(LINE - 1);
    let (line, heading) = lines.next().ok_or(WeatherError::Unknown)?;
    let column =
        |column: &'static str| heading.split(',').position(|name| name.trim() == column).ok_or(WeatherError::NoColumn { line, column });
    let (temperature, humidity, pressure) = (column("Dry-bulb (C)")?, column("RHum (%)")?, column("Pressure (mbar)")?);
    lines
        .filter(|(_, row)| !row.trim().is_empty())
        .map(|(line, row)| {
            let cells: Vec<&str> = row.split(',').collect();
            let number = |place: usize, (what, limits)| cell(line, what, cells.get(place).copied(), limits);
            let (what, (low, high)) = PRESSURE;
            Ok(Hour {
                celsius: number(temperature, TEMPERATURE)?,
                humidity: number(humidity, HUMIDITY)? / 100.0,
                // The file has millibar, which are hundreds of pascals.
                pascals: number(pressure, (what, (low / 100.0, high / 100.0)))? * 100.0,
                // The date is written `01/31/1988`.
                month: month(cell(line, MONTH.0, row.get(..2), MONTH.1)?),
            })
        })
        .collect()
}
