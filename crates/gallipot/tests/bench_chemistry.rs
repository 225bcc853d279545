//! The sheets of coats, baths, quenches and solutions through the binary: nonsense is refused with a reason, and what is printed fits
//! the schema kept in `docs/`.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use assert_cmd::Command;
use serde_json::Value;

fn bench(sheet: &str, options: &[&str]) -> std::process::Output {
    Command::new(env!("CARGO_BIN_EXE_gallipot")).arg("bench").arg(sheet).args(options).output().unwrap()
}

/// Ways of asking each sheet that have an answer.
const SHEETS: [(&str, &[&str]); 17] = [
    ("coating", &[]),
    ("coating", &["--face", "nut", "--finish", "phosphate-concentrate", "--tolerance", "5 thou"]),
    ("coverage", &["--area", "2 ft2", "--part", "wet-part"]),
    ("coverage", &["--shape", "plate", "--mass", "2 lb", "--edge", "1 m", "--texture", "knurled", "--pieces", "12"]),
    ("bath", &[]),
    ("bath", &["--tank", "round", "--shape", "cylinder", "--material", "brass", "--work", "other", "--fluid", "alkaline-degreaser"]),
    ("quench", &[]),
    ("quench", &["--steel", "water-hardening", "--mass", "1 lb", "--hot", "1450 °F", "--have", "3 gal(US)"]),
    ("quench", &["--steel", "silver-steel", "--liquid", "oil", "--flash", "200 °C"]),
    ("pickle", &[]),
    ("pickle", &["--acid", "sulfuric", "--strength", "8 %", "--oxide", "red", "--metals", "bronze"]),
    ("neutralise", &[]),
    ("neutralise", &["--acid", "citric", "--pure", "4 oz"]),
    ("dilute", &["--parts", "40"]),
    ("dilute", &["--what", "salt", "--fluid", "quench-salt", "--mass", "5 kg"]),
    ("dilute", &["--what", "sulfuric", "--from", "96 %", "--share", "25 %", "--water", "5 °C"]),
    ("dilute", &["--what", "caustic", "--share", "5 %"]),
];

