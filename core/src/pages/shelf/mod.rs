//! The designs that are kept, and how the present one is passed on. What is kept lies in the browser; the page that has it tells it here by
//! answers, and does what the buttons ask for.
mod card;
mod kept;

use std::collections::BTreeMap;
use std::rc::Rc;

use super::document::{Act, Block, Document, Entry, Field, Text};
use super::scanned::scanned;
use super::{Page, Reader};
use crate::design::Design;
use crate::quantity::Length;
use crate::report::{Report, analyse};
use crate::share::address::{self, View};
use crate::share::stem::file_name;
use crate::share::{Manner, file, link};
use card::Card;

pub use kept::Kept;

/// Answers that the page hears from the browser, besides those to its own questions.
mod key {
    /// The designs that are kept; see [`super::Kept::write`].
    pub const KEPT: &str = "kept";
    /// The present design, by its link.
    pub const PRESENT: &str = "present";
    /// The deck's height, in steps.
    pub const DECK: &str = "deck";
    /// Whether the system can pass a link on by itself.
    pub const SENDS: &str = "sends";
    /// What is wrong with the place where designs are kept.
    pub const TROUBLE: &str = "trouble";
    /// Whether the link is to open with the deck where it stands.
    pub const AT: &str = "at";
    /// What else a file brought with the present design; see [`super::file::Kept::text`].
    pub const EXTRA: &str = "extra";
    /// Whether the link is to open without inputs.
    pub const BARE: &str = "bare";
}

/// The file with all that is kept.
const SHELF_FILE: &str = "shelf.json";

/// What a name of a kept design is asked by, before its number.
const NAME: &str = "name-";

/// The page.
pub struct Shelf {
    kept: Vec<Kept>,
    present: Design,
    extra: String,
    deck: Option<Length>,
    sends: bool,
    trouble: String,
    at: bool,
    bare: bool,
    /// The cards that are made, by the link of their design; none for one that does not stand.
    cards: BTreeMap<String, Option<Card>>,
}

impl Shelf {
    /// An empty shelf beside a design.
    pub fn new(report: &Rc<Report>) -> Self {
        Self {
            kept: Vec::new(),
            present: report.design.clone(),
            extra: String::new(),
            deck: None,
            sends: false,
            trouble: String::new(),
            at: true,
            bare: false,
            cards: BTreeMap::new(),
        }
    }

