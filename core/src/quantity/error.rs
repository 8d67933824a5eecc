//! Why a text was refused, in a sentence, and what may be meant instead.

use core::fmt;

use super::kind::Kind;

/// The most characters a quantity may have.
pub const LONGEST: usize = 64;

/// Why a text is no value of the wanted kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ReadError {
    /// Nothing was written.
    Empty {
        /// What is wanted.
        wanted: Kind,
    },
    /// More than [`LONGEST`] characters.
    TooLong,
    /// The text is not a number with a unit.
    NotUnderstood {
        /// What was written.
        text: String,
        /// What is wanted.
        wanted: Kind,
    },
    /// A mark between digits that may group thousands or begin the decimals.
    Separator {
        /// The number with its marks.
        written: String,
        /// What may be meant, each as a text that can be read, with its steps.
        readings: Vec<(String, i64)>,
    },
    /// A unit of another kind.
    WrongUnit {
        /// The unit as it is usually written.
        unit: &'static str,
        /// What that unit measures.
        measures: Kind,
        /// What is wanted.
        wanted: Kind,
    },
    /// A word or sign after the number that is no known unit.
    UnknownUnit {
        /// What was written.
        unit: String,
        /// What is wanted.
        wanted: Kind,
    },
    /// A fraction over zero.
    OverZero,
    /// A part that should carry over into the one before it: 4' 14" or 1 3/2.
    CarriesOver {
        /// The sum, as a text that can be read, with its steps.
        reading: Option<(String, i64)>,
    },
    /// A fraction of a piece, or of a place in a list.
    NotWhole {
        /// What was written.
        text: String,
        /// The nearest whole number.
        nearest: i64,
    },
    /// Farther from zero than any value the program can hold.
    TooLarge,
}

impl ReadError {
    /// What may be meant instead: texts to show on buttons, with the steps each would give. Often empty.
    #[must_use]
    pub fn offers(&self) -> Vec<(String, i64)> {
        match self {
            Self::Separator { readings, .. } => readings.clone(),
            Self::CarriesOver { reading } => reading.iter().cloned().collect(),
            Self::NotWhole { nearest, .. } => vec![(nearest.to_string(), *nearest)],
            _ => Vec::new(),
        }
    }
}

impl Kind {
    /// What a value of this kind is called in a sentence.
    const fn noun(self) -> &'static str {
        match self {
            Self::Length => "a length",
            Self::Mass => "a weight",
            Self::Force => "a force",
            Self::Ratio => "a plain number or a percentage",
            Self::Stress => "a stress",
            Self::Density => "a density",
            Self::Pace => "a number of turns a minute",
            Self::Angle => "an angle",
            Self::Stiffness => "a stiffness",
            Self::Count => "a number of pieces",
            Self::Money => "a price",
            Self::Rate => "a price a metre or a foot",
            Self::Choice => "the number of a choice",
            Self::Switch => "yes or no",
        }
    }

    /// How a value of this kind may be written.
    const fn example(self) -> &'static str {
        match self {
            Self::Length => "38 mm or 1 1/2 in",
            Self::Mass => "20 kg or 45 lb",
            Self::Force => "200 N or 45 lbf",
            Self::Ratio => "0.15 or 15 %",
            Self::Stress => "9 GPa or 640 MPa",
            Self::Density => "680 kg/m3 or 42 lb/ft3",
            Self::Pace => "30 or 30 /min",
            Self::Angle => "12.5 degrees",
            Self::Stiffness => "17000 N/mm or 97000 lbf/in",
            Self::Count => "4",
            Self::Money => "12.50",
            Self::Rate => "4.50 /m or 1.40 /ft",
            Self::Choice => "1",
            Self::Switch => "yes",
        }
    }
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty { wanted } => {
                write!(
                    f,
                    "Nothing is written here; {} is wanted, for example {}.",
                    wanted.noun(),
                    wanted.example()
                )
            }
            Self::TooLong => write!(f, "That is longer than {LONGEST} characters; write one value."),
            Self::NotUnderstood { text, wanted } => write!(
                f,
                "“{text}” cannot be read; {} is wanted, for example {}.",
                wanted.noun(),
                wanted.example()
            ),
            Self::Separator { written, readings } => match readings.as_slice() {
                [] => write!(
                    f,
                    "The marks in “{written}” can be read in several ways; write it with a decimal point only."
                ),
                [(only, _)] => {
                    write!(f, "The marks in “{written}” are unclear; write {only} if that is meant.")
                }
                [(first, _), (second, _), ..] => {
                    write!(f, "“{written}” can be read as {first} or {second}; write the one that is meant.")
                }
            },
            Self::WrongUnit { unit, measures, wanted } => write!(
                f,
                "{unit} is the unit of {}; here {} is wanted, for example {}.",
                measures.noun(),
                wanted.noun(),
                wanted.example()
            ),
            Self::UnknownUnit { unit, wanted } => write!(
                f,
                "“{unit}” is no known unit; {} is wanted, for example {}.",
                wanted.noun(),
                wanted.example()
            ),
            Self::OverZero => f.write_str("A fraction over zero has no value; write for example 1/2."),
            Self::CarriesOver { reading: Some((sum, _)) } => {
                write!(
                    f,
                    "The last part is as large as one of the part before it; write {sum} if the sum is meant."
                )
            }
            Self::CarriesOver { reading: None } => {
                f.write_str("The last part is as large as one of the part before it; write the sum.")
            }
            Self::NotWhole { text, nearest } => {
                write!(f, "“{text}” is not a whole number; the nearest is {nearest}.")
            }
            Self::TooLarge => {
                f.write_str("That is larger than the program can hold; check the digits and the unit.")
            }
        }
    }
}

impl core::error::Error for ReadError {}
