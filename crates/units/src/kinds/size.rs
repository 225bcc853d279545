//! Length, area, volume. 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).

use super::{IMPERIAL_GALLON, US_GALLON};
use crate::quantity::quantity;
use crate::{Length, QuantityError, parse};

quantity! {
    Length, "a length", within f64::NEG_INFINITY, f64::INFINITY, named thread_size;
    Metric "mm" ["millimetre", "millimetres", "millimeter", "millimeters"] 1.0, 1e3; Significant(4), from 1e-5;
    Metric "µm" ["micron", "microns", "micrometre", "micrometres", "micrometer", "micrometers"] 1.0, 1e6; Significant(3), from 0.0;
    Metric "cm" ["centimetre", "centimetres", "centimeter", "centimeters"] 1.0, 100.0; Significant(4);
    Metric "m" ["metre", "metres", "meter", "meters"] 1.0, 1.0; Significant(4), from 1.0;
    Inch "in" ["\"", "''", "inch", "inches"] 254.0, 1e4; Significant(4), from 0.002_54;
    Inch "thou" ["thousandth", "thousandths", "mil", "mils"] 254.0, 1e7; Significant(3), from 0.0;
    Inch "tenth" ["tenths"] 254.0, 1e8; Significant(3);
    Inch "µin" ["microinch", "microinches"] 254.0, 1e10; Significant(3);
    Inch "ft" ["'", "foot", "feet"] 3048.0, 1e4; Significant(4), from 1.8288;
    Inch "yd" ["yard", "yards"] 9144.0, 1e4; Significant(4);
}

quantity! {
    Area, "an area", within 0.0, f64::INFINITY;
    Metric "mm²" ["sq mm"] 1.0, 1e6; Significant(3), from 0.0;
    Metric "cm²" ["sq cm"] 1.0, 1e4; Significant(3), from 1e-3;
    Metric "m²" ["sq m"] 1.0, 1.0; Significant(3), from 0.1;
    Inch "in²" ["sq in", "square inch", "square inches"] 64_516.0, 1e8; Significant(3), from 0.0;
    Inch "ft²" ["sq ft", "square foot", "square feet"] 9_290_304.0, 1e8; Significant(3), from 0.092;
}

quantity! {
    Volume, "a volume", within 0.0, f64::INFINITY;
    Metric "mL" ["millilitre", "millilitres", "milliliter", "milliliters", "cc", "ccm", "cm³"] 1.0, 1e6; Significant(3), from 1e-7;
    Metric "µL" ["microlitre", "microlitres", "microliter", "microliters", "mm³"] 1.0, 1e9; Significant(3), from 0.0;
    Metric "L" ["litre", "litres", "liter", "liters", "dm³"] 1.0, 1e3; Significant(3), from 1e-3;
    Metric "m³" ["cubic metre", "cubic metres", "cubic meter", "cubic meters"] 1.0, 1.0; Significant(3), from 1.0;
    Inch "fl oz(US)" ["US fl oz", "fluid ounce US", "US fluid ounces"] US_GALLON, 128.0; Significant(3), from 0.0;
    Inch "fl oz(imp)" ["imp fl oz", "UK fl oz", "fl oz UK"] IMPERIAL_GALLON, 160.0; Significant(3);
    Inch "pt(US)" ["US pt", "US pint", "US pints"] US_GALLON, 8.0; Significant(3);
    Inch "pt(imp)" ["imp pt", "UK pt", "pt UK", "imp pint", "imp pints"] IMPERIAL_GALLON, 8.0; Significant(3);
    Inch "qt(US)" ["US qt", "US quart", "US quarts"] US_GALLON, 4.0; Significant(3), from 0.000_94;
    Inch "qt(imp)" ["imp qt", "UK qt", "qt UK", "imp quart", "imp quarts"] IMPERIAL_GALLON, 4.0; Significant(3);
    Inch "gal(US)" ["US gal", "US gallon", "US gallons"] US_GALLON, 1.0; Significant(3), from 0.003_785;
    Inch "gal(imp)" ["imp gal", "UK gal", "gal UK", "imp gallon", "imp gallons"] IMPERIAL_GALLON, 1.0; Significant(3);
    Inch "in³" ["cu in", "cubic inch", "cubic inches"] 16_387_064.0, 1e12; Significant(3);
    Inch "ft³" ["cu ft", "cubic foot", "cubic feet"] 28_316_846_592.0, 1e12; Significant(3), from 0.99;
}

/// The size of a thread as it is called: "M8", "M8x1", "5/16-18". Its length is the major diameter.
fn thread_size(text: &str) -> Option<Result<Length, QuantityError>> {
    if let Some(size) = text.strip_prefix(['M', 'm']).filter(|size| size.starts_with(|c: char| c.is_ascii_digit())) {
        let diameter = size.split(['x', 'X', '×']).next().unwrap_or(size);
        return diameter.chars().all(|c| c.is_ascii_digit() || c == '.').then(|| parse(&format!("{diameter} mm")));
    }
    let (size, pitch) = text.split_once('-')?;
    let is_pitch = !pitch.is_empty() && pitch.chars().all(|c| c.is_ascii_digit());
    (size.contains('/') && is_pitch).then(|| parse(&format!("{} in", size.trim())))
}
