//! What people write and what it means. Expected values are exact definitions unless a line says otherwise:
//! 1 in = 25.4 mm, 1 lb = 0.45359237 kg (international yard and pound agreement, 1959), 1 US gal = 231 in³ (NIST Handbook 44),
//! 1 imp gal = 4.54609 L (UK Units of Measurement Regulations 1995), standard gravity 9.80665 m/s² (CGPM 1901).

use units::{
    Amount, AngularVelocity, Area, Dimension, DynamicViscosity, Force, Frequency, KinematicViscosity, Length, Mass, MassDensity, Power,
    Pressure, Quantity, Range, Ratio, Temperature, TemperatureDifference, Time, Torque, Usage, Velocity, Volume, VolumeRate, parse,
    parse_any, parse_range,
};

#[track_caller]
fn means<Q: Quantity>(texts: &[&str], base: f64) {
    for text in texts {
        let found = parse::<Q>(text).map(Quantity::base);
        assert!(found.as_ref().is_ok_and(|found| (found - base).abs() <= base.abs() * 1e-9), "`{text}` is read as {found:?}, not {base}");
    }
}

#[test]
fn numbers() {
    means::<Length>(&["0.0254 m", "1 in", "1\"", "1 inch", "1IN", "+1 in", " 1in ", "2/2 in", "1. in", "1e0 in", "1-in"], 0.0254);
    means::<Length>(&["3/8 in", "⅜ in", "0.375\"", ".375 in"], 0.375 * 0.0254);
    means::<Length>(&["1-1/4 in", "1 1/4 in", "1¼ in", "1 ¼ in", "1-1/4\"", "1.25 in", "5/4 in"], 1.25 * 0.0254);
    means::<Length>(&["½ in", "4/8 in"], 0.5 * 0.0254);
    means::<Length>(&["¾ in"], 0.75 * 0.0254);
    means::<Length>(&["⅛ in"], 0.125 * 0.0254);
    means::<Length>(&["⅝ in"], 0.625 * 0.0254);
    means::<Length>(&["⅞ in"], 0.875 * 0.0254);
    means::<Length>(&["-2 thou", "−2 thou", "-0.002 in"], -0.002 * 0.0254);
    means::<Length>(&["1e-3 m", "1E-3 m", "1 mm"], 1e-3);
    means::<Length>(&["-0 mm"], 0.0);
    assert!(parse::<Length>("-0 mm").is_ok_and(|zero| zero.base().is_sign_positive()));
}

#[test]
fn sizes() {
    means::<Length>(&["25.4 µm", "25.4 μm", "25.4 um", "25.4 micron", "25.4 Microns", "1 thou", "1 mil", "10 tenths", "0.001 in"], 25.4e-6);
    means::<Length>(&["1 tenth"], 2.54e-6);
    means::<Length>(&["1 ft", "1'", "12 in", "30.48 cm"], 0.3048);
    means::<Area>(&["1 in²", "1 in2", "1 sq in", "1 in^2", "6.4516 cm²"], 6.4516e-4);
    means::<Area>(&["1 m2", "10000 cm2", "1e6 mm²"], 1.0);
    means::<Volume>(&["1 L", "1 l", "1000 mL", "1000 ml", "1000 cc", "1000 cm3", "1 dm³", "1e6 mm³", "1e6 µL"], 1e-3);
    means::<Volume>(
        &["1 gal(US)", "1 US gal", "1 gal US", "1 gal (US)", "231 in³", "4 qt(US)", "8 US pt", "128 fl oz(US)"],
        3.785_411_784e-3,
    );
    means::<Volume>(&["1 gal(imp)", "1 imp gal", "1 UK gal", "160 fl oz (imp)", "4 qt(imp)", "8 pt(imp)"], 4.546_09e-3);
    means::<Volume>(&["1 ft³", "1728 in3"], 0.028_316_846_592);
}

#[test]
fn matter() {
    means::<Mass>(&["1 lb", "16 oz", "453.59237 g", "453592.37 mg"], 0.453_592_37);
    means::<Mass>(&["1 t", "1000 kg", "1000 Kg"], 1000.0);
    means::<MassDensity>(&["0.87 g/mL", "0.87 g/cm3", "0.87 g/cm³", "0.87 kg/L", "870 kg/m³", "870 kg/m3"], 870.0);
    means::<KinematicViscosity>(&["68 mm²/s", "68 mm2/s", "68 cSt", "68 cst", "0.68 St", "68e-6 m2/s"], 68e-6);
    // ISO 3448: the midpoint viscosity of a grade at 40 °C is its number.
    means::<KinematicViscosity>(&["ISO VG 68", "VG 68", "iso vg68", "VG68", "ISO-VG-68"], 68e-6);
    means::<DynamicViscosity>(&["50 mPa s", "50 mPa·s", "50 mPas", "50 cP", "0.05 Pa s", "0.5 P"], 0.05);
    // 1 reyn = 1 lbf·s/in² = 6894.757293168 Pa·s.
    means::<DynamicViscosity>(&["1 µreyn", "1 ureyn"], 6.894_757_293_168e-3);
    means::<Ratio>(&["5 %", "5%", "0.05", "50000 ppm", "5 percent", "1/20"], 0.05);
}

