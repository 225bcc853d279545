//! Throws random inputs, guided by what code they reach, at whatever reads what a person or another program wrote.

use std::process::{Command, ExitCode};

use crate::{Step, command, installed, packages, root, run, there, tool};

/// The version of the tool that compiles the targets and runs them.
const CARGO_FUZZ: &str = "0.13.2";
/// A target of `fuzz/targets`.
#[derive(Clone, Copy)]
struct Target {
    name: &'static str,
    /// The longest input worth trying on it, in bytes.
    longest: u32,
    /// So many inputs are tried as a part of the check; some ten seconds.
    runs: u32,
}

const TARGETS: [Target; 6] = [
    Target { name: "quantity", longest: 64, runs: 60_000 },
    Target { name: "shop", longest: 2000, runs: 40_000 },
    Target { name: "plan", longest: 400, runs: 3000 },
    Target { name: "cupboard", longest: 400, runs: 3000 },
    Target { name: "weather", longest: 2000, runs: 20_000 },
    Target { name: "sheet", longest: 250, runs: 3000 },
];
/// Where new inputs go that the check finds worth keeping, until it is run again.
const AWAY: &str = "target/fuzz/away";
/// Where those go that longer runs find.
const FOUND: &str = "target/fuzz/corpus";
/// How long one is tried when nobody says.
const LONG_S: &str = "600";

/// What tries every target for a short time: on the inputs kept with it, and on new ones that are then thrown away.
pub(crate) fn steps() -> Vec<Step> {
    // Also reached when there are none yet.
    let _ = std::fs::remove_dir_all(root().join(AWAY));
    // Without what is said of names and words met on the way, and on so short a run of no use.
    let quietly = ["-verbosity=0", "-print_funcs=0", "-use_cmp=0"];
    let mut steps = prepared();
    steps.extend(TARGETS.map(|target| {
        // The same inputs each time: a change answers for what it broke, and for nothing that chance finds.
        let (always, runs) = (["-seed=1"], format!("-runs={}", target.runs));
        (target.name, tried(target, AWAY, &[quietly.as_slice(), &always, &[&runs]].concat()))
    }));
    steps
}

/// `cargo xtask fuzz [TARGET] [SECONDS]`: tries one target, or one after another, and keeps what was found below `target/fuzz/corpus`.
pub(crate) fn longer(asked: &[&str]) -> ExitCode {
    let (name, seconds) = match asked {
        [] => (None, LONG_S),
        [name] => (Some(*name), LONG_S),
        [name, seconds, ..] => (Some(*name), *seconds),
    };
    let wanted: Vec<_> = TARGETS.into_iter().filter(|target| name.is_none_or(|name| name == target.name)).collect();
    if wanted.is_empty() || seconds.parse::<u32>().is_err() {
        let known = TARGETS.map(|target| target.name).join(", ");
        eprintln!("usage: cargo xtask fuzz [TARGET] [SECONDS]\n\nThe targets are {known}.");
        return ExitCode::from(2);
    }
    // With the work in a process of its own it reports in a line now and then: inputs tried, code reached (cov), inputs kept (corp).
    let time = format!("-max_total_time={seconds}");
    let mut steps = prepared();
    steps.extend(wanted.into_iter().map(|target| (target.name, tried(target, FOUND, &["-fork=1", &time]))));
    run(steps)
}

/// What installs all that is needed, and compiles the targets.
fn prepared() -> Vec<Step> {
    let mut steps = Vec::new();
    if !there("c++") {
        steps.extend(packages("install a compiler for the runner of random inputs", &["g++"]));
    }
    steps.extend(installed("install the runner of random inputs", "cargo-fuzz", CARGO_FUZZ));
    steps.push(("compile what is tried on random inputs", fuzz("build", &[])));
    steps
}

/// Runs a target; what it finds worth keeping goes to a folder of its name in that one.
fn tried(target: Target, into: &str, options: &[&str]) -> Command {
    let name = target.name;
    let into = format!("{into}/{name}");
    // The runner does not make it, and says so if it is not there.
    let _ = std::fs::create_dir_all(root().join(&into));
    let (kept, longest) = (format!("fuzz/corpus/{name}"), format!("-max_len={}", target.longest));
    // Slow is what takes long on a machine that has other work, too.
    let always = [name, &into, &kept, "--", "-timeout=60", "-rss_limit_mb=2048", &longest];
    fuzz("run", &[&always, options].concat())
}

fn fuzz(what: &str, arguments: &[&str]) -> Command {
    // No sanitizer: nothing here is unsafe, and the stable compiler has none.
    let always = [what, "--fuzz-dir", "fuzz", "--sanitizer", "none", "--target-dir", "target/fuzz"];
    command(&tool("cargo-fuzz").display().to_string(), &[&always, arguments].concat())
}
