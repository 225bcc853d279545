//! Faults of what is stored, kept within limits and thrown away.

use std::collections::{HashMap, HashSet};

use units::{Amount, Quantity};

use super::Check;
use crate::Apart;

impl Check<'_> {
    pub(super) fn storage_pairs(&mut self) {
        let mut seen = HashSet::new();
        for row in &self.data.storage_pairs {
            let place = format!("storage pair {:?}", row.pair);
            self.source(&place, row.source);
            for key in row.pair.iter().filter(|key| !self.data.storage_groups.contains_key(*key)) {
                self.dangling(&place, "storage group", key);
            }
            let [one, other] = &row.pair;
            self.need(&place, seen.insert((one.min(other), one.max(other))), "it stands there twice");
            self.need(&place, row.apart != Apart::Together, "it may stand together, which needs no row");
            self.need(&place, row.apart != Apart::Cupboards || !row.reaction.is_empty(), "it stands far apart for no reaction");
        }
    }

    /// Every class has one stream for its leftovers.
    pub(super) fn waste(&mut self) {
        let mut streams: HashMap<&str, &str> = HashMap::new();
        for row in self.data.waste_streams.values() {
            let place = format!("waste stream `{}`", row.key);
            self.source(&place, row.source);
            self.classes(&place, &row.classes);
            for class in &row.classes {
                if let Some(other) = streams.insert(class, &row.key) {
                    self.unsound(&place, format!("`{class}` belongs to `{other}` too"));
                }
            }
        }
        for class in self.data.classes.keys().filter(|class| !streams.contains_key(class.as_str())) {
            self.unsound(&format!("class `{class}`"), "its leftovers belong to no waste stream");
        }
        for row in self.data.rags.values() {
            let place = format!("kind of rag `{}`", row.key);
            self.source(&place, row.source);
        }
        self.need("kinds of rag", self.data.rag(0.0).is_some(), "none stands for rags that do not dry");
    }

    pub(super) fn quantities(&mut self) {
        for row in self.data.quantities.values() {
            let place = format!("quantity `{}`", row.key);
            self.source(&place, row.source);
            self.need(&place, !row.classes.is_empty(), "it is about no hazard class");
            let most = match row.most {
                Amount::Volume(most) => most.base(),
                Amount::Pieces(most) => most,
                _ => 0.0,
            };
            self.need(&place, most > 0.0, "its limit is neither a volume nor a number of pieces");
        }
    }
}
