//! Plain bearings: the film of a journal, and the limits of a bush that has none.

#![expect(non_snake_case, reason = "symbols match the source")]

mod heat;
mod raimondi_boyd;

use core::f64::consts::PI;

use units::{AngularVelocity, DynamicViscosity, Force, Length, Power, Torque};
use uom::si::angular_velocity::{revolution_per_minute as rpm, revolution_per_second as rps};
use uom::si::dynamic_viscosity::pascal_second;
use uom::si::force::newton;
use uom::si::length::{micrometer, millimeter};
use uom::si::power::watt;
use uom::si::torque::newton_meter;

use crate::error::{FormulaError, positive, within};
use crate::math::{max, pow, sqrt};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};
use raimondi_boyd::{THICKEST, THINNEST, eccentricity, friction_variable, sommerfeld_number};

pub use heat::{Balance, Cooling, Flow, OIL_HEAT_MJ, Oil, drops_per_minute, film_bracket, film_flow, film_rise, heat_balance};

/// A journal in its bearing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Journal {
    /// Diameter of the journal.
    pub diameter: Length,
    /// Length of the bearing.
    pub length: Length,
    /// Load across the shaft.
    pub load: Force,
    /// Speed of the journal.
    pub speed: AngularVelocity,
    /// Clearance on the diameter.
    pub clearance: Length,
    /// Mean roughness Ra of the journal.
    pub journal_roughness: Length,
    /// Mean roughness Ra of the bearing.
    pub bearing_roughness: Length,
}

/// How a journal runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FilmRegime {
    /// The roughness of journal and bearing reaches through the film: a bush, judged by pressure times velocity.
    Boundary,
    /// The film is thicker than the roughness, but not safely: oil with anti-wear additives.
    Mixed,
    /// A full film, even at twice the load.
    Full,
}

/// Pressure at starting that a journal bears before its film is built, MPa.
pub const START_PRESSURE_MPA: f64 = 2.07;

/// Ratio of length to diameter the charts are used for.
const RATIOS: (f64, f64) = (0.25, 2.0);

fn checked(journal: &Journal) -> Result<(), FormulaError> {
    positive("the diameter", journal.diameter.get::<millimeter>(), "mm")?;
    positive("the length", journal.length.get::<millimeter>(), "mm")?;
    positive("the load", journal.load.get::<newton>(), "N")?;
    positive("the speed", journal.speed.get::<rpm>(), "rev/min")?;
    positive("the clearance", journal.clearance.get::<millimeter>(), "mm")?;
    within("length over diameter", (journal.length / journal.diameter).value, "", RATIOS, sources::RAIMONDI_BOYD)
}

/// The Sommerfeld number S = (D/c)²·η·N/P, with c the clearance on the diameter.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `eta` | dynamic viscosity at the film's temperature | Pa·s |
/// | `N` | speed | rev/s |
/// | `P` | load over projected area | Pa |
/// | `D`, `c` | diameter, clearance on the diameter | mm |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a dimension, load or speed of nothing; [`FormulaError::OutOfRange`] for a length outside a quarter
/// to twice the diameter.
///
/// # Source
/// Raimondi and Boyd 1958.
pub fn sommerfeld<R: Recorder>(r: &mut R, journal: &Journal, eta: DynamicViscosity) -> Result<f64, FormulaError> {
    checked(journal)?;
    given!(r, W[newton] = journal.load, "load");
    given!(r, D[millimeter] = journal.diameter, "diameter");
    given!(r, L[millimeter] = journal.length, "length");
    given!(r, c[millimeter] = journal.clearance, "clearance on the diameter");
    given!(r, N["rev/s"] = journal.speed.get::<rps>(), "speed");
    given!(r, eta[pascal_second] = eta, "dynamic viscosity");
    step!(r, P["Pa"] = 1e6 * W / (L * D), sources::DEFINITION);
    step!(r, S [] = pow(D / c, 2.0) * eta * N / P, sources::RAIMONDI_BOYD);
    Ok(S)
}

