//! Sealing pipe threads: what a sealant bears, how a pipe thread is shaped, how much it takes.

#![expect(non_snake_case, reason = "symbols match the source")]

use core::f64::consts::PI;
use std::marker::PhantomData;

use units::{Length, Pressure, Range, Temperature, TemperatureDifference, Volume, celsius};
use uom::si::length::{inch, millimeter};
use uom::si::pressure::bar;
use uom::si::temperature_interval::kelvin as kelvins;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::volume::cubic_millimeter;

use crate::error::{FormulaError, not_negative, positive, within};
use crate::sources;
use crate::steam::{ATMOSPHERE_BAR, saturation_pressure, saturation_temperature};
use crate::thread::{Form, Thread, dimensions};
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// What a pipe thread is sealed with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sealant {
    /// Anaerobic paste.
    AnaerobicPaste,
    /// Anaerobic liquid for fine threads and hydraulics.
    AnaerobicHydraulic,
    /// PTFE tape.
    Tape,
    /// Paste that never hardens.
    SoftPaste,
    /// Graphite and linseed oil paste.
    GraphitePaste,
}

const fn millimetres(value: f64) -> Length {
    Length { dimension: PhantomData, units: PhantomData, value: value / 1000.0 }
}

impl Sealant {
    /// Every sealant.
    pub const ALL: [Self; 5] = [Self::AnaerobicPaste, Self::AnaerobicHydraulic, Self::Tape, Self::SoftPaste, Self::GraphitePaste];

    /// The hottest it bears. Tape: EN 751-3; the pastes typical or *common practice*, *from memory*.
    #[must_use]
    pub const fn hottest(self) -> Temperature {
        match self {
            Self::AnaerobicPaste | Self::AnaerobicHydraulic | Self::SoftPaste => celsius(150.0),
            Self::Tape => celsius(125.0),
            Self::GraphitePaste => celsius(230.0),
        }
    }

    /// The widest gap it fills; tape is wound to fit. Typical, *from memory*.
    #[must_use]
    pub const fn widest_gap(self) -> Option<Length> {
        match self {
            Self::AnaerobicPaste => Some(millimetres(0.3)),
            Self::AnaerobicHydraulic => Some(millimetres(0.10)),
            Self::Tape => None,
            Self::SoftPaste | Self::GraphitePaste => Some(millimetres(0.2)),
        }
    }

    /// Whether tape or its shreds could get into what follows.
    #[must_use]
    pub const fn sheds(self) -> bool {
        matches!(self, Self::Tape)
    }
}

/// What runs in a pipe, where it decides whether a sealant may be named at all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Service {
    /// Air, water, oil, coolant: nothing out of the ordinary.
    Ordinary,
    /// Steam, away from the boiler.
    Steam,
    /// The shell of a boiler, its safety valve or its water gauge.
    Boiler,
    /// Oxygen or breathing gas.
    Oxygen,
    /// Fuel gas, acetylene or refrigerant.
    FuelGas,
}

/// Whether a sealant may be chosen for a service at all.
///
/// # Errors
/// [`FormulaError::Refused`] for a boiler's own fittings, for oxygen and breathing gas, and for fuel gas, acetylene and refrigerant.
///
/// # Source
/// Oxygen: ASTM G63 and G93, EN 1797. The rest is *common practice*.
pub const fn service_allowed(service: Service) -> Result<(), FormulaError> {
    match service {
        Service::Ordinary | Service::Steam => Ok(()),
        Service::Boiler => Err(FormulaError::Refused {
            what: "a sealant for the fittings of a boiler",
            why: "a failure there scalds or kills, and the code in force says how they are sealed",
            instead: "follow the boiler code in force and ask the boiler inspector",
        }),
        Service::Oxygen => Err(FormulaError::Refused {
            what: "a sealant for oxygen or breathing gas",
            why: "oil and most sealants burn or explode in oxygen",
            instead: "use only what is rated for oxygen at this pressure and temperature, fitted by someone trained to do it",
        }),
        Service::FuelGas => Err(FormulaError::Refused {
            what: "a sealant for fuel gas, acetylene or refrigerant",
            why: "the work is reserved to people licensed for it",
            instead: "have a competent person do it",
        }),
    }
}

