//! Gears: the force on the teeth, and the viscosity an enclosed pair asks for.

#![expect(non_snake_case, reason = "symbols match the source")]

mod opinions;

use core::f64::consts::PI;

use units::{AngularVelocity, Force, KinematicViscosity, Length, Power, Range, Velocity};
use uom::si::angular_velocity::revolution_per_minute as rpm;
use uom::si::force::newton;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::millimeter;
use uom::si::power::kilowatt;
use uom::si::velocity::meter_per_second;

use crate::error::{FormulaError, positive};
use crate::math::{max, min, pow, sqrt};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

pub use opinions::{AgmaGrade, GearOpinions, OpenMedium, agma_grade, gear_opinions, open_gear_dose, open_gear_medium, worm_grade};

/// A pair of gears in mesh.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mesh {
    /// Tangential force on the teeth.
    pub force: Force,
    /// Face width.
    pub face: Length,
    /// Reference diameter of the pinion.
    pub pinion: Length,
    /// Teeth of the wheel over teeth of the pinion, 1 or more.
    pub ratio: f64,
    /// Speed of the pitch line.
    pub speed: Velocity,
    /// Application factor K_A: 1 for smooth drives, 1.25 for machine tools, more with shock.
    pub application: f64,
}

/// Below this speed a bath oil is not carried into the mesh, m/s.
pub const LEAST_SPEED: f64 = 0.5;

/// Force and speed factor above which an oil with EP additives is wanted, MPa·s/m.
pub const EP_FROM: f64 = 2.0;

/// Tangential force at a pinion's reference diameter: T = 9550·P/n, F_t = 2000·T/d_1.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `P` | power | kW |
/// | `n` | speed of the pinion | rev/min |
/// | `d_1` | reference diameter of the pinion | mm |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a speed or a diameter of nothing.
///
/// # Source
/// Mechanics.
///
/// # Example
/// 0.55 kW at 1450 rev/min turn with 3.62 N·m; at 40 mm diameter that is 181 N (by hand).
/// ```
/// use formulas::{Silent, gear::tangential_force};
/// use uom::si::{angular_velocity::revolution_per_minute, f64::{AngularVelocity, Length, Power}, force::newton, length::millimeter, power::kilowatt};
/// let force = tangential_force(
///     &mut Silent,
///     Power::new::<kilowatt>(0.55),
///     AngularVelocity::new::<revolution_per_minute>(1450.0),
///     Length::new::<millimeter>(40.0),
/// )?;
/// assert!((force.get::<newton>() - 181.0).abs() < 0.5);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn tangential_force<R: Recorder>(r: &mut R, power: Power, speed: AngularVelocity, pinion: Length) -> Result<Force, FormulaError> {
    given!(r, P[kilowatt] = power, "power");
    given!(r, n["rev/min"] = speed.get::<rpm>(), "speed of the pinion");
    given!(r, d_1[millimeter] = pinion, "reference diameter of the pinion");
    positive("the speed of the pinion", n, "rev/min")?;
    positive("the diameter of the pinion", d_1, "mm")?;
    step!(r, T["N·m"] = 60000.0 * P / (2.0 * PI * n), sources::DEFINITION);
    step!(r, F_t[newton] = 2000.0 * T / d_1, sources::DEFINITION);
    Ok(Force::new::<newton>(F_t))
}

/// Speed of the pitch line: v = π·d_1·n.
///
/// # Source
/// Geometry.
pub fn pitch_line_speed<R: Recorder>(r: &mut R, pinion: Length, speed: AngularVelocity) -> Velocity {
    given!(r, d_1[millimeter] = pinion, "reference diameter of the pinion");
    given!(r, n["rev/min"] = speed.get::<rpm>(), "speed of the pinion");
    step!(r, v[meter_per_second] = PI * d_1 * n / 60000.0, sources::DEFINITION);
    Velocity::new::<meter_per_second>(v)
}

