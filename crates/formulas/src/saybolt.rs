//! Saybolt seconds, in which older American labels and charts give viscosity, to and from kinematic viscosity.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{KinematicViscosity, Temperature, Time};
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::thermodynamic_temperature::degree_fahrenheit;
use uom::si::time::second;

use crate::error::{FormulaError, within};
use crate::math::pow;
use crate::sources;
use crate::working::Recorder;
use crate::{given, solve, step};

/// Kinematic viscosities the Saybolt Universal equation covers, mm²/s.
const UNIVERSAL_NU: (f64, f64) = (1.81, 1e6);
/// The seconds they stand for; the equation gives 31.95 s at 1.81 mm²/s, where the standard's table begins with 32.0.
const UNIVERSAL_SECONDS: (f64, f64) = (31.94, 4.64e6);
/// Temperatures the correction is used for, °F.
const TEMPERATURES: (f64, f64) = (0.0, 350.0);

/// What the Saybolt Universal equation adds to 4.6324·ν at 100 °F; it dies out in thick oils.
fn rest(nu: f64) -> f64 {
    (1.0 + 0.03264 * nu) / (1e-5 * (3930.2 + 262.7 * nu + 23.97 * nu.powi(2) + 1.646 * nu.powi(3)))
}

/// Saybolt Universal seconds of an oil at the temperature both are measured at.
///
/// U_100 = 4.6324·ν + (1 + 0.03264·ν)/((3930.2 + 262.7·ν + 23.97·ν² + 1.646·ν³)·10⁻⁵), and U = U_100·(1 + 0.000 061·(t − 100)).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `nu` | kinematic viscosity | mm²/s |
/// | `t` | temperature of the measurement | °F |
/// | `U` | Saybolt Universal viscosity | s |
///
/// # Range
/// 1.81 mm²/s and more (32 seconds), 0 to 350 °F.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside.
///
/// # Source
/// ASTM D2161. Checked in `tests/published/saybolt.csv`.
///
/// # Example
/// 32 mm²/s at 100 °F is 150.5 seconds: the "150 second" oil of an old label is VG 32.
/// ```
/// use formulas::{Silent, saybolt::saybolt_universal};
/// use uom::si::f64::{KinematicViscosity, ThermodynamicTemperature};
/// use uom::si::{kinematic_viscosity::square_millimeter_per_second, thermodynamic_temperature::degree_fahrenheit, time::second};
/// let seconds = saybolt_universal(
///     &mut Silent,
///     KinematicViscosity::new::<square_millimeter_per_second>(32.0),
///     ThermodynamicTemperature::new::<degree_fahrenheit>(100.0),
/// )?;
/// assert!((seconds.get::<second>() - 150.5).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn saybolt_universal<R: Recorder>(r: &mut R, nu: KinematicViscosity, at: Temperature) -> Result<Time, FormulaError> {
    given!(r, nu[mm2_per_s] = nu, "kinematic viscosity");
    given!(r, t["°F"] = at.get::<degree_fahrenheit>(), "temperature of the measurement");
    within("the viscosity", nu, "mm²/s", UNIVERSAL_NU, sources::ASTM_D2161)?;
    within("the temperature", t, "°F", TEMPERATURES, sources::ASTM_D2161)?;
    step!(
        r,
        U_100[second] = 4.6324 * nu + (1.0 + 0.03264 * nu) / ((3930.2 + 262.7 * nu + 23.97 * pow(nu, 2.0) + 1.646 * pow(nu, 3.0)) * 1e-5),
        sources::ASTM_D2161
    );
    step!(r, U[second] = U_100 * (1.0 + 0.000061 * (t - 100.0)), sources::ASTM_D2161);
    Ok(Time::new::<second>(U))
}

