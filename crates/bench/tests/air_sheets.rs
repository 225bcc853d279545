//! Worked cases of air, fire, label and shelf from outside, each through the sheet a person would use. The source stands beside each.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]

mod common;

use bench::{AnswerRow, Page};
use common::page;
use handling::Worked;
use handling::air::{Room, Use, Way, exposure};
use reference::Reference;

fn answer<'a>(page: &'a Page, words: &str) -> &'a AnswerRow {
    page.answers.iter().find(|answer| answer.name.contains(words)).unwrap_or_else(|| panic!("no `{words}` among {:?}", page.answers))
}

fn fact<'a>(page: &'a Page, name: &str) -> &'a str {
    page.facts.iter().find(|fact| fact.name == name).map_or_else(|| panic!("no `{name}` among {:?}", page.facts), |fact| fact.text.as_str())
}

fn close(found: f64, expected: f64, by: f64, what: &str) {
    assert!((found - expected).abs() <= by, "{what} is {found}, not {expected}");
}

#[test]
fn dew_point_and_warmth() {
    // PsychroLib 2.5.0: 15 °C and 90 % have a dew point of 13.37 °C.
    close(answer(&page("sweating", &[]), "dew point").likely, 13.37, 0.05, "dew point");
    // Computed independently: air of 10 °C and 90 % wants 6.2 K at the face; 3 m² of cover at 5 W/(m²·K) take 93 W.
    let cold = page("sweating", &[("air", "10 °C"), ("humidity", "90 %")]);
    close(answer(&cold, "heat under a cover").likely, 93.0, 1.5, "heat under a cover");
}

#[test]
fn acetone_in_a_tray_goes_outdoors() {
    // Computed independently: 3.16 g/min at 250 ppm and K 3 in 36 m³ want 26 air changes; the sheet counts the high end, half as much again.
    let tray = [("fluid", "acetone"), ("way", "tray"), ("area", "0.06 m2"), ("amount", "10 L"), ("time", "4 h"), ("volume", "36 m3")];
    let found = page("air", &tray);
    close(answer(&found, "were it done all day").likely, 26.2 * 1.5, 4.0, "air changes");
    assert!(found.choices.iter().any(|row| row.name == "outdoors" && row.fits));
    assert!(found.choices.iter().any(|row| row.name == "with more air" && !row.fits));
}

#[test]
fn what_is_said_of_the_air_elsewhere_is_worked_again_by_the_sheet() {
    // There the still end of the air change is given; the sheet takes the still end of what it is told. Both must come to one number.
    let reference = Reference::embedded();
    let fluid = reference.fluid("acetone").unwrap();
    let used = Use {
        amount: units::parse("100 mL").unwrap(),
        way: Way::Wiped(units::parse("0.5 m2").unwrap()),
        lasts: units::parse("30 min").unwrap(),
    };
    let room = Room {
        volume: units::parse("36 m3").unwrap(),
        changes: units::parse("0.25 /h").unwrap(),
        temperature: units::parse("25 degC").unwrap(),
        flames: false,
        attached_to_house: false,
    };
    let found = exposure(fluid, &used, &room, reference).unwrap().unwrap();
    let worked = Worked::air(fluid, &used, &room);
    let given: Vec<(&str, &str)> = worked.given.iter().map(|(field, text)| (field.as_str(), text.as_str())).collect();
    let again = answer(&page(&worked.sheet, &given), "all together").likely;
    close(again / (found.of_limit * 100.0), 1.0, 0.005, "the sheet over the plan");
}

#[test]
fn the_air_that_is_said_to_be_enough_is_enough() {
    let asked = |changes: &str| {
        page("air", &[("fluid", "acetone"), ("amount", "50 mL"), ("volume", "30 m3"), ("time", "15 min"), ("air_changes", changes)])
    };
    let row = |page: &Page, name: &str| page.choices.iter().find(|row| row.name == name).cloned().unwrap();
    let told = row(&asked("0.5 /h"), "with more air").why;
    let an_hour: f64 = told.split(' ').next().unwrap().parse().unwrap();
    assert!(row(&asked(&format!("{an_hour} /h")), "here, as it is").fits, "{told}");
    assert!(!row(&asked(&format!("{} /h", 0.9 * an_hour)), "here, as it is").fits, "{told}");
}

