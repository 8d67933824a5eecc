//! What the page lets work beside itself: the documents of [`risewright::pages`] and the slow figures behind them. `worker.js` drives it in
//! slices and passes on what is known so far; nothing here knows of threads or messages.
use std::rc::Rc;

use risewright::pages::{Page, Reader, page};
use risewright::quantity::System;
use risewright::report::analyse;
use risewright::share::address::View;
use risewright::share::link;
use wasm_bindgen::prelude::wasm_bindgen;

/// One page of one design, and the work that goes on behind it.
#[wasm_bindgen]
#[allow(missing_debug_implementations, reason = "it holds a page, which is whatever its view makes of it")]
pub struct Work {
    page: Box<dyn Page>,
}

#[wasm_bindgen]
impl Work {
    /// The page of a view, by its word in the address, of a design, by its link. Nothing for a design that cannot stand and for a view
    /// that is no document: the page asks for neither.
    pub fn open(view: &str, link: &str) -> Option<Self> {
        let report = analyse(&link::decode(link).ok()?).ok()?;
        Some(Self { page: page(View::of(view)?, &Rc::new(report))? })
    }

    /// Does a slice of work; whether there is more.
    pub fn advance(&mut self) -> bool {
        self.page.advance()
    }

    /// The share of the work that is done, 0 to 1.
    pub fn progress(&self) -> f64 {
        self.page.progress()
    }

    /// What is known so far, as HTML.
    pub fn html(&self, inches: bool, address: String, date: String) -> String {
        self.page.document(&reader(inches, address, date)).html()
    }

    /// A file that the page offers.
    pub fn file(&self, name: &str, inches: bool, address: String, date: String) -> Option<String> {
        self.page.file(name, &reader(inches, address, date))
    }
}

fn reader(inches: bool, address: String, date: String) -> Reader {
    Reader { system: if inches { System::Inch } else { System::Metric }, address, date }
}
