//! How answers look in a terminal: headings, wrapped paragraphs, tables without boxes.

use anstyle::Style;
use comfy_table::{ContentArrangement, Table};
use planner::verdict::Grade;

const BOLD: Style = Style::new().bold();
const DIM: Style = Style::new().dimmed();

/// Columns to write in: the terminal's, or 80 where there is none; never wider than is pleasant to read.
pub fn width() -> usize {
    const NARROWEST: usize = 60;
    const WIDEST: usize = 120;
    const ELSEWHERE: usize = 80;
    let asked = std::env::var("COLUMNS").ok().and_then(|columns| columns.parse().ok());
    let terminal = || terminal_size::terminal_size().map(|(width, _)| usize::from(width.0));
    asked.or_else(terminal).unwrap_or(ELSEWHERE).clamp(NARROWEST, WIDEST)
}

/// A heading with a rule to the end of the line.
pub fn heading(text: &str) -> String {
    let rule = "─".repeat(width().saturating_sub(text.chars().count() + 1));
    format!("{BOLD}{text}{BOLD:#} {DIM}{rule}{DIM:#}")
}

/// Emphasised.
pub fn bold(text: &str) -> String {
    format!("{BOLD}{text}{BOLD:#}")
}

/// Set back.
pub fn dim(text: &str) -> String {
    format!("{DIM}{text}{DIM:#}")
}

/// A paragraph, wrapped, with its first line and the others indented.
pub fn paragraph(text: &str, first: &str, rest: &str) -> String {
    let options = textwrap::Options::new(width()).initial_indent(first).subsequent_indent(rest).break_words(false);
    textwrap::fill(text, options)
}

/// A mark whose shape says how well something serves, with its word.
pub fn grade(grade: Grade) -> String {
    format!("{} {}", mark(grade), grade.word())
}

/// The mark alone, for a table whose legend has the words.
pub fn mark(grade: Grade) -> char {
    match grade {
        Grade::Right => '●',
        Grade::WillDo => '◐',
        Grade::Wrong => '○',
        Grade::Harmful => '✕',
    }
}

/// A bar of so many cells filled to a share.
pub fn bar(share: f64, cells: usize) -> String {
    let filled = (0..cells)
        .filter(|cell| f64::from(u32::try_from(*cell).unwrap_or(u32::MAX)) + 0.5 < share * f64::from(u32::try_from(cells).unwrap_or(1)));
    let filled = filled.count();
    format!("{}{}", "█".repeat(filled), "·".repeat(cells - filled))
}

/// A table without lines whose columns share the width.
pub fn table(header: &[&str]) -> Table {
    let mut table = Table::new();
    table.load_style(comfy_table::presets::NOTHING).set_content_arrangement(ContentArrangement::Dynamic);
    table.set_width(u16::try_from(width() - INDENT.len()).unwrap_or(u16::MAX));
    if !header.is_empty() {
        table.set_header(header);
    }
    table
}

/// What stands before every line of a table.
const INDENT: &str = "  ";

/// The lines of a table whose columns stand two blanks apart.
pub fn lines(table: &mut Table) -> String {
    for column in table.column_iter_mut() {
        column.set_padding((0, 2));
    }
    table.trim_fmt().lines().map(|line| format!("{INDENT}{line}")).collect::<Vec<_>>().join("\n")
}
