//! The project's own source files, read as a compiler's first step reads them: enough to see who uses whom.
use std::fs;
use std::ops::Range;
use std::path::{Path, PathBuf};

mod blank;
mod paths;

pub use blank::without_comments_and_strings;
pub use paths::{Reference, references};

/// Folders that hold what tools made, not what people wrote.
const MADE: [&str; 5] = ["node_modules", "target", "dist", "shots", "reports"];

/// One source file.
pub struct Source {
    /// Path below the project's root, with `/` between folders.
    pub path: String,
    /// All of it.
    pub text: String,
}

impl Source {
    /// A file made up for a test.
    pub fn made_up(path: &str, text: &str) -> Self {
        Self { path: path.to_owned(), text: text.to_owned() }
    }

    /// Its module path in the crate whose sources stand in `folder` (as `core/src/`): none for the crate's root, or for a
    /// file that stands elsewhere or is no Rust.
    pub fn module(&self, folder: &str) -> Option<Vec<String>> {
        let inner = self.path.strip_prefix(folder)?.strip_suffix(".rs")?;
        let inner = inner.strip_suffix("/mod").unwrap_or(inner);
        if matches!(inner, "lib" | "main") {
            None
        } else {
            Some(inner.split('/').map(str::to_owned).collect())
        }
    }

    /// Every path in it that begins at the crate's root, or leads there by `super`, as written from the root.
    pub fn crate_paths(&self, folder: &str) -> Vec<Reference> {
        let module = self.module(folder).unwrap_or_default();
        references(&without_comments_and_strings(&self.text), &module)
            .into_iter()
            .filter(|reference| reference.path.first().is_some_and(|root| root == "crate"))
            .collect()
    }

    /// The numbers of the lines that hold `word`, from 1.
    pub fn lines_with(&self, word: &str) -> Vec<usize> {
        self.text.lines().zip(1..).filter(|(line, _)| line.contains(word)).map(|(_, number)| number).collect()
    }
}

/// Every file below `folders` whose name ends in one of `endings`.
pub fn files(folders: &[&str], endings: &[&str]) -> Vec<Source> {
    let root = root();
    let mut found = Vec::new();
    for folder in folders {
        walk(&root.join(folder), &root, endings, &mut found);
    }
    found.sort_by(|one, other| one.path.cmp(&other.path));
    found
}

/// The project's root folder.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap().to_path_buf()
}

fn walk(folder: &Path, root: &Path, endings: &[&str], found: &mut Vec<Source>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if path.is_dir() {
            if !MADE.contains(&name.as_str()) && !name.starts_with('.') {
                walk(&path, root, endings, found);
            }
        } else if endings.iter().any(|ending| name.ends_with(&format!(".{ending}"))) {
            let text = fs::read_to_string(&path).unwrap();
            let path = path.strip_prefix(root).unwrap().to_string_lossy().replace('\\', "/");
            found.push(Source { path, text });
        }
    }
}

/// The line, from 1, on which `range` of `text` begins.
fn line_of(text: &str, range: &Range<usize>) -> usize {
    text[..range.start].matches('\n').count() + 1
}
