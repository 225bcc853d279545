//! Cutting: power, heat, torque of a tap or a drill, and how many drops a hole takes.

#![expect(non_snake_case, reason = "symbols match the source")]

mod heat;

use core::f64::consts::PI;

use units::{AngularVelocity, Force, Length, Power, TemperatureDifference, Torque, Volume, VolumeRate};
use uom::si::angular_velocity::radian_per_second;
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin;
use uom::si::torque::newton_meter;
use uom::si::volume::milliliter;
use uom::si::volume_rate::{cubic_millimeter_per_second as mm3_per_s, liter_per_minute};

use crate::error::{FormulaError, positive};
use crate::math::{ceil, max, pow};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

pub use heat::{BRUSH_ENOUGH_W, coolant_rise};

/// A drop of oil from a can or a lubricator, mL; 0.03 to 0.06 are told. *Common practice, no source.*
pub const DROP_ML: f64 = 0.04;

/// Power at the tool: P = K_p·C·W·Q.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `K_p` | power constant of the material | J/mm³ |
/// | `C` | feed factor ([`feed_factor`]) | – |
/// | `W` | tool wear factor: 1.0 sharp, 1.1 light work, 1.3 ordinary | – |
/// | `Q` | metal removed | mm³/s |
///
/// # Source
/// *Machinery's Handbook*, 31st edition, machining power.
pub fn cutting_power<R: Recorder>(r: &mut R, power_constant: f64, feed_factor: f64, wear_factor: f64, removal: VolumeRate) -> Power {
    given!(r, K_p["J/mm³"] = power_constant, "power constant of the material");
    given!(r, C [] = feed_factor, "feed factor");
    given!(r, W [] = wear_factor, "tool wear factor");
    given!(r, Q["mm³/s"] = removal.get::<mm3_per_s>(), "metal removed");
    step!(r, P[watt] = K_p * C * W * Q, sources::MACHINERYS_HANDBOOK);
    Power::new::<watt>(P)
}

/// Feed factor of [`cutting_power`]: C = 0.8·f^−0.19 runs through the handbook's table within 1 %.
///
/// # Range
/// Feeds from 0.02 to 1 mm a revolution or a tooth.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a feed of nothing.
///
/// # Source
/// *Machinery's Handbook*; table *from memory*: 1.40 at 0.05 mm, 1.25 at 0.10, 1.08 at 0.20, 1.00 at 0.30.
pub fn feed_factor<R: Recorder>(r: &mut R, feed: Length) -> Result<f64, FormulaError> {
    given!(r, f[millimeter] = feed, "feed for a revolution or a tooth");
    positive("the feed", f, "mm")?;
    step!(r, C [] = 0.8 * pow(f, -0.19), sources::MACHINERYS_HANDBOOK);
    Ok(C)
}

/// Power the motor has to give for a power at the tool.
///
/// # Errors
/// [`FormulaError::NotPositive`] for an efficiency of nothing.
///
/// # Source
/// *Machinery's Handbook*: 0.9 by belt, 0.7 to 0.8 through gears.
pub fn motor_power<R: Recorder>(r: &mut R, at_tool: Power, efficiency: f64) -> Result<Power, FormulaError> {
    given!(r, P[watt] = at_tool, "power at the tool");
    given!(r, E [] = efficiency, "efficiency of the drive");
    positive("the efficiency", E, "")?;
    step!(r, P_m[watt] = P / E, sources::MACHINERYS_HANDBOOK);
    Ok(Power::new::<watt>(P_m))
}

/// What carries the heat away.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Coolant {
    /// Oil and water, or a solution.
    WaterMix,
    /// Oil by itself.
    Oil,
}

impl Coolant {
    /// Heat a cubic metre takes for each kelvin, MJ/(m³·K).
    #[must_use]
    pub fn heat_mj(self) -> f64 {
        match self {
            Self::WaterMix => 4.0,
            Self::Oil => 1.7,
        }
    }
}

/// Flow that carries all of a cut's heat away at a given rise: V̇ = P/(ρc·ΔT).
///
/// # Range
/// Water mixes 4.0 and oils 1.7 MJ/(m³·K). Below about 50 W a brush is enough.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a rise of nothing.
///
/// # Source
/// Heat balance; the 50 W are *common practice, no source*.
pub fn heat_flow<R: Recorder>(r: &mut R, power: Power, rise: TemperatureDifference, coolant: Coolant) -> Result<VolumeRate, FormulaError> {
    given!(r, P[watt] = power, "heat, all of the cutting power");
    given!(r, Delta_T[kelvin] = rise, "rise of the coolant");
    given!(r, rho_c["MJ/(m³·K)"] = coolant.heat_mj(), "heat a cubic metre takes for each kelvin");
    positive("the rise", Delta_T, "K")?;
    step!(r, V[liter_per_minute] = 0.06 * P / (rho_c * Delta_T), sources::DEFINITION);
    Ok(VolumeRate::new::<liter_per_minute>(V))
}

/// A whole number of drops from a count that was rounded up.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "the count is clamped to what the type holds")]
fn whole(count: f64) -> u32 {
    count.clamp(0.0, f64::from(u32::MAX)) as u32
}

