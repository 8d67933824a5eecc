//! The files as a JSON Schema, from the same tables that they are read by.
use serde_json::{Value, json};

use super::member::written;
use super::{DESIGN, MOST_DESIGNS, SHELF, VERSION};
use crate::design::{Design, Field, NAME_LIMIT};
use crate::quantity::{Kind, metric_unit};

/// A JSON Schema (draft 2020-12) of both kinds of file, for whoever writes one. It asks for values within each input's range, where the program reads those outside too and judges
/// them with the design; what inputs mean to one another it does not know.
#[must_use]
pub fn schema() -> Value {
    let inputs: serde_json::Map<String, Value> =
        Design::fields().map(|field| (field.key.to_owned(), input(field))).collect();
    let body = json!({
        "name": { "type": "string", "maxLength": NAME_LIMIT },
        "inputs": { "type": "object", "properties": inputs },
    });
    let mut design = json!({
        "type": "object",
        "required": ["format", "version", "name", "inputs"],
        "properties": { "format": { "const": DESIGN }, "version": { "const": VERSION } },
    });
    let mut part = json!({ "type": "object", "required": ["name", "inputs"], "properties": {} });
    for (name, member) in body.as_object().into_iter().flatten() {
        design["properties"][name] = member.clone();
        part["properties"][name] = json!({ "$ref": format!("#/$defs/design/properties/{name}") });
    }
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A design, or a shelf of designs, of Risewright",
        "oneOf": [{ "$ref": "#/$defs/design" }, { "$ref": "#/$defs/shelf" }],
        "$defs": {
            "design": design,
            "shelf": {
                "type": "object",
                "required": ["format", "version", "designs"],
                "properties": {
                    "format": { "const": SHELF },
                    "version": { "const": VERSION },
                    "designs": { "type": "array", "maxItems": MOST_DESIGNS, "items": part },
                },
            },
        },
    })
}

fn input(field: &Field) -> Value {
    let number = |steps: i64| serde_json::from_str::<Value>(&written(field, steps)).unwrap_or_default();
    let value = match field.kind {
        Kind::Switch => json!({ "type": "boolean" }),
        Kind::Choice => {
            json!({ "enum": field.choices.iter().map(|(value, _)| *value).collect::<Vec<_>>() })
        }
        kind => json!({
            "anyOf": [
                { "type": if kind == Kind::Count { "integer" } else { "number" }, "minimum": number(field.range.0), "maximum": number(field.range.1) },
                { "type": "string" },
            ],
        }),
    };
    let (unit, _) = metric_unit(field.kind);
    json!({
        "title": field.label,
        "description": field.meaning(),
        "anyOf": [
            value,
            {
                "type": "object",
                "required": ["value"],
                "properties": { "value": value, "unit": { "const": unit }, "of": { "type": "string" }, "choice": { "type": "string" } },
            },
        ],
    })
}
