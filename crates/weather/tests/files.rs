//! Real files against another library's reading of them, and damaged ones.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

use std::collections::HashMap;
use std::fmt::Write as _;
use std::path::Path;

use proptest::prelude::*;
use weather::{Hour, Months, WeatherError, read, read_years};

fn typical_year() -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/weather/pvgis_tmy_45N_8E.csv");
    std::fs::read_to_string(path).unwrap()
}

/// Every monthly figure of the file that is here, as `pandas` 3.1.1 works it from the rows as printed.
#[test]
fn weather_monthly_file() {
    let hours = read(&typical_year()).unwrap();
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/published/weather_monthly.csv");
    let rows: Vec<HashMap<String, String>> = csv::Reader::from_path(path).unwrap().deserialize().map(Result::unwrap).collect();
    let mine: Vec<_> = rows.iter().filter(|row| row["file"].ends_with("pvgis_tmy_45N_8E.csv")).collect();
    assert_eq!(mine.len(), 35);
    for row in mine {
        let month: u8 = row["month"].parse().unwrap();
        let of_month: Vec<&Hour> = hours.iter().filter(|hour| month == 0 || hour.month == month).collect();
        let count = row["n_hours"].parse::<usize>().unwrap();
        assert_eq!(of_month.len(), count, "{}", row["id"]);
        let many = f64::from(u32::try_from(count).unwrap());
        let percent = |hour: &&Hour| hour.humidity * 100.0;
        let found = match row["quantity"].as_str() {
            "mean_relative_humidity" => of_month.iter().map(percent).sum::<f64>() / many,
            "max_relative_humidity" => of_month.iter().map(percent).fold(0.0, f64::max),
            "hours_RH_ge_80" => of_month.iter().map(|hour| if percent(hour) >= 80.0 { 1.0 } else { 0.0 }).sum(),
            "mean_dry_bulb" => of_month.iter().map(|hour| hour.celsius).sum::<f64>() / many,
            "min_dry_bulb" => of_month.iter().map(|hour| hour.celsius).fold(f64::INFINITY, f64::min),
            other => panic!("no such quantity: {other}"),
        };
        let (expected, allowed) = (row["expected"].parse::<f64>().unwrap(), row["abs_tol"].parse::<f64>().unwrap());
        assert!((found - expected).abs() <= allowed, "{}: {found} instead of {expected} ± {allowed}", row["id"]);
    }
}

/// An `EnergyPlus` file written here after the format's description, with the hours of the typical year.
fn energy_plus(hours: &[Hour], change: impl Fn(usize, &mut Vec<String>)) -> String {
    let mut text = String::from("LOCATION,Test,-,-,-,0,45.0,8.0,1.0,250.0\nDESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\n");
    text.push_str(
        "GROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,-\nCOMMENTS 2,-\nDATA PERIODS,1,1,Data,Sunday,1/1,12/31\n",
    );
    for (place, hour) in hours.iter().enumerate() {
        let mut cells: Vec<String> = ["2018", &hour.month.to_string(), "1", "1", "60", "-"].map(str::to_owned).to_vec();
        let dew = 5.0;
        cells.extend([hour.celsius, dew, hour.humidity * 100.0, hour.pascals].map(|value| format!("{value:.2}")));
        cells.extend((10..35).map(|_| "0".to_owned()));
        change(place, &mut cells);
        writeln!(text, "{}", cells.join(",")).unwrap();
    }
    text
}

#[test]
fn energy_plus_file() {
    let hours = read(&typical_year()).unwrap();
    let again = read(&energy_plus(&hours, |_, _| {})).unwrap();
    assert_eq!(again.len(), hours.len());
    assert!(hours.iter().zip(&again).all(|(a, b)| (a.celsius - b.celsius).abs() < 0.006 && a.month == b.month));
    // A value nobody measured is carried over, or worked from the dew point; too many are refused.
    let gappy = energy_plus(&hours, |place, cells| {
        if place == 100 {
            cells[6] = "99.9".to_owned();
        } else if place == 200 {
            cells[8] = "999".to_owned();
        }
    });
    let filled = read(&gappy).unwrap();
    assert!((filled[100].celsius - filled[99].celsius).abs() < 1e-12);
    assert!(filled[200].humidity > 0.0);
    let holes = energy_plus(&hours, |_, cells| cells[6] = "99.9".to_owned());
    assert!(matches!(read(&holes), Err(WeatherError::Gaps { .. })));
}

