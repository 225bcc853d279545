//! What stands together, how much of it, and what becomes of leftovers.

use std::collections::BTreeSet;

use reference::quantity::{Place, Region};
use reference::storage::Reaction;
use reference::{Apart, Reference, Trait};
use units::{Amount, Quantity};

fn reference() -> &'static Reference {
    Reference::embedded()
}

fn reactions(one: &str, other: &str) -> &'static [Reaction] {
    reference().storage_pair(one, other).map_or(&[], |row| row.reaction.as_slice())
}

#[test]
fn what_stands_apart_stands_apart_both_ways() {
    let groups: Vec<&str> = reference().storage_groups.keys().map(String::as_str).collect();
    for one in &groups {
        for other in &groups {
            assert_eq!(reference().apart(one, other), reference().apart(other, one), "{one} and {other}");
            assert_eq!(reactions(one, other), reactions(other, one), "{one} and {other}");
        }
    }
}

/// The letters of EPA-600/2-80-076, figure 6, *from memory*, for the groups a home shop has: what they cause at least.
#[test]
fn reactions_after_the_method_of_the_epa() {
    let cases = [
        ("acid", "base", "H"),
        ("acid", "metal-powder", "GF F"),
        ("acid", "fluoride", "GT"),
        ("oxidising-acid", "flammable", "F"),
        ("oxidising-acid", "metal-powder", "GF F"),
        ("oxidising-acid", "fluoride", "GT"),
        ("oxidiser", "flammable", "H F"),
        ("oxidiser", "metal-powder", "F E"),
        ("base", "metal-powder", "GF"),
        ("base", "chlorinated", "H"),
        ("chlorinated", "metal-powder", "H E"),
    ];
    for (one, other, letters) in cases {
        let found: BTreeSet<&str> = reactions(one, other).iter().map(|reaction| reaction.letters()).collect();
        for letter in letters.split(' ') {
            assert!(found.contains(letter), "{one} and {other}: {found:?} without {letter}");
        }
    }
}

/// What every bottle of bleach and of hardener says; common practice, no source.
#[test]
fn household_mixtures_that_kill() {
    for other in ["acid", "toxic", "ammonia", "amine", "oxidising-acid", "fluoride"] {
        assert_eq!(reference().apart("bleach", other), Apart::Cupboards, "{other}");
        assert!(reactions("bleach", other).contains(&Reaction::ToxicGas), "{other}");
    }
    for group in reference().storage_groups.keys().filter(|key| *key != "organic-peroxide") {
        assert_ne!(reference().apart("organic-peroxide", group), Apart::Together, "{group}");
    }
    // A salt that gives off oxygen beside charcoal or rosin is half of a firework.
    assert!(reactions("oxidiser", "combustible").contains(&Reaction::Fire));
    for key in ["case-hardening-powder", "rosin-flux"] {
        assert_eq!(reference().fluid(key).map(|fluid| fluid.hazards.storage.as_str()), Some("combustible"), "{key}");
    }
    // Neutraliser and acid make a gas that bursts a bottle, and still belong within reach of each other.
    assert_eq!(reference().apart("bicarbonate", "acid"), Apart::Trays);
    assert_eq!(reactions("acid", "bicarbonate"), [Reaction::Gas]);
    // Nitric acid and alcohol or acetone; some blackening holds nitric acid.
    assert_eq!(reference().apart("toxic", "flammable"), Apart::Cupboards);
}

/// What may harm an unborn child, or kills by the mouthful, is locked away; common practice, no source.
#[test]
fn poisons_are_locked_away_and_dry_ones_are_no_acid() {
    for fluid in reference().fluids.values().filter(|fluid| fluid.barred.is_none()) {
        let poison = fluid.hazards.statements.iter().any(|code| code.starts_with("H360") || code == "H300" || code == "H301");
        let group = &reference().storage_groups[&fluid.hazards.storage];
        assert!(!poison || group.locked, "{} stands in {}", fluid.key, group.key);
    }
    let groups = ["borate-flux", "anti-scale", "lead-paste"].map(|key| reference().fluid(key).map(|fluid| fluid.hazards.storage.as_str()));
    assert_eq!(groups, [Some("poison"); 3]);
    assert!(reference().storage_pair("poison", "acid").is_none() && reference().storage_pair("poison", "base").is_none());
}

