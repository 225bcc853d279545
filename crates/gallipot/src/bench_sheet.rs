//! `bench`: one worked calculation. Each sheet is a command whose options are the sheet's fields.

use std::io::IsTerminal as _;
use std::process::ExitCode;
use std::sync::mpsc::{self, RecvTimeoutError};
use std::time::{Duration, Instant};

use bench::{Page, Refusal, Sheet, read, sheet, sheets};
use clap::{Arg, ArgAction, ArgMatches, Command, value_parser};
use fields::{Asks, Field};
use jiff::ZonedDateTime;
use pages::paper::{Size, calculation};
use reference::Reference;
use units::System;

use crate::args::Units;
use crate::input::Failure;
use crate::sheets::size;
use crate::shell::print_json;
use crate::style::{bold, dim, heading, lines, paragraph, table};

/// The word for it.
pub const NAME: &str = "bench";

/// The command with a command for each sheet.
pub fn command() -> Command {
    Command::new(NAME)
        .about("Work out one sheet: a viscosity, a bearing, a fit, a torque …")
        .subcommand_required(true)
        .arg_required_else_help(true)
        .after_help("Examples:\n  gallipot bench viscosity --fluid slideway-68 --temperature \"5 degC\"\n  gallipot bench viscosity --help")
        .subcommands(sheets().iter().map(one))
}

fn one(sheet: &Sheet) -> Command {
    let common = [
        Arg::new("json").long("json").action(ArgAction::SetTrue).help("Print JSON for programs instead of a page for people"),
        Arg::new("units").long("units").value_parser(value_parser!(Units)).help("Units of the answer"),
        Arg::new("picture").long("picture").value_name("FILE").help("Write the picture, where there is one, as SVG"),
        Arg::new("paper").long("paper").value_name("FILE").help("Write it as a sheet of paper for a folder, in HTML that a browser prints"),
        Arg::new("size")
            .long("size")
            .value_name("SIZE")
            .value_parser(size)
            .requires("paper")
            .help("Size of that paper, a4 or letter; the one usual with the units where none is given"),
    ];
    Command::new(sheet.kind.name).about(sheet.kind.about).args(sheet.kind.fields.iter().map(option)).args(common)
}

fn option(field: &'static Field) -> Arg {
    let wants = match field.asks {
        Asks::Quantity(dimension) => dimension.word().to_uppercase(),
        Asks::Number => "NUMBER".to_owned(),
        Asks::Flag => "yes|no".to_owned(),
        Asks::Choice(of) | Asks::Choices(of) => of.join("|"),
        Asks::Name => "NAME".to_owned(),
        Asks::Materials => "MATERIAL".to_owned(),
        Asks::Fluids => "FLUID".to_owned(),
        Asks::File => "FILE".to_owned(),
    };
    let help = match (field.is_required(), field.default) {
        (true, _) => format!("{} (needed)", field.about),
        (false, "") => field.about.to_owned(),
        (false, default) => format!("{} (supposed: {default})", field.about),
    };
    Arg::new(field.name).long(field.name.replace('_', "-")).value_name(wants).help(help).allow_hyphen_values(true)
}

/// Runs the command.
pub fn run(matches: &ArgMatches) -> Result<ExitCode, Failure> {
    let Some((sheet, matches)) = matches.subcommand().and_then(|(name, matches)| Some((sheet(name)?, matches))) else {
        return Err(Failure::Said("name a sheet; `gallipot bench --help` lists them".to_owned()));
    };
    let reference = Reference::embedded();
    let mut said: Vec<(&str, String)> = Vec::new();
    for field in sheet.kind.fields {
        let Some(word) = matches.get_one::<String>(field.name) else { continue };
        said.push((field.name, if matches!(field.asks, Asks::File) { text_of(word)? } else { word.clone() }));
    }
    let given: Vec<(&str, &str)> = said.iter().map(|(name, text)| (*name, text.as_str())).collect();
    let units = matches.get_one::<Units>("units").map_or(System::Metric, |units| System::from(*units));
    let reply = read(sheet, &given, reference).map_err(|refusals| Failure::Said(refused(&refusals)))?;
    let page = patiently(sheet.kind.name, || sheet.work(&reply, reference, units)).map_err(|error| Failure::Said(error.to_string()))?;
    if let Some(path) = matches.get_one::<String>("picture") {
        draw(&page, path)?;
    }
    if let Some(path) = matches.get_one::<String>("paper") {
        let size = matches.get_one::<Size>("size").copied().unwrap_or_else(|| Size::usual(units));
        let html = calculation(sheet, &page, size, ZonedDateTime::now().date());
        let html = html.map_err(|error| Failure::Said(error.to_string()))?;
        std::fs::write(path, html).map_err(|error| Failure::Said(format!("cannot write {path}: {error}")))?;
    }
    if matches.get_flag("json") {
        return print_json(&page);
    }
    anstream::println!("{}", text(&page, sheet));
    Ok(ExitCode::SUCCESS)
}

