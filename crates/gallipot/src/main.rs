//! The command line: reads a shop file, asks the planner, prints the answer.
//!
//! Nothing but the result goes to standard output. Exit 0: done. Exit 1: the answer is no. Exit 2: bad use or bad input.

mod args;
mod bench_sheet;
mod calendar;
mod check;
mod cupboard;
mod input;
mod kept;
mod list;
mod log;
mod plan;
mod problems;
mod round;
mod serve;
mod sheets;
mod shell;
mod style;
mod why;

use std::process::ExitCode;

use clap::FromArgMatches;

use args::{Args, Command, command};

fn main() -> ExitCode {
    let matches = command().get_matches();
    let done = match matches.subcommand_matches(bench_sheet::NAME) {
        Some(sheet) => bench_sheet::run(sheet),
        None => match Args::from_arg_matches(&matches) {
            Ok(args) => run(&args.command),
            Err(error) => error.exit(),
        },
    };
    match done {
        Ok(code) => code,
        Err(failure) => {
            failure.print();
            ExitCode::from(2)
        }
    }
}

fn run(command: &Command) -> Result<ExitCode, input::Failure> {
    match command {
        Command::Plan(wanted) => plan::run(wanted),
        Command::Check(wanted) => check::run(wanted),
        Command::Why(wanted) => why::run(wanted),
        Command::Round(wanted) => round::run(wanted),
        Command::Calendar(wanted) => calendar::run(wanted),
        Command::Cupboard(wanted) => cupboard::run(wanted),
        Command::Log(wanted) => log::run(wanted),
        Command::Import(wanted) => kept::import(wanted),
        Command::Export(wanted) => kept::export(wanted),
        Command::Backup(wanted) => kept::backup(wanted),
        Command::Restore(wanted) => kept::restore(wanted),
        Command::List(wanted) => list::run(wanted),
        Command::Sheets(wanted) => sheets::run(wanted),
        Command::Serve(wanted) => serve::run(wanted),
        Command::Completions(wanted) => shell::completions(wanted),
        Command::Man => shell::man(),
        Command::Schema(wanted) => shell::schema(wanted),
    }
}
