//! Files out of and into the page.

use super::document;
use js_sys::{Array, Uint8Array};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, HtmlInputElement, Url};

/// Why a picked file was not read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileError {
    /// Larger than the cap.
    TooLarge {
        /// The cap, in bytes.
        most: u32,
    },
    /// The browser could not read it.
    Unreadable,
}

/// Offers `text` as a file named `name`. False when the browser refuses; the caller then shows the text itself.
pub fn save(name: &str, media_type: &str, text: &str) -> bool {
    offer(name, media_type, text).is_some()
}

fn offer(name: &str, media_type: &str, text: &str) -> Option<()> {
    let bag = BlobPropertyBag::new();
    bag.set_type(media_type);
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&text.into()), &bag).ok()?;
    let url = Url::create_object_url_with_blob(&blob).ok()?;
    let anchor: HtmlAnchorElement = document()?.create_element("a").ok()?.dyn_into().ok()?;
    anchor.set_href(&url);
    anchor.set_download(name);
    anchor.click();
    // Some phones ask the keeper first and read the blob only then, so the address is kept for a minute.
    let revoke = Closure::once_into_js(move || {
        let _ = Url::revoke_object_url(&url);
    });
    let window = super::window()?;
    let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(revoke.unchecked_ref(), 60_000);
    Some(())
}

/// Reads the file that was picked in `input` and hands its name and text to `then`; `most` caps the size in bytes
/// before anything is read. The choice is cleared, so that the same file can be picked again.
///
/// Bytes that are no text come as replacement characters: what the file is can still be told from its start.
pub fn picked(
    input: &HtmlInputElement,
    most: u32,
    then: impl FnOnce(String, Result<String, FileError>) + 'static,
) {
    read(input, most, Box::new(then));
}

fn read(input: &HtmlInputElement, most: u32, then: Box<dyn FnOnce(String, Result<String, FileError>)>) {
    let Some(file) = input.files().and_then(|files| files.get(0)) else { return };
    input.set_value("");
    wasm_bindgen_futures::spawn_local(async move {
        let text = if file.size() > f64::from(most) {
            Err(FileError::TooLarge { most })
        } else {
            text(&file).await.ok_or(FileError::Unreadable)
        };
        then(file.name(), text);
    });
}

async fn text(file: &Blob) -> Option<String> {
    let buffer = JsFuture::from(file.array_buffer()).await.ok()?;
    Some(String::from_utf8_lossy(&Uint8Array::new(&buffer).to_vec()).into_owned())
}
