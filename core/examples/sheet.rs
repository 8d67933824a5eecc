//! Writes the elevation of a demo design as an SVG file: the way to look at the drawing without the page.
//!
//! ```text
//! cargo run --example sheet -- [width=1096] [height=628] [deck=760] [units=mm|in] [layout=wide|narrow|print]
//!     [with=a|b|LINK] [end=alone|beside] [push=0] [demo=a|b] [link=a.al5] [set=key:steps,...] [charts=screw,sag,crank,wheels,pivots,bending,tilt,casters] [show=dfbels] [style=tokens.css] > sheet.svg
//! ```
//! `with` lays the elevation over another design, thin and dashed.
//! `end` draws the end elevation with the sideways figures instead, alone or beside the side elevation, pushed by so many newtons to the right.
//! `link` is the design's part of an address, instead of a demo. `deck` is a height in millimetres, brought back into the lift; `set` changes inputs by their two letters, in stored steps;
//! `show` names what is drawn: dimensions, forces, bending, (e)lastic shape, load, support. `style` is a style sheet with the tokens (colours, line
//! weights); the classes of the drawing language are added.

#![allow(
    clippy::disallowed_methods,
    reason = "unlike the crate itself, this program reads its arguments and a file"
)]

use risewright::design::{Demo, Design};
use risewright::drawing::end::{Scene, compose as compose_end};
use risewright::drawing::{Chart, LANGUAGE, Layout, Picture, Show, View, compose_over, widths};
use risewright::quantity::System;
use risewright::report::{Report, SwayRun, Unsound, analyse, merged};
use risewright::share::link;
use std::process::ExitCode;

fn main() -> ExitCode {
    match sheet(&std::env::args().skip(1).collect::<Vec<_>>()) {
        Ok(svg) => {
            print!("{svg}");
            ExitCode::SUCCESS
        }
        Err(trouble) => {
            eprintln!("{trouble}");
            ExitCode::FAILURE
        }
    }
}

fn sheet(arguments: &[String]) -> Result<String, String> {
    let value = |name: &str| {
        arguments.iter().rev().find_map(|argument| argument.strip_prefix(name)?.strip_prefix('='))
    };
    let number = |name: &str, otherwise: u32| match value(name) {
        Some(text) => text.parse().map_err(|_| format!("{name} is not a whole number: {text}")),
        None => Ok(otherwise),
    };
    let system = if value("units") == Some("in") { System::Inch } else { System::Metric };
    let layout = match value("layout") {
        Some("narrow") => Layout::Narrow,
        Some("print") => Layout::Print,
        _ => Layout::Wide,
    };
    let mut view = View::new(number("width", 1096)?, number("height", 628)?, layout, system);
    if let Some(names) = value("charts") {
        view.charts = names.split(',').map(chart).collect::<Result<_, _>>()?;
    }
    if let Some(letters) = value("show") {
        let has = |letter| letters.contains(letter);
        view.show = Show {
            dimensions: has('d'),
            forces: has('f'),
            bending: has('b'),
            bent: has('e'),
            load: has('l'),
            support: has('s'),
        };
    }
    let mut design = match value("link") {
        Some(text) => link::decode(text).map_err(|fault| fault.to_string())?,
        None => if value("demo") == Some("b") { Demo::PottingBench } else { Demo::PaperLift }.design(),
    };
    for change in value("set").into_iter().flat_map(|changes| changes.split(',')) {
        apply(&mut design, change)?;
    }
    let said = |unsound: Unsound| {
        unsound.phrases().iter().map(|phrase| phrase.text(system)).collect::<Vec<_>>().join("\n")
    };
    let report = analyse(&design).map_err(said)?;
    let deck = f64::from(number("deck", 760)?) / 1e3;
    let picture = match value("end") {
        Some(place) => {
            let push = value("push").unwrap_or("0");
            let push: f64 = push.parse().map_err(|_| format!("push is not a number: {push}"))?;
            end(&report, deck, &view, push, place == "beside").map_err(said)?
        }
        None => {
            let other = match value("with") {
                None => None,
                Some("a") => Some(Demo::PaperLift.design()),
                Some("b") => Some(Demo::PottingBench.design()),
                Some(text) => Some(link::decode(text).map_err(|fault| fault.to_string())?),
            };
            let other = other.map(|design| analyse(&design).map_err(said)).transpose()?;
            compose_over(&report, other.as_ref(), deck, &view, &widths)
        }
    };
    let tokens = match value("style") {
        Some(path) => std::fs::read_to_string(path).map_err(|error| format!("{path}: {error}"))?,
        None => PLAIN.to_owned(),
    };
    Ok(picture.svg(&(tokens + LANGUAGE), &design.name))
}

/// The end elevation; without its slow part where that is not computed.
fn end(report: &Report, deck: f64, view: &View, push: f64, beside: bool) -> Result<Picture, Unsound> {
    let sway = match SwayRun::new(&report.design) {
        Ok(mut run) => {
            run.advance(usize::MAX)?;
            run.report()
        }
        Err(_) => None,
    };
    let slow = sway.as_ref().map(|sway| sway.findings(&report.design)).unwrap_or_default();
    let findings = merged(&report.findings, slow);
    let scene = Scene { report, sway: sway.as_ref(), findings: &findings, beside };
    Ok(compose_end(&scene, deck, push, view, &widths))
}

fn chart(name: &str) -> Result<Chart, String> {
    match name {
        "screw" => Ok(Chart::ScrewForce),
        "sag" => Ok(Chart::Sag),
        "bending" => Ok(Chart::ArmMoment),
        "tilt" => Ok(Chart::Tilt),
        "crank" => Ok(Chart::CrankForce),
        "wheels" => Ok(Chart::Wheels),
        "pivots" => Ok(Chart::Pivots),
        "casters" => Ok(Chart::Casters),
        _ => Err(format!("there is no chart {name}")),
    }
}

fn apply(design: &mut Design, change: &str) -> Result<(), String> {
    let (key, steps) = change.split_once(':').ok_or_else(|| format!("write key:steps, not {change}"))?;
    let field = Design::field(key).ok_or_else(|| format!("there is no input {key}"))?;
    field.set(design, steps.parse().map_err(|_| format!("{steps} is not a whole number"))?);
    Ok(())
}

/// Black lettering and the hues of the quantities on white, when no style is given.
const PLAIN: &str = ":root{--desk:#fff;--sheet:#fff;--ply:#fff;--ply-far:#fff;--steel:#fff;--ink:#000;--ink-2:#333;\
    --ink-3:#555;--hair:#bbb;--level:#0072B2;--level-text:#0072B2;--on-level:#fff;--force:#D55E00;--force-text:#A84A00;\
    --sag:#009E73;--sag-text:#00694D;--play:#CC79A7;--play-text:#8F3F6C;--lw-wide:1.7px;--lw-narrow:.85px;\
    --lw-curve:2.2px;--lw-curve-2:1.1px;--hidden:4 2.5;--chain:11 2.5 1.5 2.5;--chain-2:11 2.5 1.5 2.5 1.5 2.5;\
    --limit:3 3;--font:\"DejaVu Sans Condensed\",sans-serif;--fs-dim:11.5px}";