/// Least thickness of the film: h_0 = (c/2)·(1 − ε), with ε read from the charts of Raimondi and Boyd.
///
/// # Range
/// A full bearing of 360°, length ¼ to 1 diameter. Longer bearings are worked as length 1, which errs on the thin side
/// ([`film_bracket`] says by how much). Beyond the charts the answer carries a caution.
///
/// # Errors
/// As [`sommerfeld`].
///
/// # Source
/// Raimondi and Boyd 1958; the nodes *from memory*, and within 3 % of Reynolds' equation solved directly (`tests/reynolds.rs`).
///
/// # Example
/// A textbook's bearing (4 µreyn, 30 rev/s, 500 lbf, radius 0.75 in, radial clearance 0.0015 in, length 1.5 in) has h_0/c = 0.42
/// (*from memory*): 16.0 µm.
/// ```
/// use formulas::{Silent, plain_bearing::{Journal, minimum_film}};
/// use uom::si::f64::{AngularVelocity, DynamicViscosity, Force, Length};
/// use uom::si::{angular_velocity::revolution_per_second, dynamic_viscosity::pascal_second};
/// use uom::si::{force::pound_force, length::{inch, micrometer}};
/// let journal = Journal {
///     diameter: Length::new::<inch>(1.5),
///     length: Length::new::<inch>(1.5),
///     load: Force::new::<pound_force>(500.0),
///     speed: AngularVelocity::new::<revolution_per_second>(30.0),
///     clearance: Length::new::<inch>(0.003),
///     journal_roughness: Length::new::<micrometer>(0.4),
///     bearing_roughness: Length::new::<micrometer>(0.8),
/// };
/// // One reyn is 6894.757 Pa·s.
/// let film = minimum_film(&mut Silent, &journal, DynamicViscosity::new::<pascal_second>(4e-6 * 6894.757))?;
/// assert!((film.get::<micrometer>() - 16.0).abs() < 0.03 * 16.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn minimum_film<R: Recorder>(r: &mut R, journal: &Journal, eta: DynamicViscosity) -> Result<Length, FormulaError> {
    let S = sommerfeld(r, journal, eta)?;
    given!(r, lambda [] = (journal.length / journal.diameter).value, "length over diameter");
    given!(r, c[micrometer] = journal.clearance, "clearance on the diameter");
    step!(r, epsilon [] = eccentricity(S, lambda), sources::RAIMONDI_BOYD);
    if !(THICKEST..=THINNEST).contains(&epsilon) {
        r.caution(Caution::Extrapolated { what: "the eccentricity", value: epsilon, unit: "", low: THICKEST, high: THINNEST });
    }
    if lambda > 1.0 {
        r.caution(Caution::Rough {
            what: "the film",
            why: "the bearing is longer than the charts, and the film is worked on the thin side",
        });
    }
    step!(r, h_0[micrometer] = c / 2.0 * (1.0 - epsilon), sources::RAIMONDI_BOYD);
    Ok(Length::new::<micrometer>(h_0))
}

/// The film a journal should have at twice its load: Trumpler's, and three times the roughness.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `d` | diameter | mm |
/// | `Ra_1`, `Ra_2` | roughness of journal and bearing | µm |
///
/// # Source
/// Trumpler 1966, *from memory*: 5.08 µm + 0.04 µm for each mm of diameter. Rq = 1.25·Ra and the factor 3 are *common practice*.
pub fn film_wanted<R: Recorder>(r: &mut R, journal: &Journal) -> Length {
    given!(r, d[millimeter] = journal.diameter, "diameter");
    given!(r, Ra_1[micrometer] = journal.journal_roughness, "roughness of the journal");
    given!(r, Ra_2[micrometer] = journal.bearing_roughness, "roughness of the bearing");
    step!(r, R_q[micrometer] = 1.25 * sqrt(pow(Ra_1, 2.0) + pow(Ra_2, 2.0)), sources::COMMON_PRACTICE);
    step!(r, h_w[micrometer] = max(5.08 + 0.04 * d, 3.0 * R_q), sources::TRUMPLER);
    Length::new::<micrometer>(h_w)
}

/// How a journal runs at a viscosity: full where the film at twice the load is the one wanted and the pressure at starting is borne,
/// boundary where the film at the load is thinner than the roughness, mixed between.
///
/// # Errors
/// As [`sommerfeld`].
///
/// # Source
/// Trumpler 1966, *from memory*.
pub fn film_regime<R: Recorder>(r: &mut R, journal: &Journal, eta: DynamicViscosity) -> Result<FilmRegime, FormulaError> {
    let film = minimum_film(r, journal, eta)?;
    let doubled = Journal { load: journal.load * 2.0, ..*journal };
    let film_at_twice = minimum_film(r, &doubled, eta)?;
    let wanted = film_wanted(r, journal);
    given!(r, h_0[micrometer] = film, "least film at the load");
    given!(r, h_2[micrometer] = film_at_twice, "least film at twice the load");
    given!(r, Ra_1[micrometer] = journal.journal_roughness, "roughness of the journal");
    given!(r, Ra_2[micrometer] = journal.bearing_roughness, "roughness of the bearing");
    step!(r, Lambda [] = h_0 / (1.25 * sqrt(pow(Ra_1, 2.0) + pow(Ra_2, 2.0))), sources::COMMON_PRACTICE);
    let borne = mean_pressure(r, journal) <= START_PRESSURE_MPA;
    Ok(if h_2 >= wanted.get::<micrometer>() && borne {
        FilmRegime::Full
    } else if Lambda >= 1.0 {
        FilmRegime::Mixed
    } else {
        FilmRegime::Boundary
    })
}

