//! Machine tapers: their angles, whether they hold, and what a rubbing with blue says.

use core::f64::consts::PI;

use units::Length;
use uom::si::length::{micrometer, millimeter};

use crate::error::{FormulaError, less, positive, within};
use crate::math::{atan, tan};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// A standard self-holding taper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standard {
    /// Its name.
    pub name: &'static str,
    /// It tapers one in so much, on the diameter.
    pub one_in: f64,
    /// Diameter at the gauge line, mm.
    pub gauge_mm: f64,
}

const fn morse(name: &'static str, one_in: f64, gauge_mm: f64) -> Standard {
    Standard { name, one_in, gauge_mm }
}

/// Tapers of ISO 296, *from memory*; numbers 2 and 3 seen published.
pub const TAPERS: &[Standard] = &[
    morse("metric 4", 20.0, 4.0),
    morse("metric 6", 20.0, 6.0),
    morse("Morse 0", 19.212, 9.045),
    morse("Morse 1", 20.047, 12.065),
    morse("Morse 2", 20.020, 17.780),
    morse("Morse 3", 19.922, 23.825),
    morse("Morse 4", 19.254, 31.267),
    morse("Morse 5", 19.002, 44.399),
    morse("Morse 6", 19.180, 63.348),
    morse("metric 80", 20.0, 80.0),
];

/// Steepest spindle taper there is, a cone of 120°: one in 0.29.
const STEEPEST: f64 = 0.28;

/// Half the angle of a taper of one in so much on the diameter, in degrees.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a taper steeper than a cone of 120°.
///
/// # Source
/// Geometry; the tapers of ISO 296.
///
/// # Example
/// Morse 2, one in 20.020: 1.4307° (ISO 296).
/// ```
/// use formulas::{Silent, taper::half_angle_degrees};
/// assert!((half_angle_degrees(&mut Silent, 20.020)? - 1.4307).abs() < 0.0002);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn half_angle_degrees<R: Recorder>(r: &mut R, one_in: f64) -> Result<f64, FormulaError> {
    given!(r, k [] = one_in, "length in which the diameter grows by one");
    within("the length of the taper for one of diameter", k, "", (STEEPEST, 1e6), sources::ISO_296)?;
    step!(r, alpha["°"] = atan(1.0 / (2.0 * k)) * 180.0 / PI, sources::DEFINITION);
    Ok(alpha)
}

/// Whether a taper holds by itself: as long as the tangent of its half angle is below the friction.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for an angle outside 0 to 90° or impossible friction.
///
/// # Source
/// Statics of the wedge. Wipe a taper dry: an oiled one has little to spare.
///
/// # Example
/// Morse tapers hold with any friction above 0.025; one of 7 in 24 lets go (*common practice, no source*).
/// ```
/// use formulas::{Silent, taper::{half_angle_degrees, holds_itself}};
/// let morse = half_angle_degrees(&mut Silent, 20.020)?;
/// let steep = half_angle_degrees(&mut Silent, 24.0 / 7.0)?;
/// assert!(holds_itself(&mut Silent, morse, 0.12)?);
/// assert!(!holds_itself(&mut Silent, steep, 0.12)?);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn holds_itself<R: Recorder>(r: &mut R, half_angle_degrees: f64, mu: f64) -> Result<bool, FormulaError> {
    given!(r, alpha["°"] = half_angle_degrees, "half the angle of the taper");
    within("half the angle of the taper", alpha, "°", (0.0, 90.0), sources::DEFINITION)?;
    given!(r, mu [] = mu, "friction");
    within("the friction", mu, "", (0.01, 1.0), sources::DEFINITION)?;
    step!(r, x [] = tan(alpha * PI / 180.0), sources::DEFINITION);
    Ok(x < mu)
}

