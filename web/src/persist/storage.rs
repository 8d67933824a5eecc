//! The browser's storage, which may be refused, full, or changed by others at any time.
use wasm_bindgen::JsValue;
use web_sys::Storage;

/// Where something is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// For this page in all tabs, until the reader clears it.
    Browser,
    /// For this tab, until it is closed.
    Tab,
}

/// Why nothing was kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// The browser keeps nothing for this page.
    Denied,
    /// There is no room left.
    Full,
}

fn open(place: Place) -> Result<Storage, Refused> {
    let window = web_sys::window().ok_or(Refused::Denied)?;
    let storage = match place {
        Place::Browser => window.local_storage(),
        Place::Tab => window.session_storage(),
    };
    storage.ok().flatten().ok_or(Refused::Denied)
}

/// What stands under a key.
pub fn read(place: Place, key: &str) -> Option<String> {
    open(place).ok()?.get_item(key).ok()?
}

/// Puts a text under a key. Refused, it leaves what stood there.
pub fn write(place: Place, key: &str, text: &str) -> Result<(), Refused> {
    open(place)?.set_item(key, text).map_err(|fault| reason(&fault))
}

/// Takes away what stands under a key, if anything does.
pub fn remove(place: Place, key: &str) {
    if let Ok(storage) = open(place) {
        // Fails only where nothing could be kept either.
        let _ = storage.remove_item(key);
    }
}

/// Every key that begins with `prefix`, with its text, in the order of the keys.
pub fn all(place: Place, prefix: &str) -> Result<Vec<(String, String)>, Refused> {
    let storage = open(place)?;
    let count = storage.length().map_err(|_| Refused::Denied)?;
    let mut found: Vec<_> = (0..count)
        .filter_map(|at| storage.key(at).ok().flatten())
        .filter(|key| key.starts_with(prefix))
        .filter_map(|key| Some((storage.get_item(&key).ok()??, key)))
        .map(|(text, key)| (key, text))
        .collect();
    found.sort();
    Ok(found)
}

/// Both names are in use for the same thing.
fn reason(fault: &JsValue) -> Refused {
    let name = js_sys::Reflect::get(fault, &JsValue::from_str("name")).ok().and_then(|name| name.as_string());
    match name.as_deref() {
        Some("QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED") => Refused::Full,
        _ => Refused::Denied,
    }
}
