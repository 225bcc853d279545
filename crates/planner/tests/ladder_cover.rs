//! Cover and coverage against optimum values from another solver.
//!
//! Source of every expected value: the mixed-integer solver of a general-purpose scientific library at gap 0, as named in
//! `published/set_cover.json`. Optimum values are compared, not selections, of which there may be several.

use planner::ladder::{
    Effort,
    cover::{budgeted_max_coverage, weighted_set_cover},
};
use serde::Deserialize;
use std::time::{Duration, Instant};

#[derive(Deserialize)]
struct Published {
    instances: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    id: String,
    kind: String,
    n_elements: usize,
    sets: Vec<Vec<usize>>,
    costs: Vec<f64>,
    element_weights: Option<Vec<f64>>,
    budget: Option<f64>,
    optimum: f64,
}

fn cases(kind: &str) -> Vec<Case> {
    let text = include_str!("published/set_cover.json");
    let published: Published = serde_json::from_str(text).expect("the published file is sound");
    published.instances.into_iter().filter(|case| case.kind == kind).collect()
}

/// The largest cover instance took the other solver 99 s, so its proof is given up after this time; its value must be right all the same.
const PATIENCE: Duration = Duration::from_secs(20);

#[test]
fn covers_cost_what_another_solver_found() {
    for case in cases("weighted_set_cover") {
        let start = Instant::now();
        let cover = weighted_set_cover(case.n_elements, &case.sets, &case.costs, Effort { nodes: u64::MAX, time: Some(PATIENCE) }).unwrap();
        println!("{}: {} in {:.2?}, gap {:.4}", case.id, cover.cost, start.elapsed(), cover.gap);
        let mut covered: Vec<usize> = cover.sets.iter().flat_map(|&set| &case.sets[set]).copied().collect();
        covered.sort_unstable();
        covered.dedup();
        assert_eq!(covered.len(), case.n_elements, "{} leaves elements uncovered", case.id);
        assert_eq!(cover.sets.iter().map(|&set| case.costs[set]).sum::<f64>(), cover.cost, "{}", case.id);
        assert_eq!(cover.cost, case.optimum, "{}", case.id);
        // A lower bound above the optimum would be no bound.
        assert!((0.0..1.0).contains(&cover.gap), "{}", case.id);
    }
}

#[test]
fn coverage_is_what_another_solver_found_and_is_proven() {
    for case in cases("budgeted_max_coverage") {
        let start = Instant::now();
        let (weights, budget) = (case.element_weights.unwrap(), case.budget.unwrap());
        let best =
            budgeted_max_coverage(&weights, &case.sets, &case.costs, budget, Effort { nodes: u64::MAX, time: Some(PATIENCE) }).unwrap();
        println!("{}: {} in {:.2?}, gap {:.4}", case.id, best.value, start.elapsed(), best.gap);
        assert!(best.set.iter().map(|&set| case.costs[set]).sum::<f64>() <= budget, "{} is over budget", case.id);
        assert_eq!(best.value, case.optimum, "{}", case.id);
        assert_eq!(best.gap, 0.0, "{}", case.id);
    }
}
