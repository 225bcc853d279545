//! A weather file is read or refused; what is read is weather.
#![no_main]

use libfuzzer_sys::fuzz_target;
use weather::{HOURS, Hour, WeatherError, read, read_years};

fuzz_target!(|text: &str| match read_years(text) {
    Ok((hours, _)) => check(&hours),
    // The hours were sound, but few. A year of them takes a thousand times as long, so it is made for one length in sixteen.
    Err(WeatherError::NotYears { found, .. }) if (1..=24).contains(&found) && text.len().is_multiple_of(16) => {
        if let Ok(hours) = read(&repeated(text, found)) {
            check(&hours);
        }
    }
    Err(error) => assert!(!error.to_string().is_empty()),
});

/// The same file with its last lines again and again, until they are a year.
fn repeated(text: &str, hours: usize) -> String {
    let lines: Vec<&str> = text.lines().collect();
    let last: Vec<&str> = lines.iter().copied().filter(|line| !line.trim().is_empty()).rev().take(hours).collect();
    let again = last.iter().rev().cycle().take(HOURS - hours);
    lines.iter().chain(again).flat_map(|line| [line, "\n"]).collect()
}

fn check(hours: &[Hour]) {
    for hour in hours {
        assert!((-90.0..=60.0).contains(&hour.celsius), "{hour:?}");
        assert!((0.0..=1.05).contains(&hour.humidity), "{hour:?}");
        assert!((40_000.0..=110_000.0).contains(&hour.pascals), "{hour:?}");
        assert!((1..=12).contains(&hour.month), "{hour:?}");
    }
}
