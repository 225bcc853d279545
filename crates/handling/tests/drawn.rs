//! Labels as they are printed: every statement has its words, nothing of a label is lost in the drawing, the signs are large enough.

use handling::label::{Label, MOST_PRECAUTIONS, Pictogram, SMALLEST_MM, Written, draw, of_dilution, of_fluid};
use reference::Reference;
use roxmltree::{Document, Node};

fn labels() -> impl Iterator<Item = Label> {
    let reference = Reference::embedded();
    let thinned = reference.fluids.values().filter_map(|fluid| {
        let share = fluid.dilution?.value.high;
        Some(of_dilution(fluid, share, None, reference))
    });
    reference.fluids.values().map(|fluid| of_fluid(fluid, reference)).chain(thinned)
}

fn number(node: &Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).and_then(|text| text.trim_end_matches("mm").parse().ok()).expect("the attribute is a number")
}

#[test]
fn every_code_of_the_data_has_its_words() {
    let reference = Reference::embedded();
    let fluids = reference.fluids.values().flat_map(|fluid| &fluid.hazards.statements);
    let substances = reference.substances.values();
    let pure =
        substances.clone().flat_map(|substance| substance.hazards.iter().map(|hazard| &hazard.statement).chain(&substance.supplements));
    let limits = substances.flat_map(|substance| substance.specific_limits.iter().map(|limit| &limit.hazard.statement));
    for code in fluids.chain(pure).chain(limits) {
        assert!(reference.statement(code).is_some(), "{code} has no words");
    }
    for class in reference::hazard::HazardClass::ALL {
        assert!(reference.statement(class.statement()).is_some(), "{class} has no words");
    }
}

#[test]
fn labels_say_what_they_must_and_not_more_than_is_read() {
    for label in labels() {
        assert!(label.precautions.len() <= MOST_PRECAUTIONS, "{}", label.product);
        assert!(label.hazards.iter().chain(&label.precautions).all(|line| !line.text.is_empty()), "{}", label.product);
        assert!(!label.first_aid.is_empty());
        if label.signal.is_some() {
            assert!(!label.hazards.is_empty() && !label.precautions.is_empty(), "{}", label.product);
        }
        // UN GHS, Annex 3: what a precautionary statement leaves open has to be filled in.
        let open = |text: &str| text.contains(['…', '[', ']']) || text.contains("/…");
        assert!(label.precautions.iter().all(|line| !open(&line.text)), "{}", label.product);
    }
}

#[test]
fn the_drawing_loses_nothing_and_fits() {
    for mut label in labels() {
        label.written = Written { lot: Some("A & B <7>".to_owned()), ..Written::default() };
        for (width, height) in [(0.0, 0.0), (52.0, 74.0), (74.0, 52.0), (74.0, 105.0), (105.0, 148.0), (f64::NAN, 80.0)] {
            let svg = draw(&label, width, height);
            let document = Document::parse(&svg).expect("the drawing is XML");
            let root = document.root_element();
            let (wide, high) = (number(&root, "width"), number(&root, "height"));
            assert!(wide.min(high) >= SMALLEST_MM.0 && wide.max(high) >= SMALLEST_MM.1);

            let texts: Vec<_> = root.descendants().filter(|node| node.has_tag_name("text")).collect();
            let squeezed = |text: &str| text.split_whitespace().collect::<String>();
            let printed: String = texts.iter().filter_map(Node::text).map(squeezed).collect();
            let never = label.never_with.iter().map(|never| never.what.as_str());
            let lines = label.hazards.iter().chain(&label.precautions).map(|line| line.text.as_str());
            let named = label.contents.iter().map(|line| line.name.as_str());
            for text in lines.chain(never).chain(named).chain([label.product.as_str(), label.first_aid.as_str(), "A & B <7>"]) {
                assert!(printed.contains(&squeezed(text)), "{}: `{text}` is not printed", label.product);
            }
            for text in &texts {
                assert!(number(text, "y") <= high && number(text, "font-size") >= 1.7, "{}", label.product);
            }

            // Regulation (EC) No 1272/2008, Annex I, 1.2.1 (from memory): 1 cm² and a fifteenth of the label for each sign.
            let asked = wide * height.max(SMALLEST_MM.0).max(if wide < SMALLEST_MM.1 { SMALLEST_MM.1 } else { 0.0 });
            let signs: Vec<_> = root.children().filter(|node| node.has_tag_name("svg")).collect();
            assert_eq!(signs.len(), label.pictograms.len(), "{}", label.product);
            let boxes: Vec<_> = signs.iter().map(|sign| (number(sign, "x"), number(sign, "y"), number(sign, "width"))).collect();
            for (place, (x, y, side)) in boxes.iter().enumerate() {
                assert!(side * side / 2.0 >= (asked / 15.0).max(100.0) - 0.2, "{}: {side} mm", label.product);
                assert!(x + side <= wide && y + side <= high, "{}", label.product);
                for (other_x, other_y, _) in &boxes[..place] {
                    assert!((x - other_x).abs() + (y - other_y).abs() >= side - 0.05, "{}: signs overlap", label.product);
                }
            }
        }
    }
}

#[test]
fn every_sign_can_be_read_by_machines_and_by_who_cannot_see_it() {
    for pictogram in Pictogram::ALL {
        let document = Document::parse(pictogram.svg()).expect("the sign is XML");
        let root = document.root_element();
        assert_eq!(root.attribute("viewBox"), Some("0 0 100 100"));
        assert_eq!(root.attribute("role"), Some("img"));
        for name in ["title", "desc"] {
            let said = root.children().find(|node| node.has_tag_name(name)).and_then(|node| node.text());
            assert!(said.is_some_and(|said| !said.is_empty()), "{} has no {name}", pictogram.code());
        }
    }
}

#[test]
fn a_label_turns_into_json_and_its_shape_is_known() {
    let reference = Reference::embedded();
    let label = of_fluid(reference.fluid("acetone").expect("the data have acetone"), reference);
    let json = serde_json::to_value(&label).expect("a label is plain data");
    assert_eq!(json["signal"], "danger");
    assert_eq!(json["findings"][0]["class"], "Flam. Liq. 2");
    assert!(serde_json::to_string(&schemars::schema_for!(Label)).expect("a schema is plain data").contains("never_with"));
}
