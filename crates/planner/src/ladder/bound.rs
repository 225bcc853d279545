//! A cheap proven upper bound: the coverage rows are priced instead of enforced (Lagrangian relaxation), which leaves each part and
//! the choice of fluids to be settled on their own. The prices are bettered step by step (subgradient method). What a fluid adds to
//! the bound then says which fluids cannot be in, or cannot be out of, any better choice.
//!
//! Source of the method: M. L. Fisher, "The Lagrangian relaxation method for solving integer programming problems", Management
//! Science 27 (1981).

use super::program::Program;

/// The bound's working state; its prices are a good start for the next, similar question.
#[derive(Debug)]
pub(super) struct Bound<'p> {
    program: &'p Program,
    /// One price a row, in the order of [`Program::rows`].
    price: Vec<f64>,
    /// What each fluid is paid by the rows it covers.
    paid: Vec<f64>,
    /// Whether each row's part wants to be covered.
    wants: Vec<bool>,
    /// How much of each fluid the relaxed choice takes.
    taken: Vec<f64>,
    /// Fluids worth taking, best first, with pay for money.
    order: Vec<(f64, usize)>,
    /// What the parts are worth at the present prices.
    kept: f64,
    slope: Vec<f64>,
}

/// What a fluid must be for a better choice to exist.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Fate {
    Open,
    In,
    Out,
}

impl<'p> Bound<'p> {
    pub fn new(program: &'p Program, fluids: usize) -> Self {
        let rows = program.rows().count();
        let mut price = Vec::with_capacity(rows);
        for part in &program.parts {
            let each = part.worth / super::instance::number(part.rows.len() + 1);
            price.extend(part.rows.iter().map(|_| each));
            price.extend(part.steps.iter().map(|step| step.worth / 2.0));
        }
        Self {
            program,
            price,
            paid: vec![0.0; fluids],
            wants: vec![false; rows],
            taken: vec![0.0; fluids],
            order: Vec::new(),
            kept: 0.0,
            slope: vec![0.0; rows],
        }
    }

    /// The bound at the present prices.
    fn evaluate(&mut self, cost: &[f64], limit: f64, fate: &[Fate]) -> f64 {
        let mut sum = self.program.base;
        self.paid.fill(0.0);
        let mut row = 0;
        for part in &self.program.parts {
            let first = row;
            let mut worth = part.worth;
            for _ in &part.rows {
                worth -= self.price[row];
                row += 1;
            }
            for step in &part.steps {
                self.wants[row] = step.worth > self.price[row];
                worth += (step.worth - self.price[row]).max(0.0);
                row += 1;
            }
            let served = worth > 0.0 || part.rows.is_empty();
            let steps_from = first + part.rows.len();
            self.wants[first..steps_from].fill(served);
            if served {
                sum += worth;
            } else {
                self.wants[steps_from..row].fill(false);
            }
        }
        for (row, &price) in self.program.rows().zip(&self.price) {
            for &fluid in row {
                self.paid[fluid] += price;
            }
        }
        self.kept = sum;
        sum + self.take(cost, limit, fate)
    }

    /// The best relaxed choice of fluids for what they are paid: by pay for money, the last one in part.
    fn take(&mut self, cost: &[f64], limit: f64, fate: &[Fate]) -> f64 {
        self.taken.fill(0.0);
        self.order.clear();
        let (mut left, mut sum) = (limit, 0.0);
        for fluid in 0..cost.len() {
            match fate[fluid] {
                Fate::In => {
                    left -= cost[fluid];
                    sum += self.paid[fluid];
                    self.taken[fluid] = 1.0;
                }
                Fate::Open if self.paid[fluid] > 0.0 => self.order.push((self.paid[fluid] / cost[fluid].max(f64::MIN_POSITIVE), fluid)),
                _ => {}
            }
        }
        self.order.sort_unstable_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        for &(_, fluid) in &self.order {
            let part = if cost[fluid] <= left { 1.0 } else { (left / cost[fluid]).clamp(0.0, 1.0) };
            left -= part * cost[fluid];
            sum += part * self.paid[fluid];
            self.taken[fluid] = part;
        }
        sum
    }

    /// Lowers the bound until it meets `value`, or for so many rounds. `seen` is shown each relaxed choice, best first, and returns
    /// the value of the best real choice known.
    pub fn lower(&mut self, cost: &[f64], limit: f64, fate: &[Fate], rounds: usize, mut seen: impl FnMut(&[f64]) -> f64) -> f64 {
        let (mut best, mut best_price) = (f64::INFINITY, self.price.clone());
        let (mut pace, mut stale, mut value) = (1.0, 0_u32, 0.0_f64);
        for round in 0..rounds {
            let bound = self.evaluate(cost, limit, fate);
            if bound < best {
                stale = if bound < best * (1.0 - 1e-4) { 0 } else { stale + 1 };
                best = bound;
                best_price.clone_from(&self.price);
            } else {
                stale += 1;
            }
            if round % 8 == 0 {
                value = value.max(seen(&self.taken));
            }
            if stale > 7 {
                pace *= 0.6;
                stale = 0;
                self.price.clone_from(&best_price);
                self.evaluate(cost, limit, fate);
            }
            let mut square = 0.0;
            for ((slope, row), &wants) in self.slope.iter_mut().zip(self.program.rows()).zip(&self.wants) {
                let covered: f64 = row.iter().map(|&fluid| self.taken[fluid]).sum();
                *slope = covered - if wants { 1.0 } else { 0.0 };
                square += *slope * *slope;
            }
            if square <= 0.0 || best <= value * (1.0 + 1e-9) || pace < 0.01 {
                break;
            }
            let step = pace * (bound - value).max(bound * 1e-6) / square;
            for (price, slope) in self.price.iter_mut().zip(&self.slope) {
                *price = (*price - step * slope).max(0.0);
            }
        }
        self.price = best_price;
        self.evaluate(cost, limit, fate)
    }

    /// Settles fluids that cannot be in, or out of, a choice better than `value`. Call after [`Bound::lower`].
    pub fn settle(&mut self, cost: &[f64], limit: f64, value: f64, fate: &mut [Fate]) {
        for fluid in 0..cost.len() {
            if fate[fluid] != Fate::Open {
                continue;
            }
            let enough = value * (1.0 + 1e-9);
            let with = self.evaluate_without(cost, limit - cost[fluid], fate, fluid).map(|rest| rest + self.paid[fluid]);
            let without = self.evaluate_without(cost, limit, fate, fluid);
            if with.is_none_or(|bound| bound <= enough) {
                fate[fluid] = Fate::Out;
            } else if without.is_none_or(|bound| bound <= enough) {
                fate[fluid] = Fate::In;
            }
        }
    }

    /// The bound with one fluid left out of the choice; `None` when the money does not suffice for those that are in.
    fn evaluate_without(&self, cost: &[f64], limit: f64, fate: &[Fate], without: usize) -> Option<f64> {
        let (mut left, mut sum) = (limit, self.kept);
        for fluid in (0..cost.len()).filter(|&fluid| fate[fluid] == Fate::In) {
            left -= cost[fluid];
            sum += self.paid[fluid];
        }
        if left < -super::exact::slack(limit) {
            return None;
        }
        for &(_, fluid) in self.order.iter().filter(|&&(_, fluid)| fluid != without && fate[fluid] == Fate::Open) {
            if cost[fluid] > left {
                return Some(sum + self.paid[fluid] * (left.max(0.0) / cost[fluid]));
            }
            left -= cost[fluid];
            sum += self.paid[fluid];
        }
        Some(sum)
    }
}
