//! When vapour burns: limits of mixtures, flash points of blends, how little it takes, and rags that light themselves.

#![expect(non_snake_case, reason = "symbols match the source")]

use units::{MassDensity, Pressure, Range, Temperature, Volume};
use uom::si::mass_density::gram_per_cubic_centimeter;
use uom::si::pressure::kilopascal;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::volume::{cubic_meter, milliliter};

use crate::error::{FormulaError, positive, within};
use crate::sources;
use crate::vapour::{ATMOSPHERE_KPA, Antoine};
use crate::working::{Caution, Recorder};
use crate::{given, solve, step};

/// A closed cupboard or room is kept below this share of the lower limit; *common practice* of fire codes.
pub const SAFE_SHARE: f64 = 0.1;

/// Flammable limit of a mixture: 1/L = Σ xᵢ/Lᵢ, with the shares of the burning part of the vapour.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `S` | Σ xᵢ/Lᵢ | 1/% |
/// | `L` | limit of the mixture | % by volume |
///
/// # Range
/// Good for lower limits of like vapours; a first guess for upper limits.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a limit of nothing or shares that add to nothing.
///
/// # Source
/// Le Chatelier 1891. Checked in `tests/published/mixture_lfl.csv`.
///
/// # Example
/// Acetone 0.315 (2.5 %) and ethanol 0.685 (3.1 %): 2.882 % (library value).
/// ```
/// use formulas::{Silent, flammability::mixture_limit};
/// assert!((mixture_limit(&mut Silent, &[(0.315, 2.5), (0.685, 3.1)])? - 2.882).abs() < 0.001);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn mixture_limit<R: Recorder>(r: &mut R, share_and_limit: &[(f64, f64)]) -> Result<f64, FormulaError> {
    for (_, limit) in share_and_limit {
        positive("the flammable limit", *limit, "%")?;
    }
    let shares: f64 = share_and_limit.iter().map(|(share, _)| share).sum();
    positive("the share that burns", shares, "")?;
    given!(r, x [] = shares, "sum of the shares");
    given!(r, S["1/%"] = share_and_limit.iter().map(|(share, limit)| share / limit).sum(), "sum of each share over its limit");
    step!(r, L["%"] = x / S, sources::LE_CHATELIER);
    Ok(L)
}

/// Lower limit at another temperature: L = L₂₅·(1 − 0.000 721·(t − 25)).
///
/// # Errors
/// [`FormulaError::OutOfRange`] outside −50 to 300 °C; [`FormulaError::NotPositive`] for a limit of nothing.
///
/// # Source
/// Burgess and Wheeler's law in the form of Zabetakis 1965, Bulletin 627; *from memory*.
///
/// # Example
/// A limit of 1 % falls by some 8 % of itself for each 100 °C (*common practice* of fire engineers).
/// ```
/// use formulas::{Silent, flammability::lower_limit_at};
/// use uom::si::{f64::ThermodynamicTemperature, thermodynamic_temperature::degree_celsius};
/// let hot = lower_limit_at(&mut Silent, 1.0, ThermodynamicTemperature::new::<degree_celsius>(125.0))?;
/// assert!((hot - 0.92).abs() < 0.01);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn lower_limit_at<R: Recorder>(r: &mut R, percent_at_25: f64, at: Temperature) -> Result<f64, FormulaError> {
    given!(r, L_25["%"] = percent_at_25, "lower limit at 25 °C");
    given!(r, t["°C"] = at.get::<degree_celsius>(), "temperature");
    positive("the lower limit", L_25, "%")?;
    within("the temperature", t, "°C", (-50.0, 300.0), sources::ZABETAKIS)?;
    step!(r, L["%"] = L_25 * (1.0 - 0.000721 * (t - 25.0)), sources::ZABETAKIS);
    Ok(L)
}

/// One liquid of a blend that may burn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Burning {
    /// Its share of the molecules in the liquid; more where water drives it out, as [`blend`](crate::vapour::blend) tells.
    pub activity: f64,
    /// Its vapour pressure.
    pub antoine: Antoine,
    /// Its lower limit, % by volume.
    pub lower_limit: f64,
}

