//! Tables from what one needs: a form of targets, and the tables that were found for them.
//!
//! The page is a function of its answers: which design is open does not matter, but for the button that takes its figures over.
mod asked;
mod form;
mod questions;
mod shown;
mod tradeoff;
mod words;

use super::document::{Act, Block, Document};
use super::{Page as Pages, Reader};
use crate::drawing::{Small, small};
use crate::quantity::System;
use crate::report::search::{Kept, Search};
use crate::report::{Report, analyse};
use crate::share::address::View;
use crate::share::link;
use form::Form;
use std::collections::BTreeMap;

/// Proposals at most.
const PROPOSALS: usize = 6;

/// Slices of the search between two drawings.
const SLICES_A_DRAWING: u32 = 32;

/// Room for the two small elevations of a proposal, px.
const ROOM: (f64, f64) = (300.0, 150.0);

/// The page.
pub(super) struct Page {
    /// The present design, as a link.
    present: String,
    form: Form,
    /// Whether a search was asked for and not begun.
    wanted: bool,
    /// Whether the reader has stopped the search.
    paused: bool,
    system: System,
    search: Option<Search>,
    /// The form that is searched for.
    searched: Form,
    /// The table looked at beside the proposals, by its place.
    picked: Option<usize>,
    /// Slices of work so far.
    slices: u32,
    /// Small elevations of tables by their places.
    drawn: BTreeMap<usize, Small>,
}

impl Page {
    pub fn new(report: &Report) -> Self {
        Self {
            present: link::encode(&report.design),
            form: Form::default(),
            wanted: false,
            paused: false,
            system: System::default(),
            search: None,
            searched: Form::default(),
            picked: None,
            slices: 0,
            drawn: BTreeMap::new(),
        }
    }

    /// Tables that are shown with a small elevation.
    fn shown(&self) -> Vec<Kept> {
        let Some(search) = &self.search else { return Vec::new() };
        let mut list: Vec<Kept> = search.picks(PROPOSALS).into_iter().map(|pick| pick.kept).collect();
        let other = self.looked_at().find(|kept| list.iter().all(|one| one.at != kept.at)).cloned();
        list.extend(other);
        list
    }

    /// The table picked from the plot, if it was kept.
    fn looked_at(&self) -> impl Iterator<Item = &Kept> {
        let kept = self.search.iter().flat_map(|search| search.front().kept());
        kept.filter(|kept| Some(kept.at) == self.picked)
    }

    /// A table that has no small elevation yet gets one.
    fn draw(&mut self) -> bool {
        let missing = self.shown().into_iter().find(|kept| !self.drawn.contains_key(&kept.at));
        let Some((kept, search)) = missing.zip(self.search.as_ref()) else { return false };
        let drawing = search
            .design(&kept)
            .and_then(|design| analyse(&design).ok())
            .map(|report| small(&report, &[report.lowest(), report.highest()], ROOM));
        let none = Small { marks: String::new(), width: 0.0, height: 0.0 };
        self.drawn.insert(kept.at, drawing.unwrap_or(none));
        true
    }
}

impl Pages for Page {
    fn answer(&mut self, key: &str, text: &str, reader: &Reader) {
        self.system = reader.system;
        match key {
            form::DESIGN => text.clone_into(&mut self.present),
            form::SEARCH => (self.wanted, self.paused, self.search) = (true, false, None),
            form::PICK => self.picked = text.parse().ok(),
            _ => self.form.hear(key, text, reader.system),
        }
    }

    fn advance(&mut self) -> bool {
        if self.wanted {
            self.wanted = false;
            let (targets, sound) = self.form.targets(self.system);
            self.search = sound.then(|| Search::new(&targets));
            self.searched = self.form.clone();
            self.drawn.clear();
        }
        let Some(search) = &self.search else { return false };
        if search.is_over() || self.paused {
            return self.draw();
        }
        // Now and then a drawing of what is known so far.
        self.slices = self.slices.wrapping_add(1);
        let drew = self.slices.is_multiple_of(SLICES_A_DRAWING) && self.draw();
        if let Some(search) = self.search.as_mut().filter(|_| !drew) {
            search.advance();
        }
        true
    }

    fn pause(&mut self, paused: bool) {
        self.paused = paused;
    }

    fn progress(&self) -> f64 {
        self.search.as_ref().map_or(1.0, Search::progress)
    }

    fn document(&self, reader: &Reader) -> Document {
        let (targets, _) = self.form.targets(reader.system);
        let mut blocks = vec![Block::text(
            "Say what the table must do. The program tries some thousand tables with what you can buy, analyses those that could do, \
             and shows the few of which none is better than another in everything.",
        )];
        blocks.extend(questions::form(&self.form, &targets, reader));
        let trouble = self.form.trouble(&targets);
        blocks.extend(trouble.iter().map(|words| Block::Caution((*words).into())));
        blocks.push(Block::Acts(vec![
            Act::Answer {
                words: "Look for tables".into(),
                key: form::SEARCH.into(),
                value: "go".into(),
                pressed: None,
            },
            Act::Answer {
                words: "Ask for what the present table does".into(),
                key: form::PRESENT.into(),
                value: self.present.clone(),
                pressed: None,
            },
        ]));
        if let Some(search) = &self.search {
            if self.searched != self.form {
                blocks.push(Block::note("The targets were changed since these tables were looked for."));
            }
            blocks.extend(shown::found(self, search, reader));
        }
        Document { title: View::Targets.title().into(), blocks }
    }
}