#[test]
fn far_apart_is_for_what_burns_bursts_poisons_or_boils() {
    for row in &reference().storage_pairs {
        if row.reaction.iter().any(|reaction| matches!(reaction, Reaction::Explosion | Reaction::Fire)) && row.apart != Apart::Cupboards {
            // The two that the method gives no more than "keep in separate trays" in a shop's small amounts.
            let pair = [row.pair[0].as_str(), row.pair[1].as_str()];
            assert!([["oxidising-acid", "oxidiser"], ["oxidiser", "chlorinated"]].contains(&pair), "{pair:?}");
        }
    }
}

#[test]
fn every_fluid_has_a_stream_for_its_leftovers() {
    for fluid in reference().fluids.values() {
        let stream = reference().waste_of(fluid).expect("every class has one");
        if fluid.traits.contains(&Trait::Aerosol) {
            assert_eq!(stream.key, "aerosols", "{}", fluid.key);
        } else if fluid.traits.contains(&Trait::Chlorinated) {
            // 40 CFR 279.10, *from memory*: it spoils used oil.
            assert_eq!(stream.key, "halogen-solvent", "{}", fluid.key);
        } else if fluid.traits.contains(&Trait::Solvent) {
            assert!(["solvent", "mixed-oil"].contains(&stream.key.as_str()), "{} in {}", fluid.key, stream.key);
        }
        if fluid.hazards.storage == "oil" && fluid.barred.is_none() {
            assert!(
                ["clean-used-oil", "grease", "mixed-oil", "small-chemicals"].contains(&stream.key.as_str()),
                "{} in {}",
                fluid.key,
                stream.key
            );
        }
    }
    let of = |key: &str| reference().fluid(key).and_then(|fluid| reference().waste_of(fluid)).map(|stream| stream.key.as_str());
    assert_eq!(of("cold-blackening"), Some("selenium"));
    // Used-oil collections take what runs; common practice, no source.
    assert_eq!([of("lithium-2"), of("moly-2"), of("slideway-68")], [Some("grease"), Some("grease"), Some("clean-used-oil")]);
    // Fluoride and acid never meet, not as waste either: hydrogen fluoride. Common practice, no source.
    assert_eq!([of("fluoride-flux"), of("battery-acid")], [Some("fluoride"), Some("acid")]);
}

/// Iodine values of oils, *from memory* of handbooks of fats: olive 80, soya 130, linseed 170 to 200, mineral oil near 0.
#[test]
fn rags_heat_themselves_from_semi_drying_oil_on() {
    let heats = |value: f64| reference().rag(value).map(|rag| rag.self_heating);
    assert_eq!([0.0, 80.0, 99.0, 110.0, 185.0].map(heats), [false, false, false, true, true].map(Some));
}

/// 29 CFR 1910.106 (d)(3)(i) *from memory*: 60 US gal of category 1 to 3, 120 US gal of category 4 in a cabinet; 1 US gal = 3.785 411 784 L.
#[test]
fn cabinets_of_the_united_states() {
    let litres = |key: &str| match reference().quantities[key].most {
        Amount::Volume(volume) => volume.base() * 1e3,
        _ => f64::NAN,
    };
    assert!((litres("us-cabinet-1-to-3") - 227.12).abs() < 0.01);
    assert!((litres("us-cabinet-4") - 454.25).abs() < 0.01);
    assert!((litres("us-glass-2") - 0.94635).abs() < 1e-4);
    // The house asks for less than any code, wherever both speak of the same place.
    let cabinets = reference().quantities.values().filter(|row| row.place == Place::Cabinet);
    for row in cabinets.filter(|row| row.region != Region::House) {
        assert!(litres("house-cabinet") < litres(&row.key), "{}", row.key);
    }
}

/// July is the warmest or next to it where the sun is high then; south of the equator it is among the coldest.
#[test]
fn the_south_has_its_summer_in_january() {
    for climate in reference().climates.values().filter(|climate| climate.key != "hot-humid") {
        let south = climate.clone().south();
        assert!(climate.mean_by_month[0] < climate.mean_by_month[6], "{}", climate.key);
        assert_eq!(south.mean_by_month[0], climate.mean_by_month[6], "{}", climate.key);
        assert_eq!(south.south().humidity_by_month, climate.humidity_by_month, "{}", climate.key);
    }
}
