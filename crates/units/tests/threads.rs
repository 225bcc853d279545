//! Thread sizes as they are called mean their major diameter (ISO 261, ASME B1.1: facts of the trade).

use units::{Length, parse, show_exact};

#[test]
fn a_thread_is_as_thick_as_its_name_says() {
    for (text, millimetres) in [("M8", "8 mm"), ("M8x1", "8 mm"), ("M2.5", "2.5 mm"), ("5/16-18", "7.9375 mm"), ("1/4-20", "6.35 mm")] {
        let length: Length = parse(text).unwrap_or_else(|error| unreachable!("{text}: {error}"));
        let wanted: Length = parse(millimetres).unwrap_or_else(|error| unreachable!("{error}"));
        assert!((length - wanted).abs() < Length::new::<uom::si::length::nanometer>(1.0), "{text}: {}", show_exact(length));
    }
    for text in ["M", "Mx", "M8 mm", "5/16-", "a-b"] {
        assert!(parse::<Length>(text).is_err(), "{text}");
    }
}
