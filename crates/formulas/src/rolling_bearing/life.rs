//! How a lubricant lengthens or shortens a rolling bearing's life: the life modification of ISO 281, as a judgement of the lubricant.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{Force, Length, Range};
use uom::si::force::newton;
use uom::si::length::millimeter;

use super::{Regime, regime};
use crate::error::{FormulaError, positive, within};
use crate::math::{min, pow};
use crate::sources;
use crate::working::{Caution, Recorder, Silent};
use crate::{given, step};

/// What rolls, as the life modification tells bearings apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Rolling {
    /// Radial ball bearings.
    Balls,
    /// Radial roller bearings.
    Rollers,
}

/// How clean the lubricant is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cleanliness {
    /// Laboratory conditions.
    Extreme,
    /// Greased and sealed for life, or oil through a fine filter.
    High,
    /// Greased and shielded for life, or oil through a good filter.
    Normal,
    /// A little dirt in the lubricant.
    Slight,
    /// Usual without integral seals: wear from the machine, some dirt from outside.
    Typical,
    /// Dirty surroundings, poor seals.
    Severe,
    /// Dirt beyond what a life can be worked for.
    VerySevere,
}

impl Cleanliness {
    /// The contamination factor e_C at a mean diameter, as the range the standard prints.
    ///
    /// # Source
    /// ISO 281:2007, table 13; *from memory*. Bearings of 100 mm and more suffer less from the same dirt.
    #[must_use]
    pub fn factor(self, mean_diameter: Length) -> Range<f64> {
        let small = mean_diameter.get::<millimeter>() < 100.0;
        let (low, high) = match self {
            Self::Extreme => (1.0, 1.0),
            Self::High if small => (0.6, 0.8),
            Self::High => (0.8, 0.9),
            Self::Normal if small => (0.5, 0.6),
            Self::Normal => (0.6, 0.8),
            Self::Slight if small => (0.3, 0.5),
            Self::Slight => (0.4, 0.6),
            Self::Typical if small => (0.1, 0.3),
            Self::Typical => (0.2, 0.4),
            Self::Severe => (0.0, 0.1),
            Self::VerySevere => (0.0, 0.0),
        };
        Range { low, likely: f64::midpoint(low, high), high }
    }
}

/// A bearing's load against what its races bear for ever.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fatigue {
    /// What rolls.
    pub rolling: Rolling,
    /// Contamination factor e_C, 0 to 1 ([`Cleanliness::factor`]).
    pub contamination: f64,
    /// Fatigue load limit C_u, from the bearing's data sheet.
    pub limit: Force,
    /// Equivalent load P.
    pub load: Force,
}

