//! A sentence with figures in it, kept apart from the units it will be shown in.
use super::bound::{self, Bound};
use super::figures::Fit;
use super::{Kind, Length, Style, System, figures, inwards, print};

/// A figure inside a sentence, in SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// A size or place, m.
    Size(f64),
    /// A size or place that must be reached, m: shown no smaller.
    AtLeast(f64),
    /// A size or place that must not be passed, m: shown no larger.
    AtMost(f64),
    /// A length as it was entered, to be laid out with a rule.
    Laid(Length),
    /// A computed size to be laid out with a rule, m.
    Ruled(f64),
    /// A computed place that must be met closer than a rule can be read, m.
    Pinned(f64),
    /// A gap to be set with a rule, m.
    Slack(f64),
    /// By how much two sizes measured with a rule may differ, m.
    Within(f64),
    /// The bit for a hole of a diameter.
    Bit(Length, Fit),
    /// The value of an input in stored steps, as it would be written.
    Written(Kind, i64),
    /// The end of an input's range in stored steps, seen from a value within it, as [`inwards`] has it: what is read is taken.
    Limit(Kind, i64, i64),
    /// A small displacement, m.
    Give(f64),
    /// A small length that must be reached, m: shown no smaller.
    GiveAtLeast(f64),
    /// A small length that must not be passed, m: shown no larger.
    GiveAtMost(f64),
    /// From one small displacement to another, m.
    GiveRange(f64, f64),
    /// A force at the crank or on a wheel, N.
    Force(f64),
    /// A force along the screw or on a pin, N.
    Thrust(f64),
    /// A torque, N m.
    Torque(f64),
    /// A mass, kg.
    Mass(f64),
    /// A share, as a percentage.
    Share(f64),
    /// Turns of the crank.
    Turns(f64),
    /// An area of sheet, m2.
    Area(f64),
    /// An angle, rad, shown in degrees.
    Angle(f64),
    /// A stress or pressure, Pa.
    Stress(f64),
    /// A section's area, m2.
    Section(f64),
    /// A section modulus, m3.
    Modulus(f64),
    /// A second moment of area, m4.
    SecondMoment(f64),
    /// How fast the deck moves, m/s.
    Speed(f64),
    /// How long the crank is turned, s.
    Duration(f64),
    /// Work a second, W.
    Power(f64),
    /// How many times something could grow, with one decimal.
    Factor(f64),
    /// A plain number with two decimals.
    Number(f64),
}

/// A piece of a sentence.
#[derive(Clone, Debug, PartialEq)]
enum Piece {
    Words(String),
    Amount(Amount),
}

/// A sentence with figures in it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Phrase(Vec<Piece>);

impl Phrase {
    /// A sentence that begins with these words.
    #[must_use]
    pub fn new(words: impl Into<String>) -> Self {
        Self(vec![Piece::Words(words.into())])
    }

    /// The sentence with more words behind it.
    #[must_use]
    pub fn and(mut self, words: impl Into<String>) -> Self {
        self.0.push(Piece::Words(words.into()));
        self
    }

    /// The sentence with another behind it.
    #[must_use]
    pub fn then(mut self, other: Self) -> Self {
        self.0.extend(other.0);
        self
    }

    /// The sentence with a figure behind it.
    #[must_use]
    pub fn with(mut self, amount: Amount) -> Self {
        self.0.push(Piece::Amount(amount));
        self
    }

    /// The sentence in the units of a system.
    #[must_use]
    pub fn text(&self, system: System) -> String {
        self.0.iter().fold(String::new(), |text, piece| match piece {
            Piece::Words(words) => text + words,
            Piece::Amount(amount) => text + &amount.text(system),
        })
    }

    /// The words before the first figure.
    #[must_use]
    pub fn opening(&self) -> String {
        self.0
            .iter()
            .map_while(|piece| if let Piece::Words(words) = piece { Some(words.as_str()) } else { None })
            .collect()
    }

