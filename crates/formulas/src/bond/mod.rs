//! Bonded joints: what a retaining compound or an adhesive holds, how much it takes, and how long it cures.
//!
//! The curves are of no product: generic, and set low. The data sheet of what you use comes first, and its strength can be given here.

#![expect(non_snake_case, reason = "symbols match the source")]

mod cure;
mod curves;
mod lap;
mod undo;

pub use cure::{Cure, cure_time};
pub use curves::{BondMetal, Heat, Loading, Retainer, RetainerKind};
pub use lap::{Lap, lap_design_stress, lap_stress, peak_over_average, useful_overlap};
pub use undo::{heat_to_undo, heating_energy, push_out_force};

use core::f64::consts::PI;

use units::{Force, Length, Pressure, Range, Temperature, Torque, Volume};
use uom::si::force::newton;
use uom::si::length::{micrometer, millimeter};
use uom::si::pressure::megapascal;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::torque::newton_meter;
use uom::si::volume::{cubic_millimeter, milliliter};

use crate::error::{FormulaError, not_negative, positive, within};
use crate::math::{max, min, pow};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// A shaft bonded into a hub.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BondJoint {
    /// Bore of the hub.
    pub diameter: Length,
    /// Length of the joint.
    pub length: Length,
    /// Gap on the diameter.
    pub gap: Length,
    /// Metal of the hub.
    pub hub: BondMetal,
    /// Metal of the shaft.
    pub shaft: BondMetal,
    /// Mean roughness Ra of the rougher part.
    pub roughness: Length,
    /// Hottest the joint gets in service.
    pub service: Temperature,
    /// How it is loaded.
    pub loading: Loading,
}

/// What a bonded joint holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bonded {
    /// Force along the shaft: with the factor of safety, without it, and at the strongest.
    pub axial: Range<Force>,
    /// Torque round it, likewise.
    pub torque: Range<Torque>,
}

/// How much stronger than its class a bond may turn out: it has to be undone with this.
const STRONGEST: f64 = 1.5;

pub(crate) fn checked(joint: &BondJoint) -> Result<(), FormulaError> {
    positive("the diameter of the joint", joint.diameter.get::<millimeter>(), "mm")?;
    positive("the length of the joint", joint.length.get::<millimeter>(), "mm")?;
    not_negative("the gap", joint.gap.get::<millimeter>(), "mm", sources::TYPICAL)?;
    positive("the roughness", joint.roughness.get::<micrometer>(), "µm")
}

