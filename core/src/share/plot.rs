//! A plot as a file for other programs.
use super::csv;
use crate::drawing::Plotted;

/// The plotted values as CSV (RFC 4180): a heading line with the units, then a line a height from the lowest deck up. The figures are those the
/// curves are drawn from, in the reader's units, not rounded to what the screen shows; a decimal point, a plain minus. An empty cell stands where a curve
/// has no value.
#[must_use]
pub fn csv(plotted: &Plotted) -> String {
    let heights = plotted.heights();
    let columns = plotted.columns();
    let heading: Vec<String> = core::iter::once(named("deck height", plotted.height_unit()))
        .chain(columns.iter().map(|column| named(&column.name, column.unit)))
        .collect();
    let heading: Vec<&str> = heading.iter().map(String::as_str).collect();
    csv::table(
        &heading,
        heights.iter().enumerate().map(|(row, height)| {
            let values = columns.iter().map(|column| column.values.get(row).copied().flatten());
            core::iter::once(Some(*height))
                .chain(values)
                .map(|value| value.map_or_else(String::new, fine))
                .collect()
        }),
    )
}

/// A file name for what is saved of a plot: design and plot in plain letters, then the extension.
#[must_use]
pub fn file_name(plotted: &Plotted, extension: &str) -> String {
    let words = format!("{} {}", plotted.design(), plotted.title());
    let signs: String = words
        .chars()
        .map(|sign| if sign.is_alphanumeric() { sign.to_ascii_lowercase() } else { ' ' })
        .collect();
    let joined: Vec<&str> = signs.split_whitespace().collect();
    format!("{}.{extension}", joined.join("-"))
}

/// A name with its unit; spreadsheets do not love no-break spaces.
fn named(name: &str, unit: &str) -> String {
    let name = if unit.is_empty() { name.to_owned() } else { format!("{name} ({unit})") };
    name.replace('\u{A0}', " ")
}

/// A number to the sixth decimal, a thousandth of the last figure on screen and less; no zeros at the end.
fn fine(value: f64) -> String {
    let text = format!("{value:.6}");
    let short = text.trim_end_matches('0').trim_end_matches('.');
    if matches!(short, "" | "-0" | "-") { "0".into() } else { short.into() }
}
