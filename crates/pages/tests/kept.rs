//! The pages of a kept shop through the real router: the first visit, the round, the pots, the forms, the table; and what they refuse.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

#[expect(dead_code, reason = "the tests of the guard use the rest of it")]
mod common;

use std::fmt::Write;
use std::path::Path;
use std::sync::Mutex;
use std::time::{Duration, Instant};

use axum::Router;
use axum::body::Body;
use axum::http::{Request, StatusCode};
use common::{Answer, LOCAL, as_described, clock, from, get, kept, local, open, pages_of, post, send, with};
use pages::{App, Settings, ShopSource, router};
use planner::needs::kinds;
use reference::Reference;
use store::{Moment, Page, Store};
use tempfile::TempDir;

/// The example shop, kept.
fn alder() -> (TempDir, Router) {
    let folder = tempfile::tempdir().unwrap();
    let pages = pages_of(&kept(folder.path(), Some("alder-lock.toml")), local());
    (folder, pages)
}

fn log(folder: &TempDir) -> usize {
    let store = Store::open_read_only(&folder.path().join("shop.gallipot")).unwrap();
    store.log(Page { count: 1000, ..Page::default() }).unwrap().len()
}

/// Where an answer sends the reader.
async fn sent(pages: &Router, path: &str, form: &str) -> String {
    let answer = send(pages, post(path, form)).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{path} {form}: {}", answer.text);
    answer.header("location").to_owned()
}

/// A table as a browser sends a file.
fn upload(table: &[u8], how: &str) -> Request<Body> {
    let edge = "the-edge-of-a-part";
    let mut body =
        format!("--{edge}\r\ncontent-disposition: form-data; name=\"file\"; filename=\"cupboard.csv\"\r\ncontent-type: text/csv\r\n\r\n")
            .into_bytes();
    body.extend_from_slice(table);
    write!(Bytes(&mut body), "\r\n--{edge}\r\ncontent-disposition: form-data; name=\"how\"\r\n\r\n{how}\r\n--{edge}--\r\n").unwrap();
    let request = Request::post("/cupboard/table")
        .header("host", LOCAL)
        .header("origin", format!("http://{LOCAL}"))
        .header("sec-fetch-site", "same-origin")
        .header("content-type", format!("multipart/form-data; boundary={edge}"))
        .body(Body::from(body));
    from("127.0.0.1:50000", request.unwrap())
}

struct Bytes<'b>(&'b mut Vec<u8>);

impl Write for Bytes<'_> {
    fn write_str(&mut self, text: &str) -> std::fmt::Result {
        self.0.extend_from_slice(text.as_bytes());
        Ok(())
    }
}

#[tokio::test]
async fn from_nothing_to_a_ladder() {
    let folder = tempfile::tempdir().unwrap();
    let pages = pages_of(&kept(folder.path(), None), local());
    for path in ["/", "/shop", "/ladder", "/cupboard"] {
        let answer = send(&pages, get(path)).await;
        assert_eq!((answer.status, answer.header("location")), (StatusCode::SEE_OTHER, "/start"), "{path}");
    }
    assert_eq!(send(&pages, get("/bench/fit")).await.status, StatusCode::OK, "the bench needs no shop");
    let nothing = send(&pages, post("/start", "metal=brass")).await;
    assert!(nothing.text.contains("Tick at least one machine"));
    let wrong = send(&pages, post("/start", "machine=bench+lathe&bench+lathe.swing=tall&volume=big")).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(wrong.text.contains("Nothing was kept") && wrong.text.contains("value=\"tall\"") && wrong.text.contains("value=\"big\""));
    let form = "machine=bench+lathe&machine=bench+mill&metal=mild-steel&metal=brass&heating=steady&volume=1400+ft3&own=penetrating";
    assert_eq!(sent(&pages, "/start", form).await, "/ladder");
    let ladder = send(&pages, get("/ladder")).await;
    assert!(ladder.text.contains("class=\"rungs\""));
    let shop = send(&pages, get("/shop")).await.text;
    // 1400 ft³ are 39.64 m³ (1 ft is 0.3048 m exactly; international yard and pound agreement of 1959).
    assert!(shop.contains("39.6 m³") && shop.contains("steady"), "{shop}");
    assert_eq!(sent(&pages, "/start", "machine=shaper").await, "/shop", "a shop is begun once");
}