#[test]
fn heat() {
    means::<Temperature>(
        &["20 °C", "20°C", "20 degC", "20 C", "20c", "20 ° C", "20 º C", "68 °F", "68F", "68 degf", "293.15 K", "20 deg C"],
        293.15,
    );
    // The scales meet at -40, from the definition of the degree Fahrenheit.
    means::<Temperature>(&["-40 °F", "-40 °C", "−40 C"], 233.15);
    means::<TemperatureDifference>(&["10 K", "10 °C", "10 degC", "18 °F", "18 degF", "18 delta degF", "18 degF difference", "10 ΔK"], 10.0);
}

#[test]
fn motion() {
    let turn = std::f64::consts::TAU;
    means::<Velocity>(&["30.48 m/min", "100 ft/min", "100 fpm", "100 sfm", "1200 in/min", "30480 mm/min", "100 ft per min"], 0.508);
    means::<AngularVelocity>(&["60 rpm", "60 RPM", "60 1/min", "60 rev/min", "1 rev/s", "60/min"], turn);
    means::<Frequency>(&["1 /h", "1/h", "1 per hour", "1 1/h", "24 /day", "168/week", "8766 per year"], 1.0 / 3600.0);
    means::<Frequency>(&[".1 /h", "0.1/h", ".1 per hour"], 0.1 / 3600.0);
    means::<Frequency>(
        &["3 /year", "3/year", "3 per year", "3 times a year", "3 a year", "0.25 /month", "every 4 months"],
        3.0 / 31_557_600.0,
    );
    means::<Frequency>(&["daily", "1/day", "once a day", "every day", "Daily", "every 24 h"], 1.0 / 86_400.0);
    means::<Frequency>(&["weekly", "once a week", "every 7 days", "every week"], 1.0 / 604_800.0);
    means::<Frequency>(&["monthly", "every month"], 1.0 / 2_629_800.0);
    means::<Frequency>(&["yearly", "once a year", "1 per year"], 1.0 / 31_557_600.0);
    means::<Frequency>(&["twice a day", "every 12 h", "2 daily"], 2.0 / 86_400.0);
    means::<Time>(&["1 h", "60 min", "3600 s", "1 hour"], 3600.0);
    means::<Time>(&["1 week", "7 days", "168 h"], 604_800.0);
    means::<Time>(&["1 year", "12 months", "365.25 days"], 31_557_600.0);
    means::<VolumeRate>(&["1 L/min", "60000 mL/h", "0.06 m3/h"], 1e-3 / 60.0);
    means::<VolumeRate>(&["1 cfm", "1 scfm", "28.316846592 L/min"], 0.028_316_846_592 / 60.0);
    means::<Usage>(&["4 h/week", "4 hours per week", "4 h a week", "240 min/week"], 4.0 / 168.0);
    means::<Usage>(&["2 h/day", "14 h/week", "120 min/day"], 2.0 / 24.0);
    means::<Usage>(&["87.66 h/year"], 0.01);
    means::<Usage>(&["continuous", "24 h/day", "168 h/week", "always"], 1.0);
}

#[test]
fn loads() {
    let pound_force = 0.453_592_37 * 9.806_65;
    means::<Force>(&["1 lbf", "16 ozf", "4.4482216152605 N", "0.0044482216152605 kN"], pound_force);
    means::<Force>(&["1 kgf"], 9.806_65);
    means::<Torque>(&["1 ft-lbf", "1 ft lbf", "1 lb-ft", "1 ft·lb", "12 in-lbf", "12 lbf·in", "192 in-oz"], pound_force * 0.3048);
    means::<Torque>(&["1 N m", "1 N·m", "1 Nm", "1 nm", "100 N cm"], 1.0);
    means::<Torque>(&["10 kgf cm"], 0.980_665);
    means::<Pressure>(&["1 psi", "0.001 ksi", "1 lbf/in²"], pound_force / 0.0254 / 0.0254);
    means::<Pressure>(&["1 MPa", "1 N/mm²", "1 N/mm2", "10 bar", "10000 mbar", "1000 kPa", "1e6 Pa"], 1e6);
    means::<Pressure>(&["1 atm"], 101_325.0);
    means::<Pressure>(&["1 kgf/cm²"], 98_066.5);
    means::<Power>(&["1 hp"], 550.0 * pound_force * 0.3048);
    means::<Power>(&["1 PS", "1 hp(metric)"], 75.0 * 9.806_65);
    means::<Power>(&["1 kW", "1000 W"], 1000.0);
}

