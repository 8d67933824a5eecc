//! What the page of the shelf is told, and what its buttons do.
use leptos::prelude::*;
use leptos::task::spawn_local;
use risewright::pages::Kept;
use risewright::quantity::Length;
use risewright::share::address::View;
use risewright::share::link;

use crate::clock::day;
use crate::persist;
use crate::state::{Message, State};
use crate::worker::{self, Found};

/// What a name of a kept design is asked by, before its id.
const NAME: &str = "name-";

/// What the page of the shelf is told, by the names under which it hears it.
pub fn told(state: State) -> Signal<Vec<(&'static str, String)>> {
    Signal::derive(move || {
        let (kept, trouble) = state.keeper.shelf.with(|shelf| {
            let kept = shelf.designs.iter().map(|shelved| Kept {
                id: shelved.id.clone(),
                date: day(shelved.changed),
                name: shelved.name.clone(),
                link: shelved.link.clone(),
                extra: shelved.extra.clone(),
            });
            (Kept::write(&kept.collect::<Vec<_>>()), shelf.trouble().unwrap_or_default())
        });
        vec![
            ("kept", kept),
            ("trouble", trouble),
            ("sends", if persist::can_send() { "yes" } else { "no" }.to_owned()),
            ("deck", Length::m(state.height()).steps().to_string()),
            ("extra", state.extra.get()),
            ("present", state.design.with(link::encode)),
        ]
    })
}

/// Renames a design, where the answer to a question is its name; whether it was.
pub fn rename(state: State, key: &str, name: &str) -> bool {
    let Some(id) = key.strip_prefix(NAME) else { return false };
    say(state, state.keeper.rename(id, name).err());
    true
}

/// Does what a button asks for: a word, and what it is about after a colon.
pub fn perform(state: State, what: &str) {
    let (word, about) = what.split_once(':').unwrap_or((what, ""));
    match word {
        "put" => {
            let extra = state.extra.get_untracked();
            let put = state.design.with_untracked(|design| state.keeper.put(design, &extra));
            tell(state, put.map(|_id| "It stands on the shelf."));
        }
        "aside" => {
            let design = state.design.get_untracked();
            // The present design stands.
            let _ = state.set_aside(Some(&design));
        }
        "alone" => {
            let _ = state.set_aside(None);
        }
        "file" => persist::choose_file(Callback::new(move |text| take(state, text))),
        "copy" => copy(state, about.to_owned()),
        "send" => state.design.with_untracked(|design| persist::send(&design.name, about)),
        "open" => open(state, about),
        "compare" => compare(state, about),
        "twice" => tell(state, state.keeper.duplicate(about).map(|_id| "A copy stands beside it.")),
        "remove" => match state.keeper.remove(about) {
            Ok(removed) => state.notice.set(Some(Message::Removed(removed))),
            Err(fault) => say(state, Some(fault)),
        },
        _ => {}
    }
}

/// Takes the text of a file that was chosen or dropped.
pub fn take(state: State, text: Result<String, String>) {
    match text {
        Ok(text) => worker::read_file(&text),
        Err(sentence) => state.notice.set(Some(Message::Sentence(sentence))),
    }
}

/// Takes what was found in a file: one design is opened, several are put on the shelf.
pub fn found(state: State, found: Found) {
    let Found { designs, remark, shelf } = found;
    let mut sentences: Vec<String> = Vec::new();
    if let ([(text, extra)], false) = (designs.as_slice(), shelf) {
        let outcome = link::decode(text)
            .map_err(|fault| fault.to_string())
            .and_then(|design| state.open("opened file", design));
        match outcome {
            Ok(()) => {
                state.extra.set(extra.clone());
                persist::go_to_view(state, View::Elevation);
            }
            Err(sentence) => sentences.push(sentence),
        }
    } else {
        let before = state.keeper.shelf.with_untracked(|shelf| shelf.designs.len());
        let fault = designs.iter().find_map(|(text, extra)| {
            let design = link::decode(text).ok()?;
            state.keeper.put(&design, extra).err()
        });
        let now = state.keeper.shelf.with_untracked(|shelf| shelf.designs.len());
        let added = now.saturating_sub(before);
        sentences.push(match (added, designs.len().saturating_sub(added)) {
            (1, 0) => "One design was put on the shelf.".to_owned(),
            (added, 0) => format!("{added} designs were put on the shelf."),
            (added, there) => format!(
                "{added} designs were put on the shelf; {there} stood there already or found no room."
            ),
        });
        sentences.extend(fault.map(|fault| fault.to_string()));
        persist::go_to_view(state, View::Shelf);
    }
    sentences.extend(remark);
    if !sentences.is_empty() {
        state.notice.set(Some(Message::Sentence(sentences.join(" "))));
    }
}

fn open(state: State, id: &str) {
    let Some(shelved) = state.keeper.shelf.with_untracked(|shelf| shelf.get(id).cloned()) else { return };
    let outcome = link::decode(&shelved.link)
        .map_err(|fault| fault.to_string())
        .and_then(|design| state.open("design from the shelf", design));
    match outcome {
        Ok(()) => {
            state.extra.set(shelved.extra);
            persist::go_to_view(state, View::Elevation);
        }
        Err(sentence) => state.notice.set(Some(Message::Sentence(sentence))),
    }
}

fn compare(state: State, id: &str) {
    let link = state.keeper.shelf.with_untracked(|shelf| shelf.get(id).map(|shelved| shelved.link.clone()));
    let Some(design) = link.and_then(|link| link::decode(&link).ok()) else { return };
    match state.set_aside(Some(&design)) {
        Ok(()) => persist::go_to_view(state, View::Compare),
        Err(sentence) => state.notice.set(Some(Message::Sentence(sentence))),
    }
}

fn copy(state: State, link: String) {
    spawn_local(async move {
        if persist::copy(&link).await {
            state.spoken.set("Link copied.".into());
            state.notice.set(Some(Message::Sentence("Link copied.".into())));
        } else {
            state.notice.set(Some(Message::Link(link)));
        }
    });
}

fn tell(state: State, outcome: Result<&str, persist::Fault>) {
    match outcome {
        Ok(sentence) => state.spoken.set(sentence.to_owned()),
        Err(fault) => say(state, Some(fault)),
    }
}

fn say(state: State, fault: Option<persist::Fault>) {
    if let Some(fault) = fault {
        state.notice.set(Some(Message::Sentence(fault.to_string())));
    }
}
