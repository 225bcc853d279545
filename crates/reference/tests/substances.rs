//! Every row of the libraries' tables of vapours and limits, against the substances' data.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

use std::collections::{HashMap, HashSet};
use std::path::Path;

use reference::hazard::HazardClass;
use reference::substance::{Concentration, LimitKind, Regime, State, is_cas};
use reference::{Reference, Substance};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::thermodynamic_temperature::degree_celsius;

type Row = HashMap<String, String>;

/// Rows that our data do not follow, and why ours is better.
const REASONS: &[(&str, &str)] = &[];

fn rows(file: &str) -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/published").join(file);
    csv::Reader::from_path(path).unwrap().deserialize().map(Result::unwrap).collect()
}

fn number(row: &Row, column: &str) -> Option<f64> {
    row.get(column).filter(|text| !text.is_empty()).map(|text| text.parse().unwrap())
}

/// A limit of the province whose table the libraries carry.
fn ontario(substance: &Substance, kind: LimitKind, unit: &str) -> Option<f64> {
    let limit = substance.limits.iter().find(|limit| limit.regime == Regime::Ontario && limit.kind == kind)?;
    match limit.at {
        Concentration::Ppm(ppm) if unit == "ppm" => Some(ppm),
        Concentration::MgPerM3(mg) if unit == "mg/m3" => Some(mg),
        _ => None,
    }
}

fn found(substance: &Substance, row: &Row) -> Option<f64> {
    let celsius = |at: units::Temperature| at.get::<degree_celsius>();
    match row["quantity"].as_str() {
        "vapour_pressure" => {
            let antoine = substance.antoine.as_ref()?;
            let t = number(row, "t_C")?;
            Some(10_f64.powf(antoine.a - antoine.b / (t + antoine.c)))
        }
        "heat_of_vaporisation" => Some(substance.heat_of_vaporisation_kj_per_mol.as_ref()?.value),
        "normal_boiling_point" => Some(celsius(substance.boiling.as_ref()?.value)),
        "diffusion_coefficient_in_air" => {
            // The data hold it at 25 °C; it grows with the temperature to the power 1.75 (Fuller 1966).
            let kelvin = number(row, "t_C")? + 273.15;
            Some(substance.diffusion_mm2_per_s.as_ref()?.value * 1e-6 * (kelvin / 298.15).powf(1.75))
        }
        "liquid_density" => Some(substance.density.as_ref()?.value.get::<kilogram_per_cubic_meter>()),
        "molar_mass" => Some(substance.molar_mass_g_per_mol.as_ref()?.value),
        "lower_flammable_limit" | "LFL" => Some(substance.lower_flammable.as_ref()?.value),
        "upper_flammable_limit" | "UFL" => Some(substance.upper_flammable.as_ref()?.value),
        "autoignition_temperature" => Some(celsius(substance.autoignition.as_ref()?.value)),
        "flash_point" => Some(celsius(substance.flash.as_ref()?.value)),
        "exposure_limit_TWA" | "TWA" => ontario(substance, LimitKind::Mean8h, &row["unit"]),
        "exposure_limit_STEL" | "STEL" => ontario(substance, LimitKind::Mean15min, &row["unit"]),
        "ceiling" => ontario(substance, LimitKind::Ceiling, &row["unit"]),
        _ => None,
    }
}

fn check(file: &str) {
    let reference = Reference::embedded();
    let mut wrong = Vec::new();
    for row in rows(file) {
        if REASONS.iter().any(|(id, _)| *id == row["id"]) {
            continue;
        }
        let expected = number(&row, "expected").unwrap();
        let allowed = number(&row, "abs_tol").unwrap_or(0.0) + number(&row, "rel_tol").unwrap_or(0.0) * expected.abs();
        let substance = reference.substances.values().find(|substance| substance.cas.as_ref() == Some(&row["cas"]));
        let found = substance.and_then(|substance| found(substance, &row));
        if found.is_none_or(|found| (found - expected).abs() > allowed + 1e-9 * expected.abs()) {
            wrong.push(format!("{} {} {}: {found:?} instead of {expected} ± {allowed}", row["id"], row["substance"], row["quantity"]));
        }
    }
    assert!(wrong.is_empty(), "{} rows are off:\n{}", wrong.len(), wrong.join("\n"));
}

