//! Who looks at a page, as far as it matters to the page.

use std::convert::Infallible;
use std::sync::Arc;

use axum::extract::FromRequestParts;
use axum::http::header::HOST;
use axum::http::request::Parts;
use keep::Said;
use percent_encoding::percent_decode_str;
use serde::Deserialize;
use units::System;

use crate::App;
use crate::cookie::{UNITS, WHO, cookie};

/// Nobody's name is longer in letters.
const LONGEST_NAME: usize = 60;

/// Who looks at a page.
#[derive(Debug, Clone, Default)]
pub(crate) struct Visitor {
    /// The units they chose; none for the shop's own.
    pub units: Option<System>,
    /// What they are called in the log, as they said it last.
    pub who: Option<String>,
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

    /// Whether the form has that field, be it left empty.
    pub(crate) fn asks(&self, name: &str) -> bool {
        self.0.iter().any(|(key, _)| key == name)
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
        let who = cookie(&parts.headers, WHO).and_then(|value| percent_decode_str(value).decode_utf8().ok());
        let who = who.map(|who| who.trim().to_owned()).filter(|who| (1..=LONGEST_NAME).contains(&who.chars().count()));
        Ok(Self { host, units: cookie(&parts.headers, UNITS).and_then(system), who, at, asked })
    }
}

impl Visitor {
    /// Who says so, where they are known.
    pub(crate) fn said(&self) -> Said {
        Said { who: self.who.clone(), ..Said::default() }
    }

    /// What was typed into a field of the form; none where it was left empty.
    pub(crate) fn typed<'v>(&'v self, name: &'v str) -> Option<&'v str> {
        self.all(name).next()
    }

    /// Everything that was ticked or typed under one name.
    pub(crate) fn all<'v>(&'v self, name: &'v str) -> impl Iterator<Item = &'v str> {
        self.asked.iter().filter(move |(key, value)| key == name && !value.trim().is_empty()).map(|(_, value)| value.as_str())
    }
}
