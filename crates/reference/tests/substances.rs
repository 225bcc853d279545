//! Every row of the libraries' tables of vapours and limits, against the substances' data.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

use std::collections::{HashMap, HashSet};
use std::path::Path;

use reference::substance::{Concentration, LimitKind, Regime, is_cas};
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
