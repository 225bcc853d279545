//! How long an anaerobic compound cures.

use units::{Length, Range, Temperature, Time};
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{hour, minute};

use super::BondMetal;
use crate::error::{FormulaError, within};
use crate::math::{max, pow};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// How a joint comes to its strength.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cure {
    /// Until it may be handled.
    pub fixture: Range<Time>,
    /// Until it has half its strength.
    pub half: Range<Time>,
    /// Until it may be loaded.
    pub full: Time,
    /// What is left of its strength: an activator costs some.
    pub strength: Range<f64>,
}

/// How long a joint cures.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `theta` | temperature while curing | °C |
/// | `c` | gap on the diameter | mm |
/// | `x` | how many times as long as at 22 °C on steel at 0.05 mm | – |
///
/// # Range
/// 5 to 40 °C: below, warm the parts; above, an hour at 90 to 120 °C also cures. Gaps up to 0.5 mm.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside that.
///
/// # Source
/// Typical of the class, *from memory*: handling after 10 to 30 min, half strength after 2 to 4 h, full after 24 h; 2.5 times as long for
/// each 10 K less, twice for each 0.05 mm more, four times on a passive metal. With an activator, 1 to 10 min to handle, for 10 to 30 % of
/// the strength.
///
/// # Example
/// By hand: at 12 °C everything takes 2.5 times as long as at 22 °C, so full strength waits 60 h.
/// ```
/// use formulas::{Silent, bond::{BondMetal, cure_time}};
/// use uom::si::f64::{Length, ThermodynamicTemperature};
/// use uom::si::{length::millimeter, thermodynamic_temperature::degree_celsius, time::hour};
/// let cool = ThermodynamicTemperature::new::<degree_celsius>(12.0);
/// let cure = cure_time(&mut Silent, cool, Length::new::<millimeter>(0.05), [BondMetal::Steel; 2], false)?;
/// assert!((cure.full.get::<hour>() - 60.0).abs() < 0.01);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn cure_time<R: Recorder>(
    r: &mut R,
    at: Temperature,
    gap: Length,
    metals: [BondMetal; 2],
    activator: bool,
) -> Result<Cure, FormulaError> {
    given!(r, theta[degree_celsius] = at, "temperature while curing");
    within("the temperature while curing", theta, "°C", (5.0, 40.0), sources::TYPICAL)?;
    given!(r, c[millimeter] = gap, "gap on the diameter");
    within("the gap on the diameter", c, "mm", (0.0, 0.5), sources::TYPICAL)?;
    let slow = metals.iter().any(|metal| metal.passive()) && !activator;
    given!(r, f_mat [] = if slow { 4.0 } else { 1.0 }, "factor of a passive metal without activator");
    step!(r, x [] = f_mat * pow(2.5, (22.0 - theta) / 10.0) * pow(2.0, max(c - 0.05, 0.0) / 0.05), sources::TYPICAL);
    step!(r, t_half[hour] = 3.0 * x, sources::TYPICAL);
    step!(r, t_full[hour] = 24.0 * x, sources::TYPICAL);
    if slow {
        r.caution(Caution::Provided { that: "you allow for the passive metal: it may not cure at all without an activator" });
    }
    let minutes = |low: f64, likely: f64, high: f64| Range { low, likely, high }.map(Time::new::<minute>);
    let fixture = if activator { minutes(1.0, 5.0, 10.0) } else { minutes(10.0 * x, 20.0 * x, 30.0 * x) };
    let half = Range { low: 2.0 * x, likely: t_half, high: 4.0 * x }.map(Time::new::<hour>);
    let strength = if activator { Range { low: 0.7, likely: 0.8, high: 0.9 } } else { Range::exact(1.0) };
    Ok(Cure { fixture, half, full: Time::new::<hour>(t_full), strength })
}
