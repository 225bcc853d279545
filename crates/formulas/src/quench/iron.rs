//! The heat of hot iron.

use units::Temperature;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

use crate::error::{FormulaError, within};
use crate::sources;
use crate::working::Recorder;
use crate::{given, step};

/// Temperatures covered, °C: from frost, where the first piece still serves, to melting.
pub(super) const COVERED_C: (f64, f64) = (-20.0, 1535.0);

/// A piece of Shomate's equation: from this temperature in kelvin, with the constants A to E.
struct Piece(f64, [f64; 5]);

/// Ferrite, up to where it turns to austenite.
const FERRITE: [Piece; 4] = [
    Piece(298.15, [18.42868, 24.64301, -8.913_720, 9.664_706, -0.012_643]),
    Piece(700.0, [-57_767.65, 137_919.7, -122_773.2, 38_682.42, 3_993.080]),
    Piece(1_042.0, [-325.885_9, 28.928_76, 0.0, 0.0, 411.962_9]),
    Piece(1_100.0, [-776.738_7, 919.400_5, -383.718_4, 57.081_48, 242.136_9]),
];
/// Where ferrite turns to austenite, K.
const TURNS: f64 = 1_185.0;
const AUSTENITE: Piece = Piece(TURNS, [23.97449, 8.367_750, 0.000_277, -0.000_088, -0.000_005]);
/// Heat of austenite where it forms, above that of ferrite at 25 °C, kJ/mol.
const AUSTENITE_THERE: f64 = 34.553;
const MOLAR_MASS_G: f64 = 55.845;

impl Piece {
    /// Heat taken up between two temperatures in kelvin, kJ/mol.
    fn heat(&self, from: f64, to: f64) -> f64 {
        let [a, b, c, d, e] = self.1;
        let integral = |at: f64| {
            let t = at / 1000.0;
            a * t + b * t.powi(2) / 2.0 + c * t.powi(3) / 3.0 + d * t.powi(4) / 4.0 - e / t
        };
        integral(to) - integral(from)
    }
}

/// Heat of iron above that at 25 °C, kJ/kg.
///
/// The pieces as published do not quite meet, so each goes on from where the last ended; that makes at most 8 kJ/kg more than they say,
/// on the safe side, and never less heat in hotter iron.
pub(super) fn heat(at: f64) -> f64 {
    if at >= TURNS {
        return (AUSTENITE_THERE + AUSTENITE.heat(TURNS, at)) / MOLAR_MASS_G * 1e3;
    }
    // Iron colder than where the first piece begins is the first piece's too.
    let [first, later @ ..] = &FERRITE;
    let (mut heat, mut to) = (0.0, at);
    for piece in later.iter().rev().filter(|piece| at > piece.0) {
        heat += piece.heat(piece.0, to);
        to = piece.0;
    }
    (heat + first.heat(first.0, to)) / MOLAR_MASS_G * 1e3
}

/// Heat of iron above that at 25 °C, kJ/kg, with what it takes up as it loses its magnetism (770 °C) and turns to austenite (912 °C).
///
/// # Range
/// −20 to 1535 °C.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside.
///
/// # Source
/// Shomate equations of the NIST Chemistry WebBook for iron, after the JANAF tables; *from memory*.
///
/// # Example
/// 515 kJ/kg at 800 °C and 555 at 850 °C (JANAF, *from memory*).
/// ```
/// use formulas::{Silent, quench::iron_heat_kj_per_kg};
/// use uom::si::{f64::ThermodynamicTemperature, thermodynamic_temperature::degree_celsius};
/// for (celsius, heat) in [(25.0, 0.0), (800.0, 515.0), (850.0, 555.0)] {
///     let found = iron_heat_kj_per_kg(&mut Silent, ThermodynamicTemperature::new::<degree_celsius>(celsius))?;
///     assert!((found - heat).abs() < 10.0, "{found}");
/// }
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn iron_heat_kj_per_kg<R: Recorder>(r: &mut R, at: Temperature) -> Result<f64, FormulaError> {
    within("the temperature of the iron", at.get::<degree_celsius>(), "°C", COVERED_C, sources::NIST_WEBBOOK)?;
    given!(r, T[kelvin] = at, "temperature of the iron");
    let H = heat;
    step!(r, h["kJ/kg"] = H(T), sources::NIST_WEBBOOK);
    Ok(h)
}
