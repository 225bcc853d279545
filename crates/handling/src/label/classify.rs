//! Works out the classes of a mixture.
//!
//! Every share stands at its high end. Where a share is too small to count by the letter of the rules it is counted all the same, which
//! errs to the safe side.

mod flames;
mod poison;
mod shares;
mod skin_eye;
#[cfg(test)]
mod tests;
mod water;

use std::collections::BTreeMap;
use std::fmt;

use reference::SourceKey;
use reference::hazard::{Classified, HazardClass};
use reference::substance::{Regime, SpecificLimit};
use schemars::JsonSchema;
use serde::{Serialize, Serializer};
use units::{Digits, show_number};

use super::{Mixture, Part, Rules};

/// A class a mixture has by one set of rules, and why.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Finding {
    /// The class, by its abbreviation.
    #[serde(serialize_with = "as_code")]
    #[schemars(with = "String")]
    pub class: HazardClass,
    /// The statement that goes with it.
    pub statement: String,
    /// Whose rules; none where the product's own label says so.
    pub rules: Option<Rules>,
    /// What decided it, in words.
    pub what: String,
    /// The number that decided it.
    pub decided: Option<Decided>,
    /// Bibliography key.
    #[schemars(with = "String")]
    pub source: SourceKey,
}

/// A number and the cut-off it reached.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Decided {
    /// The number.
    pub value: f64,
    /// The cut-off.
    pub cut_off: f64,
    /// The unit of both.
    pub unit: &'static str,
}

impl fmt::Display for Finding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.statement, self.class)?;
        if let Some(rules) = self.rules {
            write!(f, " by {rules}")?;
        }
        write!(f, ": {}", self.what)?;
        if let Some(Decided { value, cut_off, unit }) = self.decided {
            write!(f, " {} {unit}, cut-off {} {unit}", number(value), number(cut_off))?;
        }
        Ok(())
    }
}

impl Finding {
    /// The class with its statement.
    pub(super) fn hazard(&self) -> Classified {
        Classified { class: self.class, statement: self.statement.clone() }
    }
}

/// The statement that says what both of one class say: where their letters differ (`H360F`, `H360D`), the one without.
pub(super) fn wider(one: &Classified, other: &Classified) -> String {
    if one.statement == other.statement { one.statement.clone() } else { one.class.statement().to_owned() }
}

fn as_code<S: Serializer>(class: &HazardClass, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(class.code())
}

/// The classes of a mixture by each of the [`Rules`], the worst of each kind, with the number that decided it.
///
/// Acute toxicity category 5, skin irritation 3 and aspiration 2 of the UN GHS are left out, as they are by both of the other rules.
///
/// # Source
/// UN GHS, parts 2 to 4; Regulation (EC) No 1272/2008, Annex I; 29 CFR 1910.1200, Appendices A and B. *From memory*.
#[must_use]
pub fn classify(mixture: &Mixture<'_>) -> Vec<Finding> {
    let mut all = Vec::new();
    for rules in Rules::ALL {
        let mut sieve = Sieve { mixture, rules, found: Vec::new() };
        sieve.flames();
        sieve.poison();
        sieve.skin_and_eyes();
        sieve.lasting_harm();
        sieve.water();
        sieve.specific_limits();
        all.extend(sieve.worst());
    }
    all
}

/// The classes between which a mixture has at most one belong to one kind: `Skin Corr. 1` and `Skin Irrit. 2` are both `Skin`.
pub(super) fn kind(class: HazardClass) -> String {
    let is_category = |word: &str| word.starts_with(|c: char| c.is_ascii_digit()) || word == "CD" || word == "EF";
    let words = class.code().split(' ').filter(|word| !is_category(word) && !matches!(*word, "Corr." | "Irrit." | "Dam."));
    let name = words.collect::<Vec<_>>().join(" ");
    if name == "Met." { "Met. Corr.".to_owned() } else { name }
}

/// The working of one set of rules.
struct Sieve<'m, 'a> {
    mixture: &'m Mixture<'a>,
    rules: Rules,
    found: Vec<Finding>,
}

impl<'a> Sieve<'_, 'a> {
    fn find(&mut self, classified: Classified, what: impl Into<String>, decided: Option<Decided>) {
        let Classified { class, statement } = classified;
        let source = self.rules.source();
        self.found.push(Finding { class, statement, rules: Some(self.rules), what: what.into(), decided, source });
    }

    /// Finds a class if a sum reaches a cut-off, both in percent.
    fn find_from(&mut self, class: HazardClass, what: String, value: f64, cut_off: f64) {
        if reaches(value, cut_off) {
            self.find(own(class), what, Some(Decided { value, cut_off, unit: "%" }));
        }
    }

    /// The parts that have one of these classes, and their sum in percent.
    fn sum(&self, classes: &[HazardClass]) -> Sum<'_, 'a> {
        let has = |part: &&Part<'a>| part.substance.hazards.iter().any(|hazard| classes.contains(&hazard.class));
        let parts: Vec<_> = self.mixture.parts.iter().filter(has).collect();
        Sum { percent: parts.iter().fold(0.0, |sum, part| sum + part.percent()), parts }
    }

    /// The limits that the European rules set for this part and that are of this kind.
    fn limits_of<'p>(&self, part: &'p Part<'a>, kind_of: HazardClass) -> impl Iterator<Item = &'p SpecificLimit> {
        let counts = self.rules == Rules::Clp;
        let kind_of = kind(kind_of);
        part.substance
            .specific_limits
            .iter()
            .filter(move |limit| counts && limit.regime == Regime::Clp && kind(limit.hazard.class) == kind_of)
    }

    fn specific_limits(&mut self) {
        if self.rules != Rules::Clp {
            return;
        }
        for part in &self.mixture.parts {
            for limit in part.substance.specific_limits.iter().filter(|limit| limit.regime == Regime::Clp) {
                if limit.from <= part.share.high + TINY && limit.to.is_none_or(|to| part.share.high < to - TINY) {
                    let decided = Decided { value: part.percent(), cut_off: limit.from * 100.0, unit: "%" };
                    self.find(limit.hazard.clone(), format!("limit of its own for {}:", part.substance.name), Some(decided));
                }
            }
        }
    }

    /// The worst class of each kind.
    fn worst(self) -> Vec<Finding> {
        let mut worst: BTreeMap<String, Finding> = BTreeMap::new();
        for finding in self.found {
            match worst.get_mut(&kind(finding.class)) {
                Some(known) if known.class < finding.class => {}
                Some(known) if known.class == finding.class => known.statement = wider(&known.hazard(), &finding.hazard()),
                _ => {
                    worst.insert(kind(finding.class), finding);
                }
            }
        }
        let mut worst: Vec<_> = worst.into_values().collect();
        worst.sort_by_key(|finding| finding.class);
        worst
    }
}

/// Parts and how much of the mixture they are together.
struct Sum<'p, 'a> {
    parts: Vec<&'p Part<'a>>,
    percent: f64,
}

impl Sum<'_, '_> {
    fn names(&self) -> String {
        self.parts.iter().map(|part| part.substance.name.as_str()).collect::<Vec<_>>().join(" + ")
    }
}

/// A number as it stands in a sentence.
pub(super) fn number(value: f64) -> String {
    show_number(value, Digits::Significant(4))
}

/// Shares that a sum of rounded numbers misses by.
const TINY: f64 = 1e-9;

fn reaches(value: f64, cut_off: f64) -> bool {
    value >= cut_off - TINY * 100.0
}

fn own(class: HazardClass) -> Classified {
    Classified { class, statement: class.statement().to_owned() }
}
