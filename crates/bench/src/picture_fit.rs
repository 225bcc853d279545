//! The picture of a fit: the tolerance zones of hole and shaft about the nominal size, and the parts as measured drawn in.

use plotters::coord::Shift;
use plotters::coord::types::RangedCoordf64;
use plotters::prelude::*;

use crate::picture::PictureError;
use crate::ticks::ticks;

/// Zones side by side over one scale of deviations.
#[derive(Debug, Clone, PartialEq)]
pub struct Zones {
    /// What it shows.
    pub title: String,
    /// The hole's and the shaft's, from left to right.
    pub zones: Vec<Zone>,
}

/// One tolerance zone, in micrometres from the nominal size.
#[derive(Debug, Clone, PartialEq)]
pub struct Zone {
    /// What it is called.
    pub name: String,
    /// Lower limit.
    pub lower: f64,
    /// Upper limit.
    pub upper: f64,
    /// The part as measured, and how far either way it may be with a chance of 95 %.
    pub measured: Option<(f64, f64)>,
}

type Chart<'a> = ChartContext<'a, SVGBackend<'a>, Cartesian2d<RangedCoordf64, RangedCoordf64>>;

const WIDTH: u32 = 760;
const HEIGHT: u32 = 560;
const INK: RGBColor = RGBColor(25, 25, 25);
const GRID: RGBColor = RGBColor(226, 226, 226);
const SHADES: [RGBColor; 2] = [RGBColor(232, 232, 232), RGBColor(196, 196, 196)];
/// A zone takes this much of its column.
const FROM: f64 = 0.12;
const TO: f64 = 0.55;

impl Zones {
    /// Draws it.
    ///
    /// # Errors
    /// [`PictureError`] when there is nothing to draw or the drawing library refuses.
    pub fn svg(&self) -> Result<String, PictureError> {
        let mut svg = String::new();
        self.draw(&mut svg).map_err(PictureError::new)?;
        Ok(svg)
    }

    /// Least and greatest deviation shown, with the line of the nominal size among them.
    fn ends(&self) -> (f64, f64) {
        let (mut low, mut high) = (0.0_f64, 0.0_f64);
        for zone in &self.zones {
            low = low.min(zone.lower);
            high = high.max(zone.upper);
            if let Some((at, either_way)) = zone.measured {
                low = low.min(at - either_way);
                high = high.max(at + either_way);
            }
        }
        let room = ((high - low) * 0.12).max(1.0);
        (low - room, high + room)
    }

    fn draw(&self, svg: &mut String) -> Result<(), String> {
        let (low, high) = self.ends();
        let area = SVGBackend::with_string(svg, (WIDTH, HEIGHT)).into_drawing_area();
        area.fill(&WHITE).map_err(said)?;
        let columns: f64 = self.zones.iter().map(|_| 1.0).sum();
        let mut chart = ChartBuilder::on(&area)
            .margin(16)
            .caption(&self.title, ("sans-serif", 22, &INK))
            .y_label_area_size(84)
            .build_cartesian_2d(0.0..columns, low..high)
            .map_err(said)?;
        chart
            .configure_mesh()
            .disable_mesh()
            .disable_x_axis()
            .y_labels(0)
            .y_desc("deviation from the nominal size, µm")
            .axis_desc_style(("sans-serif", 16, &INK))
            .draw()
            .map_err(said)?;
        for value in ticks(low, high, false) {
            let style = if value.abs() < 1e-9 { INK.stroke_width(2) } else { GRID.stroke_width(1) };
            chart.draw_series([PathElement::new([(0.0, value), (columns, value)], style)]).map_err(said)?;
            let at = chart.backend_coord(&(0.0, value));
            let label = units::show_number(value, units::Digits::Significant(3));
            let letters = i32::try_from(label.chars().count()).unwrap_or(1);
            word(&area, &label, (at.0 - 8 * letters - 8, at.1 - 6))?;
        }
        let mut left = 0.0;
        for (zone, shade) in self.zones.iter().zip(SHADES.iter().cycle()) {
            let corners = [(left + FROM, zone.lower), (left + TO, zone.upper)];
            chart.draw_series([Rectangle::new(corners, shade.filled())]).map_err(said)?;
            chart.draw_series([Rectangle::new(corners, INK.stroke_width(2))]).map_err(said)?;
            let top = chart.backend_coord(&(left + FROM, zone.upper));
            word(&area, &zone.name, (top.0, top.1 - 18))?;
            // The upper figure stands over its edge and the lower one under it, so that they meet neither each other nor a line.
            for (limit, lift) in [(zone.upper, -15), (zone.lower, 3)] {
                let at = chart.backend_coord(&(left + TO, limit));
                word(&area, &signed(limit), (at.0 + 8, at.1 + lift))?;
            }
            if let Some((at, either_way)) = zone.measured {
                part(&area, &mut chart, left, at, either_way)?;
            }
            left += 1.0;
        }
        area.present().map_err(said)
    }
}

/// A measured part: a dot with a bar as long as it may be wrong, named beside its zone.
fn part(area: &DrawingArea<SVGBackend<'_>, Shift>, chart: &mut Chart<'_>, left: f64, at: f64, either_way: f64) -> Result<(), String> {
    const NAMED_AT: f64 = 0.66;
    let x = left + FROM.midpoint(TO);
    chart.draw_series([PathElement::new([(x, at - either_way), (x, at + either_way)], INK.stroke_width(2))]).map_err(said)?;
    chart.draw_series([PathElement::new([(x, at), (left + NAMED_AT, at)], INK.stroke_width(1))]).map_err(said)?;
    for end in [at - either_way, at + either_way] {
        chart.draw_series([PathElement::new([(x - 0.03, end), (x + 0.03, end)], INK.stroke_width(2))]).map_err(said)?;
    }
    area.draw(&Circle::new(chart.backend_coord(&(x, at)), 5, INK.filled())).map_err(said)?;
    let name = chart.backend_coord(&(left + NAMED_AT, at));
    word(area, &format!("measured {}", signed(at)), (name.0 + 4, name.1 - 7))
}

/// A deviation with its sign, as on a drawing.
fn signed(value: f64) -> String {
    let number = units::show_number(value.abs(), units::Digits::Decimals(1));
    match value {
        value if value > 0.05 => format!("+{number}"),
        value if value < -0.05 => format!("−{number}"),
        _ => "0".to_owned(),
    }
}

fn word(area: &DrawingArea<SVGBackend<'_>, Shift>, text: &str, at: (i32, i32)) -> Result<(), String> {
    area.draw(&Text::new(text.to_owned(), at, ("sans-serif", 14, &INK).into_text_style(&(WIDTH, HEIGHT)))).map_err(said)
}

fn said(error: impl std::fmt::Display) -> String {
    error.to_string()
}
