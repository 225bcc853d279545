//! The bolt of a job: its thread by name or by size, and how strong it is.

use formulas::thread::{METRIC_COARSE, Thread};
use formulas::tightening::{Grade, Makes, grade};
use shop::Given;
use units::{Length, Quantity};

use crate::needs::Complaint;
use crate::needs::jobs::Bench;

pub(in crate::needs::jobs) const THREAD: Given<Length> =
    Given::quantity("thread", "6 mm", "common-practice", "major diameter of the thread; a metric coarse one unless it is named");
pub(in crate::needs::jobs) const NAMED: Given<&'static str> = Given::name(
    "named",
    "coarse",
    "common-practice",
    "the thread by its name, such as M8x1, 1/4-20 or 2 BA, in place of its diameter; `coarse` is the metric coarse one of that",
);
pub(in crate::needs::jobs) const GRADE: Given<&'static str> = Given::name(
    "grade",
    "unmarked",
    "common-practice",
    "property class or grade on the screw's head, such as 8.8, A2-70 or grade 5; an unmarked one counts as the weakest of its metal",
);

/// A screw as a job tells of it.
pub(in crate::needs::jobs) struct Screw {
    pub thread: Thread,
    /// What it bears; nothing is known of some unmarked screws.
    pub grade: Option<Grade>,
    /// What it is counted as, in words: `a screw of 8.8`.
    pub counted: String,
}

/// Reads thread and grade.
pub(in crate::needs::jobs) fn screw(bench: &Bench<'_>, metals: &[String]) -> Result<Screw, Complaint> {
    let answers = bench.answers();
    let thread = match answers.word(&NAMED) {
        "coarse" => coarse(answers.quantity(&THREAD)),
        name => name.parse().map_err(|error: formulas::FormulaError| Complaint::Contradiction {
            field: "named",
            what: error.to_string(),
            mend: "Write it so, or give its diameter as `thread`.",
        })?,
    };
    let said = answers.word(&GRADE);
    if said == "unmarked" {
        let name = match () {
            () if bench.any_is(metals, "stainless") => "A-50",
            () if bench.any_is(metals, "copper-alloys") => "CU2",
            () => "4.6",
        };
        return Ok(Screw { thread, grade: grade(name, thread.major), counted: format!("an unmarked screw (counted as {name})") });
    }
    match grade(&plain(said), thread.major) {
        Some(found) => Ok(Screw { thread, grade: Some(found), counted: format!("a screw of {said}") }),
        None => {
            let names: Vec<&str> = Makes::ALL.iter().flat_map(|make| make.names).copied().collect();
            Err(Complaint::Contradiction {
                field: "grade",
                what: format!("`{said}` is no grade known for this thread; known are {}", names.join(", ")),
                mend: "Write what stands on the head, or `unmarked`.",
            })
        }
    }
}

/// Stainless grades without the digit of their alloy, on which their strength does not hang: `A2-70` as `A-70`.
fn plain(said: &str) -> String {
    let mut letters = said.trim().chars();
    match (letters.next(), letters.next(), letters.as_str()) {
        (Some('A' | 'a'), Some('1'..='8'), rest) if rest.starts_with('-') => format!("A{rest}"),
        _ => said.to_owned(),
    }
}

/// The metric thread of a diameter: the coarse one, or with a pitch between those of its neighbours where no metric thread is as large.
fn coarse(diameter: Length) -> Thread {
    const EXACT_MM: f64 = 1e-6;
    let d = diameter.base() * 1e3;
    let below = METRIC_COARSE.iter().rfind(|(size, _)| *size <= d + EXACT_MM);
    let above = METRIC_COARSE.iter().find(|(size, _)| *size >= d - EXACT_MM);
    let pitch = match (below, above) {
        (Some((low, fine)), Some((high, rough))) if high > low => fine + (rough - fine) * (d - low) / (high - low),
        (Some((_, pitch)), Some(_)) => *pitch,
        (Some((size, pitch)), None) | (None, Some((size, pitch))) => pitch * d / size,
        (None, None) => d / 6.0,
    };
    Thread::metric(d, pitch)
}