/// Kinematic viscosity from Saybolt Universal seconds: [`saybolt_universal`] turned round by a solver.
///
/// # Range
/// 32 seconds and more, 0 to 350 °F.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside.
///
/// # Source
/// ASTM D2161. Checked in `tests/published/saybolt.csv`.
///
/// # Example
/// 315 seconds at 100 °F are 67.9 mm²/s: VG 68.
/// ```
/// use formulas::{Silent, saybolt::viscosity_from_universal};
/// use uom::si::f64::{ThermodynamicTemperature, Time};
/// use uom::si::{kinematic_viscosity::square_millimeter_per_second, thermodynamic_temperature::degree_fahrenheit, time::second};
/// let hundred = ThermodynamicTemperature::new::<degree_fahrenheit>(100.0);
/// let nu = viscosity_from_universal(&mut Silent, Time::new::<second>(315.0), hundred)?;
/// assert!((nu.get::<square_millimeter_per_second>() - 67.9).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn viscosity_from_universal<R: Recorder>(r: &mut R, seconds: Time, at: Temperature) -> Result<KinematicViscosity, FormulaError> {
    given!(r, U[second] = seconds, "Saybolt Universal viscosity");
    given!(r, t["°F"] = at.get::<degree_fahrenheit>(), "temperature of the measurement");
    within("the temperature", t, "°F", TEMPERATURES, sources::ASTM_D2161)?;
    step!(r, U_100[second] = U / (1.0 + 0.000061 * (t - 100.0)), sources::ASTM_D2161);
    within("the Saybolt Universal viscosity at 100 °F", U_100, "s", UNIVERSAL_SECONDS, sources::ASTM_D2161)?;
    // The equation is 4.6324·ν and something between nothing and what it is for the thinnest oil.
    let lowest = ((U_100 - rest(UNIVERSAL_NU.0)) / 4.6324).max(1.8);
    solve!(
        r,
        nu [mm2_per_s] in (lowest, U_100 / 4.6324):
            4.6324 * nu + (1.0 + 0.03264 * nu) / ((3930.2 + 262.7 * nu + 23.97 * pow(nu, 2.0) + 1.646 * pow(nu, 3.0)) * 1e-5) == U_100,
        sources::ASTM_D2161
    );
    Ok(KinematicViscosity::new::<mm2_per_s>(nu))
}

/// The temperature a Saybolt Furol viscosity is given at; the standard has an equation for each.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Furol {
    /// At 122 °F (50 °C).
    At122F,
    /// At 210 °F (98.9 °C).
    At210F,
}

impl Furol {
    /// The least kinematic viscosity the standard converts, mm²/s.
    fn least(self) -> f64 {
        match self {
            Self::At122F => 48.0,
            Self::At210F => 50.0,
        }
    }
}

/// Saybolt Furol seconds of a thick oil.
///
/// At 122 °F F = 0.4717·ν + 13 924/(ν² − 72.59·ν + 6816); at 210 °F F = 0.4792·ν + 5610/(ν² + 2130).
///
/// # Range
/// 48 mm²/s and more at 122 °F, 50 at 210 °F: about 25 seconds.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a thinner oil; measure it in Universal seconds.
///
/// # Source
/// ASTM D2161; both equations *from memory*, and they begin at the 25 seconds at which the standard's table does.
///
/// # Example
/// A thick oil has about a tenth as many Furol seconds as Universal ones: 500 mm²/s at 122 °F is 235.9 (by hand, *from memory*).
/// ```
/// use formulas::{Silent, saybolt::{Furol, saybolt_furol}};
/// use uom::si::{f64::KinematicViscosity, kinematic_viscosity::square_millimeter_per_second, time::second};
/// let nu = KinematicViscosity::new::<square_millimeter_per_second>(500.0);
/// let seconds = saybolt_furol(&mut Silent, nu, Furol::At122F)?;
/// assert!((seconds.get::<second>() - 235.9).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn saybolt_furol<R: Recorder>(r: &mut R, nu: KinematicViscosity, at: Furol) -> Result<Time, FormulaError> {
    given!(r, nu[mm2_per_s] = nu, "kinematic viscosity");
    within("the viscosity", nu, "mm²/s", (at.least(), 1e6), sources::ASTM_D2161)?;
    let seconds = match at {
        Furol::At122F => {
            step!(r, F[second] = 0.4717 * nu + 13924.0 / (pow(nu, 2.0) - 72.59 * nu + 6816.0), sources::ASTM_D2161);
            F
        }
        Furol::At210F => {
            step!(r, F[second] = 0.4792 * nu + 5610.0 / (pow(nu, 2.0) + 2130.0), sources::ASTM_D2161);
            F
        }
    };
    Ok(Time::new::<second>(seconds))
}

/// Kinematic viscosity from Saybolt Furol seconds: [`saybolt_furol`] turned round by a solver.
///
/// # Errors
/// [`FormulaError::OutOfRange`] below 25.1 seconds.
///
/// # Source
/// ASTM D2161, *from memory*.
pub fn viscosity_from_furol<R: Recorder>(r: &mut R, seconds: Time, at: Furol) -> Result<KinematicViscosity, FormulaError> {
    given!(r, F[second] = seconds, "Saybolt Furol viscosity");
    within("the Saybolt Furol viscosity", F, "s", (25.1, 4.7e5), sources::ASTM_D2161)?;
    let nu = match at {
        Furol::At122F => {
            solve!(r, nu [mm2_per_s] in (40.0, F / 0.4717): 0.4717 * nu + 13924.0 / (pow(nu, 2.0) - 72.59 * nu + 6816.0) == F, sources::ASTM_D2161);
            nu
        }
        Furol::At210F => {
            solve!(r, nu [mm2_per_s] in (40.0, F / 0.4792): 0.4792 * nu + 5610.0 / (pow(nu, 2.0) + 2130.0) == F, sources::ASTM_D2161);
            nu
        }
    };
    Ok(KinematicViscosity::new::<mm2_per_s>(nu))
}
