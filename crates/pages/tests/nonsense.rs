//! Every address there is, asked by every method with whatever comes to mind: nothing is answered with a fault of the server, programs get
//! what the description says, and the kept file stays whole.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

#[expect(dead_code, reason = "the tests of the guard use the rest of it")]
mod common;

use std::collections::BTreeSet;

use axum::Router;
use axum::body::Body;
use axum::http::{Method, Request, StatusCode};
use common::{LOCAL, as_described, example, from, get, kept, local, pages_of, send};
use pages::{App, ShopSource, router};
use rand::rngs::ChaCha8Rng;
use rand::seq::IndexedRandom;
use rand::{RngExt, SeedableRng};
use serde_json::Value;
use store::Store;
use url::form_urlencoded;

/// The addresses stand in one place, which is read, so that none is forgotten.
const ROUTES: &str = include_str!("../src/routes.rs");

/// What people, programs and people who mean no good write into fields.
const ODD: [&str; 40] = [
    "",
    " ",
    "0",
    "-1",
    "1",
    "2",
    "3",
    "007",
    "1e308",
    "-1e-320 mm",
    "NaN",
    "inf",
    "99999999999999999999",
    "0.1 .. 0.2",
    "12 parsecs",
    "250 mL",
    "1 L",
    "400 rpm",
    "5 degC",
    "20 %",
    "-5 %",
    "3 pieces",
    "2026-02-30",
    "2026-03-01",
    "9999-12-31",
    "-9999-01-01",
    "yes",
    "no",
    "true",
    "null",
    "[]",
    "{{ 7 * 7 }}",
    "<script>alert(1)</script>",
    "' OR 1=1 --",
    "../../etc/passwd",
    "=cmd|'/c'!A1",
    "\0",
    "\u{202e}abc",
    "ﷺ🛢️",
    "a\r\nset-cookie: b=c",
];

/// Where things are called by their own names.
const KNOWN: [&str; 28] = [
    "lathe",
    "mill",
    "bed ways",
    "lathe.bed-ways",
    "boat-fittings.drill-brass",
    "slideway-68",
    "penetrating",
    "battery-acid",
    "acetone",
    "bench lathe",
    "shaper",
    "cut",
    "clean",
    "viscosity",
    "fit",
    "sweating",
    "label",
    "torque",
    "room",
    "shop",
    "machine",
    "work",
    "pot",
    "point",
    "opened",
    "counted",
    "bought",
    "decanted",
];

struct Asker {
    chance: ChaCha8Rng,
    routes: Vec<(&'static str, Vec<&'static str>)>,
    /// Names of fields, as the forms have them.
    fields: Vec<String>,
}

impl Asker {
    async fn of(pages: &Router, seed: u64) -> Self {
        let routes: Vec<(&str, Vec<&str>)> = ROUTES
            .lines()
            .filter_map(|line| {
                let (path, how) = line.trim().strip_prefix(".route(\"")?.split_once("\", ")?;
                Some((path, ["GET", "POST"].into_iter().filter(|method| how.contains(&format!("{}(", method.to_lowercase()))).collect()))
            })
            .collect();
        assert!(routes.len() > 35, "the routes were found: {routes:?}");
        let mut fields = BTreeSet::new();
        let forms = ["/start", "/add/pot", "/add/work?job=cut", "/add/machine?template=bench+lathe", "/only/room", "/only/shop", "/ladder"];
        let sheets = bench::sheets().iter().map(|sheet| format!("/bench/{}", sheet.kind.name));
        let more = ["/done?machine=lathe&point=bed+ways", "/meters", "/calendar", "/cupboard/table", "/paper", "/why/lathe.bed-ways"];
        for path in forms.into_iter().chain(more).map(str::to_owned).chain(sheets) {
            let text = send(pages, get(&path)).await.text;
            fields.extend(text.split(" name=\"").skip(1).map(|rest| rest.split('"').next().unwrap().to_owned()));
        }
        fields.extend(["entry", "back", "to", "mark", "into", "due", "units", "next", "passphrase", "before"].map(str::to_owned));
        Self { chance: ChaCha8Rng::seed_from_u64(seed), routes, fields: fields.into_iter().collect() }
    }

    fn one_in(&mut self, many: u32) -> bool {
        self.chance.random_range(0..many) == 0
    }

