//! Compiles the page to WebAssembly and makes the JavaScript that loads it.
use std::env;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use wasm_bindgen_cli_support::Bindgen;

use crate::project::Project;
use crate::trouble::Trouble;

const TARGET: &str = "wasm32-unknown-unknown";
const PROFILE: &str = "wasm-release";
const PACKAGE: &str = "risewright-web";

/// Compiles the page and returns the folder with `page.js`, `page_bg.wasm` and what they import.
pub fn build(project: &Project) -> Result<PathBuf, Trouble> {
    ensure_target()?;
    compile(project)?;
    let module = project.target.join(TARGET).join(PROFILE).join(PACKAGE).with_extension("wasm");
    let folder = project.target.join("glue");
    if folder.exists() {
        fs::remove_dir_all(&folder).map_err(Trouble::with_path("clear", &folder))?;
    }
    bind(&module, &folder)?;
    Ok(folder)
}

/// The tool that cargo itself was told to use, else the one on the path.
fn tool(variable: &str, name: &str) -> OsString {
    env::var_os(variable).unwrap_or_else(|| name.into())
}

fn target_is_installed() -> Result<bool, Trouble> {
    let answer = Command::new(tool("RUSTC", "rustc"))
        .args(["--print", "target-libdir", "--target", TARGET])
        .output()
        .map_err(|reason| Trouble::new(format!("could not run rustc: {reason}.")))?;
    Ok(answer.status.success() && Path::new(String::from_utf8_lossy(&answer.stdout).trim()).is_dir())
}

fn ensure_target() -> Result<(), Trouble> {
    if target_is_installed()? {
        return Ok(());
    }
    println!("Installing the compiler's target {TARGET}, once.");
    let status = Command::new("rustup").args(["target", "add", TARGET]).status().map_err(|_| {
        Trouble::new(format!(
            "the compiler's target {TARGET} is missing, and so is rustup, which would install it: \
             install rustup, or that target with what brought the compiler."
        ))
    })?;
    if status.success() {
        Ok(())
    } else {
        Err(Trouble::new(format!(
            "the compiler's target {TARGET} is missing and `rustup target add {TARGET}` failed; its reason stands above."
        )))
    }
}

fn compile(project: &Project) -> Result<(), Trouble> {
    println!("Compiling the page; the first time takes a few minutes.");
    let status = Command::new(tool("CARGO", "cargo"))
        .args(["build", "--package", PACKAGE, "--target", TARGET, "--profile", PROFILE, "--target-dir"])
        .arg(&project.target)
        .current_dir(&project.root)
        .env("CARGO_ENCODED_RUSTFLAGS", flags(project))
        .stdin(Stdio::null())
        .status()
        .map_err(|reason| Trouble::new(format!("could not run cargo: {reason}.")))?;
    if status.success() {
        Ok(())
    } else {
        Err(Trouble::new("the page does not compile; the compiler's reason stands above."))
    }
}

/// Keeps the folders of this machine out of the published module, so that the same sources give the same bytes elsewhere, and
/// lets Leptos erase the types of views, which makes the module some 5 % smaller.
fn flags(project: &Project) -> OsString {
    let home = env::var_os("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| env::home_dir().map(|home| home.join(".cargo")));
    let mut flags = OsString::from("--cfg=erase_components");
    for (folder, name) in
        home.iter().map(|home| (home.as_path(), "cargo")).chain([(project.root.as_path(), "risewright")])
    {
        flags.push("\u{1f}");
        flags.push("--remap-path-prefix=");
        flags.push(folder);
        flags.push("=");
        flags.push(name);
    }
    flags
}

fn bind(module: &Path, folder: &Path) -> Result<(), Trouble> {
    let made = Bindgen::new().input_path(module).out_name("page").web(true).and_then(|bindgen| {
        bindgen
            .typescript(false)
            // Without this the start function does not know where the module stands.
            .omit_default_module_path(false)
            .remove_name_section(true)
            .remove_producers_section(true)
            .generate(folder)
    });
    made.map_err(|reason| {
        Trouble::new(format!("could not make the JavaScript for {}: {reason:#}.", module.display()))
    })
}
