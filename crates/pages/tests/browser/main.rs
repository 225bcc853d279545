//! The pages in a real browser: two widths, both themes, no script, keyboard alone, and an accessibility engine over all of them.
//!
//! They need Chromium, its driver and axe-core, which `cargo xtask test` installs before it runs them.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod driver;
mod kept;
mod paper;
mod pictures;

use std::net::SocketAddr;

use driver::{Browser, Pages, root};
use fantoccini::Locator;
use fantoccini::key::Key;
use pages::{Passphrase, Settings};
use serde_json::{Value, json};

const PAGES: [(&str, &str); 22] = [
    ("today", "/"),
    ("shop", "/shop"),
    ("ladder", "/ladder"),
    ("ladder-what-if", "/ladder?budget=60&without=slideway-68&rungs=5"),
    ("ladder-wrong", "/ladder?budget=sixty&without=snake+oil"),
    ("chart-lathe", "/chart/lathe"),
    ("chart-engine", "/chart/beam%20engine"),
    ("work", "/work"),
    ("why-ways", "/why/lathe.bed-ways"),
    ("why-bearings", "/why/mill.spindle-bearings"),
    ("fluid", "/fluid/slideway-68"),
    ("fluid-acid", "/fluid/battery-acid"),
    ("cupboard", "/cupboard"),
    ("cautions", "/cautions"),
    ("sources", "/sources"),
    ("bench", "/bench"),
    ("sheet-empty", "/bench/fit"),
    ("sheet-fit", "/bench/fit?hole="),
    ("sheet-viscosity", "/bench/viscosity?fluid=slideway-68%2Chydraulic-32&wanted=68+mm2%2Fs"),
    ("sheet-wrong", "/bench/viscosity?fluid=snake+oil&temperature=warm"),
    ("paper", "/paper"),
    ("not-here", "/nowhere"),
];

fn here() -> SocketAddr {
    "127.0.0.1:0".parse().unwrap()
}

fn axe() -> String {
    let path = root().join("target/tools/npm/node_modules/axe-core/axe.min.js");
    std::fs::read_to_string(path).expect("`cargo xtask test` fetches axe-core before it runs this")
}

/// Rules of the Web Content Accessibility Guidelines up to 2.2 AA and best practice, as axe-core, a general-purpose library, knows them.
async fn violations(browser: &Browser, axe: &str) -> Vec<String> {
    browser.run(axe).await;
    let script = "const done = arguments[arguments.length - 1]; \
                  axe.run(document, { resultTypes: ['violations'] }).then(found => done(found.violations.map(rule => \
                  rule.id + ': ' + rule.help + ' at ' + rule.nodes.slice(0, 3).map(node => node.target + ' ' + node.failureSummary).join(' | '))))";
    let found = browser.client.execute_async(script, Vec::new()).await.unwrap();
    found.as_array().unwrap().iter().map(|rule| rule.as_str().unwrap().to_owned()).collect()
}

/// What is wider than the window, and what is to be pressed and smaller than 44 px (the size DESIGN asks for; WCAG 2.2 AAA 2.5.5).
const MEASURE: &str = "
    const wide = document.documentElement.scrollWidth > innerWidth ? ['the page is ' + document.documentElement.scrollWidth + ' px wide'] : [];
    const pressed = [...document.querySelectorAll('nav a, button, summary, select, input:not([type=hidden]):not([type=checkbox]):not([type=radio]), .ticks label, .lines a')];
    const small = pressed.filter(one => one.checkVisibility() && one.getBoundingClientRect().height < 43.5)
        .map(one => one.tagName + ' ' + one.textContent.trim().slice(0, 30) + ' is ' + one.getBoundingClientRect().height + ' px high');
    return wide.concat(small);";

