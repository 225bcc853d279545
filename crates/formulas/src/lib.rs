//! The trade's formulas, one file a chapter.
//!
//! A formula is written once: the function that computes an answer is the function that shows its working. Quantities are typed at the
//! boundary of a function; inside a step, numbers are in the unit named in its brackets. No chapter does I/O or names a fluid.

// The macros name this crate by its name, inside it as outside.
extern crate self as formulas;

pub mod blend;
pub mod bond;
pub mod coating;
pub mod corrosion;
pub mod cutting;
mod error;
pub mod feed;
pub mod film;
pub mod fit;
pub mod flammability;
pub mod gear;
pub mod grades;
pub mod grease;
pub mod humid_air;
pub mod interference;
pub mod lubricant_form;
pub mod marking;
pub mod math;
pub mod oil_mist;
pub mod pickle;
pub mod plain_bearing;
pub mod quench;
pub mod rescue;
pub mod rolling_bearing;
pub mod room_air;
pub mod saybolt;
pub mod seal;
pub mod slideway;
pub mod solid_area;
pub mod solution;
pub mod sources;
pub mod steam;
pub mod steam_cylinder;
pub mod stock;
pub mod sump;
pub mod sweating;
pub mod taper;
pub mod thread;
pub mod tightening;
pub mod vapour;
pub mod viscosity;
pub mod viscosity_index;
pub mod working;

pub use error::FormulaError;
pub use sources::Source;
pub use step_macro::{given, solve, step};
pub use working::{Caution, Notebook, Recorder, Silent};
