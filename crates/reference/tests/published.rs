//! Values of the data against what is published outside this project.

use formulas::viscosity_index::viscosity_index;
use formulas::working::Silent;
use reference::{Fluid, Form, Reference, SourceKey, Standing};
use units::{KinematicViscosity, MassDensity, Pressure, Quantity, Temperature, parse};

fn fluid(key: &str) -> &'static Fluid {
    Reference::embedded().fluid(key).expect("there is such a fluid")
}

fn square_mm(viscosity: KinematicViscosity) -> f64 {
    viscosity.base() * 1e6
}

fn celsius(temperature: Temperature) -> f64 {
    temperature.base() - 273.15
}

/// ISO 3448:1992 (from memory): a grade is its midpoint at 40 °C, ±10 %.
const ISO_VG: [(f64, &str); 12] = [
    (4.6, "5"),
    (10.0, "10"),
    (15.0, "15"),
    (22.0, "22"),
    (32.0, "32"),
    (46.0, "46"),
    (68.0, "68"),
    (100.0, "100"),
    (150.0, "150"),
    (220.0, "220"),
    (460.0, "460"),
    (680.0, "680"),
];

#[test]
fn oils_named_by_an_iso_grade_lie_in_its_band() {
    let mut checked = 0;
    for fluid in Reference::embedded().fluids.values().filter(|fluid| fluid.form == Form::Oil) {
        let Some((_, grade)) = fluid.name.split_once("ISO VG ") else { continue };
        let Some((midpoint, _)) = ISO_VG.iter().find(|(_, name)| *name == grade) else { continue };
        let nu = square_mm(fluid.oil.as_ref().expect("an oil has its viscosity").viscosity_40);
        assert!((nu / midpoint - 1.0).abs() <= 0.1, "{}: {nu} is not ISO VG {grade}", fluid.key);
        assert!(fluid.key.ends_with(&format!("-{grade}")), "{} is called by another grade", fluid.key);
        checked += 1;
    }
    assert!(checked >= 20, "only {checked} oils have a grade");
}

#[test]
fn automotive_oils_lie_in_their_sae_class() {
    // SAE J300 (engine) and SAE J306, February 2019 (gear): limits at 100 °C in mm²/s.
    for (key, low, high) in [("engine-30", 9.3, 12.5), ("gl4-75w80", 8.5, 11.0), ("gl5-80w90", 13.5, 18.5)] {
        let nu = square_mm(fluid(key).oil.as_ref().and_then(|oil| oil.viscosity_100).expect("it is given at 100 °C"));
        assert!((low..high).contains(&nu), "{key}: {nu}");
    }
}

#[test]
fn indices_agree_with_the_two_viscosities() {
    // ASTM D2270. The stated ν₁₀₀ were worked out from the stated index, so this guards the rounding and the copying and says
    // nothing about real oils. Three figures of ν₁₀₀ leave the index two points free, three where ν₁₀₀ is below 3.
    for fluid in Reference::embedded().fluids.values() {
        let Some(oil) = &fluid.oil else { continue };
        let (Some(hot), Some(stated)) = (oil.viscosity_100, oil.index) else { continue };
        let computed = viscosity_index(&mut Silent, oil.viscosity_40, hot).unwrap_or_else(|error| panic!("{}: {error}", fluid.key));
        let tolerance = if square_mm(hot) < 3.0 { 3.0 } else { 2.0 };
        assert!((computed - stated).abs() <= tolerance, "{}: {computed} for {stated}", fluid.key);
    }
}

#[test]
fn greases_have_the_consistency_of_their_name() {
    // NLGI numbers, ASTM D217.
    for fluid in Reference::embedded().fluids.values() {
        let Some(grease) = &fluid.grease else { continue };
        let number = match fluid.name.split_once("NLGI ").map(|(_, number)| number) {
            Some("00") => -1,
            Some(other) => other.parse().unwrap_or_else(|_| panic!("{} has no plain NLGI number", fluid.key)),
            None => panic!("{} does not say its NLGI number", fluid.key),
        };
        assert_eq!(grease.consistency, number, "{}", fluid.key);
    }
}

#[test]
fn flash_points_of_pure_solvents_are_those_of_the_pocket_guide() {
    // NIOSH Pocket Guide to Chemical Hazards, °F (from memory); of a range, the low end.
    for (key, fahrenheit) in [("acetone", 0.0), ("isopropanol", 53.0), ("kerosene", 100.0), ("mineral-spirits", 102.0)] {
        let flash = fluid(key).flash.unwrap_or_else(|| panic!("{key} has a flash point"));
        let published: f64 = (fahrenheit - 32.0) / 1.8;
        assert!((celsius(flash.value) - published).abs() < 0.6, "{key}: {} for {published}", celsius(flash.value));
        assert_eq!(flash.source, SourceKey::new("niosh-pocket-guide"), "{key}");
    }
}

#[test]
fn vapour_pressures_of_pure_solvents_are_those_of_the_correlations() {
    // Medians at 20 °C of the correlations in the open-source library `thermo` 0.6.1 (Antoine, Wagner, DIPPR), with its own spread.
    for (key, kilopascal, tolerance) in [("acetone", 24.7115, 0.03), ("isopropanol", 4.22847, 0.054)] {
        let vapour = fluid(key).vapour_pressure.unwrap_or_else(|| panic!("{key} has a vapour pressure"));
        assert!((vapour.value.base() / (kilopascal * 1e3) - 1.0).abs() <= tolerance, "{key}: {:?}", vapour.value);
    }
}

