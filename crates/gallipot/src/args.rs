//! What can be typed.

use std::net::SocketAddr;
use std::path::PathBuf;

use clap::{Args as Group, CommandFactory, Parser, Subcommand, ValueEnum};
use units::System;

/// Which oils, greases, cutting fluids, adhesives and cleaners a small machine shop needs: what to buy first, where each goes, how
/// much and how often.
#[derive(Debug, Parser)]
#[command(name = "gallipot", version, about, max_term_width = 100)]
pub struct Args {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// The whole command line: what is declared here, and a command for each sheet of the bench.
#[must_use]
pub fn command() -> clap::Command {
    Args::command().subcommand(crate::bench_sheet::command())
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Work out what to buy in which order, and what goes where
    #[command(after_help = "Examples:
  gallipot plan examples/alder-lock.toml
  gallipot plan shop.toml --rungs 5 --units inch
  gallipot plan shop.toml --budget 60 --without slideway-68
  gallipot plan shop.toml --json > plan.json")]
    Plan(Plan),
    /// Say whether a shop file is sound, and what was supposed in reading it
    #[command(after_help = "Examples:
  gallipot check shop.toml
  gallipot check shop.toml --json

Exit code 0 when the file is sound, 1 when it is not.")]
    Check(Check),
    /// Show every finding behind what goes on one place, for several fluids side by side
    #[command(after_help = "Examples:
  gallipot why shop.toml \"bench lathe bed ways\"
  gallipot why shop.toml \"bed ways\" slideway-68 hydraulic-32 lithium-2")]
    Why(Why),
    /// Say what is due today
    #[command(after_help = "Examples:
  gallipot round shop.gallipot
  gallipot round shop.gallipot --all --day 2026-06-06
  gallipot round shop.gallipot --json")]
    Round(crate::round::Wanted),
    /// Write what falls due as a calendar, for a calendar program to show
    #[command(after_help = "Examples:
  gallipot calendar shop.gallipot -o shop.ics
  gallipot calendar shop.gallipot --at 18:00 --alarm 30 -o shop.ics
  gallipot calendar shop.gallipot --at 18:00 --zone Europe/London --daily > shop.ics

The file says what was due when it was written. Write it anew when something was done, and read it into the same calendar.")]
    Calendar(crate::calendar::Wanted),
    /// Say what is left in the cupboard, until when, and what to buy again
    #[command(after_help = "Examples:
  gallipot cupboard shop.gallipot
  gallipot cupboard shop.gallipot --csv > cupboard.csv
  gallipot cupboard shop.gallipot --import cupboard.csv --replace")]
    Cupboard(crate::cupboard::Wanted),
    /// Write down what was done, list it, take it back
    #[command(after_help = "Examples:
  gallipot log shop.gallipot
  gallipot log shop.gallipot applied --point \"lathe/bed ways\"
  gallipot log shop.gallipot applied --point quill --amount \"2 mL\" --day 2026-06-01
  gallipot log shop.gallipot decanted --from 2 --into 5 --amount \"250 mL\"
  gallipot log shop.gallipot meter --machine lathe --hours \"412 h\"
  gallipot log shop.gallipot undo 7")]
    Log(crate::log::Wanted),
    /// Make a shop file the shop that Gallipot keeps, with its log and its backups
    #[command(after_help = "Example:
  gallipot import shop.toml shop.gallipot")]
    Import(crate::kept::Import),
    /// Print the shop file of a shop that Gallipot keeps
    #[command(after_help = "Example:
  gallipot export shop.gallipot > shop.toml")]
    Export(crate::kept::Export),
    /// Copy a shop that Gallipot keeps beside itself
    #[command(after_help = "Examples:
  gallipot backup shop.gallipot
  gallipot backup shop.gallipot --list")]
    Backup(crate::kept::Backup),
    /// Put a backup in the place of the shop, of which a backup is made first
    #[command(after_help = "Example:
  gallipot restore shop.gallipot shop.backup-20260601-080000.gallipot")]
    Restore(crate::kept::Restore),
    /// List the words a shop file may use
    #[command(after_help = "Examples:
  gallipot list machines
  gallipot list points
  gallipot list fluids")]
    List(List),
    /// Write the sheets that hang on a wall and the labels of bottles, for a browser to print
    #[command(after_help = "Examples:
  gallipot sheets shop.gallipot -o paper
  gallipot sheets shop.gallipot -o paper --size letter --only chart,round
  gallipot sheets shop.gallipot -o paper --only labels --address http://192.168.1.20:8087
  gallipot sheets shop.toml -o paper --only labels --decanted acetone --labels \"63.5 x 38.1 mm, 3 x 7, gaps 2.5 x 0 mm\"

Each sheet is a file that needs nothing else. Open it in a browser and print it at 100 %, without the browser's own headers.")]
    Sheets(crate::sheets::Wanted),
    /// Open the shop as pages in a browser
    #[command(after_help = "Examples:
  gallipot serve shop.toml
  gallipot serve shop.toml --address 0.0.0.0:8087 --passphrase-file pass.txt --self-signed
  gallipot serve shop.toml --read-only --base-path /shop --origin https://garage.example

