//! The viscosity index: how little an oil thins when it is warmed.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::KinematicViscosity;
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;

use crate::error::{FormulaError, within};
use crate::math::{log10, max, pow};
use crate::sources;
use crate::viscosity::{Measured, viscosity_at};
use crate::working::{Recorder, Silent};
use crate::{given, solve, step};

/// The least viscosity at 100 °C the standard covers, mm²/s.
pub const LEAST_NU_100: f64 = 2.0;

/// No oil is thicker than this at 100 °C, mm²/s.
const MOST_NU_100: f64 = 1000.0;

/// Quadratics through the standard's table: from this Y on, L = aY² + bY + c and H = dY² + eY + f.
const PIECES: [[f64; 7]; 16] = [
    [2.0, 1.146_73, 1.7576, -0.109, 0.841_55, 1.5521, -0.077],
    [3.8, 3.380_95, -15.4952, 33.196, 0.785_71, 1.7929, -0.183],
    [4.4, 2.5, -7.2143, 13.812, 0.821_43, 1.5679, 0.119],
    [5.0, 0.101, 16.635, -45.469, 0.049_85, 9.1613, -18.557],
    [6.4, 3.357_14, -23.5643, 78.466, 0.226_19, 7.7369, -16.656],
    [7.0, 0.011_91, 21.475, -72.87, 0.797_62, -0.7321, 14.61],
    [7.7, 0.418_58, 16.1558, -56.04, 0.057_94, 10.5156, -28.24],
    [9.0, 0.887_79, 7.5527, -16.6, 0.266_65, 6.7015, -10.81],
    [12.0, 0.7672, 10.7972, -38.18, 0.200_73, 8.4658, -22.49],
    [15.0, 0.973_05, 5.3135, -2.2, 0.288_89, 5.9741, -4.93],
    [18.0, 0.972_56, 5.25, -0.98, 0.245_04, 7.416, -16.73],
    [22.0, 0.914_13, 7.4759, -21.82, 0.203_23, 9.1267, -34.23],
    [28.0, 0.870_31, 9.7157, -50.77, 0.184_11, 10.1015, -46.75],
    [40.0, 0.847_03, 12.6752, -133.31, 0.170_29, 11.4866, -80.62],
    [55.0, 0.859_21, 11.1009, -83.19, 0.1713, 11.368, -76.94],
    [70.0, 0.835_31, 14.6731, -216.246, 0.168_41, 11.8493, -96.947],
];

/// The quadratics that hold at a viscosity at 100 °C: a to f.
fn piece(Y: f64) -> [f64; 6] {
    let mut found = PIECES[0];
    for candidate in PIECES {
        if candidate[0] <= Y {
            found = candidate;
        }
    }
    let [_, a, b, c, d, e, f] = found;
    [a, b, c, d, e, f]
}

/// L and H, the viscosities at 40 °C of the standard's oils of index 0 and 100 that have the viscosity Y at 100 °C.
fn reference_oils<R: Recorder>(r: &mut R, Y: f64) -> (f64, f64) {
    let [a, b, c, d, e, f] = piece(Y);
    step!(r, L[mm2_per_s] = a * pow(Y, 2.0) + b * Y + c, sources::ASTM_D2270);
    step!(r, H[mm2_per_s] = d * pow(Y, 2.0) + e * Y + f, sources::ASTM_D2270);
    (L, H)
}

