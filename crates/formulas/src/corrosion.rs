//! How fast steel rusts in the air, and how long a coat keeps it from doing so.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{Length, Ratio, Temperature};
use uom::si::length::micrometer;
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;

use crate::error::{FormulaError, not_negative, positive, within};
use crate::math::{exp, pow};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// The air a piece of steel stands in, over a year.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// Mean temperature.
    pub temperature: Temperature,
    /// Mean relative humidity.
    pub humidity: Ratio,
    /// Sulphur dioxide deposited, mg/(m²·d).
    pub sulphur_dioxide: f64,
    /// Chloride deposited, mg/(m²·d).
    pub chloride: f64,
}

/// What bare carbon steel loses in its first year outdoors, by ISO 9223.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `T`, `RH` | mean temperature and relative humidity | °C, % |
/// | `P_d`, `S_d` | sulphur dioxide, chloride deposited | mg/(m²·d) |
/// | `r_corr` | loss in the first year | µm |
///
/// # Range
/// −17 to 29 °C, 34 to 93 %, 0.7 to 150 and 0.4 to 760 mg/(m²·d) (*from memory*): what the equation was fitted to. Within −33 and +50 %.
/// Indoors it is no more than an upper bound.
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside the fitted range.
///
/// # Source
/// ISO 9223:2012.
///
/// # Example
/// 10 °C, 80 %, 10 and 5 mg/(m²·d): 34.81 µm (computed independently).
/// ```
/// use formulas::{Silent, corrosion::{Air, Corrosivity, corrosivity, first_year}};
/// use uom::si::{f64::{Ratio, ThermodynamicTemperature}, length::micrometer, ratio::percent, thermodynamic_temperature::degree_celsius};
/// let air = Air {
///     temperature: ThermodynamicTemperature::new::<degree_celsius>(10.0),
///     humidity: Ratio::new::<percent>(80.0),
///     sulphur_dioxide: 10.0,
///     chloride: 5.0,
/// };
/// let loss = first_year(&mut Silent, &air)?;
/// assert!((loss.get::<micrometer>() - 34.81).abs() < 0.17);
/// assert_eq!(corrosivity(loss), Corrosivity::C3);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn first_year<R: Recorder>(r: &mut R, air: &Air) -> Result<Length, FormulaError> {
    given!(r, T["°C"] = air.temperature.get::<degree_celsius>(), "mean temperature");
    given!(r, RH[percent] = air.humidity, "mean relative humidity");
    given!(r, P_d["mg/(m²·d)"] = air.sulphur_dioxide, "sulphur dioxide deposited");
    given!(r, S_d["mg/(m²·d)"] = air.chloride, "chloride deposited");
    within("the mean temperature", T, "°C", (-17.0, 29.0), sources::ISO_9223)?;
    within("the mean relative humidity", RH, "%", (34.0, 93.0), sources::ISO_9223)?;
    within("the sulphur dioxide", P_d, "mg/(m²·d)", (0.7, 150.0), sources::ISO_9223)?;
    within("the chloride", S_d, "mg/(m²·d)", (0.4, 760.0), sources::ISO_9223)?;
    let f = if T <= 10.0 {
        step!(r, f_St [] = 0.150 * (T - 10.0), sources::ISO_9223);
        f_St
    } else {
        step!(r, f_St [] = -0.054 * (T - 10.0), sources::ISO_9223);
        f_St
    };
    step!(r, r_S[micrometer] = 1.77 * pow(P_d, 0.52) * exp(0.020 * RH + f), sources::ISO_9223);
    step!(r, r_Cl[micrometer] = 0.102 * pow(S_d, 0.62) * exp(0.033 * RH + 0.040 * T), sources::ISO_9223);
    step!(r, r_corr[micrometer] = r_S + r_Cl, sources::ISO_9223);
    r.caution(Caution::Provided { that: "the steel stands outdoors; under a roof this is no more than an upper bound" });
    r.caution(Caution::Rough { what: "the loss", why: "the standard's own equation scatters from two thirds to one and a half" });
    Ok(Length::new::<micrometer>(r_corr))
}

/// What steel has lost after some years: D = r·t^0.523.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a loss of nothing, [`FormulaError::OutOfRange`] for less than one year or more than 20.
///
/// # Source
/// ISO 9224:2012, *from memory*.
///
/// # Example
/// 34.81 µm in the first year are 80.8 µm after five (computed independently).
/// ```
/// use formulas::{Silent, corrosion::after_years};
/// use uom::si::{f64::Length, length::micrometer};
/// let loss = after_years(&mut Silent, Length::new::<micrometer>(34.81), 5.0)?;
/// assert!((loss.get::<micrometer>() - 80.8).abs() < 0.8);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn after_years<R: Recorder>(r: &mut R, first_year: Length, years: f64) -> Result<Length, FormulaError> {
    given!(r, r_corr[micrometer] = first_year, "loss in the first year");
    given!(r, t["a"] = years, "years");
    positive("the loss in the first year", r_corr, "µm")?;
    within("the time", t, "a", (1.0, 20.0), sources::ISO_9224)?;
    step!(r, D[micrometer] = r_corr * pow(t, 0.523), sources::ISO_9224);
    Ok(Length::new::<micrometer>(D))
}

