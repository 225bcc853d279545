//! The certificate: the user's own, or one made here.

use std::net::IpAddr;
use std::sync::Arc;

use rcgen::{CertificateParams, KeyPair};
use sha2::{Digest, Sha256};
use tokio_rustls::rustls::ServerConfig;
use tokio_rustls::rustls::crypto::ring;
use tokio_rustls::rustls::pki_types::pem::PemObject;
use tokio_rustls::rustls::pki_types::{CertificateDer, PrivateKeyDer};

/// A certificate and its key, as the server needs them.
#[derive(Clone)]
pub struct Identity {
    pub(crate) config: Arc<ServerConfig>,
    fingerprint: String,
}

/// Why a certificate cannot be used.
#[derive(Debug, thiserror::Error)]
pub enum TlsError {
    /// The certificate file.
    #[error("the certificate cannot be read: {0}; give a file in PEM form, with the whole chain")]
    Certificate(String),
    /// The key file.
    #[error("the key cannot be read: {0}; give a file in PEM form, without a passphrase of its own")]
    Key(String),
    /// They do not belong together, or nobody accepts such.
    #[error("the certificate and its key cannot be used: {0}")]
    Pair(#[from] tokio_rustls::rustls::Error),
    /// None could be made.
    #[error("no certificate could be made: {0}")]
    Made(#[from] rcgen::Error),
}

impl Identity {
    /// From the two files, in PEM form.
    ///
    /// # Errors
    /// [`TlsError`].
    pub fn from_pem(certificate: &[u8], key: &[u8]) -> Result<Self, TlsError> {
        let chain: Vec<CertificateDer<'static>> = CertificateDer::pem_slice_iter(certificate)
            .collect::<Result<_, _>>()
            .map_err(|error| TlsError::Certificate(error.to_string()))?;
        let first = chain.first().ok_or_else(|| TlsError::Certificate("there is none in it".to_owned()))?;
        let fingerprint = Sha256::digest(first).iter().map(|byte| format!("{byte:02X}")).collect::<Vec<_>>().join(":");
        let key = PrivateKeyDer::from_pem_slice(key).map_err(|error| TlsError::Key(error.to_string()))?;
        let config = ServerConfig::builder_with_provider(Arc::new(ring::default_provider()))
            .with_safe_default_protocol_versions()?
            .with_no_client_auth()
            .with_single_cert(chain, key)?;
        Ok(Self { config: Arc::new(config), fingerprint })
    }

    /// Makes a certificate and a key in PEM form, for these names and addresses. Nobody vouches for it; whoever meets it for the first time
    /// compares the fingerprint.
    ///
    /// # Errors
    /// [`TlsError::Made`].
    pub fn make(names: &[String]) -> Result<(String, String), TlsError> {
        let key = KeyPair::generate()?;
        let mut names: Vec<String> =
            names.iter().filter(|name| name.parse::<IpAddr>().is_ok_and(|ip| !ip.is_unspecified()) || is_name(name)).cloned().collect();
        names.extend(["localhost", "127.0.0.1", "::1"].map(str::to_owned));
        names.dedup();
        let mut params = CertificateParams::new(names)?;
        params.distinguished_name.push(rcgen::DnType::CommonName, "Gallipot, made on this machine");
        Ok((params.self_signed(&key)?.pem(), key.serialize_pem()))
    }

    /// The SHA-256 fingerprint of the certificate, as a browser shows it.
    #[must_use]
    pub fn fingerprint(&self) -> &str {
        &self.fingerprint
    }
}

fn is_name(text: &str) -> bool {
    text.parse::<IpAddr>().is_err() && !text.is_empty()
}

impl std::fmt::Debug for Identity {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Identity").field("fingerprint", &self.fingerprint).finish_non_exhaustive()
    }
}
