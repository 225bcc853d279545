//! The user's description of a shop: what it is made of, and how it is read from a file.

mod answers;
mod assumption;
mod keys;
mod machine;
mod point;
mod pot;
mod problem;
mod read;
mod room;
mod section;
mod work;

pub use assumption::Assumption;
pub use fields::{Answers, Field, Given, Kind};
pub use keys::{Key, Known, MACHINE_KEYS, MAKER_KEYS, POINT_KEYS, POT_KEYS, ROOM_KEYS, SHOP_KEYS, Takes, WORK_KEYS};
pub use machine::Machine;
pub use point::{Exposure, FITTINGS, Fitting, Maker, Point, Priority, Reach};
pub use pot::Pot;
pub use problem::{Problem, Span};
pub use read::{Kinds, LARGEST_BYTES, read, read_up_to};
pub use room::{Heating, Room, WeatherFile};
pub use work::Job;

use units::System;

/// A shop, whole and sound.
#[derive(Debug, Clone)]
pub struct Shop {
    /// What the user calls it.
    pub name: String,
    /// Units wanted in answers.
    pub units: System,
    /// ISO 4217 code of the money wanted in answers.
    pub currency: String,
    /// The room.
    pub room: Room,
    /// The machines.
    pub machines: Vec<Machine>,
    /// The work done.
    pub work: Vec<Job>,
    /// What stands in the cupboard.
    pub pots: Vec<Pot>,
    /// Fluid keys and classes the user will not have.
    pub avoid: Vec<String>,
    /// What was supposed in reading it.
    pub assumptions: Vec<Assumption>,
}