/// `thermo` 0.6.1 and `chemicals` 1.5.2.
#[test]
fn vapour_file() {
    check("vapour.csv");
}

/// `chemicals` 1.5.2: limits of Ontario, flammable limits and flash points of NFPA 497 and IEC 60079-20-1.
#[test]
fn exposure_limits_extra_file() {
    check("exposure_limits_extra.csv");
}

/// The limits of pure substances that the file of mixtures is worked from, IEC 60079-20-1:2010 as `chemicals` 1.5.2 carries it.
#[test]
fn flammable_limits_of_mixtures() {
    let reference = Reference::embedded();
    let mut checked = 0;
    for row in rows("mixture_lfl.csv") {
        for place in 1..=4 {
            let (Some(name), Some(expected)) = (row.get(&format!("name{place}")), number(&row, &format!("limit{place}_vol_pct"))) else {
                continue;
            };
            let key = match name.as_str() {
                "methyl ethyl ketone" => "butanone".to_owned(),
                name => name.replace(' ', "-"),
            };
            let substance = reference.substance(&key).unwrap_or_else(|| panic!("there is no {key}"));
            let limit = if row["limit"] == "LFL" { &substance.lower_flammable } else { &substance.upper_flammable };
            let found = limit.as_ref().unwrap().value * 100.0;
            assert!((found - expected).abs() < 1e-9, "{key} {}: {found} instead of {expected}", row["limit"]);
            checked += 1;
        }
    }
    assert!(checked > 50, "only {checked} limits");
}

/// A liquid boils where its vapour pressure is 101.3 kPa. The boiling points come from other collections than the pressures.
#[test]
fn vapour_pressure_at_the_boiling_point() {
    let mut checked = 0;
    for substance in Reference::embedded().substances.values() {
        let (Some(antoine), Some(boiling)) = (substance.antoine, substance.boiling) else { continue };
        if boiling.value > antoine.to {
            continue;
        }
        let pressure = 10_f64.powf(antoine.a - antoine.b / (boiling.value.get::<degree_celsius>() + antoine.c));
        assert!((pressure / 101.325 - 1.0).abs() < 0.05, "{}: {pressure} kPa", substance.key);
        checked += 1;
    }
    assert!(checked > 10, "only {checked} liquids");
}

/// UN GHS, chapter 2.6: category 1 flashes below 23 °C and boils by 35 °C, 2 below 23 °C, 3 up to 60 °C, 4 up to 93 °C.
#[test]
fn flash_points_and_classes() {
    const CLASSES: [HazardClass; 4] = [HazardClass::FlamLiq1, HazardClass::FlamLiq2, HazardClass::FlamLiq3, HazardClass::FlamLiq4];
    for substance in Reference::embedded().substances.values().filter(|substance| substance.state == State::Liquid) {
        let Some(flash) = substance.flash.map(|flash| flash.value.get::<degree_celsius>()) else { continue };
        let has = |class: HazardClass| substance.hazards.iter().any(|row| row.class == class);
        let (most, least) = match flash {
            ..23.0 => (CLASSES[0], CLASSES[1]),
            23.0..=60.0 => (CLASSES[2], CLASSES[2]),
            60.0..=93.0 => (CLASSES[3], CLASSES[3]),
            _ => continue,
        };
        assert!(has(most) || has(least), "{} flashes at {flash} °C and has {:?}", substance.key, substance.hazards);
        assert_eq!(CLASSES.iter().filter(|class| has(**class)).count(), 1, "{}", substance.key);
    }
}

/// Registry numbers are sound and stand for one substance each.
#[test]
fn registry_numbers() {
    let mut seen = HashSet::new();
    for cas in Reference::embedded().substances.values().filter_map(|substance| substance.cas.as_ref()) {
        assert!(is_cas(cas), "{cas}");
        assert!(seen.insert(cas), "{cas} stands twice");
    }
}

/// Contents are substances there are, and at their low ends make no more than the whole.
#[test]
fn contents_fit() {
    let reference = Reference::embedded();
    for fluid in reference.fluids.values() {
        let least: f64 = fluid.contents.iter().map(|content| content.share.low).sum();
        assert!(least <= 1.0 + 1e-9, "{}: {least}", fluid.key);
        for content in &fluid.contents {
            assert!(reference.substance(&content.substance).is_some(), "{}: {}", fluid.key, content.substance);
        }
    }
}
