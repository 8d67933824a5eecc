//! Reading a quantity from what people write: `38`, `1 1/2"`, `4' 2 1/2"`, `0,9 m`, `45 lb`, `12 %`.

use super::error::{LONGEST, ReadError};
use super::exact::Exact;
use super::kind::{Kind, System};
use super::number::{Number, opens_number, scan};
use super::print::{Style, print};
use super::unit::Unit;

/// The most steps either side of zero that are read: 625 000 km, ten thousand tonnes, a billion kilonewtons.
pub const MOST_STEPS: i64 = 1_000_000_000_000_000;

/// The value of `text` in steps of its kind.
///
/// A bare number is in the usual unit of `system`: mm, kg, N, MPa, kg/m3 or in, lb, lbf, psi, lb/ft3.
/// Understood are decimals with point or comma, fractions (`3/4`, `1 1/2`, `1-1/2`, `1½`), feet with inches and pounds
/// with ounces, groups of three digits set off by spaces, powers of ten, and typographic quotes, spaces and minus
/// signs. The result is the nearest step, halves away from zero; the arithmetic is exact.
///
/// # Errors
/// [`ReadError`] says what is wrong and what would be right. A comma before exactly three digits is refused with both
/// readings offered, unless everything before it is zero. Whether the value suits the input it was written into is not
/// judged here.
pub fn read(text: &str, kind: Kind, system: System) -> Result<i64, ReadError> {
    if text.chars().nth(LONGEST).is_some() {
        return Err(ReadError::TooLong);
    }
    let plain = plain(text, kind);
    if plain.is_empty() {
        return Err(ReadError::Empty { wanted: kind });
    }
    if kind == Kind::Switch
        && let Some(steps) = switch(&plain)
    {
        return Ok(steps);
    }
    Reader { text: text.trim(), plain: &plain, kind, system }.read()
}

/// The text in lower case, with one spelling for every space, quote, minus and fraction bar.
fn plain(text: &str, kind: Kind) -> Vec<char> {
    let mut plain: Vec<char> = Vec::with_capacity(LONGEST);
    for c in text.chars() {
        let c = match c {
            '\u{200B}' | '\u{200E}' | '\u{200F}' | '\u{2060}' | '\u{FEFF}' | '≈' => continue,
            '$' | '€' | '£' | '¥' if matches!(kind, Kind::Money | Kind::Rate) => ' ',
            '−' | '–' | '‐' | '‑' => '-',
            '′' | '’' | '‘' | 'ʹ' | 'ʼ' | '´' => '\'',
            '″' | '”' | '“' | 'ʺ' => '"',
            '⁄' | '∕' => '/',
            c if c.is_whitespace() => ' ',
            c => c.to_ascii_lowercase(),
        };
        match (c, plain.last()) {
            (' ', None | Some(' ')) => {}
            ('\'', Some('\'')) => {
                plain.pop();
                plain.push('"');
            }
            _ => plain.push(c),
        }
    }
    if plain.last() == Some(&' ') {
        plain.pop();
    }
    plain
}

/// The value of a word for yes or no.
fn switch(plain: &[char]) -> Option<i64> {
    match plain.iter().collect::<String>().as_str() {
        "yes" | "on" | "true" | "1" => Some(1),
        "no" | "off" | "false" | "0" => Some(0),
        _ => None,
    }
}

/// How many characters may stand between feet and inches: the point of an abbreviation, spaces, one hyphen.
fn joint(text: &[char]) -> usize {
    // A point ends an abbreviation only before a space; otherwise it begins a number such as ".5".
    let mut end = usize::from(matches!(text, ['.', ' ', ..]));
    for optional in [' ', '-', ' '] {
        end += usize::from(text.get(end) == Some(&optional));
    }
    end
}

/// A unit that was found after a number.
struct Found {
    unit: &'static Unit,
    /// The smaller unit of a second number, and where that number begins.
    smaller: Option<(&'static Unit, usize)>,
}

/// One text being read.
struct Reader<'a> {
    /// As it was written, for messages.
    text: &'a str,
    plain: &'a [char],
    kind: Kind,
    system: System,
}

