//! Each kind of lubrication point: what is right there when nothing is said, and how that changes with what is said.
//!
//! Where no source stands beside a check it is a fact of the trade: *common practice, no source*.

#![expect(clippy::panic, reason = "a helper of tests fails by panicking")]

use formulas::Silent;
use formulas::viscosity::{Measured, viscosity_at};
use planner::demand::Test;
use planner::need::Need;
use planner::needs::{Working, kinds, needs};
use planner::verdict::{Grade, grade};
use reference::{Fluid, Form, Reference};
use shop::Shop;
use units::{KinematicViscosity, Quantity, Temperature};

/// A shop that sees neither frost nor great heat.
const ROOM: &str = "[room]\ncoldest = \"5 degC\"\nhottest = \"28 degC\"\n";

fn shop(text: &str) -> Shop {
    shop::read(text.as_bytes(), kinds(), Reference::embedded()).unwrap_or_else(|problems| panic!("{problems:#?}\n{text}"))
}

/// A machine with one point.
fn point(kind: &str, more: &str) -> String {
    format!("[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\nkind = \"{kind}\"\n{more}\n")
}

fn grade_of(need: &Need, fluid: &str) -> Grade {
    let reference = Reference::embedded();
    grade(need, reference.fluid(fluid).unwrap_or_else(|| panic!("no fluid {fluid}")), reference)
}

fn at(kind: &str, more: &str) -> Need {
    in_room(ROOM, kind, more)
}

fn in_room(room: &str, kind: &str, more: &str) -> Need {
    let shop = shop(&format!("{room}{}", point(kind, more)));
    let needs = needs(&shop, Reference::embedded(), Working::Dropped).unwrap_or_else(|problems| panic!("{problems:#?}"));
    needs.into_iter().next().unwrap_or_else(|| panic!("one point has one need"))
}

fn fluids() -> impl Iterator<Item = &'static Fluid> {
    Reference::embedded().fluids.values()
}

/// The least viscosity asked for, mm²/s, and where.
fn least(need: &Need) -> (f64, Temperature) {
    let asked = need.demands.iter().find_map(|demand| match demand.test {
        Test::NotThinner { at, right, .. } => Some((right.base() * 1e6, at)),
        _ => None,
    });
    asked.unwrap_or_else(|| panic!("{} asks for no viscosity", need.id))
}

fn dose(need: &Need, form: Form) -> planner::need::Dose {
    need.ration(form).unwrap_or_else(|| panic!("{} has no dose of {form:?}", need.id)).dose
}

fn minds(need: &Need, words: &str) -> bool {
    need.mind.iter().any(|(text, _)| text.contains(words))
}

fn near(found: f64, expected: f64, relative: f64) {
    assert!((found - expected).abs() <= relative * expected.abs(), "{found} instead of {expected}");
}

#[test]
fn every_kind_has_a_right_fluid_of_the_expected_class_when_nothing_is_said() {
    for (kind, class) in [
        ("horizontal way", "slideway-oil"),
        ("vertical way", "slideway-oil"),
        ("lined way", "slideway-oil"),
        ("grinder slide", "ptfe-film"),
        ("drawer slide", "paste-wax"),
        ("leadscrew", "slideway-oil"),
        ("half nuts", "slideway-oil"),
        ("ball screw", "slideway-oil"),
        ("vice screw", "moly-grease"),
        ("plain bearing", "circulating-oil"),
        ("bush", "slideway-oil"),
        ("rolling bearing", "lithium-grease"),
        ("fast spindle", "spindle-oil"),
        ("gear head", "hydraulic-oil"),
        ("change gears", "tacky-oil"),
        ("quick-change gearbox", "circulating-oil"),
        ("rack and pinion", "slideway-oil"),
        ("scroll chuck", "slideway-oil"),
        ("dead centre", "ep-grease"),
        ("quill", "hydraulic-oil"),
        ("index plate", "slideway-oil"),
        ("oil point", "hydraulic-oil"),
        ("wick", "circulating-oil"),
        ("grease nipple", "lithium-grease"),
        ("roller chain", "tacky-oil"),
        ("air tool", "air-tool-oil"),
        ("steam cylinder", "steam-cylinder-oil"),
        ("slide valve", "steam-cylinder-oil"),
        ("steam motion", "motion-oil"),
        ("compressor crankcase", "compressor-oil"),
        ("lock", "dry-graphite"),
        ("instrument pivot", "instrument-oil"),
    ] {
        let need = at(kind, "");
        let right: Vec<&Fluid> = fluids().filter(|fluid| grade_of(&need, &fluid.key) == Grade::Right).collect();
        let keys: Vec<&str> = right.iter().map(|fluid| fluid.key.as_str()).collect();
        assert!(right.iter().any(|fluid| fluid.is(class)), "{kind}: {keys:?}");
        for fluid in right {
            assert!(need.ration(fluid.form).is_some(), "{kind}: no dose of {}", fluid.key);
        }
        assert!(need.rations[0].every.times_a_year > 0.0, "{kind}");
    }
}

