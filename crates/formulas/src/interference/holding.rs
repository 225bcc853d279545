//! What a press fit holds, and what it takes to press it.

use core::f64::consts::PI;

use units::{Force, Length, Pressure, Range, TemperatureDifference, Torque};
use uom::si::force::newton;
use uom::si::length::{micrometer, millimeter};
use uom::si::pressure::megapascal;
use uom::si::temperature_interval::kelvin;
use uom::si::torque::newton_meter;

use super::{Joint, checked};
use crate::error::{FormulaError, not_negative, positive, within};
use crate::math::{max, pow};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// How the parts were put together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Assembly {
    /// Pressed together cold, which shears the tips of the roughness off.
    Pressed,
    /// Slipped together hot or cold, which spares some of the roughness.
    Shrunk,
}

/// What lies against steel, for the coefficients of adhesion.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Contact {
    /// A stronger plain steel, E335.
    StrongSteel,
    /// Mild steel, S235.
    MildSteel,
    /// Grey iron.
    GreyIron,
    /// Cast aluminium–silicon, AlSi12.
    CastAluminium,
    /// Leaded bronze, dry only.
    LeadedBronze,
}

/// Coefficients of adhesion along and round a joint.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Adhesion {
    /// Along the shaft, ν_ll.
    pub along: f64,
    /// Round the shaft, ν_rl.
    pub round: f64,
}

/// What a joint holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Holding {
    /// Force along the shaft.
    pub axial: Force,
    /// Torque round it.
    pub torque: Torque,
}

/// Usual presses of a small shop and their force in kN; *common practice*.
pub const PRESSES_KN: &[(&str, f64)] = &[("half-tonne arbor press", 5.0), ("one-tonne arbor press", 10.0), ("bench vice", 15.0)];

/// Coefficients of adhesion of a joint pressed together, against steel.
///
/// # Source
/// DIN 7190-1, *from memory*, partly seen quoted. For a leaded bronze oiled it gives none.
#[must_use]
pub const fn adhesion(contact: Contact, oiled: bool) -> Option<Adhesion> {
    let (along, round) = match (contact, oiled) {
        (Contact::StrongSteel, false) => (0.11, 0.08),
        (Contact::StrongSteel, true) => (0.08, 0.07),
        (Contact::MildSteel, false) => (0.10, 0.09),
        (Contact::MildSteel, true) => (0.07, 0.06),
        (Contact::GreyIron, false) => (0.12, 0.11),
        (Contact::GreyIron, true) => (0.06, 0.05),
        (Contact::CastAluminium, false) => (0.07, 0.06),
        (Contact::CastAluminium, true) => (0.05, 0.04),
        (Contact::LeadedBronze, false) => (0.07, 0.06),
        (Contact::LeadedBronze, true) => return None,
    };
    Some(Adhesion { along, round })
}

/// The interference left when the roughness is pressed flat: least, likely, most.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `delta` | measured interference on the diameter | µm |
/// | `Rz_o`, `Rz_i` | roughness of hub and shaft | µm |
/// | `G` | what roughness takes, on the diameter | µm |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative interference or roughness.
///
/// # Source
/// DIN 7190-1, *from memory*: G = 0.8·(Rz_o + Rz_i). Half of it as the most a shrink fit may keep is *common practice*, and disputed.
///
/// # Example
/// By hand: 22 µm between surfaces of Rz 4 and 6.3 µm leave 22 − 8.24 = 13.76 µm.
/// ```
/// use formulas::{Silent, interference::{Assembly, effective_interference}};
/// use uom::si::{f64::Length, length::micrometer};
/// let um = Length::new::<micrometer>;
/// let left = effective_interference(&mut Silent, um(22.0), um(4.0), um(6.3), Assembly::Pressed)?;
/// assert!((left.likely.get::<micrometer>() - 13.76).abs() < 0.001);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn effective_interference<R: Recorder>(
    r: &mut R,
    interference: Length,
    hub_roughness: Length,
    shaft_roughness: Length,
    assembly: Assembly,
) -> Result<Range<Length>, FormulaError> {
    given!(r, delta[micrometer] = interference, "interference on the diameter");
    not_negative("the interference", delta, "µm", sources::DIN_7190)?;
    given!(r, Rz_o[micrometer] = hub_roughness, "roughness of the hub, about six times its Ra");
    given!(r, Rz_i[micrometer] = shaft_roughness, "roughness of the shaft, about six times its Ra");
    not_negative("the roughness of the hub", Rz_o, "µm", sources::DIN_7190)?;
    not_negative("the roughness of the shaft", Rz_i, "µm", sources::DIN_7190)?;
    step!(r, G[micrometer] = 0.8 * (Rz_o + Rz_i), sources::DIN_7190);
    step!(r, delta_eff[micrometer] = max(delta - G, 0.0), sources::DIN_7190);
    let um = Length::new::<micrometer>;
    match assembly {
        Assembly::Pressed => Ok(Range::exact(um(delta_eff))),
        Assembly::Shrunk => {
            step!(r, delta_most[micrometer] = max(delta - G / 2.0, 0.0), sources::COMMON_PRACTICE);
            r.caution(Caution::Disputed {
                what: "what roughness takes from a shrink fit",
                why: "0.8 or 0.4 of the two Rz, on the diameter",
            });
            Ok(Range { low: um(delta_eff), likely: um(delta_eff), high: um(delta_most) })
        }
    }
}

