//! The exact optimum beside each rung, and for a budget: the integer program of `program.rs`, solved by `microlp` from a good start.

use super::greedy::Taste;
use super::instance::Effort;
use super::program::{Goods, Program};
use super::table::Table;
use microlp::{ComparisonOp, SolveOptions, Variable};

/// How far a sum of prices may lie above the budget: what adding up decimal fractions costs.
fn slack(limit: f64) -> f64 {
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

    /// Places in order of taste: cheaper, less hazardous, earlier.
    fn rank(&self) -> Vec<usize> {
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

/// One kind of limit (number or money) on a question, to be asked for several limits.
pub(super) struct Solver<'p> {
    question: Question<'p>,
    cost: Vec<f64>,
    rank: Vec<usize>,
    program: Program,
    everything: f64,
}

impl<'p> Solver<'p> {
    pub fn new(question: Question<'p>, cost: Vec<f64>) -> Self {
        let rank = question.rank();
        let dominated = Goods::new(&question, &|_| true).dominated(&cost, &rank);
        let program = Goods::new(&question, &|fluid| !dominated[fluid]).into_program();
        let everything = question.value(&(0..cost.len()).collect::<Vec<_>>());
        Self { question, cost, rank, program, everything }
    }

    /// The best choice within the limit, never worse than any of the choices it starts from.
    pub fn best(&self, limit: f64, starts: Vec<Vec<usize>>, effort: Effort) -> Choice {
        let mut found = Choice { set: Vec::new(), value: self.question.value(&[]), gap: 0.0 };
        for start in starts {
            self.offer(&mut found, start, limit);
        }
        if found.value < self.everything {
            let bound = self.solve(limit, &mut found, effort).map_or(self.everything, |bound| bound.min(self.everything));
            // What the tolerances of the library may add to a bound is no gap.
            found.gap = if bound <= found.value + self.everything * 1e-7 { 0.0 } else { (bound - found.value) / bound };
        }
        self.trim(&mut found);
        found
    }

    /// Betters what was found. Returns a proven upper bound, if the library has one.
    fn solve(&self, limit: f64, found: &mut Choice, effort: Effort) -> Option<f64> {
        let Program { problem, bought, base } = &self.program;
        let mut problem = problem.clone();
        for (_, &x) in bought.iter().filter(|&(&fluid, _)| self.cost[fluid] > limit + slack(limit)) {
            problem.add_constraint([(x, 1.0)], ComparisonOp::Le, 0.0);
        }
        problem.add_constraint(bought.iter().map(|(&fluid, &x)| (x, self.cost[fluid])), ComparisonOp::Le, limit + slack(limit));
        let start = bought.iter().map(|(fluid, &x)| (x, if found.set.contains(fluid) { 1.0 } else { 0.0 })).collect();
        let outcome = problem.solve_with(solve_options(effort, start)).ok()?;
        if let Some(solution) = outcome.solution() {
            let set = bought.iter().filter(|&(_, &x)| solution.var_value(x) > 0.5).map(|(&fluid, _)| fluid).collect();
            self.offer(found, set, limit);
        }
        outcome.stats().best_bound.map(|bound| bound + base)
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

    /// Drops what adds nothing, the least welcome first.
    fn trim(&self, found: &mut Choice) {
        let mut order = found.set.clone();
        order.sort_by_key(|&fluid| std::cmp::Reverse(self.rank[fluid]));
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

/// How `microlp` is asked, here and for covers: as exactly as it can be, and from a start.
pub(super) fn solve_options(effort: Effort, start: Vec<(Variable, f64)>) -> SolveOptions {
    let mut options = SolveOptions::default();
    options.node_limit = Some(effort.nodes);
    options.time_limit = effort.time;
    options.int_tol = 1e-9;
    options.tolerances.feasibility = 1e-9;
    options.warm_start = Some(start);
    options
}
