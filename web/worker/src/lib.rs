//! What the page lets work beside itself: the documents of [`risewright::pages`] and the slow figures behind them. `worker.js` drives it in
//! slices and passes on what is known so far; nothing here knows of threads or messages.
use std::rc::Rc;

use risewright::design::Design;
use risewright::drawing;
use risewright::drawing::{Chart, Layout, SwayChart};
use risewright::pages::{Live, Page, Reader, page};
use risewright::quantity::System;
use risewright::report::analyse;
use risewright::share::address::View;
use risewright::share::file::{self, Found};
use risewright::share::link;
use wasm_bindgen::prelude::{JsValue, wasm_bindgen};

/// One page of one design, and the work that goes on behind it.
#[wasm_bindgen]
#[allow(missing_debug_implementations, reason = "it holds a page, which is whatever its view makes of it")]
pub struct Work {
    page: Box<dyn Page>,
}

#[wasm_bindgen]
impl Work {
    /// The page of a view, by its word in the address, of a design, by its link; the link does not matter to a view that is the same for
    /// every design. Nothing for a design that cannot stand and for a view that is no document: the page asks for neither.
    pub fn open(view: &str, link: &str) -> Option<Self> {
        let view = View::of(view)?;
        let design = if view.is_about_the_design() { link::decode(link).ok()? } else { Design::default() };
        Some(Self { page: page(view, &Rc::new(analyse(&design).ok()?))? })
    }

    /// What a file holds, by its text, as a list: a sentence where it cannot be opened, else nothing; whether it is a shelf; a remark; then for each
    /// design its link and what else is kept of it.
    pub fn read(text: &str) -> Vec<JsValue> {
        match file::read(text) {
            Ok(found) => listed_designs(found),
            Err(fault) => vec![JsValue::from_str(&fault.to_string())],
        }
    }

    /// The digest of a design's report, by its link, to be held against that of other machines; nothing for a design that cannot stand.
    pub fn digest(link: &str) -> Option<String> {
        Some(analyse(&link::decode(link).ok()?).ok()?.digest())
    }

    /// Hears an answer of the reader, by its key.
    pub fn answer(&mut self, key: &str, text: &str, inches: bool, address: String, date: String) {
        self.page.answer(key, text, &reader(inches, address, date));
    }

    /// Does a slice of work; whether there is more.
    pub fn advance(&mut self) -> bool {
        self.page.advance()
    }

    /// The reader wants no more work, or wants it again.
    pub fn pause(&mut self, paused: bool) {
        self.page.pause(paused);
    }

    /// The share of the work that is done, 0 to 1.
    pub fn progress(&self) -> f64 {
        self.page.progress()
    }

    /// What is known so far, as HTML.
    pub fn html(&self, inches: bool, address: String, date: String) -> String {
        self.page.document(&reader(inches, address, date)).html()
    }

    /// The picture that follows the deck, m, and a push, N; nothing where the page has none. What stands still is left out where its edition
    /// has been seen. The order is that in which the page takes it: see its `worker.rs`.
    #[expect(clippy::too_many_arguments, reason = "one call across the border of the module")]
    pub fn live(
        &mut self,
        width: u32,
        height: u32,
        head: u32,
        narrow: bool,
        rattle: bool,
        deck: f64,
        push: f64,
        seen: u32,
        inches: bool,
    ) -> Option<Vec<JsValue>> {
        let layout = if narrow { Layout::Narrow } else { Layout::Wide };
        let mut view = drawing::View::new(width, height, layout, system(inches));
        view.head = head;
        view.charts = match (narrow, rattle) {
            (true, _) => SwayChart::ALL.map(Chart::Sway).into(),
            (false, false) => [SwayChart::Give, SwayChart::Multiple].map(Chart::Sway).into(),
            (false, true) => [SwayChart::Rattle, SwayChart::Twist].map(Chart::Sway).into(),
        };
        Some(listed(self.page.live(&view, deck, push)?, seen))
    }

    /// A file that the page offers.
    pub fn file(&self, name: &str, inches: bool, address: String, date: String) -> Option<String> {
        self.page.file(name, &reader(inches, address, date))
    }
}

fn listed_designs(found: Found) -> Vec<JsValue> {
    let (shelf, designs, faults) = match found {
        Found::Design(opened) => (false, vec![*opened], Vec::new()),
        Found::Shelf(designs, faults) => (true, designs, faults),
    };
    let remark = faults.first().map_or_else(String::new, |first| match faults.len() {
        1 => format!("One design of the file was left out. {first}"),
        some => format!("{some} designs of the file were left out. The first: {first}"),
    });
    let texts = designs.iter().flat_map(|opened| [link::encode(&opened.design), opened.kept.text()]);
    let head = [JsValue::from_str(""), JsValue::from_bool(shelf), JsValue::from_str(&remark)];
    head.into_iter().chain(texts.map(|text| JsValue::from_str(&text))).collect()
}

/// A picture as a list; a grip that is not there has no numbers.
fn listed(live: Live, seen: u32) -> Vec<JsValue> {
    let still = if live.edition == seen { JsValue::UNDEFINED } else { JsValue::from_str(&live.still) };
    let grips = [live.deck, live.push, live.carriage]
        .into_iter()
        .flat_map(|grip| grip.map_or([f64::NAN; 2], |grip| [grip.centre.x, grip.centre.y]));
    let [lowest, highest] = live.lift;
    let numbers = [
        live.width,
        live.height,
        live.pushed,
        live.most_push,
        live.per_newton,
        live.per_metre,
        lowest,
        highest,
    ];
    // What is sketched on: both ends of the axis, then the heights of the handles.
    let sketch =
        live.sketch.into_iter().flat_map(|sketch| [vec![sketch.left, sketch.right], sketch.ys].concat());
    let words = [still, JsValue::from_str(&live.moving), JsValue::from_str(&live.spoken)];
    words
        .into_iter()
        .chain([JsValue::from(live.edition)])
        .chain(numbers.into_iter().chain(grips).chain(sketch).map(JsValue::from_f64))
        .collect()
}

fn system(inches: bool) -> System {
    if inches { System::Inch } else { System::Metric }
}

fn reader(inches: bool, address: String, date: String) -> Reader {
    Reader { system: system(inches), address, date }
}
