//! Every sheet, whichever there are: its suppositions can be read, its sources are known, its page is whole.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]

mod common;

use bench::{read, sheets};
use common::page;
use fields::Asks;
use reference::Reference;

/// A sheet's options that make it run, where its own suppositions are not enough.
fn sample(name: &str) -> Vec<(&'static str, &'static str)> {
    match name {
        "viscosity" => vec![("fluid", "slideway-68, slideway-32")],
        "blend" => vec![("thin", "hydraulic-32"), ("thick", "hydraulic-68"), ("wanted", "VG 46")],
        "grades" => vec![("viscosity", "VG 68")],
        "rescue" => vec![("bore", "25.013 mm"), ("shaft", "24.98 mm"), ("torque", "20 N·m")],
        "dilute" => vec![("parts", "10")],
        "air" | "flammability" | "label" => vec![("fluid", "acetone")],
        "together" => vec![("fluids", "battery-acid, alkaline-degreaser")],
        "ppm" => vec![("ppm", "250")],
        "switch" => vec![("old", "hydraulic-68"), ("new", "circulating-68")],
        _ => Vec::new(),
    }
}

#[test]
fn what_a_sheet_supposes_can_be_read_and_has_a_known_source() {
    let reference = Reference::embedded();
    for sheet in sheets() {
        for field in sheet.kind.fields.iter().filter(|field| !field.default.is_empty()) {
            assert!(reference.sources.contains_key(field.source), "{}: {} names {}", sheet.kind.name, field.name, field.source);
            assert!(read(sheet, &[(field.name, field.default)], reference).is_ok(), "{}: {}", sheet.kind.name, field.name);
        }
    }
}

#[test]
fn fields_have_names_of_their_own_and_words_for_people() {
    for sheet in sheets() {
        let mut names: Vec<&str> = sheet.kind.fields.iter().map(|field| field.name).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), sheet.kind.fields.len(), "{}", sheet.kind.name);
        assert!(names.iter().all(|name| !["json", "units", "picture", "help"].contains(name)), "{}", sheet.kind.name);
        assert!(sheet.kind.fields.iter().all(|field| !field.about.is_empty() && !field.about.ends_with('.')), "{}", sheet.kind.name);
    }
}

#[test]
fn the_bush_materials_offered_are_those_known() {
    let bushing = bench::sheet("bushing").unwrap();
    let offered = bushing.kind.fields.iter().find(|field| field.name == "material").unwrap();
    let Asks::Choice(offered) = offered.asks else { panic!("a choice") };
    let mut offered = offered.to_vec();
    let mut known: Vec<&str> = Reference::embedded().bearing_materials.keys().map(String::as_str).collect();
    offered.sort_unstable();
    known.sort_unstable();
    assert_eq!(offered, known);
}

#[test]
fn every_page_is_whole() {
    let reference = Reference::embedded();
    for sheet in sheets() {
        let name = sheet.kind.name;
        let page = page(name, &sample(name));
        assert!(!page.answers.is_empty() || !page.choices.is_empty() || !page.facts.is_empty(), "{name} finds nothing");
        assert!(!page.cautions.is_empty(), "{name} minds nothing");
        for answer in &page.answers {
            assert!(answer.low <= answer.likely && answer.likely <= answer.high, "{name}: {answer:?}");
            assert!([answer.low, answer.likely, answer.high].iter().all(|number| number.is_finite()), "{name}: {answer:?}");
            assert!(!answer.words.contains("  "), "{name}: {answer:?}");
        }
        for caution in &page.cautions {
            assert!(reference.sources.contains_key(&caution.source), "{name}: {caution:?}");
            assert!(caution.text.ends_with('.') && caution.text.starts_with(char::is_uppercase), "{name}: {caution:?}");
        }
        for step in &page.steps {
            assert!(reference.sources.contains_key(&step.source), "{name}: {step:?}");
        }
        for choice in &page.choices {
            let known =
                [reference.fluids.contains_key(&choice.key), reference.bearing_materials.contains_key(&choice.key), choice.key.is_empty()];
            assert!(known.contains(&true), "{name}: {choice:?}");
            assert!(!choice.why.is_empty(), "{name}: {choice:?}");
            let barred = reference.fluid(&choice.key).is_some_and(|fluid| fluid.barred.is_some());
            assert!(!(barred && choice.fits), "{name} recommends what is barred: {choice:?}");
        }
        let fluids: Vec<bool> = page.choices.iter().filter(|choice| !choice.key.is_empty()).map(|choice| !choice.fits).collect();
        assert!(fluids.is_sorted(), "{name}: what fits comes first");
    }
}

/// A name that lies in the picture is no use if it runs out of it. A letter of 14 px is about 7.5 px wide.
#[test]
fn every_picture_is_well_formed_and_nothing_runs_out_of_it() {
    let names: Vec<&str> = sheets().iter().map(|sheet| sheet.kind.name).collect();
    let mut drawn = 0;
    for name in names {
        let Some(picture) = page(name, &sample(name)).picture else { continue };
        let svg = picture.svg().unwrap();
        let document = roxmltree::Document::parse(&svg).unwrap();
        let root = document.root_element();
        let side = |key: &str| root.attribute(key).unwrap().parse::<f64>().unwrap();
        for text in root.descendants().filter(|node| node.has_tag_name("text")) {
            let place = |key: &str| text.attribute(key).and_then(|value| value.parse::<f64>().ok()).unwrap_or(0.0);
            let letters = f64::from(u32::try_from(text.text().unwrap_or("").trim().chars().count()).unwrap());
            let turned = text.attribute("transform").is_some();
            assert!(
                turned || place("x") + 7.5 * letters <= side("width") + 1.0 || text.attribute("text-anchor") == Some("middle"),
                "{name}: {:?}",
                text.text()
            );
            assert!(place("y") <= side("height"), "{name}: {:?}", text.text());
        }
        for line in &picture.lines {
            let words: Vec<&str> = line.name.split_whitespace().collect();
            assert!(words.iter().all(|word| svg.contains(word)), "{name}: {} is not named", line.name);
        }
        drawn += 1;
    }
    assert!(drawn >= 5, "viscosity, bearing, bushing, slideway and cylinder are drawn");
}

#[test]
fn inch_pages_speak_of_inches() {
    let sheet = bench::sheet("slideway").unwrap();
    let reply = read(sheet, &[("length", "6 in")], Reference::embedded()).unwrap();
    let page = sheet.work(&reply, Reference::embedded(), units::System::Inch).unwrap();
    assert!(page.inputs.iter().any(|input| input.value == "6" && input.unit == "in"), "{:?}", page.inputs);
}

/// Random inputs found an efficiency so small that the power was infinite.
#[test]
fn a_number_no_shop_has_is_refused_with_the_way_out() {
    let cut = bench::sheet("cut").unwrap();
    for efficiency in ["96e-320", "1e300"] {
        let refusals = read(cut, &[("efficiency", efficiency)], Reference::embedded()).unwrap_err();
        assert!(refusals[0].what.ends_with("which no shop has") && refusals[0].mend.contains("0.000001"), "{refusals:?}");
    }
}
