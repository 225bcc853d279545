//! Cover and coverage against optimum values from another solver.
//!
//! Source of every expected value: the mixed-integer solver of a general-purpose scientific library at gap 0, as named in
//! `published/set_cover.json`. Optimum values are compared, not selections, of which there may be several.

use planner::ladder::{
    Effort,
    cover::{budgeted_max_coverage, weighted_set_cover},
};
use proptest::prelude::*;
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

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    /// Trying every choice of sets is the definition; no source needed.
    #[test]
    fn a_small_cover_is_the_cheapest_of_all(masks in proptest::collection::vec(1..512_u32, 1..11), costs in proptest::collection::vec(0..9_u32, 11)) {
        // The last set holds every element, so that there is a cover; it is dear.
        let sets: Vec<Vec<usize>> = masks.iter().chain(&[511]).map(|mask| (0..9).filter(|e| mask >> e & 1 == 1).collect()).collect();
        let costs: Vec<f64> = costs[..masks.len()].iter().map(|&cost| f64::from(cost) / 2.0).chain([30.5]).collect();
        let cheapest = (1..1_u32 << sets.len())
            .map(|choice| (0..sets.len()).filter(|set| choice >> set & 1 == 1).collect::<Vec<_>>())
            .filter(|choice| (0..9).all(|element| choice.iter().any(|&set| sets[set].contains(&element))))
            .map(|choice| choice.iter().map(|&set| costs[set]).sum::<f64>())
            .fold(f64::INFINITY, f64::min);
        let cover = weighted_set_cover(9, &sets, &costs, Effort::default()).unwrap();
        prop_assert!((cover.cost - cheapest).abs() < 1e-9 && cover.gap == 0.0, "{cheapest} against {cover:?}");
    }
}
