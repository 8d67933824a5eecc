//! The page.
fn main() {}
