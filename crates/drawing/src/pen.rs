//! Lines of a drawing as SVG.

use std::f64::consts::TAU;
use std::fmt::{Display, Formatter, Result, Write};

const THIN: &str = " stroke-width=\"0.8\"";
const DASHED: &str = " stroke-width=\"1\" stroke-dasharray=\"4 3\"";
/// Half the breadth of the paper under a leader.
const STRIP: f64 = 1.5;

/// Writes lines. Closed shapes are filled with paper, so that they hide what they lie on.
#[derive(Default)]
pub(crate) struct Pen {
    pub svg: String,
}

/// A coordinate to a tenth.
struct Tenth(f64);

impl Display for Tenth {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        // The sum with zero makes a plain zero of a negative one.
        write!(f, "{}", (self.0 * 10.0).round() / 10.0 + 0.0)
    }
}

impl Pen {
    pub(crate) fn line(&mut self, places: &[(f64, f64)]) {
        self.path(places, "", " fill=\"none\"");
    }

    pub(crate) fn thin(&mut self, places: &[(f64, f64)]) {
        self.path(places, "", &format!(" fill=\"none\"{THIN}"));
    }

    pub(crate) fn hidden(&mut self, places: &[(f64, f64)]) {
        self.path(places, "", &format!(" fill=\"none\"{DASHED}"));
    }

    pub(crate) fn outline(&mut self, places: &[(f64, f64)]) {
        self.path(places, "Z", "");
    }

    /// A line from a number to a spot, on a strip of paper that parts it from the lines it crosses.
    pub(crate) fn leader(&mut self, from: (f64, f64), to: (f64, f64)) {
        let (x, y) = (to.0 - from.0, to.1 - from.1);
        let (x, y) = (x * STRIP / x.hypot(y), y * STRIP / x.hypot(y));
        let strip = [(from.0 - y, from.1 + x), (to.0 - y, to.1 + x), (to.0 + y, to.1 - x), (from.0 + y, from.1 - x)];
        self.path(&strip, "Z", " stroke=\"none\"");
        self.path(&[from, to], "", THIN);
    }

    fn path(&mut self, places: &[(f64, f64)], end: &str, style: &str) {
        let mut letter = 'M';
        self.svg.push_str("<path d=\"");
        for (x, y) in places {
            self.write(format_args!("{letter}{} {}", Tenth(*x), Tenth(*y)));
            letter = 'L';
        }
        self.write(format_args!("{end}\"{style}/>"));
    }

    pub(crate) fn rounded(&mut self, [left, top, right, bottom]: [f64; 4], corner: f64) {
        let (x, y, width, height) = (left.min(right), top.min(bottom), (right - left).abs(), (bottom - top).abs());
        let [x, y, width, height, corner] = [x, y, width, height, corner].map(Tenth);
        self.write(format_args!("<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" rx=\"{corner}\"/>"));
    }

    pub(crate) fn oval(&mut self, (x, y): (f64, f64), (across, down): (f64, f64)) {
        let [x, y, across, down] = [x, y, across.abs(), down.abs()].map(Tenth);
        self.write(format_args!("<ellipse cx=\"{x}\" cy=\"{y}\" rx=\"{across}\" ry=\"{down}\"/>"));
    }

    pub(crate) fn spot(&mut self, (x, y): (f64, f64)) {
        self.write(format_args!("<circle cx=\"{}\" cy=\"{}\" r=\"2.6\" fill=\"currentColor\" stroke=\"none\"/>", Tenth(x), Tenth(y)));
    }

    /// A number in a circle of this radius.
    pub(crate) fn number(&mut self, number: usize, (x, y): (f64, f64), radius: f64) {
        self.write(format_args!("<circle cx=\"{}\" cy=\"{}\" r=\"{radius}\"/>", Tenth(x), Tenth(y)));
        // Letters stand on their line: a third of their height beneath the middle centres them.
        self.text(&number.to_string(), (x, y + 4.6), " text-anchor=\"middle\"");
    }

    pub(crate) fn text(&mut self, text: &str, (x, y): (f64, f64), style: &str) {
        self.write(format_args!("<text x=\"{}\" y=\"{}\"{style} fill=\"currentColor\" stroke=\"none\">", Tenth(x), Tenth(y)));
        self.svg.push_str(&escaped(text));
        self.svg.push_str("</text>");
    }

    fn write(&mut self, words: std::fmt::Arguments<'_>) {
        // Writing to a string cannot fail.
        let _ = self.svg.write_fmt(words);
    }
}

/// Text as it may stand in SVG. What no XML may hold, such as a control character, is left out.
pub(crate) fn escaped(text: &str) -> String {
    let allowed = |letter: &char| matches!(letter, '\t' | '\n' | ' '..='\u{fffd}' | '\u{10000}'..);
    let text: String = text.chars().filter(allowed).collect();
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// Places round a middle, at so many even steps.
pub(crate) fn round((x, y): (f64, f64), (across, down): (f64, f64), steps: u16) -> Vec<(f64, f64)> {
    let angle = |step: u16| TAU * f64::from(step) / f64::from(steps);
    (0..steps).map(|step| (x + across * angle(step).cos(), y + down * angle(step).sin())).collect()
}
