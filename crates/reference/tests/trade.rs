//! Rules of the trade that the data must keep. Common practice, no source, unless a test names one.

use reference::{Apart, Compatibility, Fluid, Operation, Reference, Trait};

fn reference() -> &'static Reference {
    Reference::embedded()
}

/// Whether a fluid attacks a material, by name or by group.
fn attacks(fluid: &Fluid, material: &str) -> bool {
    fluid.chemistry.attacks.iter().any(|name| reference().is_a(material, name))
}

#[test]
fn active_sulphur_and_hypoid_oil_attack_every_copper_alloy() {
    for fluid in reference().fluids.values() {
        if fluid.traits.contains(&Trait::ActiveSulphur) || fluid.traits.contains(&Trait::HypoidEp) {
            for metal in ["brass", "bronze", "porous-bronze", "copper"] {
                assert!(attacks(fluid, metal), "{} on {metal}", fluid.key);
            }
        }
    }
}

#[test]
fn water_and_thin_fluids_never_meet_magnesium_swarf() {
    for operation in Operation::ALL {
        let Some(cut) = reference().cut("magnesium", operation) else { continue };
        for class in &cut.ranked {
            for fluid in reference().fluids_of(class) {
                assert!(!attacks(fluid, "magnesium"), "{operation}: {}", fluid.key);
                assert!(!fluid.traits.contains(&Trait::WaterMix), "{operation}: {}", fluid.key);
                let flash = fluid.flash.map(|flash| flash.value.value - 273.15);
                assert!(flash.is_none_or(|flash| flash >= 135.0), "{operation}: {} at {flash:?} °C", fluid.key);
            }
        }
    }
}

#[test]
fn a_ranked_cutting_fluid_never_attacks_what_is_cut() {
    for material in reference().materials.keys() {
        for operation in Operation::ALL {
            let Some(cut) = reference().cut(material, operation) else { continue };
            for class in &cut.ranked {
                assert!(reference().fluids_of(class).any(|fluid| !attacks(fluid, material)), "{material} {operation}: {class}");
            }
        }
    }
}

/// CLP, Annex VI, *from memory*: from 3 % of methanol on, a liquid may damage organs (H371).
#[test]
fn the_alcohol_to_buy_holds_next_to_no_methanol() {
    let alcohol = reference().fluid("alcohol").expect("the data have it");
    assert!(alcohol.about.contains("less than 3 % methanol"), "{}", alcohol.about);
    assert!(alcohol.contents.iter().filter(|content| content.substance == "methanol").all(|content| content.share.high < 0.03));
}

#[test]
fn every_metal_that_is_cut_has_a_full_row() {
    for material in reference().materials.values().filter(|material| material.iso_513.is_some()) {
        for operation in Operation::ALL {
            assert!(reference().cut(&material.key, operation).is_some(), "{} {operation}", material.key);
        }
    }
}

#[test]
fn cast_iron_and_brass_are_cut_dry() {
    for (material, operation) in
        [("cast-iron", Operation::Turn), ("cast-iron", Operation::Drill), ("brass", Operation::Turn), ("brass", Operation::Mill)]
    {
        let cut = reference().cut(material, operation).expect("it stands in the table");
        assert_eq!(cut.ranked.first().map(String::as_str), Some("dry-cutting"), "{material} {operation}");
    }
}

#[test]
fn a_material_falls_back_on_its_group() {
    let own = reference().cut("tool-steel", Operation::Tap).expect("a group has the row");
    assert_eq!(own.material, "alloy-and-tool-steels");
    assert_eq!(reference().cut("acetal", Operation::Turn).map(|cut| cut.material.as_str()), Some("plastics"));
    assert!(reference().cut("leather", Operation::Turn).is_none());
    assert_eq!(reference().retaining_factor("mild-steel").map(|row| row.factor), Some(1.0));
    assert_eq!(reference().retaining_factor("tool-steel").map(|row| row.factor), Some(0.9));
    assert!(reference().retaining_factor("felt").is_none());
}

#[test]
fn mineral_oil_swells_epdm_and_spares_nitrile() {
    for key in ["hydraulic-32", "slideway-68", "lithium-ep-2"] {
        let fluid = reference().fluid(key).expect("it exists");
        assert!(attacks(fluid, "epdm") && attacks(fluid, "natural-rubber"), "{key}");
        assert!(!attacks(fluid, "nbr") && !attacks(fluid, "fkm"), "{key}");
    }
}

#[test]
fn anaerobics_crack_clear_plastics() {
    for fluid in reference().fluids.values().filter(|fluid| fluid.traits.contains(&Trait::Anaerobic)) {
        assert!(["acrylic", "polycarbonate", "abs"].iter().all(|plastic| attacks(fluid, plastic)), "{}", fluid.key);
    }
}

#[test]
fn alkali_dissolves_aluminium_and_zinc() {
    for fluid in reference().fluids.values().filter(|fluid| fluid.traits.contains(&Trait::Caustic)) {
        assert!(attacks(fluid, "aluminium") && attacks(fluid, "zinc-plate"), "{}", fluid.key);
    }
}

