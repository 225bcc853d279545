//! What the pressure of a press fit does to the metal.

use units::Pressure;
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;

use super::{Joint, Strength, checked};
use crate::error::{FormulaError, not_negative};
use crate::math::{abs, pow, sqrt};
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

/// Stresses at every face of a press fit; tension is positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stresses {
    /// Round the bore of the hub.
    pub hub_bore_hoop: Pressure,
    /// Across the bore of the hub.
    pub hub_bore_radial: Pressure,
    /// Round the outside of the hub.
    pub hub_outside_hoop: Pressure,
    /// Equivalent stress at the bore of the hub, by von Mises.
    pub hub_equivalent: Pressure,
    /// Round the outside of the shaft.
    pub shaft_outside_hoop: Pressure,
    /// Across the outside of the shaft.
    pub shaft_outside_radial: Pressure,
    /// Round the bore of the shaft, or in the middle of a solid one.
    pub shaft_inside_hoop: Pressure,
    /// Across the bore of the shaft, where it is nothing, or in the middle of a solid one.
    pub shaft_inside_radial: Pressure,
    /// Greatest equivalent stress of the shaft, by von Mises.
    pub shaft_equivalent: Pressure,
}

/// Stresses at the faces of a press fit under its contact pressure.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `p` | contact pressure | MPa |
/// | `Q` | diameter of the joint over the hub's outside | – |
/// | `Q_i` | bore of the shaft over the diameter of the joint | – |
///
/// # Errors
/// As [`contact_pressure`](super::contact_pressure); [`FormulaError::OutOfRange`] for a negative pressure.
///
/// # Source
/// Lamé; Shigley. Checked in `tests/published/lame_press_fit.csv`.
///
/// # Example
/// 151.2 MPa between a 25 mm shaft and a 50 mm hub stress the hub's bore to 352.8 MPa by von Mises (computed independently).
/// ```
/// use formulas::{Silent, interference::{Joint, metal, stresses}};
/// use uom::si::{f64::{Length, Pressure}, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let steel = metal("mild steel").ok_or("no steel")?;
/// let joint =
///     Joint { diameter: mm(25.0), shaft_bore: mm(0.0), hub_outside: mm(50.0), length: mm(30.0), shaft: steel, hub: steel };
/// let found = stresses(&mut Silent, &joint, Pressure::new::<megapascal>(151.2))?;
/// assert!((found.hub_equivalent.get::<megapascal>() - 352.8).abs() < 0.2);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn stresses<R: Recorder>(r: &mut R, joint: &Joint, pressure: Pressure) -> Result<Stresses, FormulaError> {
    checked(joint)?;
    given!(r, p[megapascal] = pressure, "contact pressure");
    not_negative("the contact pressure", p, "MPa", sources::LAME)?;
    given!(r, d[millimeter] = joint.diameter, "diameter of the joint");
    given!(r, D_o[millimeter] = joint.hub_outside, "outside diameter of the hub");
    given!(r, d_i[millimeter] = joint.shaft_bore, "bore of the shaft");
    step!(r, Q [] = d / D_o, sources::DEFINITION);
    step!(r, Q_i [] = d_i / d, sources::DEFINITION);
    step!(r, sigma_bore[megapascal] = p * (1.0 + pow(Q, 2.0)) / (1.0 - pow(Q, 2.0)), sources::LAME);
    step!(r, sigma_outside[megapascal] = p * 2.0 * pow(Q, 2.0) / (1.0 - pow(Q, 2.0)), sources::LAME);
    step!(r, sigma_v[megapascal] = p * sqrt(3.0 + pow(Q, 4.0)) / (1.0 - pow(Q, 2.0)), sources::LAME);
    step!(r, sigma_shaft[megapascal] = -p * (1.0 + pow(Q_i, 2.0)) / (1.0 - pow(Q_i, 2.0)), sources::LAME);
    // In the middle of a solid shaft the stress is the pressure all round; a bore, however small, doubles it.
    step!(r, sigma_inside[megapascal] = if Q_i > 0.0 { -2.0 * p / (1.0 - pow(Q_i, 2.0)) } else { -p }, sources::LAME);
    step!(r, sigma_w[megapascal] = abs(sigma_inside), sources::LAME);
    let radial = if Q_i > 0.0 { 0.0 } else { -p };
    let mpa = Pressure::new::<megapascal>;
    Ok(Stresses {
        hub_bore_hoop: mpa(sigma_bore),
        hub_bore_radial: mpa(-p),
        hub_outside_hoop: mpa(sigma_outside),
        hub_equivalent: mpa(sigma_v),
        shaft_outside_hoop: mpa(sigma_shaft),
        shaft_outside_radial: mpa(-p),
        shaft_inside_hoop: mpa(sigma_inside),
        shaft_inside_radial: mpa(radial),
        shaft_equivalent: mpa(sigma_w),
    })
}

