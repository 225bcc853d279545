//! Finds what does not fit together in the data.

mod fluid;
mod keeping;
mod substance;
mod tables;

use std::collections::HashSet;

use crate::{DataError, Reference, SourceKey};

impl Reference {
    /// Every reference to a row that does not exist and every row that is incomplete or contradicts itself.
    #[must_use]
    pub fn faults(&self) -> Vec<DataError> {
        let groups = self.materials.values().flat_map(|material| material.groups.iter().map(String::as_str)).collect();
        let mut check = Check { data: self, groups, faults: Vec::new() };
        check.bare_tables();
        check.materials();
        check.substances();
        check.fluids();
        check.pairs();
        check.storage_pairs();
        check.waste();
        check.quantities();
        check.cutting();
        check.surfaces();
        check.joints();
        check.templates();
        check.faults
    }
}

/// The faults found so far.
struct Check<'a> {
    data: &'a Reference,
    groups: HashSet<&'a str>,
    faults: Vec<DataError>,
}

impl Check<'_> {
    fn dangling(&mut self, place: &str, table: &'static str, key: &str) {
        self.faults.push(DataError::Dangling { place: place.to_owned(), table, key: key.to_owned() });
    }

    fn unsound(&mut self, place: &str, message: impl Into<String>) {
        self.faults.push(DataError::Unsound { place: place.to_owned(), message: message.into() });
    }

    fn need(&mut self, place: &str, sound: bool, message: &str) {
        if !sound {
            self.unsound(place, message);
        }
    }

    fn source(&mut self, place: &str, key: SourceKey) {
        if self.data.source(key).is_none() {
            self.dangling(place, "source", key.as_str());
        }
    }

    fn classes(&mut self, place: &str, keys: &[String]) {
        for key in keys {
            if self.data.class(key).is_none() {
                self.dangling(place, "class", key);
            }
        }
    }

    /// A material or a group of materials.
    fn material(&mut self, place: &str, name: &str) {
        if self.data.material(name).is_none() && !self.groups.contains(name) {
            self.dangling(place, "material", name);
        }
    }
}
