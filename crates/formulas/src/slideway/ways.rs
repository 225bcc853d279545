//! Stick–slip, wear surfaces and upright ways: what a slide asks of its oil beside thickness.

use units::{KinematicViscosity, Length, Pressure, Range, Time, Velocity};
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::micrometer;
use uom::si::time::day;
use uom::si::velocity::{meter_per_second, millimeter_per_minute};

use super::{slide_viscosity, viscosity_to_hold};
use crate::error::FormulaError;
use crate::math::{max, min};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// What a slide is faced with; the other face is cast iron or steel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum WearSurface {
    /// Scraped or ground cast iron.
    CastIron,
    /// Hardened steel strips.
    HardenedSteel,
    /// Bronze, as in gibs and nuts.
    Bronze,
    /// A moulded resin.
    Resin,
    /// Glued film filled with PTFE.
    Ptfe,
}

/// What a slide is oiled with, as stick–slip tells oils apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SlideOil {
    /// A plain or hydraulic oil.
    Plain,
    /// Slideway oil, with fatty additives that lower the friction at rest.
    Slideway,
}

/// Whether a slide moves by jerks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum StickSlip {
    /// Fast enough to glide.
    Unlikely,
    /// In the band where it depends on the gib, the drive and the finish.
    Possible,
    /// So slow that it will be felt at the handwheel.
    Likely,
}

/// Speed below which a slide moves by jerks, mm/min, known within a factor of three.
///
/// | faced with | plain oil | slideway oil |
/// | --- | --- | --- |
/// | cast iron | 100 | 20 |
/// | hardened steel | 80 | 15 |
/// | bronze | 60 | 15 |
/// | moulded resin | 20 | 5 |
/// | PTFE film | 2 | 1 |
///
/// # Source
/// *Common practice, no source*: friction at rest above friction in motion makes the jerks; only the order of the rows is sure.
#[must_use]
pub fn stick_slip_speed(surface: WearSurface, oil: SlideOil) -> Range<Velocity> {
    let (plain, slideway) = match surface {
        WearSurface::CastIron => (100.0, 20.0),
        WearSurface::HardenedSteel => (80.0, 15.0),
        WearSurface::Bronze => (60.0, 15.0),
        WearSurface::Resin => (20.0, 5.0),
        WearSurface::Ptfe => (2.0, 1.0),
    };
    let likely = match oil {
        SlideOil::Plain => plain,
        SlideOil::Slideway => slideway,
    };
    Range { low: likely / 3.0, likely, high: likely * 3.0 }.map(Velocity::new::<millimeter_per_minute>)
}

/// Whether a slide at a speed moves by jerks.
///
/// # Source
/// *Common practice, no source.*
///
/// # Example
/// A lathe saddle fed at 5 mm/min on plain oil will jerk; with slideway oil on a PTFE film it will not.
/// ```
/// use formulas::{Silent, slideway::{SlideOil, StickSlip, WearSurface, stick_slip}};
/// use uom::si::{f64::Velocity, velocity::millimeter_per_minute};
/// let slow = Velocity::new::<millimeter_per_minute>(5.0);
/// assert_eq!(stick_slip(&mut Silent, slow, WearSurface::CastIron, SlideOil::Plain), StickSlip::Likely);
/// assert_eq!(stick_slip(&mut Silent, slow, WearSurface::Ptfe, SlideOil::Slideway), StickSlip::Unlikely);
/// ```
pub fn stick_slip<R: Recorder>(r: &mut R, speed: Velocity, surface: WearSurface, oil: SlideOil) -> StickSlip {
    let limits = stick_slip_speed(surface, oil);
    given!(r, v["mm/min"] = speed.get::<millimeter_per_minute>(), "sliding speed");
    given!(r, v_s["mm/min"] = limits.likely.get::<millimeter_per_minute>(), "speed below which such a slide jerks");
    step!(r, i [] = v / v_s, sources::COMMON_PRACTICE);
    r.caution(Caution::Rough { what: "the speed below which a slide jerks", why: "gib, drive and finish change it threefold" });
    match i {
        i if i > 3.0 => StickSlip::Unlikely,
        i if i >= 1.0 / 3.0 => StickSlip::Possible,
        _ => StickSlip::Likely,
    }
}