/// Flash point of a blend: the temperature at which S(t) = Σ aᵢ·pᵢ(t)/(Lᵢ·P) reaches one.
///
/// What does not burn lowers the others' activities and is left out here.
///
/// # Range
/// Like liquids; for pure ones it lies within about 7 K of the measured closed-cup value, most often below it, on the safe side. Where the
/// vapour pressure of the liquid that gives most of the vapour was not measured so cold, the answer carries [`Caution::Extrapolated`].
///
/// # Errors
/// [`FormulaError::NoRoot`] where nothing of it burns between −120 and 250 °C; [`FormulaError::NotPositive`] for a limit or pressure of nothing.
///
/// # Source
/// Le Chatelier 1891 with Raoult 1887.
///
/// # Example
/// Toluene alone: 3.3 °C by this (published: 4 °C).
/// ```
/// use formulas::{Silent, flammability::{Burning, flash_point}, vapour::Antoine};
/// use uom::si::{f64::Pressure, pressure::kilopascal, thermodynamic_temperature::degree_celsius};
/// let antoine = Antoine { a: 6.079_54, b: 1344.8, c: 219.48, from: 6.0, to: 137.0 };
/// let toluene = Burning { activity: 1.0, antoine, lower_limit: 1.1 };
/// let flash = flash_point(&mut Silent, &[toluene], Pressure::new::<kilopascal>(101.325))?;
/// assert!((flash.get::<degree_celsius>() - 3.3).abs() < 2.0);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn flash_point<R: Recorder>(r: &mut R, blend: &[Burning], pressure: Pressure) -> Result<Temperature, FormulaError> {
    given!(r, P[kilopascal] = pressure, "pressure of the air");
    positive("the pressure", P, "kPa")?;
    for part in blend {
        positive("the lower limit", part.lower_limit, "%")?;
    }
    // Below its pole Antoine's equation means nothing: there the liquid gives off none.
    let pressure_of = |part: &Burning, t: f64| if part.antoine.c + t > 5.0 { part.antoine.kilopascals(t) } else { 0.0 };
    let S = |t: f64| blend.iter().map(|part| part.activity * pressure_of(part, t) / (part.lower_limit / 100.0 * P)).sum::<f64>();
    solve!(r, t["°C"] in (-120.0, 250.0): S(t) == 1.0, sources::LE_CHATELIER);
    for part in blend.iter().filter(|_| R::KEEPS) {
        given!(r, a [] = part.activity, "its share of the molecules, or its activity in water");
        given!(r, p[kilopascal] = Pressure::new::<kilopascal>(pressure_of(part, t)), "its vapour pressure at the flash point");
        given!(r, L["%"] = part.lower_limit, "its lower limit");
        step!(r, S_i [] = a * p / (L / 100.0 * P), sources::LE_CHATELIER);
        let _ = S_i;
    }
    let gives = |part: &Burning| part.activity * pressure_of(part, t);
    if let Some(most) = blend.iter().max_by(|one, other| gives(one).total_cmp(&gives(other))) {
        let (low, high) = (most.antoine.from, most.antoine.to);
        if !(low..=high).contains(&t) {
            r.caution(Caution::Extrapolated { what: "the flash point", value: t, unit: "°C", low, high });
        }
    }
    r.caution(Caution::Rough {
        what: "the flash point of a blend",
        why: "it is worked, not measured: there its vapours fill their lower limits by shares that add up to one",
    });
    Ok(Temperature::new::<degree_celsius>(t))
}

/// A flash point measured under another pressure, at 101.3 kPa: t + 0.25·(101.3 − P).
///
/// # Source
/// ASTM D93.
pub fn flash_at_sea_level<R: Recorder>(r: &mut R, measured: Temperature, pressure: Pressure) -> Temperature {
    given!(r, t_m["°C"] = measured.get::<degree_celsius>(), "flash point measured");
    given!(r, P[kilopascal] = pressure, "pressure of the air");
    step!(r, t["°C"] = t_m + 0.25 * (101.3 - P), sources::ASTM_D93);
    Temperature::new::<degree_celsius>(t)
}

/// Category of a flammable liquid, 1 to 4, or none.
///
/// # Source
/// UN GHS, chapter 2.6: 1 below 23 °C and boiling at 35 °C or less, 2 below 23 °C, 3 to 60 °C, 4 to 93 °C.
///
/// # Example
/// ```
/// use formulas::flammability::flammable_category;
/// use uom::si::{f64::ThermodynamicTemperature, thermodynamic_temperature::degree_celsius};
/// let celsius = ThermodynamicTemperature::new::<degree_celsius>;
/// assert_eq!(flammable_category(celsius(-18.0), Some(celsius(56.0))), Some(2));
/// assert_eq!(flammable_category(celsius(60.0), None), Some(3));
/// assert_eq!(flammable_category(celsius(94.0), None), None);
/// ```
#[must_use]
pub fn flammable_category(flash: Temperature, boils: Option<Temperature>) -> Option<u8> {
    let flash = flash.get::<degree_celsius>();
    let boils_low = boils.is_some_and(|boils| boils.get::<degree_celsius>() <= 35.0);
    match flash {
        t if t < 23.0 => Some(if boils_low { 1 } else { 2 }),
        // A hundredth of a degree is lost between the scales.
        t if t <= 60.0 + 1e-6 => Some(3),
        t if t <= 93.0 + 1e-6 => Some(4),
        _ => None,
    }
}