/// The temperature a joint on a steam pipe sees: saturation at the pressure, and the superheat.
///
/// # Errors
/// As [`saturation_temperature`]; [`FormulaError::OutOfRange`] for a superheat that is negative or beyond 300 K.
///
/// # Source
/// IAPWS-IF97.
///
/// # Example
/// 100 psi (6.895 bar) on the gauge: 169.9 °C (computed independently).
/// ```
/// use formulas::{Silent, seal::steam_joint_temperature};
/// use uom::si::f64::{Pressure, TemperatureInterval};
/// use uom::si::{pressure::bar, temperature_interval::kelvin, thermodynamic_temperature::degree_celsius};
/// let dry = TemperatureInterval::new::<kelvin>(0.0);
/// let at = steam_joint_temperature(&mut Silent, Pressure::new::<bar>(6.895), dry)?;
/// assert!((at.get::<degree_celsius>() - 169.9).abs() < 0.2);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn steam_joint_temperature<R: Recorder>(
    r: &mut R,
    gauge: Pressure,
    superheat: TemperatureDifference,
) -> Result<Temperature, FormulaError> {
    let saturated = saturation_temperature(r, gauge)?;
    given!(r, T_s[kelvin] = saturated, "saturation temperature");
    given!(r, Delta_T[kelvins] = superheat, "superheat");
    within("the superheat", Delta_T, "K", (0.0, 300.0), sources::COMMON_PRACTICE)?;
    step!(r, T[kelvin] = T_s + Delta_T, sources::DEFINITION);
    r.caution(Caution::Danger {
        words: "Steam scalds. The boiler's own fittings follow the boiler code in force, and its inspector has the last word.",
    });
    Ok(Temperature::new::<kelvin>(T))
}

/// The highest pressure of saturated steam on the gauge that a sealant bears.
///
/// # Errors
/// As [`saturation_pressure`].
///
/// # Source
/// IAPWS-IF97 at the sealant's temperature.
///
/// # Example
/// Tape ends at 1.3 bar, an anaerobic paste at 3.7 bar on the gauge (computed independently), whatever folklore says.
/// ```
/// use formulas::{Silent, seal::{Sealant, highest_steam}};
/// use uom::si::pressure::bar;
/// assert!((highest_steam(&mut Silent, Sealant::Tape)?.get::<bar>() - 1.3).abs() < 0.05);
/// assert!((highest_steam(&mut Silent, Sealant::AnaerobicPaste)?.get::<bar>() - 3.7).abs() < 0.06);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn highest_steam<R: Recorder>(r: &mut R, sealant: Sealant) -> Result<Pressure, FormulaError> {
    given!(r, theta[degree_celsius] = sealant.hottest(), "hottest the sealant bears");
    let over = saturation_pressure(r, Temperature::new::<degree_celsius>(theta))?;
    given!(r, p[bar] = over, "saturation pressure there");
    given!(r, p_a["bar"] = ATMOSPHERE_BAR, "standard atmosphere");
    step!(r, p_g[bar] = p - p_a, sources::DEFINITION);
    Ok(Pressure::new::<bar>(p_g))
}

/// A pipe thread's size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PipeThread {
    /// Its name, without the letters before it.
    pub name: &'static str,
    /// Outside diameter at the gauge plane (ISO 228 and ISO 7), or of the pipe (NPT).
    pub diameter_mm: f64,
    /// Turns to the inch.
    pub turns: f64,
    /// Gauge length.
    pub gauge_length_mm: f64,
}

const fn pipe(name: &'static str, diameter_mm: f64, turns: f64, gauge_length_mm: f64) -> PipeThread {
    PipeThread { name, diameter_mm, turns, gauge_length_mm }
}

/// Sizes of ISO 228 (G) and ISO 7-1 (R, Rc, Rp), which share their threads, *from memory*.
pub const WHITWORTH_PIPE: &[PipeThread] = &[
    pipe("1/8", 9.728, 28.0, 4.0),
    pipe("1/4", 13.157, 19.0, 6.0),
    pipe("3/8", 16.662, 19.0, 6.4),
    pipe("1/2", 20.955, 14.0, 8.2),
    pipe("3/4", 26.441, 14.0, 9.5),
    pipe("1", 33.249, 11.0, 10.4),
];

/// Sizes of ASME B1.20.1 (NPT), *from memory*. Between ½ and ¾ both systems have 14 turns and still do not seal together: the angles differ.
pub const NPT: &[PipeThread] = &[
    pipe("1/8", 0.405 * 25.4, 27.0, 0.1615 * 25.4),
    pipe("1/4", 0.540 * 25.4, 18.0, 0.2278 * 25.4),
    pipe("3/8", 0.675 * 25.4, 18.0, 0.240 * 25.4),
    pipe("1/2", 0.840 * 25.4, 14.0, 0.320 * 25.4),
    pipe("3/4", 1.050 * 25.4, 14.0, 0.339 * 25.4),
    pipe("1", 1.315 * 25.4, 11.5, 0.400 * 25.4),
];

impl PipeThread {
    /// The thread as a parallel one of Whitworth form.
    #[must_use]
    pub fn parallel(self) -> Thread {
        Thread::inch(Form::Whitworth, self.diameter_mm / 25.4, self.turns)
    }
}

