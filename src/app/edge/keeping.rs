//! Whether the browser promises to keep what the page stores.

use super::{call, field, window};
use js_sys::Promise;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

/// Whether it has promised; none where it knows no such promise.
pub async fn promised() -> Option<bool> {
    storage("persisted").await
}

/// Asks for the promise. Some browsers ask the keeper, some decide by themselves.
pub async fn ask() -> Option<bool> {
    storage("persist").await
}

async fn storage(method: &str) -> Option<bool> {
    let storage = field(&window()?.navigator(), "storage");
    let answer: Promise = call(&storage, method, &JsValue::UNDEFINED)?.dyn_into().ok()?;
    JsFuture::from(answer).await.ok()?.as_bool()
}
