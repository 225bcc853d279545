//! Quenching: how much liquid takes the heat of hot steel, how warm it gets, what vessel it takes, how fast a part cools.

#![expect(non_snake_case, reason = "symbols match the source")]

mod cooling;
mod iron;
mod vessel;

use units::{Mass, MassDensity, Power, Temperature, TemperatureDifference, Time, Volume};
use uom::si::energy::kilojoule;
use uom::si::f64::Energy;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;
use uom::si::volume::liter;

use crate::error::{FormulaError, less, not_negative, positive, within};
use crate::math::{ln, max};
use crate::sources::{self, Source};
use crate::working::{Caution, Recorder};
use crate::{given, solve, step};

pub use cooling::{BIOT_MOST, Lump, biot, temperature_after, time_constant, time_to};
pub use iron::iron_heat_kj_per_kg;
pub use vessel::{QuenchVessel, flash_margin, quench_vessel, steam_of_water};

/// Oil for each kilogram of hot steel, L: a US gallon for a pound; *common practice*.
const OIL_L_PER_KG: f64 = 8.3;

/// How much a bath of oil may warm by in a quench, K; *common practice*.
pub const USUAL_RISE_K: f64 = 30.0;

/// Warmest that water may end in a quench, °C: beyond it steam clings to the steel and leaves soft spots; *common practice*.
pub const WARMEST_WATER_C: f64 = 35.0;

/// Warmest that brine may end, whose salt breaks the steam, °C; *common practice*.
pub const WARMEST_BRINE_C: f64 = 45.0;

/// A liquid that takes heat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Liquid {
    /// Its density.
    pub density: MassDensity,
    /// Its specific heat, kJ/(kg·K).
    pub specific_heat_kj_per_kg_k: f64,
}

impl Liquid {
    fn new(density: f64, specific_heat_kj_per_kg_k: f64) -> Self {
        Self { density: MassDensity::new::<kilogram_per_cubic_meter>(density), specific_heat_kj_per_kg_k }
    }

    /// Quench oil, typical: *from memory*.
    #[must_use]
    pub fn oil() -> Self {
        Self::new(870.0, 2.0)
    }

    /// Water.
    #[must_use]
    pub fn water() -> Self {
        Self::new(998.0, 4.18)
    }

    /// Brine of a tenth salt, *from memory*.
    #[must_use]
    pub fn brine() -> Self {
        Self::new(1070.0, 3.6)
    }
}

/// How the heat of a metal goes with its temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum HotMetal {
    /// Iron and steel, with what iron takes up as it loses its magnetism and changes its structure.
    Iron,
    /// A metal of constant specific heat, J/(kg·K).
    Constant(f64),
}

/// What goes into the bath.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Charge {
    /// Its mass.
    pub mass: Mass,
    /// Its metal.
    pub metal: HotMetal,
    /// Its temperature.
    pub at: Temperature,
}

impl HotMetal {
    /// Where its heat comes from.
    const fn source(self) -> Source {
        match self {
            Self::Iron => sources::NIST_WEBBOOK,
            Self::Constant(_) => sources::DEFINITION,
        }
    }
}

/// Heat of a metal above that at 25 °C, kJ/kg.
fn heat(metal: HotMetal, celsius: f64) -> f64 {
    match metal {
        HotMetal::Iron => iron::heat(celsius + 273.15),
        HotMetal::Constant(c) => c * (celsius - 25.0) / 1000.0,
    }
}

/// Takes down a charge that goes into a colder bath.
fn checked<R: Recorder>(r: &mut R, charge: &Charge, start: Temperature) -> Result<[f64; 3], FormulaError> {
    given!(r, m[kilogram] = charge.mass, "mass of the hot parts");
    given!(r, theta_1[degree_celsius] = charge.at, "their temperature");
    given!(r, theta_0[degree_celsius] = start, "temperature of the bath");
    positive("the mass of the hot parts", m, "kg")?;
    less(("the temperature of the bath", theta_0), ("that of the parts", theta_1), "°C")?;
    match charge.metal {
        HotMetal::Iron => {
            for at in [theta_0, theta_1] {
                within("the temperature of the iron", at, "°C", iron::COVERED_C, sources::NIST_WEBBOOK)?;
            }
            r.caution(Caution::Rough {
                what: "the heat of the steel",
                why: "it is that of pure iron; hardening steel holds some 5 % more, and nearly 10 % just above 730 °C",
            });
        }
        HotMetal::Constant(c) => positive("the specific heat", c, "J/(kg·K)")?,
    }
    Ok([m, theta_1, theta_0])
}

