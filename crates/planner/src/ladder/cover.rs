//! Two classic questions in their plain form: the cheapest sets that cover everything, and the most that sets cover for a sum of money.

use super::Taste;
use super::cover_search::cheapest;
use super::exact::{Question, Solver};
use super::exchange_cover::{Sets, cheap_cover};
use super::instance::{Best, Candidate, Effort, Instance, LadderError, Step, Task};
use super::program::Program;
use super::table::Table;

/// Steps of the search for a cheap cover before anything is proven.
const STEPS: u64 = 30_000;

/// A choice of sets that covers everything.
#[derive(Debug, Clone, PartialEq)]
pub struct Cover {
    /// The sets chosen, in order.
    pub sets: Vec<usize>,
    /// What they cost together.
    pub cost: f64,
    /// The part of `cost` that a cheaper cover might still save; 0 when it is proven that none does.
    pub gap: f64,
}

/// The cheapest sets that together hold each of the elements 0 … `elements` − 1.
///
/// # Errors
/// [`LadderError::Uncoverable`] when an element stands in no set; [`LadderError::LengthsDiffer`], [`LadderError::BadNumber`] and
/// [`LadderError::NoSuchElement`] when the lists contradict each other.
///
/// # Example
/// ```
/// use planner::ladder::{Effort, cover::weighted_set_cover};
///
/// let cover = weighted_set_cover(3, &[vec![0, 1], vec![1, 2], vec![0, 1, 2]], &[2.0, 2.0, 5.0], Effort::default())?;
/// assert_eq!(cover.sets, [0, 1]);
/// # Ok::<(), planner::ladder::LadderError>(())
/// ```
pub fn weighted_set_cover(elements: usize, sets: &[Vec<usize>], costs: &[f64], effort: Effort) -> Result<Cover, LadderError> {
    check(elements, sets, costs)?;
    let mut of_element = vec![Vec::new(); elements];
    // An element named twice in a set stands in it once.
    let sets: Vec<Vec<usize>> = sets
        .iter()
        .map(|set| {
            let mut set = set.clone();
            set.sort_unstable();
            set.dedup();
            set
        })
        .collect();
    for (place, set) in sets.iter().enumerate() {
        for &element in set {
            of_element[element].push(place);
        }
    }
    if let Some(element) = of_element.iter().position(Vec::is_empty) {
        return Err(LadderError::Uncoverable(element));
    }
    let given = Sets { sets: &sets, costs, of_element };
    let (chosen, bound) = cheapest(&given, cheap_cover(&given, STEPS), effort);
    let cost = given.cost(&chosen);
    let gap = if bound >= cost * (1.0 - 1e-9) - 1e-9 { 0.0 } else { (cost - bound) / cost };
    Ok(Cover { sets: (0..chosen.len()).filter(|&set| chosen[set]).collect(), cost, gap })
}

/// The sets that, within the budget, cover the most weight of elements.
///
/// # Errors
/// [`LadderError::LengthsDiffer`], [`LadderError::BadNumber`] and [`LadderError::NoSuchElement`] when the lists contradict each other.
///
/// # Example
/// ```
/// use planner::ladder::{Effort, cover::budgeted_max_coverage};
///
/// let best = budgeted_max_coverage(&[5.0, 4.0, 3.0], &[vec![0, 1], vec![1, 2], vec![2]], &[4.0, 3.0, 1.0], 4.0, Effort::default())?;
/// assert_eq!(best.value, 9.0);
/// # Ok::<(), planner::ladder::LadderError>(())
/// ```
pub fn budgeted_max_coverage(
    weights: &[f64],
    sets: &[Vec<usize>],
    costs: &[f64],
    budget: f64,
    effort: Effort,
) -> Result<Best, LadderError> {
    check(weights.len(), sets, costs)?;
    if !budget.is_finite() {
        return Err(LadderError::BadNumber { what: "budget", place: 0, value: budget });
    }
    let mut jobs: Vec<Task> =
        weights.iter().map(|&weight| Task { weight, steps: vec![Step { share: 1.0, right: Vec::new(), will_do: Vec::new() }] }).collect();
    for (place, set) in sets.iter().enumerate() {
        for &element in set {
            jobs[element].steps[0].right.push(place);
        }
    }
    let fluids = costs.iter().map(|&price| Candidate { price, hazards: 0, owned: false, allowed: true }).collect();
    let table = Table::new(&Instance { fluids, jobs })?;
    let weights = table.weights(weights);
    let taste: Vec<Taste> = costs.iter().map(|&price| Taste { price, hazards: 0 }).collect();
    let program = Program::new(&table, &weights, 0.0);
    let question = Question { table: &table, weights: &weights, will_do: 0.0, taste: &taste };
    let choice = Solver::new(question, &program, costs.to_vec()).best(budget.max(0.0), vec![Vec::new()], effort);
    Ok(Best { set: choice.set, value: choice.value, gap: choice.gap })
}

fn check(elements: usize, sets: &[Vec<usize>], costs: &[f64]) -> Result<(), LadderError> {
    if costs.len() != sets.len() {
        return Err(LadderError::LengthsDiffer { what: "costs of sets", found: costs.len(), expected: sets.len() });
    }
    for (place, &value) in costs.iter().enumerate() {
        if !(value.is_finite() && value >= 0.0) {
            return Err(LadderError::BadNumber { what: "the cost of set", place, value });
        }
    }
    for (place, set) in sets.iter().enumerate() {
        if let Some(&element) = set.iter().find(|&&element| element >= elements) {
            return Err(LadderError::NoSuchElement { set: place, element, elements });
        }
    }
    Ok(())
}
