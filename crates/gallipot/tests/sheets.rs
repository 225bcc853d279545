//! The sheets as files, as whoever has no pages open meets them.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::path::Path;

use assert_cmd::Command;
use store::{SectionId, Store};

/// What a run came to: its exit code, what it printed, what it said beside that.
fn run(folder: &Path, arguments: &[&str]) -> (Option<i32>, String, String) {
    let output = Command::new(env!("CARGO_BIN_EXE_gallipot")).current_dir(folder).args(arguments).output().unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    (output.status.code(), text(output.stdout), text(output.stderr))
}

fn example(name: &str) -> String {
    format!("{}/../../examples/{name}", env!("CARGO_MANIFEST_DIR"))
}

#[test]
fn a_shop_file_becomes_a_folder_of_sheets() {
    let folder = tempfile::tempdir().unwrap();
    let (code, out, err) = run(folder.path(), &["sheets", &example("alder-lock.toml"), "-o", "paper"]);
    assert_eq!((code, err.as_str()), (Some(0), ""));
    let names: Vec<&str> = out.lines().map(|line| line.rsplit(['/', '\\']).next().unwrap()).collect();
    assert_eq!(names, ["chart.html", "buying.html", "round.html", "cautions.html", "labels.html"]);
    for name in names {
        let html = std::fs::read_to_string(folder.path().join("paper").join(name)).unwrap();
        assert!(html.contains("size: A4") && !html.contains("<link") && !html.contains("href="), "{name}");
    }
    let (code, out, _) =
        run(folder.path(), &["sheets", &example("first-lathe.toml"), "-o", "inch", "--size", "letter", "--only", "chart,round"]);
    assert_eq!((code, out.lines().count()), (Some(0), 2));
    assert!(std::fs::read_to_string(folder.path().join("inch/chart.html")).unwrap().contains("size: letter"));
}

#[test]
fn a_kept_shop_gives_its_labels_codes_and_its_log_a_month() {
    let folder = tempfile::tempdir().unwrap();
    let shop = "shop.gallipot";
    assert_eq!(run(folder.path(), &["import", &example("alder-lock.toml"), shop]).0, Some(0));
    let read = |name: &str| std::fs::read_to_string(folder.path().join("paper").join(name)).unwrap();
    let labels = ["sheets", shop, "-o", "paper", "--only", "labels"];
    assert_eq!(run(folder.path(), &labels).0, Some(0));
    assert!(!read("labels.html").contains("class=\"code\""), "nobody said where the pages are");
    assert_eq!(run(folder.path(), &[&labels[..], &["--address", "https://garage.example"]].concat()).0, Some(0));
    assert_eq!(read("labels.html").matches("class=\"code\"").count(), 1, "the example has one pot");
    let told: serde_json::Value = serde_json::from_str(&run(folder.path(), &[&labels[..], &["--json"]].concat()).1).unwrap();
    let [pot] = told["sheets"][0]["pots"].as_array().unwrap().as_slice() else { unreachable!("one pot, one number") };
    let row = Store::open_read_only(&folder.path().join(shop)).unwrap().section(SectionId(pot.as_i64().unwrap())).unwrap();
    assert_eq!(row.kind, "pot");
    let gears = ["log", shop, "applied", "--point", "lathe/headstock speed-change gears"];
    assert!(sheet_has(folder.path(), "headstock speed-change gears"));
    assert_eq!(run(folder.path(), &gears).0, Some(0));
    assert!(!sheet_has(folder.path(), "headstock speed-change gears"), "what was done is not due within the month");
}

fn sheet_has(folder: &Path, point: &str) -> bool {
    assert_eq!(run(folder, &["sheets", "shop.gallipot", "-o", "paper", "--only", "round"]).0, Some(0));
    std::fs::read_to_string(folder.join("paper/round.html")).unwrap().contains(point)
}

#[test]
fn what_cannot_be_drawn_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let shop = example("first-lathe.toml");
    for (more, said) in [
        (["--size", "a5"], "give a4 or letter"),
        (["--only", "poster"], "chart, buying, round, cautions, labels"),
        (["--address", "garage"], "is not an address of pages"),
        (["--labels", "10 x 10 mm, 2 x 2"], "has no room"),
        (["--decanted", "snake oil"], "it is no fluid"),
    ] {
        let (code, out, err) = run(folder.path(), &[&["sheets", &shop, "-o", "paper"], &more[..]].concat());
        assert_eq!((code, out.as_str()), (Some(2), ""), "{more:?}");
        assert!(err.contains(said), "{err}");
    }
    let (code, out, err) = run(folder.path(), &["sheets", &shop, "-o", "paper", "--only", "labels"]);
    assert_eq!((code, out.as_str()), (Some(0), ""));
    assert!(err.contains("there are no labels"), "{err}");
}

#[test]
fn programs_are_told_what_was_written() {
    let folder = tempfile::tempdir().unwrap();
    let (code, out, err) =
        run(folder.path(), &["sheets", &example("alder-lock.toml"), "-o", "paper", "--only", "chart,cautions", "--json"]);
    assert_eq!((code, err.as_str()), (Some(0), ""));
    let told: serde_json::Value = serde_json::from_str(&out).unwrap();
    let schema = std::fs::read_to_string(format!("{}/../../docs/sheets.schema.json", env!("CARGO_MANIFEST_DIR"))).unwrap();
    assert!(jsonschema::is_valid(&serde_json::from_str(&schema).unwrap(), &told), "{told}");
    let each = |key: &str| told["sheets"].as_array().unwrap().iter().map(|row| row[key].as_str().unwrap().to_owned()).collect::<Vec<_>>();
    assert_eq!(
        (each("sheet"), each("title")),
        (vec!["chart".into(), "cautions".into()], vec!["Lubrication charts".into(), "What to mind".into()])
    );
    assert!(told["sheets"].as_array().unwrap().iter().all(|row| folder.path().join(row["file"].as_str().unwrap()).exists()));
}

#[test]
fn a_calculation_is_a_sheet_for_a_folder() {
    let folder = tempfile::tempdir().unwrap();
    let asked = ["bench", "viscosity", "--fluid", "slideway-68", "--temperature", "5 degC", "--paper", "viscosity.html"];
    let (code, out, err) = run(folder.path(), &asked);
    assert_eq!((code, err.as_str()), (Some(0), ""));
    let html = std::fs::read_to_string(folder.path().join("viscosity.html")).unwrap();
    assert!(out.contains("688 mm²/s") && html.contains("688 mm²/s") && html.contains("<math") && html.contains("<svg"));
    assert!(html.contains("size: A4") && !html.contains("<link") && !html.contains("href="));
    assert_eq!(run(folder.path(), &[&asked[..], &["--size", "letter"]].concat()).0, Some(0));
    assert!(std::fs::read_to_string(folder.path().join("viscosity.html")).unwrap().contains("size: letter"));
    let (code, _, err) = run(folder.path(), &[&asked[..6], &["--size", "letter"]].concat());
    assert!(code == Some(2) && err.contains("--paper"), "a size of no paper: {err}");
    assert_eq!(run(folder.path(), &["bench", "fit", "--paper", "no/such/folder.html"]).0, Some(2));
}
