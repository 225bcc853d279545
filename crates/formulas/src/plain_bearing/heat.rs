//! What a full film takes and gives: its flow, its drops a minute, and the temperature at which heat made and heat carried off agree.

use units::{Area, DynamicViscosity, Length, MassDensity, Power, Range, Temperature, TemperatureDifference, VolumeRate};
use uom::si::area::square_meter;
use uom::si::length::{micrometer, millimeter};
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin as interval_kelvin;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::volume_rate::{cubic_centimeter_per_second, cubic_millimeter_per_second as mm3_per_s};

use super::raimondi_boyd::{eccentricity, endless_eccentricity, flow_variable, side_share};
use super::{Journal, chart_friction, friction_loss, minimum_film, rps, sommerfeld};
use crate::cutting::DROP_ML;
use crate::error::{FormulaError, positive, within};
use crate::math::{max, min, pow};
use crate::sources;
use crate::viscosity::{Measured, density_at, dynamic_viscosity, viscosity_at};
use crate::working::{Caution, Recorder, Silent};
use crate::{given, solve, step};

/// Heat a cubic metre of oil takes for each kelvin, MJ/(m³·K).
pub const OIL_HEAT_MJ: f64 = 1.7;

/// The hottest film a balance is looked for at, °C: above, a mineral oil burns away before it balances.
const HOTTEST_C: f64 = 200.0;

/// What flows through a film.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flow {
    /// Drawn into the film.
    pub through: VolumeRate,
    /// Leaves sideways: what has to be fed again, or comes back from a bath.
    pub sideways: VolumeRate,
    /// The share that leaves sideways.
    pub share: f64,
}

/// Oil a full film draws in and loses sideways: Q = Q̄·r·c_r·N·L, with the flow variable Q̄ and the side share from the charts.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `D`, `L`, `c` | diameter, length, clearance on the diameter | mm |
/// | `N` | speed | rev/s |
/// | `Q`, `Q_s` | flow, side flow | mm³/s |
///
/// # Range
/// As [`minimum_film`]: a bearing fed with all it draws.
///
/// # Errors
/// As [`sommerfeld`].
///
/// # Source
/// Raimondi and Boyd 1958; *from memory*, and within 3 % of Reynolds' equation solved directly.
///
/// # Example
/// A textbook's bearing has Q = 4.28·r·c·N·L = 0.218 in³/s, of which 0.655 leaves sideways (*from memory*).
/// ```
/// use formulas::{Silent, plain_bearing::{Journal, film_flow}};
/// use uom::si::f64::{AngularVelocity, DynamicViscosity, Force, Length};
/// use uom::si::{angular_velocity::revolution_per_second, dynamic_viscosity::pascal_second};
/// use uom::si::{force::pound_force, length::{inch, micrometer}, volume_rate::cubic_inch_per_second};
/// let journal = Journal {
///     diameter: Length::new::<inch>(1.5),
///     length: Length::new::<inch>(1.5),
///     load: Force::new::<pound_force>(500.0),
///     speed: AngularVelocity::new::<revolution_per_second>(30.0),
///     clearance: Length::new::<inch>(0.003),
///     journal_roughness: Length::new::<micrometer>(0.4),
///     bearing_roughness: Length::new::<micrometer>(0.8),
/// };
/// let flow = film_flow(&mut Silent, &journal, DynamicViscosity::new::<pascal_second>(4e-6 * 6894.757))?;
/// assert!((flow.through.get::<cubic_inch_per_second>() - 0.218).abs() < 0.0022);
/// assert!((flow.share - 0.655).abs() < 0.0066);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn film_flow<R: Recorder>(r: &mut R, journal: &Journal, eta: DynamicViscosity) -> Result<Flow, FormulaError> {
    let S = sommerfeld(r, journal, eta)?;
    given!(r, lambda [] = (journal.length / journal.diameter).value, "length over diameter");
    given!(r, D[millimeter] = journal.diameter, "diameter");
    given!(r, L[millimeter] = journal.length, "length");
    given!(r, c[millimeter] = journal.clearance, "clearance on the diameter");
    given!(r, N["rev/s"] = journal.speed.get::<rps>(), "speed");
    step!(r, epsilon [] = eccentricity(S, lambda), sources::RAIMONDI_BOYD);
    step!(r, q [] = flow_variable(epsilon, lambda), sources::RAIMONDI_BOYD);
    step!(r, Q["mm³/s"] = q * (D / 2.0) * (c / 2.0) * N * L, sources::RAIMONDI_BOYD);
    step!(r, s [] = side_share(epsilon, lambda), sources::RAIMONDI_BOYD);
    step!(r, Q_s["mm³/s"] = s * Q, sources::RAIMONDI_BOYD);
    Ok(Flow { through: VolumeRate::new::<mm3_per_s>(Q), sideways: VolumeRate::new::<mm3_per_s>(Q_s), share: s })
}