/// Fifteen ways of writing nonsense into each sheet.
const NONSENSE: [(&str, [&[&str]; 15]); 7] = [
    (
        "coating",
        [
            &["--face", "ear"],
            &["--face", "shaft,bore"],
            &["--finish", "chrome"],
            &["--thickness", "-5 um"],
            &["--thickness", "5"],
            &["--thickness", "5 kg"],
            &["--tolerance", "0 mm"],
            &["--tolerance", "H7"],
            &["--tolerance", "1 km"],
            &["--fluid", "soft-wax"],
            &["--fluid", "rust-oil", "--viscosity", "22 mm2/s"],
            &["--viscosity", "0 mm2/s"],
            &["--temperature", "900 °C"],
            &["--upright", "-1 m"],
            &["--after", "0 day"],
        ],
    ),
    (
        "coverage",
        [
            &["--part", "spaceship"],
            &["--area", "-1 m2"],
            &["--area", "100"],
            &["--area", "1e9 m2"],
            &["--shape", "cone"],
            &["--length", "0 mm"],
            &["--shape", "tube", "--bore", "60 mm"],
            &["--shape", "plate"],
            &["--shape", "plate", "--mass", "1 kg", "--thickness", "0 mm"],
            &["--material", "phlogiston"],
            &["--pieces", "2.5"],
            &["--pieces", "0"],
            &["--coats", "1000"],
            &["--dry", "25 um"],
            &["--dry", "25 um", "--solids", "0 %"],
        ],
    ),
    (
        "bath",
        [
            &["--work", "cook"],
            &["--tank", "barrel"],
            &["--tank-length", "0 mm"],
            &["--tank-width", "50 mm"],
            &["--tank", "round", "--tank-diameter", "60 mm"],
            &["--rim", "100 mm"],
            &["--shape", "plate", "--mass", "1 kg"],
            &["--length", "1 m"],
            &["--mass", "900 kg", "--stands", "60 mm"],
            &["--material", "mild-steel,brass"],
            &["--stands", "0 mm"],
            &["--film", "-1 um"],
            &["--fluid", "hot-alkaline-black"],
            &["--share", "150 %"],
            &["--room", "1 kg"],
        ],
    ),
    (
        "quench",
        [
            &["--steel", "cheese"],
            &["--liquid", "beer"],
            &["--mass", "0 kg"],
            &["--mass", "heavy"],
            &["--hot", "200 °C"],
            &["--hot", "3000 °C"],
            &["--hot", "850"],
            &["--start", "200 °C"],
            &["--rise", "0 K"],
            &["--mass", "1 kg", "--have", "1 L"],
            &["--flash", "40 °C"],
            &["--fluid", "acetone"],
            &["--liquid", "water", "--start", "60 °C"],
            &["--liquid", "brine", "--fluid", "quench-oil"],
            &["--vessel", "0 mm"],
        ],
    ),
    (
        "pickle",
        [
            &["--acid", "nitric"],
            &["--acid", "hydrochloric"],
            &["--volume", "0 L"],
            &["--volume", "1 kg"],
            &["--strength", "50 %"],
            &["--strength", "0 %"],
            &["--acid", "sulfuric", "--stock", "5 %"],
            &["--acid", "sulfuric", "--water", "60 °C"],
            &["--metals", "mild-steel"],
            &["--metals", "copper, stainless"],
            &["--metals", "aluminium"],
            &["--metals", "nylon"],
            &["--area", "-2 cm2"],
            &["--scale", "0 um"],
            &["--oxide", "green"],
        ],
    ),
    (
        "neutralise",
        [
            &["--acid", "vinegar"],
            &["--acid", ""],
            &["--acid", "citric,sulfuric"],
            &["--volume", "0 L"],
            &["--volume", "1"],
            &["--volume", "a bucket"],
            &["--strength", "0 %"],
            &["--strength", "50 %"],
            &["--strength", "120 %"],
            &["--pure", "-1 g"],
            &["--pure", "100 mL"],
            &["--pure", "9 kg"],
            &["--room", "90 °C"],
            &["--room", "-30 °C"],
            &["--room", "warm"],
        ],
    ),
    (
        "dilute",
        [
            &[],
            &["--what", "gravy"],
            &["--parts", "0"],
            &["--parts", "-10"],
            &["--parts", "0.5"],
            &["--parts", "10", "--share", "10 %"],
            &["--share", "0 %"],
            &["--share", "100 %"],
            &["--share", "10"],
            &["--fluid", "mineral-spirits"],
            &["--fluid", "hydrochloric-acid", "--share", "10 %"],
            &["--what", "salt", "--parts", "10"],
            &["--what", "sulfuric", "--from", "96 %", "--share", "37 %"],
            &["--what", "sulfuric", "--share", "50 %"],
            &["--what", "caustic", "--share", "50 %"],
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
    for (sheet, options) in SHEETS {
        let output = bench(sheet, &[options, &["--json"]].concat());
        assert_eq!(output.status.code(), Some(0), "{sheet} {options:?}: {}", String::from_utf8_lossy(&output.stderr));
        let printed: Value = serde_json::from_slice(&output.stdout).unwrap();
        let faults: Vec<String> = validator.iter_errors(&printed).map(|fault| fault.to_string()).collect();
        assert!(faults.is_empty(), "{sheet}: {faults:?}");
        assert!(!printed["cautions"].as_array().unwrap().is_empty(), "{sheet}");
    }
}

#[test]
fn every_sheet_prints_a_page_in_each_system_of_units() {
    for (sheet, options) in SHEETS {
        for units in ["metric", "inch", "both"] {
            let output = bench(sheet, &[options, &["--units", units]].concat());
            assert_eq!(output.status.code(), Some(0), "{sheet} {units}: {}", String::from_utf8_lossy(&output.stderr));
            let page = String::from_utf8(output.stdout).unwrap();
            assert!(!page.contains("NaN") && !page.contains("inf "), "{sheet} {units}: {page}");
        }
    }
}