#[test]
fn every_kind_has_a_right_fluid_and_a_dose_of_it() {
    for kind in kinds().points {
        let need = at(kind.name, "");
        let right: Vec<&Fluid> = fluids().filter(|fluid| grade_of(&need, &fluid.key) == Grade::Right).collect();
        assert!(!right.is_empty(), "{}", kind.name);
        assert!(right.iter().all(|fluid| need.ration(fluid.form).is_some()), "{}", kind.name);
    }
}

#[test]
fn slideway_oil_of_grade_68_serves_most_oiled_places() {
    for kind in ["horizontal way", "leadscrew", "half nuts", "lined way"] {
        assert_eq!(grade_of(&at(kind, ""), "slideway-68"), Grade::Right, "{kind}");
    }
    for kind in ["oil point", "bush", "rack and pinion", "quill", "quick-change gearbox", "index plate", "vertical way", "roller chain"] {
        assert!(grade_of(&at(kind, ""), "slideway-68").serves(), "{kind}");
    }
}

#[test]
fn a_fast_spindle_takes_thin_oil_and_no_way_oil() {
    let spindle = at("fast spindle", "");
    for fluid in fluids().filter(|fluid| fluid.is("slideway-oil")) {
        assert_eq!(grade_of(&spindle, &fluid.key), Grade::Harmful, "{}", fluid.key);
    }
    assert!(!grade_of(&spindle, "hydraulic-68").serves());
}

/// ISO 281 (*from memory*; *The Tribology Handbook* C8 reads 6.8 mm²/s off its chart for 60 mm bore at 5000 rev/min).
#[test]
fn a_faster_spindle_asks_for_thinner_oil() {
    let at_speed = |rpm: u32| least(&at("fast spindle", &format!("bore = \"60 mm\"\noutside = \"110 mm\"\nspeed = \"{rpm} rpm\""))).0;
    near(at_speed(5000), 6.8, 0.05);
    assert!(at_speed(10_000) < at_speed(5000));
}

/// Computed independently from ISO 281 and ASTM D341: VG 32 of index 95 at 50 °C, 77.5 mm at 1200 rev/min, κ = 1.45.
#[test]
fn the_viscosity_ratio_of_a_spindle() {
    let room = "[room]\ncoldest = \"5 degC\"\nhottest = \"25 degC\"\n";
    let (asked, warm) = least(&in_room(room, "fast spindle", "bore = \"60 mm\"\noutside = \"95 mm\"\nspeed = \"1200 rpm\""));
    near(warm.base(), 273.15 + 50.0, 1e-6);
    let nu = |number: f64| KinematicViscosity::from_base(number * 1e-6);
    let given = viscosity_at(&mut Silent, Measured::at_40(nu(32.0)), Measured::at_100(nu(5.29)), warm).unwrap();
    near(given.base() * 1e6 / asked, 1.45, 0.03);
}

#[test]
fn a_spindle_too_fast_for_grease_is_asked_for_oil_and_not_refused() {
    let quick = at("fast spindle", "speed = \"40000 rpm\"");
    assert!(!fluids().any(|fluid| fluid.form == Form::Grease && grade_of(&quick, &fluid.key).serves()));
    let slow = at("fast spindle", "bore = \"36 mm\"\noutside = \"72 mm\"\nspeed = \"2900 rpm\"\nfitting = \"cap\"");
    assert_eq!(grade_of(&slow, "lithium-2"), Grade::Right);
}

