//! What the project leans on: licences, sources, versions that stand twice, and dependencies that nobody uses.
//!
//! Cargo tells what it would build for the two machines that `deny.toml` names; nothing is asked of a registry.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

#[allow(dead_code, reason = "the rest serves the rules for the code")]
mod source;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::process::Command;

use serde_json::Value;
use source::{files, root, without_comments_and_strings};

const REGISTRY: &str = "registry+https://github.com/rust-lang/crates.io-index";
const TARGETS: [&str; 2] = ["x86_64-unknown-linux-gnu", "wasm32-unknown-unknown"];

/// Crates that are there in several versions, how many, and who asks for an older one.
const TWICE: [(&str, usize, &str); 11] = [
    ("convert_case", 2, "config, which leptos reads its settings with, is one behind leptos_macro"),
    ("cpufeatures", 2, "sha2 of leptos' macros; proptest's random numbers"),
    ("getrandom", 2, "cut-optimizer-2d, tests only, is one behind"),
    ("glam", 5, "nalgebra, tests only, converts to each of the last four"),
    ("hashbrown", 2, "wasmparser of wasm-bindgen, build only, is one behind"),
    ("num-traits", 2, "enum_primitive of dxf, tests only, is the old name of the same"),
    ("rand", 2, "cut-optimizer-2d, tests only, is one behind proptest"),
    ("rand_core", 2, "as rand"),
    ("syn", 2, "macros that have not moved to 3; build only"),
    ("thiserror", 2, "gloo-net of leptos is one behind"),
    ("thiserror-impl", 2, "as thiserror"),
];

/// Direct dependencies that the sources do not name, and why they stand there.
const UNNAMED: [(&str, &str, &str); 0] = [];

fn text<'a>(value: &'a Value, key: &str) -> &'a str {
    value[key].as_str().unwrap_or_default()
}

/// What cargo knows of the packages of the two machines.
fn packages() -> Vec<Value> {
    let mut cargo = Command::new(env!("CARGO"));
    cargo.current_dir(root()).args(["metadata", "--offline", "--locked", "--format-version", "1"]);
    for target in TARGETS {
        cargo.args(["--filter-platform", target]);
    }
    let told = cargo.output().unwrap();
    assert!(
        told.status.success(),
        "cargo fetch --locked brings what is missing:\n{}",
        String::from_utf8_lossy(&told.stderr)
    );
    let all: Value = serde_json::from_slice(&told.stdout).unwrap();
    let list = all["packages"].as_array().unwrap().clone();
    assert!(list.len() > 100, "cargo told of {} packages only", list.len());
    list
}

/// The licences that `deny.toml` allows, read from its one `allow` line.
fn allowed() -> BTreeSet<String> {
    let rules = fs::read_to_string(root().join("deny.toml")).unwrap();
    let line = rules.lines().find_map(|line| line.strip_prefix("allow = ")).unwrap();
    serde_json::from_str::<Vec<String>>(line).unwrap().into_iter().collect()
}

