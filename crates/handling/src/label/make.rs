//! Puts a label together.

use std::collections::BTreeMap;

use reference::hazard::{Classified, HazardClass as H};
use reference::{Apart, Fluid, Reference};

use super::classify::{Finding, classify, kind, number};
use super::first_aid::first_aid;
use super::precaution::precautions;
use super::{ContentLine, Label, Line, Mixture, Never, Rules, Written, pictograms, prune, signal};

/// The label of a product as it is sold: what its own statements say. What the sums over its contents would add is told in the notes.
#[must_use]
pub fn of_fluid(fluid: &Fluid, reference: &Reference) -> Label {
    let mixture = Mixture::of_fluid(fluid, reference);
    let worked_findings = classify(&mixture);
    let worked = strictest(&worked_findings);
    let (mut stated, mut supplements) = (Vec::new(), Vec::new());
    for code in &fluid.hazards.statements {
        match classified(code) {
            // It goes with H222 and H223 and is a class of its own only without them.
            Some(_) if code == "H229" && fluid.hazards.statements.iter().any(|code| code == "H222" || code == "H223") => {}
            Some(hazard) => stated.push(hazard),
            None => supplements.push(code.clone()),
        }
    }
    let mut label = Draft { name: &fluid.name, mixture: &mixture, groups: vec![&fluid.hazards.storage], reference }.label(
        stated.clone(),
        &supplements,
        Vec::new(),
    );
    let adds: Vec<_> =
        worked.iter().filter(|(of_kind, worst)| adds(&stated, of_kind, &worst.hazard)).map(|(_, worst)| worst.told()).collect();
    if !adds.is_empty() {
        label.notes.push(format!(
            "Worked from its contents at their high ends it would also be {}. What stands on your pack goes first.",
            adds.join(", ")
        ));
    }
    let stated_finding = |hazard: &Classified| Finding {
        class: hazard.class,
        statement: hazard.statement.clone(),
        rules: None,
        what: "stated for the product".to_owned(),
        decided: None,
        source: fluid.hazards.source,
    };
    label.findings = stated.iter().map(stated_finding).chain(worked_findings).collect();
    label
}

/// Whether a class that was worked says more than what is stated. That it burns when hot (category 4) is left to the flash point.
fn adds(stated: &[Classified], of_kind: &str, worked: &Classified) -> bool {
    let own = stated.iter().find(|hazard| kind(hazard.class) == of_kind);
    let worse = own.is_none_or(|own| worked.class < own.class && worked.statement != own.statement);
    worse && worked.class != H::FlamLiq4 && prune([stated, std::slice::from_ref(worked)].concat()).contains(worked)
}

/// The label of a mixture, by the strictest of the rules for each kind of hazard.
#[must_use]
pub fn of_mixture(name: &str, mixture: &Mixture<'_>, reference: &Reference) -> Label {
    let findings = classify(mixture);
    let hazards: Vec<_> = strictest(&findings).into_values().map(|worst| worst.hazard).collect();
    let kept = prune(hazards.clone());
    let notes = differences(&findings, &kept);
    let mut supplements: Vec<String> = Vec::new();
    for part in mixture.parts.iter().filter(|part| part.share.high >= SUPPLEMENT) {
        supplements.extend(part.substance.supplements.iter().filter(|code| !supplements.contains(code)).cloned().collect::<Vec<_>>());
    }
    let groups = mixture.parts.iter().flat_map(|part| &part.substance.groups).collect();
    let mut label = Draft { name, mixture, groups, reference }.label(hazards, &supplements, notes);
    label.findings = findings;
    label
}

/// From this share on a substance's supplementary statements hold for a mixture; *common practice*.
const SUPPLEMENT: f64 = 0.01;

/// The worst of a kind of hazard, and by whose rules.
struct Worst {
    hazard: Classified,
    rules: Vec<Rules>,
}

impl Worst {
    fn told(&self) -> String {
        format!("{} ({}, by {})", self.hazard.statement, self.hazard.class, names(&self.rules))
    }
}

