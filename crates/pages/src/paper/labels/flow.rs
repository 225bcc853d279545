//! Text that runs down a label, past what stands at its left and right.

use std::fmt::Write;

use super::measure::Face;
use crate::paper::escaped;

/// Between text and what stands beside it, mm.
const GAP: f64 = 1.2;

/// Something beside which text runs: how wide it is, and down to where it reaches.
#[derive(Debug, Clone, Copy, Default)]
struct Beside {
    width: f64,
    bottom: f64,
}

/// What is laid out so far: an area, filled from above.
#[derive(Debug, Clone)]
pub(super) struct Flow {
    from: f64,
    to: f64,
    /// Where the next line begins.
    y: f64,
    left: Beside,
    right: Beside,
    body: String,
}

impl Flow {
    /// An area from one edge to the other, beginning at a height.
    pub(super) fn new(from: f64, to: f64, y: f64) -> Self {
        Self { from, to, y, left: Beside::default(), right: Beside::default(), body: String::new() }
    }

    /// Down to where something stands.
    pub(super) fn bottom(&self) -> f64 {
        self.y.max(self.left.bottom).max(self.right.bottom)
    }

    /// Everything that was laid out.
    pub(super) fn into_body(self) -> String {
        self.body
    }

    /// From where to where the next line may reach.
    fn room(&self) -> (f64, f64) {
        let beside = |beside: Beside| if self.y < beside.bottom { beside.width + GAP } else { 0.0 };
        (self.from + beside(self.left), self.to - beside(self.right))
    }

    /// Leaves some room.
    pub(super) fn skip(&mut self, height: f64) {
        self.y += height;
    }

    /// Goes down to where the room becomes wider; false where it is as wide as it gets.
    fn widen(&mut self) -> bool {
        let next = [self.left.bottom, self.right.bottom].into_iter().filter(|bottom| *bottom > self.y).reduce(f64::min);
        next.is_some_and(|next| {
            self.y = next;
            true
        })
    }

    /// Sets something of that width and height at the right; text runs past it at its left.
    pub(super) fn right(&mut self, width: f64, height: f64, draw: impl FnOnce(f64, f64) -> String) {
        self.body.push_str(&draw(self.to - width, self.y));
        self.right = Beside { width, bottom: self.y + height };
    }

    /// Sets a block of boxes at the left, in as many rows as the room asks, each row but the first set into the gaps of the one before:
    /// they are squares on their points. Text runs past it at its right where there is room for words.
    pub(super) fn diamonds(&mut self, side: f64, boxes: &[impl Fn(f64, f64) -> String]) {
        /// Narrower than this no text is read.
        const NARROWEST: f64 = 26.0;
        if boxes.is_empty() {
            return;
        }
        while self.room().1 - self.room().0 < side && self.widen() {}
        let (from, to) = self.room();
        let (mut waiting, mut y, mut set_in, mut reaches) = (boxes.iter(), self.y, false, from);
        while waiting.len() > 0 {
            let mut x = if set_in { from + side / 2.0 } else { from };
            while x + side <= to + 1e-9 || x <= from {
                let Some(draw) = waiting.next() else { break };
                self.body.push_str(&draw(x, y));
                x += side;
                reaches = reaches.max(x);
            }
            if waiting.len() > 0 {
                // Where one fits alone there is no gap to set the next into.
                let alone = to - from < 1.5 * side;
                y += if alone { side } else { side / 2.0 };
                set_in = !alone && !set_in;
            }
        }
        let bottom = y + side;
        if to - reaches - GAP >= NARROWEST {
            self.left = Beside { width: reaches - self.from, bottom };
        } else {
            self.y = bottom;
        }
    }

    /// Sets a text, line by line. A word stays whole where it fits on a line of its own.
    pub(super) fn text(&mut self, text: &str, face: Face) {
        let mut rest = text.trim();
        while !rest.is_empty() {
            let (from, to) = self.room();
            let Some((line, left)) = face.line(rest, to - from, false) else {
                if self.widen() {
                    continue;
                }
                let Some((part, left)) = face.line(rest, to - from, true) else { return };
                self.line(part, from, face);
                rest = left;
                continue;
            };
            self.line(line, from, face);
            rest = left;
        }
    }

    /// Sets a word, and a text in another face that begins beside it and goes on beneath it.
    pub(super) fn headed(&mut self, word: &str, word_face: Face, text: &str, face: Face) {
        let wide = word_face.wide(word) + word_face.size * 0.5;
        while self.room().1 - self.room().0 < wide && self.widen() {}
        let (from, to) = self.room();
        let base = self.y + word_face.leading() - word_face.size * 0.25;
        self.put(word, from, base, word_face);
        let beside = face.line(text, to - from - wide, false).filter(|(line, _)| !line.is_empty());
        self.y += word_face.leading();
        let Some((line, rest)) = beside else { return self.text(text, face) };
        self.put(line, from + wide, base, face);
        self.text(rest, face);
    }

    /// Sets what is written by hand or known already, in cells one beside the other, the last of them on the ground where there is room.
    pub(super) fn cells(&mut self, cells: &[(&str, Option<&str>)], face: Face, ground: f64) {
        let mut tried = self.clone();
        tried.set_cells(cells, face);
        self.y += (ground - tried.bottom()).max(0.0);
        self.set_cells(cells, face);
    }

    /// A cell holds a name, and a value or a rule to write on.
    fn set_cells(&mut self, cells: &[(&str, Option<&str>)], face: Face) {
        /// A hand does not write smaller.
        const HAND: f64 = 4.2;
        /// As wide as a day.
        const DAY: &str = "0000-00-00 ";
        let Some(name) = cells.iter().map(|(name, _)| face.wide(name)).reduce(f64::max) else { return };
        let name = name + face.size * 0.4;
        let cell = name + cells.iter().filter_map(|(_, value)| *value).map(|value| face.wide(value)).fold(face.wide(DAY), f64::max);
        let height = if cells.iter().all(|(_, value)| value.is_some()) { face.leading() } else { HAND.max(face.leading()) };
        let mut waiting = cells.iter().peekable();
        while waiting.peek().is_some() {
            while self.room().1 - self.room().0 < cell && self.widen() {}
            let (from, to) = self.room();
            let base = self.y + height - face.size * 0.25;
            let mut x = from;
            while x + cell <= to + 1e-9 || x <= from {
                let Some((said, value)) = waiting.next() else { break };
                self.put(said, x, base, face);
                match value {
                    Some(value) => self.put(value, x + name, base, face),
                    None => {
                        let (rule, end) = (x + name, x + cell - face.size * 0.6);
                        self.body.push_str(&format!("<path d=\"M{rule:.2} {base:.2}H{end:.2}\" stroke=\"#000\" stroke-width=\"0.12\"/>"));
                    }
                }
                x += cell;
            }
            self.y += height;
        }
    }

    fn line(&mut self, text: &str, x: f64, face: Face) {
        self.put(text, x, self.y + face.leading() - face.size * 0.25, face);
        self.y += face.leading();
    }

    fn put(&mut self, text: &str, x: f64, y: f64, Face { size, bold }: Face) {
        let weight = if bold { " font-weight=\"bold\"" } else { "" };
        // Writing to a string cannot fail.
        let _ = write!(self.body, "<text x=\"{x:.2}\" y=\"{y:.2}\" font-size=\"{size:.2}\"{weight}>{}</text>", escaped(text));
    }
}
