//! The pictures of the README, drawn anew: the same shop on the same day, so that a picture changes only where the pages do.

use jiff::tz::TimeZone;
use jiff::{Timestamp, ZonedDateTime};
use pages::Settings;
use serde_json::json;

use crate::driver::{Browser, Pages, root};
use crate::here;

/// Each by its name, its address, and the width and height of what it shows.
const PICTURES: [(&str, &str, u32, u32); 6] = [
    ("today", "/", 390, 760),
    ("ladder", "/ladder", 390, 760),
    ("chart", "/chart/lathe", 390, 760),
    ("bench", "/bench/viscosity?fluid=slideway-68%2Chydraulic-32&temperature=5+degC", 900, 1000),
    ("paper-chart", "/paper/chart?size=a4", 794, 1123),
    ("paper-round", "/paper/round?size=a4", 1123, 794),
];

/// A Monday in spring.
fn monday() -> ZonedDateTime {
    "2026-03-02T09:30:00Z".parse::<Timestamp>().unwrap().to_zoned_datetime(TimeZone::UTC)
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "needs a browser; cargo xtask pictures copies what it draws"]
async fn the_pictures_of_the_readme_can_be_drawn() {
    let pages = Pages::kept(Some("alder-lock.toml"), Settings { clock: monday, ..Settings::local(here()) });
    let browser = Browser::start().await;
    let folder = root().join("target/pictures");
    std::fs::create_dir_all(&folder).unwrap();
    for (name, path, width, height) in PICTURES {
        browser.look(width, height, "light").await;
        if name.starts_with("paper") {
            let size = json!({ "width": width, "height": height, "deviceScaleFactor": 0.75, "mobile": false });
            browser.tell("Emulation.setDeviceMetricsOverride", size).await;
        }
        browser.client.goto(&format!("{}{path}", pages.address)).await.unwrap();
        // What a sheet says on the screen alone is not on the paper.
        browser.run("document.querySelectorAll('.screen').forEach(one => one.remove())").await;
        let picture = browser.client.screenshot().await.unwrap();
        // A picture of a README is loaded by everybody who looks at it.
        assert!(picture.len() < 200_000, "{name} has {} bytes", picture.len());
        std::fs::write(folder.join(format!("{name}.png")), picture).unwrap();
    }
    browser.close().await;
}
