//! Showing what is wrong with a shop file: the line, the word, the way out.

use annotate_snippets::renderer::DecorStyle;
use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use shop::Problem;

use crate::input::ShopFile;
use crate::style;

/// Longest stretch of a file that is shown around a problem; a longer line would flood the screen.
const LONGEST_SHOWN: usize = 400;

/// All problems, one after the other.
pub fn render(file: &ShopFile, found: &[Problem]) -> String {
    let text = file.text();
    let renderer = Renderer::styled().decor_style(DecorStyle::Unicode).term_width(style::width());
    let groups: Vec<Group<'_>> = found.iter().map(|problem| group(file, &text, problem)).collect();
    let count = match found.len() {
        1 => "1 problem".to_owned(),
        many => format!("{many} problems"),
    };
    format!("{}\n\n{count} in {}; nothing was worked out.", renderer.render(&groups), file.path)
}

fn group<'a>(file: &'a ShopFile, text: &'a str, problem: &'a Problem) -> Group<'a> {
    let title = Level::ERROR.primary_title(problem.what.as_str());
    let help = Level::HELP.message(problem.mend.as_str());
    match &problem.at {
        Some(at) if at.end <= text.len() && file.bytes.len() == text.len() => {
            // A span of several lines is shown by its first.
            let first = text[at.start..at.end].lines().next().map_or(0, str::len);
            let span = at.start..at.start + first.min(LONGEST_SHOWN);
            title.element(Snippet::source(text).path(file.path.as_str()).annotation(AnnotationKind::Primary.span(span))).element(help)
        }
        _ => title.element(help),
    }
}

/// Line and column of a byte, both from 1.
pub fn line_and_column(text: &str, byte: usize) -> (usize, usize) {
    let before = text.get(..byte).unwrap_or(text);
    let line = before.matches('\n').count() + 1;
    let column = before.rsplit('\n').next().map_or(0, |rest| rest.chars().count()) + 1;
    (line, column)
}
