//! How labels lie on their sheet.

use std::fmt;

use units::{Digits, Length, Quantity, show_number};

use crate::paper::Size;

/// Width and height below which no label is drawn, mm: name, signal word and four signs of the least size need as much.
const SMALLEST_MM: (f64, f64) = (60.0, 25.0);
/// Sums of measurements in millimetres are no more exact.
const SLACK_MM: f64 = 0.1;

/// How labels lie on their sheet, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Geometry {
    /// Width of a label.
    pub(super) width: f64,
    /// Height of a label.
    pub(super) height: f64,
    across: u8,
    down: u8,
    /// From the sheet's left edge to the first label.
    pub(super) left: f64,
    /// From the sheet's upper edge to the first label.
    pub(super) top: f64,
    gap_x: f64,
    gap_y: f64,
}

/// Sheets that are sold in many places, by their measurements; *common practice*. The margins that are not said are the same on both sides.
const OFFERED: [(Size, &str); 8] = [
    (Size::A4, "99.1 x 67.7 mm, 2 x 4, gaps 2.5 x 0 mm"),
    (Size::A4, "99.1 x 139 mm, 2 x 2, gaps 2.5 x 0 mm"),
    (Size::A4, "105 x 74 mm, 2 x 4"),
    (Size::A4, "63.5 x 38.1 mm, 3 x 7, gaps 2.5 x 0 mm"),
    (Size::Letter, "4 x 3.333 in, 2 x 3, gaps 0.1875 x 0 in"),
    (Size::Letter, "4 x 2 in, 2 x 5, gaps 0.1875 x 0 in"),
    (Size::Letter, "8.5 x 5.5 in, 1 x 2"),
    (Size::Letter, "2.625 x 1 in, 3 x 10, gaps 0.125 x 0 in"),
];

impl Geometry {
    /// The sheets offered for a size of paper, in the notation that [`parse`](Self::parse) reads; the first is the usual one.
    pub fn offered(size: Size) -> impl Iterator<Item = &'static str> {
        OFFERED.into_iter().filter(move |(of, _)| *of == size).map(|(_, text)| text)
    }

    /// Reads `63.5 x 38.1 mm, 3 x 7, margins 7.25 x 15.15 mm, gaps 2.5 x 0 mm`: width and height of a label, labels across and down, from
    /// the left and upper edge to the first, and between them. Margins that are not said are the same on both sides; gaps that are not
    /// said are none.
    ///
    /// # Errors
    /// A sentence that says what is wrong and what would fit.
    pub fn parse(text: &str, size: Size) -> Result<Self, String> {
        let mut parts = text.split(',').map(str::trim);
        let (width, height) = pair(parts.next().unwrap_or_default())?;
        let (across, down) = counts(parts.next().unwrap_or_default())?;
        let (mut margins, mut gaps) = (None, (0.0, 0.0));
        for part in parts {
            match part.split_once(' ') {
                Some(("margins", rest)) => margins = Some(pair(rest)?),
                Some(("gaps", rest)) => gaps = pair(rest)?,
                _ => return Err(format!("“{part}” is neither margins nor gaps; write such as `margins 7.25 x 15.15 mm, gaps 2.5 x 0 mm`")),
            }
        }
        let fill = |one: f64, count: u8, gap: f64| f64::from(count) * (one + gap) - gap;
        let (filled_x, filled_y) = (fill(width, across, gaps.0), fill(height, down, gaps.1));
        let paper = size.mm();
        let (left, top) = margins.unwrap_or(((paper.0 - filled_x) / 2.0, (paper.1 - filled_y) / 2.0));
        let inside = |from: f64, filled: f64, whole: f64| from > -SLACK_MM && from + filled < whole + SLACK_MM;
        if !inside(left, filled_x, paper.0) || !inside(top, filled_y, paper.1) {
            let (name, wide, high) = (size.name(), filled_x + left.max(0.0), filled_y + top.max(0.0));
            return Err(format!(
                "these labels take {wide:.1} by {high:.1} mm with their margins, and a sheet of {name} is {} by {} mm",
                paper.0, paper.1
            ));
        }
        if width < SMALLEST_MM.0 || height < SMALLEST_MM.1 {
            return Err(format!(
                "a label of {width:.1} by {height:.1} mm has no room for a name, a signal word and signs of the least size; take one of at \
                 least {} by {} mm",
                SMALLEST_MM.0, SMALLEST_MM.1
            ));
        }
        Ok(Self { width, height, across, down, left, top, gap_x: gaps.0, gap_y: gaps.1 })
    }

    /// The upper left corner of each label of a sheet, row by row.
    pub(super) fn places(self) -> impl Iterator<Item = (f64, f64)> {
        let x = move |column: u8| self.left + f64::from(column) * (self.width + self.gap_x);
        let y = move |row: u8| self.top + f64::from(row) * (self.height + self.gap_y);
        (0..self.down).flat_map(move |row| (0..self.across).map(move |column| (x(column), y(row))))
    }
}