/// Whether a licence expression (SPDX 2.3, annex D, and the older `/` for OR) can be met with the allowed licences.
fn is_met(expression: &str, allowed: &BTreeSet<String>) -> bool {
    let spaced = expression.replace('(', " ( ").replace(')', " ) ").replace('/', " OR ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let mut rest = words.as_slice();
    let met = any_of(&mut rest, allowed);
    met && rest.is_empty()
}

fn any_of(rest: &mut &[&str], allowed: &BTreeSet<String>) -> bool {
    let mut met = all_of(rest, allowed);
    while let ["OR", after @ ..] = *rest {
        *rest = after;
        met |= all_of(rest, allowed);
    }
    met
}

fn all_of(rest: &mut &[&str], allowed: &BTreeSet<String>) -> bool {
    let mut met = single(rest, allowed);
    while let ["AND", after @ ..] = *rest {
        *rest = after;
        met &= single(rest, allowed);
    }
    met
}

fn single(rest: &mut &[&str], allowed: &BTreeSet<String>) -> bool {
    match *rest {
        ["(", after @ ..] => {
            *rest = after;
            let met = any_of(rest, allowed);
            let closed = rest.first() == Some(&")");
            *rest = rest.get(1..).unwrap_or_default();
            met && closed
        }
        // An exception only adds to what the licence permits, but it is another licence in `deny.toml`.
        [name, "WITH", exception, after @ ..] => {
            *rest = after;
            allowed.contains(&format!("{name} WITH {exception}"))
        }
        [name, after @ ..] => {
            *rest = after;
            allowed.contains(*name)
        }
        [] => false,
    }
}

#[test]
fn expressions_are_read_as_they_are_meant() {
    let allowed = BTreeSet::from(["MIT".to_owned(), "Zlib".to_owned()]);
    for (expression, met) in [
        ("MIT", true),
        ("GPL-3.0-only", false),
        ("GPL-3.0-only OR MIT", true),
        ("GPL-3.0-only/MIT", true),
        ("MIT AND GPL-3.0-only", false),
        ("MIT AND (GPL-3.0-only OR Zlib)", true),
        ("(MIT OR GPL-3.0-only) AND ISC", false),
        // AND binds more tightly than OR.
        ("MIT OR Zlib AND ISC", true),
        ("ISC AND MIT OR ISC", false),
        ("Apache-2.0 WITH LLVM-exception OR MIT", true),
        ("MIT WITH LLVM-exception", false),
        ("(MIT", false),
        ("", false),
    ] {
        assert_eq!(is_met(expression, &allowed), met, "{expression}");
    }
}

#[test]
fn every_licence_is_allowed() {
    let allowed = allowed();
    let refused: Vec<String> = packages()
        .iter()
        .filter(|package| !is_met(text(package, "license"), &allowed))
        .map(|package| {
            format!("{} {}: {}", text(package, "name"), text(package, "version"), package["license"])
        })
        .collect();
    assert!(refused.is_empty(), "\n{}", refused.join("\n"));
}

#[test]
fn everything_comes_from_one_registry() {
    let members: BTreeSet<String> = packages()
        .iter()
        .filter(|package| package["source"] != REGISTRY)
        .map(|package| {
            assert!(package["source"].is_null(), "{}: {}", text(package, "name"), package["source"]);
            text(package, "name").to_owned()
        })
        .collect();
    let own = ["risewright", "risewright-serve", "risewright-tests", "risewright-web", "risewright-worker"];
    assert_eq!(members, own.map(str::to_owned).into(), "a package of a path is one of the workspace");
    // The lock holds a digest of every package that is fetched.
    let lock = fs::read_to_string(root().join("Cargo.lock")).unwrap();
    let fetched = lock.matches("\nsource = ").count();
    assert_eq!(lock.matches(&format!("\nsource = \"{REGISTRY}\"")).count(), fetched);
    assert_eq!(lock.matches("\nchecksum = ").count(), fetched);
}

#[test]
fn nothing_stands_twice_without_a_reason() {
    let mut versions: BTreeMap<String, usize> = BTreeMap::new();
    for package in packages() {
        *versions.entry(text(&package, "name").to_owned()).or_default() += 1;
    }
    versions.retain(|_, count| *count > 1);
    let known: BTreeMap<String, usize> =
        TWICE.into_iter().map(|(name, count, _)| (name.to_owned(), count)).collect();
    assert_eq!(versions, known, "found, and known with a reason");
}

#[test]
fn every_dependency_is_used() {
    let mut looked_at = 0;
    let mut unused = BTreeSet::new();
    for package in packages().iter().filter(|package| package["source"].is_null()) {
        let folder = Path::new(text(package, "manifest_path")).parent().unwrap();
        let folder = folder.strip_prefix(root().canonicalize().unwrap()).unwrap().to_str().unwrap();
        // A crate inside another's folder speaks for itself.
        let code: Vec<String> = files(&[folder], &["rs"])
            .iter()
            .filter(|file| folder != "web" || file.path.starts_with("web/src/"))
            .map(|file| without_comments_and_strings(&file.text))
            .collect();
        assert!(!code.is_empty(), "{folder} holds no sources");
        for dependency in package["dependencies"].as_array().unwrap() {
            looked_at += 1;
            let name = text(dependency, "name").replace('-', "_");
            if !code.iter().any(|code| names(code, &name)) {
                unused.insert((folder.to_owned(), text(dependency, "name").to_owned()));
            }
        }
    }
    let known = UNNAMED.iter().map(|(folder, name, _)| ((*folder).to_owned(), (*name).to_owned())).collect();
    assert!(looked_at > 20, "{looked_at} dependencies only");
    assert_eq!(unused, known, "not named in the sources, and known with a reason");
}

/// Whether `name` stands in `code` as a word that a path goes on from, or is brought in by `use`.
fn names(code: &str, name: &str) -> bool {
    let is_word = |sign: char| sign.is_alphanumeric() || sign == '_';
    code.match_indices(name).any(|(at, _)| {
        let (before, after) = (&code[..at], &code[at + name.len()..]);
        !before.ends_with(is_word)
            && (after.starts_with("::") || (before.ends_with("use ") && after.starts_with(';')))
    })
}

#[test]
fn a_name_is_found_only_where_it_is_used() {
    assert!(names("use libm::sin;", "libm"));
    assert!(names("let a = libm::sin(b);", "libm"));
    assert!(!names("let libm = xlibm::sin(b);", "libm"));
    assert!(!names("use libmath::sin;", "libm"));
}

#[test]
fn every_package_of_the_browser_tests_has_a_digest() {
    for folder in ["tests/browser", "tests/perf"] {
        let lock = fs::read_to_string(root().join(folder).join("package-lock.json")).unwrap();
        let lock: Value = serde_json::from_str(&lock).unwrap();
        let packages: Vec<_> =
            lock["packages"].as_object().unwrap().iter().filter(|(place, _)| !place.is_empty()).collect();
        assert!(!packages.is_empty(), "{folder} needs nothing");
        for (place, package) in packages {
            assert!(text(package, "integrity").starts_with("sha512-"), "{folder}: {place}");
            let from = &package["resolved"];
            assert!(from.is_null() || text(package, "resolved").starts_with("https://"), "{folder}: {place}");
        }
    }
}

#[test]
fn what_the_workspace_offers_is_taken() {
    let manifest = |folder: &str| fs::read_to_string(root().join(folder).join("Cargo.toml")).unwrap();
    let whole = manifest(".");
    let offered = whole.split("[workspace.dependencies]").nth(1).unwrap().split("\n[").next().unwrap();
    let members = ["core", "web", "web/serve", "web/worker", "tests"].map(manifest);
    let mut looked_at = 0;
    for name in offered.lines().filter_map(|line| line.split(" = ").next()).filter(|name| !name.is_empty()) {
        looked_at += 1;
        let taken = |member: &String| {
            member
                .lines()
                .any(|line| line.strip_prefix(name).is_some_and(|rest| rest.starts_with(['.', ' '])))
        };
        assert!(members.iter().any(taken), "no member takes {name}");
    }
    assert!(looked_at > 10, "{looked_at} offered only");
}
