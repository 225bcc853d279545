//! The exact optimum beside each rung, and for a budget.
//!
//! Most questions are settled without branching: a good choice is found by exchange, a cheap bound (`bound.rs`) often meets it or
//! settles most fluids, and only what is left goes to the integer program.

use super::bound::{Bound, Fate};
use super::greedy::Taste;
use super::instance::Effort;
use super::program::Program;
use super::table::Table;
use microlp::{ComparisonOp, LinearExpr, OptimizationDirection, Problem, SolveOptions, SolveOutcome, Variable};

/// Rounds of bettering the bound before the integer program is asked.
const ROUNDS: usize = 160;

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
    program: &'p Program,
    bound: Bound<'p>,
    cost: Vec<f64>,
    dominated: Vec<bool>,
    everything: f64,
}

impl<'p> Solver<'p> {
    pub fn new(question: Question<'p>, program: &'p Program, cost: Vec<f64>) -> Self {
        let dominated = program.dominated(cost.len(), &cost, &question.rank());
        let everything = question.value(&(0..cost.len()).collect::<Vec<_>>());
        Self { question, program, bound: Bound::new(program, cost.len()), cost, dominated, everything }
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
        // Settling some fluids lowers the bound on the rest, which may settle more.
        for _ in 0..3 {
            if met(bound, found.value) {
                break;
            }
            bound = bound.min(self.tighten(limit, &fate, &mut found));
            let open = fate.iter().filter(|&&fate| fate == Fate::Open).count();
            self.bound.settle(&self.cost, limit, found.value, &mut fate);
            let still = fate.iter().filter(|&&fate| fate == Fate::Open).count();
            if still == 0 {
                let set = (0..fate.len()).filter(|&f| fate[f] == Fate::In).collect();
                self.offer(&mut found, set, limit);
                bound = found.value;
            }
            if still * 10 > open * 9 {
                break;
            }
        }
        if !met(bound, found.value) {
            bound = bound.min(self.branch(limit, &fate, &mut found, effort));
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

    /// Lowers the bound; on the way, each relaxed choice is rounded and filled up.
    fn tighten(&mut self, limit: f64, fate: &[Fate], found: &mut Choice) -> f64 {
        let Self { question, bound, cost, .. } = self;
        let mut rounded: Option<(f64, Vec<usize>)> = None;
        let start = found.value;
        let lowered = bound.lower(cost, limit, fate, ROUNDS, |taken| {
            let set: Vec<usize> = (0..taken.len()).filter(|&f| taken[f] > 1.0 - 1e-9).collect();
            let value = question.value(&set);
            if rounded.as_ref().is_none_or(|(best, _)| value > *best) {
                rounded = Some((value, set));
            }
            rounded.as_ref().map_or(start, |(best, _)| best.max(start))
        });
        if let Some((_, set)) = rounded
            && !met(lowered, found.value)
        {
            let set = self.exchange(set, limit);
            self.offer(found, set, limit);
        }
        lowered
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

    /// The integer program on the fluids still open. Returns a proven upper bound.
    fn branch(&self, limit: f64, fate: &[Fate], found: &mut Choice, effort: Effort) -> f64 {
        let mut problem = Problem::new(OptimizationDirection::Maximize);
        let x: Vec<Option<Variable>> = fate.iter().map(|&fate| (fate == Fate::Open).then(|| problem.add_binary_var(0.0))).collect();
        let base = self.state(&mut problem, &x, fate);
        let bought: Vec<usize> = (0..fate.len()).filter(|&f| fate[f] == Fate::In).collect();
        problem.add_constraint(
            x.iter().zip(&self.cost).filter_map(|(x, &cost)| x.map(|x| (x, cost))),
            ComparisonOp::Le,
            limit - self.spent(&bought),
        );
        let mut options = SolveOptions::default();
        options.node_limit = Some(effort.nodes);
        options.time_limit = effort.time;
        if bought.iter().all(|fluid| found.set.contains(fluid)) {
            let hint = x.iter().enumerate().filter_map(|(f, x)| x.map(|x| (x, if found.set.contains(&f) { 1.0 } else { 0.0 })));
            options.warm_start = Some(hint.collect());
        }
        // A solver that fails leaves the choice already found, and no better bound.
        let Ok(outcome) = problem.solve_with(options) else { return f64::INFINITY };
        let bound = outcome.stats().best_bound.map_or(f64::INFINITY, |bound| bound + base);
        if let SolveOutcome::Solution(solution) = outcome {
            let taken = |f: usize| x[f].is_some_and(|x| solution.var_value(x) > 0.5);
            let set = (0..fate.len()).filter(|&f| fate[f] == Fate::In || taken(f)).collect();
            self.offer(found, set, limit);
        }
        // What was settled before is settled because it leads to nothing better than the choice found.
        bound.max(found.value)
    }

    /// Writes the parts into the problem; returns what they are worth whatever is chosen among the open fluids.
    fn state(&self, problem: &mut Problem, x: &[Option<Variable>], fate: &[Fate]) -> f64 {
        let mut base = self.program.base;
        let covered = |row: &[usize]| row.iter().any(|&f| fate[f] == Fate::In);
        let open = |row: &[usize]| row.iter().filter_map(|&f| x[f]).collect::<Vec<_>>();
        for part in &self.program.parts {
            let rows: Vec<Vec<Variable>> = part.rows.iter().filter(|row| !covered(row)).map(|row| open(row)).collect();
            if rows.iter().any(Vec::is_empty) {
                continue;
            }
            let sure: f64 = part.steps.iter().filter(|step| covered(&step.row)).map(|step| step.worth).sum();
            let z = if rows.is_empty() {
                base += part.worth + sure;
                None
            } else {
                Some(problem.add_var(part.worth + sure, (0.0, 1.0)))
            };
            for (z, row) in rows.iter().filter_map(|row| z.map(|z| (z, row))) {
                need(problem, z, row);
            }
            for step in part.steps.iter().filter(|step| !covered(&step.row)) {
                let row = open(&step.row);
                if row.is_empty() {
                    continue;
                }
                let r = problem.add_var(step.worth, (0.0, 1.0));
                need(problem, r, &row);
                // Where the task has this one row left and the step's row lies within it, r cannot exceed z anyhow.
                let implied = matches!(rows.as_slice(), [only] if row.iter().all(|x| only.contains(x)));
                if let Some(z) = z.filter(|_| !implied) {
                    need(problem, r, &[z]);
                }
            }
        }
        base
    }
}

/// `variable` is at most the sum of `row`.
fn need(problem: &mut Problem, variable: Variable, row: &[Variable]) {
    let mut sum = LinearExpr::empty();
    for &x in row {
        sum.add(x, 1.0);
    }
    sum.add(variable, -1.0);
    problem.add_constraint(sum, ComparisonOp::Ge, 0.0);
}

/// Whether a bound proves a value to be the best.
fn met(bound: f64, value: f64) -> bool {
    bound <= value * (1.0 + 1e-9) + 1e-12
}
