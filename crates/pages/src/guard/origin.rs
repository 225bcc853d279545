//! Whose address was asked for, and whose page sent it.
//!
//! A page elsewhere can have its own name point at this machine and then read what comes back (DNS rebinding): so only names that nobody else
//! can own are answered to. It can also send a form here: so whatever writes must come from one of our own pages.

use std::net::IpAddr;

use axum::extract::Request;
use axum::http::HeaderMap;
use axum::http::header::{HOST, HeaderName, ORIGIN};
use axum::http::uri::Authority;

use crate::settings::Settings;

const FETCH_SITE: HeaderName = HeaderName::from_static("sec-fetch-site");

/// Whether the host asked for is one of ours.
pub(crate) fn is_ours(settings: &Settings, request: &Request) -> bool {
    let Some(host) = asked_for(request) else { return false };
    let name = host.host().to_ascii_lowercase();
    if settings.origin.as_ref().is_some_and(|origin| origin.host == name) || name == "localhost" {
        return true;
    }
    // A number is no name, and nobody can make another machine's page have it.
    match name.trim_start_matches('[').trim_end_matches(']').parse::<IpAddr>() {
        Ok(address) => address.is_loopback() || !settings.address.ip().is_loopback(),
        Err(_) => false,
    }
}

/// The one host a request names, in its header and, where it has one, in its address.
fn asked_for(request: &Request) -> Option<Authority> {
    let host = authority(one(request.headers(), &HOST)?)?;
    match request.uri().authority() {
        Some(other) if *other != host => None,
        _ => Some(host),
    }
}

fn authority(text: &str) -> Option<Authority> {
    text.parse::<Authority>().ok().filter(|found| !found.as_str().contains('@'))
}

/// A header that is there once.
fn one<'h>(headers: &'h HeaderMap, name: &HeaderName) -> Option<&'h str> {
    let mut values = headers.get_all(name).iter();
    let first = values.next()?.to_str().ok()?;
    values.next().is_none().then_some(first)
}

/// Whether something that writes was sent by one of our own pages.
pub(crate) fn is_from_our_page(settings: &Settings, request: &Request) -> bool {
    let headers = request.headers();
    if headers.contains_key(FETCH_SITE) && one(headers, &FETCH_SITE) != Some("same-origin") {
        return false;
    }
    let Some((scheme, from)) = one(headers, &ORIGIN).and_then(|origin| origin.split_once("://")) else { return false };
    if let Some(origin) = &settings.origin
        && from.eq_ignore_ascii_case(&origin.authority)
    {
        return (scheme == "https") == origin.encrypted;
    }
    let own = if settings.identity.is_some() { "https" } else { "http" };
    scheme == own && one(headers, &HOST).is_some_and(|host| from.eq_ignore_ascii_case(host))
}
