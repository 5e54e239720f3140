//! Which tab of this page writes: the browser gives one lock to one tab at a time.

use super::{field, function, options, window};
use js_sys::Promise;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

/// Every copy of the page on one origin shares the records, and so the lock.
const NAME: &str = "beetle-almanac:writer";

/// The browser's locks; none where it has none, or on a host without https.
fn locks() -> Option<JsValue> {
    let locks = field(&window()?.navigator(), "locks");
    locks.is_object().then_some(locks)
}

/// Waits for the lock, or takes it from whoever has it, and calls `ours` once it is held. It is held until the page is
/// closed or another tab takes it: then this returns. False when it could not be asked for at all.
pub async fn hold(steal: bool, ours: impl FnOnce() + 'static) -> bool {
    let held = Rc::new(Cell::new(false));
    if let Some(asked) = ask(steal, held.clone(), Box::new(ours)) {
        // A lock that is taken away is told as an error.
        let _ = JsFuture::from(asked).await;
    }
    held.get()
}

fn ask(steal: bool, held: Rc<Cell<bool>>, ours: Box<dyn FnOnce()>) -> Option<Promise> {
    let locks = locks()?;
    let request = function(&locks, "request")?;
    // The lock is held for as long as the promise is open, so it is one that is never kept.
    let granted = Closure::once_into_js(move || {
        held.set(true);
        ours();
        Promise::new(&mut |_, _| {})
    });
    request.call3(&locks, &NAME.into(), &options(&[("steal", steal.into())]), &granted).ok()?.dyn_into().ok()
}
