//! The bench through the binary: nonsense is refused with a reason, and what is printed for programs fits the schema kept in `docs/`.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use assert_cmd::Command;
use serde_json::Value;

fn bench(sheet: &str, options: &[&str]) -> std::process::Output {
    Command::new(env!("CARGO_BIN_EXE_gallipot")).arg("bench").arg(sheet).args(options).output().unwrap()
}

/// A sheet with the options it needs to run.
const SHEETS: [(&str, &[&str]); 12] = [
    ("viscosity", &["--fluid", "slideway-68,hydraulic-32", "--wanted", "68 mm2/s"]),
    ("blend", &["--thin", "hydraulic-32", "--thick", "hydraulic-68", "--wanted", "VG 46"]),
    ("grades", &["--gear", "90"]),
    ("bearing", &["--fluid", "lithium-2", "--mass", "130 g"]),
    ("bushing", &[]),
    ("gear", &[]),
    ("slideway", &["--height", "300 mm"]),
    ("grease", &["--old", "lithium-2", "--new", "polyurea-2"]),
    ("cylinder", &[]),
    ("coolant", &["--hardness", "0.15 g/L", "--ph", "8.2"]),
    ("cut", &["--operation", "drill"]),
    ("switch", &["--old", "hydraulic-68", "--new", "circulating-68"]),
];

