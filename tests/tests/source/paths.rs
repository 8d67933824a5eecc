//! The paths that Rust code writes.
use std::ops::Range;

use super::line_of;

/// A path as code refers to it, groups taken apart and `super` resolved.
#[derive(Debug, PartialEq, Eq)]
pub struct Reference {
    /// The names from the root on; the root is `crate` or the name of another crate.
    pub path: Vec<String>,
    /// The line, from 1.
    pub line: usize,
}

/// Every path of two or more names in `code`, which has no comments or strings and stands in `module` of its crate.
pub fn references(code: &str, module: &[String]) -> Vec<Reference> {
    let tokens = tokens(code);
    let word = |at: usize| tokens.get(at).map_or("", |range| &code[range.clone()]);
    let mut found = Vec::new();
    let mut inner: Vec<(String, usize)> = Vec::new();
    let (mut depth, mut at) = (0, 0);
    while at < tokens.len() {
        match word(at) {
            "mod" if word(at + 2) == "{" => {
                depth += 1;
                inner.push((word(at + 1).to_owned(), depth));
                at += 3;
                continue;
            }
            "{" => depth += 1,
            "}" => {
                if inner.last().is_some_and(|(_, opened)| *opened == depth) {
                    inner.pop();
                }
                depth = depth.saturating_sub(1);
            }
            name if is_name(name) && word(at + 1) == "::" => {
                let line = line_of(code, &tokens[at]);
                let mut paths = Vec::new();
                at = tree(&word, at, &[], &mut paths);
                let here = module.iter().chain(inner.iter().map(|(name, _)| name));
                let here: Vec<&str> = here.map(String::as_str).collect();
                found.extend(paths.into_iter().map(|path| Reference { path: resolve(path, &here), line }));
                continue;
            }
            _ => {}
        }
        at += 1;
    }
    found
}

fn is_name(word: &str) -> bool {
    word.starts_with(|letter: char| letter.is_alphabetic() || letter == '_')
}

/// Reads the path, or the group of paths, that begins at `at`; returns where it ends.
fn tree<'a>(
    word: &dyn Fn(usize) -> &'a str,
    mut at: usize,
    before: &[String],
    found: &mut Vec<Vec<String>>,
) -> usize {
    let mut path = before.to_vec();
    loop {
        if word(at) == "{" {
            at += 1;
            while !matches!(word(at), "}" | "") {
                let next = tree(word, at, &path, found);
                at = next.max(at + 1);
                while !matches!(word(at), "," | "}" | "") {
                    at += 1;
                }
                if word(at) == "," {
                    at += 1;
                }
            }
            return at + 1;
        }
        if !is_name(word(at)) && word(at) != "*" {
            break;
        }
        path.push(word(at).to_owned());
        at += 1;
        if word(at) != "::" || !(is_name(word(at + 1)) || matches!(word(at + 1), "{" | "*")) {
            break;
        }
        at += 1;
    }
    found.push(path);
    at
}

/// `self` and `super` replaced by what they mean in the module `here`.
fn resolve(path: Vec<String>, here: &[&str]) -> Vec<String> {
    let ups = path.iter().take_while(|name| *name == "super").count();
    let start = usize::from(path.first().is_some_and(|name| name == "self"));
    if ups + start == 0 {
        return path;
    }
    let kept = here.len().saturating_sub(ups);
    let above = std::iter::once("crate").chain(here[..kept].iter().copied()).map(str::to_owned);
    above.chain(path.into_iter().skip(ups + start)).collect()
}

/// Names, `::`, and every other sign on its own.
fn tokens(code: &str) -> Vec<Range<usize>> {
    let mut found: Vec<Range<usize>> = Vec::new();
    let mut letters = code.char_indices().peekable();
    while let Some((start, letter)) = letters.next() {
        let mut end = start + letter.len_utf8();
        if letter.is_alphanumeric() || letter == '_' {
            while let Some((at, next)) = letters.next_if(|(_, next)| next.is_alphanumeric() || *next == '_') {
                end = at + next.len_utf8();
            }
        } else if letter == ':' {
            if let Some((at, _)) = letters.next_if(|(_, next)| *next == ':') {
                end = at + 1;
            }
        } else if letter.is_whitespace() {
            continue;
        }
        found.push(start..end);
    }
    found
}

#[test]
fn groups_are_taken_apart_and_super_resolved() {
    let read = |code: &str| -> Vec<String> {
        let module = ["room".to_owned(), "file".to_owned()];
        references(code, &module).into_iter().map(|reference| reference.path.join("::")).collect()
    };
    assert_eq!(read("use crate::a::{b::C, d, e::*};"), ["crate::a::b::C", "crate::a::d", "crate::a::e::*"]);
    assert_eq!(read("let x = crate::a::f(y::<T>);"), ["crate::a::f", "y"]);
    assert_eq!(read("use super::other::X;"), ["crate::room::other::X"]);
    assert_eq!(read("use super::super::below::X;"), ["crate::below::X"]);
    assert_eq!(
        read("fn f() { {} } mod tests { use super::*; use super::super::x; } use super::y;"),
        ["crate::room::file::*", "crate::room::x", "crate::room::y",]
    );
    assert_eq!(
        read("use std::{f64::consts::{self, PI as P}, fmt};"),
        ["std::f64::consts::self", "std::f64::consts::PI", "std::fmt",]
    );
}
