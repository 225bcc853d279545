//! A substance: what fluids are made of, as tables of chemistry, safety and law know it.

mod cas;
mod limit;

use serde::Deserialize;
use units::{MassDensity, Range, Temperature};

pub use cas::is_cas;
pub use limit::{Concentration, Limit, LimitKind, LowestFeasible, Regime};

use crate::hazard::Classified;
use crate::{SourceKey, Sourced};

/// One substance, or one kind of substance where products differ only in the chain (`fatty-ester`).
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Substance {
    /// Short name used in files, such as `acetone`.
    pub key: String,
    /// Name as people say it.
    pub name: String,
    /// Registry number of Chemical Abstracts; none for a kind of substance.
    pub cas: Option<String>,
    /// What it is at 20 °C and 101.3 kPa.
    pub state: State,
    /// Molar mass in g/mol; the mean for a mixture such as mineral spirits.
    #[serde(default, deserialize_with = "crate::fluid::optional_number")]
    pub molar_mass_g_per_mol: Option<Sourced<f64>>,
    /// Density at 20 °C of the liquid or the solid.
    pub density: Option<Sourced<MassDensity>>,
    /// Boiling point at 101.3 kPa; where the range begins, for a mixture.
    pub boiling: Option<Sourced<Temperature>>,
    /// Vapour pressure.
    pub antoine: Option<Antoine>,
    /// How water drives it out, for what mixes with water.
    pub in_water: Option<InWater>,
    /// Heat of vaporisation at 25 °C, kJ/mol.
    #[serde(default, deserialize_with = "crate::fluid::optional_number")]
    pub heat_of_vaporisation_kj_per_mol: Option<Sourced<f64>>,
    /// Diffusion coefficient in air at 25 °C and 101.3 kPa, mm²/s.
    #[serde(default, deserialize_with = "crate::fluid::optional_number")]
    pub diffusion_mm2_per_s: Option<Sourced<f64>>,
    /// Closed-cup flash point.
    pub flash: Option<Sourced<Temperature>>,
    /// Lower flammable limit, volume share in air at 25 °C.
    #[serde(default, deserialize_with = "crate::fluid::optional_ratio")]
    pub lower_flammable: Option<Sourced<f64>>,
    /// Upper flammable limit, volume share in air at 25 °C.
    #[serde(default, deserialize_with = "crate::fluid::optional_ratio")]
    pub upper_flammable: Option<Sourced<f64>>,
    /// Autoignition temperature.
    pub autoignition: Option<Sourced<Temperature>>,
    /// Iodine value of a fat or oil, g per 100 g: how much it takes up from the air as it dries.
    pub iodine_value: Option<IodineValue>,
    /// Limits in the air people breathe.
    #[serde(default)]
    pub limits: Vec<Limit>,
    /// Set where a regime names no safe limit but the lowest that can be reached ("Ca").
    pub lowest_feasible: Option<LowestFeasible>,
    /// Immediately dangerous to life or health.
    pub idlh: Option<Sourced<Concentration>>,
    /// Hazard classes of the pure substance; `source` says whose.
    #[serde(default)]
    pub hazards: Vec<Classified>,
    /// Supplementary statements, such as `EUH066`.
    #[serde(default)]
    pub supplements: Vec<String>,
    /// Acute toxicity estimates where a value is known; elsewhere the category's converted point stands in.
    #[serde(default)]
    pub toxicity: Vec<Toxicity>,
    /// Multipliers in the sums for water organisms.
    #[serde(default)]
    pub m_factor: MFactor,
    /// Shares above which a regime classifies a mixture regardless of sums.
    #[serde(default)]
    pub specific_limits: Vec<SpecificLimit>,
    /// What it reacts as; keys of groups in `storage.toml`.
    #[serde(default)]
    pub groups: Vec<String>,
    /// Where the hazard classes and groups come from.
    pub source: SourceKey,
}

/// State at 20 °C and 101.3 kPa.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum State {
    /// A gas.
    Gas,
    /// A liquid.
    Liquid,
    /// A solid, wax or resin.
    Solid,
}

/// Coefficients of the Antoine equation, log₁₀(p/kPa) = a − b/(t/°C + c).
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Antoine {
    /// a.
    pub a: f64,
    /// b, °C.
    pub b: f64,
    /// c, °C.
    pub c: f64,
    /// Coldest temperature at which it holds.
    #[serde(deserialize_with = "units::text::quantity")]
    pub from: Temperature,
    /// Hottest temperature at which it holds.
    #[serde(deserialize_with = "units::text::quantity")]
    pub to: Temperature,
    /// Where the coefficients come from.
    pub source: SourceKey,
}

/// Van Laar's coefficients of a liquid in water: ln γ = a/(1 + a·x/(b·w))², with x its share of the molecules and w that of water.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct InWater {
    /// a: ln γ of a trace of it in water.
    pub a: f64,
    /// b: ln γ of a trace of water in it; without end where it is not known.
    #[serde(default = "without_end")]
    pub b: f64,
    /// Where they come from.
    pub source: SourceKey,
}

const fn without_end() -> f64 {
    f64::INFINITY
}

/// Iodine value, low, likely and high.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IodineValue {
    /// g of iodine per 100 g.
    #[serde(deserialize_with = "crate::fluid::range_of_numbers")]
    pub value: Range<f64>,
    /// Where it comes from.
    pub source: SourceKey,
}

/// How a poison gets in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Route {
    /// Swallowed; mg per kg of body weight.
    Oral,
    /// Through the skin; mg per kg of body weight.
    Dermal,
    /// Breathed as a gas; ppm for 4 h.
    Gas,
    /// Breathed as a vapour; mg/L for 4 h.
    Vapour,
    /// Breathed as dust or mist; mg/L for 4 h.
    Dust,
}

/// An acute toxicity estimate.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Toxicity {
    /// The route, which also says the unit of `estimate`.
    pub route: Route,
    /// The estimate (ATE).
    pub estimate: f64,
    /// Where it comes from.
    pub source: SourceKey,
}

/// Multipliers for substances that harm water organisms at very small concentrations.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MFactor {
    /// In the sum of Aquatic Acute 1.
    pub acute: u32,
    /// In the sum of Aquatic Chronic 1.
    pub chronic: u32,
}

impl Default for MFactor {
    fn default() -> Self {
        Self { acute: 1, chronic: 1 }
    }
}

/// A share above which a mixture has a class, by law rather than by the sums.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SpecificLimit {
    /// The mass share at and above which it holds.
    #[serde(deserialize_with = "crate::fluid::ratio")]
    pub from: f64,
    /// The mass share below which it holds; none where there is no upper end.
    #[serde(default, deserialize_with = "crate::fluid::ratio_or_none")]
    pub to: Option<f64>,
    /// The class the mixture then has.
    pub hazard: Classified,
    /// Whose law.
    pub regime: Regime,
    /// Where it comes from.
    pub source: SourceKey,
}

impl SpecificLimit {
    /// Whether it decides about a mixture with this mass share.
    #[must_use]
    pub fn covers(&self, share: f64) -> bool {
        self.from <= share && self.to.is_none_or(|to| share < to)
    }
}
