//! What passes a limit, at the head of every page one would build from: whoever comes straight to a page has not seen the elevation's findings.
use std::rc::Rc;

use super::document::{Act, Block, Document, Text};
use super::found::told;
use super::{Live, Page, Reader};
use crate::drawing;
use crate::quantity::System;
use crate::report::Report;
use crate::share::address::View;

/// Whether a view is one to build from, or one that would seem to say that all is well.
pub(super) const fn is_warned_of(view: View) -> bool {
    matches!(
        view,
        View::Strength | View::Sheets | View::Drilling | View::Hardware | View::Steps | View::Helps
    )
}

/// The page with the findings over it; as it is where nothing passes a limit.
pub(super) fn warned(page: Box<dyn Page>, report: Rc<Report>) -> Box<dyn Page> {
    if report.over().next().is_some() { Box::new(Over { page, report }) } else { page }
}

struct Over {
    page: Box<dyn Page>,
    report: Rc<Report>,
}

/// So many findings are told; of more only the first, so that what one came for is not a long way down.
const MOST: usize = 4;
const FIRST: usize = 3;

impl Over {
    fn head(&self, system: System) -> Block {
        let count = self.report.over().count();
        let shown = if count > MOST { FIRST } else { count };
        let found = self.report.over().take(shown).map(|finding| Block::Text(told(finding, None, system)));
        let back = Act::View { words: "See it in the elevation".into(), view: View::Elevation.word() };
        let after = match count - shown {
            0 => Text::from("Mend this before you buy or cut. "),
            more => {
                Text::from(format!("{more} findings more pass a limit. Mend them before you buy or cut. "))
            }
        };
        Block::Group("passed", found.chain([Block::Text(after.act(back))]).collect())
    }
}

impl Page for Over {
    fn advance(&mut self) -> bool {
        self.page.advance()
    }

    fn pause(&mut self, paused: bool) {
        self.page.pause(paused);
    }

    fn progress(&self) -> f64 {
        self.page.progress()
    }

    fn answer(&mut self, key: &str, text: &str, reader: &Reader) {
        self.page.answer(key, text, reader);
    }

    fn document(&self, reader: &Reader) -> Document {
        let mut document = self.page.document(reader);
        document.blocks.insert(0, self.head(reader.system));
        document
    }

    fn live(&mut self, view: &drawing::View, deck: f64, push: f64) -> Option<Live> {
        self.page.live(view, deck, push)
    }

    fn file(&self, name: &str, reader: &Reader) -> Option<String> {
        self.page.file(name, reader)
    }
}
