//! Runs the project's checks: `cargo xtask test` is the one check there is.
#![expect(clippy::print_stderr, reason = "a developer's tool says what it is doing")]

use std::path::PathBuf;
use std::process::{Command, ExitCode};

/// The version of the tool that finds unused dependencies; installed below `target/` when it is not there.
const MACHETE: &str = "0.9.2";
/// The accessibility engine that looks at every page; fetched from npm below `target/`, never part of the program.
const AXE: &str = "axe-core@4.14.1";

fn main() -> ExitCode {
    let asked: Vec<String> = std::env::args().skip(1).collect();
    match asked.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
        ["test"] => check(),
        _ => {
            eprintln!(
                "usage: cargo xtask test\n\nRuns format, clippy, docs, the search for unused dependencies, and all tests, in a browser too."
            );
            ExitCode::from(2)
        }
    }
}

fn check() -> ExitCode {
    let machete = tools().join("bin").join("cargo-machete");
    let mut steps: Vec<(&str, Command)> = vec![
        ("format", cargo(&["fmt", "--all", "--check"])),
        ("clippy", cargo(&["clippy", "--workspace", "--all-targets", "--quiet", "--", "--deny", "warnings"])),
        ("docs", with(cargo(&["doc", "--workspace", "--no-deps", "--document-private-items", "--quiet"]), "RUSTDOCFLAGS", "-D warnings")),
    ];
    if !machete.exists() {
        let root = tools().display().to_string();
        steps.push((
            "install the search for unused dependencies",
            cargo(&["install", "--quiet", "--locked", "--root", &root, "--version", MACHETE, "cargo-machete"]),
        ));
    }
    steps.push(("unused dependencies", Command::new(machete)));
    steps.push(("tests", cargo(&["test", "--workspace"])));
    steps.extend(browser());
    steps.push(("tests in a browser", cargo(&["test", "--package", "pages", "--test", "browser", "--", "--ignored"])));
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
fn browser() -> Vec<(&'static str, Command)> {
    let mut steps = Vec::new();
    let there = |program: &str| Command::new(program).arg("--version").output().is_ok();
    if !there("chromium") || !there("chromedriver") {
        steps.push(("list the packages of the system", command("apt-get", &["update", "--quiet=2"])));
        let install = ["install", "--quiet=2", "--yes", "--no-install-recommends", "chromium", "chromium-driver"];
        steps.push(("install a browser", with(command("apt-get", &install), "DEBIAN_FRONTEND", "noninteractive")));
    }
    let npm = tools().join("npm");
    if !npm.join("node_modules/axe-core/axe.min.js").exists() {
        let into = npm.display().to_string();
        let install = ["install", "--prefix", &into, "--no-save", "--no-audit", "--no-fund", "--ignore-scripts", AXE];
        steps.push(("fetch the accessibility engine", command("npm", &install)));
    }
    steps
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
