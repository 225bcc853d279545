//! Broken shop files: exit code 2, the line, what is wrong and the way out on standard error, nothing on standard output, no panic.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use assert_cmd::Command;

/// One broken file: its name, its text, and what the answer must say.
struct Broken(&'static str, &'static str, &'static [&'static str]);

const LATHE: &str = "[[machine]]\ntemplate = \"bench lathe\"\n";

const BROKEN: &[Broken] = &[
    Broken("missing unit", "[[machine]]\ntemplate = \"bench lathe\"\nswing = 180\n", &[":3:", "`180` has no unit", "mm"]),
    Broken("wrong unit", "[[machine]]\ntemplate = \"bench lathe\"\nswing = \"180 kg\"\n", &[":3:", "a mass", "a length"]),
    Broken("unknown unit", "[room]\nvolume = \"30 m33\"\n[[machine]]\ntemplate = \"bench lathe\"\n", &[":2:", "m33", "m³"]),
    Broken("ambiguous unit", "[room]\nvolume = \"3000 gal\"\n[[machine]]\ntemplate = \"bench lathe\"\n", &[":2:", "gal(US)", "gal(imp)"]),
    Broken(
        "weather that is not there",
        "[room]\nweather = \"no-such-year.csv\"\n[[machine]]\ntemplate = \"bench lathe\"\n",
        &[":2:", "no-such-year.csv", "PVGIS"],
    ),
    Broken(
        "weather that is none",
        "[room]\nweather = \"shop.toml\"\n[[machine]]\ntemplate = \"bench lathe\"\n",
        &[":2:", "shop.toml", "EnergyPlus"],
    ),
    Broken("decimal comma", "[room]\nvolume = \"30,5 m3\"\n[[machine]]\ntemplate = \"bench lathe\"\n", &[":2:", "comma", "point"]),
    Broken("unknown template", "[[machine]]\ntemplate = \"bench lahte\"\n", &[":2:", "bench lahte", "Did you mean `bench lathe`?"]),
    Broken(
        "unknown key",
        "[[machine]]\ntemplate = \"bench lathe\"\nswimg = \"180 mm\"\n",
        &[":3:", "`swimg` is not known here", "`swing`"],
    ),
    Broken("unknown table", "[rooom]\nvolume = \"30 m3\"\n[[machine]]\ntemplate = \"bench lathe\"\n", &[":1:", "rooom", "`room`"]),
    Broken(
        "negative speed",
        "[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\nkind = \"rolling bearing\"\nspeed = \"-600 rpm\"\n",
        &[":6:", "-600 rpm"],
    ),
    Broken("zero size", "[[machine]]\ntemplate = \"bench lathe\"\nswing = \"0 mm\"\n", &[":3:", "zero"]),
    Broken("nan as a quantity", "[[machine]]\ntemplate = \"bench lathe\"\nswing = nan\n", &[":3:", "nan"]),
    Broken("nan in text", "[[machine]]\ntemplate = \"bench lathe\"\nswing = \"nan mm\"\n", &[":3:", "swing"]),
    Broken(
        "infinite count",
        "[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\nkind = \"lock\"\ncount = inf\n",
        &[":6:", "count"],
    ),
    Broken(
        "two machines of one name",
        "[[machine]]\ntemplate = \"bench lathe\"\n[[machine]]\ntemplate = \"bench lathe\"\n",
        &["two machines are called `bench lathe`", "name"],
    ),
    Broken(
        "two points of one name",
        "[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\nkind = \"lock\"\n[[machine.point]]\nname = \"p\"\nkind = \"lock\"\n",
        &[":7:", "two points", "`p`"],
    ),
    Broken(
        "contradictory sizes",
        "[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\nkind = \"rolling bearing\"\nbore = \"60 mm\"\noutside = \"50 mm\"\n",
        &[":6:", "bore", "outside"],
    ),
    Broken(
        "sealed and yet fed",
        "[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\nkind = \"rolling bearing\"\nfitting = \"sealed\"\nmaker = { use = [\"hydraulic-oil\"] }\n",
        &["sealed for life", "fitting"],
    ),
    Broken(
        "coldest above hottest",
        "[room]\ncoldest = \"30 degC\"\nhottest = \"20 degC\"\n[[machine]]\ntemplate = \"bench lathe\"\n",
        &["coldest", "hottest"],
    ),
    Broken("below absolute zero", "[room]\ncoldest = \"-300 degC\"\n[[machine]]\ntemplate = \"bench lathe\"\n", &[":2:", "-300"]),
    Broken("empty file", "", &["neither a machine nor any work", "[[machine]]"]),
    Broken("only a comment", "# nothing yet\n", &["neither a machine nor any work"]),
    Broken("a table where a list belongs", "[machine]\ntemplate = \"bench lathe\"\n", &[":1:", "list of tables", "[[machine]]"]),
    Broken("text where a table belongs", "room = \"big\"\n[[machine]]\ntemplate = \"bench lathe\"\n", &[":1:", "must be a table"]),
    Broken("not TOML", "[[machine]\ntemplate = \"bench lathe\"\n", &[":1:", "TOML"]),
    Broken("unclosed text", "[[machine]]\ntemplate = \"bench lathe\n", &[":2:"]),
    Broken("a key twice", "[[machine]]\ntemplate = \"bench lathe\"\ntemplate = \"bench mill\"\n", &[":3:", "duplicate"]),
    Broken("unknown kind", "[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\nkind = \"ledscrew\"\n", &[":5:", "`leadscrew`"]),
    Broken("a point without a kind", "[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\n", &["no kind"]),
    Broken("a machine without anything", "[[machine]]\nname = \"m\"\n", &["neither a template nor points", "template"]),
    Broken("unknown job", "[[work]]\njob = \"cutt\"\n", &[":2:", "`cut`"]),
    Broken("unknown material", "[[work]]\njob = \"cut\"\nmaterials = [\"mild-steel\", \"bras\"]\n", &[":3:", "`brass`"]),
    Broken(
        "unknown fluid in the cupboard",
        "[[pot]]\nfluid = \"slideway-86\"\n[[machine]]\ntemplate = \"bench lathe\"\n",
        &[":2:", "`slideway-68`"],
    ),
    Broken(
        "unknown exposure",
        "[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\nkind = \"lock\"\nexposure = [\"chip\"]\n",
        &[":6:", "`chips`"],
    ),
    Broken("unknown currency", "currency = \"XXX\"\n[[machine]]\ntemplate = \"bench lathe\"\n", &[":1:", "XXX"]),
    Broken("more hours than a week has", "hours = \"400 h/week\"\n[[machine]]\ntemplate = \"bench lathe\"\n", &[":1:", "400 h/week"]),
    Broken(
        "a maker who says nothing",
        "[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\nkind = \"lock\"\nmaker = { page = \"3\" }\n",
        &["says nothing"],
    ),
];

