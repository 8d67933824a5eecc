//! From a text to designs.
use serde_json::{Map, Value};

use super::member::{steps, unknown};
use super::strict::parse;
use super::{DESIGN, FileFault, Kept, MOST_DESIGNS, READ_LIMIT, SHELF, VERSIONS};
use crate::design::Design;

/// A design out of a file, with what this version does not know of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// The design.
    pub design: Design,
    /// To be written into its file again.
    pub kept: Kept,
}

/// What a file holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Found {
    /// One design.
    Design(Box<Opened>),
    /// A shelf of designs: those that could be read, and of the others a sentence each.
    Shelf(Vec<Opened>, Vec<FileFault>),
}

/// What a text holds.
///
/// # Errors
/// [`FileFault`], whose text says what is wrong and what would be right. A shelf is refused only as a whole; a design in it that cannot be read is
/// left out and told of.
pub fn read(text: &str) -> Result<Found, FileFault> {
    if text.len() > READ_LIMIT {
        return Err(FileFault::TooLong);
    }
    // Some editors put a mark at the beginning that JSON does not have.
    let whole = parse(text.strip_prefix('\u{FEFF}').unwrap_or(text))?;
    let Value::Object(mut members) = whole else { return Err(FileFault::Foreign) };
    let format = members.remove("format");
    let format = format.as_ref().and_then(Value::as_str).filter(|format| [DESIGN, SHELF].contains(format));
    let format = format.ok_or(FileFault::Foreign)?;
    let version = members.remove("version");
    let version = version.as_ref().and_then(Value::as_u64).filter(|version| *version > 0);
    let version = version.ok_or_else(|| FileFault::Member("“version”".into(), "a whole number from 1 on"))?;
    if !VERSIONS.contains(&version) {
        return Err(FileFault::Newer(version));
    }
    if format == DESIGN {
        return design(members).map(|opened| Found::Design(Box::new(opened)));
    }
    let Some(Value::Array(list)) = members.remove("designs") else {
        return Err(FileFault::Member("“designs”".into(), "a list of designs"));
    };
    if list.len() > MOST_DESIGNS {
        return Err(FileFault::TooMany(list.len()));
    }
    let (mut opened, mut faults) = (Vec::new(), Vec::new());
    for item in list {
        let outcome = match item {
            Value::Object(members) => design(members),
            _ => Err(FileFault::Member("a design of the shelf".into(), "an object with “name” and “inputs”")),
        };
        match outcome {
            Ok(one) => opened.push(one),
            Err(fault) => faults.push(fault),
        }
    }
    Ok(Found::Shelf(opened, faults))
}

fn design(mut members: Map<String, Value>) -> Result<Opened, FileFault> {
    let mut design = Design::default();
    let Some(Value::String(name)) = members.remove("name") else {
        return Err(FileFault::Member("“name”".into(), "a text"));
    };
    design.rename(&name);
    let signs = name.chars().filter(|sign| !sign.is_control()).count();
    if design.name.chars().count() < signs {
        return Err(FileFault::Name(signs));
    }
    let Some(Value::Object(inputs)) = members.remove("inputs") else {
        return Err(FileFault::Member("“inputs”".into(), "an object with the inputs by their two letters"));
    };
    let (mut others, mut within) = (Map::new(), Map::new());
    for (key, member) in inputs {
        if let Some(field) = Design::field(&key) {
            field.set(&mut design, steps(field, &member)?);
            within.insert(key, Value::Object(unknown(&member)));
        } else {
            others.insert(key, member);
        }
    }
    Ok(Opened { design, kept: Kept::new(members, others, within) })
}
