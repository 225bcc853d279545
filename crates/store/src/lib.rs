//! A shop in one SQLite file: what was said of it, its pots, and the log of what was done.
//!
//! Only ground facts are kept. The description stands in rows as its writer typed it, every section with a number that outlives its name;
//! reading it makes the text of a shop file, which goes through the same [`shop::read`] as any other, so that there is one reader and one
//! set of rules. The log only grows. Whatever follows from the two is worked out when it is asked for.
//!
//! The store reads no clock: whoever writes says when.

mod backup;
mod branch;
mod cupboard;
mod description;
mod edit;
mod entry;
mod error;
mod file;
mod import;
mod measure;
mod merge;
mod migrate;
mod moment;
mod rows;
mod setting;
mod state;
mod tally;
mod text;
mod value;
mod write;

pub use backup::BackupFile;
pub use cupboard::{Cupboard, Taken};
pub use description::{Described, LARGEST_BYTES, SectionRow};
pub use edit::Change;
pub use entry::{Entry, Logged, What, Written};
pub use error::{BadRow, Fault, StoreError};
pub use file::{Stamp, Store};
pub use import::Imported;
pub use moment::{EntryId, Moment, SectionId};
pub use state::{Done, Meter, Page, PointState, PotState, State, Used};
pub use tally::Left;
pub use value::Value;
pub use write::Writing;
