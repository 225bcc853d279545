//! The air of a room through a day of work: what it holds at any moment, and its worst quarter of an hour.

/// Something that lets vapour into the air for a time, at a rate that may fall off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pulse {
    /// When it begins, h.
    pub starts: f64,
    /// How long it lasts, h.
    pub lasts: f64,
    /// Rate at its beginning, mg/h.
    pub rate: f64,
    /// How fast the rate falls off, 1/h; nothing for a steady source.
    pub fades: f64,
}

/// A room's air from hour 0 on: the sum of what each pulse leaves in it, each a closed form.
#[derive(Debug, Clone, PartialEq)]
pub struct History {
    /// Air space, m³.
    pub volume: f64,
    /// Air changes over the mixing factor, 1/h.
    pub changes: f64,
    /// Held at hour 0, mg/m³.
    pub before: f64,
    /// What is let in.
    pub pulses: Vec<Pulse>,
}

/// ∫₀ᵗ e^(−k·s) ds.
fn span(k: f64, t: f64) -> f64 {
    if (k * t).abs() < 1e-12 { t } else { -(-k * t).exp_m1() / k }
}

/// (e^(−k·t) − e^(−n·t))/(n − k), written so that it keeps its digits where the two are nearly alike.
fn between(k: f64, n: f64, t: f64) -> f64 {
    (-k.min(n) * t).exp() * span((n - k).abs(), t)
}

impl Pulse {
    /// What it has left in the air at an hour, for a room of a cubic metre.
    fn held(&self, n: f64, at: f64) -> f64 {
        let t = at - self.starts;
        if t <= 0.0 {
            return 0.0;
        }
        let on = t.min(self.lasts);
        self.rate * between(self.fades, n, on) * (-n * (t - on)).exp()
    }

    /// What it has let in by an hour, mg.
    fn let_in(&self, at: f64) -> f64 {
        let on = (at - self.starts).clamp(0.0, self.lasts);
        self.rate * span(self.fades, on)
    }
}

impl History {
    /// What the air holds at an hour, mg/m³.
    #[must_use]
    pub fn held(&self, at: f64) -> f64 {
        let pulses: f64 = self.pulses.iter().map(|pulse| pulse.held(self.changes, at)).sum();
        self.before * (-self.changes * at).exp() + pulses / self.volume
    }

    /// What has been let in by an hour, mg, with what was there before.
    #[must_use]
    pub fn let_in(&self, at: f64) -> f64 {
        self.before * self.volume + self.pulses.iter().map(|pulse| pulse.let_in(at)).sum::<f64>()
    }

    /// What the air holds from hour 0 to another, at so many even steps and at every turn: hours and mg/m³, for a picture.
    #[must_use]
    pub fn series(&self, until: f64, steps: u32) -> Vec<(f64, f64)> {
        let mut hours = self.turns(0.0, until);
        hours.extend((1..steps).map(|i| until * f64::from(i) / f64::from(steps)));
        hours.sort_by(f64::total_cmp);
        hours.dedup();
        hours.into_iter().map(|at| (at, self.held(at))).collect()
    }

    /// Mean from one hour to another, mg/m³.
    ///
    /// What came in and is not there any more has left with the air that changed: n·V·∫C = let in − kept.
    #[must_use]
    pub fn mean(&self, from: f64, to: f64) -> f64 {
        let hours = to - from;
        if hours <= 0.0 {
            return self.held(to);
        }
        // Where the air hardly changes the difference above loses its digits; Simpson's rule does not, and the curve is then smooth.
        if self.changes * hours < 0.05 {
            return self.simpson(from, to);
        }
        let left = self.let_in(to) - self.let_in(from) - self.volume * (self.held(to) - self.held(from));
        left / (self.changes * self.volume * hours)
    }

    /// Simpson's rule over the stretches between the hours at which a pulse begins or ends.
    fn simpson(&self, from: f64, to: f64) -> f64 {
        const PARTS: i32 = 16;
        let hours = self.turns(from, to);
        let area: f64 = hours
            .iter()
            .zip(hours.iter().skip(1))
            .map(|(a, b)| {
                let h = (b - a) / f64::from(PARTS);
                let inner: f64 = (1..PARTS).map(|i| if i % 2 == 1 { 4.0 } else { 2.0 } * self.held(a + f64::from(i) * h)).sum();
                h / 3.0 * (self.held(*a) + inner + self.held(*b))
            })
            .sum();
        area / (to - from)
    }

    /// The two hours and those between them at which a pulse begins or ends.
    fn turns(&self, from: f64, to: f64) -> Vec<f64> {
        let mut turns = vec![from, to];
        turns.extend(self.pulses.iter().flat_map(|pulse| [pulse.starts, pulse.starts + pulse.lasts]).filter(|at| (from..to).contains(at)));
        turns.sort_by(f64::total_cmp);
        turns
    }

    /// The worst mean over a window within so many hours, mg/m³.
    #[must_use]
    pub fn worst_mean(&self, window: f64, within: f64) -> f64 {
        let last = (within - window).max(0.0);
        self.worst(last, |start| self.mean(start, start + window), window)
    }

    /// The most the air holds within so many hours, mg/m³.
    #[must_use]
    pub fn peak(&self, within: f64) -> f64 {
        self.worst(within, |at| self.held(at), 0.0)
    }

    /// The largest value of a smooth function up to an hour: looked for on a grid and around every turn, then closed in upon at each top of
    /// those, for the highest of them may lie beside a lower one.
    fn worst(&self, last: f64, value: impl Fn(f64) -> f64, window: f64) -> f64 {
        const GRID: u32 = 96;
        let mut looked: Vec<f64> = (0..=GRID).map(|i| last * f64::from(i) / f64::from(GRID)).collect();
        let turns = self.turns(0.0, last);
        looked.extend(turns.iter().flat_map(|at| [*at, at - window]).filter(|at| (0.0..=last).contains(at)));
        looked.sort_by(f64::total_cmp);
        looked.dedup();
        let values: Vec<f64> = looked.iter().map(|at| value(*at)).collect();
        let end = looked.len() - 1;
        let around = |i: usize| (i.saturating_sub(1), (i + 1).min(end));
        let is_top = |i: &usize| values[around(*i).0].max(values[around(*i).1]) <= values[*i];
        let top = |i: usize| closed_in(looked[around(i).0], looked[around(i).1], last, &value).max(values[i]);
        // Values that are no numbers have no top, and no number comes of them either.
        (0..=end).filter(is_top).map(top).max_by(f64::total_cmp).unwrap_or(f64::NAN)
    }
}

/// The largest value between two hours between which the function rises to one top, by golden section.
fn closed_in(mut low: f64, mut high: f64, last: f64, value: impl Fn(f64) -> f64) -> f64 {
    let golden = 1.0 / (0.5 * (1.0 + 5_f64.sqrt()));
    while high - low > 1e-6 * last.max(1.0) {
        let (a, b) = (high - golden * (high - low), low + golden * (high - low));
        if value(a) > value(b) { high = b } else { low = a }
    }
    value(0.5 * (low + high))
}
