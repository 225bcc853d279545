//! Made-up shops for the ladder: sparse and structured like real ones, from a seed.

use planner::ladder::{Candidate, Instance, Step, Task};
use rand::rngs::ChaCha8Rng;
use rand::{RngExt, SeedableRng};

/// The consequences and frequencies a weight is made from (common practice, no source).
const CONSEQUENCE: [f64; 4] = [8.0, 4.0, 2.0, 1.0];
const FREQUENCY: [f64; 4] = [1.0, 0.7, 0.4, 0.2];

/// A shop in which fluids and steps belong to families (oils, greases, adhesives …): a fluid is mostly right or will do within its family
/// and now and then will do outside it. One task in five is a job of two to four steps from different families.
pub fn shop(seed: u64, fluids: usize, tasks: usize, families: usize) -> Instance {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let family: Vec<usize> = (0..fluids).map(|_| random.random_range(0..families)).collect();
    // Some products are good at much, some at little.
    let breadth: Vec<f64> = (0..fluids).map(|_| random.random_range(0.25..1.0)).collect();
    let step = |random: &mut ChaCha8Rng, share: f64| {
        let mine = random.random_range(0..families);
        let (mut right, mut will_do) = (Vec::new(), Vec::new());
        for fluid in 0..fluids {
            let (p_right, p_will) = if family[fluid] == mine { (0.35, 0.45) } else { (0.01, 0.06) };
            let draw: f64 = random.random::<f64>() / breadth[fluid];
            if draw < p_right {
                right.push(fluid);
            } else if draw < p_right + p_will {
                will_do.push(fluid);
            }
        }
        if right.is_empty() && will_do.is_empty() {
            will_do.push(random.random_range(0..fluids));
        }
        Step { share, right, will_do }
    };
    let jobs = (0..tasks)
        .map(|_| {
            let weight = CONSEQUENCE[random.random_range(0..4)] * FREQUENCY[random.random_range(0..4)];
            let steps = if random.random_bool(0.2) { random.random_range(2..=4_u32) } else { 1 };
            Task { weight, steps: (0..steps).map(|_| step(&mut random, 1.0 / f64::from(steps))).collect() }
        })
        .collect();
    let fluids = (0..fluids)
        .map(|_| Candidate {
            price: (random.random_range(2.0_f64.ln()..60.0_f64.ln()).exp() * 4.0).round() / 4.0,
            hazards: random.random_range(0..6),
            owned: false,
            allowed: true,
        })
        .collect();
    Instance { fluids, jobs }
}