/// Viscosity index from the viscosities at 40 and 100 °C.
///
/// Up to 100, VI = 100·(L − U)/(L − H) (procedure A); above, VI = 100 + (10^N − 1)/0.00715 with N = log₁₀(H/U)/log₁₀ Y (procedure B).
/// L and H come from the quadratics fitted to the standard's table, which they meet within 0.2 of an index.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `U` | kinematic viscosity at 40 °C | mm²/s |
/// | `Y` | kinematic viscosity at 100 °C | mm²/s |
/// | `L`, `H` | viscosity at 40 °C of the oils of index 0 and 100 with the same `Y` | mm²/s |
///
/// # Range
/// 2 mm²/s and more at 100 °C; a thinner oil (VG 5 and below) has no index, and needs its two points measured. The index is printed
/// without decimals.
///
/// # Errors
/// [`FormulaError::OutOfRange`] below 2 mm²/s at 100 °C; [`FormulaError::PointsOutOfOrder`] unless `U` is more than `Y`.
///
/// # Source
/// ASTM D2270. Checked in `tests/published/viscosity_index.csv`.
///
/// # Example
/// The standard's worked example: 73.30 and 8.86 mm²/s make an index of 92.
/// ```
/// use formulas::{Silent, viscosity_index::viscosity_index};
/// use uom::si::{f64::KinematicViscosity, kinematic_viscosity::square_millimeter_per_second as mm2_per_s};
/// let nu = KinematicViscosity::new::<mm2_per_s>;
/// assert_eq!(viscosity_index(&mut Silent, nu(73.30), nu(8.86))?.round(), 92.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn viscosity_index<R: Recorder>(r: &mut R, nu40: KinematicViscosity, nu100: KinematicViscosity) -> Result<f64, FormulaError> {
    given!(r, U[mm2_per_s] = nu40, "kinematic viscosity at 40 °C");
    given!(r, Y[mm2_per_s] = nu100, "kinematic viscosity at 100 °C");
    within("the viscosity at 100 °C", Y, "mm²/s", (LEAST_NU_100, f64::INFINITY), sources::ASTM_D2270)?;
    if !(U > Y && U.is_finite()) {
        return Err(FormulaError::PointsOutOfOrder { cool_at: 40.0, cool_nu: U, hot_at: 100.0, hot_nu: Y });
    }
    let (L, H) = reference_oils(r, Y);
    if U >= H {
        step!(r, VI [] = 100.0 * (L - U) / (L - H), sources::ASTM_D2270);
        Ok(VI)
    } else {
        step!(r, N [] = log10(H / U) / log10(Y), sources::ASTM_D2270);
        step!(r, VI [] = (pow(10.0, N) - 1.0) / 0.00715 + 100.0, sources::ASTM_D2270);
        Ok(VI)
    }
}

/// Viscosity at 40 °C of an oil of known index, from its viscosity at 100 °C: both procedures of [`viscosity_index`] turned round.
///
/// # Range
/// As [`viscosity_index`].
///
/// # Errors
/// [`FormulaError::OutOfRange`] below 2 mm²/s at 100 °C, or where the index is lower than any oil's.
///
/// # Source
/// ASTM D2270.
///
/// # Example
/// A gear oil at the lower limit of SAE 90 (13.5 mm²/s at 100 °C) with an index of 95 is about VG 150 (134 mm²/s; computed independently).
/// ```
/// use formulas::{Silent, viscosity_index::viscosity_40_from_index};
/// use uom::si::{f64::KinematicViscosity, kinematic_viscosity::square_millimeter_per_second as mm2_per_s};
/// let nu40 = viscosity_40_from_index(&mut Silent, KinematicViscosity::new::<mm2_per_s>(13.5), 95.0)?;
/// assert!((nu40.get::<mm2_per_s>() - 134.0).abs() < 2.7);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn viscosity_40_from_index<R: Recorder>(r: &mut R, nu100: KinematicViscosity, index: f64) -> Result<KinematicViscosity, FormulaError> {
    given!(r, Y[mm2_per_s] = nu100, "kinematic viscosity at 100 °C");
    given!(r, VI [] = index, "viscosity index");
    within("the viscosity at 100 °C", Y, "mm²/s", (LEAST_NU_100, f64::INFINITY), sources::ASTM_D2270)?;
    within("the viscosity index", VI, "", (-1000.0, 1000.0), sources::ASTM_D2270)?;
    let (L, H) = reference_oils(r, Y);
    if VI <= 100.0 {
        step!(r, U[mm2_per_s] = L - VI / 100.0 * (L - H), sources::ASTM_D2270);
        Ok(KinematicViscosity::new::<mm2_per_s>(U))
    } else {
        step!(r, N [] = log10((VI - 100.0) * 0.00715 + 1.0), sources::ASTM_D2270);
        step!(r, U[mm2_per_s] = H / pow(Y, N), sources::ASTM_D2270);
        Ok(KinematicViscosity::new::<mm2_per_s>(U))
    }
}

