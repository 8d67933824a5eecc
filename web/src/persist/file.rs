//! Files of the page itself, and files that the reader saves.
use js_sys::Array;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, HtmlScriptElement, Url};

/// The script that started the page, in the folder of its version.
const START: &str = "start.js";

/// The address of a file in the folder of this version.
pub fn file_beside(name: &str) -> Option<String> {
    let document = web_sys::window()?.document()?;
    let script = document.query_selector("script[src$=\"start.js\"]").ok()??;
    let address = script.dyn_into::<HtmlScriptElement>().ok()?.src();
    Some(format!("{}{name}", address.strip_suffix(START)?))
}

/// Hands a text to the reader as a file. The browser asks where to, or puts it with the others.
pub fn save_file(name: &str, text: &str) {
    // Without a document there is nobody who could have asked.
    let _ = offer(name, text);
}

fn offer(name: &str, text: &str) -> Option<()> {
    let document = web_sys::window()?.document()?;
    let properties = BlobPropertyBag::new();
    properties.set_type(kind(name));
    let blob =
        Blob::new_with_str_sequence_and_options(&Array::of1(&JsValue::from_str(text)), &properties).ok()?;
    let address = Url::create_object_url_with_blob(&blob).ok()?;
    let anchor = document.create_element("a").ok()?.dyn_into::<HtmlAnchorElement>().ok()?;
    anchor.set_href(&address);
    anchor.set_download(name);
    anchor.click();
    Url::revoke_object_url(&address).ok()
}

/// Lets the reader print what is on screen.
pub fn print() {
    // Refused in some embedded pages; the browser's own menu prints there too.
    let _ = web_sys::window().map(|window| window.print());
}

/// The media type of a file by its ending.
fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("csv") => "text/csv;charset=utf-8",
        Some("svg") => "image/svg+xml",
        Some("dxf") => "image/vnd.dxf",
        Some("json") => "application/json",
        _ => "text/plain;charset=utf-8",
    }
}