/// The plan is kept from page to page; what is drawn from it is what somebody who comes later sees.
#[tokio::test]
async fn after_every_entry_the_pages_are_those_of_a_server_started_anew() {
    let (folder, pages) = alder();
    let shown = async |pages: &Router| {
        let mut text = String::new();
        for path in ["/", "/cupboard", "/ladder", "/chart/lathe", "/cautions", "/api/plan", "/api/round", "/api/cupboard"] {
            let answer = send(pages, get(path)).await;
            assert_eq!(answer.status, StatusCode::OK, "{path}");
            text += &answer.text;
        }
        // What guards a form against being sent twice is drawn by lot.
        text.lines().filter(|line| !line.contains("name=\"mark\"")).collect::<Vec<_>>().join("\n")
    };
    let before = shown(&pages).await;
    let pot = before.split("/pot/").nth(1).unwrap().split('"').next().unwrap().to_owned();
    let tick = ("/done", "machine=lathe&point=bed+ways".to_owned());
    let counted = (&*format!("/pot/{pot}/counted"), "amount=90+mL".to_owned());
    let emptied = (&*format!("/pot/{pot}/discarded"), String::new());
    for (path, form) in [tick, counted, emptied] {
        sent(&pages, path, &form).await;
        let after = shown(&pages).await;
        assert_ne!(before, after, "{path}");
        assert_eq!(after, shown(&pages_of(&folder.path().join("shop.gallipot"), local())).await, "{path}");
    }
}

#[tokio::test]
async fn of_two_phones_that_tick_the_same_point_one_is_written_and_the_other_told() {
    let (folder, pages) = alder();
    let today = send(&pages, get("/")).await.text;
    assert!(today.contains("Monday, 2 March 2026"));
    let due = today.split("name=\"point\" value=\"bed ways\"").nth(1).unwrap().split("name=\"due\" value=\"").nth(1).unwrap();
    let form = format!("machine=lathe&point=bed+ways&due={}", due.split('"').next().unwrap());
    let (first, second) = (sent(&pages, "/done", &form).await, sent(&pages, "/done", &form).await);
    assert_eq!((first.as_str(), second.as_str()), ("/?entry=1", "/?already=1"));
    assert_eq!(log(&folder), 1);
    assert!(send(&pages, get(&first)).await.text.contains("Written down."));
    assert!(send(&pages, get(&second)).await.text.contains("Somebody had written this down already"));
    // Whoever ticks it together with what is due still is told both, and can take back what is new.
    let both = format!("{form}&point=cross+slide");
    let third = sent(&pages, "/done", &both).await;
    assert_eq!(third, "/?already=1&entry=2");
    let told = send(&pages, get(&third)).await.text;
    assert!(told.contains("Written down.") && told.contains("Somebody had written this down already"));
    let taken = told.split("action=\"/undo\"").nth(1).unwrap().split("</form>").next().unwrap();
    assert!(taken.contains("name=\"entry\" value=\"2\"") && !taken.contains("value=\"1\""));
    assert_eq!(sent(&pages, "/undo", "entry=2&back=%2F").await, "/");
    // Taken back, it is due again, and can be ticked again.
    assert_eq!(sent(&pages, "/undo", "entry=1&back=%2Flog").await, "/log");
    assert!(send(&pages, get("/")).await.text.contains("name=\"point\" value=\"bed ways\""));
    assert_eq!(sent(&pages, "/done", &form).await, "/?entry=5");
}

