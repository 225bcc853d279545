//! Interference fits: a shaft pressed or shrunk into a hub.
//!
//! Interferences are on the diameter. The cylinders are elastic, round, of one length, and under plane stress.

#![expect(non_snake_case, reason = "symbols match the source")]

mod assembly;
mod holding;
mod metal;
mod stress;

pub use assembly::{
    Neighbour, Objection, assembly_play, assembly_temperature, bearing_clearance_left, bush_closing, cold_contraction, heating_objections,
};
pub use holding::{
    Adhesion, Assembly, Contact, Holding, PRESSES_KN, adhesion, effective_interference, holding, interference_when_warmer, press_force,
    smallest_pressure,
};
pub use metal::{METALS, Metal, Strength, metal};
pub use stress::{Stresses, hub_pressure_limit, shaft_pressure_limit, stresses};

use units::{Length, Pressure};
use uom::si::length::millimeter;
use uom::si::pressure::{gigapascal, megapascal};

use crate::error::{FormulaError, less, not_negative, positive, within};
use crate::math::pow;
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// A shaft in its hub.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Joint {
    /// Diameter of the joint.
    pub diameter: Length,
    /// Bore of the shaft; nothing for a solid one.
    pub shaft_bore: Length,
    /// Outside diameter of the hub.
    pub hub_outside: Length,
    /// Length of the joint.
    pub length: Length,
    /// Metal of the shaft.
    pub shaft: Metal,
    /// Metal of the hub.
    pub hub: Metal,
}

/// Most interference for a diameter that elastic cylinders are worked for: beyond it no metal stays elastic.
const GREATEST_SHARE: f64 = 0.01;

/// Softest material that keeps a press fit, GPa: below it are plastics, which creep.
const SOFTEST_GPA: f64 = 10.0;

pub(crate) fn checked(joint: &Joint) -> Result<(), FormulaError> {
    let [d, d_i, D_o] = [joint.diameter, joint.shaft_bore, joint.hub_outside].map(|length| length.get::<millimeter>());
    positive("the diameter of the joint", d, "mm")?;
    positive("the length of the joint", joint.length.get::<millimeter>(), "mm")?;
    not_negative("the bore of the shaft", d_i, "mm", sources::DIN_7190)?;
    less(("the bore of the shaft", d_i), ("the shaft's diameter", d), "mm")?;
    less(("the shaft's diameter", d), ("the hub's outside diameter", D_o), "mm")?;
    for metal in [&joint.shaft, &joint.hub] {
        positive("the modulus of elasticity", metal.modulus.get::<gigapascal>(), "GPa")?;
        within("Poisson's ratio", metal.poisson, "", (0.0, 0.5), sources::LAME)?;
        if metal.modulus.get::<gigapascal>() < SOFTEST_GPA {
            return Err(FormulaError::Refused {
                what: "a press fit in plastic",
                why: "it creeps, and its pressure fades in days",
                instead: "hold it with a shoulder, a key or a screw",
            });
        }
    }
    Ok(())
}

/// Pressure between a shaft and a hub, by the thick cylinders of Lamé.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `delta` | interference on the diameter, less what roughness takes | mm |
/// | `d`, `d_i`, `D_o` | diameter of the joint, bore of the shaft, outside of the hub | mm |
/// | `E_o`, `nu_o` | modulus and Poisson's ratio of the hub | MPa, – |
/// | `E_i`, `nu_i` | the same of the shaft | MPa, – |
///
/// # Range
/// Elastic metals of one length; where the shaft overhangs the hub, the pressure rises at the edge.
///
/// # Errors
/// [`FormulaError::NotLess`] for a shaft not thinner than its hub or not thicker than its bore, [`FormulaError::OutOfRange`] for an
/// interference of more than a hundredth of the diameter or a Poisson's ratio beyond 0.5, [`FormulaError::Refused`] for plastics.
///
/// # Source
/// Lamé; DIN 7190-1. Checked in `tests/published/lame_press_fit.csv`.
///
/// # Example
/// An aluminium shaft of 30 mm and 69 GPa in a hub of 55 mm, 0.10 mm too large: 80.8 MPa (a published example's input, computed
/// independently).
/// ```
/// use formulas::{Silent, interference::{Joint, Metal, Strength, contact_pressure}};
/// use uom::si::{f64::{Length, Pressure, ThermodynamicTemperature}, length::millimeter, pressure::megapascal};
/// use uom::si::thermodynamic_temperature::degree_celsius;
/// let mm = Length::new::<millimeter>;
/// let aluminium = Metal {
///     modulus: Pressure::new::<megapascal>(69_000.0),
///     poisson: 0.33,
///     expansion_per_k: 23e-6,
///     strength: Strength::Yields(Pressure::new::<megapascal>(250.0)),
///     hottest: ThermodynamicTemperature::new::<degree_celsius>(120.0),
/// };
/// let joint = Joint {
///     diameter: mm(30.0), shaft_bore: mm(0.0), hub_outside: mm(55.0), length: mm(30.0), shaft: aluminium, hub: aluminium,
/// };
/// let p = contact_pressure(&mut Silent, &joint, mm(0.10))?;
/// assert!((p.get::<megapascal>() - 80.79).abs() < 0.1);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn contact_pressure<R: Recorder>(r: &mut R, joint: &Joint, effective: Length) -> Result<Pressure, FormulaError> {
    checked(joint)?;
    given!(r, delta[millimeter] = effective, "effective interference on the diameter");
    given!(r, d[millimeter] = joint.diameter, "diameter of the joint");
    within("the interference over the diameter", delta / d, "", (0.0, GREATEST_SHARE), sources::DIN_7190)?;
    given!(r, d_i[millimeter] = joint.shaft_bore, "bore of the shaft");
    given!(r, D_o[millimeter] = joint.hub_outside, "outside diameter of the hub");
    given!(r, E_o[megapascal] = joint.hub.modulus, "modulus of elasticity of the hub");
    given!(r, nu_o [] = joint.hub.poisson, "Poisson's ratio of the hub");
    given!(r, E_i[megapascal] = joint.shaft.modulus, "modulus of elasticity of the shaft");
    given!(r, nu_i [] = joint.shaft.poisson, "Poisson's ratio of the shaft");
    step!(r, K_o["1/MPa"] = ((pow(D_o, 2.0) + pow(d, 2.0)) / (pow(D_o, 2.0) - pow(d, 2.0)) + nu_o) / E_o, sources::LAME);
    step!(r, K_i["1/MPa"] = ((pow(d, 2.0) + pow(d_i, 2.0)) / (pow(d, 2.0) - pow(d_i, 2.0)) - nu_i) / E_i, sources::LAME);
    step!(r, p[megapascal] = delta / (d * (K_o + K_i)), sources::LAME);
    r.caution(Caution::Danger {
        words: "Press behind a guard and cover brittle parts: a hub can burst, and a shaft can fly. Mount no wheel, chuck or lifting part by \
                this figure alone.",
    });
    Ok(Pressure::new::<megapascal>(p))
}
