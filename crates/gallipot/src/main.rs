//! The command line: reads a shop file, asks the planner, prints the answer.
//!
//! Nothing but the result goes to standard output. Exit 0: done. Exit 1: the answer is no. Exit 2: bad use or bad input.

mod args;
mod check;
mod input;
mod list;
mod plan;
mod problems;
mod shell;
mod style;
mod why;

use std::process::ExitCode;

use clap::Parser;

use args::{Args, Command};

fn main() -> ExitCode {
    let args = Args::parse();
    let done = match &args.command {
        Command::Plan(wanted) => plan::run(wanted),
        Command::Check(wanted) => check::run(wanted),
        Command::Why(wanted) => why::run(wanted),
        Command::List(wanted) => list::run(wanted),
        Command::Completions(wanted) => shell::completions(wanted),
        Command::Man => shell::man(),
        Command::Schema(wanted) => shell::schema(wanted),
    };
    match done {
        Ok(code) => code,
        Err(failure) => {
            failure.print();
            ExitCode::from(2)
        }
    }
}
