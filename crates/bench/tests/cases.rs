//! Worked cases from outside, each through the sheet a person would use. The source stands beside each.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]

mod common;

use bench::{AnswerRow, Page};
use common::page;

/// The answer whose name holds these words.
fn answer<'a>(page: &'a Page, words: &str) -> &'a AnswerRow {
    page.answers.iter().find(|answer| answer.name.contains(words)).unwrap_or_else(|| panic!("no `{words}` among {:?}", page.answers))
}

/// The likely value of an answer against an expected one, within a share of it.
fn near(name: &str, given: &[(&str, &str)], words: &str, expected: f64, share: f64) {
    let page = page(name, given);
    let found = answer(&page, words).likely;
    assert!((found - expected).abs() <= share * expected.abs(), "{name} {given:?}: {words} is {found}, not {expected}");
}

fn ends(name: &str, given: &[(&str, &str)], words: &str, low: f64, high: f64, share: f64) {
    let page = page(name, given);
    let found = answer(&page, words);
    assert!((found.low - low).abs() <= share * low && (found.high - high).abs() <= share * high, "{name} {given:?}: {found:?}");
}

#[test]
fn viscosity_and_its_index() {
    // ASTM D2270, the standard's own examples.
    let first = [("at_40", "73.30 mm2/s"), ("at_100", "8.86 mm2/s")];
    near("viscosity", &first, "index", 92.0, 0.005);
    near("viscosity", &[("at_40", "22.83 mm2/s"), ("at_100", "5.05 mm2/s")], "index", 156.0, 0.003);
    // Computed independently from ASTM D341.
    let at = |temperature| [first[0], first[1], ("temperature", temperature)];
    near("viscosity", &at("20 °C"), "oil: viscosity", 241.0, 0.01);
    near("viscosity", &at("70 °C"), "oil: viscosity", 20.9, 0.01);
    // Computed independently from ASTM D2270: VG 32 of index 95.
    near("viscosity", &[("at_40", "VG 32"), ("index", "95"), ("temperature", "100 °C")], "oil: viscosity", 5.29, 0.01);
}

#[test]
fn grades_of_labels() {
    // SAE J306, limits at 100 °C carried to 40 °C by ASTM D2270, computed independently.
    ends("grades", &[("gear", "90"), ("index", "95")], "at 40 °C", 134.0, 216.0, 0.02);
    ends("grades", &[("gear", "90"), ("index", "150")], "at 40 °C", 91.0, 139.0, 0.02);
    ends("grades", &[("gear", "80"), ("year", "2020")], "at 40 °C", 68.0, 99.0, 0.02);
    ends("grades", &[("gear", "80"), ("year", "2010")], "at 40 °C", 50.0, 99.0, 0.02);
    // ASTM D2161: 150 Saybolt seconds are 31.9 mm²/s, at 40 °C 29.0 (ASTM D341 and D2270, computed independently): the old name of
    // ISO VG 32 (common practice).
    let old = [("saybolt", "150 s"), ("temperature", "100 °F")];
    near("grades", &old, "at 37.8 °C", 31.9, 0.002);
    near("grades", &old, "at 40 °C", 29.0, 0.002);
    assert!(format!("{:?}", page("grades", &old).answers).contains("ISO VG 32\""));
}

#[test]
fn grades_name_the_fluids_that_have_them() {
    let page = page("grades", &[("viscosity", "VG 68")]);
    for key in ["slideway-68", "hydraulic-68", "circulating-68"] {
        assert!(page.choices.iter().any(|choice| choice.key == key && choice.fits), "{key}");
    }
    assert!(page.choices.iter().all(|choice| choice.key != "hydraulic-32"));
}

#[test]
fn blends() {
    // Computed independently from ASTM D7152.
    let stocks = [("thin_at_40", "32 mm2/s"), ("thick_at_40", "220 mm2/s")];
    near("blend", &[stocks[0], stocks[1], ("share", "50 %")], "mixture at 40 °C", 75.9, 0.01);
    near("blend", &[stocks[0], stocks[1], ("wanted", "VG 68")], "share of the thicker", 44.2, 0.01);
}

