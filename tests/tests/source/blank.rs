//! Rust without what a compiler does not run.

/// `text` with every comment, and the inside of every string and character literal, turned to spaces. Lines stay where
/// they are.
pub fn without_comments_and_strings(text: &str) -> String {
    let characters: Vec<char> = text.chars().collect();
    let mut kept = String::with_capacity(text.len());
    let mut at = 0;
    while at < characters.len() {
        let end = comment(&characters, at).or_else(|| literal(&characters, at)).unwrap_or(at);
        if end > at {
            kept.extend(characters[at..end].iter().map(|&letter| if letter == '\n' { '\n' } else { ' ' }));
            at = end;
        } else {
            kept.push(characters[at]);
            at += 1;
        }
    }
    kept
}

fn starts(characters: &[char], at: usize, word: &str) -> bool {
    word.chars().enumerate().all(|(offset, letter)| characters.get(at + offset) == Some(&letter))
}

/// The end of the comment that begins at `at`; those between `/*` and `*/` nest.
fn comment(characters: &[char], at: usize) -> Option<usize> {
    if starts(characters, at, "//") {
        return Some((at..characters.len()).find(|&end| characters[end] == '\n').unwrap_or(characters.len()));
    }
    if !starts(characters, at, "/*") {
        return None;
    }
    let (mut depth, mut end) = (1, at + 2);
    while end < characters.len() && depth > 0 {
        if starts(characters, end, "/*") {
            (depth, end) = (depth + 1, end + 2);
        } else if starts(characters, end, "*/") {
            (depth, end) = (depth - 1, end + 2);
        } else {
            end += 1;
        }
    }
    Some(end.min(characters.len()))
}

/// The end of the string or character literal that begins at `at`.
fn literal(characters: &[char], at: usize) -> Option<usize> {
    match characters[at] {
        '"' => Some(after_quote(characters, at + 1, '"')),
        'r' if !joins_word(characters, at) => raw(characters, at + 1),
        // A lifetime has no closing quote after its first letter; an escaped character has a backslash there.
        '\'' if characters.get(at + 1) == Some(&'\\') => Some(after_quote(characters, at + 1, '\'')),
        '\'' if characters.get(at + 2) == Some(&'\'') => Some(at + 3),
        _ => None,
    }
}

fn joins_word(characters: &[char], at: usize) -> bool {
    let before = at.checked_sub(1).map(|before| characters[before]);
    // `br"..."` is a raw string too.
    before.is_some_and(|letter| (letter.is_alphanumeric() && letter != 'b') || letter == '_')
}

fn after_quote(characters: &[char], mut at: usize, quote: char) -> usize {
    while at < characters.len() && characters[at] != quote {
        at += if characters[at] == '\\' { 2 } else { 1 };
    }
    (at + 1).min(characters.len())
}

fn raw(characters: &[char], at: usize) -> Option<usize> {
    let hashes = characters[at..].iter().take_while(|&&letter| letter == '#').count();
    if characters.get(at + hashes) != Some(&'"') {
        return None;
    }
    let close = format!("\"{}", "#".repeat(hashes));
    let end = (at + hashes + 1..characters.len()).find(|&end| starts(characters, end, &close));
    Some(end.map_or(characters.len(), |end| end + close.len()))
}

#[test]
fn comments_and_strings_go_and_code_stays() {
    let cases = [
        ("a // b\nc", "a     \nc"),
        ("a /* b /* c */ d */ e", "a                   e"),
        ("f(\"x\\\"y\") z", "f(      ) z"),
        ("r#\"a \" b\"# c", "           c"),
        ("fn f<'a>(x: &'a str) {}", "fn f<'a>(x: &'a str) {}"),
        ("'\"' b '\\'' c", "    b      c"),
    ];
    for (text, expected) in cases {
        assert_eq!(without_comments_and_strings(text), expected, "{text}");
    }
}
