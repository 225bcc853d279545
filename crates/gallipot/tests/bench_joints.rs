//! The sheets of joints through the binary: nonsense is refused with a reason, and what is printed fits the schema kept in `docs/`.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use assert_cmd::Command;
use serde_json::Value;

fn bench(sheet: &str, options: &[&str]) -> std::process::Output {
    Command::new(env!("CARGO_BIN_EXE_gallipot")).arg("bench").arg(sheet).args(options).output().unwrap()
}

/// A sheet with the options it needs to run, and whether it draws.
const SHEETS: [(&str, &[&str], bool); 10] = [
    ("fit", &["--measured-hole", "25.01 mm", "--measured-shaft", "24.99 mm"], true),
    ("fit", &["--shaft", "s6", "--length", "30 mm", "--hub-outside", "50 mm", "--torque", "20 N m", "--service", "80 °C"], true),
    (
        "rescue",
        &[
            "--bore",
            "25.013 mm",
            "--shaft",
            "24.96 mm",
            "--length",
            "20 mm",
            "--by",
            "micrometer",
            "--hub",
            "bronze",
            "--shaft-metal",
            "steel",
            "--torque",
            "15 N m",
        ],
        true,
    ),
    ("bond", &["--torque", "5 N m"], true),
    ("bond", &["--joint", "lap", "--force", "200 N"], false),
    ("torque", &["--thread", "1/4 BSW", "--class", "unknown", "--now", "threadlocker", "--engaged", "8 mm"], true),
    ("locking", &["--thread", "3/8-16", "--class", "grade 5"], false),
    ("seal", &["--medium", "steam", "--pressure", "2 bar"], false),
    ("taper", &["--rubbed", "90/80, 85/80, 90/75"], false),
    ("mark", &["--what", "spotting"], false),
];

/// The start of a rescue that would be sound.
macro_rules! rescue {
    ($($more:literal),*) => { &["--torque", "5 N m", $($more),*] };
}

