//! A kept shop in a real browser: the first visit, a week of rounds, a pot from purchase to empty, without script and by keyboard.

use std::time::Instant;

use fantoccini::actions::{InputSource, WheelAction, WheelActions};
use fantoccini::key::Key;
use fantoccini::{Client, Locator};
use pages::Settings;
use serde_json::json;

use crate::driver::{Browser, Pages};
use crate::{here, sound};

/// A finger on the screen, counted.
struct Finger<'b> {
    client: &'b Client,
    taps: usize,
}

impl Finger<'_> {
    /// Taps, after scrolling on where something lies above what is to be tapped.
    async fn tap(&mut self, css: &str) {
        self.tap_at(Locator::Css(css)).await;
    }

    async fn tap_at(&mut self, at: Locator<'_>) {
        const SWIPES: usize = 20;
        self.taps += 1;
        let wanted = self.client.wait().for_element(at).await.unwrap();
        for _ in 0..SWIPES {
            match wanted.click().await {
                Ok(()) => return,
                Err(error) if error.to_string().contains("intercepted") => {
                    let swipe = WheelAction::Scroll { duration: None, x: 100, y: 300, delta_x: 0, delta_y: 120 };
                    self.client.perform_actions(WheelActions::new("wheel".to_owned()).then(swipe)).await.unwrap();
                }
                other => return other.unwrap(),
            }
        }
        wanted.click().await.unwrap();
    }

    async fn write(&mut self, css: &str, text: &str) {
        self.client.wait().for_element(Locator::Css(css)).await.unwrap().send_keys(text).await.unwrap();
    }

    async fn path(&self) -> String {
        self.client.current_url().await.unwrap().path().to_owned()
    }

    async fn text(&self, css: &str) -> String {
        self.client.wait().for_element(Locator::Css(css)).await.unwrap().text().await.unwrap()
    }
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "needs a browser; cargo xtask test runs it"]
async fn a_lathe_and_a_mill_have_their_ladder_in_twelve_taps_without_script() {
    let pages = Pages::kept(None, Settings::local(here()));
    let browser = Browser::start().await;
    browser.tell("Emulation.setScriptExecutionDisabled", json!({ "value": true })).await;
    browser.look(390, 844, "light").await;
    let begun = Instant::now();
    browser.client.goto(&pages.address).await.unwrap();
    let mut finger = Finger { client: &browser.client, taps: 0 };
    finger.tap("label:has(input[value='bench lathe'])").await;
    finger.tap("label:has(input[value='bench mill'])").await;
    finger.tap(".go button").await;
    finger.client.wait().for_element(Locator::Css(".rungs")).await.unwrap();
    let taken = begun.elapsed();
    assert_eq!(finger.path().await, "/ladder");
    assert!(finger.taps <= 12, "{} taps", finger.taps);
    println!("{} taps and {taken:?} from the first page to the ladder", finger.taps);
    assert!(taken.as_secs() < 60, "{taken:?}");
    browser.close().await;
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "needs a browser; cargo xtask test runs it"]
async fn a_week_of_rounds_and_a_pot_from_purchase_to_empty_on_a_phone_without_script() {
    let pages = Pages::kept(Some("alder-lock.toml"), Settings::local(here()));
    let browser = Browser::start().await;
    browser.tell("Emulation.setScriptExecutionDisabled", json!({ "value": true })).await;
    browser.look(390, 844, "dark").await;
    let mut finger = Finger { client: &browser.client, taps: 0 };
    browser.client.goto(&pages.address).await.unwrap();
    let button = "button[aria-label='Done: lathe, bed ways']";
    finger.tap(button).await;
    assert!(finger.text(".told").await.contains("lathe/bed ways"));
    assert!(browser.client.find(Locator::Css(button)).await.is_err(), "what is done is not due");
    finger.tap(".told button").await;
    finger.client.wait().for_element(Locator::Css(button)).await.unwrap();
    for _ in 0..20 {
        browser.client.goto(&pages.address).await.unwrap();
        let (all, one) = ("form.all button", "button[aria-label^='Done: ']");
        if browser.client.find(Locator::Css(one)).await.is_err() {
            break;
        }
        finger.tap(if browser.client.find(Locator::Css(all)).await.is_ok() { all } else { one }).await;
        finger.client.wait().for_element(Locator::Css(".told")).await.unwrap();
    }
    assert!(finger.text("main").await.contains("Nothing is due."));
    // A pot is bought, opened, used, counted, and thrown away.
    browser.client.goto(&format!("{}/add/pot", pages.address)).await.unwrap();
    finger.tap("#f-fluid option[value='slideway-68']").await;
    finger.write("#f-left", "500 mL").await;
    finger.write("#f-name", "the tall can").await;
    finger.tap("form.sheet button").await;
    finger.tap_at(Locator::LinkText("the tall can: slideway oil, ISO VG 68")).await;
    finger.tap("form[action$='/opened'] button").await;
    finger.client.wait().for_element(Locator::XPath("//dt[.='Opened']")).await.unwrap();
    finger.tap_at(Locator::XPath("//summary[.='Look what is left']")).await;
    finger.write("#f-counted", "half").await;
    finger.tap("form[action$='/counted'] button").await;
    assert!(finger.text("#w-counted").await.contains("does not begin with a number"));
    let field = finger.client.find(Locator::Id("f-counted")).await.unwrap();
    assert_eq!(field.prop("value").await.unwrap().as_deref(), Some("half"), "what was typed is kept");
    field.clear().await.unwrap();
    finger.write("#f-counted", "250 mL").await;
    finger.tap("form[action$='/counted'] button").await;
    finger.client.wait().for_element(Locator::XPath("//dd[starts-with(.,'250 mL')]")).await.unwrap();
    finger.tap_at(Locator::XPath("//summary[.='Some was got rid of']")).await;
    finger.tap("form[action$='/discarded'] button").await;
    browser.client.goto(&format!("{}/cupboard", pages.address)).await.unwrap();
    assert!(finger.text(".table").await.contains("empty"));
    browser.close().await;
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "needs a browser; cargo xtask test runs it"]
async fn the_keyboard_alone_begins_a_shop() {
    let pages = Pages::kept(None, Settings::local(here()));
    let browser = Browser::start().await;
    browser.look(1280, 900, "light").await;
    browser.client.goto(&format!("{}/start", pages.address)).await.unwrap();
    let press = async |key: &str| browser.client.active_element().await.unwrap().send_keys(key).await.unwrap();
    let tab = char::from(Key::Tab).to_string();
    // Past the words, to the first machine.
    press(&tab).await;
    press(&char::from(Key::Enter).to_string()).await;
    press(&tab).await;
    press(" ").await;
    press(&char::from(Key::Enter).to_string()).await;
    browser.client.wait().for_element(Locator::Css(".rungs")).await.unwrap();
    browser.close().await;
}

