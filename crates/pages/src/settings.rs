//! How the pages are opened: to whom, under which address, and whether anything may be written.

use std::net::{IpAddr, SocketAddr};

use axum::http::HeaderMap;
use axum::http::header::ORIGIN;
use axum::http::uri::Authority;
use jiff::ZonedDateTime;

use crate::guard::passphrase::Passphrase;
use crate::tls::Identity;

/// How the pages are opened.
#[derive(Debug)]
pub struct Settings {
    /// The address to listen on.
    pub address: SocketAddr,
    /// What everybody must know who comes in; none where only this machine can.
    pub passphrase: Option<Passphrase>,
    /// The certificate and key, where the connection is encrypted here.
    pub identity: Option<Identity>,
    /// Nothing may be written, such as from a tablet on the wall.
    pub read_only: bool,
    /// The path below which the pages stand.
    pub base_path: BasePath,
    /// The address by which a proxy makes the pages known.
    pub origin: Option<Origin>,
    /// What day and time it is here.
    pub clock: fn() -> ZonedDateTime,
}

/// Why the pages are not opened so.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SettingsError {
    /// Others could come in, and nothing keeps them out.
    #[error(
        "{0} can be reached by others, so it needs a passphrase: give `--passphrase-file FILE` or the environment variable \
         GALLIPOT_PASSPHRASE, or start it in a terminal, where it asks. To stay on this machine, leave `--address` and `--origin` out."
    )]
    Open(String),
    /// Not a base path.
    #[error(
        "`{0}` is not a base path; write it with a slash before each part and none at its end, in plain letters and digits, such as `/shop`"
    )]
    BasePath(String),
    /// Not an origin.
    #[error("`{0}` is not an address of pages; write it as `https://shop.example`, without a path: that is what `--base-path` is for")]
    Origin(String),
}

impl Settings {
    /// For this machine alone, which needs nothing else.
    #[must_use]
    pub fn local(address: SocketAddr) -> Self {
        Self {
            address,
            passphrase: None,
            identity: None,
            read_only: false,
            base_path: BasePath::default(),
            origin: None,
            clock: ZonedDateTime::now,
        }
    }

    /// Whether it may be opened so.
    ///
    /// # Errors
    /// [`SettingsError::Open`] when others could come in without a passphrase.
    pub fn check(&self) -> Result<(), SettingsError> {
        if self.passphrase.is_some() {
            return Ok(());
        }
        if !self.address.ip().is_loopback() {
            return Err(SettingsError::Open(self.address.to_string()));
        }
        match &self.origin {
            Some(origin) if !is_this_machine(&origin.host) => Err(SettingsError::Open(origin.text())),
            _ => Ok(()),
        }
    }

    /// Whether only this machine is to come in.
    pub(crate) fn is_alone(&self) -> bool {
        self.passphrase.is_none() && self.origin.is_none()
    }

    /// The address at which a visitor sees the pages: the one by which a proxy makes them known, else the host that was asked.
    pub(crate) fn seen_at(&self, host: &str) -> String {
        let (encrypted, authority) = match &self.origin {
            Some(origin) => (origin.encrypted, origin.authority.as_str()),
            None => (self.is_encrypted(), host),
        };
        format!("{}://{authority}{}", if encrypted { "https" } else { "http" }, self.base_path.as_str())
    }

    /// The encrypted address by which a proxy makes the pages known, where a form came past it over the bare network: no browser would keep
    /// the cookie of somebody who came in so.
    pub(crate) fn encrypted_elsewhere(&self, headers: &HeaderMap) -> Option<String> {
        let origin = self.origin.as_ref().filter(|origin| origin.encrypted && self.identity.is_none())?;
        let from = headers.get(ORIGIN)?.to_str().ok()?.strip_prefix("http://")?.parse::<Authority>().ok()?;
        (!is_this_machine(from.host())).then(|| format!("{}{}", origin.text(), self.base_path.as_str()))
    }

    /// Whether browsers speak to it over an encrypted connection.
    pub(crate) fn is_encrypted(&self) -> bool {
        self.identity.is_some() || self.origin.as_ref().is_some_and(|origin| origin.encrypted)
    }
}

fn is_this_machine(host: &str) -> bool {
    host == "localhost" || host.trim_matches(['[', ']']).parse::<IpAddr>().is_ok_and(|address| address.is_loopback())
}

/// The path below which the pages stand: nothing, or `/shop`.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct BasePath(String);

impl BasePath {
    /// Reads it; `/` and nothing are the same.
    ///
    /// # Errors
    /// [`SettingsError::BasePath`] when it holds anything that could be mistaken for something else in an address.
    pub fn parse(text: &str) -> Result<Self, SettingsError> {
        if matches!(text, "" | "/") {
            return Ok(Self::default());
        }
        let plain = |part: &str| {
            !part.is_empty() && part != "." && part != ".." && part.chars().all(|c| c.is_ascii_alphanumeric() || "-_.~".contains(c))
        };
        match text.strip_prefix('/') {
            Some(parts) if parts.split('/').all(plain) => Ok(Self(text.to_owned())),
            _ => Err(SettingsError::BasePath(text.to_owned())),
        }
    }

    /// The path without a slash at its end; empty for none.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// The address by which a proxy makes the pages known: scheme, host and port.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Origin {
    /// Whether it begins with `https`.
    pub(crate) encrypted: bool,
    /// The host, in lower case.
    pub(crate) host: String,
    /// Host and port as a browser writes them.
    pub(crate) authority: String,
}

impl Origin {
    /// Reads `https://shop.example`.
    ///
    /// # Errors
    /// [`SettingsError::Origin`].
    pub fn parse(text: &str) -> Result<Self, SettingsError> {
        let wrong = || SettingsError::Origin(text.to_owned());
        let text = text.strip_suffix('/').unwrap_or(text);
        let (encrypted, authority) = match text.split_once("://") {
            Some(("https", authority)) => (true, authority),
            Some(("http", authority)) => (false, authority),
            _ => return Err(wrong()),
        };
        let parsed: Authority = authority.to_ascii_lowercase().parse().map_err(|_| wrong())?;
        if parsed.as_str().contains('@') || parsed.host().is_empty() {
            return Err(wrong());
        }
        Ok(Self { encrypted, host: parsed.host().to_owned(), authority: parsed.as_str().to_owned() })
    }

    /// The host, in lower case.
    #[must_use]
    pub fn host(&self) -> &str {
        &self.host
    }

    fn text(&self) -> String {
        format!("{}://{}", if self.encrypted { "https" } else { "http" }, self.authority)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_base_path_is_plain_or_refused() {
        for (text, path) in [("", ""), ("/", ""), ("/shop", "/shop"), ("/a/b-c.d", "/a/b-c.d")] {
            assert_eq!(BasePath::parse(text).unwrap().as_str(), path);
        }
        for text in ["shop", "/shop/", "//shop", "/..", "/a/../b", "/a b", "/a?b", "/{a}", "/\"><script>"] {
            assert!(BasePath::parse(text).is_err(), "{text}");
        }
    }

    #[test]
    fn an_origin_has_a_scheme_and_a_host_and_no_path() {
        assert!(Origin::parse("https://Shop.example").is_ok_and(|origin| origin.encrypted && origin.host == "shop.example"));
        for text in ["shop.example", "ftp://shop.example", "https://", "https://shop.example/path", "https://me@shop.example"] {
            assert!(Origin::parse(text).is_err(), "{text}");
        }
    }
}