    /// Every figure in the sentence, in order.
    pub fn amounts(&self) -> impl Iterator<Item = Amount> + '_ {
        self.0.iter().filter_map(|piece| match piece {
            Piece::Words(_) => None,
            Piece::Amount(amount) => Some(*amount),
        })
    }
}

impl Amount {
    /// The figure with its unit, in the units of a system.
    #[must_use]
    pub fn text(self, system: System) -> String {
        match self {
            Self::Size(metres) => figures::size(metres, system),
            Self::AtLeast(metres) => bound::size(metres, Bound::Least, system),
            Self::AtMost(metres) => bound::size(metres, Bound::Most, system),
            Self::Laid(length) => figures::laid(length, system),
            Self::Ruled(metres) => figures::ruled(metres, system),
            Self::Pinned(metres) => figures::pinned(Length::m(metres), system),
            Self::Slack(metres) => figures::slack(metres, system),
            Self::Within(metres) => figures::within(metres, system),
            Self::Bit(diameter, fit) => figures::bit(diameter, fit, system),
            Self::Written(kind, steps) => return print(steps, kind, system, Style::Short).text(),
            Self::Limit(kind, end, from) => {
                let line = inwards(kind, end, from, system).next();
                // Without a line before it a size is told with all its digits.
                let all = line.is_none() && matches!(kind, Kind::Length | Kind::Ratio);
                let style = if all { Style::Full } else { Style::Short };
                return print(line.unwrap_or(end), kind, system, style).text();
            }
            Self::Give(metres) => figures::sag(metres, system),
            Self::GiveAtLeast(metres) => bound::give(metres, Bound::Least, system),
            Self::GiveAtMost(metres) => bound::give(metres, Bound::Most, system),
            Self::GiveRange(from, to) => {
                let (from, to) = (figures::sag(from, system), figures::sag(to, system));
                return if from.number == to.number {
                    to.to_string()
                } else {
                    format!("{} to {to}", from.number)
                };
            }
            Self::Force(newtons) => figures::small_force(newtons, system),
            Self::Thrust(newtons) => figures::large_force(newtons, system),
            Self::Torque(newton_metres) => figures::torque(newton_metres, system),
            Self::Mass(kilograms) => figures::weight(kilograms, system),
            Self::Share(share) => figures::percent(share),
            Self::Turns(turns) => figures::turns(turns),
            Self::Area(square_metres) => figures::area(square_metres, system),
            Self::Angle(radians) => figures::angle(radians),
            Self::Stress(pascals) => figures::stress(pascals, system),
            Self::Section(square_metres) => figures::section_area(square_metres, system),
            Self::Modulus(cubic_metres) => figures::section_modulus(cubic_metres, system),
            Self::SecondMoment(metres_to_the_fourth) => figures::second_moment(metres_to_the_fourth, system),
            Self::Speed(metres_a_second) => figures::speed(metres_a_second, system),
            Self::Duration(seconds) => figures::minutes(seconds),
            Self::Power(watts) => figures::power(watts),
            Self::Factor(factor) => figures::factor(factor),
            Self::Number(number) => figures::ratio(number),
        }
        .to_string()
    }
}

/// A title or label inside a sentence: its first letter small, unless it is a name or a sign.
#[must_use]
pub fn lower(title: &str) -> String {
    let mut letters = title.chars();
    let first = letters.next().unwrap_or_default();
    let name = letters.clone().next().is_none_or(|second| second == ' ' || second.is_ascii_uppercase());
    if name { title.to_owned() } else { [first.to_ascii_lowercase()].into_iter().chain(letters).collect() }
}

/// Words as they stand at the beginning of a sentence.
///
/// Our own words are plain English, so that plain letters will do: the tables for all scripts of the world take 16 kB of the first load.
#[must_use]
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map(|first| first.to_ascii_uppercase()).into_iter().chain(letters).collect()
}
