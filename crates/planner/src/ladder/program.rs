//! The exact question as an integer program: which fluids, at most so many or for so much money, serve most?
//!
//! x_f is 1 when fluid f is bought. A *part* is a variable between 0 and 1 with a worth: that a task is served (z), or that a step of it
//! is right (r). A part needs every one of its *rows* covered by a bought fluid, and r needs the z of its task.

use super::table::Table;

/// One part.
#[derive(Debug, Clone)]
pub(super) struct Part {
    pub worth: f64,
    /// Lists of fluids; one of each must be bought.
    pub rows: Vec<Vec<usize>>,
    /// Its steps that may be made right, each worth something more.
    pub steps: Vec<RightStep>,
}

/// A step that may be made right, in a task that is served.
#[derive(Debug, Clone)]
pub(super) struct RightStep {
    pub worth: f64,
    /// The fluids that are right there.
    pub row: Vec<usize>,
}

/// The whole question, but for the limit.
#[derive(Debug, Clone)]
pub(super) struct Program {
    /// What is served whatever is bought.
    pub base: f64,
    pub parts: Vec<Part>,
}

impl Program {
    pub fn new(table: &Table, weights: &[f64], will_do: f64) -> Self {
        let mut program = Self { base: 0.0, parts: Vec::new() };
        for (group, &weight) in table.groups.iter().zip(weights) {
            let entries = &table.entries[group.entries.clone()];
            let mut part = Part { worth: weight * will_do, rows: Vec::new(), steps: Vec::new() };
            for (step, &share) in group.shares.iter().enumerate() {
                let bit = 1_u64 << step;
                let right_worth = weight * (1.0 - will_do) * share;
                let served_by = |right_only: bool| -> Vec<usize> {
                    let serves = |mask: u64| mask & bit != 0;
                    entries.iter().filter(|e| serves(if right_only { e.right } else { e.any })).map(|e| e.fluid).collect()
                };
                let (any, right) = (served_by(false), served_by(true));
                if group.owned_any & bit == 0 {
                    if any == right {
                        // Nothing merely will do here: served means right, and one row says both.
                        part.worth += right_worth;
                        part.rows.push(any);
                        continue;
                    }
                    part.rows.push(any);
                }
                if group.owned_right & bit != 0 {
                    part.worth += right_worth;
                } else if !right.is_empty() && right_worth > 0.0 {
                    part.steps.push(RightStep { worth: right_worth, row: right });
                }
            }
            program.add(part);
        }
        program
    }

    fn add(&mut self, mut part: Part) {
        if part.rows.is_empty() {
            self.base += part.worth;
            part.worth = 0.0;
            if part.steps.is_empty() {
                return;
            }
        }
        self.parts.push(part);
    }

    /// All rows, in order.
    pub fn rows(&self) -> impl Iterator<Item = &[usize]> {
        self.parts.iter().flat_map(|part| part.rows.iter().chain(part.steps.iter().map(|step| &step.row))).map(Vec::as_slice)
    }

    /// Fluids that need not be bought because another covers all they cover, for no more money and with no worse taste.
    /// `rank` orders fluids by taste; `price` is 1 for each where only their number counts.
    pub fn dominated(&self, fluids: usize, price: &[f64], rank: &[usize]) -> Vec<bool> {
        let mut covers = vec![Vec::new(); fluids];
        for (place, row) in self.rows().enumerate() {
            let (word, bit) = (place / 64, 1_u64 << (place % 64));
            for &fluid in row {
                let list: &mut Vec<u64> = &mut covers[fluid];
                list.resize(list.len().max(word + 1), 0);
                list[word] |= bit;
            }
        }
        let within = |a: &[u64], b: &[u64]| a.iter().enumerate().all(|(word, &bits)| bits & !b.get(word).copied().unwrap_or(0) == 0);
        let mut out = vec![false; fluids];
        for f in 0..fluids {
            out[f] = covers[f].is_empty()
                || (0..fluids).any(|g| {
                    let equal = || within(&covers[g], &covers[f]) && price[g] <= price[f] && price[f] <= price[g];
                    g != f && !out[g] && price[g] <= price[f] && within(&covers[f], &covers[g]) && (!equal() || rank[g] < rank[f])
                });
        }
        out
    }
}
