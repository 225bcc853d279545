//! From a shop to its needs: every point and every step of every job, each by the file of its kind.

mod damp;
pub mod jobs;
mod lubricant_form;
pub mod points;
mod prohibitions;
mod weight;

use formulas::FormulaError;
use reference::Reference;
use shop::{Kinds, Problem, Shop, Span};

use crate::need::Need;

/// Why a point or job cannot be worked out.
#[derive(Debug, thiserror::Error)]
pub enum Complaint {
    /// A formula refuses the values.
    #[error(transparent)]
    Formula(#[from] FormulaError),
    /// The values contradict each other.
    #[error("{what}")]
    Contradiction {
        /// The field that would mend it.
        field: &'static str,
        /// What is wrong.
        what: String,
        /// The way out.
        mend: &'static str,
    },
}

impl Complaint {
    /// As a problem of the shop file, at the field if the user wrote it, else at the point or job.
    fn into_problem(self, place: &str, answers: &shop::Answers, at: &Span) -> Problem {
        let (field, mend) = match &self {
            Self::Formula(_) => (None, "Give values inside the range, or leave them out and let them be supposed.".to_owned()),
            Self::Contradiction { field, mend, .. } => (Some(*field), (*mend).to_owned()),
        };
        let at = field.and_then(|field| answers.written_at(field)).unwrap_or_else(|| at.clone());
        Problem { at: Some(at), what: format!("{place}: {self}"), mend }
    }
}

/// The kinds of points and jobs, for the reader of shop files.
#[must_use]
pub fn kinds() -> Kinds<'static> {
    Kinds { points: points::kinds(), jobs: jobs::kinds() }
}

/// Whether the working of each number is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Working {
    /// Only the results.
    Dropped,
    /// With every step.
    Kept,
}

/// All needs of a shop, points first, in the order of the file.
///
/// # Errors
/// Every point and job whose values contradict each other or lie outside a formula's range.
pub fn needs(shop: &Shop, reference: &Reference, working: Working) -> Result<Vec<Need>, Vec<Problem>> {
    let mut needs = Vec::new();
    let mut problems = Vec::new();
    for machine in &shop.machines {
        for point in &machine.points {
            match points::need(shop, machine, point, reference, working) {
                Ok(need) => needs.push(need),
                Err(complaint) => {
                    problems.push(complaint.into_problem(&format!("{} · {}", machine.name, point.name), &point.answers, &point.at));
                }
            }
        }
    }
    let damp = damp::Damp::default();
    for job in &shop.work {
        match jobs::needs(shop, job, reference, &damp, working) {
            Ok(steps) => needs.extend(steps),
            Err(complaint) => problems.push(complaint.into_problem(&job.name, &job.answers, &job.at)),
        }
    }
    if problems.is_empty() { Ok(needs) } else { Err(problems) }
}

/// A short stable name out of words: lower case, dashes between.
pub(crate) fn id(words: &[&str]) -> String {
    let mut id = String::new();
    for word in words {
        if !id.is_empty() {
            id.push('.');
        }
        let mut dash = false;
        for c in word.chars() {
            if c.is_alphanumeric() {
                if dash && !id.ends_with('.') {
                    id.push('-');
                }
                id.extend(c.to_lowercase());
                dash = false;
            } else {
                dash = !id.is_empty();
            }
        }
    }
    id
}

/// A number of things as a number to reckon with.
pub(crate) fn count(things: usize) -> f64 {
    u32::try_from(things).map_or(f64::INFINITY, f64::from)
}
