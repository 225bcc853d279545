//! The same questions put to general-purpose libraries, which answer in a process of their own.

use std::io::Write;
use std::process::{Command, Stdio};

use serde::Deserialize;
use serde_json::Value;

const SCRIPT: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/others.py");

/// What they answer.
#[derive(Deserialize)]
pub(crate) struct Others {
    pub index: Answers,
    pub dew: Answers,
    pub ladders: Vec<Answers>,
    pub year: Years,
}

/// Numbers, and how many seconds they took.
#[derive(Deserialize)]
pub(crate) struct Answers {
    pub seconds: f64,
    pub answers: Vec<f64>,
}

/// The year by equal steps, and by a solver that chooses its own.
#[derive(Deserialize)]
pub(crate) struct Years {
    pub steps: Year,
    pub solver: Year,
}

/// What a year does to each machine.
#[derive(Deserialize)]
pub(crate) struct Year {
    pub seconds: f64,
    /// Wet hours of each machine.
    pub wet: Vec<f64>,
    /// Temperature of each metal at the end of each hour, °C.
    pub celsius: Vec<Vec<f64>>,
}

/// Asks them, with a Python that has them.
pub(crate) fn ask(python: &str, questions: &Value) -> Result<Others, Box<dyn std::error::Error>> {
    let mut child = Command::new(python).arg(SCRIPT).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn()?;
    // It reads everything before it writes anything.
    child.stdin.take().ok_or("a pipe")?.write_all(questions.to_string().as_bytes())?;
    let output = child.wait_with_output()?;
    if !output.status.success() {
        return Err("the libraries gave no answer".into());
    }
    Ok(serde_json::from_slice(&output.stdout)?)
}
