//! Rolling bearings: the viscosity they ask for, and how long their grease lasts.

#![expect(non_snake_case, reason = "symbols match the source")]

mod life;
mod opinions;

use core::f64::consts::PI;

use units::{AngularVelocity, KinematicViscosity, Length, Mass, Temperature, Time, Volume};
use uom::si::angular_velocity::revolution_per_minute as rpm;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::millimeter;
use uom::si::mass::gram;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour;
use uom::si::volume::cubic_centimeter;

use crate::error::{FormulaError, positive, within};
use crate::math::{max, min, pow, sqrt};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

pub use life::{Cleanliness, Fatigue, LifeJudgement, Rolling, judge_by_life, life_modification};
pub use opinions::{Form, outer_ring_speed, viscosity_opinions};

/// Mean diameter of a bearing, from its bore and outside diameter.
#[must_use]
pub fn mean_diameter(bore: Length, outside: Length) -> Length {
    (bore + outside) / 2.0
}

/// The viscosity at running temperature that just lifts the rolling parts off their races.
///
/// ν_1 = 45 000·n^−0.83·d_m^−0.5 below 1000 rev/min, 4500·n^−0.5·d_m^−0.5 from there on. The standard's two branches part by 2 % at
/// 1000 rev/min.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `n` | speed | rev/min |
/// | `d_m` | mean diameter | mm |
///
/// # Range
/// Any rolling bearing that turns; standing still it asks for no film.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a speed or a diameter of nothing.
///
/// # Source
/// ISO 281:2007.
///
/// # Example
/// A handbook's chart reads 6.8 mm²/s for 60 mm bore (85 mm mean diameter) at 5000 rev/min (*The Tribology Handbook*, C8).
/// ```
/// use formulas::{Silent, rolling_bearing::reference_viscosity};
/// use uom::si::{angular_velocity::revolution_per_minute, f64::{AngularVelocity, Length}};
/// use uom::si::{kinematic_viscosity::square_millimeter_per_second as mm2_per_s, length::millimeter};
/// let nu_1 = reference_viscosity(
///     &mut Silent,
///     AngularVelocity::new::<revolution_per_minute>(5000.0),
///     Length::new::<millimeter>(85.0),
/// )?;
/// assert!((nu_1.get::<mm2_per_s>() - 6.8).abs() < 0.05 * 6.8);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn reference_viscosity<R: Recorder>(
    r: &mut R,
    speed: AngularVelocity,
    mean_diameter: Length,
) -> Result<KinematicViscosity, FormulaError> {
    given!(r, n["rev/min"] = speed.get::<rpm>(), "speed");
    given!(r, d_m[millimeter] = mean_diameter, "mean diameter of the bearing");
    positive("the speed", n, "rev/min")?;
    positive("the mean diameter", d_m, "mm")?;
    step!(
        r,
        nu_1[mm2_per_s] = if n < 1000.0 { 45000.0 * pow(n, -0.83) * pow(d_m, -0.5) } else { 4500.0 * pow(n, -0.5) * pow(d_m, -0.5) },
        sources::ISO_281
    );
    Ok(KinematicViscosity::new::<mm2_per_s>(nu_1))
}

/// The viscosity ratio κ: what the oil (or the grease's base oil) has at running temperature over what the bearing asks for.
///
/// # Source
/// ISO 281:2007.
pub fn viscosity_ratio<R: Recorder>(r: &mut R, nu: KinematicViscosity, nu_1: KinematicViscosity) -> f64 {
    given!(r, nu[mm2_per_s] = nu, "viscosity at running temperature");
    given!(r, nu_1[mm2_per_s] = nu_1, "reference viscosity");
    step!(r, kappa [] = nu / nu_1, sources::ISO_281);
    kappa
}

/// How a rolling bearing runs at a viscosity ratio.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Regime {
    /// κ below 0.1: outside the standard.
    Outside,
    /// κ below 0.4: the parts touch; EP additives or solids carry the load.
    Boundary,
    /// κ from 0.4 to 1: the parts touch now and then; anti-wear additives are wanted.
    Mixed,
    /// κ from 1 to 4: normal.
    Normal,
    /// κ of 4 and more: a full film; thicker oil would only add drag.
    Full,
}

