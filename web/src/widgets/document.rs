//! A document that comes as HTML from elsewhere in the program. What is open and focused stays so when a newer one replaces it.
use std::sync::Arc;
use std::time::Duration;

use leptos::ev;
use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{
    Element, Event, HtmlDetailsElement, HtmlElement, HtmlInputElement, HtmlSelectElement, MouseEvent,
};

/// The attributes by which a button says what it does, the first that it has.
const ACTS: [&str; 9] = [
    "data-go",
    "data-take",
    "data-open",
    "data-save",
    "data-print",
    "data-view",
    "data-keep",
    "data-untick",
    ANSWER,
];
/// The attribute of what the reader enters, chooses or presses, with the name by which the page hears it.
const ANSWER: &str = "data-answer";
/// The attribute of a box to tick, with what its tick is kept under.
const TICK: &str = "data-tick";
/// The attribute of a field into which the page put back what was being written there. The browser does not tell of a change that it has not seen
/// typed.
const WRITTEN: &str = "data-written";

/// What can be pressed: buttons, and marks of a figure that stand for an answer.
const BUTTONS: &str = "button,g[data-answer]";

/// What the reader asks for with a button, or answers to a question.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Act {
    /// Name of the attribute without `data-`.
    pub kind: String,
    /// What it is about: the value of the attribute, or the answer.
    pub value: String,
    /// What it belongs to: the value of `data-check`, or the name of the question.
    pub of: Option<String>,
    /// Whether it rests: a slider that is still held does not.
    pub rests: bool,
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
    /// What is ticked: the keys of the boxes.
    ticks: RwSignal<String>,
    /// Called when one of its buttons is pressed.
    on_act: Callback<Act>,
) -> impl IntoView {
    let place = NodeRef::<html::Article>::new();
    let shown = StoredValue::new(Arc::<str>::from(""));
    let renewing = StoredValue::new(false);
    let held = held(place);
    // An effect, because the document's elements lie outside the page's own state.
    Effect::new(move || {
        let (Some(place), html) = (place.get(), html.get()) else { return };
        // A button that is replaced between press and release would not hear that it was pressed.
        if held.get() {
            return;
        }
        if shown.with_value(|shown| *shown != html) {
            let hold = Hold::of(&place);
            renewing.set_value(true);
            // Fails only on a place that has left the page.
            let _ = renew(&place, &html);
            hold.restore(&place);
            renewing.set_value(false);
            shown.set_value(html);
        }
        ticks.with(|ticks| show_ticks(&place, ticks));
    });
    let press = move |event: MouseEvent| {
        let button = target(&event).and_then(|target| target.closest(BUTTONS).ok().flatten());
        if let Some(act) = button.as_ref().and_then(pressed) {
            on_act.run(act);
        }
    };
    let answer = move |event: &Event, rests: bool| {
        let Some(field) = target(event) else { return };
        if let Some(value) = field.get_attribute(TICK) {
            on_act.run(Act { kind: "tick".into(), value, of: None, rests });
        } else if let Some((key, value)) = answered(&field) {
            on_act.run(Act { kind: "answer".into(), value, of: Some(key), rests });
        }
    };
    // Enter, or leaving the field: what the browser makes of it where it has seen the typing.
    let finish = move |event: &Event| {
        // A field also loses the focus when its document is renewed, or has left the page.
        let stays = renewing.try_get_value() == Some(false);
        let written = target(event).filter(|field| stays && field.has_attribute(WRITTEN));
        if let Some(field) = written {
            // Fails only for a name that is none.
            let _ = field.remove_attribute(WRITTEN);
            answer(event, true);
        }
    };
    let slide = move |event: Event| {
        if target(&event).is_some_and(|field| field.get_attribute("type").as_deref() == Some("range")) {
            answer(&event, false);
        }
    };
    view! {
        <article
            node_ref=place
            class="reader"
            aria-busy=move || busy.get().then_some("true")
            on:click=press
            on:input=slide
            on:change=move |event| answer(&event, true)
            on:focusout=move |event| finish(&event)
            on:keydown=move |event| {
                if event.key() == "Enter" {
                    finish(&event);
                }
            }
        ></article>
    }
}

/// Whether a pointer is down on the document. It is let go only after the click that its release brings.
fn held(place: NodeRef<html::Article>) -> ReadSignal<bool> {
    let (held, hold) = signal(false);
    let press = window_event_listener(ev::pointerdown, move |event| {
        let inside = place.get_untracked().is_some_and(|place| {
            place.contains(event.target().and_then(|target| target.dyn_into().ok()).as_ref())
        });
        if inside {
            hold.set(true);
        }
    });
    let let_go = move || {
        let over = move || {
            // The document may have left the page meanwhile.
            let _ = hold.try_set(false);
        };
        set_timeout(over, Duration::ZERO);
    };
    let release = window_event_listener(ev::pointerup, move |_| let_go());
    // A scroll that begins under the finger, a window left with the button down.
    let cancel = window_event_listener(ev::pointercancel, move |_| let_go());
    let leave = window_event_listener(ev::blur, move |_| let_go());
    on_cleanup(move || {
        for listener in [press, release, cancel, leave] {
            listener.remove();
        }
    });
    held
}

