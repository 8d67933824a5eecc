//! Numbers as people write them: decimals with point or comma, groups of three, fractions, powers of ten.

use super::exact::{Exact, power_of_ten};

/// Digits before the point that are kept; more make a number too large for any kind.
const WHOLE_DIGITS: usize = 18;
/// Digits after the point that are kept; the rest is far below any step.
const DECIMALS: usize = 10;
/// The largest power of ten that is worth computing.
const LARGEST_EXPONENT: i32 = 12;

/// A number that was found at the start of a text.
#[derive(Debug, PartialEq)]
pub(super) enum Number {
    /// One clear value.
    Value(Exact),
    /// Marks between digits that leave a doubt: the numbers that may be meant, with a decimal point.
    Marks(Vec<String>),
    /// A whole number with a fraction of one or more.
    Carries(Exact),
    /// A fraction over zero.
    OverZero,
    /// Too many digits.
    TooLarge,
}

/// The fractions that have a character of their own.
fn vulgar(c: char) -> Option<(i128, i128)> {
    Some(match c {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => return None,
    })
}

/// Whether a number can begin with this character.
pub(super) fn opens_number(c: char) -> bool {
    c.is_ascii_digit() || matches!(c, '.' | ',') || vulgar(c).is_some()
}

/// Reads the number at the start of `text`; gives it and how many characters it took, or nothing if there is none.
pub(super) fn scan(text: &[char]) -> Option<(Number, usize)> {
    let first = *text.first()?;
    if let Some((num, den)) = vulgar(first) {
        return Some((Number::Value(Exact::of(num, den)), 1));
    }
    let whole = digits(text);
    if whole > 0 {
        if let Some((fraction, used)) = fraction(&text[whole..], false) {
            return Some((mixed(value_of(&text[..whole]), fraction), whole + used));
        }
        if let Some((num, used)) = over(&text[whole..]) {
            return Some((divided(value_of(&text[..whole]), num), whole + used));
        }
    }
    decimal(text, whole)
}

/// How many of the leading characters are digits.
fn digits(text: &[char]) -> usize {
    text.iter().take_while(|c| c.is_ascii_digit()).count()
}

/// The value of digits, or nothing when there are too many.
fn value_of(digits: &[char]) -> Option<i128> {
    let significant = digits.iter().skip_while(|c| **c == '0');
    if significant.clone().count() > WHOLE_DIGITS {
        return None;
    }
    Some(significant.filter_map(|c| c.to_digit(10)).fold(0, |sum, digit| sum * 10 + i128::from(digit)))
}

/// `/` and digits: the denominator of a fraction whose numerator stands before.
fn over(text: &[char]) -> Option<(Option<i128>, usize)> {
    let rest = text.strip_prefix(&['/'])?;
    let length = digits(rest);
    (length > 0).then(|| (value_of(&rest[..length]), length + 1))
}

/// A fraction after a whole number: after spaces or one hyphen, or directly when it is one character.
fn fraction(text: &[char], hyphen_seen: bool) -> Option<(Option<Exact>, usize)> {
    match text {
        [c, ..] if vulgar(*c).is_some() => vulgar(*c).map(|(num, den)| (Some(Exact::of(num, den)), 1)),
        [' ', rest @ ..] => joined(rest, hyphen_seen),
        ['-', rest @ ..] if !hyphen_seen => joined(rest, true),
        _ => None,
    }
}

/// The rest of [`fraction`] after its joining character.
fn joined(text: &[char], hyphen_seen: bool) -> Option<(Option<Exact>, usize)> {
    let length = digits(text);
    if length == 0 {
        return fraction(text, hyphen_seen).map(|(value, used)| (value, used + 1));
    }
    let (denominator, used) = over(&text[length..])?;
    let value = value_of(&text[..length]).zip(denominator);
    Some((value.map(|(num, den)| Exact::of(num, den)), 1 + length + used))
}

/// A whole number and a fraction; `None` stands for digits that were too many.
fn mixed(whole: Option<i128>, fraction: Option<Exact>) -> Number {
    let (Some(whole), Some(fraction)) = (whole, fraction) else { return Number::TooLarge };
    if fraction.over_zero() {
        return Number::OverZero;
    }
    match Exact::of(whole, 1).plus(fraction) {
        Some(sum) if fraction.reaches_one() => Number::Carries(sum),
        Some(sum) => Number::Value(sum),
        None => Number::TooLarge,
    }
}

/// A fraction alone; `None` stands for digits that were too many.
fn divided(num: Option<i128>, den: Option<i128>) -> Number {
    match (num, den) {
        (Some(_), Some(0)) => Number::OverZero,
        (Some(num), Some(den)) => Number::Value(Exact::of(num, den)),
        _ => Number::TooLarge,
    }
}