#[tokio::test]
async fn of_one_press_all_is_written_or_nothing() {
    let (folder, pages) = alder();
    let answer = send(&pages, post("/done", "machine=lathe&point=bed+ways&point=cross+slide&point=nothing")).await;
    assert!(answer.status.is_client_error() && answer.text.contains("Nothing was written"), "{}", answer.status);
    assert_eq!(log(&folder), 0);
    assert_eq!(sent(&pages, "/done", "machine=lathe&point=bed+ways&point=cross+slide").await, "/?entry=1&entry=2");
    assert!(send(&pages, post("/undo", "entry=1&entry=2&entry=99")).await.status.is_client_error());
    assert_eq!(log(&folder), 2);
    assert_eq!(sent(&pages, "/undo", "entry=1&entry=2").await, "/");
    assert_eq!(log(&folder), 4);
}

#[tokio::test]
async fn a_daily_backup_that_fails_is_told_once_and_stands_on_the_first_page() {
    static TOLD: Mutex<Vec<String>> = Mutex::new(Vec::new());
    let folder = tempfile::tempdir().unwrap();
    let shop = kept(folder.path(), Some("alder-lock.toml"));
    // Common file systems take names of 255 bytes (POSIX NAME_MAX on Linux), so that this has room for a journal and none for a backup.
    let long = folder.path().join(format!("{}.gallipot", "n".repeat(230)));
    std::fs::rename(shop, &long).unwrap();
    let source = ShopSource::kept(Store::open(&long, Moment::from(&clock())).unwrap());
    let log = |text: &str| TOLD.lock().unwrap().push(text.to_owned());
    let pages = router(App::new(source, Settings { clock, ..local() }, log).unwrap());
    assert!(!send(&pages, get("/")).await.text.contains("The daily backup failed."));
    for point in ["bed+ways", "cross+slide"] {
        sent(&pages, "/done", &format!("machine=lathe&point={point}")).await;
        assert!(send(&pages, get("/")).await.text.contains("The daily backup failed."));
    }
    let told = TOLD.lock().unwrap();
    assert!(told.len() == 1 && told[0].contains("daily backup failed"), "{told:?}");
}

#[tokio::test]
async fn a_week_of_rounds_leaves_nothing_due_and_every_entry_in_the_log() {
    let (folder, pages) = alder();
    let today = send(&pages, get("/")).await.text;
    let forms = today.split("action=\"/done\">").skip(1).map(|form| form.split("</form>").next().unwrap());
    for form in forms.filter(|form| form.contains("<button aria-label=\"Done: ")) {
        let fields = form.split("<input type=\"hidden\" name=\"").skip(1).map(|field| {
            let (name, rest) = field.split_once('"').unwrap();
            format!("{name}={}", rest.split("value=\"").nth(1).unwrap().split('"').next().unwrap().replace(' ', "+"))
        });
        sent(&pages, "/done", &fields.collect::<Vec<_>>().join("&")).await;
    }
    let after = send(&pages, get("/")).await.text;
    assert!(after.contains("Nothing is due."), "{}", after.split("<main").nth(1).unwrap().get(..2000).unwrap());
    let written = log(&folder);
    assert!(written > 40, "{written}");
    let (mut shown, mut next) = (0, Some("/log".to_owned()));
    while let Some(path) = next {
        let page = send(&pages, get(&path)).await.text;
        shown += page.matches("aria-label=\"Take back entry ").count();
        next = page.split("/log?before=").nth(1).map(|rest| format!("/log?before={}", rest.split('"').next().unwrap()));
    }
    assert_eq!(shown, written);
}