#[test]
fn what_must_not_be_mixed_is_said() {
    // Common practice, no source: no tacky oils, no different families.
    for (thin, thick) in [("slideway-32", "slideway-220"), ("hydraulic-32", "gear-220"), ("hydraulic-32", "tacky-150")] {
        let page = page("blend", &[("thin", thin), ("thick", thick), ("wanted", "VG 68")]);
        assert!(page.choices.iter().any(|choice| choice.name.contains("mixing") && !choice.fits), "{thin} and {thick}");
    }
    let page = page("blend", &[("thin", "circulating-32"), ("thick", "circulating-68"), ("wanted", "VG 46")]);
    assert!(page.choices.iter().any(|choice| choice.name.contains("mixing") && choice.fits));
}

#[test]
fn rolling_bearings() {
    // ISO 281:2007 at the join of its branches, by hand.
    near("bearing", &[("bore", "40 mm"), ("outside", "60 mm"), ("speed", "1000 rpm")], "must have", 20.1, 0.01);
    // The Tribology Handbook, C8: 6.8 read from its chart.
    near("bearing", &[("bore", "60 mm"), ("outside", "110 mm"), ("speed", "5000 rpm")], "must have", 6.8, 0.05);
    // Computed independently: VG 32 of index 95 at 50 °C.
    let oil =
        [("bore", "50 mm"), ("outside", "105 mm"), ("speed", "1200 rpm"), ("temperature", "50 °C"), ("at_40", "VG 32"), ("index", "95")];
    near("bearing", &oil, "ratio", 1.45, 0.03);
    // The Tribology Handbook, A20, by hand.
    let warm = [("speed", "1450 rpm"), ("temperature", "60 °C")];
    near("bearing", &warm, "again after", 18_310.0, 0.02);
    near("bearing", &[warm[0], warm[1], ("type", "cylindrical")], "again after", 9155.0, 0.02);
    near("bearing", &[("mass", "130 g")], "each time", 3.9, 0.02);
    near("bearing", &[("mass", "130 g")], "free space", 7.8, 0.02);
}

#[test]
fn an_ordinary_grease_passes_on_both_sheets_that_ask_after_it() {
    let asked = [("bore", "25 mm"), ("outside", "52 mm"), ("speed", "1450 rpm")];
    for sheet in ["bearing", "grease"] {
        let page = page(sheet, &asked);
        assert!(page.choices.iter().any(|choice| choice.key == "lithium-2" && choice.fits), "{sheet}");
    }
}

#[test]
fn gears() {
    // A published worked leaflet on DIN 51509: k_s 2.2 MPa at 4 m/s.
    let leaflet =
        [("force", "3000 N"), ("face", "25 mm"), ("pinion", "230 mm"), ("ratio", "2.5"), ("pitch_speed", "4 m/s"), ("application", "1")];
    near("gear", &leaflet, "force and speed factor", 0.55, 0.01);
    // AGMA 9005-F16, annex B: VG 150 at 5 m/s and 50 °C, which is air of 25 °C; 500/√v, ASM Handbook 18 (from memory).
    let five = [("pitch_speed", "5 m/s"), ("room", "25 °C")];
    near("gear", &five, "AGMA", 150.0, 0.001);
    near("gear", &five, "ASM Handbook", 224.0, 0.01);
}

#[test]
fn gears_that_want_something_else() {
    // Common practice, no source: a bronze worm takes a compounded oil, open gears what clings, and neither takes GL-5.
    let worm = page("gear", &[("kind", "worm")]);
    assert!(worm.choices.iter().any(|choice| choice.key == "worm-460" && choice.fits));
    assert!(worm.choices.iter().all(|choice| choice.key != "gl5-80w90" || !choice.fits));
    let open = page("gear", &[("kind", "open")]);
    assert_eq!(open.choices.first().map(|choice| choice.key.as_str()), Some("tacky-150"));
    let slow = page("gear", &[("speed", "60 rpm")]);
    assert!(slow.choices.iter().any(|choice| choice.key == "tacky-150" && choice.fits));
}