#[test]
fn densities_are_those_of_the_tables() {
    // CRC Handbook of Chemistry and Physics, 20 °C (hot water at 60 °C), g/mL, from memory. Salts: the crystal.
    for (key, table) in [
        ("acetone", 0.790),
        ("isopropanol", 0.785),
        ("cold-water", 0.998),
        ("hot-water", 0.983),
        ("pickle-citric", 1.665),
        ("bicarbonate", 2.20),
        ("quench-salt", 2.165),
        ("anti-scale", 1.435),
        ("ptfe-powder", 2.2),
    ] {
        let density: MassDensity = fluid(key).density.value;
        assert!((density.base() / (table * 1e3) - 1.0).abs() < 0.02, "{key}: {density:?}");
    }
}

#[test]
fn harmonised_substances_carry_their_hazard_statements() {
    // Regulation (EC) No 1272/2008, Annex VI (from memory).
    for (key, statements) in [
        ("acetone", ["H225", "H319", "H336"].as_slice()),
        ("isopropanol", &["H225", "H319", "H336"]),
        ("pickle-bisulfate", &["H318"]),
        ("battery-acid", &["H314"]),
    ] {
        for statement in statements {
            assert!(fluid(key).hazards.statements.iter().any(|has| has == statement), "{key} lacks {statement}");
        }
    }
}

#[test]
fn flash_points_and_hazard_statements_agree() {
    // UN GHS chapter 2.6: below 23 °C H224 or H225, 23 to 60 °C H226 (liquids; aerosols have H222 or H223 instead).
    for fluid in Reference::embedded().fluids.values() {
        let Some(flash) = fluid.flash.map(|flash| celsius(flash.value)) else { continue };
        let has = |code: &str| fluid.hazards.statements.iter().any(|statement| statement == code);
        if has("H222") || has("H223") || !matches!(fluid.form, Form::Liquid | Form::Oil) {
            continue;
        }
        assert_eq!(has("H224") || has("H225"), flash < 23.0, "{} at {flash} °C", fluid.key);
        assert_eq!(has("H226"), (23.0..=60.0).contains(&flash), "{} at {flash} °C", fluid.key);
    }
}

#[test]
fn bush_ratings_are_those_of_the_handbook() {
    // R. L. Mott, Machine Elements in Mechanical Design, Table 16-1, in psi·ft/min (from memory).
    let reference = Reference::embedded();
    let psi: Pressure = parse("1 psi").expect("it is a pressure");
    let foot_per_minute = 0.3048 / 60.0;
    for (key, rating) in [
        ("manganese-bronze", 150_000.0),
        ("aluminium-bronze", 125_000.0),
        ("leaded-tin-bronze", 75_000.0),
        ("oil-porous-bronze", 50_000.0),
        ("tin-babbitt", 30_000.0),
        ("nylon", 3_000.0),
    ] {
        let metric = rating * psi.base() * 1e-6 * foot_per_minute;
        let ours = reference.bearing_material(key).unwrap_or_else(|| panic!("there is no {key}")).pv_mpa_m_per_s;
        assert!((ours / metric - 1.0).abs() < 0.01, "{key}: {ours} for {metric}");
    }
}

#[test]
fn unit_powers_are_those_of_the_handbook() {
    // Machinery's Handbook, table of power constants, hp/(in³/min): the inch column beside the metric one (from memory).
    // 1 hp/(in³/min) = 745.7 W × 60 s / 16 387 mm³.
    let metric = |inch: f64| inch * 745.7 * 60.0 / 16_387.064;
    let reference = Reference::embedded();
    // `None` where our middle value is only the middle of the two ends.
    for (material, inch) in [
        ("mild-steel", [Some(0.63), Some(0.69), Some(0.82)]),
        ("free-cutting-steel", [Some(0.41), None, Some(0.50)]),
        ("alloy-steel", [Some(0.69), Some(0.84), Some(1.00)]),
    ] {
        let ours = reference.cutting_powers[material].joules_per_mm3;
        for (value, inch) in ours.iter().zip(inch).filter_map(|(value, inch)| Some((value, inch?))) {
            assert!((value / metric(inch) - 1.0).abs() < 0.01, "{material}: {value} for {}", metric(inch));
        }
    }
}

#[test]
fn weights_fall_down_their_tables() {
    // A judgement, not physics: consequence 8, 4, 2, 1 and frequency 1, 0.7, 0.4, 0.2.
    let reference = Reference::embedded();
    let consequences: Vec<_> = reference.consequences.values().map(|row| row.weight).collect();
    assert_eq!(consequences, [8.0, 4.0, 2.0, 1.0]);
    let frequencies: Vec<_> = reference.frequencies.values().map(|row| row.weight).collect();
    assert_eq!(frequencies, [1.0, 0.7, 0.4, 0.2]);
    assert!(reference.frequencies.values().all(|row| row.times_a_year.is_some()));
}

#[test]
fn the_bibliography_has_an_entry_for_every_formula() {
    for source in formulas::sources::ALL {
        assert!(Reference::embedded().sources.contains_key(source.0), "no entry for {source}");
    }
}

#[test]
fn no_typical_value_is_passed_off_as_published() {
    let reference = Reference::embedded();
    for (key, standing) in [("typical-from-memory", Standing::FromMemory), ("common-practice", Standing::CommonPractice)] {
        assert_eq!(reference.sources[key].standing, standing);
    }
    for source in reference.sources.values().filter(|source| source.title.contains("from memory")) {
        assert_ne!(source.standing, Standing::Published, "{}", source.key);
    }
}