/// Strength of a retained joint: with the factor of safety, without it, and at the strongest it may turn out.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `tau_0` | strength of the class on steel, cured, at 22 °C | MPa |
/// | `f_mat` | factor of the worse metal | – |
/// | `f_gap`, `f_T`, `f_Ra`, `f_L`, `f_dyn` | factors of gap, heat, roughness, length and loading | – |
/// | `S` | safety: 2 prepared and measured, 3 otherwise | – |
///
/// # Range
/// Gaps up to the widest of the class, and never beyond 0.25 mm; up to the class's temperature.
///
/// # Errors
/// [`FormulaError::OutOfRange`] beyond the gap or the temperature of the class, for a negative gap, or a safety below 1;
/// [`FormulaError::NotPositive`] for a dimension of nothing.
///
/// # Source
/// The form of the design rule is *common practice*; the strengths follow ISO 10123, whose own text allows ranking only; the factors are
/// generic curves *from memory*, set low.
///
/// # Example
/// A high-strength class (20 MPa) in bronze at a gap of 0.08 mm, S = 2: 3.64 MPa (computed independently).
/// ```
/// use formulas::{Silent, bond::{BondJoint, BondMetal, Loading, RetainerKind, bond_strength}};
/// use uom::si::f64::{Length, ThermodynamicTemperature};
/// use uom::si::{length::{micrometer, millimeter}, pressure::megapascal, thermodynamic_temperature::degree_celsius};
/// let mm = Length::new::<millimeter>;
/// let joint = BondJoint {
///     diameter: mm(15.0), length: mm(12.0), gap: mm(0.08),
///     hub: BondMetal::CopperAlloy, shaft: BondMetal::Steel,
///     roughness: Length::new::<micrometer>(1.6),
///     service: ThermodynamicTemperature::new::<degree_celsius>(22.0),
///     loading: Loading::Steady,
/// };
/// let strength = bond_strength(&mut Silent, &RetainerKind::General.retainer(), &joint, 2.0)?;
/// assert!((strength.low.get::<megapascal>() / 3.64 - 1.0).abs() < 0.005);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn bond_strength<R: Recorder>(r: &mut R, retainer: &Retainer, joint: &BondJoint, safety: f64) -> Result<Range<Pressure>, FormulaError> {
    checked(joint)?;
    given!(r, tau_0[megapascal] = retainer.strength, "strength of the class on steel");
    positive("the strength of the class", tau_0, "MPa")?;
    given!(r, S [] = safety, "factor of safety");
    within("the factor of safety", S, "", (1.0, f64::INFINITY), sources::COMMON_PRACTICE)?;
    given!(r, Ra[micrometer] = joint.roughness, "mean roughness of the rougher part");
    given!(r, c[millimeter] = joint.gap, "gap on the diameter");
    // A rough face holds the other off it, so its peaks count as gap.
    step!(r, c_b[millimeter] = if Ra > 3.2 { c + 6.0 * Ra / 1000.0 } else { c }, sources::TYPICAL);
    let widest = retainer.widest_gap.get::<millimeter>();
    within("the gap on the diameter", c_b, "mm", (0.0, min(widest, curves::WIDEST_MM) + 1e-9), sources::TYPICAL)?;
    given!(r, theta[degree_celsius] = joint.service, "hottest the joint gets");
    within("the temperature of the joint", theta, "°C", retainer.heat.limits(), sources::TYPICAL)?;
    given!(r, lambda [] = (joint.length / joint.diameter).value, "length over diameter");
    given!(r, f_mat [] = joint.hub.factor().min(joint.shaft.factor()), "factor of the worse of the two metals");
    given!(r, f_gap [] = curves::gap(c_b), "factor of the gap, from the generic curve");
    given!(r, f_T [] = retainer.heat.factor(theta), "factor of the heat, from the generic curve");
    given!(r, f_Ra [] = curves::roughness(Ra), "factor of the roughness");
    given!(r, f_L [] = curves::length(lambda), "factor of the length, from the generic curve");
    given!(r, f_dyn [] = joint.loading.factor(), "factor of the loading");
    step!(r, tau[megapascal] = tau_0 * f_mat * f_gap * f_T * f_Ra * f_L * f_dyn, sources::TYPICAL);
    step!(r, tau_d[megapascal] = tau / S, sources::COMMON_PRACTICE);
    r.caution(Caution::Rough { what: "the strength of the bond", why: "its factors are generic; test a scrap pin and collar" });
    r.caution(Caution::Danger {
        words: "Uncured adhesive can make you allergic for good: wear nitrile gloves, and read the data sheet of what you use. Hang no load, \
                brake or unattended turning part on a bond.",
    });
    Ok(Range { low: tau_d, likely: tau, high: STRONGEST * tau }.map(Pressure::new::<megapascal>))
}

/// What a bonded joint holds: its strength over the area that counts.
///
/// # Errors
/// As [`bond_strength`].
///
/// # Source
/// F = τ·π·d·L, T = τ·π·d²·L/2; no more than two diameters of length count, by *common practice*.
///
/// # Example
/// The bronze joint of [`bond_strength`] holds 2058 N (computed independently).
/// ```
/// use formulas::{Silent, bond::{BondJoint, BondMetal, Loading, RetainerKind, bond_holding}};
/// use uom::si::f64::{Length, ThermodynamicTemperature};
/// use uom::si::{force::newton, length::{micrometer, millimeter}, thermodynamic_temperature::degree_celsius};
/// let mm = Length::new::<millimeter>;
/// let joint = BondJoint {
///     diameter: mm(15.0), length: mm(12.0), gap: mm(0.08),
///     hub: BondMetal::CopperAlloy, shaft: BondMetal::Steel,
///     roughness: Length::new::<micrometer>(1.6),
///     service: ThermodynamicTemperature::new::<degree_celsius>(22.0),
///     loading: Loading::Steady,
/// };
/// let held = bond_holding(&mut Silent, &RetainerKind::General.retainer(), &joint, 2.0)?;
/// assert!((held.axial.low.get::<newton>() / 2058.0 - 1.0).abs() < 0.005);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn bond_holding<R: Recorder>(r: &mut R, retainer: &Retainer, joint: &BondJoint, safety: f64) -> Result<Bonded, FormulaError> {
    let strength = bond_strength(r, retainer, joint, safety)?;
    given!(r, d[millimeter] = joint.diameter, "diameter of the joint");
    given!(r, L[millimeter] = joint.length, "length of the joint");
    given!(r, tau_d[megapascal] = strength.low, "design strength");
    step!(r, L_b[millimeter] = min(L, 2.0 * d), sources::COMMON_PRACTICE);
    step!(r, F[newton] = tau_d * PI * d * L_b, sources::DEFINITION);
    step!(r, T[newton_meter] = tau_d * PI * pow(d, 2.0) * L_b / 2.0 / 1000.0, sources::DEFINITION);
    let times = |stress: Pressure| (stress / strength.low).value;
    Ok(Bonded {
        axial: strength.map(|stress| Force::new::<newton>(F * times(stress))),
        torque: strength.map(|stress| Torque::new::<newton_meter>(T * times(stress))),
    })
}

