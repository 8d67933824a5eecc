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

/// The module of the page, and the one that works beside it: package, compiled file, and the name of the files made of it.
const MODULES: [(&str, &str, &str); 2] =
    [("risewright-web", "risewright-web", "page"), ("risewright-worker", "risewright_worker", "work")];

/// Compiles the modules and returns the folder with `page.js`, `page_bg.wasm`, `work.js`, `work_bg.wasm` and what they import. `trial`
/// brings in the failures on demand.
pub fn build(project: &Project, trial: bool) -> Result<PathBuf, Trouble> {
    ensure_target()?;
    compile(project, trial)?;
    let folder = project.target.join("glue");
    if folder.exists() {
        fs::remove_dir_all(&folder).map_err(Trouble::with_path("clear", &folder))?;
    }
    for (_, file, name) in MODULES {
        bind(&project.target.join(TARGET).join(PROFILE).join(file).with_extension("wasm"), name, &folder)?;
    }
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

fn compile(project: &Project, trial: bool) -> Result<(), Trouble> {
    println!("Compiling the page; the first time takes a few minutes.");
    let status = Command::new(tool("CARGO", "cargo"))
        .arg("build")
        .args(MODULES.into_iter().flat_map(|(package, ..)| ["--package", package]))
        .args(if trial { ["--features", "risewright-web/trial"].as_slice() } else { &[] })
        .args(["--target", TARGET, "--profile", PROFILE, "--target-dir"])
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

fn bind(module: &Path, name: &str, folder: &Path) -> Result<(), Trouble> {
    let made = Bindgen::new().input_path(module).out_name(name).web(true).and_then(|bindgen| {
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
