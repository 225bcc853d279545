//! Steam cylinders: which oil the steam's temperature asks for, how much, and how wet steam changes both.

use units::{AngularVelocity, KinematicViscosity, Length, Pressure, Range, Temperature, Volume};
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::pressure::bar;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::volume::milliliter;

use crate::cutting::DROP_ML;
use crate::error::{FormulaError, within};
use crate::feed::cylinder_feed;
use crate::math::max;
use crate::sources;
use crate::steam::saturation_temperature;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Steam as it reaches the cylinder.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Steam {
    /// With water in it, as a small boiler without a dome gives it.
    Wet,
    /// Just dry.
    Dry,
    /// Heated beyond its saturation, to this temperature.
    Superheated(Temperature),
}

/// The oil a cylinder asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CylinderOil {
    /// Temperature of the steam.
    pub steam: Temperature,
    /// Grades that serve, mm²/s at 40 °C.
    pub grades: Range<f64>,
    /// Fatty oil in it, %: fat keeps oil on a wet wall, and chars in superheat.
    pub fat_percent: Range<f64>,
    /// Viscosity to have at the steam's temperature.
    pub viscosity_there: KinematicViscosity,
    /// Least flash point.
    pub flash: Temperature,
}

/// Viscosity a cylinder oil should keep at the steam's temperature, mm²/s (*common practice, no source*).
pub const VISCOSITY_IN_STEAM: f64 = 7.0;

/// How far its flash point must lie above the steam, K (*common practice, no source*).
pub const FLASH_ABOVE_K: f64 = 60.0;

const CARE: Caution = Caution::Danger {
    words: "Steam scalds, and a boiler can burst. Have boiler and fittings tested and run them as your local rules and a competent boiler inspector say; keep cylinder oil out of the boiler, where it makes the water foam and the plates overheat.",
};

/// The oil a steam cylinder asks for, from the gauge.
///
/// | steam | grade | fat |
/// | --- | --- | --- |
/// | to 5 bar | 220 to 460, compounded | 3 to 8 % (wet 5 to 20) |
/// | 5 to 8 bar | 460 to 680, compounded | 3 to 8 % (wet 5 to 20) |
/// | above, or superheated | 680 to 1000, straight or nearly | 0 to 3 % |
///
/// # Range
/// 0 to 20 bar on the gauge; superheat to 350 °C.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside, or for superheated steam cooler than its saturation.
///
/// # Source
/// IAPWS-IF97 for the temperature; grades and fat are *common practice, no source*, and disputed.
///
/// # Example
/// 4 bar on the gauge is 151.9 °C (computed independently): an oil of 220 to 460 with fat, whose flash point is 212 °C or more.
/// ```
/// use formulas::{Silent, steam_cylinder::{Steam, cylinder_oil}};
/// use uom::si::{f64::Pressure, pressure::bar, thermodynamic_temperature::degree_celsius};
/// let oil = cylinder_oil(&mut Silent, Pressure::new::<bar>(4.0), Steam::Dry)?;
/// assert!((oil.steam.get::<degree_celsius>() - 151.9).abs() < 0.1);
/// assert_eq!((oil.grades.low, oil.grades.high), (220.0, 460.0));
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn cylinder_oil<R: Recorder>(r: &mut R, gauge: Pressure, steam: Steam) -> Result<CylinderOil, FormulaError> {
    given!(r, p_g[bar] = gauge, "pressure on the gauge");
    within("the pressure on the gauge", p_g, "bar", (0.0, 20.0), sources::COMMON_PRACTICE)?;
    let saturated = saturation_temperature(r, gauge)?;
    given!(r, t_s[degree_celsius] = saturated, "saturation temperature");
    let (at, superheated) = match steam {
        Steam::Superheated(at) => {
            let limits = (t_s, 350.0);
            within("the temperature of the superheated steam", at.get::<degree_celsius>(), "°C", limits, sources::COMMON_PRACTICE)?;
            (at, at > saturated)
        }
        Steam::Wet | Steam::Dry => (saturated, false),
    };
    let grades = match p_g {
        _ if superheated => Range { low: 680.0, likely: 680.0, high: 1000.0 },
        p if p <= 5.0 => Range { low: 220.0, likely: 460.0, high: 460.0 },
        p if p <= 8.0 => Range { low: 460.0, likely: 460.0, high: 680.0 },
        _ => Range { low: 680.0, likely: 680.0, high: 1000.0 },
    };
    let fat_percent = match steam {
        Steam::Wet => Range { low: 5.0, likely: 8.0, high: 20.0 },
        Steam::Dry if p_g <= 8.0 => Range { low: 3.0, likely: 5.0, high: 8.0 },
        Steam::Dry | Steam::Superheated(_) => Range { low: 0.0, likely: 2.0, high: 3.0 },
    };
    given!(r, t[degree_celsius] = at, "temperature of the steam");
    step!(r, t_f[degree_celsius] = t + 60.0, sources::COMMON_PRACTICE);
    r.caution(Caution::Disputed {
        what: "compounding",
        why: "3 to 20 % of fat is sold for saturated steam, and some owners run none at all when the steam is wet",
    });
    r.caution(CARE);
    Ok(CylinderOil {
        steam: at,
        grades,
        fat_percent,
        viscosity_there: KinematicViscosity::new::<mm2_per_s>(VISCOSITY_IN_STEAM),
        flash: Temperature::new::<degree_celsius>(t_f),
    })
}