impl fmt::Display for Geometry {
    /// In the notation that [`parse`](Self::parse) reads, with everything said.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mm = |length: f64| show_number(length, Digits::Decimals(2));
        let Self { width, height, across, down, left, top, gap_x, gap_y } = *self;
        let [width, height, left, top, gap_x, gap_y] = [width, height, left, top, gap_x, gap_y].map(mm);
        write!(f, "{width} x {height} mm, {across} x {down}, margins {left} x {top} mm, gaps {gap_x} x {gap_y} mm")
    }
}

/// Two lengths; the first takes the unit of the second where it has none.
fn pair(text: &str) -> Result<(f64, f64), String> {
    let wrong = || format!("“{text}” is not two lengths; write such as `63.5 x 38.1 mm`");
    let (one, other) = text.split_once(['x', '×']).ok_or_else(wrong)?;
    let (one, other) = (one.trim(), other.trim());
    let unit = other.trim_start_matches(|letter: char| !letter.is_alphabetic());
    let one = if one.contains(char::is_alphabetic) { one.to_owned() } else { format!("{one} {unit}") };
    let mm = |text: &str| {
        let length: Length = units::parse(text).map_err(|error| error.to_string())?;
        let mm = length.base() * 1e3;
        if (0.0..1000.0).contains(&mm) { Ok(mm) } else { Err(wrong()) }
    };
    Ok((mm(&one)?, mm(other)?))
}

/// How many across and down.
fn counts(text: &str) -> Result<(u8, u8), String> {
    let wrong = || format!("“{text}” is not a number of labels; write how many across and down, such as `3 x 7`, after the size of one");
    let (across, down) = text.split_once(['x', '×']).ok_or_else(wrong)?;
    let count = |text: &str| text.trim().parse::<u8>().ok().filter(|count| (1..=40).contains(count)).ok_or_else(wrong);
    Ok((count(across)?, count(down)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The margins that go with these measurements on the sheets as sold; *from memory*.
    #[test]
    fn the_offered_sheets_are_centred_as_they_are_sold() {
        for (size, text, left, top) in [
            (Size::A4, OFFERED[0].1, 4.65, 13.1),
            (Size::A4, OFFERED[3].1, 7.25, 15.15),
            (Size::Letter, OFFERED[5].1, 25.4 * 0.15625, 25.4 * 0.5),
            (Size::Letter, OFFERED[7].1, 25.4 * 0.1875, 25.4 * 0.5),
        ] {
            let geometry = Geometry::parse(text, size).unwrap();
            assert!((geometry.left - left).abs() < 0.06 && (geometry.top - top).abs() < 0.06, "{geometry}");
        }
    }

    #[test]
    fn every_label_lies_on_its_sheet_and_on_no_other() {
        for (size, text) in OFFERED {
            let geometry = Geometry::parse(text, size).unwrap();
            let places: Vec<_> = geometry.places().collect();
            let (width, height) = size.mm();
            for (place, (x, y)) in places.iter().enumerate() {
                assert!(*x > -0.01 && *y > -0.01 && x + geometry.width < width + 0.01 && y + geometry.height < height + 0.01, "{text}");
                for (other_x, other_y) in &places[..place] {
                    let apart_x = (x - other_x).abs() > geometry.width - 0.01;
                    assert!(apart_x || (y - other_y).abs() > geometry.height - 0.01, "{text}");
                }
            }
            assert_eq!(Geometry::parse(&geometry.to_string(), size).map(|again| again.to_string()), Ok(geometry.to_string()));
        }
    }

    #[test]
    fn what_does_not_fit_is_refused() {
        for (text, said) in [
            ("99.1 x 67.7 mm, 3 x 4", "a sheet of A4"),
            ("38.1 x 21.2 mm, 5 x 13", "no room"),
            ("30 x 70 mm, 2 x 2", "no room"),
            ("99.1 x 67.7, 2 x 4", "has no unit"),
            ("99.1 mm, 2 x 4", "two lengths"),
            ("99.1 x 67.7 mm", "how many across"),
            ("99.1 x 67.7 mm, 0 x 4", "how many across"),
            ("99.1 x 67.7 mm, 2 x 4, margins -3 x 0 mm", "two lengths"),
            ("99.1 x 67.7 mm, 2 x 4, between 3 x 0 mm", "neither"),
        ] {
            let refused = Geometry::parse(text, Size::A4).unwrap_err();
            assert!(refused.contains(said), "{text}: {refused}");
        }
    }
}
