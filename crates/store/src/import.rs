//! From a shop file to the description, keeping the numbers of the sections that are still there.

use reference::Reference;
use rusqlite::Connection;
use shop::Kinds;

use crate::branch::Branch;
use crate::description::{LARGEST_BYTES, change, now as as_it_stands};
use crate::merge::merge;
use crate::{Moment, Store, StoreError, rows};

/// What an import did.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Imported {
    /// Sections that were there before and keep their history.
    pub kept: usize,
    /// Sections that are new.
    pub added: usize,
    /// Sections that are not in the file and were taken out.
    pub gone: usize,
}

impl Store {
    /// Makes a shop file the description, after a backup where there was one before. Machines, points, work and pots that are in both
    /// keep their numbers and with them their history.
    ///
    /// # Errors
    /// [`StoreError::File`] with the file's problems, each at its place in the file; then nothing is changed.
    pub fn import(&mut self, file: &[u8], reference: &Reference, kinds: Kinds<'_>, now: Moment) -> Result<Imported, StoreError> {
        shop::read_up_to(LARGEST_BYTES, file, kinds, reference).map_err(StoreError::File)?;
        let text = String::from_utf8_lossy(file).replace("\r\n", "\n");
        let new = Branch::from_toml(&text).map_err(|error| {
            let (what, mend) = (error.message().to_owned(), "This is not TOML; see the examples for how a line is written.".to_owned());
            StoreError::File(vec![shop::Problem { at: error.span(), what, mend }])
        })?;
        if !rows::load(&self.connection)?.parts.is_empty() {
            self.backup(now)?;
        }
        let apply = |connection: &Connection| {
            let mut done = Imported::default();
            merge(connection, &as_it_stands(connection)?, &new, now, &mut done)?;
            Ok(done)
        };
        change(&mut self.connection, reference, kinds, apply, |_, faults| StoreError::Refused(faults))
    }
}
