//! Names of files after the design's name.

/// A longer beginning of a file's name is cut, in characters: with what follows it stays readable in a list.
const MOST: usize = 40;

/// What a design's name gives as the beginning of a file's name: small letters and digits of ASCII, all else one hyphen; `lifting-table` where
/// nothing is left.
#[must_use]
pub fn stem(name: &str) -> String {
    let mut text = String::new();
    for sign in name.chars() {
        if sign.is_ascii_alphanumeric() {
            text.push(sign.to_ascii_lowercase());
        } else if !text.is_empty() && !text.ends_with('-') {
            text.push('-');
        }
        if text.len() >= MOST {
            break;
        }
    }
    let text = text.trim_end_matches('-');
    if text.is_empty() { "lifting-table".into() } else { text.into() }
}

/// The name of a file that belongs to a design of this name: `what` it holds, with its ending, after the stem.
#[must_use]
pub fn file_name(name: &str, what: &str) -> String {
    format!("{}-{what}", stem(name))
}

#[cfg(test)]
mod tests {
    use super::stem;

    #[test]
    fn names_become_plain() {
        assert_eq!(stem("Paper-stack lift"), "paper-stack-lift");
        assert_eq!(stem("../../Über \"Tisch\" <1>"), "ber-tisch-1");
        assert_eq!(stem("\u{6A5F}"), "lifting-table");
        assert_eq!(stem(""), "lifting-table");
        assert!(stem(&"long name ".repeat(9)).len() <= 40);
    }
}
