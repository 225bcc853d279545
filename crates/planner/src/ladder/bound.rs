//! A cheap proven upper bound: the coverage rows are priced instead of enforced (Lagrangian relaxation), which leaves each part and
//! the choice of fluids to be settled on their own. The prices are bettered step by step (subgradient method, the direction averaged
//! over the last steps). What a fluid adds to the bound then says which fluids cannot be in, or out of, any better choice.
//!
//! Source of the method: M. L. Fisher, "The Lagrangian relaxation method for solving integer programming problems", Management
//! Science 27 (1981); the averaged direction: F. Barahona and R. Anbil, "The volume algorithm", Mathematical Programming 87 (2000).

use super::exact::slack;
use super::instance::number;
use super::program::Program;

/// How much of the direction is new each round.
const FRESH: f64 = 0.4;
/// The pace is halved after so many rounds without a lower bound.
const PATIENCE: u32 = 15;
/// How much of each relaxed choice enters the running average.
const AVERAGE: f64 = 0.1;

/// What a fluid must be for a better choice to exist.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Fate {
    Open,
    In,
    Out,
}

/// A part, with its rows as a range: first those it needs, then those of its steps.
#[derive(Debug, Clone)]
struct Block {
    worth: f64,
    start: usize,
    steps: usize,
    end: usize,
}

/// The bound's working state. Its prices are a good start for the next, similar question.
#[derive(Debug, Clone)]
pub(super) struct Bound {
    base: f64,
    blocks: Vec<Block>,
    /// What a row is worth when it is a step's, else 0.
    step_worth: Vec<f64>,
    /// No price above this can help.
    cap: Vec<f64>,
    rows: Vec<Vec<usize>>,
    of_fluid: Vec<Vec<usize>>,
    /// One price a row.
    pub price: Vec<f64>,
    /// What each fluid is paid by the rows it covers.
    paid: Vec<f64>,
    /// Whether each row's part wants to be covered.
    wants: Vec<bool>,
    /// How much of each fluid the relaxed choice takes.
    taken: Vec<f64>,
    /// The running average of `taken`: close to the relaxed optimum itself.
    pub average: Vec<f64>,
    /// Open fluids worth taking, best first, with pay for money.
    order: Vec<(f64, usize)>,
    /// What the parts are worth at the present prices.
    kept: f64,
    slope: Vec<f64>,
    covered: Vec<f64>,
}

impl Bound {
    pub fn new(program: &Program, fluids: usize) -> Self {
        let rows: Vec<Vec<usize>> = program.rows().map(<[usize]>::to_vec).collect();
        let (mut blocks, mut price, mut cap, mut step_worth) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
        for part in &program.parts {
            let (start, steps) = (price.len(), price.len() + part.rows.len());
            let all: f64 = part.worth + part.steps.iter().map(|step| step.worth).sum::<f64>();
            for _ in &part.rows {
                price.push(part.worth / number(part.rows.len() + 1));
                cap.push(all);
                step_worth.push(0.0);
            }
            for step in &part.steps {
                price.push(step.worth / 2.0);
                cap.push(step.worth);
                step_worth.push(step.worth);
            }
            blocks.push(Block { worth: part.worth, start, steps, end: price.len() });
        }
        let mut of_fluid = vec![Vec::new(); fluids];
        for (place, row) in rows.iter().enumerate() {
            for &fluid in row {
                of_fluid[fluid].push(place);
            }
        }
        let count = rows.len();
        Self {
            base: program.base,
            blocks,
            step_worth,
            cap,
            rows,
            of_fluid,
            price,
            paid: vec![0.0; fluids],
            wants: vec![false; count],
            taken: vec![0.0; fluids],
            average: vec![0.0; fluids],
            order: Vec::new(),
            kept: 0.0,
            slope: vec![0.0; count],
            covered: vec![0.0; count],
        }
    }

    /// A copy in which fluids that are out take no time.
    pub fn without_fluids(&self, fate: &[Fate]) -> Self {
        let mut narrow = self.clone();
        for row in &mut narrow.rows {
            row.retain(|&fluid| fate[fluid] != Fate::Out);
        }
        for (rows, _) in narrow.of_fluid.iter_mut().zip(fate).filter(|(_, fate)| **fate == Fate::Out) {
            rows.clear();
        }
        narrow
    }

