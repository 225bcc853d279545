//! What each way out holds, and the gaps it suits.

use core::f64::consts::PI;

use units::{Force, Length, Range};
use uom::si::force::newton;
use uom::si::length::{micrometer, millimeter};
use uom::si::pressure::megapascal;
use uom::si::torque::newton_meter;

use super::{Blown, Method};
use crate::bond::{BondJoint, RetainerKind, bond_holding, press_and_bond};
use crate::error::{FormulaError, not_negative, positive};
use crate::fit::MeasuredGap;
use crate::interference::{Adhesion, contact_pressure, holding, hub_pressure_limit, shaft_pressure_limit};
use crate::math::{max, pow, sqrt};
use crate::sources;
use crate::working::{Recorder, Silent};
use crate::{given, step};

/// A way out, before it is judged.
pub(super) struct Plan {
    pub method: Method,
    pub window: (Length, Length),
    pub carries: bool,
    pub strength: Option<Range<Force>>,
}

/// Whether the low strength reaches what is needed.
fn enough(strength: Option<Range<Force>>, needed: Force) -> bool {
    strength.is_some_and(|strength| strength.low >= needed)
}

/// The gaps a way is made for, within those it can do, mm.
const fn best(method: Method) -> Option<(f64, f64)> {
    match method {
        Method::Press | Method::Remake => None,
        Method::PressAndBond => Some((-0.02, 0.02)),
        Method::LowViscosity => Some((0.02, 0.05)),
        Method::General => Some((0.05, 0.15)),
        Method::GapFilling => Some((0.15, 0.25)),
    }
}

/// How far a gap in mm lies from those a way is made for; a new part is always the last resort.
pub(super) fn off_best(method: Method, gap_mm: f64, window: (Length, Length)) -> f64 {
    let (low, high) = match method {
        Method::Remake => return f64::INFINITY,
        Method::Press => (window.0.get::<millimeter>(), window.1.get::<millimeter>()),
        other => best(other).unwrap_or((gap_mm, gap_mm)),
    };
    (low - gap_mm).max(gap_mm - high).max(0.0)
}

/// The force at the face of the joint that its load comes to.
pub(super) fn needed<R: Recorder>(r: &mut R, blown: &Blown) -> Result<Force, FormulaError> {
    given!(r, F[newton] = blown.load.axial, "force to hold");
    given!(r, T[newton_meter] = blown.load.torque, "torque to hold");
    not_negative("the force to hold", F, "N", sources::DEFINITION)?;
    not_negative("the torque to hold", T, "N·m", sources::DEFINITION)?;
    given!(r, d[millimeter] = blown.joint.diameter, "diameter of the joint");
    step!(r, F_n[newton] = sqrt(pow(F, 2.0) + pow(2000.0 * T / d, 2.0)), sources::DEFINITION);
    positive("the load", F_n, "N")?;
    Ok(Force::new::<newton>(F_n))
}

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

/// What a press of an effective interference holds at the face, by the lower of the two adhesions; nothing if there is none.
fn pressed<R: Recorder>(r: &mut R, blown: &Blown, effective: Length, adhesion: Adhesion, safety: f64) -> Result<Force, FormulaError> {
    if effective <= mm(0.0) {
        return Ok(Force::new::<newton>(0.0));
    }
    let p = contact_pressure(r, &blown.joint, effective)?;
    let weaker = adhesion.along.min(adhesion.round);
    let held = holding(r, &blown.joint, p, Adhesion { along: weaker, round: weaker }, safety)?;
    Ok(held.axial)
}

/// What the roughness of both parts takes from an interference, mm, with Rz about six times Ra.
fn smoothed(blown: &Blown) -> f64 {
    let [hub, shaft] = blown.roughness.map(|length| length.get::<millimeter>());
    0.8 * 6.0 * (hub + shaft)
}

pub(super) fn plans<R: Recorder>(r: &mut R, blown: &Blown, gap: &MeasuredGap) -> Result<[Plan; 6], FormulaError> {
    let press = press(r, blown, gap)?;
    // A compound lightens no press: beyond this interference a part yields with it as without.
    let tightest = press.window.0;
    Ok([
        press,
        pressed_bond(r, blown, gap, tightest)?,
        bond(r, blown, gap, Method::LowViscosity, RetainerKind::LowViscosity, (0.0, 0.10))?,
        bond(r, blown, gap, Method::General, RetainerKind::General, (0.02, 0.15))?,
        bond(r, blown, gap, Method::GapFilling, RetainerKind::GapFilling, (0.05, 0.25))?,
        // A part made again suits any gap.
        Plan { method: Method::Remake, window: (mm(-1000.0), mm(1000.0)), carries: true, strength: None },
    ])
}

