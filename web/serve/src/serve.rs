//! Serves a built page to this machine, and to no other.
use std::fs;
use std::io::{self, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::path::Path;

use axum::extract::Request;
use axum::http::StatusCode;
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use axum::{Router, middleware};
use tower_http::services::ServeDir;

use crate::connections::{self, PATIENCE, Patience};
use crate::headers;
use crate::trouble::Trouble;

const FIRST_PORT: u16 = 8080;
const PORTS_TRIED: u16 = 100;
/// Bytes of a path; a longer one may hold a name that the file system cannot even look for.
const LONGEST_PATH: usize = 255;

/// Serves `folder` until the program is ended. `port` is exactly that port, 0 being any free one; `None` is the first free
/// one from 8080 on. Prints the address once it answers.
pub fn serve(folder: &Path, port: Option<u16>) -> Result<(), Trouble> {
    check(folder)?;
    let (listener, address) = listen(port)?;
    println!("Risewright stands at http://{address}/ (Ctrl+C ends it)");
    io::stdout().flush().map_err(|reason| Trouble::new(format!("could not tell the address: {reason}.")))?;
    run(listener, folder, PATIENCE)
}

/// Serves a folder to whoever connects; it only ends in trouble.
pub fn run(listener: TcpListener, folder: &Path, patience: Patience) -> Result<(), Trouble> {
    let cannot = |reason: io::Error| Trouble::new(format!("could not start the server: {reason}."));
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().map_err(cannot)?;
    runtime.block_on(async {
        let listener = tokio::net::TcpListener::from_std(listener).map_err(cannot)?;
        match connections::serve(listener, router(folder), patience).await {}
    })
}

/// Whether a folder holds a page and nothing that leads out of it.
pub fn check(folder: &Path) -> Result<(), Trouble> {
    if !folder.join("index.html").is_file() {
        return Err(Trouble::new(format!(
            "{} holds no built page: leave --no-build away.",
            folder.display()
        )));
    }
    check_inside(folder)
}

fn check_inside(folder: &Path) -> Result<(), Trouble> {
    for entry in fs::read_dir(folder).map_err(Trouble::with_path("read", folder))? {
        let entry = entry.map_err(Trouble::with_path("read", folder))?;
        let (path, kind) = (entry.path(), entry.file_type());
        let kind = kind.map_err(Trouble::with_path("read", &path))?;
        if kind.is_symlink() {
            return Err(Trouble::new(format!(
                "{} is a link and might lead out of the folder: serve a folder that --build-only wrote.",
                path.display()
            )));
        }
        if kind.is_dir() {
            check_inside(&path)?;
        }
    }
    Ok(())
}

/// Takes a port of this machine that no other can reach.
pub fn listen(port: Option<u16>) -> Result<(TcpListener, SocketAddr), Trouble> {
    let bind = |port: u16| {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))?;
        listener.set_nonblocking(true)?;
        let address = listener.local_addr()?;
        io::Result::Ok((listener, address))
    };
    match port {
        Some(port) => {
            bind(port).map_err(|reason| Trouble::new(format!("could not serve on port {port}: {reason}.")))
        }
        None => (FIRST_PORT..FIRST_PORT + PORTS_TRIED).find_map(|port| bind(port).ok()).ok_or_else(|| {
            let last = FIRST_PORT + PORTS_TRIED - 1;
            Trouble::new(format!(
                "every port from {FIRST_PORT} to {last} is taken: name a free one with --port."
            ))
        }),
    }
}

/// The files of `folder`, Brotli or gzip where the browser takes it, with the page's headers.
fn router(folder: &Path) -> Router {
    let files = ServeDir::new(folder).precompressed_br().precompressed_gzip();
    Router::new()
        .fallback_service(files)
        .layer(middleware::from_fn(refuse_long))
        .layer(middleware::from_fn(headers::add))
}

