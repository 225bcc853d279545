//! `sheets`: the sheets that hang on a wall, as files that a browser prints.

use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::Arc;

use clap::Args as Group;
use jiff::ZonedDateTime;
use jiff::civil::Date;
use pages::paper::{Files, Geometry, Labels, PaperError, Sheet, Size, Written, address, files};
use reference::Reference;
use schemars::JsonSchema;
use serde::Serialize;
use store::SectionId;

use crate::args::{Common, Units};
use crate::input::{Failure, read};
use crate::kept::{beside, day};
use crate::shell::print_json;

/// `sheets`
#[derive(Debug, Group)]
pub struct Wanted {
    /// The shop file, in TOML or as Gallipot keeps it; `-` reads TOML from standard input
    pub shop: PathBuf,
    /// Folder to write into; made where there is none
    #[arg(short, long, value_name = "FOLDER")]
    pub output: PathBuf,
    /// Size of paper, a4 or letter; the one usual with the shop's units where none is given
    #[arg(long, value_name = "SIZE", value_parser = size)]
    pub size: Option<Size>,
    /// Only these sheets: chart, buying, round, cautions, labels
    #[arg(long, value_name = "SHEETS", value_delimiter = ',', value_parser = sheet)]
    pub only: Vec<Sheet>,
    /// Address of the pages as a phone in the shop sees them: each label gets a code that opens its pot's page
    #[arg(long, value_name = "ADDRESS", value_parser = address)]
    pub address: Option<String>,
    /// Sheets of labels: size of one, how many across and down, margins and gaps
    #[arg(long, value_name = "MEASUREMENTS")]
    pub labels: Option<String>,
    /// A label for a bottle of this fluid, filled from a larger one; may be given several times
    #[arg(long, value_name = "FLUID", value_parser = fluid)]
    pub decanted: Vec<String>,
    /// Draw lines to cut along, for labels on plain paper
    #[arg(long)]
    pub cut: bool,
    /// The day of the sheets; today where none is given
    #[arg(long, value_name = "DAY", value_parser = day)]
    pub day: Option<Date>,
    /// Print JSON for programs instead of the paths of the files
    #[arg(long)]
    pub json: bool,
    /// Units of the sheets, whatever the file says
    #[arg(long, value_enum)]
    pub units: Option<Units>,
}

/// What `sheets --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SheetsReport {
    /// The sheets, in the order in which they were written.
    pub sheets: Vec<SheetFile>,
}

/// A sheet as a file.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SheetFile {
    /// Which: `chart`, `buying`, `round`, `cautions`, `labels`.
    pub sheet: String,
    /// What stands over it.
    pub title: String,
    /// What it is.
    pub about: String,
    /// The path of the file.
    pub file: String,
    /// Of labels, the pots that have one, by the numbers that their pages go by; none of a shop that is not kept.
    pub pots: Vec<i64>,
}

/// Runs the command.
pub fn run(wanted: &Wanted) -> Result<ExitCode, Failure> {
    let (file, shop) = read(&Common { shop: wanted.shop.clone(), json: false, units: wanted.units })?;
    let size = wanted.size.unwrap_or_else(|| Size::usual(shop.units));
    let text = wanted.labels.as_deref().or_else(|| Geometry::offered(size).next()).unwrap_or_default();
    let geometry = Geometry::parse(text, size).map_err(|said| Failure::Said(format!("these labels cannot be drawn: {said}")))?;
    let labels = Labels { geometry, gone: 0, cut: wanted.cut, pot: None, decanted: wanted.decanted.clone() };
    let today = wanted.day.unwrap_or_else(|| ZonedDateTime::now().date());
    let (kept, units) = (beside(&file)?, shop.units);
    let log = kept.as_ref().map(|kept| Ok::<_, Failure>((kept.facts(today)?, kept.uses()?))).transpose()?;
    // The numbers of the pots go with the shop as the kept file has it.
    let shop = kept.as_ref().map_or(shop, |kept| kept.described.shop.clone());
    let pots: Vec<Option<SectionId>> = match &kept {
        Some(kept) => kept.described.pots().collect(),
        None => vec![None; shop.pots.len()],
    };
    let mut sheets = if wanted.only.is_empty() { Sheet::ALL.to_vec() } else { wanted.only.clone() };
    if pots.is_empty() && wanted.decanted.is_empty() && sheets.contains(&Sheet::Labels) {
        anstream::eprintln!("gallipot: no pot is written down and no bottle named with --decanted, so there are no labels.");
        sheets.retain(|sheet| *sheet != Sheet::Labels);
    }
    if sheets.contains(&Sheet::Labels) && pots.iter().all(Option::is_none) && wanted.address.is_some() {
        anstream::eprintln!("gallipot: only a shop that is kept has pages of its pots, so the labels carry no codes.");
    }
    let asked = Files { sheets: &sheets, size, labels: &labels, pots: &pots, address: wanted.address.as_deref(), today, units };
    let written = files(&Arc::new(shop), log.as_ref(), &asked).map_err(|error| match error {
        PaperError::Shop(found) => Failure::File(file, found),
        error => Failure::Said(error.to_string()),
    })?;
    let failed = |path: &std::path::Path, error: std::io::Error| Failure::Said(format!("cannot write {}: {error}", path.display()));
    std::fs::create_dir_all(&wanted.output).map_err(|error| failed(&wanted.output, error))?;
    let mut report = SheetsReport { sheets: Vec::new() };
    for (sheet, Written { name, html }) in sheets.iter().zip(written) {
        let path = wanted.output.join(name);
        std::fs::write(&path, html).map_err(|error| failed(&path, error))?;
        let labelled = pots.iter().flatten().filter(|_| *sheet == Sheet::Labels);
        report.sheets.push(SheetFile {
            sheet: sheet.word().to_owned(),
            title: sheet.title().to_owned(),
            about: sheet.about().to_owned(),
            file: path.display().to_string(),
            pots: labelled.map(|SectionId(id)| *id).collect(),
        });
    }
    if wanted.json {
        return print_json(&report);
    }
    for sheet in &report.sheets {
        anstream::println!("{}", sheet.file);
    }
    Ok(ExitCode::SUCCESS)
}

/// A size of paper of the command line.
pub fn size(text: &str) -> Result<Size, String> {
    Size::of_word(text).ok_or_else(|| "give a4 or letter".to_owned())
}

fn sheet(text: &str) -> Result<Sheet, String> {
    Sheet::of_word(text.trim()).ok_or_else(|| format!("give any of {}", Sheet::ALL.map(Sheet::word).join(", ")))
}

fn fluid(text: &str) -> Result<String, String> {
    let reference = Reference::embedded();
    let known = || reference.fluids.keys().map(String::as_str);
    let meant = reference.meant(text, known()).map(str::to_owned);
    meant.ok_or_else(|| format!("it is no fluid; {} `gallipot list fluids` lists them", fields::did_you_mean(text, known())))
}