/// Takes down a liquid: what a litre of it takes for each kelvin, kJ/(L·K).
fn heat_of_litre<R: Recorder>(r: &mut R, liquid: &Liquid) -> Result<f64, FormulaError> {
    given!(r, rho[kilogram_per_cubic_meter] = liquid.density, "density of the liquid");
    given!(r, c["kJ/(kg·K)"] = liquid.specific_heat_kj_per_kg_k, "its specific heat");
    positive("the density of the liquid", rho, "kg/m³")?;
    positive("the specific heat of the liquid", c, "kJ/(kg·K)")?;
    step!(r, C_V["kJ/(L·K)"] = rho * c / 1000.0, sources::DEFINITION);
    Ok(C_V)
}

/// Heat that hot parts give up on cooling to a temperature.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a mass of nothing, [`FormulaError::NotLess`] for parts not hotter than that, and
/// [`FormulaError::OutOfRange`] for iron beyond the table.
///
/// # Source
/// As [`iron_heat_kj_per_kg`].
pub fn heat_given_up<R: Recorder>(r: &mut R, charge: &Charge, down_to: Temperature) -> Result<Energy, FormulaError> {
    let [m, theta_1, theta_0] = checked(r, charge, down_to)?;
    let h = |celsius: f64| heat(charge.metal, celsius);
    step!(r, Q[kilojoule] = m * (h(theta_1) - h(theta_0)), charge.metal.source());
    Ok(Energy::new::<kilojoule>(Q))
}

/// Liquid that takes the heat of hot parts with a rise to be borne: V = m·ΔH/(ρ·c·ΔT).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `m` | hot parts | kg |
/// | `h` | their heat at a temperature | kJ/kg |
/// | `theta_0`, `theta_1` | bath before, parts before | °C |
/// | `Delta_T` | rise to be borne | K |
/// | `C_V` | heat a litre takes | kJ/(L·K) |
///
/// # Errors
/// As [`heat_given_up`]; [`FormulaError::NotPositive`] for a rise of nothing.
///
/// # Source
/// Heat balance without losses. Checked in `tests/published/quench_bath.csv`.
pub fn volume_for_rise<R: Recorder>(
    r: &mut R,
    charge: &Charge,
    liquid: &Liquid,
    start: Temperature,
    rise: TemperatureDifference,
) -> Result<Volume, FormulaError> {
    given!(r, Delta_T[kelvin] = rise, "rise to be borne");
    positive("the rise to be borne", Delta_T, "K")?;
    let Q_end = heat_given_up(r, charge, start + rise)?.get::<kilojoule>();
    let C_V = heat_of_litre(r, liquid)?;
    given!(r, Q["kJ"] = Q_end, "heat the parts give up");
    step!(r, V[liter] = Q / (C_V * Delta_T), sources::DEFINITION);
    Ok(Volume::new::<liter>(V))
}

/// Oil for a quench.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OilVolume {
    /// By the trade's rule.
    pub by_rule: Volume,
    /// By its heat.
    pub by_heat: Volume,
    /// The larger of the two.
    pub needed: Volume,
}

/// Oil for a quench, by rule and by heat; the larger counts.
///
/// # Errors
/// As [`volume_for_rise`].
///
/// # Source
/// A US gallon for a pound of steel (8.3 L/kg) is *common practice*; the heat as [`volume_for_rise`].
///
/// # Example
/// A pound of steel from 850 °C: the rule's gallon; by heat 4.6 L hold the rise to 30 K (by hand: 0.454·(555 − 26)/(1.74·30)).
/// ```
/// use formulas::{Silent, quench::{Charge, HotMetal, Liquid, oil_volume}};
/// use uom::si::f64::{Mass, TemperatureInterval, ThermodynamicTemperature};
/// use uom::si::{mass::kilogram, temperature_interval::kelvin, thermodynamic_temperature::degree_celsius, volume::liter};
/// let celsius = ThermodynamicTemperature::new::<degree_celsius>;
/// let charge = Charge { mass: Mass::new::<kilogram>(0.454), metal: HotMetal::Iron, at: celsius(850.0) };
/// let rise = TemperatureInterval::new::<kelvin>(30.0);
/// let oil = oil_volume(&mut Silent, &charge, &Liquid::oil(), celsius(40.0), rise)?;
/// assert!((oil.by_rule.get::<liter>() - 3.785).abs() < 0.03);
/// assert!((oil.by_heat.get::<liter>() - 4.6).abs() < 0.15);
/// assert!(oil.needed.get::<liter>() > 4.4);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn oil_volume<R: Recorder>(
    r: &mut R,
    charge: &Charge,
    oil: &Liquid,
    start: Temperature,
    rise: TemperatureDifference,
) -> Result<OilVolume, FormulaError> {
    let by_heat = volume_for_rise(r, charge, oil, start, rise)?;
    given!(r, m[kilogram] = charge.mass, "mass of the hot parts");
    given!(r, k["L/kg"] = OIL_L_PER_KG, "a US gallon for a pound");
    given!(r, V_h[liter] = by_heat, "oil by its heat");
    step!(r, V_r[liter] = k * m, sources::COMMON_PRACTICE);
    step!(r, V[liter] = max(V_h, V_r), sources::COMMON_PRACTICE);
    Ok(OilVolume { by_rule: Volume::new::<liter>(V_r), by_heat, needed: Volume::new::<liter>(V) })
}

