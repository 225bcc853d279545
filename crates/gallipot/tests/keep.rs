//! A shop that is kept: from a shop file and back, what is due and done, the cupboard, backups; as people and programs meet it.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::path::Path;

use assert_cmd::Command;
use planner::needs::kinds;
use reference::Reference;
use serde_json::Value;
use store::{Entry, Moment, Store, What};
use tempfile::TempDir;

/// A folder with Alder Lock kept in it.
struct Home(TempDir);

/// What a run of the program came to.
struct Run {
    code: Option<i32>,
    out: String,
    err: String,
}

fn root(path: &str) -> String {
    format!("{}/../../{path}", env!("CARGO_MANIFEST_DIR"))
}

impl Home {
    fn new() -> Self {
        let home = Self(tempfile::tempdir().unwrap());
        let made = home.run(&["import", &root("examples/alder-lock.toml"), "shop.gallipot"]);
        assert_eq!(made.code, Some(0), "{}", made.err);
        home
    }

    fn run(&self, arguments: &[&str]) -> Run {
        let output = Command::new(env!("CARGO_BIN_EXE_gallipot")).current_dir(self.0.path()).args(arguments).output().unwrap();
        let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
        Run { code: output.status.code(), out: text(output.stdout), err: text(output.stderr) }
    }

    /// What it prints when all goes well.
    fn print(&self, arguments: &[&str]) -> String {
        let run = self.run(arguments);
        assert_eq!((run.code, run.err.as_str()), (Some(0), ""), "{arguments:?}");
        run.out
    }

    /// What it says when it refuses.
    fn refused(&self, arguments: &[&str]) -> String {
        let run = self.run(arguments);
        assert_eq!((run.code, run.out.as_str()), (Some(2), ""), "{arguments:?}");
        run.err
    }

    fn json(&self, arguments: &[&str]) -> Value {
        serde_json::from_str(&self.print(arguments)).unwrap()
    }

    /// How a point stands on a day.
    fn point(&self, machine: &str, point: &str, day: &str) -> Value {
        let round = self.json(&["round", "shop.gallipot", "--json", "--day", day]);
        let rows = round["points"].as_array().unwrap();
        rows.iter().find(|row| row["machine"] == machine && row["point"] == point).unwrap().clone()
    }

    fn path(&self, name: &str) -> std::path::PathBuf {
        self.0.path().join(name)
    }
}

fn schema(home: &Home, answer: &str) -> Value {
    let kept = std::fs::read_to_string(root(&format!("docs/{answer}.schema.json"))).unwrap();
    let kept: Value = serde_json::from_str(&kept).unwrap();
    assert!(home.json(&["schema", answer]) == kept, "write docs/{answer}.schema.json anew: gallipot schema {answer}");
    kept
}

#[test]
fn a_point_is_ticked_and_due_again() {
    let home = Home::new();
    let never = home.point("lathe", "bed ways", "2026-06-01");
    assert_eq!((&never["standing"], &never["last_done"]), (&"due".into(), &Value::Null));
    home.print(&["log", "shop.gallipot", "applied", "--point", "lathe/bed ways", "--day", "2026-06-01"]);
    // Oil every 2 hours at 5 hours a week: 2.8 days (by hand).
    for (day, standing) in [("2026-06-01", "soon"), ("2026-06-04", "due"), ("2026-06-06", "overdue")] {
        assert_eq!(home.point("lathe", "bed ways", day)["standing"], standing, "{day}");
    }
    let text = home.print(&["round", "shop.gallipot", "--day", "2026-06-06"]);
    assert!(text.contains("Saturday, 2026-06-06") && text.contains("Overdue (1)") && text.contains("2 days ago"), "{text}");
    home.print(&["log", "shop.gallipot", "undo", "1"]);
    assert_eq!(home.point("lathe", "bed ways", "2026-06-06")["last_done"], Value::Null);
    let log = home.print(&["log", "shop.gallipot"]);
    assert!(log.contains("undone by 2") && log.contains("lathe/bed ways"), "{log}");
}