/// A number without a fraction, whose first `whole` characters are digits.
fn decimal(text: &[char], whole: usize) -> Option<(Number, usize)> {
    if let Some(grouped) = spaced_groups(text, whole) {
        let digits: Vec<char> = text[..grouped].iter().copied().filter(char::is_ascii_digit).collect();
        let tail = &text[grouped..];
        let (decimals, used) = match tail {
            ['.' | ',', rest @ ..] if rest.first().is_some_and(char::is_ascii_digit) => {
                let length = self::digits(rest);
                (&rest[..length], 1 + length)
            }
            _ => (&tail[..0], 0),
        };
        return Some((assemble(&digits, decimals, 0), grouped + used));
    }

    // Digits with points and commas between them.
    let mut parts: Vec<&[char]> = vec![&text[..whole]];
    let mut marks: Vec<char> = Vec::new();
    let mut end = whole;
    while let [mark @ ('.' | ','), rest @ ..] = &text[end..] {
        let length = digits(rest);
        if length == 0 {
            break;
        }
        marks.push(*mark);
        parts.push(&rest[..length]);
        end += 1 + length;
    }
    match (marks.as_slice(), parts.as_slice()) {
        ([], [[]]) => None,
        ([], [only]) => Some(with_exponent(text, end, only, &[])),
        ([','], [before, after]) if after.len() == 3 && before.iter().any(|c| *c != '0') => {
            let (before, after) = (spelled(before), spelled(after));
            Some((Number::Marks(vec![format!("{before}{after}"), format!("{before}.{after}")]), end))
        }
        ([_], [before, after]) => Some(with_exponent(text, end, before, after)),
        (marks, parts) => Some((Number::Marks(ungrouped(marks, parts)), end)),
    }
}

/// The length of digits grouped by spaces, `12 000`, or nothing when there is no such group.
fn spaced_groups(text: &[char], whole: usize) -> Option<usize> {
    if !(1..=3).contains(&whole) {
        return None;
    }
    let mut end = whole;
    while let [' ', rest @ ..] = &text[end..] {
        let length = digits(rest);
        if length != 3 || matches!(rest.get(3), Some('/')) {
            break;
        }
        end += 4;
    }
    (end > whole).then_some(end)
}

/// What is meant by digits with several points or commas, if they group thousands at all.
fn ungrouped(marks: &[char], parts: &[&[char]]) -> Vec<String> {
    let (Some(first), Some(last)) = (marks.first(), marks.last()) else { return Vec::new() };
    let Some((head, tail)) = parts.split_first() else { return Vec::new() };
    let uniform = marks.iter().all(|mark| mark == first);
    let mixed = marks[..marks.len() - 1].iter().all(|mark| mark == first) && last != first;
    let groups = if mixed { &tail[..tail.len() - 1] } else { tail };
    if !(uniform || mixed) || !(1..=3).contains(&head.len()) || groups.iter().any(|group| group.len() != 3) {
        return Vec::new();
    }
    let mut number: String = spelled(head);
    number.extend(groups.iter().map(|group| spelled(group)));
    if let (true, Some(decimals)) = (mixed, tail.last()) {
        number = format!("{number}.{}", spelled(decimals));
    }
    vec![number]
}

fn spelled(digits: &[char]) -> String {
    digits.iter().collect()
}

/// Digits before and after the point with a power of ten that may follow at `end`.
fn with_exponent(text: &[char], end: usize, before: &[char], after: &[char]) -> (Number, usize) {
    // A lone point after the digits belongs to the number: "38." is 38.
    let end = if after.is_empty() && matches!(text.get(end), Some('.')) { end + 1 } else { end };
    let (sign, rest) = match &text[end..] {
        ['e', '-', rest @ ..] => (-1, rest),
        ['e', '+', rest @ ..] | ['e', rest @ ..] => (1, rest),
        _ => return (assemble(before, after, 0), end),
    };
    let length = digits(rest);
    if length == 0 {
        return (assemble(before, after, 0), end);
    }
    let used = text.len() - rest.len() + length;
    let exponent = value_of(&rest[..length]).and_then(|value| i32::try_from(value).ok()).unwrap_or(i32::MAX);
    (assemble(before, after, sign * exponent), used)
}

/// The value of digits before and after the point, times a power of ten.
fn assemble(before: &[char], after: &[char], exponent: i32) -> Number {
    let kept = &after[..after.len().min(DECIMALS)];
    let value = (|| {
        let places = u32::try_from(kept.len()).ok()?;
        let tens = power_of_ten(places)?;
        let digits = value_of(before)?.checked_mul(tens)?.checked_add(value_of(kept)?)?;
        let scale = power_of_ten(exponent.clamp(-LARGEST_EXPONENT, LARGEST_EXPONENT).unsigned_abs())?;
        let scale = if exponent < 0 { Exact::of(1, scale) } else { Exact::of(scale, 1) };
        Exact::of(digits, tens).times(scale)
    })();
    match value {
        Some(_) if exponent > LARGEST_EXPONENT => Number::TooLarge,
        Some(_) if exponent < -LARGEST_EXPONENT => Number::Value(Exact::of(0, 1)),
        Some(value) => Number::Value(value),
        None => Number::TooLarge,
    }
}