fn plan() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_gallipot"));
    command.env("NO_COLOR", "1").env("COLUMNS", "100");
    command
}

fn refused(name: &str, bytes: &[u8], says: &[&str]) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("shop.toml");
    std::fs::write(&path, bytes).unwrap();
    let before: Vec<_> = std::fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().path()).collect();
    let output = plan().args(["plan", path.to_str().unwrap()]).output().unwrap();
    let stderr = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2), "{name}: {stderr}");
    assert!(output.stdout.is_empty(), "{name}: something stands on standard output");
    assert!(!stderr.contains("panicked"), "{name}: {stderr}");
    for word in says {
        assert!(stderr.contains(word), "{name}: `{word}` is missing from\n{stderr}");
    }
    let after: Vec<_> = std::fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().path()).collect();
    assert_eq!(before, after, "{name}: something was written");
    assert_eq!(std::fs::read(&path).unwrap(), bytes, "{name}: the file was changed");
}

#[test]
fn every_broken_file_is_refused_with_the_way_out() {
    assert!(BROKEN.len() >= 25);
    for Broken(name, text, says) in BROKEN {
        refused(name, text.as_bytes(), says);
    }
}

#[test]
fn a_binary_file_is_refused() {
    let bytes: Vec<u8> = (0..4096_u32).map(|n| u8::try_from(n * 7 % 256).unwrap()).collect();
    refused("binary", &bytes, &["not text", "UTF-8"]);
}

#[test]
fn a_file_of_ten_megabytes_is_refused() {
    let mut text = LATHE.to_owned();
    text.push_str(&"# a long story\n".repeat(700_000));
    assert!(text.len() > 10 << 20);
    refused("10 MB", text.as_bytes(), &["10 MiB", "4 MiB"]);
}

#[test]
fn a_missing_file_is_refused() {
    let output = plan().args(["plan", "no-such-file.toml"]).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty());
    assert!(String::from_utf8(output.stderr).unwrap().contains("no-such-file.toml"));
}

#[test]
fn all_problems_are_shown_at_once() {
    let text = "[room]\nvolume = 30\nheating = \"stove\"\n[[machine]]\ntemplate = \"bench lahte\"\n";
    refused("three at once", text.as_bytes(), &["volume", "stove", "lahte", "3 problems"]);
}

#[test]
fn check_says_no_with_exit_code_1() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("shop.toml");
    std::fs::write(&path, "[[machine]]\ntemplate = \"bench lahte\"\n").unwrap();
    let output = plan().args(["check", path.to_str().unwrap(), "--json"]).output().unwrap();
    assert_eq!(output.status.code(), Some(1));
    let answer: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(answer["sound"], false);
    assert_eq!(answer["problems"][0]["line"], 2);
    assert_eq!(answer["problems"][0]["column"], 12);
}