/// A trade sheet's own example: four bearings of 0.9843 in take 0.0394 US fl oz an hour, 1.165 mL. The filling is for four hours.
#[test]
fn air_feeds_a_spindle() {
    let fed = at("fast spindle", "bore = \"0.9843 in\"\nbearings = 4\nfitting = \"drip\"");
    near(dose(&fed, Form::Oil).likely, 4.0 * 1.165, 0.01);
}

/// Raimondi and Boyd: the film goes with η·N/P, so more speed asks for thinner oil and more load for thicker.
#[test]
fn a_plain_bearing_asks_by_load_and_speed() {
    let asked = |load: &str, speed: &str| least(&at("plain bearing", &format!("load = \"{load}\"\nspeed = \"{speed}\""))).0;
    assert!(asked("300 N", "1200 rpm") < asked("300 N", "600 rpm"));
    assert!(asked("600 N", "600 rpm") > asked("300 N", "600 rpm"));
    near(asked("300 N", "1200 rpm") * 2.0, asked("300 N", "600 rpm"), 0.01);
}

/// Computed independently: a steam pin of 10 × 10 mm, clearance 0.002 of the radius, 200 N at 300 rev/min has a film of 2.2 µm with VG 150
/// at 50 °C where 5.5 µm are wanted, and rubs with 0.31 MPa·m/s, which a bronze bush is allowed.
#[test]
fn a_small_slow_pin_makes_no_film() {
    let pin = "diameter = \"10 mm\"\nlength = \"10 mm\"\nload = \"200 N\"\nspeed = \"300 rpm\"\nclearance = \"0.02 mm\"";
    let boundary = at("plain bearing", pin);
    assert!(boundary.demands.iter().all(|demand| demand.source != "raimondi-boyd-1958"));
    assert!(boundary.demands.iter().any(|demand| demand.why.contains("the faces touch")));
    assert!(!minds(&boundary, "Pressure times velocity"));
    let film = at("plain bearing", "load = \"100 N\"\nspeed = \"1500 rpm\"");
    assert!(film.demands.iter().any(|demand| demand.source == "raimondi-boyd-1958"));
}

/// Trumpler, *from memory*: a journal bears 2.07 MPa at starting, before its film is built; on 25 × 25 mm that is 1294 N.
#[test]
fn a_journal_pressed_too_hard_at_starting_counts_on_no_film() {
    let film = |load: &str| {
        let need = at("plain bearing", &format!("speed = \"3000 rpm\"\nload = \"{load}\""));
        need.demands.iter().any(|demand| demand.source == "raimondi-boyd-1958")
    };
    assert!(film("1280 N"));
    assert!(!film("1310 N"));
}

#[test]
fn a_watchmakers_spindle_in_a_close_bore_takes_thin_oil() {
    let close =
        at("plain bearing", "diameter = \"18 mm\"\nlength = \"20 mm\"\nload = \"30 N\"\nspeed = \"3000 rpm\"\nclearance = \"0.01 mm\"");
    assert_eq!(grade_of(&close, "spindle-10"), Grade::Right);
    assert_eq!(grade_of(&close, "slideway-68"), Grade::Harmful);
}

/// Mott, *Machine Elements in Mechanical Design*: 150 lbf on 1.5 × 1.5 in at 500 rev/min is 0.459 MPa·m/s; with the factor of two a bush of
/// tin babbitt (1.05) bears it and nylon (0.105) does not.
#[test]
fn pressure_times_velocity_decides_what_a_bush_bears() {
    let of = |material: &str, rpm: u32| {
        at(
            "bush",
            &format!("load = \"150 lbf\"\ndiameter = \"1.5 in\"\nlength = \"1.5 in\"\nspeed = \"{rpm} rpm\"\nmaterial = \"{material}\""),
        )
    };
    assert!(!minds(&of("tin-babbitt", 500), "Pressure times velocity"));
    assert!(minds(&of("tin-babbitt", 700), "Pressure times velocity"));
    assert!(minds(&of("nylon", 500), "0.46"));
}

