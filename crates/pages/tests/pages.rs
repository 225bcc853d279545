//! The pages of the examples through the real router: every link leads somewhere, every form keeps what was typed, nothing runs inline.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

#[expect(dead_code, reason = "the tests of the guard use the rest of it")]
mod common;

use std::collections::{BTreeMap, BTreeSet};

use axum::Router;
use axum::http::StatusCode;
use common::{app, example, get, kept, local, pages, pages_of, post, send, with};
use pages::router;

const EXAMPLES: [&str; 4] = ["alder-lock.toml", "attic-clocks.toml", "first-lathe.toml", "school-room.toml"];

/// The values of an attribute, wherever it stands.
fn attributes<'p>(page: &'p str, name: &str) -> Vec<&'p str> {
    let start = format!(" {name}=\"");
    page.split(start.as_str()).skip(1).filter_map(|rest| rest.split('"').next()).collect()
}

/// The address that an attribute gives.
fn address(link: &str) -> String {
    link.replace("&#38;", "&").replace("&amp;", "&")
}

/// All pages that links lead to, by path without the anchor.
async fn all(pages: &Router) -> BTreeMap<String, String> {
    let mut found = BTreeMap::new();
    let mut waiting = vec!["/".to_owned()];
    while let Some(path) = waiting.pop() {
        if found.contains_key(&path) {
            continue;
        }
        let answer = send(pages, get(&path)).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}");
        // What follows from a question is not asked further.
        if !path.contains('?') {
            let links = attributes(&answer.text, "href").into_iter().filter(|link| link.starts_with('/'));
            waiting.extend(links.map(|link| address(link).split('#').next().unwrap().to_owned()));
        }
        found.insert(path, answer.text);
    }
    found
}

#[tokio::test]
async fn every_link_leads_to_a_page_and_every_anchor_stands_on_it() {
    for name in EXAMPLES {
        let found = all(&router(app(local(), &example(name)))).await;
        for (path, text) in &found {
            for link in attributes(text, "href").into_iter().filter(|link| !link.starts_with("/assets/")).map(address) {
                let (page, anchor) = link.split_once('#').unwrap_or((&link, ""));
                let Some(target) = (if page.is_empty() { Some(text) } else { found.get(page) }) else {
                    assert!(path.contains('?'), "{name}: {path} leads to {link}");
                    continue;
                };
                assert!(anchor.is_empty() || attributes(target, "id").contains(&anchor), "{name}: {path} leads to {link}");
            }
            let ids = attributes(text, "id");
            assert_eq!(ids.len(), ids.iter().collect::<BTreeSet<_>>().len(), "{name}: {path} names two things alike");
        }
        assert!(found.len() > 60, "{name} has {} pages", found.len());
    }
}

#[tokio::test]
async fn nothing_is_styled_or_run_inline() {
    // Content Security Policy Level 3 refuses both without 'unsafe-inline'.
    for (path, text) in all(&pages(local())).await {
        assert!(!text.contains("<script") && !text.contains("<style") && !text.contains("javascript:"), "{path}");
        for name in ["style", "onclick", "onload", "onerror", "onsubmit"] {
            assert_eq!(attributes(&text, name), Vec::<&str>::new(), "{path}");
        }
    }
}

#[tokio::test]
async fn every_sheet_works_with_an_empty_form_or_says_at_the_field_what_it_needs() {
    let pages = pages(local());
    for sheet in bench::sheets() {
        let name = sheet.kind.name;
        // A browser sends every field, also those left empty.
        let fields: Vec<String> = sheet.kind.fields.iter().map(|field| format!("{}=", field.name)).collect();
        let answer = send(&pages, get(&format!("/bench/{name}?{}", fields.join("&")))).await;
        assert_eq!(answer.status, StatusCode::OK, "{name}");
        let answered = answer.text.contains("class=\"answers\"") || answer.text.contains(">Choices<");
        let refused = answer.text.contains("class=\"errors\"");
        assert!(answered != refused, "{name}");
        for field in sheet.kind.fields.iter().filter(|field| field.is_required()) {
            let at_field = format!("id=\"w-{}\"", field.name);
            assert!(answer.text.contains(&at_field), "{name}: {}", field.name);
        }
    }
}

#[tokio::test]
async fn a_form_keeps_what_was_typed_and_says_beside_the_field_what_is_wrong() {
    let pages = pages(local());
    let answer = send(&pages, get("/bench/viscosity?fluid=slideway-68&temperature=luke+warm")).await;
    assert!(answer.text.contains("value=\"luke warm\"") && answer.text.contains("value=\"slideway-68\""));
    let input = answer.text.split("<input").find(|part| part.contains("name=\"temperature\"")).unwrap();
    assert!(input.contains("aria-invalid=\"true\"") && input.contains("w-temperature"));
    let ladder = send(&pages, get("/ladder?budget=sixty&without=snake+oil")).await;
    assert!(
        ladder.text.contains("value=\"sixty\"")
            && ladder.text.contains("id=\"budget-wrong\"")
            && ladder.text.contains("id=\"without-wrong\"")
    );
}

