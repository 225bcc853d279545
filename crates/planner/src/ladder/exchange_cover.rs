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
    /// How many chosen sets hold each element.
    times: Vec<u32>,
    chosen: Vec<bool>,
    /// When a set last went in or out.
    moved: Vec<u64>,
}

impl Search<'_> {
    fn flip(&mut self, set: usize, now: u64) {
        self.chosen[set] = !self.chosen[set];
        self.moved[set] = now;
        for &element in &self.sets.sets[set] {
            self.times[element] = if self.chosen[set] { self.times[element] + 1 } else { self.times[element] - 1 };
        }
    }

    fn uncovered(&self) -> Vec<usize> {
        (0..self.times.len()).filter(|&element| self.times[element] == 0).collect()
    }

    /// For a set outside, the weight it would newly cover for its cost; for one inside, the weight that only it covers.
    fn score(&self, set: usize) -> f64 {
        let alone = u32::from(self.chosen[set]);
        let weight: f64 = self.sets.sets[set].iter().filter(|&&e| self.times[e] == alone).map(|&e| self.weight[e]).sum();
        weight / self.sets.costs[set].max(f64::MIN_POSITIVE)
    }

    /// Of some sets the one with the most (or, negated, the least) score, then the one longest unmoved.
    fn pick(&self, among: impl Iterator<Item = usize>, sign: f64) -> Option<usize> {
        let scored = among.map(|set| (sign * self.score(set), set));
        let best = scored.max_by(|a, b| a.0.total_cmp(&b.0).then(self.moved[b.1].cmp(&self.moved[a.1])).then(b.1.cmp(&a.1)));
        best.map(|(_, set)| set)
    }

    /// The least missed of the chosen sets that have not moved just now.
    fn least(&self, but: usize, now: u64) -> Option<usize> {
        self.pick((0..self.chosen.len()).filter(|&set| self.chosen[set] && set != but && self.moved[set] < now), -1.0)
    }
}

/// A cover, after so many steps of the search from a fixed seed. Each element must stand in some set.
pub(super) fn cheap_cover(sets: &Sets<'_>, steps: u64) -> Vec<bool> {
    let (count, elements) = (sets.sets.len(), sets.of_element.len());
    let (chosen, moved) = (vec![false; count], vec![0; count]);
    let mut search = Search { sets, weight: vec![1.0; elements], times: vec![0; elements], chosen, moved };
    let (mut best, mut best_cost) = (vec![true; count], f64::INFINITY);
    let mut random = ChaCha8Rng::seed_from_u64(1);
    let mut entered = usize::MAX;
    for now in 1..=steps {
        while search.uncovered().is_empty() {
            if sets.cost(&search.chosen) < best_cost - 1e-9 {
                best.clone_from(&search.chosen);
                sets.trim(&mut best);
                best_cost = sets.cost(&best);
            }
            let Some(set) = search.least(usize::MAX, u64::MAX) else { return best };
            search.flip(set, now);
        }
        if let Some(set) = search.least(entered, now) {
            search.flip(set, now);
        }
        loop {
            let uncovered = search.uncovered();
            // What stays uncovered weighs more next time.
            uncovered.iter().for_each(|&element| search.weight[element] += 1.0);
            if uncovered.is_empty() {
                break;
            }
            let element = uncovered[random.random_range(0..uncovered.len())];
            let among = sets.of_element[element].iter().copied().filter(|&set| search.moved[set] < now);
            let Some(set) = search.pick(among, 1.0) else { break };
            if sets.cost(&search.chosen) + sets.costs[set] >= best_cost - 1e-9 {
                break;
            }
            search.flip(set, now);
            entered = set;
        }
    }
    best
}
