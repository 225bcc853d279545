//! Taking a bonded joint apart.

use core::f64::consts::PI;

use units::{Force, Length, Mass, Range, Temperature, TemperatureDifference, celsius};
use uom::si::energy::kilojoule;
use uom::si::f64::Energy;
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::mass::kilogram;
use uom::si::pressure::megapascal;
use uom::si::temperature_interval::kelvin;

use super::{Heat, Retainer};
use crate::error::{FormulaError, positive, within};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// How hot a joint is made to pull it, while it is hot: it sets again on cooling.
///
/// # Source
/// *Common practice*: 250 °C, and 300 °C for a compound made for heat.
#[must_use]
pub const fn heat_to_undo(heat: Heat) -> Temperature {
    match heat {
        Heat::Standard => celsius(250.0),
        Heat::HighTemperature => celsius(300.0),
    }
}

/// The force that may be needed to push a cured joint out cold: that of its class, and half to twice as much again on top.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a dimension or strength of nothing.
///
/// # Source
/// *Common practice*: try one and a half to twice the upper strength, itself 1.5 times the class, in a press before heating.
pub fn push_out_force<R: Recorder>(r: &mut R, retainer: &Retainer, diameter: Length, length: Length) -> Result<Range<Force>, FormulaError> {
    given!(r, tau_0[megapascal] = retainer.strength, "strength of the class on steel");
    positive("the strength of the class", tau_0, "MPa")?;
    given!(r, d[millimeter] = diameter, "diameter of the joint");
    positive("the diameter of the joint", d, "mm")?;
    given!(r, L[millimeter] = length, "length of the joint");
    positive("the length of the joint", L, "mm")?;
    step!(r, F_0[newton] = 1.5 * tau_0 * PI * d * L, sources::COMMON_PRACTICE);
    step!(r, F_1[newton] = 1.5 * F_0, sources::COMMON_PRACTICE);
    step!(r, F_2[newton] = 2.0 * F_0, sources::COMMON_PRACTICE);
    Ok(Range { low: F_0, likely: F_1, high: F_2 }.map(Force::new::<newton>))
}

/// The heat it takes to warm a joint, as it must come out of a heat gun of which a quarter arrives.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a mass or specific heat of nothing, [`FormulaError::OutOfRange`] for a rise beyond 400 K.
///
/// # Source
/// Energy balance; the quarter is *common practice*.
///
/// # Example
/// By hand: half a kilogram of steel (490 J/(kg·K)) by 230 K takes 56 kJ, and so 225 kJ of the heat gun.
/// ```
/// use formulas::{Silent, bond::heating_energy};
/// use uom::si::f64::{Mass, TemperatureInterval};
/// use uom::si::{energy::kilojoule, mass::kilogram, temperature_interval::kelvin};
/// let heat = heating_energy(&mut Silent, Mass::new::<kilogram>(0.5), 490.0, TemperatureInterval::new::<kelvin>(230.0))?;
/// assert!((heat.get::<kilojoule>() - 225.4).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn heating_energy<R: Recorder>(
    r: &mut R,
    mass: Mass,
    specific_heat_j_per_kg_k: f64,
    rise: TemperatureDifference,
) -> Result<Energy, FormulaError> {
    given!(r, m[kilogram] = mass, "mass to warm");
    positive("the mass", m, "kg")?;
    given!(r, c_p["J/(kg·K)"] = specific_heat_j_per_kg_k, "specific heat");
    positive("the specific heat", c_p, "J/(kg·K)")?;
    given!(r, Delta_T[kelvin] = rise, "rise in temperature");
    within("the rise in temperature", Delta_T, "K", (0.0, 400.0), sources::COMMON_PRACTICE)?;
    step!(r, Q[kilojoule] = m * c_p * Delta_T / 0.25 / 1000.0, sources::COMMON_PRACTICE);
    r.caution(Caution::Danger {
        words: "Heat outdoors or under extraction: decomposing adhesive irritates. Never near solvent, activator, a sealed volume, or with \
                chlorinated strippers.",
    });
    Ok(Energy::new::<kilojoule>(Q))
}
