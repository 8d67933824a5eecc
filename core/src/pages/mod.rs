//! What does one read? The views that are read like a page of a workshop manual: made from a report, as documents that the screen, the
//! packet and a plain file show alike.
//!
//! A page may know less at first than in the end: sheets are packed better and better, remedies are tried one after another. It is a value
//! with [`Page::advance`], so that a worker, a test or a script can drive it, show what is known, and abandon it.
mod cautions;
mod compare;
mod document;
mod drilling;
mod fitted;
mod forces;
mod found;
mod hardware;
mod html;
mod lessons;
mod levers;
mod live;
mod over;
mod packet;
mod sawn;
mod scanned;
mod sheets;
mod shelf;
mod sources;
mod steps;
mod strength;
mod sway;
mod targets;

pub use cautions::CAUTIONS;
pub use document::{Act, Block, Cell, Document, Entry, Field, Figure, Fold, Span, Table, Text};
pub use lessons::{Studied, study};
pub use live::{Live, Sketch};
pub use shelf::Kept;
pub use sway::headline;

use std::rc::Rc;

use crate::drawing;
use crate::quantity::System;
use crate::report::Report;
use crate::share::address::View;

/// For whom a page is written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reader {
    /// The units the reader is used to.
    pub system: System,
    /// The address of the program up to the `#`, for links on paper.
    pub address: String,
    /// Today, as it shall stand on paper; core has no clock.
    pub date: String,
}

/// A view as a document, and the work that goes on behind it.
pub trait Page {
    /// Does a slice of work, some milliseconds; whether there is more to do.
    fn advance(&mut self) -> bool {
        false
    }

    /// The reader has stopped the work, or wants it to go on. Only a page whose work an answer could take up again need know.
    fn pause(&mut self, _paused: bool) {}

    /// The share of the work that is done, 0 to 1.
    fn progress(&self) -> f64 {
        1.0
    }

    /// Hears the reader's answer to a [`Field`] or an [`Act::Answer`], by its key. What it cannot use it keeps, to say in the document what is
    /// wrong with it; a key that it does not know is passed over.
    fn answer(&mut self, _key: &str, _text: &str, _reader: &Reader) {}

    /// What is known so far.
    fn document(&self, reader: &Reader) -> Document;

    /// A picture that follows the deck and a sideways push: in the room of a view, with the deck at a height, m (brought back into the
    /// lift), and a push, N, positive to the right of the drawing. None for a page that has no such picture.
    fn live(&mut self, _view: &drawing::View, _deck: f64, _push: f64) -> Option<Live> {
        None
    }

    /// A file that the document offers in an [`Act::Save`], by its name; none of another name.
    fn file(&self, _name: &str, _reader: &Reader) -> Option<String> {
        None
    }
}

/// The page of a view over a report; none for a view that is no document, like the side elevation. Where one would build from it, what passes a
/// limit stands at its head.
#[must_use]
pub fn page(view: View, report: &Rc<Report>) -> Option<Box<dyn Page>> {
    let page = plain(view, report)?;
    Some(if over::is_warned_of(view) { over::warned(page, Rc::clone(report)) } else { page })
}

/// The page of a view by itself.
fn plain(view: View, report: &Rc<Report>) -> Option<Box<dyn Page>> {
    match view {
        View::Elevation => None,
        View::Sources => Some(Box::new(sources::Sources::new(Rc::clone(report)))),
        View::Compare => Some(Box::new(compare::Compare::new(Rc::clone(report)))),
        View::Forces => Some(Box::new(forces::Forces::new(Rc::clone(report)))),
        View::Sway => Some(Box::new(sway::Sway::new(Rc::clone(report)))),
        View::Strength => Some(Box::new(strength::Strength::new(Rc::clone(report)))),
        View::Sheets => Some(Box::new(sheets::Sheets::new(Rc::clone(report)))),
        View::Drilling => Some(Box::new(drilling::Drilling::new(Rc::clone(report)))),
        View::Hardware => Some(Box::new(hardware::Hardware::new(Rc::clone(report)))),
        View::Steps => Some(Box::new(steps::Steps::new(Rc::clone(report)))),
        View::Targets => Some(Box::new(targets::Page::new(report))),
        View::Helps => Some(Box::new(levers::Levers::new(Rc::clone(report)))),
        View::Lessons => Some(Box::new(lessons::Index)),
        View::Lesson(lesson) => Some(lessons::page(lesson)),
        View::Shelf => Some(Box::new(shelf::Shelf::new(report))),
        View::Packet => Some(Box::new(packet::Packet::new(Rc::clone(report)))),
    }
}
