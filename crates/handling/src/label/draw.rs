//! A label as an SVG picture, in millimetres: pictograms as large as the rules ask, text as large as fits.

use super::classify::number;
use super::{Label, Line};

/// Shorter and longer side below which no label is drawn: what Regulation (EC) No 1272/2008, Annex I, 1.2.1 asks of bottles up to 3 L.
pub const SMALLEST_MM: (f64, f64) = (52.0, 74.0);

/// Each pictogram covers this share of the label that was asked for …
const PICTOGRAM_SHARE: f64 = 1.0 / 15.0;
/// … and at least this area, mm².
const PICTOGRAM_MM2: f64 = 100.0;
const MARGIN: f64 = 2.5;
/// Heights of letters that are tried, mm; below the last nobody can read.
const LARGEST: f64 = 3.4;
const FINEST: f64 = 1.8;
/// Width of a letter over its height, on the wide side for the usual faces.
const LETTER: f64 = 0.53;
const BOLD_LETTER: f64 = 0.6;
/// Keeps a number and its unit on one line.
const NO_BREAK: char = '\u{a0}';
const LEADING: f64 = 1.22;

/// Draws a label of this width and height. It is never smaller than [`SMALLEST_MM`], and it grows downward where the text would else not
/// be readable: nothing of it is left out. The size drawn stands in `width` and `height` of the picture.
#[must_use]
pub fn draw(label: &Label, width_mm: f64, height_mm: f64) -> String {
    let asked = |size: f64| if size.is_finite() { size.clamp(SMALLEST_MM.0, 1000.0) } else { SMALLEST_MM.0 };
    let (width, height) = (asked(width_mm), asked(height_mm));
    let height = if width < SMALLEST_MM.1 { height.max(SMALLEST_MM.1) } else { height };
    // A square on its point of diagonal d has the area d²/2.
    let sign = (2.0 * (width * height * PICTOGRAM_SHARE).max(PICTOGRAM_MM2)).sqrt();
    let mut letter = LARGEST;
    loop {
        let sheet = Sheet::lay(label, width, sign, letter);
        let needed = sheet.y + MARGIN;
        letter -= 0.1;
        if needed <= height || letter < FINEST {
            return sheet.svg(label, height.max(needed));
        }
    }
}

/// What is laid out so far.
struct Sheet {
    width: f64,
    /// Where the next line begins.
    y: f64,
    body: String,
}

/// How a paragraph is set.
#[derive(Clone, Copy)]
struct Face {
    size: f64,
    bold: bool,
}

impl Sheet {
    fn lay(label: &Label, width: f64, sign: f64, letter: f64) -> Self {
        let mut sheet = Self { width, y: MARGIN, body: String::new() };
        let plain = Face { size: letter, bold: false };
        let bold = Face { size: letter, bold: true };
        sheet.paragraph(&label.product, Face { size: letter * 1.5, bold: true });
        if !label.contents.is_empty() {
            sheet.paragraph(&contents(label), plain);
        }
        sheet.pictograms(label, sign);
        if let Some(signal) = label.signal {
            sheet.paragraph(signal.word(), Face { size: letter * 1.5, bold: true });
        }
        sheet.paragraph(&sentences(&label.hazards), bold);
        sheet.paragraph(&sentences(&label.precautions), plain);
        if !label.never_with.is_empty() {
            let never: Vec<_> = label.never_with.iter().map(|never| never.what.as_str()).collect();
            sheet.paragraph(&format!("Never with: {}.", never.join("; ")), bold);
        }
        sheet.paragraph(&label.first_aid, plain);
        sheet.written(label, Face { size: letter.min(2.6), bold: false });
        sheet
    }

    /// Rows of squares on their points, every second row set into the gaps of the one before.
    fn pictograms(&mut self, label: &Label, side: f64) {
        if label.pictograms.is_empty() {
            return;
        }
        let room = self.width - 2.0 * MARGIN;
        let mut left = label.pictograms.iter();
        let (mut top, mut set_in) = (self.y, false);
        loop {
            let mut x = MARGIN + if set_in { side / 2.0 } else { 0.0 };
            let mut placed = false;
            while x + side <= MARGIN + room + 1e-9 || x <= MARGIN {
                let Some(pictogram) = left.next() else { break };
                self.body.push_str(&pictogram.placed(x, top, side));
                x += side;
                placed = true;
            }
            if placed {
                self.y = top + side;
            }
            if left.len() == 0 {
                break;
            }
            let narrow = room < side * 2.0;
            top += if narrow { side } else { side / 2.0 };
            set_in = !narrow && !set_in;
        }
        self.y += 1.0;
    }

    /// Sets a text in lines from margin to margin.
    fn paragraph(&mut self, text: &str, face: Face) {
        if text.is_empty() {
            return;
        }
        for line in textwrap::wrap(text, letters(self.width - 2.0 * MARGIN, face)) {
            self.line(MARGIN, &line, face);
        }
        self.y += face.size * 0.35;
    }

