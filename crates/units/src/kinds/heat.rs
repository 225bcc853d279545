//! Temperature and temperature difference: two types, because 10 °C warmer is 18 °F warmer and 10 °C is 50 °F.

use crate::quantity::quantity;
use crate::{Digits, Dimension, Quantity, System, Temperature, Unit};

/// The ice point on the kelvin scale, exact (BIPM, The International System of Units, 9th edition).
pub const ICE: f64 = 273.15;

/// A temperature of so many degrees Celsius.
#[must_use]
pub const fn celsius(degrees: f64) -> Temperature {
    Temperature { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value: degrees + ICE }
}

/// How many degrees Celsius a temperature is.
#[must_use]
pub const fn in_celsius(temperature: Temperature) -> f64 {
    temperature.value - ICE
}

impl Quantity for Temperature {
    const NAME: &'static str = "a temperature";
    const DIMENSION: Dimension = Dimension::Temperature;
    const LIMITS: (f64, f64) = (0.0, f64::INFINITY);

    fn units() -> &'static [Unit<Self>] {
        const UNITS: &[Unit<Temperature>] = &[
            Unit {
                symbol: "°C",
                spellings: &["degC", "C", "deg C", "degrees C", "celsius", "degrees celsius"],
                system: System::Metric,
                to: |number| Temperature::from_base(number + ICE),
                from: |temperature| temperature.base() - ICE,
                printed_from: Some(0.0),
                digits: Digits::Decimals(1),
            },
            Unit {
                symbol: "°F",
                spellings: &["degF", "F", "deg F", "degrees F", "fahrenheit", "degrees fahrenheit"],
                system: System::Inch,
                to: |number| Temperature::from_base((number - 32.0) * 5.0 / 9.0 + ICE),
                from: |temperature| (temperature.base() - ICE) * 9.0 / 5.0 + 32.0,
                printed_from: Some(0.0),
                digits: Digits::Decimals(1),
            },
            Unit {
                symbol: "K",
                spellings: &["kelvin", "degK", "°K"],
                system: System::Metric,
                to: Temperature::from_base,
                from: Temperature::base,
                printed_from: None,
                digits: Digits::Decimals(1),
            },
        ];
        UNITS
    }

    fn base(self) -> f64 {
        self.value
    }

    fn from_base(value: f64) -> Self {
        Self { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value }
    }
}

quantity! {
    TemperatureDifference, "a temperature difference";
    Metric "K" ["kelvin", "ΔK", "delta K", "°C", "degC", "C", "Δ°C", "ΔC", "delta degC", "delta °C", "delta C",
        "°C difference", "degC difference", "C difference", "K difference"] 1.0, 1.0; Significant(3), from 0.0;
    Inch "°F difference" ["°F", "degF", "F", "Δ°F", "ΔF", "delta degF", "delta °F", "delta F", "degF difference", "F difference"]
        5.0, 9.0; Significant(3), from 0.0;
}
