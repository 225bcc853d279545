//! Viscosity grades: ISO for industrial oils, SAE for engines and gearboxes.

mod label;

use units::KinematicViscosity;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;

pub use label::{At40, Family, Label, read_label, viscosity_40_of_label};

/// The midpoints of the ISO viscosity grades at 40 °C, mm²/s (ISO 3448). Each grade reaches 10 % to either side.
pub const ISO_VG: [f64; 20] =
    [2.2, 3.2, 4.6, 6.8, 10.0, 15.0, 22.0, 32.0, 46.0, 68.0, 100.0, 150.0, 220.0, 320.0, 460.0, 680.0, 1000.0, 1500.0, 2200.0, 3200.0];

const NAMES: [u16; 20] = [2, 3, 5, 7, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500, 2200, 3200];

/// The ISO grade whose band of 10 % to either side holds a viscosity at 40 °C; none where it falls between grades.
///
/// # Source
/// ISO 3448: VG 5 has its midpoint at 4.6 mm²/s.
///
/// # Example
/// ```
/// use formulas::grades::grade_of;
/// use uom::si::{f64::KinematicViscosity, kinematic_viscosity::square_millimeter_per_second as mm2_per_s};
/// assert_eq!(grade_of(KinematicViscosity::new::<mm2_per_s>(73.3)), Some(68));
/// assert_eq!(grade_of(KinematicViscosity::new::<mm2_per_s>(4.6)), Some(5));
/// assert_eq!(grade_of(KinematicViscosity::new::<mm2_per_s>(80.0)), None);
/// ```
#[must_use]
pub fn grade_of(nu40: KinematicViscosity) -> Option<u16> {
    let nu = nu40.get::<mm2_per_s>();
    // A limit typed in decimal must not fall out of its band by the last binary digit.
    let slack = 1.0 + 1e-9;
    ISO_VG.iter().zip(NAMES).find(|(midpoint, _)| nu * slack >= 0.9 * *midpoint && nu <= 1.1 * *midpoint * slack).map(|(_, name)| name)
}

/// The midpoint nearest to a viscosity at 40 °C, by ratio, mm²/s.
#[must_use]
pub fn nearest_grade(nu40: KinematicViscosity) -> f64 {
    let nu = nu40.get::<mm2_per_s>();
    let [mut nearest, ..] = ISO_VG;
    for midpoint in ISO_VG {
        if (nu / midpoint).ln().abs() < (nu / nearest).ln().abs() {
            nearest = midpoint;
        }
    }
    nearest
}

/// How many grades apart two viscosities at 40 °C stand; negative where the second is thinner.
#[must_use]
pub fn grades_between(from: KinematicViscosity, to: KinematicViscosity) -> i32 {
    let place = |nu: KinematicViscosity| {
        let nearest = nearest_grade(nu);
        ISO_VG.iter().position(|midpoint| *midpoint >= nearest).and_then(|place| i32::try_from(place).ok()).unwrap_or(0)
    };
    place(to) - place(from)
}

/// A grade set by its viscosity at 100 °C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HotGrade {
    /// The grade as the label prints it.
    pub name: &'static str,
    /// The lowest viscosity at 100 °C, mm²/s.
    pub low: f64,
    /// The viscosity at 100 °C it stays below, mm²/s; none for an open band.
    pub high: Option<f64>,
}

const fn hot(name: &'static str, low: f64, high: f64) -> HotGrade {
    HotGrade { name, low, high: Some(high) }
}

const fn open(name: &'static str, low: f64) -> HotGrade {
    HotGrade { name, low, high: None }
}

/// SAE J300: engine oils by their viscosity at 100 °C (issues since 2013; SAE 20 began at 5.6 before).
pub const SAE_ENGINE: [HotGrade; 5] =
    [hot("20", 6.9, 9.3), hot("30", 9.3, 12.5), hot("40", 12.5, 16.3), hot("50", 16.3, 21.9), hot("60", 21.9, 26.1)];

/// SAE J306, issue of February 2019: gear oils by their viscosity at 100 °C.
pub const SAE_GEAR: [HotGrade; 14] = [
    open("70W", 3.8),
    open("75W", 3.8),
    open("80W", 8.5),
    open("85W", 11.0),
    hot("65", 3.8, 5.0),
    hot("70", 5.0, 6.5),
    hot("75", 6.5, 8.5),
    hot("80", 8.5, 11.0),
    hot("85", 11.0, 13.5),
    hot("90", 13.5, 18.5),
    hot("110", 18.5, 24.0),
    hot("140", 24.0, 32.5),
    hot("190", 32.5, 41.0),
    open("250", 41.0),
];

/// SAE J306, issue of 2005, for the grades the later issue moved: the age of the label decides.
pub const SAE_GEAR_2005: [HotGrade; 2] = [open("80W", 7.0), hot("80", 7.0, 11.0)];
