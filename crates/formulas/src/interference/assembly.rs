//! Putting a press fit together by heat or cold, and what it does to the parts near it.

use units::{Length, Pressure, Range, Temperature, TemperatureDifference};
use uom::si::length::{micrometer, millimeter};
use uom::si::pressure::megapascal;
use uom::si::temperature_interval::kelvin as kelvins;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::Joint;
use crate::error::{FormulaError, less, not_negative, positive, within};
use crate::math::{max, pow};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Hottest any part is heated for assembly, °C: there steel begins to change its structure.
const HOTTEST_C: f64 = 727.0;

/// The play a hot hub needs to drop over its shaft: the larger of a thousandth of the diameter and 0.02 mm.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a diameter of nothing.
///
/// # Source
/// DIN 7190-1, *from memory*; the floor is *common practice*.
pub fn assembly_play<R: Recorder>(r: &mut R, diameter: Length) -> Result<Length, FormulaError> {
    given!(r, d[millimeter] = diameter, "diameter of the joint");
    positive("the diameter of the joint", d, "mm")?;
    step!(r, s[millimeter] = max(d / 1000.0, 0.02), sources::DIN_7190);
    Ok(Length::new::<millimeter>(s))
}

/// The temperature a hub must have to drop over its shaft.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `delta` | largest interference | mm |
/// | `s` | play wanted, as [`assembly_play`] | mm |
/// | `alpha` | thermal expansion of the hub | 1/K |
/// | `theta_0`, `theta` | temperature of the room and of the hub | °C |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for more than 727 °C, where steel changes its structure, or a negative interference or play;
/// [`FormulaError::NotPositive`] for a diameter or expansion of nothing.
///
/// # Source
/// DIN 7190-1. Checked in `tests/published/thermal.csv`. What the metal and its neighbours bear is judged by [`heating_objections`].
///
/// # Example
/// A steel hub of 25 mm, 0.048 mm too small, drops on with 0.025 mm to spare at 285 °C (computed independently).
/// ```
/// use formulas::{Silent, interference::{assembly_play, assembly_temperature}};
/// use uom::si::{f64::{Length, ThermodynamicTemperature}, length::millimeter, thermodynamic_temperature::degree_celsius};
/// let mm = Length::new::<millimeter>;
/// let play = assembly_play(&mut Silent, mm(25.0))?;
/// let room = ThermodynamicTemperature::new::<degree_celsius>(20.0);
/// let hot = assembly_temperature(&mut Silent, mm(0.048), play, mm(25.0), 11e-6, room)?;
/// assert!((hot.get::<degree_celsius>() - 285.0).abs() < 1.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn assembly_temperature<R: Recorder>(
    r: &mut R,
    interference: Length,
    play: Length,
    diameter: Length,
    expansion_per_k: f64,
    room: Temperature,
) -> Result<Temperature, FormulaError> {
    given!(r, delta[millimeter] = interference, "largest interference on the diameter");
    given!(r, s[millimeter] = play, "play wanted while hot");
    given!(r, d[millimeter] = diameter, "diameter of the joint");
    given!(r, alpha["1/K"] = expansion_per_k, "thermal expansion of the hub");
    given!(r, theta_0[degree_celsius] = room, "temperature of the room");
    not_negative("the interference", delta, "mm", sources::DIN_7190)?;
    not_negative("the play", s, "mm", sources::DIN_7190)?;
    positive("the diameter of the joint", d, "mm")?;
    positive("the thermal expansion", alpha, "1/K")?;
    step!(r, theta[degree_celsius] = theta_0 + (delta + s) / (alpha * d), sources::DIN_7190);
    within("the temperature of the hub", theta, "°C", (-273.15, HOTTEST_C), sources::DIN_7190)?;
    r.caution(Caution::Danger {
        words: "A hot part looks like a cold one: wear dry gloves, mark it, and keep oil, solvent and anything that burns away.",
    });
    Ok(Temperature::new::<degree_celsius>(theta))
}

/// What must not get as hot as a part being heated for assembly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Neighbour {
    /// Magnesium, which burns.
    Magnesium,
    /// A plated face.
    Plating,
    /// A soft-soldered joint.
    SoftSolder,
    /// A magnet.
    Magnet,
    /// A rubber seal.
    Seal,
    /// A bearing with a plastic cage, or sealed and greased.
    PlasticCage,
}

/// Why a part may not be heated so far.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Objection {
    /// The metal itself does not bear it.
    Metal {
        /// The hottest it bears.
        hottest: Temperature,
    },
    /// Something on it or beside it must not be heated.
    Neighbour(Neighbour),
}