#[test]
fn dangerous_fluids_are_barred() {
    for key in ["used-engine-oil", "petrol", "chlorinated-cleaner", "hot-alkaline-black", "cutting-oil-chlorinated"] {
        assert!(reference().fluid(key).is_some_and(|fluid| fluid.barred.is_some()), "{key}");
    }
    // Chlorinated, cadmium-bearing: never something to buy.
    for fluid in reference().fluids.values() {
        if fluid.traits.contains(&Trait::Chlorinated) || fluid.traits.contains(&Trait::Cadmium) {
            assert!(fluid.barred.is_some(), "{}", fluid.key);
        }
    }
}

#[test]
fn greases_that_must_not_meet_do_not() {
    // US Bureau of Reclamation, FIST 2-4.
    let pair = |one, other| reference().compatibility(one, other);
    assert_eq!(pair("lithium", "lithium-complex"), Compatibility::Compatible);
    assert_eq!(pair("lithium-complex", "lithium"), Compatibility::Compatible);
    assert_eq!(pair("lithium", "calcium"), Compatibility::Borderline);
    // Charts disagree (12 for, 4 with reserve, 5 against, as counted by one survey): the unsafe end decides.
    assert_eq!(pair("lithium-complex", "aluminium-complex"), Compatibility::Borderline);
    for other in reference().thickeners.keys().map(String::as_str) {
        let alone = if other == "polyurea" { Compatibility::Compatible } else { Compatibility::Incompatible };
        assert_eq!(pair("polyurea", other), alone, "polyurea and {other}");
        let alone = if other == "clay" { Compatibility::Compatible } else { Compatibility::Incompatible };
        assert_eq!(pair("clay", other), alone, "clay and {other}");
    }
}

#[test]
fn acids_stand_far_from_alkalis_and_fluoride() {
    for (one, other) in [("acid", "base"), ("acid", "fluoride"), ("toxic", "fluoride"), ("oxidiser", "flammable"), ("metal-powder", "acid")]
    {
        assert_eq!(reference().apart(one, other), Apart::Cupboards, "{one} and {other}");
        assert_eq!(reference().apart(other, one), Apart::Cupboards, "{other} and {one}");
    }
    assert_eq!(reference().apart("oil", "ordinary"), Apart::Together);
}

#[test]
fn what_is_flammable_or_under_pressure_is_stored_so() {
    for fluid in reference().fluids.values() {
        let has = |code: &str| fluid.hazards.statements.iter().any(|statement| statement == code);
        let stored = fluid.hazards.storage.as_str();
        if has("H222") || has("H229") {
            assert_eq!(stored, "aerosol", "{}", fluid.key);
            assert!(fluid.traits.contains(&Trait::Aerosol), "{}", fluid.key);
        } else if has("H224") || has("H225") || has("H226") {
            assert_eq!(stored, "flammable", "{}", fluid.key);
        }
        if fluid.traits.contains(&Trait::Acid) {
            assert!(["acid", "toxic"].contains(&stored), "{} with {stored}", fluid.key);
        }
        if fluid.traits.contains(&Trait::Caustic) {
            assert_eq!(stored, "base", "{}", fluid.key);
        }
    }
}

#[test]
fn steam_joints_get_no_tape_and_no_anaerobic() {
    for row in reference().sealings.iter().filter(|row| row.medium == "steam") {
        assert_eq!(row.ranked, ["graphite-paste"]);
    }
    for refused in ["boiler", "oxygen", "fuel-gas"] {
        assert!(reference().refusals.contains_key(refused), "{refused}");
    }
}

#[test]
fn sliding_and_measuring_faces_get_oil_and_never_wax() {
    let (key, rule) = reference().finish_rules.first().expect("there are rules");
    assert_eq!(key, "sliding-or-measuring-face");
    assert!(rule.never.iter().any(|class| class == "paste-wax"));
}

#[test]
fn larger_packs_cost_more_and_less_for_each_litre() {
    for fluid in reference().fluids.values() {
        let in_litres = |amount: units::Amount| amount.in_volume(fluid.density.value).map(|volume| volume.value);
        for two in fluid.packs.windows(2) {
            let (Some(small), Some(large)) = (in_litres(two[0].size), in_litres(two[1].size)) else { continue };
            assert!(small < large && two[0].price < two[1].price, "{}: packs are out of order", fluid.key);
            assert!(two[0].price / small >= two[1].price / large, "{}: the larger pack is dearer for its content", fluid.key);
        }
    }
}

#[test]
fn the_first_climate_is_the_default_and_currencies_are_real_codes() {
    assert_eq!(reference().climates.keys().next().map(String::as_str), Some("mild-maritime"));
    assert!(reference().currencies.keys().all(|code| code.len() == 3 && code.bytes().all(|b| b.is_ascii_uppercase())));
    assert_eq!(reference().currency("USD").map(|row| row.units_per_usd), Some(1.0));
}
