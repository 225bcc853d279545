//! The ladder: in which order to buy, and what going step by step costs against the exact optimum.
//!
//! A task counts for weight × Σ share × grade over its steps, if each step is served, else for nothing; the grade is that of the best
//! fluid owned, 1 for right and [`Options::will_do`] for one that will do.
//!
//! [`climb`] buys one fluid at a time, each the best next purchase. Where a task opens only with several fluids together, they are
//! weighed as a bundle (gain for each fluid bought) and stand on consecutive rungs. Equal gains go to the cheaper, then to the less
//! hazardous fluid, then to the one earlier in the list. [`best_within`] finds the exact best set of fluids for a sum of money.
//!
//! The module knows no fluid names and no units, does no input or output and, unless [`Effort::time`] asks for it, reads no clock.

pub mod cover;
mod draws;
mod exact;
mod exchange_cover;
mod greedy;
mod instance;
mod program;
mod table;

pub use instance::{Best, Candidate, Effort, Instance, Ladder, LadderError, Options, Rung, Step, Task};

use exact::{Choice, Question, Solver};
use greedy::{Climb, Pick, Taste};
use instance::number;
use table::Table;

/// What the instance comes to, ready to be asked.
struct Ready {
    table: Table,
    weights: Vec<f64>,
    task_weights: Vec<f64>,
    taste: Vec<Taste>,
    will_do: f64,
}

impl Ready {
    fn new(instance: &Instance, will_do: f64) -> Result<Self, LadderError> {
        if !(0.0..=1.0).contains(&will_do) {
            return Err(LadderError::BadGrade(will_do));
        }
        let table = Table::new(instance)?;
        let task_weights: Vec<f64> = instance.jobs.iter().map(|task| task.weight).collect();
        let weights = table.weights(&task_weights);
        let taste = table.fluids.iter().map(|&f| Taste { price: instance.fluids[f].price, hazards: instance.fluids[f].hazards }).collect();
        Ok(Self { table, weights, task_weights, taste, will_do })
    }

    fn question(&self) -> Question<'_> {
        Question { table: &self.table, weights: &self.weights, will_do: self.will_do, taste: &self.taste }
    }

    fn value(&self, set: &[usize]) -> f64 {
        self.table.value(set, &self.weights, self.will_do)
    }

    fn picks(&self, rungs: usize) -> Vec<Pick> {
        let mut picks = Vec::new();
        Climb::new(&self.table).run(&self.weights, self.will_do, &self.taste, rungs, rungs, &mut picks);
        picks
    }

    fn in_instance(&self, choice: Choice) -> Best {
        Best { set: choice.set.into_iter().map(|f| self.table.fluids[f]).collect(), value: choice.value, gap: choice.gap }
    }
}

/// Builds the ladder.
///
/// # Errors
/// [`LadderError`] when the instance contradicts itself; see there.
///
/// # Example
/// One oil will do for both tasks, one is right for the first only.
/// ```
/// use planner::ladder::{Candidate, Instance, Options, Step, Task, climb};
///
/// let fluid = Candidate { price: 10.0, hazards: 0, owned: false, allowed: true };
/// let task = |right, will_do| Task { weight: 1.0, steps: vec![Step { share: 1.0, right, will_do }] };
/// let instance = Instance { fluids: vec![fluid; 2], jobs: vec![task(vec![0], vec![1]), task(vec![], vec![1])] };
/// let ladder = climb(&instance, &Options::default())?;
/// assert_eq!(ladder.rungs[0].fluid, 1); // 0.6 + 0.6 is more than 1
/// assert_eq!(ladder.rungs[1].fluid, 0); // and the right one adds 0.4
/// # Ok::<(), planner::ladder::LadderError>(())
/// ```
pub fn climb(instance: &Instance, options: &Options) -> Result<Ladder, LadderError> {
    let ready = Ready::new(instance, options.will_do)?;
    let (table, start) = (&ready.table, ready.value(&[]));
    let picks = ready.picks(options.rungs);
    let holds_in = draws::holds_in(table, &ready.task_weights, &ready.taste, options.rungs, &picks, options.draws);
    let solver = Solver::new(ready.question(), vec![1.0; table.fluids.len()]);
    let (mut owned, mut total, mut last): (Vec<usize>, f64, Vec<usize>) = (Vec::new(), start, Vec::new());
    let mut served = table.state(&[]);
    let mut rungs = Vec::with_capacity(picks.len());
    for (pick, holds_in) in picks.into_iter().zip(holds_in) {
        owned.push(pick.fluid);
        let before = std::mem::replace(&mut total, ready.value(&owned));
        let best = solver.best(number(owned.len()), vec![owned.clone(), last], options.effort);
        last = best.set.clone();
        let best = ready.in_instance(best);
        let state = table.state(&owned);
        let (mut newly_served, mut right, mut will_do) = (Vec::new(), 0, 0);
        for ((group, before), now) in table.groups.iter().zip(&served).zip(&state).filter(|((group, _), now)| now.0 == group.full) {
            if before.0 != group.full {
                newly_served.extend(&group.members);
            }
            *(if now.1 == group.full { &mut right } else { &mut will_do }) += group.members.len();
        }
        newly_served.sort_unstable();
        served = state;
        rungs.push(Rung {
            fluid: table.fluids[pick.fluid],
            gain: total - before,
            total,
            best_possible: best.value,
            best_set: best.set,
            gap: best.gap,
            holds_in,
            opens_with_next: pick.opens_with_next,
            newly_served,
            right,
            will_do,
        });
    }
    let everything = ready.value(&(0..table.fluids.len()).collect::<Vec<_>>());
    Ok(Ladder { start, everything, rungs })
}

/// The exact best set of fluids for a sum of money, never worse than walking the ladder and buying each rung that is still affordable.
///
/// A budget below 0 buys nothing.
///
/// # Errors
/// [`LadderError`] when the instance contradicts itself, or the budget is not a number.
pub fn best_within(instance: &Instance, budget: f64, options: &Options) -> Result<Best, LadderError> {
    if !budget.is_finite() {
        return Err(LadderError::BadNumber { what: "budget", place: 0, value: budget });
    }
    let ready = Ready::new(instance, options.will_do)?;
    let budget = budget.max(0.0);
    let (mut walk, mut left) = (Vec::new(), budget);
    for pick in ready.picks(ready.table.fluids.len()) {
        let price = ready.taste[pick.fluid].price;
        if price <= left {
            left -= price;
            walk.push(pick.fluid);
        }
    }
    let prices = ready.taste.iter().map(|taste| taste.price).collect();
    let best = Solver::new(ready.question(), prices).best(budget, vec![walk, Vec::new()], options.effort);
    Ok(ready.in_instance(best))
}
