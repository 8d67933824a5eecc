//! One layer of a drawing: marks as SVG elements, made once and then only patched where they differ.
//!
//! Lettering stands at the origin of a group that is moved: a text that is moved by itself is laid out anew, which costs the browser four times as
//! much.
use std::sync::Arc;

use leptos::prelude::*;
use risewright::drawing::{Mark, Screen, Shape};
use web_sys::{Document, Element};

const SVG: &str = "http://www.w3.org/2000/svg";

/// A mark and the element that shows it.
struct Drawn {
    element: Element,
    mark: Mark,
}

/// A group of marks. The n-th mark keeps its element as long as its kind stays the same.
#[component]
pub fn Layer(
    /// Class of the group.
    class: &'static str,
    /// The marks, in painting order.
    #[prop(into)]
    marks: Signal<Arc<Vec<Mark>>>,
) -> impl IntoView {
    let group = NodeRef::<leptos::svg::G>::new();
    let drawn = StoredValue::new_local(Vec::<Drawn>::new());
    // An effect, because what it changes are SVG elements and no signal.
    Effect::new(move || {
        if let Some(group) = group.get() {
            let marks = marks.get();
            drawn.update_value(|drawn| patch(&group, drawn, &marks));
        }
    });
    view! { <g node_ref=group class=class></g> }
}

fn patch(group: &Element, drawn: &mut Vec<Drawn>, marks: &[Mark]) {
    let Some(document) = group.owner_document() else { return };
    for gone in drawn.drain(marks.len().min(drawn.len())..) {
        gone.element.remove();
    }
    for (index, mark) in marks.iter().enumerate() {
        match drawn.get_mut(index) {
            Some(old) if old.mark == *mark => {}
            Some(old) if tag(&old.mark.shape) == tag(&mark.shape) => {
                write(&old.element, mark, Some(&old.mark));
                old.mark.clone_from(mark);
            }
            Some(old) => {
                if let Some(fresh) = create(&document, mark) {
                    // Fails only where the old element has left the page; then nobody sees either.
                    let _ = group.replace_child(&fresh.element, &old.element);
                    *old = fresh;
                }
            }
            None => {
                if let Some(fresh) = create(&document, mark) {
                    let _ = group.append_child(&fresh.element);
                    drawn.push(fresh);
                }
            }
        }
    }
}

/// The element of a shape.
const fn tag(shape: &Shape) -> &'static str {
    match shape {
        Shape::Path(_) => "path",
        Shape::Circle { .. } => "circle",
        Shape::Rect { .. } => "rect",
        Shape::Line { .. } => "line",
        Shape::Text { .. } => "g",
    }
}

fn create(document: &Document, mark: &Mark) -> Option<Drawn> {
    let element = document.create_element_ns(Some(SVG), tag(&mark.shape)).ok()?;
    if matches!(mark.shape, Shape::Text { .. }) {
        let text = document.create_element_ns(Some(SVG), "text").ok()?;
        element.append_child(&text).ok()?;
    }
    write(&element, mark, None);
    Some(Drawn { element, mark: mark.clone() })
}

/// Sets one attribute; a name that is fixed and valid cannot be refused.
fn set(element: &Element, name: &str, value: &str) {
    let _ = element.set_attribute(name, value);
}

/// A coordinate with the digits that can be seen.
pub fn coordinate(value: f64) -> String {
    format!("{value:.2}")
}

struct Writer<'a> {
    element: &'a Element,
}

impl Writer<'_> {
    fn number(&self, name: &str, value: f64, old: Option<f64>) {
        if old != Some(value) {
            set(self.element, name, &coordinate(value));
        }
    }

    fn point(&self, names: [&str; 2], at: Screen, old: Option<Screen>) {
        self.number(names[0], at.x, old.map(|old| old.x));
        self.number(names[1], at.y, old.map(|old| old.y));
    }
}

/// Writes what differs from the mark the element shows; everything when it shows none.
fn write(element: &Element, mark: &Mark, old: Option<&Mark>) {
    let lettering = matches!(mark.shape, Shape::Text { .. }).then(|| element.first_element_child()).flatten();
    if old.is_none_or(|old| old.class != mark.class) {
        set(lettering.as_ref().unwrap_or(element), "class", mark.class);
    }
    let writer = Writer { element };
    match (&mark.shape, old.map(|old| &old.shape)) {
        (Shape::Path(d), old) => {
            if !matches!(old, Some(Shape::Path(old)) if old == d) {
                set(element, "d", d);
            }
        }
        (Shape::Circle { centre, radius }, old) => {
            let old = if let Some(Shape::Circle { centre, radius }) = old {
                Some((*centre, *radius))
            } else {
                None
            };
            writer.point(["cx", "cy"], *centre, old.map(|old| old.0));
            writer.number("r", *radius, old.map(|old| old.1));
        }
        (Shape::Rect { corner, width, height }, old) => {
            let old = if let Some(Shape::Rect { corner, width, height }) = old {
                Some((*corner, *width, *height))
            } else {
                None
            };
            writer.point(["x", "y"], *corner, old.map(|old| old.0));
            writer.number("width", *width, old.map(|old| old.1));
            writer.number("height", *height, old.map(|old| old.2));
        }
        (Shape::Line { from, to }, old) => {
            let old = if let Some(Shape::Line { from, to }) = old { Some((*from, *to)) } else { None };
            writer.point(["x1", "y1"], *from, old.map(|old| old.0));
            writer.point(["x2", "y2"], *to, old.map(|old| old.1));
        }
        (shape @ Shape::Text { .. }, old) => {
            if let Some(lettering) = lettering {
                write_text(element, &lettering, shape, old);
            }
        }
    }
}

fn write_text(group: &Element, text: &Element, shape: &Shape, old: Option<&Shape>) {
    let Shape::Text { at, anchor, upright, words } = shape else { return };
    let (mut new_words, mut new_place, mut new_anchor) = (true, true, true);
    if let Some(Shape::Text { at: old_at, anchor: old_anchor, upright: old_upright, words: old_words }) = old
    {
        new_words = old_words != words;
        new_place = old_at != at || old_upright != upright;
        new_anchor = old_anchor != anchor;
    }
    if new_anchor {
        set(text, "text-anchor", anchor.name());
    }
    if new_place {
        let turned = if *upright { "rotate(-90)" } else { "" };
        set(group, "transform", &format!("translate({} {}){turned}", coordinate(at.x), coordinate(at.y)));
    }
    if new_words {
        // A text that changes costs the browser less than one that is replaced.
        match text.first_child() {
            Some(node) => node.set_node_value(Some(words)),
            None => text.set_text_content(Some(words)),
        }
    }
}
