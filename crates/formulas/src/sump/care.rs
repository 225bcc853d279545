//! The care of a water mix: its strength by refractometer, the mix to top up with, and what water, pH and germs say.

use units::{MassDensity, Ratio, Volume, VolumeRate};
use uom::si::mass_density::gram_per_cubic_meter as mg_per_l;
use uom::si::ratio::{percent, ratio};
use uom::si::volume::liter;
use uom::si::volume_rate::liter_per_second;

use crate::error::{FormulaError, positive, within};
use crate::math::max;
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Concentration of a water mix from a refractometer: its reading times the factor on the label.
///
/// # Range
/// Factors from 0.5 to 5; most lie between 1 and 2. Without one 1.0 is taken, and the answer carries a caution. Way oil in the mix makes
/// the edge in the glass woolly and the reading high.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a reading outside 0 to 40, or a factor outside 0.5 to 5.
///
/// # Source
/// *Common practice*; the factor is the label's.
///
/// # Example
/// A reading of 4 with a factor of 1.5 is 6 % (by hand).
/// ```
/// use formulas::{Silent, sump::concentration_from_reading};
/// use uom::si::ratio::percent;
/// assert!((concentration_from_reading(&mut Silent, 4.0, Some(1.5))?.get::<percent>() - 6.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn concentration_from_reading<R: Recorder>(r: &mut R, brix: f64, factor: Option<f64>) -> Result<Ratio, FormulaError> {
    given!(r, b["°Bx"] = brix, "reading of the refractometer");
    given!(r, f [] = factor.unwrap_or(1.0), "factor on the label");
    within("the reading", b, "°Bx", (0.0, 40.0), sources::COMMON_PRACTICE)?;
    within("the refractometer factor", f, "", (0.5, 5.0), sources::COMMON_PRACTICE)?;
    step!(r, c[percent] = f * b, sources::COMMON_PRACTICE);
    if factor.is_none() {
        r.caution(Caution::Rough {
            what: "the concentration",
            why: "the label's factor is not known and 1.0 is taken; it may be twice as much",
        });
    }
    Ok(Ratio::new::<percent>(c))
}

/// The mix a sump is topped up with for good: c_top = c_t·(carried off)/(carried off + evaporated), and 1 % at least.
///
/// Water that evaporates leaves its concentrate behind; only what chips and work carry off takes concentrate with it.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `c_t` | concentration wanted | % |
/// | `q_c` | mix carried off on chips and work | L/day |
/// | `q_e` | water evaporated | L/day |
///
/// # Errors
/// [`FormulaError::NotPositive`] where nothing is lost; [`FormulaError::OutOfRange`] for a negative loss.
///
/// # Source
/// Mass balance; never topping up with bare water is *common practice, no source*.
///
/// # Example
/// Half carried off, half evaporated: a mix of 6 % is topped up with 3 % (by hand).
/// ```
/// use formulas::{Silent, sump::steady_top_up};
/// use uom::si::{f64::{Ratio, VolumeRate}, ratio::percent, volume_rate::liter_per_second};
/// let loss = VolumeRate::new::<liter_per_second>(1e-5);
/// let top = steady_top_up(&mut Silent, Ratio::new::<percent>(6.0), loss, loss)?;
/// assert!((top.get::<percent>() - 3.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn steady_top_up<R: Recorder>(
    r: &mut R,
    wanted: Ratio,
    carried_off: VolumeRate,
    evaporated: VolumeRate,
) -> Result<Ratio, FormulaError> {
    given!(r, c_t[percent] = wanted, "concentration wanted");
    given!(r, q_c["L/day"] = carried_off.get::<liter_per_second>() * 86_400.0, "mix carried off on chips and work");
    given!(r, q_e["L/day"] = evaporated.get::<liter_per_second>() * 86_400.0, "water evaporated");
    within("what is carried off", q_c, "L/day", (0.0, f64::INFINITY), sources::DEFINITION)?;
    within("what evaporates", q_e, "L/day", (0.0, f64::INFINITY), sources::DEFINITION)?;
    positive("the loss", q_c + q_e, "L/day")?;
    step!(r, c_top[percent] = max(c_t * q_c / (q_c + q_e), 1.0), sources::COMMON_PRACTICE);
    Ok(Ratio::new::<percent>(c_top))
}

