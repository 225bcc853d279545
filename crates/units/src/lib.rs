//! Quantities as machinists write them: the types, how they are read, how they are printed.
//!
//! Everything outside this crate names a quantity by the aliases below; inside they are `uom` quantities of `f64`.
//!
//! ```
//! use units::{Length, System, Temperature, parse, show, show_in};
//!
//! // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
//! let bore: Length = parse("1-1/4 in")?;
//! assert_eq!(show(bore, System::Both), "31.75 mm (1.25 in)");
//! // The boiling point of water on both scales.
//! let boiling: Temperature = parse("212 °F")?;
//! assert_eq!(show_in(boiling, "degC").as_deref(), Some("100 °C"));
//! # Ok::<(), units::QuantityError>(())
//! ```

mod amount;
mod dimension;
mod error;
mod kinds;
mod number;
mod parse;
mod print;
mod quantity;
mod range;
mod spelling;
pub mod text;
mod usage;

pub use amount::Amount;
pub use dimension::{Dimension, parse_any, show_base, show_base_in, value_in};
pub use error::QuantityError;
pub use kinds::YEAR;
pub use kinds::heat::{ICE, celsius, in_celsius};
pub use parse::{parse, parse_range};
pub use print::{show, show_exact, show_in, show_number, show_range};
pub use quantity::{Digits, Quantity, System, Unit};
pub use range::Range;
pub use usage::Usage;

pub use uom::si::f64::KinematicViscosity;
pub use uom::si::f64::{
    AngularVelocity, Area, DynamicViscosity, Force, Frequency, Length, Mass, MassDensity, Power, Pressure, Ratio,
    TemperatureInterval as TemperatureDifference, ThermodynamicTemperature as Temperature, Time, Torque, Velocity, Volume, VolumeRate,
};
