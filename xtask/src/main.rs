//! Runs the project's checks: `cargo xtask test` is the one check there is.
#![expect(clippy::print_stderr, reason = "a developer's tool says what it is doing")]

mod fuzz;
mod measure;
mod pictures;
mod soak;

use std::path::PathBuf;
use std::process::{Command, ExitCode};

/// The version of the tool that finds unused dependencies; installed below `target/` when it is not there.
const MACHETE: &str = "0.9.2";
/// The accessibility engine that looks at every page; fetched from npm below `target/`, never part of the program.
const AXE: &str = "axe-core@4.14.1";

/// What is done, in words, and how.
type Step = (&'static str, Command);

fn main() -> ExitCode {
    let asked: Vec<String> = std::env::args().skip(1).collect();
    match asked.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
        ["test"] => check(),
        ["fuzz", asked @ ..] => fuzz::longer(asked),
        ["measure"] => measure::measure(),
        ["pictures"] => pictures::pictures(),
        ["soak", asked @ ..] => soak::soak(asked),
        _ => {
            eprintln!(
                "usage: cargo xtask test\n\nRuns format, clippy, docs, the search for unused dependencies, and all tests, in a browser and on \
                 random inputs too.\n\nusage: cargo xtask fuzz [TARGET] [SECONDS]\n\nTries random inputs for longer.\n\n\
                 usage: cargo xtask measure\n\nTimes the sums against general-purpose libraries, and how they grow.\n\n\
                 usage: cargo xtask soak [MINUTES]\n\nAsks a served shop for so long, and looks whether its memory stays.\n\n\
                 usage: cargo xtask pictures\n\nDraws the pictures of the README anew."
            );
            ExitCode::from(2)
        }
    }
}

fn check() -> ExitCode {
    let mut steps = vec![
        ("format", cargo(&["fmt", "--all", "--check"])),
        ("format of what is tried on random inputs", cargo(&["fmt", "--manifest-path", "fuzz/Cargo.toml", "--check"])),
        ("clippy", cargo(&["clippy", "--workspace", "--all-targets", "--quiet", "--", "--deny", "warnings"])),
        (
            "clippy on what is tried on random inputs",
            cargo(&["clippy", "--manifest-path", "fuzz/Cargo.toml", "--target-dir", "target", "--quiet", "--", "--deny", "warnings"]),
        ),
        ("docs", with(cargo(&["doc", "--workspace", "--no-deps", "--document-private-items", "--quiet"]), "RUSTDOCFLAGS", "-D warnings")),
    ];
    steps.extend(installed("install the search for unused dependencies", "cargo-machete", MACHETE));
    steps.push(("unused dependencies", Command::new(tool("cargo-machete"))));
    steps.push(("tests", cargo(&["test", "--workspace"])));
    steps.extend(browser());
    steps.push(("tests in a browser", cargo(&["test", "--package", "pages", "--test", "browser", "--", "--ignored"])));
    steps.extend(fuzz::steps());
    run(steps)
}

fn run(steps: Vec<Step>) -> ExitCode {
    for (name, mut command) in steps {
        eprintln!("── {name}");
        match command.status() {
            Ok(status) if status.success() => {}
            Ok(_) => {
                eprintln!("── {name}: failed");
                return ExitCode::FAILURE;
            }
            Err(error) => {
                eprintln!("── {name}: cannot be run: {error}");
                return ExitCode::FAILURE;
            }
        }
    }
    eprintln!("── all good");
    ExitCode::SUCCESS
}

/// What installs Chromium, its driver and the accessibility engine, as far as they are not there.
fn browser() -> Vec<Step> {
    let mut steps = Vec::new();
    if !there("chromium") || !there("chromedriver") {
        steps.extend(packages("install a browser", &["chromium", "chromium-driver"]));
    }
    let npm = tools().join("npm");
    if !npm.join("node_modules/axe-core/axe.min.js").exists() {
        let into = npm.display().to_string();
        let install = ["install", "--prefix", &into, "--no-save", "--no-audit", "--no-fund", "--ignore-scripts", AXE];
        steps.push(("fetch the accessibility engine", command("npm", &install)));
    }
    steps
}

fn there(program: &str) -> bool {
    Command::new(program).arg("--version").output().is_ok()
}

/// What installs packages of the system.
fn packages(what: &'static str, packages: &[&str]) -> [Step; 2] {
    let install = [&["install", "--quiet=2", "--yes", "--no-install-recommends"], packages].concat();
    [
        ("list the packages of the system", command("apt-get", &["update", "--quiet=2"])),
        (what, with(command("apt-get", &install), "DEBIAN_FRONTEND", "noninteractive")),
    ]
}

/// What installs a tool of that version, if it is not there.
fn installed(what: &'static str, name: &str, version: &str) -> Option<Step> {
    let root = tools().display().to_string();
    let install = ["install", "--quiet", "--locked", "--root", &root, "--version", version, name];
    (!tool(name).exists()).then(|| (what, cargo(&install)))
}

fn command(program: &str, arguments: &[&str]) -> Command {
    let mut command = Command::new(program);
    command.args(arguments).current_dir(root());
    command
}

fn cargo(arguments: &[&str]) -> Command {
    command(env!("CARGO"), arguments)
}

fn with(mut command: Command, name: &str, value: &str) -> Command {
    command.env(name, value);
    command
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).parent().map_or_else(PathBuf::new, PathBuf::from)
}

fn tools() -> PathBuf {
    root().join("target").join("tools")
}

fn tool(name: &str) -> PathBuf {
    tools().join("bin").join(name)
}
