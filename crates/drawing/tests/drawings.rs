//! Every template is drawn with all its points, and no picture hides a number or runs over its edge.

use std::collections::BTreeSet;

use drawing::{Drawing, draw};
use reference::{Reference, Template};
use roxmltree::{Document, Node};

/// Finest text on a phone 390 pixels wide.
const FINEST: f64 = 12.0;

type Place = (f64, f64);

/// A circle with its number in it.
struct Label {
    number: usize,
    at: Place,
    radius: f64,
}

fn templates() -> impl Iterator<Item = &'static Template> {
    Reference::embedded().templates.values()
}

fn points(template: &Template) -> Vec<&str> {
    template.points.iter().map(|point| point.name.as_str()).collect()
}

/// All templates with their own points and with points the user added, and machines without a template.
fn drawings() -> Vec<(String, Drawing)> {
    let own: Vec<_> = (1..=40).map(|number| format!("own point {number}")).collect();
    let own: Vec<_> = own.iter().map(String::as_str).collect();
    let mut drawings = Vec::new();
    for template in templates() {
        let mut points = points(template);
        drawings.push((template.name.clone(), draw(Some(&template.name), &points)));
        points.extend(&own[points.len()..]);
        drawings.push((format!("{} with 40 points", template.name), draw(Some(&template.name), &points)));
        drawings.push((format!("{} without points", template.name), draw(Some(&template.name), &[])));
    }
    for count in [0, 1, 13, 14, 40] {
        drawings.push((format!("plain with {count} points"), draw(None, &own[..count])));
    }
    drawings
}

fn number(node: Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).expect(name).parse().expect(name)
}

/// The places of a path of straight lines.
fn path(node: Node<'_, '_>) -> Vec<Place> {
    let text = node.attribute("d").expect("d").replace(['M', 'L', 'Z'], " ");
    let numbers: Vec<f64> = text.split_whitespace().map(|word| word.parse().expect(word)).collect();
    numbers.chunks(2).map(|pair| (pair[0], pair[1])).collect()
}

/// The circles that hold a number: those that a text follows.
fn labels(document: &Document<'_>) -> Vec<Label> {
    let circles = document.descendants().filter(|node| node.has_tag_name("circle"));
    let numbered = circles.filter_map(|circle| Some((circle, circle.next_sibling()?.text()?.parse().ok()?)));
    numbered
        .map(|(circle, said)| Label { number: said, at: (number(circle, "cx"), number(circle, "cy")), radius: number(circle, "r") })
        .collect()
}

/// Leaders: each thin line whose end has a spot.
fn leaders(document: &Document<'_>) -> Vec<(Place, Place)> {
    let dots = document.descendants().filter(|node| node.attribute("fill") == Some("currentColor") && node.has_tag_name("circle"));
    let spots: Vec<_> = dots.map(|spot| (number(spot, "cx"), number(spot, "cy"))).collect();
    let thin = document.descendants().filter(|node| node.has_tag_name("path") && node.attribute("stroke-width") == Some("0.8"));
    let lines = thin.map(path).filter(|places| places.len() == 2 && spots.contains(&places[1]));
    lines.map(|places| (places[0], places[1])).collect()
}

fn apart(a: Place, b: Place) -> f64 {
    (a.0 - b.0).hypot(a.1 - b.1)
}

/// Which side of a line a place is on.
fn side((from, to): (Place, Place), place: Place) -> f64 {
    (to.0 - from.0) * (place.1 - from.1) - (to.1 - from.1) * (place.0 - from.0)
}

fn crosses(a: (Place, Place), b: (Place, Place)) -> bool {
    side(a, b.0) * side(a, b.1) < 0.0 && side(b, a.0) * side(b, a.1) < 0.0
}

#[test]
fn every_template_is_drawn_and_knows_where_each_of_its_points_is() {
    for template in templates() {
        let drawing = draw(Some(&template.name), &points(template));
        assert!(!drawing.svg.contains("plain box"), "{} has no sketch", template.name);
        assert!(!drawing.svg.contains("lsewhere"), "a point of {} has no spot: {}", template.name, drawing.svg);
    }
}

#[test]
fn every_point_has_its_number_in_the_order_given() {
    for (name, drawing) in drawings() {
        let document = Document::parse(&drawing.svg).expect(&name);
        let shown: BTreeSet<_> = labels(&document).iter().map(|label| label.number).collect();
        let numbered: BTreeSet<_> = drawing.numbered.iter().map(|(number, _)| *number).collect();
        assert_eq!(shown, numbered, "{name}");
        assert_eq!(numbered, (1..=drawing.numbered.len()).collect(), "{name}");
    }
    let drawing = draw(Some("bench vice"), &["slide", "own point", "screw collar"]);
    let named = [(1, "slide"), (2, "own point"), (3, "screw collar")].map(|(number, name)| (number, name.to_owned()));
    assert_eq!(drawing.numbered, named);
    assert!(drawing.svg.contains("Elsewhere on the machine: 2 own point."));
}