/// Oil that drilling a hole takes: a film of 10 µm on the wall and on both sides of chips 0.12 mm thick.
///
/// The drops are for the whole hole; put them in a few at a time, after each diameter and a half of depth.
///
/// # Source
/// Geometry; film and chip are *common practice, no source*.
///
/// # Example
/// A hole of 6 mm and 12 mm deep takes 0.059 mL: 2 drops (computed independently).
/// ```
/// use formulas::{Silent, cutting::drops_per_hole};
/// use uom::si::{f64::Length, length::millimeter, volume::milliliter};
/// let (volume, drops) = drops_per_hole(&mut Silent, Length::new::<millimeter>(6.0), Length::new::<millimeter>(12.0));
/// assert!((volume.get::<milliliter>() - 0.059).abs() < 0.003);
/// assert_eq!(drops, 2);
/// ```
pub fn drops_per_hole<R: Recorder>(r: &mut R, diameter: Length, depth: Length) -> (Volume, u32) {
    given!(r, D[millimeter] = diameter, "diameter of the hole");
    given!(r, L[millimeter] = depth, "depth of the hole");
    given!(r, h_c[millimeter] = Length::new::<millimeter>(0.12), "thickness of the chip");
    given!(r, h[millimeter] = Length::new::<millimeter>(0.01), "film");
    step!(r, V[milliliter] = (PI * D * L + 2.0 * (PI * pow(D, 2.0) * L / 4.0) / h_c) * h / 1000.0, sources::COMMON_PRACTICE);
    step!(r, i [] = ceil(V / 0.04), sources::COMMON_PRACTICE);
    (Volume::new::<milliliter>(V), whole(i))
}

/// Drops that tapping a hole takes: one for each diameter of depth, and two at least.
///
/// # Source
/// *Common practice, no source.*
pub fn tap_drops<R: Recorder>(r: &mut R, diameter: Length, depth: Length) -> Result<u32, FormulaError> {
    given!(r, d[millimeter] = diameter, "diameter of the thread");
    given!(r, L[millimeter] = depth, "depth of the thread");
    positive("the diameter", d, "mm")?;
    step!(r, i [] = max(2.0, ceil(L / d)), sources::COMMON_PRACTICE);
    Ok(whole(i))
}

/// Torque of a tap: M = k_c·p²·d/8000.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `k_c` | specific cutting force | N/mm² |
/// | `p` | pitch | mm |
/// | `d` | diameter of the thread | mm |
///
/// # Range
/// Sharp taps of three or four flutes; another published formula lies 25 % below to 15 % above this at M8. What the tap is wetted with
/// changes it by ±30 %.
///
/// # Source
/// A technical sheet's formula.
///
/// # Example
/// M6 × 1 in mild steel (2300 N/mm²): 1.73 N·m (computed independently).
/// ```
/// use formulas::{Silent, cutting::tap_torque};
/// use uom::si::{f64::Length, length::millimeter, torque::newton_meter};
/// let torque = tap_torque(&mut Silent, 2300.0, Length::new::<millimeter>(1.0), Length::new::<millimeter>(6.0));
/// assert!((torque.get::<newton_meter>() - 1.73).abs() < 0.0173);
/// ```
pub fn tap_torque<R: Recorder>(r: &mut R, specific_force: f64, pitch: Length, diameter: Length) -> Torque {
    given!(r, k_c["N/mm²"] = specific_force, "specific cutting force");
    given!(r, p[millimeter] = pitch, "pitch");
    given!(r, d[millimeter] = diameter, "diameter of the thread");
    step!(r, M[newton_meter] = k_c * pow(p, 2.0) * d / 8000.0, sources::TAPPING_TORQUE);
    r.caution(Caution::Rough { what: "the torque", why: "tap, flutes and fluid change it by a quarter either way" });
    Torque::new::<newton_meter>(M)
}

/// What a drill asks of its machine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrillLoad {
    /// Thrust along the drill.
    pub thrust: Force,
    /// Torque.
    pub torque: Torque,
}

/// Thrust and torque of a drill of ordinary point.
///
/// T = 0.05·K_d·F_f·F_T·B·W + 0.007·K_d·D²·J·W and M = 0.000 025·K_d·F_f·F_M·A·W, with F_f = f^0.8, F_T = D^0.8, F_M = D^1.8 and for
/// the ordinary point A = 1.085, B = 1.355, J = 0.03. The constants are the inch formula's, rounded: both agree within 2 %.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `K_d` | work material factor | – |
/// | `f` | feed | mm/rev |
/// | `D` | diameter | mm |
/// | `W` | tool wear factor | – |
///
/// # Source
/// *Machinery's Handbook*, 31st edition, drilling; the powers of feed and diameter reproduce its table of factors.
pub fn drill_load<R: Recorder>(r: &mut R, material_factor: f64, diameter: Length, feed: Length, wear_factor: f64) -> DrillLoad {
    given!(r, K_d [] = material_factor, "work material factor");
    given!(r, D[millimeter] = diameter, "diameter");
    given!(r, f[millimeter] = feed, "feed for a revolution");
    given!(r, W [] = wear_factor, "tool wear factor");
    step!(r, F_f [] = pow(f, 0.8), sources::MACHINERYS_HANDBOOK);
    step!(r, F_T [] = pow(D, 0.8), sources::MACHINERYS_HANDBOOK);
    step!(r, F_M [] = pow(D, 1.8), sources::MACHINERYS_HANDBOOK);
    step!(r, T[newton] = 0.05 * K_d * F_f * F_T * 1.355 * W + 0.007 * K_d * pow(D, 2.0) * 0.03 * W, sources::MACHINERYS_HANDBOOK);
    step!(r, M[newton_meter] = 0.000025 * K_d * F_f * F_M * 1.085 * W, sources::MACHINERYS_HANDBOOK);
    DrillLoad { thrust: Force::new::<newton>(T), torque: Torque::new::<newton_meter>(M) }
}

/// Power of a torque at a speed.
///
/// # Source
/// Mechanics.
pub fn turning_power<R: Recorder>(r: &mut R, torque: Torque, speed: AngularVelocity) -> Power {
    given!(r, M[newton_meter] = torque, "torque");
    given!(r, omega[radian_per_second] = speed, "speed");
    step!(r, P[watt] = M * omega, sources::DEFINITION);
    Power::new::<watt>(P)
}