/// The least dynamic viscosity that gives a journal the film it should have at twice its load: [`minimum_film`] turned round.
///
/// # Errors
/// [`FormulaError::OutOfRange`] where the clearance is too small to hold such a film at any viscosity; else as [`sommerfeld`].
///
/// # Source
/// Raimondi and Boyd 1958, Trumpler 1966.
pub fn viscosity_for_film<R: Recorder>(r: &mut R, journal: &Journal) -> Result<DynamicViscosity, FormulaError> {
    checked(journal)?;
    let wanted = film_wanted(r, journal);
    given!(r, h_w[micrometer] = wanted, "film wanted at twice the load");
    given!(r, c[micrometer] = journal.clearance, "clearance on the diameter");
    step!(r, epsilon [] = 1.0 - h_w / (c / 2.0), sources::RAIMONDI_BOYD);
    within("the eccentricity that leaves this film", epsilon, "", (THICKEST, 1.0), sources::RAIMONDI_BOYD)?;
    given!(r, lambda [] = (journal.length / journal.diameter).value, "length over diameter");
    step!(r, S [] = sommerfeld_number(epsilon, lambda), sources::RAIMONDI_BOYD);
    given!(r, W[newton] = journal.load, "load");
    given!(r, D[micrometer] = journal.diameter, "diameter");
    given!(r, L[micrometer] = journal.length, "length");
    given!(r, N["rev/s"] = journal.speed.get::<rps>(), "speed");
    step!(r, P["Pa"] = 1e12 * 2.0 * W / (L * D), sources::DEFINITION);
    step!(r, eta[pascal_second] = S * P * pow(c / D, 2.0) / N, sources::RAIMONDI_BOYD);
    Ok(DynamicViscosity::new::<pascal_second>(eta))
}

/// Load over projected area, MPa.
fn mean_pressure<R: Recorder>(r: &mut R, journal: &Journal) -> f64 {
    given!(r, W[newton] = journal.load, "load");
    given!(r, L[millimeter] = journal.length, "length");
    given!(r, D[millimeter] = journal.diameter, "diameter");
    step!(r, P["MPa"] = W / (L * D), sources::DEFINITION);
    P
}

/// Pressure times velocity of a bush, MPa·m/s: pV = (W/(L·D))·(π·D·n/60 000).
///
/// A bush is allowed half of what its material is rated for.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a dimension of nothing.
///
/// # Source
/// Mott, *Machine Elements in Mechanical Design*.
///
/// # Example
/// The book's worked bush, 150 lbf on 1.5 × 1.5 in at 500 rev/min, has 13 100 psi·ft/min: 0.459 MPa·m/s.
/// ```
/// use formulas::{Silent, plain_bearing::pressure_velocity};
/// use uom::si::f64::{AngularVelocity, Force, Length};
/// use uom::si::{angular_velocity::revolution_per_minute, force::pound_force, length::inch};
/// let side = Length::new::<inch>(1.5);
/// let pv = pressure_velocity(
///     &mut Silent,
///     Force::new::<pound_force>(150.0),
///     side,
///     side,
///     AngularVelocity::new::<revolution_per_minute>(500.0),
/// )?;
/// assert!((pv - 0.459).abs() < 0.0046);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn pressure_velocity<R: Recorder>(
    r: &mut R,
    load: Force,
    diameter: Length,
    length: Length,
    speed: AngularVelocity,
) -> Result<f64, FormulaError> {
    given!(r, W[newton] = load, "load");
    given!(r, D[millimeter] = diameter, "diameter");
    given!(r, L[millimeter] = length, "length");
    given!(r, n["rev/min"] = speed.get::<rpm>(), "speed");
    positive("the diameter", D, "mm")?;
    positive("the length", L, "mm")?;
    step!(r, p["MPa"] = W / (L * D), sources::DEFINITION);
    step!(r, v["m/s"] = PI * D * n / 60000.0, sources::DEFINITION);
    step!(r, pV["MPa·m/s"] = p * v, sources::MOTT);
    Ok(pV)
}

