//! What the ladder chooses from, and what it answers.

/// What the ladder chooses from, already judged. It knows neither names nor units: fluids and tasks are places in these lists.
#[derive(Debug, Clone, Default)]
pub struct Instance {
    /// Everything that could be bought, and everything owned.
    pub fluids: Vec<Candidate>,
    /// Everything that calls for fluids.
    pub jobs: Vec<Task>,
}

/// A fluid as the ladder sees it.
#[derive(Debug, Clone, Copy)]
pub struct Candidate {
    /// What one purchase costs, in any currency, the same for all.
    pub price: f64,
    /// How many hazard statements it carries.
    pub hazards: u32,
    /// It stands in the cupboard already and counts from the start.
    pub owned: bool,
    /// It may be bought and used. A fluid that is not allowed counts for nothing, even when owned.
    pub allowed: bool,
}

/// A job, or a lubrication point, which is a task with one step.
#[derive(Debug, Clone)]
pub struct Task {
    /// What it is worth to have the task wholly right.
    pub weight: f64,
    /// Its steps. The task counts only when each of them is served.
    pub steps: Vec<Step>,
}

/// One step of a task.
#[derive(Debug, Clone)]
pub struct Step {
    /// The part of the task's weight that hangs on this step. The shares of a task's steps add up to 1.
    pub share: f64,
    /// The fluids that are right here.
    pub right: Vec<usize>,
    /// The fluids that will do here. One that also stands under `right` is right.
    pub will_do: Vec<usize>,
}

/// How hard to look for an exact optimum.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Effort {
    /// The most branches one search may open. Counting branches, not seconds, keeps the answer the same on every machine.
    pub nodes: u64,
    /// A limit in time as well. `None` leaves the answer reproducible.
    pub time: Option<std::time::Duration>,
}

impl Default for Effort {
    fn default() -> Self {
        Self { nodes: 2_000, time: None }
    }
}

/// How to climb.
#[derive(Debug, Clone, Copy)]
pub struct Options {
    /// The most rungs to build.
    pub rungs: usize,
    /// The grade of a fluid that will do, beside 1 for the right one.
    pub will_do: f64,
    /// How many times weights, prices and the grade of "will do" are drawn to test the order. 0 leaves the test out.
    pub draws: u32,
    /// How hard to look for the optimum beside each rung.
    pub effort: Effort,
}

impl Default for Options {
    fn default() -> Self {
        Self { rungs: 12, will_do: 0.6, draws: 500, effort: Effort::default() }
    }
}

/// The buying order.
#[derive(Debug, Clone, PartialEq)]
pub struct Ladder {
    /// What the fluids owned already serve.
    pub start: f64,
    /// What owning every allowed fluid would serve.
    pub everything: f64,
    /// The purchases, first things first. It ends where nothing more is to be gained.
    pub rungs: Vec<Rung>,
}

/// One purchase.
#[derive(Debug, Clone, PartialEq)]
pub struct Rung {
    /// What to buy.
    pub fluid: usize,
    /// What it adds to what is owned by then.
    pub gain: f64,
    /// What is served after it.
    pub total: f64,
    /// The most that any choice of this many purchases serves, as far as it was found.
    pub best_possible: f64,
    /// A choice that serves that much. It may hold fewer fluids, when more would add nothing.
    pub best_set: Vec<usize>,
    /// The part of the proven upper bound that `best_possible` might still fall short of; 0 when it is proven to be the optimum.
    pub gap: f64,
    /// The share of the draws in which this same fluid stands on this same rung, the first compared with the first and so on. A ladder
    /// that ends lower in a draw does not keep the rung there. 1 when no draws were asked for.
    pub holds_in: f64,
    /// The purchase pays only together with the next one: a task opens when both are owned.
    pub opens_with_next: bool,
    /// The tasks that are served from here on and were not before.
    pub newly_served: Vec<usize>,
    /// How many tasks are wholly right by now.
    pub right: usize,
    /// How many tasks are served by now, with something that will do in at least one step.
    pub will_do: usize,
}

/// An exact choice.
#[derive(Debug, Clone, PartialEq)]
pub struct Best {
    /// What to buy, in order of place in the instance.
    pub set: Vec<usize>,
    /// What is served with it and with what is owned.
    pub value: f64,
    /// The part of the proven upper bound that `value` might still fall short of; 0 when it is proven to be the optimum.
    pub gap: f64,
}

/// Why an instance cannot be climbed. Each is a mistake of the caller, not of the user.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum LadderError {
    /// A number is not finite or is negative.
    #[error("{what} {place} is {value}; it must be a finite number, not below 0")]
    BadNumber {
        /// The kind of thing.
        what: &'static str,
        /// Its place in its list.
        place: usize,
        /// What was given.
        value: f64,
    },
    /// A step names a fluid that is not in the list.
    #[error("task {task} names fluid {fluid}, but there are only {fluids}")]
    NoSuchFluid {
        /// The task's place.
        task: usize,
        /// The fluid named.
        fluid: usize,
        /// How many there are.
        fluids: usize,
    },
    /// The shares of a task's steps do not add up to 1.
    #[error("the shares of the steps of task {task} add up to {sum}; they must add up to 1")]
    SharesDoNotAddUp {
        /// The task's place.
        task: usize,
        /// Their sum.
        sum: f64,
    },
    /// A task has more different steps than fit one machine word.
    #[error("task {task} has {steps} different steps; 64 is the most")]
    TooManySteps {
        /// The task's place.
        task: usize,
        /// How many steps it has.
        steps: usize,
    },
    /// The grade of "will do" lies outside 0 to 1.
    #[error("the grade of \"will do\" is {0}; it must lie between 0 and 1")]
    BadGrade(f64),
    /// In a cover: an element stands in no set.
    #[error("element {0} stands in no set, so nothing covers everything")]
    Uncoverable(usize),
    /// In a cover: a set names an element that is not in the list.
    #[error("set {set} names element {element}, but there are only {elements}")]
    NoSuchElement {
        /// The set's place.
        set: usize,
        /// The element named.
        element: usize,
        /// How many there are.
        elements: usize,
    },
    /// In a cover: lists that belong together differ in length.
    #[error("{what}: {found} values given, {expected} needed")]
    LengthsDiffer {
        /// Which list.
        what: &'static str,
        /// Its length.
        found: usize,
        /// The length it should have.
        expected: usize,
    },
}

/// A count as a number to reckon with. Counts here are list lengths, far below 2³².
pub(super) fn number(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::from(u32::MAX), f64::from)
}
