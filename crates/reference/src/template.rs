//! Machine templates: the usual lubrication points of a kind of machine.

use indexmap::IndexMap;
use serde::Deserialize;

use crate::{Operation, SourceKey};

/// The usual points of one kind of machine, in terms of a few sizes.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Template {
    /// Name by which a shop file calls it, such as `bench lathe`.
    pub name: String,
    /// Name as a heading.
    pub title: String,
    /// One sentence: which machines are meant.
    pub about: String,
    /// Sizes that may be given, and the text with unit taken when they are not.
    pub sizes: IndexMap<String, String>,
    /// How the machine cuts: what is supposed of a shop that tells of no work.
    #[serde(default)]
    pub operations: Vec<Operation>,
    /// The points, in the order of a walk round the machine.
    #[serde(rename = "point")]
    pub points: Vec<TemplatePoint>,
    /// Where this comes from.
    pub source: SourceKey,
}

/// One point of a template.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TemplatePoint {
    /// Name on the chart.
    pub name: String,
    /// Kind of point, such as `horizontal way`.
    pub kind: String,
    /// How many alike there are.
    #[serde(default = "one")]
    pub count: u32,
    /// Share of the machine's running time, where it differs; text such as `1 h/week`.
    pub hours: Option<String>,
    /// Values by name: text with a unit, or a factor and the name of a size, such as `0.5 swing`.
    #[serde(default)]
    pub values: IndexMap<String, String>,
    /// What reaches it: `chips`, `grit`, `coolant`, `damp`, `outdoors`.
    #[serde(default)]
    pub exposure: Vec<String>,
    /// How a lubricant gets in, such as `ball oiler`.
    pub fitting: Option<String>,
    /// How well it is reached: `easy` or `hard`.
    pub reach: Option<String>,
    /// Materials a fluid touches there.
    #[serde(default)]
    pub touches: Vec<String>,
    /// Where this comes from, where it is not the template's source.
    pub source: Option<SourceKey>,
}

fn one() -> u32 {
    1
}
