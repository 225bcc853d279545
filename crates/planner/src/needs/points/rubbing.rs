//! What bushes, pins and journals without a full film have in common.

use formulas::math::{max, min, sqrt};
use formulas::plain_bearing::pressure_velocity;
use formulas::working::Recorder;
use formulas::{given, sources, step};
use units::{AngularVelocity, Digits, Force, KinematicViscosity, Length, Quantity, System, Velocity, show_number};

use super::common::{mm2_per_s, rim_speed};
use super::{Asking, Spot};
use crate::needs::Complaint;

/// The words for what a bush is made of: keys of the table of rated pressure times velocity.
pub(super) const MATERIALS: &[&str] =
    &["leaded-tin-bronze", "manganese-bronze", "aluminium-bronze", "oil-porous-bronze", "tin-babbitt", "cast-iron", "nylon"];

/// How hard two faces rub.
pub(super) struct Rubbing {
    /// Pressure times velocity, MPa·m/s.
    pub pv: f64,
    /// Mean pressure, MPa.
    pub pressure: f64,
    /// Speed of the rim.
    pub speed: Velocity,
}

/// How hard a journal rubs in its bush.
pub(super) fn rubbing<R: Recorder>(
    r: &mut R,
    load: Force,
    diameter: Length,
    length: Length,
    speed: AngularVelocity,
) -> Result<Rubbing, Complaint> {
    let pv = pressure_velocity(r, load, diameter, length, speed)?;
    let speed = rim_speed(diameter, speed);
    Ok(Rubbing { pv, pressure: pv / speed.base(), speed })
}

/// Least viscosity at its own temperature that serves faces which touch: more under pressure, less when they move fast.
///
/// No film theory gives this; the square roots carry the trade's VG 68 to 150 of ordinary bushes to lighter and heavier ones.
/// *Common practice, no source.*
pub(super) fn boundary_viscosity<R: Recorder>(r: &mut R, pressure_mpa: f64, speed: Velocity) -> KinematicViscosity {
    given!(r, p["MPa"] = pressure_mpa, "mean pressure");
    given!(r, v["m/s"] = speed.base(), "rubbing speed");
    step!(r, f_p [] = min(max(sqrt(p / 0.8), 0.3), 2.0), sources::COMMON_PRACTICE);
    step!(r, f_v [] = min(max(sqrt(0.5 / v), 0.5), 1.2), sources::COMMON_PRACTICE);
    step!(r, nu["mm²/s"] = 60.0 * f_p * f_v, sources::COMMON_PRACTICE);
    mm2_per_s(nu)
}

/// Pressure times velocity a bush of this material is allowed, MPa·m/s: half of what it is rated for.
pub(super) fn allowed(spot: &Spot<'_>, material: &str) -> f64 {
    const SHARE: f64 = 0.5;
    spot.reference.bearing_material(material).map_or(f64::INFINITY, |row| SHARE * row.pv_mpa_m_per_s)
}

/// Whether a material of the table is a copper alloy.
pub(super) fn is_copper(spot: &Spot<'_>, material: &str) -> bool {
    spot.reference.bearing_material(material).is_some_and(|row| spot.reference.is_a(&row.material, "copper-alloys"))
}

/// Says so where faces rub harder than they are allowed.
pub(super) fn mind_over(asking: Asking, spot: &Spot<'_>, rubbing: &Rubbing, allowed: f64) -> Asking {
    if rubbing.pv <= allowed {
        return asking;
    }
    let text = format!(
        "Pressure times velocity is {} and {} is allowed: take off load or speed, or feed oil all the time.",
        intensity(rubbing.pv, spot.units),
        intensity(allowed, spot.units)
    );
    asking.mind(text, "mott-machine-elements")
}

/// Pressure times velocity in words; it is told in MPa·m/s, or in psi·ft/min, of which one is 6894.757 Pa × 0.00508 m/s.
pub(super) fn intensity(mpa_m_per_s: f64, units: System) -> String {
    const PSI_FT_PER_MIN: f64 = 1e6 / (6_894.757 * 0.005_08);
    let said = |value: f64, unit: &str| format!("{} {unit}", show_number(value, Digits::Significant(2)));
    let (metric, inch) = (said(mpa_m_per_s, "MPa·m/s"), said(mpa_m_per_s * PSI_FT_PER_MIN, "psi·ft/min"));
    match units {
        System::Metric => metric,
        System::Inch => inch,
        System::Both => format!("{metric} ({inch})"),
    }
}
