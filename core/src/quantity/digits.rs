//! Decimal digits: the one place where a number becomes text.

/// The true minus sign.
pub(super) const MINUS: char = '−';
/// Sets groups of three digits apart, from 10 000 up, and never breaks a line.
const THIN_SPACE: char = '\u{202F}';
/// From here digits stand in groups.
const GROUPED_FROM: u128 = 10_000;

/// How digits are set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Setting {
    /// Digits after the point.
    pub(super) decimals: u32,
    /// Leave out zeros at the end of the decimals.
    pub(super) trimmed: bool,
    /// Set groups of three digits apart from 10 000 up.
    pub(super) grouped: bool,
}

/// `scaled` divided by ten to the power of the decimals, as text.
pub(super) fn decimal(scaled: i128, setting: Setting) -> String {
    let digits = format!("{:0>width$}", scaled.unsigned_abs(), width = setting.decimals as usize + 1);
    let (whole, decimals) = digits.split_at(digits.len() - setting.decimals as usize);
    let decimals = if setting.trimmed { decimals.trim_end_matches('0') } else { decimals };

    let mut text = String::with_capacity(digits.len() * 2);
    if scaled < 0 {
        text.push(MINUS);
    }
    let grouped = setting.grouped && whole.parse().is_ok_and(|whole: u128| whole >= GROUPED_FROM);
    for (place, digit) in whole.chars().enumerate() {
        if grouped && place > 0 && (whole.len() - place).is_multiple_of(3) {
            text.push(THIN_SPACE);
        }
        text.push(digit);
    }
    if !decimals.is_empty() {
        text.push('.');
        text.push_str(decimals);
    }
    text
}

/// A mixed number such as `1 7/16`: so many parts of which `parts_of_one` make one.
pub(super) fn mixed(parts: i128, parts_of_one: u32) -> String {
    let size = parts.unsigned_abs();
    let (whole, mut num) = (size / u128::from(parts_of_one), size % u128::from(parts_of_one));
    let mut den = parts_of_one;
    while num > 0 && num.is_multiple_of(2) && den.is_multiple_of(2) {
        num /= 2;
        den /= 2;
    }
    let sign = if parts < 0 { MINUS.to_string() } else { String::new() };
    match (whole, num) {
        (_, 0) => format!("{sign}{whole}"),
        (0, _) => format!("{sign}{num}/{den}"),
        _ => format!("{sign}{whole} {num}/{den}"),
    }
}
