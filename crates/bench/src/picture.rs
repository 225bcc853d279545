//! Pictures for where one would rather look: lines over two axes, bands and marks, drawn as SVG that reads in black and white.
//!
//! Lines differ by their dashes, never by colour alone. Their names stand beside the picture, each behind a sample of its line, in the
//! order in which the lines end, so that no name lies on another or on a line.

use plotters::coord::Shift;
use plotters::coord::types::RangedCoordf64;
use plotters::prelude::*;

use crate::ticks::ticks;

/// A picture as plain data.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// What it shows.
    pub title: String,
    /// The axis to the right.
    pub x: Axis,
    /// The axis upward.
    pub y: Axis,
    /// Lines, in the order of their dashes.
    pub lines: Vec<Line>,
    /// Bands across the picture between two heights.
    pub bands: Vec<Band>,
    /// Single points.
    pub marks: Vec<Mark>,
}

/// An axis.
#[derive(Debug, Clone, PartialEq)]
pub struct Axis {
    /// What it measures, with the unit.
    pub label: String,
    /// Its least value.
    pub low: f64,
    /// Its greatest value.
    pub high: f64,
    /// Whether equal steps are equal ratios.
    pub logarithmic: bool,
}

/// A line.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Its name.
    pub name: String,
    /// Its points.
    pub points: Vec<(f64, f64)>,
}

/// A band.
#[derive(Debug, Clone, PartialEq)]
pub struct Band {
    /// Its name.
    pub name: String,
    /// Its lower edge.
    pub low: f64,
    /// Its upper edge.
    pub high: f64,
}

/// A marked point.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Its name.
    pub name: String,
    /// Where it is.
    pub at: (f64, f64),
}

/// Why a picture cannot be drawn.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the picture cannot be drawn: {0}")]
pub struct PictureError(String);

impl PictureError {
    pub(crate) const fn new(why: String) -> Self {
        Self(why)
    }
}

const WIDTH: u32 = 980;
const HEIGHT: u32 = 620;
/// Room for the names beside the picture, in letters a line.
const LETTERS: usize = 26;
const MARGIN: u32 = 270;
/// From one line of a name to the next, and from one name to the next.
const LINE_HEIGHT: i32 = 17;
const BETWEEN_NAMES: i32 = 8;
const ROOM_FOR_NAME: i32 = 22;
const SAMPLE: i32 = 34;
const INK: RGBColor = RGBColor(25, 25, 25);
const GRID: RGBColor = RGBColor(226, 226, 226);
const SHADE: RGBColor = RGBColor(208, 208, 208);

type Chart<'a> = ChartContext<'a, SVGBackend<'a>, Cartesian2d<RangedCoordf64, RangedCoordf64>>;

impl Axis {
    /// Where a value stands on the paper: its logarithm on a logarithmic axis.
    fn place(&self, value: f64) -> f64 {
        if self.logarithmic { value.log10() } else { value }
    }

    fn ends(&self) -> std::ops::Range<f64> {
        self.place(self.low)..self.place(self.high)
    }

    fn holds(&self, value: f64) -> bool {
        (self.low..=self.high).contains(&value)
    }

    fn label(value: f64) -> String {
        units::show_number(value, units::Digits::Significant(3))
    }
}

impl Picture {
    /// Draws it.
    ///
    /// # Errors
    /// [`PictureError`] when the axes have no extent or the drawing library refuses.
    pub fn svg(&self) -> Result<String, PictureError> {
        for axis in [&self.x, &self.y] {
            let ends = axis.ends();
            if !(ends.start.is_finite() && ends.end.is_finite() && ends.start < ends.end) {
                return Err(PictureError(format!("the axis `{}` has no extent", axis.label)));
            }
        }
        let mut svg = String::new();
        self.draw(&mut svg).map_err(PictureError)?;
        Ok(svg)
    }

    fn draw(&self, svg: &mut String) -> Result<(), String> {
        let area = SVGBackend::with_string(svg, (WIDTH, HEIGHT)).into_drawing_area();
        area.fill(&WHITE).map_err(said)?;
        let mut chart = ChartBuilder::on(&area)
            .margin(16)
            .margin_right(MARGIN)
            .caption(&self.title, ("sans-serif", 22, &INK))
            .x_label_area_size(56)
            .y_label_area_size(80)
            .build_cartesian_2d(self.x.ends(), self.y.ends())
            .map_err(said)?;
        chart
            .configure_mesh()
            .disable_mesh()
            .x_desc(&self.x.label)
            .y_desc(&self.y.label)
            .x_labels(0)
            .y_labels(0)
            .axis_desc_style(("sans-serif", 16, &INK))
            .draw()
            .map_err(said)?;
        self.grid(&area, &mut chart)?;
        self.bands(&area, &mut chart)?;
        let mut names = Vec::new();
        for (number, line) in self.lines.iter().enumerate() {
            let inside: Vec<(f64, f64)> = self.inside(line).collect();
            let (size, spacing) = dash(number);
            chart.draw_series(DashedLineSeries::new(inside.clone(), size, spacing, INK.stroke_width(2))).map_err(said)?;
            if let Some(end) = inside.last() {
                names.push((chart.backend_coord(end).1, number, line.name.as_str()));
            }
        }
        for mark in self.marks.iter().filter(|mark| self.x.holds(mark.at.0) && self.y.holds(mark.at.1)) {
            let at = chart.backend_coord(&(self.x.place(mark.at.0), self.y.place(mark.at.1)));
            area.draw(&Circle::new(at, 5, INK.filled())).map_err(said)?;
            word(&area, &mark.name, (at.0 + 9, at.1 - 16), 14)?;
        }
        names_beside(&area, &chart, names)?;
        area.present().map_err(said)
    }

