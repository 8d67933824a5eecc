//! Prints the mechanism behind a design's link as JSON, with its frame in space where that is computed, in the keys that `solve` reads: `describe LINK [DECK HEIGHT IN M ...]`.
//!
//! The link is what stands behind the `#` in the address bar, or its last part alone; without heights there are seven, even
//! from the lowest to the highest deck.
#![allow(clippy::disallowed_methods, reason = "unlike the crate itself, this program reads its arguments")]

use std::process::ExitCode;

use risewright::design::{Design, DriveKind};
use risewright::mechanics::{Firmness, Guides, in_space};
use risewright::quantity::System;
use risewright::report::analyse;
use risewright::share::{address, link};

fn design(text: &str) -> Result<Design, String> {
    if text.contains('/') {
        let opened = address::read(text).map_err(|fault| fault.to_string())?;
        opened.and_then(|opened| opened.design).ok_or_else(|| "The link holds no design.".to_owned())
    } else {
        link::decode(text).map_err(|fault| fault.to_string())
    }
}

fn describe(text: &str, heights: &[String]) -> Result<String, String> {
    let report = analyse(&design(text)?).map_err(|unsound| {
        unsound.phrases().iter().map(|phrase| phrase.text(System::Metric)).collect::<Vec<_>>().join(" ")
    })?;
    let heights: Vec<f64> = if heights.is_empty() {
        let (low, high) = (report.lowest(), report.highest());
        (0..7).map(|at| low + (high - low) * f64::from(at) / 6.0).collect()
    } else {
        heights
            .iter()
            .map(|height| height.parse().map_err(|_| format!("{height} is not a height in metres.")))
            .collect::<Result<_, String>>()?
    };
    let mut mechanism = report.mechanism().clone();
    if matches!(report.design.drive.kind, DriveKind::BaseCarriage | DriveKind::TopCarriage) {
        mechanism.model3d = Some(in_space(&report.design, &mechanism, Firmness::Middle, Guides::Touching));
    }
    let mut json = serde_json::to_value(&mechanism).map_err(|fault| fault.to_string())?;
    json["heights"] = heights.into();
    json["deflection"] = true.into();
    serde_json::to_string_pretty(&json).map_err(|fault| fault.to_string())
}

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let Some((text, heights)) = arguments.split_first() else {
        eprintln!("usage: describe LINK [DECK HEIGHT IN M ...]");
        return ExitCode::FAILURE;
    };
    match describe(text, heights) {
        Ok(json) => {
            println!("{json}");
            ExitCode::SUCCESS
        }
        Err(sentence) => {
            eprintln!("{sentence}");
            ExitCode::FAILURE
        }
    }
}