/// Fifteen ways of writing nonsense into each sheet.
const NONSENSE: [(&str, [&[&str]; 15]); 8] = [
    (
        "fit",
        [
            &["--nominal", "0 mm"],
            &["--nominal", "-25 mm"],
            &["--nominal", "25"],
            &["--nominal", "900 mm"],
            &["--nominal", "25 °C"],
            &["--hole", "h7"],
            &["--hole", "Q7"],
            &["--hole", "H"],
            &["--shaft", "H7"],
            &["--shaft", "g99"],
            &["--measured-hole", "25 mm"],
            &["--measured-hole", "25 mm", "--measured-shaft", "12 mm"],
            &["--shaft", "s6", "--length", "0 mm", "--hub-outside", "50 mm"],
            &["--shaft", "s6", "--length", "30 mm", "--hub-outside", "20 mm"],
            &["--shaft", "s6", "--length", "30 mm", "--hub-outside", "50 mm", "--hub-poisson", "1"],
        ],
    ),
    (
        "rescue",
        [
            &[],
            rescue!("--bore", "25 mm"),
            rescue!("--shaft", "25 mm"),
            &["--bore", "25.01 mm", "--shaft", "25 mm"],
            rescue!("--bore", "24 mm", "--shaft", "25 mm"),
            rescue!("--bore", "50 mm", "--shaft", "25 mm"),
            rescue!("--bore", "25.01", "--shaft", "25 mm"),
            rescue!("--bore", "25.01 mm", "--shaft", "25 mm", "--length", "0 mm"),
            rescue!("--bore", "25.01 mm", "--shaft", "25 mm", "--hub", "unobtainium"),
            rescue!("--bore", "25.01 mm", "--shaft", "25 mm", "--hub", "nylon"),
            rescue!("--bore", "25.01 mm", "--shaft", "25 mm", "--service", "900 °C"),
            rescue!("--bore", "25.01 mm", "--shaft", "25 mm", "--hub-outside", "20 mm"),
            rescue!("--bore", "25.01 mm", "--shaft", "25 mm", "--shaft-bore", "25 mm"),
            rescue!("--bore", "25.01 mm", "--shaft", "25 mm", "--by", "eye"),
            rescue!("--bore", "25.01 mm", "--shaft", "25 mm", "--safety", "0.5"),
        ],
    ),
    (
        "bond",
        [
            &["--diameter", "0 mm"],
            &["--length", "0 mm"],
            &["--gap", "-0.1 mm"],
            &["--gap", "0.05"],
            &["--service", "900 °C"],
            &["--room", "-10 °C"],
            &["--room", "90 °C"],
            &["--material", "phlogiston"],
            &["--material", "nylon"],
            &["--other", "mild-steel,bronze"],
            &["--fluid", "slideway-68"],
            &["--safety", "0.2"],
            &["--joint", "butt"],
            &["--joint", "lap", "--material", "polyethylene"],
            &["--joint", "lap", "--overlap", "0 mm"],
        ],
    ),
    (
        "torque",
        [
            &["--thread", "M"],
            &["--thread", "M10x9"],
            &["--thread", "M0"],
            &["--thread", "rope"],
            &["--thread", ""],
            &["--class", "99.9"],
            &["--class", "grade 7"],
            &["--thread", "M20", "--class", "CU2"],
            &["--now", "greasy"],
            &["--torque", "0 N m"],
            &["--torque", "48"],
            &["--torque", "48 kg"],
            &["--share", "150"],
            &["--hole", "30 mm"],
            &["--engaged", "0 mm"],
        ],
    ),
    (
        "locking",
        [
            &["--thread", "M"],
            &["--thread", "M-8"],
            &["--thread", "NaN"],
            &["--class", "13.7"],
            &["--metals", "cheese"],
            &["--metals", ""],
            &["--metals", "mild-steel,brass,aluminium"],
            &["--use", "forever"],
            &["--wetted", "0 mm"],
            &["--wetted", "500 mm"],
            &["--share", "0"],
            &["--share", "120"],
            &["--service", "900 °C"],
            &["--room", "-5 °C"],
            &["--activator", "maybe"],
        ],
    ),
    (
        "seal",
        [
            &["--thread", "R 7/9"],
            &["--thread", "NPT"],
            &["--thread", "hose"],
            &["--thread", ""],
            &["--medium", "lava"],
            &["--medium", "oxygen"],
            &["--medium", "breathing-gas"],
            &["--medium", "fuel-gas"],
            &["--medium", "refrigerant"],
            &["--pressure", "0 bar"],
            &["--pressure", "5"],
            &["--medium", "steam", "--pressure", "900 bar"],
            &["--medium", "steam", "--temperature", "150 °C"],
            &["--temperature", "900 °C"],
            &["--engaged", "900 mm"],
        ],
    ),
    (
        "taper",
        [
            &["--taper", "MT99"],
            &["--taper", "0:20"],
            &["--taper", "1:0"],
            &["--taper", "1:NaN"],
            &["--taper", ""],
            &["--taper", "20:1"],
            &["--friction", "0"],
            &["--friction", "7"],
            &["--friction", "slippery"],
            &["--film", "0 um"],
            &["--length", "0 mm"],
            &["--length", "1 um"],
            &["--rubbed", "90/80"],
            &["--rubbed", "90/80, 85/80, 190/75"],
            &["--rubbed", "blue, blue, blue"],
        ],
    ),
    (
        "mark",
        [
            &["--what", "chalk"],
            &["--what", ""],
            &["--what", "layout,spotting"],
            &["--area", "0 cm2"],
            &["--area", "-5 cm2"],
            &["--area", "100"],
            &["--area", "100 mm"],
            &["--area", "wide"],
            &["--area", "1e9 m2"],
            &["--materials", "cheese"],
            &["--materials", ""],
            &["--what", "spotting", "--film", "1 mm"],
            &["--what", "spotting", "--film", "0 um"],
            &["--what", "spotting", "--film", "2 kg"],
            &["--units", "cubits"],
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
