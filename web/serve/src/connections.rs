//! Takes connections and lets go of those that dawdle, so that nobody keeps the page from others.
use std::convert::Infallible;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::Semaphore;
use tokio::time::{sleep, timeout};

/// How long people may keep a connection.
#[derive(Clone, Copy, Debug)]
pub struct Patience {
    /// For the head of a request, and between two of them.
    pub head: Duration,
    /// For everything.
    pub whole: Duration,
    /// Connections at once; further ones wait until another is let go.
    pub connections: usize,
}

/// A browser opens six connections; the slowest telephone has the whole page in half a minute.
pub const PATIENCE: Patience =
    Patience { head: Duration::from_secs(10), whole: Duration::from_secs(120), connections: 256 };

/// After a connection could not be taken, as when the system has no more to give.
const PAUSE: Duration = Duration::from_millis(50);

/// Serves for ever.
pub async fn serve(listener: TcpListener, router: Router, patience: Patience) -> Infallible {
    let room = Arc::new(Semaphore::new(patience.connections));
    loop {
        // Never closed, so that there is always a place sooner or later.
        let place = Arc::clone(&room).acquire_owned().await.ok();
        match listener.accept().await {
            Ok((stream, _)) => {
                let router = router.clone();
                tokio::spawn(async move {
                    let _place = place;
                    // Whoever breaks off or is cut off hears nothing more.
                    let _ = timeout(patience.whole, attend(stream, router, patience)).await;
                });
            }
            Err(_) => sleep(PAUSE).await,
        }
    }
}

async fn attend(stream: TcpStream, router: Router, patience: Patience) {
    let service = TowerToHyperService::new(router);
    // An error here is the other side's: a head that is none, a connection that broke.
    let _ = http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(patience.head)
        .serve_connection(TokioIo::new(stream), service)
        .await;
}
