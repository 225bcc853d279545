//! The shelves with what must be apart: cupboards side by side, in each its shelves from high to low, and below what would happen.

use std::fmt::Write as _;

use handling::together::{Conflict, Height, Shelf};
use reference::Apart;

const CUPBOARD: usize = 300;
const GAP: usize = 90;
const ROW: usize = 22;
const HEAD: usize = 34;
const LETTERS: usize = 38;

/// Draws them; what stands between the cupboards is the distance.
pub(crate) fn draw(shelves: &[Shelf], conflicts: &[Conflict<'_>], name: &dyn Fn(&str) -> String) -> String {
    let cupboards = shelves.iter().map(|shelf| shelf.cupboard).max().unwrap_or(1);
    let lines: Vec<(usize, Vec<Vec<String>>)> = (1..=cupboards).map(|cupboard| (cupboard, rows(shelves, cupboard, name))).collect();
    let tall = lines.iter().map(|(_, rows)| height(rows)).max().unwrap_or(0);
    let below: Vec<String> = conflicts.iter().flat_map(|conflict| said(conflict, name, cupboards)).collect();
    let width = cupboards * CUPBOARD + (cupboards - 1) * GAP + 40;
    let all = 30 + HEAD + tall + 30 + below.len() * ROW + 20;
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {all}\" width=\"{width}\" height=\"{all}\" role=\"img\" \
         font-family=\"sans-serif\" font-size=\"14\" fill=\"#191919\"><title>Where each stands</title>\
         <rect width=\"{width}\" height=\"{all}\" fill=\"#fff\"/>"
    );
    for (cupboard, rows) in &lines {
        let x = 20 + (cupboard - 1) * (CUPBOARD + GAP);
        text(&mut svg, x, 30, &format!("cupboard {cupboard}"), true);
        line(&mut svg, (x, 40), (x, 40 + HEAD + tall));
        line(&mut svg, (x + CUPBOARD, 40), (x + CUPBOARD, 40 + HEAD + tall));
        let mut y = 40;
        for row in rows {
            for words in row {
                y += ROW;
                text(&mut svg, x + 12, y, words, false);
            }
            y += 12;
            line(&mut svg, (x, y), (x + CUPBOARD, y));
        }
        if *cupboard < cupboards {
            let (from, to, middle) = (x + CUPBOARD + 8, x + CUPBOARD + GAP - 8, x + CUPBOARD + GAP / 2);
            line(&mut svg, (from, 70), (to, 70));
            let _ = write!(svg, "<text x=\"{middle}\" y=\"62\" text-anchor=\"middle\">{}</text>", Apart::DISTANCE);
            for (end, back) in [(from, from + 8), (to, to - 8)] {
                let _ = write!(svg, "<path d=\"M{back} 65 L{end} 70 L{back} 75\" fill=\"none\" stroke=\"#191919\"/>");
            }
        }
    }
    for (place, words) in below.iter().enumerate() {
        text(&mut svg, 20, 40 + HEAD + tall + 30 + place * ROW, words, false);
    }
    svg.push_str("</svg>");
    svg
}

/// What stands on each shelf of a cupboard, as lines.
fn rows(shelves: &[Shelf], cupboard: usize, name: &dyn Fn(&str) -> String) -> Vec<Vec<String>> {
    let of_shelf = |shelf: &Shelf| {
        let height = match shelf.height {
            Height::Any => String::new(),
            height => format!(" ({})", height.words()),
        };
        let locked = if shelf.locked { ", locked" } else { "" };
        let mut lines = vec![format!("{}{height}{locked}", shelf.group.replace('-', " "))];
        lines.extend(shelf.fluids.iter().flat_map(|key| wrapped(&format!("· {}", name(key)), LETTERS)));
        lines
    };
    shelves.iter().filter(|shelf| shelf.cupboard == cupboard).map(of_shelf).collect()
}

fn height(rows: &[Vec<String>]) -> usize {
    rows.iter().map(|row| row.len() * ROW + 12).sum()
}

fn said(conflict: &Conflict<'_>, name: &dyn Fn(&str) -> String, cupboards: usize) -> Vec<String> {
    let [one, other] = conflict.fluids;
    let does: Vec<&str> = conflict.reaction.iter().map(|reaction| reaction.words()).collect();
    let does = if does.is_empty() { "a spill spreads both".to_owned() } else { does.join(", ") };
    wrapped(&format!("× {} | {}: {does}; {}", name(one), name(other), conflict.apart.words()), LETTERS * cupboards + LETTERS / 2)
}

fn wrapped(words: &str, letters: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split(' ') {
        match lines.last_mut() {
            Some(line) if line.chars().count() + word.chars().count() < letters => {
                line.push(' ');
                line.push_str(word);
            }
            Some(_) => lines.push(format!("\u{2003}{word}")),
            None => lines.push(word.to_owned()),
        }
    }
    lines
}

fn text(svg: &mut String, x: usize, y: usize, words: &str, bold: bool) {
    let weight = if bold { " font-weight=\"bold\"" } else { "" };
    let escaped = words.replace('&', "&amp;").replace('<', "&lt;");
    let _ = write!(svg, "<text x=\"{x}\" y=\"{y}\"{weight}>{escaped}</text>");
}

fn line(svg: &mut String, (x1, y1): (usize, usize), (x2, y2): (usize, usize)) {
    let _ = write!(svg, "<path d=\"M{x1} {y1} L{x2} {y2}\" fill=\"none\" stroke=\"#191919\" stroke-width=\"1.5\"/>");
}
