//! How often a point is served: what its kind says, with what reaches it and how much it is used.

use reference::Form;
use shop::{Exposure, Fitting, Point, Reach};
use units::Quantity;

use crate::need::{Every, With};

/// How often before the exposure is counted in.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Interval {
    /// Running hours.
    pub hours: Option<f64>,
    /// Days at the latest.
    pub days: Option<f64>,
    /// Done every time the machine is taken into use.
    pub each_use: bool,
}

impl Interval {
    /// After so many running hours, and before each use.
    pub const fn each_use(hours: f64) -> Self {
        Self { hours: Some(hours), days: None, each_use: true }
    }

    /// After so many running hours, or so many days if those come first.
    pub const fn running(hours: f64, days: f64) -> Self {
        Self { hours: Some(hours), days: Some(days), each_use: false }
    }

    /// The interval with another form of lubricant than the oil that an interval of each use is meant for: grease stays four times as
    /// long (a trade rule of the lubricant's dose), a dry film weeks; *common practice*.
    pub const fn with(self, form: Form) -> Self {
        const GREASE_TIMES: f64 = 4.0;
        match form {
            Form::Grease if self.each_use => match self.hours {
                Some(hours) => Self::running(GREASE_TIMES * hours, 30.0),
                None => Self::calendar(30.0),
            },
            Form::Dry if self.each_use => Self::running(20.0, 90.0),
            _ => self,
        }
    }

    /// By the calendar alone.
    pub const fn calendar(days: f64) -> Self {
        Self { hours: None, days: Some(days), each_use: false }
    }
}

/// The interval after exposure and use; the factors are *common practice, no source*.
pub(super) fn every(point: &Point, base: Interval, form: Form, sessions: f64) -> Every {
    const CHIPS: f64 = 0.5;
    const GRIT: f64 = 0.25;
    const COOLANT: f64 = 0.5;
    const DAMP_DAYS: f64 = 30.0;
    const DAYS_A_YEAR: f64 = 365.0;
    /// Where the calendar comes twice in the time that the hours take, a machine used so little does not reach them; they stay for a meter
    /// that knows better.
    const OFTEN: f64 = 2.0;
    if let Some(time) = point.maker.as_ref().and_then(|maker| maker.every) {
        let hours = time.base() / 3600.0;
        let times = (point.hours.hours_per_year() / hours).max(1.0);
        let year = Some(DAYS_A_YEAR);
        return Every { running_hours: Some(hours), days: year, at_latest: year, by_calendar: false, with: None, times_a_year: times };
    }
    let mut factor = 1.0;
    for (exposure, by) in [(Exposure::Chips, CHIPS), (Exposure::Grit, GRIT), (Exposure::Coolant, COOLANT)] {
        // What reaches an oil or a grease stays in it; a dry film holds nothing.
        if point.meets(exposure) && form != Form::Dry {
            factor *= by;
        }
    }
    let fed_each_use = base.each_use || point.fitting == Fitting::BallOiler;
    let hours = base.hours.map(|hours| hours * factor);
    // Damp rusts what stands open; what is closed or hard to reach keeps its film.
    let open = fed_each_use || (point.reach == Reach::Easy && point.fitting == Fitting::Brush);
    let damp = open && base.hours.is_some() && (point.meets(Exposure::Damp) || point.meets(Exposure::Outdoors));
    let cap = if damp { Some(base.days.map_or(DAMP_DAYS, |days| days.min(DAMP_DAYS))) } else { base.days };
    let by_hours = hours.map_or(0.0, |hours| point.hours.hours_per_year() / hours);
    let by_use = if fed_each_use { sessions } else { 0.0 };
    let by_calendar = cap.map_or(0.0, |days| DAYS_A_YEAR / days);
    let times_a_year = by_hours.max(by_use).max(by_calendar);
    let days = (times_a_year > 0.0).then(|| DAYS_A_YEAR / times_a_year);
    Every {
        running_hours: hours.filter(|_| by_hours + by_calendar > 0.0),
        days,
        at_latest: cap,
        by_calendar: hours.is_some() && by_calendar >= OFTEN * by_hours,
        with: fed_each_use.then_some(With::Use),
        times_a_year,
    }
}
