//! Why a place gets the fluid it gets: every finding for several fluids side by side, the weight, and the working of the numbers.

use formulas::working::Notebook;
use reference::Reference;
use schemars::JsonSchema;
use serde::Serialize;
use shop::{Problem, Shop};
use units::System;

use crate::need::Need;
use crate::needs::{Working, needs};
use crate::verdict::{Grade, Verdict, verdict};

/// The account of one place.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Why {
    /// The need's short name.
    pub need: String,
    /// Where, in words.
    #[serde(rename = "where")]
    pub place: String,
    /// Its kind.
    pub kind: String,
    /// Why nothing is put there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nothing: Option<String>,
    /// What it is worth.
    pub weight: WeightRow,
    /// How the numbers came about, a line a step.
    pub working: Vec<String>,
    /// The fluids asked about, or the best of all.
    pub verdicts: Vec<Verdict>,
    /// What to mind.
    pub mind: Vec<String>,
    /// The same working step by step, for whoever draws it.
    #[serde(skip)]
    pub notebook: Notebook,
}

/// How a weight came about.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct WeightRow {
    /// What happens without.
    pub consequence: String,
    /// The number of that.
    pub consequence_weight: f64,
    /// Why that number.
    pub consequence_why: String,
    /// Times a year it matters.
    pub times_a_year: f64,
    /// The number of that.
    pub frequency_weight: f64,
    /// The user's factor.
    pub priority: f64,
    /// The product.
    pub value: f64,
}

/// What was asked that is not there.
#[derive(Debug, thiserror::Error)]
pub enum WhyError {
    /// The shop file's values contradict each other or lie outside a formula's range.
    #[error("the shop cannot be worked out")]
    Shop(Vec<Problem>),
    /// No such place.
    #[error("no place of this shop is called `{asked}`")]
    Place {
        /// What was asked.
        asked: String,
        /// All places there are.
        known: Vec<String>,
    },
    /// No such fluid.
    #[error("`{asked}` is not a fluid known here")]
    Fluid {
        /// What was asked.
        asked: String,
    },
}

/// How many fluids are shown when none is named.
const SHOWN: usize = 4;

/// The account of the place called so.
///
/// # Errors
/// [`WhyError`].
pub fn why(shop: &Shop, reference: &Reference, place: &str, fluids: &[String], units: System) -> Result<Why, WhyError> {
    let needs = needs(shop, reference, Working::Kept).map_err(WhyError::Shop)?;
    let need = find(&needs, place)
        .ok_or_else(|| WhyError::Place { asked: place.to_owned(), known: needs.iter().map(|need| need.id.clone()).collect() })?;
    let mut verdicts = Vec::new();
    for key in fluids {
        let fluid = reference.fluid(key).ok_or_else(|| WhyError::Fluid { asked: key.clone() })?;
        verdicts.push(verdict(need, fluid, reference, units));
    }
    if fluids.is_empty() && need.nothing.is_none() {
        verdicts = best(need, reference, units);
    }
    let notebook = need.working.clone().unwrap_or_default();
    Ok(Why {
        need: need.id.clone(),
        place: need.place.words(),
        kind: need.kind.to_owned(),
        nothing: need.nothing.as_ref().map(ToString::to_string),
        weight: weight_row(need, reference),
        working: notebook.lines(),
        verdicts,
        mind: need.mind.iter().map(|(text, _)| text.to_string()).collect(),
        notebook,
    })
}

/// A need by its short name, or by any part of it that names one need alone.
fn find<'n>(needs: &'n [Need], asked: &str) -> Option<&'n Need> {
    let plain = |text: &str| {
        let text = text.to_lowercase();
        text.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).collect::<Vec<_>>().join("-")
    };
    let asked = plain(asked);
    needs.iter().find(|need| plain(&need.id) == asked).or_else(|| {
        let mut parts = needs.iter().filter(|need| plain(&need.id).contains(&asked));
        parts.next().filter(|_| parts.next().is_none())
    })
}

/// The best fluids for a need: those without harm or fault first, then those with the fewest faults.
fn best(need: &Need, reference: &Reference, units: System) -> Vec<Verdict> {
    let mut verdicts: Vec<Verdict> =
        reference.fluids.values().filter(|fluid| fluid.barred.is_none()).map(|fluid| verdict(need, fluid, reference, units)).collect();
    let faults = |verdict: &Verdict| verdict.findings.iter().filter(|finding| finding.grade > Grade::Right).count();
    verdicts.sort_by_key(|verdict| (verdict.grade, faults(verdict)));
    verdicts.truncate(SHOWN);
    verdicts
}

fn weight_row(need: &Need, reference: &Reference) -> WeightRow {
    let weight = &need.weight;
    let row = reference.consequence(weight.consequence.key());
    WeightRow {
        consequence: row.map_or_else(String::new, |row| row.name.clone()),
        consequence_weight: weight.consequence_weight,
        consequence_why: row.map_or_else(String::new, |row| row.why.clone()),
        times_a_year: weight.times_a_year,
        frequency_weight: weight.frequency_weight,
        priority: weight.priority,
        value: weight.value(),
    }
}