    /// The points of a line that lie in the picture.
    fn inside(&self, line: &Line) -> impl Iterator<Item = (f64, f64)> {
        line.points.iter().filter(|(x, y)| self.x.holds(*x) && self.y.holds(*y)).map(|(x, y)| (self.x.place(*x), self.y.place(*y)))
    }

    /// Lines of the grid with the values they stand for.
    fn grid(&self, area: &DrawingArea<SVGBackend<'_>, Shift>, chart: &mut Chart<'_>) -> Result<(), String> {
        let (x, y) = (self.x.ends(), self.y.ends());
        for value in ticks(self.x.low, self.x.high, self.x.logarithmic) {
            let place = self.x.place(value);
            chart.draw_series([PathElement::new([(place, y.start), (place, y.end)], GRID)]).map_err(said)?;
            let at = chart.backend_coord(&(place, y.start));
            let label = Axis::label(value);
            word(area, &label, (at.0 - half_width(&label), at.1 + 7), 14)?;
        }
        for value in ticks(self.y.low, self.y.high, self.y.logarithmic) {
            let place = self.y.place(value);
            chart.draw_series([PathElement::new([(x.start, place), (x.end, place)], GRID)]).map_err(said)?;
            let at = chart.backend_coord(&(x.start, place));
            let label = Axis::label(value);
            word(area, &label, (at.0 - 2 * half_width(&label) - 8, at.1 - 5), 14)?;
        }
        Ok(())
    }

    fn bands(&self, area: &DrawingArea<SVGBackend<'_>, Shift>, chart: &mut Chart<'_>) -> Result<(), String> {
        for band in &self.bands {
            let (low, high) = (band.low.max(self.y.low), band.high.min(self.y.high));
            if low >= high {
                continue;
            }
            let corners = [(self.x.ends().start, self.y.place(low)), (self.x.ends().end, self.y.place(high))];
            chart.draw_series([Rectangle::new(corners, SHADE.filled())]).map_err(said)?;
            let top = chart.backend_coord(&(self.x.ends().start, self.y.place(high)));
            let bottom = chart.backend_coord(&(self.x.ends().start, self.y.place(low)));
            // A name stands in its band, or over it where the band is too thin.
            let y = if bottom.1 - top.1 >= ROOM_FOR_NAME { top.1 + 4 } else { top.1 - 18 };
            word(area, &band.name, (top.0 + 6, y), 14)?;
        }
        Ok(())
    }
}

/// Names in the margin, each beside a sample of its line, pushed apart where lines end close together.
fn names_beside(area: &DrawingArea<SVGBackend<'_>, Shift>, chart: &Chart<'_>, mut names: Vec<(i32, usize, &str)>) -> Result<(), String> {
    let (across, down) = chart.plotting_area().get_pixel_range();
    names.sort_unstable();
    let folded: Vec<Vec<String>> = names.iter().map(|(_, _, name)| fold(name)).collect();
    let height = |lines: &Vec<String>| LINE_HEIGHT * i32::try_from(lines.len()).unwrap_or(1) + BETWEEN_NAMES;
    let mut tops: Vec<i32> = Vec::new();
    let mut free = down.start;
    for ((end, _, _), lines) in names.iter().zip(&folded) {
        let top = (end - LINE_HEIGHT / 2).max(free);
        free = top + height(lines);
        tops.push(top);
    }
    // What is pushed below the picture pushes back.
    let mut limit = down.end;
    for (top, lines) in tops.iter_mut().zip(&folded).rev() {
        *top = (*top).min(limit - height(lines));
        limit = *top;
    }
    for (((_, number, _), lines), top) in names.iter().zip(&folded).zip(tops) {
        let (size, spacing) = dash(*number);
        let left = across.end + 10;
        let y = top + LINE_HEIGHT / 2;
        let (size, spacing) = (i32::try_from(size).unwrap_or(SAMPLE), i32::try_from(spacing).unwrap_or(0));
        let mut at = left;
        while at < left + SAMPLE {
            let to = (at + size).min(left + SAMPLE);
            area.draw(&PathElement::new([(at, y), (to, y)], INK.stroke_width(2))).map_err(said)?;
            at = to + spacing;
        }
        for (row, line) in (0_i32..).zip(lines) {
            word(area, line, (left + SAMPLE + 8, top + row * LINE_HEIGHT), 14)?;
        }
    }
    Ok(())
}

/// A name folded into lines that fit the margin.
fn fold(name: &str) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    // A grade stays with its number.
    let name = name.replace("VG ", "VG\u{a0}").replace("NLGI ", "NLGI\u{a0}");
    for piece in name.split(' ') {
        match lines.last_mut() {
            Some(line) if line.chars().count() + piece.chars().count() < LETTERS => {
                line.push(' ');
                line.push_str(piece);
            }
            _ => lines.push(piece.to_owned()),
        }
    }
    lines
}

fn word(area: &DrawingArea<SVGBackend<'_>, Shift>, text: &str, at: (i32, i32), size: u32) -> Result<(), String> {
    if text.is_empty() {
        return Ok(());
    }
    area.draw(&Text::new(text.to_owned(), at, ("sans-serif", size, &INK).into_text_style(&(WIDTH, HEIGHT)))).map_err(said)
}

/// Half the width of a figure's text; figures of a plain font are about half as wide as the font is high.
fn half_width(label: &str) -> i32 {
    i32::try_from(label.chars().count()).unwrap_or(1) * 4
}

/// Dash and gap of the lines in turn: whole, long, short, dotted.
fn dash(number: usize) -> (u32, u32) {
    [(20, 0), (13, 6), (6, 4), (2, 5), (18, 10), (3, 2)][number % 6]
}

fn said(error: impl std::fmt::Display) -> String {
    error.to_string()
}