#[tokio::test]
async fn a_pot_from_purchase_to_empty() {
    let (_folder, pages) = alder();
    assert_eq!(sent(&pages, "/add/pot", "fluid=slideway-68&size=500+mL&left=500+mL&place=shelf").await, "/cupboard");
    let cupboard = send(&pages, get("/cupboard")).await.text;
    let pot =
        cupboard.split("/pot/").filter_map(|rest| rest.split_once('"')).find(|(_, rest)| rest.contains("slideway")).unwrap().0.to_owned();
    let at = format!("/pot/{pot}");
    let form = send(&pages, get("/done?machine=lathe&point=bed+ways")).await.text;
    assert!(form.contains(">slideway oil, ISO VG 68, shelf</option>"), "of two pots of one fluid it says which");
    assert_eq!(sent(&pages, &format!("{at}/opened"), "mark=a").await, at);
    assert_eq!(sent(&pages, &format!("{at}/opened"), "mark=a").await, at, "sent twice by a finger that trembles");
    let once = send(&pages, get(&at)).await.text;
    assert_eq!(once.matches("<strong>Opened").count(), 1);
    sent(&pages, "/done", &format!("machine=lathe&point=bed+ways&amount=100+mL&pot={pot}")).await;
    assert!(send(&pages, get(&at)).await.text.contains("400 mL"), "500 less 100");
    for (doing, amount, said) in
        [("counted", "lots", "does not begin with a number"), ("counted", "", "Say how much"), ("bought", "1 kg", "this pot is kept as")]
    {
        let answer = send(&pages, post(&format!("{at}/{doing}"), &format!("amount={}", amount.replace(' ', "+")))).await;
        assert!(answer.text.to_lowercase().contains(&said.to_lowercase()), "{doing} {amount}: {said}");
    }
    sent(&pages, &format!("{at}/discarded"), "").await;
    assert!(send(&pages, get("/cupboard")).await.text.contains(">empty<"));
    assert!(send(&pages, get("/")).await.text.contains("slideway oil, ISO VG 68: empty"));
}

#[tokio::test]
async fn a_form_says_at_the_key_what_is_wrong_and_changes_nothing() {
    let (_folder, pages) = alder();
    let shop = send(&pages, get("/shop")).await.text;
    let part = format!("/part/{}", shop.split("href=\"/part/").nth(1).unwrap().split('"').next().unwrap());
    let before = send(&pages, get(&part)).await.text;
    assert!(before.contains("value=\"10 in\""), "as it was typed");
    let wrong = send(&pages, post(&part, "name=lathe&swing=tall&hours=often")).await.text;
    assert!(wrong.contains("id=\"w-swing\"") && wrong.contains("id=\"w-hours\"") && wrong.contains("value=\"tall\""));
    assert!(send(&pages, get(&part)).await.text.contains("value=\"10 in\""));
    sent(&pages, &part, "name=lathe&swing=250+mm").await;
    assert!(send(&pages, get(&part)).await.text.contains("value=\"250 mm\""));
    let point = part.replace("/part/", "/add/point?machine=") + "&name=bed+ways";
    let bad = send(&pages, post(&point, "maker.use=snake+oil")).await.text;
    assert!(bad.contains("id=\"w-maker.use\""), "{}", bad.split("<main").nth(1).unwrap());
    sent(&pages, &point, "holds=slideway-68&maker.use=slideway-oil&maker.every=10+h").await;
    assert!(send(&pages, get("/chart/lathe")).await.text.contains("every 10 h"));
    let room = send(&pages, post("/only/room", "heating=frost+guard&weather=%2Fetc%2Fpasswd")).await;
    assert_eq!(room.status, StatusCode::SEE_OTHER);
    assert!(!send(&pages, get("/cupboard.csv")).await.text.contains("root:"));
}

#[tokio::test]
async fn what_is_asked_of_a_pot_a_part_or_a_point_that_is_not_there_is_refused() {
    let (folder, pages) = alder();
    for path in [
        "/pot/99",
        "/pot/1",
        "/part/99",
        "/part/x",
        "/only/cellar",
        "/add/king",
        "/add/point",
        "/add/point?machine=1e9",
        "/done?machine=a&point=b",
        "/log?before=x-y",
    ] {
        let status = send(&pages, get(path)).await.status;
        assert!(status.is_client_error() || path.starts_with("/log"), "{path}: {status}");
    }
    for (path, form) in [
        ("/done", "machine=lathe&point=nothing"),
        ("/done", "machine=lathe&point=bed+ways&pot=99"),
        ("/undo", "entry=99"),
        ("/pot/99/opened", ""),
        ("/part/1/remove", ""),
        ("/done", "machine=lathe&point=bed+ways&amount=%3Cscript%3E"),
        ("/done", "machine=lathe&point=bed+ways&day=2026-03-03"),
    ] {
        let answer = send(&pages, post(path, form)).await;
        assert!(answer.status.is_client_error(), "{path} {form}: {}", answer.status);
    }
    assert_eq!(log(&folder), 0);
}

