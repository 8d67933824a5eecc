//! The service worker's list of files.

/// The service worker's source with its version and its list of files filled in. The names are of our own making: letters,
/// digits, dots, hyphens and slashes, which need no escaping.
pub fn fill_in<'a>(source: &str, version: &str, files: impl Iterator<Item = &'a str>) -> String {
    let list: Vec<String> = files.map(|file| format!("\"{file}\"")).collect();
    source.replace("__VERSION__", version).replace("\"__FILES__\"", &list.join(", "))
}

#[cfg(test)]
mod tests {
    use super::fill_in;

    #[test]
    fn version_and_files_are_filled_in() {
        let source = "const V = \"__VERSION__\"; const F = [\"__FILES__\"];";
        let filled = fill_in(source, "a1", ["index.html", "a1/page.js"].into_iter());
        assert_eq!(filled, "const V = \"a1\"; const F = [\"index.html\", \"a1/page.js\"];");
    }
}
