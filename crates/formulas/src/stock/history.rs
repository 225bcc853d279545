//! How fast something is used, from the times it was.

use units::{Time, Volume};
use uom::si::time::day;
use uom::si::volume::milliliter;

use crate::error::{FormulaError, not_negative, positive, within};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Uses from which a history says more than an estimate; *common practice*.
pub const EVENTS_FOR_HISTORY: usize = 4;

/// One use: how much was taken, and how long after the one before.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Use {
    /// What was taken.
    pub taken: Volume,
    /// Time since the use before.
    pub since: Time,
}

/// How fast something is used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UseRate {
    /// What a use takes.
    pub each: Volume,
    /// Time between two uses.
    pub every: Time,
    /// What a day takes: Croston's.
    pub per_day: Volume,
    /// What a day takes, corrected downwards: Syntetos and Boylan's.
    pub corrected_per_day: Volume,
}

/// What a day takes of something used now and then, from an estimate that each use moves a little.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `z`, `p` | what a use takes, time between two, each moved towards the last by `alpha` | mL, d |
/// | `alpha` | how far one use moves them: 0.1 | – |
/// | `q` | z/p | mL/d |
/// | `q_c` | (1 − α/2)·z/p | mL/d |
///
/// # Range
/// Fewer than four uses say less than the user's own estimate; the answer then carries a caution.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a weight outside 0 to 1 or a negative amount; [`FormulaError::NotPositive`] for a time of nothing.
///
/// # Source
/// Croston 1972, with the factor of Syntetos and Boylan 2005.
///
/// # Example
/// From 40 mL every 2 days, after 60 mL in 3 days and 40 mL in one: 21.0 mL a day, corrected 19.95 (computed independently).
/// ```
/// use formulas::{Silent, stock::{Use, use_rate}};
/// use uom::si::{f64::{Time, Volume}, time::day, volume::milliliter};
/// let once = |taken, since| Use { taken: Volume::new::<milliliter>(taken), since: Time::new::<day>(since) };
/// let rate = use_rate(&mut Silent, once(40.0, 2.0), &[once(60.0, 3.0), once(40.0, 1.0)], 0.1)?;
/// assert!((rate.per_day.get::<milliliter>() - 21.0).abs() < 0.1);
/// assert!((rate.corrected_per_day.get::<milliliter>() - 19.95).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn use_rate<R: Recorder>(r: &mut R, estimate: Use, uses: &[Use], weight: f64) -> Result<UseRate, FormulaError> {
    given!(r, alpha [] = weight, "how far one use moves the estimate");
    given!(r, z_0[milliliter] = estimate.taken, "estimate of what a use takes");
    given!(r, p_0[day] = estimate.since, "estimate of the time between two");
    within("the weight of one use", alpha, "", (0.0, 1.0), sources::CROSTON)?;
    not_negative("what a use takes", z_0, "mL", sources::DEFINITION)?;
    positive("the time between two uses", p_0, "d")?;
    let (mut each, mut every) = (z_0, p_0);
    for one in uses {
        given!(r, x[milliliter] = one.taken, "what was taken");
        given!(r, t[day] = one.since, "time since the use before");
        given!(r, z_b["mL"] = each, "estimate before");
        given!(r, p_b["d"] = every, "estimate before");
        not_negative("what was taken", x, "mL", sources::DEFINITION)?;
        positive("the time since the use before", t, "d")?;
        step!(r, z[milliliter] = z_b + alpha * (x - z_b), sources::CROSTON);
        step!(r, p[day] = p_b + alpha * (t - p_b), sources::CROSTON);
        (each, every) = (z, p);
    }
    given!(r, z["mL"] = each, "what a use takes");
    given!(r, p["d"] = every, "time between two");
    step!(r, q["mL/d"] = z / p, sources::CROSTON);
    step!(r, q_c["mL/d"] = (1.0 - alpha / 2.0) * q, sources::SYNTETOS_BOYLAN);
    if uses.len() < EVENTS_FOR_HISTORY {
        r.caution(Caution::Rough { what: "the rate of use", why: "fewer than four uses say less than your own estimate" });
    }
    let mL = Volume::new::<milliliter>;
    Ok(UseRate { each: mL(z), every: Time::new::<day>(p), per_day: mL(q), corrected_per_day: mL(q_c) })
}
