//! The pages over a real connection, plain and encrypted.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

#[expect(dead_code, reason = "the tests of the guard use the rest of it")]
mod common;

use std::net::SocketAddr;
use std::sync::{Arc, mpsc};

use common::{app, example, local};
use pages::{Identity, Settings, serve_until};
use tokio::io::{AsyncRead, AsyncReadExt, AsyncWrite, AsyncWriteExt};
use tokio::net::TcpStream;
use tokio::sync::oneshot;
use tokio_rustls::TlsConnector;
use tokio_rustls::rustls::pki_types::pem::PemObject;
use tokio_rustls::rustls::pki_types::{CertificateDer, ServerName};
use tokio_rustls::rustls::{ClientConfig, RootCertStore, crypto::ring};

/// A server on a free port: its address, and what ends it.
fn opened(settings: Settings) -> (String, oneshot::Sender<()>, std::thread::JoinHandle<()>) {
    let (tell, told) = mpsc::channel();
    let (end, ended) = oneshot::channel::<()>();
    let app = app(Settings { address: "127.0.0.1:0".parse().unwrap(), ..settings }, &example("first-lathe.toml"));
    let thread = std::thread::spawn(move || {
        let end = async { ended.await.unwrap_or_default() };
        serve_until(&app, |address| tell.send(address.to_owned()).unwrap(), end).unwrap();
    });
    (told.recv().unwrap(), end, thread)
}

async fn ask(mut stream: impl AsyncRead + AsyncWrite + Unpin, host: &str) -> String {
    stream.write_all(format!("GET /health HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n").as_bytes()).await.unwrap();
    let mut text = String::new();
    stream.read_to_string(&mut text).await.unwrap_or_default();
    text
}

fn socket(address: &str) -> SocketAddr {
    address.split("//").nth(1).unwrap().trim_end_matches('/').parse().unwrap()
}

#[tokio::test]
async fn it_answers_until_it_is_ended() {
    let (address, end, thread) = opened(local());
    assert!(address.starts_with("http://127.0.0.1:"));
    let at = socket(&address);
    let answer = ask(TcpStream::connect(at).await.unwrap(), &at.to_string()).await;
    assert!(answer.starts_with("HTTP/1.1 200") && answer.ends_with("ok\n"), "{answer}");
    end.send(()).unwrap();
    thread.join().unwrap();
    assert!(TcpStream::connect(at).await.is_err());
}

#[tokio::test]
async fn with_a_certificate_it_speaks_to_whoever_trusts_it_and_to_nobody_else() {
    // TLS as rustls, a general-purpose library, understands it at the other end.
    let (certificate, key) = Identity::make(&["192.168.1.7".to_owned(), "garage.example".to_owned(), "0.0.0.0".to_owned()]).unwrap();
    let identity = Identity::from_pem(certificate.as_bytes(), key.as_bytes()).unwrap();
    assert_eq!(identity.fingerprint().len(), 32 * 3 - 1);
    let (address, end, thread) = opened(Settings { identity: Some(identity), ..local() });
    assert!(address.starts_with("https://"));
    let at = socket(&address);
    let trusting = |roots| {
        let config = ClientConfig::builder_with_provider(Arc::new(ring::default_provider())).with_safe_default_protocol_versions().unwrap();
        TlsConnector::from(Arc::new(config.with_root_certificates(roots).with_no_client_auth()))
    };
    let mut roots = RootCertStore::empty();
    roots.add(CertificateDer::from_pem_slice(certificate.as_bytes()).unwrap()).unwrap();
    for name in ["localhost", "127.0.0.1", "192.168.1.7", "garage.example"] {
        let stream = TcpStream::connect(at).await.unwrap();
        let stream = trusting(roots.clone()).connect(ServerName::try_from(name).unwrap(), stream).await.unwrap();
        assert!(ask(stream, &at.to_string()).await.contains("200 OK"), "{name}");
    }
    let stream = TcpStream::connect(at).await.unwrap();
    assert!(trusting(RootCertStore::empty()).connect(ServerName::try_from("localhost").unwrap(), stream).await.is_err());
    let plain = ask(TcpStream::connect(at).await.unwrap(), &at.to_string()).await;
    assert!(!plain.contains("200 OK"));
    end.send(()).unwrap();
    thread.join().unwrap();
}

#[test]
fn a_certificate_without_its_key_is_refused() {
    let ((certificate, _), (_, other)) = (Identity::make(&[]).unwrap(), Identity::make(&[]).unwrap());
    assert!(Identity::from_pem(certificate.as_bytes(), other.as_bytes()).is_err());
    assert!(Identity::from_pem(b"", other.as_bytes()).is_err());
    assert!(Identity::from_pem(certificate.as_bytes(), b"no key").is_err());
}
