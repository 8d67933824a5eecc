//! When the program itself fails: what is not kept yet is kept.
//!
//! After a panic nothing of the program can run any more. The page's start hears of the failure, as of one without a panic, and brings the
//! page back: see `web/start.js`.
use std::panic::PanicHookInfo;

use crate::persist;

/// Makes ready for the worst.
pub fn prepare() {
    std::panic::set_hook(Box::new(on_panic));
}

fn on_panic(info: &PanicHookInfo<'_>) {
    let reason = info.to_string();
    web_sys::console::error_1(&reason.as_str().into());
    persist::save_now(&reason);
}
