//! The value of one input in a file.
use serde_json::{Map, Value};

use super::FileFault;
use crate::design::Field;
use crate::quantity::{Kind, MOST_STEPS, ReadError, System, metric_unit, read};

/// The members of an input that have a meaning, or stand there for the reader.
pub(super) const KNOWN: [&str; 4] = ["value", "unit", "of", "choice"];

/// Digits after the point that hold a step of every kind exactly.
const PLACES: u32 = 8;

/// A number of steps as a decimal number of the input's unit, exactly; `true` or `false` for a switch.
pub(super) fn written(field: &Field, steps: i64) -> String {
    if field.kind == Kind::Switch {
        return (steps != 0).to_string();
    }
    let (_, per) = metric_unit(field.kind);
    let scale = 10_i128.pow(PLACES);
    let scaled = i128::from(steps) * (scale / i128::from(per));
    let sign = if scaled < 0 { "-" } else { "" };
    let (whole, part) =
        (scaled.unsigned_abs() / scale.unsigned_abs(), scaled.unsigned_abs() % scale.unsigned_abs());
    let part = format!("{part:08}");
    match part.trim_end_matches('0') {
        "" => format!("{sign}{whole}"),
        part => format!("{sign}{whole}.{part}"),
    }
}

/// The steps that a member stands for.
pub(super) fn steps(field: &'static Field, member: &Value) -> Result<i64, FileFault> {
    let (own, per) = metric_unit(field.kind);
    let place = || format!("the value of “{}” ({})", field.label, field.key);
    let value = match member {
        Value::Object(parts) => {
            match parts.get("unit") {
                None => {}
                Some(Value::String(unit)) if unit == own => {}
                Some(unit) => {
                    let unit = unit.as_str().map_or_else(|| unit.to_string(), str::to_owned);
                    return Err(FileFault::Unit(field.label, unit.chars().take(20).collect(), own));
                }
            }
            parts.get("value").ok_or_else(|| FileFault::Member(place(), "given"))?
        }
        plain => plain,
    };
    match value {
        Value::Bool(on) if field.kind == Kind::Switch => Ok(i64::from(*on)),
        Value::Number(number) if field.kind != Kind::Switch => {
            let exact = number.as_f64().unwrap_or(f64::NAN) * per as f64;
            let steps = nearest(exact).ok_or(FileFault::Beyond(field.label))?;
            let whole = libm::trunc(exact).to_bits() == exact.to_bits();
            match field.kind {
                Kind::Count | Kind::Choice if !whole => {
                    let error = ReadError::NotWhole { text: number.to_string(), nearest: steps };
                    Err(FileFault::Value(field.label, error))
                }
                Kind::Choice if !field.allows(steps) => Err(FileFault::Choice(field.label, steps)),
                _ => Ok(steps),
            }
        }
        Value::String(words) if field.kind != Kind::Choice => {
            read(words, field.kind, System::Metric).map_err(|error| FileFault::Value(field.label, error))
        }
        _ => Err(FileFault::Member(
            place(),
            match field.kind {
                Kind::Switch => "true or false",
                Kind::Choice => "the number of a choice",
                _ => "a number, or a text with a number and its unit",
            },
        )),
    }
}

/// The nearest whole number of steps, where it is one that an input may have.
fn nearest(steps: f64) -> Option<i64> {
    let most = MOST_STEPS as f64;
    #[expect(clippy::cast_possible_truncation, reason = "within the most steps there are")]
    (steps.abs() <= most).then(|| libm::round(steps) as i64)
}

/// What stands within an input beside its value and what goes with it.
pub(super) fn unknown(member: &Value) -> Map<String, Value> {
    let parts = member.as_object().into_iter().flatten();
    let unknown = parts.filter(|(name, _)| !KNOWN.contains(&name.as_str()));
    unknown.map(|(name, part)| (name.clone(), part.clone())).collect()
}
