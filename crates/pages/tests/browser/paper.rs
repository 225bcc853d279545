//! The sheets of paper, printed by a real browser at both sizes: whole pages of the right size, and nothing beyond an edge.

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use pages::Settings;
use pages::paper::{Geometry, Size};
use reference::Reference;
use serde_json::json;

use crate::driver::{Browser, Pages, root};
use crate::here;

/// Width and height of the paper, and what a sheet may fill of its width, upright and on its side, mm; ISO 216 and ANSI/ASME Y14.1.
const PAPERS: [(Size, f64, f64); 2] = [(Size::A4, 210.0, 297.0), (Size::Letter, 215.9, 279.4)];
const MARGINS_MM: f64 = 24.0;
const PIXELS_PER_MM: f64 = 96.0 / 25.4;
const POINTS_PER_MM: f64 = 72.0 / 25.4;

/// What reaches beyond the page, and what of a label beyond its box or onto its neighbour.
const MEASURE: &str = "
    const wide = document.documentElement.clientWidth + .6, said = one => one.tagName + ' ' + one.textContent.trim().slice(0, 40);
    const beyond = [...document.querySelectorAll('main *')].filter(one => !one.closest('svg.page *') && !one.closest('desc, title'))
        .filter(one => one.getBoundingClientRect().right > wide).map(one => said(one) + ' ends at ' + one.getBoundingClientRect().right);
    const cells = [...document.querySelectorAll('th, td')].filter(one => one.scrollWidth > one.clientWidth + 1)
        .map(one => said(one) + ' is wider than its cell');
    const labels = [...document.querySelectorAll('svg.label')].flatMap(label => {
        const box = label.getBoundingClientRect(), name = label.getAttribute('aria-label');
        const parts = [...label.children].filter(one => !one.matches('.cut'));
        const boxes = parts.map(one => [one, one.getBoundingClientRect()]);
        const out = boxes.filter(([_, b]) => b.left < box.left + 1 || b.right > box.right - 1 || b.top < box.top + 1 || b.bottom > box.bottom - 1)
            .map(([one]) => name + ': ' + said(one) + ' reaches out of the label');
        const over = boxes.flatMap(([one, a], place) => boxes.slice(0, place).filter(([other, b]) =>
            (one.matches('text') || other.matches('text') || one.matches('.code') || other.matches('.code'))
            && Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1.5
            && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > .45 * Math.min(a.height, b.height) + .5)
            .map(([other]) => name + ': ' + said(one) + ' lies on ' + said(other)));
        const empty = parts.some(one => one.matches('text')) ? [] : [name + ' is empty'];
        return out.concat(over, empty);
    });
    return beyond.concat(cells, labels);";

/// A shop with a pot of every fluid there is.
fn everything(folder: &std::path::Path) -> String {
    let fluids = Reference::embedded().fluids.values().filter(|fluid| !fluid.always_there);
    let pots: String = fluids.map(|fluid| format!("[[pot]]\nfluid = \"{}\"\nleft = \"1 L\"\nbought = 2026-01-02\n", fluid.key)).collect();
    let path = folder.join("everything.toml");
    std::fs::write(&path, format!("[[machine]]\ntemplate = \"bench lathe\"\n{pots}")).unwrap();
    path.to_str().unwrap().to_owned()
}

