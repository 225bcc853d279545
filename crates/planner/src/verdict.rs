//! How a fluid meets a need: one finding for each demand, and the worst of them as the verdict.

use handling::Worked;
use handling::bars::bar;
use reference::{Fluid, Reference};
use serde::Serialize;

use crate::demand::{Demand, Test};
use crate::need::Need;

/// How well something meets what is asked, best first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, schemars::JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Grade {
    /// As it should be.
    Right,
    /// Serves, with a drawback.
    WillDo,
    /// Does not serve.
    Wrong,
    /// Damages the place or hurts somebody.
    Harmful,
}

impl Grade {
    /// The word people see.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Right => "right",
            Self::WillDo => "will do",
            Self::Wrong => "wrong",
            Self::Harmful => "harmful",
        }
    }

    /// Whether a place with such a fluid is served.
    #[must_use]
    pub fn serves(self) -> bool {
        self <= Self::WillDo
    }
}

/// One demand held against one fluid.
#[derive(Debug, Clone, PartialEq, Serialize, schemars::JsonSchema)]
pub struct Finding {
    /// What the demand is about.
    pub demand: String,
    /// What was asked.
    pub asked: String,
    /// What the fluid gives.
    pub given: String,
    /// How that compares.
    pub grade: Grade,
    /// Why it is asked.
    pub why: String,
    /// Bibliography key of the reason.
    pub source: String,
    /// Where what the fluid gives can be worked out again, step by step.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worked: Option<Worked>,
}

/// A fluid's findings at one place.
#[derive(Debug, Clone, PartialEq, Serialize, schemars::JsonSchema)]
pub struct Verdict {
    /// The fluid's key.
    pub fluid: String,
    /// Its name.
    pub name: String,
    /// The worst finding.
    pub grade: Grade,
    /// One finding for each demand that concerns this fluid.
    pub findings: Vec<Finding>,
}

/// The grade of a fluid at a need, without the findings' words.
///
/// Once a demand has found the fluid wrong, only those that could find it harmful are still asked.
#[must_use]
pub fn grade(need: &Need, fluid: &Fluid, reference: &Reference) -> Grade {
    grade_by(need, fluid, reference, |_| true)
}

/// The grade by those demands alone whose tests are asked.
pub(crate) fn grade_by(need: &Need, fluid: &Fluid, reference: &Reference, asked: impl Fn(&Test) -> bool) -> Grade {
    if fluid.barred.is_some() {
        return Grade::Harmful;
    }
    let mut worst = Grade::Right;
    for demand in need.demands.iter().filter(|demand| asked(&demand.test)) {
        if worst == Grade::Wrong && !demand.may_find_harm() {
            continue;
        }
        if let Some(judged) = demand.judge(fluid, reference) {
            worst = worst.max(judged.grade);
        }
        if worst == Grade::Harmful {
            break;
        }
    }
    worst
}

/// The verdict with every finding in words.
#[must_use]
pub fn verdict(need: &Need, fluid: &Fluid, reference: &Reference, units: units::System) -> Verdict {
    let mut findings: Vec<Finding> = need.demands.iter().filter_map(|demand| finding(demand, fluid, reference, units)).collect();
    if let Some(barred) = &fluid.barred {
        findings.insert(
            0,
            Finding {
                demand: "fit to be recommended".to_owned(),
                asked: "nothing that must not be used".to_owned(),
                given: fluid.name.clone(),
                grade: Grade::Harmful,
                why: barred.why.clone(),
                source: barred.source.to_string(),
                worked: None,
            },
        );
    }
    let grade = findings.iter().map(|finding| finding.grade).max().unwrap_or(Grade::Right);
    Verdict { fluid: fluid.key.clone(), name: fluid.name.clone(), grade, findings }
}

fn finding(demand: &Demand, fluid: &Fluid, reference: &Reference, units: units::System) -> Option<Finding> {
    let judged = demand.judge(fluid, reference)?;
    let mut found = Finding {
        demand: demand.what.to_owned(),
        asked: demand.asked(reference, units),
        given: judged.given.words(units),
        grade: judged.grade,
        why: demand.why.to_string(),
        source: demand.source.to_owned(),
        worked: None,
    };
    match &demand.test {
        // Put into words only here: a plan judges thousands of these and reads none.
        Test::SafeAir(spent) => {
            found.given = spent.words(fluid, reference, units).unwrap_or(found.given);
            found.worked = spent.used(fluid).map(|used| Worked::air(fluid, &used, &spent.room));
        }
        Test::Beside(facts) => {
            if let Some(bar) = bar(fluid, *facts) {
                (found.why, found.source) = (bar.why.to_owned(), bar.source.to_owned());
            }
        }
        _ => {}
    }
    Some(found)
}