#[test]
fn a_harder_pressed_bush_asks_for_thicker_oil() {
    let asked = |load: &str| least(&at("bush", &format!("load = \"{load}\""))).0;
    assert!(asked("1000 N") > asked("300 N"));
    assert!(asked("300 N") > asked("30 N"));
    assert!(grade_of(&at("bush", "load = \"5 N\""), "light-machine-15").serves());
    assert!(!grade_of(&at("bush", "load = \"1500 N\""), "light-machine-15").serves());
}

#[test]
fn a_bush_that_holds_its_own_oil_takes_neither_solids_nor_grease() {
    let porous = at("bush", "material = \"oil-porous-bronze\"");
    for fluid in fluids().filter(|fluid| fluid.form == Form::Grease || fluid.is("moly-film") || fluid.is("dry-graphite")) {
        assert!(!grade_of(&porous, &fluid.key).serves(), "{}", fluid.key);
    }
    assert_eq!(grade_of(&porous, "lithium-2"), Grade::Harmful);
    assert!(grade_of(&porous, "hydraulic-68").serves());
    assert!(at("bush", "dry = true").nothing.is_some());
}

/// ASTM D130 tells active sulphur by the copper strip it blackens; hypoid oils and bronze are *common practice*.
#[test]
fn bronze_rules_out_active_sulphur_and_hypoid_oil() {
    for kind in ["bush", "plain bearing", "leadscrew", "half nuts", "quick-change gearbox", "steam motion"] {
        let bronze = at(kind, "");
        assert_eq!(grade_of(&bronze, "gl5-80w90"), Grade::Harmful, "{kind}");
        assert_eq!(grade_of(&bronze, "cutting-oil-active"), Grade::Harmful, "{kind}");
    }
    assert_ne!(grade_of(&at("bush", "material = \"cast-iron\""), "gl5-80w90"), Grade::Harmful);
    assert_eq!(grade_of(&at("rack and pinion", "touches = [\"bronze\"]"), "gl5-80w90"), Grade::Harmful);
}

/// Jeffreys: what stays on an upright face goes with the root of the viscosity, so a warm shop asks for a thicker grade.
#[test]
fn an_upright_slide_asks_for_thicker_oil_in_a_warm_shop() {
    let cold = in_room("[room]\ncoldest = \"5 degC\"\nusual = \"11 degC\"\nhottest = \"20 degC\"\n", "vertical way", "");
    let warm = in_room("[room]\ncoldest = \"15 degC\"\nusual = \"24 degC\"\nhottest = \"30 degC\"\n", "vertical way", "");
    assert_eq!(grade_of(&cold, "slideway-68"), Grade::Right);
    assert_ne!(grade_of(&cold, "slideway-220"), Grade::Right);
    assert_eq!(grade_of(&warm, "slideway-220"), Grade::Right);
    assert_ne!(grade_of(&warm, "slideway-68"), Grade::Right);
    // ν = h²·g·t/z by hand: 10 µm, 9.80665 m/s², 86 400 s, 0.3 m.
    near(least(&warm).0, 282.4, 0.001);
}

#[test]
fn thick_oil_blocks_a_hand_pump_in_the_cold() {
    let pumped = at("vertical way", "fitting = \"pump\"");
    assert!(!grade_of(&pumped, "slideway-220").serves());
    assert!(grade_of(&pumped, "slideway-68").serves());
}

#[test]
fn a_wick_lifts_no_thick_oil_in_the_cold_and_no_tack() {
    let cold = in_room("[room]\ncoldest = \"-6 degC\"\nhottest = \"28 degC\"\n", "wick", "");
    assert_ne!(grade_of(&cold, "hydraulic-46"), Grade::Right);
    assert_eq!(grade_of(&at("wick", ""), "hydraulic-46"), Grade::Right);
    assert!(!grade_of(&at("wick", ""), "slideway-32").serves());
    assert_eq!(grade_of(&at("wick", ""), "lithium-2"), Grade::Harmful);
}

