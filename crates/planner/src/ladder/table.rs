//! The instance boiled down for speed: equal tasks merged, fluids that cannot be bought left out, steps as bits of a word.

use super::instance::{Instance, LadderError, Step};
use std::collections::BTreeMap;

/// How one fluid serves one (merged) task.
#[derive(Debug, Clone, Copy)]
pub(super) struct Entry {
    pub task: usize,
    pub fluid: usize,
    /// The steps it serves at all.
    pub any: u64,
    /// The steps it is right for.
    pub right: u64,
}

/// Tasks with the same steps, as one.
#[derive(Debug, Clone)]
pub(super) struct Group {
    /// All its steps.
    pub full: u64,
    /// Each step's share.
    pub shares: Vec<f64>,
    /// What the owned fluids serve.
    pub owned_any: u64,
    /// What the owned fluids are right for.
    pub owned_right: u64,
    /// The tasks it stands for, as places in the instance.
    pub members: Vec<usize>,
    /// Its entries, as a range of [`Table::entries`].
    pub entries: std::ops::Range<usize>,
}

impl Group {
    /// The sum of the shares of some steps; exactly 1 for all of them.
    pub fn share_of(&self, steps: u64) -> f64 {
        if steps == self.full {
            return 1.0;
        }
        let mut left = steps;
        let mut sum = 0.0;
        while left != 0 {
            sum += self.shares.get(usize::try_from(left.trailing_zeros()).unwrap_or(0)).copied().unwrap_or(0.0);
            left &= left - 1;
        }
        sum
    }

    /// What the task is worth when `any` is served and `right` is right.
    pub fn value(&self, any: u64, right: u64, weight: f64, will_do: f64) -> f64 {
        if any == self.full { weight * (will_do + (1.0 - will_do) * self.share_of(right)) } else { 0.0 }
    }
}

/// The instance boiled down.
#[derive(Debug, Clone)]
pub(super) struct Table {
    /// The fluids that can be bought, as places in the instance. All other places in this module count along this list.
    pub fluids: Vec<usize>,
    pub groups: Vec<Group>,
    /// Sorted by task, then by fluid.
    pub entries: Vec<Entry>,
    /// For each fluid, the places of its entries.
    pub of_fluid: Vec<Vec<usize>>,
}

type StepKey = (Vec<usize>, Vec<usize>);
type TaskKey = Vec<(StepKey, u64)>;

impl Table {
    pub fn new(instance: &Instance) -> Result<Self, LadderError> {
        check(instance)?;
        let mut merged: BTreeMap<TaskKey, Vec<usize>> = BTreeMap::new();
        for (place, task) in instance.jobs.iter().enumerate() {
            let key = task_key(instance, &task.steps);
            if key.len() > 64 {
                return Err(LadderError::TooManySteps { task: place, steps: key.len() });
            }
            // A task without steps asks for nothing, and one with a step that nothing serves is out of reach: neither can be gained.
            if !key.is_empty() && key.iter().all(|((right, will_do), _)| !(right.is_empty() && will_do.is_empty())) {
                merged.entry(key).or_default().push(place);
            }
        }
        // The order of the instance, not of the keys, so that a sum of values does not depend on how fluids are numbered.
        let mut merged: Vec<_> = merged.into_iter().collect();
        merged.sort_by(|a, b| a.1.cmp(&b.1));

        let fluids: Vec<usize> = (0..instance.fluids.len()).filter(|&f| instance.fluids[f].allowed && !instance.fluids[f].owned).collect();
        let mut place_of = vec![None; instance.fluids.len()];
        for (place, &fluid) in fluids.iter().enumerate() {
            place_of[fluid] = Some(place);
        }
        let mut table = Self { of_fluid: vec![Vec::new(); fluids.len()], fluids, groups: Vec::new(), entries: Vec::new() };
        for (key, members) in merged {
            table.add(&key, members, &place_of);
        }
        Ok(table)
    }

