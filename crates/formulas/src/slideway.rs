//! Slides, screws and other faces that are wiped with a film: how a film drains, and how much oil a film takes.

#![expect(non_snake_case, reason = "symbols match the source")]

mod ways;

use core::f64::consts::PI;

use units::{Area, KinematicViscosity, Length, Pressure, Range, Time, Velocity, Volume};
use uom::si::area::square_millimeter;
use uom::si::kinematic_viscosity::{square_meter_per_second, square_millimeter_per_second as mm2_per_s};
use uom::si::length::{meter, micrometer, millimeter};
use uom::si::pressure::megapascal;
use uom::si::time::second;
use uom::si::velocity::meter_per_second;
use uom::si::volume::milliliter;

use crate::error::{FormulaError, positive};
use crate::math::{max, min, sqrt};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

pub use ways::{
    SlideOil, StickSlip, SurfaceCare, UPRIGHT_FILM_UM, Way, WearSurface, stick_slip, stick_slip_speed, surface_care, way_viscosity,
};

/// Film a slide is given at one oiling, µm.
pub const WAY_FILM_UM: f64 = 25.0;

/// Film left on a vertical face: h = √(ν·z/(g·t)).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `nu` | kinematic viscosity | m²/s |
/// | `z` | distance below the upper edge | m |
/// | `t` | time since it was oiled | s |
///
/// # Range
/// A plain oil on an upright flat face, long after oiling; a tacky oil keeps more.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a time of nothing.
///
/// # Source
/// Jeffreys 1930; *from memory*.
pub fn drained_film<R: Recorder>(r: &mut R, nu: KinematicViscosity, height: Length, after: Time) -> Result<Length, FormulaError> {
    given!(r, nu[square_meter_per_second] = nu, "kinematic viscosity");
    given!(r, z[meter] = height, "distance below the upper edge");
    given!(r, t[second] = after, "time since it was oiled");
    given!(r, g["m/s²"] = 9.80665, "standard gravity");
    positive("the time", t, "s")?;
    step!(r, h[meter] = sqrt(nu * z / (g * t)), sources::JEFFREYS);
    Ok(Length::new::<meter>(h))
}

/// Viscosity that leaves a film on a vertical face after a time: [`drained_film`] turned round.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a height of nothing.
///
/// # Source
/// Jeffreys 1930; *from memory*.
pub fn viscosity_to_hold<R: Recorder>(r: &mut R, film: Length, height: Length, after: Time) -> Result<KinematicViscosity, FormulaError> {
    given!(r, h[meter] = film, "film to be left");
    given!(r, z[meter] = height, "distance below the upper edge");
    given!(r, t[second] = after, "time since it was oiled");
    given!(r, g["m/s²"] = 9.80665, "standard gravity");
    positive("the height", z, "m")?;
    step!(r, nu[square_meter_per_second] = h * h * g * t / z, sources::JEFFREYS);
    Ok(KinematicViscosity::new::<square_meter_per_second>(nu))
}

/// Viscosity at its own temperature that a slide asks for.
///
/// Parallel faces make no wedge, so no film theory gives this: 80 to 450 mm²/s on an ordinary slide, more under heavier pressure and less when
/// moving fast, as the trade's grades go (68 for ordinary slides, 32 for small or quick ones, 220 for heavy or upright ones).
///
/// # Range
/// Machine tool slides up to about 0.5 MPa and 1 m/s.
///
/// # Source
/// *Common practice, no source.*
pub fn slide_viscosity<R: Recorder>(r: &mut R, pressure: Pressure, speed: Option<Velocity>) -> Range<KinematicViscosity> {
    given!(r, p[megapascal] = pressure, "mean pressure on the slide");
    given!(r, v[meter_per_second] = speed.unwrap_or_default(), "sliding speed");
    // 0.05 MPa is the pressure of an ordinary slide, 0.1 m/s a brisk hand feed; the square roots keep the change within two grades.
    step!(r, f_p [] = min(max(sqrt(p / 0.05), 0.7), 1.8), sources::COMMON_PRACTICE);
    step!(r, f_v [] = if v > 0.1 { max(sqrt(0.1 / v), 0.5) } else { 1.0 }, sources::COMMON_PRACTICE);
    // The least never rises above that of an ordinary slide: VG 68 serves loaded ones too, a thicker oil only serves them longer.
    step!(r, nu_low[mm2_per_s] = 80.0 * min(f_p * f_v, 1.0), sources::COMMON_PRACTICE);
    step!(r, nu[mm2_per_s] = min(170.0 * f_p * f_v, 450.0), sources::COMMON_PRACTICE);
    r.caution(Caution::Disputed { what: "slideway oil", why: "grades 32, 46 and 68 are all used on small lathes, and hydraulic oil too" });
    let [low, likely, high] = [nu_low, nu, 450.0].map(KinematicViscosity::new::<mm2_per_s>);
    Range { low, likely, high }
}