/// Coefficient of friction of a lightly loaded journal: f = 2·π²·(η·N/P)·(D/c).
///
/// # Range
/// Light loads, where the journal runs in the middle of its bearing; under load the charts give more ([`chart_friction`]).
///
/// # Errors
/// As [`sommerfeld`].
///
/// # Source
/// Petroff 1883.
///
/// # Example
/// A solved text: 3 × 3 in, 900 lbf, 400 rev/min, 7.25 µreyn, clearance 0.0015 in on the diameter, gives 0.0191 (the text calls the
/// clearance a ratio; only the diametral clearance gives its answer).
/// ```
/// use formulas::{Silent, plain_bearing::{Journal, petroff_friction}};
/// use uom::si::f64::{AngularVelocity, DynamicViscosity, Force, Length};
/// use uom::si::{angular_velocity::revolution_per_minute, dynamic_viscosity::pascal_second};
/// use uom::si::{force::pound_force, length::{inch, micrometer}};
/// let journal = Journal {
///     diameter: Length::new::<inch>(3.0),
///     length: Length::new::<inch>(3.0),
///     load: Force::new::<pound_force>(900.0),
///     speed: AngularVelocity::new::<revolution_per_minute>(400.0),
///     clearance: Length::new::<inch>(0.0015),
///     journal_roughness: Length::new::<micrometer>(0.4),
///     bearing_roughness: Length::new::<micrometer>(0.8),
/// };
/// let f = petroff_friction(&mut Silent, &journal, DynamicViscosity::new::<pascal_second>(7.25e-6 * 6894.757))?;
/// assert!((f - 0.0191).abs() < 0.0002);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn petroff_friction<R: Recorder>(r: &mut R, journal: &Journal, eta: DynamicViscosity) -> Result<f64, FormulaError> {
    checked(journal)?;
    given!(r, eta[pascal_second] = eta, "dynamic viscosity");
    given!(r, N["rev/s"] = journal.speed.get::<rps>(), "speed");
    given!(r, W[newton] = journal.load, "load");
    given!(r, D[millimeter] = journal.diameter, "diameter");
    given!(r, L[millimeter] = journal.length, "length");
    given!(r, c[millimeter] = journal.clearance, "clearance on the diameter");
    step!(r, P["Pa"] = 1e6 * W / (L * D), sources::DEFINITION);
    step!(r, f [] = 2.0 * pow(PI, 2.0) * (eta * N / P) * (D / c), sources::PETROFF);
    Ok(f)
}

/// Coefficient of friction of a journal with a full film, from the charts.
///
/// # Errors
/// As [`sommerfeld`].
///
/// # Source
/// Raimondi and Boyd 1958.
pub fn chart_friction<R: Recorder>(r: &mut R, journal: &Journal, eta: DynamicViscosity) -> Result<f64, FormulaError> {
    let S = sommerfeld(r, journal, eta)?;
    given!(r, lambda [] = (journal.length / journal.diameter).value, "length over diameter");
    given!(r, D[millimeter] = journal.diameter, "diameter");
    given!(r, c[millimeter] = journal.clearance, "clearance on the diameter");
    step!(r, F [] = friction_variable(S, lambda), sources::RAIMONDI_BOYD);
    step!(r, f [] = F * c / D, sources::RAIMONDI_BOYD);
    Ok(f)
}

/// Torque that friction takes from a journal, and the heat it makes.
///
/// # Source
/// Mechanics.
pub fn friction_loss<R: Recorder>(r: &mut R, journal: &Journal, friction: f64) -> (Torque, Power) {
    given!(r, f [] = friction, "coefficient of friction");
    given!(r, W[newton] = journal.load, "load");
    given!(r, D[millimeter] = journal.diameter, "diameter");
    given!(r, N["rev/s"] = journal.speed.get::<rps>(), "speed");
    step!(r, M[newton_meter] = f * W * D / 2000.0, sources::DEFINITION);
    step!(r, H[watt] = 2.0 * PI * N * M, sources::DEFINITION);
    (Torque::new::<newton_meter>(M), Power::new::<watt>(H))
}
