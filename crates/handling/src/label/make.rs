//! Puts a label together.

use std::collections::BTreeSet;

use reference::hazard::{Classified, HazardClass as H};
use reference::{Apart, Fluid, Reference};
use uom::si::thermodynamic_temperature::degree_celsius;

use super::classify::{Finding, classify, kind, number};
use super::first_aid::first_aid;
use super::precaution::precautions;
use super::strictest::{differences, strictest};
use super::{ContentLine, Label, Line, Mixture, Never, Pictogram, Rules, Written, pictograms, prune, signal};

/// The label of a product as it is sold: what its own statements say, and what the sums over its contents add to that; the notes tell which.
#[must_use]
pub fn of_fluid(fluid: &Fluid, reference: &Reference) -> Label {
    let mixture = Mixture::of_fluid(fluid, reference);
    let findings = classify(&mixture);
    let Stated { mut hazards, supplements } = stated(fluid);
    let worked = strictest(&findings);
    let added: Vec<_> = worked.iter().filter(|(of_kind, worst)| adds(&hazards, of_kind, &worst.hazard, &mixture)).collect();
    let mut notes = Vec::new();
    if !added.is_empty() {
        let told = added.iter().map(|(_, worst)| worst.told()).collect::<Vec<_>>().join(", ");
        notes.push(format!(
            "Worked from its contents at their high ends it is also {told}, which stands here though the maker's label may not say it. What \
             stands on your pack goes first."
        ));
    }
    let own = hazards.iter().map(|hazard| as_stated(hazard, fluid)).chain(findings).collect();
    hazards.retain(|hazard| !added.iter().any(|(of_kind, _)| **of_kind == kind(hazard.class)));
    hazards.extend(added.iter().map(|(_, worst)| worst.hazard.clone()));
    let draft = Draft { name: &fluid.name, mixture: &mixture, groups: vec![&fluid.hazards.storage], reference };
    draft.label(hazards, &supplements, notes, own)
}

/// The label of a product thinned with water, so that `share` of the mass is the product, 0 to 1. What the product's own label says and
/// its contents do not explain goes over to the thinned one; only what burns is worked anew.
#[must_use]
pub fn of_dilution(fluid: &Fluid, share: f64, ph: Option<f64>, reference: &Reference) -> Label {
    let product = Mixture::of_fluid(fluid, reference);
    let mixture = Mixture { ph, ..product.diluted(share) };
    let mut findings = classify(&mixture);
    let explained = strictest(&classify(&product));
    let mut kept = stated(fluid).hazards;
    kept.retain(|hazard| hazard.class >= H::MetCorr1 && !explained.contains_key(&kind(hazard.class)));
    let percent = number(share.clamp(0.0, 1.0) * 100.0);
    let name = format!("{}, {percent} % in water", fluid.name);
    let mut notes = differences(&findings, &prune(worst_of(&findings)));
    if !kept.is_empty() {
        let codes: Vec<_> = kept.iter().map(|hazard| hazard.statement.as_str()).collect();
        notes.push(format!(
            "{} stands here because it stands on the product; no sum over its contents tells when it ends.",
            codes.join(", ")
        ));
    }
    findings.extend(kept.iter().map(|hazard| as_stated(hazard, fluid)));
    let hazards = worst_of(&findings);
    let groups = vec![&fluid.hazards.storage];
    let supplements = supplements(&mixture);
    Draft { name: &name, mixture: &mixture, groups, reference }.label(hazards, &supplements, notes, findings)
}

/// The label of a mixture, by the strictest of the rules for each kind of hazard.
#[must_use]
pub fn of_mixture(name: &str, mixture: &Mixture<'_>, reference: &Reference) -> Label {
    let findings = classify(mixture);
    let hazards = worst_of(&findings);
    let notes = differences(&findings, &prune(hazards.clone()));
    let groups = mixture.parts.iter().flat_map(|part| &part.substance.groups).collect();
    Draft { name, mixture, groups, reference }.label(hazards, &supplements(mixture), notes, findings)
}

fn worst_of(findings: &[Finding]) -> Vec<Classified> {
    strictest(findings).into_values().map(|worst| worst.hazard).collect()
}