/// What a water's hardness does to a mix.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hardness {
    /// Below 50 mg/L: it foams.
    Foams,
    /// 50 to 80: serves, with a little foam.
    Soft,
    /// 80 to 200: best.
    Good,
    /// 200 to 300: serves; salts build up as water evaporates.
    Hard,
    /// Above 300: scum, split emulsion, rust.
    Scums,
}

/// Judges a water by its hardness as calcium carbonate.
///
/// # Source
/// *Common practice, from memory*; the bands are disputed. One German degree is 17.8 mg/L, one French 10.
///
/// # Example
/// ```
/// use formulas::sump::{Hardness, hardness};
/// // A gram in a cubic metre is a milligram in a litre.
/// use uom::si::{f64::MassDensity, mass_density::gram_per_cubic_meter as mg_per_l};
/// assert_eq!(hardness(MassDensity::new::<mg_per_l>(120.0)), Hardness::Good);
/// ```
#[must_use]
pub fn hardness(calcium_carbonate: MassDensity) -> Hardness {
    match calcium_carbonate.get::<mg_per_l>() {
        h if h < 50.0 => Hardness::Foams,
        h if h < 80.0 => Hardness::Soft,
        h if h <= 200.0 => Hardness::Good,
        h if h <= 300.0 => Hardness::Hard,
        _ => Hardness::Scums,
    }
}

/// Hardness a sump reaches after so much water has evaporated and been replaced by the same water: h·(1 + E/V).
///
/// # Errors
/// [`FormulaError::NotPositive`] for a sump of nothing.
///
/// # Source
/// Mass balance: evaporating water leaves its salts.
pub fn hardness_after<R: Recorder>(r: &mut R, water: MassDensity, evaporated: Volume, sump: Volume) -> Result<MassDensity, FormulaError> {
    given!(r, h_0["mg/L"] = water.get::<mg_per_l>(), "hardness of the water");
    given!(r, E[liter] = evaporated, "water evaporated and replaced");
    given!(r, V[liter] = sump, "volume of the sump");
    positive("the volume of the sump", V, "L")?;
    step!(r, h["mg/L"] = h_0 * (1.0 + E / V), sources::DEFINITION);
    Ok(MassDensity::new::<mg_per_l>(h))
}

/// What is to be done with a mix.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum MixCare {
    /// Nothing.
    Good,
    /// Look into it: skim, aerate, correct the strength.
    Act,
    /// Dump it, clean the sump, start again.
    Dump,
}

/// Judges a mix by its pH: good from 8.5, to be acted on below, dumped below 8.
///
/// # Source
/// *Common practice, from memory*; fresh mixes have 8.5 to 9.5, and above that skin and brass suffer.
#[must_use]
pub fn ph_care(ph: f64) -> MixCare {
    match ph {
        ph if ph < 8.0 => MixCare::Dump,
        ph if !(8.5..=9.5).contains(&ph) => MixCare::Act,
        _ => MixCare::Good,
    }
}

/// Judges a mix by its germs, colonies in a millilitre: below 10³ good, to 10⁶ to be acted on, above to be dumped.
///
/// # Source
/// Guidance of the British Health and Safety Executive, *from memory*.
#[must_use]
pub fn germ_care(colonies_per_ml: f64) -> MixCare {
    match colonies_per_ml {
        n if n < 1e3 => MixCare::Good,
        n if n <= 1e6 => MixCare::Act,
        _ => MixCare::Dump,
    }
}

/// Water to add to concentrate for a mix, or concentrate for a volume of mix: V_c = c·V. Pour the oil into the water, never the reverse.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a concentration outside 0 to 100 %.
///
/// # Source
/// Definition; the order of pouring is *common practice*.
pub fn concentrate_for<R: Recorder>(r: &mut R, mix: Volume, concentration: Ratio) -> Result<Volume, FormulaError> {
    given!(r, V[liter] = mix, "volume of the mix");
    given!(r, c [] = concentration.get::<ratio>(), "concentration");
    within("the concentration", c, "", (0.0, 1.0), sources::DEFINITION)?;
    step!(r, V_c[liter] = c * V, sources::DEFINITION);
    Ok(Volume::new::<liter>(V_c))
}