/// Temperature that a bath and the parts in it come to.
///
/// # Errors
/// As [`heat_given_up`]; [`FormulaError::NotPositive`] for a bath of nothing.
///
/// # Source
/// Heat balance without losses: an upper bound. Checked in `tests/published/quench_bath.csv`.
///
/// # Example
/// A pound of iron from 850 °C in a US gallon of oil of 40 °C: 76.6 °C (computed independently).
/// ```
/// use formulas::{Silent, quench::{Charge, HotMetal, Liquid, bath_after}};
/// use uom::si::f64::{Mass, ThermodynamicTemperature, Volume};
/// use uom::si::{mass::kilogram, thermodynamic_temperature::degree_celsius, volume::liter};
/// let celsius = ThermodynamicTemperature::new::<degree_celsius>;
/// let charge = Charge { mass: Mass::new::<kilogram>(0.454), metal: HotMetal::Iron, at: celsius(850.0) };
/// let end = bath_after(&mut Silent, &charge, &Liquid::oil(), Volume::new::<liter>(3.785), celsius(40.0))?;
/// assert!((end.get::<degree_celsius>() - 76.6).abs() < 1.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn bath_after<R: Recorder>(
    r: &mut R,
    charge: &Charge,
    liquid: &Liquid,
    volume: Volume,
    start: Temperature,
) -> Result<Temperature, FormulaError> {
    let [m, theta_1, theta_0] = checked(r, charge, start)?;
    let C_V = heat_of_litre(r, liquid)?;
    given!(r, V[liter] = volume, "volume of the bath");
    positive("the volume of the bath", V, "L")?;
    let h = |celsius: f64| heat(charge.metal, celsius);
    solve!(
        r,
        theta[degree_celsius] in (theta_0, theta_1): m * (h(theta_1) - h(theta)) - V * C_V * (theta - theta_0) == 0.0,
        charge.metal.source()
    );
    r.caution(Caution::Provided { that: "the liquid does not boil" });
    Ok(Temperature::new::<degree_celsius>(theta))
}

/// Time a heater takes to warm a bath: from C·dθ/dt = P − G·(θ − θ₀).
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `P` | heater | W |
/// | `G` | heat lost for each kelvin above the start | W/K |
/// | `C` | heat the bath takes | J/K |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a bath or heater of nothing, [`FormulaError::OutOfRange`] for a negative loss or a target below the
/// start, and [`FormulaError::NotLess`] for a heater that never gets there.
///
/// # Source
/// Heat balance. Checked in `tests/published/quench_bath.csv`.
pub fn heat_up_time<R: Recorder>(
    r: &mut R,
    liquid: &Liquid,
    volume: Volume,
    (start, target): (Temperature, Temperature),
    heater: Power,
    loss_w_per_k: f64,
) -> Result<Time, FormulaError> {
    let C_V = heat_of_litre(r, liquid)?;
    given!(r, V[liter] = volume, "volume of the bath");
    given!(r, theta_0[degree_celsius] = start, "temperature of bath and room");
    given!(r, theta[degree_celsius] = target, "temperature wanted");
    given!(r, P[watt] = heater, "heater");
    given!(r, G["W/K"] = loss_w_per_k, "heat lost for each kelvin");
    positive("the volume of the bath", V, "L")?;
    positive("the heater", P, "W")?;
    not_negative("the heat lost", G, "W/K", sources::DEFINITION)?;
    within("the temperature wanted", theta, "°C", (theta_0, f64::INFINITY), sources::DEFINITION)?;
    step!(r, P_l[watt] = G * (theta - theta_0), sources::DEFINITION);
    less(("the heat lost at the end", P_l), ("that of the heater", P), "W")?;
    step!(r, C["J/K"] = 1000.0 * V * C_V, sources::DEFINITION);
    // Without losses the logarithm is nothing by nothing, and the time simply heat by power.
    step!(r, t[second] = if G > 0.0 { -C / G * ln(1.0 - P_l / P) } else { C * (theta - theta_0) / P }, sources::DEFINITION);
    r.caution(Caution::Danger {
        words: "Never leave a bath of oil alone on a heater, and warm it slowly: water at its bottom throws it out. Only as warm as its \
                data sheet says.",
    });
    Ok(Time::new::<second>(t))
}
