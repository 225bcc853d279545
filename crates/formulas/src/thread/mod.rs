//! Screw threads: their diameters, what they carry, and the space between bolt and nut.

#![expect(non_snake_case, reason = "symbols match the source")]

mod named;
mod space;

pub use named::METRIC_COARSE;
pub(crate) use space::bolt_6g;
pub use space::{locking_volume, mean_gap};

use core::f64::consts::PI;

use units::{Area, Force, Length, Pressure};
use uom::si::area::square_millimeter;
use uom::si::force::newton;
use uom::si::length::{inch, millimeter};
use uom::si::pressure::megapascal;

use crate::error::{FormulaError, less, positive, within};
use crate::math::pow;
use crate::sources::{self, Source};
use crate::working::Recorder;
use crate::{given, step};

/// The profile of a thread.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Form {
    /// ISO metric, 60°.
    Metric,
    /// Unified, 60°, stress area as the inch standard has it.
    Unified,
    /// Whitworth, 55°: BSW, BSF, model-engineer and parallel pipe threads.
    Whitworth,
    /// British Association, 47½°.
    BritishAssociation,
}

impl Form {
    /// By how many pitches the pitch diameter, the minor diameter and the bolt's root lie below the major diameter.
    const fn depths(self) -> (f64, f64, f64) {
        match self {
            Self::Metric | Self::Unified => (0.649_519, 1.082_532, 1.226_869),
            Self::Whitworth => (0.640_327, 1.280_654, 1.280_654),
            Self::BritishAssociation => (0.6, 1.2, 1.2),
        }
    }

    /// Half the angle between the flanks, in degrees.
    #[must_use]
    pub const fn half_angle_degrees(self) -> f64 {
        match self {
            Self::Metric | Self::Unified => 30.0,
            Self::Whitworth => 27.5,
            Self::BritishAssociation => 23.75,
        }
    }

    /// The standard the profile comes from.
    #[must_use]
    pub const fn source(self) -> Source {
        match self {
            Self::Metric => sources::ISO_724,
            Self::Unified => sources::ASME_B1_1,
            Self::Whitworth => sources::BS_84,
            Self::BritishAssociation => sources::BS_93,
        }
    }
}

/// A screw thread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thread {
    /// Its profile.
    pub form: Form,
    /// Major diameter.
    pub major: Length,
    /// Pitch.
    pub pitch: Length,
}

impl Thread {
    /// A metric thread, diameter and pitch in mm.
    #[must_use]
    pub fn metric(diameter_mm: f64, pitch_mm: f64) -> Self {
        Self { form: Form::Metric, major: Length::new::<millimeter>(diameter_mm), pitch: Length::new::<millimeter>(pitch_mm) }
    }

    /// A thread of so many turns to the inch, its diameter in inches.
    #[must_use]
    pub fn inch(form: Form, diameter_in: f64, turns_per_inch: f64) -> Self {
        Self { form, major: Length::new::<inch>(diameter_in), pitch: Length::new::<inch>(1.0 / turns_per_inch) }
    }

    /// A British Association thread by its number: p = 0.9ⁿ mm, d = 6·p^1.2 mm, each to 0.01 mm. The standard prints the diameters to 0.1 mm,
    /// so that 2 BA stands there as 4.7 mm for 4.66.
    #[must_use]
    pub fn british_association(number: u8) -> Self {
        let pitch = pow(0.9, f64::from(number));
        let major = 6.0 * pow(pitch, 1.2);
        let rounded = |x: f64| (x * 100.0).round() / 100.0;
        Self {
            form: Form::BritishAssociation,
            major: Length::new::<millimeter>(rounded(major)),
            pitch: Length::new::<millimeter>(rounded(pitch)),
        }
    }
}

/// The diameters of a thread, and the area that carries its load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dimensions {
    /// Pitch diameter, d₂.
    pub pitch_diameter: Length,
    /// Minor diameter, d₁: that of the nut's bore.
    pub minor_diameter: Length,
    /// Diameter at the bolt's root, d₃.
    pub root_diameter: Length,
    /// Stress area, A_s.
    pub stress_area: Area,
}

pub(crate) fn checked(thread: &Thread) -> Result<(), FormulaError> {
    let (d, P) = (thread.major.get::<millimeter>(), thread.pitch.get::<millimeter>());
    positive("the diameter of the thread", d, "mm")?;
    positive("the pitch", P, "mm")?;
    // A pitch coarser than a third of the diameter belongs to no fastening thread; below 1 mm watch threads come near it.
    less(("the pitch", P), ("a third of the diameter", d / 3.0), "mm")
}

