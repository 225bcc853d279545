//! The gap between two measured parts, and how well it is known.

use units::{Length, TemperatureDifference};
use uom::si::length::{micrometer, millimeter};
use uom::si::temperature_interval::kelvin;

use super::Phi;
use crate::error::{FormulaError, not_negative, positive};
use crate::math::{pow, sqrt};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// What a part was measured with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Instrument {
    /// An outside micrometer, 0 to 25 mm.
    Micrometer,
    /// A three-point bore micrometer, set with a ring.
    BoreMicrometer,
    /// A telescopic gauge, measured over with a micrometer.
    TelescopicGauge,
    /// The outside jaws of a calliper.
    Calliper,
    /// The inside jaws of a calliper.
    CalliperJaws,
}

impl Instrument {
    /// Permissible error and repeatability, µm: of the micrometer by ISO 3611 (*from memory*), of the rest *common practice*. Those of the
    /// telescopic gauge and the callipers are set so that together they give the trade's 10, 15 and 25 µm.
    const fn errors_um(self) -> (f64, f64) {
        match self {
            Self::Micrometer => (4.0, 1.5),
            Self::BoreMicrometer => (5.0, 3.0),
            Self::TelescopicGauge => (4.0, 9.7),
            Self::Calliper => (25.0, 4.0),
            Self::CalliperJaws => (30.0, 18.0),
        }
    }

    /// Whether it is fine enough to choose between a press, a slip fit and a bond.
    #[must_use]
    pub const fn decides(self) -> bool {
        !matches!(self, Self::Calliper | Self::CalliperJaws)
    }

    /// Its name in the middle of a sentence.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Micrometer => "a micrometer",
            Self::BoreMicrometer => "a three-point bore micrometer",
            Self::TelescopicGauge => "a telescopic gauge and micrometer",
            Self::Calliper => "a calliper",
            Self::CalliperJaws => "the inside jaws of a calliper",
        }
    }
}

/// A measured diameter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// The mean of the readings.
    pub size: Length,
    /// What it was measured with.
    pub by: Instrument,
    /// Largest less smallest reading, at three places along and two angles round: taper and ovality.
    pub spread: Length,
    /// Thermal expansion of the part, per kelvin.
    pub expansion_per_k: f64,
    /// How far the part may be from the instrument's temperature.
    pub warmth: TemperatureDifference,
}

/// The gap between two measured parts, with what is not known of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeasuredGap {
    /// Bore less shaft; negative is an interference.
    pub gap: Length,
    /// Standard uncertainty of the gap.
    pub uncertainty: Length,
    /// Whether both instruments are fine enough to choose a fit by.
    pub decides: bool,
}

/// What a measured pair will be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Chances {
    /// Chance that the parts interfere.
    pub press: f64,
    /// Chance that they slip together with no more than the widest gap allowed.
    pub slip: f64,
    /// Chance that the gap is wider.
    pub loose: f64,
}

/// Standard uncertainty of a measured diameter.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `E` | permissible error of the instrument | µm |
/// | `s` | its repeatability | µm |
/// | `f` | spread of the readings, by taper and ovality | µm |
/// | `alpha`, `Delta_T` | expansion, difference in temperature | 1/K, K |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a size of nothing, [`FormulaError::OutOfRange`] for a negative spread or expansion.
///
/// # Source
/// JCGM 100 (the guide to the expression of uncertainty): an error known only by its bounds counts as its half-width over √3.
///
/// # Example
/// By hand: a micrometer (4 µm, repeating to 1.5 µm) on a round part at its own temperature is good to √(4²/3 + 1.5²) = 2.75 µm.
/// ```
/// use formulas::{Silent, fit::{Instrument, Measured, uncertainty}};
/// use uom::si::{f64::{Length, TemperatureInterval}, length::{micrometer, millimeter}, temperature_interval::kelvin};
/// let shaft = Measured {
///     size: Length::new::<millimeter>(25.0),
///     by: Instrument::Micrometer,
///     spread: Length::new::<micrometer>(0.0),
///     expansion_per_k: 11e-6,
///     warmth: TemperatureInterval::new::<kelvin>(0.0),
/// };
/// assert!((uncertainty(&mut Silent, &shaft)?.get::<micrometer>() - 2.75).abs() < 0.01);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn uncertainty<R: Recorder>(r: &mut R, part: &Measured) -> Result<Length, FormulaError> {
    given!(r, D[millimeter] = part.size, "measured diameter");
    positive("the measured diameter", D, "mm")?;
    let (permissible, repeats) = part.by.errors_um();
    given!(r, E["µm"] = permissible, "permissible error of the instrument");
    given!(r, s["µm"] = repeats, "repeatability of the instrument");
    given!(r, f[micrometer] = part.spread, "spread of the readings");
    not_negative("the spread of the readings", f, "µm", sources::UNCERTAINTY)?;
    given!(r, alpha["1/K"] = part.expansion_per_k, "thermal expansion");
    not_negative("the thermal expansion", alpha, "1/K", sources::UNCERTAINTY)?;
    given!(r, Delta_T[kelvin] = part.warmth, "difference in temperature from the instrument");
    step!(
        r,
        u[micrometer] = sqrt(pow(E, 2.0) / 3.0 + pow(s, 2.0) + pow(f, 2.0) / 12.0 + pow(1000.0 * alpha * D * Delta_T, 2.0) / 3.0),
        sources::UNCERTAINTY
    );
    Ok(Length::new::<micrometer>(u))
}

