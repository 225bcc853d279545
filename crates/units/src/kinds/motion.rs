//! Velocity, speed of rotation, frequency, time, volume rate, usage. A year is 365.25 days; a month is a twelfth of it.

use super::{DAY, IMPERIAL_GALLON, US_GALLON, WEEK, YEAR};
use crate::quantity::quantity;
use crate::{Frequency, Quantity, QuantityError, Time, parse, spelling};

quantity! {
    Velocity, "a velocity";
    Metric "m/min" [] 1.0, 60.0; Significant(3), from 0.016_666;
    Metric "mm/min" [] 1.0, 6e4; Significant(3), from 0.0;
    Metric "m/s" [] 1.0, 1.0; Significant(3), from 10.0;
    Metric "mm/s" [] 1.0, 1e3; Significant(3);
    Metric "km/h" ["kph"] 1.0, 3.6; Significant(3);
    Inch "ft/min" ["fpm", "sfm", "sfpm", "surface ft/min"] 3048.0, 60e4; Significant(3), from 0.016_666;
    Inch "in/min" ["ipm"] 254.0, 60e4; Significant(3), from 0.0;
    Inch "ft/s" [] 3048.0, 1e4; Significant(3);
}

quantity! {
    AngularVelocity, "a speed of rotation";
    Both "rpm" ["rev/min", "r/min", "1/min", "/min", "turns/min"] std::f64::consts::TAU, 60.0; Significant(4), from 0.0;
    Both "rev/s" ["r/s", "rps"] std::f64::consts::TAU, 1.0; Significant(4);
    Both "rad/s" [] 1.0, 1.0; Significant(4);
}

quantity! {
    Frequency, "a frequency", within 0.0, f64::INFINITY, named how_often;
    Both "/year" ["1/year", "yearly", "/yr", "/annum", "annually"] 1.0, YEAR; Significant(3), from 0.0;
    Both "/month" ["1/month", "monthly"] 12.0, YEAR; Significant(3), from 12.0 / YEAR;
    Both "/week" ["1/week", "weekly"] 1.0, WEEK; Significant(3), from 1.0 / WEEK;
    Both "/day" ["1/day", "daily", "/d", "1/d"] 1.0, DAY; Significant(3), from 1.0 / DAY;
    Both "/h" ["1/h", "hourly", "/hour", "/hr", "1/hour", "1/hr", "ACH", "air changes/h", "air changes/hour"] 1.0, 3600.0; Significant(3), from 0.1 / 3600.0;
    Both "/min" ["1/min", "/minute"] 1.0, 60.0; Significant(3);
    Both "Hz" ["hertz", "/s", "1/s"] 1.0, 1.0; Significant(3), from 1.0;
}

quantity! {
    Time, "a time", within 0.0, f64::INFINITY;
    Both "h" ["hr", "hrs", "hour", "hours"] 3600.0, 1.0; Significant(3), from 3600.0;
    Both "min" ["mins", "minute", "minutes"] 60.0, 1.0; Significant(3), from 60.0;
    Both "s" ["sec", "secs", "second", "seconds"] 1.0, 1.0; Significant(3), from 0.0;
    Both "day" ["days", "d"] DAY, 1.0; Significant(3), from 2.0 * DAY;
    Both "week" ["weeks", "wk"] WEEK, 1.0; Significant(3), from 2.0 * WEEK;
    Both "month" ["months"] YEAR, 12.0; Significant(3), from YEAR / 6.0;
    Both "year" ["years", "yr", "yrs", "annum"] YEAR, 1.0; Significant(3), from 2.0 * YEAR;
}

quantity! {
    VolumeRate, "a volume rate", within 0.0, f64::INFINITY;
    Metric "L/min" ["lpm"] 1.0, 6e4; Significant(3), from 1e-2 / 6e4;
    Both "mL/h" ["mL/hr", "cc/h"] 1.0, 3.6e9; Significant(3), from 0.0;
    Metric "mL/min" ["cc/min"] 1.0, 6e7; Significant(3);
    Metric "mL/day" [] 1.0, 1e6 * DAY; Significant(3);
    Metric "L/h" ["L/hr"] 1.0, 3.6e6; Significant(3);
    Metric "m³/h" ["m³/hr", "cmh"] 1.0, 3600.0; Significant(3), from 1.0 / 3600.0;
    Metric "L/s" [] 1.0, 1e3; Significant(3);
    Metric "L/year" [] 1.0, 1e3 * YEAR; Significant(3);
    Metric "m³/s" [] 1.0, 1.0; Significant(3);
    Inch "cfm" ["ft³/min", "scfm"] 0.028_316_846_592, 60.0; Significant(3), from 1e-2 / 6e4;
    Inch "gal(US)/min" ["US gal/min", "US gpm"] US_GALLON, 60.0; Significant(3);
    Inch "gal(imp)/min" ["imp gal/min", "UK gal/min"] IMPERIAL_GALLON, 60.0; Significant(3);
}

/// "daily", "once a week", "twice a day", "every 3 months", "every month".
fn how_often(text: &str) -> Option<Result<Frequency, QuantityError>> {
    let lower = text.to_lowercase();
    if let Some(gap) = lower.strip_prefix("every ") {
        let gap = gap.trim();
        let gap = if gap.starts_with(|c: char| c.is_numeric() || c == '.') { gap.to_owned() } else { format!("1 {gap}") };
        return Some(match parse::<Time>(&gap) {
            Ok(gap) if gap.base() > 0.0 => Ok(Frequency::from_base(1.0 / gap.base())),
            Ok(_) => Err(QuantityError::DividedByZero { text: text.to_owned() }),
            Err(error) => Err(error),
        });
    }
    let (times, unit) = if let Some(unit) = lower.strip_prefix("once ") {
        (1.0, unit)
    } else if let Some(unit) = lower.strip_prefix("twice ") {
        (2.0, unit)
    } else {
        (1.0, lower.as_str())
    };
    spelling::find::<Frequency>(&spelling::words(unit)).map(|unit| Ok((unit.to)(times)))
}
