//! Wording and digits of what is printed; the values themselves are exact definitions.

use units::{
    Amount, AngularVelocity, Digits, Frequency, KinematicViscosity, Length, Mass, Power, Pressure, Quantity, Ratio, System, Temperature,
    TemperatureDifference, Time, Torque, Usage, Volume, parse, parse_range, show, show_exact, show_in, show_number, show_range,
};

#[track_caller]
fn prints<Q: Quantity>(text: &str, system: System, words: &str) {
    assert_eq!(parse::<Q>(text).map(|quantity| show(quantity, system)).as_deref(), Ok(words));
}

#[test]
fn the_unit_fits_the_size() {
    prints::<Length>("0.05 mm", System::Both, "0.05 mm (1.97 thou)");
    prints::<Length>("2 thou", System::Inch, "2 thou");
    prints::<Length>("3 µm", System::Metric, "3 µm");
    prints::<Length>("12.345 mm", System::Metric, "12.35 mm");
    prints::<Length>("1.234 mm", System::Metric, "1.234 mm");
    prints::<Length>("0.4724 in", System::Both, "12 mm (0.4724 in)");
    prints::<Length>("1500 mm", System::Metric, "1.5 m");
    prints::<Length>("0 mm", System::Both, "0 mm (0 in)");
    prints::<Volume>("0.25 L", System::Metric, "250 mL");
    prints::<Volume>("1000 mL", System::Metric, "1 L");
    prints::<Volume>("30 m3", System::Both, "30 m³ (1060 ft³)");
    prints::<Volume>("1 US gal", System::Both, "3.79 L (1 gal(US))");
    prints::<Mass>("400 g", System::Both, "400 g (14.1 oz)");
    prints::<Temperature>("20 °C", System::Both, "20 °C (68 °F)");
    prints::<Temperature>("-17.78 °C", System::Inch, "0 °F");
    prints::<TemperatureDifference>("10 K", System::Both, "10 K (18 °F difference)");
    prints::<AngularVelocity>("1725 rpm", System::Both, "1725 rpm");
    prints::<KinematicViscosity>("VG 68", System::Both, "68 mm²/s");
    prints::<Pressure>("6 bar", System::Both, "600 kPa (87 psi)");
    prints::<Torque>("12 ft-lbf", System::Both, "16.3 N·m (12 ft-lbf)");
    prints::<Power>("1/4 hp", System::Both, "186 W (0.25 hp)");
    prints::<Ratio>("5 %", System::Both, "5 %");
    prints::<Ratio>("20 ppm", System::Metric, "20 ppm");
    prints::<Frequency>("3 per year", System::Both, "3 /year");
    prints::<Frequency>("daily", System::Metric, "1 /day");
    prints::<Time>("3 days", System::Both, "3 days");
    prints::<Time>("1 h", System::Both, "1 h");
    prints::<Usage>("4 h/week", System::Both, "4 h/week");
    prints::<Usage>("10 h/year", System::Both, "10 h/year");
}

#[test]
fn asked_for_units_and_ranges() {
    let bore = parse::<Length>("25.4 mm").ok();
    assert_eq!(bore.and_then(|bore| show_in(bore, "thou")).as_deref(), Some("1000 thou"));
    assert_eq!(bore.and_then(|bore| show_in(bore, "°C")), None);
    let dilution = parse_range::<Ratio>("3 .. 5 .. 8 %");
    assert_eq!(dilution.map(|range| show_range(range, System::Both)).as_deref(), Ok("3 .. 5 .. 8 %"));
    let gap = parse_range::<Length>("1 .. 3 thou");
    assert_eq!(gap.map(|range| show_range(range, System::Inch)).as_deref(), Ok("1 .. 2 .. 3 thou"));
    let pack = |text: &str| Amount::parse(text).map(|amount| amount.show(System::Metric));
    assert_eq!(pack("1 pc").as_deref(), Ok("1 piece"));
    assert_eq!(pack("500 mL").as_deref(), Ok("500 mL"));
}

#[test]
fn exact_print_keeps_what_was_written() {
    let same = |text: &str| assert_eq!(parse::<Length>(text).map(show_exact).as_deref(), Ok(text));
    for text in ["0.05 mm", "180 mm", "0.0127 mm", "5 µm", "21 µm", "3.5 m"] {
        same(text);
    }
    assert_eq!(show_exact(Length::from_base(-0.0)), "0 mm");
    assert_eq!(parse::<Temperature>("20 °C").map(show_exact).as_deref(), Ok("20 °C"));
    assert_eq!(parse::<KinematicViscosity>("68 cSt").map(show_exact).as_deref(), Ok("68 mm²/s"));
}

#[test]
fn numbers() {
    let three = |number| show_number(number, Digits::Significant(3));
    assert_eq!(three(-0.0), "0");
    assert_eq!(three(0.000_123_4), "0.000123");
    assert_eq!(three(999.6), "1000");
    assert_eq!(three(123_456.0), "123000");
    assert_eq!(three(1.5e12), "1.5e12");
    assert_eq!(show_number(-0.01, Digits::Decimals(1)), "0");
}
