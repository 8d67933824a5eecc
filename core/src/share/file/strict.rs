//! JSON as it stands, but with no member twice and none too deep. `serde_json` is taken with `float_roundtrip`: otherwise a number that is kept would come
//! back changed in its last digit.
use core::fmt;

use serde::de::{Deserialize, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Number, Value};

use super::{DEEPEST, FileFault};

/// Begins the message of a member that stands twice.
const TWICE: &str = "twice: ";

/// The value of a text.
pub(super) fn parse(text: &str) -> Result<Value, FileFault> {
    if depth(text) > DEEPEST {
        return Err(FileFault::TooDeep);
    }
    serde_json::from_str::<Strict>(text).map(|strict| strict.0).map_err(|error| {
        let message = error.to_string();
        let twice = message.strip_prefix(TWICE).and_then(|rest| rest.rsplit_once(" at line "));
        twice.map_or_else(
            || FileFault::NotJson(error.line(), error.column()),
            |(name, _)| FileFault::Twice(name.chars().take(40).collect()),
        )
    })
}

/// How deep brackets lie in one another, those within strings aside.
pub(super) fn depth(text: &str) -> usize {
    let (mut now, mut most, mut quoted, mut escaped) = (0_usize, 0, false, false);
    for byte in text.bytes() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if quoted => escaped = true,
            b'"' => quoted = !quoted,
            b'{' | b'[' if !quoted => {
                now += 1;
                most = most.max(now);
            }
            b'}' | b']' if !quoted => now = now.saturating_sub(1),
            _ => {}
        }
    }
    most
}

struct Strict(Value);

impl<'de> Deserialize<'de> for Strict {
    fn deserialize<D: Deserializer<'de>>(source: D) -> Result<Self, D::Error> {
        source.deserialize_any(Any).map(Self)
    }
}

struct Any;

impl<'de> Visitor<'de> for Any {
    type Value = Value;

    fn expecting(&self, form: &mut fmt::Formatter<'_>) -> fmt::Result {
        form.write_str("JSON")
    }

    fn visit_bool<E>(self, value: bool) -> Result<Value, E> {
        Ok(Value::Bool(value))
    }

    fn visit_i64<E>(self, value: i64) -> Result<Value, E> {
        Ok(Value::Number(value.into()))
    }

    fn visit_u64<E>(self, value: u64) -> Result<Value, E> {
        Ok(Value::Number(value.into()))
    }

    fn visit_f64<E: Error>(self, value: f64) -> Result<Value, E> {
        Number::from_f64(value).map(Value::Number).ok_or_else(|| E::custom("no number"))
    }

    fn visit_str<E>(self, value: &str) -> Result<Value, E> {
        Ok(Value::String(value.to_owned()))
    }

    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Value, A::Error> {
        let mut list = Vec::new();
        while let Some(Strict(item)) = items.next_element()? {
            list.push(item);
        }
        Ok(Value::Array(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut members: A) -> Result<Value, A::Error> {
        let mut map = Map::new();
        while let Some(name) = members.next_key::<String>()? {
            let Strict(value) = members.next_value()?;
            if map.contains_key(&name) {
                return Err(Error::custom(format_args!("{TWICE}{name}")));
            }
            map.insert(name, value);
        }
        Ok(Value::Object(map))
    }
}
