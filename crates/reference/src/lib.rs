//! The data of the trade: fluids, classes, materials, practices, machine templates, currencies, the bibliography.
//!
//! The data stand as TOML under `data/` and are compiled in. [`Reference::embedded`] gives them parsed; [`Reference::parse`]
//! parses any other set, and [`Reference::faults`] lists what does not fit together.
//!
//! **Invariant:** nothing is computed here. A value that a formula could give is either written down with its source or absent.

pub mod class;
mod error;
mod faults;
mod files;
pub mod fluid;
pub mod hazard;
mod load;
pub mod material;
mod naming;
pub mod practice;
pub mod quantity;
pub mod setting;
mod source;
mod statement;
pub mod storage;
pub mod substance;
mod synonym;
mod tables;
pub mod template;
pub mod thickener;
pub mod waste;

pub use class::Class;
pub use error::DataError;
pub use files::{DataFile, FILES};
pub use fluid::{Content, Fluid, Form, Sourced, Trait};
pub use material::{BearingMaterial, Material};
pub use naming::nlgi;
pub use practice::Operation;
pub use quantity::QuantityLimit;
pub use setting::{AIR_CHANGES_WITHIN, Climate, Currency, Weight};
pub use source::{Source, SourceKey, Standing};
pub use statement::Statement;
pub use storage::{Apart, StorageGroup};
pub use substance::Substance;
pub use synonym::Synonym;
pub use tables::Reference;
pub use template::{Template, TemplatePoint};
pub use thickener::{Compatibility, Thickener};
pub use waste::{Rag, WasteStream};
