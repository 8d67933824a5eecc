//! Writes a page of a design as an HTML file: the way to look at documents without the page.
//!
//! ```text
//! cargo run --example page -- VIEW [design=a|b|LINK] [units=mm|in] [style=a.css,b.css] [live=DECK] [size=WIDTHxHEIGHT] [KEY=ANSWER ...] > page.html
//! ```
//! `live` puts the picture that follows the deck above the document, after the deck has run through these heights, mm, apart by commas.
//! VIEW is the word in the address, like `drilling`. Every other KEY is an answer that the page hears, like `part=B2`. All work behind the
//! page is done first.

#![allow(
    clippy::disallowed_methods,
    reason = "unlike the crate itself, this program reads its arguments and files"
)]

use risewright::design::Demo;
use risewright::drawing::{LANGUAGE, Layout, View as Room};
use risewright::pages::{Page, Reader, page};
use risewright::quantity::System;
use risewright::report::analyse;
use risewright::share::address::View;
use risewright::share::link;
use std::process::ExitCode;
use std::rc::Rc;

fn main() -> ExitCode {
    match write(&std::env::args().skip(1).collect::<Vec<_>>()) {
        Ok(html) => {
            print!("{html}");
            ExitCode::SUCCESS
        }
        Err(trouble) => {
            eprintln!("{trouble}");
            ExitCode::FAILURE
        }
    }
}

fn write(arguments: &[String]) -> Result<String, String> {
    let value =
        |name: &str| arguments.iter().find_map(|argument| argument.strip_prefix(name)?.strip_prefix('='));
    let word = arguments.first().map_or("", String::as_str);
    let view = View::of(word).ok_or_else(|| format!("no view has the word {word:?}"))?;
    let design = match value("design") {
        None | Some("a") => Demo::ALL[0].design(),
        Some("b") => Demo::ALL[1].design(),
        Some(text) => link::decode(text).map_err(|fault| fault.to_string())?,
    };
    let report = analyse(&design).map_err(|unsound| {
        unsound.phrases().iter().map(|phrase| phrase.text(System::Metric)).collect::<Vec<_>>().join(" ")
    })?;
    let mut page = page(view, &Rc::new(report)).ok_or_else(|| format!("{word} is no document"))?;
    let system = if value("units") == Some("in") { System::Inch } else { System::Metric };
    let reader = Reader { system, address: "https://example.org/".into(), date: "2026-01-31".into() };
    for (key, answer) in arguments.iter().filter_map(|argument| argument.split_once('=')) {
        if !["design", "units", "style", "live", "size"].contains(&key) {
            page.answer(key, answer, &reader);
        }
    }
    while page.advance() {}
    let picture = match value("live") {
        None => String::new(),
        Some(decks) => live(page.as_mut(), decks, value("size").unwrap_or("860x460"), system)?,
    };
    let mut style = String::from(LANGUAGE);
    for path in value("style").into_iter().flat_map(|paths| paths.split(',')) {
        style += &std::fs::read_to_string(path).map_err(|fault| format!("{path}: {fault}"))?;
    }
    Ok(format!(
        "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">\
         <title>{word}</title><style>{style}</style><main class=\"sheet\">{picture}<article class=\"reader\">{}</article></main></html>\n",
        page.document(&reader).html()
    ))
}

fn live(page: &mut dyn Page, decks: &str, size: &str, system: System) -> Result<String, String> {
    let (width, height) = size.split_once('x').ok_or("a size is like 860x460")?;
    let pixels = |text: &str| text.parse::<u32>().map_err(|fault| format!("{text}: {fault}"));
    let room = Room::new(pixels(width)?, pixels(height)?, Layout::Wide, system);
    let mut picture = None;
    for deck in decks.split(',') {
        let deck: f64 = deck.parse().map_err(|fault| format!("{deck}: {fault}"))?;
        picture = page.live(&room, deck / 1e3, 0.0);
    }
    let picture = picture.ok_or("this page has no picture that follows the deck")?;
    Ok(format!(
        "<svg class=\"dwg\" width=\"{0}\" height=\"{1}\" viewBox=\"0 0 {0} {1}\" role=\"img\" aria-label=\"{2}\">{3}{4}</svg>",
        picture.width, picture.height, picture.spoken, picture.still, picture.moving
    ))
}
