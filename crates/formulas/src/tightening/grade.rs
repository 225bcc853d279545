//! Property classes and grades of bolts.

use units::{Length, Pressure};
use uom::si::length::{inch, millimeter};
use uom::si::pressure::{megapascal, pound_force_per_square_inch};

use crate::sources::{self, Source};

/// What a bolt of a grade bears.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grade {
    /// Proof stress: no lasting stretch. Where a standard gives none, nine tenths of the yield stress.
    pub proof: Pressure,
    /// Yield or 0.2 % proof stress.
    pub yields: Pressure,
    /// Tensile strength.
    pub tensile: Pressure,
    /// Where the figures come from.
    pub source: Source,
}

/// The families of grades that [`grade`] knows, with the names it reads; for lists to choose from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Makes {
    /// The standard.
    pub standard: &'static str,
    /// Its grades.
    pub names: &'static [&'static str],
}

impl Makes {
    /// Every family.
    pub const ALL: &[Self] = &[
        Self { standard: "ISO 898-1", names: &["4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9"] },
        Self { standard: "SAE J429", names: &["grade 1", "grade 2", "grade 5", "grade 8"] },
        Self { standard: "ISO 3506-1", names: &["A-50", "A-70", "A-80"] },
        Self { standard: "ISO 8839", names: &["CU2"] },
    ];
}

fn metric(proof: f64, yields: f64, tensile: f64, source: Source) -> Grade {
    let mpa = Pressure::new::<megapascal>;
    Grade { proof: mpa(proof), yields: mpa(yields), tensile: mpa(tensile), source }
}

fn sae(proof: f64, yields: f64, tensile: f64) -> Grade {
    let ksi = |value: f64| Pressure::new::<pound_force_per_square_inch>(value * 1000.0);
    Grade { proof: ksi(proof), yields: ksi(yields), tensile: ksi(tensile), source: sources::SAE_J429 }
}

/// The strength of a grade at a diameter; `None` if the name is not known or the standard does not cover the size.
///
/// An unmarked bolt is treated as class 4.6.
///
/// # Source
/// ISO 898-1 and SAE J429; ISO 3506-1 and ISO 8839 *from memory*.
///
/// # Example
/// ISO 898-1: class 8.8 has a proof stress of 580 MPa up to M16, 600 MPa beyond.
/// ```
/// use formulas::tightening::grade;
/// use uom::si::{f64::Length, length::millimeter, pressure::megapascal};
/// let proof = |d| grade("8.8", Length::new::<millimeter>(d)).map(|grade| grade.proof.get::<megapascal>().round());
/// assert_eq!((proof(16.0), proof(20.0)), (Some(580.0), Some(600.0)));
/// ```
#[must_use]
pub fn grade(name: &str, diameter: Length) -> Option<Grade> {
    let (d, inches) = (diameter.get::<millimeter>(), diameter.get::<inch>());
    let iso = |proof, yields, tensile| Some(metric(proof, yields, tensile, sources::ISO_898_1));
    let stainless = |yields: f64, tensile| Some(metric(0.9 * yields, yields, tensile, sources::ISO_3506));
    match name.trim().to_ascii_lowercase().as_str() {
        "4.6" | "" | "unknown" => iso(225.0, 240.0, 400.0),
        "4.8" => iso(310.0, 340.0, 420.0),
        "5.6" => iso(280.0, 300.0, 500.0),
        "5.8" => iso(380.0, 420.0, 520.0),
        "6.8" => iso(440.0, 480.0, 600.0),
        "8.8" if d <= 16.0 + 1e-9 => iso(580.0, 640.0, 800.0),
        "8.8" => iso(600.0, 660.0, 830.0),
        "9.8" if d <= 16.0 + 1e-9 => iso(650.0, 720.0, 900.0),
        "10.9" => iso(830.0, 940.0, 1040.0),
        "12.9" => iso(970.0, 1100.0, 1220.0),
        "grade 1" => Some(sae(33.0, 36.0, 60.0)),
        "grade 2" if inches <= 0.75 + 1e-9 => Some(sae(55.0, 57.0, 74.0)),
        // Beyond ¾ in the standard lets grade 2 fall to the strength of grade 1.
        "grade 2" => Some(sae(33.0, 36.0, 60.0)),
        "grade 5" if inches <= 1.0 + 1e-9 => Some(sae(85.0, 92.0, 120.0)),
        "grade 8" => Some(sae(120.0, 130.0, 150.0)),
        "a-50" => stainless(210.0, 500.0),
        "a-70" => stainless(450.0, 700.0),
        "a-80" => stainless(600.0, 800.0),
        "cu2" if d <= 6.0 + 1e-9 => Some(metric(306.0, 340.0, 440.0, sources::TYPICAL)),
        _ => None,
    }
}
