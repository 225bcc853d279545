//! What one breathes, against the limits.

use formulas::vapour::{ATMOSPHERE_KPA, mass_of_ppm};
use formulas::{FormulaError, Silent};
use reference::substance::{LimitKind, Regime};
use reference::{Fluid, Reference, SourceKey, Substance};
use units::{Frequency, Pressure, Quantity, Volume};

use super::{Emission, Room, Use, Way, emissions, history, molar_mass, near};

/// What one breathes of a fluid in a use.
#[derive(Debug, Clone)]
pub struct Exposure<'r> {
    /// Each substance.
    pub held: Vec<Held<'r>>,
    /// How much of the limits is used up, all substances together: the worse of 8 hours and 15 minutes; at one it is at its limit.
    pub of_limit: f64,
    /// Share of the lower flammable limit at the work, all vapours together.
    pub of_flammable: f64,
    /// The air change that would make it right here; none where it is right, or where none would.
    pub changes_needed: Option<Frequency>,
    /// What could be used in this room as it is; none where it is right, or where no amount would be.
    pub amount_allowed: Option<Volume>,
}

/// What one breathes of a substance, mg/m³.
#[derive(Debug, Clone)]
pub struct Held<'r> {
    /// The substance.
    pub substance: &'r Substance,
    /// Molar mass, g/mol.
    pub molar_mass: f64,
    /// Mean over 8 hours, at the work.
    pub mean: f64,
    /// Worst 15 minutes, at the work.
    pub short: f64,
    /// The most, at the work.
    pub peak: f64,
    /// What the work adds to the room's air where one stands, while it lasts.
    pub near: f64,
    /// The limit of 8 hours.
    pub mean_limit: Option<Limited>,
    /// The limit of 15 minutes.
    pub short_limit: Option<Limited>,
    /// What is never to be passed.
    pub ceiling: Option<Limited>,
    /// How much of its limits it uses up: the worst of the three.
    pub of_limit: f64,
}

/// A limit and whose it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limited {
    /// mg/m³.
    pub mg_per_m3: f64,
    /// Whose rule; none where it is three times the limit of 8 hours, for want of one.
    pub regime: Option<Regime>,
    /// Where it comes from.
    pub source: SourceKey,
}

/// Hours of a working day.
const DAY_H: f64 = 8.0;
const SHORT_H: f64 = 0.25;
/// Without a limit of 15 minutes, this many times the limit of 8 hours: the excursion rule of hygienists, *from memory*.
const EXCURSION: f64 = 3.0;
/// More air than a door stood open gives, 1/h: beyond, the work goes outdoors; *common practice*.
pub const MOST_CHANGES: f64 = 15.0;

/// The strictest limit of a kind, over every regime.
#[must_use]
pub fn limit(substance: &Substance, kind: LimitKind) -> Option<Limited> {
    let molar = molar_mass(substance);
    let limits = substance.limits.iter().filter(|limit| limit.kind == kind);
    let all = limits.map(|limit| Limited { mg_per_m3: limit.at.mg_per_m3(molar), regime: Some(limit.regime), source: limit.source });
    all.min_by(|one, other| one.mg_per_m3.total_cmp(&other.mg_per_m3))
}

/// What one breathes; none where nothing evaporates.
///
/// # Errors
/// [`FormulaError`] for a use of nothing.
pub fn exposure<'r>(fluid: &Fluid, used: &Use, room: &Room, reference: &'r Reference) -> Result<Option<Exposure<'r>>, FormulaError> {
    let emissions = emissions(fluid, used, room, reference)?;
    (!emissions.is_empty()).then(|| judge(&emissions, used, room)).transpose()
}

/// The same for what leaves for the air.
///
/// # Errors
/// [`FormulaError`] for a room of nothing.
pub fn judge<'r>(emissions: &[Emission<'r>], used: &Use, room: &Room) -> Result<Exposure<'r>, FormulaError> {
    let (held, of_flammable) = breathe(emissions, room)?;
    let of_limit = together(&held);
    let wrong = of_limit > 1.0;
    let changes_needed = if wrong { needed(emissions, room)? } else { None };
    // Where no exposure is called safe, no amount is allowed either.
    let none_safe = held.iter().any(|one| one.substance.lowest_feasible.is_some());
    let amount_allowed = (wrong && !none_safe && !matches!(used.way, Way::Tray(_))).then(|| used.amount / of_limit);
    Ok(Exposure { held, of_limit, of_flammable, changes_needed, amount_allowed })
}

