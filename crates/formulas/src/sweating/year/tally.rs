//! What is added up along the way.

use super::step::State;
use super::{Balance, Body, BodyYear, Year};
use crate::corrosion::dose_of_hour;

/// The sums of a year.
pub(super) struct Tally {
    pub(super) bodies: Vec<BodyYear>,
    /// Wet hours of each body in each hour.
    wet: Vec<Vec<f64>>,
    hours_by_month: [f64; 12],
    pub(super) celsius: Vec<f64>,
    pub(super) humidity: Vec<f64>,
    pub(super) heat: f64,
    pub(super) dried: f64,
    pub(super) energy: Balance,
    pub(super) water: Balance,
}

impl Tally {
    pub(super) fn new(hours: usize, bodies: usize) -> Self {
        let body = BodyYear {
            wet_hours: 0.0,
            condensing_hours: 0.0,
            condensed: 0.0,
            worst_week: (0, 0.0),
            wet_by_month: [0.0; 12],
            condensing_by_month: [0.0; 12],
            humidity_by_month: [0.0; 12],
            dose: vec![0.0; hours],
            celsius: Vec::with_capacity(hours),
        };
        Self {
            bodies: vec![body; bodies],
            wet: vec![vec![0.0; hours]; bodies],
            hours_by_month: [0.0; 12],
            celsius: Vec::with_capacity(hours),
            humidity: Vec::with_capacity(hours),
            heat: 0.0,
            dried: 0.0,
            energy: Balance::default(),
            water: Balance::default(),
        }
    }

    /// Looks at every metal after a step that took this share of an hour.
    pub(super) fn look(&mut self, state: &State, bodies: &[Body], hour: usize, month: u8, share: f64) {
        let month = usize::from(month - 1);
        self.hours_by_month[month] += share;
        let e = state.vapour();
        let of_each = self.bodies.iter_mut().zip(&mut self.wet).zip(state.metal.iter().zip(bodies));
        for ((of_body, wet_by_hour), (metal, body)) in of_each {
            let humidity = e / metal.saturation;
            let condensing = humidity > 1.0;
            let wet = if humidity > 0.8 && metal.celsius > 0.0 { share } else { 0.0 };
            let condenses = if condensing { share } else { 0.0 };
            of_body.wet_hours += wet;
            wet_by_hour[hour] += wet;
            of_body.wet_by_month[month] += wet;
            of_body.condensing_hours += condenses;
            of_body.condensing_by_month[month] += condenses;
            of_body.humidity_by_month[month] += humidity.min(1.0) * share;
            of_body.dose[hour] += share * dose_of_hour(humidity, condensing, body.wear);
        }
    }

    pub(super) fn finish(mut self, before: (f64, f64), after: (f64, f64)) -> Year {
        self.energy.stayed = after.0 - before.0;
        self.water.stayed = after.1 - before.1;
        for (of_body, wet_by_hour) in self.bodies.iter_mut().zip(&self.wet) {
            of_body.worst_week = worst_week(wet_by_hour);
            for (humidity, hours) in of_body.humidity_by_month.iter_mut().zip(&self.hours_by_month) {
                *humidity /= hours.max(f64::MIN_POSITIVE);
            }
        }
        Year {
            bodies: self.bodies,
            celsius: self.celsius,
            humidity: self.humidity,
            heat: self.heat,
            dried: self.dried,
            energy: self.energy,
            water: self.water,
        }
    }
}

/// The hour at which the wettest 168 hours begin, and how wet they are.
fn worst_week(wet_by_hour: &[f64]) -> (usize, f64) {
    const WEEK: usize = 168;
    let mut within: f64 = wet_by_hour.iter().take(WEEK).sum();
    let mut worst = (0, within);
    for start in 1..=wet_by_hour.len().saturating_sub(WEEK) {
        within += wet_by_hour[start + WEEK - 1] - wet_by_hour[start - 1];
        if within > worst.1 + 1e-9 {
            worst = (start, within);
        }
    }
    worst
}