    fn add(&mut self, key: &TaskKey, members: Vec<usize>, place_of: &[Option<usize>]) {
        let task = self.groups.len();
        let start = self.entries.len();
        let mut masks: BTreeMap<usize, (u64, u64)> = BTreeMap::new();
        let (mut owned_any, mut owned_right) = (0, 0);
        for (step, ((right, will_do), _)) in key.iter().enumerate() {
            let bit = 1 << step;
            for (&fluid, right_bit) in right.iter().map(|f| (f, bit)).chain(will_do.iter().map(|f| (f, 0))) {
                let (any, right) = match place_of[fluid] {
                    Some(place) => {
                        let mask = masks.entry(place).or_default();
                        (&mut mask.0, &mut mask.1)
                    }
                    None => (&mut owned_any, &mut owned_right),
                };
                *any |= bit;
                *right |= right_bit;
            }
        }
        for (fluid, (any, right)) in masks {
            self.of_fluid[fluid].push(self.entries.len());
            self.entries.push(Entry { task, fluid, any, right });
        }
        let shares = key.iter().map(|&(_, bits)| f64::from_bits(bits)).collect::<Vec<_>>();
        let full = u64::MAX >> (64 - shares.len());
        self.groups.push(Group { full, shares, owned_any, owned_right, members, entries: start..self.entries.len() });
    }

    /// The weight of each merged task.
    pub fn weights(&self, of_task: &[f64]) -> Vec<f64> {
        self.groups.iter().map(|group| group.members.iter().map(|&task| of_task[task]).sum()).collect()
    }

    /// What is served at all and what is right, for each merged task, with these fluids and those owned.
    pub fn state(&self, set: &[usize]) -> Vec<(u64, u64)> {
        let mut state: Vec<_> = self.groups.iter().map(|group| (group.owned_any, group.owned_right)).collect();
        for entry in set.iter().flat_map(|&fluid| &self.of_fluid[fluid]).map(|&place| self.entries[place]) {
            let (any, right) = &mut state[entry.task];
            *any |= entry.any;
            *right |= entry.right;
        }
        state
    }

    /// What these fluids serve, with those owned.
    pub fn value(&self, set: &[usize], weights: &[f64], will_do: f64) -> f64 {
        let state = self.state(set);
        self.groups.iter().zip(&state).zip(weights).map(|((group, &(any, right)), &weight)| group.value(any, right, weight, will_do)).sum()
    }
}

/// A task's steps in a form in which equal tasks are equal: equal steps are merged, forbidden fluids gone, the steps sorted.
fn task_key(instance: &Instance, steps: &[Step]) -> TaskKey {
    let usable = |list: &[usize]| -> Vec<usize> {
        let mut list: Vec<usize> = list.iter().copied().filter(|&f| instance.fluids[f].allowed).collect();
        list.sort_unstable();
        list.dedup();
        list
    };
    let mut merged: BTreeMap<StepKey, f64> = BTreeMap::new();
    for step in steps {
        let right = usable(&step.right);
        let mut will_do = usable(&step.will_do);
        will_do.retain(|fluid| right.binary_search(fluid).is_err());
        *merged.entry((right, will_do)).or_default() += step.share;
    }
    merged.into_iter().map(|(key, share)| (key, share.to_bits())).collect()
}

fn check(instance: &Instance) -> Result<(), LadderError> {
    let good = |what, place, value: f64| {
        if value.is_finite() && value >= 0.0 { Ok(()) } else { Err(LadderError::BadNumber { what, place, value }) }
    };
    let fluids = instance.fluids.len();
    for (place, fluid) in instance.fluids.iter().enumerate() {
        good("the price of fluid", place, fluid.price)?;
    }
    for (place, task) in instance.jobs.iter().enumerate() {
        good("the weight of task", place, task.weight)?;
        for step in &task.steps {
            good("the share of a step of task", place, step.share)?;
            if let Some(&fluid) = step.right.iter().chain(&step.will_do).find(|&&fluid| fluid >= fluids) {
                return Err(LadderError::NoSuchFluid { task: place, fluid, fluids });
            }
        }
        let sum: f64 = task.steps.iter().map(|step| step.share).sum();
        if !task.steps.is_empty() && (sum - 1.0).abs() > 1e-6 {
            return Err(LadderError::SharesDoNotAddUp { task: place, sum });
        }
    }
    Ok(())
}