/// Pitch diameters of an NPT thread: at the small end, and at the gauge plane a hand-tight fitting reaches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NptPitch {
    /// At the small end, E₀.
    pub small_end: Length,
    /// At the gauge plane, E₁.
    pub gauge_plane: Length,
}

/// Pitch diameters of an NPT thread.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `D`, `p` | outside diameter of the pipe, pitch | in |
/// | `L_1` | hand-tight length | in |
///
/// # Errors
/// [`FormulaError::NotPositive`] for a dimension of nothing.
///
/// # Source
/// ASME B1.20.1: E₀ = D − (0.05·D + 1.1)·p, and a taper of one in sixteen.
///
/// # Example
/// NPT ½: 0.75843 in at the small end, 0.77843 in at the gauge plane (the standard's table, *from memory*).
/// ```
/// use formulas::{Silent, seal::{NPT, npt_pitch_diameters}};
/// use uom::si::length::inch;
/// let half = NPT.iter().find(|size| size.name == "1/2").ok_or("no such size")?;
/// let found = npt_pitch_diameters(&mut Silent, half)?;
/// assert!((found.small_end.get::<inch>() - 0.75843).abs() < 2e-5);
/// assert!((found.gauge_plane.get::<inch>() - 0.77843).abs() < 2e-5);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn npt_pitch_diameters<R: Recorder>(r: &mut R, size: &PipeThread) -> Result<NptPitch, FormulaError> {
    given!(r, D["in"] = size.diameter_mm / 25.4, "outside diameter of the pipe");
    positive("the diameter of the pipe", D, "in")?;
    given!(r, n["1/in"] = size.turns, "turns to the inch");
    positive("the turns to the inch", n, "1/in")?;
    given!(r, L_1["in"] = size.gauge_length_mm / 25.4, "hand-tight length");
    positive("the hand-tight length", L_1, "in")?;
    step!(r, p["in"] = 1.0 / n, sources::DEFINITION);
    step!(r, E_0[inch] = D - (0.05 * D + 1.1) * p, sources::ASME_B1_20_1);
    step!(r, E_1[inch] = E_0 + L_1 / 16.0, sources::ASME_B1_20_1);
    Ok(NptPitch { small_end: Length::new::<inch>(E_0), gauge_plane: Length::new::<inch>(E_1) })
}

/// The sealant a pipe thread takes: the space in it, and what to put on.
///
/// # Errors
/// As [`dimensions`]; [`FormulaError::NotPositive`] for a length of nothing.
///
/// # Source
/// Geometry of the thread, with 0.13 of a pitch of space over the pitch cylinder, and three times that to use: *common practice*.
///
/// # Example
/// R ½: about 0.12 mL of space (*common practice, no source*).
/// ```
/// use formulas::{Silent, seal::{WHITWORTH_PIPE, sealant_quantity}};
/// use uom::si::{f64::Length, length::millimeter, volume::milliliter};
/// let half = WHITWORTH_PIPE.iter().find(|size| size.name == "1/2").ok_or("no such size")?;
/// let length = Length::new::<millimeter>(half.gauge_length_mm);
/// let amount = sealant_quantity(&mut Silent, &half.parallel(), length)?;
/// assert!((amount.low.get::<milliliter>() - 0.12).abs() < 0.01);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn sealant_quantity<R: Recorder>(r: &mut R, thread: &Thread, engaged: Length) -> Result<Range<Volume>, FormulaError> {
    let d_2 = dimensions(r, thread)?.pitch_diameter;
    given!(r, d_2[millimeter] = d_2, "pitch diameter");
    given!(r, P[millimeter] = thread.pitch, "pitch");
    given!(r, L[millimeter] = engaged, "length engaged");
    positive("the length engaged", L, "mm")?;
    step!(r, V[cubic_millimeter] = PI * d_2 * L * 0.13 * P, sources::COMMON_PRACTICE);
    step!(r, V_used[cubic_millimeter] = 3.0 * V, sources::COMMON_PRACTICE);
    r.caution(Caution::Provided { that: "no sealant goes on the first thread, from where it would get into the pipe" });
    Ok(Range { low: V, likely: V_used, high: V_used }.map(Volume::new::<cubic_millimeter>))
}

/// How many times tape goes round a pipe thread, with the thread's turning.
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative diameter.
///
/// # Source
/// *Common practice*: three wraps up to ⅜, four to five above.
pub fn tape_wraps(diameter: Length) -> Result<Range<f64>, FormulaError> {
    let d = diameter.get::<millimeter>();
    not_negative("the diameter of the thread", d, "mm", sources::COMMON_PRACTICE)?;
    Ok(if d < 18.0 { Range { low: 3.0, likely: 3.0, high: 4.0 } } else { Range { low: 4.0, likely: 4.0, high: 5.0 } })
}