fn target(event: &Event) -> Option<Element> {
    event.target().and_then(|target| target.dyn_into().ok())
}

/// What a button asks for.
fn pressed(button: &Element) -> Option<Act> {
    let (name, value) = ACTS.into_iter().find_map(|name| Some((name, button.get_attribute(name)?)))?;
    let kind = name.trim_start_matches("data-").to_owned();
    Some(if name == ANSWER {
        Act { kind, value: button.get_attribute("value")?, of: Some(value), rests: true }
    } else {
        let of = button.get_attribute("data-check").filter(|check| !check.is_empty());
        Act { kind, value, of, rests: true }
    })
}

/// Name and answer of a question that is entered or chosen.
fn answered(field: &Element) -> Option<(String, String)> {
    let key = field.get_attribute(ANSWER)?;
    if let Some(choice) = field.dyn_ref::<HtmlSelectElement>() {
        return Some((key, choice.value()));
    }
    let input = field.dyn_ref::<HtmlInputElement>()?;
    let value = match input.type_().as_str() {
        "checkbox" => if input.checked() { "yes" } else { "no" }.to_owned(),
        _ => input.value(),
    };
    Some((key, value))
}

/// Puts another document in place of the present one, but leaves those of its pieces that are the same: nothing is lost that a reader holds,
/// selects or writes there.
fn renew(place: &HtmlElement, html: &str) -> Option<()> {
    let fresh = place.owner_document()?.create_element("article").ok()?;
    fresh.set_inner_html(html);
    let mut old = place.first_element_child();
    while let Some(new) = fresh.first_element_child() {
        match old {
            Some(last) => {
                old = last.next_element_sibling();
                if last.outer_html() == new.outer_html() {
                    new.remove();
                } else {
                    last.replace_with_with_node_1(&new).ok()?;
                }
            }
            None => {
                place.append_child(&new).ok()?;
            }
        }
    }
    while let Some(last) = old {
        old = last.next_element_sibling();
        last.remove();
    }
    Some(())
}

/// What the reader has done to a document.
struct Hold {
    /// Folds by name, and whether they are open.
    folds: Vec<(String, bool)>,
    /// What has the focus: the summary of a fold, a button, a question.
    focus: Option<Focus>,
}

enum Focus {
    Fold(String),
    Button(String),
    /// A question by its name, and what is being written there.
    Field(String, Option<String>),
}

impl Hold {
    fn of(place: &HtmlElement) -> Self {
        let folds = all::<HtmlDetailsElement>(place, "details[data-fold]")
            .into_iter()
            .filter_map(|fold| Some((fold.get_attribute("data-fold")?, fold.open())));
        Self { folds: folds.collect(), focus: focus(place) }
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
        match &self.focus {
            Some(Focus::Button(name)) => {
                let same =
                    all::<HtmlElement>(place, "button").into_iter().find(|button| name_of(button) == *name);
                // Focus fails only on what has left the page.
                same.map(|button| button.focus());
            }
            Some(Focus::Field(id, written)) => {
                let fields = all::<HtmlElement>(place, "input, select");
                if let Some(same) = fields.into_iter().find(|field| field.id() == *id) {
                    let _ = same.focus();
                    if let (Some(written), Some(input)) = (written, same.dyn_ref::<HtmlInputElement>()) {
                        input.set_value(written);
                        let _ = input.set_attribute(WRITTEN, "");
                    }
                }
            }
            _ => {}
        }
    }
}

fn focus(place: &HtmlElement) -> Option<Focus> {
    let focused = place.owner_document()?.active_element().filter(|focused| place.contains(Some(focused)))?;
    match focused.tag_name().as_str() {
        "SUMMARY" => focused.parent_element()?.get_attribute("data-fold").map(Focus::Fold),
        "BUTTON" => Some(Focus::Button(name_of(&focused))),
        "INPUT" | "SELECT" if !focused.id().is_empty() => {
            let written = focused
                .dyn_ref::<HtmlInputElement>()
                .filter(|input| input.type_() == "text" && input.value() != input.default_value())
                .map(HtmlInputElement::value);
            Some(Focus::Field(focused.id(), written))
        }
        _ => None,
    }
}

/// What a button is known by in the next document: its answer, whichever is chosen, or its markup.
fn name_of(button: &Element) -> String {
    match (button.get_attribute(ANSWER), button.get_attribute("value")) {
        (Some(key), Some(value)) => format!("{key}={value}"),
        _ => button.outer_html(),
    }
}

fn show_ticks(place: &HtmlElement, ticks: &str) {
    for tick in all::<HtmlInputElement>(place, "[data-tick]") {
        tick.set_checked(tick.get_attribute(TICK).is_some_and(|key| ticks.contains(&key)));
    }
}

fn all<T: JsCast>(place: &Element, selector: &str) -> Vec<T> {
    let Ok(list) = place.query_selector_all(selector) else { return Vec::new() };
    (0..list.length()).filter_map(|at| list.get(at)?.dyn_into().ok()).collect()
}