/// The regime a viscosity ratio stands for.
///
/// # Source
/// ISO 281:2007 for 0.1, 0.4, 1 and 4; what each asks for is *common practice, no source*.
#[must_use]
pub fn regime(kappa: f64) -> Regime {
    match kappa {
        k if k >= 4.0 => Regime::Full,
        k if k >= 1.0 => Regime::Normal,
        k if k >= 0.4 => Regime::Mixed,
        k if k >= 0.1 => Regime::Boundary,
        _ => Regime::Outside,
    }
}

/// The speed factor: speed times mean diameter, mm/min.
///
/// # Source
/// *The Tribology Handbook*, C8.
pub fn speed_factor<R: Recorder>(r: &mut R, speed: AngularVelocity, mean_diameter: Length) -> f64 {
    given!(r, n["rev/min"] = speed.get::<rpm>(), "speed");
    given!(r, d_m[millimeter] = mean_diameter, "mean diameter of the bearing");
    step!(r, A["mm/min"] = n * d_m, sources::TRIBOLOGY_HANDBOOK);
    A
}

/// How sorely a kind of bearing works its grease.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Radial ball bearings.
    Ball,
    /// Cylindrical roller and needle bearings.
    Cylindrical,
    /// Taper and spherical roller bearings.
    Taper,
}

impl Kind {
    /// The factor k of the grease life formula.
    #[must_use]
    pub fn factor(self) -> f64 {
        match self {
            Self::Ball => 10.0,
            Self::Cylindrical => 5.0,
            Self::Taper => 1.0,
        }
    }
}

/// How much dirt reaches a bearing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Dirt {
    /// Clean, or well sealed.
    Clean,
    /// Ordinary dust.
    Dusty,
    /// Grit, chips or damp.
    Dirty,
}

impl Dirt {
    fn factor(self) -> f64 {
        match self {
            Self::Clean => 1.0,
            Self::Dusty => 0.5,
            Self::Dirty => 0.1,
        }
    }
}

/// Grease is renewed after three years however little a bearing has run: 3 × 8766 h.
pub const CALENDAR_CAP_H: f64 = 26_298.0;

/// Running hours after which a bearing is regreased.
///
/// t_f = k·[14·10⁶/(n·√d) − 4·d], halved for each 15 K above 70 °C, doubled at 55 °C and below, halved on a vertical shaft.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `n` | speed | rev/min |
/// | `d` | bore | mm |
/// | `k` | 10 ball, 5 cylindrical or needle, 1 taper or spherical | – |
/// | `theta` | temperature of the bearing | °C |
///
/// # Range
/// Lithium greases; up to 120 °C. The answer is running time: grease is also renewed after three years ([`CALENDAR_CAP_H`]), which the
/// caller knows from the hours run in a year. Sealed bearings are not relubricated. Makers' factors differ up to fivefold.
///
/// # Errors
/// [`FormulaError::TooFastForGrease`] where the formula leaves nothing; [`FormulaError::OutOfRange`] above 120 °C.
///
/// # Source
/// *The Tribology Handbook*, A20; the factors for dirt are *common practice, no source*.
///
/// # Example
/// A ball bearing of 25 mm bore at 1450 rev/min, at 70 °C: 18 310 h (computed independently).
/// ```
/// use formulas::{Silent, rolling_bearing::{Dirt, Kind, regrease_interval}};
/// use uom::si::{angular_velocity::revolution_per_minute, f64::{AngularVelocity, Length, ThermodynamicTemperature}};
/// use uom::si::{length::millimeter, thermodynamic_temperature::degree_celsius, time::hour};
/// let interval = regrease_interval(
///     &mut Silent,
///     AngularVelocity::new::<revolution_per_minute>(1450.0),
///     Length::new::<millimeter>(25.0),
///     Kind::Ball,
///     ThermodynamicTemperature::new::<degree_celsius>(70.0),
///     false,
///     Dirt::Clean,
/// )?;
/// assert!((interval.get::<hour>() - 18_310.0).abs() < 0.005 * 18_310.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn regrease_interval<R: Recorder>(
    r: &mut R,
    speed: AngularVelocity,
    bore: Length,
    kind: Kind,
    temperature: Temperature,
    vertical: bool,
    dirt: Dirt,
) -> Result<Time, FormulaError> {
    given!(r, n["rev/min"] = speed.get::<rpm>(), "speed");
    given!(r, d[millimeter] = bore, "bore");
    given!(r, k [] = kind.factor(), "factor of the kind of bearing");
    given!(r, theta[degree_celsius] = temperature, "temperature of the bearing");
    positive("the speed", n, "rev/min")?;
    positive("the bore", d, "mm")?;
    within("the temperature", theta, "°C", (-40.0, 120.0), sources::TRIBOLOGY_HANDBOOK)?;
    step!(r, t_f["h"] = k * (14e6 / (n * sqrt(d)) - 4.0 * d), sources::TRIBOLOGY_HANDBOOK);
    if t_f <= 0.0 {
        return Err(FormulaError::TooFastForGrease { bore: d, speed: n });
    }
    step!(
        r,
        f_t [] = if theta > 70.0 { pow(0.5, (theta - 70.0) / 15.0) } else if theta <= 55.0 { 2.0 } else { 1.0 },
        sources::TRIBOLOGY_HANDBOOK
    );
    given!(r, f_v [] = if vertical { 0.5 } else { 1.0 }, "factor for a vertical shaft");
    given!(r, f_d [] = dirt.factor(), "factor for dirt");
    step!(r, t["h"] = t_f * f_t * f_v * f_d, sources::TRIBOLOGY_HANDBOOK);
    r.caution(Caution::Disputed { what: "regreasing intervals", why: "makers' factors for the kind of bearing differ up to fivefold" });
    Ok(Time::new::<hour>(t))
}

