//! A folder for one test, removed at its end.
use std::env;
use std::fs;
use std::ops::Deref;
use std::path::{Path, PathBuf};
use std::process;
use std::sync::atomic::{AtomicUsize, Ordering};

static MADE: AtomicUsize = AtomicUsize::new(0);

/// An empty folder of its own below the system's folder for passing files.
pub struct Scratch(PathBuf);

impl Scratch {
    /// Makes the folder.
    #[allow(clippy::unwrap_used, reason = "only tests make one, and a test may stop")]
    pub fn new() -> Self {
        let number = MADE.fetch_add(1, Ordering::Relaxed);
        let path = env::temp_dir().join(format!("risewright-serve-{}-{number}", process::id()));
        fs::create_dir_all(&path).unwrap();
        Self(path)
    }
}

impl Deref for Scratch {
    type Target = Path;

    fn deref(&self) -> &Path {
        &self.0
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        fs::remove_dir_all(&self.0).ok();
    }
}
