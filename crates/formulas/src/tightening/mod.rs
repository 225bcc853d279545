//! Tightening: from torque to the force in a bolt and back, and how far either can be believed.

#![expect(non_snake_case, reason = "symbols match the source")]

mod friction;
mod grade;
mod limits;
mod locked;

pub use friction::{Condition, WET_LOCKER_THREAD};
pub use grade::{Grade, Makes, grade};
pub use limits::{assembly_preload, breaking_torque, least_breaking_torque, preload_for_share};
pub use locked::{Locker, LoosenRisk, Loosening, loosen_risk, loosening_torque};

use core::f64::consts::PI;

use units::{Force, Length, Range, Torque};
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::torque::newton_meter;

use crate::error::{FormulaError, less, positive, within};
use crate::math::{atan, cos, tan};
use crate::sources;
use crate::thread::{Thread, dimensions};
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Friction that any screw has: below it nothing slides, above it everything has seized.
const FRICTION: (f64, f64) = (0.02, 1.0);

/// A bolt, and the ring its head or nut turns on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bolt {
    /// Its thread.
    pub thread: Thread,
    /// Outside diameter of the ring under the head.
    pub face: Length,
    /// The hole it passes through.
    pub hole: Length,
}

/// Thread, width of the face and clearance hole in mm: ISO 4014 and the medium row of ISO 273, *from memory*.
const HEXAGON: &[(f64, f64, f64)] = &[
    (3.0, 4.57, 3.4),
    (4.0, 5.88, 4.5),
    (5.0, 6.88, 5.5),
    (6.0, 8.88, 6.6),
    (8.0, 11.63, 9.0),
    (10.0, 14.63, 11.0),
    (12.0, 16.63, 13.5),
    (16.0, 22.49, 17.5),
    (20.0, 28.19, 22.0),
    (24.0, 33.61, 26.0),
];

impl Bolt {
    /// A hexagon bolt in a medium clearance hole. Sizes between those of the table have a face of 1.46 and a hole of 1.1 diameters.
    #[must_use]
    pub fn hexagon(thread: Thread) -> Self {
        let d = thread.major.get::<millimeter>();
        let (_, face, hole) = HEXAGON.iter().find(|row| (row.0 - d).abs() < 0.01).copied().unwrap_or((d, 1.46 * d, 1.1 * d));
        Self { thread, face: Length::new::<millimeter>(face), hole: Length::new::<millimeter>(hole) }
    }
}

/// Where a tightening torque goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Split {
    /// Into stretching the bolt.
    pub pitch: Torque,
    /// Into friction in the thread.
    pub thread: Torque,
    /// Into friction under the head.
    pub head: Torque,
}

impl Split {
    /// All of it.
    #[must_use]
    pub fn total(self) -> Torque {
        self.pitch + self.thread + self.head
    }
}

pub(crate) fn friction_within(what: &'static str, mu: f64) -> Result<(), FormulaError> {
    within(what, mu, "", FRICTION, sources::VDI_2230)
}

