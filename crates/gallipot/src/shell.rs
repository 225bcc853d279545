//! Completions, the manual page, and the schemas of the JSON.

use std::process::ExitCode;

use crate::args::{Answer, Completions, Schema, command};
use crate::check::CheckReport;
use crate::input::Failure;

/// Prints completions for a shell.
pub fn completions(wanted: &Completions) -> Result<ExitCode, Failure> {
    clap_complete::generate(wanted.shell, &mut command(), "gallipot", &mut std::io::stdout());
    Ok(ExitCode::SUCCESS)
}

/// Prints the manual page.
pub fn man() -> Result<ExitCode, Failure> {
    clap_mangen::Man::new(command()).render(&mut std::io::stdout()).map_err(|error| Failure::Said(format!("cannot write: {error}")))?;
    Ok(ExitCode::SUCCESS)
}

/// Prints the schema of an answer.
pub fn schema(wanted: &Schema) -> Result<ExitCode, Failure> {
    let schema = match wanted.of {
        Answer::Plan => schemars::schema_for!(planner::report::Report),
        Answer::Check => schemars::schema_for!(CheckReport),
        Answer::Why => schemars::schema_for!(planner::why::Why),
        Answer::Round => schemars::schema_for!(planner::round::Round),
        Answer::Cupboard => schemars::schema_for!(planner::round::Cupboard),
        Answer::Log => schemars::schema_for!(crate::log::LogReport),
        Answer::Import => schemars::schema_for!(crate::kept::ImportReport),
        Answer::Backup => schemars::schema_for!(crate::kept::BackupReport),
        Answer::Restore => schemars::schema_for!(crate::kept::RestoreReport),
        Answer::Sheets => schemars::schema_for!(crate::sheets::SheetsReport),
        Answer::Bench => schemars::schema_for!(bench::Page),
    };
    print_json(&schema)
}

/// Prints something as JSON.
pub fn print_json<T: serde::Serialize>(value: &T) -> Result<ExitCode, Failure> {
    let text = serde_json::to_string_pretty(value).map_err(|error| Failure::Said(format!("cannot write JSON: {error}")))?;
    anstream::println!("{text}");
    Ok(ExitCode::SUCCESS)
}
