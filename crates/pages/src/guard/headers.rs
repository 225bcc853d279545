//! What every answer tells the browser: take nothing from elsewhere, run nothing, be framed by nobody.

use std::sync::Arc;

use axum::extract::{Request, State};
use axum::http::header::{
    CACHE_CONTROL, CONTENT_SECURITY_POLICY, HeaderName, HeaderValue, REFERRER_POLICY, X_CONTENT_TYPE_OPTIONS, X_FRAME_OPTIONS,
};
use axum::middleware::Next;
use axum::response::Response;

use crate::App;

/// Our own style sheet and pictures, forms that go back to us, and nothing else. There is no script.
const POLICY: &str = "default-src 'none'; style-src 'self'; img-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// The referrer policy is not `no-referrer`: with that a browser keeps the origin of our own forms from us too.
const ALWAYS: [(HeaderName, &str); 7] = [
    (CONTENT_SECURITY_POLICY, POLICY),
    (X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (X_FRAME_OPTIONS, "DENY"),
    (REFERRER_POLICY, "same-origin"),
    (HeaderName::from_static("permissions-policy"), "camera=(), geolocation=(), microphone=(), payment=(), usb=()"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
];

/// Puts the headers on every answer, refusals too.
pub(crate) async fn put(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    let mut response = next.run(request).await;
    let headers = response.headers_mut();
    for (name, value) in ALWAYS {
        headers.insert(name, HeaderValue::from_static(value));
    }
    // Where people come in by a passphrase, a page must not be shown from memory to whoever comes after.
    let kept = if app.settings.passphrase.is_some() { "no-store" } else { "private, no-cache" };
    headers.entry(CACHE_CONTROL).or_insert(HeaderValue::from_static(kept));
    response
}
