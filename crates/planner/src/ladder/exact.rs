//! The exact optimum beside each rung, and for a budget.
//!
//! Branch and bound on the integer program of `program.rs`. A good choice is found by exchange, a cheap bound (`bound.rs`) often meets it
//! or settles most fluids, and only what is left is branched on. Its nodes cost a tenth of a millisecond, so that a ladder with an optimum
//! beside each rung takes a fraction of a second; a general solver took ten times as long.

use super::bound::{Bound, Fate};
use super::greedy::Taste;
use super::instance::Effort;
use super::program::Program;
use super::table::Table;
use std::time::Instant;

/// Rounds of bettering the bound at the outset.
const ROUNDS: usize = 400;
/// Rounds at each branch, which starts from the prices of the branch above.
const BRANCH_ROUNDS: usize = 25;

/// How far a sum of prices may lie above the budget: what adding up decimal fractions costs.
pub(super) fn slack(limit: f64) -> f64 {
    limit.abs() * 1e-9 + 1e-9
}

/// An exact choice, as places in the table.
#[derive(Debug, Clone)]
pub(super) struct Choice {
    pub set: Vec<usize>,
    pub value: f64,
    pub gap: f64,
}

/// What a choice is made from.
#[derive(Debug, Clone, Copy)]
pub(super) struct Question<'t> {
    pub table: &'t Table,
    pub weights: &'t [f64],
    pub will_do: f64,
    pub taste: &'t [Taste],
}

impl Question<'_> {
    fn value(&self, set: &[usize]) -> f64 {
        self.table.value(set, self.weights, self.will_do)
    }

    /// What one more fluid adds to a state.
    fn gain(&self, state: &[(u64, u64)], fluid: usize) -> f64 {
        let entries = self.table.of_fluid[fluid].iter().map(|&place| self.table.entries[place]);
        let value = |task: usize, any, right| self.table.groups[task].value(any, right, self.weights[task], self.will_do);
        entries
            .map(|entry| {
                let (any, right) = state[entry.task];
                value(entry.task, any | entry.any, right | entry.right) - value(entry.task, any, right)
            })
            .sum()
    }

    /// Places in order of taste: cheaper, less hazardous, earlier.
    pub fn rank(&self) -> Vec<usize> {
        let mut order: Vec<usize> = (0..self.taste.len()).collect();
        order.sort_by(|&a, &b| {
            let (x, y) = (self.taste[a], self.taste[b]);
            x.price.total_cmp(&y.price).then(x.hazards.cmp(&y.hazards)).then(a.cmp(&b))
        });
        let mut rank = vec![0; order.len()];
        for (place, fluid) in order.into_iter().enumerate() {
            rank[fluid] = place;
        }
        rank
    }
}

/// One kind of limit (number or money) on a question; asked for several limits it learns from one to the next.
#[derive(Debug)]
pub(super) struct Solver<'p> {
    question: Question<'p>,
    bound: Bound,
    cost: Vec<f64>,
    dominated: Vec<bool>,
    everything: f64,
}

impl<'p> Solver<'p> {
    pub fn new(question: Question<'p>, program: &Program, cost: Vec<f64>) -> Self {
        let dominated = program.dominated(cost.len(), &cost, &question.rank());
        let everything = question.value(&(0..cost.len()).collect::<Vec<_>>());
        Self { question, bound: Bound::new(program, cost.len()), cost, dominated, everything }
    }

    /// The best choice within the limit, never worse than any of the choices it starts from.
    pub fn best(&mut self, limit: f64, starts: Vec<Vec<usize>>, effort: Effort) -> Choice {
        let mut found = Choice { set: Vec::new(), value: self.question.value(&[]), gap: 0.0 };
        for start in starts {
            let set = self.exchange(start, limit);
            self.offer(&mut found, set, limit);
        }
        let mut fate: Vec<Fate> = (0..self.cost.len())
            .map(|f| if self.dominated[f] || self.cost[f] > limit + slack(limit) { Fate::Out } else { Fate::Open })
            .collect();
        let mut bound = self.everything;
        if !met(bound, found.value) {
            bound = bound.min(self.tighten(limit, &mut fate, &mut found, ROUNDS));
        }
        if !met(bound, found.value) {
            let narrow = self.bound.without_fluids(&fate);
            let whole = std::mem::replace(&mut self.bound, narrow);
            bound = bound.min(self.search(limit, fate, bound, &mut found, effort));
            self.bound = whole;
        }
        found.gap = if met(bound, found.value) { 0.0 } else { (bound - found.value) / bound };
        self.trim(&mut found);
        found
    }

    fn spent(&self, set: &[usize]) -> f64 {
        set.iter().map(|&f| self.cost[f]).sum()
    }

    fn offer(&self, found: &mut Choice, set: Vec<usize>, limit: f64) {
        let value = self.question.value(&set);
        if value > found.value && self.spent(&set) <= limit + slack(limit) {
            found.value = value;
            found.set = set;
        }
    }