/// The torque that gives a bolt its force, in its three parts.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `F` | force in the bolt | N |
/// | `P`, `d_2` | pitch, pitch diameter | mm |
/// | `beta` | half the angle between the flanks | rad |
/// | `mu_t`, `mu_b` | friction in the thread and under the head | – |
/// | `D_km` | mean diameter of the ring under the head | mm |
///
/// # Range
/// Friction 0.02 to 1.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for friction outside that, [`FormulaError::NotPositive`] for a force of nothing,
/// [`FormulaError::NotLess`] for a hole not smaller than the face round it.
///
/// # Source
/// ISO 16047 and VDI 2230: T = F·(P/2π + d₂·μ_t/(2·cos β) + D_km·μ_b/2).
///
/// # Example
/// Of an M10 at μ = 0.12, 14.6 % stretches the bolt, 38.3 % rubs in the thread, 47.1 % under the head (computed independently).
/// ```
/// use formulas::{Silent, thread::Thread, tightening::{Bolt, tightening_torque}};
/// use uom::si::{f64::{Force, Torque}, force::kilonewton};
/// let bolt = Bolt::hexagon(Thread::metric(10.0, 1.5));
/// let split = tightening_torque(&mut Silent, &bolt, Force::new::<kilonewton>(20.0), 0.12, 0.12)?;
/// let share = |part: Torque| (part / split.total()).value * 100.0;
/// assert!((share(split.pitch) - 14.6).abs() < 0.2);
/// assert!((share(split.thread) - 38.3).abs() < 0.2);
/// assert!((share(split.head) - 47.1).abs() < 0.2);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn tightening_torque<R: Recorder>(r: &mut R, bolt: &Bolt, preload: Force, mu_t: f64, mu_b: f64) -> Result<Split, FormulaError> {
    let d_2 = dimensions(r, &bolt.thread)?.pitch_diameter;
    less(("the hole", bolt.hole.get::<millimeter>()), ("the face of the head", bolt.face.get::<millimeter>()), "mm")?;
    given!(r, F[newton] = preload, "force in the bolt");
    positive("the force in the bolt", F, "N")?;
    given!(r, P[millimeter] = bolt.thread.pitch, "pitch");
    given!(r, d_2[millimeter] = d_2, "pitch diameter");
    given!(r, beta["rad"] = bolt.thread.form.half_angle_degrees().to_radians(), "half the angle between the flanks");
    given!(r, d_w[millimeter] = bolt.face, "diameter of the face under the head");
    given!(r, d_h[millimeter] = bolt.hole, "diameter of the hole");
    given!(r, mu_t [] = mu_t, "friction in the thread");
    given!(r, mu_b [] = mu_b, "friction under the head");
    friction_within("the friction in the thread", mu_t)?;
    friction_within("the friction under the head", mu_b)?;
    step!(r, D_km[millimeter] = (d_w + d_h) / 2.0, sources::VDI_2230);
    step!(r, T_P[newton_meter] = F * P / (2.0 * PI) / 1000.0, sources::ISO_16047);
    step!(r, T_t[newton_meter] = F * d_2 * mu_t / (2.0 * cos(beta)) / 1000.0, sources::ISO_16047);
    step!(r, T_b[newton_meter] = F * D_km * mu_b / 2.0 / 1000.0, sources::ISO_16047);
    let nm = Torque::new::<newton_meter>;
    Ok(Split { pitch: nm(T_P), thread: nm(T_t), head: nm(T_b) })
}

/// The torque that gives a bolt its force, over the friction a condition scatters between: least, likely, most.
///
/// # Errors
/// As [`tightening_torque`].
///
/// # Source
/// As [`tightening_torque`]. Compute the least friction for overload and the most for coming loose, never the middle alone.
pub fn torque_range<R: Recorder>(r: &mut R, bolt: &Bolt, preload: Force, mu: Range<f64>) -> Result<Range<Torque>, FormulaError> {
    let mut at = |mu: f64| tightening_torque(r, bolt, preload, mu, mu).map(Split::total);
    Ok(Range { low: at(mu.low)?, likely: at(mu.likely)?, high: at(mu.high)? })
}

/// The force a torque gives a bolt, over the friction it scatters between: least at the most friction, most at the least.
///
/// # Errors
/// As [`tightening_torque`]; [`FormulaError::NotPositive`] for a torque of nothing.
///
/// # Source
/// As [`tightening_torque`], turned round.
pub fn preload_range<R: Recorder>(r: &mut R, bolt: &Bolt, torque: Torque, mu: Range<f64>) -> Result<Range<Force>, FormulaError> {
    let newton_each = Force::new::<newton>(1.0);
    given!(r, T[newton_meter] = torque, "torque");
    positive("the torque", T, "N·m")?;
    let mut at = |mu: f64| {
        let each = tightening_torque(r, bolt, newton_each, mu, mu)?.total();
        given!(r, T_1[newton_meter] = each, "torque for one newton");
        step!(r, F[newton] = T / T_1, sources::ISO_16047);
        Ok::<_, FormulaError>(Force::new::<newton>(F))
    };
    Ok(Range { low: at(mu.high)?, likely: at(mu.likely)?, high: at(mu.low)? })
}

