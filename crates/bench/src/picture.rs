//! Pictures for where one would rather look: lines over two axes, bands and marks, drawn as SVG that reads in black and white.
//!
//! Lines differ by their dashes, never by colour alone, and carry their names at their ends.

use plotters::prelude::*;

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

const WIDTH: u32 = 900;
const HEIGHT: u32 = 620;
const INK: RGBColor = RGBColor(25, 25, 25);
const SHADE: RGBColor = RGBColor(214, 214, 214);

impl Axis {
    /// Where a value stands on the paper: its logarithm on a logarithmic axis.
    fn place(&self, value: f64) -> f64 {
        if self.logarithmic { value.log10() } else { value }
    }

    fn ends(&self) -> std::ops::Range<f64> {
        self.place(self.low)..self.place(self.high)
    }

    fn label(&self, place: f64) -> String {
        let value = if self.logarithmic { 10_f64.powf(place) } else { place };
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
            .margin_right(150)
            .caption(&self.title, ("sans-serif", 22, &INK))
            .x_label_area_size(48)
            .y_label_area_size(72)
            .build_cartesian_2d(self.x.ends(), self.y.ends())
            .map_err(said)?;
        for band in &self.bands {
            let corners = [(self.x.ends().start, self.y.place(band.low)), (self.x.ends().end, self.y.place(band.high))];
            chart.draw_series([Rectangle::new(corners, SHADE.filled())]).map_err(said)?;
            chart.draw_series([Self::word(&band.name, (self.x.ends().start, self.y.place(band.high)))]).map_err(said)?;
        }
        chart
            .configure_mesh()
            .x_desc(&self.x.label)
            .y_desc(&self.y.label)
            .x_label_formatter(&|place| self.x.label(*place))
            .y_label_formatter(&|place| self.y.label(*place))
            .axis_desc_style(("sans-serif", 16, &INK))
            .label_style(("sans-serif", 14, &INK))
            .bold_line_style(SHADE)
            .light_line_style(TRANSPARENT)
            .draw()
            .map_err(said)?;
        for (number, line) in self.lines.iter().enumerate() {
            let points: Vec<(f64, f64)> = line.points.iter().map(|(x, y)| (self.x.place(*x), self.y.place(*y))).collect();
            let (size, spacing) = dash(number);
            chart.draw_series(DashedLineSeries::new(points.clone(), size, spacing, INK.stroke_width(2))).map_err(said)?;
            if let Some(end) = points.last() {
                chart.draw_series([Self::word(&line.name, *end)]).map_err(said)?;
            }
        }
        for mark in &self.marks {
            let at = (self.x.place(mark.at.0), self.y.place(mark.at.1));
            chart.draw_series([Circle::new(at, 5, INK.filled())]).map_err(said)?;
            chart.draw_series([Self::word(&mark.name, at)]).map_err(said)?;
        }
        area.present().map_err(said)
    }

    fn word(text: &str, at: (f64, f64)) -> Text<'static, (f64, f64), String> {
        Text::new(text.to_owned(), at, ("sans-serif", 14, &INK).into_text_style(&(WIDTH, HEIGHT)))
    }
}

/// Dash and gap of the lines in turn: whole, long, short, dotted.
fn dash(number: usize) -> (u32, u32) {
    [(20, 0), (14, 6), (7, 5), (2, 5), (14, 3), (4, 3)][number % 6]
}

fn said(error: impl std::fmt::Display) -> String {
    error.to_string()
}
