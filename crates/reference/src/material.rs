//! What machines and work are made of.

use serde::Deserialize;
use units::{MassDensity, Pressure, Temperature};

use crate::SourceKey;

/// A metal, seal, plastic, coating or bond that a fluid may touch or a tool may cut.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Material {
    /// Short name, such as `cast-iron`.
    pub key: String,
    /// Name as people say it.
    pub name: String,
    /// Groups it belongs to, the closest first, such as `copper-alloys`.
    #[serde(default)]
    pub groups: Vec<String>,
    /// Letter of ISO 513 for cutting: P, M, K, N, S or H.
    pub iso_513: Option<char>,
    /// Density.
    #[serde(default, deserialize_with = "units::text::optional")]
    pub density: Option<MassDensity>,
    /// What fits and heating ask.
    pub solid: Option<Solid>,
    /// Where its groups and density come from.
    pub source: SourceKey,
}

/// Elastic and thermal values of a solid.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Solid {
    /// Elastic modulus.
    #[serde(deserialize_with = "units::text::quantity")]
    pub modulus: Pressure,
    /// Poisson's ratio.
    pub poisson: f64,
    /// Linear expansion, per kelvin.
    pub expansion_per_kelvin: f64,
    /// Yield or 0.2 % proof stress.
    #[serde(default, deserialize_with = "units::text::optional")]
    pub yield_stress: Option<Pressure>,
    /// Tensile strength, for metals without a yield point.
    #[serde(default, deserialize_with = "units::text::optional")]
    pub tensile: Option<Pressure>,
    /// How hot a part may be made for assembly without harm.
    #[serde(default, deserialize_with = "units::text::optional")]
    pub hottest: Option<Temperature>,
    /// Where these come from.
    pub source: SourceKey,
}

/// What a plain bush of one material carries when it runs without a full film.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct BearingMaterial {
    /// Short name, such as `leaded-tin-bronze`.
    pub key: String,
    /// Name as people say it.
    pub name: String,
    /// The material of `materials.toml` it is, for chemistry.
    pub material: String,
    /// Rated pressure × velocity, MPa·m/s; half of it is allowed.
    pub pv_mpa_m_per_s: f64,
    /// Where this comes from.
    pub source: SourceKey,
}