/// The diameters and the stress area of a thread.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `d`, `P` | major diameter, pitch | mm |
/// | `d_2`, `d_1`, `d_3` | pitch, minor, root diameter | mm |
/// | `A_s` | stress area | mm² |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a dimension of nothing, [`FormulaError::NotLess`] for a pitch coarser than a third of the diameter.
///
/// # Source
/// ISO 724 and ISO 898-1 (metric), ASME B1.1 (unified), BS 84 (Whitworth), BS 93 (British Association). The stress area of the last two is
/// worked as for metric threads, by *common practice*. Checked in `tests/published/metric_threads.csv`.
///
/// # Example
/// An M8 thread has a pitch diameter of 7.188 mm and a stress area of 36.6 mm² (ISO 724, ISO 898-1).
/// ```
/// use formulas::{Silent, thread::{Thread, dimensions}};
/// use uom::si::{area::square_millimeter, length::millimeter};
/// let m8 = dimensions(&mut Silent, &Thread::metric(8.0, 1.25))?;
/// assert!((m8.pitch_diameter.get::<millimeter>() - 7.188).abs() < 0.001);
/// assert!((m8.stress_area.get::<square_millimeter>() - 36.6).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn dimensions<R: Recorder>(r: &mut R, thread: &Thread) -> Result<Dimensions, FormulaError> {
    checked(thread)?;
    let standard = thread.form.source();
    let (below_pitch, below_minor, below_root) = thread.form.depths();
    given!(r, d[millimeter] = thread.major, "major diameter");
    given!(r, P[millimeter] = thread.pitch, "pitch");
    given!(r, h_2 [] = below_pitch, "pitches from the major to the pitch diameter, of the profile");
    given!(r, h_1 [] = below_minor, "pitches from the major to the minor diameter, of the profile");
    given!(r, h_3 [] = below_root, "pitches from the major diameter to the bolt's root, of the profile");
    step!(r, d_2[millimeter] = d - h_2 * P, standard);
    step!(r, d_1[millimeter] = d - h_1 * P, standard);
    step!(r, d_3[millimeter] = d - h_3 * P, standard);
    let area = if thread.form == Form::Unified {
        step!(r, A_s[square_millimeter] = PI / 4.0 * pow(d - 0.9743 * P, 2.0), sources::ASME_B1_1);
        A_s
    } else {
        step!(r, A_s[square_millimeter] = PI / 4.0 * pow((d_2 + d_3) / 2.0, 2.0), sources::ISO_898_1);
        A_s
    };
    let mm = Length::new::<millimeter>;
    Ok(Dimensions {
        pitch_diameter: mm(d_2),
        minor_diameter: mm(d_1),
        root_diameter: mm(d_3),
        stress_area: Area::new::<square_millimeter>(area),
    })
}

/// The force a thread carries without lasting stretch: stress area times proof stress.
///
/// # Errors
/// As [`dimensions`]; [`FormulaError::NotPositive`] for a stress of nothing.
///
/// # Source
/// ISO 898-1. Checked in `tests/published/proof_load.csv`.
///
/// # Example
/// M8 of class 8.8 (580 MPa): 21.2 kN (ISO 898-1).
/// ```
/// use formulas::{Silent, thread::{Thread, proof_load}};
/// use uom::si::{f64::Pressure, force::kilonewton, pressure::megapascal};
/// let load = proof_load(&mut Silent, &Thread::metric(8.0, 1.25), Pressure::new::<megapascal>(580.0))?;
/// assert!((load.get::<kilonewton>() - 21.2).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn proof_load<R: Recorder>(r: &mut R, thread: &Thread, proof: Pressure) -> Result<Force, FormulaError> {
    let area = dimensions(r, thread)?.stress_area;
    given!(r, A_s[square_millimeter] = area, "stress area");
    given!(r, S_p[megapascal] = proof, "proof stress");
    positive("the proof stress", S_p, "MPa")?;
    step!(r, F_p[newton] = A_s * S_p, sources::ISO_898_1);
    Ok(Force::new::<newton>(F_p))
}

/// The load at which a thread strips.
///
/// # Errors
/// As [`dimensions`]; [`FormulaError::OutOfRange`] for more than three diameters of engagement, of which the last carries nothing.
///
/// # Source
/// *Common practice*: F = 0.67·π·d·L·τ, with τ the shear strength of the weaker metal. Engage one diameter in steel, 1¼ to 1½ in iron and
/// brass, two in aluminium.
pub fn stripping_load<R: Recorder>(r: &mut R, thread: &Thread, engaged: Length, shear: Pressure) -> Result<Force, FormulaError> {
    checked(thread)?;
    given!(r, d[millimeter] = thread.major, "major diameter");
    given!(r, L[millimeter] = engaged, "length engaged");
    positive("the length engaged", L, "mm")?;
    within("the length engaged over the diameter", L / d, "", (0.0, 3.0), sources::COMMON_PRACTICE)?;
    given!(r, tau[megapascal] = shear, "shear strength of the weaker thread");
    positive("the shear strength", tau, "MPa")?;
    step!(r, F[newton] = 0.67 * PI * d * L * tau, sources::COMMON_PRACTICE);
    Ok(Force::new::<newton>(F))
}
