//! How far a cold blackening bath goes.

use units::{Area, Length, Mass, MassDensity, Volume};
use uom::si::area::square_meter;
use uom::si::length::micrometer;
use uom::si::mass::gram;
// A gram in a litre is a kilogram in a cubic metre.
use uom::si::mass_density::kilogram_per_cubic_meter as g_per_l;
use uom::si::volume::liter;

use crate::error::{FormulaError, not_negative, positive};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// Selenium that a working bath can give up, g/L; *common practice*.
pub const USABLE_SELENIUM_G_PER_L: f64 = 2.5;

/// What a blackened area takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blackening {
    /// Copper in the coat.
    pub copper: Mass,
    /// Selenium in the coat.
    pub selenium: Mass,
    /// The bath that holds so much usable selenium.
    pub bath: Volume,
}

/// What blackening an area with copper selenide takes.
///
/// | symbol | quantity | unit |
/// | --- | --- | --- |
/// | `A`, `t` | area, thickness of the coat | m², µm |
/// | `rho_Se` | usable selenium in the bath | g/L |
/// | `m`, `m_Cu`, `m_Se` | coat, copper, selenium | g |
///
/// # Errors
/// [`FormulaError::OutOfRange`] for a negative area or thickness, [`FormulaError::NotPositive`] for a bath without selenium.
///
/// # Source
/// `CuSe` of 6.0 g/cm³ (*from memory*); standard atomic weights.
///
/// # Example
/// 1 µm takes 2.68 g of copper and 3.32 g of selenium for a square metre: a litre with 2.5 g does 0.75 m² (computed independently).
/// ```
/// use formulas::{Silent, coating::blackening};
/// use uom::si::f64::{Area, Length, MassDensity};
/// use uom::si::{area::square_meter, length::micrometer, mass::gram, mass_density::kilogram_per_cubic_meter, volume::liter};
/// let usable = MassDensity::new::<kilogram_per_cubic_meter>(2.5);
/// let takes = blackening(&mut Silent, Area::new::<square_meter>(0.75), Length::new::<micrometer>(1.0), usable)?;
/// assert!((takes.selenium.get::<gram>() / 0.75 - 3.32).abs() < 0.01);
/// assert!((takes.bath.get::<liter>() - 1.0).abs() < 0.01);
/// # Ok::<(), formulas::FormulaError>(())
/// ```
pub fn blackening<R: Recorder>(r: &mut R, area: Area, thickness: Length, usable: MassDensity) -> Result<Blackening, FormulaError> {
    given!(r, A[square_meter] = area, "area to blacken");
    given!(r, t[micrometer] = thickness, "thickness of the coat");
    given!(r, rho_Se["g/L"] = usable.get::<g_per_l>(), "usable selenium in the bath");
    not_negative("the area", A, "m²", sources::DEFINITION)?;
    not_negative("the thickness", t, "µm", sources::DEFINITION)?;
    positive("the usable selenium", rho_Se, "g/L")?;
    step!(r, m[gram] = 6.0 * A * t, sources::TYPICAL);
    step!(r, m_Cu[gram] = m * 63.546 / (63.546 + 78.971), sources::ATOMIC_WEIGHTS);
    step!(r, m_Se[gram] = m - m_Cu, sources::DEFINITION);
    step!(r, V[liter] = m_Se / rho_Se, sources::DEFINITION);
    r.caution(Caution::Provided { that: "the bath still strikes within three minutes and the film does not rub off; else it is spent" });
    r.caution(Caution::Danger {
        words: "Selenium and acid poison through skin, mouth and lungs: gloves, goggles, open door. Bath and rinse water are hazardous \
                waste; the data sheet comes first.",
    });
    Ok(Blackening { copper: Mass::new::<gram>(m_Cu), selenium: Mass::new::<gram>(m_Se), bath: Volume::new::<liter>(V) })
}
