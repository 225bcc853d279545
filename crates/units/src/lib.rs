//! Quantities as machinists write them: the types, how they are read, how they are printed.
//!
//! Everything outside this crate names a quantity by the aliases below; inside they are `uom` quantities of `f64`.

pub use uom::si::f64::{
    AngularVelocity, Area, DynamicViscosity, Force, Frequency, Length, Mass, MassDensity, Power, Pressure, Ratio,
    TemperatureInterval as TemperatureDifference, ThermodynamicTemperature as Temperature, Time, Torque, Velocity, Volume,
};
pub use uom::si::f64::KinematicViscosity;