fn breathe<'r>(emissions: &[Emission<'r>], room: &Room) -> Result<(Vec<Held<'r>>, f64), FormulaError> {
    let mut burns = 0.0;
    let mut held = Vec::new();
    for emission in emissions {
        let air = history(emission, room);
        let near = near(&mut Silent, emission.rate)?;
        let peak = air.held(emission.lasts) + near;
        let mean = air.mean(0.0, DAY_H) + near * emission.lasts.min(DAY_H) / DAY_H;
        let worst = worst_quarter(emission.lasts, air.changes, near * air.volume * air.changes / emission.rate);
        let short = air.mean(worst, worst + SHORT_H) + near * (emission.lasts - worst).min(SHORT_H) / SHORT_H;
        if let Some(lower) = &emission.substance.lower_flammable {
            // A share of the air by volume weighs what it does at this room's warmth; limits for breathing are counted at 25 °C.
            let pressure = Pressure::from_base(ATMOSPHERE_KPA * 1e3);
            burns += peak / mass_of_ppm(&mut Silent, lower.value * 1e6, emission.molar_mass, room.temperature, pressure)?;
        }
        held.push(of(emission, mean, short, peak, near));
    }
    Ok((held, burns))
}

/// When the worst quarter of an hour begins, h, for a steady source: where the room's air a quarter of an hour later is by as much worse as
/// the air at the work is worse than the room's, told by what the room would hold at last.
fn worst_quarter(lasts: f64, changes: f64, near: f64) -> f64 {
    let gone = (-changes * lasts).exp();
    let later = gone + (1.0 - gone) * (-changes * SHORT_H).exp();
    let begins = lasts + (later.ln() - near.ln_1p()) / changes;
    // Also where nothing is let in, and the sum above has no value.
    begins.max((lasts - SHORT_H).max(0.0)).min(lasts)
}

fn of<'r>(emission: &Emission<'r>, mean: f64, short: f64, peak: f64, near: f64) -> Held<'r> {
    let substance = emission.substance;
    let mean_limit = limit(substance, LimitKind::Mean8h);
    let excursion = || mean_limit.map(|limit| Limited { mg_per_m3: EXCURSION * limit.mg_per_m3, regime: None, ..limit });
    let short_limit = limit(substance, LimitKind::Mean15min).or_else(excursion);
    let ceiling = limit(substance, LimitKind::Ceiling);
    let used = |held: f64, limit: Option<Limited>| limit.map_or(0.0, |limit| held / limit.mg_per_m3);
    // Where no exposure is called safe, any that can be counted is over.
    let lowest = if substance.lowest_feasible.is_some() { 2.0 } else { 0.0 };
    let of_limit = used(mean, mean_limit).max(used(short, short_limit)).max(used(peak, ceiling)).max(lowest);
    Held { substance, molar_mass: emission.molar_mass, mean, short, peak, near, mean_limit, short_limit, ceiling, of_limit }
}

/// Substances add up, as those that harm the same organ do: solvents all numb. The worst alone counts where it is worse.
fn together(held: &[Held<'_>]) -> f64 {
    let sum = |value: fn(&Held<'_>) -> Option<f64>| held.iter().filter_map(value).sum::<f64>();
    let mean = sum(|one| Some(one.mean / one.mean_limit?.mg_per_m3));
    let short = sum(|one| Some(one.short / one.short_limit?.mg_per_m3));
    held.iter().map(|one| one.of_limit).fold(mean.max(short), f64::max)
}

/// The least air change that makes it right, by halving; none where even an open door is not enough.
fn needed(emissions: &[Emission<'_>], room: &Room) -> Result<Option<Frequency>, FormulaError> {
    let over = |changes: f64| -> Result<bool, FormulaError> {
        let (held, _) = breathe(emissions, &Room { changes: Frequency::from_base(changes / 3600.0), ..*room })?;
        Ok(together(&held) > 1.0)
    };
    let (mut low, mut high) = (room.changes.base() * 3600.0, MOST_CHANGES);
    if over(high)? {
        return Ok(None);
    }
    for _ in 0..20 {
        let middle = 0.5 * (low + high);
        if over(middle)? { low = middle } else { high = middle }
    }
    Ok(Some(Frequency::from_base(high / 3600.0)))
}
