//! How a plan grows with the fluids of the data: a part of them, all, and all with copies whose properties differ a little.

use planner::{Wishes, plan};
use rand::rngs::ChaCha8Rng;
use rand::{RngExt, SeedableRng};
use reference::{FILES, Fluid, Reference};

use crate::clock::{count, shortest};
use crate::fit::Growth;
use crate::needs::{shop, shop_file};

const FLUIDS: [usize; 5] = [40, 60, 120, 200, 400];
const BAYS: u32 = 10;
const RUNS: u32 = 15;

pub(crate) fn growth() -> Result<Growth, Box<dyn std::error::Error>> {
    let mut growth = Growth::new("plan", "fluids");
    let text = shop_file(BAYS);
    let shop = shop(&text)?;
    for fluids in FLUIDS {
        let reference = data(fluids)?;
        let (seconds, plan) = shortest(RUNS, || plan(&shop, &reference, &Wishes::default()));
        plan?;
        growth.add(count(reference.fluids.len()), seconds);
    }
    Ok(growth)
}

/// The data with so many fluids: spread over all files where there are fewer than they hold, and round after round of copies where more.
fn data(fluids: usize) -> Result<Reference, reference::DataError> {
    let mut reference = Reference::parse(FILES)?;
    let all: Vec<Fluid> = reference.fluids.values().cloned().collect();
    let mut random = ChaCha8Rng::seed_from_u64(1);
    reference.fluids.clear();
    for place in 0..fluids {
        let fluid = if fluids < all.len() {
            all[place * all.len() / fluids].clone()
        } else if place < all.len() {
            all[place].clone()
        } else {
            like(&all[place % all.len()], place, &mut random)
        };
        reference.fluids.insert(fluid.key.clone(), fluid);
    }
    Ok(reference)
}

/// A fluid of the same kind: a tenth thicker or thinner, and a third dearer or cheaper, at most.
fn like(fluid: &Fluid, place: usize, random: &mut ChaCha8Rng) -> Fluid {
    let mut fluid = Fluid { key: format!("{}-{place}", fluid.key), ..fluid.clone() };
    let thicker = random.random_range(0.9..1.1);
    if let Some(oil) = &mut fluid.oil {
        oil.viscosity_40 *= thicker;
        if let Some(viscosity) = &mut oil.viscosity_100 {
            *viscosity *= thicker;
        }
    }
    let dearer = random.random_range(0.67..1.33);
    for pack in &mut fluid.packs {
        pack.price *= dearer;
    }
    fluid
}