/// Corrosivity of outdoor air for carbon steel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Corrosivity {
    /// Very low.
    C1,
    /// Low.
    C2,
    /// Medium.
    C3,
    /// High.
    C4,
    /// Very high.
    C5,
    /// Extreme.
    CX,
}

/// The category of a first-year loss: up to 1.3, 25, 50, 80, 200 µm, and above.
///
/// # Source
/// ISO 9223:2012, *from memory*.
#[must_use]
pub fn corrosivity(first_year: Length) -> Corrosivity {
    use Corrosivity::{C1, C2, C3, C4, C5, CX};
    let loss = first_year.get::<micrometer>();
    [(1.3, C1), (25.0, C2), (50.0, C3), (80.0, C4), (200.0, C5)].into_iter().find(|(most, _)| loss <= *most).map_or(CX, |(_, class)| class)
}

/// The class of time of wetness, 1 to 5, of so many hours a year: up to 10, 250, 2500, 5500, and above.
///
/// # Source
/// ISO 9223:1992, *from memory*; later editions dropped the classes.
#[must_use]
pub fn wetness_class(hours_a_year: f64) -> u8 {
    [(10.0, 1), (250.0, 2), (2500.0, 3), (5500.0, 4)].into_iter().find(|(most, _)| hours_a_year <= *most).map_or(5, |(_, class)| class)
}

/// The indoor class, 1 to 5, of a loss of steel in mg/(m²·a): up to 70, 1000, 10 000, 70 000, and above.
///
/// # Source
/// ISO 11844-1, *from memory*.
#[must_use]
pub fn indoor_class(mg_per_m2_a: f64) -> u8 {
    [(70.0, 1), (1000.0, 2), (10_000.0, 3), (70_000.0, 4)].into_iter().find(|(most, _)| mg_per_m2_a <= *most).map_or(5, |(_, class)| class)
}

/// How many wet hours bare steel stands before rust shows: the film one sees over the loss for each wet hour.
///
/// # Range
/// Within a factor of three.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a loss or a year without wet hours.
///
/// # Source
/// The film one sees, 0.1 to 0.2 µm, is *common practice*.
///
/// # Example
/// 10 µm a year over 4000 wet hours is 2.5 nm an hour: 0.15 µm after 60 hours.
/// ```
/// use formulas::{Silent, corrosion::hours_until_rust};
/// use uom::si::{f64::Length, length::micrometer};
/// let hours = hours_until_rust(&mut Silent, Length::new::<micrometer>(10.0), 4000.0)?;
/// assert!((hours - 60.0).abs() < 1e-9);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn hours_until_rust<R: Recorder>(r: &mut R, first_year: Length, wet_hours: f64) -> Result<f64, FormulaError> {
    given!(r, r_corr[micrometer] = first_year, "loss in a year");
    given!(r, H["h"] = wet_hours, "wet hours in that year");
    given!(r, d[micrometer] = Length::new::<micrometer>(0.15), "rust one sees");
    positive("the loss", r_corr, "µm")?;
    positive("the wet hours", H, "h")?;
    step!(r, h["h"] = d * H / r_corr, sources::COMMON_PRACTICE);
    r.caution(Caution::Rough { what: "the hours until rust shows", why: "they are known within a factor of three" });
    Ok(h)
}

/// What wears a coat out beside the damp.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Wear {
    /// Within a kilometre of the sea, or a salted car in the room.
    pub salt: bool,
    /// Touched with bare hands.
    pub handled: bool,
}

/// What an hour takes from a coat: nothing below 60 % at the metal, one from 80 %, three where water condenses; double by salt, by hands.
///
/// # Source
/// *Common practice*, a judgement known within a factor of three; look at the metal and trust what you see.
#[must_use]
pub fn dose_of_hour(humidity_at_metal: f64, condensing: bool, wear: Wear) -> f64 {
    let damp = ((humidity_at_metal - 0.6) / 0.2).clamp(0.0, 1.0);
    let wet = if condensing { 3.0 } else { damp };
    let twice = |holds: bool| if holds { 2.0 } else { 1.0 };
    wet * twice(wear.salt) * twice(wear.handled)
}

/// Damp hours that bare steel bears before rust shows; *common practice*, a judgement known within a factor of three.
pub const BARE_BEARS: f64 = 40.0;

/// What a coat bears after you have looked: 0.7 times as much where rust was seen at the end of it, 1.1 times where none was.
///
/// # Source
/// *Common practice*, a judgement: quick to lower, slow to raise.
#[must_use]
pub fn calibrated(budget: f64, rust_seen: bool) -> f64 {
    budget * if rust_seen { 0.7 } else { 1.1 }
}

/// The hours at which a coat that bears so much has to be renewed.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a coat that bears nothing; [`FormulaError::OutOfRange`] for a negative dose.
///
/// # Source
/// Sum.
pub fn renewals(dose_by_hour: &[f64], budget: f64) -> Result<Vec<usize>, FormulaError> {
    positive("what the coat bears", budget, "damp hours")?;
    let mut left = budget;
    let mut hours = Vec::new();
    for (hour, dose) in dose_by_hour.iter().enumerate() {
        not_negative("the dose of an hour", *dose, "", sources::DEFINITION)?;
        left -= dose;
        if left < 0.0 {
            hours.push(hour);
            left = budget;
        }
    }
    Ok(hours)
}
