//! The walls that no compiler checks: who may use whom, how long a file may be, and what may not be left lying about.
//!
//! Each rule is a function from a file to its complaints; it is applied to the whole tree, and to made-up files that show
//! that it can complain.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod source;

use source::{Source, files, references, without_comments_and_strings};

const CORE: &str = "core/src/";
const WEB: &str = "web/src/";
const WRITTEN: [&str; 3] = ["core", "web", "tests"];
const MOST_LINES: usize = 600;

/// The rooms of `core`; each uses only rooms that stand before it.
const ROOMS: [&str; 12] = [
    "order",
    "quantity",
    "catalogue",
    "design",
    "parts",
    "mechanics",
    "checks",
    "workshop",
    "report",
    "drawing",
    "share",
    "pages",
];

/// What `core` does without, so that it gives the same answer everywhere and at any time.
const OUTSIDE: [&str; 6] = ["time", "fs", "env", "thread", "net", "process"];

/// Modules of the page that know nothing of how it is drawn, and can be tested without a browser.
const SCREENLESS: [&str; 3] = ["edit", "format", "input"];

/// Modules of the page that talk to the world outside it; effects live nowhere else.
const WITH_EFFECTS: [&str; 8] = [
    "persist",
    "trial",
    "worker",
    "widgets/canvas",
    "widgets/document",
    "widgets/picture",
    "widgets/place",
    "widgets/size",
];

/// Marks of unfinished work, written so that this file does not hold them.
const MARKS: [&str; 6] = [
    concat!("TO", "DO"),
    concat!("FIX", "ME"),
    concat!("XX", "X"),
    concat!("to", "do!("),
    concat!("un", "implemented!("),
    concat!("db", "g!("),
];

/// From a file to what is wrong with it.
type Rule = fn(&Source) -> Vec<String>;

#[test]
fn no_file_is_too_long_to_read() {
    judge(&files(&WRITTEN, &["rs", "mjs", "js", "css", "sh"]), too_long);
}

#[test]
fn nothing_unfinished_is_left() {
    judge(&files(&WRITTEN, &["rs", "mjs", "js", "css", "sh", "html"]), unfinished);
}

#[test]
fn core_uses_only_rooms_above() {
    judge(&files(&["core/src"], &["rs"]), uses_a_room_below);
}

#[test]
fn core_knows_nothing_outside_itself() {
    judge(&files(&["core/src"], &["rs"]), looks_outside);
}

#[test]
fn no_view_uses_another() {
    judge(&files(&["web/src"], &["rs"]), uses_another_view);
}

#[test]
fn what_needs_no_screen_knows_none() {
    judge(&files(&["web/src"], &["rs"]), knows_the_screen);
}

#[test]
fn effects_stay_at_the_rim() {
    judge(&files(&["web/src"], &["rs"]), has_effects);
}

#[test]
fn each_rule_complains_where_it_should() {
    let cases: [(Rule, &str, &str, usize); 17] = [
        (too_long, "core/src/a.rs", &"\n".repeat(601), 1),
        (too_long, "core/src/a.rs", &"\n".repeat(600), 0),
        (unfinished, "web/style/a.css", concat!("a {} /* TO", "DO */"), 1),
        (uses_a_room_below, "core/src/design/arms.rs", "use crate::parts::Part;", 1),
        (uses_a_room_below, "core/src/design/arms.rs", "use crate::{quantity::Length, report::Report};", 1),
        (uses_a_room_below, "core/src/design/mod.rs", "use super::report::Report;", 1),
        (uses_a_room_below, "core/src/design/arms.rs", "use crate::Report;", 1),
        (uses_a_room_below, "core/src/attic/mod.rs", "", 1),
        (uses_a_room_below, "core/src/report/mod.rs", "use crate::design::Design; use super::checks::x;", 0),
        (uses_a_room_below, "core/src/design/arms.rs", "//! For [`crate::report::reach`].", 0),
        (looks_outside, "core/src/design/arms.rs", "use std::{fmt, fs};", 1),
        (uses_another_view, "web/src/views/strength.rs", "use super::hardware::table;", 1),
        (uses_another_view, "web/src/views/lessons/play.rs", "use crate::views::sheets::Sheets;", 1),
        (uses_another_view, "web/src/views/lessons/play.rs", "use super::lesson::Lesson;", 0),
        (knows_the_screen, "web/src/input/pointer.rs", "use leptos::prelude::*;", 1),
        (has_effects, "web/src/views/strength.rs", "Effect::new(move |_| {});", 1),
        (has_effects, "web/src/persist.rs", "Effect::new(move |_| {});", 0),
    ];
    for (rule, path, text, complaints) in cases {
        assert_eq!(rule(&Source::made_up(path, text)).len(), complaints, "{path}: {text:.60}");
    }
}