/// The interference when both parts are warmer than when they were measured.
///
/// The answer may be negative: then the joint has come loose.
///
/// # Errors
/// As [`contact_pressure`](super::contact_pressure), and [`FormulaError::OutOfRange`] for a part hotter by more than 600 K.
///
/// # Source
/// Thermal expansion; DIN 7190-1.
///
/// # Example
/// By hand: an aluminium hub on a steel shaft of 25 mm loses 25·12·10⁻⁶·60 = 0.018 mm at 60 K more.
/// ```
/// use formulas::{Silent, interference::{Joint, interference_when_warmer, metal}};
/// use uom::si::{f64::{Length, TemperatureInterval}, length::millimeter, temperature_interval::kelvin};
/// let mm = Length::new::<millimeter>;
/// let (shaft, hub) = (metal("mild steel").ok_or("no steel")?, metal("aluminium 6082-T6").ok_or("no aluminium")?);
/// let joint = Joint { diameter: mm(25.0), shaft_bore: mm(0.0), hub_outside: mm(50.0), length: mm(30.0), shaft, hub };
/// let left = interference_when_warmer(&mut Silent, &joint, mm(0.048), TemperatureInterval::new::<kelvin>(60.0))?;
/// assert!((left.get::<millimeter>() - 0.030).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn interference_when_warmer<R: Recorder>(
    r: &mut R,
    joint: &Joint,
    interference: Length,
    warmer: TemperatureDifference,
) -> Result<Length, FormulaError> {
    checked(joint)?;
    given!(r, delta[micrometer] = interference, "interference when measured");
    given!(r, d[millimeter] = joint.diameter, "diameter of the joint");
    given!(r, alpha_i["1/K"] = joint.shaft.expansion_per_k, "thermal expansion of the shaft");
    given!(r, alpha_o["1/K"] = joint.hub.expansion_per_k, "thermal expansion of the hub");
    given!(r, Delta_T[kelvin] = warmer, "how much warmer both parts are");
    within("how much warmer both parts are", Delta_T, "K", (-200.0, 600.0), sources::DIN_7190)?;
    step!(r, delta_T[micrometer] = delta + 1000.0 * d * (alpha_i - alpha_o) * Delta_T, sources::DIN_7190);
    Ok(Length::new::<micrometer>(delta_T))
}