/// The textbook's bearing: 1.5 by 1.5 in, 3 thou on the diameter, 500 lbf, 30 rev/s, 4 µreyn.
const TEXTBOOK: [(&str, &str); 6] =
    [("diameter", "1.5 in"), ("length", "1.5 in"), ("clearance", "3 thou"), ("load", "500 lbf"), ("speed", "1800 rpm"), ("eta", "4 µreyn")];

#[test]
fn plain_bearings_with_a_film() {
    // Shigley, Mechanical Engineering Design (from memory): S 0.135, h₀/c 0.42, (r/c)f 3.50, 2.62 lbf·in, 0.075 hp.
    near("bushing", &TEXTBOOK, "Sommerfeld", 0.135, 0.01);
    near("bushing", &TEXTBOOK, "oil: thinnest film", 0.42 * 0.0015 * 25.4, 0.03);
    near("bushing", &TEXTBOOK, "coefficient of friction", 3.50 * 0.0015 / 0.75, 0.03);
    near("bushing", &TEXTBOOK, "torque", 2.62 * 0.112_985, 0.03);
    near("bushing", &TEXTBOOK, "heat", 0.075 * 745.7, 0.03);
    // The same textbook (from memory): 0.218 in³/s, of which 0.655 leaves at the ends; a drop is 0.04 mL.
    near("bushing", &TEXTBOOK, "loses at its ends", 0.655 * 0.218 * 16.387 * 60.0 / 0.04, 0.03);
    // A published solved exercise on Petroff: f 0.0191.
    let light = page(
        "bushing",
        &[
            ("diameter", "3 in"),
            ("length", "3 in"),
            ("clearance", "1.5 thou"),
            ("load", "900 lbf"),
            ("speed", "400 rpm"),
            ("eta", "7.25 µreyn"),
        ],
    );
    assert!(answer(&light, "coefficient of friction").words.contains("0.0191"), "{:?}", light.answers);
}

#[test]
fn plain_bearings_without_one() {
    // Mott, Machine Elements in Mechanical Design: 13 100 psi·fpm is 0.459 MPa·m/s; twice that rated wants tin babbitt.
    let bush = [("diameter", "1.5 in"), ("length", "1.5 in"), ("load", "150 lbf"), ("speed", "500 rpm"), ("material", "tin-babbitt")];
    near("bushing", &bush, "pressure times velocity", 0.459, 0.01);
    assert!(answer(&page("bushing", &bush), "pressure times velocity").words.contains("would bear even without a film"));
    let nylon = [bush[0], bush[1], bush[2], bush[3], ("material", "nylon")];
    assert!(answer(&page("bushing", &nylon), "pressure times velocity").words.contains("too much without a film"));
    // A steam engine's pin, computed independently from Raimondi and Boyd: S 0.049, h₀ 2.2 µm, boundary.
    let pin = [
        ("diameter", "10 mm"),
        ("length", "10 mm"),
        ("clearance", "0.02 mm"),
        ("load", "200 N"),
        ("speed", "300 rpm"),
        ("at_40", "VG 150"),
        ("index", "95"),
        ("temperature", "50 °C"),
    ];
    near("bushing", &pin, "Sommerfeld", 0.049, 0.04);
    near("bushing", &pin, "oil: thinnest film", 2.2, 0.04);
    near("bushing", &pin, "pressure times velocity", 0.31, 0.02);
}

