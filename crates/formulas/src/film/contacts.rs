//! The contacts of a shop's machines: gear teeth at the pitch point, the balls and rollers of bearings, the balls of a ball screw.
//!
//! A sliding screw's flanks are parallel to its nut's and have no such contact; it is judged as a bush, by pressure and velocity.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{AngularVelocity, DynamicViscosity, Force, Length, Pressure, Velocity};
use uom::si::angular_velocity::radian_per_second;
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::pressure::gigapascal;
use uom::si::velocity::meter_per_second;

use super::{Contact, LineContact, ellipticity, pressure_coefficient};
use crate::error::{FormulaError, positive, within};
use crate::gear::Mesh;
use crate::math::{cos, pow, sin};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Effective modulus of steel on steel, GPa.
pub const STEEL_ON_STEEL_GPA: f64 = 226.0;

/// The line of contact of two spur gears at the pitch point, in a mineral oil.
///
/// R = ½·d_1·sin α·u/(u + 1), mean speed v·sin α, load F_t·K_A/cos α on the face.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `alpha` | pressure angle | ° |
/// | `d_1` | reference diameter of the pinion | mm |
/// | `u` | gear ratio | – |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a pressure angle outside 10 to 30°; [`FormulaError::NotPositive`] for a diameter or ratio of nothing.
///
/// # Source
/// Geometry of involutes.
///
/// # Example
/// Two gears of 40 mm at 20°: each tooth curves with 6.84 mm, together with 3.42 mm (by hand).
/// ```
/// use formulas::{Silent, film::tooth_contact, gear::Mesh};
/// use uom::si::f64::{DynamicViscosity, Force, Length, Velocity};
/// use uom::si::{dynamic_viscosity::millipascal_second, force::newton, length::millimeter, velocity::meter_per_second};
/// let mesh = Mesh {
///     force: Force::new::<newton>(200.0),
///     face: Length::new::<millimeter>(10.0),
///     pinion: Length::new::<millimeter>(40.0),
///     ratio: 1.0,
///     speed: Velocity::new::<meter_per_second>(2.0),
///     application: 1.0,
/// };
/// let contact = tooth_contact(&mut Silent, &mesh, 20.0, DynamicViscosity::new::<millipascal_second>(50.0))?;
/// assert!((contact.radius.get::<millimeter>() - 3.42).abs() < 0.005);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn tooth_contact<R: Recorder>(
    r: &mut R,
    mesh: &Mesh,
    pressure_angle_degrees: f64,
    viscosity: DynamicViscosity,
) -> Result<LineContact, FormulaError> {
    given!(r, alpha["°"] = pressure_angle_degrees, "pressure angle");
    given!(r, d_1[millimeter] = mesh.pinion, "reference diameter of the pinion");
    given!(r, u [] = mesh.ratio, "gear ratio");
    given!(r, v[meter_per_second] = mesh.speed, "speed of the pitch line");
    given!(r, F_t[newton] = mesh.force, "tangential force");
    given!(r, K_A [] = mesh.application, "application factor");
    within("the pressure angle", alpha, "°", (10.0, 30.0), sources::DEFINITION)?;
    positive("the diameter of the pinion", d_1, "mm")?;
    positive("the gear ratio", u, "")?;
    step!(r, alpha_r["rad"] = alpha * core::f64::consts::PI / 180.0, sources::DEFINITION);
    step!(r, R_x[millimeter] = d_1 / 2.0 * sin(alpha_r) * u / (u + 1.0), sources::DEFINITION);
    step!(r, u_m[meter_per_second] = v * sin(alpha_r), sources::DEFINITION);
    step!(r, w[newton] = F_t * K_A / cos(alpha_r), sources::DEFINITION);
    Ok(LineContact {
        speed: Velocity::new::<meter_per_second>(u_m),
        viscosity,
        pressure_coefficient_per_pa: pressure_coefficient(r, viscosity),
        modulus: Pressure::new::<gigapascal>(STEEL_ON_STEEL_GPA),
        radius: Length::new::<millimeter>(R_x),
        load: Force::new::<newton>(w),
        length: mesh.face,
    })
}

