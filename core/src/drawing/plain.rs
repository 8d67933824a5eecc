//! The drawing language for files that stand alone: every token replaced by its value for light paper, since few programs but browsers know
//! variables in a style sheet.
use super::LANGUAGE;

/// The tokens on light paper, as on the page.
pub const LIGHT: [(&str, &str); 30] = [
    ("desk", "#F3F1EB"),
    ("sheet", "#FFFFFF"),
    ("ply", "#FAF7F0"),
    ("ply-far", "#F4EFE4"),
    ("steel", "#EFF1F2"),
    ("ink", "#16191C"),
    ("ink-2", "#454B51"),
    ("ink-3", "#63696F"),
    ("control", "#7B8187"),
    ("hair", "#CFCBC1"),
    ("level", "#0072B2"),
    ("level-text", "#0072B2"),
    ("on-level", "#FFFFFF"),
    ("force", "#D55E00"),
    ("force-text", "#A84A00"),
    ("sag", "#009E73"),
    ("sag-text", "#00694D"),
    ("play", "#CC79A7"),
    ("play-text", "#8F3F6C"),
    ("lw-wide", "1.7px"),
    ("lw-narrow", ".85px"),
    ("lw-curve", "2.2px"),
    ("lw-curve-2", "1.1px"),
    ("hidden", "4 2.5"),
    ("chain", "11 2.5 1.5 2.5"),
    ("chain-2", "11 2.5 1.5 2.5 1.5 2.5"),
    ("limit", "3 3"),
    ("font", "\"Segoe UI\",\"Noto Sans\",\"DejaVu Sans Condensed\",\"DejaVu Sans\",sans-serif"),
    ("fs-dim", "11.5px"),
    ("lw-focus", "2px"),
];

/// The rules of the drawing language that marks with these classes need, without variables.
pub(super) fn style(classes: &[&str]) -> String {
    let used = |selector: &str| {
        selector
            .split(['.', ' ', ','])
            .any(|name| classes.iter().any(|class| class.split(' ').any(|one| one == name)))
    };
    // One rule a line; what follows from the first `@` on is for screens.
    let rules = LANGUAGE.lines().skip(1).take_while(|line| !line.starts_with('@'));
    let kept = rules.filter(|rule| {
        let selector = rule.split('{').next().unwrap_or_default().replace(".dwg", "");
        selector.trim() == "text" || used(&selector.replace("text", ""))
    });
    LIGHT
        .iter()
        .fold(kept.collect(), |style: String, (name, value)| style.replace(&format!("var(--{name})"), value))
}