#[test]
fn a_hotter_room_asks_for_thicker_oil() {
    let hot = "[room]\ncoldest = \"25 degC\"\nusual = \"34 degC\"\nhottest = \"42 degC\"\n";
    for kind in ["bush", "half nuts", "lined way", "quick-change gearbox", "ball screw", "plain bearing"] {
        let (cool, hot) = (at(kind, ""), in_room(hot, kind, ""));
        // The grade a place takes is found at its own temperature: of these the thinnest that is right never gets thinner.
        let thinnest = |need: &Need| {
            let right = fluids().filter(|fluid| fluid.form == Form::Oil && grade_of(need, &fluid.key).serves());
            right.filter_map(|fluid| fluid.oil.as_ref()).map(|oil| oil.viscosity_40.base() * 1e6).fold(f64::INFINITY, f64::min)
        };
        assert!(thinnest(&hot) > thinnest(&cool), "{kind}: {} and {}", thinnest(&cool), thinnest(&hot));
    }
}

#[test]
fn dust_leaves_only_dry_films_on_what_is_open_and_easily_reached() {
    for kind in [
        "horizontal way",
        "vertical way",
        "lined way",
        "grinder slide",
        "drawer slide",
        "leadscrew",
        "half nuts",
        "vice screw",
        "rack and pinion",
        "scroll chuck",
        "change gears",
        "index plate",
        "roller chain",
        "quill",
        "bush",
    ] {
        let dusty = at(kind, "exposure = [\"grit\"]");
        let mut right = 0;
        for fluid in fluids() {
            let grade = grade_of(&dusty, &fluid.key);
            assert!(!grade.serves() || fluid.form == Form::Dry, "{kind}: {}", fluid.key);
            right += u32::from(grade == Grade::Right);
        }
        assert!(right > 0, "{kind}: nothing is right");
        assert_eq!(grade_of(&dusty, "lithium-2"), Grade::Harmful, "{kind}");
        assert!(dusty.ration(Form::Dry).is_some(), "{kind}");
    }
}

#[test]
fn a_covered_slide_of_a_grinder_is_oiled() {
    for more in ["covered = true\nexposure = [\"grit\"]", "fitting = \"pump\"\nexposure = [\"grit\"]"] {
        assert_eq!(grade_of(&at("grinder slide", more), "slideway-68"), Grade::Right, "{more}");
    }
    let (dusty, plain) = (at("grinder slide", "covered = true"), at("horizontal way", ""));
    assert!(dusty.rations[0].every.running_hours < plain.rations[0].every.running_hours);
}

#[test]
fn a_guarded_screw_may_keep_grease_and_an_open_one_not() {
    let guarded = at("leadscrew", "reach = \"hard\"");
    assert_eq!(grade_of(&guarded, "lithium-ep-2"), Grade::Right);
    assert_eq!(grade_of(&guarded, "slideway-68"), Grade::Right);
    let open = at("leadscrew", "exposure = [\"chips\"]");
    assert_ne!(grade_of(&open, "lithium-ep-2"), Grade::Right);
    assert_eq!(grade_of(&open, "slideway-68"), Grade::Right);
}

#[test]
fn an_overloaded_screw_is_oiled_twice_as_often() {
    let hours = |load: &str| at("leadscrew", &format!("speed = \"400 rpm\"\nload = \"{load}\"")).rations[0].every.running_hours.unwrap();
    near(hours("5 kN") * 2.0, hours("200 N"), 1e-9);
    assert!(minds(&at("leadscrew", "speed = \"400 rpm\"\nload = \"5 kN\""), "take off load or speed"));
}

#[test]
fn shut_in_change_gears_take_grease_and_open_ones_oil() {
    let shut = at("change gears", "reach = \"hard\"");
    assert_eq!(grade_of(&shut, "lithium-ep-2"), Grade::Right);
    assert_eq!(grade_of(&shut, "tacky-150"), Grade::WillDo);
    let open = at("change gears", "exposure = [\"chips\"]");
    assert_eq!(grade_of(&open, "tacky-150"), Grade::Right);
    assert_ne!(grade_of(&open, "lithium-ep-2"), Grade::Right);
    assert!(minds(&at("change gears", "speed = \"2000 rpm\""), "flung off"));
}

