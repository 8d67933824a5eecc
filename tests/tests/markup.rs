//! Every document and drawing keeps to the elements that the page's policy lets through (`web/policy.js`): what it would refuse there is
//! seen here, for all views of many designs, without a browser. The way tags are read is that of the HTML standard (WHATWG, 13.2.5), for
//! the part of it that is written here: names, then attributes in double quotes.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

mod odd;

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use std::rc::Rc;

use risewright::design::{Demo, Design};
use risewright::drawing::{Layout, View as Window, compose, widths};
use risewright::pages::{Reader, page};
use risewright::quantity::System;
use risewright::report::{Report, analyse};
use risewright::share::address::View;
use risewright::share::lesson::Lesson;

/// The list of the policy, between the signs that surround it there.
fn elements() -> BTreeSet<String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../web/policy.js");
    let source = fs::read_to_string(path).unwrap();
    let list = source.split_once("elements(`").unwrap().1.split_once('`').unwrap().0;
    list.split_whitespace().map(str::to_lowercase).collect()
}

/// What the policy would refuse in a text, tag by tag.
fn refused(text: &str, elements: &BTreeSet<String>) -> Vec<String> {
    let tags = text.split('<').skip(1);
    tags.filter(|tag| !passes(tag, elements)).map(|tag| tag.chars().take(60).collect()).collect()
}

/// Whether what follows a “<” is a tag of the list.
fn passes(rest: &str, elements: &BTreeSet<String>) -> bool {
    let (closing, rest) = rest.strip_prefix('/').map_or((false, rest), |rest| (true, rest));
    let end = rest.find(|sign: char| !sign.is_ascii_alphanumeric()).unwrap_or(rest.len());
    let (name, mut rest) = rest.split_at(end);
    if !elements.contains(&name.to_lowercase()) {
        return false;
    }
    if closing {
        return rest.starts_with('>');
    }
    loop {
        let spaced = rest.trim_start();
        if spaced.starts_with('>') || spaced.starts_with("/>") {
            return true;
        }
        if spaced.len() == rest.len() {
            return false;
        }
        let end = spaced
            .find(|sign: char| !sign.is_ascii_alphanumeric() && !"_:-".contains(sign))
            .unwrap_or(spaced.len());
        let (name, after) = spaced.split_at(end);
        let value = after.strip_prefix("=\"").and_then(|value| value.split_once('"'));
        if !may_have(name, value.map(|(value, _)| value)) {
            return false;
        }
        rest = value.map_or(after, |(_, rest)| rest);
    }
}

fn may_have(name: &str, value: Option<&str>) -> bool {
    if name == "href" {
        let value = value.unwrap_or_default();
        let beside = value.split(['#', '?']).next().unwrap_or_default();
        let plain = |sign: char| sign.is_ascii_alphanumeric() || "_./-".contains(sign);
        return value.starts_with("https://") || value.starts_with("http://") || beside.chars().all(plain);
    }
    !name.is_empty()
        && ["on", "style", "src", "href", "xlink", "action", "form"]
            .iter()
            .all(|part| !name.starts_with(part))
}

fn designs() -> Vec<(String, Design)> {
    // Every fourth: they differ in what is drawn, hardly in what it is written with.
    let mut list: Vec<_> = odd::designs().into_iter().step_by(4).collect();
    list.extend(Demo::ALL.iter().map(|demo| (demo.letter().to_string(), demo.design())));
    let mut named = Design::default();
    named.rename("<script>\"'&<b onclick=\"x\">");
    list.push(("a name that looks like markup".into(), named));
    list
}

fn documents(report: &Rc<Report>, system: System) -> Vec<(&'static str, String)> {
    let reader = Reader { system, address: "https://example.org/".into(), date: "2026-01-31".into() };
    let lessons = Lesson::ALL.into_iter().map(View::Lesson);
    let made = View::ALL.into_iter().chain(lessons).filter_map(|view| {
        let mut page = page(view, report)?;
        let begun = page.document(&reader).html();
        for _ in 0..60 {
            if !page.advance() {
                break;
            }
        }
        let picture = page.live(&Window::new(1096, 640, Layout::Wide, system), report.lowest(), 0.0);
        Some((
            view.word(),
            format!(
                "{begun}{}{}",
                page.document(&reader).html(),
                picture.map_or_else(String::new, |picture| format!("{}{}", picture.still, picture.moving))
            ),
        ))
    });
    made.collect()
}

#[test]
fn no_document_and_no_drawing_is_refused_by_the_policy() {
    let elements = elements();
    for (name, design) in designs() {
        let report = Rc::new(analyse(&design).unwrap());
        for system in [System::Metric, System::Inch] {
            for (view, text) in documents(&report, system) {
                assert!(text.matches('<').count() > 4, "{name}, {view}: nothing to look at");
                assert_eq!(refused(&text, &elements), [""; 0], "{name}, {view}, {system:?}");
            }
            for (width, layout) in [(1096, Layout::Wide), (390, Layout::Narrow)] {
                let middle = 0.5 * (report.lowest() + report.highest());
                let marks =
                    compose(&report, middle, &Window::new(width, 640, layout, system), &widths).marks();
                assert_eq!(refused(&marks, &elements), [""; 0], "{name}, elevation, {width}");
            }
        }
    }
}

#[test]
fn what_runs_or_loads_is_refused() {
    let elements = elements();
    for bad in [
        "<script>",
        "<p onclick=\"x\">",
        "<p style=\"x\">",
        "<a href=\"javascript:x\">",
        "<a href=\"java&#115;cript:x\">",
        "<p title=\"<b>\">",
        "<p title='x'>",
        "<!-- x -->",
        "<b",
        "<iframe src=\"x\">",
    ] {
        assert_ne!(refused(bad, &elements), [""; 0], "{bad}");
    }
    for good in
        ["<p class=\"a\">5 &lt; 6</p>", "<a href=\"https://example.org/#1\">x</a>", "<input disabled/>"]
    {
        assert_eq!(refused(good, &elements), [""; 0], "{good}");
    }
}