/// Drops a minute that replace a flow, at 0.04 mL a drop.
///
/// # Source
/// *Common practice, no source*: a drop of oil is 0.03 to 0.06 mL. A bush fed with less than it loses runs starved, on a thinner film.
pub fn drops_per_minute<R: Recorder>(r: &mut R, lost: VolumeRate) -> Range<f64> {
    given!(r, Q_s["mL/s"] = lost.get::<cubic_centimeter_per_second>(), "oil lost sideways");
    given!(r, V_d["mL"] = DROP_ML, "a drop of oil");
    step!(r, i["drops/min"] = 60.0 * Q_s / V_d, sources::COMMON_PRACTICE);
    Range { low: i * DROP_ML / 0.06, likely: i, high: i * DROP_ML / 0.03 }
}

/// Rise of the oil that passes through a film and carries all its heat: ΔT = H/(ρc·Q·(1 − ½·Q_s/Q)); the side flow leaves half warmed.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `H` | heat friction makes | W |
/// | `rho_c` | heat a cubic metre of oil takes for each kelvin | MJ/(m³·K) |
///
/// # Errors
/// As [`sommerfeld`]; [`FormulaError::NotPositive`] for a heat capacity of nothing.
///
/// # Source
/// Raimondi and Boyd 1958.
pub fn film_rise<R: Recorder>(
    r: &mut R,
    journal: &Journal,
    eta: DynamicViscosity,
    heat_mj_per_m3_k: f64,
) -> Result<TemperatureDifference, FormulaError> {
    let flow = film_flow(r, journal, eta)?;
    let friction = chart_friction(r, journal, eta)?;
    let (_, made) = friction_loss(r, journal, friction);
    given!(r, H[watt] = made, "heat friction makes");
    given!(r, rho_c["MJ/(m³·K)"] = heat_mj_per_m3_k, "heat a cubic metre of oil takes for each kelvin");
    given!(r, Q["mm³/s"] = flow.through.get::<mm3_per_s>(), "oil drawn in");
    given!(r, s [] = flow.share, "share that leaves sideways");
    positive("the heat the oil takes", rho_c, "MJ/(m³·K)")?;
    step!(r, Delta_T[interval_kelvin] = 1000.0 * H / (rho_c * Q * (1.0 - s / 2.0)), sources::RAIMONDI_BOYD);
    Ok(TemperatureDifference::new::<interval_kelvin>(Delta_T))
}

/// An oil, as a heat balance needs it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Oil {
    /// A cool measured point.
    pub cool: Measured,
    /// A hot one.
    pub hot: Measured,
    /// Density at 15 °C.
    pub density_15: MassDensity,
}

impl Oil {
    fn at<R: Recorder>(&self, r: &mut R, at: Temperature) -> Result<DynamicViscosity, FormulaError> {
        let nu = viscosity_at(r, self.cool, self.hot, at)?;
        let rho = density_at(r, self.density_15, at);
        Ok(dynamic_viscosity(r, nu, rho))
    }
}

