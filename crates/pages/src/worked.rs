//! A plan as the pages show it.

use std::sync::Arc;

use planner::report::{ChartRow, NeedRow, Report};
use planner::{PlanError, Wishes, plan};
use reference::Reference;
use shop::Shop;
use units::System;

use crate::trouble::Trouble;

/// A plan as the pages show it.
pub(crate) struct Worked {
    /// The shop it is of.
    pub shop: Arc<Shop>,
    /// The units it is written in.
    pub units: System,
    /// The plan.
    pub report: Report,
    /// The weight of all that could be served.
    everything: f64,
}

impl Worked {
    pub(crate) fn new(shop: &Arc<Shop>, reference: &Reference, wishes: &Wishes, units: System) -> Result<Self, Trouble> {
        let planned = plan(shop, reference, wishes).map_err(|error| match error {
            PlanError::Shop(found) => Trouble::Contradiction(found),
            PlanError::Ladder(error) => Trouble::Fault(error.to_string()),
        })?;
        let everything = planned.ladder.everything;
        Ok(Self { shop: Arc::clone(shop), units, report: planned.report(units), everything })
    }

    /// The share of all that could be served which so much weight is.
    pub(crate) fn share(&self, weight: f64) -> f64 {
        if self.everything > 0.0 { weight / self.everything } else { 1.0 }
    }

    /// The short name of the need behind a row of a chart.
    pub(crate) fn need_of(&self, row: &ChartRow) -> &str {
        self.need(|need| need.machine.as_ref() == Some(&row.machine) && need.point.as_ref() == Some(&row.point))
    }

    /// The short name of the need behind a step of a job.
    pub(crate) fn need_of_step(&self, job: &str, step: &str) -> &str {
        self.need(|need| need.job.as_deref() == Some(job) && need.step.as_deref() == Some(step))
    }

    fn need(&self, wanted: impl Fn(&NeedRow) -> bool) -> &str {
        self.report.needs.iter().find(|need| wanted(need)).map_or("", |need| need.id.as_str())
    }
}
