//! The share of time something runs, as people say it: hours a week, hours a day.

use crate::kinds::{DAY, WEEK, YEAR};
use crate::{Digits, Dimension, Quantity, QuantityError, Ratio, System, Unit, spelling};

/// The share of time a machine runs: "4 h/week", "2 h/day", "100 h/year", "continuous".
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Usage(pub Ratio);

const HOUR: f64 = 3600.0;

impl Usage {
    /// Hours run in a day.
    #[must_use]
    pub fn hours_per_day(self) -> f64 {
        self.base() * (DAY / HOUR)
    }

    /// Hours run in a year of 365.25 days.
    #[must_use]
    pub fn hours_per_year(self) -> f64 {
        self.base() * (YEAR / HOUR)
    }
}

macro_rules! share {
    ($symbol:literal [$($spelling:literal),*] $num:expr, $den:expr, $from:expr) => {
        Unit {
            symbol: $symbol,
            spellings: &[$($spelling),*],
            system: System::Both,
            to: |number| Usage::from_base(number * $num / $den),
            from: |usage| usage.base() * $den / $num,
            printed_from: $from,
            digits: Digits::Significant(3),
        }
    };
}

impl Quantity for Usage {
    const NAME: &'static str = "a time of use";
    const DIMENSION: Dimension = Dimension::Usage;
    const LIMITS: (f64, f64) = (0.0, 1.0);

    fn units() -> &'static [Unit<Self>] {
        const UNITS: &[Unit<Usage>] = &[
            share!("h/week" ["hr/week", "hrs/week", "hour/week", "hours/week", "h/wk", "hours weekly"] HOUR, WEEK, Some(HOUR / WEEK)),
            share!("h/day" ["hr/day", "hrs/day", "hour/day", "hours/day", "h/d", "hours daily"] HOUR, DAY, None),
            share!("h/month" ["hr/month", "hrs/month", "hour/month", "hours/month"] 12.0 * HOUR, YEAR, None),
            share!("h/year" ["hr/year", "hrs/year", "hour/year", "hours/year", "h/yr", "hours yearly"] HOUR, YEAR, Some(0.0)),
            share!("min/day" ["minutes/day", "mins/day"] 60.0, DAY, None),
            share!("min/week" ["minutes/week", "mins/week"] 60.0, WEEK, None),
            share!("% of the time" [] 1.0, 100.0, None),
            share!("of the time" [] 1.0, 1.0, None),
        ];
        UNITS
    }

    fn base(self) -> f64 {
        self.0.base()
    }

    fn from_base(value: f64) -> Self {
        Self(Ratio::from_base(value))
    }

    fn by_name(text: &str) -> Option<Result<Self, QuantityError>> {
        ["continuous", "continuously", "always", "never"].iter().find(|word| spelling::same(text, word)).map(|word| {
            let share = if *word == "never" { 0.0 } else { 1.0 };
            Ok(Self::from_base(share))
        })
    }
}
