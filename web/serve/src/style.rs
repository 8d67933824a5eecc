//! The one style sheet of the page, from the sheets in `web/style`.
use std::fs;
use std::path::Path;

use crate::trouble::Trouble;

/// The sheets of `folder` in one: `tokens.css` first, since all others use its names, `print.css` last, since it overrides
/// all others, and the rest by name between them.
pub fn sheet(folder: &Path) -> Result<String, Trouble> {
    let mut names = Vec::new();
    for entry in fs::read_dir(folder).map_err(Trouble::with_path("read", folder))? {
        let name =
            entry.map_err(Trouble::with_path("read", folder))?.file_name().to_string_lossy().into_owned();
        if name.ends_with(".css") {
            names.push(name);
        }
    }
    if names.is_empty() {
        return Err(Trouble::new(format!("{} holds no style sheet.", folder.display())));
    }
    put_in_order(&mut names);
    let mut sheet = String::new();
    for name in names {
        let path = folder.join(name);
        sheet += &fs::read_to_string(&path).map_err(Trouble::with_path("read", &path))?;
        sheet.push('\n');
    }
    Ok(sheet)
}

fn put_in_order(names: &mut [String]) {
    names.sort_by_cached_key(|name| {
        let rank = match name.as_str() {
            "tokens.css" => 0,
            "print.css" => 2,
            _ => 1,
        };
        (rank, name.clone())
    });
}

#[cfg(test)]
mod tests {
    use super::put_in_order;

    #[test]
    fn tokens_stand_first_and_print_last() {
        let mut names = ["print.css", "layout.css", "tokens.css", "controls.css"].map(str::to_owned);
        put_in_order(&mut names);
        assert_eq!(names, ["tokens.css", "controls.css", "layout.css", "print.css"]);
    }
}