    /// The bound at the present prices.
    fn evaluate(&mut self, cost: &[f64], limit: f64, fate: &[Fate]) -> f64 {
        let mut sum = self.base;
        for block in &self.blocks {
            let mut worth = block.worth - self.price[block.start..block.steps].iter().sum::<f64>();
            for row in block.steps..block.end {
                let more = self.step_worth[row] - self.price[row];
                self.wants[row] = more > 0.0;
                worth += more.max(0.0);
            }
            // A part that needs no row is served by what is owned.
            let served = worth > 0.0 || block.start == block.steps;
            self.wants[block.start..block.steps].fill(served);
            if served {
                sum += worth;
            } else {
                self.wants[block.steps..block.end].fill(false);
            }
        }
        self.kept = sum;
        self.paid.fill(0.0);
        for (row, &price) in self.rows.iter().zip(&self.price).filter(|(_, price)| **price > 0.0) {
            for &fluid in row {
                self.paid[fluid] += price;
            }
        }
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
                Fate::Open | Fate::Out => {}
            }
        }
        self.order.sort_unstable_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        for &(_, fluid) in &self.order {
            let part = if cost[fluid] <= left { 1.0 } else { (left / cost[fluid]).clamp(0.0, 1.0) };
            left -= part * cost[fluid];
            sum += part * self.paid[fluid];
            self.taken[fluid] = part;
            if part < 1.0 {
                break;
            }
        }
        sum
    }

    /// Lowers the bound until it meets the value of the best real choice known, or for so many rounds. `seen` is shown relaxed choices
    /// and says what that value is.
    pub fn lower(&mut self, cost: &[f64], limit: f64, fate: &[Fate], rounds: usize, pace: f64, mut seen: impl FnMut(&[f64]) -> f64) -> f64 {
        // What a fluid already in covers needs no price.
        let mut active = self.cap.clone();
        for fluid in (0..cost.len()).filter(|&fluid| fate[fluid] == Fate::In) {
            for &row in &self.of_fluid[fluid] {
                active[row] = 0.0;
                self.price[row] = 0.0;
            }
        }
        self.slope.fill(0.0);
        let (mut best, mut best_price) = (f64::INFINITY, self.price.clone());
        let (mut pace, mut stale, mut value) = (pace, 0_u32, 0.0_f64);
        for round in 0..rounds {
            let bound = self.evaluate(cost, limit, fate);
            if bound < best {
                stale = 0;
                best = bound;
                best_price.clone_from(&self.price);
            } else {
                stale += 1;
            }
            if round % 16 == 0 {
                value = value.max(seen(&self.taken));
            }
            if round == 0 {
                self.average.clone_from(&self.taken);
            }
            for (average, taken) in self.average.iter_mut().zip(&self.taken) {
                *average += AVERAGE * (taken - *average);
            }
            if stale > PATIENCE {
                pace *= 0.5;
                stale = 0;
            }
            let square = self.direction(&active);
            if square <= 0.0 || best <= value * (1.0 + 1e-9) || pace < 1e-3 {
                break;
            }
            let step = pace * (bound - value).max(bound * 1e-6) / square;
            for ((price, slope), &cap) in self.price.iter_mut().zip(&self.slope).zip(&active) {
                *price = (*price - step * slope).clamp(0.0, cap);
            }
        }
        self.price = best_price;
        self.evaluate(cost, limit, fate)
    }

    /// The averaged direction, without what the limits of the prices forbid; returns its squared length.
    fn direction(&mut self, cap: &[f64]) -> f64 {
        self.covered.fill(0.0);
        for (rows, &taken) in self.of_fluid.iter().zip(&self.taken).filter(|(_, taken)| **taken > 0.0) {
            for &row in rows {
                self.covered[row] += taken;
            }
        }
        let mut square = 0.0;
        for (row, &cap) in cap.iter().enumerate() {
            let new = self.covered[row] - if self.wants[row] { 1.0 } else { 0.0 };
            let slope = FRESH * new + (1.0 - FRESH) * self.slope[row];
            let stuck = (slope > 0.0 && self.price[row] <= 0.0) || (slope < 0.0 && self.price[row] >= cap);
            self.slope[row] = if stuck { 0.0 } else { slope };
            square += self.slope[row] * self.slope[row];
        }
        square
    }

    /// Settles fluids that cannot be in, or out of, a choice better than `value`. Call after [`Bound::lower`].
    pub fn settle(&self, cost: &[f64], limit: f64, value: f64, fate: &mut [Fate]) {
        let enough = value * (1.0 + 1e-9);
        for fluid in 0..cost.len() {
            if fate[fluid] != Fate::Open {
                continue;
            }
            let with = self.without(cost, limit - cost[fluid], fate, fluid).map(|rest| rest + self.paid[fluid]);
            if with.is_none_or(|bound| bound <= enough) {
                fate[fluid] = Fate::Out;
            } else if self.without(cost, limit, fate, fluid).is_none_or(|bound| bound <= enough) {
                fate[fluid] = Fate::In;
            }
        }
    }

    /// The bound with one fluid left out of the choice; `None` when the money does not suffice for those that are in.
    fn without(&self, cost: &[f64], limit: f64, fate: &[Fate], without: usize) -> Option<f64> {
        let (mut left, mut sum) = (limit, self.kept);
        for fluid in (0..cost.len()).filter(|&fluid| fate[fluid] == Fate::In) {
            left -= cost[fluid];
            sum += self.paid[fluid];
        }
        if left < -slack(limit) {
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