    /// Lowers the bound and settles what it can; on the way, relaxed choices are rounded and bettered.
    fn tighten(&mut self, limit: f64, fate: &mut [Fate], found: &mut Choice, rounds: usize) -> f64 {
        let Self { question, bound, cost, .. } = self;
        let mut rounded: Option<(f64, Vec<usize>)> = None;
        let start = found.value;
        let pace = if rounds == ROUNDS { 1.0 } else { 0.25 };
        let lowered = bound.lower(cost, limit, fate, rounds, pace, |taken| {
            let set: Vec<usize> = (0..taken.len()).filter(|&f| taken[f] > 1.0 - 1e-9).collect();
            let value = question.value(&set);
            if rounded.as_ref().is_none_or(|(best, _)| value > *best) {
                rounded = Some((value, set));
            }
            rounded.as_ref().map_or(start, |(best, _)| best.max(start))
        });
        if let Some((value, set)) = rounded
            && (value > start || rounds == ROUNDS)
        {
            let set = self.exchange(set, limit);
            self.offer(found, set, limit);
        }
        self.bound.settle(&self.cost, limit, found.value, fate);
        lowered
    }

    /// Branches on the fluid the relaxed optimum is least sure of, deep before wide. Returns a proven upper bound.
    fn search(&mut self, limit: f64, fate: Vec<Fate>, bound: f64, found: &mut Choice, effort: Effort) -> f64 {
        let deadline = effort.time.and_then(|time| Instant::now().checked_add(time));
        let mut open = Vec::new();
        self.part(fate, bound, limit, found, &mut open);
        let mut opened = 0;
        while let Some((mut fate, above, price)) = open.pop() {
            if met(above, found.value) {
                continue;
            }
            if opened == effort.nodes || deadline.is_some_and(|deadline| Instant::now() >= deadline) {
                open.push((fate, above, price));
                return open.iter().map(|(_, bound, _)| *bound).fold(found.value, f64::max);
            }
            opened += 1;
            self.bound.price = price;
            let bound = self.tighten(limit, &mut fate, found, BRANCH_ROUNDS).min(above);
            if !met(bound, found.value) {
                self.part(fate, bound, limit, found, &mut open);
            }
        }
        found.value
    }

    fn part(&self, fate: Vec<Fate>, bound: f64, limit: f64, found: &mut Choice, open: &mut Vec<(Vec<Fate>, f64, Vec<f64>)>) {
        let unsure = |f: usize| (self.bound.average[f] - 0.5).abs();
        let Some(fluid) = (0..fate.len()).filter(|&f| fate[f] == Fate::Open).min_by(|&a, &b| unsure(a).total_cmp(&unsure(b))) else {
            self.offer(found, (0..fate.len()).filter(|&f| fate[f] == Fate::In).collect(), limit);
            return;
        };
        let mut with = fate.clone();
        with[fluid] = Fate::In;
        let mut without = fate;
        without[fluid] = Fate::Out;
        open.push((without, bound, self.bound.price.clone()));
        open.push((with, bound, self.bound.price.clone()));
    }

    /// Adds and swaps single fluids as long as that serves more.
    fn exchange(&self, mut set: Vec<usize>, limit: f64) -> Vec<usize> {
        let question = &self.question;
        let mut value = question.value(&set);
        loop {
            let spent = self.spent(&set);
            // The place to swap out (or none), the fluid to take in, and what is served then.
            let mut best: Option<(Option<usize>, usize, f64)> = None;
            for out in std::iter::once(None).chain((0..set.len()).map(Some)) {
                let rest: Vec<usize> = set.iter().enumerate().filter(|&(place, _)| Some(place) != out).map(|(_, &f)| f).collect();
                let left = limit + slack(limit) - spent + out.map_or(0.0, |place| self.cost[set[place]]);
                let state = question.table.state(&rest);
                let base = if out.is_none() { value } else { question.value(&rest) };
                for fluid in (0..self.cost.len()).filter(|f| !self.dominated[*f] && self.cost[*f] <= left && !set.contains(f)) {
                    let total = base + question.gain(&state, fluid);
                    if total > best.map_or(value, |(_, _, total)| total) * (1.0 + 1e-12) {
                        best = Some((out, fluid, total));
                    }
                }
                if out.is_none() && best.is_some() {
                    break;
                }
            }
            let Some((out, fluid, _)) = best else { return set };
            if let Some(place) = out {
                set.remove(place);
            }
            set.push(fluid);
            let after = question.value(&set);
            if after <= value {
                return set;
            }
            value = after;
        }
    }

    /// Drops what adds nothing, the least welcome first.
    fn trim(&self, found: &mut Choice) {
        let rank = self.question.rank();
        let mut order = found.set.clone();
        order.sort_by_key(|&fluid| std::cmp::Reverse(rank[fluid]));
        for fluid in order {
            let rest: Vec<usize> = found.set.iter().copied().filter(|&other| other != fluid).collect();
            if self.question.value(&rest) >= found.value * (1.0 - 1e-12) {
                found.set = rest;
            }
        }
        found.set.sort_unstable();
        found.value = self.question.value(&found.set);
    }
}

/// Whether a bound proves a value to be the best.
fn met(bound: f64, value: f64) -> bool {
    bound <= value * (1.0 + 1e-9) + 1e-12
}
