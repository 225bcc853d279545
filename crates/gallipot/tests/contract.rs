//! The JSON contract: what `--json` prints fits the schema kept in `docs/`, and the schema kept is the one the program prints.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use assert_cmd::Command;
use serde_json::Value;

const SHOPS: [&str; 4] = ["first-lathe", "alder-lock", "attic-clocks", "school-room"];

fn root(path: &str) -> String {
    format!("{}/../../{path}", env!("CARGO_MANIFEST_DIR"))
}

fn run(arguments: &[&str]) -> Vec<u8> {
    let output = Command::new(env!("CARGO_BIN_EXE_gallipot")).args(arguments).output().unwrap();
    assert!(output.status.success(), "{arguments:?}: {}", String::from_utf8_lossy(&output.stderr));
    output.stdout
}

fn json(arguments: &[&str]) -> Value {
    serde_json::from_slice(&run(arguments)).unwrap()
}

fn kept(answer: &str) -> Value {
    let text = std::fs::read_to_string(root(&format!("docs/{answer}.schema.json"))).unwrap();
    serde_json::from_str(&text).unwrap()
}

#[test]
fn the_schemas_kept_are_the_ones_printed() {
    for answer in ["plan", "check", "why", "bench", "sheets"] {
        assert!(json(&["schema", answer]) == kept(answer), "write docs/{answer}.schema.json anew: gallipot schema {answer}");
    }
}

#[test]
fn every_example_prints_what_the_schema_says() {
    for shop in SHOPS {
        let path = root(&format!("examples/{shop}.toml"));
        for (answer, arguments) in [("plan", vec!["plan", &path, "--json", "--budget", "60"]), ("check", vec!["check", &path, "--json"])] {
            let validator = jsonschema::validator_for(&kept(answer)).unwrap();
            let printed = json(&arguments);
            let faults: Vec<String> = validator.iter_errors(&printed).map(|fault| fault.to_string()).collect();
            assert!(faults.is_empty(), "{shop}: {faults:?}");
        }
    }
}

#[test]
fn why_prints_what_the_schema_says() {
    let path = root("examples/first-lathe.toml");
    let validator = jsonschema::validator_for(&kept("why")).unwrap();
    let printed = json(&["why", &path, "bed ways", "slideway-68", "lithium-2", "--json"]);
    assert!(validator.is_valid(&printed));
    assert_eq!(printed["verdicts"].as_array().unwrap().len(), 2);
}

#[test]
fn the_plan_has_the_documented_shape() {
    let plan = json(&["plan", &root("examples/alder-lock.toml"), "--json"]);
    for key in ["shop", "assumptions", "needs", "ladder", "chart", "work", "unserved", "cautions"] {
        assert!(plan.get(key).is_some(), "{key} is missing");
    }
    let rung = &plan["ladder"][0];
    for key in ["rung", "fluid", "name", "pack", "gain", "total", "best_possible", "right", "will_do", "needs", "holds_in"] {
        assert!(rung.get(key).is_some(), "ladder: {key} is missing");
    }
    for key in ["size", "price", "currency"] {
        assert!(rung["pack"].get(key).is_some(), "pack: {key} is missing");
    }
    let row = &plan["chart"][0];
    for key in ["machine", "point", "fluid", "name", "dose", "how", "every", "grade", "reason"] {
        assert!(row.get(key).is_some(), "chart: {key} is missing");
    }
    let step = &plan["work"][0]["steps"][0];
    for key in ["step", "fluid", "name", "grade", "reason"] {
        assert!(step.get(key).is_some(), "work: {key} is missing");
    }
    let assumption = &plan["assumptions"][0];
    for key in ["where", "what", "value", "source"] {
        assert!(assumption.get(key).is_some(), "assumptions: {key} is missing");
    }
}

#[test]
fn the_same_shop_gives_the_same_plan() {
    let path = root("examples/alder-lock.toml");
    assert_eq!(run(&["plan", &path, "--json"]), run(&["plan", &path, "--json"]));
}

#[test]
fn no_colour_where_it_is_unwelcome_and_nothing_wider_than_asked() {
    for width in ["80", "120"] {
        let output = Command::new(env!("CARGO_BIN_EXE_gallipot"))
            .args(["plan", &root("examples/alder-lock.toml")])
            .env("NO_COLOR", "1")
            .env("COLUMNS", width)
            .output()
            .unwrap();
        let text = String::from_utf8(output.stdout).unwrap();
        assert!(!text.contains('\u{1b}'));
        let widest = text.lines().map(|line| line.chars().count()).max().unwrap();
        assert!(widest <= width.parse().unwrap(), "{widest} columns");
    }
}

#[test]
fn bad_use_is_exit_code_2_and_help_is_0() {
    for (arguments, code) in [
        (vec!["plan"], 2),
        (vec!["plna"], 2),
        (vec!["plan", "x.toml", "--budget", "nan"], 2),
        (vec!["plan", "x.toml", "--rungs", "0"], 2),
        (vec!["--help"], 0),
        (vec!["plan", "--help"], 0),
        (vec!["man"], 0),
        (vec!["completions", "bash"], 0),
    ] {
        let output = Command::new(env!("CARGO_BIN_EXE_gallipot")).args(&arguments).output().unwrap();
        assert_eq!(output.status.code(), Some(code), "{arguments:?}");
    }
}

#[test]
fn the_readme_shows_what_is_printed() {
    let printed = String::from_utf8(run(&["plan", &root("examples/first-lathe.toml")])).unwrap();
    let readme = std::fs::read_to_string(root("README.md")).unwrap();
    let shown = readme.split("```text\n").nth(1).unwrap().split("```").next().unwrap();
    let mut lines = printed.lines();
    for line in shown.lines().filter(|line| line.trim() != "…") {
        assert!(lines.any(|printed| printed == line), "write README.md anew, from this line on: {line}");
    }
}
