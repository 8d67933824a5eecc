//! Where the design is kept in the browser: two places a tab, each with a checksum, so that a write that breaks off or a value that was
//! damaged never takes the last good design with it, and no tab ever writes over the design of another.
use std::cell::Cell;
use std::collections::BTreeMap;

use risewright::design::Design;
use risewright::order::order;
use risewright::share::link;

use super::entry::{Entry, fnv};
use super::storage::{self, Place, Refused};
use crate::clock::stamp;

/// The keys are this, the tab's name, and the place.
const PREFIX: &str = "risewright.design.";
const PLACES: [&str; 2] = [".a", ".b"];
/// The designs of so many tabs are kept; a tab that is open puts its own there again.
const TABS: usize = 8;
/// What the reader has been told of already.
const TOLD: &str = "risewright.told";
const MOST_TOLD: usize = 40;

/// The design that a tab kept last.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    tab: String,
    stamp: u64,
    link: String,
    /// The design.
    pub design: Design,
}

/// What stands in the places of all tabs.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Found {
    /// The designs, the newest first, one a tab.
    pub kept: Vec<Kept>,
    /// Key and text of what could not be read.
    torn: Vec<(String, String)>,
}

impl Found {
    /// What the browser holds at present; nothing where it refuses.
    pub fn now() -> Self {
        Self::of(storage::all(Place::Browser, PREFIX).unwrap_or_default())
    }

    fn of(texts: Vec<(String, String)>) -> Self {
        let mut newest = BTreeMap::<String, Kept>::new();
        let mut torn = Vec::new();
        for (key, text) in texts {
            let entry = Entry::read(&text);
            let read = entry.and_then(|entry| Some((link::decode(&entry.text).ok()?, entry)));
            match (tab_of(&key), read) {
                (Some(tab), Some((design, entry))) => {
                    let kept = Kept { tab: tab.to_owned(), stamp: entry.stamp, link: entry.text, design };
                    if newest.get(tab).is_none_or(|known| known.stamp < kept.stamp) {
                        newest.insert(tab.to_owned(), kept);
                    }
                }
                _ => torn.push((key, text)),
            }
        }
        let mut kept: Vec<Kept> = newest.into_values().collect();
        order(&mut kept, |one, other| other.stamp.cmp(&one.stamp));
        Self { kept, torn }
    }

    /// What is to be said of the copies that could not be read, when the newest of the others is shown.
    fn sentence(&self) -> Option<&'static str> {
        let first = self.kept.first();
        let is_twin = |key: &str| first.is_some_and(|first| tab_of(key) == Some(first.tab.as_str()));
        match (self.torn.as_slice(), first) {
            ([], _) => None,
            ([(key, _)], Some(_)) if is_twin(key) => {
                Some("One of the two kept copies could not be read and was left out; the other is shown.")
            }
            (_, Some(_)) => Some(
                "Some of what this browser kept could not be read and was left out; the newest design that can be read is shown.",
            ),
            ([_], None) => Some("The kept copy could not be read and was left out; the first demo is shown."),
            _ => Some("The kept copies could not be read and were left out; the first demo is shown."),
        }
    }

    /// The same, but only once for the same copies.
    pub fn tell_once(&self) -> Option<&'static str> {
        let marks: Vec<String> = self.torn.iter().map(|(key, text)| mark(key, text)).collect();
        let known = told();
        let fresh = marks.iter().any(|mark| !known.contains(mark));
        put_away(marks);
        if fresh { self.sentence() } else { None }
    }

    /// Designs of other tabs, unlike the present one, that the reader has not put away.
    pub fn others(&self, present: &Design) -> Vec<Kept> {
        let known = told();
        self.kept
            .iter()
            .filter(|kept| kept.design != *present && !known.contains(&kept.mark()))
            .cloned()
            .collect()
    }
}

impl Kept {
    fn mark(&self) -> String {
        mark(&self.tab, &self.link)
    }
}

/// These designs are not offered again; they stay where they are.
pub fn not_again(designs: &[Design]) {
    let kept = Found::now().kept;
    put_away(
        kept.into_iter().filter(|kept| designs.contains(&kept.design)).map(|kept| kept.mark()).collect(),
    );
}

fn tab_of(key: &str) -> Option<&str> {
    let inner = key.strip_prefix(PREFIX)?;
    PLACES.iter().find_map(|place| inner.strip_suffix(place)).filter(|tab| !tab.is_empty())
}

fn mark(key: &str, text: &str) -> String {
    format!("{:08x}", fnv(key.bytes().chain(text.bytes())))
}

fn told() -> Vec<String> {
    let text = storage::read(Place::Browser, TOLD).unwrap_or_default();
    text.split(' ').filter(|mark| !mark.is_empty()).map(str::to_owned).collect()
}

