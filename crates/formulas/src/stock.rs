//! Stock: when to order, which pack to buy, and how much of it ages before it is used.

#![expect(non_snake_case, reason = "symbols match the source")]

mod containment;
mod history;

use units::{Ratio, Time, Volume};
use uom::si::ratio::ratio;
use uom::si::time::day;
use uom::si::volume::{liter, milliliter};

use crate::error::{FormulaError, not_negative, positive, within};
use crate::math::max;
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

pub use containment::{Containment, containment, fill_limit};
pub use history::{EVENTS_FOR_HISTORY, Use, UseRate, use_rate};

/// Share of times that stock must not run out of what safety needs: bicarbonate, absorbent; *common practice*.
pub const SERVICE_SAFETY: f64 = 0.95;
/// Share of times that stock must not run out of anything else; *common practice*.
pub const SERVICE_OTHER: f64 = 0.8;

/// Days in a year of use.
const YEAR_DAYS: f64 = 365.0;
/// Most uses expected at once: e to the minus as much is still a number.
const MOST_USES: f64 = 700.0;

/// Stock that is used now and then: so many times a year, so much each time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Demand {
    /// Uses in a year.
    pub times_a_year: f64,
    /// What one use takes.
    pub each: Volume,
}

/// Chances of 0, 1, 2 … uses where `mean` are expected.
fn chances(mean: f64) -> impl Iterator<Item = f64> {
    let mut uses = 0.0;
    core::iter::successors(Some((-mean).exp()), move |chance| {
        uses += 1.0;
        Some(chance * mean / uses)
    })
}

/// Uses that are expected in a time.
fn uses_expected<R: Recorder>(r: &mut R, demand: &Demand, time: Time) -> Result<f64, FormulaError> {
    given!(r, lambda["1/year"] = demand.times_a_year, "uses in a year");
    given!(r, T[day] = time, "time");
    given!(r, T_y["d"] = YEAR_DAYS, "days in a year");
    not_negative("the uses in a year", lambda, "1/year", sources::DEFINITION)?;
    not_negative("the time", T, "d", sources::DEFINITION)?;
    step!(r, mu [] = lambda * T / T_y, sources::DEFINITION);
    within("the uses expected", mu, "", (0.0, MOST_USES), sources::DEFINITION)?;
    Ok(mu)
}

/// When to order again.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReorderPoint {
    /// Uses that must still be in stock.
    pub uses: f64,
    /// What they take.
    pub volume: Volume,
}

/// The stock at which to order: the fewest uses that last until the next delivery with the chance wanted.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `mu` | uses expected until the next delivery: over its delay and the time between two looks | – |
/// | `p` | chance wanted that stock lasts | – |
/// | `n` | smallest number with P(N ≤ n) ≥ p | – |
/// | `s` | what one use takes | mL |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a chance outside 0 to 0.999 99, a negative rate, amount or time, or more than 700 uses expected.
///
/// # Source
/// Uses that come at random follow Poisson's distribution.
///
/// # Example
/// Six a year, a month's delay and a look every month: one is expected, and for 95 % three must be there (a table of Poisson's
/// distribution, *from memory*: 0.736, 0.920, 0.981 for 1, 2, 3).
/// ```
/// use formulas::{Silent, stock::{Demand, SERVICE_SAFETY, reorder_point}};
/// use uom::si::f64::{Ratio, Time, Volume};
/// use uom::si::{ratio::ratio, time::day, volume::milliliter};
/// let demand = Demand { times_a_year: 6.0, each: Volume::new::<milliliter>(40.0) };
/// let two_months = Time::new::<day>(365.0 / 6.0);
/// let at = reorder_point(&mut Silent, &demand, two_months, Ratio::new::<ratio>(SERVICE_SAFETY))?;
/// assert_eq!(at.uses, 3.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn reorder_point<R: Recorder>(r: &mut R, demand: &Demand, until_delivery: Time, service: Ratio) -> Result<ReorderPoint, FormulaError> {
    let mu = uses_expected(r, demand, until_delivery)?;
    given!(r, p [] = service.get::<ratio>(), "chance wanted that stock lasts");
    given!(r, s[milliliter] = demand.each, "what one use takes");
    within("the chance wanted", p, "", (0.0, 0.999_99), sources::DEFINITION)?;
    not_negative("what one use takes", s, "mL", sources::DEFINITION)?;
    let quantile = |mean: f64, chance: f64| {
        let mut sum = 0.0;
        let mut uses = 0.0;
        for each in chances(mean) {
            sum += each;
            // Rounding must not keep the sum below a chance for ever.
            if sum >= chance || (uses > mean && each == 0.0) {
                break;
            }
            uses += 1.0;
        }
        uses
    };
    step!(r, n [] = quantile(mu, p), sources::POISSON);
    step!(r, V[milliliter] = n * s, sources::DEFINITION);
    Ok(ReorderPoint { uses: n, volume: Volume::new::<milliliter>(V) })
}

/// What becomes of an opened pack.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PackUse {
    /// What is used before it is too old.
    pub used: Volume,
    /// What is then thrown away.
    pub wasted: Volume,
}

