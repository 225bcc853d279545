//! A year made of twelve monthly values, where nobody has hourly ones.

use std::f64::consts::TAU;

use formulas::humid_air::saturation_pascals;

use crate::{HOURS, Hour};

/// Twelve months of a climate, January first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Months {
    /// Mean temperature, °C.
    pub mean: [f64; 12],
    /// From the night's low to the day's high, K.
    pub swing: [f64; 12],
    /// Mean relative humidity, as a share.
    pub humidity: [f64; 12],
}

/// Weather comes and goes in about a week, by so many kelvins either way; a judgement: it makes the thaws that wet cold iron.
const SPELL_K: f64 = 3.5;
/// Days of a spell: no whole share of a month, so that spells fall on every day of one.
const SPELL_DAYS: f64 = 7.3;
/// The damp of a warm spell comes so many days before its warmth: a thaw begins with wet air over cold iron.
const DAMP_AHEAD_DAYS: f64 = 0.8;
const PASCALS: f64 = 101_325.0;
const DAYS: [u16; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

impl Months {
    /// The hours of a year: coldest at five in the morning, warmest at five in the afternoon, with spells of a week; the damp in the air is
    /// that of the day's mean, so that humidity swings against the day.
    ///
    /// A model, not a measurement: for how a room behaves, not for what a given day was.
    #[must_use]
    pub fn hours(&self) -> Vec<Hour> {
        let mut hours = Vec::with_capacity(HOURS);
        let mut day_of_year = 0.0;
        for (month, days) in (1_u8..).zip(DAYS) {
            for day in 0..days {
                for hour in 0..24_u16 {
                    let share = f64::from(hour) / 24.0;
                    let through = (f64::from(day) + share) / f64::from(days);
                    let [mean, swing, humidity] = [self.mean, self.swing, self.humidity].map(|values| between(&values, month, through));
                    let spell = |days: f64| SPELL_K * (TAU * days / SPELL_DAYS).sin();
                    let now = day_of_year + share;
                    let celsius = mean + spell(now) - 0.5 * swing * (TAU * (share - 5.0 / 24.0)).cos();
                    let damp = humidity * saturation_pascals(mean + spell(now + DAMP_AHEAD_DAYS));
                    hours.push(Hour { celsius, humidity: (damp / saturation_pascals(celsius)).clamp(0.05, 1.0), pascals: PASCALS, month });
                }
                day_of_year += 1.0;
            }
        }
        hours
    }

    /// The same climate south of the equator: half a year later.
    #[must_use]
    pub fn south(mut self) -> Self {
        for values in [&mut self.mean, &mut self.swing, &mut self.humidity] {
            values.rotate_left(6);
        }
        self
    }
}

/// A monthly value carried smoothly from the middle of one month to the middle of the next.
fn between(values: &[f64; 12], month: u8, through: f64) -> f64 {
    let this = usize::from(month) - 1;
    let (from, to, share) = if through < 0.5 { ((this + 11) % 12, this, through + 0.5) } else { (this, (this + 1) % 12, through - 0.5) };
    values[from] + share * (values[to] - values[from])
}