/// What carries a bearing's heat off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Cooling {
    /// Fresh oil, fed as fast as the film draws it.
    ByOil {
        /// Its temperature as it comes.
        inlet: Temperature,
    },
    /// The housing, to the air: a bearing with a ring, a pad or a bath of its own.
    ByHousing {
        /// Surface of the housing.
        area: Area,
        /// Heat it gives off, W/(m²·K): 11 in still air, 15 where the shaft stirs it, 33 in a draught (*from memory*).
        coefficient: f64,
        /// Drop from oil to housing over drop from housing to air: ½ to 1 with a bath, 1 to 2 with a ring or pad (*from memory*).
        oil_to_housing: f64,
        /// Temperature of the air.
        room: Temperature,
    },
}

impl Cooling {
    fn coldest(&self) -> Temperature {
        match *self {
            Self::ByOil { inlet } => inlet,
            Self::ByHousing { room, .. } => room,
        }
    }
}

/// A journal's film where heat made and heat carried off agree.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Balance {
    /// Mean temperature of the film.
    pub film: Temperature,
    /// Dynamic viscosity there.
    pub viscosity: DynamicViscosity,
    /// Least thickness of the film there.
    pub minimum_film: Length,
    /// Heat made and carried off.
    pub heat: Power,
}

/// How much warmer than the oil that comes, or the room, a film at some temperature would make itself, K.
fn rise<R: Recorder>(r: &mut R, journal: &Journal, oil: &Oil, cooling: &Cooling, film: Temperature) -> Result<f64, FormulaError> {
    let eta = oil.at(r, film)?;
    match *cooling {
        Cooling::ByOil { .. } => {
            let through = film_rise(r, journal, eta, OIL_HEAT_MJ)?;
            given!(r, Delta_T[interval_kelvin] = through, "rise of the oil that passes");
            step!(r, Delta_m[interval_kelvin] = Delta_T / 2.0, sources::RAIMONDI_BOYD);
            Ok(Delta_m)
        }
        Cooling::ByHousing { area, coefficient, oil_to_housing, .. } => {
            let friction = chart_friction(r, journal, eta)?;
            let (_, made) = friction_loss(r, journal, friction);
            given!(r, H[watt] = made, "heat friction makes");
            given!(r, A[square_meter] = area, "surface of the housing");
            given!(r, h["W/(m²·K)"] = coefficient, "heat the housing gives off");
            given!(r, a [] = oil_to_housing, "drop from oil to housing over drop from housing to air");
            positive("the surface of the housing", A, "m²")?;
            positive("the heat the housing gives off", h, "W/(m²·K)")?;
            within("the drop from oil to housing", a, "", (0.0, 10.0), sources::COMMON_PRACTICE)?;
            step!(r, Delta_m[interval_kelvin] = H * (1.0 + a) / (h * A), sources::COMMON_PRACTICE);
            Ok(Delta_m)
        }
    }
}

