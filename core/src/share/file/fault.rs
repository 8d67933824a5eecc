//! Why a text is no file of this program.
use core::fmt;

use super::{DEEPEST, MOST_DESIGNS, READ_LIMIT, VERSION};
use crate::design::{NAME_BYTES, NAME_LIMIT};
use crate::quantity::ReadError;

/// Why a file cannot be opened; whoever opens it keeps the design there is.
#[derive(Clone, Debug, PartialEq)]
pub enum FileFault {
    /// Longer than [`READ_LIMIT`].
    TooLong,
    /// No JSON, or broken off; line and column where it stops making sense, from 1.
    NotJson(usize, usize),
    /// Members within members deeper than [`DEEPEST`].
    TooDeep,
    /// A member that stands twice in the same place.
    Twice(String),
    /// JSON of another program.
    Foreign,
    /// Written by a version whose files have another meaning.
    Newer(u64),
    /// A member that is missing or of another sort: its place, and what must stand there.
    Member(String, &'static str),
    /// A value in another unit than its input has: the input's name, the unit that stands there, the input's own.
    Unit(&'static str, String, &'static str),
    /// A value in words that cannot be read: the input's name, and why.
    Value(&'static str, ReadError),
    /// A number beyond any input: the input's name.
    Beyond(&'static str),
    /// A choice that does not exist: the input's name, and its number.
    Choice(&'static str, i64),
    /// A name beyond the limits, with its characters.
    Name(usize),
    /// More than [`MOST_DESIGNS`].
    TooMany(usize),
}

impl fmt::Display for FileFault {
    fn fmt(&self, form: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLong => write!(
                form,
                "This file is larger than {} MB, so it is not a file of this program.",
                READ_LIMIT / 1_000_000
            ),
            Self::NotJson(line, column) => write!(
                form,
                "This file is no JSON, or it is damaged: it stops making sense in line {line}, column {column}. Save it again, or take another copy."
            ),
            Self::TooDeep => write!(
                form,
                "This file has members within members more than {DEEPEST} deep, which no file of this program has."
            ),
            Self::Twice(name) => write!(
                form,
                "In this file “{name}” stands twice in the same place, so that it cannot be told which one holds. Take one of them out."
            ),
            Self::Foreign => write!(
                form,
                "This is not a file of this program: such a file begins with a member “format” that says “{}” or “{}”.",
                super::DESIGN,
                super::SHELF
            ),
            Self::Newer(version) => write!(
                form,
                "This file was written by a newer version of the program (file version {version}; this one reads {VERSION}). Load the page anew, then open it again."
            ),
            Self::Member(place, wanted) => write!(form, "In this file {place} must be {wanted}."),
            Self::Unit(input, unit, "") => {
                write!(form, "In this file “{input}” has the unit “{unit}”; it has none. Take the unit out.")
            }
            Self::Unit(input, unit, own) => {
                write!(form, "In this file “{input}” has the unit “{unit}”; its unit is {own}.")
            }
            Self::Value(input, error) => write!(form, "In this file “{input}” cannot be read: {error}"),
            Self::Beyond(input) => write!(form, "In this file “{input}” has a number beyond all measure."),
            Self::Choice(input, number) => write!(
                form,
                "In this file “{input}” is choice {number}, which this version does not have. Load the page anew for the newest version, or write another number."
            ),
            Self::Name(signs) => write!(
                form,
                "In this file the name has {signs} characters; it may have {NAME_LIMIT}, and {NAME_BYTES} bytes of UTF-8. Shorten it."
            ),
            Self::TooMany(count) => {
                write!(form, "This shelf has {count} designs; at most {MOST_DESIGNS} are read at once.")
            }
        }
    }
}
