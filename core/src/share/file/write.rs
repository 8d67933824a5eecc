//! From designs to a text, in the order in which one builds.
use serde_json::{Map, Value};

use super::member::written;
use super::{DESIGN, Kept, SHELF, VERSION};
use crate::design::{Design, Field};
use crate::drawing::write as put;
use crate::quantity::{Kind, metric_unit};

/// A design as a file, with what was kept of the file it came from.
#[must_use]
pub fn write(design: &Design, kept: &Kept) -> String {
    let mut text = head(DESIGN);
    body(&mut text, design, kept, "  ");
    text.push_str("}\n");
    text
}

/// Several designs as one file.
#[must_use]
pub fn write_shelf(designs: &[(Design, Kept)]) -> String {
    let mut text = head(SHELF);
    text.push_str("  \"designs\": [");
    for (place, (design, kept)) in designs.iter().enumerate() {
        text.push_str(if place > 0 { ",\n    {\n" } else { "\n    {\n" });
        body(&mut text, design, kept, "      ");
        text.push_str("    }");
    }
    text.push_str("\n  ]\n}\n");
    text
}

fn head(format: &str) -> String {
    format!("{{\n  \"format\": \"{format}\",\n  \"version\": {VERSION},\n")
}

fn body(text: &mut String, design: &Design, kept: &Kept, indent: &str) {
    put(text, format_args!("{indent}\"name\": {},\n{indent}\"inputs\": {{", quoted(&design.name)));
    let mut first = true;
    let mut line = |text: &mut String, key: &str, member: &str| {
        let comma = if core::mem::take(&mut first) { "" } else { "," };
        put(text, format_args!("{comma}\n{indent}  {}: {member}", quoted(key)));
    };
    for field in Design::fields() {
        line(text, field.key, &member(field, field.get(design), kept));
    }
    for (key, member) in &kept.inputs {
        line(text, key, &member.to_string());
    }
    put(text, format_args!("\n{indent}}}"));
    others(text, &kept.members, &format!("\n{indent}"));
    text.push('\n');
}

fn others(text: &mut String, members: &Map<String, Value>, before: &str) {
    for (key, member) in members {
        put(text, format_args!(",{before}{}: {member}", quoted(key)));
    }
}

fn member(field: &Field, steps: i64, kept: &Kept) -> String {
    let mut text = format!("{{ \"value\": {}", written(field, steps));
    let (unit, _) = metric_unit(field.kind);
    if !unit.is_empty() {
        put(&mut text, format_args!(", \"unit\": {}", quoted(unit)));
    }
    put(&mut text, format_args!(", \"of\": {}", quoted(field.label)));
    if field.kind == Kind::Choice
        && let Some((_, words)) = field.choices.iter().find(|(value, _)| *value == steps)
    {
        put(&mut text, format_args!(", \"choice\": {}", quoted(words)));
    }
    if let Some(parts) = kept.within.get(field.key).and_then(Value::as_object) {
        others(&mut text, parts, " ");
    }
    text.push_str(" }");
    text
}

fn quoted(text: &str) -> String {
    Value::from(text).to_string()
}
