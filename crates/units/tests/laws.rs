//! Laws of reading and printing, over all kinds.

use proptest::prelude::*;
use units::text::Written;
use units::{
    Amount, AngularVelocity, Area, Digits, Dimension, DynamicViscosity, Force, Frequency, KinematicViscosity, Length, Mass, MassDensity,
    Power, Pressure, Quantity, Range, Ratio, System, Temperature, TemperatureDifference, Time, Torque, Usage, Velocity, Volume, VolumeRate,
    parse, parse_any, show, show_base_in, show_exact, show_in, show_range,
};

/// A number of any ordinary size within what the kind allows.
fn value<Q: Quantity>(mantissa: f64, power: i32) -> Q {
    let value = mantissa * 10f64.powi(power);
    let (low, high) = Q::LIMITS;
    let value = if low >= 0.0 { value.abs() } else { value };
    // Within a rounding of absolute zero a temperature prints as one below it, which is rightly refused.
    let value = if Q::DIMENSION == Dimension::Temperature { value + 0.1 } else { value };
    Q::from_base(if high.is_finite() { value % high } else { value })
}

/// What one unit of the last printed digit can hide.
fn reads_back<Q: Quantity>(quantity: Q) -> Result<(), TestCaseError> {
    for system in [System::Metric, System::Inch] {
        let text = show(quantity, system);
        let again = parse::<Q>(&text).map_err(|error| TestCaseError::fail(format!("{text}: {error}")))?;
        let error = (again.base() - quantity.base()).abs();
        // Half of the third digit is at most 0.5 %; half of a tenth of a degree is 0.05 K.
        let most = match Q::units()[0].digits {
            Digits::Significant(_) => 0.005 * quantity.base().abs() * (1.0 + 1e-9),
            Digits::Decimals(_) => 0.05 + 1e-6 + 1e-12 * quantity.base().abs(),
        };
        prop_assert!(error <= most, "{quantity:?} is printed {text} and read back as {again:?}");
    }
    for unit in Q::units() {
        if let Some(text) = show_in(quantity, unit.symbol) {
            // A share of time just below 1 may print as more hours than a day has.
            let Ok(again) = parse::<Q>(&text) else { continue };
            prop_assert_eq!(show_in(again, unit.symbol), Some(text));
        }
    }
    Ok(())
}

fn exactly_back<Q: Quantity>(quantity: Q) -> Result<(), TestCaseError> {
    let text = show_exact(quantity);
    let again = parse::<Q>(&text).map_err(|error| TestCaseError::fail(format!("{text}: {error}")))?;
    prop_assert_eq!(again.base().to_bits(), (quantity.base() + 0.0).to_bits(), "{} is not {:?}", text, quantity);
    Ok(())
}

macro_rules! for_each_kind {
    ($law:ident, $mantissa:expr, $power:expr) => {
        for_each_kind!(@ $law, $mantissa, $power; Length Area Volume Mass MassDensity Temperature TemperatureDifference Velocity
            AngularVelocity Frequency Time Force Torque Pressure Power KinematicViscosity DynamicViscosity Ratio VolumeRate Usage)
    };
    (@ $law:ident, $mantissa:expr, $power:expr; $($kind:ident)+) => { $($law(value::<$kind>($mantissa, $power))?;)+ };
}

proptest! {
    #[test]
    fn print_then_read_is_the_same_within_the_digits(mantissa in -10.0..10.0f64, power in -9..9i32) {
        for_each_kind!(reads_back, mantissa, power);
    }

    #[test]
    fn exact_print_then_read_is_the_same(mantissa in -10.0..10.0f64, power in -9..9i32) {
        for_each_kind!(exactly_back, mantissa, power);
    }

    #[test]
    fn exact_print_then_read_is_the_same_for_any_float(number in any::<f64>().prop_filter("finite", |x| x.is_finite())) {
        exactly_back(Length::from_base(number))?;
        exactly_back(Ratio::from_base(number))?;
        exactly_back(Pressure::from_base(number))?;
        exactly_back(TemperatureDifference::from_base(number))?;
    }

    #[test]
    fn every_unit_reads_what_it_writes(number in 0.01..100.0f64) {
        for &kind in Dimension::ALL.iter().filter(|&&kind| kind != Dimension::Usage) {
            for unit in kind.units() {
                let base = parse_any(kind, &format!("{number} {unit}")).map_err(|error| TestCaseError::fail(error.to_string()))?;
                let text = show_base_in(kind, base, unit).unwrap_or_default();
                let found: f64 = text.split(' ').next().and_then(|word| word.parse().ok()).unwrap_or(f64::NAN);
                prop_assert!((found - number).abs() <= 0.005 * number + 0.05, "{number} {unit} comes back as {text}");
            }
        }
    }

    #[test]
    fn a_range_keeps_its_order_and_its_text(a in 1e-6..1.0f64, b in 1e-6..1.0f64, c in 1e-6..1.0f64) {
        let mut parts = [a, b, c];
        parts.sort_by(f64::total_cmp);
        let range = Range::new(parts[0], parts[1], parts[2]).map(|range| range.map(Ratio::from_base));
        let Some(range) = range else { return Err(TestCaseError::fail("in order")) };
        prop_assert_eq!(Range::<Ratio>::read(&range.write()), Ok(range));
        prop_assert!(units::parse_range::<Ratio>(&show_range(range, System::Metric)).is_ok());
    }

    #[test]
    fn an_amount_keeps_its_text(litres in 0.001..1000.0f64, count in 0u16..1000) {
        for amount in [Amount::Volume(Volume::from_base(litres / 1000.0)), Amount::Mass(Mass::from_base(litres)), Amount::Pieces(f64::from(count))] {
            prop_assert_eq!(Amount::read(&amount.write()), Ok(amount));
        }
    }

    #[test]
    fn nothing_that_is_written_brings_it_down(text in ".{0,24}") {
        for &kind in Dimension::ALL {
            if let Ok(base) = parse_any(kind, &text) {
                prop_assert!(base.is_finite(), "{text}");
            }
        }
        let _ = Amount::parse(&text);
        let _ = units::parse_range::<Length>(&text);
    }

    #[test]
    fn number_like_writing_does_not_either(text in "[-+−0-9./eE½¼, ]{0,8}(mm|in|\"|°C|%|h/week|/year)?") {
        for &kind in Dimension::ALL {
            if let Ok(base) = parse_any(kind, &text) {
                prop_assert!(base.is_finite(), "{text}");
            }
        }
        let _ = units::parse_range::<Ratio>(&text);
    }
}