/// The gap between a measured bore and a measured shaft.
///
/// # Errors
/// As [`uncertainty`].
///
/// # Source
/// JCGM 100.
pub fn measured_gap<R: Recorder>(r: &mut R, bore: &Measured, shaft: &Measured) -> Result<MeasuredGap, FormulaError> {
    let (u_D, u_d) = (uncertainty(r, bore)?, uncertainty(r, shaft)?);
    given!(r, u_D[micrometer] = u_D, "uncertainty of the bore");
    given!(r, u_d[micrometer] = u_d, "uncertainty of the shaft");
    given!(r, D[micrometer] = bore.size, "measured bore");
    given!(r, d[micrometer] = shaft.size, "measured shaft");
    step!(r, c[micrometer] = D - d, sources::DEFINITION);
    step!(r, u_c[micrometer] = sqrt(pow(u_D, 2.0) + pow(u_d, 2.0)), sources::UNCERTAINTY);
    let decides = bore.by.decides() && shaft.by.decides();
    if !decides {
        r.caution(Caution::Provided {
            that: "you measure again with a micrometer and a bore gauge: a calliper cannot choose between press, slip and bond",
        });
    }
    Ok(MeasuredGap { gap: Length::new::<micrometer>(c), uncertainty: Length::new::<micrometer>(u_c), decides })
}

/// The chances that a measured pair presses, slips, or is too loose for a widest gap.
///
/// # Errors
/// [`FormulaError::NotPositive`] for an uncertainty of nothing.
///
/// # Source
/// The normal distribution with the uncertainty of JCGM 100.
///
/// # Example
/// A gap of 22 µm known to 6 µm is wider than 30 µm with a chance of 0.0912 (computed independently).
/// ```
/// use formulas::{Silent, fit::{MeasuredGap, chances}};
/// use uom::si::{f64::Length, length::micrometer};
/// let um = Length::new::<micrometer>;
/// let gap = MeasuredGap { gap: um(22.0), uncertainty: um(6.0), decides: true };
/// assert!((chances(&mut Silent, &gap, um(30.0))?.loose - 0.0912).abs() < 0.001);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn chances<R: Recorder>(r: &mut R, gap: &MeasuredGap, widest: Length) -> Result<Chances, FormulaError> {
    given!(r, c[micrometer] = gap.gap, "measured gap");
    given!(r, u_c[micrometer] = gap.uncertainty, "uncertainty of the gap");
    positive("the uncertainty of the gap", u_c, "µm")?;
    given!(r, c_max[micrometer] = widest, "widest gap allowed");
    not_negative("the widest gap allowed", c_max, "µm", sources::DEFINITION)?;
    step!(r, P_press [] = Phi(-c / u_c), sources::UNCERTAINTY);
    step!(r, P_loose [] = Phi((c - c_max) / u_c), sources::UNCERTAINTY);
    step!(r, P_slip [] = 1.0 - P_press - P_loose, sources::DEFINITION);
    Ok(Chances { press: P_press, slip: P_slip, loose: P_loose })
}