/// The difference of angle that a film of blue just shows over a length, in seconds of arc.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a film or length of nothing, [`FormulaError::NotLess`] for a film thicker than the length.
///
/// # Source
/// Geometry: film over length. A film transfers at 1 to 3 µm; a thicker one lies: *common practice*.
///
/// # Example
/// 2 µm over 50 mm: 8.25″ (computed independently).
/// ```
/// use formulas::{Silent, taper::detectable_angle_seconds};
/// use uom::si::{f64::Length, length::{micrometer, millimeter}};
/// let seconds = detectable_angle_seconds(&mut Silent, Length::new::<micrometer>(2.0), Length::new::<millimeter>(50.0))?;
/// assert!((seconds - 8.25).abs() < 0.05);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn detectable_angle_seconds<R: Recorder>(r: &mut R, film: Length, length: Length) -> Result<f64, FormulaError> {
    given!(r, h[micrometer] = film, "thickness of the film");
    positive("the thickness of the film", h, "µm")?;
    given!(r, l[millimeter] = length, "length in contact");
    positive("the length in contact", l, "mm")?;
    less(("the thickness of the film", h / 1000.0), ("the length in contact", l), "mm")?;
    step!(r, epsilon["″"] = atan(h / 1000.0 / l) * 180.0 / PI * 3600.0, sources::DEFINITION);
    if h > 3.0 {
        r.caution(Caution::Rough { what: "what the blue shows", why: "a film thicker than 3 µm smears into places that do not touch" });
    }
    Ok(epsilon)
}

/// One of the three lines of blue along a plug, after its turn in the socket: the share of it rubbed, at either end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// Share rubbed of the half at the large end, 0 to 1.
    pub large_end: f64,
    /// Share rubbed of the half at the small end, 0 to 1.
    pub small_end: f64,
}

/// How the angle of the male taper differs from that of the female.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Angle {
    /// The film shows no difference.
    Same,
    /// Rubbed at the large end: the male taper is the faster, its angle the larger.
    MaleFaster,
    /// Rubbed at the small end: the male taper is the slower.
    MaleSlower,
}

/// What a rubbing says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// Share of the lines rubbed, 0 to 1.
    pub contact: f64,
    /// Whether all three lines were rubbed alike; if not, a part is oval or bent.
    pub round: bool,
    /// What the angles do.
    pub angle: Angle,
    /// Whether the fit is good enough: round, three quarters rubbed (four fifths for a spindle), and not lighter at the large end.
    pub accepted: bool,
}

/// Reads a rubbing of three lines a third of a turn apart, from one turn of at most 30° without slapping the taper home.
///
/// Which of the two parts is the reference has to be known before one says which to correct.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a share outside 0 to 1.
///
/// # Source
/// *Common practice*. Lines rubbed more than a third apart are not alike; ends more than a fifth apart differ in angle.
pub fn read_rubbing<R: Recorder>(r: &mut R, lines: [Line; 3], spindle: bool) -> Result<Reading, FormulaError> {
    for line in lines {
        within("the share rubbed", line.large_end, "", (0.0, 1.0), sources::COMMON_PRACTICE)?;
        within("the share rubbed", line.small_end, "", (0.0, 1.0), sources::COMMON_PRACTICE)?;
    }
    let [first, second, third] = lines;
    given!(r, a [] = (first.large_end + second.large_end + third.large_end) / 3.0, "share rubbed at the large end");
    given!(r, b [] = (first.small_end + second.small_end + third.small_end) / 3.0, "share rubbed at the small end");
    step!(r, x [] = (a + b) / 2.0, sources::COMMON_PRACTICE);
    let each = lines.map(|line| line.large_end.midpoint(line.small_end));
    let (most, least) = (each.iter().copied().fold(0.0, f64::max), each.iter().copied().fold(1.0, f64::min));
    let round = most - least <= 1.0 / 3.0;
    let angle = if a - b > 0.2 {
        Angle::MaleFaster
    } else if b - a > 0.2 {
        Angle::MaleSlower
    } else {
        Angle::Same
    };
    let wanted = if spindle { 0.80 } else { 0.75 };
    Ok(Reading { contact: x, round, angle, accepted: round && x >= wanted && angle != Angle::MaleSlower })
}
