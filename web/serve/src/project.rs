//! Where the project stands on this machine.
use std::env;
use std::path::{Path, PathBuf};

/// The folders that a build reads and writes.
#[derive(Debug, Clone)]
pub struct Project {
    /// The folder that holds `index.html` and the workspace's `Cargo.toml`.
    pub root: PathBuf,
    /// The page's own target folder: its flags differ from this program's, and one build must not undo the other.
    pub target: PathBuf,
}

impl Project {
    /// The project that this program belongs to: as cargo names it when cargo runs the program, else where it was compiled.
    pub fn locate() -> Self {
        let package = env::var_os("CARGO_MANIFEST_DIR")
            .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
        let root = package.ancestors().nth(2).unwrap_or(Path::new(".")).to_path_buf();
        let target =
            env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), PathBuf::from).join("page");
        Self { root, target }
    }

    /// A folder or file of the page's sources.
    pub fn web(&self, name: &str) -> PathBuf {
        self.root.join("web").join(name)
    }
}