#[test]
fn no_number_lies_on_another_or_on_a_leader() {
    for (name, drawing) in drawings() {
        let document = Document::parse(&drawing.svg).expect(&name);
        let (labels, leaders) = (labels(&document), leaders(&document));
        for (place, a) in labels.iter().enumerate() {
            for b in &labels[..place] {
                assert!(apart(a.at, b.at) > a.radius + b.radius, "{name}: {} on {}", a.number, b.number);
            }
            for (from, to) in leaders.iter().filter(|(from, _)| *from != a.at) {
                let nearest =
                    (0..=100).map(f64::from).map(|step| (from.0 + (to.0 - from.0) * step / 100.0, from.1 + (to.1 - from.1) * step / 100.0));
                assert!(nearest.map(|place| apart(place, a.at)).all(|away| away > a.radius), "{name}: a leader runs through {}", a.number);
            }
        }
    }
}

#[test]
fn no_leader_crosses_another() {
    let mut crossing = Vec::new();
    for (name, drawing) in drawings() {
        let document = Document::parse(&drawing.svg).expect(&name);
        let leaders = leaders(&document);
        for (place, a) in leaders.iter().enumerate() {
            crossing
                .extend(leaders[..place].iter().filter(|b| crosses(*a, **b)).map(|b| format!("{name}: those to {:?} and {:?}", a.1, b.1)));
        }
    }
    assert!(crossing.is_empty(), "{crossing:#?}");
}

#[test]
fn nothing_runs_over_the_edge() {
    for (name, drawing) in drawings() {
        let document = Document::parse(&drawing.svg).expect(&name);
        let root = document.root_element();
        let view: Vec<f64> = root.attribute("viewBox").expect("viewBox").split(' ').map(|word| word.parse().expect(word)).collect();
        let inside = |(x, y): Place| x >= view[0] + 0.7 && y >= view[1] + 0.7 && x <= view[2] - 0.7 && y <= view[3] - 0.7;
        for node in root.descendants().filter(Node::is_element) {
            let reach = match node.tag_name().name() {
                "path" => path(node),
                "circle" => around((number(node, "cx"), number(node, "cy")), number(node, "r"), number(node, "r")),
                "ellipse" => around((number(node, "cx"), number(node, "cy")), number(node, "rx"), number(node, "ry")),
                "rect" => {
                    let (x, y) = (number(node, "x"), number(node, "y"));
                    vec![(x, y), (x + number(node, "width"), y + number(node, "height"))]
                }
                "text" => vec![(number(node, "x"), number(node, "y"))],
                "svg" | "g" | "title" | "desc" => Vec::new(),
                other => unreachable!("{other} is not measured here"),
            };
            assert!(reach.iter().all(|place| inside(*place)), "{name}: {:?} at {reach:?} of {view:?}", node.attributes());
        }
    }
}

fn around((x, y): Place, across: f64, down: f64) -> Vec<Place> {
    vec![(x - across, y - down), (x + across, y + down)]
}

#[test]
fn the_text_is_large_enough_on_a_phone() {
    for (name, drawing) in drawings() {
        let document = Document::parse(&drawing.svg).expect(&name);
        let root = document.root_element();
        let sizes: Vec<f64> =
            root.descendants().filter_map(|node| node.attribute("font-size")).map(|size| size.parse().expect(size)).collect();
        assert!(root.attribute("viewBox").expect("viewBox").starts_with("0 0 390 ") && sizes.iter().all(|size| *size >= FINEST), "{name}");
        assert_eq!(sizes.len(), 1, "{name}");
    }
}

#[test]
fn several_pictures_stand_on_one_page_and_are_read_out() {
    for (name, drawing) in drawings() {
        let document = Document::parse(&drawing.svg).expect(&name);
        assert!(document.descendants().all(|node| node.attribute("id").is_none()), "{name}");
        let root = document.root_element();
        assert_eq!(root.attribute("role"), Some("img"), "{name}");
        let words: Vec<_> = root.children().take(2).map(|node| (node.tag_name().name(), node.text().unwrap_or_default())).collect();
        assert!(matches!(words[..], [("title", title), ("desc", desc)] if !title.is_empty() && !desc.is_empty()), "{name}: {words:?}");
        assert!(drawing.numbered.iter().all(|(number, point)| words[1].1.contains(&format!("{number} {point}"))), "{name}: {words:?}");
    }
}

#[test]
fn names_are_escaped() {
    let hostile = "<script>\"&'\u{0}\u{1b}";
    for template in [None, Some("bench vice"), Some(hostile)] {
        let drawing = draw(template, &[hostile, "slide"]);
        let document = Document::parse(&drawing.svg).expect("it parses");
        let desc = document.descendants().find(|node| node.has_tag_name("desc")).and_then(|node| node.text());
        assert!(desc.is_some_and(|desc| desc.contains("<script>\"&'")), "{desc:?}");
    }
}

#[test]
fn a_point_named_a_hundred_times_keeps_all_its_numbers() {
    let drawing = draw(Some("bench vice"), &["slide"; 100]);
    let document = Document::parse(&drawing.svg).expect("it parses");
    assert_eq!(labels(&document).len(), 100);
}
