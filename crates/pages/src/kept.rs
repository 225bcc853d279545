//! What the pages ask of a kept shop, and what they write to it; of a shop file they can do neither.

use std::sync::Arc;

use keep::{KeepError, Kept};
use planner::needs::kinds;
use store::{Change, Fault, Moment, SectionId, Store, StoreError};

use crate::App;
use crate::source::Now;
use crate::trouble::Trouble;

impl App {
    /// The kept shop as it stands now.
    pub(crate) fn kept_now(&self) -> Result<Arc<Now>, Trouble> {
        Ok(self.source.now().ok_or_else(Trouble::only_kept)??)
    }

    /// Something of the kept file.
    pub(crate) fn stored<T>(&self, with: impl FnOnce(&mut Store) -> Result<T, StoreError>) -> Result<T, Trouble> {
        Ok(self.source.store(with).ok_or_else(Trouble::only_kept)??)
    }

    /// Something of the kept shop.
    pub(crate) fn kept<T>(&self, with: impl FnOnce(&mut Kept<&mut Store>) -> Result<T, KeepError>) -> Result<T, Trouble> {
        Ok(self.source.with(with).ok_or_else(Trouble::only_kept)???)
    }

    /// Makes changes to what is said of the shop, or says what is wrong with them.
    pub(crate) fn change(&self, changes: &[Change]) -> Result<Result<Vec<SectionId>, Vec<Fault>>, Trouble> {
        let now = Moment::from(&self.now());
        self.stored(|store| match store.edit(changes, self.reference, kinds(), now) {
            Ok(added) => Ok(Ok(added)),
            Err(StoreError::Refused(faults)) => Ok(Err(faults)),
            Err(error) => Err(error),
        })
    }
}