fn put_away(marks: Vec<String>) {
    let mut known = told();
    let before = known.len();
    known.extend(marks);
    order(&mut known, Ord::cmp);
    known.dedup();
    if known.len() != before {
        let from = known.len().saturating_sub(MOST_TOLD);
        // Refused, it is told again next time.
        let _ = storage::write(Place::Browser, TOLD, &known[from..].join(" "));
    }
}

/// How a design was kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// As always.
    Kept,
    /// What had been kept before was gone.
    KeptAgain,
}

/// The two places of this tab.
pub struct Slots {
    keys: [String; 2],
    written: Cell<bool>,
}

impl Slots {
    /// Those of the tab of this name.
    pub fn new(tab: &str) -> Self {
        Self { keys: PLACES.map(|place| format!("{PREFIX}{tab}{place}")), written: Cell::new(false) }
    }

    /// Whether one of them has this key.
    pub fn has(&self, key: &str) -> bool {
        self.keys.iter().any(|own| own == key)
    }

    /// Keeps a design, given as its link, in the place that holds the older one. The first time it also clears what this design makes
    /// superfluous.
    pub fn keep(&self, link: &str) -> Result<Outcome, Refused> {
        let texts = self.keys.each_ref().map(|key| storage::read(Place::Browser, key));
        let gone = texts.iter().all(Option::is_none);
        let stamps =
            texts.map(|text| text.and_then(|text| Entry::read(&text)).map_or(0, |entry| entry.stamp));
        let older = usize::from(stamps[1] < stamps[0]);
        let latest = stamps[0].max(stamps[1]);
        let entry = Entry { stamp: stamp().max(latest.saturating_add(1)), text: link.to_owned() };
        storage::write(Place::Browser, &self.keys[older], &entry.write())?;
        if self.written.replace(true) {
            return Ok(if gone { Outcome::KeptAgain } else { Outcome::Kept });
        }
        for tab in superfluous(&Found::now(), link, &self.keys) {
            for place in PLACES {
                storage::remove(Place::Browser, &format!("{PREFIX}{tab}{place}"));
            }
        }
        Ok(Outcome::Kept)
    }
}

/// Tabs whose design this one has taken over, and those beyond the newest.
fn superfluous(found: &Found, link: &str, own: &[String; 2]) -> Vec<String> {
    let others =
        found.kept.iter().filter(|kept| own.iter().all(|key| tab_of(key) != Some(kept.tab.as_str())));
    others
        .enumerate()
        .filter(|(rank, kept)| kept.link == link || rank + 1 >= TABS)
        .map(|(_, kept)| kept.tab.clone())
        .collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop")]
    use super::*;

    fn slot(key: &str, stamp: u64, link: &str) -> (String, String) {
        (format!("{PREFIX}{key}"), Entry { stamp, text: link.into() }.write())
    }

    fn links(found: &Found) -> Vec<&str> {
        found.kept.iter().map(|kept| kept.link.as_str()).collect()
    }

    #[test]
    fn each_tab_counts_once_with_its_newest_and_the_newest_tab_is_first() {
        let found = Found::of(vec![
            slot("one.a", 5, "a"),
            slot("one.b", 6, "a.~B"),
            slot("two.a", 9, "b"),
            slot("two.b", 8, "b.~C"),
        ]);
        assert_eq!(links(&found), ["b", "a.~B"]);
        assert_eq!(found.sentence(), None);
    }

    #[test]
    fn what_is_torn_or_foreign_is_left_out_and_said() {
        let mut torn = slot("one.b", 6, "a.~B");
        torn.1.pop();
        let found = Found::of(vec![slot("one.a", 5, "a"), torn.clone()]);
        assert_eq!(links(&found), ["a"]);
        assert!(found.sentence().unwrap().starts_with("One of the two kept copies"));

        let both = Found::of(vec![(format!("{PREFIX}one.a"), "hello".into()), torn]);
        assert_eq!(both.kept, []);
        assert!(both.sentence().unwrap().contains("first demo"));

        // Whole, but no design; and a key of another program.
        for foreign in [slot("one.b", 9, "zz.~~"), slot("what", 9, "a")] {
            let found = Found::of(vec![slot("two.a", 5, "a"), foreign]);
            assert_eq!(links(&found), ["a"]);
            assert!(found.sentence().unwrap().starts_with("Some of what"));
        }
    }

    #[test]
    fn only_what_is_taken_over_or_too_old_goes() {
        let own = PLACES.map(|place| format!("{PREFIX}own{place}"));
        let mut slots = vec![slot("own.a", 100, "a"), slot("same.a", 99, "a"), slot("unlike.a", 98, "b")];
        assert_eq!(superfluous(&Found::of(slots.clone()), "a", &own), ["same"]);
        slots.extend((0..6).map(|tab| slot(&format!("t{tab}.a"), 90 - tab, &format!("a.~N{tab}"))));
        assert_eq!(superfluous(&Found::of(slots), "a", &own), ["same", "t5"]);
    }
}