#[test]
fn slides() {
    // By hand: four lands of 20 by 150 mm under 25 µm.
    near("slideway", &[], "one film", 0.30, 0.01);
    // By hand from Jeffreys: 10⁻¹⁰·9.80665·86 400/0.3.
    near("slideway", &[("height", "0.3 m")], "leaves 10 µm", 282.4, 0.005);
    // Common practice, no source: VG 68 is the slideway oil of a small shop, VG 220 that of an upright way.
    assert!(page("slideway", &[]).choices.iter().find(|choice| !choice.key.is_empty()).is_some_and(|best| best.key == "slideway-68"));
    let upright = page("slideway", &[("height", "0.3 m")]);
    assert!(upright.choices.iter().find(|choice| !choice.key.is_empty()).is_some_and(|best| best.key == "slideway-220"));
}

#[test]
fn steam() {
    // IAPWS-IF97, computed independently: 80 psi and 4 bar on the gauge.
    near("cylinder", &[("pressure", "80 psi")], "saturated steam", 162.2, 0.001);
    near("cylinder", &[("pressure", "4 bar")], "saturated steam", 151.9, 0.001);
    // A compressor text's rule, computed independently: 1 by 1 in at 300 rev/min takes 1.30 drops an hour at least.
    let page = page("cylinder", &[("bore", "1 in"), ("stroke", "1 in")]);
    assert!((answer(&page, "feed").low - 1.30).abs() <= 0.013);
    // Common practice, no source: compounded cylinder oil for wet steam, never detergent engine oil.
    assert!(page.choices.first().is_some_and(|best| best.key == "cylinder-460" && best.fits));
    assert!(page.choices.iter().all(|choice| choice.key != "engine-30" || !choice.fits));
}

#[test]
fn cuts() {
    // Machinery's Handbook's drilling formula; the answer is its worked example's (from memory): 2313 lb, 559 lbf·in, 3.10 hp.
    let drill = [("operation", "drill"), ("diameter", "7/8 in"), ("feed", "0.008 in"), ("wear", "1.3"), ("turns", "350 rpm")];
    // The page has kilonewtons and kilowatts, as suits the size.
    near("cut", &drill, "thrust", 2.313 * 4.448_22, 0.02);
    near("cut", &drill, "torque", 559.0 * 0.112_985, 0.02);
    near("cut", &drill, "heat", 3.10 * 0.7457, 0.02);
    // A technical sheet's tapping torque, by hand: M = k_c·p²·d/8000.
    near("cut", &[("operation", "tap")], "torque", 1.73, 0.01);
    // By hand: a hole 6 by 12 mm takes 0.059 mL, which is 2 drops.
    let hole = [("operation", "drill")];
    near("cut", &hole, "drops for one hole", 2.0, 0.001);
    // Computed independently: 2 mL/h by brush in 40 m³ at half an air change, against the 0.5 mg/m³ of NIOSH 98-102.
    near("cut", &[], "oil mist", 1.76, 0.02);
    assert!(answer(&page("cut", &[]), "oil mist").words.contains("over the 0.5"));
    near("cut", &[], "room bears", 10.0, 0.01);
}

#[test]
fn stainless_takes_thrust_and_free_cutting_steel_little_of_either() {
    // Factors from memory of handbook tables: steel of 200 HB 24 000, austenitic stainless 24 000 for torque and 35 000 for thrust,
    // resulfurised steel 12 000. The torque goes with the factor; the thrust but for the part of the chisel edge, which goes with it too.
    let of = |material: &str, what: &str| answer(&page("cut", &[("operation", "drill"), ("material", material)]), what).likely;
    let ratio = |material: &str, what: &str| of(material, what) / of("mild-steel", what);
    assert!((ratio("stainless", "torque of the drill") - 1.0).abs() < 1e-6);
    assert!((ratio("stainless", "thrust of the drill") - 35.0 / 24.0).abs() < 1e-6);
    assert!((ratio("free-cutting-steel", "torque of the drill") - 0.5).abs() < 1e-6);
}

