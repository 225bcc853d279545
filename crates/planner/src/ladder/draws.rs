//! Does the order hold? Weights, prices and the grade of "will do" are drawn many times, and the ladder is climbed anew each time.

use super::greedy::{Climb, Pick, Taste};
use super::table::Table;
use rand::SeedableRng;
use rand::rngs::ChaCha8Rng;
use rand_distr::{Distribution, LogNormal, Uniform};

/// The same draws each time, so that the same shop gives the same answer.
const SEED: u64 = 500;
// The bounds of the draws are the program's own: how far a careful person might judge or pay otherwise. *Common practice, no source.*

/// The scatter of a task's weight: σ of its logarithm.
const WEIGHT_SIGMA: f64 = 0.3;
/// The factor on a price.
const PRICE_FACTOR: (f64, f64) = (0.7, 1.3);
/// The grade of a fluid that will do.
const WILL_DO: (f64, f64) = (0.4, 0.8);

/// For each rung, the share of the draws in which its fluid stands on that same rung.
pub(super) fn holds_in(table: &Table, weights: &[f64], taste: &[Taste], rungs: usize, ladder: &[Pick], draws: u32) -> Vec<f64> {
    let (Ok(weight), Ok(price), Ok(will_do)) = (
        LogNormal::new(0.0, WEIGHT_SIGMA),
        Uniform::new_inclusive(PRICE_FACTOR.0, PRICE_FACTOR.1),
        Uniform::new_inclusive(WILL_DO.0, WILL_DO.1),
    ) else {
        return vec![1.0; ladder.len()];
    };
    if draws == 0 {
        return vec![1.0; ladder.len()];
    }
    let mut random = ChaCha8Rng::seed_from_u64(SEED);
    let mut climb = Climb::new(table);
    let mut picks = Vec::new();
    let mut kept = vec![0_u32; ladder.len()];
    let (mut task_weights, mut drawn_taste) = (weights.to_vec(), taste.to_vec());
    let mut drawn_weights = vec![0.0; table.groups.len()];
    for _ in 0..draws {
        let grade = will_do.sample(&mut random);
        for (drawn, given) in task_weights.iter_mut().zip(weights) {
            *drawn = given * weight.sample(&mut random);
        }
        for (drawn, given) in drawn_taste.iter_mut().zip(taste) {
            drawn.price = given.price * price.sample(&mut random);
        }
        for (drawn, group) in drawn_weights.iter_mut().zip(&table.groups) {
            *drawn = group.members.iter().map(|&task| task_weights[task]).sum();
        }
        climb.run(&drawn_weights, grade, &drawn_taste, rungs, ladder.len(), &mut picks);
        for ((kept, rung), pick) in kept.iter_mut().zip(ladder).zip(&picks) {
            *kept += u32::from(rung.fluid == pick.fluid);
        }
    }
    kept.into_iter().map(|kept| f64::from(kept) / f64::from(draws)).collect()
}
