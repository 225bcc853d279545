//! A lap joint of two sheets.

use units::{Force, Length, Pressure, Temperature};
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;
use uom::si::thermodynamic_temperature::degree_celsius;

use crate::error::{FormulaError, positive};
use crate::math::{sqrt, tanh};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Two equal sheets lapped and bonded.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lap {
    /// Width of the sheets.
    pub width: Length,
    /// Length of the overlap.
    pub overlap: Length,
    /// Thickness of each sheet.
    pub sheet: Length,
    /// Thickness of the bond line.
    pub bond_line: Length,
    /// Modulus of elasticity of the sheets.
    pub modulus: Pressure,
    /// Shear modulus of the adhesive.
    pub shear_modulus: Pressure,
}

fn checked(lap: &Lap) -> Result<(), FormulaError> {
    for (what, length) in [
        ("the width of the lap", lap.width),
        ("the overlap", lap.overlap),
        ("the thickness of the sheets", lap.sheet),
        ("the thickness of the bond line", lap.bond_line),
    ] {
        positive(what, length.get::<millimeter>(), "mm")?;
    }
    positive("the modulus of elasticity", lap.modulus.get::<megapascal>(), "MPa")?;
    positive("the shear modulus of the adhesive", lap.shear_modulus.get::<megapascal>(), "MPa")
}

/// Mean shear stress of a lap joint under a force.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a dimension or force of nothing.
///
/// # Source
/// ASTM D1002 and ISO 4587 rate adhesives by it; it hides the peaks of [`peak_over_average`].
pub fn lap_stress<R: Recorder>(r: &mut R, lap: &Lap, force: Force) -> Result<Pressure, FormulaError> {
    checked(lap)?;
    given!(r, F[newton] = force, "force along the sheets");
    positive("the force", F, "N")?;
    given!(r, b[millimeter] = lap.width, "width of the lap");
    given!(r, l[millimeter] = lap.overlap, "overlap");
    step!(r, tau[megapascal] = F / (b * l), sources::ASTM_D1002);
    r.caution(Caution::Provided { that: "nothing peels or cleaves the joint: a lap holds in shear only" });
    Ok(Pressure::new::<megapascal>(tau))
}

/// By how much the stress at the ends of a lap exceeds its mean.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `l` | overlap | mm |
/// | `G`, `t_a` | shear modulus and thickness of the adhesive | MPa, mm |
/// | `E`, `t` | modulus and thickness of the sheets | MPa, mm |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a dimension or modulus of nothing.
///
/// # Source
/// Volkersen 1938: x·coth x with x = (l/2)·√(2·G/(E·t·t_a)).
pub fn peak_over_average<R: Recorder>(r: &mut R, lap: &Lap) -> Result<f64, FormulaError> {
    checked(lap)?;
    given!(r, l[millimeter] = lap.overlap, "overlap");
    given!(r, G[megapascal] = lap.shear_modulus, "shear modulus of the adhesive");
    given!(r, E[megapascal] = lap.modulus, "modulus of elasticity of the sheets");
    given!(r, t[millimeter] = lap.sheet, "thickness of the sheets");
    given!(r, t_a[millimeter] = lap.bond_line, "thickness of the bond line");
    step!(r, x [] = l / 2.0 * sqrt(2.0 * G / (E * t * t_a)), sources::VOLKERSEN);
    step!(r, n [] = x / tanh(x), sources::VOLKERSEN);
    Ok(n)
}

/// The overlap beyond which a longer lap holds no more, because the sheet yields first.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a thickness or stress of nothing.
///
/// # Source
/// *Common practice*: l = R_e·t/(1.5·τ).
pub fn useful_overlap<R: Recorder>(r: &mut R, sheet: Length, yields: Pressure, strength: Pressure) -> Result<Length, FormulaError> {
    given!(r, t[millimeter] = sheet, "thickness of the sheets");
    positive("the thickness of the sheets", t, "mm")?;
    given!(r, R_e[megapascal] = yields, "yield stress of the sheets");
    positive("the yield stress", R_e, "MPa")?;
    given!(r, tau[megapascal] = strength, "lap strength of the adhesive");
    positive("the lap strength", tau, "MPa")?;
    step!(r, l[millimeter] = R_e * t / (1.5 * tau), sources::COMMON_PRACTICE);
    Ok(Length::new::<millimeter>(l))
}

/// What to count on of an adhesive's lap strength: a quarter; a tenth under lasting load or from 60 °C.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a strength of nothing.
///
/// # Source
/// *Common practice*.
pub fn lap_design_stress<R: Recorder>(
    r: &mut R,
    sheet_value: Pressure,
    sustained: bool,
    service: Temperature,
) -> Result<Pressure, FormulaError> {
    given!(r, tau[megapascal] = sheet_value, "lap strength of the data sheet");
    positive("the lap strength", tau, "MPa")?;
    let harsh = sustained || service.get::<degree_celsius>() >= 60.0;
    given!(r, x [] = if harsh { 0.10 } else { 0.25 }, "share to count on");
    step!(r, tau_d[megapascal] = x * tau, sources::COMMON_PRACTICE);
    Ok(Pressure::new::<megapascal>(tau_d))
}
