//! Times the program's sums against general-purpose libraries, and how they grow.

use std::process::{Command, ExitCode, Stdio};

use crate::{cargo, command, root, run, tools};

/// Where what was measured is kept.
const PAGE: &str = "docs/measured.md";

/// `cargo xtask measure`: fetches the libraries, in the versions written down, into a Python of its own below `target/`, and measures.
pub(crate) fn measure() -> ExitCode {
    let place = tools().join("measure");
    let python = place.join("bin").join("python").display().to_string();
    let mut steps = Vec::new();
    if !place.exists() {
        steps.push(("make a Python of its own", command("python3", &["-m", "venv", &place.display().to_string()])));
    }
    let install = ["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--requirement", "crates/measure/requirements.txt"];
    steps.push(("fetch the libraries", command(&python, &install)));
    let done = run(steps);
    if done != ExitCode::SUCCESS {
        return done;
    }
    eprintln!("── measure");
    let mut measure = cargo(&["run", "--quiet", "--release", "--package", "measure", "--", &python]);
    match written(measure.stderr(Stdio::inherit())) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("── measure: {error}");
            ExitCode::FAILURE
        }
    }
}

/// The page is written only where everything was measured and the answers agree.
fn written(measure: &mut Command) -> Result<(), Box<dyn std::error::Error>> {
    let output = measure.output()?;
    let page = String::from_utf8(output.stdout)?;
    eprintln!("{page}");
    if !output.status.success() {
        return Err("failed".into());
    }
    std::fs::write(root().join(PAGE), page)?;
    Ok(())
}
