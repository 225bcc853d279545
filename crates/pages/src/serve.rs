//! Opening the pages to a network: one task a connection, limits on how many and how slow, and an end that lets everybody finish.

use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::extract::Request;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::{GracefulShutdown, Watcher};
use hyper_util::service::TowerToHyperService;
use tokio::io::{AsyncRead, AsyncWrite};
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::Semaphore;
use tokio_rustls::TlsAcceptor;
use tower::ServiceExt;

use crate::app::DRAWN_AT_ONCE;
use crate::{App, router};

/// Who is at the other end of a connection.
#[derive(Debug, Clone, Copy)]
pub struct Peer(pub SocketAddr);

/// More connections than a shop has browsers; whoever comes after waits.
const CONNECTIONS: usize = 256;
/// Those who draw have a thread each, and whoever compares a passphrase one more, so that nobody at the door waits for a page.
const THREADS: usize = DRAWN_AT_ONCE + 1;
/// Somebody who says nothing for so long is sent away.
const SILENCE: Duration = Duration::from_secs(15);
/// How long those who are being answered have at the end.
const FAREWELL: Duration = Duration::from_secs(10);

/// Why the pages are not open.
#[derive(Debug, thiserror::Error)]
pub enum ServeError {
    /// The address is not to be had.
    #[error("cannot listen on {address}: {error}; give another with `--address`")]
    Address {
        /// The address.
        address: SocketAddr,
        /// What the machine says.
        error: std::io::Error,
    },
    /// Nothing can be started.
    #[error("the server cannot be started: {0}")]
    Start(std::io::Error),
}

/// Opens the pages, tells `announce` their address, and returns when the program is asked to end.
///
/// # Errors
/// [`ServeError`].
pub fn serve(app: &Arc<App>, announce: impl FnOnce(&str)) -> Result<(), ServeError> {
    open(app, announce, asked_to_end)
}

/// The same, until `end` comes.
///
/// # Errors
/// [`ServeError`].
pub fn serve_until(app: &Arc<App>, announce: impl FnOnce(&str), end: impl Future<Output = ()>) -> Result<(), ServeError> {
    open(app, announce, || end)
}

fn open<F: Future<Output = ()>>(app: &Arc<App>, announce: impl FnOnce(&str), end: impl FnOnce() -> F) -> Result<(), ServeError> {
    let mut threads = tokio::runtime::Builder::new_multi_thread();
    let runtime = threads.enable_all().max_blocking_threads(THREADS).build().map_err(ServeError::Start)?;
    runtime.block_on(async {
        let address = app.settings.address;
        let listener = TcpListener::bind(address).await.map_err(|error| ServeError::Address { address, error })?;
        // Whoever reads the address may ask for the end at once, so that is listened for first.
        let end = end();
        announce(&shown(app, listener.local_addr().unwrap_or(address)));
        run(app, listener, end).await;
        Ok(())
    })
}

/// The address to type into a browser.
fn shown(app: &App, address: SocketAddr) -> String {
    let scheme = if app.settings.identity.is_some() { "https" } else { "http" };
    format!("{scheme}://{address}{}/", app.settings.base_path.as_str())
}

async fn run(app: &Arc<App>, listener: TcpListener, end: impl Future<Output = ()>) {
    let router = router(Arc::clone(app));
    let acceptor = app.settings.identity.as_ref().map(|identity| TlsAcceptor::from(Arc::clone(&identity.config)));
    let farewell = GracefulShutdown::new();
    let room = Arc::new(Semaphore::new(CONNECTIONS));
    tokio::pin!(end);
    loop {
        let next = async {
            let place = Arc::clone(&room).acquire_owned().await;
            (place, listener.accept().await)
        };
        let (place, accepted) = tokio::select! {
            () = &mut end => break,
            next = next => next,
        };
        let (stream, peer) = match accepted {
            Ok(accepted) => accepted,
            Err(error) => {
                // Out of file handles, mostly: wait until somebody leaves.
                app.note(&format!("a connection could not be taken: {error}"));
                tokio::time::sleep(Duration::from_millis(200)).await;
                continue;
            }
        };
        let (router, acceptor, watcher) = (router.clone(), acceptor.clone(), farewell.watcher());
        tokio::spawn(async move {
            greet(stream, peer, acceptor, router, watcher).await;
            drop(place);
        });
    }
    drop(listener);
    // Whoever has not been answered by then is hung up on.
    let _ = tokio::time::timeout(FAREWELL, farewell.shutdown()).await;
}

async fn greet(stream: TcpStream, peer: SocketAddr, acceptor: Option<TlsAcceptor>, router: Router, watcher: Watcher) {
    match acceptor {
        None => speak(stream, peer, router, watcher).await,
        Some(acceptor) => {
            if let Ok(Ok(stream)) = tokio::time::timeout(SILENCE, acceptor.accept(stream)).await {
                speak(stream, peer, router, watcher).await;
            }
        }
    }
}

async fn speak<S>(stream: S, peer: SocketAddr, router: Router, watcher: Watcher)
where
    S: AsyncRead + AsyncWrite + Unpin + Send + 'static,
{
    let service = router.map_request(move |request: hyper::Request<hyper::body::Incoming>| {
        let mut request: Request = request.map(axum::body::Body::new);
        request.extensions_mut().insert(Peer(peer));
        request
    });
    let connection = http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(SILENCE)
        .max_buf_size(32 << 10)
        .serve_connection(TokioIo::new(stream), TowerToHyperService::new(service));
    // That somebody hung up is no news.
    let _ = watcher.watch(connection).await;
}

/// Comes when the program is asked to end: by Ctrl-C, or by the signal of a service manager. It is listened for from the call on.
#[cfg(unix)]
fn asked_to_end() -> impl Future<Output = ()> {
    use tokio::signal::unix::{Signal, SignalKind, signal};
    async fn heard(signal: std::io::Result<Signal>) {
        match signal {
            Ok(mut signal) => {
                signal.recv().await;
            }
            Err(_) => std::future::pending().await,
        }
    }
    let (interrupted, ended) = (signal(SignalKind::interrupt()), signal(SignalKind::terminate()));
    async {
        tokio::select! {
            () = heard(interrupted) => {}
            () = heard(ended) => {}
        }
    }
}

#[cfg(not(unix))]
async fn asked_to_end() {
    if tokio::signal::ctrl_c().await.is_err() {
        std::future::pending::<()>().await;
    }
}