/// A drop of compound, mL: thinner than oil, so smaller drops hang from its nozzle. *Common practice, no source.*
pub const DROP_ML: f64 = 0.03;

/// Whole drops of compound that make an amount, one at least.
///
/// # Example
/// ```
/// use uom::si::{f64::Volume, volume::milliliter};
/// let ml = Volume::new::<milliliter>;
/// assert_eq!([0.001, 0.03, 0.031, 0.09].map(|amount| formulas::bond::drops(ml(amount))), [1.0, 1.0, 2.0, 3.0]);
/// ```
#[must_use]
pub fn drops(amount: Volume) -> f64 {
    /// So small a part of a drop is no drop.
    const NONE: f64 = 5e-4;
    (amount.get::<milliliter>() / DROP_ML - NONE).ceil().max(1.0)
}

/// How much compound a joint takes: what the gap holds, and what to put on.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a dimension of nothing, [`FormulaError::OutOfRange`] for a negative gap.
///
/// # Source
/// Geometry. Twice as much for waste, and never less than one drop of 0.03 mL: *common practice*. The range's ends are the two.
///
/// # Example
/// 25 × 20 mm with a gap of 0.10 mm: 78.5 mm³ (computed independently).
/// ```
/// use formulas::{Silent, bond::bond_quantity};
/// use uom::si::{f64::Length, length::millimeter, volume::cubic_millimeter};
/// let mm = Length::new::<millimeter>;
/// let amount = bond_quantity(&mut Silent, mm(25.0), mm(20.0), mm(0.10))?;
/// assert!((amount.low.get::<cubic_millimeter>() - 78.5).abs() < 0.3);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn bond_quantity<R: Recorder>(r: &mut R, diameter: Length, length: Length, gap: Length) -> Result<Range<Volume>, FormulaError> {
    given!(r, d[millimeter] = diameter, "diameter of the joint");
    positive("the diameter of the joint", d, "mm")?;
    given!(r, L[millimeter] = length, "length of the joint");
    positive("the length of the joint", L, "mm")?;
    given!(r, c[millimeter] = gap, "gap on the diameter");
    not_negative("the gap", c, "mm", sources::DEFINITION)?;
    step!(r, V[cubic_millimeter] = PI * d * L * c / 2.0, sources::DEFINITION);
    step!(r, V_used[cubic_millimeter] = max(2.0 * V, 30.0), sources::COMMON_PRACTICE);
    Ok(Range { low: V, likely: V_used, high: V_used }.map(Volume::new::<cubic_millimeter>))
}

/// What a press fit holds that was assembled with a high-strength retaining compound.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `F_dry` | what the press holds dry | N |
/// | `F_wet` | what the press holds with adhesion 0.07 | N |
/// | `F_b` | what the bond alone holds | N |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative force.
///
/// # Source
/// *Common practice*, set low because pressing strips the compound; whether the two add is disputed. A weak compound can hold less than the
/// dry press, so only a high class counts.
pub fn press_and_bond<R: Recorder>(r: &mut R, dry: Force, wet: Force, bond: Force) -> Result<Force, FormulaError> {
    given!(r, F_dry[newton] = dry, "what the press holds dry");
    given!(r, F_wet[newton] = wet, "what the press holds with adhesion 0.07");
    given!(r, F_b[newton] = bond, "what the bond alone holds");
    not_negative("the force the press holds dry", F_dry, "N", sources::COMMON_PRACTICE)?;
    not_negative("the force the press holds wet", F_wet, "N", sources::COMMON_PRACTICE)?;
    not_negative("the force the bond holds", F_b, "N", sources::COMMON_PRACTICE)?;
    step!(r, F[newton] = max(F_dry, F_wet + 0.5 * F_b), sources::COMMON_PRACTICE);
    r.caution(Caution::Disputed {
        what: "adding a press and a bond",
        why: "pressing strips some of the compound; never claim the full sum",
    });
    Ok(Force::new::<newton>(F))
}