#[test]
fn a_gear_too_slow_for_a_bath_is_asked_for_what_clings() {
    let slow = at("gear head", "speed = \"40 rpm\"");
    assert_eq!(grade_of(&slow, "slideway-68"), Grade::Right);
    assert_ne!(grade_of(&slow, "hydraulic-32"), Grade::Right);
}

#[test]
fn a_worm_is_asked_for_thick_oil() {
    let worm = at("gear head", "worm = true");
    assert_eq!(grade_of(&worm, "worm-460"), Grade::Right);
    assert_eq!(grade_of(&worm, "gl4-75w80"), Grade::Wrong);
    // A slow worm in warm air asks for VG 680 (AGMA 9005, from memory), a quick one in cold air for VG 460.
    assert_eq!(grade_of(&worm, "motion-220"), Grade::WillDo);
}

#[test]
fn a_dead_centre_takes_high_pressure_grease_and_minds_speed() {
    let centre = at("dead centre", "exposure = [\"chips\"]");
    assert_eq!(grade_of(&centre, "lithium-ep-2"), Grade::Right);
    assert_eq!(grade_of(&centre, "moly-2"), Grade::Right);
    assert!(minds(&at("dead centre", "load = \"1 kN\"\nspeed = \"800 rpm\""), "turn slower"));
    assert!(!minds(&at("dead centre", "load = \"50 N\"\nspeed = \"60 rpm\""), "turn slower"));
}

#[test]
fn an_oil_fitting_takes_no_grease_and_a_grease_fitting_no_oil() {
    for kind in ["leadscrew", "bush", "quill", "rack and pinion", "steam motion", "steam cylinder", "air tool"] {
        assert_eq!(grade_of(&at(kind, "fitting = \"ball oiler\""), "lithium-ep-2"), Grade::Harmful, "{kind}");
    }
    let oiler = at("bush", "fitting = \"ball oiler\"");
    assert_eq!(oiler.rations[0].every.with, Some(planner::need::With::Use));
    assert!(!grade_of(&at("grease nipple", ""), "hydraulic-68").serves());
}

/// IAPWS-IF97, equation 31: 162.2 °C at 80 psi and 151.9 °C at 4 bar on the gauge (computed independently).
#[test]
fn steam_is_as_hot_as_its_pressure_says() {
    for kind in ["steam cylinder", "slide valve"] {
        for (pressure, celsius) in [("80 psi", 162.2), ("4 bar", 151.9)] {
            let (_, hot) = least(&at(kind, &format!("pressure = \"{pressure}\"")));
            assert!((hot.base() - 273.15 - celsius).abs() < 0.1, "{kind} {pressure}: {}", hot.base() - 273.15);
        }
        let (_, hot) = least(&at(kind, "pressure = \"4 bar\"\nsuperheat = \"30 K\""));
        assert!((hot.base() - 273.15 - 181.9).abs() < 0.1);
    }
}

#[test]
fn only_cylinder_oil_is_right_in_steam_and_engine_oil_harms() {
    for kind in ["steam cylinder", "slide valve"] {
        let steam = at(kind, "");
        for fluid in fluids().filter(|fluid| grade_of(&steam, &fluid.key) == Grade::Right) {
            assert!(fluid.is("steam-cylinder-oil"), "{kind}: {}", fluid.key);
        }
        assert_eq!(grade_of(&steam, "engine-30"), Grade::Harmful);
        assert_eq!(grade_of(&steam, "light-machine-15"), Grade::Harmful, "its flash point lies near the steam");
    }
    // Trade grades: 460 up to 5 bar, 680 at 8.
    assert_eq!(grade_of(&at("steam cylinder", "pressure = \"5 bar\""), "cylinder-460"), Grade::Right);
    let high = at("steam cylinder", "pressure = \"8 bar\"");
    assert_eq!(grade_of(&high, "cylinder-680"), Grade::Right);
    assert_ne!(grade_of(&high, "cylinder-460"), Grade::Right);
}