/// Fifteen ways of writing nonsense into each sheet.
const NONSENSE: [(&str, [&[&str]; 15]); 12] = [
    (
        "viscosity",
        [
            &[],
            &["--fluid", "snake-oil"],
            &["--fluid", ""],
            &["--fluid", "lithium-2;gear-220"],
            &["--fluid", "acetone"],
            &["--fluid", "slideway-68", "--temperature", "warm"],
            &["--fluid", "slideway-68", "--temperature", "20"],
            &["--fluid", "slideway-68", "--temperature", "-400 °C"],
            &["--fluid", "slideway-68", "--temperature", "5000 °C"],
            &["--fluid", "slideway-68", "--temperature", "20 mm"],
            &["--at-40", "68 mm2/s"],
            &["--at-40", "8 mm2/s", "--at-100", "68 mm2/s"],
            &["--at-40", "68 mm2/s", "--index", "NaN"],
            &["--at-100", "8 mm2/s"],
            &["--fluid", "slideway-68", "--wanted", "-5 mm2/s"],
        ],
    ),
    (
        "blend",
        [
            &[],
            &["--thin", "hydraulic-32"],
            &["--thin", "hydraulic-68", "--thick", "hydraulic-32", "--wanted", "VG 46"],
            &["--thin", "hydraulic-32", "--thick", "hydraulic-68"],
            &["--thin", "hydraulic-32", "--thick", "hydraulic-68", "--wanted", "VG 220"],
            &["--thin", "hydraulic-32", "--thick", "hydraulic-68", "--wanted", "VG fifty"],
            &["--thin", "hydraulic-32", "--thick", "hydraulic-68", "--wanted", "VG 46", "--share", "50 %"],
            &["--thin", "hydraulic-32", "--thick", "hydraulic-68", "--share", "150 %"],
            &["--thin", "hydraulic-32", "--thick", "hydraulic-68", "--share", "-1 %"],
            &["--thin", "hydraulic-32,hydraulic-46", "--thick", "hydraulic-68", "--share", "50 %"],
            &["--thin", "lithium-2", "--thick", "hydraulic-68", "--share", "50 %"],
            &["--thin", "hydraulic-32", "--thin-at-40", "VG 32", "--thick", "hydraulic-68", "--share", "50 %"],
            &["--thin-at-40", "32", "--thick-at-40", "VG 68", "--share", "50 %"],
            &["--thin-at-40", "VG 32", "--thick-at-40", "VG 68", "--share", "50 %", "--temperature", "20 °C"],
            &["--thin", "hydraulic-32", "--thick", "hydraulic-68", "--share", "50 %", "--volume", "0 L"],
        ],
    ),
    (
        "grades",
        [
            &[],
            &["--viscosity", "68"],
            &["--viscosity", "thick"],
            &["--viscosity", "0 mm2/s"],
            &["--viscosity", "VG sixty-nine"],
            &["--viscosity", "VG 68", "--gear", "90"],
            &["--gear", "90", "--engine", "30"],
            &["--gear", "95"],
            &["--gear", "90,140"],
            &["--engine", "W"],
            &["--gear", "110", "--year", "1990"],
            &["--gear", "90", "--year", "90"],
            &["--gear", "90", "--index", "many"],
            &["--viscosity", "VG 68", "--temperature", "70 °C", "--index", "5000"],
            &["--saybolt", "1 s"],
        ],
    ),
    (
        "bearing",
        [
            &["--bore", "52 mm", "--outside", "25 mm"],
            &["--bore", "0 mm"],
            &["--bore", "-25 mm"],
            &["--bore", "25"],
            &["--bore", "25 kg"],
            &["--outside", "9999999 mm"],
            &["--speed", "0 rpm"],
            &["--speed", "fast"],
            &["--speed", "1e12 rpm"],
            &["--temperature", "900 °C"],
            &["--type", "square"],
            &["--dirt", "clean,dirty"],
            &["--vertical", "perhaps"],
            &["--load", "500 N"],
            &["--fluid", "brake-cleaner"],
        ],
    ),
    (
        "bushing",
        [
            &["--diameter", "0 mm"],
            &["--diameter", "25 rpm"],
            &["--length", "500 mm"],
            &["--length", "-1 in"],
            &["--load", "0 N"],
            &["--load", "heavy"],
            &["--speed", "0 rpm"],
            &["--clearance", "5 mm"],
            &["--clearance", "0 mm"],
            &["--material", "cheese"],
            &["--journal-roughness", "1 m"],
            &["--cooling", "fan"],
            &["--eta", "0 mPa·s"],
            &["--eta", "30 mPa·s", "--fluid", "hydraulic-32"],
            &["--surface", "-1 m2"],
        ],
    ),
    (
        "gear",
        [
            &["--power", "0 W"],
            &["--power", "-1 hp"],
            &["--power", "strong"],
            &["--speed", "0 rpm"],
            &["--pinion", "0 mm"],
            &["--pinion", "50 N"],
            &["--face", "0 mm"],
            &["--ratio", "0"],
            &["--ratio", "0.5"],
            &["--ratio", "1e9"],
            &["--application", "-1"],
            &["--room", "80 °C"],
            &["--kind", "hypoid"],
            &["--pitch-speed", "0 m/s"],
            &["--teeth", "1e9"],
        ],
    ),
    (
        "slideway",
        [
            &["--length", "0 mm"],
            &["--length", "-150 mm"],
            &["--length", "150"],
            &["--width", "wide"],
            &["--width", "1e9 mm"],
            &["--lands", "0"],
            &["--lands", "four"],
            &["--lands", "1000"],
            &["--pressure", "0 MPa"],
            &["--pressure", "1e9 MPa"],
            &["--speed", "-1 m/min"],
            &["--temperature", "1e9 °C"],
            &["--height", "0 mm"],
            &["--height", "300 mm", "--after", "0 h"],
            &["--surface", "wood"],
        ],
    ),
    (
        "grease",
        [
            &["--fitting", "funnel"],
            &["--reach", "far"],
            &["--exposed", "dragons"],
            &["--exposed", "nothing,chips"],
            &["--exposed", ""],
            &["--made-for", "oil,grease"],
            &["--heavy", "very"],
            &["--sliding", "-1 m/s"],
            &["--coldest", "60 °C", "--running", "20 °C"],
            &["--running", "1e9 °C"],
            &["--bore", "25 mm"],
            &["--bore", "52 mm", "--outside", "25 mm", "--speed", "600 rpm"],
            &["--bore", "25 mm", "--outside", "52 mm", "--speed", "600 rpm", "--width", "15 mm"],
            &["--old", "lithium-2"],
            &["--old", "hydraulic-32", "--new", "lithium-2"],
        ],
    ),
    (
        "cylinder",
        [
            &["--pressure", "0 bar"],
            &["--pressure", "-1 bar"],
            &["--pressure", "3"],
            &["--pressure", "3 mm"],
            &["--pressure", "500 bar"],
            &["--superheat", "-5 K"],
            &["--superheat", "390 K"],
            &["--superheat", "hot"],
            &["--bore", "0 mm"],
            &["--bore", "1e9 mm"],
            &["--stroke", "-1 in"],
            &["--stroke", "long"],
            &["--speed", "0 rpm"],
            &["--speed", "1e9 rpm"],
            &["--wet", "damp"],
        ],
    ),
    (
        "coolant",
        [
            &["--reading", "-1"],
            &["--reading", "90"],
            &["--reading", "5 %"],
            &["--factor", "100"],
            &["--factor", "label"],
            &["--wanted", "0 %"],
            &["--wanted", "200 %"],
            &["--full", "10"],
            &["--full", "5 L", "--level", "8 L"],
            &["--level", "10 L"],
            &["--humidity", "150 %"],
            &["--temperature", "-10 °C"],
            &["--surface", "big"],
            &["--ph", "15"],
            &["--work", "knitting"],
        ],
    ),
    (
        "cut",
        [
            &["--material", "wood"],
            &["--material", "brass,bronze"],
            &["--material", ""],
            &["--material", "nbr"],
            &["--operation", "gnaw"],
            &["--operation", "turn,mill"],
            &["--speed", "0 m/min"],
            &["--speed", "25"],
            &["--feed", "0 mm"],
            &["--depth", "-1 mm"],
            &["--wear", "0.1"],
            &["--efficiency", "2"],
            &["--rise", "0 K"],
            &["--room", "0 m3"],
            &["--applied", "bucket"],
        ],
    ),
    (
        "switch",
        [
            &[],
            &["--old", "hydraulic-68"],
            &["--new", "hydraulic-68"],
            &["--old", "", "--new", "hydraulic-68"],
            &["--old", "tar", "--new", "hydraulic-68"],
            &["--old", "hydraulic-68", "--new", "hydralic"],
            &["--old", "hydraulic-68,hydraulic-32", "--new", "gear-220"],
            &["--old", "acetone", "--new", "hydraulic-68"],
            &["--old", "hydraulic-68", "--new", "paste-wax"],
            &["--old", "hydraulic-68", "--new", "dry-graphite"],
            &["--old", "hydraulic-68", "--new", "gear-220", "--touches", "wood"],
            &["--old", "hydraulic-68", "--new", "gear-220", "--touches", ""],
            &["--old", "hydraulic-68", "--new", "gear-220", "--left", "5"],
            &["--old", "hydraulic-68", "--new", "gear-220", "--units", "cubits"],
            &["--old", "hydraulic-68", "--new", "gear-220", "extra"],
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
        assert_eq!(output.status.code(), Some(0), "{sheet}: {}", String::from_utf8_lossy(&output.stderr));
        let printed: Value = serde_json::from_slice(&output.stdout).unwrap();
        let faults: Vec<String> = validator.iter_errors(&printed).map(|fault| fault.to_string()).collect();
        assert!(faults.is_empty(), "{sheet}: {faults:?}");
        assert_eq!(printed["sheet"], sheet);
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

#[test]
fn a_picture_is_written_where_there_is_one_and_refused_where_there_is_none() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("picture.svg");
    let path = path.to_str().unwrap();
    for (sheet, options) in SHEETS {
        let drawn = ["viscosity", "bearing", "bushing", "slideway", "cylinder"].contains(&sheet);
        let output = bench(sheet, &[options, &["--picture", path]].concat());
        assert_eq!(output.status.code(), Some(if drawn { 0 } else { 2 }), "{sheet}");
        assert_eq!(output.stdout.is_empty(), !drawn, "{sheet}");
        if drawn {
            let svg = std::fs::read_to_string(path).unwrap();
            assert!(svg.starts_with("<svg") && svg.trim_end().ends_with("</svg>"), "{sheet}");
        }
    }
}