#[tokio::test]
async fn a_file_that_cannot_be_read_is_not_taken_for_a_part_that_is_gone() {
    let (folder, pages) = alder();
    let shop = folder.path().join("shop.gallipot");
    let part = send(&pages, get("/shop")).await.text.split("href=\"/part/").nth(1).unwrap().split('"').next().unwrap().to_owned();
    let gone = send(&pages, get("/part/99")).await;
    assert!(gone.status == StatusCode::NOT_FOUND && gone.text.contains("no such part"), "{}", gone.status);
    // All but the page that says whose file it is, so that it is still ours and nothing else.
    let length = std::fs::metadata(&shop).unwrap().len();
    let mut bytes = std::fs::read(&shop).unwrap();
    bytes[4096..].fill(0xa5);
    // Somebody else wrote to it: the counter of changes at 24 (the file format of SQLite, section 1.3.7) says so, or nobody would look.
    bytes[24..28].copy_from_slice(&[0x7f; 4]);
    bytes[92..96].copy_from_slice(&[0x7f; 4]);
    std::fs::write(&shop, &bytes).unwrap();
    assert_eq!(std::fs::metadata(&shop).unwrap().len(), length);
    for path in [format!("/part/{part}"), "/".to_owned()] {
        let damaged = send(&pages, get(&path)).await;
        assert_eq!(damaged.status, StatusCode::SERVICE_UNAVAILABLE, "{path}: {}", damaged.text);
        assert!(damaged.text.contains("the last backup") && !damaged.text.contains("no such part"), "{path}");
    }
}

#[tokio::test]
async fn nothing_is_written_for_another_site_or_on_a_tablet_for_reading() {
    let (folder, pages) = alder();
    let writes = [
        "/start",
        "/done",
        "/undo",
        "/meters",
        "/part/2",
        "/part/2/remove",
        "/only/room",
        "/add/machine",
        "/pot/3/opened",
        "/cupboard/table",
    ];
    for path in writes {
        // OWASP Cross-Site Request Forgery Prevention Cheat Sheet: verify the origin.
        let answer = send(&pages, with(post(path, "machine=lathe&point=bed+ways"), "origin", "http://elsewhere.example")).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{path}");
    }
    drop(pages);
    let tablet = pages_of(&folder.path().join("shop.gallipot"), Settings { read_only: true, ..local() });
    for path in writes {
        assert_eq!(send(&tablet, post(path, "machine=lathe&point=bed+ways")).await.status, StatusCode::FORBIDDEN, "{path}");
    }
    let today = send(&tablet, get("/")).await.text;
    assert!(today.contains("bed ways") && !today.contains("action=\"/done\""));
    assert_eq!(log(&folder), 0);
}

#[tokio::test]
async fn what_people_write_into_the_shop_is_shown_and_never_run() {
    let (_folder, pages) = alder();
    // OWASP Cross-Site Scripting Prevention Cheat Sheet; server-side template injection probes.
    let sly = "%7B%7B7*7%7D%7D%3Cscript%3Ealert(1)%3C%2Fscript%3E%22+onfocus%3D%22x";
    sent(&pages, "/add/pot", &format!("fluid=acetone&name={sly}&place={sly}")).await;
    sent(&pages, "/add/machine?template=shaper", &format!("name=..%2F..%2F{sly}")).await;
    sent(&pages, "/done", &format!("machine=lathe&point=bed+ways&note={sly}&who={sly}")).await;
    for path in ["/", "/shop", "/cupboard", "/log", "/?entry=1"] {
        let page = send(&pages, get(path)).await.text;
        assert!(!page.contains("<script>") && !page.contains("\" onfocus=\"") && !page.contains("49&lt;"), "{path}");
    }
    let today = send(&pages, get("/")).await.text;
    let chart = today.split("href=\"").find(|link| link.starts_with("/chart/..")).unwrap().split('"').next().unwrap();
    assert_eq!(send(&pages, get(chart)).await.status, StatusCode::OK, "{chart}");
}

