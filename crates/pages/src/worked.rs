//! A plan as the pages show it.

use std::sync::Arc;

use planner::report::{ChartRow, NeedRow, Report};
use planner::round::{Cupboard, Facts, Round, RoundError, Uses, cupboard, round};
use planner::{Plan, Wishes, plan};
use reference::Reference;
use shop::Shop;
use units::System;

use crate::trouble::Trouble;
use crate::words::in_words;

/// A plan as the pages show it.
pub(crate) struct Worked {
    /// The shop it is of.
    pub shop: Arc<Shop>,
    /// The units it is written in.
    pub units: System,
    /// The plan.
    pub report: Report,
    /// What the day asks, where a log is kept; else why nobody can say.
    pub day: Option<Result<Day, String>>,
    /// The weight of all that could be served.
    everything: f64,
}

/// What a day asks of a kept shop.
pub(crate) struct Day {
    /// What is due at the machines.
    pub round: Round,
    /// How the cupboard stands.
    pub cupboard: Cupboard,
}

/// Plans a shop.
pub(crate) fn planned<'a>(shop: &Shop, reference: &'a Reference, wishes: &Wishes) -> Result<Plan<'a>, Trouble> {
    Ok(plan(shop, reference, wishes)?)
}

impl Worked {
    /// The plan of a shop with these wishes; with what the day asks, where the facts of the day and what was used are given.
    pub(crate) fn new(
        shop: &Arc<Shop>,
        reference: &Reference,
        wishes: &Wishes,
        units: System,
        log: Option<&(Facts, Uses)>,
    ) -> Result<Self, Trouble> {
        Ok(Self::of(&planned(shop, reference, wishes)?, shop, units, log))
    }

    /// This plan of a shop; with what the day asks, where the facts of the day and what was used are given.
    pub(crate) fn of(plan: &Plan<'_>, shop: &Arc<Shop>, units: System, log: Option<&(Facts, Uses)>) -> Self {
        let report = plan.report(units);
        let day = |(facts, uses): &(Facts, Uses)| {
            let round = round(&report, shop, facts)?;
            Ok(Day { cupboard: cupboard(plan, facts.today, uses, units)?, round })
        };
        let day = log.map(|log| day(log).map_err(|error: RoundError| in_words(&error)));
        Self { shop: Arc::clone(shop), units, day, report, everything: plan.ladder.everything }
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