/// A compressor text's rule: one inch by one inch at 300 rev/min needs 1.30 drops an hour at least (computed independently).
#[test]
fn the_floor_of_a_cylinders_feed() {
    let fed = dose(&at("steam cylinder", "bore = \"1 in\"\nstroke = \"1 in\"\nspeed = \"300 rpm\""), Form::Oil);
    near(fed.low, 1.30 * 0.04, 0.01);
    assert!(fed.low < fed.likely && fed.likely < fed.high);
}

#[test]
fn model_engines_run_on_light_machine_oil_too() {
    let motion = at("steam motion", "");
    assert_eq!(grade_of(&motion, "motion-220"), Grade::Right);
    assert!(grade_of(&motion, "light-machine-15").serves());
    assert!(!grade_of(&motion, "cylinder-680").serves());
    assert!(grade_of(&at("instrument pivot", ""), "light-machine-15").serves());
}

#[test]
fn a_lock_takes_dry_powder_even_through_an_oil_hole() {
    let lock = at("lock", "fitting = \"oil hole\"");
    assert_eq!(grade_of(&lock, "dry-graphite"), Grade::Right);
    assert_eq!(grade_of(&lock, "ptfe-powder"), Grade::Right);
    assert!(!fluids().any(|fluid| matches!(fluid.form, Form::Oil | Form::Grease) && grade_of(&lock, &fluid.key).serves()));
}

#[test]
fn drawers_slide_on_wax_ptfe_or_lithium_grease() {
    let drawer = at("drawer slide", "");
    for fluid in ["paste-wax", "ptfe-film", "lithium-2", "white-lithium-2", "ptfe-2"] {
        assert_eq!(grade_of(&drawer, fluid), Grade::Right, "{fluid}");
    }
}

#[test]
fn solvents_stay_off_a_lining_and_solids_too() {
    for fluid in ["penetrating", "water-displacing-spray", "moly-film", "dry-graphite"] {
        assert!(!grade_of(&at("lined way", ""), fluid).serves(), "{fluid}");
    }
}

#[test]
fn air_tools_take_no_detergent_and_more_air_more_oil() {
    assert!(!grade_of(&at("air tool", ""), "engine-30").serves());
    let fed = |flow: &str| dose(&at("air tool", &format!("fitting = \"drip\"\nflow = \"{flow}\"")), Form::Oil).likely;
    near(fed("300 L/min"), 2.0 * fed("150 L/min"), 1e-9);
    // One drop a minute for 15 cubic feet of free air, 425 L: 60 drops of 0.04 mL an hour.
    near(fed("425 L/min"), 2.4, 0.01);
}

#[test]
fn a_compressor_takes_nothing_that_cokes() {
    let crankcase = at("compressor crankcase", "");
    for fluid in ["slideway-68", "motion-220", "tacky-150", "engine-30"] {
        assert!(!grade_of(&crankcase, fluid).serves(), "{fluid}");
    }
    near(dose(&at("compressor crankcase", "volume = \"0.8 L\""), Form::Oil).likely, 800.0, 1e-9);
}

/// Geometry: four lands of 20 × 150 mm take 0.30 mL for a film of 25 µm; a lining does with half of it.
#[test]
fn doses_follow_the_faces() {
    let size = "length = \"150 mm\"\nwidth = \"20 mm\"\nlands = 4";
    near(dose(&at("vertical way", size), Form::Oil).likely, 0.30, 0.01);
    near(dose(&at("lined way", size), Form::Oil).likely, 0.15, 0.01);
    near(dose(&at("grinder slide", size), Form::Dry).likely, 0.30, 0.01);
    // A metre of half-inch chain has 78.7 links, each a drop.
    near(dose(&at("roller chain", "length = \"1 m\"\npitch = \"12.7 mm\""), Form::Oil).likely, 78.74 * 0.04, 0.01);
    for (kind, field, small, large) in [
        ("quill", "length", "50 mm", "100 mm"),
        ("vice screw", "length", "50 mm", "100 mm"),
        ("change gears", "face", "5 mm", "10 mm"),
        ("rack and pinion", "face", "5 mm", "10 mm"),
        ("wick", "length", "20 mm", "40 mm"),
        ("slide valve", "width", "10 mm", "20 mm"),
        ("drawer slide", "length", "200 mm", "400 mm"),
    ] {
        let form = if kind == "vice screw" { Form::Grease } else { Form::Oil };
        let of = |value: &str| dose(&at(kind, &format!("{field} = \"{value}\"")), form).likely;
        near(of(large), 2.0 * of(small), 1e-9);
    }
}