#[tokio::test]
async fn the_units_are_the_readers_own() {
    let pages = pages(local());
    let metric = send(&pages, get("/shop")).await;
    let chosen = send(&pages, post("/units", "units=inch&back=%2Fchart%2Flathe")).await;
    assert_eq!(chosen.header("location"), "/chart/lathe");
    let cookie = chosen.header("set-cookie").split(';').next().unwrap().to_owned();
    let inch = send(&pages, with(get("/shop"), "cookie", &cookie)).await;
    // The coldest start of the example, 2 °C, on both scales.
    assert!(metric.text.contains(">2 °C<") && inch.text.contains(">35.6 °F<"));
    let away = send(&pages, post("/units", "units=inch&back=https%3A%2F%2Felsewhere.example")).await;
    assert_eq!(away.header("location"), "/");
}

#[tokio::test]
async fn a_budget_and_doing_without_change_the_ladder() {
    let pages = pages(local());
    let first =
        |text: &str| text.split("class=\"rungs\"").nth(1).unwrap().split("<h3>").nth(1).unwrap().split("</h3>").next().unwrap().to_owned();
    let plain = send(&pages, get("/ladder")).await;
    let without = send(&pages, get("/ladder?without=slideway-68")).await;
    assert_ne!(first(&plain.text), first(&without.text));
    assert!(send(&pages, get("/ladder?budget=60")).await.text.contains("The best for 60.00"));
}

#[tokio::test]
async fn a_changed_file_is_read_again_and_a_broken_one_says_where() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("shop.toml");
    std::fs::write(&path, "name = \"First\"\n[[machine]]\ntemplate = \"bench lathe\"\n").unwrap();
    let pages = router(app(local(), &path));
    assert!(send(&pages, get("/")).await.text.contains("First"));
    std::fs::write(&path, "name = \"The second one\"\n[[machine]]\ntemplate = \"drill press\"\n").unwrap();
    assert!(send(&pages, get("/")).await.text.contains("The second one"));
    std::fs::write(&path, "[[machine]]\n\ntemplate = \"bench lathee\"\n").unwrap();
    let broken = send(&pages, get("/ladder")).await;
    assert_eq!(broken.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(broken.text.contains("Line 3") && broken.text.contains("Did you mean"));
    assert_eq!(send(&pages, get("/bench/fit?hole=")).await.status, StatusCode::OK, "the bench needs no shop");
    std::fs::remove_file(&path).unwrap();
    assert!(send(&pages, get("/")).await.text.contains("cannot be read"));
}

#[tokio::test]
async fn a_kept_shop_shows_the_same_plan_as_its_file() {
    let folder = tempfile::tempdir().unwrap();
    let (kept, file) = (pages_of(&kept(folder.path(), Some("alder-lock.toml")), local()), pages(local()));
    for path in ["/ladder", "/chart/lathe", "/work"] {
        assert_eq!(send(&kept, get(path)).await.text, send(&file, get(path)).await.text, "{path}");
    }
}

#[tokio::test]
async fn a_machine_by_any_name_has_its_chart() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("shop.toml");
    for name in ["a/b", "100 %", "Größe #2?"] {
        std::fs::write(&path, format!("[[machine]]\ntemplate = \"bench lathe\"\nname = \"{name}\"\n")).unwrap();
        let pages = router(app(local(), &path));
        let today = send(&pages, get("/")).await;
        let link = attributes(&today.text, "href").into_iter().find(|link| link.starts_with("/chart/")).unwrap().to_owned();
        assert_eq!(send(&pages, get(&link)).await.status, StatusCode::OK, "{name}");
    }
}

/// What is said of the air is the same number that its sheet comes to, so that it can be followed step by step.
#[tokio::test]
async fn what_is_said_of_the_air_is_what_its_sheet_comes_to() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("shop.toml");
    let text = "[room]\nvolume = \"12 m3\"\n[[work]]\njob = \"clean\"\nsoil = \"before-bonding\"\narea = \"4000 cm2\"\noften = \"daily\"\n\
                [[pot]]\nfluid = \"acetone\"\n[[pot]]\nfluid = \"battery-acid\"\n";
    std::fs::write(&path, text).unwrap();
    let pages = router(app(local(), &path));
    let links = |text: &str| -> Vec<String> {
        let links = attributes(text, "href").into_iter().filter(|link| link.starts_with("/bench/"));
        links.map(address).collect()
    };
    let cautions = send(&pages, get("/cautions")).await.text;
    let why = send(&pages, get("/why/clean.clean-last?fluid=acetone")).await.text;
    // Two digits among the findings, three on the sheet: "… acetone: 940 ppm over 8 h, of 250 ppm allowed …" among the findings, "acetone over 8 h" among the answers of the sheet.
    let ppm = |text: &str| text.rsplit(" ppm").nth(1).unwrap().rsplit([' ', '>', '(']).next().unwrap().parse::<f64>().unwrap();
    let (said, link) = (ppm(why.split(" over 8 h").next().unwrap()), &links(&why)[0]);
    assert!(link.starts_with("/bench/air?") && links(&cautions).iter().any(|link| link.starts_with("/bench/together?")));
    for link in links(&cautions).iter().chain([link]) {
        let sheet = send(&pages, get(link)).await.text;
        assert!(sheet.contains("class=\"answers\"") && !sheet.contains("class=\"errors\""), "{link}");
    }
    let sheet = send(&pages, get(link)).await.text;
    let high = sheet.split("acetone over 8 h</dt><dd>").nth(1).unwrap().split(')').next().unwrap();
    assert!((ppm(high) / said - 1.0).abs() < 0.02, "{said} in {high}");
}
