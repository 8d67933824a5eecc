//! What the page may do and how long its files may be kept: the headers of every answer.
use axum::extract::Request;
use axum::http::header::{self, HeaderMap, HeaderName, HeaderValue};
use axum::middleware::Next;
use axum::response::Response;

/// The page's content policy: its own files, its own WebAssembly, pictures that it draws itself, and nothing inline. It
/// stands in the header and, for hosts that set none, in the page. Text becomes markup or a script's address only by the one
/// policy in `web/policy.js`. Embedding in other pages is allowed.
pub const POLICY: &str = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; img-src 'self' data: blob:; \
                          object-src 'none'; base-uri 'none'; form-action 'none'; \
                          require-trusted-types-for 'script'; trusted-types default";

const ALWAYS: [(HeaderName, &str); 4] = [
    (header::CONTENT_SECURITY_POLICY, POLICY),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::REFERRER_POLICY, "no-referrer"),
    (header::VARY, "accept-encoding"),
];

/// Adds the headers to the answer of `next`.
pub async fn add(request: Request, next: Next) -> Response {
    let lasting = in_a_folder(request.uri().path());
    let mut response = next.run(request).await;
    let success = response.status().is_success();
    set(response.headers_mut(), lasting && success);
    response
}

/// Files in a folder carry the version in their path and never change; those at the root do.
fn in_a_folder(path: &str) -> bool {
    path.trim_start_matches('/').contains('/')
}

fn set(headers: &mut HeaderMap, lasting: bool) {
    for (name, value) in ALWAYS {
        headers.insert(name, HeaderValue::from_static(value));
    }
    let keep = if lasting { "public, max-age=31536000, immutable" } else { "no-cache" };
    headers.insert(header::CACHE_CONTROL, HeaderValue::from_static(keep));
}

#[cfg(test)]
mod tests {
    use super::in_a_folder;

    #[test]
    fn only_files_of_a_version_last() {
        assert!(in_a_folder("/0f3a/page.js"));
        assert!(!in_a_folder("/"));
        assert!(!in_a_folder("/index.html"));
        assert!(!in_a_folder("/offline.js"));
    }
}
