//! Undoing a thread held by threadlocker.

use core::f64::consts::PI;

use units::{Force, Length, Range, Torque};
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::torque::newton_meter;

use super::{Bolt, friction_within};
use crate::error::{FormulaError, not_negative, positive};
use crate::math::{cos, max};
use crate::sources;
use crate::thread::dimensions;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// The strengths threadlockers are sold in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Locker {
    /// Low: comes undone with a small tool.
    Low,
    /// Medium: comes undone with an ordinary one.
    Medium,
    /// High: wants heat.
    High,
}

impl Locker {
    /// Breakaway torque on an unseated M10, N·m: typical values of ISO 10964, *from memory*.
    #[must_use]
    pub const fn breakaway_m10(self) -> Range<f64> {
        match self {
            Self::Low => Range { low: 4.0, likely: 6.0, high: 9.0 },
            Self::Medium => Range { low: 14.0, likely: 20.0, high: 26.0 },
            Self::High => Range { low: 25.0, likely: 32.0, high: 45.0 },
        }
    }
}

/// What it takes to undo a locked bolt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Loosening {
    /// What the locker alone adds, ±40 %.
    pub locker: Range<Torque>,
    /// The whole torque, ±40 % of the locker's part.
    pub total: Range<Torque>,
}

/// Whether a bolt comes undone before it shears.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LoosenRisk {
    /// At most three quarters of the breaking torque.
    Safe,
    /// It may shear: warm it.
    Near,
    /// It will shear cold: heat is compulsory.
    HeatFirst,
}

/// The torque that loosens a bolt held by threadlocker: least, likely, most.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `F` | force in the bolt, as tightened; nothing for an adjuster | N |
/// | `T_10` | breakaway torque of the class on M10 | N·m |
/// | `m` | length of thread wetted | mm |
/// | `mu` | friction | – |
///
/// # Errors
/// As [`tightening_torque`](super::tightening_torque); [`FormulaError::OutOfRange`] for a negative force.
///
/// # Source
/// ISO 10964 for the class; scaled by d₂²·m from M10 with its 8 mm nut, and the ±40 %, *common practice*.
pub fn loosening_torque<R: Recorder>(
    r: &mut R,
    bolt: &Bolt,
    locker: Locker,
    wetted: Length,
    preload: Force,
    mu: f64,
) -> Result<Loosening, FormulaError> {
    let d_2 = dimensions(r, &bolt.thread)?.pitch_diameter;
    friction_within("the friction", mu)?;
    given!(r, T_10["N·m"] = locker.breakaway_m10().likely, "breakaway torque of the class on M10");
    given!(r, d_2[millimeter] = d_2, "pitch diameter");
    given!(r, m[millimeter] = wetted, "length of thread wetted");
    positive("the length of thread wetted", m, "mm")?;
    given!(r, F[newton] = preload, "force in the bolt");
    not_negative("the force in the bolt", F, "N", sources::ISO_10964)?;
    given!(r, P[millimeter] = bolt.thread.pitch, "pitch");
    given!(r, D_km[millimeter] = (bolt.face + bolt.hole) / 2.0, "mean diameter of the face under the head");
    given!(r, mu [] = mu, "friction");
    given!(r, beta["rad"] = bolt.thread.form.half_angle_degrees().to_radians(), "half the angle between the flanks");
    step!(r, T_d[newton_meter] = T_10 * d_2 * d_2 * m / (9.026 * 9.026 * 8.0), sources::COMMON_PRACTICE);
    step!(
        r,
        T_F[newton_meter] = max(F * (-P / (2.0 * PI) + d_2 * mu / (2.0 * cos(beta)) + D_km * mu / 2.0) / 1000.0, 0.0),
        sources::ISO_16047
    );
    step!(r, T_off[newton_meter] = T_F + T_d, sources::ISO_10964);
    r.caution(Caution::Danger { words: "Never trust threadlocker alone on brake, steering or lifting threads." });
    let nm = Torque::new::<newton_meter>;
    let around = |middle: f64| Range { low: nm(middle - 0.4 * T_d), likely: nm(middle), high: nm(middle + 0.4 * T_d) };
    Ok(Loosening { locker: around(T_d), total: around(T_off) })
}

/// Whether a bolt comes undone cold, by its likely loosening torque and its breaking torque.
///
/// # Source
/// *Common practice*: up to three quarters of the breaking torque it does; up to all of it, it may shear; beyond, heat comes first.
#[must_use]
pub fn loosen_risk(loosening: &Loosening, breaking: Torque) -> LoosenRisk {
    let share = (loosening.total.likely / breaking).value;
    if share <= 0.75 {
        LoosenRisk::Safe
    } else if share <= 1.0 {
        LoosenRisk::Near
    } else {
        LoosenRisk::HeatFirst
    }
}
