//! Writes a page of a design as an HTML file: the way to look at documents without the page.
//!
//! ```text
//! cargo run --example page -- VIEW [design=a|b|LINK] [units=mm|in] [style=a.css,b.css] > page.html
//! ```
//! VIEW is the word in the address, like `drilling`. All work behind the page is done first.

#![allow(
    clippy::disallowed_methods,
    reason = "unlike the crate itself, this program reads its arguments and files"
)]

use risewright::design::Demo;
use risewright::drawing::LANGUAGE;
use risewright::pages::{Reader, page};
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
    while page.advance() {}
    let system = if value("units") == Some("in") { System::Inch } else { System::Metric };
    let reader = Reader { system, address: "https://example.org/".into(), date: "2026-01-31".into() };
    let mut style = String::from(LANGUAGE);
    for path in value("style").into_iter().flat_map(|paths| paths.split(',')) {
        style += &std::fs::read_to_string(path).map_err(|fault| format!("{path}: {fault}"))?;
    }
    Ok(format!(
        "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">\
         <title>{word}</title><style>{style}</style><main class=\"sheet\"><article class=\"reader\">{}</article></main></html>\n",
        page.document(&reader).html()
    ))
}