/// Oil that a film on a face takes: V = A·h.
///
/// # Source
/// Geometry; a film of 25 µm for an oiling is a trade sheet's dose for one running hour.
///
/// # Example
/// A saddle on four lands of 20 × 150 mm takes 0.30 mL for a film of 25 µm (computed independently).
/// ```
/// use formulas::{Silent, slideway::film_dose};
/// use uom::si::{area::square_millimeter, f64::{Area, Length}, length::micrometer, volume::milliliter};
/// let dose = film_dose(&mut Silent, Area::new::<square_millimeter>(4.0 * 20.0 * 150.0), Length::new::<micrometer>(25.0));
/// assert!((dose.get::<milliliter>() - 0.30).abs() < 0.003);
/// ```
pub fn film_dose<R: Recorder>(r: &mut R, area: Area, film: Length) -> Volume {
    given!(r, A[square_millimeter] = area, "area of the face");
    given!(r, h[micrometer] = film, "film");
    step!(r, V[milliliter] = A * h / 1e6, sources::LUBRICANT_DOSE);
    Volume::new::<milliliter>(V)
}

/// Contact area of a slide: length by width by the number of lands.
///
/// # Source
/// Geometry.
pub fn slide_area<R: Recorder>(r: &mut R, length: Length, width: Length, lands: f64) -> Area {
    given!(r, L[millimeter] = length, "length of the slide");
    given!(r, b[millimeter] = width, "width of a land");
    given!(r, i [] = lands, "number of lands");
    step!(r, A[square_millimeter] = L * b * i, sources::DEFINITION);
    Area::new::<square_millimeter>(A)
}

/// Wetted area of a journal, bush or quill: A = π·D·L.
///
/// # Source
/// Geometry.
pub fn journal_area<R: Recorder>(r: &mut R, diameter: Length, length: Length) -> Area {
    given!(r, D[millimeter] = diameter, "diameter");
    given!(r, L[millimeter] = length, "length");
    step!(r, A[square_millimeter] = PI * D * L, sources::DEFINITION);
    Area::new::<square_millimeter>(A)
}

/// Area of a rolling bearing's dose: the square of the bore for each row.
///
/// # Source
/// A trade sheet's dose.
pub fn rolling_area<R: Recorder>(r: &mut R, bore: Length, rows: f64) -> Area {
    given!(r, d[millimeter] = bore, "bore");
    given!(r, i [] = rows, "number of rows");
    step!(r, A[square_millimeter] = d * d * i, sources::LUBRICANT_DOSE);
    Area::new::<square_millimeter>(A)
}

/// Load-carrying area of a trapezoidal thread in its nut: A = π·d_2·h·(L/p), with h = p/2 and d_2 = d − p/2.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `d`, `p` | major diameter, pitch | mm |
/// | `L` | length of the nut | mm |
///
/// # Range
/// Acme and metric trapezoidal threads, whose flanks meet over half the pitch.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a pitch of nothing.
///
/// # Source
/// Geometry of ISO 2904 threads: H_1 = 0.5·p, d_2 = d − 0.5·p.
pub fn screw_thread_area<R: Recorder>(r: &mut R, diameter: Length, pitch: Length, nut: Length) -> Result<Area, FormulaError> {
    given!(r, d[millimeter] = diameter, "major diameter of the screw");
    given!(r, p[millimeter] = pitch, "pitch");
    given!(r, L[millimeter] = nut, "length of the nut");
    positive("the pitch", p, "mm")?;
    step!(r, d_2[millimeter] = d - p / 2.0, sources::DEFINITION);
    step!(r, h[millimeter] = p / 2.0, sources::DEFINITION);
    step!(r, A[square_millimeter] = PI * d_2 * h * (L / p), sources::DEFINITION);
    Ok(Area::new::<square_millimeter>(A))
}