#[test]
fn a_meter_is_read() {
    let home = Home::new();
    home.print(&["log", "shop.gallipot", "applied", "--point", "mill/gear head", "--hours", "100 h", "--day", "2026-03-01"]);
    home.print(&["log", "shop.gallipot", "meter", "--machine", "mill", "--hours", "601 h", "--day", "2026-06-01"]);
    // The maker says 500 hours: 501 have run (by hand).
    let row = home.point("mill", "gear head", "2026-06-01");
    assert_eq!((row["hours_since"].as_f64(), row["hours_by"].as_str()), (Some(501.0), Some("meter")));
    assert!(["due", "overdue"].contains(&row["standing"].as_str().unwrap()));
    let refused = home.refused(&["log", "shop.gallipot", "meter", "--machine", "mill", "--hours", "20 h"]);
    assert!(refused.contains("601") && refused.contains("--new-meter"), "{refused}");
    home.print(&["log", "shop.gallipot", "meter", "--machine", "mill", "--hours", "20 h", "--new-meter"]);
}

#[test]
fn a_pot_is_bought_used_and_counted() {
    let home = Home::new();
    std::fs::write(home.path("more.csv"), "fluid,left,size,keeps_until\nslideway-68,1 L,1 L,2029-12-31\n").unwrap();
    home.print(&["cupboard", "shop.gallipot", "--import", "more.csv"]);
    home.print(&["log", "shop.gallipot", "applied", "--point", "bed ways", "--amount", "40 mL", "--day", "2026-06-01"]);
    let left = |home: &Home| {
        let cupboard = home.json(&["cupboard", "shop.gallipot", "--json", "--day", "2026-06-01"]);
        cupboard["pots"].as_array().unwrap().iter().find(|pot| pot["fluid"] == "slideway-68").unwrap()["left"].clone()
    };
    // The only pot of the chart's fluid gives it: 1 L less 40 mL.
    assert_eq!(left(&home), "960 mL");
    home.print(&["log", "shop.gallipot", "counted", "--pot", "slideway-68", "--amount", "0 mL", "--day", "2026-06-02"]);
    assert_eq!(left(&home), "0 mL");
    let text = home.print(&["cupboard", "shop.gallipot", "--day", "2026-06-02"]);
    assert!(text.contains("empty") && text.contains("Buy again") && text.contains("slideway oil"), "{text}");
    let csv = home.print(&["cupboard", "shop.gallipot", "--csv"]);
    assert!(csv.starts_with("fluid,name,left,") && csv.contains("slideway-68"), "{csv}");
}

#[test]
fn some_of_a_pot_is_filled_into_another() {
    let home = Home::new();
    std::fs::write(home.path("more.csv"), "fluid,name,left\nslideway-68,can,5 L\nslideway-68,oiler,0 mL\nacetone,tin,1 L\n").unwrap();
    home.print(&["cupboard", "shop.gallipot", "--import", "more.csv"]);
    home.print(&["log", "shop.gallipot", "decanted", "--from", "can", "--into", "oiler", "--amount", "250 mL"]);
    let cupboard = home.json(&["cupboard", "shop.gallipot", "--json"]);
    let left = |name: &str| cupboard["pots"].as_array().unwrap().iter().find(|pot| pot["name"] == name).unwrap()["left"].clone();
    // 5 L less 250 mL.
    assert_eq!((left("can"), left("oiler")), ("4.75 L".into(), "250 mL".into()));
    for (into, says) in [("tin", "what is mixed is neither"), ("can", "name two pots")] {
        let said = home.refused(&["log", "shop.gallipot", "decanted", "--from", "can", "--into", into, "--amount", "1 mL"]);
        assert!(said.contains(says), "{said}");
    }
}