/// What speaks against heating a part to a temperature.
///
/// # Source
/// DIN 7190 for steels, *from memory*; the neighbours are *common practice*: soft solder melts at 183 °C, rubber suffers from 100 °C, a
/// sealed or plastic-caged bearing from 80 °C; magnesium, magnets and plating are never heated for assembly.
#[must_use]
pub fn heating_objections(at: Temperature, hottest: Temperature, near: &[Neighbour]) -> Vec<Objection> {
    let celsius = at.get::<degree_celsius>();
    let metal = (at > hottest).then_some(Objection::Metal { hottest });
    let bears = |neighbour: &Neighbour| match neighbour {
        Neighbour::Magnesium | Neighbour::Plating | Neighbour::Magnet => false,
        Neighbour::SoftSolder => celsius < 150.0,
        Neighbour::Seal => celsius <= 100.0,
        Neighbour::PlasticCage => celsius <= 80.0,
    };
    metal.into_iter().chain(near.iter().filter(|neighbour| !bears(neighbour)).map(|neighbour| Objection::Neighbour(*neighbour))).collect()
}

/// How much a steel shaft shrinks when it is cooled.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for cooling by a negative amount or beyond 200 K; [`FormulaError::NotPositive`] for a diameter of nothing.
///
/// # Source
/// Mean contraction of steel below room temperature, 8.5·10⁻⁶ per kelvin: *common practice*.
///
/// # Example
/// A domestic freezer (−18 °C) takes 0.008 mm off 25 mm, dry ice (−78 °C) 0.021 mm (*common practice, no source*).
/// ```
/// use formulas::{Silent, interference::cold_contraction};
/// use uom::si::{f64::{Length, TemperatureInterval}, length::millimeter, temperature_interval::kelvin};
/// let shrinks = |cooler| {
///     cold_contraction(&mut Silent, Length::new::<millimeter>(25.0), TemperatureInterval::new::<kelvin>(cooler))
/// };
/// assert!((shrinks(38.0)?.get::<millimeter>() - 0.008).abs() < 0.0005);
/// assert!((shrinks(98.0)?.get::<millimeter>() - 0.021).abs() < 0.0005);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn cold_contraction<R: Recorder>(r: &mut R, diameter: Length, cooler: TemperatureDifference) -> Result<Length, FormulaError> {
    given!(r, d[millimeter] = diameter, "diameter of the shaft");
    positive("the diameter of the shaft", d, "mm")?;
    given!(r, Delta_T[kelvins] = cooler, "how much the shaft is cooled");
    within("how much the shaft is cooled", Delta_T, "K", (0.0, 200.0), sources::COMMON_PRACTICE)?;
    step!(r, Delta_d[millimeter] = 8.5e-6 * d * Delta_T, sources::COMMON_PRACTICE);
    r.caution(Caution::Provided { that: "no frost forms on the shaft; a bonded joint is weakened by it" });
    Ok(Length::new::<millimeter>(Delta_d))
}

/// How much the bore of a bush closes when it is pressed into its housing.
///
/// The joint's shaft is the bush: its bore is the shaft's bore.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a bush without a bore; [`FormulaError::NotLess`] for a bore not smaller than the bush.
///
/// # Source
/// Lamé. Expect 80 to 95 % of the interference in a stiff housing, and ream afterwards: *common practice*.
pub fn bush_closing<R: Recorder>(r: &mut R, joint: &Joint, pressure: Pressure) -> Result<Length, FormulaError> {
    super::checked(joint)?;
    given!(r, p[megapascal] = pressure, "contact pressure");
    not_negative("the contact pressure", p, "MPa", sources::LAME)?;
    given!(r, d[millimeter] = joint.diameter, "outside diameter of the bush");
    given!(r, d_i[millimeter] = joint.shaft_bore, "bore of the bush");
    positive("the bore of the bush", d_i, "mm")?;
    less(("the bore of the bush", d_i), ("the outside of the bush", d), "mm")?;
    given!(r, E[megapascal] = joint.shaft.modulus, "modulus of elasticity of the bush");
    step!(r, u[micrometer] = 1000.0 * 2.0 * p * pow(d, 2.0) * d_i / (E * (pow(d, 2.0) - pow(d_i, 2.0))), sources::LAME);
    r.caution(Caution::Provided { that: "you ream or bore the bush after pressing it in" });
    Ok(Length::new::<micrometer>(u))
}

/// The internal clearance a rolling bearing keeps when its ring is pressed with an interference: least, likely, most; it may be negative.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative interference.
///
/// # Source
/// 60 to 80 % of the interference comes off the clearance: *common practice*. A bonded slip fit takes none.
pub fn bearing_clearance_left<R: Recorder>(r: &mut R, clearance: Length, interference: Length) -> Result<Range<Length>, FormulaError> {
    given!(r, c[micrometer] = clearance, "internal clearance of the bearing");
    given!(r, delta[micrometer] = interference, "interference of the ring");
    not_negative("the interference", delta, "µm", sources::COMMON_PRACTICE)?;
    step!(r, c_low[micrometer] = c - 0.8 * delta, sources::COMMON_PRACTICE);
    step!(r, c_likely[micrometer] = c - 0.7 * delta, sources::COMMON_PRACTICE);
    step!(r, c_high[micrometer] = c - 0.6 * delta, sources::COMMON_PRACTICE);
    Ok(Range { low: c_low, likely: c_likely, high: c_high }.map(Length::new::<micrometer>))
}
