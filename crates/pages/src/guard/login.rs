//! The door: the passphrase is asked for, each wrong answer makes the next wait longer, and a right one begins a new session.

use std::collections::HashMap;
use std::net::IpAddr;
use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

use askama::Template;
use axum::RequestExt;
use axum::extract::{Form, Request, State};
use axum::http::header::{LOCATION, RETRY_AFTER, SET_COOKIE};
use axum::http::{HeaderMap, HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use tokio::sync::Semaphore;

use crate::App;
use crate::cookie::{SESSION, cookie, set};
use crate::frame::{Frame, html};
use crate::guard::session::KEPT_SECONDS;
use crate::guard::whose;
use crate::settings::Settings;
use crate::trouble::Trouble;
use crate::visitor::Visitor;

/// The longest wait after wrong answers, and when they are forgotten.
const LONGEST_WAIT: Duration = Duration::from_secs(60);
const FORGOTTEN: Duration = Duration::from_secs(15 * 60);
const REMEMBERED: usize = 4096;

/// Wrong answers by address.
pub(crate) struct Attempts {
    wrong: Mutex<HashMap<IpAddr, (u32, Instant)>>,
    /// One answer is looked at after the other, so that many addresses together are no faster than one.
    turn: Semaphore,
}

impl Default for Attempts {
    fn default() -> Self {
        Self { wrong: Mutex::default(), turn: Semaphore::new(1) }
    }
}

impl Attempts {
    /// How long this address has to wait before it may answer again.
    fn wait(&self, whose: IpAddr) -> Duration {
        let wrong = self.wrong.lock().unwrap_or_else(PoisonError::into_inner);
        let Some((times, last)) = wrong.get(&whose) else { return Duration::ZERO };
        let wait = Duration::from_secs(1 << times.saturating_sub(1).min(6)).min(LONGEST_WAIT);
        wait.saturating_sub(last.elapsed())
    }

    fn was_wrong(&self, whose: IpAddr) {
        let mut wrong = self.wrong.lock().unwrap_or_else(PoisonError::into_inner);
        wrong.retain(|_, (_, last)| last.elapsed() < FORGOTTEN);
        if wrong.len() < REMEMBERED || wrong.contains_key(&whose) {
            let (times, last) = wrong.entry(whose).or_insert((0, Instant::now()));
            *times = times.saturating_add(1);
            *last = Instant::now();
        }
    }

    fn was_right(&self, whose: IpAddr) {
        self.wrong.lock().unwrap_or_else(PoisonError::into_inner).remove(&whose);
    }
}

#[derive(Template)]
#[template(path = "login.html")]
struct Page {
    frame: Frame,
    next: String,
    wrong: Option<String>,
}

/// What is typed at the door.
#[derive(Deserialize)]
pub(crate) struct Answer {
    passphrase: String,
    #[serde(default)]
    next: String,
}

/// The door.
pub(crate) async fn door(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    if app.settings.passphrase.is_none() {
        return to(home(&app.settings));
    }
    let next = local(&app.settings, visitor.typed("next").unwrap_or_default());
    shown(&app, &visitor, next, None).unwrap_or_else(|trouble| trouble.page(&app, &visitor))
}

/// Somebody answers at the door.
pub(crate) async fn answer(State(app): State<Arc<App>>, visitor: Visitor, request: Request) -> Response {
    let (whose, headers) = (whose(&request), request.headers().clone());
    let Ok(Form(answer)) = request.extract::<Form<Answer>, _>().await else {
        return (StatusCode::BAD_REQUEST, "The form did not come whole. Try again.").into_response();
    };
    come_in(&app, &visitor, whose, &headers, answer).await.unwrap_or_else(|trouble| trouble.page(&app, &visitor))
}

async fn come_in(app: &Arc<App>, visitor: &Visitor, whose: IpAddr, headers: &HeaderMap, answer: Answer) -> Result<Response, Trouble> {
    if app.settings.passphrase.is_none() {
        return Ok(to(home(&app.settings)));
    }
    let next = local(&app.settings, &answer.next);
    if let Some(origin) = app.settings.encrypted_elsewhere(headers) {
        let said = format!("This connection is not encrypted, so the passphrase was not looked at. Come in by {origin}.");
        return Ok((StatusCode::FORBIDDEN, shown(app, visitor, next, Some(said))?).into_response());
    }
    let turn = app.guard.attempts.turn.acquire().await;
    let wait = app.guard.attempts.wait(whose);
    if !wait.is_zero() {
        let seconds = wait.as_secs() + 1;
        let said = format!("Too many wrong answers. Wait {seconds} s, then try again.");
        let page = shown(app, visitor, next, Some(said))?;
        return Ok((StatusCode::TOO_MANY_REQUESTS, [(RETRY_AFTER, seconds.to_string())], page).into_response());
    }
    let asked = Arc::clone(app);
    let compared = tokio::task::spawn_blocking(move || asked.settings.passphrase.as_ref().is_some_and(|kept| kept.is(&answer.passphrase)));
    let is_it = compared.await.unwrap_or(false);
    if !is_it {
        app.guard.attempts.was_wrong(whose);
        drop(turn);
        app.note(&format!("a wrong passphrase from {whose}"));
        let page = shown(app, visitor, next, Some("That is not the passphrase. It stands where Gallipot was started.".to_owned()))?;
        return Ok((StatusCode::FORBIDDEN, page).into_response());
    }
    app.guard.attempts.was_right(whose);
    let token = app.guard.sessions.begin(cookie(headers, SESSION)).map_err(|error| Trouble::Fault(error.to_string()))?;
    let mut response = to(next);
    response.headers_mut().insert(SET_COOKIE, set(&app.settings, SESSION, &token, KEPT_SECONDS));
    Ok(response)
}

/// Somebody leaves.
pub(crate) async fn leave(State(app): State<Arc<App>>, headers: HeaderMap) -> Response {
    if let Some(token) = cookie(&headers, SESSION) {
        app.guard.sessions.end(token);
    }
    let mut response = to(format!("{}/login", app.settings.base_path.as_str()));
    response.headers_mut().insert(SET_COOKIE, set(&app.settings, SESSION, "", 0));
    response
}

fn shown(app: &Arc<App>, visitor: &Visitor, next: String, wrong: Option<String>) -> Result<Response, Trouble> {
    html(&Page { frame: Frame::bare(app, visitor, "", "Come in"), next, wrong })
}

/// Sends a browser to another of our pages.
pub(crate) fn to(path: String) -> Response {
    let home = HeaderValue::from_static("/");
    (StatusCode::SEE_OTHER, [(LOCATION, HeaderValue::from_str(&path).unwrap_or(home))]).into_response()
}

fn home(settings: &Settings) -> String {
    format!("{}/", settings.base_path.as_str())
}

/// A path to go on to, as long as it is one of our own pages.
pub(crate) fn local(settings: &Settings, wanted: &str) -> String {
    let base = settings.base_path.as_str();
    let plain = |text: &str| text.bytes().all(|byte| byte.is_ascii_graphic() && byte != b'\\');
    let ours = wanted.strip_prefix(base).is_some_and(|rest| rest.starts_with('/') && !rest.starts_with("//"));
    if ours && !wanted.starts_with("//") && plain(wanted) { wanted.to_owned() } else { home(settings) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::settings::BasePath;

    #[test]
    fn whoever_comes_in_goes_on_to_one_of_our_own_pages() {
        let mut settings = Settings::local(([127, 0, 0, 1], 0).into());
        for (wanted, to) in [("/why/x?a=b", "/why/x?a=b"), ("", "/"), ("//elsewhere.example", "/"), ("https://elsewhere.example", "/")] {
            assert_eq!(local(&settings, wanted), to);
        }
        for wanted in ["/\\elsewhere.example", "/a\r\nSet-Cookie: x=y", "javascript:alert(1)"] {
            assert_eq!(local(&settings, wanted), "/", "{wanted}");
        }
        settings.base_path = BasePath::parse("/shop").unwrap();
        assert_eq!(local(&settings, "/shop/ladder"), "/shop/ladder");
        for wanted in ["/ladder", "/shopping", "/shop//elsewhere.example"] {
            assert_eq!(local(&settings, wanted), "/shop/", "{wanted}");
        }
    }
}