/// The contact pressure at which the hub stops being elastic; in a brittle hub, at which its bore reaches a third of its strength.
///
/// # Errors
/// As [`contact_pressure`](super::contact_pressure).
///
/// # Source
/// DIN 7190-1 (modified Tresca), *from memory*: p = (1 − Q²)·R_e/√3. The third for grey iron is *common practice*.
///
/// # Example
/// A hub twice as wide as its bore, of 355 MPa, bears 153.7 MPa (computed independently).
/// ```
/// use formulas::{Silent, interference::{Joint, Metal, Strength, hub_pressure_limit, metal}};
/// use uom::si::{f64::{Length, Pressure}, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let steel = metal("mild steel").ok_or("no steel")?;
/// let hub = Metal { strength: Strength::Yields(Pressure::new::<megapascal>(355.0)), ..steel };
/// let joint = Joint { diameter: mm(25.0), shaft_bore: mm(0.0), hub_outside: mm(50.0), length: mm(30.0), shaft: steel, hub };
/// assert!((hub_pressure_limit(&mut Silent, &joint)?.get::<megapascal>() - 153.7).abs() < 0.1);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn hub_pressure_limit<R: Recorder>(r: &mut R, joint: &Joint) -> Result<Pressure, FormulaError> {
    checked(joint)?;
    given!(r, Q [] = (joint.diameter / joint.hub_outside).value, "diameter of the joint over the hub's outside");
    let limit = match joint.hub.strength {
        Strength::Yields(stress) => {
            given!(r, R_e[megapascal] = stress, "yield stress of the hub");
            step!(r, p_max[megapascal] = (1.0 - pow(Q, 2.0)) * R_e / sqrt(3.0), sources::DIN_7190);
            p_max
        }
        Strength::Breaks(stress) => {
            given!(r, R_m[megapascal] = stress, "tensile strength of the hub");
            step!(r, p_max[megapascal] = R_m / 3.0 * ((1.0 - pow(Q, 2.0)) / (1.0 + pow(Q, 2.0))), sources::COMMON_PRACTICE);
            p_max
        }
    };
    Ok(Pressure::new::<megapascal>(limit))
}

/// The contact pressure at which the shaft stops being elastic.
///
/// # Errors
/// As [`contact_pressure`](super::contact_pressure).
///
/// # Source
/// DIN 7190-1, *from memory*: solid p = 2·R_e/√3, hollow p = (1 − Q_i²)·R_e/√3. A brittle shaft is worked as if it yielded at its tensile
/// strength, which errs on the safe side because it is pressed together: *common practice*.
pub fn shaft_pressure_limit<R: Recorder>(r: &mut R, joint: &Joint) -> Result<Pressure, FormulaError> {
    checked(joint)?;
    given!(r, Q_i [] = (joint.shaft_bore / joint.diameter).value, "bore of the shaft over its diameter");
    let (Strength::Yields(stress) | Strength::Breaks(stress)) = joint.shaft.strength;
    given!(r, R_e[megapascal] = stress, "yield stress of the shaft");
    step!(
        r,
        p_max[megapascal] = if Q_i > 0.0 { (1.0 - pow(Q_i, 2.0)) * R_e / sqrt(3.0) } else { 2.0 * R_e / sqrt(3.0) },
        sources::DIN_7190
    );
    Ok(Pressure::new::<megapascal>(p_max))
}
