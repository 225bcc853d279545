//! The sheets of paper: they draw for every example, they are sound HTML, every pot has its label, and a phone finds its page by the code.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

#[expect(dead_code, reason = "the tests of the guard use the rest of it")]
mod common;

use std::path::Path;
use std::sync::Arc;

use axum::http::StatusCode;
use common::{app, clock, example, get, kept, local, pages, pages_of, post, send};
use html5ever::tendril::TendrilSink;
use html5ever::{ParseOpts, parse_document};
use markup5ever_rcdom::{Handle, NodeData, RcDom};
use pages::paper::{Files, Geometry, Labels, Sheet, Size, files};
use pages::router;
use planner::needs::kinds;
use reference::Reference;

const EXAMPLES: [&str; 4] = ["alder-lock.toml", "attic-clocks.toml", "first-lathe.toml", "school-room.toml"];

/// An element: its name, its attributes, its text.
struct Element {
    name: String,
    attributes: Vec<(String, String)>,
    text: String,
}

impl Element {
    fn attribute(&self, name: &str) -> &str {
        self.attributes.iter().find(|(known, _)| known == name).map_or("", |(_, value)| value)
    }

    fn number(&self, name: &str) -> f64 {
        self.attribute(name).parse().unwrap()
    }
}

/// The elements of a page in their order, as an independent reader finds them; it says what is wrong with the page.
fn elements(page: &str) -> Vec<Element> {
    let parsed = parse_document(RcDom::default(), ParseOpts::default()).one(page);
    assert_eq!(*parsed.errors.borrow(), Vec::<std::borrow::Cow<'static, str>>::new());
    let mut all = Vec::new();
    walk(&parsed.document, &mut all);
    all
}

fn walk(node: &Handle, all: &mut Vec<Element>) -> String {
    let place = all.len();
    let is_element = if let NodeData::Element { name, attrs, .. } = &node.data {
        let attributes = attrs.borrow().iter().map(|one| (one.name.local.to_string(), one.value.to_string())).collect();
        all.push(Element { name: name.local.to_string(), attributes, text: String::new() });
        true
    } else {
        false
    };
    let mut text = if let NodeData::Text { contents } = &node.data { contents.borrow().to_string() } else { String::new() };
    for child in node.children.borrow().iter() {
        text.push_str(&walk(child, all));
    }
    if is_element {
        all[place].text.clone_from(&text);
    }
    text
}

#[tokio::test]
async fn every_sheet_of_every_example_is_sound_html_and_nothing_is_inline() {
    for name in EXAMPLES {
        let folder = tempfile::tempdir().unwrap();
        for pages in [router(app(local(), &example(name))), pages_of(&kept(folder.path(), Some(name)), local())] {
            for size in Size::ALL.map(Size::word) {
                for sheet in Sheet::ALL.map(Sheet::word) {
                    let answer = send(&pages, get(&format!("/paper/{sheet}?size={size}&decanted=acetone"))).await;
                    assert_eq!(answer.status, StatusCode::OK, "{name}: {sheet}");
                    let all = elements(&answer.text);
                    // Content Security Policy Level 3 refuses these without 'unsafe-inline'.
                    assert!(all.iter().all(|one| one.name != "style" && one.name != "script" && one.attribute("style").is_empty()));
                    let linked: Vec<_> = all.iter().filter(|one| one.name == "link").map(|one| one.attribute("href")).collect();
                    assert!(linked.len() == 2 && linked[1].contains(&format!("paper-{size}")), "{linked:?}");
                    for style in linked {
                        assert_eq!(send(&pages, get(style)).await.status, StatusCode::OK);
                    }
                    assert!(all.iter().filter(|one| one.name == "section").count() > 0, "{name}: {sheet}");
                }
            }
            assert_eq!(send(&pages, get("/paper")).await.status, StatusCode::OK);
        }
    }
}

#[tokio::test]
async fn every_machine_has_a_chart_with_as_many_numbers_as_points() {
    let pages = pages(local());
    let all = elements(&send(&pages, get("/paper/chart")).await.text);
    let machines: Vec<_> = all.iter().filter(|one| one.name == "section").collect();
    assert_eq!(machines.len(), 5, "the example has five machines");
    for machine in ["lathe", "beam%20engine"] {
        let all = elements(&send(&pages, get(&format!("/paper/chart?machine={machine}"))).await.text);
        assert_eq!(all.iter().filter(|one| one.name == "section").count(), 1);
        let rows = all.iter().filter(|one| one.name == "tr").count() - 1;
        let described = all.iter().find(|one| one.name == "desc").unwrap();
        assert!(rows > 3 && described.text.contains(&format!("{rows} ")), "{rows} rows; {}", described.text);
    }
    assert_eq!(send(&pages, get("/paper/chart?machine=loom")).await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn what_cannot_be_drawn_is_said() {
    let pages = pages(local());
    for (path, said) in [
        ("/paper/poster", "no sheet called"),
        ("/paper/chart?size=a5", "no size of paper"),
        ("/paper/labels?labels=99.1+x+67.7+mm,+3+x+4", "a sheet of A4"),
        ("/paper/labels?first=none", "counted from 1"),
        ("/paper/labels?address=ftp://x", "not an address"),
        ("/paper/bench/poem", "no sheet called"),
        ("/paper/bench/viscosity", "No oil is named"),
        ("/paper/bench/viscosity?fluid=snake+oil", "says at each field"),
    ] {
        let answer = send(&pages, get(path)).await;
        // What is nowhere is told from what is there and has no answer.
        let status = if said == "no sheet called" { StatusCode::NOT_FOUND } else { StatusCode::UNPROCESSABLE_ENTITY };
        assert_eq!(answer.status, status, "{path}");
        assert!(answer.text.contains(said), "{path}: {}", answer.text);
    }
}

#[tokio::test]
async fn the_round_has_a_box_where_a_point_comes_due() {
    let folder = tempfile::tempdir().unwrap();
    let pages = pages_of(&kept(folder.path(), Some("alder-lock.toml")), local());
    let row = |text: &str, point: &str| -> Vec<bool> {
        let row = text.split("<tr>").find(|row| row.contains(&format!(" {point}</th>"))).map_or("", |row| row);
        row.split("<td class=\"day").skip(1).map(|cell| cell.contains("class=\"box\"")).collect()
    };
    let before = send(&pages, get("/paper/round")).await.text;
    let days = row(&before, "bed ways").len();
    assert!((28..=31).contains(&days), "{days} days are no month");
    assert!(row(&before, "bed ways").iter().all(|due| *due), "what is oiled before use has a box on every day");
    // Of the example: the gears of the lathe, every 9 months; never done, so due today, and not again within the month.
    let gears = row(&before, "headstock speed-change gears");
    assert_eq!(gears.iter().filter(|due| **due).count(), 1);
    assert!(gears[0]);
    let done = "machine=lathe&point=headstock+speed-change+gears";
    assert_eq!(send(&pages, post("/done", done)).await.status, StatusCode::SEE_OTHER);
    let after = send(&pages, get("/paper/round")).await.text;
    assert_eq!(row(&after, "headstock speed-change gears"), Vec::<bool>::new(), "what is done is due no more");
}

/// A kept shop with a pot of every fluid there is.
fn everything(folder: &Path) -> std::path::PathBuf {
    let fluids = Reference::embedded().fluids.values().filter(|fluid| !fluid.always_there);
    let pots: String = fluids.map(|fluid| format!("[[pot]]\nfluid = \"{}\"\nleft = \"1 L\"\n", fluid.key)).collect();
    let path = folder.join("everything.toml");
    std::fs::write(&path, format!("[[machine]]\ntemplate = \"bench lathe\"\n{pots}")).unwrap();
    kept(folder, Some(path.to_str().unwrap()))
}

#[tokio::test]
async fn every_pot_has_a_label_with_what_must_stand_there_on_every_sheet_of_labels() {
    let folder = tempfile::tempdir().unwrap();
    let pages = pages_of(&everything(folder.path()), local());
    let reference = Reference::embedded();
    let fluids: Vec<_> = reference.fluids.values().filter(|fluid| !fluid.always_there).collect();
    for size in Size::ALL {
        for geometry in Geometry::offered(size) {
            let path = format!("/paper/labels?size={}&labels={}", size.word(), geometry.replace(' ', "+"));
            let all = elements(&send(&pages, get(&path)).await.text);
            let starts: Vec<usize> = (0..all.len()).filter(|place| all[*place].attribute("class") == "label").collect();
            assert_eq!(starts.len(), fluids.len(), "{geometry}");
            for ((number, start), fluid) in starts.iter().enumerate().zip(&fluids) {
                let parts = &all[start + 1..starts.get(number + 1).copied().unwrap_or(all.len())];
                let label = handling::label::of_fluid(fluid, reference);
                let bare = |text: &str| text.split_whitespace().collect::<String>().to_lowercase();
                let texts: String = parts.iter().filter(|part| part.name == "text").map(|part| bare(&part.text)).collect();
                let here = format!("{geometry}: {}", fluid.name);
                assert!(texts.starts_with(&bare(&fluid.name)), "{here}: {texts}");
                assert!(texts.contains("datasheet"), "{here}");
                assert!(label.signal.is_none_or(|signal| texts.contains(&signal.word().to_lowercase())), "{here}");
                // A statement stands there whole or not at all, and none in another's place.
                let lines = label.hazards.iter().chain(&label.precautions);
                let whole = lines.clone().all(|line| texts.contains(&bare(&line.text))) && texts.contains(&bare(&label.first_aid));
                assert!(whole || texts.contains("notallstandshere"), "{here}");
                let signs: Vec<_> = parts.iter().filter(|part| part.attribute("class") == "sign").collect();
                assert_eq!(signs.len(), label.pictograms.len(), "{here}");
                // Regulation (EC) No 1272/2008, Annex I, 1.2.1.4 (from memory): no sign is smaller than 1 cm². Its square stands on its point.
                assert!(signs.iter().all(|sign| sign.number("width").powi(2) / 2.0 >= 99.9), "{here}");
            }
        }
    }
}

/// The pictures of codes on a page, as grey squares of so many points to a module, each with its side in points.
fn codes(page: &str) -> Vec<(usize, Vec<u8>)> {
    const POINTS: usize = 4;
    let drawn = page.split("<svg class=\"code\"").skip(1).map(|code| {
        let modules: usize = code.split("viewBox=\"0 0 ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
        let side = modules * POINTS;
        let mut points = vec![255; side * side];
        for run in code.split("d=\"M").nth(1).unwrap().split('"').next().unwrap().split('M') {
            let numbers: Vec<usize> = run.split(|letter: char| !letter.is_ascii_digit()).filter_map(|number| number.parse().ok()).collect();
            let (x, y, long) = (numbers[0], numbers[1], numbers[2]);
            for row in y * POINTS..(y + 1) * POINTS {
                points[row * side + x * POINTS..row * side + (x + long) * POINTS].fill(0);
            }
        }
        (side, points)
    });
    drawn.collect()
}

/// What a reader of codes, which is none of ours, makes of a picture.
fn decoded((side, points): &(usize, Vec<u8>)) -> String {
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(*side, *side, |x, y| points[y * side + x]);
    let found = picture.detect_grids();
    assert_eq!(found.len(), 1);
    found[0].decode().unwrap().1
}

#[tokio::test]
async fn the_code_on_a_label_opens_the_page_of_its_pot() {
    let folder = tempfile::tempdir().unwrap();
    let pages = pages_of(&everything(folder.path()), local());
    let fluids: Vec<_> = Reference::embedded().fluids.values().filter(|fluid| !fluid.always_there).collect();
    for address in ["http://192.168.1.20:8087", "https://a-garage-with-a-long-name.example/the/shop"] {
        let labels = send(&pages, get(&format!("/paper/labels?address={address}"))).await.text;
        let codes = codes(&labels);
        assert_eq!(codes.len(), fluids.len());
        for (code, fluid) in codes.iter().zip(&fluids) {
            let read = decoded(code);
            let path = read.strip_prefix(address).unwrap();
            let page = send(&pages, get(path)).await;
            assert_eq!(page.status, StatusCode::OK, "{read}");
            let heading = elements(&page.text).into_iter().find(|one| one.name == "h1").unwrap();
            assert_eq!(heading.text.to_lowercase(), fluid.name.to_lowercase(), "{read}");
        }
    }
    // Of one pot alone, from the third label on; by the address that was asked.
    let read = decoded(&codes(&send(&pages, get("/paper/labels")).await.text)[0]);
    let (own, id) = read.rsplit_once("/pot/").unwrap();
    assert_eq!(own, format!("http://{}", common::LOCAL));
    let one = send(&pages, get(&format!("/paper/labels?pot={id}&first=3"))).await.text;
    let all = elements(&one);
    let labels: Vec<_> = all.iter().filter(|one| one.attribute("class") == "label").collect();
    assert_eq!(labels.len(), 1);
    let usual = Geometry::parse(Geometry::offered(Size::A4).next().unwrap(), Size::A4).unwrap().to_string();
    assert!(usual.contains("2 x 4"), "the third is the first of the second row");
    assert!((labels[0].number("x") - 4.65).abs() < 0.01 && (labels[0].number("y") - 80.8).abs() < 0.01);
}

#[test]
fn files_need_nothing_else() {
    for name in EXAMPLES {
        let shop = Arc::new(shop::read(&std::fs::read(example(name)).unwrap(), kinds(), Reference::embedded()).unwrap());
        for size in Size::ALL {
            let geometry = Geometry::parse(Geometry::offered(size).next().unwrap(), size).unwrap();
            let labels = Labels { geometry, gone: 0, cut: false, pot: None, decanted: vec!["acetone".to_owned()] };
            let wanted = Files {
                sheets: &Sheet::ALL,
                size,
                labels: &labels,
                pots: &vec![None; shop.pots.len()],
                address: None,
                today: clock().date(),
                units: shop.units,
            };
            let files = files(&shop, None, &wanted).unwrap();
            assert_eq!(files.len(), Sheet::ALL.len());
            for file in files {
                let all = elements(&file.html);
                let fetches = |one: &Element| ["href", "src"].iter().any(|name| !one.attribute(name).is_empty());
                assert!(!all.iter().any(fetches), "{name}: {}", file.name);
                assert_eq!(all.iter().filter(|one| one.name == "style").count(), 1, "{name}: {}", file.name);
            }
        }
    }
}