Without --address only this machine comes in. Whoever opens the pages to others sets a passphrase: in a file, in the
environment variable GALLIPOT_PASSPHRASE, or when asked for it in a terminal. Ctrl-C ends it.")]
    Serve(Serve),
    /// Print completions for a shell
    #[command(after_help = "Example:
  gallipot completions bash > ~/.local/share/bash-completion/completions/gallipot")]
    Completions(Completions),
    /// Print the manual page
    #[command(after_help = "Example:
  gallipot man > gallipot.1 && man ./gallipot.1")]
    Man,
    /// Print the JSON Schema of what `--json` prints
    Schema(Schema),
}

/// `plan`
#[derive(Debug, Group)]
pub struct Plan {
    #[command(flatten)]
    pub common: Common,
    /// Money to spend: adds the best set of fluids for it, in the shop's currency
    #[arg(long, value_name = "MONEY", value_parser = money)]
    pub budget: Option<f64>,
    /// Do without a fluid or a class of fluids; may be given several times
    #[arg(long, value_name = "FLUID")]
    pub without: Vec<String>,
    /// How many purchases to show
    #[arg(long, value_name = "NUMBER", default_value_t = 12, value_parser = clap::value_parser!(u16).range(1..=60))]
    pub rungs: u16,
}

/// `check`
#[derive(Debug, Group)]
pub struct Check {
    #[command(flatten)]
    pub common: Common,
}

/// `why`
#[derive(Debug, Group)]
pub struct Why {
    #[command(flatten)]
    pub common: Common,
    /// The place: a machine and a point, or a job and a step; any part that names only one
    pub place: String,
    /// Fluids to hold against it; the best four where none is named
    pub fluids: Vec<String>,
}

/// What every command about a shop takes.
#[derive(Debug, Group)]
pub struct Common {
    /// The shop file, in TOML or as Gallipot keeps it; `-` reads TOML from standard input
    pub shop: PathBuf,
    /// Print JSON for programs instead of tables for people
    #[arg(long)]
    pub json: bool,
    /// Units of the answer, whatever the file says
    #[arg(long, value_enum)]
    pub units: Option<Units>,
}

/// `list`
#[derive(Debug, Group)]
pub struct List {
    /// Which words
    #[arg(value_enum)]
    pub of: Words,
}

/// Lists of words.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub enum Words {
    /// Templates of machines, with their sizes
    Machines,
    /// Kinds of lubrication points, with what can be said of each
    Points,
    /// Kinds of jobs, with what can be said of each
    Jobs,
    /// Fluids
    Fluids,
    /// Classes of fluids
    Classes,
    /// Metals, seals and plastics
    Materials,
    /// Climates
    Climates,
    /// Currencies
    Currencies,
    /// The bibliography
    Sources,
}

/// `serve`
#[derive(Debug, Group)]
pub struct Serve {
    /// The shop file, in TOML or as Gallipot keeps it; read again whenever it changes
    pub shop: PathBuf,
    /// Address and port to listen on
    #[arg(long, value_name = "ADDRESS:PORT", default_value = "127.0.0.1:8087")]
    pub address: SocketAddr,
    /// File with the passphrase of whoever comes in
    #[arg(long, value_name = "FILE")]
    pub passphrase_file: Option<PathBuf>,
    /// Certificate chain in PEM form, to encrypt the connection
    #[arg(long, value_name = "FILE", requires = "key")]
    pub certificate: Option<PathBuf>,
    /// Key of the certificate in PEM form
    #[arg(long, value_name = "FILE", requires = "certificate")]
    pub key: Option<PathBuf>,
    /// Encrypt with a certificate made here; kept in --certificate and --key where those are given and not there yet
    #[arg(long)]
    pub self_signed: bool,
    /// Let nothing be written, such as on a tablet on the wall
    #[arg(long)]
    pub read_only: bool,
    /// Path below which a proxy shows the pages, such as /shop
    #[arg(long, value_name = "PATH", default_value = "", hide_default_value = true)]
    pub base_path: String,
    /// Address by which others know the pages, such as `https://garage.example`
    #[arg(long, value_name = "ADDRESS")]
    pub origin: Option<String>,
}

/// `completions`
#[derive(Debug, Group)]
pub struct Completions {
    /// The shell
    pub shell: clap_complete::Shell,
}

/// `schema`
#[derive(Debug, Group)]
pub struct Schema {
    /// Whose JSON
    #[arg(value_enum)]
    pub of: Answer,
}

/// Answers that come as JSON.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub enum Answer {
    /// What `plan --json` prints
    Plan,
    /// What `check --json` prints
    Check,
    /// What `why --json` prints
    Why,
    /// What `round --json` prints
    Round,
    /// What `cupboard --json` prints
    Cupboard,
    /// What `log --json` prints
    Log,
    /// What `import --json` prints
    Import,
    /// What `backup --json` prints
    Backup,
    /// What `restore --json` prints
    Restore,
    /// What `sheets --json` prints
    Sheets,
    /// What `bench --json` prints
    Bench,
}

/// Systems of units.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub enum Units {
    /// Millimetres, millilitres, degrees Celsius
    Metric,
    /// Inches, fluid ounces, degrees Fahrenheit
    Inch,
    /// Both
    Both,
}

impl From<Units> for System {
    fn from(units: Units) -> Self {
        match units {
            Units::Metric => Self::Metric,
            Units::Inch => Self::Inch,
            Units::Both => Self::Both,
        }
    }
}

fn money(text: &str) -> Result<f64, String> {
    match text.trim().parse::<f64>() {
        Ok(money) if money.is_finite() && money >= 0.0 => Ok(money),
        _ => Err("give a sum of money without a currency sign, such as 60 or 49.50; it counts in the shop's currency".to_owned()),
    }
}