/// A file of the American collection written here after the format's description, with the hours of the typical year.
#[test]
fn american_file() {
    let hours = read(&typical_year()).unwrap();
    let mut text = String::from(
        "700000,\"SOMEWHERE\",XX,-5.0,45.000,8.000,250\nDate (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),Dry-bulb (C),RHum (%),Pressure (mbar)\n",
    );
    for hour in &hours {
        let (t, humidity, millibar) = (hour.celsius, hour.humidity * 100.0, hour.pascals / 100.0);
        writeln!(text, "{:02}/01/1988,01:00,0,{t:.2},{humidity:.2},{millibar:.1}", hour.month).unwrap();
    }
    let again = read(&text).unwrap();
    let close = |a: &Hour, b: &Hour| (a.celsius - b.celsius).abs() < 0.006 && (a.pascals - b.pascals).abs() < 6.0 && a.month == b.month;
    assert!(hours.iter().zip(&again).all(|(a, b)| close(a, b)));
    assert!(matches!(read(&text.replace("RHum (%)", "RH")), Err(WeatherError::NoColumn { line: 2, column: "RHum (%)" })));
    assert!(matches!(read(&text.replacen("01/01/1988", "13/01/1988", 1)), Err(WeatherError::Impossible { line: 3, .. })));
}

#[test]
fn nonsense_is_refused() {
    let text = typical_year();
    assert_eq!(read(""), Err(WeatherError::Unknown));
    assert_eq!(read("month,temperature\n1,5"), Err(WeatherError::Unknown));
    assert!(matches!(read(&text.replace("T2m,", "T3m,")), Err(WeatherError::NoColumn { column: "T2m", .. })));
    let cut: String = text.lines().take(2000).map(|line| format!("{line}\n")).collect();
    assert!(matches!(read(&cut), Err(WeatherError::NotAYear { .. })));
    for (wrong, right) in [("1.67,400.0", "1.67,100.0"), ("NaN,100.0", "1.67,100.0"), ("-300,100.0", "1.67,100.0")] {
        assert!(matches!(read(&text.replacen(right, wrong, 1)), Err(WeatherError::Impossible { .. })), "{wrong}");
    }
    assert!(matches!(read(&text.replacen("1.67,100.0", "warm,100.0", 1)), Err(WeatherError::Unreadable { .. })));
    assert!(matches!(read(&text.replacen("20180101:0600", "20181301:0600", 1)), Err(WeatherError::Impossible { .. })));
}

/// Years are read one after another, whole or not at all.
#[test]
fn several_years_follow_each_other() {
    let text = typical_year();
    let (heading, hours): (Vec<&str>, Vec<&str>) = {
        let start = text.lines().position(|line| line.starts_with("time(UTC)")).unwrap() + 1;
        (text.lines().take(start).collect(), text.lines().skip(start).take_while(|line| !line.trim().is_empty()).collect())
    };
    let of =
        |count: usize| format!("{}\n{}\n", heading.join("\n"), hours.iter().cycle().take(count).copied().collect::<Vec<_>>().join("\n"));
    let years = |count: usize| read_years(&of(count)).map(|(hours, years)| (hours.len(), years));
    assert_eq!(years(8760), Ok((8760, 1)));
    assert_eq!(years(8784), Ok((8784, 1)));
    assert_eq!(years(30 * 8760 + 7 * 24), Ok((262_968, 30)));
    for wrong in [8759, 8761, 8808, 2 * 8760 + 72, 41 * 8760] {
        assert_eq!(years(wrong), Err(WeatherError::NotYears { found: wrong, most: 40 }));
    }
    assert_eq!(read(&of(2 * 8760)), Err(WeatherError::NotAYear { found: 17_520 }));
}