/// Life modification factor of a rolling bearing: how many times its basic life a lubricant lets it live.
///
/// Balls: a = 0.1·\[1 − (2.5671 − x/κ^y)^0.83·(e_C·C_u/P)^(1/3)\]^−9.3, with x, y = 2.2649, 0.054381 below κ = 0.4, 1.9987, 0.19087 to 1,
/// 1.9987, 0.071739 above. Rollers: a = 0.1·\[1 − (1.5859 − x/κ^y)·(e_C·C_u/P)^0.4\]^−9.185, with 1.3993, 1.2348, 1.2348 and the same y.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `kappa` | viscosity ratio | – |
/// | `e_C` | contamination factor | – |
/// | `C_u` | fatigue load limit | N |
/// | `P` | equivalent load | N |
///
/// # Range
/// κ from 0.1 on; above 4 it counts as 4. The factor is 50 at most.
///
/// # Errors
/// [`FormulaError::OutOfRange`] below κ = 0.1 or for a contamination factor outside 0 to 1; [`FormulaError::NotPositive`] for a load or a
/// fatigue load limit of nothing.
///
/// # Source
/// ISO 281:2007; the constants *from memory*: the branches meet at κ = 0.4 and 1, as the standard's curves do.
///
/// # Example
/// In hopelessly dirty oil (e_C = 0) the standard's curves all begin at 0.1.
/// ```
/// use formulas::{Silent, rolling_bearing::{Fatigue, Rolling, life_modification}};
/// use uom::si::{f64::Force, force::newton};
/// let newtons = Force::new::<newton>;
/// let dirty = Fatigue { rolling: Rolling::Balls, contamination: 0.0, limit: newtons(300.0), load: newtons(1000.0) };
/// assert!((life_modification(&mut Silent, 2.0, &dirty)? - 0.1).abs() < 1e-12);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn life_modification<R: Recorder>(r: &mut R, viscosity_ratio: f64, fatigue: &Fatigue) -> Result<f64, FormulaError> {
    given!(r, kappa [] = viscosity_ratio, "viscosity ratio");
    given!(r, e_C [] = fatigue.contamination, "contamination factor");
    given!(r, C_u[newton] = fatigue.limit, "fatigue load limit");
    given!(r, P[newton] = fatigue.load, "equivalent load");
    within("the viscosity ratio", kappa, "", (0.1, f64::INFINITY), sources::ISO_281)?;
    within("the contamination factor", e_C, "", (0.0, 1.0), sources::ISO_281)?;
    positive("the fatigue load limit", C_u, "N")?;
    positive("the load", P, "N")?;
    step!(r, kappa [] = min(kappa, 4.0), sources::ISO_281);
    step!(r, q [] = e_C * C_u / P, sources::ISO_281);
    let bracket = match fatigue.rolling {
        Rolling::Balls => {
            step!(
                r,
                g [] = if kappa < 0.4 { 2.5671 - 2.2649 / pow(kappa, 0.054381) } else if kappa < 1.0 { 2.5671 - 1.9987 / pow(kappa, 0.19087) } else { 2.5671 - 1.9987 / pow(kappa, 0.071739) },
                sources::ISO_281
            );
            step!(r, B [] = 1.0 - pow(g, 0.83) * pow(q, 1.0 / 3.0), sources::ISO_281);
            B
        }
        Rolling::Rollers => {
            step!(
                r,
                g [] = if kappa < 0.4 { 1.5859 - 1.3993 / pow(kappa, 0.054381) } else if kappa < 1.0 { 1.5859 - 1.2348 / pow(kappa, 0.19087) } else { 1.5859 - 1.2348 / pow(kappa, 0.071739) },
                sources::ISO_281
            );
            step!(r, B [] = 1.0 - g * pow(q, 0.4), sources::ISO_281);
            B
        }
    };
    given!(r, B [] = bracket, "what the oil and the dirt leave of the load's harm");
    let exponent = match fatigue.rolling {
        Rolling::Balls => -9.3,
        Rolling::Rollers => -9.185,
    };
    given!(r, m [] = exponent, "exponent of the kind of bearing");
    // Where the bracket has fallen to nothing, the load is below what the races bear for ever.
    step!(r, a [] = if B <= 0.0 { 50.0 } else { min(0.1 * pow(B, m), 50.0) }, sources::ISO_281);
    Ok(a)
}

/// A lubricant judged by what it does to a bearing's life.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LifeJudgement {
    /// Life modification with this lubricant: the dirtiest end of its cleanliness, the middle, the cleanest.
    pub factor: Range<f64>,
    /// With a full film (κ = 4) and the same dirt: what thicker oil could still gain.
    pub full_film: f64,
    /// With this film and normal cleanliness: what keeping the dirt out could gain.
    pub clean: f64,
    /// The regime of the film.
    pub regime: Regime,
}

/// Judges a lubricant by a bearing's life, and says whether thickness or cleanliness has more to give.
///
/// # Errors
/// As [`life_modification`].
///
/// # Source
/// ISO 281:2007; *from memory*.
pub fn judge_by_life<R: Recorder>(
    r: &mut R,
    viscosity_ratio: f64,
    cleanliness: Cleanliness,
    mean_diameter: Length,
    fatigue: &Fatigue,
) -> Result<LifeJudgement, FormulaError> {
    let dirt = cleanliness.factor(mean_diameter);
    let with = |contamination| Fatigue { contamination, ..*fatigue };
    let likely = life_modification(r, viscosity_ratio, &with(dirt.likely))?;
    let low = life_modification(&mut Silent, viscosity_ratio, &with(dirt.low))?;
    let high = life_modification(&mut Silent, viscosity_ratio, &with(dirt.high))?;
    let full_film = life_modification(&mut Silent, viscosity_ratio.max(4.0), &with(dirt.likely))?;
    let cleaner = Cleanliness::Normal.factor(mean_diameter).likely.max(dirt.likely);
    let clean = life_modification(&mut Silent, viscosity_ratio, &with(cleaner))?;
    r.caution(Caution::Rough {
        what: "the life",
        why: "the contamination factor is a judgement, and the life goes with its third power and more",
    });
    Ok(LifeJudgement { factor: Range { low, likely, high }, full_film, clean, regime: regime(viscosity_ratio) })
}