impl Reader<'_> {
    fn read(&self) -> Result<i64, ReadError> {
        if self.kind == Kind::Switch {
            return Err(self.not_understood());
        }
        let (negative, start) = match self.plain {
            ['-', ' ', ..] => (true, 2),
            ['-', ..] => (true, 1),
            ['+', ' ', ..] => (false, 2),
            ['+', ..] => (false, 1),
            _ => (false, 0),
        };
        let (first, after) = self.number(start)?;
        let Found { unit, smaller } = self.unit(after)?;
        let mut steps = first.times(unit.steps).ok_or(ReadError::TooLarge)?;
        if let Some((smaller, at)) = smaller {
            let (second, after) = self.number(at)?;
            let rest = self.rest(after);
            if !rest.is_empty() && Unit::named(&rest, self.kind) != Some(smaller) {
                return Err(self.not_understood());
            }
            let second = second.times(smaller.steps).ok_or(ReadError::TooLarge)?;
            let carries = second.over(unit.steps).is_none_or(Exact::reaches_one);
            steps = steps.plus(second).ok_or(ReadError::TooLarge)?;
            if carries {
                return Err(self.carries_over(steps, negative));
            }
        }
        self.whole_steps(if negative { steps.negated() } else { steps })
    }

    /// The number at `start` and the place after it.
    fn number(&self, start: usize) -> Result<(Exact, usize), ReadError> {
        let (number, used) = scan(&self.plain[start..]).ok_or_else(|| self.not_understood())?;
        let end = start + used;
        match number {
            Number::Value(value) => Ok((value, end)),
            Number::Marks(numbers) => Err(self.separator(start, end, &numbers)),
            Number::Carries(sum) => {
                let unit = self.unit(end)?.unit;
                let negative = self.plain.first() == Some(&'-');
                // With feet before it the sum of the last part alone would mislead.
                if self.plain[..start].iter().any(char::is_ascii_digit) {
                    return Err(ReadError::CarriesOver { reading: None });
                }
                Err(self.carries_over(sum.times(unit.steps).ok_or(ReadError::TooLarge)?, negative))
            }
            Number::OverZero => Err(ReadError::OverZero),
            Number::TooLarge => Err(ReadError::TooLarge),
        }
    }

    /// The unit at `start`, and, when a smaller one follows, that and the place of its number.
    fn unit(&self, start: usize) -> Result<Found, ReadError> {
        let rest = &self.plain[start..];
        let space = usize::from(rest.first() == Some(&' '));
        let word = rest[space..].iter().take_while(|c| c.is_alphabetic() || matches!(c, '\'' | '#')).count();
        let name: String = rest[space..space + word].iter().collect();
        let second = space + word + joint(&rest[space + word..]);
        if let Some(unit) = Unit::named(&name, self.kind)
            && let Some(smaller) = unit.smaller()
            && rest.get(second).copied().is_some_and(opens_number)
        {
            return self.wanted(unit).map(|unit| Found { unit, smaller: Some((smaller, start + second)) });
        }
        let name = self.rest(start);
        if name.is_empty() {
            return Ok(Found { unit: Unit::usual(self.kind, self.system), smaller: None });
        }
        match Unit::named(&name, self.kind) {
            Some(unit) => self.wanted(unit).map(|unit| Found { unit, smaller: None }),
            None if name.chars().any(char::is_alphabetic)
                && !name.chars().any(|c| opens_number(c) && c != '.') =>
            {
                Err(ReadError::UnknownUnit { unit: name, wanted: self.kind })
            }
            None => Err(self.not_understood()),
        }
    }

    /// What stands from `start` to the end, without the space before and the abbreviation point after it.
    fn rest(&self, start: usize) -> String {
        let rest: String = self.plain[start..].iter().collect();
        let rest = rest.trim();
        rest.strip_suffix('.').unwrap_or(rest).to_owned()
    }

    fn wanted(&self, unit: &'static Unit) -> Result<&'static Unit, ReadError> {
        if unit.kind == self.kind {
            Ok(unit)
        } else {
            Err(ReadError::WrongUnit { unit: unit.symbol, measures: unit.kind, wanted: self.kind })
        }
    }

    fn whole_steps(&self, steps: Exact) -> Result<i64, ReadError> {
        let nearest = i64::try_from(steps.rounded())
            .ok()
            .filter(|steps| steps.unsigned_abs() <= MOST_STEPS.unsigned_abs());
        let nearest = nearest.ok_or(ReadError::TooLarge)?;
        if matches!(self.kind, Kind::Count | Kind::Choice) && !steps.is_whole() {
            return Err(ReadError::NotWhole { text: self.text.to_owned(), nearest });
        }
        Ok(nearest)
    }

    fn not_understood(&self) -> ReadError {
        ReadError::NotUnderstood { text: self.text.to_owned(), wanted: self.kind }
    }

    /// The refusal of a doubtful mark, offering the same text with each of `numbers` in the doubtful one's place.
    fn separator(&self, start: usize, end: usize, numbers: &[String]) -> ReadError {
        let spelled = |range: &[char]| range.iter().collect::<String>();
        let bare = end == self.plain.len() && !self.plain[..start].iter().any(char::is_ascii_digit);
        let unit = Unit::usual(self.kind, self.system).symbol;
        let readings = numbers
            .iter()
            .map(|number| {
                let tail = if bare { format!(" {unit}") } else { spelled(&self.plain[end..]) };
                format!("{}{number}{tail}", spelled(&self.plain[..start])).trim_end().to_owned()
            })
            .filter_map(|text| read(&text, self.kind, self.system).ok().map(|steps| (text, steps)))
            .collect();
        ReadError::Separator { written: spelled(&self.plain[start..end]), readings }
    }

    /// The refusal of a part that carries over, offering the sum.
    fn carries_over(&self, steps: Exact, negative: bool) -> ReadError {
        let steps = self.whole_steps(if negative { steps.negated() } else { steps }).ok();
        ReadError::CarriesOver {
            reading: steps.map(|steps| (print(steps, self.kind, self.system, Style::Full).text(), steps)),
        }
    }
}
