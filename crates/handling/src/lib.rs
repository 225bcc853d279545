//! What to mind about fluids that can harm.
//!
//! [`air`] says what one breathes, [`fire`] what burns, [`together`] what may stand beside what, [`bars`] what is never done, and [`cautions`]
//! makes sentences of it. [`label`] works out what has to stand on a bottle, and draws it.
//!
//! The rules are worked as they are published. The product's own safety data sheet and local law come first.

pub mod air;
pub mod bars;
pub mod cautions;
pub mod fire;
pub mod label;
pub mod together;
mod worked;

pub use worked::Worked;
