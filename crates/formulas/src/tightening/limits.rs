//! How hard a bolt may be tightened, and when it breaks.

use core::f64::consts::PI;

use units::{Force, Pressure, Torque};
use uom::si::area::square_millimeter;
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;
use uom::si::torque::newton_meter;

use super::friction_within;
use crate::error::{FormulaError, positive, within};
use crate::math::{cos, pow, sqrt};
use crate::sources;
use crate::thread::{Thread, bolt_6g, dimensions, proof_load};
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// The force to which a bolt may be tightened, so that stretch and twist together reach nine tenths of its yield.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `R_p` | yield or 0.2 % proof stress | MPa |
/// | `A_s`, `d_s` | stress area and its diameter | mm², mm |
/// | `d_2`, `P` | pitch diameter, pitch | mm |
/// | `mu` | friction in the thread | – |
///
/// # Errors
/// As [`tightening_torque`](super::tightening_torque).
///
/// # Source
/// VDI 2230-1, as quoted by others.
///
/// # Example
/// M10 of class 8.8 at μ = 0.12: 29.6 kN (the guideline's table, *from memory*).
/// ```
/// use formulas::{Silent, thread::Thread, tightening::assembly_preload};
/// use uom::si::{f64::Pressure, force::kilonewton, pressure::megapascal};
/// let force = assembly_preload(&mut Silent, &Thread::metric(10.0, 1.5), Pressure::new::<megapascal>(640.0), 0.12)?;
/// assert!((force.get::<kilonewton>() / 29.6 - 1.0).abs() < 0.01);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn assembly_preload<R: Recorder>(r: &mut R, thread: &Thread, yields: Pressure, mu: f64) -> Result<Force, FormulaError> {
    let found = dimensions(r, thread)?;
    friction_within("the friction in the thread", mu)?;
    given!(r, R_p[megapascal] = yields, "yield stress of the bolt");
    positive("the yield stress", R_p, "MPa")?;
    given!(r, P[millimeter] = thread.pitch, "pitch");
    given!(r, d_2[millimeter] = found.pitch_diameter, "pitch diameter");
    given!(r, d_3[millimeter] = found.root_diameter, "root diameter");
    given!(r, A_s[square_millimeter] = found.stress_area, "stress area");
    given!(r, mu [] = mu, "friction in the thread");
    given!(r, beta["rad"] = thread.form.half_angle_degrees().to_radians(), "half the angle between the flanks");
    step!(r, d_s[millimeter] = (d_2 + d_3) / 2.0, sources::VDI_2230);
    step!(r, x [] = 1.5 * (d_2 / d_s) * (P / (PI * d_2) + mu / cos(beta)), sources::VDI_2230);
    step!(r, F_M[newton] = 0.9 * R_p * A_s / sqrt(1.0 + 3.0 * pow(x, 2.0)), sources::VDI_2230);
    Ok(Force::new::<newton>(F_M))
}

/// The force at a share of the proof load: 0.75 for a joint taken apart again, 0.9 for one that stays.
///
/// # Errors
/// As [`proof_load`]; [`FormulaError::OutOfRange`] for a share beyond 1.
///
/// # Source
/// Shigley.
///
/// # Example
/// ⅜-16 of grade 5 at three quarters: 4940 lbf (computed independently).
/// ```
/// use formulas::{Silent, thread::{Form, Thread}, tightening::{grade, preload_for_share}};
/// use uom::si::force::pound_force;
/// let thread = Thread::inch(Form::Unified, 0.375, 16.0);
/// let five = grade("grade 5", thread.major).ok_or("no grade 5")?;
/// assert!((preload_for_share(&mut Silent, &thread, five.proof, 0.75)?.get::<pound_force>() - 4940.0).abs() < 5.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn preload_for_share<R: Recorder>(r: &mut R, thread: &Thread, proof: Pressure, share: f64) -> Result<Force, FormulaError> {
    let load = proof_load(r, thread, proof)?;
    given!(r, F_p[newton] = load, "proof load");
    given!(r, x [] = share, "share of the proof load");
    positive("the share of the proof load", x, "")?;
    within("the share of the proof load", x, "", (0.0, 1.0), sources::SHIGLEY)?;
    step!(r, F[newton] = x * F_p, sources::SHIGLEY);
    Ok(Force::new::<newton>(F))
}

/// The torque at which a 6g bolt twists off, at the least root its tolerance allows.
///
/// # Errors
/// As [`dimensions`]; [`FormulaError::NotPositive`] for a strength of nothing.
///
/// # Source
/// Torsion of the root, with a shear strength of 0.84·R_m that meets ISO 898-7's table for class 8.8 (*from memory*).
///
/// # Example
/// M6 of class 8.8: 12.8 N·m, where ISO 898-7 asks for 13 (computed independently; the standard *from memory*).
/// ```
/// use formulas::{Silent, thread::Thread, tightening::breaking_torque};
/// use uom::si::{f64::Pressure, pressure::megapascal, torque::newton_meter};
/// let torque = breaking_torque(&mut Silent, &Thread::metric(6.0, 1.0), Pressure::new::<megapascal>(800.0))?;
/// assert!((torque.get::<newton_meter>() - 12.8).abs() < 0.3);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn breaking_torque<R: Recorder>(r: &mut R, thread: &Thread, tensile: Pressure) -> Result<Torque, FormulaError> {
    let (allowance, tolerance) = bolt_6g(r, thread)?;
    let middle = dimensions(r, thread)?.pitch_diameter;
    given!(r, d_2[millimeter] = middle, "pitch diameter");
    given!(r, P[millimeter] = thread.pitch, "pitch");
    given!(r, e_s["mm"] = allowance, "allowance of the bolt");
    given!(r, T_d2["mm"] = tolerance, "tolerance of the bolt's pitch diameter");
    given!(r, R_m[megapascal] = tensile, "tensile strength");
    positive("the tensile strength", R_m, "MPa")?;
    // The deepest root is an arc of an eighth of the pitch in the sharp V of the profile.
    step!(r, d_min["mm"] = d_2 - e_s - T_d2 - sqrt(3.0) / 2.0 * P + 2.0 * 0.125 * P, sources::ISO_965);
    step!(r, tau[megapascal] = 0.84 * R_m, sources::ISO_898_7);
    step!(r, T_B[newton_meter] = tau * PI / 16.0 * pow(d_min, 3.0) / 1000.0, sources::ISO_898_7);
    if thread.major.get::<millimeter>() > 10.0 {
        r.caution(Caution::Rough { what: "the breaking torque", why: "the standard it is fitted to ends at M10" });
    }
    Ok(Torque::new::<newton_meter>(T_B))
}

/// The least breaking torque of class 8.8 that ISO 898-7 asks for, N·m; `None` for a size not written down here.
///
/// # Source
/// ISO 898-7, *from memory*.
#[must_use]
pub fn least_breaking_torque(diameter_mm: f64) -> Option<f64> {
    [(3.0, 1.5), (4.0, 3.6), (5.0, 7.6), (6.0, 13.0), (8.0, 33.0), (10.0, 66.0)]
        .into_iter()
        .find(|(d, _)| (d - diameter_mm).abs() < 1e-6)
        .map(|(_, torque)| torque)
}
