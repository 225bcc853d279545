//! The sizes that occur in a shop. Beyond them is a slip of the pen, for which a formula would still have a number.

use std::ops::RangeInclusive;

use units::{Dimension, System, parse_any, show_base};

/// The plain numbers that occur in a shop.
pub const NUMBERS: RangeInclusive<f64> = 1e-6..=1e9;

/// The way out where no shop has a quantity of that size, in coherent SI units; none where one may. A field that supposes more than
/// occurs elsewhere may be told of half as much again: steel glows far above what anything else in a shop gets to.
#[must_use]
pub fn no_shop_has(dimension: Dimension, base: f64, supposed: &str) -> Option<String> {
    let (low, mut high) = sizes(dimension);
    if let Ok(supposed) = parse_any(dimension, supposed)
        && supposed > high
    {
        high = 1.5 * supposed;
    }
    let least = if may_be_nothing(dimension) { 0.0 } else { low };
    if (low..=high).contains(&base) || base == least {
        return None;
    }
    let show = |value: f64| show_base(dimension, value, System::Metric);
    Some(format!("Give something from {} to {}.", show(least), show(high)))
}

/// The least and the greatest that occurs in a shop beside nothing at all, in coherent SI units.
fn sizes(dimension: Dimension) -> (f64, f64) {
    const RPM: f64 = std::f64::consts::TAU / 60.0;
    const YEAR: f64 = 31_557_600.0;
    match dimension {
        Dimension::Length => (1e-8, 50.0),
        Dimension::Area => (1e-8, 1e3),
        Dimension::Volume => (1e-9, 1e5),
        Dimension::Mass => (1e-6, 1e4),
        Dimension::MassDensity => (1e-9, 2e4),
        Dimension::Temperature => (213.15, 673.15),
        Dimension::TemperatureDifference => (1e-6, 400.0),
        Dimension::Velocity => (1e-9, 200.0),
        Dimension::AngularVelocity => (0.01 * RPM, 200_000.0 * RPM),
        Dimension::Frequency => (0.02 / YEAR, 1000.0 / 3600.0),
        Dimension::Time => (1.0, 50.0 * YEAR),
        Dimension::Force => (0.01, 1e7),
        Dimension::Torque => (1e-6, 1e5),
        Dimension::Pressure => (1.0, 1e9),
        Dimension::Power => (0.01, 1e6),
        Dimension::KinematicViscosity => (2e-7, 0.1),
        Dimension::DynamicViscosity => (1e-5, 100.0),
        Dimension::Ratio => (1e-9, 1.0),
        Dimension::VolumeRate => (1e-12, 0.01),
        Dimension::Usage => (1.0 / YEAR, 1.0),
    }
}

fn may_be_nothing(dimension: Dimension) -> bool {
    matches!(
        dimension,
        Dimension::TemperatureDifference | Dimension::Velocity | Dimension::Ratio | Dimension::VolumeRate | Dimension::Usage
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_no_shop_has_is_told_with_what_one_may_have() {
        let told = no_shop_has(Dimension::Length, 1e-320, "10 mm").unwrap();
        assert_eq!(told, "Give something from 0.01 µm to 50 m.");
        assert_eq!(no_shop_has(Dimension::Length, 0.01, "10 mm"), None);
        assert!(no_shop_has(Dimension::Length, 0.0, "10 mm").is_some());
        assert_eq!(no_shop_has(Dimension::Ratio, 0.0, "10 %"), None);
        assert!(no_shop_has(Dimension::Ratio, 1e-320, "10 %").is_some_and(|told| told.starts_with("Give something from 0 %")));
    }

    /// Steel is hardened from 820 °C and more (common practice).
    #[test]
    fn a_field_that_supposes_more_is_told_of_more() {
        let (glowing, melting) = (1100.0 + 273.15, 1900.0 + 273.15);
        assert_eq!(no_shop_has(Dimension::Temperature, glowing, "820 °C"), None);
        assert!(no_shop_has(Dimension::Temperature, glowing, "40 °C").is_some());
        assert!(no_shop_has(Dimension::Temperature, melting, "820 °C").is_some());
    }
}