#[test]
fn sizes_that_contradict_each_other_are_refused_at_the_field() {
    for (kind, more, field) in [
        ("leadscrew", "diameter = \"4 mm\"\npitch = \"5 mm\"", "pitch"),
        ("half nuts", "diameter = \"4 mm\"\npitch = \"5 mm\"", "pitch"),
        ("ball screw", "diameter = \"10 mm\"\nlead = \"50 mm\"", "lead"),
        ("plain bearing", "diameter = \"10 mm\"\nlength = \"10 mm\"\nclearance = \"1 mm\"", "clearance"),
        ("fast spindle", "bore = \"40 mm\"\noutside = \"30 mm\"", "bore"),
        ("roller chain", "length = \"10 mm\"\npitch = \"12.7 mm\"", "pitch"),
    ] {
        let text = point(kind, more);
        let problems = needs(&shop(&text), Reference::embedded(), Working::Dropped).unwrap_err();
        let at = problems[0].at.clone().unwrap();
        assert!(text[at.clone()].contains(field) || text[..at.start].trim_end().ends_with(&format!("{field} =")), "{kind}: {problems:?}");
        assert!(!problems[0].mend.is_empty());
    }
}

#[test]
fn a_formulas_range_is_told() {
    for (kind, more) in [
        ("plain bearing", "diameter = \"10 mm\"\nlength = \"100 mm\""),
        ("steam cylinder", "pressure = \"300 bar\""),
        ("slide valve", "pressure = \"300 bar\""),
    ] {
        let problems = needs(&shop(&point(kind, more)), Reference::embedded(), Working::Dropped).unwrap_err();
        assert!(problems[0].what.contains("covers"), "{kind}: {problems:?}");
    }
}

#[test]
fn keeping_the_working_changes_no_demand() {
    for kind in kinds().points {
        let shop = shop(&format!("{ROOM}{}", point(kind.name, "")));
        let of = |working| needs(&shop, Reference::embedded(), working).unwrap().remove(0);
        let (dropped, kept) = (of(Working::Dropped), of(Working::Kept));
        assert_eq!(format!("{:?}", dropped.demands), format!("{:?}", kept.demands), "{}", kind.name);
        assert_eq!(dropped.rations, kept.rations, "{}", kind.name);
        assert!(dropped.working.is_none() && kept.working.is_some(), "{}", kind.name);
    }
}

#[test]
fn every_reason_has_words_and_a_source_of_the_bibliography() {
    for kind in kinds().points {
        let need = at(kind.name, "");
        let known = |key: &str| Reference::embedded().source(reference::SourceKey::intern(key)).is_some();
        for demand in &need.demands {
            assert!(!demand.why.is_empty() && known(demand.source), "{}: {} ({})", kind.name, demand.what, demand.source);
        }
        for (text, source) in &need.mind {
            assert!(known(source), "{}: {text} ({source})", kind.name);
        }
    }
}

#[test]
fn new_grease_must_suit_the_grease_that_is_in_the_place() {
    // Bureau of Reclamation FIST 2-4 (as transcribed): polyurea keeps to itself, lithium and lithium complex may meet.
    let held = |holds: &str| at("rolling bearing", &format!("fitting = \"grease nipple\"\nholds = \"{holds}\""));
    assert_eq!(grade_of(&held("polyurea-2"), "lithium-2"), Grade::Wrong);
    assert_eq!(grade_of(&held("polyurea-2"), "polyurea-2"), Grade::Right);
    assert_eq!(grade_of(&held("lithium-2"), "lithium-ep-2"), Grade::Right);
    assert!(!grade_of(&held("lithium-2"), "polyurea-2").serves());
}