#[test]
fn the_trade_ranks_the_fluids_of_a_cut() {
    // Common practice and Machinery's Handbook: cast iron and brass dry, aluminium a light fluid, magnesium never a water mix.
    let first = |material: &str, operation: &str| {
        let page = page("cut", &[("material", material), ("operation", operation)]);
        page.choices.first().map(|choice| choice.key.clone()).unwrap_or_default()
    };
    let classes = |key: &str| reference::Reference::embedded().fluid(key).map(|fluid| fluid.classes.clone()).unwrap_or_default();
    assert!(classes(&first("cast-iron", "turn")).contains(&"dry-cutting".to_owned()));
    assert!(classes(&first("brass", "turn")).contains(&"dry-cutting".to_owned()));
    assert!(classes(&first("aluminium", "turn")).contains(&"light-cutting-fluid".to_owned()));
    let magnesium = page("cut", &[("material", "magnesium")]);
    let wet =
        |key: &str| reference::Reference::embedded().fluid(key).is_some_and(|fluid| fluid.traits.contains(&reference::Trait::WaterMix));
    assert!(magnesium.choices.iter().all(|choice| !(choice.fits && wet(&choice.key))));
}

#[test]
fn sumps() {
    // ASHRAE's pool equation, computed independently: 0.2 m² at 20 °C, 50 %, 0.1 m/s lose 0.80 L a day.
    near("coolant", &[], "dries off", 0.80, 0.05);
    // By hand: (6.5·10 − 5·8)/2 = 12.5 %.
    near("coolant", &[], "mixed at", 12.5, 0.001);
    // By hand: a refractometer of factor 1.5 at 4 °Brix is 6 %.
    near("coolant", &[("reading", "4"), ("factor", "1.5")], "concentration now", 6.0, 0.001);
}

#[test]
fn greases_that_may_meet() {
    // US Bureau of Reclamation, FIST 2-4.
    let meets = |old: &str, new: &str| {
        let page = page("grease", &[("old", old), ("new", new)]);
        page.choices.iter().find(|choice| choice.name.contains("meet")).unwrap().fits
    };
    assert!(meets("lithium-2", "lithium-ep-2"));
    assert!(!meets("lithium-2", "polyurea-2"));
    assert!(meets("polyurea-2", "polyurea-2"));
}

#[test]
fn changes_of_oil() {
    let best = |old: &str, new: &str| {
        let page = page("switch", &[("old", old), ("new", new)]);
        page.choices.iter().find(|choice| choice.fits).map(|choice| choice.name.clone()).unwrap_or_default()
    };
    // Common practice, no source.
    assert_eq!(best("hydraulic-68", "hydraulic-68"), "top up");
    assert_eq!(best("hydraulic-68", "circulating-68"), "drain and fill");
    assert_eq!(best("engine-30", "hydraulic-68"), "drain, flush and fill");
    // US Bureau of Reclamation, FIST 2-4.
    assert_eq!(best("lithium-2", "polyurea-2"), "take apart and wash out");
    // Common practice, no source: GL-5 never on bronze, used engine oil nowhere.
    assert_eq!(best("gear-220", "gl5-80w90"), "");
    assert_eq!(best("hydraulic-32", "used-engine-oil"), "");
}

#[test]
fn whether_grease_at_all() {
    // Common practice, no source: chips and an easy reach want oil, an oiler takes oil only, made for grease and hard to reach wants grease.
    let fits = |given: &[(&str, &str)], name: &str| page("grease", given).choices.iter().find(|choice| choice.name == name).unwrap().fits;
    assert!(fits(&[("exposed", "chips"), ("reach", "easy")], "oil"));
    assert!(!fits(&[("fitting", "oiler")], "grease"));
    assert!(fits(&[("made_for", "grease"), ("reach", "hard")], "grease"));
    // ASTM D217: NLGI 2 is worked penetration 265 to 295.
    ends("grease", &[("made_for", "grease")], "penetration", 265.0, 295.0, 1e-9);
}