/// The press as it is: from the interference that carries the load with its safety to that at which a part yields.
fn press<R: Recorder>(r: &mut R, blown: &Blown, gap: &MeasuredGap) -> Result<Plan, FormulaError> {
    let G = smoothed(blown);
    let each = contact_pressure(&mut Silent, &blown.joint, Length::new::<micrometer>(1.0))?;
    let limit = hub_pressure_limit(r, &blown.joint)?;
    let limit = if blown.joint.shaft_bore > mm(0.0) { limit.min(shaft_pressure_limit(r, &blown.joint)?) } else { limit };
    let need = needed(&mut Silent, blown)?;
    given!(r, G["mm"] = G, "what the roughness takes, on the diameter");
    given!(r, p_1[megapascal] = each, "contact pressure of a micrometre");
    given!(r, p_max[megapascal] = limit, "contact pressure at which a part yields");
    given!(r, F_n[newton] = need, "force to hold at the face");
    given!(r, S [] = blown.safety, "factor of safety");
    given!(r, nu [] = blown.adhesion.along.min(blown.adhesion.round), "the lower coefficient of adhesion");
    positive("the coefficient of adhesion", nu, "")?;
    given!(r, d[millimeter] = blown.joint.diameter, "diameter of the joint");
    given!(r, L[millimeter] = blown.joint.length, "length of the joint");
    step!(r, p_n[megapascal] = S * F_n / (PI * d * L * nu), sources::DIN_7190);
    step!(r, delta_1[millimeter] = G + p_n / (1000.0 * p_1), sources::DIN_7190);
    step!(r, delta_2[millimeter] = G + p_max / (1000.0 * p_1), sources::DIN_7190);
    // 95 % of measured gaps leave at least the low interference.
    let effective = |spread: f64| {
        let least = -gap.gap.get::<millimeter>() - G + spread * gap.uncertainty.get::<millimeter>();
        mm(max(least, 0.0).min(0.009 * d))
    };
    let strength = Range {
        low: pressed(&mut Silent, blown, effective(-super::ONE_SIDED), blown.adhesion, blown.safety)?,
        likely: pressed(&mut Silent, blown, effective(0.0), blown.adhesion, 1.0)?,
        high: pressed(&mut Silent, blown, effective(super::ONE_SIDED), blown.adhesion, 1.0)?,
    };
    // The window asks for an interference that carries the load, so a press that suits carries it, unless the limits cross.
    let window = (mm(-delta_2), mm(-delta_1));
    Ok(Plan { method: Method::Press, window, carries: delta_2 > delta_1, strength: Some(strength) })
}

fn bond_joint(blown: &Blown, gap: Length) -> BondJoint {
    let [hub, shaft] = blown.bond_metals;
    BondJoint {
        diameter: blown.joint.diameter,
        length: blown.joint.length,
        gap: gap.max(mm(0.0)),
        hub,
        shaft,
        roughness: blown.roughness[0].max(blown.roughness[1]),
        service: blown.service,
        loading: blown.loading,
    }
}

/// A bond at the measured gap; no strength where the gap or the heat lies outside what the class does.
fn bond<R: Recorder>(
    r: &mut R,
    blown: &Blown,
    gap: &MeasuredGap,
    method: Method,
    kind: RetainerKind,
    (low, high): (f64, f64),
) -> Result<Plan, FormulaError> {
    let window = (mm(low), mm(high));
    // The strength is worked at the wider gap that the measurement leaves possible, as far as the class goes.
    let widest = (gap.gap + super::ONE_SIDED * gap.uncertainty).min(window.1);
    let strength = match bond_holding(r, &kind.retainer(), &bond_joint(blown, widest.max(window.0)), blown.safety) {
        Ok(held) => Some(if kind == RetainerKind::GapFilling { held.axial.map(|force| 0.8 * force) } else { held.axial }),
        Err(FormulaError::OutOfRange { .. }) => None,
        Err(error) => return Err(error),
    };
    Ok(Plan { method, window, carries: enough(strength, needed(&mut Silent, blown)?), strength })
}

/// A press too light, or a slip too close, helped by a high-strength compound.
fn pressed_bond<R: Recorder>(r: &mut R, blown: &Blown, gap: &MeasuredGap, tightest: Length) -> Result<Plan, FormulaError> {
    let window = (mm(-0.02).max(tightest), mm(0.02));
    let joint = bond_joint(blown, gap.gap.min(window.1));
    let bonded = match bond_holding(r, &RetainerKind::General.retainer(), &joint, blown.safety) {
        Ok(held) => held.axial,
        Err(FormulaError::OutOfRange { .. }) => return Ok(Plan { method: Method::PressAndBond, window, carries: false, strength: None }),
        Err(error) => return Err(error),
    };
    let effective = mm(max(-gap.gap.get::<millimeter>() - smoothed(blown), 0.0).min(0.009 * blown.joint.diameter.get::<millimeter>()));
    let mut with = |bond: Force, safety: f64| {
        let dry = pressed(&mut Silent, blown, effective, blown.adhesion, safety)?;
        let wet = pressed(&mut Silent, blown, effective, Adhesion { along: 0.07, round: 0.07 }, safety)?;
        press_and_bond(r, dry, wet, bond)
    };
    // To take it apart, the whole bond counts beside the press; to rely on it, half.
    let strength = Range { low: with(bonded.low, blown.safety)?, likely: with(bonded.likely, 1.0)?, high: with(2.0 * bonded.high, 1.0)? };
    let carries = enough(Some(strength), needed(&mut Silent, blown)?);
    Ok(Plan { method: Method::PressAndBond, window, carries, strength: Some(strength) })
}
