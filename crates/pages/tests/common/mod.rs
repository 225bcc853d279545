//! What the tests of the pages share: the real router over a shop file, and what a browser would send.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::net::SocketAddr;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Request, StatusCode};
use jiff::tz::TimeZone;
use jiff::{Timestamp, ZonedDateTime};
use pages::{App, Passphrase, Peer, Settings, ShopSource, router};
use planner::needs::kinds;
use reference::Reference;
use serde_json::Value;
use store::{Moment, Store};
use tower::ServiceExt;

pub const PASSPHRASE: &str = "kettle harbour nine owls";
pub const LOCAL: &str = "127.0.0.1:8087";

pub fn example(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples").join(name)
}

pub fn local() -> Settings {
    Settings::local(LOCAL.parse().unwrap())
}

/// Open to the network, with a passphrase.
pub fn open() -> Settings {
    let passphrase = Some(Passphrase::new(PASSPHRASE).unwrap());
    Settings { passphrase, ..Settings::local("0.0.0.0:8087".parse().unwrap()) }
}

pub fn app(settings: Settings, shop: &Path) -> Arc<App> {
    App::new(ShopSource::file(shop.to_owned()), settings, |_| {}).unwrap()
}

/// What day and time it is in the tests.
pub fn clock() -> ZonedDateTime {
    "2026-03-02T09:30:00Z".parse::<Timestamp>().unwrap().to_zoned_datetime(TimeZone::UTC)
}

/// A kept shop: the one of an example, or one of which nothing was said yet.
pub fn kept(folder: &Path, example_of: Option<&str>) -> PathBuf {
    let path = folder.join("shop.gallipot");
    let mut store = Store::create(&path).unwrap();
    if let Some(name) = example_of {
        let text = std::fs::read(example(name)).unwrap();
        store.import(&text, Reference::embedded(), kinds(), Moment::from(&clock())).unwrap();
    }
    path
}

/// The pages of a kept shop.
pub fn pages_of(shop: &Path, settings: Settings) -> Router {
    let now = Moment::from(&clock());
    let store = if settings.read_only { Store::open_read_only(shop) } else { Store::open(shop, now) };
    router(App::new(ShopSource::kept(store.unwrap()), Settings { clock, ..settings }, |_| {}).unwrap())
}

pub fn pages(settings: Settings) -> Router {
    router(app(settings, &example("alder-lock.toml")))
}

pub struct Answer {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub text: String,
}

impl Answer {
    pub fn header(&self, name: &str) -> &str {
        self.headers.get(name).map_or("", |value| value.to_str().unwrap())
    }
}

/// A request as a browser on the same machine sends it.
pub fn get(path: &str) -> Request<Body> {
    from("127.0.0.1:50000", Request::get(path).header("host", LOCAL).body(Body::empty()).unwrap())
}

/// A form as a browser sends it from one of our own pages.
pub fn post(path: &str, form: &str) -> Request<Body> {
    let request = Request::post(path)
        .header("host", LOCAL)
        .header("origin", format!("http://{LOCAL}"))
        .header("sec-fetch-site", "same-origin")
        .header("content-type", "application/x-www-form-urlencoded")
        .body(Body::from(form.to_owned()));
    from("127.0.0.1:50000", request.unwrap())
}

pub fn with(mut request: Request<Body>, name: &'static str, value: &str) -> Request<Body> {
    request.headers_mut().insert(name, value.parse().unwrap());
    request
}

pub fn from(peer: &str, mut request: Request<Body>) -> Request<Body> {
    let peer: SocketAddr = peer.parse().unwrap();
    request.extensions_mut().insert(Peer(peer));
    request
}

pub async fn send(router: &Router, request: Request<Body>) -> Answer {
    let response = router.clone().oneshot(request).await.unwrap();
    let (status, headers) = (response.status(), response.headers().clone());
    let bytes = to_bytes(response.into_body(), 64 << 20).await.unwrap();
    Answer { status, headers, text: String::from_utf8(bytes.to_vec()).unwrap() }
}

/// Holds an answer for programs against the description the server gives of it.
pub fn as_described(description: &Value, path: &str, answer: &Answer) {
    let described = &description["paths"][path]["get"]["responses"][answer.status.as_str()];
    assert!(described.is_object(), "{path} answers {}", answer.status);
    if answer.status != StatusCode::OK {
        return;
    }
    // JSON Schema 2020-12, as OpenAPI 3.1 takes it, read by an independent library.
    let mut schema = described["content"][answer.header("content-type")]["schema"].clone();
    assert!(schema.is_object(), "{path} answers {}", answer.header("content-type"));
    schema["components"] = description["components"].clone();
    let wrong: Vec<String> = jsonschema::validator_for(&schema)
        .unwrap()
        .iter_errors(&serde_json::from_str(&answer.text).unwrap())
        .map(|error| format!("{error} at {}", error.instance_path()))
        .collect();
    assert!(wrong.is_empty(), "{path}: {wrong:?}");
}

/// The session cookie an answer sets: name and value.
pub fn session(answer: &Answer) -> String {
    answer.header("set-cookie").split(';').next().unwrap().to_owned()
}
