//! The steps that can be taken back, as the tab's storage keeps them: they come back with the page when it is loaded anew or has failed.
use risewright::design::Design;
use risewright::share::link;

use super::entry::Entry;
use super::storage::{self, Place};
use crate::edit::{Book, Turned};

const KEY: &str = "risewright.history";
/// At most so many steps back and forward are kept, and so many bytes of them.
const MOST: [usize; 2] = [200, 50];
const MOST_BYTES: usize = 200_000;
/// What marks a step back, and one forward.
const SIGNS: [char; 2] = ['-', '+'];

/// A history that was kept.
#[derive(Debug, PartialEq, Eq)]
pub struct Record {
    /// The design it belongs to.
    pub present: Design,
    /// The steps behind it, the latest last.
    pub past: Vec<Turned>,
    /// The steps ahead of it, the next last.
    pub future: Vec<Turned>,
}

/// Keeps the history of this version of the program.
pub fn keep(version: &str, book: &Book) {
    let entry = Entry { stamp: 0, text: write(version, book) };
    // Refused, the history lasts as long as the page.
    let _ = storage::write(Place::Tab, KEY, &entry.write());
}

/// The history that was kept by this version: to another one its designs need not be sound.
pub fn kept(version: &str) -> Option<Record> {
    let entry = Entry::read(&storage::read(Place::Tab, KEY)?)?;
    read(version, &entry.text)
}

/// A line for the version, one for the present design, and one for each step: sign, what it was, and its link.
fn write(version: &str, book: &Book) -> String {
    let mut text = format!("{version}\n{}", link::encode(book.design()));
    let begun = text.len();
    for ((steps, most), sign) in [book.past(), book.future()].into_iter().zip(MOST).zip(SIGNS) {
        let nearest: Vec<String> = steps
            .iter()
            .rev()
            .take(most)
            .map(|step| format!("\n{sign}{}\t{}", step.title(), step.link()))
            .scan(text.len() - begun, |bytes, line| {
                *bytes += line.len();
                (*bytes <= MOST_BYTES).then_some(line)
            })
            .collect();
        text.extend(nearest.into_iter().rev());
    }
    text
}

fn read(version: &str, text: &str) -> Option<Record> {
    let mut lines = text.lines();
    if lines.next()? != version {
        return None;
    }
    let present = link::decode(lines.next()?).ok()?;
    let mut record = Record { present, past: Vec::new(), future: Vec::new() };
    for line in lines {
        let (title, link) = line.split_once('\t')?;
        let design = link::decode(link).ok()?;
        let mut signs = title.chars();
        let steps = match signs.next() {
            Some('-') => &mut record.past,
            Some('+') => &mut record.future,
            _ => return None,
        };
        steps.push(Turned { title: signs.as_str().to_owned(), design });
    }
    Some(record)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop")]
    use super::*;
    use crate::edit::Edit;

    fn book(names: usize) -> Book {
        let mut book = Book::new(Design::default());
        for name in 0..names {
            book.apply(Edit::Name(format!("Lift {name}"))).unwrap();
        }
        book
    }

    #[test]
    fn a_history_comes_back_and_walks_the_same_way() {
        let mut before = book(5);
        before.undo();
        before.undo();
        let record = read("v1", &write("v1", &before)).unwrap();
        assert_eq!(record.present, *before.design());
        let mut after = Book::new(record.present);
        after.recall(record.past, record.future);
        for turn in [
            Book::redo,
            Book::redo,
            Book::redo,
            Book::undo,
            Book::undo,
            Book::undo,
            Book::undo,
            Book::undo,
            Book::undo,
        ] {
            assert_eq!((after.undoes(), after.redoes()), (before.undoes(), before.redoes()));
            turn(&mut before);
            turn(&mut after);
            assert_eq!(after.design(), before.design());
        }
    }

    #[test]
    fn it_is_bounded_and_the_nearest_steps_stay() {
        let mut long = book(400);
        let record = read("v1", &write("v1", &long)).unwrap();
        assert_eq!(record.past.len(), MOST[0]);
        assert_eq!(record.past.last().unwrap().design.name, "Lift 398");
        for _ in 0..100 {
            long.undo();
        }
        let record = read("v1", &write("v1", &long)).unwrap();
        assert_eq!((record.past.len(), record.future.len()), (MOST[0], MOST[1]));
        assert_eq!(record.future.last().unwrap().design.name, "Lift 300");

        let mut wide = Book::new(Design::default());
        for step in 0..400 {
            wide.apply(Edit::Name(format!("{step}{}", "\u{1f6e0}".repeat(56)))).unwrap();
        }
        let text = write("v1", &wide);
        assert!(text.len() < MOST_BYTES + 2000, "{}", text.len());
        assert!(read("v1", &text).unwrap().past.len() > 100);
    }

    #[test]
    fn another_version_and_damage_bring_nothing() {
        let text = write("v1", &book(2));
        assert_eq!(read("v2", &text), None);
        assert_eq!(read("v1", &text.replace('\t', " ")), None);
        assert_eq!(read("v1", ""), None);
    }
}
