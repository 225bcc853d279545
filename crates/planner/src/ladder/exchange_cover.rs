//! Finding a cheap cover fast, without proof: uncovered elements gain weight until a set that covers them is worth its cost.
//!
//! Source of the method: C. Gao, X. Yao, T. Weise and J. Li, "An efficient local search heuristic with row weighting for the unicost
//! set covering problem", European Journal of Operational Research 246 (2015), here with costs.

use rand::rngs::ChaCha8Rng;
use rand::{RngExt, SeedableRng};

/// The sets and, for each element, where it stands.
#[derive(Debug)]
pub(super) struct Sets<'s> {
    pub sets: &'s [Vec<usize>],
    pub costs: &'s [f64],
    pub of_element: Vec<Vec<usize>>,
}

impl Sets<'_> {
    pub fn cost(&self, chosen: &[bool]) -> f64 {
        chosen.iter().zip(self.costs).filter(|(chosen, _)| **chosen).map(|(_, cost)| cost).sum()
    }

    /// Drops sets without which everything stays covered, the dearest first.
    pub fn trim(&self, chosen: &mut [bool]) {
        let mut times = vec![0_u32; self.of_element.len()];
        for set in (0..chosen.len()).filter(|&set| chosen[set]) {
            for &element in &self.sets[set] {
                times[element] += 1;
            }
        }
        let mut order: Vec<usize> = (0..chosen.len()).filter(|&set| chosen[set]).collect();
        order.sort_by(|&a, &b| self.costs[b].total_cmp(&self.costs[a]));
        for set in order {
            if self.sets[set].iter().all(|&element| times[element] > 1) {
                chosen[set] = false;
                for &element in &self.sets[set] {
                    times[element] -= 1;
                }
            }
        }
    }
}

struct Search<'s> {
    sets: &'s Sets<'s>,
    weight: Vec<f64>,
    times: Vec<u32>,
    chosen: Vec<bool>,
    /// For a set outside, the weight it would newly cover; for one inside, the weight only it covers.
    score: Vec<f64>,
    /// When a set last went in or out.
    moved: Vec<u64>,
    uncovered: Vec<usize>,
    cost: f64,
}

impl Search<'_> {
    fn flip(&mut self, set: usize, now: u64) {
        let entering = !self.chosen[set];
        self.chosen[set] = entering;
        self.cost += if entering { self.sets.costs[set] } else { -self.sets.costs[set] };
        self.moved[set] = now;
        for &element in &self.sets.sets[set] {
            let weight = self.weight[element];
            let before = self.times[element];
            let after = if entering { before + 1 } else { before - 1 };
            self.times[element] = after;
            // Only the steps between 0, 1 and 2 covers change what a set is worth.
            for &other in self.sets.of_element[element].iter().filter(|&&other| other != set) {
                match (before, after) {
                    (0, 1) => self.score[other] -= weight,
                    (1, 0) => self.score[other] += weight,
                    (1, 2) if self.chosen[other] => self.score[other] -= weight,
                    (2, 1) if self.chosen[other] => self.score[other] += weight,
                    _ => {}
                }
            }
            if after == 0 {
                self.uncovered.push(element);
            }
        }
        if entering {
            let times = &self.times;
            self.uncovered.retain(|&element| times[element] == 0);
        }
        let alone = if entering { 1 } else { 0 };
        self.score[set] = self.sets.sets[set].iter().filter(|&&e| self.times[e] == alone).map(|&e| self.weight[e]).sum();
    }

    /// Of some sets the one with the most (or, negated, the least) score for its cost, then the one longest unmoved.
    fn pick(&self, among: impl Iterator<Item = usize>, sign: f64) -> Option<usize> {
        let value = |set: usize| sign * self.score[set] / self.sets.costs[set].max(f64::MIN_POSITIVE);
        among.max_by(|&a, &b| value(a).total_cmp(&value(b)).then(self.moved[b].cmp(&self.moved[a])).then(b.cmp(&a)))
    }
}

/// A cover, after so many steps of the search from a fixed seed. Each element must stand in some set.
pub(super) fn cheap_cover(sets: &Sets<'_>, steps: u64) -> Vec<bool> {
    let count = sets.sets.len();
    let mut search = Search {
        sets,
        weight: vec![1.0; sets.of_element.len()],
        times: vec![0; sets.of_element.len()],
        chosen: vec![false; count],
        score: sets.sets.iter().map(|set| super::instance::number(set.len())).collect(),
        moved: vec![0; count],
        uncovered: (0..sets.of_element.len()).collect(),
        cost: 0.0,
    };
    while !search.uncovered.is_empty() {
        let Some(set) = search.pick((0..count).filter(|&set| !search.chosen[set]), 1.0) else { break };
        search.flip(set, 0);
    }
    let mut best = search.chosen.clone();
    sets.trim(&mut best);
    let mut best_cost = sets.cost(&best);
    let mut random = ChaCha8Rng::seed_from_u64(1);
    let mut entered = usize::MAX;
    for now in 1..=steps {
        while search.uncovered.is_empty() {
            if search.cost < best_cost - 1e-9 {
                best.clone_from(&search.chosen);
                sets.trim(&mut best);
                best_cost = sets.cost(&best);
            }
            let Some(set) = search.pick((0..count).filter(|&set| search.chosen[set]), -1.0) else { return best };
            search.flip(set, now);
        }
        if let Some(set) = search.pick((0..count).filter(|&set| search.chosen[set] && set != entered && search.moved[set] < now), -1.0) {
            search.flip(set, now);
        }
        while !search.uncovered.is_empty() {
            let element = search.uncovered[random.random_range(0..search.uncovered.len())];
            let among = sets.of_element[element].iter().copied().filter(|&set| search.moved[set] < now);
            let Some(set) = search.pick(among, 1.0) else { break };
            if search.cost + sets.costs[set] >= best_cost - 1e-9 {
                break;
            }
            search.flip(set, now);
            entered = set;
            for &element in &search.uncovered {
                search.weight[element] += 1.0;
                for &set in &sets.of_element[element] {
                    search.score[set] += 1.0;
                }
            }
        }
        // Even where nothing may enter, what stays uncovered must weigh more next time.
        for &element in &search.uncovered {
            search.weight[element] += 1.0;
            for &set in &sets.of_element[element] {
                search.score[set] += 1.0;
            }
        }
    }
    best
}
