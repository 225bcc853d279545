//! The typical meteorological year of PVGIS, as CSV.

use crate::{HUMIDITY, Hour, MONTH, PRESSURE, TEMPERATURE, WeatherError, cell, month};

/// How the line of headings begins.
pub(crate) const HEADING: &str = "time(UTC)";

/// Reads the hours; what stands before the headings and after the first empty line is about the file.
pub(crate) fn read(text: &str) -> Result<Vec<Hour>, WeatherError> {
    let mut lines = text.lines().enumerate().map(|(place, line)| (place + 1, line));
    let (line, heading) = lines.find(|(_, line)| line.starts_with(HEADING)).ok_or(WeatherError::Unknown)?;
    let column =
        |column: &'static str| heading.split(',').position(|name| name.trim() == column).ok_or(WeatherError::NoColumn { line, column });
    let (temperature, humidity, pressure) = (column("T2m")?, column("RH")?, column("SP")?);
    lines
        .take_while(|(_, line)| !line.trim().is_empty())
        .map(|(line, row)| {
            let cells: Vec<&str> = row.split(',').collect();
            let number = |place: usize, (what, limits)| cell(line, what, cells.get(place).copied(), limits);
            Ok(Hour {
                celsius: number(temperature, TEMPERATURE)?,
                humidity: number(humidity, HUMIDITY)? / 100.0,
                pascals: number(pressure, PRESSURE)?,
                // The time is written `20180101:0600`.
                month: month(cell(line, MONTH.0, row.get(4..6), MONTH.1)?),
            })
        })
        .collect()
}