    /// Links whose cards are shown, the present design's first.
    fn links(&self) -> impl Iterator<Item = String> + '_ {
        core::iter::once(link::encode(&self.present)).chain(self.kept.iter().map(|kept| kept.link.clone()))
    }

    fn design_file(&self) -> String {
        file_name(&self.present.name, "design.json")
    }

    /// The address that opens the present design as the reader wants it opened.
    fn address(&self, reader: &Reader) -> String {
        let at = self.deck.filter(|_| self.at);
        let manner = Manner { at, bare: self.bare, embed: false };
        format!("{}#{}", reader.address, address::write_in(View::Elevation, &manner, &self.present))
    }

    fn present(&self, reader: &Reader) -> Block {
        let mut blocks = Vec::new();
        if let Some(Some(card)) = self.cards.get(&link::encode(&self.present)) {
            blocks.push(card.figure(&self.present.name, reader.system));
        }
        blocks.push(Block::Group(
            "shelf-words",
            vec![
                Block::heading(self.present.name.clone()),
                Block::Acts(vec![
                    keep("Put it on the shelf", "put"),
                    Act::Save { words: "Save as a file".into(), file: self.design_file() },
                    keep("Open a file", "file"),
                ]),
                Block::note(
                    "A file holds the design as text (JSON) that opens here again, today and in later versions. You can also drop \
                     a file onto this page.",
                ),
            ],
        ));
        Block::Group("shelf-present", blocks)
    }

    fn sending(&self, reader: &Reader) -> Vec<Block> {
        let link = self.address(reader);
        let mut acts = vec![keep("Copy this link", format!("copy:{link}"))];
        if self.sends {
            acts.push(keep("Send it", format!("send:{link}")));
        }
        let ask = |key: &str, label: &str, on: bool| {
            Block::Field(Field {
                key: key.into(),
                label: label.into(),
                value: if on { "yes" } else { "no" }.into(),
                hint: String::new(),
                fault: String::new(),
                entry: Entry::Marked,
            })
        };
        let mut words = vec![
            Block::text(
                "The whole design is in the link. It goes to nobody but those you send it to, and will open for ever.",
            ),
            ask(key::AT, "Open it with the deck where it stands now", self.at),
            ask(key::BARE, "Open it without the inputs, as for a class", self.bare),
            Block::Acts(acts),
            Block::Text(Text::default().code(link.clone())),
        ];
        if scanned(&link).is_none() {
            words.push(Block::note("The link is too long for a scannable code."));
        }
        let mut pieces = vec![Block::Group("shelf-words", words)];
        pieces.extend(scanned(&link).map(Block::Figure));
        vec![Block::heading("Pass it on"), Block::Group("shelf-send", pieces)]
    }

    fn shelf(&self, reader: &Reader) -> Vec<Block> {
        let mut blocks = vec![Block::heading(match self.kept.len() {
            0 => "On the shelf: nothing yet".to_owned(),
            1 => "On the shelf: one design".to_owned(),
            count => format!("On the shelf: {count} designs"),
        })];
        if !self.trouble.is_empty() {
            blocks.push(Block::Caution(self.trouble.as_str().into()));
        }
        blocks.push(Block::note(
            "Designs on the shelf stay in this browser only. Who clears its data clears the shelf too: save a file of what you want to keep \
             for years.",
        ));
        let cards = self.kept.iter().map(|kept| self.card(kept, reader)).collect();
        blocks.push(Block::Group("shelf-cards", cards));
        let mut acts = Vec::new();
        if !self.kept.is_empty() {
            acts.push(Act::Save { words: "Save the whole shelf as a file".into(), file: SHELF_FILE.into() });
        }
        acts.push(keep("Add the designs of a file", "file"));
        blocks.push(Block::Acts(acts));
        blocks
    }

    fn card(&self, kept: &Kept, reader: &Reader) -> Block {
        let id = &kept.id;
        let name = Field {
            key: format!("{NAME}{id}"),
            label: "Name".into(),
            value: kept.name.clone(),
            hint: kept.date.clone(),
            fault: String::new(),
            entry: Entry::Written,
        };
        let mut pieces = Vec::new();
        let card = self.cards.get(&kept.link);
        match card {
            Some(Some(card)) => pieces.push(card.figure(&kept.name, reader.system)),
            Some(None) => {
                pieces.push(Block::note("This design cannot be opened any more; it is left where it is."));
            }
            None => pieces.push(Block::note("Being drawn.")),
        }
        pieces.push(Block::Field(name));
        let mut acts = Vec::new();
        if matches!(card, Some(Some(_))) {
            acts.extend([keep("Open", format!("open:{id}")), keep("Compare", format!("compare:{id}"))]);
        }
        acts.extend([keep("Duplicate", format!("twice:{id}")), keep("Take off", format!("remove:{id}"))]);
        pieces.push(Block::Acts(acts));
        Block::Group("shelf-card", pieces)
    }
}

fn keep(words: &str, what: impl Into<String>) -> Act {
    Act::Keep { words: words.into(), what: what.into() }
}

impl Page for Shelf {
    fn answer(&mut self, key: &str, text: &str, _reader: &Reader) {
        match key {
            key::KEPT => self.kept = Kept::read(text),
            key::PRESENT => {
                if let Ok(design) = link::decode(text) {
                    self.present = design;
                }
            }
            key::EXTRA => text.clone_into(&mut self.extra),
            key::DECK => self.deck = text.parse().ok().map(Length::from_steps),
            key::SENDS => self.sends = text == "yes",
            key::TROUBLE => text.clone_into(&mut self.trouble),
            key::AT => self.at = text == "yes",
            key::BARE => self.bare = text == "yes",
            _ => {}
        }
        let links: Vec<String> = self.links().collect();
        self.cards.retain(|link, _| links.contains(link));
    }

    fn advance(&mut self) -> bool {
        let missing = self.links().find(|link| !self.cards.contains_key(link));
        if let Some(link) = missing {
            let card = link::decode(&link)
                .ok()
                .and_then(|design| analyse(&design).ok())
                .map(|report| Card::of(&report));
            self.cards.insert(link, card);
        }
        self.links().any(|link| !self.cards.contains_key(&link))
    }

    fn progress(&self) -> f64 {
        let all = self.kept.len() + 1;
        let made = self.links().filter(|link| self.cards.contains_key(link)).count();
        made as f64 / all as f64
    }

    fn file(&self, name: &str, _reader: &Reader) -> Option<String> {
        if name == SHELF_FILE {
            let designs = self
                .kept
                .iter()
                .filter_map(|kept| Some((link::decode(&kept.link).ok()?, file::Kept::of(&kept.extra))));
            return Some(file::write_shelf(&designs.collect::<Vec<_>>()));
        }
        (name == self.design_file()).then(|| file::write(&self.present, &file::Kept::of(&self.extra)))
    }

    fn document(&self, reader: &Reader) -> Document {
        let mut blocks = vec![self.present(reader)];
        blocks.extend(self.sending(reader));
        blocks.extend(self.shelf(reader));
        Document { title: View::Shelf.title().into(), blocks }
    }
}
