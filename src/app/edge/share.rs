//! Files handed to another app of the phone (Web Share API).

use super::{call, class, field, options, window};
use js_sys::{Array, Object, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

/// How it went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shared {
    /// Another app has it.
    Done,
    /// The keeper shut the list of apps.
    Left,
    /// The browser would not.
    Refused,
}

/// Whether the browser shares files of this kind. Some share none, some only a few kinds.
pub fn can(name: &str, media_type: &str) -> bool {
    let asked = file(name, media_type, "-").and_then(|file| navigator("canShare", &file));
    asked.is_some_and(|yes| yes.is_truthy())
}

/// Opens the phone's list of apps; to be called while a tap is being answered. None where the browser has no such list.
pub fn share(name: &str, media_type: &str, text: &str) -> Option<Promise> {
    Some(Promise::resolve(&navigator("share", &file(name, media_type, text)?)?))
}

/// What became of it.
pub async fn outcome(shared: Promise) -> Shared {
    let Err(error) = JsFuture::from(shared).await else { return Shared::Done };
    let name = field(&error, "name").as_string();
    if name.as_deref() == Some("AbortError") { Shared::Left } else { Shared::Refused }
}

fn navigator(method: &str, files: &Object) -> Option<JsValue> {
    call(&window()?.navigator(), method, files)
}

fn file(name: &str, media_type: &str, text: &str) -> Option<Object> {
    let class = class("File")?;
    let kind = options(&[("type", media_type.into())]);
    let made = Array::of3(&Array::of1(&text.into()), &name.into(), &kind);
    let file = Reflect::construct(&class, &made).ok()?;
    Some(options(&[("files", Array::of1(&file).into())]))
}
