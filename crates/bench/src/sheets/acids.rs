//! The acids of a pickle, by the words that sheets use.

use fields::Given;
use formulas::solution::Acid;

use super::Asked;

/// The acid asked about.
pub(super) const ACID: Given<&'static str> = Given::choice(
    "acid",
    &["bisulfate", "citric", "sulfuric"],
    "bisulfate",
    "common-practice",
    "sodium bisulfate, a dry salt; citric acid, dry; or sulfuric acid such as battery acid",
);

/// The acid, and what it is called.
pub(super) fn acid(asked: &Asked<'_>) -> (Acid, &'static str) {
    match asked.answers.word(&ACID) {
        "citric" => (Acid::Citric, "citric acid"),
        "sulfuric" => (Acid::Sulfuric, "sulfuric acid"),
        _ => (Acid::Bisulfate, "sodium bisulfate"),
    }
}
