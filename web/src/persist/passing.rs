//! What is handed to the page or passed on by it: files that are chosen or dropped, the clipboard, the system's own way to share.
use js_sys::{Function, Object, Promise, Reflect};
use leptos::prelude::*;
use leptos::task::spawn_local;
use risewright::share::file::READ_LIMIT;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{DragEvent, File, FileList, HtmlInputElement};

/// A larger file is none of ours, bytes.
const MOST: f64 = READ_LIMIT as f64;

/// Takes the text of a file, or a sentence on why there is none.
pub type Taken = Callback<Result<String, String>>;

/// Lets the reader choose a file.
pub fn choose_file(taken: Taken) {
    // Without a document there is nobody who could have asked.
    let _ = choose(taken);
}

fn choose(taken: Taken) -> Option<()> {
    let document = web_sys::window()?.document()?;
    let input = document.create_element("input").ok()?.dyn_into::<HtmlInputElement>().ok()?;
    input.set_type("file");
    input.set_accept(".json,application/json");
    let chosen = input.clone();
    let change = Closure::once_into_js(move || read_first(chosen.files(), taken));
    input.set_onchange(Some(change.unchecked_ref()));
    input.click();
    Some(())
}

/// Takes files that are dropped anywhere on the page.
pub fn take_dropped(taken: Taken) {
    let brings_files = |event: &DragEvent| {
        event.data_transfer().is_some_and(|data| data.types().includes(&JsValue::from_str("Files"), 0))
    };
    // Dropping is allowed only where this is heard.
    window_event_listener(leptos::ev::dragover, move |event| {
        if brings_files(&event) {
            event.prevent_default();
        }
    });
    window_event_listener(leptos::ev::drop, move |event| {
        if brings_files(&event) {
            event.prevent_default();
            read_first(event.data_transfer().and_then(|data| data.files()), taken);
        }
    });
}

fn read_first(files: Option<FileList>, taken: Taken) {
    let Some(file) = files.and_then(|files| files.get(0)) else { return };
    spawn_local(async move { taken.run(read(&file).await) });
}

async fn read(file: &File) -> Result<String, String> {
    let name = file.name();
    if file.size() > MOST {
        return Err(format!(
            "{name} is larger than any file of this program ({:.0} MB at most) and was not opened.",
            MOST / 1e6
        ));
    }
    let text = JsFuture::from(file.text()).await.ok().and_then(|text| text.as_string());
    text.ok_or_else(|| format!("{name} could not be read. Choose it again, or another copy of it."))
}

/// Puts a text on the clipboard; false where the browser has none or refuses.
pub async fn copy(text: &str) -> bool {
    let Some(navigator) = web_sys::window().map(|window| window.navigator()) else { return false };
    // Pages that are not served securely have no clipboard at all.
    let there =
        Reflect::get(&navigator, &JsValue::from_str("clipboard")).is_ok_and(|value| !value.is_undefined());
    there && JsFuture::from(navigator.clipboard().write_text(text)).await.is_ok()
}

/// The system's own way to share, where the browser has one.
fn share() -> Option<(JsValue, Function)> {
    let navigator: JsValue = web_sys::window()?.navigator().into();
    let share = Reflect::get(&navigator, &JsValue::from_str("share")).ok()?.dyn_into().ok()?;
    Some((navigator, share))
}

/// Whether the system can share a link.
pub fn can_send() -> bool {
    share().is_some()
}

/// Hands a link to the system to share. What becomes of it there, sent or put away, is the reader's.
pub fn send(title: &str, link: &str) {
    let Some((navigator, share)) = share() else { return };
    let data = Object::new();
    for (key, value) in [("title", title), ("url", link)] {
        // A plain object takes every property.
        let _ = Reflect::set(&data, &JsValue::from_str(key), &JsValue::from_str(value));
    }
    if let Ok(promise) = share.call1(&navigator, &data).and_then(JsCast::dyn_into::<Promise>) {
        spawn_local(async move {
            // Refused when the reader puts it away.
            let _ = JsFuture::from(promise).await;
        });
    }
}