/// Class of a flammable liquid in the American code.
///
/// # Source
/// NFPA 30: IA and IB below 22.8 °C, boiling below and from 37.8 °C; IC to 37.8; II to 60; IIIA to 93; IIIB above.
#[must_use]
pub fn nfpa_class(flash: Temperature, boils: Option<Temperature>) -> &'static str {
    let flash = flash.get::<degree_celsius>();
    let boils_low = boils.is_some_and(|boils| boils.get::<degree_celsius>() < 37.8);
    match flash {
        t if t < 22.8 => {
            if boils_low {
                "IA"
            } else {
                "IB"
            }
        }
        t if t < 37.8 => "IC",
        t if t < 60.0 => "II",
        t if t < 93.0 => "IIIA",
        _ => "IIIB",
    }
}

/// How much liquid brings the air of a closed space to a share of its lower limit, once it has all evaporated.
///
/// # Errors
/// [`FormulaError::NotPositive`] for a space, limit, density or molar mass of nothing.
///
/// # Source
/// Law of ideal gases.
///
/// # Example
/// 0.46 mL of acetone bring a cupboard of 60 L to a tenth of its limit (computed independently).
/// ```
/// use formulas::{Silent, flammability::liquid_to_limit};
/// use uom::si::f64::{MassDensity, ThermodynamicTemperature, Volume};
/// use uom::si::{mass_density::gram_per_cubic_centimeter, thermodynamic_temperature::degree_celsius, volume::{liter, milliliter}};
/// let spill = liquid_to_limit(
///     &mut Silent,
///     Volume::new::<liter>(60.0),
///     2.5,
///     0.1,
///     58.08,
///     MassDensity::new::<gram_per_cubic_centimeter>(0.79),
///     ThermodynamicTemperature::new::<degree_celsius>(20.0),
/// )?;
/// assert!((spill.get::<milliliter>() - 0.46).abs() < 0.01);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn liquid_to_limit<R: Recorder>(
    r: &mut R,
    space: Volume,
    lower_limit_percent: f64,
    share: f64,
    molar_mass_g: f64,
    density: MassDensity,
    at: Temperature,
) -> Result<Volume, FormulaError> {
    given!(r, V["m³"] = space.get::<cubic_meter>(), "closed space");
    given!(r, L["%"] = lower_limit_percent, "lower flammable limit");
    given!(r, s [] = share, "share of the limit");
    given!(r, M["g/mol"] = molar_mass_g, "molar mass");
    given!(r, rho["g/mL"] = density.get::<gram_per_cubic_centimeter>(), "density of the liquid");
    given!(r, T[kelvin] = at, "temperature");
    given!(r, P["Pa"] = ATMOSPHERE_KPA * 1e3, "pressure of the air");
    for (what, value, unit) in [
        ("the space", V, "m³"),
        ("the lower limit", L, "%"),
        ("the share", s, ""),
        ("the molar mass", M, "g/mol"),
        ("the density", rho, "g/mL"),
    ] {
        positive(what, value, unit)?;
    }
    step!(r, n["mol"] = s * L / 100.0 * P * V / (8.314462618 * T), sources::IDEAL_GAS);
    step!(r, V_l[milliliter] = n * M / rho, sources::DEFINITION);
    Ok(Volume::new::<milliliter>(V_l))
}

/// What an oil on a rag does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Drying {
    /// Stays wet: mineral oil, olive oil.
    Not,
    /// Dries slowly; a heap of rags may heat itself.
    Half,
    /// Dries to a skin: a heap of rags heats itself and burns.
    Dries,
}

/// How an oil of that iodine value dries: below 100 not, to 130 slowly, above it dries.
///
/// # Source
/// *From memory* of oil chemistry: linseed 170–200, tung 160, soya 130, rape 100, olive 80, mineral oil near nothing.
///
/// # Example
/// ```
/// use formulas::flammability::{Drying, drying};
/// use units::Range;
/// assert_eq!(drying(Range { low: 170.0, likely: 185.0, high: 200.0 }), Drying::Dries);
/// ```
#[must_use]
pub fn drying(iodine_value: Range<f64>) -> Drying {
    // The unsafe end decides.
    match iodine_value.high {
        high if high > 130.0 => Drying::Dries,
        high if high >= 100.0 => Drying::Half,
        _ => Drying::Not,
    }
}
