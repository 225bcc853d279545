//! Buying one fluid at a time, each the best next purchase.
//!
//! A fluid's gain is kept up to date rather than computed anew: buying one changes only the tasks it serves, so only the entries of
//! those tasks are looked at. The order is run hundreds of times to test it, which is why this file is written for speed.

use super::instance::number;
use super::table::{Entry, Table};

/// Gains this close, as a share of the larger, are equal: then the cheaper fluid goes first.
const TIE: f64 = 1e-9;

/// What decides between equal gains: price, hazards; the place in the list comes last and needs no keeping.
#[derive(Debug, Clone, Copy)]
pub(super) struct Taste {
    pub price: f64,
    pub hazards: u32,
}

/// One purchase.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Pick {
    pub fluid: usize,
    pub opens_with_next: bool,
}

/// The state of one climb. It can be started over without allocating.
#[derive(Debug)]
pub(super) struct Climb<'t> {
    table: &'t Table,
    any: Vec<u64>,
    right: Vec<u64>,
    /// For each entry what it adds to its fluid's gain.
    entry_gain: Vec<f64>,
    /// For each entry what it adds to its fluid's hope.
    entry_hope: Vec<f64>,
    /// What each fluid gains if bought next, on its own.
    gain: Vec<f64>,
    /// A bound on what it adds to a bundle beyond its gain: the value of tasks it opens only with others.
    hope: Vec<f64>,
    bought: Vec<bool>,
    /// Room for looking at bundles.
    touched: Vec<(usize, u64, u64)>,
}

impl<'t> Climb<'t> {
    pub fn new(table: &'t Table) -> Self {
        let (fluids, entries) = (table.fluids.len(), table.entries.len());
        Self {
            table,
            any: Vec::new(),
            right: Vec::new(),
            entry_gain: vec![0.0; entries],
            entry_hope: vec![0.0; entries],
            gain: vec![0.0; fluids],
            hope: vec![0.0; fluids],
            bought: vec![false; fluids],
            touched: Vec::new(),
        }
    }

    /// Climbs at most `stop` of at most `rungs` rungs. (A bundle must fit below `rungs`; the draws stop earlier than they plan.)
    pub fn run(&mut self, weights: &[f64], will_do: f64, taste: &[Taste], rungs: usize, stop: usize, picks: &mut Vec<Pick>) {
        self.reset(weights, will_do);
        picks.clear();
        let nothing = TIE * weights.iter().sum::<f64>().max(f64::MIN_POSITIVE);
        while picks.len() < stop {
            let single = self.best_single(taste);
            let gain = single.map_or(0.0, |fluid| self.gain[fluid]);
            if let Some(bundle) = self.best_bundle(weights, will_do, taste, gain.max(nothing), rungs - picks.len()) {
                self.buy_bundle(bundle, weights, will_do, taste, stop, picks);
            } else if let Some(fluid) = single.filter(|_| gain > nothing) {
                picks.push(Pick { fluid, opens_with_next: false });
                self.buy(fluid, weights, will_do);
            } else {
                break;
            }
        }
    }

    fn reset(&mut self, weights: &[f64], will_do: f64) {
        self.any.clear();
        self.any.extend(self.table.groups.iter().map(|group| group.owned_any));
        self.right.clear();
        self.right.extend(self.table.groups.iter().map(|group| group.owned_right));
        for list in [&mut self.entry_gain, &mut self.entry_hope, &mut self.gain, &mut self.hope] {
            list.fill(0.0);
        }
        self.bought.fill(false);
        for (task, &weight) in weights.iter().enumerate() {
            self.refresh(task, weight, will_do);
        }
    }