/// Oil fed to a cylinder in an hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HourlyFeed {
    /// Drops: the floor of a compressor text, ten times it, fifty times it.
    pub drops: Range<f64>,
    /// The same as a volume.
    pub volume: Range<Volume>,
}

/// How much more than the floor owners of small engines feed: ten times, up to fifty (*common practice, no source*).
pub const HOBBY_FEED: (f64, f64) = (10.0, 50.0);

/// Oil a small engine's cylinder is fed in an hour: a compressor text's floor to what owners give, and half as much again as likely where
/// the steam is wet and washes the wall.
///
/// # Source
/// The floor is a compressor text's ([`cylinder_feed`]); the rest is *common practice, no source*.
///
/// # Example
/// One inch by one inch at 300 rev/min: 1.30 drops an hour at the least (computed independently from the rule), 13 as owners feed it.
/// ```
/// use formulas::{Silent, steam_cylinder::hourly_feed};
/// use uom::si::{angular_velocity::revolution_per_minute, f64::{AngularVelocity, Length}, length::inch};
/// let an_inch = Length::new::<inch>(1.0);
/// let feed = hourly_feed(&mut Silent, an_inch, an_inch, AngularVelocity::new::<revolution_per_minute>(300.0), false);
/// assert!((feed.drops.low - 1.30).abs() < 0.013 && (feed.drops.likely - 13.0).abs() < 0.13);
/// ```
pub fn hourly_feed<R: Recorder>(r: &mut R, bore: Length, stroke: Length, speed: AngularVelocity, wet: bool) -> HourlyFeed {
    let floor = cylinder_feed(r, bore, stroke, speed);
    given!(r, i["drops/min"] = floor, "least feed");
    given!(r, f_w [] = if wet { 1.5 } else { 1.0 }, "factor for wet steam");
    step!(r, i_low["drops/h"] = 60.0 * i, sources::CYLINDER_FEED);
    step!(r, i_h["drops/h"] = 10.0 * f_w * i_low, sources::COMMON_PRACTICE);
    step!(r, i_high["drops/h"] = max(50.0 * i_low, i_h), sources::COMMON_PRACTICE);
    let drops = Range { low: i_low, likely: i_h, high: i_high };
    r.caution(Caution::Provided {
        that: "the trap is emptied after each run, and the water and oil from it go to waste oil, not to the drain",
    });
    HourlyFeed { drops, volume: drops.map(|drops| Volume::new::<milliliter>(drops * DROP_ML)) }
}