/// Prints a page, keeps the file and gives back the sizes of its pages in mm; and what is wrong with it as it is printed.
async fn print(browser: &Browser, name: &str, address: &str, width_mm: f64) -> (Vec<(f64, f64)>, Vec<String>) {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a width of paper in pixels")]
    let width = (width_mm * PIXELS_PER_MM).ceil() as u32;
    browser.look(width, 1100, "light").await;
    browser.tell("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
    browser.client.goto(address).await.unwrap();
    let wrong = browser.run(MEASURE).await;
    let wrong = wrong.as_array().unwrap().iter().map(|said| format!("{name}: {}", said.as_str().unwrap())).collect();
    let printed = browser.tell("Page.printToPDF", json!({ "preferCSSPageSize": true, "displayHeaderFooter": false })).await;
    let pdf = BASE64_STANDARD.decode(printed["data"].as_str().unwrap()).unwrap();
    let folder = root().join("target/screenshots/paper");
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join(format!("{name}.pdf")), &pdf).unwrap();
    // PDF 32000-1, 7.7.3.3: every page has a box of four numbers, in points.
    let text = String::from_utf8_lossy(&pdf);
    let boxes = text.split("/MediaBox [").skip(1).map(|rest| {
        let sides: Vec<f64> = rest.split(']').next().unwrap().split_whitespace().map(|side| side.parse().unwrap()).collect();
        (sides[2] / POINTS_PER_MM, sides[3] / POINTS_PER_MM)
    });
    (boxes.collect(), wrong)
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "needs a browser; cargo xtask test runs it"]
async fn every_sheet_prints_whole_at_both_sizes() {
    let folder = tempfile::tempdir().unwrap();
    let all = everything(folder.path());
    let browser = Browser::start().await;
    let mut wrong = Vec::new();
    for example in ["alder-lock.toml", "attic-clocks.toml", "first-lathe.toml", "school-room.toml", all.as_str()] {
        let pages = Pages::kept(Some(example), Settings::local(here()));
        let stem = std::path::Path::new(example).file_stem().unwrap().to_str().unwrap();
        for (size, width, height) in PAPERS {
            let word = size.word();
            let mut sheets: Vec<(String, String, f64, (f64, f64))> = Vec::new();
            for sheet in ["chart", "buying", "cautions"] {
                sheets.push((sheet.to_owned(), format!("/paper/{sheet}?size={word}"), width - MARGINS_MM, (width, height)));
            }
            sheets.push(("round".to_owned(), format!("/paper/round?size={word}"), height - MARGINS_MM, (height, width)));
            for (number, geometry) in Geometry::offered(size).enumerate() {
                let of = geometry.replace(' ', "+");
                let path = format!("/paper/labels?size={word}&labels={of}&decanted=acetone&decanted=citric-acid&cut=yes");
                sheets.push((format!("labels-{number}"), path, width, (width, height)));
            }
            for (sheet, path, wide, paper) in sheets {
                let name = format!("{stem}-{word}-{sheet}");
                let (boxes, found) = print(&browser, &name, &format!("{}{path}", pages.address), wide).await;
                wrong.extend(found);
                if boxes.is_empty() {
                    wrong.push(format!("{name} has no page"));
                }
                let other = boxes.iter().find(|(x, y)| (x - paper.0).abs() > 0.6 || (y - paper.1).abs() > 0.6);
                wrong.extend(other.map(|(x, y)| format!("{name} has a page of {x:.1} by {y:.1} mm")));
            }
        }
    }
    browser.close().await;
    assert!(wrong.is_empty(), "{} things\n{}", wrong.len(), wrong.join("\n"));
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "needs a browser; cargo xtask test runs it"]
async fn every_calculation_prints_within_the_page() {
    let pages = Pages::of("alder-lock.toml", Settings::local(here()));
    let browser = Browser::start().await;
    let (mut wrong, mut printed) = (Vec::new(), 0);
    for sheet in bench::sheets() {
        let name = sheet.kind.name;
        let address = format!("{}/paper/bench/{name}?size=letter", pages.address);
        browser.client.goto(&address).await.unwrap();
        // A sheet that needs an answer of its own is no page without it.
        if browser.run("return document.body.className").await != "worked" {
            continue;
        }
        printed += 1;
        let (boxes, found) = print(&browser, &format!("worked-{name}"), &address, 215.9 - MARGINS_MM).await;
        wrong.extend(found);
        assert!(!boxes.is_empty(), "{name}");
    }
    browser.close().await;
    assert!(printed > 10, "{printed} sheets");
    assert!(wrong.is_empty(), "{} things\n{}", wrong.len(), wrong.join("\n"));
}