    /// Brings the gains of the fluids that serve this task up to date.
    fn refresh(&mut self, task: usize, weight: f64, will_do: f64) {
        let group = &self.table.groups[task];
        let (any, right) = (self.any[task], self.right[task]);
        let now = group.value(any, right, weight, will_do);
        let one_step = group.full == 1;
        let range = group.entries.clone();
        let entries = &self.table.entries[range.clone()];
        for ((entry, old_gain), old_hope) in entries.iter().zip(&mut self.entry_gain[range.clone()]).zip(&mut self.entry_hope[range]) {
            let (with_any, with_right) = (any | entry.any, right | entry.right);
            let gain = if with_any == group.full {
                // The commonest case without the loop over steps.
                let share = if one_step { if with_right == 1 { 1.0 } else { 0.0 } } else { group.share_of(with_right) };
                weight * (will_do + (1.0 - will_do) * share) - now
            } else {
                0.0
            };
            self.gain[entry.fluid] += gain - *old_gain;
            *old_gain = gain;
            if !one_step {
                // Two fluids that open a task together bring at most its weight. Half from each bounds that; where one of them opens
                // it alone and the other betters it, the other brings at most 1 − will_do.
                let useful = with_any != group.full && (with_any, with_right) != (any, right);
                let hope = if useful { weight * (1.0 - will_do).max(0.5) } else { 0.0 };
                self.hope[entry.fluid] += hope - *old_hope;
                *old_hope = hope;
            }
        }
    }

    fn buy(&mut self, fluid: usize, weights: &[f64], will_do: f64) {
        self.bought[fluid] = true;
        let table = self.table;
        for entry in table.of_fluid[fluid].iter().map(|&place| table.entries[place]) {
            let (any, right) = (self.any[entry.task] | entry.any, self.right[entry.task] | entry.right);
            if (any, right) != (self.any[entry.task], self.right[entry.task]) {
                self.any[entry.task] = any;
                self.right[entry.task] = right;
                self.refresh(entry.task, weights[entry.task], will_do);
            }
        }
    }

    fn best_single(&self, taste: &[Taste]) -> Option<usize> {
        let most = self.gain.iter().zip(&self.bought).filter(|(_, bought)| !**bought).map(|(gain, _)| *gain).fold(0.0, f64::max);
        let level = most * (1.0 - TIE);
        (0..self.gain.len()).filter(|&f| !self.bought[f] && self.gain[f] >= level).reduce(|best, f| nicer(taste, best, f))
    }

    /// The bundle with the greatest gain for each fluid bought, if that is more than `beat`.
    fn best_bundle(&mut self, weights: &[f64], will_do: f64, taste: &[Taste], beat: f64, room: usize) -> Option<Vec<usize>> {
        let beat = beat * (1.0 + TIE);
        let hopeful = (0..self.gain.len()).any(|f| !self.bought[f] && self.hope[f] > 0.0 && self.gain[f] + self.hope[f] > beat);
        if !hopeful || room < 2 {
            return None;
        }
        let mut best: Option<(f64, Vec<usize>)> = None;
        for task in 0..self.table.groups.len() {
            if self.any[task] == self.table.groups[task].full {
                continue;
            }
            let Some(bundle) = self.bundle_for(task, weights[task], will_do, taste) else { continue };
            let size = number(bundle.len());
            let to_beat = best.as_ref().map_or(beat, |(gain, _)| gain * (1.0 - TIE));
            if bundle.len() > room || bundle.iter().map(|&f| self.gain[f] + self.hope[f]).sum::<f64>() / size <= to_beat {
                continue;
            }
            let gain = self.gain_of(&bundle, weights, will_do) / size;
            let better = match &best {
                None => gain > beat,
                Some((most, _)) if gain > most * (1.0 + TIE) => true,
                Some((most, other)) => gain >= most * (1.0 - TIE) && nicer_bundle(taste, &bundle, other),
            };
            if better {
                best = Some((gain, bundle));
            }
        }
        best.map(|(_, bundle)| bundle)
    }

