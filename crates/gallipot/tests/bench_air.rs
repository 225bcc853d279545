//! The sheets of air, fire, label and shelf through the binary: nonsense is refused with a reason, and what is printed fits the schema kept in `docs/`.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use assert_cmd::Command;
use serde_json::Value;

fn bench(sheet: &str, options: &[&str]) -> std::process::Output {
    Command::new(env!("CARGO_BIN_EXE_gallipot")).arg("bench").arg(sheet).args(options).output().unwrap()
}

/// A sheet with the options it needs to run, and whether it draws.
const SHEETS: [(&str, &[&str], bool); 10] = [
    ("sweating", &[], true),
    ("sweating", &["--weather", concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/weather/pvgis_tmy_45N_8E.csv")], true),
    ("air", &["--fluid", "acetone"], true),
    ("air", &["--contents", "toluene", "--way", "tray", "--time", "2 h"], true),
    ("flammability", &["--contents", "n-hexane 5 %, n-decane 95 %"], false),
    ("label", &["--fluid", "battery-acid", "--diluted", "30 %"], true),
    ("label", &["--contents", "67-64-1 50 %, isopropanol 50 %"], true),
    ("together", &["--fluids", "battery-acid,alkaline-degreaser,acetone"], true),
    ("mist", &["--at-once", "1 mL"], false),
    ("ppm", &["--ppm", "250"], false),
];

/// Fifteen ways of writing nonsense into each sheet.
const NONSENSE: [(&str, [&[&str]; 15]); 7] = [
    (
        "sweating",
        [
            &["--air", "15"],
            &["--air", "900 °C"],
            &["--air", "hot"],
            &["--humidity", "140 %"],
            &["--humidity", "-5 %"],
            &["--metal", "5 kg"],
            &["--wall", "0 mm"],
            &["--weather", "/no/such/file"],
            &["--weather", "Cargo.toml"],
            &["--climate", "atlantis"],
            &["--volume", "0 m3"],
            &["--air-changes", "-5 /h"],
            &["--envelope", "0"],
            &["--mass", "-3 kg"],
            &["--face", "rusty"],
        ],
    ),
    (
        "air",
        [
            &[],
            &["--fluid", "nectar"],
            &["--fluid", "acetone", "--contents", "toluene"],
            &["--contents", "unobtainium 50 %"],
            &["--contents", "acetone 80 %, toluene 80 %"],
            &["--contents", "acetone 0 %"],
            &["--contents", "acetone much %"],
            &["--fluid", "acetone", "--amount", "0 mL"],
            &["--fluid", "acetone", "--amount", "5"],
            &["--fluid", "acetone", "--area", "-1 m2"],
            &["--fluid", "acetone", "--time", "0 s"],
            &["--fluid", "acetone", "--volume", "1e9 m3"],
            &["--fluid", "acetone", "--air-changes", "NaN"],
            &["--fluid", "acetone", "--temperature", "900 °C"],
            &["--fluid", "acetone", "--way", "drunk"],
        ],
    ),
    (
        "flammability",
        [
            &[],
            &["--fluid", "nectar"],
            &["--fluid", "acetone,isopropanol"],
            &["--fluid", "acetone", "--contents", "toluene"],
            &["--contents", ""],
            &["--contents", ","],
            &["--contents", "acetone 150 %"],
            &["--contents", "phlogiston"],
            &["--fluid", "acetone", "--temperature", "20"],
            &["--fluid", "acetone", "--temperature", "-300 °C"],
            &["--fluid", "acetone", "--pressure", "0 kPa"],
            &["--fluid", "acetone", "--pressure", "wet"],
            &["--fluid", "acetone", "--measured", "5 kg"],
            &["--fluid", "acetone", "--cupboard", "0 L"],
            &["--fluid", "acetone", "--volume", "-40 m3"],
        ],
    ),
    (
        "label",
        [
            &[],
            &["--fluid", "nectar"],
            &["--fluid", "acetone", "--contents", "toluene"],
            &["--contents", "acetone 60 %, toluene 60 %"],
            &["--contents", "acetone -5 %"],
            &["--contents", "magic 5 %"],
            &["--fluid", "acetone", "--diluted", "0 %"],
            &["--fluid", "acetone", "--diluted", "140 %"],
            &["--fluid", "acetone", "--diluted", "half"],
            &["--fluid", "acetone", "--ph", "15"],
            &["--fluid", "acetone", "--ph", "-1"],
            &["--fluid", "acetone", "--ph", "sour"],
            &["--fluid", "acetone", "--width", "0 mm"],
            &["--fluid", "acetone", "--width", "9 m"],
            &["--fluid", "acetone", "--height", "tall"],
        ],
    ),
    (
        "together",
        [
            &[],
            &["--fluids", ""],
            &["--fluids", "acetone"],
            &["--fluids", "acetone,acetone"],
            &["--fluids", "acetone,nectar"],
            &["--fluids", ",,"],
            &["--fluids", "acetone;toluene"],
            &["--fluids", "acetone,battery-acid", "--each", "0 L"],
            &["--fluids", "acetone,battery-acid", "--each", "-1 L"],
            &["--fluids", "acetone,battery-acid", "--each", "1"],
            &["--fluids", "acetone,battery-acid", "--each", "1 kg"],
            &["--fluids", "acetone,battery-acid", "--each", "1e9 m3"],
            &["--fluids", "acetone,battery-acid", "--each", "much"],
            &["--fluids", "acetone,battery-acid", "--each", "NaN L"],
            &["--units", "cubits"],
        ],
    ),
    (
        "mist",
        [
            &["--oil", "48"],
            &["--oil", "-5 mL/day"],
            &["--oil", "1e9 L/s"],
            &["--oil", "much"],
            &["--way", "poured"],
            &["--way", ""],
            &["--at-once", "-1 mL"],
            &["--at-once", "1 kg"],
            &["--at-once", "1"],
            &["--density", "0 g/mL"],
            &["--density", "heavy"],
            &["--volume", "0 m3"],
            &["--volume", "40"],
            &["--air-changes", "0 /h"],
            &["--air-changes", "often"],
        ],
    ),
    (
        "ppm",
        [
            &[],
            &["--ppm", "0"],
            &["--ppm", "-5"],
            &["--ppm", "2000000"],
            &["--ppm", "NaN"],
            &["--ppm", "many"],
            &["--ppm", "5", "--mass", "5 mg/m3"],
            &["--mass", "5"],
            &["--mass", "-5 mg/m3"],
            &["--mass", "5 kg"],
            &["--ppm", "5", "--substance", "phlogiston"],
            &["--ppm", "5", "--substance", ""],
            &["--ppm", "5", "--substance", "67-64-2"],
            &["--ppm", "5", "--temperature", "20"],
            &["--ppm", "5", "--pressure", "0 Pa"],
        ],
    ),
];

#[test]
fn nonsense_is_refused_with_a_reason_and_nothing_is_printed() {
    for (sheet, inputs) in NONSENSE {
        for options in inputs {
            let output = bench(sheet, options);
            let said = String::from_utf8_lossy(&output.stderr);
            assert_eq!(output.status.code(), Some(2), "{sheet} {options:?}: {}{said}", String::from_utf8_lossy(&output.stdout));
            assert!(output.stdout.is_empty(), "{sheet} {options:?}");
            assert!(said.trim().len() > 20 && !said.contains("panicked"), "{sheet} {options:?}: {said}");
        }
    }
}

#[test]
fn every_sheet_prints_what_the_schema_says() {
    let path = format!("{}/../../docs/bench.schema.json", env!("CARGO_MANIFEST_DIR"));
    let schema: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    for (sheet, options, _) in SHEETS {
        let output = bench(sheet, &[options, &["--json"]].concat());
        assert_eq!(output.status.code(), Some(0), "{sheet}: {}", String::from_utf8_lossy(&output.stderr));
        let printed: Value = serde_json::from_slice(&output.stdout).unwrap();
        let faults: Vec<String> = validator.iter_errors(&printed).map(|fault| fault.to_string()).collect();
        assert!(faults.is_empty(), "{sheet}: {faults:?}");
        assert!(!printed["cautions"].as_array().unwrap().is_empty(), "{sheet}");
    }
}

#[test]
fn every_sheet_prints_a_page_in_each_system_of_units_and_draws_where_it_can() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("picture.svg");
    let path = path.to_str().unwrap();
    for (sheet, options, draws) in SHEETS {
        for units in ["metric", "inch", "both"] {
            let output = bench(sheet, &[options, &["--units", units]].concat());
            assert_eq!(output.status.code(), Some(0), "{sheet} {units}: {}", String::from_utf8_lossy(&output.stderr));
            let page = String::from_utf8(output.stdout).unwrap();
            assert!(!page.contains("NaN") && !page.contains("inf "), "{sheet} {units}: {page}");
        }
        let output = bench(sheet, &[options, &["--picture", path]].concat());
        assert_eq!(output.status.code(), Some(if draws { 0 } else { 2 }), "{sheet}");
        if draws {
            assert!(std::fs::read_to_string(path).unwrap().trim_end().ends_with("</svg>"), "{sheet}");
        }
    }
}