/// A year made of months has their means, and half of it lies south.
#[test]
fn months_keep_their_means() {
    let mean = [4.0, 4.0, 6.0, 8.5, 11.5, 14.5, 16.5, 16.5, 14.0, 10.5, 7.0, 4.5];
    let months = Months { mean, swing: [5.0; 12], humidity: [0.8; 12] };
    let hours = months.hours();
    assert_eq!(hours.len(), weather::HOURS);
    let of_all = |value: fn(&Hour) -> f64| hours.iter().map(value).sum::<f64>() / 8760.0;
    assert!((of_all(|hour| hour.celsius) - mean.iter().sum::<f64>() / 12.0).abs() < 0.2);
    assert!((of_all(|hour| hour.humidity) - 0.8).abs() < 0.04);
    let july = |hours: &[Hour]| hours.iter().filter(|hour| hour.month == 7).map(|hour| hour.celsius).sum::<f64>() / 744.0;
    assert!((july(&months.south().hours()) - 4.5).abs() < 1.0);
    assert!((july(&hours) - 16.5).abs() < 1.0);
}

/// The months of a real year, made into hours again, wet a cold machine about as much as the real hours do (PVGIS, as above).
#[test]
fn months_wet_a_machine_as_the_real_year_does() {
    use formulas::corrosion::Wear;
    use formulas::sweating::{Body, Heat, Room, simulate};
    fn mean(values: impl IntoIterator<Item = f64>) -> f64 {
        let (sum, count) = values.into_iter().fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
        sum / count
    }
    fn swing(day: &[Hour]) -> f64 {
        let celsius = || day.iter().map(|hour| hour.celsius);
        celsius().fold(f64::NEG_INFINITY, f64::max) - celsius().fold(f64::INFINITY, f64::min)
    }
    let real = read(&typical_year()).unwrap();
    let of_month: Vec<&[Hour]> = real.chunk_by(|one, next| one.month == next.month).collect();
    let months = Months {
        mean: std::array::from_fn(|month| mean(of_month[month].iter().map(|hour| hour.celsius))),
        swing: std::array::from_fn(|month| mean(of_month[month].chunks(24).map(swing))),
        humidity: std::array::from_fn(|month| mean(of_month[month].iter().map(|hour| hour.humidity))),
    };
    let made = months.hours();
    let damp = |hours: &[Hour]| mean(hours.iter().map(|hour| hour.humidity));
    assert!((damp(&made) - damp(&real)).abs() < 0.05);
    let room = Room { volume: 40.0, changes: 0.5, envelope: 200.0, holds: 4e6, water: 0.0, heat: Heat::None, dehumidifier: None };
    let body = Body { area: 3.0, holds: 124e3, convection: 3.0, radiation: 1.0, cover: None, wear: Wear::default() };
    let year = |hours: &[Hour]| simulate(hours, &room, &[body], 12).unwrap().bodies.remove(0);
    let (of_real, of_made) = (year(&real), year(&made));
    assert!((0.5..2.0).contains(&(of_made.wet_hours / of_real.wet_hours)), "{} h made, {} h real", of_made.wet_hours, of_real.wet_hours);
    assert!((0.5..2.0).contains(&(of_made.condensed / of_real.condensed)), "{} kg/m² made, {} real", of_made.condensed, of_real.condensed);
}

proptest! {
    /// Whatever the bytes, there is an answer.
    #[test]
    fn nothing_breaks_it(text in "\\PC*", lines in proptest::collection::vec("[0-9a-zA-Z:,.\\- ]{0,40}", 0..40)) {
        let _ = read(&text);
        let _ = read(&format!("LOCATION\n{}", lines.join("\n")));
        let _ = read(&format!("time(UTC),T2m,RH,SP\n{}", lines.join("\n")));
    }
}
