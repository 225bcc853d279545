//! The picture of the ladder: how much is served after each purchase, what each adds, and the best there could be.

use std::fmt::Write;

use crate::frame::Piece;
use crate::worked::Worked;

const WIDTH: f64 = 360.0;
const HEIGHT: f64 = 190.0;
/// The plot inside: left, right, top, bottom.
const LEFT: f64 = 44.0;
const RIGHT: f64 = 352.0;
const TOP: f64 = 10.0;
const BOTTOM: f64 = 150.0;

/// One step of the stairs, in shares of all that could be served.
#[derive(Clone, Copy)]
pub(crate) struct Step {
    pub before: f64,
    pub after: f64,
    pub best: f64,
}

/// The stairs.
pub(crate) struct Stairs(pub Vec<Step>);

impl Stairs {
    pub(crate) fn of(worked: &Worked) -> Self {
        let mut before = None;
        let step = |row: &planner::report::RungRow| {
            let from = before.replace(row.total).unwrap_or(row.total - row.gain);
            Step { before: worked.share(from), after: worked.share(row.total), best: worked.share(row.best_possible) }
        };
        Self(worked.report.ladder.iter().map(step).collect())
    }

    /// The picture; none of a ladder without rungs.
    pub(crate) fn draw(&self) -> Option<Piece> {
        if self.0.is_empty() {
            return None;
        }
        let mut svg = format!("<svg class=\"stairs\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" aria-hidden=\"true\">");
        // Writing to a string cannot fail.
        let _ = self.write(&mut svg);
        svg.push_str("</svg>");
        Some(Piece(svg))
    }

    fn write(&self, svg: &mut String) -> std::fmt::Result {
        let y = |share: f64| BOTTOM - share * (BOTTOM - TOP);
        for share in [0.0, 0.25, 0.5, 0.75, 1.0] {
            let at = y(share);
            write!(svg, "<line class=\"rule\" x1=\"{LEFT}\" x2=\"{RIGHT}\" y1=\"{at:.1}\" y2=\"{at:.1}\"/>")?;
            write!(svg, "<text x=\"{}\" y=\"{:.1}\" text-anchor=\"end\">{:.0} %</text>", LEFT - 6.0, at + 4.0, share * 100.0)?;
        }
        let count = self.0.iter().fold(0.0, |count, _| count + 1.0);
        let pitch = (RIGHT - LEFT) / count;
        let width = (pitch * 0.7).min(34.0);
        let mut left = LEFT + (pitch - width) / 2.0;
        for (number, step) in self.0.iter().enumerate() {
            let (before, after, best) = (y(step.before), y(step.after), y(step.best));
            write!(svg, "<rect class=\"had\" x=\"{left:.1}\" y=\"{before:.1}\" width=\"{width:.1}\" height=\"{:.1}\"/>", BOTTOM - before)?;
            write!(svg, "<rect class=\"gain\" x=\"{left:.1}\" y=\"{after:.1}\" width=\"{width:.1}\" height=\"{:.1}\"/>", before - after)?;
            let (from, to) = (left - 2.0, left + width + 2.0);
            write!(svg, "<line class=\"best\" x1=\"{from:.1}\" x2=\"{to:.1}\" y1=\"{best:.1}\" y2=\"{best:.1}\"/>")?;
            // With many rungs every other number would run into the next.
            if self.0.len() <= 14 || number % 4 == 3 || number == 0 {
                let middle = left + width / 2.0;
                write!(svg, "<text x=\"{middle:.1}\" y=\"{}\" text-anchor=\"middle\">{}</text>", BOTTOM + 16.0, number + 1)?;
            }
            left += pitch;
        }
        let middle = f64::midpoint(LEFT, RIGHT);
        write!(svg, "<text x=\"{middle}\" y=\"{}\" text-anchor=\"middle\">purchase</text>", HEIGHT - 6.0)
    }
}

/// One rung as a bar: served before, what it adds, and the best there could be.
pub(crate) fn bar(step: Step) -> Piece {
    let [before, after, best] = [step.before, step.after, step.best].map(|share| 200.0 * share.clamp(0.0, 1.0));
    Piece(format!(
        "<svg class=\"bar\" viewBox=\"0 0 200 10\" preserveAspectRatio=\"none\" aria-hidden=\"true\">\
         <rect class=\"all\" width=\"200\" height=\"10\"/><rect class=\"had\" width=\"{before:.1}\" height=\"10\"/>\
         <rect class=\"gain\" x=\"{before:.1}\" width=\"{:.1}\" height=\"10\"/>\
         <rect class=\"best\" x=\"{:.1}\" width=\"1.2\" height=\"10\"/></svg>",
        after - before,
        (best - 1.2).max(0.0)
    ))
}
