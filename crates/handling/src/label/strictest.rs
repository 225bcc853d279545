//! Puts the findings of several rules together: the strictest of each kind of hazard, and where the rules differ.

use std::collections::BTreeMap;

use reference::hazard::Classified;

use super::Rules;
use super::classify::{Finding, kind, wider};

/// The worst of a kind of hazard, and by whose rules.
pub(super) struct Worst {
    pub(super) hazard: Classified,
    rules: Vec<Rules>,
}

impl Worst {
    /// In words, as part of a sentence.
    pub(super) fn told(&self) -> String {
        format!("{} ({}, by {})", self.hazard.statement, self.hazard.class, names(&self.rules))
    }
}

/// The worst class of each kind.
pub(super) fn strictest(findings: &[Finding]) -> BTreeMap<String, Worst> {
    let mut strictest: BTreeMap<String, Worst> = BTreeMap::new();
    for finding in findings {
        let hazard = finding.hazard();
        let worst = strictest.entry(kind(finding.class)).or_insert_with(|| Worst { hazard: hazard.clone(), rules: Vec::new() });
        if hazard.class < worst.hazard.class {
            *worst = Worst { hazard, rules: finding.rules.into_iter().collect() };
        } else if hazard.class == worst.hazard.class {
            worst.hazard.statement = wider(&worst.hazard, &hazard);
            worst.rules.extend(finding.rules);
        }
    }
    strictest
}

/// Where the rules differ over what stands on the label.
pub(super) fn differences(findings: &[Finding], kept: &[Classified]) -> Vec<String> {
    let mut notes = Vec::new();
    for hazard in kept {
        let of_kind = kind(hazard.class);
        // The American rules say nothing about water.
        let asked = Rules::ALL.into_iter().filter(|rules| !(of_kind.starts_with("Aquatic") && *rules == Rules::Osha));
        let mut by_statement: BTreeMap<&str, Vec<Rules>> = BTreeMap::new();
        for rules in asked {
            let found = findings.iter().find(|finding| finding.rules == Some(rules) && kind(finding.class) == of_kind);
            by_statement.entry(found.map_or("nothing", |found| &found.statement)).or_default().push(rules);
        }
        if by_statement.len() > 1 {
            let told: Vec<_> = by_statement.iter().map(|(statement, rules)| format!("{statement} by {}", names(rules))).collect();
            notes.push(format!("Rules differ: {}. The stricter stands on the label.", told.join(", ")));
        }
    }
    notes
}

fn names(rules: &[Rules]) -> String {
    if rules.len() == Rules::ALL.len() {
        return "all three rules".to_owned();
    }
    rules.iter().map(ToString::to_string).collect::<Vec<_>>().join(" and ")
}