/// A rolling part between two races, of which the outer one stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RollingPart {
    /// Diameter of the ball or roller.
    pub diameter: Length,
    /// Mean diameter of the bearing, or pitch circle of a ball screw.
    pub mean_diameter: Length,
    /// Speed of the inner race, or of the screw.
    pub speed: AngularVelocity,
    /// Load on the most loaded part.
    pub load: Force,
}

/// Effective radius at the inner race, mm, and mean speed of the surfaces there, m/s.
fn inner_race<R: Recorder>(r: &mut R, part: &RollingPart) -> Result<(f64, f64), FormulaError> {
    given!(r, D_w[millimeter] = part.diameter, "diameter of the rolling part");
    given!(r, d_m[millimeter] = part.mean_diameter, "mean diameter");
    given!(r, omega["rad/s"] = part.speed.get::<radian_per_second>(), "speed of the inner race");
    positive("the diameter of the rolling part", D_w, "mm")?;
    positive("the mean diameter", d_m, "mm")?;
    step!(r, gamma [] = D_w / d_m, sources::DEFINITION);
    within("the rolling part over the mean diameter", gamma, "", (0.0, 0.5), sources::DEFINITION)?;
    step!(r, R_x[millimeter] = D_w / 2.0 * (1.0 - gamma), sources::DEFINITION);
    step!(r, u[meter_per_second] = omega * d_m / 4000.0 * (1.0 - pow(gamma, 2.0)), sources::DEFINITION);
    Ok((R_x, u))
}

/// The contact of a roller with its inner race.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a diameter of nothing; [`FormulaError::OutOfRange`] for a roller over half the mean diameter.
///
/// # Source
/// Geometry; kinematics of rolling.
pub fn roller_contact<R: Recorder>(
    r: &mut R,
    part: &RollingPart,
    roller_length: Length,
    viscosity: DynamicViscosity,
) -> Result<LineContact, FormulaError> {
    let (R_x, u) = inner_race(r, part)?;
    Ok(LineContact {
        speed: Velocity::new::<meter_per_second>(u),
        viscosity,
        pressure_coefficient_per_pa: pressure_coefficient(r, viscosity),
        modulus: Pressure::new::<gigapascal>(STEEL_ON_STEEL_GPA),
        radius: Length::new::<millimeter>(R_x),
        load: part.load,
        length: roller_length,
    })
}

/// The contact of a ball with the groove of its inner race, or of a ball screw's thread.
///
/// The groove's radius is 0.52 of the ball's diameter, as bearings have it.
///
/// # Errors
/// As [`roller_contact`].
///
/// # Source
/// Geometry; the groove is *common practice*.
pub fn ball_contact<R: Recorder>(r: &mut R, part: &RollingPart, viscosity: DynamicViscosity) -> Result<Contact, FormulaError> {
    let (R_x, u) = inner_race(r, part)?;
    given!(r, D_w[millimeter] = part.diameter, "diameter of the ball");
    step!(r, R_y[millimeter] = 0.52 * D_w / (2.0 * 0.52 - 1.0), sources::COMMON_PRACTICE);
    let radius = Length::new::<millimeter>(R_x);
    Ok(Contact {
        speed: Velocity::new::<meter_per_second>(u),
        viscosity,
        pressure_coefficient_per_pa: pressure_coefficient(r, viscosity),
        modulus: Pressure::new::<gigapascal>(STEEL_ON_STEEL_GPA),
        radius,
        load: part.load,
        ellipticity: ellipticity(r, Length::new::<millimeter>(R_y), radius),
    })
}

/// Load on the most loaded of a radial bearing's parts: 5·F/Z.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a bearing without parts.
///
/// # Source
/// Stribeck's rule, with ordinary clearance; *from memory*.
pub fn most_loaded_part<R: Recorder>(r: &mut R, radial_load: Force, parts: f64) -> Result<Force, FormulaError> {
    given!(r, F[newton] = radial_load, "radial load");
    given!(r, Z [] = parts, "balls or rollers");
    positive("the number of rolling parts", Z, "")?;
    step!(r, w[newton] = 5.0 * F / Z, sources::COMMON_PRACTICE);
    r.caution(Caution::Rough { what: "the load on one part", why: "it follows the bearing's clearance and how stiff its housing is" });
    Ok(Force::new::<newton>(w))
}