fn strictest(findings: &[Finding]) -> BTreeMap<String, Worst> {
    let mut strictest: BTreeMap<String, Worst> = BTreeMap::new();
    for finding in findings {
        let hazard = Classified { class: finding.class, statement: finding.statement.clone() };
        let worst = strictest.entry(kind(finding.class)).or_insert_with(|| Worst { hazard: hazard.clone(), rules: Vec::new() });
        if hazard.class < worst.hazard.class {
            *worst = Worst { hazard, rules: finding.rules.into_iter().collect() };
        } else if hazard.class == worst.hazard.class {
            worst.rules.extend(finding.rules);
        }
    }
    strictest
}

/// Where the rules differ over what stands on the label.
fn differences(findings: &[Finding], kept: &[Classified]) -> Vec<String> {
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

/// The class a statement belongs to: the greatest of those that share it. Supplementary statements belong to none.
fn classified(code: &str) -> Option<Classified> {
    let class = *H::ALL.iter().find(|class| code.starts_with(class.statement()))?;
    Some(Classified { class, statement: code.to_owned() })
}

/// What a label is put together from.
struct Draft<'a> {
    name: &'a str,
    mixture: &'a Mixture<'a>,
    /// What it reacts as.
    groups: Vec<&'a String>,
    reference: &'a Reference,
}

impl Draft<'_> {
    fn label(&self, hazards: Vec<Classified>, supplements: &[String], mut notes: Vec<String>) -> Label {
        let shown = prune(hazards);
        let classes: Vec<H> = shown.iter().map(|hazard| hazard.class).collect();
        let mut codes: Vec<&str> = shown.iter().map(|hazard| hazard.statement.as_str()).collect();
        if classes.iter().any(|class| matches!(class, H::Aerosol1 | H::Aerosol2)) {
            codes.push("H229");
        }
        codes.sort_unstable();
        codes.dedup();
        codes.extend(supplements.iter().map(String::as_str));
        self.supposed(&mut notes);
        Label {
            product: self.name.to_owned(),
            contents: self.contents(),
            signal: signal(&classes),
            pictograms: pictograms(&classes, Rules::UnGhs),
            hazards: codes.into_iter().map(|code| self.line(code)).collect(),
            precautions: precautions(&classes).into_iter().map(|code| self.line(code)).collect(),
            never_with: self.never_with(),
            first_aid: first_aid(&classes),
            notes,
            findings: Vec::new(),
            written: Written::default(),
        }
    }

    fn line(&self, code: &str) -> Line {
        let text = self.reference.statement(code).map_or_else(String::new, |statement| statement.printed().to_owned());
        Line { code: code.to_owned(), text }
    }

    fn contents(&self) -> Vec<ContentLine> {
        let line = |part: &super::Part<'_>| ContentLine {
            name: part.substance.name.clone(),
            cas: part.substance.cas.clone(),
            low_percent: part.share.low * 100.0,
            high_percent: part.share.high * 100.0,
        };
        self.mixture.parts.iter().map(line).collect()
    }

    /// What had to be supposed.
    fn supposed(&self, notes: &mut Vec<String>) {
        let mixture = self.mixture;
        if mixture.parts.iter().any(|part| part.share.low < part.share.high) {
            notes.push("Where a share is a range, its high end was counted.".to_owned());
        }
        if mixture.unknown > 0.0 {
            notes.push(format!("{} % of it is of unknown toxicity.", number(mixture.unknown * 100.0)));
        }
        let eats_metal = mixture.parts.iter().any(|part| part.substance.hazards.iter().any(|hazard| hazard.class == H::MetCorr1));
        if eats_metal {
            notes.push("Whether it eats metal no sum tells, only a test: keep it in plastic.".to_owned());
        }
    }

    /// The groups from which it must stand in a cupboard of its own because the two react.
    fn never_with(&self) -> Vec<Never> {
        let mut never: Vec<Never> = Vec::new();
        for row in self.reference.storage_pairs.iter().filter(|row| row.apart == Apart::Cupboards && !row.reaction.is_empty()) {
            let [one, other] = &row.pair;
            let met = match (self.groups.contains(&one), self.groups.contains(&other)) {
                (true, false) => other,
                (false, true) => one,
                _ => continue,
            };
            let Some(group) = self.reference.storage_groups.get(met) else { continue };
            if !never.iter().any(|known| known.what == group.name) {
                never.push(Never { what: group.name.clone(), why: row.why.clone() });
            }
        }
        never
    }
}
