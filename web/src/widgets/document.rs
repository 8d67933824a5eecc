//! A document that comes as HTML from elsewhere in the program. What is open, ticked and focused stays so when a newer one replaces it.
use std::sync::Arc;

use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlDetailsElement, HtmlElement, HtmlInputElement};

/// The attributes by which a button says what it does, the first that it has.
const ACTS: [&str; 5] = ["data-go", "data-take", "data-save", "data-print", "data-view"];

/// What a button asks for: the name of its attribute, the value, and the check it belongs to, if any.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Act {
    /// Name of the attribute without `data-`.
    pub kind: String,
    /// Its value.
    pub value: String,
    /// The value of `data-check`.
    pub check: Option<String>,
}

/// The document.
#[component]
pub fn Document(
    /// The inside of the element.
    #[prop(into)]
    html: Signal<Arc<str>>,
    /// Whether a newer one is on its way.
    #[prop(into)]
    busy: Signal<bool>,
    /// Called when one of its buttons is pressed.
    on_act: Callback<Act>,
) -> impl IntoView {
    let place = NodeRef::<html::Article>::new();
    let shown = StoredValue::new(Arc::<str>::from(""));
    // An effect, because the document's elements lie outside the page's own state.
    Effect::new(move || {
        let (Some(place), html) = (place.get(), html.get()) else { return };
        if shown.with_value(|shown| *shown != html) {
            let hold = Hold::of(&place);
            place.set_inner_html(&html);
            hold.restore(&place);
            shown.set_value(html);
        }
    });
    let press = move |event: web_sys::MouseEvent| {
        let button = event
            .target()
            .and_then(|target| target.dyn_into::<Element>().ok())
            .and_then(|target| target.closest("button").ok().flatten());
        let Some(button) = button else { return };
        let found = ACTS.into_iter().find_map(|name| Some((name, button.get_attribute(name)?)));
        if let Some((name, value)) = found {
            let kind = name.trim_start_matches("data-").to_owned();
            let check = button.get_attribute("data-check").filter(|check| !check.is_empty());
            on_act.run(Act { kind, value, check });
        }
    };
    view! {
        <article node_ref=place class="reader" aria-busy=move || busy.get().then_some("true") on:click=press></article>
    }
}

/// What the reader has done to a document.
struct Hold {
    /// Folds by name, and whether they are open.
    folds: Vec<(String, bool)>,
    /// The words of the boxes that are ticked.
    ticks: Vec<String>,
    /// What has the focus: the summary of a fold, or a button by its markup.
    focus: Option<Focus>,
}

enum Focus {
    Fold(String),
    Button(String),
}

impl Hold {
    fn of(place: &HtmlElement) -> Self {
        let folds = all::<HtmlDetailsElement>(place, "details[data-fold]")
            .into_iter()
            .filter_map(|fold| Some((fold.get_attribute("data-fold")?, fold.open())));
        let ticks = all::<HtmlInputElement>(place, ".tick input")
            .into_iter()
            .filter(HtmlInputElement::checked)
            .filter_map(|tick| words(&tick));
        Self { folds: folds.collect(), ticks: ticks.collect(), focus: focus(place) }
    }

    fn restore(&self, place: &HtmlElement) {
        for fold in all::<HtmlDetailsElement>(place, "details[data-fold]") {
            let name = fold.get_attribute("data-fold");
            let known = self.folds.iter().find(|(known, _)| Some(known) == name.as_ref());
            if let Some((_, open)) = known {
                fold.set_open(*open);
            }
            if let (Some(Focus::Fold(focused)), Some(name)) = (&self.focus, name)
                && *focused == name
            {
                all::<HtmlElement>(&fold, "summary").first().map(HtmlElement::focus);
            }
        }
        for tick in all::<HtmlInputElement>(place, ".tick input") {
            tick.set_checked(words(&tick).is_some_and(|words| self.ticks.contains(&words)));
        }
        if let Some(Focus::Button(markup)) = &self.focus {
            let same =
                all::<HtmlElement>(place, "button").into_iter().find(|button| button.outer_html() == *markup);
            // Focus fails only on what has left the page.
            same.map(|button| button.focus());
        }
    }
}

fn focus(place: &HtmlElement) -> Option<Focus> {
    let focused = place.owner_document()?.active_element().filter(|focused| place.contains(Some(focused)))?;
    match focused.tag_name().as_str() {
        "SUMMARY" => focused.parent_element()?.get_attribute("data-fold").map(Focus::Fold),
        "BUTTON" => Some(Focus::Button(focused.outer_html())),
        _ => None,
    }
}

/// The words beside a box.
fn words(tick: &HtmlInputElement) -> Option<String> {
    tick.parent_element()?.text_content()
}

fn all<T: JsCast>(place: &Element, selector: &str) -> Vec<T> {
    let Ok(list) = place.query_selector_all(selector) else { return Vec::new() };
    (0..list.length()).filter_map(|at| list.get(at)?.dyn_into().ok()).collect()
}