/// Does some work, and where it takes long says on a terminal that it goes on; in a pipe it stays quiet.
fn patiently<T>(what: &str, work: impl FnOnce() -> T) -> T {
    /// What takes no longer needs no word.
    const SOON: Duration = Duration::from_millis(500);
    /// Back to the line's beginning, and clear it.
    const ANEW: &str = "\r\x1b[2K";
    if !std::io::stderr().is_terminal() {
        return work();
    }
    std::thread::scope(|scope| {
        let (done, waits) = mpsc::channel::<()>();
        let began = Instant::now();
        scope.spawn(move || {
            let mut said = false;
            // Nothing is ever sent: the work is done when the other end is dropped.
            while waits.recv_timeout(SOON) == Err(RecvTimeoutError::Timeout) {
                anstream::eprint!("{ANEW}working out `{what}`: {:.1} s so far", began.elapsed().as_secs_f64());
                said = true;
            }
            if said {
                anstream::eprint!("{ANEW}");
            }
        });
        let result = work();
        drop(done);
        result
    })
}

/// The text of a file that a sheet asks for.
fn text_of(path: &str) -> Result<String, Failure> {
    /// Forty years' hours: what is larger is another file.
    const LARGEST_BYTES: u64 = 80 * 1024 * 1024;
    let unread = |error: std::io::Error| Failure::Said(format!("cannot read {path}: {error}"));
    if std::fs::metadata(path).map_err(unread)?.len() > LARGEST_BYTES {
        return Err(Failure::Said(format!("{path} is larger than any file a sheet reads (80 MB)")));
    }
    let bytes = std::fs::read(path).map_err(unread)?;
    String::from_utf8(bytes).map_err(|_| Failure::Said(format!("{path} is no text file")))
}

fn refused(refusals: &[Refusal]) -> String {
    refusals.iter().map(|refusal| format!("{}. {}", refusal.what, refusal.mend)).collect::<Vec<_>>().join("\ngallipot: ")
}

fn draw(page: &Page, path: &str) -> Result<(), Failure> {
    let drawn = page.svg().ok_or_else(|| Failure::Said(format!("the sheet `{}` has no picture for this", page.sheet)))?;
    let svg = drawn.map_err(|error| Failure::Said(error.to_string()))?;
    std::fs::write(path, svg).map_err(|error| Failure::Said(format!("cannot write {path}: {error}")))
}

/// The worked page for people.
fn text(page: &Page, sheet: &Sheet) -> String {
    let mut parts = vec![bold(sheet.kind.about)];
    for answer in &page.answers {
        parts.push(paragraph(&format!("{}: {}", answer.name, answer.words), "  ", "    "));
    }
    for fact in &page.facts {
        parts.push(paragraph(&format!("{}: {}", fact.name, fact.text), "  ", "    "));
    }
    for choice in &page.choices {
        let mark = if choice.fits { '●' } else { '○' };
        let key = if choice.key.is_empty() { String::new() } else { format!(" ({})", choice.key) };
        parts.push(paragraph(&format!("{mark} {}{key}: {}", choice.name, choice.why), "  ", "    "));
    }
    let mut inputs = table(&[]);
    for input in &page.inputs {
        let supposed = if input.supposed { "supposed" } else { "" };
        inputs.add_row([
            format!("--{}", input.symbol.replace('_', "-")),
            format!("{} {}", input.value, input.unit),
            input.label.clone(),
            supposed.to_owned(),
        ]);
    }
    if !page.inputs.is_empty() {
        parts.push(format!("\n{}\n{}", heading("Given and supposed"), lines(&mut inputs)));
    }
    if !page.steps.is_empty() {
        parts.push(format!("\n{}", heading("Working")));
        for step in &page.steps {
            let value = format!("{} {}", units::show_number(step.value, units::Digits::Significant(4)), step.unit);
            let shown = if step.solved {
                format!("{} = {}, which makes true {}", step.symbol, value.trim(), step.formula)
            } else {
                format!("{} = {} = {} = {}", step.symbol, step.formula, step.filled, value.trim())
            };
            parts.push(paragraph(&shown, "  ", "      "));
            parts.push(dim(&format!("      [{}]", step.source)));
        }
    }
    if !page.cautions.is_empty() {
        parts.push(format!("\n{}", heading("Mind")));
        parts.extend(page.cautions.iter().map(|caution| paragraph(&caution.text, "  ", "    ")));
    }
    parts.join("\n")
}
