//! When things happen, and the numbers by which sections and entries are known.

use jiff::civil::Date;
use jiff::{Timestamp, ZonedDateTime};

/// An instant, and the day it was where the shop stands. The store reads no clock: whoever writes says when.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment {
    at: Timestamp,
    day: Date,
}

impl Moment {
    /// A moment, to the millisecond.
    #[must_use]
    pub fn new(at: Timestamp, day: Date) -> Self {
        Self { at: Timestamp::from_millisecond(at.as_millisecond()).unwrap_or(at), day }
    }

    /// The instant.
    #[must_use]
    pub fn at(self) -> Timestamp {
        self.at
    }

    /// The day.
    #[must_use]
    pub fn day(self) -> Date {
        self.day
    }

    pub(crate) fn milliseconds(self) -> i64 {
        self.at.as_millisecond()
    }
}

impl From<&ZonedDateTime> for Moment {
    fn from(zoned: &ZonedDateTime) -> Self {
        Self::new(zoned.timestamp(), zoned.date())
    }
}

/// A section of the description: a machine, a point, a pot …; the same for as long as the file lives, whatever it is called.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SectionId(pub i64);

impl SectionId {
    /// The description as a whole, which all other sections stand in.
    pub const WHOLE: Self = Self(1);
}

/// An entry of the log.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryId(pub i64);
