//! What to be careful of in an answer.

use std::fmt;

/// A warning that comes with an answer.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Caution {
    /// The answer lies outside the points it is worked from.
    Extrapolated {
        /// What lies outside.
        what: &'static str,
        /// Its value.
        value: f64,
        /// Its unit, and that of the limits.
        unit: &'static str,
        /// The lowest value covered.
        low: f64,
        /// The highest value covered.
        high: f64,
    },
    /// Sources disagree, or the trade's numbers scatter; the answer's range holds their opinions.
    Disputed {
        /// What is disputed.
        what: &'static str,
        /// Who says what.
        why: &'static str,
    },
    /// The answer is good for a first guess only.
    Rough {
        /// What is rough.
        what: &'static str,
        /// Why.
        why: &'static str,
    },
    /// A condition under which the answer does not hold, and that the formula cannot see.
    Provided {
        /// The condition, as a sentence.
        that: &'static str,
    },
    /// The work can hurt someone.
    Danger {
        /// The usual caution, as sentences.
        words: &'static str,
    },
}

impl fmt::Display for Caution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Extrapolated { what, value, unit, low, high } => {
                let [low, high] = [low, high].map(|number| super::trimmed(*number));
                // Four digits say enough of a value that is out of bounds, and a whole one needs none behind it.
                let value = format!("{value:.3e}").parse().map_or_else(|_| value.to_string(), super::trimmed);
                let unit = if unit.is_empty() { String::new() } else { format!(" {unit}") };
                write!(f, "{what} ({value}{unit}) lies outside {low} to {high}{unit}; the answer is carried beyond what is known.")
            }
            Self::Disputed { what, why } => write!(f, "Opinions differ on {what}: {why}."),
            Self::Rough { what, why } => write!(f, "Take {what} as a first guess: {why}."),
            Self::Provided { that } => write!(f, "This holds only if {that}."),
            Self::Danger { words } => f.write_str(words),
        }
    }
}
