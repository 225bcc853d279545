//! What stands in front of every page, in this order: headers, rate, whose address was asked for, whose page sent it, whether anything may
//! be written, who has come in.
//!
//! **Invariant:** nothing a visitor typed is ever logged.

pub(crate) mod headers;
pub(crate) mod login;
pub(crate) mod origin;
pub mod passphrase;
pub(crate) mod rate;
pub(crate) mod session;

use std::net::IpAddr;
use std::sync::Arc;

use axum::extract::{Request, State};
use axum::http::header::{FORWARDED as FORWARDED_BY_STANDARD, HeaderName, LOCATION, RETRY_AFTER};
use axum::http::{Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::App;
use crate::cookie::{SESSION, cookie};
use crate::frame::encoded;
use crate::serve::Peer;
use crate::settings::Settings;

/// What the guard remembers.
pub(crate) struct Guard {
    pub sessions: session::Sessions,
    pub rate: rate::Rate,
    pub attempts: login::Attempts,
}

impl Guard {
    pub(crate) fn new(settings: &Settings) -> Self {
        Self {
            sessions: session::Sessions::default(),
            rate: rate::Rate::new(settings.origin.is_some()),
            attempts: login::Attempts::default(),
        }
    }
}

/// Paths that are open to whoever has not come in, below the base path.
fn is_open(path: &str) -> bool {
    // Whoever knows the address of the calendar may read it: a calendar program cannot come in.
    let one_of = |folder: &str| path.strip_prefix(folder).is_some_and(|name| !name.contains('/'));
    matches!(path, "/login" | "/health") || one_of("/assets/") || one_of("/calendar/")
}

/// Paths that may be written to although nothing of the shop may: who comes in, and in which units they read.
fn writes_nothing(path: &str) -> bool {
    matches!(path, "/login" | "/logout" | "/units")
}

/// What a proxy adds to a request: with it, others come in through this machine.
const FORWARDED: [HeaderName; 3] =
    [FORWARDED_BY_STANDARD, HeaderName::from_static("x-forwarded-for"), HeaderName::from_static("x-forwarded-host")];

/// The address of whoever asks, or its network where one house has many addresses.
pub(crate) fn whose(request: &Request) -> IpAddr {
    let peer = request.extensions().get::<Peer>().map_or(IpAddr::from([0, 0, 0, 0]), |peer| peer.0.ip());
    match peer.to_canonical() {
        IpAddr::V6(address) => {
            let [a, b, c, d, ..] = address.segments();
            IpAddr::from([a, b, c, d, 0, 0, 0, 0])
        }
        address => address,
    }
}

/// Lets a request through, or says why not.
pub(crate) async fn stand(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    if let Err(seconds) = app.guard.rate.take(whose(&request)) {
        let said = "You ask for more pages than anybody can read. Wait a little.";
        return (StatusCode::TOO_MANY_REQUESTS, [(RETRY_AFTER, seconds.to_string())], said).into_response();
    }
    if !origin::is_ours(&app.settings, &request) {
        let said = "Gallipot does not answer to this name. Start it with `--origin` and the address you use.";
        return (StatusCode::MISDIRECTED_REQUEST, said).into_response();
    }
    if app.settings.is_alone() && FORWARDED.iter().any(|name| request.headers().contains_key(name)) {
        let said = "This came through a proxy, and without a passphrase only this machine comes in. Start Gallipot with `--origin`.";
        return (StatusCode::FORBIDDEN, said).into_response();
    }
    let path = request.uri().path().strip_prefix(app.settings.base_path.as_str()).unwrap_or_default().to_owned();
    if !matches!(*request.method(), Method::GET | Method::HEAD) {
        if !origin::is_from_our_page(&app.settings, &request) {
            return (StatusCode::FORBIDDEN, "This was sent by a page that is not Gallipot's. Nothing was done.").into_response();
        }
        if app.settings.read_only && !writes_nothing(&path) {
            return (StatusCode::FORBIDDEN, "These pages are for reading only. Nothing was done.").into_response();
        }
    }
    if app.settings.passphrase.is_some() && !is_open(&path) {
        let known = cookie(request.headers(), SESSION).is_some_and(|token| app.guard.sessions.knows(token));
        if !known {
            return turned_away(&app, &request, &path);
        }
    }
    next.run(request).await
}

/// Sends a reader to the door, and tells anything else that it is shut.
fn turned_away(app: &App, request: &Request, path: &str) -> Response {
    if !matches!(*request.method(), Method::GET | Method::HEAD) {
        return (StatusCode::UNAUTHORIZED, "Come in first. Nothing was done.").into_response();
    }
    let base = app.settings.base_path.as_str();
    let question = request.uri().query().map(|query| format!("?{query}")).unwrap_or_default();
    let to = format!("{base}/login?next={}", encoded(&format!("{base}{path}{question}")));
    (StatusCode::SEE_OTHER, [(LOCATION, to)]).into_response()
}