#[tokio::test]
async fn a_table_is_taken_in_whole_or_not_at_all() {
    let (_folder, pages) = alder();
    let before = send(&pages, get("/cupboard.csv")).await;
    assert_eq!(before.header("content-type"), "text/csv; charset=utf-8");
    let told = |answer: &Answer| answer.text.split("<main").nth(1).unwrap().to_owned();
    let bad = send(&pages, upload(b"fluid,left\nslideway-68,2 bananas\nsnake oil,1 L\n", "add")).await;
    assert!(
        told(&bad).contains("Nothing was taken in") && told(&bad).contains("line 2") && told(&bad).contains("line 3"),
        "{}",
        told(&bad)
    );
    let columns = send(&pages, upload(b"colour,weight\nred,2\n", "replace")).await;
    assert!(told(&columns).contains("Nothing was taken in"), "{}", told(&columns));
    let noise = send(&pages, upload(&[0xff, 0xfe, 0x00, 0x9f, 0x0a, 0x22], "add")).await;
    assert!(told(&noise).contains("Nothing was taken in"));
    assert_eq!(send(&pages, get("/cupboard.csv")).await.text, before.text);
    // OWASP on CSV injection: a cell that begins with =, +, - or @ is a formula to a spreadsheet.
    let sly = send(&pages, upload(b"fluid,name,left\nacetone,\"=HYPERLINK(\"\"http://elsewhere.example\"\")\",250 mL\n", "add")).await;
    assert!(told(&sly).contains("1 added"));
    assert!(send(&pages, get("/cupboard.csv")).await.text.contains("\"'=HYPERLINK"));
    // The trip out and in again changes nothing.
    let out = send(&pages, get("/cupboard.csv")).await.text;
    let back = send(&pages, upload(out.as_bytes(), "replace")).await;
    assert!(told(&back).contains("0 added, 0 taken out"), "{}", told(&back));
    assert_eq!(send(&pages, get("/cupboard.csv")).await.text, out);
}

#[tokio::test]
async fn fifty_thousand_bad_rows_are_reported_and_nothing_is_taken_in() {
    let (_folder, pages) = alder();
    let mut table = String::from("fluid,name,left\n");
    for row in 0..50_000 {
        writeln!(table, "slideway-68,pot {row},{row} bananas").unwrap();
    }
    let begun = Instant::now();
    let answer = send(&pages, upload(table.as_bytes(), "add")).await;
    assert!(answer.text.contains("50000 mistakes; the first 50 are"));
    assert!(answer.text.len() < 64 << 10, "{} bytes", answer.text.len());
    assert!(begun.elapsed() < Duration::from_secs(20), "{:?}", begun.elapsed());
    assert!(!send(&pages, get("/cupboard")).await.text.contains("pot 7"));
}

#[tokio::test]
async fn every_link_of_a_kept_shop_leads_to_a_page() {
    let (_folder, pages) = alder();
    let mut seen = std::collections::BTreeSet::new();
    let mut waiting = vec!["/".to_owned()];
    while let Some(path) = waiting.pop() {
        if !seen.insert(path.clone()) || path.starts_with("/why/") {
            continue;
        }
        let answer = send(&pages, get(&path)).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}");
        let links = answer.text.split("href=\"").skip(1).map(|link| link.split('"').next().unwrap().replace("&#38;", "&"));
        let links = links.map(|link| link.split('#').next().unwrap().to_owned());
        waiting.extend(links.filter(|link| link.starts_with('/')));
    }
    assert!(seen.len() > 100, "{}", seen.len());
}