    /// Fluids that together open a task that none opens alone: each time the one that gains most on its own and serves most, and best,
    /// of what is still missing. `None` where one alone opens it; that one is looked at as a single purchase.
    fn bundle_for(&self, task: usize, weight: f64, will_do: f64, taste: &[Taste]) -> Option<Vec<usize>> {
        let group = &self.table.groups[task];
        let entries = &self.table.entries[group.entries.clone()];
        if entries.iter().any(|entry| !self.bought[entry.fluid] && self.any[task] | entry.any == group.full) {
            return None;
        }
        let mut missing = group.full & !self.any[task];
        let mut bundle: Vec<(usize, u64)> = Vec::new();
        while missing != 0 {
            let score = |entry: &Entry| {
                let served = will_do * group.share_of(entry.any & missing) + (1.0 - will_do) * group.share_of(entry.right & missing);
                self.gain[entry.fluid] + weight * served
            };
            let mut best: Option<(f64, usize, u64)> = None;
            for entry in entries.iter().filter(|entry| entry.any & missing != 0) {
                let score = score(entry);
                let better = best.is_none_or(|(most, fluid, _)| {
                    score > most * (1.0 + TIE) || (score >= most * (1.0 - TIE) && nicer(taste, fluid, entry.fluid) == entry.fluid)
                });
                if better {
                    best = Some((score, entry.fluid, entry.any));
                }
            }
            let (_, fluid, any) = best?;
            missing &= !any;
            bundle.push((fluid, any));
        }
        // A later one may have made an earlier one needless.
        let mut place = 0;
        while place < bundle.len() {
            let others = bundle.iter().enumerate().filter(|&(other, _)| other != place).fold(self.any[task], |any, (_, b)| any | b.1);
            if others == group.full {
                bundle.remove(place);
            } else {
                place += 1;
            }
        }
        Some(bundle.into_iter().map(|(fluid, _)| fluid).collect())
    }

    /// What a bundle gains as a whole.
    fn gain_of(&mut self, bundle: &[usize], weights: &[f64], will_do: f64) -> f64 {
        let table = self.table;
        self.touched.clear();
        let mut gain = 0.0;
        for entry in bundle.iter().flat_map(|&fluid| &table.of_fluid[fluid]).map(|&place| table.entries[place]) {
            let (task, group) = (entry.task, &table.groups[entry.task]);
            let before = (self.any[task], self.right[task]);
            let after = (before.0 | entry.any, before.1 | entry.right);
            if before != after {
                self.touched.push((task, before.0, before.1));
                gain += group.value(after.0, after.1, weights[task], will_do) - group.value(before.0, before.1, weights[task], will_do);
                (self.any[task], self.right[task]) = after;
            }
        }
        while let Some((task, any, right)) = self.touched.pop() {
            (self.any[task], self.right[task]) = (any, right);
        }
        gain
    }

    /// Buys a bundle on consecutive rungs, each time the one that gains most on its own by then.
    fn buy_bundle(&mut self, mut bundle: Vec<usize>, weights: &[f64], will_do: f64, taste: &[Taste], stop: usize, picks: &mut Vec<Pick>) {
        while !bundle.is_empty() && picks.len() < stop {
            let most = bundle.iter().map(|&f| self.gain[f]).fold(f64::NEG_INFINITY, f64::max);
            let level = most - TIE * most.abs();
            let Some(fluid) = bundle.iter().copied().filter(|&f| self.gain[f] >= level).reduce(|best, f| nicer(taste, best, f)) else {
                return;
            };
            bundle.retain(|&other| other != fluid);
            picks.push(Pick { fluid, opens_with_next: !bundle.is_empty() });
            self.buy(fluid, weights, will_do);
        }
    }
}

/// The nicer of two fluids with equal gains: cheaper, then less hazardous, then earlier in the list.
pub(super) fn nicer(taste: &[Taste], a: usize, b: usize) -> usize {
    let order = taste[a].price.total_cmp(&taste[b].price).then(taste[a].hazards.cmp(&taste[b].hazards)).then(a.cmp(&b));
    if order.is_gt() { b } else { a }
}

fn nicer_bundle(taste: &[Taste], a: &[usize], b: &[usize]) -> bool {
    let price = |bundle: &[usize]| bundle.iter().map(|&f| taste[f].price).sum::<f64>() / number(bundle.len());
    let hazards = |bundle: &[usize]| bundle.iter().map(|&f| f64::from(taste[f].hazards)).sum::<f64>() / number(bundle.len());
    price(a).total_cmp(&price(b)).then(hazards(a).total_cmp(&hazards(b))).then_with(|| a.cmp(b)).is_lt()
}
