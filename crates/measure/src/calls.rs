//! Two formulas, call by call: the viscosity index, and the dew point of air from its humidity.

use std::hint::black_box;

use formulas::humid_air::{Over, dew_point, vapour_pressure};
use formulas::viscosity_index::{viscosity_40_from_index, viscosity_index};
use formulas::{FormulaError, Silent};
use units::{KinematicViscosity, Ratio, Temperature};
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;

use crate::clock::{count, shortest};

/// A single call is shorter than the clock's step, so so many are timed at once.
const CALLS: u16 = 1000;
const RUNS: u32 = 200;

/// What is asked, and how it is answered here.
pub(crate) struct Calls {
    /// The two numbers of each call.
    pub asked: Vec<(f64, f64)>,
    /// The time of one call, in seconds.
    pub seconds: f64,
    /// The answers.
    pub answers: Vec<f64>,
}

fn calls(asked: Vec<(f64, f64)>, work: impl Fn(f64, f64) -> Result<f64, FormulaError>) -> Result<Calls, FormulaError> {
    let all = || black_box(&asked).iter().map(|&(a, b)| work(a, b)).collect::<Result<Vec<f64>, _>>();
    let (seconds, answers) = shortest(RUNS, all);
    Ok(Calls { seconds: seconds / count(asked.len()), answers: answers?, asked })
}

/// Viscosity index of oils from thin to thick and from poor to very good: from mm²/s at 40 and 100 °C.
pub(crate) fn indices() -> Result<Calls, FormulaError> {
    let nu = KinematicViscosity::new::<mm2_per_s>;
    let oil = |number: u16| {
        let (nu100, index) = (2.1 + 0.06 * f64::from(number), 20.0 * f64::from(number % 10));
        Ok((viscosity_40_from_index(&mut Silent, nu(nu100), index)?.get::<mm2_per_s>(), nu100))
    };
    let oils = (0..CALLS).map(oil).collect::<Result<Vec<_>, FormulaError>>()?;
    calls(oils, |nu40, nu100| viscosity_index(&mut Silent, nu(nu40), nu(nu100)))
}

/// Dew point in °C of air from −10 to 40 °C and from 20 to 100 %, over ice below freezing.
pub(crate) fn dew_points() -> Result<Calls, FormulaError> {
    let air = |number: u16| (-10.0 + 0.05 * f64::from(number), 0.2 + 0.1 * f64::from(number % 9));
    calls((0..CALLS).map(air).collect(), |celsius, humidity| {
        let air = Temperature::new::<degree_celsius>(celsius);
        let vapour = vapour_pressure(&mut Silent, air, Ratio::new::<ratio>(humidity), Over::IceWhenFrozen)?;
        Ok(dew_point(&mut Silent, vapour, Over::IceWhenFrozen)?.get::<degree_celsius>())
    })
}