/// What is used of a pack before it is too old, as expected: E[min(N·s, P)].
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `mu` | uses expected while it keeps | – |
/// | `s`, `P` | what one use takes, the pack | mL |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative rate, amount or time, or more than 700 uses expected; [`FormulaError::NotPositive`] for a
/// pack of nothing.
///
/// # Source
/// Uses that come at random follow Poisson's distribution.
///
/// # Example
/// Six uses a year of 40 mL from 500 mL that keep for a year: 239.6 mL are used, 260 mL wasted (computed independently).
/// ```
/// use formulas::{Silent, stock::{Demand, pack_use}};
/// use uom::si::{f64::{Time, Volume}, time::day, volume::milliliter};
/// let mL = Volume::new::<milliliter>;
/// let pack = pack_use(&mut Silent, &Demand { times_a_year: 6.0, each: mL(40.0) }, mL(500.0), Time::new::<day>(365.0))?;
/// assert!((pack.used.get::<milliliter>() - 239.6).abs() < 0.1);
/// assert!((pack.wasted.get::<milliliter>() - 260.4).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn pack_use<R: Recorder>(r: &mut R, demand: &Demand, pack: Volume, keeps: Time) -> Result<PackUse, FormulaError> {
    let mu = uses_expected(r, demand, keeps)?;
    given!(r, s[milliliter] = demand.each, "what one use takes");
    given!(r, P[milliliter] = pack, "the pack");
    not_negative("what one use takes", s, "mL", sources::DEFINITION)?;
    positive("the pack", P, "mL")?;
    // What is left of the pack after n uses, weighed by their chance, stops counting once the pack is empty or no more uses can come.
    let E_left = |mean: f64, each: f64, pack: f64| {
        let mut left = 0.0;
        let mut rest = pack;
        for (chance, uses) in chances(mean).zip(0_u32..) {
            if rest <= 0.0 || (f64::from(uses) > mean && chance == 0.0) {
                break;
            }
            left += chance * rest;
            rest -= each;
        }
        left
    };
    step!(r, V_w[milliliter] = E_left(mu, s, P), sources::POISSON);
    step!(r, V_u[milliliter] = max(P - V_w, 0.0), sources::DEFINITION);
    Ok(PackUse { used: Volume::new::<milliliter>(V_u), wasted: Volume::new::<milliliter>(V_w) })
}

/// A pack on offer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Offer {
    /// How much is in it.
    pub size: Volume,
    /// Its price, in any currency.
    pub price: f64,
    /// What is used of it, and what is wasted: of [`pack_use`].
    pub use_of_it: PackUse,
}

/// The cheapest pack for what is used of it: its place among the offers, and the cost of a litre used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Choice {
    /// Its place among the offers.
    pub place: usize,
    /// Cost of a litre used, in the currency of the prices.
    pub per_litre: f64,
}

/// The pack with the lowest cost for each litre used, disposal of the rest included; of two alike the smaller, for there is less to burn.
///
/// `None` where no pack is used at all.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative price.
///
/// # Source
/// *Common practice, no source.*
///
/// # Example
/// 300 mL are used in the year they keep: 250 mL for 12 come to 48 a litre, 1 L for 20 to 66.7 (by hand).
/// ```
/// use formulas::{Silent, stock::{Offer, PackUse, cheapest_pack}};
/// use uom::si::{f64::Volume, volume::milliliter};
/// let mL = Volume::new::<milliliter>;
/// let offer = |size, price, used| {
///     Offer { size: mL(size), price, use_of_it: PackUse { used: mL(used), wasted: mL(size - used) } }
/// };
/// let choice = cheapest_pack(&mut Silent, &[offer(1000.0, 20.0, 300.0), offer(250.0, 12.0, 250.0)], 0.0)?.ok_or("none")?;
/// assert_eq!(choice.place, 1);
/// assert!((choice.per_litre - 48.0).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn cheapest_pack<R: Recorder>(r: &mut R, offers: &[Offer], disposal_per_litre: f64) -> Result<Option<Choice>, FormulaError> {
    /// Costs of a litre that differ by less are alike.
    const ALIKE: f64 = 1e-9;
    given!(r, d["1/L"] = disposal_per_litre, "cost of disposing of a litre");
    not_negative("the cost of disposal", d, "1/L", sources::DEFINITION)?;
    let mut best: Option<(Choice, Volume)> = None;
    for (place, offer) in offers.iter().enumerate() {
        given!(r, p [] = offer.price, "price");
        given!(r, V_u[liter] = offer.use_of_it.used, "what is used of it");
        given!(r, V_w[liter] = offer.use_of_it.wasted, "what is wasted");
        not_negative("the price", p, "", sources::DEFINITION)?;
        if V_u <= 0.0 {
            continue;
        }
        step!(r, k["1/L"] = (p + d * V_w) / V_u, sources::COMMON_PRACTICE);
        let better = best.is_none_or(|(choice, size)| {
            let margin = ALIKE * choice.per_litre.abs();
            k < choice.per_litre - margin || (k <= choice.per_litre + margin && offer.size < size)
        });
        if better {
            best = Some((Choice { place, per_litre: k }, offer.size));
        }
    }
    Ok(best.map(|(choice, _)| choice))
}
