//! The exact question as an integer program: which fluids, at most so many or for so much money, serve most?
//!
//! x_f is 1 when fluid f is bought. A *row* is a list of fluids of which one must be bought; u, between 0 and 1, says that it is. A *good*
//! is something worth having (a task served, or one of its steps right on top) that needs all of its rows; y, between 0 and 1, says that it
//! is had. Only x has to be whole: then u and y are of themselves.

use super::exact::Question;
use microlp::{ComparisonOp, OptimizationDirection, Problem, Variable};
use std::collections::{BTreeMap, BTreeSet};

type Row = Vec<usize>;

/// All goods with what they are worth, by the rows they need. What needs the same is one good.
pub(super) struct Goods(BTreeMap<Vec<Row>, f64>);

/// A program without its limit.
pub(super) struct Program {
    pub problem: Problem,
    /// The x of each fluid that is worth looking at.
    pub bought: BTreeMap<usize, Variable>,
    /// What is served whatever is bought.
    pub base: f64,
}

impl Goods {
    /// The goods that the fluids which are `open` can bring.
    pub fn new(question: &Question<'_>, open: &dyn Fn(usize) -> bool) -> Self {
        let mut goods = Self(BTreeMap::new());
        for (group, &weight) in question.table.groups.iter().zip(question.weights) {
            let entries = &question.table.entries[group.entries.clone()];
            let row = |owned: u64, step: usize, serves: &dyn Fn(usize) -> u64| -> Option<Row> {
                let bit = 1_u64 << step;
                let able = (0..entries.len()).filter(|&e| serves(e) & bit != 0 && open(entries[e].fluid));
                (owned & bit == 0).then(|| able.map(|e| entries[e].fluid).collect())
            };
            let served: Vec<_> = (0..group.shares.len()).map(|step| row(group.owned_any, step, &|e| entries[e].any)).collect();
            goods.add(weight * question.will_do, served.iter().flatten());
            for (step, share) in group.shares.iter().enumerate() {
                let right = row(group.owned_right, step, &|e| entries[e].right);
                let others = served.iter().enumerate().filter(|&(other, _)| other != step).filter_map(|(_, row)| row.as_ref());
                goods.add(weight * (1.0 - question.will_do) * share, others.chain(&right));
            }
        }
        goods
    }

    fn add<'r>(&mut self, worth: f64, rows: impl Iterator<Item = &'r Row>) {
        let rows: BTreeSet<&Row> = rows.collect();
        if worth > 0.0 && rows.iter().all(|row| !row.is_empty()) {
            // A row that holds another whole is covered with it.
            let needless = |row: &Row| rows.iter().any(|other| *other != row && other.iter().all(|fluid| row.contains(fluid)));
            let rows = rows.iter().filter(|row| !needless(row)).map(|&row| row.clone()).collect();
            *self.0.entry(rows).or_default() += worth;
        }
    }

    /// Fluids that need not be bought because another covers all they cover, for no more money and with no worse taste.
    /// `rank` orders fluids by taste; `price` is 1 for each where only their number counts.
    pub fn dominated(&self, price: &[f64], rank: &[usize]) -> Vec<bool> {
        let mut covers = vec![BTreeSet::new(); price.len()];
        let rows: BTreeSet<&Row> = self.0.keys().flatten().collect();
        for (place, row) in rows.into_iter().enumerate() {
            for &fluid in row {
                covers[fluid].insert(place);
            }
        }
        let better = |g: usize, f: usize| {
            let equal = || covers[g].len() == covers[f].len() && price[g] >= price[f];
            g != f && price[g] <= price[f] && covers[f].is_subset(&covers[g]) && (!equal() || rank[g] < rank[f])
        };
        (0..price.len()).map(|f| covers[f].is_empty() || (0..price.len()).any(|g| better(g, f))).collect()
    }

    pub fn into_program(self) -> Program {
        let mut problem = Problem::new(OptimizationDirection::Maximize);
        let mut bought: BTreeMap<usize, Variable> = BTreeMap::new();
        // A good of one row is that row's u, and a row of one fluid is that fluid's x.
        let mut worth: BTreeMap<&Row, f64> = self.0.keys().flatten().map(|row| (row, 0.0)).collect();
        for (rows, value) in self.0.iter().filter(|(rows, _)| rows.len() == 1) {
            *worth.entry(&rows[0]).or_default() += value;
        }
        for &fluid in worth.keys().copied().flatten().collect::<BTreeSet<_>>() {
            let alone = worth.get(&vec![fluid]).copied().unwrap_or(0.0);
            bought.insert(fluid, problem.add_binary_var(alone));
        }
        let mut covered: BTreeMap<&Row, Variable> = BTreeMap::new();
        for (&row, &worth) in &worth {
            let xs = || row.iter().map(|fluid| bought[fluid]);
            let u = if row.len() == 1 { bought[&row[0]] } else { problem.add_var(worth, (0.0, 1.0)) };
            if row.len() > 1 {
                problem.add_constraint(xs().map(|x| (x, 1.0)).chain([(u, -1.0)]), ComparisonOp::Ge, 0.0);
            }
            covered.insert(row, u);
        }
        for (rows, &worth) in self.0.iter().filter(|(rows, _)| rows.len() > 1) {
            let y = problem.add_var(worth, (0.0, 1.0));
            for row in rows {
                problem.add_constraint([(covered[row], 1.0), (y, -1.0)], ComparisonOp::Ge, 0.0);
            }
        }
        let base = self.0.get(&Vec::new()).copied().unwrap_or(0.0);
        Program { problem, bought, base }
    }
}
