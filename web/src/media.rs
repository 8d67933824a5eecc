//! What the window is like: how wide, and what its reader has asked the system for.

/// Whether a media query holds at present.
pub fn matches(query: &str) -> bool {
    web_sys::window()
        .and_then(|window| window.match_media(query).ok().flatten())
        .is_some_and(|query| query.matches())
}

/// Whether the reader wants less motion.
pub fn less_motion() -> bool {
    matches("(prefers-reduced-motion: reduce)")
}