#[test]
fn ranges() {
    let range = |text: &str| parse_range::<Ratio>(text).map(|range| range.map(Quantity::base));
    let near = |found: f64, wanted: f64| (found - wanted).abs() < 1e-12;
    let is = |text: &str, low, likely, high| {
        let found = range(text);
        assert!(
            found.as_ref().is_ok_and(|found| near(found.low, low) && near(found.likely, likely) && near(found.high, high)),
            "`{text}` is read as {found:?}"
        );
    };
    is("3 .. 5 .. 8 %", 0.03, 0.05, 0.08);
    is("3..8%", 0.03, 0.055, 0.08);
    is("5 %", 0.05, 0.05, 0.05);
    is("300 ppm .. 8 %", 300e-6, (300e-6 + 0.08) / 2.0, 0.08);
    is("0.03 .. .05", 0.03, 0.04, 0.05);
    for bad in ["8 .. 3 %", "3 .. 2 .. 8 %", "3...8 %", "3 - 8 %", "3 to 8 %", "1 .. 2 .. 3 .. 4 %", ".. 8 %", "3 ..", ""] {
        assert!(range(bad).is_err(), "`{bad}` is read as {:?}", range(bad));
    }
    assert!(parse_range::<Length>("3 .. 8").is_err());
    let falling = Range::new(1.0, 2.0, 4.0).map(|range| range.map(|x| 1.0 / x));
    assert_eq!(falling, Some(Range { low: 0.25, likely: 0.5, high: 1.0 }));
    assert!(Range::exact(2.0).contains(&2.0));
}

#[test]
fn amounts() {
    assert!(matches!(Amount::parse("1 L"), Ok(Amount::Volume(_))));
    assert!(matches!(Amount::parse("12 fl oz (US)"), Ok(Amount::Volume(_))));
    assert!(matches!(Amount::parse("0.4 kg"), Ok(Amount::Mass(_))));
    assert!(matches!(Amount::parse("12 m"), Ok(Amount::Length(_))));
    assert_eq!(Amount::parse("5 pieces"), Ok(Amount::Pieces(5.0)));
    for bad in ["1 gal", "5", "-1 L", "-1 m", "-1 pieces", "20 °C", "", "some"] {
        assert!(Amount::parse(bad).is_err(), "{bad}");
    }
    let density = MassDensity::from_base(900.0);
    let mass = Amount::parse("2 L").ok().and_then(|amount| amount.in_mass(density)).map(Quantity::base);
    assert!(mass.is_some_and(|mass| (mass - 1.8).abs() < 1e-12));
    let volume = Amount::parse("0.45 kg").ok().and_then(|amount| amount.in_volume(density)).map(Quantity::base);
    assert!(volume.is_some_and(|volume| (volume - 5e-4).abs() < 1e-15));
    assert_eq!(Amount::Pieces(3.0).in_volume(density), None);
    assert_eq!(Amount::parse("1 kg").ok().and_then(|amount| amount.in_volume(MassDensity::from_base(0.0))), None);
}

#[test]
fn kinds_as_data() {
    for &kind in Dimension::ALL {
        assert_eq!(Dimension::from_word(kind.word()), Some(kind));
        for spelling in kind.spellings() {
            assert!(parse_any(kind, &format!("1 {spelling}")).is_ok(), "{kind:?}: 1 {spelling}");
        }
    }
}

#[test]
fn usage_in_hours() {
    let usage = parse::<Usage>("2 h/day").map(|usage| (usage.hours_per_day(), usage.hours_per_year()));
    assert!(usage.is_ok_and(|(day, year)| (day - 2.0).abs() < 1e-12 && (year - 730.5).abs() < 1e-9));
}

/// A spelling names its own unit, and in the wrong case it names that or nothing.
fn spellings_are_apart<Q: Quantity>() {
    for unit in Q::units() {
        let own = (unit.to)(1.0).base();
        for spelling in std::iter::once(&unit.symbol).chain(unit.spellings) {
            assert_eq!(parse::<Q>(&format!("1 {spelling}")).map(Quantity::base), Ok(own), "{spelling}");
            for other in [spelling.to_uppercase(), spelling.to_lowercase()] {
                let found = parse::<Q>(&format!("1 {other}")).map(Quantity::base);
                assert!(found.is_err() || found == Ok(own), "{spelling} written as {other} is {found:?}");
            }
        }
    }
}

#[test]
fn no_spelling_has_two_meanings() {
    spellings_are_apart::<Length>();
    spellings_are_apart::<Area>();
    spellings_are_apart::<Volume>();
    spellings_are_apart::<Mass>();
    spellings_are_apart::<MassDensity>();
    spellings_are_apart::<Temperature>();
    spellings_are_apart::<TemperatureDifference>();
    spellings_are_apart::<Velocity>();
    spellings_are_apart::<AngularVelocity>();
    spellings_are_apart::<Frequency>();
    spellings_are_apart::<Time>();
    spellings_are_apart::<Force>();
    spellings_are_apart::<Torque>();
    spellings_are_apart::<Pressure>();
    spellings_are_apart::<Power>();
    spellings_are_apart::<KinematicViscosity>();
    spellings_are_apart::<DynamicViscosity>();
    spellings_are_apart::<Ratio>();
    spellings_are_apart::<VolumeRate>();
    spellings_are_apart::<Usage>();
}