/// The temperature a journal's film settles at, and the film it then has.
///
/// T_f = T_0 + ΔT(T_f): warmer oil is thinner and makes less heat, so there is one such temperature. A solver finds it and keeps what is
/// left of the equation.
///
/// # Range
/// As [`minimum_film`]; films up to 200 °C.
///
/// # Errors
/// [`FormulaError::NoRoot`] where the film is still making more heat than is carried off at 200 °C; else as [`sommerfeld`] and
/// [`viscosity_at`].
///
/// # Source
/// Raimondi and Boyd 1958; heat from a housing is *common practice*, its coefficients *from memory*.
pub fn heat_balance<R: Recorder>(r: &mut R, journal: &Journal, oil: &Oil, cooling: &Cooling) -> Result<Balance, FormulaError> {
    // Where the balance has no answer at all its reason is better than the solver's.
    rise(&mut Silent, journal, oil, cooling, cooling.coldest())?;
    let celsius = Temperature::new::<degree_celsius>;
    let Delta_T = |T_f: f64| rise(&mut Silent, journal, oil, cooling, celsius(T_f)).unwrap_or(f64::NAN);
    given!(r, T_0[degree_celsius] = cooling.coldest(), "temperature of the oil that comes, or of the room");
    solve!(r, T_f [degree_celsius] in (T_0, HOTTEST_C): T_0 + Delta_T(T_f) == T_f, sources::RAIMONDI_BOYD);
    let film = celsius(T_f);
    rise(r, journal, oil, cooling, film)?;
    let viscosity = oil.at(&mut Silent, film)?;
    let thinnest = minimum_film(r, journal, viscosity)?;
    let friction = chart_friction(&mut Silent, journal, viscosity)?;
    let (_, heat) = friction_loss(&mut Silent, journal, friction);
    if film > Temperature::new::<kelvin>(363.15) {
        r.caution(Caution::Danger {
            words: "Above 90 °C oil ages fast and a bearing burns a hand. Make it turn slower, give it more clearance or more oil.",
        });
    }
    Ok(Balance { film, viscosity, minimum_film: thinnest, heat })
}

/// Least film of a bearing longer than its diameter, between what the same load on a length of one diameter's curve gives and what an
/// endless bearing would have; the likely value is Raimondi and Boyd's interpolation.
///
/// # Range
/// Length 1 to 2 diameters.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a shorter bearing, which [`minimum_film`] reads from its own curve; else as [`sommerfeld`].
///
/// # Source
/// Raimondi and Boyd 1958; *from memory*.
pub fn film_bracket<R: Recorder>(r: &mut R, journal: &Journal, eta: DynamicViscosity) -> Result<Range<Length>, FormulaError> {
    let S = sommerfeld(r, journal, eta)?;
    given!(r, l [] = (journal.length / journal.diameter).value, "length over diameter");
    given!(r, c[micrometer] = journal.clearance, "clearance on the diameter");
    within("length over diameter", l, "", (1.0, 2.0), sources::RAIMONDI_BOYD)?;
    step!(r, y_e [] = 1.0 - endless_eccentricity(S), sources::RAIMONDI_BOYD);
    step!(r, y_1 [] = 1.0 - eccentricity(S, 1.0), sources::RAIMONDI_BOYD);
    step!(r, y_2 [] = 1.0 - eccentricity(S, 0.5), sources::RAIMONDI_BOYD);
    step!(r, y_4 [] = 1.0 - eccentricity(S, 0.25), sources::RAIMONDI_BOYD);
    step!(
        r,
        y [] = (-(1.0 - l) * (1.0 - 2.0 * l) * (1.0 - 4.0 * l) * y_e / 8.0 + (1.0 - 2.0 * l) * (1.0 - 4.0 * l) * y_1 / 3.0
            - (1.0 - l) * (1.0 - 4.0 * l) * y_2 / 4.0
            + (1.0 - l) * (1.0 - 2.0 * l) * y_4 / 24.0)
            / pow(l, 3.0),
        sources::RAIMONDI_BOYD
    );
    // Where the curves cross near the ends of the charts the bracket must still be one.
    step!(r, y_high [] = max(y_1, y_e), sources::RAIMONDI_BOYD);
    step!(r, h_low[micrometer] = c / 2.0 * y_1, sources::RAIMONDI_BOYD);
    step!(r, h_0[micrometer] = c / 2.0 * min(max(y, y_1), y_high), sources::RAIMONDI_BOYD);
    step!(r, h_high[micrometer] = c / 2.0 * y_high, sources::RAIMONDI_BOYD);
    let [low, likely, high] = [h_low, h_0, h_high].map(Length::new::<micrometer>);
    Ok(Range { low, likely, high })
}