/// Fails with every complaint of `rule` about `files`, which must not be none.
fn judge(files: &[Source], rule: Rule) {
    assert!(!files.is_empty(), "no file was found to judge");
    let complaints: Vec<String> = files.iter().flat_map(rule).collect();
    assert!(complaints.is_empty(), "\n{}", complaints.join("\n"));
}

fn too_long(file: &Source) -> Vec<String> {
    let lines = file.text.lines().count();
    let complaint = format!("{}: {lines} lines; at most {MOST_LINES}", file.path);
    if lines > MOST_LINES { vec![complaint] } else { Vec::new() }
}

fn unfinished(file: &Source) -> Vec<String> {
    let lines = MARKS.iter().flat_map(|mark| file.lines_with(mark).into_iter().map(move |line| (line, mark)));
    lines.map(|(line, mark)| format!("{}:{line}: {mark}", file.path)).collect()
}

fn rank(room: &str) -> Option<usize> {
    ROOMS.iter().position(|name| *name == room)
}

fn uses_a_room_below(file: &Source) -> Vec<String> {
    let Some(module) = file.module(CORE) else { return Vec::new() };
    let Some(own) = rank(&module[0]) else {
        return vec![format!("{}: {} is no room of the plan; {ROOMS:?}", file.path, module[0])];
    };
    let mut complaints = Vec::new();
    for reference in file.crate_paths(CORE) {
        let Some(room) = reference.path.get(1) else { continue };
        let place = format!("{}:{}", file.path, reference.line);
        match rank(room) {
            Some(rank) if rank <= own => {}
            Some(_) => complaints.push(format!("{place}: {} uses {room}, which stands below it", module[0])),
            None => {
                complaints.push(format!("{place}: `{}` does not name its room", reference.path.join("::")));
            }
        }
    }
    complaints
}

fn looks_outside(file: &Source) -> Vec<String> {
    let code = without_comments_and_strings(&file.text);
    let outside = |path: &[String]| {
        path[0] == "std" && path.get(1).is_some_and(|part| OUTSIDE.contains(&part.as_str()))
    };
    references(&code, &[])
        .into_iter()
        .filter(|reference| outside(&reference.path))
        .map(|reference| format!("{}:{}: uses {}", file.path, reference.line, reference.path.join("::")))
        .collect()
}

fn uses_another_view(file: &Source) -> Vec<String> {
    let Some(module) = file.module(WEB) else { return Vec::new() };
    let [views, own, ..] = module.as_slice() else { return Vec::new() };
    if views != "views" {
        return Vec::new();
    }
    file.crate_paths(WEB)
        .into_iter()
        .filter(|reference| {
            reference.path.get(1) == Some(views) && reference.path.get(2).is_some_and(|other| other != own)
        })
        .map(|reference| format!("{}:{}: uses {}", file.path, reference.line, reference.path.join("::")))
        .collect()
}

fn is_one_of(file: &Source, modules: &[&str]) -> bool {
    let Some(inner) = file.path.strip_prefix(WEB) else { return false };
    modules
        .iter()
        .any(|module| inner.strip_prefix(module).is_some_and(|rest| rest == ".rs" || rest.starts_with('/')))
}

fn knows_the_screen(file: &Source) -> Vec<String> {
    if !is_one_of(file, &SCREENLESS) {
        return Vec::new();
    }
    references(&without_comments_and_strings(&file.text), &[])
        .into_iter()
        .filter(|reference| reference.path[0] == "leptos")
        .map(|reference| format!("{}:{}: uses leptos", file.path, reference.line))
        .collect()
}

fn has_effects(file: &Source) -> Vec<String> {
    if is_one_of(file, &WITH_EFFECTS) {
        return Vec::new();
    }
    references(&without_comments_and_strings(&file.text), &[])
        .into_iter()
        .filter(|reference| {
            reference.path.iter().any(|name| matches!(name.as_str(), "Effect" | "RenderEffect"))
        })
        .filter(|reference| reference.path.last().is_some_and(|name| name != "Effect"))
        .map(|reference| format!("{}:{}: uses {}", file.path, reference.line, reference.path.join("::")))
        .collect()
}