/// What a joint holds at a contact pressure, with a factor of safety.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `p` | contact pressure, of the smallest effective interference | MPa |
/// | `d`, `L` | diameter and length of the joint | mm |
/// | `nu_ll`, `nu_rl` | adhesion along and round, the low figures | – |
/// | `S` | safety: 1.5 steady, 2 reversing | – |
///
/// # Errors
/// As [`contact_pressure`](super::contact_pressure); [`FormulaError::OutOfRange`] for a coefficient beyond 1 or a safety below 1.
///
/// # Source
/// DIN 7190-1; the factors of safety are *common practice*.
///
/// # Example
/// 63.0 MPa on 25 × 30 mm with ν_rl = 0.07 hold 129.9 N·m (computed independently).
/// ```
/// use formulas::{Silent, interference::{Adhesion, Joint, holding, metal}};
/// use uom::si::{f64::{Length, Pressure}, length::millimeter, pressure::megapascal, torque::newton_meter};
/// let mm = Length::new::<millimeter>;
/// let steel = metal("mild steel").ok_or("no steel")?;
/// let joint =
///     Joint { diameter: mm(25.0), shaft_bore: mm(0.0), hub_outside: mm(50.0), length: mm(30.0), shaft: steel, hub: steel };
/// let oiled = Adhesion { along: 0.08, round: 0.07 };
/// let held = holding(&mut Silent, &joint, Pressure::new::<megapascal>(63.0), oiled, 1.0)?;
/// assert!((held.torque.get::<newton_meter>() / 129.9 - 1.0).abs() < 0.005);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn holding<R: Recorder>(
    r: &mut R,
    joint: &Joint,
    pressure: Pressure,
    adhesion: Adhesion,
    safety: f64,
) -> Result<Holding, FormulaError> {
    checked(joint)?;
    given!(r, p[megapascal] = pressure, "contact pressure");
    not_negative("the contact pressure", p, "MPa", sources::DIN_7190)?;
    given!(r, d[millimeter] = joint.diameter, "diameter of the joint");
    given!(r, L[millimeter] = joint.length, "length of the joint");
    given!(r, nu_ll [] = adhesion.along, "coefficient of adhesion along the shaft");
    given!(r, nu_rl [] = adhesion.round, "coefficient of adhesion round the shaft");
    within("the coefficient of adhesion along the shaft", nu_ll, "", (0.0, 1.0), sources::DIN_7190)?;
    within("the coefficient of adhesion round the shaft", nu_rl, "", (0.0, 1.0), sources::DIN_7190)?;
    given!(r, S [] = safety, "factor of safety");
    within("the factor of safety", S, "", (1.0, f64::INFINITY), sources::DIN_7190)?;
    step!(r, F[newton] = PI * d * L * p * nu_ll / S, sources::DIN_7190);
    step!(r, T[newton_meter] = PI / 2.0 * pow(d, 2.0) * L * p * nu_rl / (1000.0 * S), sources::DIN_7190);
    Ok(Holding { axial: Force::new::<newton>(F), torque: Torque::new::<newton_meter>(T) })
}

/// The contact pressure a joint needs to hold a force and a torque, each with the factor of safety, and both at once.
///
/// # Errors
/// As [`holding`]; [`FormulaError::NotPositive`] for coefficients of nothing.
///
/// # Source
/// DIN 7190-1; force and torque combined as their vector sum, each over its own coefficient.
pub fn smallest_pressure<R: Recorder>(
    r: &mut R,
    joint: &Joint,
    load: Holding,
    adhesion: Adhesion,
    safety: f64,
) -> Result<Pressure, FormulaError> {
    let one = Pressure::new::<megapascal>(1.0);
    let held = holding(r, joint, one, adhesion, safety)?;
    given!(r, F_1[newton] = held.axial, "force held at 1 MPa");
    given!(r, T_1[newton_meter] = held.torque, "torque held at 1 MPa");
    positive("the force held at 1 MPa", F_1, "N")?;
    positive("the torque held at 1 MPa", T_1, "N·m")?;
    given!(r, F[newton] = load.axial, "force to hold");
    given!(r, T[newton_meter] = load.torque, "torque to hold");
    step!(r, p[megapascal] = crate::math::sqrt(pow(F / F_1, 2.0) + pow(T / T_1, 2.0)), sources::DIN_7190);
    Ok(Pressure::new::<megapascal>(p))
}

/// The force it takes to press a joint home: least, likely, and when it galls.
///
/// # Errors
/// As [`contact_pressure`](super::contact_pressure).
///
/// # Source
/// Friction of 0.12 to 0.20, and 0.30 when it galls: *common practice*. Use the pressure of the largest interference.
pub fn press_force<R: Recorder>(r: &mut R, joint: &Joint, pressure: Pressure) -> Result<Range<Force>, FormulaError> {
    checked(joint)?;
    given!(r, p[megapascal] = pressure, "contact pressure at the largest interference");
    not_negative("the contact pressure", p, "MPa", sources::DIN_7190)?;
    given!(r, d[millimeter] = joint.diameter, "diameter of the joint");
    given!(r, L[millimeter] = joint.length, "length of the joint");
    step!(r, F_low[newton] = PI * d * L * p * 0.12, sources::COMMON_PRACTICE);
    step!(r, F_likely[newton] = PI * d * L * p * 0.2, sources::COMMON_PRACTICE);
    step!(r, F_high[newton] = PI * d * L * p * 0.3, sources::COMMON_PRACTICE);
    r.caution(Caution::Provided { that: "the shaft has a lead of 10 to 15° by about 1 mm, and is oiled or pasted" });
    Ok(Range { low: F_low, likely: F_likely, high: F_high }.map(Force::new::<newton>))
}
