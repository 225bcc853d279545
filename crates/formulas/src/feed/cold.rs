//! Cold starts: how cold an oil may be and still come through its feed, and which grade then serves both cold and hot.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{KinematicViscosity, Temperature, TemperatureDifference, Time};
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::temperature_interval::kelvin as interval_kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;

use crate::error::{FormulaError, positive};
use crate::grades::ISO_VG;
use crate::math::{ln, max};
use crate::sources;
use crate::viscosity::{Measured, temperature_at, viscosity_at};
use crate::viscosity_index::viscosity_100_from_index;
use crate::working::{Caution, Recorder, Silent};
use crate::{given, step};

/// How far above its pour point an oil must be to be fed, K (*common practice, no source*).
pub const ABOVE_POUR_K: f64 = 10.0;

/// What stops an oil first when it cools.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ColdLimit {
    /// It is too thick for the feed.
    Thickness,
    /// It nears its pour point.
    PourPoint,
}

/// The coldest start an oil allows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ColdestStart {
    /// The temperature.
    pub at: Temperature,
    /// What sets it.
    pub by: ColdLimit,
}

/// The coldest an oil may be and still come through its feed: where it reaches the thickest the feed passes, and 10 K above its pour
/// point at least.
///
/// # Range
/// As [`temperature_at`]. The ceiling is the caller's: a wick passes about 500 mm²/s, a one-shot pump 1500, a brush 5000
/// (*common practice, no source*; low confidence).
///
/// # Errors
/// As [`temperature_at`].
///
/// # Source
/// ASTM D341; the 10 K are *common practice, no source*.
///
/// # Example
/// The oil of 73.30 and 8.86 mm²/s is 241 mm²/s at 20 °C (computed independently): a feed that passes so much starts at 20 °C.
/// ```
/// use formulas::{Silent, feed::coldest_start, viscosity::Measured};
/// use uom::si::f64::{KinematicViscosity, ThermodynamicTemperature};
/// use uom::si::{kinematic_viscosity::square_millimeter_per_second as mm2_per_s, thermodynamic_temperature::degree_celsius};
/// let nu = KinematicViscosity::new::<mm2_per_s>;
/// let start = coldest_start(&mut Silent, Measured::at_40(nu(73.30)), Measured::at_100(nu(8.86)), nu(241.0), None)?;
/// assert!((start.at.get::<degree_celsius>() - 20.0).abs() < 0.2);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn coldest_start<R: Recorder>(
    r: &mut R,
    cool: Measured,
    hot: Measured,
    ceiling: KinematicViscosity,
    pour: Option<Temperature>,
) -> Result<ColdestStart, FormulaError> {
    let thick = temperature_at(r, cool, hot, ceiling)?;
    let Some(pour) = pour else { return Ok(ColdestStart { at: thick, by: ColdLimit::Thickness }) };
    given!(r, t_nu[degree_celsius] = thick, "where the oil is as thick as the feed passes");
    given!(r, t_p[degree_celsius] = pour, "pour point");
    step!(r, t[degree_celsius] = max(t_nu, t_p + 10.0), sources::COMMON_PRACTICE);
    let by = if t > t_nu { ColdLimit::PourPoint } else { ColdLimit::Thickness };
    Ok(ColdestStart { at: Temperature::new::<degree_celsius>(t), by })
}

/// A place's demand on its oil, hot and cold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HotAndCold {
    /// The least viscosity it needs at running temperature.
    pub needed: KinematicViscosity,
    /// The running temperature.
    pub running: Temperature,
    /// The thickest its feed passes.
    pub ceiling: KinematicViscosity,
    /// The coldest start.
    pub coldest: Temperature,
}

/// The grade a place takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum GradeChoice {
    /// This midpoint at 40 °C serves hot and cold.
    Serves(f64),
    /// No grade does both: this one carries the load, and the feed passes it only from that temperature on.
    TooThickCold {
        /// Midpoint of the grade, mm²/s at 40 °C.
        grade: f64,
        /// From where the feed passes it.
        passes_from: Temperature,
    },
    /// No grade is thick enough at the running temperature.
    None,
}

/// The thinnest ISO grade that is thick enough hot, judged cold.
///
/// # Range
/// Grades from VG 10 on; a thinner one has no index to be worked through.
///
/// # Errors
/// As [`viscosity_at`].
///
/// # Source
/// ISO 3448, ASTM D2270 and D341.
pub fn grade_for<R: Recorder>(r: &mut R, place: &HotAndCold, index: f64) -> Result<GradeChoice, FormulaError> {
    let nu = KinematicViscosity::new::<mm2_per_s>;
    for grade in ISO_VG.into_iter().filter(|grade| *grade >= 10.0) {
        let points = |nu100| (Measured::at_40(nu(grade)), Measured::at_100(nu100));
        // An index too low for a thin grade takes it below the standard; a thicker one is then tried.
        let Ok(nu100) = viscosity_100_from_index(&mut Silent, nu(grade), index) else { continue };
        let (cool, hot) = points(nu100);
        if viscosity_at(&mut Silent, cool, hot, place.running)? < place.needed {
            continue;
        }
        // Only the grade chosen is worth writing down.
        let nu100 = viscosity_100_from_index(r, nu(grade), index)?;
        let (cool, hot) = points(nu100);
        viscosity_at(r, cool, hot, place.running)?;
        let passes_from = coldest_start(r, cool, hot, place.ceiling, None)?.at;
        return Ok(if passes_from <= place.coldest {
            GradeChoice::Serves(grade)
        } else {
            r.caution(Caution::Provided { that: "the machine is warmed before it is run, or is given a thinner oil in the cold season" });
            GradeChoice::TooThickCold { grade, passes_from }
        });
    }
    Ok(GradeChoice::None)
}

/// Time a machine takes to warm to a temperature: t = τ·ln((T_r − T_c)/(T_r − T_w)).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `Delta_r` | rise of the running machine above the cold room | K |
/// | `Delta_w` | rise that is wanted | K |
/// | `tau` | time constant of the machine | min |
///
/// # Range
/// A machine that warms as one body. A geared head of a bench lathe has a time constant of half an hour to an hour (*common practice*).
///
/// # Errors
/// [`FormulaError::NotPositive`] where the running machine never gets so warm.
///
/// # Source
/// Newton's law of cooling; after one time constant 63.2 % of the rise is reached.
pub fn warm_up_time<R: Recorder>(
    r: &mut R,
    running_rise: TemperatureDifference,
    wanted_rise: TemperatureDifference,
    constant: Time,
) -> Result<Time, FormulaError> {
    given!(r, Delta_r[interval_kelvin] = running_rise, "rise of the running machine above the cold room");
    given!(r, Delta_w[interval_kelvin] = wanted_rise, "rise that is wanted");
    given!(r, tau[minute] = constant, "time constant of the machine");
    positive("what the running machine is warmer than wanted", Delta_r - Delta_w, "K")?;
    step!(r, t[minute] = tau * ln(Delta_r / (Delta_r - max(Delta_w, 0.0))), sources::DEFINITION);
    Ok(Time::new::<minute>(t))
}
