//! A design that is kept, as the browser tells of it.

/// A design on the shelf.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// What it is asked for by; letters and digits.
    pub id: String,
    /// When it was put there or changed, as it shall be read.
    pub date: String,
    /// Its name on the shelf.
    pub name: String,
    /// The design, as a link without view.
    pub link: String,
    /// What else a file brought with it, as one line of text; see [`crate::share::file::Kept::text`].
    pub extra: String,
}

impl Kept {
    /// Designs as text, one a line, its parts with tabs between them.
    #[must_use]
    pub fn write(list: &[Self]) -> String {
        let plain = |text: &str| text.replace(char::is_control, " ");
        let line = |kept: &Self| {
            [&kept.id, &kept.date, &kept.name, &kept.link, &kept.extra].map(|part| plain(part)).join("\t")
        };
        list.iter().map(line).collect::<Vec<_>>().join("\n")
    }

    /// The designs of a text; lines that are none are passed over.
    #[must_use]
    pub fn read(text: &str) -> Vec<Self> {
        text.lines()
            .filter_map(|line| {
                let mut parts = line.split('\t').map(str::to_owned);
                let mut next = || parts.next();
                let (id, date, name, link, extra) = (next()?, next()?, next()?, next()?, next()?);
                let plain = !id.is_empty() && id.bytes().all(|sign| sign.is_ascii_alphanumeric());
                plain.then_some(Self { id, date, name, link, extra })
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::Kept;

    #[test]
    fn a_list_is_read_back_and_signs_that_would_break_it_are_not_kept() {
        let kept = |id: &str, name: &str| Kept {
            id: id.into(),
            date: "2026-11-25".into(),
            name: name.into(),
            link: "a.lm25hda".into(),
            extra: String::new(),
        };
        let list = [kept("1k", "Lift"), kept("2", "two\tlines\nof <b>name</b>")];
        let read = Kept::read(&Kept::write(&list));
        assert_eq!(read[0], list[0]);
        assert_eq!(read[1].name, "two lines of <b>name</b>");
        assert_eq!(read.len(), 2);
        assert_eq!(Kept::read("a b\tx\ty\tz\t\n\nonly"), []);
    }
}