/// The short form's factor K in T = K·d·F.
///
/// # Errors
/// As [`tightening_torque`].
///
/// # Source
/// ISO 16047. For M10 it is near 0.024 + 1.16·μ (computed independently).
///
/// # Example
/// ```
/// use formulas::{Silent, thread::Thread, tightening::{Bolt, nut_factor}};
/// let m10 = Bolt::hexagon(Thread::metric(10.0, 1.5));
/// assert!((nut_factor(&mut Silent, &m10, 0.15)? - (0.024 + 1.16 * 0.15)).abs() < 0.001);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn nut_factor<R: Recorder>(r: &mut R, bolt: &Bolt, mu: f64) -> Result<f64, FormulaError> {
    let torque = tightening_torque(r, bolt, Force::new::<newton>(1000.0), mu, mu)?.total();
    given!(r, T[newton_meter] = torque, "torque for 1000 N");
    given!(r, d[millimeter] = bolt.thread.major, "major diameter");
    step!(r, K [] = T / d, sources::ISO_16047);
    Ok(K)
}

/// A torque given for a dry thread, turned into the one for a lubricated thread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Converted {
    /// The torque that gives the same force when lubricated.
    pub torque: Torque,
    /// How many times the force the old torque would give.
    pub overload: f64,
}

/// Converts a torque from one friction to another at the same force, and says what the old torque would do.
///
/// # Errors
/// As [`tightening_torque`].
///
/// # Source
/// ISO 16047: T_lub = T·K_lub/K_dry. Never "add a bit".
///
/// # Example
/// An M10 whose friction falls from 0.20 to 0.10 would be stretched 1.83 times as hard (computed independently).
/// ```
/// use formulas::{Silent, thread::Thread, tightening::{Bolt, converted_torque}};
/// use uom::si::{f64::Torque, torque::newton_meter};
/// let bolt = Bolt::hexagon(Thread::metric(10.0, 1.5));
/// let converted = converted_torque(&mut Silent, &bolt, Torque::new::<newton_meter>(50.0), 0.20, 0.10)?;
/// assert!((converted.overload - 1.83).abs() < 0.01);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn converted_torque<R: Recorder>(
    r: &mut R,
    bolt: &Bolt,
    torque: Torque,
    mu_given: f64,
    mu_now: f64,
) -> Result<Converted, FormulaError> {
    let (K_dry, K_lub) = (nut_factor(r, bolt, mu_given)?, nut_factor(r, bolt, mu_now)?);
    given!(r, T[newton_meter] = torque, "torque given for the other friction");
    positive("the torque", T, "N·m")?;
    given!(r, K_dry [] = K_dry, "factor the torque was given for");
    given!(r, K_lub [] = K_lub, "factor of the thread as it is now");
    step!(r, T_lub[newton_meter] = T * K_lub / K_dry, sources::ISO_16047);
    step!(r, x [] = K_dry / K_lub, sources::ISO_16047);
    if x > 1.1 {
        r.caution(Caution::Danger { words: "The torque given for a dry thread overloads a lubricated one: use the converted torque." });
    }
    Ok(Converted { torque: Torque::new::<newton_meter>(T_lub), overload: x })
}

