//! Mechanisms in JSON, as the example program `solve` reads them: any text, and sound mechanisms with some numbers changed.
use serde_json::{Value, json};

use super::answer::answer;

/// Each has all that an answer can tell of, as [`complete`] asks.
const WHOLE: [&str; 2] = [
    include_str!("../reference/cases/21_n3_top_uneven_push.json"),
    include_str!("../reference/cases/08_n1_strut_base_arm.json"),
];

/// Bytes that begin like JSON as they are, others as changes of a sound mechanism: answered with every number, or refused in words. Whether it was answered.
pub fn hunt_model(bytes: &[u8]) -> bool {
    if bytes.first().is_some_and(|first| b"{[ \n".contains(first)) {
        return ends(&String::from_utf8_lossy(bytes), |answer| {
            assert!(answer["results"].is_array());
        });
    }
    let input = changed(bytes);
    ends(&input.to_string(), |answer| {
        complete(&input, answer).unwrap_or_else(|fault| panic!("{input}: {fault}"));
    })
}

fn ends(text: &str, judge: impl Fn(&Value)) -> bool {
    match answer(text) {
        Ok(answer) => judge(&answer),
        Err(fault) => {
            assert!(!fault.trim().is_empty() && !fault.contains("NaN"), "{fault}");
            return false;
        }
    }
    true
}

/// The first byte picks a mechanism; then eleven bytes a change: which number, how it is meant, the value. Most changes are small, so that many still move.
fn changed(bytes: &[u8]) -> Value {
    let (first, rest) = bytes.split_first().unwrap_or((&0, &[]));
    let case: Value = serde_json::from_str(WHOLE[usize::from(*first) % WHOLE.len()]).unwrap();
    let mut input = case["input"].clone();
    let mut places = Vec::new();
    numbers(&input, "", &mut places);
    for change in rest.chunks_exact(11).take(20) {
        let place = &places[usize::from(u16::from_le_bytes([change[0], change[1]])) % places.len()];
        let bits: [u8; 8] = change[3..11].try_into().unwrap();
        let number = input.pointer_mut(place).unwrap();
        let Some(was) = number.as_f64() else { continue };
        let part = f64::from(i16::from_le_bytes([bits[0], bits[1]])) / f64::from(i16::MAX);
        let value = match change[2] % 8 {
            0 => f64::from_bits(u64::from_le_bytes(bits)),
            1 => 0.0,
            2 => -was,
            3 => was * 1000.0 * part,
            _ => was * (1.0 + 0.2 * part),
        };
        // JSON has no word for what is no number: `null` would take the number away.
        if !value.is_finite() {
            continue;
        }
        // Whole numbers stay whole.
        *number =
            if number.is_f64() || change[2] % 8 == 0 { json!(value) } else { json!(value.round() as i64) };
    }
    input
}

/// The places of all numbers of a tree.
pub fn numbers(tree: &Value, path: &str, found: &mut Vec<String>) {
    match tree {
        Value::Object(map) => {
            map.iter().for_each(|(key, value)| numbers(value, &format!("{path}/{key}"), found));
        }
        Value::Array(list) => {
            list.iter()
                .enumerate()
                .for_each(|(index, value)| numbers(value, &format!("{path}/{index}"), found));
        }
        Value::Number(_) => found.push(path.to_owned()),
        _ => {}
    }
}

/// Fails where an answer lacks a number that a sound mechanism of the same kind has: JSON writes what is no number as
/// null.
pub fn complete(input: &Value, answer: &Value) -> Result<(), String> {
    // Efficiency needs a torque, stiffness something soft, strength its own sizes.
    let may_lack = |place: &String| match place.as_str() {
        "eff_total" | "k_drive" => true,
        "strength" => input["strength"].is_null(),
        _ => false,
    };
    for row in answer["results"].as_array().unwrap() {
        for (key, value) in row.as_object().unwrap() {
            let mut found = Vec::new();
            nulls(value, key, &mut found);
            found.retain(|place| !may_lack(place));
            if !found.is_empty() {
                return Err(format!("no number at {found:?}"));
            }
        }
    }
    Ok(())
}

fn nulls(tree: &Value, path: &str, found: &mut Vec<String>) {
    match tree {
        Value::Object(map) => {
            map.iter().for_each(|(key, value)| nulls(value, &format!("{path}/{key}"), found));
        }
        Value::Array(list) => list.iter().for_each(|value| nulls(value, path, found)),
        Value::Null => found.push(path.to_owned()),
        _ => {}
    }
}
