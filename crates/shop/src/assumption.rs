//! What Gallipot supposed because the user did not say.

use units::System;

/// A value filled in, listed so that it can be overruled.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Assumption {
    /// What it is about: `room`, or a machine and point.
    pub place: String,
    /// The key that would overrule it.
    pub what: String,
    /// The value, as it would be written.
    pub value: String,
    /// Bibliography key of its ground.
    pub source: String,
}

/// All of them, in the order they were made.
#[derive(Debug, Default)]
pub struct Assumptions {
    list: Vec<Assumption>,
    /// The units in which supposed values are shown: those the file asks for.
    pub units: System,
}

impl Assumptions {
    /// Notes one.
    pub fn add(&mut self, place: &str, what: &str, value: impl Into<String>, source: &str) {
        self.list.push(Assumption { place: place.to_owned(), what: what.to_owned(), value: value.into(), source: source.to_owned() });
    }

    /// The list.
    #[must_use]
    pub fn into_vec(self) -> Vec<Assumption> {
        self.list
    }
}
