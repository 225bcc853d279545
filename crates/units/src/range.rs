//! Low, likely, high: a number that the trade cannot give exactly.

/// A value with the bounds it scatters between.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range<T> {
    /// The least it may be.
    pub low: T,
    /// What to count on.
    pub likely: T,
    /// The most it may be.
    pub high: T,
}

impl<T: PartialOrd> Range<T> {
    /// A range; `None` unless low ≤ likely ≤ high.
    #[must_use]
    pub fn new(low: T, likely: T, high: T) -> Option<Self> {
        (low <= likely && likely <= high).then_some(Self { low, likely, high })
    }

    /// Whether a value lies within the bounds, ends included.
    #[must_use]
    pub fn contains(&self, value: &T) -> bool {
        self.low <= *value && *value <= self.high
    }

    /// Applies a function that only rises or only falls; where it falls, the bounds change places.
    #[must_use]
    pub fn map<U: PartialOrd>(self, mut f: impl FnMut(T) -> U) -> Range<U> {
        let (low, likely, high) = (f(self.low), f(self.likely), f(self.high));
        if low <= high { Range { low, likely, high } } else { Range { low: high, likely, high: low } }
    }
}

impl<T: Copy> Range<T> {
    /// A value that does not scatter.
    #[must_use]
    pub fn exact(value: T) -> Self {
        Self { low: value, likely: value, high: value }
    }
}