#[tokio::test]
async fn a_clock_that_went_back_writes_nothing_and_says_so() {
    let folder = tempfile::tempdir().unwrap();
    let shop = kept(folder.path(), Some("alder-lock.toml"));
    fn later() -> jiff::ZonedDateTime {
        clock().checked_add(jiff::Span::new().days(30)).unwrap()
    }
    let store = Store::open(&shop, Moment::from(&later())).unwrap();
    let app = App::new(ShopSource::kept(store), Settings { clock: later, ..local() }, |_| {}).unwrap();
    sent(&router(app), "/done", "machine=lathe&point=bed+ways").await;
    let pages = pages_of(Path::new(&shop), local());
    let answer = send(&pages, post("/done", "machine=lathe&point=half+nuts")).await;
    assert!(answer.text.contains("set this machine") || answer.text.contains("clock"), "{}", answer.text);
    assert_eq!(log(&folder), 1);
    assert!(send(&pages, get("/")).await.text.contains("Nobody can say what is due."));
    let round = send(&pages, get("/api/round")).await;
    assert_eq!(round.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(round.text.contains("No answer for these values") && !round.text.contains("Nothing was written"));
}

#[tokio::test]
async fn the_calendar_is_open_to_whoever_knows_its_address_and_to_nobody_else() {
    let folder = tempfile::tempdir().unwrap();
    let pages = pages_of(&kept(folder.path(), Some("alder-lock.toml")), open());
    let outside = |path: &str| with(from("192.168.1.9:4000", get(path)), "host", "192.168.1.7:8087");
    assert_eq!(send(&pages, outside("/calendar")).await.status, StatusCode::SEE_OTHER, "the page that says the address has a door");
    assert_eq!(send(&pages, outside("/calendar/0000.ics")).await.status, StatusCode::NOT_FOUND);
    assert_eq!(send(&pages, outside("/calendar/.ics")).await.status, StatusCode::NOT_FOUND);
    drop(pages);
    // On this machine, where nobody has to come in.
    let pages = pages_of(&folder.path().join("shop.gallipot"), local());
    let address = async |pages: &Router| {
        let page = send(pages, get("/calendar?at=18:00&alarm=30")).await.text;
        page.split("<code>").nth(1).map(|rest| rest.split('<').next().unwrap().replace("&#38;", "&"))
    };
    assert_eq!(address(&pages).await, None);
    sent(&pages, "/calendar", "").await;
    let first = address(&pages).await.unwrap();
    let path = first.strip_prefix(&format!("http://{LOCAL}")).unwrap();
    let calendar = send(&pages, get(path)).await;
    assert_eq!(calendar.header("content-type"), "text/calendar; charset=utf-8");
    // RFC 5545 section 3.4.
    assert!(calendar.text.starts_with("BEGIN:VCALENDAR\r\n") && calendar.text.ends_with("END:VCALENDAR\r\n"));
    assert!(calendar.text.contains("T180000") && calendar.text.contains("BEGIN:VALARM"));
    sent(&pages, "/calendar", "").await;
    assert_eq!(send(&pages, get(path)).await.status, StatusCode::NOT_FOUND, "renewed, the old address leads nowhere");
    assert_ne!(address(&pages).await.unwrap(), first);
    sent(&pages, "/calendar", "away=yes").await;
    assert_eq!(address(&pages).await, None);
}

#[tokio::test]
async fn programs_get_what_the_description_says() {
    let (_folder, pages) = alder();
    let description: serde_json::Value = serde_json::from_str(&send(&pages, get("/api")).await.text).unwrap();
    assert_eq!(description["openapi"], "3.1.0");
    for (path, said) in description["paths"].as_object().unwrap() {
        let by_all = said["get"]["responses"].get("404").is_none();
        assert_eq!(by_all, path == "/api/plan", "a shop file has no log: {path}");
        let answer = send(&pages, get(path)).await;
        assert_eq!((answer.status, answer.header("content-type")), (StatusCode::OK, "application/json"), "{path}");
        as_described(&description, path, &answer);
    }
    assert_eq!(send(&pages, post("/api/plan", "")).await.status, StatusCode::METHOD_NOT_ALLOWED);
}

#[tokio::test]
async fn parts_are_moved_among_their_kind_and_the_rest_of_the_file_stays() {
    let (folder, pages) = alder();
    let machines = async || {
        let shop = send(&pages, get("/shop")).await.text;
        shop.split("<strong>Chart: ").skip(1).map(|rest| rest.split('<').next().unwrap().to_owned()).collect::<Vec<_>>()
    };
    let text = || Store::open_read_only(&folder.path().join("shop.gallipot")).unwrap().export().unwrap();
    let (before, file) = (machines().await, text());
    let shop = send(&pages, get("/shop")).await.text;
    let part = format!("/part/{}/move", shop.split("href=\"/part/").nth(1).unwrap().split('"').next().unwrap());
    assert_eq!(sent(&pages, &part, "to=down").await, "/shop");
    let after = machines().await;
    assert_eq!((&after[0], &after[1], &after[2..]), (&before[1], &before[0], &before[2..]));
    assert_eq!(sent(&pages, &part, "to=up").await, "/shop");
    assert_eq!((machines().await, text()), (before.clone(), file.clone()), "there and back");
    assert_eq!(sent(&pages, &part, "to=up").await, "/shop");
    assert_eq!((machines().await, text()), (before, file), "the first has nowhere to go");
    assert_eq!(send(&pages, post(&part, "to=sideways")).await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn materials_are_ticked_and_stay_as_they_were_called_where_nothing_changes() {
    let folder = tempfile::tempdir().unwrap();
    let path = kept(folder.path(), None);
    let text = "[[work]]\njob = \"cut\"\nmaterials = [\"steel\", \"brass\"]\n";
    Store::open(&path, Moment::from(&clock()))
        .unwrap()
        .import(text.as_bytes(), Reference::embedded(), kinds(), Moment::from(&clock()))
        .unwrap();
    let pages = pages_of(&path, local());
    let shop = send(&pages, get("/shop")).await.text;
    let part = format!("/part/{}", shop.split("href=\"/part/").nth(1).unwrap().split('"').next().unwrap());
    let form = send(&pages, get(&part)).await.text;
    for (word, ticked) in [("mild-steel", true), ("brass", true), ("bronze", false)] {
        let tick =
            form.split("<input type=\"checkbox\" name=\"materials\"").find(|input| input.contains(&format!("value=\"{word}\""))).unwrap();
        assert_eq!(tick.split('>').next().unwrap().contains(" checked"), ticked, "{word}");
    }
    let export = || Store::open_read_only(&path).unwrap().export().unwrap();
    sent(&pages, &part, "materials=brass&materials=mild-steel&often=weekly").await;
    assert!(export().contains("materials = [\"steel\", \"brass\"]") && export().contains("weekly"), "{}", export());
    sent(&pages, &part, "materials=brass&materials=bronze&often=weekly").await;
    assert!(export().contains("materials = [\"brass\", \"bronze\"]"), "{}", export());
}

#[tokio::test]
async fn who_did_it_is_asked_once_on_a_device() {
    let (_folder, pages) = alder();
    let said = send(&pages, post("/done", "machine=lathe&point=bed+ways&amount=&who=Ad%C3%A9la+%26+co%3B")).await;
    let cookie = said.header("set-cookie").split(';').next().unwrap().to_owned();
    assert!(said.header("set-cookie").contains("HttpOnly; SameSite=Strict") && cookie.is_ascii(), "{cookie}");
    let ticked = send(&pages, with(post("/done", "machine=lathe&point=cross+slide"), "cookie", &cookie)).await;
    assert_eq!(ticked.header("set-cookie"), "", "the button asks nobody");
    let log = send(&pages, get("/log")).await.text;
    assert_eq!(log.matches("Adéla &#38; co;").count(), 2, "{}", log.split("<main").nth(1).unwrap());
    let today = send(&pages, with(get("/"), "cookie", &cookie)).await.text;
    assert!(today.contains("ticked as Adéla &#38; co;"));
    let form = send(&pages, with(get("/done?machine=lathe&point=half+nuts"), "cookie", &cookie)).await.text;
    assert!(form.contains("value=\"Adéla &#38; co;\""));
    let forgotten = send(&pages, with(post("/done", "machine=lathe&point=half+nuts&who="), "cookie", &cookie)).await;
    assert!(forgotten.header("set-cookie").contains("Max-Age=0"));
}
