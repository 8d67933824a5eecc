//! When the program itself fails: the design is saved, the page comes back with it, and if that does not help it says so.
//!
//! After a panic nothing of the program can run any more, so all of this happens in the panic hook.
use std::panic::PanicHookInfo;

use web_sys::{Element, Window};

use crate::clock::now;
use crate::persist;

/// When the page last came back by itself, in the storage of the tab.
const MARK: &str = "risewright.trouble";
/// A second failure this soon after, ms, is not answered by loading again.
const SOON: f64 = 30_000.0;

/// Makes ready for the worst.
pub fn prepare() {
    std::panic::set_hook(Box::new(on_panic));
}

fn on_panic(info: &PanicHookInfo<'_>) {
    web_sys::console::error_1(&info.to_string().into());
    persist::save_now();
    let Some(window) = web_sys::window() else { return };
    if may_load_again(&window) && window.location().reload().is_ok() {
        return;
    }
    // Without a page there is nobody to tell.
    let _ = tell(&window);
}

/// Whether the page has not come back just now, or cannot remember that it has.
fn may_load_again(window: &Window) -> bool {
    let Ok(Some(storage)) = window.session_storage() else { return false };
    let last: Option<f64> = storage.get_item(MARK).ok().flatten().and_then(|text| text.parse().ok());
    storage.set_item(MARK, &now().to_string()).is_ok() && last.is_none_or(|last| now() - last > SOON)
}

fn tell(window: &Window) -> Option<()> {
    let document = window.document()?;
    let notice = document.create_element("div").ok()?;
    notice.set_attribute("role", "alert").ok()?;
    notice.set_class_name("trouble");
    let add = |tag: &str, text: &str| -> Option<Element> {
        let element = document.create_element(tag).ok()?;
        element.set_text_content(Some(text));
        notice.append_child(&element).ok()?;
        Some(element)
    };
    add(
        "p",
        "The program has run into an error of its own and cannot go on. Your design is kept in this browser and in this address:",
    )?;
    add("code", &window.location().href().ok()?)?;
    let page = window.location().pathname().ok()?;
    add("a", "Begin again with the kept design")?.set_attribute("href", &page).ok()?;
    document.body()?.prepend_with_node_1(&notice).ok()
}
