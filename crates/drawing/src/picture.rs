//! The picture as a whole: the sketch, the numbers round it, and the rows for whatever has no spot.

use crate::labels::{PITCH, RADIUS, seats};
use crate::machines;
use crate::pen::{Pen, escaped};
use crate::sketch::{Sketch, shifted};

/// What is behind the picture: the page's own colour, which a style sheet calls `--paper`.
const PAPER: &str = "var(--paper, Canvas)";
/// As wide as a phone, so that a letter of 13 is one of 13 pixels there.
const WIDTH: f64 = 390.0;
/// Around the picture.
const EDGE: f64 = 2.0;
/// From the left edge to the numbers in rows, and above and beneath them.
const INSET: f64 = 14.0;
/// From one row of numbers to the next, and from one number of a row to the next.
const ROW: f64 = 28.0;
const COLUMN: f64 = PITCH + 2.0;
const LETTER: f64 = 13.0;

/// A picture of a machine.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Drawing {
    /// The picture as an `svg` element.
    pub svg: String,
    /// Each point's number and its name, in the order in which they were given. Numbers begin at one.
    pub numbered: Vec<(usize, String)>,
}

/// Draws a machine with its points.
///
/// A point whose name the template's sketch knows is shown where it is; the others stand in rows beneath it. Without a sketch, which is
/// when there is no template or none of that name, all of them stand in a plain box.
#[must_use]
pub fn draw(template: Option<&str>, points: &[&str]) -> Drawing {
    let numbered: Vec<_> = (1..).zip(points.iter().map(|name| (*name).to_owned())).collect();
    let sketch = template.and_then(machines::sketch);
    let mut picture = Picture { pen: Pen::default(), bottom: EDGE };
    let elsewhere = match sketch {
        Some(sketch) => {
            let elsewhere = picture.sketch(sketch, points);
            picture.beneath(&elsewhere);
            elsewhere
        }
        None => {
            let all: Vec<_> = (1..=points.len()).collect();
            picture.boxed(&all);
            all
        }
    };
    let title = format!("{}: where its points are", template.unwrap_or("machine"));
    Drawing { svg: picture.svg(&title, &described(sketch, &numbered, &elsewhere)), numbered }
}

struct Picture {
    pen: Pen,
    /// Down to where something is drawn.
    bottom: f64,
}

impl Picture {
    /// Draws the sketch and the numbers that have a spot on it; gives back the others.
    fn sketch(&mut self, sketch: &Sketch, points: &[&str]) -> Vec<usize> {
        let (width, height) = shifted(sketch.size, (0.0, 0.0));
        let known: Vec<_> = (1..).zip(points).flat_map(|(number, name)| sketch.spots_of(name).map(move |spot| (number, spot))).collect();
        let spots: Vec<_> = known.iter().map(|(_, spot)| *spot).collect();
        let seated = known.iter().zip(seats(&spots, width, height)).filter_map(|((number, spot), seat)| Some((*number, *spot, seat?)));
        let seated: Vec<_> = seated.collect();
        let above = seated.iter().fold(0.0, |above: f64, (.., seat)| above.min(seat.1 - RADIUS));
        let beneath = seated.iter().fold(height, |beneath: f64, (.., seat)| beneath.max(seat.1 + RADIUS));
        let by = ((WIDTH - width) / 2.0, EDGE - above);
        for part in sketch.parts {
            part.draw(&mut self.pen, by);
        }
        let moved = |(x, y): (f64, f64)| (x + by.0, y + by.1);
        for (_, spot, seat) in &seated {
            self.pen.leader(moved(*seat), moved(*spot));
        }
        // Last, so that the circles hide the ends of the leaders.
        for (number, spot, seat) in &seated {
            self.pen.spot(moved(*spot));
            self.pen.number(*number, moved(*seat), RADIUS);
        }
        self.bottom = beneath + by.1;
        (1..=points.len()).filter(|number| seated.iter().all(|(seated, ..)| seated != number)).collect()
    }

    /// Sets the numbers that have no spot beneath the sketch.
    fn beneath(&mut self, numbers: &[usize]) {
        if numbers.is_empty() {
            return;
        }
        self.bottom += INSET;
        self.pen.thin(&[(INSET, self.bottom), (WIDTH - INSET, self.bottom)]);
        self.bottom += LETTER + 6.0;
        self.pen.text("elsewhere on the machine", (INSET, self.bottom), "");
        self.bottom += INSET / 2.0;
        self.rows(numbers);
    }

    /// Sets all numbers into a plain box.
    fn boxed(&mut self, numbers: &[usize]) {
        let rows = numbers.chunks(per_row()).fold(0.0, |rows, _| rows + 1.0_f64).max(1.0);
        let bottom = self.bottom + rows * ROW + INSET;
        self.pen.rounded([EDGE, self.bottom, WIDTH - EDGE, bottom], 4.0);
        self.bottom += INSET / 2.0;
        self.rows(numbers);
        self.bottom = bottom;
    }

    fn rows(&mut self, numbers: &[usize]) {
        for row in numbers.chunks(per_row()) {
            let mut x = INSET + COLUMN / 2.0;
            for number in row {
                self.pen.number(*number, (x, self.bottom + ROW / 2.0), RADIUS);
                x += COLUMN;
            }
            self.bottom += ROW;
        }
    }

    fn svg(self, title: &str, description: &str) -> String {
        let (title, description) = (escaped(title), escaped(description));
        let height = (self.bottom + EDGE).ceil();
        let body = self.pen.svg;
        // What does not know style sheets' variables takes the white of the whole for paper.
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {height}\" role=\"img\" fill=\"white\">\
             <title>{title}</title><desc>{description}</desc>\
             <g fill=\"{PAPER}\" stroke=\"currentColor\" stroke-width=\"1.4\" stroke-linejoin=\"round\" stroke-linecap=\"round\" \
             font-family=\"system-ui, sans-serif\" font-size=\"{LETTER}\">{body}</g></svg>"
        )
    }
}

/// How many numbers stand in a row.
fn per_row() -> usize {
    (1..u8::MAX).take_while(|count| f64::from(*count) * COLUMN <= WIDTH - 2.0 * INSET).last().unwrap_or(1).into()
}

/// The picture in words, for whom it is read out.
fn described(sketch: Option<&Sketch>, numbered: &[(usize, String)], elsewhere: &[usize]) -> String {
    let sentence = |what: &str, elsewhere_wanted: bool| {
        let wanted = numbered.iter().filter(|(number, _)| elsewhere.contains(number) == elsewhere_wanted);
        let named: Vec<_> = wanted.map(|(number, name)| format!("{number} {name}")).collect();
        if named.is_empty() { format!("{what}.") } else { format!("{what}: {}.", named.join(", ")) }
    };
    let Some(sketch) = sketch else { return sentence("A plain box with the numbers of the points", true) };
    let shown = sentence(&format!("A line drawing, seen {}", sketch.seen), false);
    if elsewhere.is_empty() { shown } else { format!("{shown} {}", sentence("Elsewhere on the machine", true)) }
}
