//! The switch of units, kept in a cookie.

use std::sync::Arc;

use axum::extract::{Form, State};
use axum::http::header::SET_COOKIE;
use axum::response::Response;
use serde::Deserialize;

use crate::App;
use crate::cookie::{REMEMBERED_SECONDS, UNITS, set};
use crate::guard::login::{local, to};
use crate::visitor::system;

#[derive(Deserialize)]
pub(crate) struct Choice {
    #[serde(default)]
    units: String,
    #[serde(default)]
    back: String,
}

/// Takes the choice and goes back to where it was made. Anything but a known word goes back to the shop's own units.
pub(crate) async fn choose(State(app): State<Arc<App>>, Form(choice): Form<Choice>) -> Response {
    let mut response = to(local(&app.settings, &choice.back));
    let cookie = match system(&choice.units) {
        Some(_) => set(&app.settings, UNITS, &choice.units, REMEMBERED_SECONDS),
        None => set(&app.settings, UNITS, "", 0),
    };
    response.headers_mut().insert(SET_COOKIE, cookie);
    response
}