    fn text(&mut self) -> String {
        match self.chance.random_range(0..10) {
            0..5 => (*ODD.choose(&mut self.chance).unwrap()).to_owned(),
            5..9 => (*KNOWN.choose(&mut self.chance).unwrap()).to_owned(),
            _ => "x".repeat(self.chance.random_range(1..6000)),
        }
    }

    fn form(&mut self) -> String {
        let mut form = form_urlencoded::Serializer::new(String::new());
        for _ in 0..self.chance.random_range(0..8) {
            let name = self.fields.choose(&mut self.chance).unwrap().clone();
            form.append_pair(&name, &self.text());
        }
        let mut form = form.finish();
        if self.one_in(12) {
            form += "&%zz=%ff&&==&a=b=c&%00";
        }
        form
    }

    /// A question, and how it reads.
    fn ask(&mut self) -> (Request<Body>, String) {
        let (pattern, methods) = self.routes.choose(&mut self.chance).unwrap().clone();
        let method = if self.one_in(25) { "DELETE" } else { methods.choose(&mut self.chance).unwrap() };
        let mut path = String::new();
        for (place, part) in pattern.split(['{', '}']).enumerate() {
            if place % 2 == 0 {
                path += part;
            } else if self.one_in(15) {
                path += "%ff%00";
            } else if part == "id" && !self.one_in(3) {
                path += &self.chance.random_range(0..40).to_string();
            } else {
                path.extend(form_urlencoded::byte_serialize(self.text().as_bytes()).map(|piece| piece.replace('+', "%20")));
            }
        }
        if method == "GET" && !self.one_in(3) {
            path += "?";
            path += &self.form();
        }
        let body = if method == "GET" { String::new() } else { self.form() };
        let kind = if self.one_in(20) { "application/json" } else { "application/x-www-form-urlencoded" };
        let request = Request::builder().method(method).uri(&path).header("host", LOCAL).header("origin", format!("http://{LOCAL}"));
        let request = request.header("sec-fetch-site", "same-origin").header("content-type", kind);
        let request = if self.one_in(10) { request.header("cookie", "gallipot_units=furlongs; gallipot_who=%ff%00; x") } else { request };
        let said = format!("{method} {path}\n{body}");
        // From many addresses, or the guard would soon answer nothing else; from few enough for it to remember them all.
        let peer = format!("10.0.{}.{}:1000", self.chance.random_range(0..12), self.chance.random_range(1..250));
        (from(&peer, request.body(Body::from(body)).unwrap()), said)
    }
}

async fn asked(pages: &Router, seed: u64, questions: usize) {
    let mut asker = Asker::of(pages, seed).await;
    let description: Value = serde_json::from_str(&send(pages, get("/api")).await.text).unwrap();
    let mut seen = BTreeSet::new();
    for _ in 0..questions {
        let (request, said) = asker.ask();
        let described = request.uri().path().to_owned();
        let described = Some(described).filter(|path| request.method() == Method::GET && description["paths"].get(path).is_some());
        let answer = send(pages, request).await;
        seen.insert(answer.status.as_u16());
        let shown: String = said.chars().take(3000).collect();
        assert!(answer.status.as_u16() < 500, "{} for {shown}\n{}", answer.status, answer.text.split("<main").last().unwrap());
        if let Some(path) = described {
            as_described(&description, &path, &answer);
        }
    }
    assert!(seen.is_superset(&BTreeSet::from([200, 303, 400, 404, 405])) && !seen.contains(&429), "{seen:?}");
}

#[tokio::test]
async fn a_kept_shop_answers_whatever_is_asked() {
    let folder = tempfile::tempdir().unwrap();
    let path = kept(folder.path(), Some("alder-lock.toml"));
    let pages = pages_of(&path, local());
    asked(&pages, 1, 6000).await;
    assert!(matches!(send(&pages, get("/")).await.status, StatusCode::OK | StatusCode::SEE_OTHER));
    drop(pages);
    Store::open_read_only(&path).unwrap().check().unwrap();
}

#[tokio::test]
async fn a_shop_file_answers_whatever_is_asked() {
    let shop = example("alder-lock.toml");
    let before = std::fs::read(&shop).unwrap();
    let pages = router(App::new(ShopSource::file(shop.clone()), local(), |_| {}).unwrap());
    asked(&pages, 2, 2000).await;
    assert!(std::fs::read(shop).unwrap() == before, "a shop file is only read");
}
