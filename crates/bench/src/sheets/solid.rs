//! Materials as fits and bonds see them, and what parts are measured with.

use fields::Given;
use formulas::bond::BondMetal;
use formulas::fit::{Instrument, Measured};
use formulas::interference::{Adhesion, Contact, Metal, Neighbour, Objection, Strength, adhesion, heating_objections};
use reference::{Material, Reference};
use units::{Length, Quantity, Temperature, TemperatureDifference, Volume};

use super::common::degrees;
use super::{Asked, Outcome, Unanswered};

/// What both parts were measured with.
pub(super) const BY: Given<&'static str> = Given::choice(
    "by",
    &["micrometer", "telescopic-gauge", "calliper"],
    "micrometer",
    "common-practice",
    "what they were measured with; the bore with a three-point micrometer, a telescopic gauge, or the inside jaws",
);
/// What stands near a joint that is heated.
pub(super) const NEAR: Given<Vec<String>> = Given::choices(
    "near",
    &["nothing", "magnesium", "plating", "soft-solder", "magnet", "seal", "plastic-cage"],
    "nothing",
    "common-practice",
    "what heat would reach beside the two parts",
);

/// The instruments of a bore and of a shaft.
pub(super) fn instruments(asked: &Asked<'_>) -> [Instrument; 2] {
    match asked.answers.word(&BY) {
        "calliper" => [Instrument::CalliperJaws, Instrument::Calliper],
        "telescopic-gauge" => [Instrument::TelescopicGauge, Instrument::Micrometer],
        _ => [Instrument::BoreMicrometer, Instrument::Micrometer],
    }
}

/// A part measured at the temperature of the instrument.
pub(super) fn measured(size: Length, by: Instrument, spread: Option<Length>, metal: &Metal) -> Measured {
    Measured {
        size,
        by,
        spread: spread.unwrap_or_default(),
        expansion_per_k: metal.expansion_per_k,
        warmth: TemperatureDifference::from_base(0.0),
    }
}

/// The one material named by a field.
pub(super) fn material<'a>(asked: &Asked<'a>, field: &Given<Vec<String>>) -> Result<&'a Material, Unanswered> {
    match asked.answers.words(field) {
        [one] => asked.reference.material(one).ok_or_else(|| Unanswered::Contradiction(format!("`{one}` is no material"))),
        _ => Err(Unanswered::Contradiction(format!("`{}` takes one material: keep one of them", field.field().name))),
    }
}

/// Says so where mild steel's yield stress stands in for one that is not known.
pub(super) fn mind_stand_in(outcome: Outcome, materials: [&Material; 2]) -> Outcome {
    let unknown =
        |material: &&Material| material.solid.as_ref().is_some_and(|solid| solid.yield_stress.is_none() && solid.tensile.is_none());
    materials.into_iter().filter(unknown).fold(outcome, |outcome, material| {
        let text = format!("No yield stress of {} is known here: that of mild steel stands in, which is on the safe side.", material.name);
        outcome.caution(text, "common-practice")
    })
}

/// What a press fit asks of a material. Where no yield stress is known, mild steel's stands in for it, than which no steel is softer.
pub(super) fn metal(reference: &Reference, material: &Material) -> Result<Metal, Unanswered> {
    let unknown = || {
        Unanswered::Contradiction(format!(
            "no elastic values of {} are known: plastics creep and hold no press fit; name a metal, such as mild-steel or bronze",
            material.name
        ))
    };
    let solid = material.solid.as_ref().ok_or_else(unknown)?;
    let softest = || reference.material("mild-steel")?.solid.as_ref()?.yield_stress;
    let strength = match (solid.yield_stress, solid.tensile) {
        (Some(stress), _) => Strength::Yields(stress),
        (None, Some(stress)) => Strength::Breaks(stress),
        (None, None) => Strength::Yields(softest().ok_or_else(unknown)?),
    };
    Ok(Metal {
        modulus: solid.modulus,
        poisson: solid.poisson,
        expansion_per_k: solid.expansion_per_kelvin,
        strength,
        hottest: solid.hottest.ok_or_else(unknown)?,
    })
}

