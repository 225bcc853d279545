//! Proving that a cover is the cheapest: branch and bound in which the elements are priced (Lagrangian relaxation, as in `bound.rs`).
//!
//! What a set costs beyond the prices of its uncovered elements says which sets cannot be in, or out of, a cheaper cover. Where all
//! costs are whole numbers, a bound is rounded up.

use super::exchange_cover::Sets;
use super::instance::{Effort, number};
use std::time::Instant;

/// Rounds of bettering the prices at the outset, and at each branch.
const ROUNDS: (usize, usize) = (400, 20);
const FRESH: f64 = 0.4;
const AVERAGE: f64 = 0.1;
const PATIENCE: (u32, u32) = (15, 4);

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Fate {
    Open,
    In,
    Out,
}

#[derive(Debug, Clone)]
struct Node {
    fate: Vec<Fate>,
    price: Vec<f64>,
    bound: f64,
}

/// A search under way.
struct Search<'s> {
    sets: &'s Sets<'s>,
    best: Vec<bool>,
    best_cost: f64,
    /// A cheaper cover is cheaper by this much at least.
    grain: f64,
    average: Vec<f64>,
}

/// The cheapest cover found, beginning with `start`, and a proven lower bound on the cost of any.
pub(super) fn cheapest(sets: &Sets<'_>, start: Vec<bool>, effort: Effort) -> (Vec<bool>, f64) {
    let deadline = effort.time.and_then(|time| Instant::now().checked_add(time));
    let whole = sets.costs.iter().all(|cost| cost.fract() <= 0.0 && *cost < 1e9);
    let best_cost = sets.cost(&start);
    let grain = if whole { 1.0 - 1e-6 } else { 1e-9 * best_cost };
    let mut search = Search { sets, best: start, best_cost, grain, average: vec![0.0; sets.costs.len()] };
    let cheapest_for = |row: &Vec<usize>| row.iter().map(|&s| sets.costs[s] / number(sets.sets[s].len())).fold(f64::INFINITY, f64::min);
    let root = Node { fate: vec![Fate::Open; sets.costs.len()], price: sets.of_element.iter().map(cheapest_for).collect(), bound: 0.0 };
    let mut open = Vec::new();
    search.open_up(root, ROUNDS.0, &mut open);
    let mut nodes = 0;
    while let Some(node) = open.pop() {
        if node.bound > search.best_cost - search.grain {
            continue;
        }
        if nodes == effort.nodes || deadline.is_some_and(|deadline| Instant::now() >= deadline) {
            let bound = open.iter().map(|node| node.bound).fold(node.bound, f64::min);
            return (search.best, bound.min(search.best_cost));
        }
        nodes += 1;
        search.open_up(node, ROUNDS.1, &mut open);
    }
    (search.best, search.best_cost)
}