#[test]
fn one_splash_changes_its_class() {
    // Computed independently: 5 % of hexane drop decane's flash point from 48 to about 15 °C.
    let pure = page("flammability", &[("contents", "n-decane")]);
    close(answer(&pure, "flash point").likely, 48.0, 5.0, "decane");
    assert_eq!(fact(&pure, "category of the UN GHS"), "3");
    let splashed = page("flammability", &[("contents", "n-hexane 5 %, n-decane 95 %")]);
    close(answer(&splashed, "flash point").likely, 15.0, 5.0, "splashed");
    assert_eq!(fact(&splashed, "category of the UN GHS"), "2");
    // Computed independently: 0.46 mL of acetone in a cupboard of 60 L.
    let acetone = page("flammability", &[("fluid", "acetone")]);
    close(answer(&acetone, "cupboard").likely * acetone_ml(&acetone), 0.46, 0.02, "spill");
}

/// What one unit of the answer is in millilitres.
fn acetone_ml(page: &Page) -> f64 {
    match answer(page, "cupboard").unit.as_str() {
        "L" => 1000.0,
        "mL" => 1.0,
        other => panic!("{other}"),
    }
}

#[test]
fn labels_of_mixtures() {
    // UN GHS part 3: equal parts of acetone and isopropanol are Flam. Liq. 2, Eye Irrit. 2, STOT SE 3: flame, exclamation mark, Danger.
    let label = page("label", &[("contents", "acetone 50 %, isopropanol 50 %")]);
    assert_eq!(fact(&label, "signal word").to_lowercase(), "danger");
    assert_eq!(fact(&label, "pictograms"), "flame, exclamation mark");
    for code in ["H225", "H319", "H336"] {
        assert!(!fact(&label, code).is_empty());
    }
    // 10 % sulfuric acid: H314 by the UN's sums, H315 and H319 by the European limits; the stricter stands on it.
    let acid = page("label", &[("contents", "sulfuric-acid 10 %, water 90 %")]);
    assert!(!fact(&acid, "H314").is_empty());
    assert!(acid.facts.iter().any(|fact| fact.name == "mind" && fact.text.contains("CLP")));
}

#[test]
fn acid_and_caustic_stand_apart() {
    // EPA-600/2-80-076: mineral acid and caustic make heat.
    let found = page("together", &[("fluids", "battery-acid,alkaline-degreaser")]);
    assert!(found.choices.iter().any(|row| !row.fits && row.why.contains("3 m apart")));
    let oils = page("together", &[("fluids", "slideway-68,spindle-10")]);
    assert!(oils.choices.iter().all(|row| row.fits));
}

#[test]
fn ppm_and_mist() {
    // chemicals 1.5.2: 250.2 ppm of acetone at 25 °C are 594 mg/m³; 1 mL of oil in 36 m³ is 24 mg/m³ (computed independently).
    close(answer(&page("ppm", &[("mass", "594 mg/m3")]), "acetone").likely, 250.218, 0.3, "acetone");
    let mist = page("mist", &[("at_once", "1 mL"), ("volume", "36 m3")]);
    close(answer(&mist, "at once").likely, 24.2, 0.5, "mist");
}

#[test]
fn alcohol_in_water_burns_sooner_than_an_ideal_mixture_would() {
    // Closed cup, from memory of safety data sheets: 10 % isopropanol in water flashes near 41 °C; what is worked errs to the low side.
    let thinned = page("flammability", &[("contents", "isopropanol 10 %")]);
    let flash = answer(&thinned, "flash point").likely;
    assert!((20.0..41.0).contains(&flash), "{flash}");
    assert_eq!(fact(&thinned, "category of the UN GHS"), "3");
    // A tenth of it burns, so ten times as much fills a cupboard.
    let pure = page("flammability", &[("contents", "isopropanol")]);
    let spill = |page: &Page| answer(page, "cupboard").likely * acetone_ml(page) / acetone_ml(&pure);
    close(spill(&thinned) / spill(&pure), 10.0, 2.5, "spill");
}

#[test]
fn years_one_after_another_count_as_one() {
    // Law: the same year twice (PVGIS, as in the tests of the weather) wets the metal as much a year as it does once.
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/weather/pvgis_tmy_45N_8E.csv");
    let once = std::fs::read_to_string(path).unwrap();
    let start = once.lines().position(|line| line.starts_with("time(UTC)")).unwrap() + 1;
    let heading: Vec<&str> = once.lines().take(start).collect();
    let hours: Vec<&str> = once.lines().skip(start).take_while(|line| !line.trim().is_empty()).collect();
    let twice = [heading, hours.clone(), hours].concat().join("\n");
    let [one, two] = [&once, &twice].map(|text| page("sweating", &[("weather", text)]));
    for what in ["hours above 80 %", "hours in which it sweats", "water that condenses"] {
        let (a, b) = (answer(&one, what).likely, answer(&two, what).likely);
        close(b, a, 0.02 * a, what);
    }
}
