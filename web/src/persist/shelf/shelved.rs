//! A design on the shelf, and the whole shelf, as they stand in the browser's storage.
use risewright::design::Design;
use risewright::share::link;

use crate::persist::entry::Entry;

/// The keys are this and the design's id.
pub const PREFIX: &str = "risewright.shelf.";

/// A design on the shelf.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shelved {
    /// What it is asked for by: letters and digits.
    pub id: String,
    /// When it was put there or changed, ms since 1970.
    pub changed: u64,
    /// Its name.
    pub name: String,
    /// The design, as a link without view.
    pub link: String,
    /// What else belongs to it, for whoever put it there.
    pub extra: String,
}

impl Shelved {
    /// A design to be put on the shelf.
    pub fn new(id: String, changed: u64, design: &Design, extra: &str) -> Self {
        Self { id, changed, name: design.name.clone(), link: link::encode(design), extra: extra.to_owned() }
    }

    /// Where it stands in the storage.
    pub fn key(&self) -> String {
        format!("{PREFIX}{}", self.id)
    }

    /// Its text there: an [`Entry`] of link, name, and all else.
    pub fn write(&self) -> String {
        let text = format!("{}\n{}\n{}", self.link, self.name, self.extra);
        Entry { stamp: self.changed, text }.write()
    }

    /// None where the text is damaged or was not written by this shelf.
    pub fn read(key: &str, text: &str) -> Option<Self> {
        let id = key.strip_prefix(PREFIX)?;
        if id.is_empty() || !id.bytes().all(|sign| sign.is_ascii_alphanumeric()) {
            return None;
        }
        let entry = Entry::read(text)?;
        let mut parts = entry.text.splitn(3, '\n');
        Some(Self {
            id: id.to_owned(),
            changed: entry.stamp,
            link: parts.next()?.to_owned(),
            name: parts.next()?.to_owned(),
            extra: parts.next()?.to_owned(),
        })
    }

    /// The same under another name, which the design in it gets too, if it can be read.
    pub fn renamed(&self, name: &str, changed: u64) -> Self {
        let mut named = self.clone();
        named.changed = changed;
        if let Ok(mut design) = link::decode(&self.link) {
            design.rename(name);
            named.link = link::encode(&design);
            named.name = design.name;
        } else {
            let mut plain = Design::default();
            plain.rename(name);
            named.name = plain.name;
        }
        named
    }
}

/// What is on the shelf.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Shelf {
    /// The designs, the one changed last first.
    pub designs: Vec<Shelved>,
    /// How many entries could not be read; they are left where they are.
    pub unread: usize,
    /// Whether it lasts no longer than the page.
    pub passing: bool,
}

impl Shelf {
    /// From keys and their texts.
    pub fn of(texts: Vec<(String, String)>, passing: bool) -> Self {
        let count = texts.len();
        let mut designs: Vec<Shelved> =
            texts.iter().filter_map(|(key, text)| Shelved::read(key, text)).collect();
        let unread = count - designs.len();
        designs.sort_by(|one, other| other.changed.cmp(&one.changed).then_with(|| one.id.cmp(&other.id)));
        Self { designs, unread, passing }
    }

    /// The design of an id.
    pub fn get(&self, id: &str) -> Option<&Shelved> {
        self.designs.iter().find(|shelved| shelved.id == id)
    }

    /// A name for a copy that no other design here has.
    pub fn name_of_copy(&self, name: &str) -> String {
        let base = name.rsplit_once(", copy").map_or(name, |(base, rest)| {
            if rest.is_empty() || rest.trim_start().parse::<u32>().is_ok() { base } else { name }
        });
        let names = (1_u32..).map(|number| {
            if number == 1 { format!("{base}, copy") } else { format!("{base}, copy {number}") }
        });
        let mut free = names.filter(|copy| self.designs.iter().all(|shelved| shelved.name != *copy));
        free.next().unwrap_or_else(|| name.to_owned())
    }

    /// What is wrong with it, to be said beside it.
    pub fn trouble(&self) -> Option<String> {
        let mut sentences = Vec::new();
        if self.passing {
            sentences.push(
                "This browser keeps nothing for the page: the shelf is gone when you close it. Save a file of what you want to keep."
                    .to_owned(),
            );
        }
        match self.unread {
            0 => {}
            1 => sentences.push("One entry of the shelf cannot be read; it is left where it is.".to_owned()),
            some => sentences
                .push(format!("{some} entries of the shelf cannot be read; they are left where they are.")),
        }
        (!sentences.is_empty()).then(|| sentences.join(" "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shelved(id: &str, changed: u64, name: &str) -> Shelved {
        let mut design = Design::default();
        design.rename(name);
        Shelved::new(id.into(), changed, &design, "note\nwith lines")
    }

    fn text(shelved: &Shelved) -> (String, String) {
        (shelved.key(), shelved.write())
    }

    #[test]
    fn what_is_written_is_read_back() {
        let one = shelved("1k", 17, "K\u{e4}se & <b>");
        assert_eq!(Shelved::read(&one.key(), &one.write()), Some(one));
    }

    #[test]
    fn torn_and_foreign_entries_are_counted_and_not_shown() {
        let (one, other) = (shelved("one", 5, "One"), shelved("other", 9, "Other"));
        let (key, mut torn) = text(&shelved("torn", 7, "Torn"));
        torn.pop();
        let texts = vec![
            text(&one),
            text(&other),
            (key, torn),
            (format!("{PREFIX}foreign"), "{}".into()),
            (format!("{PREFIX}a b"), one.write()),
            (PREFIX.into(), one.write()),
            (format!("{PREFIX}short"), Entry { stamp: 1, text: "a".into() }.write()),
        ];
        let shelf = Shelf::of(texts, false);
        assert_eq!(shelf.designs, [other, one]);
        assert_eq!(shelf.unread, 5);
        assert!(shelf.trouble().is_some_and(|words| words.starts_with("5 entries")));
    }

    #[test]
    fn a_shelf_that_does_not_last_says_so() {
        assert_eq!(Shelf::of(Vec::new(), false).trouble(), None);
        assert!(Shelf::of(Vec::new(), true).trouble().is_some_and(|words| words.contains("gone")));
    }

    #[test]
    fn a_new_name_is_in_the_link_too() {
        let renamed = shelved("one", 5, "One").renamed("Two\nlines", 6);
        assert_eq!((renamed.name.as_str(), renamed.changed), ("Twolines", 6));
        assert!(link::decode(&renamed.link).is_ok_and(|design| design.name == "Twolines"));
        // What a newer version wrote keeps its link.
        let newer = Shelved { link: "zz.~~".into(), ..renamed };
        let named = newer.renamed("Three", 7);
        assert_eq!((named.name.as_str(), named.link.as_str()), ("Three", "zz.~~"));
    }

    #[test]
    fn copies_have_names_of_their_own() {
        let names = ["Lift", "Lift, copy", "Lift, copy 2"];
        let texts = names.into_iter().enumerate();
        let texts = texts.map(|(at, name)| text(&shelved(&format!("n{at}"), 1, name))).collect();
        let shelf = Shelf::of(texts, false);
        assert_eq!(shelf.name_of_copy("Lift"), "Lift, copy 3");
        assert_eq!(shelf.name_of_copy("Lift, copy 2"), "Lift, copy 3");
        assert_eq!(shelf.name_of_copy("Lift, copying"), "Lift, copying, copy");
    }
}
