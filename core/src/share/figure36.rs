//! Whole numbers in 36 digits, the shortest text that survives any mail program.

const DIGITS: &[u8; 36] = b"0123456789abcdefghijklmnopqrstuvwxyz";

/// A number in base 36, with `-` in front when negative.
pub(super) fn write(number: i64) -> String {
    let mut rest = number.unsigned_abs();
    let mut signs = Vec::new();
    loop {
        let digit = usize::try_from(rest % 36).unwrap_or(0);
        signs.push(char::from(DIGITS[digit]));
        rest /= 36;
        if rest == 0 {
            break;
        }
    }
    if number < 0 {
        signs.push('-');
    }
    signs.into_iter().rev().collect()
}

/// The number a text in base 36 stands for; nothing for any other text or beyond 64 bits.
pub(super) fn read(text: &str) -> Option<i64> {
    let plain = text.strip_prefix('-').unwrap_or(text);
    let lower = plain.bytes().all(|sign| sign.is_ascii_digit() || sign.is_ascii_lowercase());
    if plain.is_empty() || !lower { None } else { i64::from_str_radix(text, 36).ok() }
}
