//! Conversions against a general-purpose library, row by row; the source stands in the file.
//!
//! Left to later chapters: Saybolt seconds, ppm to mg/m³, surface tension (dyn/cm) and energy (kWh).

use std::error::Error;

use units::{Dimension, parse_any, show_base_in};

/// Rows in the file, so that a cut one is noticed.
const ROWS: usize = 72;

/// Finds the kind that knows both units; a bare "delta" only fits a difference.
fn kind(from: &str, to: &str) -> Option<Dimension> {
    Dimension::ALL.iter().copied().find(|&kind| parse_any(kind, &format!("1 {from}")).is_ok() && show_base_in(kind, 1.0, to).is_some())
}

/// The value of one of the target unit, and its zero: enough to undo any unit without reading rounded print.
fn in_unit(kind: Dimension, base: f64, to: &str) -> Result<f64, Box<dyn Error>> {
    let zero = parse_any(kind, &format!("0 {to}"))?;
    let hundred = parse_any(kind, &format!("100 {to}"))?;
    Ok((base - zero) / (hundred - zero) * 100.0)
}

#[test]
fn every_published_row_holds() -> Result<(), Box<dyn Error>> {
    let mut rows = csv::Reader::from_path(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/published/conversions.csv"))?;
    let mut count = 0;
    for row in rows.records() {
        let row = row?;
        let (id, value, from, to) = (&row[0], &row[1], &row[2], &row[3]);
        let expected: f64 = row[5].parse()?;
        let relative: f64 = if row[7].is_empty() { 0.0 } else { row[7].parse()? };
        let absolute: f64 = if row[8].is_empty() { 0.0 } else { row[8].parse()? };
        let kind = kind(from, to).ok_or_else(|| format!("{id}: no kind knows {from} and {to}"))?;
        let found = in_unit(kind, parse_any(kind, &format!("{value} {from}"))?, to)?;
        assert!((found - expected).abs() <= absolute + relative * expected.abs(), "{id}: {value} {from} is {found} {to}, not {expected}");
        count += 1;
    }
    assert_eq!(count, ROWS, "rows of the file that were checked");
    Ok(())
}