/// Force and speed factor of a mesh in MPa·s/m: the rolling pressure k_s over the speed of the pitch line.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `F_t` | tangential force | N |
/// | `b` | face width | mm |
/// | `d_1` | reference diameter of the pinion | mm |
/// | `u` | gear ratio | – |
/// | `v` | speed of the pitch line | m/s |
///
/// # Range
/// Spur and helical gears; 3 stands for the product of the squared zone and contact ratio factors.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a width, diameter, ratio or speed of nothing.
///
/// # Source
/// DIN 51509-1.
///
/// # Example
/// A leaflet's worked example: 3000 N on 25 mm of a 230 mm pinion, ratio 2.5, at 4 m/s, gives k_s = 2.2 MPa and a factor of 0.55.
/// ```
/// use formulas::{Silent, gear::{Mesh, force_speed_factor}};
/// use uom::si::{f64::{Force, Length, Velocity}, force::newton, length::millimeter, velocity::meter_per_second};
/// let mesh = Mesh {
///     force: Force::new::<newton>(3000.0),
///     face: Length::new::<millimeter>(25.0),
///     pinion: Length::new::<millimeter>(230.0),
///     ratio: 2.5,
///     speed: Velocity::new::<meter_per_second>(4.0),
///     application: 1.0,
/// };
/// assert!((force_speed_factor(&mut Silent, &mesh)? - 0.55).abs() < 0.0055);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn force_speed_factor<R: Recorder>(r: &mut R, mesh: &Mesh) -> Result<f64, FormulaError> {
    given!(r, F_t[newton] = mesh.force, "tangential force");
    given!(r, b[millimeter] = mesh.face, "face width");
    given!(r, d_1[millimeter] = mesh.pinion, "reference diameter of the pinion");
    given!(r, u [] = mesh.ratio, "gear ratio");
    given!(r, v[meter_per_second] = mesh.speed, "speed of the pitch line");
    given!(r, K_A [] = mesh.application, "application factor");
    positive("the face width", b, "mm")?;
    positive("the diameter of the pinion", d_1, "mm")?;
    positive("the gear ratio", u, "")?;
    positive("the speed of the pitch line", v, "m/s")?;
    positive("the application factor", K_A, "")?;
    step!(r, k_s["MPa"] = F_t / (b * d_1) * ((u + 1.0) / u) * 3.0 * K_A, sources::DIN_51509);
    step!(r, x["MPa·s/m"] = k_s / v, sources::DIN_51509);
    Ok(x)
}

/// Viscosity at 40 °C an enclosed pair of gears asks of its oil: both opinions, and the span between them.
///
/// One is the diagram of DIN 51509-1, as a fit 190·x^0.4 good to a grade and a half; the other 500/√v. The likely value is their
/// geometric mean, low and high are the two themselves.
///
/// # Range
/// Enclosed spur and helical gears in a bath, 0.5 m/s and faster, and 0.02 ≤ x ≤ 10. Outside, the fit is held at its end and the
/// answer carries [`Caution::Extrapolated`].
///
/// # Errors
/// [`FormulaError::GearTooSlow`] below 0.5 m/s; [`FormulaError::NotPositive`] as [`force_speed_factor`].
///
/// # Source
/// DIN 51509-1 (the fit *from memory*); *ASM Handbook* volume 18 (*from memory*).
pub fn gear_viscosity<R: Recorder>(r: &mut R, mesh: &Mesh) -> Result<Range<KinematicViscosity>, FormulaError> {
    given!(r, v[meter_per_second] = mesh.speed, "speed of the pitch line");
    if v < LEAST_SPEED {
        return Err(FormulaError::GearTooSlow { speed: v, instead: "a tacky oil or an adhesive grease" });
    }
    let x = force_speed_factor(r, mesh)?;
    if !(0.02..=10.0).contains(&x) {
        r.caution(Caution::Extrapolated { what: "the force and speed factor", value: x, unit: "MPa·s/m", low: 0.02, high: 10.0 });
    }
    step!(r, x [] = min(max(x, 0.02), 10.0), sources::DIN_51509);
    step!(r, nu_1[mm2_per_s] = 190.0 * pow(x, 0.4), sources::DIN_51509);
    step!(r, nu_2[mm2_per_s] = 500.0 / sqrt(v), sources::ASM_HANDBOOK_18);
    step!(r, nu[mm2_per_s] = sqrt(nu_1 * nu_2), sources::COMMON_PRACTICE);
    r.caution(Caution::Disputed {
        what: "the viscosity of gear oils",
        why: "the German diagram and the American rule lie up to two grades apart; the range holds both",
    });
    let [low, likely, high] = [min(nu_1, nu_2), nu, max(nu_1, nu_2)].map(KinematicViscosity::new::<mm2_per_s>);
    Ok(Range { low, likely, high })
}
