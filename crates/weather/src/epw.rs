//! `EnergyPlus`' weather file: eight lines about the place, then one line an hour with 35 values.

use formulas::humid_air::saturation_pascals;

use crate::{HUMIDITY, Hour, MONTH, PRESSURE, TEMPERATURE, WeatherError, cell, month};

const HEADING_LINES: usize = 8;
/// Places of the values in a line.
const AT_MONTH: usize = 1;
const AT_TEMPERATURE: usize = 6;
const AT_DEW_POINT: usize = 7;
const AT_HUMIDITY: usize = 8;
const AT_PRESSURE: usize = 9;
/// How the format writes a value nobody measured.
const MISSING: [(usize, f64); 4] = [(AT_TEMPERATURE, 99.9), (AT_DEW_POINT, 99.9), (AT_HUMIDITY, 999.0), (AT_PRESSURE, 999_999.0)];
/// So many gaps are carried over from the hour before.
const GAPS: usize = 48;

pub(crate) fn read(text: &str) -> Result<Vec<Hour>, WeatherError> {
    let mut last = Hour { celsius: 10.0, humidity: 0.8, pascals: 101_325.0, month: 1 };
    let mut gaps = 0;
    let mut hours = Vec::with_capacity(crate::HOURS);
    for (place, row) in text.lines().enumerate().skip(HEADING_LINES).filter(|(_, row)| !row.trim().is_empty()) {
        let line = place + 1;
        let cells: Vec<&str> = row.split(',').collect();
        let number = |place: usize, (what, limits)| {
            let text = cells.get(place).copied();
            let missing = MISSING.iter().find(|(at, _)| *at == place).map(|(_, value)| *value);
            let said = text.and_then(|text| text.trim().parse::<f64>().ok());
            if said.is_some() && said == missing { Ok(None) } else { cell(line, what, text, limits).map(Some) }
        };
        let celsius = number(AT_TEMPERATURE, TEMPERATURE)?;
        let percent = match number(AT_HUMIDITY, HUMIDITY)? {
            Some(percent) => Some(percent),
            None => number(AT_DEW_POINT, ("the dew point, °C,", TEMPERATURE.1))?
                .zip(celsius)
                .map(|(dew, t)| 100.0 * (saturation_pascals(dew) / saturation_pascals(t)).min(1.0)),
        };
        let pascals = number(AT_PRESSURE, PRESSURE)?;
        gaps += [celsius, percent, pascals].iter().filter(|value| value.is_none()).count();
        let hour = Hour {
            celsius: celsius.unwrap_or(last.celsius),
            humidity: percent.map_or(last.humidity, |percent| percent / 100.0),
            pascals: pascals.unwrap_or(last.pascals),
            month: month(cell(line, MONTH.0, cells.get(AT_MONTH).copied(), MONTH.1)?),
        };
        hours.push(hour);
        last = hour;
    }
    if gaps > GAPS { Err(WeatherError::Gaps { found: gaps, most: GAPS }) } else { Ok(hours) }
}