    fn line(&mut self, x: f64, text: &str, Face { size, bold }: Face) {
        self.y += size * LEADING;
        let weight = if bold { " font-weight=\"bold\"" } else { "" };
        let y = self.y - size * 0.25;
        self.body.push_str(&format!("<text x=\"{x:.2}\" y=\"{y:.2}\" font-size=\"{size:.2}\"{weight}>{}</text>\n", escaped(text)));
    }

    /// What is written by hand or known already: a name and a rule to write on.
    fn written(&mut self, label: &Label, face: Face) {
        let written = &label.written;
        let rows = [
            ("Decanted", &written.decanted),
            ("Opened", &written.opened),
            ("Keep until", &written.keep_until),
            ("Lot", &written.lot),
            ("Poison centre", &written.poison_centre),
        ];
        // Two side by side, the last on a line of its own.
        let half = (self.width - 2.0 * MARGIN) / 2.0;
        let row_height = face.size.max(2.2) * 1.5;
        for (place, (name, value)) in rows.iter().enumerate() {
            let alone = place + 1 == rows.len();
            let right = place % 2 == 1;
            let x = if right { MARGIN + half + 1.0 } else { MARGIN };
            let end = if right || alone { self.width - MARGIN } else { MARGIN + half - 1.0 };
            if !right {
                self.y += row_height;
            }
            let y = self.y - face.size * 0.25;
            let from = x + letters_wide(name, face) * 1.15 + 0.8;
            let size = face.size;
            self.body.push_str(&format!("<text x=\"{x:.2}\" y=\"{y:.2}\" font-size=\"{size:.2}\">{name}</text>\n"));
            match value {
                // A long entry is pressed together: it must not run out of its place.
                Some(value) => {
                    let wide = letters_wide(value, face);
                    let pressed = if wide > end - from {
                        format!(" textLength=\"{:.2}\" lengthAdjust=\"spacingAndGlyphs\"", end - from)
                    } else {
                        String::new()
                    };
                    self.body.push_str(&format!(
                        "<text x=\"{from:.2}\" y=\"{y:.2}\" font-size=\"{size:.2}\"{pressed}>{}</text>\n",
                        escaped(value)
                    ));
                }
                None => self.body.push_str(&format!("<path d=\"M{from:.2} {y:.2}H{end:.2}\" stroke=\"#000\" stroke-width=\"0.12\"/>\n")),
            }
        }
    }

    fn svg(&self, label: &Label, height: f64) -> String {
        let Self { width, body, .. } = self;
        let title = escaped(&label.product);
        let signs: Vec<_> = label.pictograms.iter().map(|pictogram| pictogram.name()).collect();
        let codes: Vec<_> = label.hazards.iter().map(|line| line.code.as_str()).collect();
        let signal = label.signal.map_or("no signal word", |signal| signal.word());
        let described = format!("Label: {signal}; {}; {}", signs.join(", "), codes.join(", "));
        let (inner_width, inner_height) = (width - 0.6, height - 0.6);
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width:.1}mm\" height=\"{height:.1}mm\" viewBox=\"0 0 {width:.1} {height:.1}\" \
             role=\"img\" font-family=\"system-ui, Helvetica, Arial, sans-serif\">\n<title>{title}</title>\n<desc>{described}</desc>\n\
             <rect x=\"0.3\" y=\"0.3\" width=\"{inner_width:.1}\" height=\"{inner_height:.1}\" rx=\"1\" fill=\"#fff\" stroke=\"#000\" \
             stroke-width=\"0.2\"/>\n{body}</svg>\n"
        )
    }
}

fn contents(label: &Label) -> String {
    let line = |line: &super::ContentLine| {
        let (low, high) = (number(line.low_percent), number(line.high_percent));
        if low == high { format!("{} {high}{NO_BREAK}%", line.name) } else { format!("{} {low}–{high}{NO_BREAK}%", line.name) }
    };
    label.contents.iter().map(line).collect::<Vec<_>>().join(", ")
}

/// The wordings one after another. The codes are for who looks them up; on a bottle they only take room.
fn sentences(lines: &[Line]) -> String {
    lines.iter().map(|line| format!("{}.", line.text)).collect::<Vec<_>>().join(" ")
}

/// How many letters fit in a width; at least one.
fn letters(width: f64, face: Face) -> usize {
    let wide = face.size * if face.bold { BOLD_LETTER } else { LETTER };
    (1..400_u16).take_while(|count| f64::from(*count) * wide <= width).last().unwrap_or(1).into()
}

fn letters_wide(text: &str, face: Face) -> f64 {
    text.chars().fold(0.0, |wide, _| wide + face.size * LETTER)
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
