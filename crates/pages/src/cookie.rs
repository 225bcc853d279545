//! The three cookies: who has come in, the units somebody likes, and what they are called in the log.

use axum::http::header::COOKIE;
use axum::http::{HeaderMap, HeaderValue};

use crate::settings::Settings;

/// Holds the token of somebody who has come in.
pub(crate) const SESSION: &str = "gallipot_session";
/// Holds the units somebody likes.
pub(crate) const UNITS: &str = "gallipot_units";
/// Holds what somebody is called in the log.
pub(crate) const WHO: &str = "gallipot_who";
/// How long a liking is remembered: a year.
pub(crate) const REMEMBERED_SECONDS: u64 = 31_536_000;

/// The value of a cookie. One that is there twice is none: somebody else put in the other.
pub(crate) fn cookie<'h>(headers: &'h HeaderMap, name: &str) -> Option<&'h str> {
    let all = headers.get_all(COOKIE).iter().filter_map(|value| value.to_str().ok()).flat_map(|text| text.split(';'));
    let mut values = all.filter_map(|pair| pair.trim().split_once('=')).filter(|(key, _)| *key == name).map(|(_, value)| value);
    values.next().filter(|_| values.next().is_none())
}

/// A cookie to be set for so many seconds; none for nothing, which takes it away. The value must be plain.
pub(crate) fn set(settings: &Settings, name: &str, value: &str, seconds: u64) -> HeaderValue {
    let path = match settings.base_path.as_str() {
        "" => "/",
        path => path,
    };
    let secure = if settings.is_encrypted() { "; Secure" } else { "" };
    let text = format!("{name}={value}; Path={path}; Max-Age={seconds}; HttpOnly; SameSite=Strict{secure}");
    HeaderValue::from_str(&text).unwrap_or_else(|_| HeaderValue::from_static(""))
}
