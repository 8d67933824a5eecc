//! Puts the page together: every file that a static host needs, by its path.
use std::collections::BTreeMap;
use std::collections::hash_map::DefaultHasher;
use std::fs;
use std::hash::Hasher;
use std::path::Path;

use risewright::drawing::LANGUAGE;

use crate::first_view::first_view;
use crate::headers::POLICY;
use crate::offline;
use crate::project::Project;
use crate::style;
use crate::trouble::Trouble;
use crate::wasm;

/// Path below the page's address, with `/` between folders, to contents.
pub type Files = BTreeMap<String, Vec<u8>>;

/// Where the first view goes in `index.html`.
const FIRST_VIEW: &str = "<!-- first view -->";

/// Builds the page. The entry page, the icon and the service worker stand at the root; all else stands in a folder named
/// after the contents, so that a file's address never means two things. `trial` makes the page that fails on demand.
pub fn assemble(project: &Project, trial: bool) -> Result<Files, Trouble> {
    let mut parts = Files::new();
    collect(&wasm::build(project, trial)?, "", &mut parts)?;
    parts.insert("page.css".into(), format!("{LANGUAGE}{}", style::sheet(&project.web("style"))?).into());
    for script in ["first.js", "policy.js", "safe.js", "start.js", "worker.js"] {
        let path = project.web(script);
        parts.insert(script.into(), fs::read(&path).map_err(Trouble::with_path("read", &path))?);
    }
    let shell = read(&project.root.join("index.html"))?;
    let shell = shell.replace("__POLICY__", POLICY).replace(FIRST_VIEW, &first_view()?);
    let icon = read(&project.web("favicon.svg"))?;
    Ok(lay_out(parts, &shell, &icon, &read(&project.web("offline.js"))?))
}

fn read(path: &Path) -> Result<String, Trouble> {
    fs::read_to_string(path).map_err(Trouble::with_path("read", path))
}

/// Reads `folder` and all folders in it; `prefix` is empty or ends in `/`.
fn collect(folder: &Path, prefix: &str, files: &mut Files) -> Result<(), Trouble> {
    for entry in fs::read_dir(folder).map_err(Trouble::with_path("read", folder))? {
        let path = entry.map_err(Trouble::with_path("read", folder))?.path();
        let Some(name) = path.file_name().map(|name| name.to_string_lossy().into_owned()) else { continue };
        if path.is_dir() {
            collect(&path, &format!("{prefix}{name}/"), files)?;
        } else {
            files.insert(
                format!("{prefix}{name}"),
                fs::read(&path).map_err(Trouble::with_path("read", &path))?,
            );
        }
    }
    Ok(())
}

fn lay_out(parts: Files, shell: &str, icon: &str, worker: &str) -> Files {
    let version = version(&parts, [shell, icon, worker]);
    let mut files: Files =
        parts.into_iter().map(|(name, contents)| (format!("{version}/{name}"), contents)).collect();
    files.insert("index.html".into(), shell.replace("__VERSION__", &version).into());
    files.insert("favicon.svg".into(), icon.into());
    let worker = offline::fill_in(worker, &version, files.keys().map(String::as_str));
    files.insert("offline.js".into(), worker.into());
    files
}

/// Sixteen hexadecimal digits that change whenever a file does.
fn version(parts: &Files, others: [&str; 3]) -> String {
    let mut hasher = DefaultHasher::new();
    let parts = parts.iter().flat_map(|(name, contents)| [name.as_bytes(), contents]);
    for piece in parts.chain(others.map(str::as_bytes)) {
        hasher.write_usize(piece.len());
        hasher.write(piece);
    }
    format!("{:016x}", hasher.finish())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page(css: &str) -> Files {
        let parts = Files::from([("page.css".to_owned(), css.as_bytes().to_vec())]);
        lay_out(parts, "<link href=\"__VERSION__/page.css\">", "<svg/>", "[\"__VERSION__\", \"__FILES__\"]")
    }

    fn text(files: &Files, name: &str) -> String {
        files.get(name).map(|contents| String::from_utf8_lossy(contents).into_owned()).unwrap_or_default()
    }

    fn folder(files: &Files) -> String {
        files.keys().find_map(|name| name.strip_suffix("/page.css")).unwrap_or_default().to_owned()
    }

    #[test]
    fn entry_page_and_service_worker_name_the_folder_of_their_version() {
        let files = page("p{}");
        let version = folder(&files);
        assert_eq!(version.len(), 16);
        assert_eq!(text(&files, "index.html"), format!("<link href=\"{version}/page.css\">"));
        let list = format!("[\"{version}\", \"{version}/page.css\", \"favicon.svg\", \"index.html\"]");
        assert_eq!(text(&files, "offline.js"), list);
    }

    #[test]
    fn a_change_of_any_file_changes_the_version() {
        assert_eq!(folder(&page("p{}")), folder(&page("p{}")));
        assert_ne!(folder(&page("p{}")), folder(&page("q{}")));
    }

    #[test]
    fn no_byte_may_wander_between_files_unnoticed() {
        let split = |one: &str, two: &str| version(&Files::new(), [one, two, ""]);
        assert_ne!(split("ab", "c"), split("a", "bc"));
    }
}
