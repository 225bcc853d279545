//! What every job shares: tasks made of steps, and how a step becomes a need.

use std::borrow::Cow;

use formulas::working::Notebook;
use reference::{Form, Reference, Trait};
use shop::{Answers, Job, Room};
use units::{Frequency, Quantity};

use crate::demand::{Demand, Test};
use crate::need::{Consequence, Dose, Every, How, Need, Place};
use crate::needs::{count, id, weight};
use crate::verdict::Grade;

/// The job, and all it is done in.
pub(crate) struct Bench<'a> {
    pub room: &'a Room,
    pub job: &'a Job,
    pub reference: &'a Reference,
}

impl Bench<'_> {
    /// What is said or supposed about the job.
    pub fn answers(&self) -> &Answers {
        &self.job.answers
    }

    /// How many times a year the job is done.
    pub fn times_a_year(&self) -> f64 {
        times_a_year(self.job.often)
    }
}

fn times_a_year(often: Frequency) -> f64 {
    const SECONDS_A_YEAR: f64 = 365.25 * 86_400.0;
    often.base() * SECONDS_A_YEAR
}

/// A piece of work that counts only when all its steps are served.
pub(crate) struct Task {
    /// What happens when it cannot be done properly.
    pub consequence: Consequence,
    /// Times a year.
    pub times_a_year: f64,
    /// In the order they are done.
    pub steps: Vec<Step>,
}

/// One step of a task.
pub(crate) struct Step {
    name: String,
    demands: Vec<Demand>,
    doses: Vec<(Form, Dose)>,
    how: Cow<'static, str>,
    mind: Vec<(Cow<'static, str>, &'static str)>,
    nothing: Option<Cow<'static, str>>,
}

impl Step {
    /// A step done in this way.
    pub fn new(name: impl Into<String>, how: impl Into<Cow<'static, str>>) -> Self {
        Self { name: name.into(), demands: Vec::new(), doses: Vec::new(), how: how.into(), mind: Vec::new(), nothing: None }
    }

    /// A step for which no product is named; says why and whom to ask.
    pub fn refused(name: impl Into<String>, why: impl Into<Cow<'static, str>>) -> Self {
        Self { nothing: Some(why.into()), ..Self::new(name, "") }
    }

    /// A demand.
    pub fn demand(mut self, what: &'static str, test: Test, why: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        self.demands.push(Demand { what, test, why: why.into(), source });
        self
    }

    /// Classes of fluid (or fluids by key).
    pub fn classes(self, right: &[&str], will_do: &[&str], why: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        let words = |words: &[&str]| words.iter().map(|word| Cow::Owned((*word).to_owned())).collect();
        self.demand("kind of fluid", Test::Class { right: words(right), will_do: words(will_do) }, why, source)
    }

    /// Classes from a table of practice: the first is right, the others will do.
    pub fn ranked(self, ranked: &[String], why: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        let words: Vec<&str> = ranked.iter().map(String::as_str).collect();
        let (right, will_do) = words.split_at(words.len().min(1));
        self.classes(right, will_do, why, source)
    }

    /// Materials that must not be harmed.
    pub fn spares(self, materials: &[String]) -> Self {
        if materials.is_empty() {
            return self;
        }
        self.demand(
            "safe on what it touches",
            Test::Spares { materials: materials.to_vec(), stays: true },
            "it touches these materials",
            "common-practice",
        )
    }

    /// A dose, whatever the form of the fluid.
    pub fn dose(mut self, dose: Dose) -> Self {
        for form in [Form::Oil, Form::Grease, Form::Dry, Form::Liquid, Form::Paste, Form::Solid] {
            self.doses.push((form, dose));
        }
        self
    }

    /// Something to mind.
    pub fn mind(mut self, text: impl Into<Cow<'static, str>>, source: &'static str) -> Self {
        self.mind.push((text.into(), source));
        self
    }
}

/// Degreasing before something that must stick or bite; `residue_free` where even a trace of oil spoils it.
pub(crate) fn degrease(materials: &[String], area_dose: Dose, residue_free: bool) -> Step {
    let (right, will_do): (&[&str], &[&str]) = if residue_free {
        (&["acetone", "isopropanol"], &["alcohol", "brake-cleaner", "alkaline-degreaser"])
    } else {
        (
            &["dearomatised-solvent", "isopropanol", "acetone"],
            &["mineral-spirits", "alcohol", "brake-cleaner", "neutral-detergent", "kerosene"],
        )
    };
    Step::new("degrease", "wipe with a wet cloth, then with a clean dry one, one way only")
        .classes(right, will_do, "what follows sticks or bites only on metal without oil", "common-practice")
        .spares(materials)
        .dose(area_dose)
}

/// The needs of a task, one for each step.
pub(super) fn finish(bench: &Bench<'_>, task: Task, working: Option<&Notebook>) -> Vec<Need> {
    let weight = weight::weight(task.consequence, task.times_a_year, bench.job.priority, bench.reference);
    let group = task.steps.first().map(|step| id(&[&bench.job.name, &step.name])).unwrap_or_default();
    let every = Every { running_hours: None, days: None, words: Some("each time"), times_a_year: task.times_a_year };
    let share = 1.0 / count(task.steps.iter().filter(|step| step.nothing.is_none()).count().max(1));
    task.steps
        .into_iter()
        .map(|step| {
            let mut demands = step.demands;
            if step.nothing.is_none() {
                demands.extend(odour(bench.room));
            }
            Need {
                id: id(&[&bench.job.name, &step.name]),
                task: group.clone(),
                share: if step.nothing.is_none() { share } else { 0.0 },
                place: Place::Step { job: bench.job.name.clone(), step: step.name },
                kind: bench.job.kind.name,
                weight: weight.clone(),
                demands,
                nothing: step.nothing,
                doses: step.doses,
                how: How::Words(step.how),
                every: every.clone(),
                mind: step.mind,
                working: working.cloned(),
                at: bench.job.at.clone(),
            }
        })
        .collect()
}

/// Where smells are unwelcome, strong ones are wrong.
fn odour(room: &Room) -> Option<Demand> {
    room.low_odour.then(|| Demand {
        what: "little smell",
        test: Test::Without { traits: &[Trait::StrongOdour], else_grade: Grade::Wrong },
        why: "strong smells are unwelcome in this room".into(),
        source: "shop-file",
    })
}