/// Viscosity at 100 °C of an oil of known index, from its viscosity at 40 °C: solved from [`viscosity_40_from_index`].
///
/// # Range
/// As [`viscosity_index`]: the answer is 2 mm²/s or more.
///
/// # Errors
/// [`FormulaError::NoRoot`] where the viscosity at 100 °C would be below 2 mm²/s; such an oil has no index.
///
/// # Source
/// ASTM D2270.
///
/// # Example
/// VG 32 with an index of 95 has 5.29 mm²/s at 100 °C (computed independently).
/// ```
/// use formulas::{Silent, viscosity_index::viscosity_100_from_index};
/// use uom::si::{f64::KinematicViscosity, kinematic_viscosity::square_millimeter_per_second as mm2_per_s};
/// let nu100 = viscosity_100_from_index(&mut Silent, KinematicViscosity::new::<mm2_per_s>(32.0), 95.0)?;
/// assert!((nu100.get::<mm2_per_s>() - 5.29).abs() < 0.05);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn viscosity_100_from_index<R: Recorder>(r: &mut R, nu40: KinematicViscosity, index: f64) -> Result<KinematicViscosity, FormulaError> {
    given!(r, U[mm2_per_s] = nu40, "kinematic viscosity at 40 °C");
    given!(r, VI [] = index, "viscosity index");
    within("the viscosity index", VI, "", (-1000.0, 1000.0), sources::ASTM_D2270)?;
    let L = |Y: f64| reference_oils(&mut Silent, Y).0;
    let H = |Y: f64| reference_oils(&mut Silent, Y).1;
    // Only read above an index of 100; below it, nothing is asked of it and it must only have a value.
    step!(r, N [] = log10(max(VI - 100.0, 0.0) * 0.00715 + 1.0), sources::ASTM_D2270);
    solve!(
        r,
        Y [mm2_per_s] in (LEAST_NU_100, max(U, LEAST_NU_100)):
            (if VI <= 100.0 { L(Y) - VI / 100.0 * (L(Y) - H(Y)) } else { H(Y) / pow(Y, N) }) == U,
        sources::ASTM_D2270
    );
    Ok(KinematicViscosity::new::<mm2_per_s>(Y))
}

/// Viscosity at 40 °C of an oil of known index, from what was measured at any other temperature: solved from [`viscosity_at`] on the line
/// that the index gives.
///
/// # Range
/// As [`viscosity_index`] and [`viscosity_at`].
///
/// # Errors
/// [`FormulaError::NoRoot`] where no oil of that index is so thin there, or so thick.
///
/// # Source
/// ASTM D2270, ASTM D341.
///
/// # Example
/// 150 Saybolt seconds at 100 °F are 31.9 mm²/s (ASTM D2161); an oil of index 95 has 29.00 mm²/s at 40 °C (computed independently).
/// ```
/// use formulas::{Silent, viscosity::Measured, viscosity_index::viscosity_40_by_index};
/// use uom::si::f64::{KinematicViscosity, ThermodynamicTemperature};
/// use uom::si::{kinematic_viscosity::square_millimeter_per_second as mm2_per_s, thermodynamic_temperature::degree_fahrenheit};
/// let measured = Measured {
///     at: ThermodynamicTemperature::new::<degree_fahrenheit>(100.0),
///     nu: KinematicViscosity::new::<mm2_per_s>(31.9),
/// };
/// let nu40 = viscosity_40_by_index(&mut Silent, measured, 95.0)?;
/// assert!((nu40.get::<mm2_per_s>() - 29.00).abs() < 0.02);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn viscosity_40_by_index<R: Recorder>(r: &mut R, measured: Measured, index: f64) -> Result<KinematicViscosity, FormulaError> {
    given!(r, nu_T[mm2_per_s] = measured.nu, "kinematic viscosity where it was measured");
    let nu = |Y: f64| {
        let hot = KinematicViscosity::new::<mm2_per_s>(Y);
        let there = viscosity_40_from_index(&mut Silent, hot, index)
            .and_then(|cool| viscosity_at(&mut Silent, Measured::at_40(cool), Measured::at_100(hot), measured.at));
        // Where there is no such oil there is no root either.
        there.map_or(f64::NAN, |nu| nu.get::<mm2_per_s>())
    };
    solve!(r, Y [mm2_per_s] in (LEAST_NU_100, MOST_NU_100): nu(Y) == nu_T, sources::ASTM_D341);
    viscosity_40_from_index(r, KinematicViscosity::new::<mm2_per_s>(Y), index)
}
