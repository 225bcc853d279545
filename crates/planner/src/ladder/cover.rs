//! Two classic questions in their plain form: the cheapest sets that cover everything, and the most that sets cover for a sum of money.

use super::best_within;
use super::exact::solve_options;
use super::exchange_cover::{Sets, cheap_cover};
use super::instance::{Best, Candidate, Effort, Instance, LadderError, Options, Step, Task};
use microlp::{ComparisonOp, OptimizationDirection, Problem};

/// Steps of the search for a cheap cover before anything is proven.
const STEPS: u64 = 10_000;

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
    let mut chosen = cheap_cover(&given, STEPS);
    let bound = better(&given, &mut chosen, effort).unwrap_or(0.0);
    let cost = given.cost(&chosen);
    // What the tolerances of the library may take from a bound is no gap.
    let gap = if bound >= cost * (1.0 - 1e-7) { 0.0 } else { (cost - bound) / cost };
    Ok(Cover { sets: (0..chosen.len()).filter(|&set| chosen[set]).collect(), cost, gap })
}

/// Betters a cover with the integer program: a whole number for each set, a row for each element. Returns a proven lower bound on the cost
/// of any cover, if the library has one.
fn better(sets: &Sets<'_>, chosen: &mut Vec<bool>, effort: Effort) -> Option<f64> {
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let x: Vec<_> = sets.costs.iter().map(|&cost| problem.add_binary_var(cost)).collect();
    for row in &sets.of_element {
        problem.add_constraint(row.iter().map(|&set| (x[set], 1.0)), ComparisonOp::Ge, 1.0);
    }
    let start = x.iter().zip(&*chosen).map(|(&x, &chosen)| (x, if chosen { 1.0 } else { 0.0 })).collect();
    let outcome = problem.solve_with(solve_options(effort, start)).ok()?;
    if let Some(solution) = outcome.solution() {
        let found: Vec<bool> = x.iter().map(|&x| solution.var_value(x) > 0.5).collect();
        if sets.cost(&found) < sets.cost(chosen) {
            *chosen = found;
        }
    }
    outcome.stats().best_bound
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
    let mut jobs: Vec<Task> =
        weights.iter().map(|&weight| Task { weight, steps: vec![Step { share: 1.0, right: Vec::new(), will_do: Vec::new() }] }).collect();
    for (place, set) in sets.iter().enumerate() {
        for &element in set {
            jobs[element].steps[0].right.push(place);
        }
    }
    let fluids = costs.iter().map(|&price| Candidate { price, hazards: 0, owned: false, allowed: true }).collect();
    best_within(&Instance { fluids, jobs }, budget, &Options { will_do: 0.0, effort, ..Options::default() })
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