#[test]
fn a_dose_nobody_measured_is_told_from_one_that_was() {
    let home = Home::new();
    let applied = ["log", "shop.gallipot", "applied", "--point", "bed ways"];
    let supposed = home.print(&applied);
    assert!(supposed.contains("supposed by the chart"), "{supposed}");
    let measured = home.print(&[&applied[..], &["--amount", "4 mL", "--day", "2026-06-01"]].concat());
    assert!(measured.contains("4 mL") && !measured.contains("supposed"), "{measured}");
    let log = home.json(&["log", "shop.gallipot", "--json"]);
    assert_eq!((&log["entries"][0]["amount_supposed"], &log["entries"][1]["amount_supposed"]), (&true.into(), &false.into()));
}

#[test]
fn the_round_speaks_of_drops() {
    let home = Home::new();
    let text = home.print(&["round", "shop.gallipot"]);
    assert!(text.contains(" drops ") && text.contains("a smear"), "{text}");
}

#[test]
fn a_machine_may_have_any_name() {
    let home = Home::new();
    let names = ["..", "a/b", "a", "what?", "#1", "it's", "say \"so\"", "back\\slash", "Lathe", "lathe", "100 %", "übung"];
    let machine = |name: &&str| format!("[[machine]]\nname = {}\ntemplate = \"bench lathe\"\n", Value::from(*name));
    std::fs::write(home.path("names.toml"), names.iter().map(machine).collect::<String>()).unwrap();
    home.print(&["import", "names.toml", "names.gallipot"]);
    for name in names {
        let point = format!("{name}/bed ways");
        home.print(&["log", "names.gallipot", "applied", "--point", &point, "--day", "2026-06-01"]);
        let log = home.json(&["log", "names.gallipot", "--json"]);
        assert_eq!(log["entries"][0]["place"], *point, "{log}");
        let meter = home.print(&["log", "names.gallipot", "meter", "--machine", name, "--hours", "3 h", "--day", "2026-06-01"]);
        assert!(meter.contains(&format!(", {name},")), "{meter}");
    }
    let round = home.json(&["round", "names.gallipot", "--json", "--day", "2026-06-01"]);
    let done = round["points"].as_array().unwrap().iter().filter(|row| row["last_done"] == "2026-06-01");
    assert_eq!(done.count(), names.len());
    home.print(&["log", "names.gallipot", "applied", "--machine", "a", "--point", "bed ways", "--day", "2026-06-02"]);
}

#[test]
fn bad_rows_are_all_reported_and_nothing_is_taken_in() {
    let home = Home::new();
    let before = home.print(&["export", "shop.gallipot"]);
    std::fs::write(home.path("bad.csv"), "fluid,left\nslideway-86,1 L\npenetrating,many\n").unwrap();
    let said = home.refused(&["cupboard", "shop.gallipot", "--import", "bad.csv"]);
    assert!(said.contains("line 2, fluid") && said.contains("slideway-68") && said.contains("line 3, left"), "{said}");
    assert_eq!(home.print(&["export", "shop.gallipot"]), before);
}

#[test]
fn either_file_will_do_whatever_its_name() {
    let home = Home::new();
    let example = root("examples/alder-lock.toml");
    std::fs::rename(home.path("shop.gallipot"), home.path("shop.toml")).unwrap();
    assert_eq!(home.print(&["export", "shop.toml"]), std::fs::read_to_string(&example).unwrap());
    for arguments in [vec!["plan"], vec!["why"], vec!["check"]] {
        let of = |shop: &str| {
            let mut all = arguments.clone();
            all.extend([shop, "--json"]);
            all.extend((arguments[0] == "why").then_some("lathe bed ways"));
            home.json(&all)
        };
        assert_eq!(of("shop.toml"), of(&example), "{arguments:?}");
    }
}

#[test]
fn a_backup_is_made_and_put_back() {
    let home = Home::new();
    let path = home.print(&["backup", "shop.gallipot"]);
    assert!(Path::new(&home.path(path.trim())).is_file(), "{path}");
    home.print(&["log", "shop.gallipot", "applied", "--point", "bed ways"]);
    home.print(&["restore", "shop.gallipot", path.trim()]);
    assert_eq!(home.point("lathe", "bed ways", "2026-06-01")["last_done"], Value::Null);
    assert_eq!(home.print(&["backup", "shop.gallipot", "--list"]).lines().count(), 2);
}

