//! Every pair of colours that the page and the drawing put on one another, light, dark and in print: lettering at 4.5 to 1 and more,
//! what one must see to understand at 3 to 1 and more.
//!
//! Source: Web Content Accessibility Guidelines (WCAG) 2.2, W3C Recommendation: definitions of "relative luminance" and "contrast ratio",
//! success criteria 1.4.3 (contrast, minimum) and 1.4.11 (non-text contrast).
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops at the first surprise"
)]

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::Path;

const TOKENS: &str = include_str!("../../web/style/tokens.css");
/// Least contrast of lettering and of graphics (WCAG 2.2, 1.4.3 and 1.4.11).
const TEXT: f64 = 4.5;
const GRAPHIC: f64 = 3.0;

/// Lettering on its ground. Words of a hue use its `-text` tone; on the parts' tints stand forces and state marks, and the number of a state
/// mark that is over, like a pressed switch, is paper on ink.
const LETTERING: [(&str, &[&str]); 10] = [
    ("ink", &["sheet", "desk", "ply", "ply-far", "steel"]),
    ("ink-2", &["sheet", "desk"]),
    ("ink-3", &["sheet", "desk"]),
    ("level-text", &["sheet"]),
    ("force-text", &["sheet", "ply", "ply-far", "steel"]),
    ("sag-text", &["sheet"]),
    ("play-text", &["sheet"]),
    ("on-level", &["level"]),
    ("sheet", &["ink"]),
    ("desk", &["ink"]),
];

/// Graphics on their ground. Sag and play are drawn on pure paper only; forces and the level line also cross the parts.
const GRAPHICS: [(&str, &[&str]); 8] = [
    ("ink", &["sheet", "ply", "ply-far", "steel"]),
    ("ink-2", &["sheet"]),
    ("ink-3", &["sheet", "ply", "ply-far", "steel"]),
    ("control", &["sheet", "desk"]),
    ("level", &["sheet", "desk", "ply"]),
    ("force", &["sheet", "ply", "ply-far", "steel"]),
    ("sag", &["sheet"]),
    ("play", &["sheet"]),
];

/// Tokens of rules that carry no meaning, and of grounds: nothing is asked of them by themselves.
const QUIET: [&str; 5] = ["hair", "desk", "ply", "ply-far", "steel"];

type Palette = BTreeMap<String, [u8; 3]>;

/// `#rgb` or `#rrggbb`.
fn colour(text: &str) -> Option<[u8; 3]> {
    let digits = text.strip_prefix('#')?;
    let wide: String = match digits.len() {
        3 => digits.chars().flat_map(|digit| [digit, digit]).collect(),
        6 => digits.to_owned(),
        _ => return None,
    };
    let part = |at: usize| u8::from_str_radix(wide.get(at..at + 2)?, 16).ok();
    Some([part(0)?, part(2)?, part(4)?])
}

/// The colours a block of declarations sets.
fn declared(block: &str) -> Palette {
    block
        .split([';', '{', '}'])
        .filter_map(|declaration| {
            let (name, value) = declaration.rsplit_once("--")?.1.split_once(':')?;
            Some((name.trim().to_owned(), colour(value.trim())?))
        })
        .collect()
}

fn block_after<'a>(css: &'a str, start: &str) -> &'a str {
    let from = css.split_once(start).unwrap_or_else(|| panic!("no {start}")).1;
    from.split_once('}').unwrap().0
}

fn without_comments(css: &str) -> String {
    let mut rest = css;
    let mut text = String::new();
    while let Some((before, after)) = rest.split_once("/*") {
        text.push_str(before);
        rest = after.split_once("*/").map_or("", |(_, after)| after);
    }
    text + rest
}

/// Light, dark and print, the last two over the first.
fn palettes() -> [(&'static str, Palette); 3] {
    let css = without_comments(TOKENS);
    let light = declared(block_after(&css, ":root{"));
    let over = |start: &str| {
        let mut palette = light.clone();
        palette.extend(declared(block_after(&css, start)));
        palette
    };
    let dark = over("@media (prefers-color-scheme:dark){:root{");
    let print = over("@media print{:root{");
    [("light", light), ("dark", dark), ("print", print)]
}

/// WCAG 2.2, "relative luminance": sRGB channels made linear, weighted by how bright they look.
fn luminance(colour: [u8; 3]) -> f64 {
    let [red, green, blue] = colour.map(|channel| {
        let part = f64::from(channel) / 255.0;
        if part <= 0.04045 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
    });
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/// WCAG 2.2, "contrast ratio".
fn contrast(one: [u8; 3], other: [u8; 3]) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

#[test]
fn the_formula_is_that_of_the_guidelines() {
    assert!((contrast([0; 3], [255; 3]) - 21.0).abs() < 1e-12);
    assert!((contrast([90, 1, 7], [90, 1, 7]) - 1.0).abs() < 1e-12);
    // G18 of the techniques to WCAG 2.2 allows 4.5 to 1; #767676 on white is the well-known lightest grey that keeps it, #777777 misses it.
    assert!(contrast([0x76; 3], [255; 3]) >= TEXT && contrast([0x77; 3], [255; 3]) < TEXT);
}

#[test]
fn every_pair_can_be_told_apart() {
    let mut faint = String::new();
    for (scheme, palette) in palettes() {
        let pairs =
            LETTERING.iter().map(|pair| (pair, TEXT)).chain(GRAPHICS.iter().map(|pair| (pair, GRAPHIC)));
        for ((name, grounds), least) in pairs {
            for ground in *grounds {
                let ratio = contrast(palette[*name], palette[*ground]);
                if ratio < least {
                    writeln!(faint, "{scheme}: {name} on {ground} is {ratio:.2} to 1, not {least}").unwrap();
                }
            }
        }
    }
    assert!(faint.is_empty(), "\n{faint}");
}

/// On paper, and in a code that a camera reads, black and white are meant as they are.
const PAPER: [[u8; 3]; 2] = [[0; 3], [255; 3]];

/// Name and text of every style sheet of the page and of the drawing.
fn style_sheets() -> Vec<(String, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    ["web/style", "core/src/drawing"]
        .into_iter()
        .flat_map(|folder| fs::read_dir(root.join(folder)).unwrap())
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|end| end == "css"))
        .map(|path| {
            (path.file_name().unwrap().to_string_lossy().into_owned(), fs::read_to_string(&path).unwrap())
        })
        .collect()
}

#[test]
fn no_colour_is_used_that_is_not_judged() {
    // Every colour of the tokens appears above, and no sheet has a colour of its own beside them.
    let [(_, light), ..] = palettes();
    let judged =
        |name: &str| LETTERING.iter().chain(&GRAPHICS).any(|(one, _)| *one == name) || QUIET.contains(&name);
    let unjudged: Vec<&String> = light.keys().filter(|name| !judged(name)).collect();
    assert!(unjudged.is_empty() && light.len() > 15, "{unjudged:?} of {}", light.len());
    let sheets = style_sheets();
    assert!(sheets.len() > 5, "{}", sheets.len());
    let own: Vec<String> = sheets
        .iter()
        .filter(|(name, _)| name != "tokens.css")
        .flat_map(|(name, text)| {
            let words = text.split([':', ' ', ',', ';', '!', '{', '}', '(', ')']);
            words
                .filter(|word| colour(word).is_some_and(|colour| !PAPER.contains(&colour)))
                .map(move |word| format!("{name}: {word}"))
        })
        .collect();
    assert!(own.is_empty(), "{own:?}");
}