/// The pages of a kept shop, each by the name of its picture.
const PAGES: [(&str, &str); 15] = [
    ("kept-today", "/"),
    ("kept-today-told", "/?entry=1"),
    ("kept-shop", "/shop"),
    ("kept-machine", "/part/2"),
    ("kept-point", "/add/point?machine=2&name=bed%20ways"),
    ("kept-room", "/only/room"),
    ("kept-add-machine", "/add/machine"),
    ("kept-add-work", "/add/work?job=cut"),
    ("kept-add-pot", "/add/pot"),
    ("kept-cupboard", "/cupboard"),
    ("kept-table", "/cupboard/table"),
    ("kept-log", "/log"),
    ("kept-calendar", "/calendar?at=noon"),
    ("kept-meters", "/meters"),
    ("kept-done", "/done?machine=bench%20lathe&point=bed%20ways"),
];

#[tokio::test(flavor = "multi_thread")]
#[ignore = "needs a browser; cargo xtask test runs it"]
async fn every_page_of_a_kept_shop_is_sound_on_a_phone_and_a_desk_in_the_light_and_the_dark() {
    let (new, pages) = (Pages::kept(None, Settings::local(here())), Pages::kept(None, Settings::local(here())));
    let browser = Browser::start().await;
    let client = &browser.client;
    client.goto(&format!("{}/start", pages.address)).await.unwrap();
    let mut finger = Finger { client, taps: 0 };
    for machine in ["bench lathe", "bench mill"] {
        finger.tap(&format!("input[value='{machine}']")).await;
    }
    finger.tap_at(Locator::XPath("//summary[.='What stands in the cupboard already']")).await;
    finger.tap("input[value=penetrating]").await;
    finger.tap(".go button").await;
    client.wait().for_element(Locator::Css(".rungs")).await.unwrap();
    client.goto(&pages.address).await.unwrap();
    finger.tap("button[aria-label^='Done: ']").await;
    client.wait().for_element(Locator::Css(".told")).await.unwrap();
    client.goto(&format!("{}/calendar", pages.address)).await.unwrap();
    finger.tap("main form button").await;
    client.wait().for_element(Locator::Css("pre")).await.unwrap();
    client.goto(&format!("{}/cupboard", pages.address)).await.unwrap();
    let pot = client.find(Locator::Css(".table a")).await.unwrap().attr("href").await.unwrap().unwrap();
    let mut wanted: Vec<(&str, String)> = PAGES.iter().map(|(name, path)| (*name, format!("{}{path}", pages.address))).collect();
    wanted.push(("kept-pot", format!("{}{pot}", pages.address)));
    wanted.push(("start", format!("{}/start", new.address)));
    let wrong = sound(&browser, &wanted).await;
    browser.close().await;
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
