//! What is refused, and that the words say how to mend it.

use units::{
    Area, Force, Frequency, Length, MassDensity, Pressure, Quantity, Ratio, Temperature, TemperatureDifference, Usage, Volume, parse,
};

#[track_caller]
fn refused<Q: Quantity>(text: &str, words: &str) {
    let found = parse::<Q>(text).map_err(|error| error.to_string());
    assert!(found.as_ref().is_err_and(|error| error == words), "`{text}` is met with {found:?}, not with {words}");
}

#[test]
fn a_unit_is_missing_or_of_another_kind() {
    refused::<Length>("180", "`180` has no unit; a length needs mm, µm, m, in, thou or ft, as in `180 mm`");
    refused::<Temperature>("20 mm", "`mm` is a length; a temperature needs °C, °F or K");
    refused::<Force>("5 lb", "`lb` is a mass; a force needs N, kN or lbf");
    refused::<Length>("2 gal", "`gal` is a volume; a length needs mm, µm, m, in, thou or ft");
    refused::<Length>("", "nothing is written here; write a length in mm, µm, m, in, thou or ft");
    refused::<Length>("thick", "`thick` does not begin with a number; write a length as a number and a unit: mm, µm, m, in, thou or ft");
}

#[test]
fn a_unit_is_unknown() {
    refused::<Length>(
        "2 thuo",
        "`thuo` is not a unit known here; did you mean `thou`? Otherwise, a length needs mm, µm, m, in, thou or ft",
    );
    refused::<Area>("2 acres", "`acres` is not a unit known here; an area needs mm², cm², m², in² or ft²");
    // Milli and mega are never taken for one another.
    assert!(parse::<Pressure>("10 mpa").is_err());
    assert!(parse::<Length>("10 Mm").is_err());
    assert!(parse::<Volume>("10 ML").is_err());
}

#[test]
fn a_unit_is_of_two_sizes() {
    refused::<Volume>("1 gal", "`gal` is one size in the US and another in imperial measure; write `gal(US)` or `gal(imp)`");
    for text in ["1 gallon", "2 qt", "1 pint", "12 fl oz", "12 fluid ounces"] {
        assert!(parse::<Volume>(text).is_err_and(|error| error.to_string().contains("imperial")), "{text}");
    }
    refused::<MassDensity>(
        "7 lb/gal",
        "`lb/gal` is one size in the US and another in imperial measure; write `lb/gal(US)` or `lb/gal(imp)`",
    );
}

#[test]
fn a_number_is_no_number() {
    let comma = "has a comma in its number; write a point before the decimals, and nothing between thousands";
    refused::<Length>("1,5 mm", &format!("`1,5 mm` {comma}"));
    refused::<Length>("1,500 mm", &format!("`1,500 mm` {comma}"));
    for text in ["nan mm", "NaN", "inf mm", "-inf mm", "infinity m", "1e999 mm", "1e-999 mm", "1e308 yd ft"] {
        assert!(parse::<Length>(text).is_err(), "{text}");
    }
    assert!(parse::<Ratio>("nan").is_err());
    assert!(parse::<Ratio>("inf").is_err());
    assert!(parse::<Pressure>("1e308 ksi").is_err());
    refused::<Length>("1/0 in", "`1/0 in` divides by zero; write a number greater than 0 there");
    refused::<Frequency>("every 0 days", "`every 0 days` divides by zero; write a number greater than 0 there");
    refused::<Length>(
        "3-8 mm",
        "`3-8 mm` looks like a range; write one value here, and where a range is asked for write it as `3 .. 8 mm`",
    );
    for text in ["--1 mm", "1-/4 in", "1 / 4 in", "1/2/3 in", "1.2.3 mm", "0x10 mm", "1 2 mm", "e5 mm", "."] {
        assert!(parse::<Length>(text).is_err(), "{text} is read as {:?}", parse::<Length>(text));
    }
}

#[test]
fn a_value_cannot_be() {
    // Absolute zero is -273.15 °C exactly (BIPM, The International System of Units).
    refused::<Temperature>("-300 °C", "`-300 °C` is less than -273.15 °C, and a temperature cannot be; check the sign and the unit");
    assert!(parse::<Temperature>("-273.15 °C").is_ok());
    assert!(parse::<TemperatureDifference>("-300 °C").is_ok());
    for text in ["-1 /h", "-1/h", "- 1 /h", "−1 /h", "-3 a week"] {
        let words = format!("`{text}` is less than 0 /year, and a frequency cannot be; check the sign and the unit");
        refused::<Frequency>(text, &words);
    }
    refused::<Frequency>(
        "3-1/h",
        "`3-1/h` looks like a range; write one value here, and where a range is asked for write it as `3 .. 8 mm`",
    );
    assert!(parse::<Volume>("-1 L").is_err());
    refused::<Usage>("200 h/week", "`200 h/week` is more than 168 h/week, and a time of use cannot be; check the sign and the unit");
}