/// A material as a retaining compound sees it, by the table of the data.
pub(super) fn bond_metal(reference: &Reference, material: &Material) -> Result<BondMetal, Unanswered> {
    reference.retaining_factor(&material.key).and_then(|row| BondMetal::of_group(&row.material)).ok_or_else(|| {
        Unanswered::Contradiction(format!(
            "how a retaining compound holds on {} is not known: it wants bare metal, such as mild-steel, bronze or aluminium",
            material.name
        ))
    })
}

/// The adhesion of a press of two metals: the weaker of the two contacts with steel.
pub(super) fn contact_adhesion(reference: &Reference, metals: [&Material; 2], oiled: bool) -> Result<Adhesion, Unanswered> {
    let contact = |material: &Material| match () {
        () if reference.is_a(&material.key, "cast-iron") => Contact::GreyIron,
        () if reference.is_a(&material.key, "aluminium") => Contact::CastAluminium,
        () if reference.is_a(&material.key, "copper-alloys") => Contact::LeadedBronze,
        () if reference.is_a(&material.key, "alloy-and-tool-steels") => Contact::StrongSteel,
        () => Contact::MildSteel,
    };
    let [hub, shaft] = metals.map(|material| {
        adhesion(contact(material), oiled)
            .ok_or_else(|| Unanswered::Contradiction(format!("no adhesion of oiled {} is known: press it dry", material.name)))
    });
    let (hub, shaft) = (hub?, shaft?);
    Ok(if hub.round <= shaft.round { hub } else { shaft })
}

/// What speaks against heating a joint so far, as sentences.
pub(super) fn objections(asked: &Asked<'_>, metals: [(&Material, &Metal); 2], at: Temperature) -> Vec<String> {
    let near: Vec<Neighbour> = asked
        .answers
        .words(&NEAR)
        .iter()
        .filter_map(|word| match word.as_str() {
            "magnesium" => Some(Neighbour::Magnesium),
            "plating" => Some(Neighbour::Plating),
            "soft-solder" => Some(Neighbour::SoftSolder),
            "magnet" => Some(Neighbour::Magnet),
            "seal" => Some(Neighbour::Seal),
            "plastic-cage" => Some(Neighbour::PlasticCage),
            _ => None,
        })
        .collect();
    let mut said: Vec<String> = Vec::new();
    for (material, metal) in metals {
        for objection in heating_objections(at, metal.hottest, &near) {
            let sentence = match objection {
                Objection::Metal { hottest } => {
                    format!("{} asks for more heat than {} bears, which is {}.", degrees(at), material.name, degrees(hottest))
                }
                Objection::Neighbour(neighbour) => format!("{} is too hot near {}.", degrees(at), neighbour_words(neighbour)),
            };
            if !said.contains(&sentence) {
                said.push(sentence);
            }
        }
    }
    said
}

const fn neighbour_words(neighbour: Neighbour) -> &'static str {
    match neighbour {
        Neighbour::Magnesium => "magnesium, which catches fire",
        Neighbour::Plating => "plating, which fumes and peels (cadmium fume poisons)",
        Neighbour::SoftSolder => "soft solder, which melts from 183 °C",
        Neighbour::Magnet => "a magnet, which loses its pull",
        Neighbour::Seal => "a rubber seal, which hardens above 100 °C",
        Neighbour::PlasticCage => "a plastic cage, which softens above 80 °C",
    }
}

/// A share as people say it, never surer than can be.
pub(super) fn percent(share: f64) -> String {
    match share {
        share if share > 0.9995 => "over 99.9 %".to_owned(),
        share if share < 0.0005 => "under 0.1 %".to_owned(),
        share => format!("{} %", units::show_number(share * 100.0, units::Digits::Significant(3))),
    }
}

/// A chance as a number of per cent, to the hundredth.
pub(super) fn in_percent(share: f64) -> f64 {
    (share * 1e4).round() / 100.0
}

/// A small size as people say it, to the micrometre.
pub(super) fn to_micrometre(size: Length) -> String {
    format!("{} mm", units::show_number(size.base() * 1e3, units::Digits::Decimals(3)))
}

/// An amount of compound in drops, as people say it.
pub(super) fn drops(amount: Volume) -> String {
    match formulas::bond::drops(amount) {
        count if count <= 1.0 => "one drop".to_owned(),
        count => format!("{} drops", units::show_number(count, units::Digits::Significant(2))),
    }
}

/// A sentence as a part of another.
pub(super) fn lowered(sentence: &str) -> String {
    let mut letters = sentence.trim_end_matches('.').chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}