#[test]
fn what_cannot_be_done_is_refused_with_the_way_out() {
    let home = Home::new();
    let example = root("examples/alder-lock.toml");
    home.print(&["log", "shop.gallipot", "applied", "--point", "bed ways", "--day", "2026-06-05"]);
    for (arguments, says) in [
        (vec!["round", "shop.gallipot", "--day", "2026-06-04"], "2026-06-05"),
        (vec!["log", &example, "applied", "--point", "bed ways"], "gallipot import"),
        (vec!["log", "shop.gallipot", "applied", "--point", "bed wyas"], "Did you mean"),
        (vec!["log", "shop.gallipot", "applied", "--point", "quill"], "several points"),
        (vec!["log", "shop.gallipot", "applied", "--point", "bed ways", "--amount", "3"], "no unit"),
        (vec!["log", "shop.gallipot", "applied", "--point", "bed ways", "--day", "9999-01-01"], "still to come"),
        (vec!["log", "shop.gallipot", "opened", "--pot", "acetone"], "no pot"),
        (vec!["log", "shop.gallipot", "undo", "99"], "no entry 99"),
        (vec!["backup", "nowhere.gallipot"], "nowhere.gallipot"),
        (vec!["restore", "shop.gallipot", &example], "not a shop"),
    ] {
        let said = home.refused(&arguments);
        assert!(said.contains(says), "{arguments:?}: {said}");
    }
    assert!(!home.path("nowhere.gallipot").exists());
}

#[test]
fn a_clock_that_went_back_is_refused() {
    let home = Home::new();
    let later = jiff::civil::date(2999, 1, 1).at(12, 0, 0, 0).to_zoned_datetime(jiff::tz::TimeZone::UTC).unwrap();
    let mut store = Store::open(&home.path("shop.gallipot"), Moment::from(&later)).unwrap();
    let described = store.shop(Reference::embedded(), kinds()).unwrap();
    let lathe = described.section(&described.shop.machines[0].at).unwrap();
    let point = store.point(lathe, "bed ways").unwrap();
    store.write(&Entry::new(Moment::from(&later), What::Applied { point, pot: None, amount: None })).unwrap();
    for arguments in [vec!["round", "shop.gallipot"], vec!["log", "shop.gallipot", "applied", "--point", "bed ways"]] {
        let said = home.refused(&arguments);
        assert!(said.contains("2999-01-01") && said.contains("clock"), "{said}");
    }
}

#[test]
fn the_json_is_what_the_schemas_say() {
    let home = Home::new();
    home.print(&["log", "shop.gallipot", "applied", "--point", "bed ways", "--hours", "12 h", "--who", "me", "--note", "dry"]);
    let backup = home.print(&["backup", "shop.gallipot"]);
    let toml = root("examples/alder-lock.toml");
    for arguments in [
        vec!["round", "shop.gallipot"],
        vec!["cupboard", "shop.gallipot"],
        vec!["log", "shop.gallipot"],
        vec!["import", &toml, "shop.gallipot"],
        vec!["backup", "shop.gallipot"],
        vec!["backup", "shop.gallipot", "--list"],
        vec!["restore", "shop.gallipot", backup.trim()],
    ] {
        let answer = arguments[0];
        let validator = jsonschema::validator_for(&schema(&home, answer)).unwrap();
        let printed = home.json(&[&arguments[..], &["--json"]].concat());
        let faults: Vec<String> = validator.iter_errors(&printed).map(|fault| fault.to_string()).collect();
        assert!(faults.is_empty(), "{answer}: {faults:?}");
    }
}

#[test]
fn a_shop_file_has_a_round_without_a_log() {
    let home = Home::new();
    let run = home.run(&["round", &root("examples/alder-lock.toml")]);
    assert_eq!(run.code, Some(0));
    assert!(run.out.contains("now, never done") && run.err.contains("keeps no log"), "{} {}", run.out, run.err);
}