/// What is wrong with pages, each by its name and address, at both widths and in both themes; a picture of each is kept.
async fn sound(browser: &Browser, pages: &[(&str, String)]) -> Vec<String> {
    let (axe, mut wrong) = (axe(), Vec::new());
    for (width, height) in [(390, 844), (1280, 900)] {
        for theme in ["light", "dark"] {
            let folder = root().join(format!("target/screenshots/{width}-{theme}"));
            std::fs::create_dir_all(&folder).unwrap();
            for (name, address) in pages {
                browser.look(width, height, theme).await;
                browser.client.goto(address).await.unwrap();
                let mut found = violations(browser, &axe).await;
                found.extend(browser.run(MEASURE).await.as_array().unwrap().iter().map(|one| one.as_str().unwrap().to_owned()));
                wrong.extend(found.into_iter().map(|said| format!("{name} {width} {theme}: {said}")));
                let tall = browser.run("return Math.min(document.documentElement.scrollHeight, 3200)").await;
                let tall = u32::try_from(tall.as_u64().unwrap()).unwrap().max(height);
                browser.look(width, tall, theme).await;
                std::fs::write(folder.join(format!("{name}.png")), browser.client.screenshot().await.unwrap()).unwrap();
            }
        }
    }
    wrong
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "needs a browser; cargo xtask test runs it"]
async fn every_page_is_sound_on_a_phone_and_a_desk_in_the_light_and_the_dark() {
    let pages = Pages::of("alder-lock.toml", Settings::local(here()));
    let browser = Browser::start().await;
    let wrong = sound(&browser, &PAGES.map(|(name, path)| (name, format!("{}{path}", pages.address)))).await;
    // Paper: what a chart is printed for.
    let paper = root().join("target/screenshots/paper");
    std::fs::create_dir_all(&paper).unwrap();
    for (name, path) in PAGES.into_iter().filter(|(name, _)| ["chart-lathe", "ladder", "cautions", "sheet-fit"].contains(name)) {
        browser.look(794, 1123, "light").await;
        browser.tell("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
        browser.client.goto(&format!("{}{path}", pages.address)).await.unwrap();
        let words = browser.run("return document.querySelector('nav').checkVisibility()").await;
        assert_eq!(words, false, "{name} prints the words one presses");
        std::fs::write(paper.join(format!("{name}.png")), browser.client.screenshot().await.unwrap()).unwrap();
    }
    browser.close().await;
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// What the sheets are asked that cannot suppose everything.
const ASKED: [(&str, &str); 13] = [
    ("air", "fluid=acetone"),
    ("bath", "work=blacken"),
    ("blend", "thin=hydraulic-32&thick=hydraulic-68&wanted=VG+46"),
    ("coolant", "work=turning"),
    ("dilute", "share=5+%25"),
    ("flammability", "fluid=acetone"),
    ("grades", "viscosity=68+mm2%2Fs"),
    ("label", "fluid=battery-acid&diluted=30+%25"),
    ("ppm", "ppm=50"),
    ("rescue", "bore=25.013+mm&shaft=24.96+mm&torque=15+N+m"),
    ("switch", "old=hydraulic-32&new=slideway-68"),
    ("together", "fluids=battery-acid%2Calkaline-degreaser%2Cacetone"),
    ("viscosity", "fluid=slideway-68"),
];

#[tokio::test(flavor = "multi_thread")]
#[ignore = "needs a browser; cargo xtask test runs it"]
async fn every_sheet_of_the_bench_is_sound_with_its_answer() {
    let pages = Pages::of("alder-lock.toml", Settings::local(here()));
    let browser = Browser::start().await;
    let address = |name: &str| {
        let asked = ASKED.iter().find(|(sheet, _)| *sheet == name).map_or("as=it-is", |(_, asked)| asked);
        format!("{}/bench/{name}?{asked}", pages.address)
    };
    let sheets: Vec<(&str, String)> = bench::sheets().iter().map(|sheet| (sheet.kind.name, address(sheet.kind.name))).collect();
    for (name, address) in &sheets {
        browser.client.goto(address).await.unwrap();
        assert_eq!(browser.run("return document.querySelectorAll('.errors').length").await, 0, "{name} has no answer");
    }
    let wrong = sound(&browser, &sheets).await;
    browser.close().await;
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The element that has the focus: its text, where it goes, and whether one can see that it has it.
async fn focus(browser: &Browser) -> Value {
    browser
        .run(
            "const one = document.activeElement, look = getComputedStyle(one), box = one.getBoundingClientRect(); \
             return { text: one.textContent.trim(), id: one.id, seen: look.outlineStyle !== 'none' && box.right > 0 && box.height > 0 }",
        )
        .await
}

async fn press(browser: &Browser, key: char) {
    browser.client.active_element().await.unwrap().send_keys(&key.to_string()).await.unwrap();
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "needs a browser; cargo xtask test runs it"]
async fn the_keyboard_alone_is_enough() {
    let pages = Pages::of("alder-lock.toml", Settings::local(here()));
    let browser = Browser::start().await;
    browser.look(1280, 900, "light").await;
    let to = |path: &str| format!("{}{path}", pages.address);
    browser.client.goto(&to("/")).await.unwrap();
    press(&browser, char::from(Key::Tab)).await;
    let skip = focus(&browser).await;
    assert_eq!(skip["text"], "Skip to the page");
    assert_eq!(skip["seen"], true);
    for word in ["Today", "Shop", "Ladder", "Cupboard", "Bench"] {
        press(&browser, char::from(Key::Tab)).await;
        assert_eq!(focus(&browser).await["text"], word);
        assert_eq!(focus(&browser).await["seen"], true, "{word}");
    }
    press(&browser, char::from(Key::Enter)).await;
    assert_eq!(browser.client.current_url().await.unwrap().path(), "/bench");
    // Past the words at once, and through a sheet.
    browser.client.goto(&to("/bench/viscosity")).await.unwrap();
    press(&browser, char::from(Key::Tab)).await;
    press(&browser, char::from(Key::Enter)).await;
    press(&browser, char::from(Key::Tab)).await;
    assert_eq!(focus(&browser).await["id"], "f-fluid");
    browser.client.active_element().await.unwrap().send_keys("slideway-68").await.unwrap();
    press(&browser, char::from(Key::Escape)).await;
    press(&browser, char::from(Key::Enter)).await;
    browser.client.wait().for_element(Locator::Css(".answers")).await.unwrap();
    assert!(browser.client.current_url().await.unwrap().query().unwrap().contains("fluid=slideway-68"));
    // A rung opens and shuts.
    browser.client.goto(&to("/ladder")).await.unwrap();
    browser.run("document.querySelector('.rungs summary').focus()").await;
    press(&browser, char::from(Key::Enter)).await;
    assert_eq!(browser.run("return document.querySelector('.rungs details').open").await, true);
    browser.close().await;
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "needs a browser; cargo xtask test runs it"]
async fn no_script_is_needed_to_come_in_to_ask_and_to_change_the_units() {
    let passphrase = Some(Passphrase::new("kettle harbour nine owls").unwrap());
    let pages = Pages::of("alder-lock.toml", Settings { passphrase, ..Settings::local(here()) });
    let browser = Browser::start().await;
    browser.tell("Emulation.setScriptExecutionDisabled", json!({ "value": true })).await;
    browser.look(390, 844, "light").await;
    let client = &browser.client;
    client.goto(&format!("{}/bench/viscosity", pages.address)).await.unwrap();
    assert_eq!(client.current_url().await.unwrap().path(), "/login");
    client.find(Locator::Id("passphrase")).await.unwrap().send_keys("kettle harbour nine owls").await.unwrap();
    client.find(Locator::Css("main button")).await.unwrap().click().await.unwrap();
    client.wait().for_element(Locator::Id("f-temperature")).await.unwrap();
    client.find(Locator::Id("f-fluid")).await.unwrap().send_keys("slideway-68").await.unwrap();
    let temperature = client.find(Locator::Id("f-temperature")).await.unwrap();
    temperature.send_keys("warm").await.unwrap();
    client.find(Locator::Css("form.sheet button")).await.unwrap().click().await.unwrap();
    let wrong = client.wait().for_element(Locator::Id("w-temperature")).await.unwrap();
    assert!(!wrong.text().await.unwrap().is_empty());
    let temperature = client.find(Locator::Id("f-temperature")).await.unwrap();
    assert_eq!(temperature.prop("value").await.unwrap().as_deref(), Some("warm"));
    temperature.clear().await.unwrap();
    temperature.send_keys("68 °F").await.unwrap();
    client.find(Locator::Css("form.sheet button")).await.unwrap().click().await.unwrap();
    client.wait().for_element(Locator::Css(".answers")).await.unwrap();
    let inch = client.find(Locator::Css("footer button[value=inch]")).await.unwrap();
    inch.send_keys(&char::from(Key::Enter).to_string()).await.unwrap();
    client.wait().for_element(Locator::Css("footer button[value=inch][aria-pressed=true]")).await.unwrap();
    assert!(client.current_url().await.unwrap().query().unwrap().contains("slideway-68"), "it comes back to where it was");
    browser.close().await;
}
