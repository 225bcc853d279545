//! The materials of a joint as the formulas of bonds and of press fits know them.

use formulas::bond::BondMetal;
use formulas::interference::{Adhesion, Contact, Metal, adhesion, metal};
use reference::Reference;

use crate::needs::jobs::Bench;

/// A metal as a retaining compound sees it: by the row of the data that covers it.
pub(in crate::needs::jobs) fn bond_metal(reference: &Reference, key: &str) -> Option<BondMetal> {
    BondMetal::of_group(&reference.retaining_factor(key)?.material)
}

/// The metals between which a bond cures; what the data do not know counts as aluminium, the slowest and weakest.
pub(in crate::needs::jobs) fn bond_metals(bench: &Bench<'_>, keys: &[String]) -> [BondMetal; 2] {
    let known = keys.iter().map(|key| bond_metal(bench.reference, key).unwrap_or(BondMetal::Aluminium));
    // Of three and more the weakest two count.
    let mut metals: Vec<BondMetal> = known.collect();
    metals.sort_by(|a, b| a.factor().total_cmp(&b.factor()));
    let weakest = metals.first().copied().unwrap_or(BondMetal::Steel);
    [weakest, metals.get(1).copied().unwrap_or(weakest)]
}

/// A metal as a press fit knows it.
pub(super) fn press_metal(reference: &Reference, key: &str) -> Option<Metal> {
    const NAMES: [(&str, &str); 10] = [
        ("bearing-steel", "rolling bearing"),
        ("case-hardened-steel", "case-hardened steel"),
        ("hardened-steels", "induction-hardened steel"),
        ("alloy-and-tool-steels", "quenched and tempered steel"),
        ("steels", "mild steel"),
        ("stainless", "austenitic stainless steel"),
        ("cast-iron", "grey iron"),
        ("brass", "leaded brass"),
        ("bronze", "phosphor bronze"),
        ("aluminium", "aluminium 6082-T6"),
    ];
    NAMES.iter().find(|(name, _)| reference.is_a(key, name)).and_then(|(_, known)| metal(known))
}

/// How two metals pressed together oiled hold each other; bronze and brass, of which nothing is known oiled, as dry.
pub(super) fn adhesion_of(reference: &Reference, shaft: &str, hub: &str) -> Option<Adhesion> {
    let either = |name: &str| [shaft, hub].iter().any(|key| reference.is_a(key, name));
    match () {
        () if either("copper-alloys") => adhesion(Contact::LeadedBronze, false),
        () if either("aluminium") => adhesion(Contact::CastAluminium, true),
        () if either("cast-iron") => adhesion(Contact::GreyIron, true),
        () => adhesion(Contact::MildSteel, true),
    }
}
