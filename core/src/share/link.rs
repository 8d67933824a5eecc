//! A design as a short text for an address.
//!
//! Version 1, fields separated by dots:
//! `a` or `b`, the demo to start from; then for each input that differs from it the two letters of the input and its value in whole
//! steps, in base 36; then `~` and the name, percent-encoded, where it differs. `b.all9fk.~My%20bench` is one.
//! What an input is called, its steps and the two demos never change, so an old link opens for ever.
use core::fmt;

use super::figure36;
use crate::design::{Demo, Design, NAME_LIMIT};

/// The version that is written.
pub const VERSION: &str = "1";

/// The longest text that is looked at, in bytes.
pub const READ_LIMIT: usize = 8000;

/// Why a text is not a design.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LinkFault {
    /// Longer than [`READ_LIMIT`].
    TooLong,
    /// It does not begin with a demo's letter, or a part of it is not a value.
    Broken,
    /// It has an input this program does not know.
    Unknown(String),
}

impl fmt::Display for LinkFault {
    fn fmt(&self, form: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLong => write!(
                form,
                "This link is longer than {READ_LIMIT} characters, so it is not a design of this program. Ask for it again."
            ),
            Self::Broken => {
                form.write_str("This link is damaged, perhaps cut short on its way. Ask for it again; the design below is still yours.")
            }
            Self::Unknown(key) => write!(
                form,
                "This link has an input “{key}” that this version does not know. Load the page anew for the newest version."
            ),
        }
    }
}

/// The design as text: the shorter of its differences from the two demos. Never over 1800 characters.
#[must_use]
pub fn encode(design: &Design) -> String {
    Demo::ALL.into_iter().map(|demo| differences(design, demo)).min_by_key(String::len).unwrap_or_default()
}

fn differences(design: &Design, demo: Demo) -> String {
    let from = demo.design();
    let mut text = demo.letter().to_string();
    for field in Design::fields() {
        let steps = field.get(design);
        if steps != field.get(&from) {
            text.push('.');
            text.push_str(field.key);
            text.push_str(&figure36::write(steps));
        }
    }
    if design.name != from.name {
        text.push_str(".~");
        percent_encode(&design.name, &mut text);
    }
    text
}

/// The design a text stands for.
///
/// Values may lie outside their ranges: what a design means is judged by [`crate::report::analyse`].
///
/// # Errors
/// [`LinkFault`], whose text says what is wrong; the caller keeps the design it has.
pub fn decode(text: &str) -> Result<Design, LinkFault> {
    if text.len() > READ_LIMIT {
        return Err(LinkFault::TooLong);
    }
    let mut pieces = text.split('.');
    let letter = pieces.next().unwrap_or_default();
    let demo =
        Demo::ALL.into_iter().find(|demo| demo.letter().to_string() == letter).ok_or(LinkFault::Broken)?;
    let mut design = demo.design();
    for piece in pieces {
        if let Some(name) = piece.strip_prefix('~') {
            design.rename(&percent_decode(name).ok_or(LinkFault::Broken)?);
            continue;
        }
        let (key, value) = piece.split_at_checked(2).ok_or(LinkFault::Broken)?;
        let field = Design::field(key).ok_or_else(|| LinkFault::Unknown(key.chars().take(8).collect()))?;
        field.set(&mut design, figure36::read(value).ok_or(LinkFault::Broken)?);
    }
    Ok(design)
}

fn percent_encode(name: &str, text: &mut String) {
    for byte in name.bytes() {
        if byte.is_ascii_alphanumeric() || byte == b'-' || byte == b'_' {
            text.push(char::from(byte));
        } else {
            text.push('%');
            for half in [byte >> 4, byte & 15] {
                text.push(char::from_digit(u32::from(half), 16).unwrap_or('0').to_ascii_uppercase());
            }
        }
    }
}

fn percent_decode(text: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(text.len().min(4 * NAME_LIMIT));
    let mut rest = text.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let mut half = || rest.next().and_then(|sign| char::from(sign).to_digit(16));
            let (high, low) = (half()?, half()?);
            bytes.push(u8::try_from(high * 16 + low).ok()?);
        } else {
            bytes.push(byte);
        }
    }
    String::from_utf8(bytes).ok()
}