/// The torque to raise a load by a screw with a collar, without the small-angle simplification of [`tightening_torque`].
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `F` | load | N |
/// | `d_m` | mean diameter of the thread | mm |
/// | `D_c` | mean diameter of the collar | mm |
/// | `lambda`, `beta` | slope of the thread, half the angle of its flanks | rad |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a dimension of nothing, [`FormulaError::OutOfRange`] for impossible friction.
///
/// # Source
/// Shigley, power screws.
///
/// # Example
/// ¾-16, root area 0.351 in², collar 1.25 diameters, 25 000 lbf, friction 0.15: 3551 lbf·in (the book's example, *from memory*).
/// ```
/// use formulas::{Silent, thread::{Form, Thread}, tightening::screw_torque};
/// use uom::si::f64::{Force, Length};
/// use uom::si::{force::pound_force, length::inch, torque::pound_force_inch};
/// let thread = Thread::inch(Form::Unified, 0.75, 16.0);
/// let root = (4.0_f64 * 0.351 / std::f64::consts::PI).sqrt();
/// let inches = Length::new::<inch>;
/// let load = Force::new::<pound_force>(25_000.0);
/// let torque = screw_torque(&mut Silent, &thread, inches((0.75 + root) / 2.0), inches(1.25 * 0.75), load, 0.15, 0.15)?;
/// assert!((torque.get::<pound_force_inch>() - 3551.0).abs() < 5.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn screw_torque<R: Recorder>(
    r: &mut R,
    thread: &Thread,
    mean: Length,
    collar: Length,
    load: Force,
    mu_t: f64,
    mu_b: f64,
) -> Result<Torque, FormulaError> {
    crate::thread::checked(thread)?;
    given!(r, F[newton] = load, "load");
    positive("the load", F, "N")?;
    given!(r, P[millimeter] = thread.pitch, "pitch");
    given!(r, d_m[millimeter] = mean, "mean diameter of the thread");
    positive("the mean diameter of the thread", d_m, "mm")?;
    given!(r, D_c[millimeter] = collar, "mean diameter of the collar");
    positive("the mean diameter of the collar", D_c, "mm")?;
    given!(r, beta["rad"] = thread.form.half_angle_degrees().to_radians(), "half the angle between the flanks");
    given!(r, mu_t [] = mu_t, "friction in the thread");
    given!(r, mu_b [] = mu_b, "friction under the collar");
    friction_within("the friction in the thread", mu_t)?;
    friction_within("the friction under the collar", mu_b)?;
    step!(r, lambda["rad"] = atan(P / (PI * d_m)), sources::DEFINITION);
    step!(r, f [] = mu_t / cos(beta), sources::SHIGLEY);
    step!(
        r,
        T[newton_meter] = F * (d_m / 2.0 * ((tan(lambda) + f) / (1.0 - f * tan(lambda))) + D_c / 2.0 * mu_b) / 1000.0,
        sources::SHIGLEY
    );
    Ok(Torque::new::<newton_meter>(T))
}

/// How a bolt was tightened, by how much its force scatters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Means {
    /// By feel.
    Feel,
    /// With a torque wrench.
    TorqueWrench,
    /// By turning the nut through an angle.
    TurnOfNut,
    /// Not said.
    Unknown,
}

/// The force a bolt may really have: least, likely, most.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a force of nothing.
///
/// # Source
/// *Machinery's Handbook*: feel ±35 %, torque wrench ±25 %, turn of nut ±15 %; ±30 % where nothing is said is *common practice*.
pub fn preload_scatter<R: Recorder>(r: &mut R, preload: Force, by: Means) -> Result<Range<Force>, FormulaError> {
    let share = match by {
        Means::Feel => 0.35,
        Means::TorqueWrench => 0.25,
        Means::TurnOfNut => 0.15,
        Means::Unknown => 0.30,
    };
    given!(r, F[newton] = preload, "force meant");
    positive("the force", F, "N")?;
    given!(r, x [] = share, "share it scatters by");
    step!(r, F_min[newton] = F * (1.0 - x), sources::MACHINERYS_HANDBOOK);
    step!(r, F_max[newton] = F * (1.0 + x), sources::MACHINERYS_HANDBOOK);
    Ok(Range { low: F_min, likely: F, high: F_max }.map(Force::new::<newton>))
}