/// How a surface is oiled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SurfaceCare {
    /// Share of the ordinary dose.
    pub dose: f64,
    /// Running hours between oilings.
    pub hours: f64,
    /// What must not come to it.
    pub keep_away: &'static str,
}

/// How a wear surface is oiled.
///
/// # Source
/// *Common practice, no source.*
#[must_use]
pub fn surface_care(surface: WearSurface) -> SurfaceCare {
    match surface {
        WearSurface::Ptfe => {
            SurfaceCare { dose: 0.5, hours: 8.0, keep_away: "solvents, which soften its glue, and oils filled with solids" }
        }
        WearSurface::Resin => SurfaceCare { dose: 1.0, hours: 4.0, keep_away: "solvents, and water standing in it" },
        WearSurface::Bronze => SurfaceCare { dose: 1.0, hours: 4.0, keep_away: "oils with active sulphur" },
        WearSurface::CastIron | WearSurface::HardenedSteel => {
            SurfaceCare { dose: 1.0, hours: 4.0, keep_away: "grease, which holds chips and laps the ways" }
        }
    }
}

/// A slide as its oil sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Way {
    /// Mean pressure on it.
    pub pressure: Pressure,
    /// Sliding speed.
    pub speed: Option<Velocity>,
    /// Its height, where it stands upright and oil runs down it.
    pub upright: Option<Length>,
}

/// Film that an upright way should still have a day after it was oiled, µm (*common practice, no source*).
pub const UPRIGHT_FILM_UM: f64 = 10.0;

/// Viscosity at its own temperature that a way asks for, lying or upright: as [`slide_viscosity`], and upright enough that 10 µm are left
/// after a day.
///
/// # Range
/// As [`slide_viscosity`]. An upright way asks for no more than 450 mm²/s: thicker oil does not come through a cold one-shot pump. A tacky
/// oil holds more than its viscosity says.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a height of nothing.
///
/// # Source
/// Jeffreys 1930, *from memory*; the bounds are *common practice, no source*.
///
/// # Example
/// A knee 0.3 m high asks for 282 mm²/s: ν = h²·g·t/z = 10⁻¹⁰·9.80665·86 400/0.3 (by hand), VG 220 in a cool shop.
/// ```
/// use formulas::{Silent, slideway::{Way, way_viscosity}};
/// use uom::si::{f64::{Length, Pressure}, kinematic_viscosity::square_millimeter_per_second, length::meter, pressure::megapascal};
/// let knee = Way { pressure: Pressure::new::<megapascal>(0.05), speed: None, upright: Some(Length::new::<meter>(0.3)) };
/// let asked = way_viscosity(&mut Silent, &knee)?;
/// assert!((asked.likely.get::<square_millimeter_per_second>() - 282.4).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn way_viscosity<R: Recorder>(r: &mut R, way: &Way) -> Result<Range<KinematicViscosity>, FormulaError> {
    let lying = slide_viscosity(r, way.pressure, way.speed);
    let Some(height) = way.upright else { return Ok(lying) };
    let held = viscosity_to_hold(r, Length::new::<micrometer>(UPRIGHT_FILM_UM), height, Time::new::<day>(1.0))?;
    given!(r, v[meter_per_second] = way.speed.unwrap_or_default(), "sliding speed");
    given!(r, nu_l[mm2_per_s] = lying.likely, "asked by the load and the speed");
    given!(r, nu_h[mm2_per_s] = held, "asked to hold a film upright");
    // An upright way in motion is oiled by its motion; only one that rests has to hold its film by thickness.
    step!(r, nu[mm2_per_s] = min(if v > 0.1 { nu_l } else { max(nu_l, nu_h) }, 450.0), sources::JEFFREYS);
    r.caution(Caution::Provided {
        that: "the oil still comes through its feed on a cold morning; below 12 °C a grade of 68 is used on upright ways too",
    });
    Ok(Range { likely: KinematicViscosity::new::<mm2_per_s>(nu), ..lying })
}
