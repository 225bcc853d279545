//! Who looks at a page, as far as it matters to the page.

use std::convert::Infallible;
use std::sync::Arc;

use axum::extract::FromRequestParts;
use axum::http::header::HOST;
use axum::http::request::Parts;
use serde::Deserialize;
use units::System;

use crate::App;
use crate::cookie::{UNITS, cookie};

/// Who looks at a page.
#[derive(Debug, Clone, Default)]
pub(crate) struct Visitor {
    /// The units they chose; none for the shop's own.
    pub units: Option<System>,
    /// The path they are at, with its question, below the base path.
    pub at: String,
    /// The host they asked.
    pub host: String,
    /// What they asked, in the order of the form.
    pub asked: Vec<(String, String)>,
}

/// What a form brought, in its order.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(transparent)]
pub(crate) struct Typed(Vec<(String, String)>);

impl Typed {
    /// What was typed into one field, without blanks around it; ticked words are joined by commas.
    pub(crate) fn joined(&self, name: &str) -> String {
        self.all(name).collect::<Vec<_>>().join(", ")
    }

    /// Everything that was ticked or typed under one name.
    pub(crate) fn all<'t>(&'t self, name: &'t str) -> impl Iterator<Item = &'t str> {
        self.0.iter().filter(move |(key, value)| key == name && !value.trim().is_empty()).map(|(_, value)| value.trim())
    }
}

/// Systems of units by the words of the cookie and of the form.
pub(crate) const SYSTEMS: [(&str, System); 3] = [("metric", System::Metric), ("inch", System::Inch), ("both", System::Both)];

/// The system of that word.
pub(crate) fn system(word: &str) -> Option<System> {
    SYSTEMS.iter().find(|(known, _)| *known == word).map(|(_, system)| *system)
}

impl FromRequestParts<Arc<App>> for Visitor {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &Arc<App>) -> Result<Self, Infallible> {
        let asked = axum::extract::Query::try_from_uri(&parts.uri).map_or_else(|_| Vec::new(), |asked| asked.0);
        let at = parts.uri.path_and_query().map_or_else(|| "/".to_owned(), ToString::to_string);
        let host = parts.headers.get(HOST).and_then(|host| host.to_str().ok()).unwrap_or("localhost").to_owned();
        Ok(Self { host, units: cookie(&parts.headers, UNITS).and_then(system), at, asked })
    }
}

impl Visitor {
    /// What was typed into a field of the form; none where it was left empty.
    pub(crate) fn typed<'v>(&'v self, name: &'v str) -> Option<&'v str> {
        self.all(name).next()
    }

    /// Everything that was ticked or typed under one name.
    pub(crate) fn all<'v>(&'v self, name: &'v str) -> impl Iterator<Item = &'v str> {
        self.asked.iter().filter(move |(key, value)| key == name && !value.trim().is_empty()).map(|(_, value)| value.as_str())
    }
}
