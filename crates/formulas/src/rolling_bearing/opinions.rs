//! Second opinions on a rolling bearing's oil, and what a turning outer ring does to its grease.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{AngularVelocity, KinematicViscosity, Length, Range};
use uom::si::angular_velocity::revolution_per_minute as rpm;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::millimeter;

use super::reference_viscosity;
use crate::error::{FormulaError, positive};
use crate::math::{max, min};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// A bearing's form, as the handbook's least viscosities tell them apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Form {
    /// Ball and cylindrical roller bearings.
    BallOrCylindrical,
    /// Spherical and taper roller bearings.
    Spherical,
    /// Spherical roller thrust bearings.
    SphericalThrust,
}

impl Form {
    /// Least viscosity at running temperature, mm²/s.
    ///
    /// # Source
    /// *The Tribology Handbook*, C8: 12, 20 and 32.
    #[must_use]
    pub fn floor(self) -> KinematicViscosity {
        KinematicViscosity::new::<mm2_per_s>(match self {
            Self::BallOrCylindrical => 12.0,
            Self::Spherical => 20.0,
            Self::SphericalThrust => 32.0,
        })
    }
}

/// Least viscosity at running temperature in two opinions: the reference viscosity of ISO 281, and the handbook's floor.
///
/// The likely value is the reference viscosity; the floor is the other end of the range. At moderate speed the reference viscosity is the
/// higher, and asks more; a fast bearing has a reference viscosity below the floor and runs on such thin oil, for less heat.
///
/// # Errors
/// As [`reference_viscosity`].
///
/// # Source
/// ISO 281:2007; *The Tribology Handbook*, C8.
///
/// # Example
/// The handbook's chart example (mean diameter 85 mm, 5000 rev/min) wants 6.8 mm²/s, below its own floor of 12 for moderate speeds.
/// ```
/// use formulas::{Silent, rolling_bearing::{Form, viscosity_opinions}};
/// use uom::si::{angular_velocity::revolution_per_minute, f64::{AngularVelocity, Length}};
/// use uom::si::{kinematic_viscosity::square_millimeter_per_second as mm2_per_s, length::millimeter};
/// let opinions = viscosity_opinions(
///     &mut Silent,
///     AngularVelocity::new::<revolution_per_minute>(5000.0),
///     Length::new::<millimeter>(85.0),
///     Form::BallOrCylindrical,
/// )?;
/// assert!((opinions.likely.get::<mm2_per_s>() - 6.8).abs() < 0.05 * 6.8);
/// assert!((opinions.high.get::<mm2_per_s>() - 12.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn viscosity_opinions<R: Recorder>(
    r: &mut R,
    speed: AngularVelocity,
    mean_diameter: Length,
    form: Form,
) -> Result<Range<KinematicViscosity>, FormulaError> {
    let reference = reference_viscosity(r, speed, mean_diameter)?;
    given!(r, nu_1[mm2_per_s] = reference, "reference viscosity");
    given!(r, nu_f[mm2_per_s] = form.floor(), "the handbook's floor");
    step!(r, nu_low[mm2_per_s] = min(nu_1, nu_f), sources::TRIBOLOGY_HANDBOOK);
    step!(r, nu_high[mm2_per_s] = max(nu_1, nu_f), sources::TRIBOLOGY_HANDBOOK);
    if nu_f > nu_1 {
        r.caution(Caution::Disputed {
            what: "the oil of a fast bearing",
            why: "the handbook's floor is for moderate speeds; at this speed thinner oil already parts the surfaces, and runs cooler",
        });
    }
    Ok(Range { low: KinematicViscosity::new::<mm2_per_s>(nu_low), likely: reference, high: KinematicViscosity::new::<mm2_per_s>(nu_high) })
}

/// Speed to count with for grease where the outer ring turns, as in a loose pulley or a wheel hub: n·D/d.
///
/// The ring flings its grease outward, and its rim runs faster than a shaft of the bore would; the speed is raised so that speed times
/// bore becomes speed times outside diameter. Hand the answer to [`regrease_interval`](super::regrease_interval) in place of the speed.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a diameter of nothing.
///
/// # Source
/// *Common practice, no source.*
///
/// # Example
/// 25 × 52 mm at 1000 rev/min counts as 2080 rev/min (by hand).
/// ```
/// use formulas::{Silent, rolling_bearing::outer_ring_speed};
/// use uom::si::{angular_velocity::revolution_per_minute as rpm, f64::{AngularVelocity, Length}, length::millimeter};
/// let mm = Length::new::<millimeter>;
/// let speed = outer_ring_speed(&mut Silent, AngularVelocity::new::<rpm>(1000.0), mm(25.0), mm(52.0))?;
/// assert!((speed.get::<rpm>() - 2080.0).abs() < 1e-6);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn outer_ring_speed<R: Recorder>(
    r: &mut R,
    speed: AngularVelocity,
    bore: Length,
    outside: Length,
) -> Result<AngularVelocity, FormulaError> {
    given!(r, n["rev/min"] = speed.get::<rpm>(), "speed of the outer ring");
    given!(r, d[millimeter] = bore, "bore");
    given!(r, D[millimeter] = outside, "outside diameter");
    positive("the bore", d, "mm")?;
    positive("the outside diameter", D, "mm")?;
    step!(r, n_o["rev/min"] = n * D / d, sources::COMMON_PRACTICE);
    Ok(AngularVelocity::new::<rpm>(n_o))
}