/// What a product's own label says.
struct Stated {
    hazards: Vec<Classified>,
    supplements: Vec<String>,
}

fn stated(fluid: &Fluid) -> Stated {
    let codes = &fluid.hazards.statements;
    let mut stated = Stated { hazards: Vec::new(), supplements: Vec::new() };
    let sprays = codes.iter().any(|code| code == "H222" || code == "H223");
    // H229 goes with H222 and H223, and has a class of its own only without them.
    for code in codes.iter().filter(|code| !(sprays && *code == "H229")) {
        match classified(code) {
            Some(hazard) => stated.hazards.push(hazard),
            None => stated.supplements.push(code.clone()),
        }
    }
    stated
}

fn as_stated(hazard: &Classified, fluid: &Fluid) -> Finding {
    Finding {
        class: hazard.class,
        statement: hazard.statement.clone(),
        rules: None,
        what: "stated for the product".to_owned(),
        decided: None,
        source: fluid.hazards.source,
    }
}

/// Whether a class that was worked says more than what is stated. That it burns when hot (category 4) only a flash point below the end of
/// that category tells: data sheets write 93 °C for what flashes above it, and no sum tells it of what is mixed with water.
fn adds(stated: &[Classified], of_kind: &str, worked: &Classified, mixture: &Mixture<'_>) -> bool {
    const ENDS_CELSIUS: f64 = 93.0;
    let own = stated.iter().find(|hazard| kind(hazard.class) == of_kind);
    let worse = own.is_none_or(|own| worked.class < own.class && worked.statement != own.statement);
    let warm = mixture.flash.is_some_and(|flash| flash.get::<degree_celsius>() < ENDS_CELSIUS);
    worse && (worked.class != H::FlamLiq4 || warm) && prune([stated, std::slice::from_ref(worked)].concat()).contains(worked)
}

/// What PTFE must not meet, in whatever share: its fume poisons from about 300 °C on; *common practice*.
fn hot_ptfe() -> Never {
    Never {
        what: "flame, hot work and tobacco".to_owned(),
        why: "The fume of hot PTFE makes fever and harms the lungs: never on what is brazed, welded or ground hot, no smoking with it on the hands."
            .to_owned(),
    }
}

/// From this share on a substance's supplementary statements hold for a mixture; *common practice*.
const SUPPLEMENT: f64 = 0.01;

fn supplements(mixture: &Mixture<'_>) -> Vec<String> {
    let counting = mixture.parts.iter().filter(|part| part.share.high >= SUPPLEMENT);
    let codes: BTreeSet<_> = counting.flat_map(|part| &part.substance.supplements).collect();
    codes.into_iter().cloned().collect()
}

/// The class a statement belongs to: the greatest of those that share it. Supplementary statements belong to none.
fn classified(code: &str) -> Option<Classified> {
    let class = *H::ALL.iter().find(|class| code.starts_with(class.statement()))?;
    Some(Classified { class, statement: code.to_owned() })
}

/// What the American rules would show besides.
fn beside_skull(classes: &[H]) -> Option<String> {
    let shows = |rules| pictograms(classes, rules).contains(&Pictogram::ExclamationMark);
    (shows(Rules::Osha) && !shows(Rules::UnGhs)).then(|| {
        "By OSHA the exclamation mark stands beside the skull too, because it tells of another harm than poison; by the UN GHS and CLP the \
         skull outranks it."
            .to_owned()
    })
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
    fn label(&self, hazards: Vec<Classified>, supplements: &[String], mut notes: Vec<String>, findings: Vec<Finding>) -> Label {
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
        notes.extend(beside_skull(&classes));
        Label {
            product: self.name.to_owned(),
            contents: self.contents(),
            signal: signal(&classes),
            pictograms: pictograms(&classes, Rules::UnGhs),
            hazards: codes.into_iter().map(|code| self.line(code)).collect(),
            precautions: precautions(&classes).into_iter().map(|code| self.line(code)).collect(),
            never_with: self.never_with(),
            first_aid: first_aid(&classes, self.mixture),
            notes,
            findings,
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
        let mut never: Vec<Never> = self.mixture.parts.iter().filter(|part| part.substance.key == "ptfe").map(|_| hot_ptfe()).collect();
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
