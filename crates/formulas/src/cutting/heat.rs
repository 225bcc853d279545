//! Heat of a cut: how it is carried off, and what a given flow leaves.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{Power, TemperatureDifference, VolumeRate};
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin;
use uom::si::volume_rate::liter_per_minute;

use super::Coolant;
use crate::error::{FormulaError, positive};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Below this heat a brush is enough, W (*common practice, no source*).
pub const BRUSH_ENOUGH_W: f64 = 50.0;

/// Rise of a coolant that carries off all of a cut's heat at a given flow: ΔT = P/(ρc·V̇), [`heat_flow`](super::heat_flow) turned round.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a flow of nothing.
///
/// # Source
/// Heat balance.
///
/// # Example
/// 1 kW into 1.5 L/min of water mix (4.0 MJ/(m³·K)) warms it by 10 K (by hand).
/// ```
/// use formulas::{Silent, cutting::{Coolant, coolant_rise}};
/// use uom::si::{f64::{Power, VolumeRate}, power::kilowatt, temperature_interval::kelvin, volume_rate::liter_per_minute};
/// let flow = VolumeRate::new::<liter_per_minute>(1.5);
/// let rise = coolant_rise(&mut Silent, Power::new::<kilowatt>(1.0), flow, Coolant::WaterMix)?;
/// assert!((rise.get::<kelvin>() - 10.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn coolant_rise<R: Recorder>(
    r: &mut R,
    power: Power,
    flow: VolumeRate,
    coolant: Coolant,
) -> Result<TemperatureDifference, FormulaError> {
    given!(r, P[watt] = power, "heat, all of the cutting power");
    given!(r, V[liter_per_minute] = flow, "flow of the coolant");
    given!(r, rho_c["MJ/(m³·K)"] = coolant.heat_mj(), "heat a cubic metre takes for each kelvin");
    positive("the flow", V, "L/min")?;
    step!(r, Delta_T[kelvin] = 0.06 * P / (rho_c * V), sources::DEFINITION);
    if P < BRUSH_ENOUGH_W {
        r.caution(Caution::Provided { that: "a stream is wanted at all: so little heat goes with a brush and the chips" });
    }
    Ok(TemperatureDifference::new::<kelvin>(Delta_T))
}
