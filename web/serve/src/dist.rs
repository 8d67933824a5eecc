//! Writes the page's files to a folder, with their compressed forms beside them.
use std::fmt;
use std::fs;
use std::path::{Path, PathBuf};

use crate::bundle::Files;
use crate::compress;
use crate::trouble::Trouble;

/// What was written.
#[derive(Debug)]
pub struct Written {
    files: usize,
    plain: usize,
    brotli: usize,
}

impl fmt::Display for Written {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let kilobytes = |bytes: usize| bytes as f64 / 1000.0;
        let (plain, brotli) = (kilobytes(self.plain), kilobytes(self.brotli));
        write!(formatter, "{} files, {plain:.1} kB, {brotli:.1} kB as Brotli", self.files)
    }
}

/// Makes `folder` hold exactly `files`. What stood there is replaced only when the new files are complete, and only when it
/// was an earlier page: any other folder with something in it is refused.
pub fn write(folder: &Path, files: &Files) -> Result<Written, Trouble> {
    refuse_foreign(folder)?;
    let fresh = beside(folder);
    if fresh.exists() {
        fs::remove_dir_all(&fresh).map_err(Trouble::with_path("clear", &fresh))?;
    }
    let mut written = Written { files: files.len(), plain: 0, brotli: 0 };
    for (name, contents) in files {
        let path = fresh.join(name);
        let brotli = compress::brotli(contents).map_err(Trouble::with_path("compress", &path))?;
        let gzip = compress::gzip(contents).map_err(Trouble::with_path("compress", &path))?;
        written.plain += contents.len();
        written.brotli += brotli.len();
        put(&path, contents)?;
        put(&with_ending(&path, ".br"), &brotli)?;
        put(&with_ending(&path, ".gz"), &gzip)?;
    }
    if folder.exists() {
        fs::remove_dir_all(folder).map_err(Trouble::with_path("clear", folder))?;
    }
    fs::rename(&fresh, folder).map_err(Trouble::with_path("write", folder))?;
    Ok(written)
}

fn refuse_foreign(folder: &Path) -> Result<(), Trouble> {
    if !folder.exists() || folder.join("offline.js").is_file() && folder.join("index.html").is_file() {
        return Ok(());
    }
    let mut entries = fs::read_dir(folder).map_err(Trouble::with_path("read", folder))?;
    if entries.next().is_none() {
        return Ok(());
    }
    Err(Trouble::new(format!(
        "{} holds something other than a built page and is left as it is: name a new or empty folder.",
        folder.display()
    )))
}

/// A folder on the same disk to write to until all is there.
fn beside(folder: &Path) -> PathBuf {
    with_ending(folder, ".part")
}

fn with_ending(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(ending);
    PathBuf::from(name)
}

fn put(path: &Path, contents: &[u8]) -> Result<(), Trouble> {
    if let Some(parent) = path.parent() {
        fs::create_dir_all(parent).map_err(Trouble::with_path("make", parent))?;
    }
    fs::write(path, contents).map_err(Trouble::with_path("write", path))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop")]
    use super::*;
    use crate::scratch::Scratch;

    fn page(version: &str) -> Files {
        ["index.html", "offline.js", &format!("{version}/page.css")]
            .into_iter()
            .map(|name| (name.to_owned(), name.as_bytes().to_vec()))
            .collect()
    }

    #[test]
    fn a_second_page_replaces_the_first_whole() {
        let scratch = Scratch::new();
        let folder = scratch.join("dist");
        write(&folder, &page("one")).unwrap();
        write(&folder, &page("two")).unwrap();
        assert!(!folder.join("one").exists());
        for ending in ["", ".br", ".gz"] {
            assert!(folder.join(format!("two/page.css{ending}")).is_file());
        }
        assert_eq!(fs::read_dir(&*scratch).unwrap().count(), 1);
    }

    #[test]
    fn a_folder_of_something_else_is_left_alone() {
        let scratch = Scratch::new();
        fs::write(scratch.join("letter.txt"), "dear").unwrap();
        let refusal = write(&scratch, &page("one")).unwrap_err().to_string();
        assert!(refusal.contains("left as it is"), "{refusal}");
        assert_eq!(fs::read_to_string(scratch.join("letter.txt")).unwrap(), "dear");
    }

    #[test]
    fn an_empty_folder_will_do() {
        let scratch = Scratch::new();
        write(&scratch, &page("one")).unwrap();
        assert!(scratch.join("index.html").is_file());
    }
}