async fn refuse_long(request: Request, next: Next) -> Response {
    if request.uri().path().len() > LONGEST_PATH {
        return StatusCode::URI_TOO_LONG.into_response();
    }
    next.run(request).await
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop")]
    use axum::body::{Body, to_bytes};
    use axum::http::{Request, Response};
    use tower::ServiceExt;

    use super::*;
    use crate::compress;
    use crate::scratch::Scratch;

    /// A page in a folder with a secret beside it, asked for `path` with a browser's `accept-encoding`.
    fn ask(method: &str, path: &str, encodings: &str) -> Response<Body> {
        let scratch = Scratch::new();
        let dist = scratch.join("dist");
        fs::create_dir_all(dist.join("v1")).unwrap();
        fs::write(scratch.join("secret.txt"), "secret").unwrap();
        for (name, contents) in
            [("index.html", "<p>page</p>"), ("v1/page_bg.wasm", "wasm"), ("v1/start.js", "js")]
        {
            fs::write(dist.join(name), contents).unwrap();
            fs::write(dist.join(format!("{name}.br")), compress::brotli(contents.as_bytes()).unwrap())
                .unwrap();
            fs::write(dist.join(format!("{name}.gz")), compress::gzip(contents.as_bytes()).unwrap()).unwrap();
        }
        let request = Request::builder()
            .method(method)
            .uri(path)
            .header("accept-encoding", encodings)
            .body(Body::empty());
        let runtime = tokio::runtime::Builder::new_current_thread().build().unwrap();
        runtime.block_on(async {
            let response = router(&dist).oneshot(request.unwrap()).await.unwrap();
            let (head, body) = response.into_parts();
            // Read while the folder is still there.
            let body = to_bytes(body, 1 << 20).await.unwrap();
            Response::from_parts(head, Body::from(body))
        })
    }

    fn header(response: &Response<Body>, name: &str) -> String {
        response.headers().get(name).map(|value| value.to_str().unwrap().to_owned()).unwrap_or_default()
    }

    #[test]
    fn the_page_stands_at_the_root() {
        let response = ask("GET", "/", "");
        assert_eq!(response.status(), StatusCode::OK);
        assert!(header(&response, "content-type").starts_with("text/html"));
        assert_eq!(header(&response, "content-encoding"), "");
        assert_eq!(header(&response, "cache-control"), "no-cache");
    }

    #[test]
    fn types_are_what_browsers_insist_on() {
        assert_eq!(header(&ask("GET", "/v1/page_bg.wasm", "br"), "content-type"), "application/wasm");
        assert_eq!(header(&ask("GET", "/v1/start.js", "br"), "content-type"), "text/javascript");
    }

    #[test]
    fn the_smallest_form_that_is_accepted_is_sent() {
        assert_eq!(header(&ask("GET", "/v1/start.js", "gzip, deflate, br"), "content-encoding"), "br");
        assert_eq!(header(&ask("GET", "/v1/start.js", "gzip"), "content-encoding"), "gzip");
        assert_eq!(header(&ask("GET", "/v1/start.js", "br;q=0, gzip"), "content-encoding"), "gzip");
        assert_eq!(header(&ask("GET", "/v1/start.js", "br;q=0, gzip;q=0"), "content-encoding"), "");
        assert_eq!(header(&ask("GET", "/v1/start.js", "identity"), "content-encoding"), "");
    }

    #[test]
    fn every_answer_carries_the_policy() {
        for path in ["/", "/v1/start.js", "/missing"] {
            let response = ask("GET", path, "br");
            assert_eq!(header(&response, "content-security-policy"), headers::POLICY, "{path}");
            assert_eq!(header(&response, "x-content-type-options"), "nosniff", "{path}");
            assert_eq!(header(&response, "referrer-policy"), "no-referrer", "{path}");
            assert_eq!(header(&response, "vary"), "accept-encoding", "{path}");
            assert_eq!(header(&response, "set-cookie"), "", "{path}");
        }
    }

    #[test]
    fn only_what_is_there_may_be_kept_for_ever() {
        assert!(header(&ask("GET", "/v1/start.js", "br"), "cache-control").contains("immutable"));
        assert_eq!(header(&ask("GET", "/v1/missing.js", "br"), "cache-control"), "no-cache");
    }

    #[test]
    fn nothing_outside_the_folder_is_served() {
        for path in [
            "/../secret.txt",
            "/v1/../../secret.txt",
            "/%2e%2e/secret.txt",
            "/..%2fsecret.txt",
            "/v1/..%2f..%2fsecret.txt",
            "/%2e%2e%5csecret.txt",
            "//secret.txt",
            "/etc/passwd",
        ] {
            assert_eq!(ask("GET", path, "").status(), StatusCode::NOT_FOUND, "{path}");
        }
    }

    #[test]
    fn nothing_can_be_written() {
        assert_eq!(ask("POST", "/index.html", "").status(), StatusCode::METHOD_NOT_ALLOWED);
    }

    #[test]
    fn a_taken_port_is_refused_when_named() {
        let (taken, address) = listen(Some(0)).unwrap();
        assert!(address.ip().is_loopback());
        let refusal = listen(Some(address.port())).unwrap_err().to_string();
        assert!(refusal.starts_with(&format!("could not serve on port {}", address.port())), "{refusal}");
        drop(taken);
    }

    #[test]
    fn an_empty_folder_is_no_page() {
        let scratch = Scratch::new();
        assert!(serve(&scratch, Some(0)).unwrap_err().to_string().contains("holds no built page"));
    }
}