impl Search<'_> {
    /// Bounds a node and, where something cheaper may lie under it, parts it in two.
    fn open_up(&mut self, mut node: Node, rounds: usize, open: &mut Vec<Node>) {
        loop {
            let Some(settled) = self.settle(&mut node, rounds) else { return };
            if !settled {
                break;
            }
        }
        // A dear set that the relaxed optimum is unsure of moves the bound most, both ways.
        let unsure = |s: usize| -(self.average[s] + 0.02).min(1.02 - self.average[s]) * self.sets.costs[s];
        let Some(set) = (0..node.fate.len()).filter(|&s| node.fate[s] == Fate::Open).min_by(|&a, &b| unsure(a).total_cmp(&unsure(b)))
        else {
            return;
        };
        let mut with = node.clone();
        with.fate[set] = Fate::In;
        node.fate[set] = Fate::Out;
        open.push(node);
        open.push(with);
    }

    /// Lowers and settles once. `None` when nothing cheaper lies here; else whether much was settled, so that it pays to repeat.
    fn settle(&mut self, node: &mut Node, rounds: usize) -> Option<bool> {
        let sets = self.sets;
        // An element with one set left needs it; with none, there is no cover here.
        let mut covered = vec![false; sets.of_element.len()];
        for set in (0..node.fate.len()).filter(|&s| node.fate[s] == Fate::In) {
            sets.sets[set].iter().for_each(|&e| covered[e] = true);
        }
        for element in 0..covered.len() {
            if covered[element] {
                continue;
            }
            let mut left = sets.of_element[element].iter().copied().filter(|&s| node.fate[s] == Fate::Open);
            let first = left.next()?;
            if left.next().is_none() {
                node.fate[first] = Fate::In;
                sets.sets[first].iter().for_each(|&e| covered[e] = true);
            }
        }
        let rows: Vec<usize> = (0..covered.len()).filter(|&e| !covered[e]).collect();
        let spent: f64 = (0..node.fate.len()).filter(|&s| node.fate[s] == Fate::In).map(|s| sets.costs[s]).sum();
        if rows.is_empty() {
            self.offer(node.fate.iter().map(|&fate| fate == Fate::In).collect());
            return None;
        }
        let place: Vec<usize> = (0..node.fate.len()).filter(|&s| node.fate[s] == Fate::Open).collect();
        let mut new_place = vec![usize::MAX; covered.len()];
        rows.iter().enumerate().for_each(|(new, &e)| new_place[e] = new);
        let mut members: Vec<usize> = Vec::new();
        let mut starts = vec![0];
        for &set in &place {
            members.extend(sets.sets[set].iter().map(|&e| new_place[e]).filter(|&e| e != usize::MAX));
            starts.push(members.len());
        }
        let of = |s: usize| &members[starts[s]..starts[s + 1]];
        let mut price: Vec<f64> = rows.iter().map(|&e| node.price[e]).collect();
        let (mut slope, mut times) = (vec![0.0; rows.len()], vec![0.0; rows.len()]);
        let (mut best, mut best_price) = (f64::NEG_INFINITY, price.clone());
        let root = rounds == ROUNDS.0;
        let (mut pace, mut stale, patience) = if root { (1.0, 0, PATIENCE.0) } else { (0.2, 0, PATIENCE.1) };
        let mut average = vec![0.0; place.len()];
        for round in 0..rounds {
            let mut bound = spent + price.iter().sum::<f64>();
            times.fill(0.0);
            for (s, &set) in place.iter().enumerate() {
                let over = sets.costs[set] - of(s).iter().map(|&e| price[e]).sum::<f64>();
                let taken = if over < 0.0 { 1.0 } else { 0.0 };
                if over < 0.0 {
                    bound += over;
                    of(s).iter().for_each(|&e| times[e] += 1.0);
                }
                average[s] += if round == 0 { taken } else { AVERAGE * (taken - average[s]) };
            }
            if bound > best {
                best = bound;
                best_price.clone_from(&price);
                stale = 0;
            } else {
                stale += 1;
            }
            if best > self.best_cost - self.grain {
                return None;
            }
            if stale > patience {
                pace *= 0.5;
                stale = 0;
            }
            let mut square = 0.0;
            for ((slope, times), &price) in slope.iter_mut().zip(&times).zip(&price) {
                *slope = FRESH * (1.0 - times) + (1.0 - FRESH) * *slope;
                if *slope < 0.0 && price <= 0.0 {
                    *slope = 0.0;
                }
                square += *slope * *slope;
            }
            if square <= 0.0 || pace < 1e-3 {
                break;
            }
            // Aiming a little above the best cost keeps the steps from dying out next to it.
            let step = pace * (self.best_cost * 1.01 - bound) / square;
            price.iter_mut().zip(&slope).for_each(|(price, slope)| *price = (*price + step * slope).max(0.0));
        }
        node.bound = node.bound.max(best);
        rows.iter().zip(&best_price).for_each(|(&e, &price)| node.price[e] = price);
        let mut settled = 0;
        for (s, &set) in place.iter().enumerate() {
            self.average[set] = average[s];
            let over = sets.costs[set] - of(s).iter().map(|&e| best_price[e]).sum::<f64>();
            if over.abs() + best > self.best_cost - self.grain {
                node.fate[set] = if over > 0.0 { Fate::Out } else { Fate::In };
                settled += 1;
            }
        }
        if root {
            let mut rounded: Vec<bool> = node.fate.iter().map(|&fate| fate == Fate::In).collect();
            place.iter().zip(&average).for_each(|(&set, &average)| rounded[set] |= average > 0.5);
            self.offer(rounded);
        }
        Some(settled * 8 > place.len())
    }

    /// Takes a choice if it covers everything and is cheaper.
    fn offer(&mut self, mut chosen: Vec<bool>) {
        if self.sets.of_element.iter().all(|row| row.iter().any(|&set| chosen[set])) {
            self.sets.trim(&mut chosen);
            let cost = self.sets.cost(&chosen);
            if cost < self.best_cost {
                self.best_cost = cost;
                self.best = chosen;
            }
        }
    }
}