/// Grease put in at each regreasing: G = 0.005·D·B grams.
///
/// # Source
/// *The Tribology Handbook*, A20.
///
/// # Example
/// An outside diameter of 52 mm and a width of 15 mm take 3.9 g (computed independently).
/// ```
/// use formulas::{Silent, rolling_bearing::regrease_mass};
/// use uom::si::{f64::Length, length::millimeter, mass::gram};
/// let mass = regrease_mass(&mut Silent, Length::new::<millimeter>(52.0), Length::new::<millimeter>(15.0));
/// assert!((mass.get::<gram>() - 3.9).abs() < 0.078);
/// ```
pub fn regrease_mass<R: Recorder>(r: &mut R, outside: Length, width: Length) -> Mass {
    given!(r, D[millimeter] = outside, "outside diameter");
    given!(r, B[millimeter] = width, "width");
    step!(r, G[gram] = 0.005 * D * B, sources::TRIBOLOGY_HANDBOOK);
    Mass::new::<gram>(G)
}

/// Free space inside a bearing: its envelope less its steel.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `D`, `d`, `B` | outside diameter, bore, width | mm |
/// | `M` | mass of the bearing | g |
///
/// # Source
/// *From memory*; 7.8 g/cm³ is the density of steel.
///
/// # Example
/// 25 × 52 × 15 mm and 130 g leave 7.8 cm³ (computed independently).
/// ```
/// use formulas::{Silent, rolling_bearing::free_space};
/// use uom::si::{f64::{Length, Mass}, length::millimeter, mass::gram, volume::cubic_centimeter};
/// let mm = Length::new::<millimeter>;
/// let space = free_space(&mut Silent, mm(25.0), mm(52.0), mm(15.0), Mass::new::<gram>(130.0));
/// assert!((space.get::<cubic_centimeter>() - 7.8).abs() < 0.156);
/// ```
pub fn free_space<R: Recorder>(r: &mut R, bore: Length, outside: Length, width: Length, mass: Mass) -> Volume {
    given!(r, d[millimeter] = bore, "bore");
    given!(r, D[millimeter] = outside, "outside diameter");
    given!(r, B[millimeter] = width, "width");
    given!(r, M[gram] = mass, "mass of the bearing");
    step!(r, V["cm³"] = max(PI / 4.0 * B * (pow(D, 2.0) - pow(d, 2.0)) / 1000.0 - M / 7.8, 0.0), sources::COMMON_PRACTICE);
    Volume::new::<cubic_centimeter>(V)
}

/// First fill of grease: 40 % of the free space (30 to 50 %), half as much in a fast spindle.
///
/// # Source
/// *The Tribology Handbook*, A20; 15 to 25 % for fast spindles is *common practice, no source*.
pub fn first_fill<R: Recorder>(r: &mut R, free_space: Volume, fast_spindle: bool) -> Volume {
    given!(r, V["cm³"] = free_space.get::<cubic_centimeter>(), "free space");
    given!(r, f [] = if fast_spindle { 0.2 } else { 0.4 }, "share of it to fill");
    step!(r, V_g["cm³"] = f * V, sources::TRIBOLOGY_HANDBOOK);
    Volume::new::<cubic_centimeter>(min(V_g, V))
}
